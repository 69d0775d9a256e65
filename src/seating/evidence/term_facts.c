/* What stands behind the points of a term: the figures that a reader can check. */
#include "seating/evidence/seating_terms.h"
#include <math.h>

static PairView view_of(const Comparison *comparison, size_t arrangement, const PairEvidence *pair)
{
    return comparison_pair(comparison, arrangement, pair->a, pair->b);
}

static void tell_violins(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, spz_term *term)
{
    PairView view = comparison_pair(comparison, arrangement, SPZ_VN1, SPZ_VN2);
    double sum = 0;
    for (size_t i = 0; i < evidence->pairs.count; i++)
        if (evidence->pairs.at[i].kind == PAIR_VIOLINS)
            sum = fmax(sum, evidence->pairs.at[i].antiphony_sum);
    term->evidence = evidence_saturation(sum, evidence_figures.antiphony_full);
    term->degrees = view.angle;
    term->widths = view.widths;
}

static void name_pair(spz_term *term, const PairEvidence *pair)
{
    term->sections[0] = pair->a;
    term->sections[1] = pair->b;
}

static void tell_others(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, spz_term *term)
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
    name_pair(term, most);
    term->degrees = view_of(comparison, arrangement, most).angle;
}

static void tell_ensemble(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, spz_term *term)
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
    name_pair(term, most);
    term->delay = view_of(comparison, arrangement, most).delay;
    for (size_t i = 0; i < most->coupling.count; i++)
        term->strain += most->coupling.at[i].weight / most->coupling_sum *
                        terms_strain(comparison, term->delay, most->coupling.at[i].passage->shortest);
}

spz_term terms_tell(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, spz_term_kind kind)
{
    const Layout *layout = &comparison->layouts[arrangement];
    spz_term term = {.kind = kind};
    switch (kind) {
    case SPZ_TERM_VIOLINS: tell_violins(comparison, evidence, arrangement, &term); break;
    case SPZ_TERM_OTHERS: tell_others(comparison, evidence, arrangement, &term); break;
    case SPZ_TERM_ENSEMBLE: tell_ensemble(comparison, evidence, arrangement, &term); break;
    case SPZ_TERM_THREE: term.evidence = evidence_saturation(evidence->three_sum, evidence_figures.three_full); break;
    case SPZ_TERM_BASS:
        term.evidence = evidence->bass;
        term.centrality = geometry_bass_centrality(layout);
        break;
    case SPZ_TERM_MELODY:
        term.evidence = evidence->melody_share;
        term.degrees = comparison_pair(comparison, arrangement, SPZ_VN1, SPZ_VN2).angle;
        break;
    case SPZ_TERM_TURNED:
        term.evidence = evidence->melody_share;
        term.openness = geometry_openness(layout, SPZ_VN2);
        break;
    case SPZ_TERM_ERA: term.year = evidence->year; break;
    case SPZ_TERM_HOUSE: term.preferred = comparison->preferred >> arrangement & 1u; break;
    case SPZ_TERM_COUNT: break;
    }
    return term;
}
