/* One movement: evidence, points in each arrangement, ranking, words. */
#include "seating/losses.h"
#include "seating/reasons.h"
#include "seating/seating_words.h"
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
        ranked->order_text = arena_string(&verdict->arena, comparison->orders[i]);
        ranked->outside = spz_section_name(a->order.sections[a->order.count - 1]);
        ranked->losses_text = "";
        if (!ranked->name || !ranked->order_text)
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

static bool counts_anywhere(const Ranking *ranking, Term term)
{
    for (size_t i = 0; i < ranking->count; i++)
        if (fabs(ranking->points[i].of[term]) > 1e-9)
            return true;
    return false;
}

static spz_status write_terms(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement,
                              Buffer *text)
{
    spz_term *terms = arena_take(&verdict->arena, TERM_COUNT, sizeof *terms);
    spz_ranked *ranked = &verdict->by_arrangement[arrangement];
    if (!terms)
        return SPZ_NO_MEMORY;
    for (int t = 0; t < TERM_COUNT; t++) {
        if (!counts_anywhere(&verdict->ranking, (Term)t))
            continue;
        buffer_clear(text);
        words_because(comparison, evidence, arrangement, (Term)t, text);
        spz_term term = {.name = term_name((Term)t), .points = verdict->ranking.points[arrangement].of[t]};
        term.because = arena_string(&verdict->arena, text->text ? text->text : "");
        if (buffer_failed(text) || !term.because)
            return SPZ_NO_MEMORY;
        terms[ranked->term_count++] = term;
    }
    ranked->terms = terms;
    return SPZ_OK;
}

static spz_status write_losses(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement,
                               Buffer *text)
{
    buffer_clear(text);
    if (!words_losses(comparison, evidence, arrangement, text))
        return SPZ_NO_MEMORY;
    spz_ranked *ranked = &verdict->by_arrangement[arrangement];
    ranked->losses_text = arena_string(&verdict->arena, text->text ? text->text : "");
    return ranked->losses_text ? losses_find(comparison, evidence, arrangement, &verdict->arena, &ranked->losses, &ranked->loss_count)
                               : SPZ_NO_MEMORY;
}

static spz_status write_ranked(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    Buffer text;
    buffer_init(&text);
    spz_status status = copy_names(verdict, comparison);
    for (size_t i = 0; i < comparison->list.count && status == SPZ_OK; i++) {
        status = write_terms(verdict, comparison, evidence, i, &text);
        if (status == SPZ_OK)
            status = write_losses(verdict, comparison, evidence, i, &text);
    }
    buffer_free(&text);
    return status;
}

static void weigh_all(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    Ranking *ranking = &verdict->ranking;
    size_t usual = SIZE_MAX;
    ranking->count = comparison->list.count;
    for (size_t i = 0; i < ranking->count; i++) {
        terms_weigh(comparison, evidence, i, &ranking->points[i]);
        ranking->opposed[i] = comparison->list.at[i].opposed;
        ranking->allowed[i] = comparison->allowed[i];
        if (strcmp(comparison->list.at[i].name, comparison->rules.usual) == 0)
            usual = i;
    }
    ranking_settle(ranking, usual);
    verdict_fill_numbers(verdict);
}

static spz_status judge(Verdict *verdict, const Findings *findings, const spz_settings *settings, int year, const spz_sink *sink)
{
    Arena arena; /* of the comparison */
    Comparison comparison;
    SeatingEvidence evidence = {0};
    Rules rules;
    rules_read(settings, &rules);
    arena_init(&arena);
    spz_status status = evidence_gather(findings, &rules, year, &evidence);
    if (status == SPZ_OK)
        status = comparison_set(settings, evidence.has_thirds, evidence.two_orchestras, sink, &arena, &comparison);
    if (status == SPZ_OK) {
        verdict->orchestras = evidence.two_orchestras ? 2 : 1;
        verdict->thirds = evidence.has_thirds;
        weigh_all(verdict, &comparison, &evidence);
        status = write_ranked(verdict, &comparison, &evidence);
    }
    if (status == SPZ_OK)
        status = reasons_give(verdict, &comparison, &evidence);
    if (status == SPZ_OK)
        status = verdict_state(verdict);
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
    if (status == SPZ_OK && outcome)
        verdict->statement = words_outcome(verdict->outcome = outcome);
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
