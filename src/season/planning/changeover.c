#include "season/planning/changeover.h"
#include <math.h>
#include <string.h>

enum { DESKS_MOST = 200 };

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

/* Place of the section from house left; -1 when it is not in the order. */
static int place_in_order(const spz_plan *plan, spz_section section, int *count)
{
    int place = -1;
    const char *at = spz_plan_order_text(plan);
    *count = 0;
    while (*at) {
        char name[32];
        size_t length = strcspn(at, ","), kept = length < sizeof name - 1 ? length : sizeof name - 1;
        memcpy(name, at, kept);
        name[kept] = '\0';
        if (spz_section_from_name(name) == section)
            place = *count;
        ++*count;
        at += length;
        at += strspn(at, ", ");
    }
    return place;
}

static const char *back_words(const spz_plan *plan, spz_section section)
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
    return x < -side ? "back left" : x > side ? "back right" : "back middle";
}

/* Where the section sits, as the audience sees it. */
static const char *place_words(const spz_plan *plan, spz_section section)
{
    static const char *const words[6][6] = {
        {"middle"},
        {"left", "right"},
        {"left", "middle", "right"},
        {"outer left", "inner left", "inner right", "outer right"},
        {"outer left", "inner left", "middle", "inner right", "outer right"},
        {"outer left", "inner left", "middle left", "middle right", "inner right", "outer right"},
    };
    int count, place = place_in_order(plan, section, &count);
    return place < 0 || count > 6 ? back_words(plan, section) : words[count - 1][place];
}

size_t changeover_moves(const spz_plan *from, const spz_plan *to, spz_section_move *moves)
{
    size_t count = 0;
    for (int section = SPZ_VN1; section <= SPZ_DB; section++) {
        int players = spz_plan_players(to, (spz_section)section);
        if (players == 0)
            continue;
        const char *before = place_words(from, (spz_section)section), *after = place_words(to, (spz_section)section);
        if (strcmp(before, after) != 0)
            moves[count++] = (spz_section_move){(spz_section)section, players, before, after};
    }
    return count;
}
