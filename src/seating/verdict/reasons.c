#include "seating/verdict/reasons.h"
#include "seating/stage/acoustics.h"
#include "seating/evidence/basis.h"
#include <math.h>

static const double worth_saying = 0.3; /* points; less is lost in the rounding of the score */
static const double as_good = 1;        /* points; two arrangements nearer than this are the same to anyone who listens */
enum { WEIGHTIEST = 3 };                /* passages that are named by themselves */

/* What is being explained: the recommended arrangement against its rival. */
typedef struct Case {
    Verdict *verdict;
    const Comparison *comparison;
    const SeatingEvidence *evidence;
    size_t own, rival;
} Case;

const char *spz_reason_name(spz_reason_kind kind)
{
    static const char *const names[] = {"antiphony",    "ensemble",      "three",           "bass",           "era",     "house",
                                        "melody",       "turned",        "chamber music", "two orchestras",  "between orchestras", "third violins", "in four",
                                        "winds",        "soloists",      "vetoed",          "weighted",       "forbidden",       "neighbour",      "small stage",   "movement"};
    _Static_assert(sizeof names / sizeof *names == SPZ_REASON_KIND_COUNT, "every kind has its name");
    return (unsigned)kind < SPZ_REASON_KIND_COUNT ? names[kind] : "";
}

static const char *name_of(const Case *c, size_t arrangement)
{
    return c->verdict->by_arrangement[arrangement].name;
}

static PairView view_in(const Case *c, size_t arrangement, const PairEvidence *pair)
{
    return comparison_pair(c->comparison, arrangement, pair->a, pair->b);
}

static spz_status add_with_items(Case *c, spz_reason reason, const ItemList *items)
{
    return basis_of_items(&c->verdict->arena, c->evidence, items, &reason.basis) ? verdict_add_reason(c->verdict, reason) : SPZ_NO_MEMORY;
}

/* What the passages between two sections say. */
static spz_status add_pair(Case *c, spz_reason reason, const PairEvidence *pair, const ItemList *items)
{
    reason.sections[0] = pair->a;
    reason.sections[1] = pair->b;
    reason.other = name_of(c, c->rival);
    if (items->count > WEIGHTIEST && !basis_weightiest(&c->verdict->arena, c->evidence, items, WEIGHTIEST, &reason.weightiest))
        return SPZ_NO_MEMORY;
    verdict_note_pair(c->verdict, pair->a, pair->b, fabs(reason.points));
    return add_with_items(c, reason, items);
}

static spz_status reason_antiphony(Case *c, const PairEvidence *pair, double share)
{
    double points = share * (terms_antiphony(c->comparison, pair, c->own) - terms_antiphony(c->comparison, pair, c->rival));
    if (fabs(points) < worth_saying)
        return SPZ_OK;
    spz_reason reason = {.kind = SPZ_REASON_ANTIPHONY, .points = points, .here = view_in(c, c->own, pair).angle,
                         .there = view_in(c, c->rival, pair).angle};
    return add_pair(c, reason, pair, &pair->antiphony);
}

static double shortest_shared(const PairEvidence *pair)
{
    double shortest = 0;
    for (size_t i = 0; i < pair->coupling.count; i++) {
        double here = pair->coupling.at[i].passage->shortest;
        if (here > 0 && (shortest <= 0 || here < shortest))
            shortest = here;
    }
    return shortest;
}

static spz_status reason_ensemble(Case *c, const PairEvidence *pair, double share)
{
    double points = share * (terms_ensemble(c->comparison, pair, c->own) - terms_ensemble(c->comparison, pair, c->rival));
    if (fabs(points) < worth_saying)
        return SPZ_OK;
    spz_reason reason = {.kind = SPZ_REASON_ENSEMBLE, .points = points, .here = view_in(c, c->own, pair).delay,
                         .there = view_in(c, c->rival, pair).delay, .shortest = shortest_shared(pair)};
    if (reason.shortest > 0) {
        reason.allows = acoustics_tolerance(reason.shortest, c->comparison->rules.hearing);
        reason.tempo_guessed = !c->evidence->movement->tempo_count;
    }
    return add_pair(c, reason, pair, &pair->coupling);
}

static spz_status reasons_of_pairs(Case *c)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < c->evidence->pairs.count && status == SPZ_OK; i++) {
        const PairEvidence *pair = &c->evidence->pairs.at[i];
        double share = pair->kind == PAIR_VIOLINS ? terms_violins_share(c->evidence) : 1;
        status = reason_antiphony(c, pair, share);
        if (status == SPZ_OK)
            status = reason_ensemble(c, pair, share);
    }
    return status;
}

/* Opens a reason of one term; false where it isn't worth saying. */
static bool open_term(const Case *c, spz_term_kind term, spz_reason_kind kind, spz_reason *out)
{
    const Ranking *s = &c->verdict->ranking;
    *out = (spz_reason){.kind = kind, .points = s->points[c->own].of[term] - s->points[c->rival].of[term], .other = name_of(c, c->rival)};
    return fabs(out->points) >= worth_saying;
}

static spz_status reason_three(Case *c)
{
    spz_reason reason;
    if (!open_term(c, SPZ_TERM_THREE, SPZ_REASON_THREE, &reason))
        return SPZ_OK;
    reason.third_part = c->evidence->has_thirds;
    verdict_note_pair(c->verdict, SPZ_VN1, SPZ_VN2, fabs(reason.points));
    return add_with_items(c, reason, &c->evidence->thirds);
}

static spz_status reason_bass(Case *c)
{
    spz_reason reason;
    if (!open_term(c, SPZ_TERM_BASS, SPZ_REASON_BASS, &reason))
        return SPZ_OK;
    reason.bass = c->evidence->continuo ? SPZ_BASS_CONTINUO : c->evidence->bass_shared ? SPZ_BASS_ONE_PART : SPZ_BASS_HARDLY_PARTED;
    reason.here = geometry_bass_centrality(&c->comparison->layouts[c->own]);
    reason.there = geometry_bass_centrality(&c->comparison->layouts[c->rival]);
    return verdict_add_reason(c->verdict, reason);
}

static spz_status reason_melody(Case *c, spz_term_kind term, spz_reason_kind kind)
{
    spz_reason reason;
    SpanList spans = {0};
    bool good = true;
    if (!open_term(c, term, kind, &reason))
        return SPZ_OK;
    for (size_t i = 0; i < c->evidence->melody.count && good; i++)
        good = array_push(&spans, c->evidence->melody.at[i]);
    good = good && basis_of_spans(&c->verdict->arena, c->evidence->movement, &spans, &reason.basis);
    array_free(&spans);
    return good ? verdict_add_reason(c->verdict, reason) : SPZ_NO_MEMORY;
}

static spz_status reason_era(Case *c)
{
    spz_reason reason;
    if (!open_term(c, SPZ_TERM_ERA, SPZ_REASON_ERA, &reason))
        return SPZ_OK;
    reason.year = c->evidence->year;
    reason.opposed = evidence_era(reason.year) > 0;
    return verdict_add_reason(c->verdict, reason);
}

static spz_status reason_house(Case *c)
{
    spz_reason reason;
    return open_term(c, SPZ_TERM_HOUSE, SPZ_REASON_HOUSE, &reason) ? verdict_add_reason(c->verdict, reason) : SPZ_OK;
}

static spz_status remark_items(Case *c, const ItemList *items, spz_reason_kind kind)
{
    return items->count ? add_with_items(c, (spz_reason){.kind = kind}, items) : SPZ_OK;
}

static spz_status remark(Case *c, bool when, spz_reason_kind kind)
{
    return when ? verdict_add_reason(c->verdict, (spz_reason){.kind = kind, .opposed = c->comparison->list.at[c->own].opposed}) : SPZ_OK;
}

/* The same placing of the violins with the lower strings otherwise, where that is as good. */
static spz_status remark_neighbour(Case *c)
{
    const Ranking *s = &c->verdict->ranking;
    if (s->confidence == SPZ_OPEN)
        return SPZ_OK;
    for (size_t place = 1; place < s->ranked; place++) {
        size_t other = s->order[place];
        double behind = s->totals[c->own] - s->totals[other];
        if (s->opposed[other] == s->opposed[c->own] && behind < as_good)
            return verdict_add_reason(c->verdict, (spz_reason){.kind = SPZ_REMARK_NEIGHBOUR, .other = name_of(c, other), .lost = behind});
    }
    return SPZ_OK;
}

static spz_status remark_stage(Case *c)
{
    const Layout *layout = &c->comparison->layouts[c->own];
    const Rules *rules = &c->comparison->rules;
    if (layout->fits)
        return SPZ_OK;
    const Arrangement *own = &layout->arrangement;
    return verdict_add_reason(c->verdict, (spz_reason){.kind = SPZ_REMARK_SMALL_STAGE,
                                                       .needs = {layout_least_width(own, rules), layout_least_depth(own, rules)},
                                                       .has = {rules->width, rules->depth}});
}

static spz_status remarks(Case *c)
{
    const SeatingEvidence *e = c->evidence;
    spz_status status = remark(c, c->verdict->singles, SPZ_REMARK_CHAMBER_MUSIC);
    if (status == SPZ_OK)
        status = remark(c, e->two_orchestras, SPZ_REMARK_TWO_ORCHESTRAS);
    if (status == SPZ_OK)
        status = remark_items(c, &e->orchestras, SPZ_REMARK_BETWEEN_ORCHESTRAS);
    if (status == SPZ_OK)
        status = remark(c, e->has_thirds, SPZ_REMARK_THIRD_VIOLINS);
    if (status == SPZ_OK)
        status = remark_items(c, &e->fours, SPZ_REMARK_IN_FOUR);
    if (status == SPZ_OK)
        status = remark_items(c, &e->winds, SPZ_REMARK_WINDS);
    if (status == SPZ_OK)
        status = remark_items(c, &e->solos, SPZ_REMARK_SOLOISTS);
    if (status == SPZ_OK)
        status = remark_items(c, &e->vetoed, SPZ_REMARK_VETOED);
    if (status == SPZ_OK)
        status = remark_items(c, &e->weighted, SPZ_REMARK_WEIGHTED);
    if (status == SPZ_OK)
        status = remark(c, c->comparison->rules.forbidden[0] != '\0', SPZ_REMARK_FORBIDDEN);
    if (status == SPZ_OK)
        status = remark_neighbour(c);
    return status == SPZ_OK ? remark_stage(c) : status;
}

static spz_status give_all(Case *c)
{
    spz_status (*const each[])(Case *) = {reasons_of_pairs, reason_three, reason_bass, reason_era, reason_house};
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < sizeof each / sizeof *each && status == SPZ_OK; i++)
        status = each[i](c);
    if (status == SPZ_OK)
        status = reason_melody(c, SPZ_TERM_MELODY, SPZ_REASON_MELODY);
    if (status == SPZ_OK)
        status = reason_melody(c, SPZ_TERM_TURNED, SPZ_REASON_TURNED);
    return status == SPZ_OK ? remarks(c) : status;
}

spz_status reasons_give(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    Case c = {.verdict = verdict,
              .comparison = comparison,
              .evidence = evidence,
              .own = verdict->ranking.order[0],
              .rival = verdict->ranking.rival};
    spz_status status = give_all(&c);
    verdict_sort_reasons(verdict);
    if (evidence->two_orchestras)
        verdict_note_pair(verdict, SPZ_VN1, SPZ_VN1, HUGE_VAL);
    verdict_note_pair(verdict, SPZ_VN1, SPZ_VN2, 0); /* the plan always has two pairs to show */
    verdict_note_pair(verdict, SPZ_VN1, SPZ_VC, 0);
    return status;
}
