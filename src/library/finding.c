#include "library/finding.h"
#include <stdint.h>
#include <string.h>

typedef ARRAY(long long) Numbers;

/* Numbers of the movements of the first works, `most` of them; all works are counted. */
static spz_status list_movements(Store *store, const Where *where, size_t most, Numbers *movements, size_t *works)
{
    Buffer sql = {0};
    bool whole = true;
    long long last = 0;
    buffer_printf(&sql, "SELECT m.work, m.id FROM movement m JOIN work w ON w.id = m.work WHERE 1%s ORDER BY w.composer, w.name COLLATE names, m.work", buffer_text(&where->sql));
    if (buffer_failed(&sql) || buffer_failed(&where->sql)) {
        buffer_free(&sql);
        return SPZ_NO_MEMORY;
    }
    Query query = query_once(store, sql.text);
    where_bind(where, &query);
    while (whole && query_row(&query)) {
        long long work = query_get_integer(&query, 0);
        *works += *works == 0 || work != last;
        last = work;
        if (*works <= most)
            whole = array_push(movements, query_get_integer(&query, 1));
    }
    spz_status status = query_end(&query);
    buffer_free(&sql);
    return whole ? status : SPZ_NO_MEMORY;
}

spz_status find_movements(Store *store, const Where *where, size_t most, spz_shelf *shelf)
{
    Numbers movements = {NULL, 0, 0};
    size_t works = 0;
    bool whole = true;
    spz_status status = list_movements(store, where, most, &movements, &works);
    for (size_t i = 0; status == SPZ_OK && whole && i < movements.count; i++) {
        Query query = query_begin(store, "SELECT " SHELF_COLUMNS " FROM movement m JOIN work w ON w.id = m.work WHERE m.id = ?");
        query_integer(&query, movements.at[i]);
        if (query_row(&query))
            whole = shelf_take(shelf, &query);
        status = query_end(&query);
    }
    array_free(&movements);
    shelf->total += works;
    shelf_order(shelf);
    return whole ? status : SPZ_NO_MEMORY;
}

spz_interval interval_from(long long semitones, long long steps)
{
    if (semitones == 0)
        return SPZ_AT_UNISON;
    if (steps % 7 == 0)
        return steps ? SPZ_AT_OCTAVE : SPZ_AT_UNISON;
    return (spz_interval)(SPZ_AT_UNISON + (steps < 0 ? -steps : steps) % 7);
}

static bool take_passage(spz_shelf *shelf, const Query *row, spz_shelf_passage *passage)
{
    Arena *arena = &shelf->arena;
    *passage = (spz_shelf_passage){.sides = {arena_string(arena, query_get_text(row, 1)), arena_string(arena, query_get_text(row, 2))},
                                   .first_bar = arena_string(arena, query_get_text(row, 3)),
                                   .last_bar = arena_string(arena, query_get_text(row, 4)),
                                   .letter = arena_string(arena, query_get_text(row, 9)),
                                   .strength = query_get_number(row, 5),
                                   .turns = (int)query_get_integer(row, 6),
                                   .interval = query_is_null(row, 8) ? SPZ_ANY_INTERVAL : interval_from(query_get_integer(row, 7), query_get_integer(row, 8))};
    spz_kind_from_name(query_get_text(row, 0), &passage->kind);
    return passage->sides[0] && passage->sides[1] && passage->first_bar && passage->last_bar && passage->letter;
}

typedef struct PassageSearch {
    Store *store;
    const char *sql;
    Where where;
    size_t most; /* that are kept of a movement */
    spz_shelf *shelf;
} PassageSearch;

static spz_status passages_of(const PassageSearch *search, long long id, spz_shelf_movement *movement)
{
    bool whole = true;
    spz_shelf_passage *kept = arena_take(&search->shelf->arena, search->most + 1, sizeof *kept);
    Query query = query_begin(search->store, search->sql);
    query_integer(&query, id);
    where_bind(&search->where, &query);
    movement->passages = kept;
    while (kept && whole && query_row(&query)) {
        if (movement->found++ < search->most)
            whole = take_passage(search->shelf, &query, &kept[movement->passage_count++]);
    }
    spz_status status = query_end(&query);
    return kept && whole ? status : SPZ_NO_MEMORY;
}

spz_status find_passages(Store *store, const spz_conditions *conditions, size_t most, spz_shelf *shelf)
{
    PassageSearch search = {.store = store, .most = most, .shelf = shelf};
    Where *where = &search.where;
    Buffer sql = {0};
    spz_status status = SPZ_OK;
    where_passages(where, conditions, false);
    buffer_printf(&sql, "SELECT kind, first_side, second_side, first_bar, last_bar, strength, turns, semitones, steps, letter FROM passage p INDEXED BY passage_movement"
                        " WHERE movement = ?%s ORDER BY strength DESC, number", buffer_text(&where->sql));
    search.sql = arena_string(&shelf->arena, sql.text);
    if (!search.sql || buffer_failed(&sql) || buffer_failed(&where->sql))
        status = SPZ_NO_MEMORY;
    for (size_t w = 0; status == SPZ_OK && w < shelf->works.count; w++)
        for (size_t m = 0; status == SPZ_OK && m < shelf->works.at[w].movements.count; m++)
            status = passages_of(&search, shelf->works.at[w].ids.at[m], &shelf->works.at[w].movements.at[m]);
    store_forget(store, search.sql);
    where_free(where);
    buffer_free(&sql);
    return status;
}

spz_status shelf_begin(spz_library *library, spz_shelf_kind kind, const char *question, spz_shelf **shelf)
{
    *shelf = shelf_new(kind, question);
    spz_status status = *shelf ? store_begin(library->store, false) : SPZ_NO_MEMORY;
    if (status == SPZ_OK)
        return SPZ_OK;
    spz_shelf_free(*shelf);
    *shelf = NULL;
    return library_end(library, status);
}

spz_status shelf_finish(spz_library *library, spz_status status, spz_shelf *shelf, spz_shelf **out)
{
    if (status == SPZ_OK)
        status = shelf_complete(shelf, library->store);
    status = library_end(library, store_end(library->store, status));
    if (status == SPZ_OK) {
        shelf_close(shelf);
        *out = shelf;
    } else
        spz_shelf_free(shelf);
    return status;
}

spz_status spz_library_find(spz_library *library, const spz_conditions *conditions, size_t most, spz_shelf **out)
{
    Where where = {0};
    spz_shelf *shelf;
    *out = NULL;
    spz_status status = shelf_begin(library, SPZ_SHELF_FOUND, "", &shelf);
    if (status != SPZ_OK)
        return status;
    where_movements(&where, conditions);
    if (conditions_of_passages(conditions)) {
        buffer_puts(&where.sql, " AND m.id IN (SELECT p.movement FROM passage p WHERE 1");
        where_passages(&where, conditions, true);
        buffer_puts(&where.sql, ")");
    }
    status = find_movements(library->store, &where, conditions->first ? conditions->first : SIZE_MAX, shelf);
    if (status == SPZ_OK && conditions_of_passages(conditions))
        status = find_passages(library->store, conditions, most, shelf);
    where_free(&where);
    return shelf_finish(library, status, shelf, out);
}

static size_t ask_works(Store *store, const char *sql, const char *name, long long *works, size_t most)
{
    size_t count = 0;
    Query query = query_begin(store, sql);
    query_text(&query, name);
    while (query_row(&query)) {
        if (count < most)
            works[count] = query_get_integer(&query, 0);
        count++;
    }
    query_end(&query);
    return count;
}

size_t find_works(Store *store, const char *name, long long *works, size_t most)
{
    size_t count = ask_works(store, "SELECT id FROM work WHERE lower(name) = lower(?1) OR lower(composer || ': ' || name) = lower(?1) ORDER BY composer, name", name, works, most);
    if (count == 0 && *name)
        count = ask_works(store, "SELECT id FROM work WHERE instr(lower(composer || ': ' || name), lower(?)) > 0 ORDER BY composer, name", name, works, most);
    return count;
}

enum { WORKS_SHOWN = 100 };

spz_status spz_library_show(spz_library *library, const char *name, size_t most, spz_shelf **out)
{
    static const spz_conditions all = {.strength = 0.5};
    long long works[WORKS_SHOWN];
    spz_shelf *shelf;
    *out = NULL;
    spz_status status = shelf_begin(library, SPZ_SHELF_SHOWN, name, &shelf);
    if (status != SPZ_OK)
        return status;
    size_t count = find_works(library->store, name, works, WORKS_SHOWN);
    for (size_t i = 0; status == SPZ_OK && i < count && i < WORKS_SHOWN; i++) {
        Where where = {.values = {{.number = (double)works[i]}}, .count = 1};
        buffer_puts(&where.sql, " AND m.work = ?");
        status = find_movements(library->store, &where, SIZE_MAX, shelf);
        where_free(&where);
    }
    if (status == SPZ_OK)
        status = find_passages(library->store, &all, most, shelf);
    return shelf_finish(library, status, shelf, out);
}
