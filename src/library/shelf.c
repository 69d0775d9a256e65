#include "library/shelf.h"
#include "support/memory.h"
#include "support/text/name_order.h"
#include <string.h>

spz_shelf *shelf_new(spz_shelf_kind kind, const char *question)
{
    spz_shelf *shelf = memory_zeroed(1, sizeof *shelf);
    if (!shelf)
        return NULL;
    arena_init(&shelf->arena);
    shelf->kind = kind;
    shelf->question = arena_string(&shelf->arena, question);
    if (shelf->question)
        return shelf;
    spz_shelf_free(shelf);
    return NULL;
}

void spz_shelf_free(spz_shelf *shelf)
{
    if (!shelf)
        return;
    for (size_t i = 0; i < shelf->works.count; i++) {
        array_free(&shelf->works.at[i].movements);
        array_free(&shelf->works.at[i].ids);
    }
    array_free(&shelf->works);
    arena_release(&shelf->arena);
    memory_free(shelf);
}

size_t spz_shelf_count(const spz_shelf *shelf)
{
    return shelf->works.count;
}

size_t spz_shelf_total(const spz_shelf *shelf)
{
    return shelf->total > shelf->works.count ? shelf->total : shelf->works.count;
}

const spz_shelf_work *spz_shelf_at(const spz_shelf *shelf, size_t index)
{
    return index < shelf->works.count ? &shelf->works.at[index].about : NULL;
}

spz_shelf_kind spz_shelf_kind_of(const spz_shelf *shelf)
{
    return shelf->kind;
}

const char *spz_shelf_question(const spz_shelf *shelf)
{
    return shelf->question;
}

static ShelfWork *work_of(spz_shelf *shelf, const Query *row)
{
    long long id = query_get_integer(row, 0);
    ShelfWork *last = shelf->works.count ? &shelf->works.at[shelf->works.count - 1] : NULL;
    if (last && last->id == id)
        return last;
    ShelfWork work = {.id = id, .about = {.composer = arena_string(&shelf->arena, query_get_text(row, 1)),
                                          .name = arena_string(&shelf->arena, query_get_text(row, 2)), .orchestras = 1, .seating = ""}};
    if (!work.about.composer || !work.about.name || !array_push(&shelf->works, work))
        return NULL;
    return &shelf->works.at[shelf->works.count - 1];
}

bool shelf_take(spz_shelf *shelf, const Query *row)
{
    ShelfWork *work = work_of(shelf, row);
    if (!work)
        return false;
    Arena *arena = &shelf->arena;
    spz_shelf_movement movement = {.title = arena_string(arena, query_get_text(row, 4)),
                                   .file = arena_string(arena, query_get_text(row, 11)),
                                   .number = (size_t)query_get_integer(row, 5),
                                   .bars = (size_t)query_get_integer(row, 6),
                                   .year = (int)query_get_integer(row, 7),
                                   .seconds = query_get_number(row, 8),
                                   .confidence = arena_string(arena, query_get_text(row, 9)),
                                   .arrangement = arena_string(arena, query_get_text(row, 10)),
                                   .weakens = ""};
    return movement.title && movement.file && movement.confidence && movement.arrangement && array_push(&work->movements, movement) &&
           array_push(&work->ids, query_get_integer(row, 3));
}

static bool stands_before(const spz_shelf_movement *a, const spz_shelf_movement *b)
{
    int order = names_compare(a->file, b->file);
    return order ? order < 0 : a->number < b->number;
}

/* A work has few movements, mostly in order. */
static void order_work(ShelfWork *work)
{
    for (size_t i = 1; i < work->movements.count; i++)
        for (size_t k = i; k > 0 && stands_before(&work->movements.at[k], &work->movements.at[k - 1]); k--) {
            spz_shelf_movement movement = work->movements.at[k];
            long long id = work->ids.at[k];
            work->movements.at[k] = work->movements.at[k - 1];
            work->ids.at[k] = work->ids.at[k - 1];
            work->movements.at[k - 1] = movement;
            work->ids.at[k - 1] = id;
        }
}

void shelf_order(spz_shelf *shelf)
{
    for (size_t i = 0; i < shelf->works.count; i++)
        order_work(&shelf->works.at[i]);
}

static void complete_needs(ShelfWork *work, Store *store)
{
    static const spz_section sections[SPZ_SHELF_SECTIONS] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};
    Query query = query_begin(store, "SELECT need.section, max(need.players) FROM movement CROSS JOIN need ON need.movement = movement.id"
                                     " WHERE movement.work = ? GROUP BY need.section");
    query_integer(&query, work->id);
    while (query_row(&query))
        for (int i = 0; i < SPZ_SHELF_SECTIONS; i++)
            if (strcmp(query_get_text(&query, 0), spz_section_name(sections[i])) == 0)
                work->about.needs[i] = (int)query_get_integer(&query, 1);
    query_end(&query);
}

spz_status shelf_complete(spz_shelf *shelf, Store *store)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; status == SPZ_OK && i < shelf->works.count; i++) {
        ShelfWork *work = &shelf->works.at[i];
        Query query = query_begin(store, "SELECT min(year), total(seconds), count(*) - count(seconds), max(orchestras), max(thirds) FROM movement WHERE work = ?");
        query_integer(&query, work->id);
        if (query_row(&query)) {
            work->about.year = (int)query_get_integer(&query, 0);
            work->about.seconds = query_get_number(&query, 1);
            work->about.lengths_unknown = (size_t)query_get_integer(&query, 2);
            work->about.orchestras = (int)query_get_integer(&query, 3);
            work->about.thirds = query_get_integer(&query, 4) != 0;
        }
        query_end(&query);
        complete_needs(work, store);
        status = query_end(&query);
    }
    return status;
}

void shelf_close(spz_shelf *shelf)
{
    for (size_t i = 0; i < shelf->works.count; i++) {
        ShelfWork *work = &shelf->works.at[i];
        work->about.movements = work->movements.at;
        work->about.movement_count = work->movements.count;
    }
}
