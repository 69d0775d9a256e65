/* Questions of somebody who plans an evening. */
#include "library/finding.h"
#include "library/giving.h"
#include "seating/stage/seating_names.h"
#include "support/text/name_order.h"
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Choice { /* a work in its arrangement */
    long long work;
    const char *seating, *composer, *name;
    double lost, partner;
    long long rank; /* millionths of a point, so that what is added up in another order is alike */
} Choice;
typedef ARRAY(Choice) Choices;

static const uint32_t ANY_WAY = ~(uint32_t)0;

/* What is asked. */
typedef struct Wish {
    uint32_t ways;       /* bits of the arrangements that will do */
    size_t with;         /* the other work, whose losses count too */
    bool losses_count;   /* there is one */
    long long without;   /* this work is left out */
    spz_conditions conditions;
    size_t most;
} Wish;

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
        Query query = query_begin(store, "SELECT lost, weakens FROM seat WHERE movement = ? AND +arrangement = ?" /* by the movement, which has few */);
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
    buffer_puts(&where.sql, " AND m.work = ?");
    spz_status status = find_movements(store, &where, SIZE_MAX, shelf);
    where_free(&where);
    if (status != SPZ_OK || shelf->works.count == before)
        return status;
    ShelfWork *work = &shelf->works.at[before];
    work->about.seating = choice->seating;
    work->about.points = choice->lost;
    work->about.partner = choice->partner;
    return fill_losses(store, shelf, work);
}

/* Marks the works that meet the conditions. */
static spz_status mark_asked(Store *store, const spz_conditions *conditions, Giving *giving)
{
    Where where = {0};
    Buffer sql = {0};
    where_movements(&where, conditions);
    bool any = where.sql.length > 0;
    buffer_printf(&sql, "SELECT DISTINCT m.work FROM movement m JOIN work w ON w.id = m.work WHERE 1%s", any ? where.sql.text : "");
    spz_status status = buffer_failed(&sql) || buffer_failed(&where.sql) ? SPZ_NO_MEMORY : SPZ_OK;
    for (size_t i = 0; i < giving->works.count; i++)
        giving->works.at[i].asked = !any;
    if (any && status == SPZ_OK) {
        Query query = query_once(store, sql.text);
        where_bind(&where, &query);
        while (query_row(&query)) {
            size_t at = giving_find(giving, query_get_integer(&query, 0));
            if (at != SIZE_MAX)
                giving->works.at[at].asked = true;
        }
        status = query_end(&query);
    }
    buffer_free(&sql);
    where_free(&where);
    return status;
}

/* The arrangement in which the work loses least, with the other where that counts; of equals the first by name. */
static bool best_way(const Giving *giving, const Wish *wish, size_t work, Choice *out)
{
    double best = INFINITY;
    for (size_t way = 0; way < giving->ways.count && way < 32; way++) {
        double lost = giving_lost(giving, work, way), partner = wish->losses_count ? giving_lost(giving, wish->with, way) : 0;
        if (!(wish->ways & (uint32_t)1 << way) || !(lost + partner < best))
            continue;
        best = lost + partner;
        *out = (Choice){.work = giving->works.at[work].work, .seating = giving->ways.at[way], .lost = lost, .partner = partner, .rank = llround(best * 1e6)};
    }
    return isfinite(best);
}

static int by_rank(const void *left, const void *right)
{
    const Choice *a = left, *b = right;
    if (a->rank != b->rank)
        return a->rank < b->rank ? -1 : 1;
    int order = a->composer ? strcmp(a->composer, b->composer) : 0;
    if (order == 0 && a->name)
        order = names_compare(a->name, b->name);
    return order ? order : a->work < b->work ? -1 : a->work > b->work;
}

/* Only those that can be among the best are put in order by name. */
static spz_status name_choices(Store *store, Choices *choices, size_t most, Arena *arena)
{
    bool whole = true;
    if (choices->count > 1)
        qsort(choices->at, choices->count, sizeof *choices->at, by_rank);
    while (choices->count > most && most > 0 && choices->at[choices->count - 1].rank > choices->at[most - 1].rank)
        choices->count--;
    for (size_t i = 0; whole && i < choices->count; i++) {
        Query query = query_begin(store, "SELECT composer, name FROM work WHERE id = ?");
        query_integer(&query, choices->at[i].work);
        bool there = query_row(&query);
        choices->at[i].composer = arena_string(arena, there ? query_get_text(&query, 0) : "");
        choices->at[i].name = arena_string(arena, there ? query_get_text(&query, 1) : "");
        whole = choices->at[i].composer && choices->at[i].name;
        query_end(&query);
    }
    if (whole && choices->count > 1)
        qsort(choices->at, choices->count, sizeof *choices->at, by_rank);
    return whole ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status list_choices(const Giving *giving, const Wish *wish, Choices *out)
{
    bool room = true;
    for (size_t i = 0; room && i < giving->works.count; i++) {
        Choice choice;
        const Giver *giver = &giving->works.at[i];
        if (!giver->asked || giver->work == wish->without || (wish->losses_count && giver->orchestras != giving->works.at[wish->with].orchestras))
            continue;
        if (best_way(giving, wish, i, &choice))
            room = array_push(out, choice);
    }
    return room ? SPZ_OK : SPZ_NO_MEMORY;
}

/* The works that answer best, on the shelf. */
static spz_status choose(Store *store, Giving *giving, const Wish *wish, spz_shelf *shelf)
{
    Choices choices = {NULL, 0, 0};
    spz_status status = mark_asked(store, &wish->conditions, giving);
    if (status == SPZ_OK)
        status = list_choices(giving, wish, &choices);
    size_t answered = choices.count;
    if (status == SPZ_OK)
        status = name_choices(store, &choices, wish->most, &giving->arena);
    for (size_t i = 0; status == SPZ_OK && i < choices.count && i < wish->most; i++) {
        choices.at[i].seating = arena_string(&shelf->arena, choices.at[i].seating);
        status = choices.at[i].seating ? add_choice(store, &choices.at[i], shelf) : SPZ_NO_MEMORY;
    }
    shelf->total = answered;
    array_free(&choices);
    return status;
}

/* The arrangement in which the work loses least; "" where none is known. */
static const char *seating_of(const Giving *giving, size_t work)
{
    const Wish any = {.ways = ANY_WAY};
    Choice choice;
    return best_way(giving, &any, work, &choice) ? choice.seating : "";
}

spz_status spz_library_fits(spz_library *library, const spz_evening *evening, const spz_conditions *conditions, size_t most, spz_shelf **out)
{
    Store *store = library->store;
    Giving giving;
    spz_shelf *shelf;
    *out = NULL;
    spz_status status = shelf_begin(library, SPZ_SHELF_FITS, evening->seating ? evening->seating : "", &shelf);
    if (status != SPZ_OK)
        return status;
    status = giving_read(store, &giving);
    long long with = evening->with ? the_work(store, evening->with) : 0;
    size_t place = with && status == SPZ_OK ? giving_find(&giving, with) : SIZE_MAX;
    if (place != SIZE_MAX && !evening->seating)
        shelf->question = arena_string(&shelf->arena, seating_of(&giving, place));
    if (!shelf->question)
        status = SPZ_NO_MEMORY;
    else if (status == SPZ_OK && (place != SIZE_MAX || !evening->with))
        status = choose(store, &giving, &(Wish){.ways = seating_meant(giving.ways.at, giving.ways.count, shelf->question), .without = with, .conditions = *conditions, .most = most}, shelf);
    giving_free(&giving);
    return shelf_finish(library, status, shelf, out);
}

spz_status spz_library_partners(spz_library *library, const char *name, const spz_conditions *conditions, size_t most, spz_shelf **out)
{
    Store *store = library->store;
    Giving giving;
    spz_shelf *shelf;
    *out = NULL;
    spz_status status = shelf_begin(library, SPZ_SHELF_PARTNERS, name, &shelf);
    if (status != SPZ_OK)
        return status;
    status = giving_read(store, &giving);
    long long work = the_work(store, name);
    size_t place = work && status == SPZ_OK ? giving_find(&giving, work) : SIZE_MAX;
    if (place != SIZE_MAX)
        status = choose(store, &giving, &(Wish){.ways = ANY_WAY, .with = place, .without = work, .losses_count = true, .conditions = *conditions, .most = most}, shelf);
    giving_free(&giving);
    return shelf_finish(library, status, shelf, out);
}

spz_status spz_library_seatings_meant(spz_library *library, const char *words, char *out, size_t size)
{
    Giving giving;
    size_t used = 0;
    *out = '\0';
    spz_status status = store_begin(library->store, false);
    if (status != SPZ_OK)
        return library_end(library, status);
    status = giving_read(library->store, &giving);
    uint32_t meant = seating_meant(giving.ways.at, giving.ways.count, words);
    for (size_t i = 0; i < giving.ways.count && used < size; i++)
        if (meant & (uint32_t)1 << i)
            used += (size_t)snprintf(out + used, size - used, "%s%s", used ? "|" : "", giving.ways.at[i]);
    if (status == SPZ_OK && !meant && giving.ways.count) /* of an empty library nobody can say */
        status = seating_refuse(giving.ways.at, giving.ways.count, words, &(spz_message){.severity = SPZ_ERROR}, &library->sink);
    giving_free(&giving);
    status = library_end(library, store_end(library->store, status));
    return status == SPZ_OK && used >= size ? SPZ_OVER_LIMIT : status;
}

/* The work or the movement of that name: a work's whole name, a movement's title, parts of them, a title without the movement's number. */
typedef struct Named {
    long long work, movement; /* 0: none; of a work all of its movements */
} Named;

static size_t find_named(Store *store, const char *name, Named *out)
{
    static const char *const titles[] = {"SELECT id, work FROM movement WHERE lower(title) = lower(?)",
                                         "SELECT m.id, m.work FROM movement m JOIN work w ON w.id = m.work WHERE instr(lower(w.composer || ': ' || m.title), lower(?)) > 0",
                                         "SELECT id, work FROM movement WHERE instr(lower(title), lower(?)) = 1 AND instr(lower(title), lower(?)) > 0"};
    const char *colon = strstr(name, ": ");
    const size_t ways = colon ? 3 : 2; /* the last with what stands before the colon, and what stands behind it */
    char before[512];
    long long works[1];
    snprintf(before, sizeof before, "%.*s", colon ? (int)(colon - name) : 0, name);
    size_t found = find_works(store, name, works, 1);
    *out = (Named){found == 1 ? works[0] : 0, 0};
    for (size_t i = 0; i < ways && found == 0 && *name; i++) {
        Query query = query_begin(store, titles[i]);
        query_text(&query, i < 2 ? name : before);
        if (i == 2)
            query_text(&query, colon + 2);
        for (; query_row(&query); found++)
            *out = (Named){query_get_integer(&query, 1), query_get_integer(&query, 0)};
        query_end(&query);
    }
    return found;
}

/* The strongest passage there at that bar: what it has that others may have too. */
static bool describe(Store *store, Named named, const char *bar, spz_conditions *like, Buffer *words)
{
    Query query = query_begin(store, "SELECT p.kind, p.first_side, ifnull(p.second_side, ''), p.semitones, p.steps FROM passage p JOIN movement m ON m.id = p.movement"
                                     " WHERE m.work = ?1 AND (p.first_bar = ?2 OR (CAST(p.first_bar AS INTEGER) <= CAST(?2 AS INTEGER)"
                                     " AND CAST(p.last_bar AS INTEGER) >= CAST(?2 AS INTEGER))) AND ?3 IN (0, m.id) ORDER BY p.strength DESC LIMIT 1");
    spz_kind kind = SPZ_EXCHANGE;
    query_integer(&query, named.work);
    query_text(&query, bar);
    query_integer(&query, named.movement);
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

static spz_status find_alike(Store *store, const spz_conditions *like, long long work, size_t first, size_t passages, spz_shelf *shelf)
{
    Where where = {.values = {{.number = (double)work}}, .count = 1};
    buffer_puts(&where.sql, " AND m.work <> ? AND m.id IN (SELECT p.movement FROM passage p WHERE 1");
    where_passages(&where, like, true);
    buffer_puts(&where.sql, ")");
    spz_status status = find_movements(store, &where, first ? first : SIZE_MAX, shelf);
    if (status == SPZ_OK)
        status = find_passages(store, like, passages, shelf);
    where_free(&where);
    return status;
}

spz_status spz_library_alike(spz_library *library, const char *name, const char *bar, size_t first, size_t passages, spz_shelf **out)
{
    Store *store = library->store;
    spz_conditions like;
    Named named;
    Buffer words = {0};
    spz_shelf *shelf;
    *out = NULL;
    spz_status status = shelf_begin(library, SPZ_SHELF_ALIKE, "", &shelf);
    if (status != SPZ_OK)
        return status;
    size_t found = find_named(store, name, &named);
    if (found != 1)
        status = found ? SPZ_BAD_ARGUMENT : SPZ_EMPTY;
    else if (describe(store, named, bar, &like, &words)) {
        shelf->question = buffer_failed(&words) ? NULL : arena_string(&shelf->arena, words.text);
        status = shelf->question ? find_alike(store, &like, named.work, first, passages, shelf) : SPZ_NO_MEMORY;
    }
    buffer_free(&words);
    return shelf_finish(library, status, shelf, out);
}
