#include "seating/reasons.h"
#include "seating/acoustics.h"
#include "seating/bar_ranges.h"
#include <ctype.h>
#include <math.h>
#include <string.h>

static const double worth_saying = 0.3; /* points; less is lost in the rounding of the score */
static const double as_good = 1;        /* points; two arrangements nearer than this are the same to anyone who listens */

/* What is being explained: the recommended arrangement against its rival. */
typedef struct Case {
    Verdict *verdict;
    const Comparison *comparison;
    const SeatingEvidence *evidence;
    size_t own, rival;
    Buffer text, bars;
} Case;

static double difference(const Case *c, Term term)
{
    const Ranking *s = &c->verdict->ranking;
    return s->points[c->own].of[term] - s->points[c->rival].of[term];
}

static const char *rival_name(const Case *c)
{
    return c->comparison->list.at[c->rival].name;
}

/* 'first' of 'first violins'; NULL for other sections. */
static const char *ordinal_of(spz_section section)
{
    return section == SPZ_VN1 ? "first" : section == SPZ_VN2 ? "second" : section == SPZ_VN3 ? "third" : NULL;
}

/* Starts a sentence with the names of two sections: 'First and second violins', 'Violas and cellos'. */
static void open_with(Case *c, double points, spz_section a, spz_section b)
{
    bool both = ordinal_of(a) && ordinal_of(b);
    const char *first = both ? ordinal_of(a) : spz_section_words(a), *second = both ? ordinal_of(b) : spz_section_words(b);
    if (points < 0)
        buffer_printf(&c->text, "Against it: %s and %s", first, second);
    else
        buffer_printf(&c->text, "%c%s and %s", toupper((unsigned char)*first), first + 1, second);
    buffer_puts(&c->text, both ? " violins" : "");
}

static void count_kinds(Case *c, const ItemList *items)
{
    static const char *const plural[SPZ_KIND_COUNT] = {
        [SPZ_EXCHANGE] = "exchanges", [SPZ_HOCKET] = "hockets", [SPZ_SPLIT_LINE] = "split lines", [SPZ_IMITATION] = "imitations"};
    size_t of[SPZ_KIND_COUNT] = {0}, striking = 0, clear = 0;
    bool any = false;
    for (size_t i = 0; i < items->count; i++) {
        of[items->at[i].passage->kind]++;
        striking += items->at[i].passage->strength >= 0.8;
        clear += items->at[i].passage->strength >= 0.5 && items->at[i].passage->strength < 0.8;
    }
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++)
        if (of[kind] && plural[kind]) {
            buffer_printf(&c->text, "%s%zu %s", any ? ", " : "", of[kind],
                          of[kind] == 1 ? spz_kind_name((spz_kind)kind) : plural[kind]);
            any = true;
        }
    const struct {
        size_t count;
        const char *word;
    } words[] = {{striking, "striking"}, {clear, "clear"}, {items->count - striking - clear, "marginal"}};
    bool open = false;
    for (size_t i = 0; i < 3; i++)
        if (words[i].count) {
            buffer_printf(&c->text, "%s%zu %s", open ? ", " : " (", words[i].count, words[i].word);
            open = true;
        }
    buffer_puts(&c->text, open ? ")" : "");
}

static spz_status name_weightiest(Case *c, const ItemList *items)
{
    Buffer bars;
    buffer_init(&bars);
    bool good = bars_write_weightiest(&bars, c->evidence->movement, items, 3);
    if (good && items->count > 3 && bars.length)
        buffer_printf(&c->text, ", weightiest in bars %s", bars.text);
    buffer_free(&bars);
    return good ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status reason_antiphony(Case *c, const PairEvidence *pair, double share)
{
    double points = share * (terms_antiphony(c->comparison, pair, c->own) - terms_antiphony(c->comparison, pair, c->rival));
    if (fabs(points) < worth_saying)
        return SPZ_OK;
    PairView here = geometry_pair(&c->comparison->layouts[c->own], &c->comparison->rules, pair->a, pair->b);
    PairView there = geometry_pair(&c->comparison->layouts[c->rival], &c->comparison->rules, pair->a, pair->b);
    open_with(c, points, pair->a, pair->b);
    buffer_puts(&c->text, " answer each other: ");
    count_kinds(c, &pair->antiphony);
    spz_status status = name_weightiest(c, &pair->antiphony);
    buffer_printf(&c->text, "; from the middle seats they are heard %.0f degrees apart, against %.0f with '%s'", here.angle,
                  there.angle, rival_name(c));
    if (!bars_write_items(&c->bars, c->evidence->movement, &pair->antiphony, 0) || status != SPZ_OK)
        return SPZ_NO_MEMORY;
    verdict_note_pair(c->verdict, pair->a, pair->b, fabs(points));
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
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
    PairView here = geometry_pair(&c->comparison->layouts[c->own], &c->comparison->rules, pair->a, pair->b);
    PairView there = geometry_pair(&c->comparison->layouts[c->rival], &c->comparison->rules, pair->a, pair->b);
    double shortest = shortest_shared(pair);
    open_with(c, points, pair->a, pair->b);
    buffer_printf(&c->text, " move together in %zu %s", pair->coupling.count, pair->coupling.count == 1 ? "passage" : "passages");
    spz_status status = name_weightiest(c, &pair->coupling);
    buffer_printf(&c->text, "; sound takes %.0f ms between them, against %.0f with '%s'", 1000 * here.delay, 1000 * there.delay,
                  rival_name(c));
    if (shortest > 0)
        buffer_printf(&c->text, "; their shortest shared note, %.2f s, allows %.0f ms", shortest,
                      1000 * acoustics_tolerance(shortest, c->comparison->rules.hearing));
    if (shortest > 0 && !c->evidence->movement->tempo_count)
        buffer_puts(&c->text, " at a middling tempo, as the score gives none");
    if (!bars_write_items(&c->bars, c->evidence->movement, &pair->coupling, 0) || status != SPZ_OK)
        return SPZ_NO_MEMORY;
    verdict_note_pair(c->verdict, pair->a, pair->b, fabs(points));
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
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
static bool open_term(Case *c, Term term, double *points)
{
    *points = difference(c, term);
    if (fabs(*points) < worth_saying)
        return false;
    if (*points < 0)
        buffer_puts(&c->text, "Against it: ");
    return true;
}

/* The sentence begins with a capital unless 'Against it' stands before it. */
static void say(Case *c, const char *sentence)
{
    if (c->text.length)
        buffer_puts(&c->text, sentence);
    else
        buffer_printf(&c->text, "%c%s", toupper((unsigned char)*sentence), sentence + 1);
}

static spz_status reason_three(Case *c)
{
    double points;
    if (!open_term(c, TERM_THREE, &points))
        return SPZ_OK;
    say(c, c->evidence->has_thirds
               ? "there is a third violin part: three equal groups of violins presuppose that they sit together"
               : "the violins divide in three over both sections, which presupposes that they sit together");
    if (!bars_write_items(&c->bars, c->evidence->movement, &c->evidence->thirds, 0))
        return SPZ_NO_MEMORY;
    verdict_note_pair(c->verdict, SPZ_VN1, SPZ_VN2, fabs(points));
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
}

static spz_status reason_bass(Case *c)
{
    double points;
    if (!open_term(c, TERM_BASS, &points))
        return SPZ_OK;
    say(c, c->evidence->continuo      ? "the music is built over a continuo"
           : c->evidence->bass_shared ? "cellos and basses read one written bass"
                                       : "cellos and basses hardly ever part");
    buffer_printf(&c->text, ": the bass belongs in the middle of the sound, where it is %.0f of 100, against %.0f with '%s'",
                  100 * geometry_bass_centrality(&c->comparison->layouts[c->own]),
                  100 * geometry_bass_centrality(&c->comparison->layouts[c->rival]), rival_name(c));
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
}

static spz_status reason_melody(Case *c, Term term)
{
    double points;
    SpanList spans = {0};
    bool good = true;
    if (!open_term(c, term, &points))
        return SPZ_OK;
    say(c, "the second violins have the melody");
    if (term == TERM_MELODY)
        buffer_puts(&c->text,
                    points > 0 ? " and are heard apart from the firsts" : ", which is heard less apart from the firsts");
    else
        buffer_puts(&c->text, points > 0 ? " and their instruments face the audience more"
                                         : " with their instruments turned away from the audience");
    for (size_t i = 0; i < c->evidence->melody.count && good; i++)
        good = array_push(&spans, c->evidence->melody.at[i]);
    good = good && bars_write(&c->bars, c->evidence->movement, &spans);
    array_free(&spans);
    return good ? verdict_add_reason(c->verdict, &c->text, &c->bars, points) : SPZ_NO_MEMORY;
}

static spz_status reason_era(Case *c)
{
    double points;
    if (!open_term(c, TERM_ERA, &points))
        return SPZ_OK;
    bool early = evidence_era(c->evidence->year) > 0;
    say(c, "composed in ");
    buffer_printf(&c->text, "%d, when %s; a year never proves a seating", c->evidence->year,
                  early ? "facing violins were the rule" : "violins sat side by side as a rule");
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
}

static spz_status reason_house(Case *c)
{
    double points;
    if (!open_term(c, TERM_HOUSE, &points))
        return SPZ_OK;
    say(c, points > 0 ? "the house prefers it" : "the house prefers the other placing");
    return verdict_add_reason(c->verdict, &c->text, &c->bars, points);
}

static spz_status remark_items(Case *c, const ItemList *items, const char *words)
{
    if (!items->count)
        return SPZ_OK;
    buffer_printf(&c->text, "%s: %zu %s", words, items->count, items->count == 1 ? "passage" : "passages");
    if (!bars_write_items(&c->bars, c->evidence->movement, items, 0))
        return SPZ_NO_MEMORY;
    return verdict_add_reason(c->verdict, &c->text, &c->bars, 0);
}

static spz_status remark(Case *c, bool when, const char *words)
{
    if (!when)
        return SPZ_OK;
    buffer_puts(&c->text, words);
    return verdict_add_reason(c->verdict, &c->text, &c->bars, 0);
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
        if (s->opposed[other] != s->opposed[c->own] || behind >= as_good)
            continue;
        buffer_printf(&c->text, "'%s' is as good (%.1f points less): the lower strings may sit either way",
                      c->comparison->list.at[other].name, behind);
        return verdict_add_reason(c->verdict, &c->text, &c->bars, 0);
    }
    return SPZ_OK;
}

static spz_status remark_stage(Case *c)
{
    const Layout *layout = &c->comparison->layouts[c->own];
    if (layout->fits)
        return SPZ_OK;
    buffer_printf(&c->text,
                  "The stage is too small for this strength: it needs %.1f m by %.1f m and there are %.1f m by %.1f m; "
                  "judged as if it fitted",
                  layout->used_width, layout->used_depth, c->comparison->rules.width, c->comparison->rules.depth);
    return verdict_add_reason(c->verdict, &c->text, &c->bars, 0);
}

static spz_status remarks(Case *c)
{
    const SeatingEvidence *e = c->evidence;
    spz_status status = remark(c, e->two_orchestras,
                               "There are two orchestras: they face each other across the podium whatever the seating, "
                               "which is judged within each of them");
    if (status == SPZ_OK)
        status = remark_items(c, &e->orchestras, "The two orchestras answer each other");
    if (status == SPZ_OK)
        status = remark(c, e->has_thirds,
                        c->comparison->list.at[c->own].opposed
                            ? "Third violins sit beside the seconds, on their inner side, with a third of all violins"
                            : "Third violins sit next after the seconds, with a third of all violins");
    if (status == SPZ_OK)
        status = remark_items(c, &e->fours,
                              "The violins divide in four, two lines in each section, which they can do wherever they sit");
    if (status == SPZ_OK)
        status = remark_items(c, &e->winds,
                              "Strings and winds answer each other, which the seating of the strings doesn't change");
    if (status == SPZ_OK)
        status = remark_items(c, &e->solos, "Soloists take part, who stand before the sections");
    if (status == SPZ_OK)
        status = remark(c, c->comparison->rules.forbidden[0] != '\0', "Arrangements that the house forbids are left out");
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
        status = reason_melody(c, TERM_MELODY);
    if (status == SPZ_OK)
        status = reason_melody(c, TERM_TURNED);
    return status == SPZ_OK ? remarks(c) : status;
}

spz_status reasons_give(Verdict *verdict, const Comparison *comparison, const SeatingEvidence *evidence)
{
    Case c = {.verdict = verdict,
              .comparison = comparison,
              .evidence = evidence,
              .own = verdict->ranking.order[0],
              .rival = verdict->ranking.rival};
    buffer_init(&c.text);
    buffer_init(&c.bars);
    spz_status status = give_all(&c);
    buffer_free(&c.text);
    buffer_free(&c.bars);
    verdict_sort_reasons(verdict);
    if (evidence->two_orchestras)
        verdict_note_pair(verdict, SPZ_VN1, SPZ_VN1, HUGE_VAL);
    verdict_note_pair(verdict, SPZ_VN1, SPZ_VN2, 0); /* the plan always has two pairs to show */
    verdict_note_pair(verdict, SPZ_VN1, SPZ_VC, 0);
    return status;
}
