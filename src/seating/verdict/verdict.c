#include "seating/verdict/verdict.h"
#include "spezzato/stage.h"
#include "support/memory.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

Verdict *verdict_new(void)
{
    Verdict *verdict = memory_get(sizeof *verdict);
    if (!verdict)
        return NULL;
    memset(verdict, 0, sizeof *verdict);
    arena_init(&verdict->arena);
    verdict->title = "";
    return verdict;
}

void spz_verdict_free(spz_verdict *verdict)
{
    if (!verdict)
        return;
    array_free(&verdict->reasons);
    arena_release(&verdict->arena);
    memory_free(verdict);
}

spz_status verdict_add_reason(Verdict *verdict, spz_reason reason)
{
    return array_push(&verdict->reasons, reason) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* By weight, stable: remarks without points keep their order at the end. */
void verdict_sort_reasons(Verdict *verdict)
{
    for (size_t i = 1; i < verdict->reasons.count; i++) {
        spz_reason reason = verdict->reasons.at[i];
        size_t at = i;
        for (; at > 0 && fabs(verdict->reasons.at[at - 1].points) < fabs(reason.points) - 1e-9; at--)
            verdict->reasons.at[at] = verdict->reasons.at[at - 1];
        verdict->reasons.at[at] = reason;
    }
}

void verdict_note_pair(Verdict *verdict, spz_section a, spz_section b, double weight)
{
    size_t at = verdict->pair_count;
    for (size_t i = 0; i < verdict->pair_count; i++)
        if (verdict->pairs[i][0] == a && verdict->pairs[i][1] == b)
            return;
    while (at > 0 && verdict->pair_weights[at - 1] < weight)
        at--;
    if (at == PAIRS_KEPT)
        return;
    for (size_t i = verdict->pair_count < PAIRS_KEPT ? verdict->pair_count : PAIRS_KEPT - 1; i > at; i--) {
        memcpy(verdict->pairs[i], verdict->pairs[i - 1], sizeof verdict->pairs[i]);
        verdict->pair_weights[i] = verdict->pair_weights[i - 1];
    }
    verdict->pairs[at][0] = a;
    verdict->pairs[at][1] = b;
    verdict->pair_weights[at] = weight;
    verdict->pair_count += verdict->pair_count < PAIRS_KEPT;
}

void verdict_fill_numbers(Verdict *verdict)
{
    const Ranking *s = &verdict->ranking;
    for (size_t i = 0; i < s->count; i++) {
        spz_ranked *ranked = &verdict->by_arrangement[i];
        ranked->opposed = s->opposed[i];
        ranked->points = s->totals[i];
        ranked->score = s->scores[i];
        ranked->lost = s->totals[s->order[0]] - s->totals[i];
    }
}

const char *spz_confidence_name(spz_confidence confidence)
{
    static const char *const names[] = {[SPZ_OPEN] = "open", [SPZ_LEANING] = "leaning", [SPZ_FIRM] = "firm"};
    return (unsigned)confidence < sizeof names / sizeof *names ? names[confidence] : "";
}

static spz_statement statement_of(const Verdict *verdict, size_t best, double margin, spz_confidence confidence)
{
    if (verdict->outcome != SPZ_JUDGED)
        return (spz_statement){.outcome = verdict->outcome, .confidence = SPZ_OPEN, .margin = verdict->ranking.margin};
    return (spz_statement){verdict->outcome, confidence, margin, verdict->by_arrangement[best].name,
                           ranking_hangs_on_year(&verdict->ranking, best, confidence)};
}

spz_statement spz_verdict_statement(const spz_verdict *verdict)
{
    const Ranking *s = &verdict->ranking;
    return statement_of(verdict, s->order[0], s->margin, s->confidence);
}

spz_by_year spz_verdict_by_year(const spz_verdict *verdict)
{
    spz_by_year by = {.year = verdict->year};
    spz_statement *const each[CALENDAR_COUNT] = {&by.silent, &by.earlier, &by.later};
    for (int i = 0; i < CALENDAR_COUNT; i++) {
        const YearView *view = &verdict->ranking.views[i];
        *each[i] = statement_of(verdict, view->best, view->margin, view->confidence);
    }
    return by;
}
size_t spz_verdict_count(const spz_verdict *verdict)
{
    return verdict->ranking.ranked;
}
double spz_verdict_margin(const spz_verdict *verdict)
{
    return verdict->ranking.margin;
}
spz_confidence spz_verdict_confidence(const spz_verdict *verdict)
{
    return verdict->ranking.confidence;
}
size_t spz_verdict_reasons(const spz_verdict *verdict)
{
    return verdict->reasons.count;
}
spz_turning spz_verdict_turning(const spz_verdict *verdict)
{
    return verdict->ranking.turning;
}
size_t spz_verdict_movements(const spz_verdict *verdict)
{
    return verdict->movement_count;
}
const char *spz_verdict_movement_title(const spz_verdict *verdict, size_t movement)
{
    return movement < verdict->movement_count ? verdict->movements[movement] : "";
}
const char *spz_verdict_title(const spz_verdict *verdict)
{
    return verdict->title;
}
bool spz_verdict_thirds(const spz_verdict *verdict)
{
    return verdict->thirds;
}

const spz_ranked *spz_verdict_ranked(const spz_verdict *verdict, size_t place)
{
    return place < verdict->ranking.ranked ? &verdict->by_arrangement[verdict->ranking.order[place]] : NULL;
}

const spz_reason *spz_verdict_reason(const spz_verdict *verdict, size_t index)
{
    return index < verdict->reasons.count ? &verdict->reasons.at[index] : NULL;
}

int spz_verdict_orchestras(const spz_verdict *verdict)
{
    return verdict->orchestras;
}

bool spz_verdict_singles(const spz_verdict *verdict)
{
    return verdict->singles;
}

spz_status spz_verdict_plan(const spz_verdict *verdict, const spz_settings *settings, const char *arrangement, const spz_sink *sink, spz_plan **out)
{
    if (verdict && verdict->singles)
        return spz_stage_plan_single(settings, arrangement, sink, out);
    bool thirds = verdict && verdict->thirds, two = verdict && verdict->orchestras > 1;
    return (two ? spz_stage_plan_double : spz_stage_plan)(settings, arrangement, thirds, sink, out);
}

bool spz_verdict_pair(const spz_verdict *verdict, size_t index, spz_section out[2])
{
    if (index >= verdict->pair_count)
        return false;
    out[0] = verdict->pairs[index][0];
    out[1] = verdict->pairs[index][1];
    return true;
}
