#include "seating/evidence/seating_terms.h"
#include "seating/stage/acoustics.h"
#include <math.h>

static const double score_bend =
    50; /* points at which a score has gone three quarters of the way to 100; near 50 a point is a point */

const char *spz_term_name(spz_term_kind kind)
{
    static const char *const names[] = {
        [SPZ_TERM_VIOLINS] = "antiphony of the violins",
        [SPZ_TERM_OTHERS] = "antiphony of other sections",
        [SPZ_TERM_ENSEMBLE] = "ensemble",
        [SPZ_TERM_THREE] = "violins in three",
        [SPZ_TERM_BASS] = "bass line",
        [SPZ_TERM_MELODY] = "melody in the seconds",
        [SPZ_TERM_TURNED] = "seconds turned away",
        [SPZ_TERM_ERA] = "era",
        [SPZ_TERM_HOUSE] = "house",
    };
    _Static_assert(sizeof names / sizeof *names == SPZ_TERM_COUNT, "every term has its name");
    return (unsigned)kind < SPZ_TERM_COUNT ? names[kind] : "";
}

double terms_strain(const Comparison *comparison, double delay, double shortest)
{
    return delay / acoustics_tolerance(shortest, comparison->rules.hearing);
}

double terms_antiphony(const Comparison *comparison, const PairEvidence *pair, size_t arrangement)
{
    double here = comparison_felt_widths(comparison, arrangement, pair->a, pair->b);
    PairView usual = comparison_usual_pair(comparison, pair->a, pair->b);
    double amount = evidence_saturation(pair->antiphony_sum, evidence_figures.antiphony_full);
    return comparison->rules.weights.antiphony * evidence_pair_share(pair->kind, &comparison->rules) * amount *
           (here - usual.widths);
}

double terms_ensemble(const Comparison *comparison, const PairEvidence *pair, size_t arrangement)
{
    if (pair->coupling_sum <= 0)
        return 0;
    PairView here = comparison_pair(comparison, arrangement, pair->a, pair->b);
    PairView usual = comparison_usual_pair(comparison, pair->a, pair->b);
    double strain = 0;
    for (size_t i = 0; i < pair->coupling.count; i++) {
        const Item *item = &pair->coupling.at[i];
        strain += item->weight * terms_strain(comparison, here.delay - usual.delay, item->passage->shortest);
    }
    double amount = evidence_saturation(pair->coupling_sum, evidence_figures.coupling_full);
    return -comparison->rules.weights.ensemble * evidence_pair_share(pair->kind, &comparison->rules) * amount * strain /
           pair->coupling_sum;
}

/* Of three violin parts there are three pairs: together they weigh as much as two, so that a third part is no third vote. */
double terms_violins_share(const SeatingEvidence *evidence)
{
    return evidence->has_thirds ? 2.0 / 3 : 1;
}

static void weigh_pairs(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Points *out)
{
    for (size_t i = 0; i < evidence->pairs.count; i++) {
        const PairEvidence *pair = &evidence->pairs.at[i];
        double share = pair->kind == PAIR_VIOLINS ? terms_violins_share(evidence) : 1;
        out->of[pair->kind == PAIR_VIOLINS ? SPZ_TERM_VIOLINS : SPZ_TERM_OTHERS] += share *
                                                                            terms_antiphony(comparison, pair, arrangement);
        out->of[SPZ_TERM_ENSEMBLE] += share * terms_ensemble(comparison, pair, arrangement);
    }
}

static void weigh_melody(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Points *out)
{
    const Layout *layout = &comparison->layouts[arrangement];
    double amount = evidence_saturation(evidence->melody_share, evidence_figures.melody_full);
    double widths = comparison_felt_widths(comparison, arrangement, SPZ_VN1, SPZ_VN2) -
                    comparison_usual_pair(comparison, SPZ_VN1, SPZ_VN2).widths;
    double open = geometry_openness(layout, SPZ_VN2) - comparison_usual_openness(comparison, SPZ_VN2);
    out->of[SPZ_TERM_MELODY] = comparison->rules.weights.melody * amount * widths;
    out->of[SPZ_TERM_TURNED] = comparison->rules.weights.turned * amount * open;
}

double terms_era(const Comparison *comparison, size_t arrangement, int year)
{
    return (comparison->list.at[arrangement].opposed ? 0.5 : -0.5) * comparison->rules.weights.era * evidence_era(year);
}

void terms_weigh(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Points *out)
{
    const Weights *w = &comparison->rules.weights;
    double side = comparison->list.at[arrangement].opposed ? 0.5 : -0.5;
    *out = (Points){0};
    weigh_pairs(comparison, evidence, arrangement, out);
    weigh_melody(comparison, evidence, arrangement, out);
    out->of[SPZ_TERM_THREE] = -side * w->three * evidence_saturation(evidence->three_sum, evidence_figures.three_full);
    out->of[SPZ_TERM_BASS] = w->bass * evidence->bass *
                         (geometry_bass_centrality(&comparison->layouts[arrangement]) - comparison_usual_centrality(comparison));
    out->of[SPZ_TERM_ERA] = terms_era(comparison, arrangement, evidence->year);
    out->of[SPZ_TERM_HOUSE] = comparison->preferred >> arrangement & 1u ? w->house : 0;
}

double terms_total(const Points *points)
{
    double total = 0;
    for (int i = 0; i < SPZ_TERM_COUNT; i++)
        total += points->of[i];
    return total;
}

double terms_score(double total)
{
    return 50 + 50 * tanh(total / score_bend);
}
