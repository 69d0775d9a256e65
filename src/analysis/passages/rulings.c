#include "analysis/passages/rulings.h"
#include <stdint.h>
#include <string.h>

/* What a passage counts for that the conductor weighs otherwise than the analysis: the middle of what is called so. */
static const double weighted_as[SPZ_WEIGHT_COUNT] = {[SPZ_MARGINAL] = 0.4, [SPZ_CLEAR] = 0.65, [SPZ_STRIKING] = 0.9};

const char *spz_ruling_name(spz_ruling_kind kind)
{
    static const char *const names[] = {"", "vetoed", "weighted"};
    return (unsigned)kind < sizeof names / sizeof *names ? names[kind] : "";
}

double spz_passage_standing(const spz_passage *passage)
{
    return passage->ruling.kind && passage->ruling.heard > passage->strength ? passage->ruling.heard : passage->strength;
}

/* Indices of the bars that a line names; where a number stands on several bars, all of them are meant. False: the movement has no such. */
static bool bars_of(const Movement *movement, const Ruling *ruling, size_t *first, size_t *last)
{
    *first = *last = SIZE_MAX;
    for (size_t i = 0; i < movement->bar_count; i++) {
        if (*first == SIZE_MAX && !strcmp(movement->bars[i].number, ruling->from))
            *first = i;
        if (!strcmp(movement->bars[i].number, ruling->to))
            *last = i;
    }
    return *first != SIZE_MAX && *last != SIZE_MAX && *first <= *last;
}

static bool body_fits(const Findings *findings, const RuledBody *body, const spz_side *side)
{
    spz_group named = spz_side_named(findings->map, side);
    return body->section == named.section && (!body->number || body->number == named.number) &&
           (!body->orchestra || body->orchestra == named.orchestra) && (!body->solo || named.solo);
}

static bool players_fit(const Findings *findings, const Ruling *ruling, const spz_side sides[2])
{
    const RuledBody *one = &ruling->bodies[0], *two = &ruling->bodies[1];
    if (ruling->body_count == 0)
        return true;
    if (ruling->body_count == 1)
        return body_fits(findings, one, &sides[0]) || body_fits(findings, one, &sides[1]);
    return (body_fits(findings, one, &sides[0]) && body_fits(findings, two, &sides[1])) ||
           (body_fits(findings, two, &sides[0]) && body_fits(findings, one, &sides[1]));
}

size_t ruling_covers(const Findings *findings, const Ruling *ruling, size_t first, size_t last, const spz_side sides[2])
{
    size_t from, to;
    if (!bars_of(findings->map->movement, ruling, &from, &to) || !players_fit(findings, ruling, sides))
        return 0;
    from = first > from ? first : from;
    to = last < to ? last : to;
    return from <= to && 2 * (to - from + 1) >= last - first + 1 ? to - from + 1 : 0;
}

/* Each of the two is one of the groups: not both the same. */
static bool both_fit(const Findings *findings, const Ruling *ruling, const size_t groups[2])
{
    spz_side sides[2];
    for (int i = 0; i < 2; i++) {
        const spz_group *about = &findings->map->groups[groups[i]].about;
        sides[i] = (spz_side){.section = about->section, .group = groups[i], .orchestra = about->orchestra};
    }
    return players_fit(findings, ruling, sides);
}

bool ruling_bars(const Findings *findings, const Ruling *ruling, size_t *first, size_t *last)
{
    return bars_of(findings->map->movement, ruling, first, last);
}

bool ruling_groups(const Findings *findings, const Ruling *ruling, size_t groups[2])
{
    const SectionMap *map = findings->map;
    size_t found = 0;
    for (size_t i = 0; i < map->group_count && ruling->body_count == 2 && found < 2; i++) {
        spz_side side = {.section = map->groups[i].about.section, .group = i, .orchestra = map->groups[i].about.orchestra};
        bool taken = false;
        for (int body = 0; body < 2 && !taken; body++)
            if (body_fits(findings, &ruling->bodies[body], &side)) {
                groups[found++] = i;
                taken = true;
            }
    }
    return found == 2 && both_fit(findings, ruling, groups);
}

/* How many passages the line is about; they get it where `apply` is set. */
static size_t about(Findings *findings, const Ruling *ruling, bool exactly, void (*apply)(spz_passage *, const Ruling *))
{
    size_t first, last, count = 0;
    if (!bars_of(findings->map->movement, ruling, &first, &last))
        return 0;
    for (size_t i = 0; i < findings->passages.count; i++) {
        spz_passage *p = &findings->passages.at[i];
        bool within = ruling_covers(findings, ruling, p->first, p->last, p->sides) && (!exactly || (p->first == first && p->last == last));
        if (!within || !(ruling->any_kind || ruling->kind == p->kind))
            continue;
        if (apply)
            apply(p, ruling);
        count++;
    }
    return count;
}

static void rule(spz_passage *p, const Ruling *ruling)
{
    double heard = p->ruling.kind ? p->ruling.heard : p->strength;
    p->ruling = (spz_ruling){.kind = ruling->ruling, .heard = heard, .reason = ruling->reason};
    if (ruling->ruling == SPZ_VETOED)
        p->strength = 0;
    else
        p->strength = spz_weight_of(heard) == ruling->weight ? heard : weighted_as[ruling->weight];
}

bool ruling_meets(const Findings *findings, const Ruling *ruling)
{
    return about((Findings *)findings, ruling, false, NULL) > 0; /* nothing is applied: the findings stay as they are */
}

static bool own_reasons(Findings *findings)
{
    bool good = true;
    for (size_t i = 0; i < findings->passages.count && good; i++) {
        spz_ruling *ruling = &findings->passages.at[i].ruling;
        if (ruling->kind)
            good = (ruling->reason = arena_string(&findings->arena, ruling->reason)) != NULL;
    }
    return good;
}

spz_status rulings_apply(Findings *findings, const spz_settings *settings, const spz_sink *sink)
{
    Rulings rulings;
    spz_status status = rulings_read(findings->map->movement, settings, sink, &rulings);
    for (size_t i = 0; i < rulings.count && !status; i++)
        if (!about(findings, &rulings.at[i], true, rule))
            about(findings, &rulings.at[i], false, rule);
    if (!status && rulings.count && !own_reasons(findings))
        status = SPZ_NO_MEMORY;
    array_free(&rulings);
    return status;
}
