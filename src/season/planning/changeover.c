#include "season/planning/changeover.h"
#include <math.h>
#include <string.h>

void change_rules_read(const spz_settings *s, ChangeRules *rules)
{
    static const char *const allowed[SPZ_GAP_COUNT] = {"concert.change before", "concert.change at interval", "concert.change between works",
                                                       "concert.change between movements"};
    static const char *const prices[SPZ_GAP_COUNT] = {"concert.price before", "concert.price at interval", "concert.price between works",
                                                      "concert.price between movements"};
    *rules = (ChangeRules){.minute = spz_settings_number(s, "concert.price of a minute"), .crew = spz_settings_number(s, "concert.crew"),
                           .chair = spz_settings_number(s, "concert.chair"), .stand = spz_settings_number(s, "concert.stand"),
                           .settling = spz_settings_number(s, "concert.settling"), .near = spz_settings_number(s, "concert.near")};
    for (int gap = 0; gap < SPZ_GAP_COUNT; gap++) {
        rules->allowed[gap] = spz_settings_flag(s, allowed[gap]);
        rules->price[gap] = spz_settings_number(s, prices[gap]);
        rules->audience_waits[gap] = gap == SPZ_BETWEEN_WORKS || gap == SPZ_BETWEEN_MOVEMENTS;
        rules->longest[gap] = rules->audience_waits[gap] ? spz_settings_number(s, "concert.longest wait") : INFINITY;
    }
    rules->longest[SPZ_AT_INTERVAL] = spz_settings_number(s, "concert.interval");
}

/* Who keeps which place. */
typedef struct Matching {
    const spz_plan *from, *to;
    double near;
    int kept_by[DESKS_MOST]; /* for each old desk the new one that takes its place; -1 */
    bool tried[DESKS_MOST];
} Matching;

static bool are_near(const Matching *matching, size_t old, size_t new)
{
    const spz_stage_desk *a = spz_plan_desk(matching->from, old), *b = spz_plan_desk(matching->to, new);
    return (a->section == SPZ_DB) == (b->section == SPZ_DB) && hypot(a->x - b->x, a->y - b->y) <= matching->near;
}

static size_t desk_count(const spz_plan *plan)
{
    size_t count = spz_plan_desks(plan);
    return count < DESKS_MOST ? count : DESKS_MOST;
}

/* Finds a place for the new desk, moving others on to another near place where that helps. Depth: at most the number of desks. */
static bool find_place(Matching *matching, size_t new)
{
    for (size_t old = 0; old < desk_count(matching->from); old++) {
        if (matching->tried[old] || !are_near(matching, old, new))
            continue;
        matching->tried[old] = true;
        if (matching->kept_by[old] < 0 || find_place(matching, (size_t)matching->kept_by[old])) {
            matching->kept_by[old] = (int)new;
            return true;
        }
    }
    return false;
}

static void match(Matching *matching)
{
    memset(matching->kept_by, -1, sizeof matching->kept_by);
    for (size_t new = 0; new < desk_count(matching->to); new++) {
        memset(matching->tried, 0, sizeof matching->tried);
        find_place(matching, new);
    }
}

void changeover_match(const spz_plan *from, const spz_plan *to, double near, int *kept_by)
{
    Matching matching = {.from = from, .to = to, .near = near};
    match(&matching);
    memcpy(kept_by, matching.kept_by, sizeof matching.kept_by);
}

static int chairs_of(const spz_plan *plan)
{
    int chairs = 0;
    for (size_t i = 0; i < desk_count(plan); i++)
        chairs += spz_plan_desk(plan, i)->players;
    return chairs;
}

Carried changeover_carried(const spz_plan *from, const spz_plan *to, const ChangeRules *rules)
{
    Matching matching = {.from = from, .to = to, .near = rules->near};
    Carried carried = {chairs_of(to), (int)desk_count(to), 0};
    match(&matching);
    for (size_t old = 0; old < desk_count(from); old++) {
        if (matching.kept_by[old] < 0)
            continue;
        int before = spz_plan_desk(from, old)->players, after = spz_plan_desk(to, (size_t)matching.kept_by[old])->players;
        carried.chairs -= before < after ? before : after;
        carried.stands--;
    }
    double seconds = carried.chairs * rules->chair + carried.stands * rules->stand;
    carried.minutes = rules->settling + seconds / rules->crew / 60;
    return carried;
}

Hundredths changeover_price(const ChangeRules *rules, spz_gap gap, const Carried *carried)
{
    if (!rules->allowed[gap] || carried->minutes > rules->longest[gap])
        return CONCERT_BANNED;
    double price = rules->price[gap] + (rules->audience_waits[gap] ? rules->minute * carried->minutes : 0);
    return llround(price * 100);
}

void changeover_prices(const Hall *hall, const ChangeRules *rules, ConcertTask *task)
{
    for (int from = 0; from < hall->seatings; from++)
        for (int to = 0; to < hall->seatings; to++) {
            Carried carried = {0, 0, 0};
            if (from != to)
                carried = changeover_carried(hall->plans[from], hall->plans[to], rules);
            for (int gap = 0; gap < SPZ_GAP_COUNT; gap++)
                task->price[gap][from][to] = from == to ? 0 : changeover_price(rules, (spz_gap)gap, &carried);
        }
}

static spz_stage_place place_behind(const spz_plan *plan, spz_section section)
{
    double x = 0;
    int players = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        if (desk->section != section)
            continue;
        x += desk->x * desk->players;
        players += desk->players;
    }
    double side = spz_plan_used_width(plan) / 10; /* the middle fifth is the middle */
    x = players ? x / players : 0;
    return x < -side ? SPZ_PLACE_BACK_LEFT : x > side ? SPZ_PLACE_BACK_RIGHT : SPZ_PLACE_BACK_MIDDLE;
}

static spz_stage_place place_of(const spz_plan *plan, spz_section section)
{
    static const spz_stage_place places[SPZ_ORDER_LIMIT][SPZ_ORDER_LIMIT] = { /* by how many sections stand in the order */
        {SPZ_PLACE_MIDDLE},
        {SPZ_PLACE_LEFT, SPZ_PLACE_RIGHT},
        {SPZ_PLACE_LEFT, SPZ_PLACE_MIDDLE, SPZ_PLACE_RIGHT},
        {SPZ_PLACE_OUTER_LEFT, SPZ_PLACE_INNER_LEFT, SPZ_PLACE_INNER_RIGHT, SPZ_PLACE_OUTER_RIGHT},
        {SPZ_PLACE_OUTER_LEFT, SPZ_PLACE_INNER_LEFT, SPZ_PLACE_MIDDLE, SPZ_PLACE_INNER_RIGHT, SPZ_PLACE_OUTER_RIGHT},
        {SPZ_PLACE_OUTER_LEFT, SPZ_PLACE_INNER_LEFT, SPZ_PLACE_MIDDLE_LEFT, SPZ_PLACE_MIDDLE_RIGHT, SPZ_PLACE_INNER_RIGHT, SPZ_PLACE_OUTER_RIGHT},
    };
    spz_order order = spz_plan_order(plan);
    for (int i = 0; i < order.count; i++)
        if (order.sections[i] == section)
            return places[order.count - 1][i];
    return place_behind(plan, section);
}

size_t changeover_moves(const spz_plan *from, const spz_plan *to, spz_section_move *moves)
{
    size_t count = 0;
    for (int section = SPZ_VN1; section <= SPZ_DB; section++) {
        int players = spz_plan_players(to, (spz_section)section);
        if (players == 0)
            continue;
        spz_stage_place before = place_of(from, (spz_section)section), after = place_of(to, (spz_section)section);
        if (before != after)
            moves[count++] = (spz_section_move){(spz_section)section, players, before, after};
    }
    return count;
}
