/* Desk by desk: who stays, who moves from where, what comes from the store and what goes there. The places of desks that leave are given to the
 * nearest new places, nearest pair first; basses' stools and stands go to basses. */
#include "season/planning/changeover.h"
#include <math.h>

typedef struct Reconciling {
    const spz_plan *from, *to;
    DeskMoves *out;
    int kept_by[DESKS_MOST]; /* for each old desk the new one at its place, or to whose place it goes; -1 */
    bool moves[DESKS_MOST];  /* the old desk is carried there */
    bool filled[DESKS_MOST]; /* the new place has got its desk */
} Reconciling;

const char *spz_desk_fate_name(spz_desk_fate fate)
{
    static const char *const names[SPZ_DESK_FATE_COUNT] = {"stays", "moved", "carried on", "struck"};
    return (unsigned)fate < SPZ_DESK_FATE_COUNT ? names[fate] : "";
}

static size_t count_of(const spz_plan *plan)
{
    size_t count = spz_plan_desks(plan);
    return count < DESKS_MOST ? count : DESKS_MOST;
}

/* The nearest old and new places that have no partner yet; false where there are none. */
static bool nearest_pair(const Reconciling *r, size_t *old, size_t *new)
{
    double least = INFINITY;
    for (size_t i = 0; i < count_of(r->from); i++)
        for (size_t j = 0; j < count_of(r->to) && r->kept_by[i] < 0; j++) {
            const spz_stage_desk *a = spz_plan_desk(r->from, i), *b = spz_plan_desk(r->to, j);
            double way = hypot(a->x - b->x, a->y - b->y);
            if (!r->filled[j] && (a->section == SPZ_DB) == (b->section == SPZ_DB) && way < least) {
                least = way;
                *old = i;
                *new = j;
            }
        }
    return isfinite(least);
}

static void pair_all(Reconciling *r, double near)
{
    size_t old = 0, new = 0;
    changeover_match(r->from, r->to, near, r->kept_by);
    for (size_t i = 0; i < count_of(r->from); i++)
        if (r->kept_by[i] >= 0)
            r->filled[r->kept_by[i]] = true;
    while (nearest_pair(r, &old, &new)) {
        r->kept_by[old] = (int)new;
        r->moves[old] = r->filled[new] = true;
    }
}

static void strike(DeskMoves *out, const spz_stage_desk *desk, int chairs, int stands)
{
    out->struck[out->struck_count++] = (spz_desk_move){.section = desk->section, .orchestra = desk->orchestra, .number = desk->number,
                                                       .players = desk->players, .fate = SPZ_DESK_STRUCK, .from_x = desk->x, .from_y = desk->y,
                                                       .chairs = chairs, .stands = stands};
    out->struck_chairs += chairs;
    out->struck_stands += stands;
}

static void come_from(DeskMoves *out, spz_desk_move *move, const spz_stage_desk *old, bool moves)
{
    int short_of = move->players > old->players ? move->players - old->players : 0;
    move->fate = moves ? SPZ_DESK_MOVED : SPZ_DESK_STAYS;
    move->stays = !moves;
    move->from_section = old->section;
    move->from_orchestra = old->orchestra;
    move->from_number = old->number;
    move->from_x = old->x;
    move->from_y = old->y;
    move->chairs = moves ? move->players : short_of;
    move->stands = moves;
    out->store_chairs += short_of;
    if (old->players > move->players)
        strike(out, old, old->players - move->players, 0);
}

void changeover_desks(const spz_plan *from, const spz_plan *to, const ChangeRules *rules, DeskMoves *out)
{
    Reconciling r = {.from = from, .to = to, .out = out};
    pair_all(&r, rules->near);
    for (size_t i = 0; i < spz_plan_desks(to); i++) {
        const spz_stage_desk *desk = spz_plan_desk(to, i);
        bool on = i >= DESKS_MOST || !r.filled[i];
        out->desks[i] = (spz_desk_move){.section = desk->section, .orchestra = desk->orchestra, .number = desk->number, .players = desk->players,
                                        .fate = SPZ_DESK_CARRIED_ON, .x = desk->x, .y = desk->y, .chairs = on ? desk->players : 0, .stands = on};
        out->store_chairs += on ? desk->players : 0;
        out->store_stands += on;
    }
    for (size_t old = 0; old < count_of(from); old++) {
        const spz_stage_desk *desk = spz_plan_desk(from, old);
        if (r.kept_by[old] < 0)
            strike(out, desk, desk->players, 1);
        else
            come_from(out, &out->desks[r.kept_by[old]], desk, r.moves[old]);
    }
}
