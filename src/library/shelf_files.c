#include "library/shelf_files.h"
#include "library/finding.h"

enum { NAMES_TOLD = 4 };

static bool list_files(Store *store, long long work, Arena *arena, FileList *paths)
{
    bool whole = true;
    Query query = query_begin(store, "SELECT (SELECT min(path) FROM file WHERE file.score = movement.score) AS place FROM movement WHERE work = ? GROUP BY place ORDER BY place COLLATE names");
    query_integer(&query, work);
    while (whole && query_row(&query)) {
        const char *path = arena_string(arena, query_get_text(&query, 0));
        whole = path && array_push(paths, path);
    }
    query_end(&query);
    return whole;
}

static const char *list_names(Store *store, const long long *works, size_t count, Arena *arena)
{
    Buffer names = {0};
    for (size_t i = 0; i < count && i < NAMES_TOLD; i++) {
        Query query = query_begin(store, "SELECT composer || ': ' || name FROM work WHERE id = ?");
        query_integer(&query, works[i]);
        if (query_row(&query))
            buffer_printf(&names, "%s%s", i ? "; " : "", query_get_text(&query, 0));
        query_end(&query);
    }
    buffer_puts(&names, count > NAMES_TOLD ? "; ..." : "");
    const char *kept = buffer_failed(&names) ? NULL : arena_string(arena, names.text);
    buffer_free(&names);
    return kept;
}

spz_status shelf_files(Store *store, const char *name, const spz_sink *sink, Arena *arena, ShelfFiles *out)
{
    long long works[NAMES_TOLD];
    bool whole = true;
    *out = (ShelfFiles){.works = 0};
    spz_status status = store_begin(store, false);
    if (status == SPZ_OK) {
        out->works = find_works(store, name, works, NAMES_TOLD);
        if (out->works > 1)
            whole = (out->names = list_names(store, works, out->works, arena)) != NULL;
        else if (out->works == 1)
            whole = list_files(store, works[0], arena, &out->paths);
        status = store_end(store, whole ? SPZ_OK : SPZ_NO_MEMORY);
    }
    store_tell(store, SPZ_ERROR, sink);
    return status;
}
