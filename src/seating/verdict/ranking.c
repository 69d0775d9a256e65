#include "seating/verdict/ranking.h"
#include <math.h>
#include <stdlib.h>

const RankingFigures ranking_figures = {
    .firm_margin = 0.15,    /* fifteen points of a hundred between the two placings */
    .leaning_margin = 0.04, /* under four points nobody should move a chair */
    .firm_factor = 1.5,
    .firm_direct = 0.08,
    .factor_most = 10,
};

static const double same = 1e-9; /* points that are rounding */

static bool comes_first(const Ranking *s, size_t a, size_t b, size_t usual)
{
    if (fabs(s->totals[a] - s->totals[b]) > same)
        return s->totals[a] > s->totals[b];
    if ((a == usual) != (b == usual))
        return a == usual;
    return a < b;
}

static void put_in_order(Ranking *s, size_t usual)
{
    s->ranked = 0;
    for (size_t i = 0; i < s->count; i++) {
        if (!s->allowed[i])
            continue;
        size_t at = s->ranked++;
        for (; at > 0 && comes_first(s, i, s->order[at - 1], usual); at--)
            s->order[at] = s->order[at - 1];
        s->order[at] = i;
    }
}

static size_t find_rival(const Ranking *s)
{
    size_t best = s->order[0];
    for (size_t i = 1; i < s->ranked; i++)
        if (s->opposed[s->order[i]] != s->opposed[best])
            return s->order[i];
    return s->ranked > 1 ? s->order[1] : best;
}

static double total_with(const Points *points, spz_term_kind term, double factor)
{
    return terms_total(points) + (factor - 1) * points->of[term];
}

/* The best total of one placing when `term` weighs `factor` times as much. */
static double best_of_placing(const Ranking *s, bool opposed, spz_term_kind term, double factor)
{
    double best = -HUGE_VAL;
    for (size_t i = 0; i < s->ranked; i++)
        if (s->opposed[s->order[i]] == opposed)
            best = fmax(best, total_with(&s->points[s->order[i]], term, factor));
    return best;
}

/* Keeps the factor nearest to 1, by ratio, at which the other placing draws level. The bests are maxima of straight lines in the
 * factor: they can only meet where two single lines do. */
static void try_factor(Ranking *s, spz_term_kind term, double factor)
{
    bool own = s->opposed[s->order[0]];
    if (!(factor >= 1 / ranking_figures.factor_most && factor <= ranking_figures.factor_most) || fabs(log(factor)) < 1e-6)
        return;
    if (best_of_placing(s, own, term, factor) > best_of_placing(s, !own, term, factor) + 1e-6)
        return;
    double nearer = s->turning.factor > 0 ? fabs(log(s->turning.factor)) - fabs(log(factor)) : 1;
    if (nearer > 1e-6 || (nearer > -1e-6 && factor > s->turning.factor)) { /* of two equals the one that asks for more of something */
        s->turning.factor = factor;
        s->turning.term = term;
    }
}

static void find_turning(Ranking *s)
{
    bool own = s->opposed[s->order[0]];
    s->turning.factor = 0;
    for (size_t i = 0; i < s->ranked; i++)
        for (size_t j = 0; j < s->ranked; j++) {
            size_t a = s->order[i], b = s->order[j];
            if (s->opposed[a] != own || s->opposed[b] == own)
                continue;
            for (int t = 0; t < SPZ_TERM_COUNT; t++) {
                double by_term = s->points[a].of[t] - s->points[b].of[t];
                if (fabs(by_term) > same)
                    try_factor(s, (spz_term_kind)t, 1 - (s->totals[a] - s->totals[b]) / by_term);
            }
        }
}

/* What is left of the margin when the year and the house's likings are silent; negative when the other placing leads then. */
static double direct_margin(const Ranking *s)
{
    bool own = s->opposed[s->order[0]];
    double best[2] = {-HUGE_VAL, -HUGE_VAL};
    for (size_t i = 0; i < s->ranked; i++) {
        const Points *p = &s->points[s->order[i]];
        double score = terms_score(terms_total(p) - p->of[SPZ_TERM_ERA] - p->of[SPZ_TERM_HOUSE]);
        bool other = s->opposed[s->order[i]] != own;
        best[other] = fmax(best[other], score);
    }
    return best[1] > -HUGE_VAL ? (best[0] - best[1]) / 100 : 0;
}

static spz_confidence confidence_of(const Ranking *s)
{
    const RankingFigures *f = &ranking_figures;
    if (s->margin < f->leaning_margin)
        return SPZ_OPEN;
    bool steady = s->turning.factor <= 0 || fabs(log(s->turning.factor)) >= log(f->firm_factor);
    return s->margin >= f->firm_margin && steady && direct_margin(s) >= f->firm_direct ? SPZ_FIRM : SPZ_LEANING;
}

static void settle_alone(Ranking *s, size_t usual)
{
    for (size_t i = 0; i < s->count; i++) {
        s->totals[i] = terms_total(&s->points[i]);
        s->scores[i] = terms_score(s->totals[i]);
    }
    put_in_order(s, usual);
    s->rival = find_rival(s);
    s->margin = (s->scores[s->order[0]] - s->scores[s->rival]) / 100;
    find_turning(s);
    s->confidence = confidence_of(s);
}

/* No year of composition makes a verdict firm that is not firm without it. */
static spz_confidence without_calendar(const Ranking *s, size_t best, spz_confidence confidence)
{
    const YearView *silent = &s->views[YEAR_SILENT];
    bool firm = silent->confidence == SPZ_FIRM && s->opposed[silent->best] == s->opposed[best];
    return confidence == SPZ_FIRM && !firm ? SPZ_LEANING : confidence;
}

static YearView view_under(const Ranking *s, Calendar calendar, size_t usual)
{
    Ranking other = *s;
    for (size_t i = 0; i < s->count; i++)
        other.points[i].of[SPZ_TERM_ERA] = s->under[calendar][i];
    settle_alone(&other, usual);
    return (YearView){other.order[0], other.margin, other.confidence};
}

void ranking_settle(Ranking *s, size_t usual)
{
    settle_alone(s, usual);
    for (int calendar = 0; calendar < CALENDAR_COUNT; calendar++) { /* the silent one first */
        YearView *view = &s->views[calendar];
        *view = view_under(s, (Calendar)calendar, usual);
        view->confidence = without_calendar(s, view->best, view->confidence);
    }
    s->confidence = without_calendar(s, s->order[0], s->confidence);
}

bool ranking_hangs_on_year(const Ranking *s, size_t best, spz_confidence confidence)
{
    const YearView *silent = &s->views[YEAR_SILENT];
    return confidence != SPZ_OPEN && (silent->confidence == SPZ_OPEN || s->opposed[silent->best] != s->opposed[best]);
}
