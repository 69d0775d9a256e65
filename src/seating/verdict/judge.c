/* One movement: evidence, points in each arrangement, ranking, reasons. */
#include "seating/verdict/given_up.h"
#include "seating/verdict/losses.h"
#include "seating/verdict/reasons.h"
#include <math.h>
#include <stdint.h>
#include <string.h>

/* Whether there is anything to judge. */
static spz_outcome outcome_of(const SectionMap *map)
{
    bool strings = false, one_orchestra = false;
    for (size_t i = 0; i < map->group_count; i++) {
        const spz_group *group = &map->groups[i].about;
        strings = strings || group->section != SPZ_NO_SECTION;
        for (size_t j = 0; j < map->group_count; j++)
            one_orchestra = one_orchestra || (group->section == SPZ_VN1 && map->groups[j].about.section == SPZ_VN2 &&
                                              map->groups[j].about.orchestra == group->orchestra);
    }
    if (!strings)
        return SPZ_WITHOUT_STRINGS;
    return one_orchestra ? SPZ_JUDGED : SPZ_WITHOUT_VIOLINS;
}

static spz_status copy_names(Verdict *verdict, const Comparison *comparison)
{
    for (size_t i = 0; i < comparison->list.count; i++) {
        const Arrangement *a = &comparison->list.at[i];
        spz_ranked *ranked = &verdict->by_arrangement[i];
        ranked->name = arena_string(&verdict->arena, a->name);
        ranked->order = a->order;
        if (!ranked->name)
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

static bool counts_anywhere(const Ranking *ranking, spz_term_kind term)
{
    for (size_t i = 0; i < ranking->count; i++)
        if (fabs(ranking->points[i].of[term]) > 1e-9)
            return true;
    return false;
}

static spz_status tell_terms(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement)
{
    spz_term *terms = arena_take(&verdict->arena, SPZ_TERM_COUNT, sizeof *terms);
    spz_ranked *ranked = &verdict->by_arrangement[arrangement];
    if (!terms)
        return SPZ_NO_MEMORY;
    for (spz_term_kind kind = 0; kind < SPZ_TERM_COUNT; kind++) {
        if (!counts_anywhere(&verdict->ranking, kind))
            continue;
        terms[ranked->term_count] = terms_tell(comparison, evidence, arrangement, kind);
        terms[ranked->term_count++].points = verdict->ranking.points[arrangement].of[kind];
    }
    ranked->terms = terms;
    return SPZ_OK;
}

static void measure(Verdict *verdict, const Movement *movement)
{
    const spz_ranked *best = &verdict->by_arrangement[verdict->ranking.order[0]];
    for (size_t i = 0; i < verdict->ranking.count; i++)
        given_up_measure(movement, best, &verdict->by_arrangement[i]);
}

static spz_status tell_ranked(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    spz_status status = copy_names(verdict, comparison);
    for (size_t i = 0; i < comparison->list.count && status == SPZ_OK; i++) {
        spz_ranked *ranked = &verdict->by_arrangement[i];
        status = tell_terms(verdict, comparison, evidence, i);
        if (status == SPZ_OK)
            status = losses_find(comparison, evidence, i, &verdict->arena, &ranked->losses, &ranked->loss_count);
    }
    if (status == SPZ_OK)
        measure(verdict, evidence->movement);
    return status;
}

static void weigh_all(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    Ranking *ranking = &verdict->ranking;
    ranking->count = comparison->list.count;
    for (size_t i = 0; i < ranking->count; i++) {
        terms_weigh(comparison, evidence, i, &ranking->points[i]);
        ranking->under[YEAR_EARLIER][i] = terms_era(comparison, i, SPZ_EARLIER_YEAR);
        ranking->under[YEAR_LATER][i] = terms_era(comparison, i, SPZ_LATER_YEAR);
        ranking->opposed[i] = comparison->list.at[i].opposed;
        ranking->allowed[i] = comparison->allowed[i];
    }
    ranking_settle(ranking, comparison->usual);
    verdict_fill_numbers(verdict);
}

static spz_status judge(Verdict *verdict, const Findings *findings, const spz_settings *settings, int year, const spz_sink *sink)
{
    Arena arena; /* of the comparison */
    Comparison comparison;
    SeatingEvidence evidence = {0};
    Rules rules;
    rules_read(settings, &rules);
    verdict->singles = findings->map->chamber_music;
    if (verdict->singles)
        rules_seat_singles(&rules);
    arena_init(&arena);
    spz_status status = evidence_gather(findings, &rules, year, &evidence);
    if (status == SPZ_OK)
        status = comparison_set(settings, evidence.has_thirds, evidence.two_orchestras, verdict->singles, sink, &arena, &comparison);
    if (status == SPZ_OK) {
        verdict->orchestras = evidence.two_orchestras ? 2 : 1;
        verdict->thirds = evidence.has_thirds;
        weigh_all(verdict, &comparison, &evidence);
        status = tell_ranked(verdict, &comparison, &evidence);
    }
    if (status == SPZ_OK)
        status = reasons_give(verdict, &comparison, &evidence);
    evidence_release(&evidence);
    arena_release(&arena);
    return status;
}

static spz_status start(Verdict *verdict, const Findings *findings)
{
    verdict->title = arena_string(&verdict->arena, spz_movement_title(findings->map->movement));
    return verdict->title ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status spz_seating_judge(const spz_findings *findings, const spz_settings *settings, int year, const spz_sink *sink,
                             spz_verdict **out)
{
    spz_settings *defaults = NULL;
    Verdict *verdict = verdict_new();
    spz_status status = verdict ? start(verdict, findings) : SPZ_NO_MEMORY;
    spz_outcome outcome = outcome_of(findings->map);
    *out = NULL;
    if (status == SPZ_OK)
        verdict->year = year;
    if (status == SPZ_OK && outcome)
        verdict->outcome = outcome;
    if (status == SPZ_OK && !outcome && !settings)
        status = spz_settings_new(&defaults);
    if (status == SPZ_OK && !outcome)
        status = judge(verdict, findings, settings ? settings : defaults, year, sink);
    spz_settings_free(defaults);
    if (status == SPZ_OK)
        *out = verdict;
    else
        spz_verdict_free(verdict);
    return status;
}
