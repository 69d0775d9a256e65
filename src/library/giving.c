#include "library/giving.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

void giving_free(Giving *giving)
{
    array_free(&giving->works);
    array_free(&giving->ways);
    memory_free(giving->lost);
    memory_free(giving->seats);
    arena_release(&giving->arena);
}

size_t giving_find(const Giving *giving, long long work)
{
    size_t low = 0, high = giving->works.count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (giving->works.at[middle].work < work)
            low = middle + 1;
        else
            high = middle;
    }
    return low < giving->works.count && giving->works.at[low].work == work ? low : SIZE_MAX;
}

double giving_lost(const Giving *giving, size_t work, size_t way)
{
    size_t place = work * giving->ways.count + way;
    return giving->seats[place] == giving->works.at[work].judged ? giving->lost[place] : INFINITY;
}

static spz_status read_works(Store *store, Giving *out)
{
    bool room = true;
    Query query = query_begin(store, "SELECT work, sum(outcome = 'judged'), max(orchestras) FROM movement GROUP BY work ORDER BY work");
    while (room && query_row(&query)) {
        Giver giver = {query_get_integer(&query, 0), (size_t)query_get_integer(&query, 1), (int)query_get_integer(&query, 2), true};
        room = array_push(&out->works, giver);
    }
    spz_status status = query_end(&query);
    return room ? status : SPZ_NO_MEMORY;
}

static spz_status read_ways(Store *store, Giving *out)
{
    bool room = true;
    Query query = query_begin(store, "SELECT DISTINCT arrangement FROM seat ORDER BY arrangement");
    while (room && query_row(&query)) {
        const char *way = arena_string(&out->arena, query_get_text(&query, 0));
        room = way && array_push(&out->ways, way);
    }
    spz_status status = query_end(&query);
    size_t places = out->works.count * out->ways.count + 1;
    out->lost = memory_zeroed(places, sizeof *out->lost);
    out->seats = memory_zeroed(places, sizeof *out->seats);
    return room && out->lost && out->seats ? status : SPZ_NO_MEMORY;
}

static size_t way_of(const Giving *giving, const char *name)
{
    size_t way = 0;
    while (way < giving->ways.count && strcmp(giving->ways.at[way], name) != 0)
        way++;
    return way;
}

static spz_status add_up(Store *store, Giving *out)
{
    size_t work = SIZE_MAX;
    Query query = query_begin(store, "SELECT m.work, s.arrangement, s.lost FROM seat s CROSS JOIN movement m ON m.id = s.movement");
    while (query_row(&query)) {
        long long number = query_get_integer(&query, 0);
        size_t way = way_of(out, query_get_text(&query, 1));
        if (work == SIZE_MAX || out->works.at[work].work != number) /* seats of a work mostly stand together */
            work = giving_find(out, number);
        if (work == SIZE_MAX || way == out->ways.count)
            continue;
        out->lost[work * out->ways.count + way] += query_get_number(&query, 2);
        out->seats[work * out->ways.count + way]++;
    }
    return query_end(&query);
}

spz_status giving_read(Store *store, Giving *out)
{
    *out = (Giving){.lost = NULL};
    arena_init(&out->arena);
    spz_status status = read_works(store, out);
    if (status == SPZ_OK)
        status = read_ways(store, out);
    return status == SPZ_OK ? add_up(store, out) : status;
}
