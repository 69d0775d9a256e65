#include "seating/seating_words.h"
#include "seating/acoustics.h"
#include "seating/bar_ranges.h"
#include <math.h>

static const double clear_strength = 0.5;
static const double much_narrower = 0.75; /* a passage is lost where it is heard at less than this share of its best width */

const char *words_outcome(spz_outcome outcome)
{
    return outcome == SPZ_WITHOUT_STRINGS ? "No string sections were found in this score, so there is no seating to judge."
           : outcome == SPZ_WITHOUT_VIOLINS
               ? "Two violin sections were not found in this score, so their seating can't be judged; if they are there, name them under "
                 "[sections]."
               : "There is no movement to judge.";
}

void words_statement(const Verdict *verdict, Buffer *text)
{
    const Ranking *s = &verdict->ranking;
    const char *name = verdict->by_arrangement[s->order[0]].name;
    if (s->confidence == SPZ_FIRM)
        buffer_printf(text, "Seat the %s: the evidence is firm (margin %.2f).", name, s->margin);
    else if (s->confidence == SPZ_LEANING)
        buffer_printf(text, "The evidence leans toward %s (margin %.2f).", name, s->margin);
    else
        buffer_printf(text, "The evidence leaves the seating open (margin %.2f): %s serves as well as any.", s->margin, name);
}

/* Near 1 and below it a second decimal, so that nothing ever 'turns at 1.0 times'. */
void words_turning(const Ranking *s, Buffer *text)
{
    static const double slightest = 0.005;
    if (s->factor > 0 && fabs(s->factor - 1) < slightest)
        buffer_printf(text, "turns at the slightest change, such as in the weight of %s", term_name(s->turning));
    else if (s->factor >= 1.1)
        buffer_printf(text, "turns if %s weighs %.1f times as much", term_name(s->turning), s->factor);
    else if (s->factor > 0)
        buffer_printf(text, "turns if %s weighs %.2f times as much", term_name(s->turning), s->factor);
}

static void because_violins(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Buffer *text)
{
    PairView view = geometry_pair(&comparison->layouts[arrangement], &comparison->rules, SPZ_VN1, SPZ_VN2);
    double sum = 0;
    for (size_t i = 0; i < evidence->pairs.count; i++)
        if (evidence->pairs.at[i].kind == PAIR_VIOLINS)
            sum = fmax(sum, evidence->pairs.at[i].antiphony_sum);
    buffer_printf(text, "evidence %.0f of 100, heard %.0f degrees apart, %.1f times what can be told apart",
                  100 * evidence_saturation(sum, evidence_figures.antiphony_full), view.angle, view.widths);
}

static void because_others(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Buffer *text)
{
    const PairEvidence *most = NULL;
    double most_points = 0;
    for (size_t i = 0; i < evidence->pairs.count; i++) {
        const PairEvidence *pair = &evidence->pairs.at[i];
        double points = pair->kind == PAIR_VIOLINS ? 0 : fabs(terms_antiphony(comparison, pair, arrangement));
        if (points > most_points) {
            most = pair;
            most_points = points;
        }
    }
    if (!most)
        return;
    PairView view = geometry_pair(&comparison->layouts[arrangement], &comparison->rules, most->a, most->b);
    buffer_printf(text, "most by %s and %s, heard %.0f degrees apart", spz_section_words(most->a), spz_section_words(most->b),
                  view.angle);
}

static void because_ensemble(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Buffer *text)
{
    const PairEvidence *most = NULL;
    for (size_t i = 0; i < evidence->pairs.count; i++) {
        const PairEvidence *pair = &evidence->pairs.at[i];
        if (pair->coupling_sum > 0 &&
            (!most || fabs(terms_ensemble(comparison, pair, arrangement)) > fabs(terms_ensemble(comparison, most, arrangement))))
            most = pair;
    }
    if (!most)
        return;
    PairView view = geometry_pair(&comparison->layouts[arrangement], &comparison->rules, most->a, most->b);
    double strain = 0;
    for (size_t i = 0; i < most->coupling.count; i++)
        strain += most->coupling.at[i].weight / most->coupling_sum *
                  terms_strain(comparison, view.delay, most->coupling.at[i].passage->shortest);
    buffer_printf(text, "most by %s and %s: %.0f ms between them, %.1f times the tolerance", spz_section_words(most->a),
                  spz_section_words(most->b), 1000 * view.delay, strain);
}

static void because_melody(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Term term, Buffer *text)
{
    double open = geometry_openness(&comparison->layouts[arrangement], SPZ_VN2);
    buffer_printf(text, "melody in the seconds in %.0f of 100 bars", 100 * evidence->melody_share);
    if (term == TERM_MELODY)
        buffer_printf(text, ", heard %.0f degrees from the firsts",
                      geometry_pair(&comparison->layouts[arrangement], &comparison->rules, SPZ_VN1, SPZ_VN2).angle);
    else
        buffer_puts(text, open > 0.25    ? ", instruments toward the audience"
                          : open < -0.25 ? ", instruments away from the audience"
                                         : ", instruments across the stage");
}

void words_because(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Term term, Buffer *text)
{
    bool opposed = comparison->list.at[arrangement].opposed;
    switch (term) {
    case TERM_VIOLINS: because_violins(comparison, evidence, arrangement, text); break;
    case TERM_OTHERS: because_others(comparison, evidence, arrangement, text); break;
    case TERM_ENSEMBLE: because_ensemble(comparison, evidence, arrangement, text); break;
    case TERM_THREE:
        buffer_printf(text, "evidence %.0f of 100, three equal parts %s",
                      100 * evidence_saturation(evidence->three_sum, evidence_figures.three_full),
                      opposed ? "can't be made of two groups that sit apart" : "are shared out by desk");
        break;
    case TERM_BASS:
        buffer_printf(text, "bass line %.0f of 100, cellos and basses %.0f of 100 toward the middle", 100 * evidence->bass,
                      100 * geometry_bass_centrality(&comparison->layouts[arrangement]));
        break;
    case TERM_MELODY:
    case TERM_TURNED: because_melody(comparison, evidence, arrangement, term, text); break;
    case TERM_ERA: buffer_printf(text, "composed in %d", evidence->year); break;
    case TERM_HOUSE:
        buffer_puts(text, rules_name_in(comparison->rules.preferred, comparison->list.at[arrangement].name)
                              ? "the house prefers it"
                              : "the house prefers another");
        break;
    case TERM_COUNT: break;
    }
}

static double widest(const Comparison *comparison, const PairEvidence *pair)
{
    double best = 0;
    for (size_t i = 0; i < comparison->list.count; i++)
        if (comparison->allowed[i])
            best = fmax(best, comparison_felt_widths(comparison, i, pair->a, pair->b));
    return best;
}

static double shortest_delay(const Comparison *comparison, const PairEvidence *pair)
{
    double least = HUGE_VAL;
    for (size_t i = 0; i < comparison->list.count; i++)
        if (comparison->allowed[i])
            least = fmin(least, geometry_pair(&comparison->layouts[i], &comparison->rules, pair->a, pair->b).delay);
    return least;
}

static bool write_loss(Buffer *text, const Movement *movement, const PairEvidence *pair, spz_kind kind, SpanList *spans)
{
    Buffer bars;
    buffer_init(&bars);
    bool good = spans->count == 0 || bars_write(&bars, movement, spans);
    if (good && spans->count)
        buffer_printf(text, "%s%s %s/%s %s", text->length ? "; " : "", spz_kind_name(kind), spz_section_name(pair->a),
                      spz_section_name(pair->b), bars.text);
    buffer_free(&bars);
    spans->count = 0;
    return good;
}

/* Clear passages of one kind between the pair. Coupling counts where its delay is over the tolerance here. */
static bool losses_of_kind(const Comparison *comparison, const SeatingEvidence *evidence, const PairEvidence *pair, spz_kind kind,
                           double delay, Buffer *text)
{
    const ItemList *items = kind == SPZ_COUPLING ? &pair->coupling : &pair->antiphony;
    SpanList spans = {0};
    bool good = true;
    for (size_t i = 0; i < items->count && good; i++) {
        const spz_passage *p = items->at[i].passage;
        BarSpan span = {p->first, p->last};
        if (p->kind == kind && p->strength >= clear_strength &&
            (kind != SPZ_COUPLING || terms_strain(comparison, delay, p->shortest) > 1))
            good = array_push(&spans, span);
    }
    good = good && write_loss(text, evidence->movement, pair, kind, &spans);
    array_free(&spans);
    return good;
}

static bool pair_losses(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, const PairEvidence *pair,
                        Buffer *text)
{
    PairView view = geometry_pair(&comparison->layouts[arrangement], &comparison->rules, pair->a, pair->b);
    bool good = true;
    if (evidence_pair_share(pair->kind, &comparison->rules) <= 0)
        return true;
    if (view.widths < much_narrower * widest(comparison, pair))
        for (int kind = 0; kind < SPZ_KIND_COUNT && good; kind++)
            if (spz_kind_is_antiphony((spz_kind)kind))
                good = losses_of_kind(comparison, evidence, pair, (spz_kind)kind, 0, text);
    if (good && view.delay * much_narrower > shortest_delay(comparison, pair))
        good = losses_of_kind(comparison, evidence, pair, SPZ_COUPLING, view.delay, text);
    return good;
}

bool words_losses(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Buffer *text)
{
    bool good = true;
    for (size_t i = 0; i < evidence->pairs.count && good; i++)
        good = pair_losses(comparison, evidence, arrangement, &evidence->pairs.at[i], text);
    if (good && comparison->list.at[arrangement].opposed && evidence->thirds.count) {
        Buffer bars;
        buffer_init(&bars);
        good = bars_write_items(&bars, evidence->movement, &evidence->thirds, clear_strength);
        if (good && bars.length)
            buffer_printf(text, "%s%s Violins %s", text->length ? "; " : "", spz_kind_name(SPZ_DIV3), bars.text);
        buffer_free(&bars);
    }
    if (good && comparison->list.at[arrangement].opposed && evidence->has_thirds)
        buffer_printf(text, "%sthree violin parts throughout", text->length ? "; " : "");
    return good && !buffer_failed(text);
}
