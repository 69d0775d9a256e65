/* One seating for the movements of a work. Points are linear in the evidence, so the work's points are the movements' means,
 * weighed by the evidence that each holds: a movement that says nothing has no vote. */
#include "seating/losses.h"
#include "seating/verdict.h"
#include "seating/seating_words.h"
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* How much a movement has to say: the distance between its best and worst arrangement when year and house are silent. */
static double voice_of(const Ranking *s)
{
    double most = -HUGE_VAL, least = HUGE_VAL;
    for (size_t i = 0; i < s->ranked; i++) {
        const Points *p = &s->points[s->order[i]];
        double direct = terms_total(p) - p->of[TERM_ERA] - p->of[TERM_HOUSE];
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
        for (int t = 0; t < TERM_COUNT; t++)
            sum->points[i].of[t] += weight * movement->points[i].of[t];
}

static spz_status combine(Verdict *work, const spz_verdict *const *movements, size_t count, const Verdict *model)
{
    double all = 0;
    size_t judged = 0;
    work->ranking.count = model->ranking.count;
    memcpy(work->ranking.opposed, model->ranking.opposed, sizeof model->ranking.opposed);
    memcpy(work->ranking.allowed, model->ranking.allowed, sizeof model->ranking.allowed);
    for (size_t m = 0; m < count; m++) {
        if (!movements[m]->ranking.ranked)
            continue;
        if (!same_arrangements(model, movements[m]))
            return SPZ_BAD_ARGUMENT;
        all += voice_of(&movements[m]->ranking);
        judged++;
        work->thirds = work->thirds || movements[m]->thirds;
        work->orchestras = movements[m]->orchestras > work->orchestras ? movements[m]->orchestras : work->orchestras;
    }
    for (size_t m = 0; m < count; m++) {
        const Ranking *s = &movements[m]->ranking;
        if (s->ranked)
            add_points(&work->ranking, s, all > 1e-9 ? voice_of(s) / all : 1.0 / (double)judged);
    }
    return SPZ_OK;
}

static size_t place_of(const Verdict *verdict, const char *name)
{
    for (size_t i = 0; i < verdict->ranking.count; i++)
        if (strcmp(verdict->by_arrangement[i].name, name) == 0)
            return i;
    return SIZE_MAX;
}

static spz_status copy_terms(Verdict *work, size_t arrangement)
{
    spz_term *terms = arena_take(&work->arena, TERM_COUNT, sizeof *terms);
    spz_ranked *ranked = &work->by_arrangement[arrangement];
    if (!terms)
        return SPZ_NO_MEMORY;
    for (int t = 0; t < TERM_COUNT; t++) {
        double most = 0;
        for (size_t i = 0; i < work->ranking.count; i++)
            most = fmax(most, fabs(work->ranking.points[i].of[t]));
        if (most > 1e-9)
            terms[ranked->term_count++] = (spz_term){term_name((Term)t), work->ranking.points[arrangement].of[t],
                                                     "mean of the movements"};
    }
    ranked->terms = terms;
    return SPZ_OK;
}

/* Movements of one title are told apart by their place among those given. NULL without memory. */
static const char *title_of(Verdict *work, const spz_verdict *const *movements, size_t count, size_t number)
{
    const char *title = movements[number]->title;
    bool shared = false;
    for (size_t m = 0; m < count; m++)
        shared = shared || (m != number && strcmp(movements[m]->title, title) == 0);
    if (!title[0])
        return arena_format(&work->arena, "movement %zu", number + 1);
    return shared ? arena_format(&work->arena, "%s (score %zu of %zu)", title, number + 1, count) : title;
}

/* Those of all movements, in their order. */
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
    }
    ranked->losses = losses;
    return good;
}

/* 'First title: exchange Vn I/Vn II 66-71 | Second title: ...' */
static spz_status copy_words(Verdict *work, const spz_verdict *const *movements, size_t count, const Verdict *model,
                             size_t arrangement, Buffer *text)
{
    spz_ranked *ranked = &work->by_arrangement[arrangement];
    buffer_clear(text);
    for (size_t m = 0; m < count; m++) {
        const char *losses = movements[m]->ranking.ranked ? movements[m]->by_arrangement[arrangement].losses_text : "";
        const char *title = losses[0] ? title_of(work, movements, count, m) : "";
        if (!title)
            return SPZ_NO_MEMORY;
        if (losses[0])
            buffer_printf(text, "%s%s: %s", text->length ? " | " : "", title, losses);
    }
    ranked->name = arena_string(&work->arena, model->by_arrangement[arrangement].name);
    ranked->order = model->by_arrangement[arrangement].order;
    ranked->order_text = arena_string(&work->arena, model->by_arrangement[arrangement].order_text);
    ranked->losses_text = arena_string(&work->arena, text->text ? text->text : "");
    ranked->outside = model->by_arrangement[arrangement].outside;
    return !buffer_failed(text) && ranked->name && ranked->order_text && ranked->losses_text && copy_losses(work, movements, count, arrangement)
               ? copy_terms(work, arrangement)
               : SPZ_NO_MEMORY;
}

/* What the movement gives up when the whole work sits as recommended. */
static spz_status reason_of_movement(Verdict *work, const char *title, const Verdict *movement, Buffer *text, Buffer *bars)
{
    const Ranking *s = &movement->ranking;
    size_t own = work->ranking.order[0];
    if (!title)
        return SPZ_NO_MEMORY;
    if (!s->ranked) {
        buffer_printf(text, "%s: %s", title, movement->statement);
        return verdict_add_reason(work, text, bars, 0);
    }
    double points = s->totals[own] - s->totals[work->ranking.rival], lost = s->totals[s->order[0]] - s->totals[own];
    if (s->confidence == SPZ_OPEN)
        buffer_printf(text, "%s: leaves it open", title);
    else
        buffer_printf(text, "%s: by itself %s for %s", title, spz_confidence_name(s->confidence),
                      movement->by_arrangement[s->order[0]].name);
    if (lost < 0.05)
        buffer_puts(text, "; it loses nothing");
    else
        buffer_printf(text, "; it loses %.1f points", lost);
    if (lost >= 0.05 && movement->by_arrangement[own].losses_text[0])
        buffer_printf(text, ": %s", movement->by_arrangement[own].losses_text);
    return verdict_add_reason(work, text, bars, points);
}

static spz_status write_words(Verdict *work, const spz_verdict *const *movements, size_t count, const Verdict *model)
{
    Buffer text, bars;
    buffer_init(&text);
    buffer_init(&bars);
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < work->ranking.count && status == SPZ_OK; i++)
        status = copy_words(work, movements, count, model, i, &text);
    buffer_clear(&text);
    for (size_t m = 0; m < count && status == SPZ_OK; m++)
        status = reason_of_movement(work, title_of(work, movements, count, m), movements[m], &text, &bars);
    buffer_free(&text);
    buffer_free(&bars);
    if (status == SPZ_OK)
        verdict_sort_reasons(work);
    return status == SPZ_OK ? verdict_state(work) : status;
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
    if (!model) {
        work->outcome = count ? movements[0]->outcome : SPZ_WITHOUT_MOVEMENT;
        work->statement = words_outcome(work->outcome);
        return work->statement ? SPZ_OK : SPZ_NO_MEMORY;
    }
    spz_status status = combine(work, movements, count, model);
    if (status != SPZ_OK)
        return status;
    ranking_settle(&work->ranking, place_of(model, usual));
    verdict_fill_numbers(work);
    note_pairs(work, movements, count);
    return write_words(work, movements, count, model);
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
