/* One seating for the movements of a work. Points are linear in the evidence, so the work's points are the movements' means,
 * weighed by the evidence that each holds: a movement that says nothing has no vote. */
#include "seating/stage/seating_names.h"
#include "seating/verdict/losses.h"
#include "seating/verdict/verdict.h"
#include <math.h>
#include <stdint.h>
#include <string.h>

/* How much a movement has to say: the distance between its best and worst arrangement when year and house are silent. */
static double voice_of(const Ranking *s)
{
    double most = -HUGE_VAL, least = HUGE_VAL;
    for (size_t i = 0; i < s->ranked; i++) {
        const Points *p = &s->points[s->order[i]];
        double direct = terms_total(p) - p->of[SPZ_TERM_ERA] - p->of[SPZ_TERM_HOUSE];
        most = fmax(most, direct);
        least = fmin(least, direct);
    }
    return s->ranked ? most - least : 0;
}

static bool same_arrangements(const Verdict *a, const Verdict *b)
{
    if (a->ranking.count != b->ranking.count)
        return false;
    for (size_t i = 0; i < a->ranking.count; i++)
        if (strcmp(a->by_arrangement[i].name, b->by_arrangement[i].name) != 0 || a->ranking.allowed[i] != b->ranking.allowed[i])
            return false;
    return true;
}

/* The first movement that could be judged; NULL when none could. */
static const Verdict *first_judged(const spz_verdict *const *movements, size_t count)
{
    for (size_t m = 0; m < count; m++)
        if (movements[m]->ranking.ranked)
            return movements[m];
    return NULL;
}

static void add_points(Ranking *sum, const Ranking *movement, double weight)
{
    for (size_t i = 0; i < sum->count; i++)
        for (int t = 0; t < SPZ_TERM_COUNT; t++)
            sum->points[i].of[t] += weight * movement->points[i].of[t];
}

static spz_status combine(Verdict *work, const spz_verdict *const *movements, size_t count, const Verdict *model)
{
    double all = 0;
    size_t judged = 0;
    work->ranking.count = model->ranking.count;
    memcpy(work->ranking.opposed, model->ranking.opposed, sizeof model->ranking.opposed);
    memcpy(work->ranking.under, model->ranking.under, sizeof model->ranking.under);
    memcpy(work->ranking.allowed, model->ranking.allowed, sizeof model->ranking.allowed);
    for (size_t m = 0; m < count; m++) {
        if (!movements[m]->ranking.ranked)
            continue;
        if (!same_arrangements(model, movements[m]))
            return SPZ_BAD_ARGUMENT;
        all += voice_of(&movements[m]->ranking);
        work->year = work->year ? work->year : movements[m]->year;
        judged++;
        work->thirds = work->thirds || movements[m]->thirds;
        work->singles = (m == 0 || work->singles) && movements[m]->singles;
        work->orchestras = movements[m]->orchestras > work->orchestras ? movements[m]->orchestras : work->orchestras;
    }
    for (size_t m = 0; m < count; m++) {
        const Ranking *s = &movements[m]->ranking;
        if (s->ranked)
            add_points(&work->ranking, s, all > 1e-9 ? voice_of(s) / all : 1.0 / (double)judged);
    }
    return SPZ_OK;
}

static size_t place_of(const Verdict *verdict, const char *words)
{
    const char *names[SPZ_ARRANGEMENT_LIMIT];
    size_t count = verdict->ranking.count;
    for (size_t i = 0; i < count; i++)
        names[i] = verdict->by_arrangement[i].name;
    uint32_t meant = seating_meant(names, count, words);
    for (size_t i = 0; i < count; i++)
        if (meant == (uint32_t)1 << i)
            return i;
    return SIZE_MAX;
}

static bool tell_terms(Verdict *work, size_t arrangement)
{
    spz_term *terms = arena_take(&work->arena, SPZ_TERM_COUNT, sizeof *terms);
    spz_ranked *ranked = &work->by_arrangement[arrangement];
    for (spz_term_kind kind = 0; terms && kind < SPZ_TERM_COUNT; kind++) {
        double most = 0;
        for (size_t i = 0; i < work->ranking.count; i++)
            most = fmax(most, fabs(work->ranking.points[i].of[kind]));
        if (most > 1e-9)
            terms[ranked->term_count++] =
                (spz_term){.kind = kind, .points = work->ranking.points[arrangement].of[kind], .of_movements = true};
    }
    ranked->terms = terms;
    return terms != NULL;
}

/* The losses of all movements, in their order. */
static bool copy_losses(Verdict *work, const spz_verdict *const *movements, size_t count, size_t arrangement)
{
    spz_ranked *ranked = &work->by_arrangement[arrangement];
    size_t all = 0;
    for (size_t m = 0; m < count; m++)
        all += movements[m]->by_arrangement[arrangement].loss_count;
    spz_loss *losses = arena_take(&work->arena, all + 1, sizeof *losses);
    bool good = losses != NULL;
    for (size_t m = 0; m < count && good; m++) {
        const spz_ranked *from = &movements[m]->by_arrangement[arrangement];
        good = losses_copy(&work->arena, from->losses, from->loss_count, m, losses + ranked->loss_count);
        ranked->loss_count += from->loss_count;
        ranked->lost_bars += from->lost_bars;
        ranked->lost_seconds += from->lost_seconds;
    }
    ranked->losses = losses;
    return good;
}

static bool tell_ranked(Verdict *work, const spz_verdict *const *movements, size_t count, const Verdict *model)
{
    bool good = true;
    for (size_t i = 0; i < work->ranking.count && good; i++) {
        spz_ranked *ranked = &work->by_arrangement[i];
        ranked->name = arena_string(&work->arena, model->by_arrangement[i].name);
        ranked->order = model->by_arrangement[i].order;
        good = ranked->name && copy_losses(work, movements, count, i) && tell_terms(work, i);
    }
    return good;
}

static bool copy_titles(Verdict *work, const spz_verdict *const *movements, size_t count)
{
    const char **titles = arena_take(&work->arena, count + 1, sizeof *titles);
    bool good = titles != NULL;
    for (size_t m = 0; m < count && good; m++)
        good = (titles[m] = arena_string(&work->arena, movements[m]->title)) != NULL;
    work->movements = titles;
    work->movement_count = good ? count : 0;
    return good;
}

/* What the movement gives up when the whole work sits as recommended. */
static spz_status reason_of_movement(Verdict *work, size_t number, const Verdict *movement)
{
    const Ranking *s = &movement->ranking;
    size_t own = work->ranking.order[0];
    const spz_ranked *ours = &work->by_arrangement[own];
    spz_reason reason = {.kind = SPZ_REASON_MOVEMENT, .movement = number, .alone = spz_verdict_statement(movement)};
    if (!s->ranked)
        return verdict_add_reason(work, reason);
    reason.other = reason.alone.arrangement = work->by_arrangement[s->order[0]].name;
    reason.points = s->totals[own] - s->totals[work->ranking.rival];
    reason.lost = s->totals[s->order[0]] - s->totals[own];
    reason.lost_bars = movement->by_arrangement[own].lost_bars;
    reason.lost_seconds = movement->by_arrangement[own].lost_seconds;
    for (size_t i = 0; i < ours->loss_count; i++)
        if (ours->losses[i].movement == number) {
            reason.losses = reason.losses ? reason.losses : &ours->losses[i];
            reason.loss_count++;
        }
    return verdict_add_reason(work, reason);
}

static spz_status give_reasons(Verdict *work, const spz_verdict *const *movements, size_t count)
{
    spz_status status = SPZ_OK;
    for (size_t m = 0; m < count && status == SPZ_OK; m++)
        status = reason_of_movement(work, m, movements[m]);
    return status; /* in playing order */
}

static void note_pairs(Verdict *work, const spz_verdict *const *movements, size_t count)
{
    for (size_t m = 0; m < count; m++)
        for (size_t i = 0; i < movements[m]->pair_count; i++)
            verdict_note_pair(work, movements[m]->pairs[i][0], movements[m]->pairs[i][1], movements[m]->pair_weights[i]);
}

static spz_status judge_work(Verdict *work, const spz_verdict *const *movements, size_t count, const char *usual)
{
    const Verdict *model = first_judged(movements, count);
    if (!copy_titles(work, movements, count))
        return SPZ_NO_MEMORY;
    if (!model) {
        work->outcome = count ? movements[0]->outcome : SPZ_WITHOUT_MOVEMENT;
        return SPZ_OK;
    }
    spz_status status = combine(work, movements, count, model);
    if (status != SPZ_OK)
        return status;
    ranking_settle(&work->ranking, place_of(model, usual));
    verdict_fill_numbers(work);
    note_pairs(work, movements, count);
    if (!tell_ranked(work, movements, count, model))
        return SPZ_NO_MEMORY;
    return give_reasons(work, movements, count);
}

spz_status spz_seating_judge_work(const spz_verdict *const *movements, size_t count, const spz_settings *settings,
                                  const spz_sink *sink, spz_verdict **out)
{
    spz_settings *defaults = NULL;
    Verdict *work = verdict_new();
    spz_status status = work ? SPZ_OK : SPZ_NO_MEMORY;
    (void)sink;
    *out = NULL;
    if (status == SPZ_OK && !settings)
        status = spz_settings_new(&defaults);
    if (status == SPZ_OK)
        status = judge_work(work, movements, count, spz_settings_text(settings ? settings : defaults, "house.usual"));
    spz_settings_free(defaults);
    if (status == SPZ_OK)
        *out = work;
    else
        spz_verdict_free(work);
    return status;
}
