/* Questions of somebody who plans an evening. */
#include "library/finding.h"
#include "support/memory.h"
#include <string.h>

/* What each work gives up in each arrangement: `given (work, arrangement, lost)`. Works for which nothing speaks give up nothing in any; an arrangement that the house
 * forbids to one of its movements is none for the work. */
#define GIVEN \
    "WITH ways (arrangement) AS (SELECT DISTINCT arrangement FROM seat)," \
    " given (work, arrangement, lost) AS (" \
    "SELECT m.work, a.arrangement, total(s.lost) FROM movement m CROSS JOIN ways a" \
    " LEFT JOIN seat s ON s.movement = m.id AND s.arrangement = a.arrangement" \
    " GROUP BY m.work, a.arrangement HAVING count(s.id) = sum(m.outcome = 'judged'))"
#define OF_CONDITIONS " AND g.work IN (SELECT m.work FROM movement m JOIN work w ON w.id = m.work WHERE 1"

typedef struct Choice { /* a work in its arrangement */
    long long work;
    const char *seating;
    double lost, partner;
} Choice;
typedef ARRAY(Choice) Choices;

/* One work by its name; 0 where there is none, or more than one. */
static long long the_work(Store *store, const char *name)
{
    long long works[1];
    return find_works(store, name, works, 1) == 1 ? works[0] : 0;
}

/* Losses of the movements in their work's arrangement. */
static spz_status fill_losses(Store *store, spz_shelf *shelf, ShelfWork *work)
{
    bool whole = true;
    for (size_t i = 0; whole && i < work->movements.count; i++) {
        spz_shelf_movement *movement = &work->movements.at[i];
        Query query = query_begin(store, "SELECT lost, weakens FROM seat WHERE movement = ? AND arrangement = ?");
        query_integer(&query, work->ids.at[i]);
        query_text(&query, work->about.seating);
        if (query_row(&query)) {
            movement->points = query_get_number(&query, 0);
            if (movement->points > 0) /* what weakens nothing against the best is no loss */
                movement->weakens = arena_string(&shelf->arena, query_get_text(&query, 1));
            whole = movement->weakens != NULL;
        }
        query_end(&query);
    }
    return whole ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status add_choice(Store *store, const Choice *choice, spz_shelf *shelf)
{
    Where where = {.values = {{.number = (double)choice->work}}, .count = 1};
    size_t before = shelf->works.count;
    buffer_init(&where.sql);
    buffer_puts(&where.sql, " AND m.work = ?");
    spz_status status = find_movements(store, &where, shelf);
    where_free(&where);
    if (status != SPZ_OK || shelf->works.count == before)
        return status;
    ShelfWork *work = &shelf->works.at[before];
    work->about.seating = choice->seating;
    work->about.points = choice->lost;
    work->about.partner = choice->partner;
    return fill_losses(store, shelf, work);
}

/* Rows of work, arrangement, lost, partner's loss, into the list. */
static spz_status take_choices(Store *store, const Buffer *sql, const Value *first, int count, const Where *where, size_t most, spz_shelf *shelf, Choices *choices)
{
    Where all = {.count = count};
    bool whole = !buffer_failed(sql) && !buffer_failed(&where->sql) && count + where->count < VALUES_MOST;
    if (!whole)
        return SPZ_NO_MEMORY;
    memcpy(all.values, first, (size_t)count * sizeof *first);
    memcpy(all.values + count, where->values, (size_t)where->count * sizeof *first);
    all.count = count + where->count;
    all.values[all.count++] = (Value){.number = (double)most};
    Query query = query_once(store, sql->text);
    where_bind(&all, &query);
    while (whole && query_row(&query)) {
        Choice choice = {query_get_integer(&query, 0), arena_string(&shelf->arena, query_get_text(&query, 1)), query_get_number(&query, 2), query_get_number(&query, 3)};
        whole = choice.seating && array_push(choices, choice);
    }
    spz_status status = query_end(&query);
    return whole ? status : SPZ_NO_MEMORY;
}

/* Asks with `sql` up to its conditions, and puts the works on the shelf. */
static spz_status choose(Store *store, const char *sql, const Value *first, int count, const spz_conditions *conditions, size_t most, spz_shelf *shelf)
{
    Where where = {.count = 0};
    Choices choices = {NULL, 0, 0};
    Buffer text;
    buffer_init(&text);
    buffer_init(&where.sql);
    where_movements(&where, conditions);
    buffer_printf(&text, "%s%s) GROUP BY g.work ORDER BY min(g.lost + o.lost), w.composer, w.name COLLATE names LIMIT ?", sql, where.sql.text ? where.sql.text : "");
    spz_status status = take_choices(store, &text, first, count, &where, most, shelf, &choices);
    for (size_t i = 0; status == SPZ_OK && i < choices.count; i++)
        status = add_choice(store, &choices.at[i], shelf);
    array_free(&choices);
    where_free(&where);
    buffer_free(&text);
    return status;
}

/* The arrangement in which the work loses least; "" where none is known. */
static const char *seating_of(Store *store, long long work, Arena *arena)
{
    Query query = query_begin(store, GIVEN " SELECT arrangement FROM given WHERE work = ? ORDER BY lost, arrangement LIMIT 1");
    query_integer(&query, work);
    const char *seating = arena_string(arena, query_row(&query) ? query_get_text(&query, 0) : "");
    query_end(&query);
    return seating;
}

spz_status spz_library_fits(spz_library *library, const spz_evening *evening, const spz_conditions *conditions, size_t most, spz_shelf **out)
{
    Store *store = library->store;
    *out = NULL;
    spz_shelf *shelf = shelf_new(SPZ_SHELF_FITS, evening->seating ? evening->seating : "");
    spz_status status = shelf ? store_begin(store, false) : SPZ_NO_MEMORY;
    if (status != SPZ_OK) {
        spz_shelf_free(shelf);
        return library_end(library, status);
    }
    long long with = evening->with ? the_work(store, evening->with) : 0;
    if (with && !evening->seating)
        shelf->question = seating_of(store, with, &shelf->arena);
    const Value first[] = {{.text = shelf->question}, {.number = (double)with}};
    if (!shelf->question)
        status = SPZ_NO_MEMORY;
    else if (with || !evening->with)
        status = choose(store, GIVEN " SELECT g.work, g.arrangement, g.lost, 0, min(g.lost) FROM given g JOIN work w ON w.id = g.work JOIN (SELECT 0 AS lost) o"
                               " WHERE instr(lower(g.arrangement) || ',', lower(?) || ',') = 1 AND g.work <> ?" OF_CONDITIONS,
                        first, 2, conditions, most, shelf);
    return shelf_finish(library, status, shelf, out);
}

spz_status spz_library_partners(spz_library *library, const char *name, const spz_conditions *conditions, size_t most, spz_shelf **out)
{
    Store *store = library->store;
    *out = NULL;
    spz_shelf *shelf = shelf_new(SPZ_SHELF_PARTNERS, name);
    spz_status status = shelf ? store_begin(store, false) : SPZ_NO_MEMORY;
    if (status != SPZ_OK) {
        spz_shelf_free(shelf);
        return library_end(library, status);
    }
    long long work = the_work(store, name);
    const Value first[] = {{.number = (double)work}, {.number = (double)work}, {.number = (double)work}};
    if (work)
        status = choose(store, GIVEN " SELECT g.work, g.arrangement, g.lost, o.lost, min(g.lost + o.lost) FROM given g JOIN given o ON o.arrangement = g.arrangement AND o.work = ?"
                               " JOIN work w ON w.id = g.work WHERE g.work <> ? AND (SELECT max(orchestras) FROM movement WHERE work = g.work) ="
                               " (SELECT max(orchestras) FROM movement WHERE work = ?)" OF_CONDITIONS,
                        first, 3, conditions, most, shelf);
    return shelf_finish(library, status, shelf, out);
}

/* The strongest passage of the work at that bar: what it has that others may have too. */
static bool describe(Store *store, long long work, const char *bar, spz_conditions *like, Buffer *words)
{
    Query query = query_begin(store, "SELECT p.kind, p.first_side, ifnull(p.second_side, ''), p.semitones, p.steps FROM passage p JOIN movement m ON m.id = p.movement"
                                     " WHERE m.work = ?1 AND (p.first_bar = ?2 OR (CAST(p.first_bar AS INTEGER) <= CAST(?2 AS INTEGER)"
                                     " AND CAST(p.last_bar AS INTEGER) >= CAST(?2 AS INTEGER))) ORDER BY p.strength DESC LIMIT 1");
    spz_kind kind = SPZ_EXCHANGE;
    query_integer(&query, work);
    query_text(&query, bar);
    bool found = query_row(&query) && spz_kind_from_name(query_get_text(&query, 0), &kind);
    if (found) {
        *like = (spz_conditions){.kinds = 1u << kind, .led = true, .between = {spz_section_from_name(query_get_text(&query, 1)), spz_section_from_name(query_get_text(&query, 2))}};
        like->interval = query_is_null(&query, 4) ? SPZ_ANY_INTERVAL : interval_from(query_get_integer(&query, 3), query_get_integer(&query, 4));
        buffer_printf(words, "%s %s%s%s%s%s", query_get_text(&query, 0), query_get_text(&query, 1), like->between[1] ? " > " : "", query_get_text(&query, 2),
                      like->interval ? ", " : "", spz_interval_name(like->interval));
    }
    query_end(&query);
    return found;
}

static spz_status find_alike(Store *store, const spz_conditions *like, long long work, size_t passages, spz_shelf *shelf)
{
    Where where = {.values = {{.number = (double)work}}, .count = 1};
    buffer_init(&where.sql);
    buffer_puts(&where.sql, " AND m.work <> ? AND m.id IN (SELECT p.movement FROM passage p WHERE 1");
    where_passages(&where, like);
    buffer_puts(&where.sql, ")");
    spz_status status = find_movements(store, &where, shelf);
    if (status == SPZ_OK)
        status = find_passages(store, like, passages, shelf);
    where_free(&where);
    return status;
}

spz_status spz_library_alike(spz_library *library, const char *name, const char *bar, size_t passages, spz_shelf **out)
{
    Store *store = library->store;
    spz_conditions like;
    Buffer words;
    *out = NULL;
    spz_shelf *shelf = shelf_new(SPZ_SHELF_ALIKE, "");
    spz_status status = shelf ? store_begin(store, false) : SPZ_NO_MEMORY;
    if (status != SPZ_OK) {
        spz_shelf_free(shelf);
        return library_end(library, status);
    }
    buffer_init(&words);
    long long work = the_work(store, name);
    if (work && describe(store, work, bar, &like, &words)) {
        shelf->question = buffer_failed(&words) ? NULL : arena_string(&shelf->arena, words.text);
        status = shelf->question ? find_alike(store, &like, work, passages, shelf) : SPZ_NO_MEMORY;
    }
    buffer_free(&words);
    return shelf_finish(library, status, shelf, out);
}
