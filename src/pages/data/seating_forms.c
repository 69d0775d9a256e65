#include "pages/data/seating_forms.h"
#include "pages/data/movement_forms.h"
#include "wording/seatings/seating_words.h"
#include <math.h>

static const Field of_verdict[] = {
    {"recommended", IN_JSON, "the arrangement's name; null where nothing could be judged"},
    {"statement", IN_JSON, "one sentence: the recommendation, or why there is none"},
    {"outcome", IN_JSON, "judged; without strings, without violins, without movement where there was nothing to judge"},
    {"ranked", IN_JSON, "the arrangements, best first (below)"},
    {"margin", IN_JSON, "0 to 1, to the best arrangement with the violins placed the other way"},
    {"confidence", IN_JSON, "firm, leaning, open"},
    {"by_year", IN_JSON, "whether the year of composition makes it so: without it the score leaves it open, or says the contrary"},
    {"year_judged", IN_JSON, "the year of composition that counted: the score's, or the one given; null"},
    {"years", IN_JSON, "the verdict without a year, and with an earlier and a later one (below)"},
    {"turning", IN_JSON, "what would overturn it; \"\""},
    {"turning_term", IN_JSON, "the term whose weight has to move least for that; null"},
    {"turning_factor", IN_JSON, "by how much it has to; null"},
    {"reasons", IN_JSON, "weightiest first (below)"},
};
const FieldTable verdict_fields = FIELD_TABLE("verdict", of_verdict);

static const Field of_year[] = {
    {"year", IN_JSON, "of composition, as if it were; null: none"},
    {"recommended", IN_JSON, "the arrangement's name; null"},
    {"confidence", IN_JSON, "firm, leaning, open"},
    {"margin", IN_JSON, "0 to 1"},
};
const FieldTable year_fields = FIELD_TABLE("year", of_year);

static const Field of_ranked[] = {
    {"place", IN_CSV, "from 1, the best"},
    {"arrangement", IN_BOTH, "its name"},
    {"violins", IN_BOTH, "opposed, together"},
    {"outside", IN_BOTH, "who sits at house right"},
    {"order", IN_BOTH, "from house left to house right, as one text"},
    {"sections", IN_JSON, "the same as a list"},
    {"score", IN_BOTH, "0 to 100"},
    {"margin", IN_CSV, "of the verdict"},
    {"confidence", IN_CSV, "of the verdict"},
    {"losses", IN_BOTH, "what it weakens, as one text"},
    {"weakened", IN_JSON, "the same as facts (below)"},
    {"lost_bars", IN_BOTH, "bars in which it weakens something that the best one doesn't"},
    {"lost_seconds", IN_BOTH, "how long these sound by the tempo marks, repeats counted"},
    {"terms", IN_JSON, "what its score is made of (below)"},
};
const FieldTable ranked_fields = FIELD_TABLE("ranked", of_ranked);
const Columns seating_columns = {"seating", IN_CSV, {&movement_fields, &ranked_fields}};

static const Field of_loss[] = {
    {"movement", IN_JSON | SOMETIMES, "with `--work`: which, from 1"},
    {"kind", IN_JSON, "as of a passage"},
    {"sections", IN_JSON, "who loses by it"},
    {"throughout", IN_JSON, "three violin parts from first bar to last"},
    {"spans", IN_JSON, "stretches of bars: first and last as printed"},
    {"passages", IN_JSON, "places in the movement's `passages` as `page` and `passages` list them unfiltered, from 0, the weightiest first"},
};
const FieldTable loss_fields = FIELD_TABLE("loss", of_loss);

static const Field of_term[] = {
    {"name", IN_JSON, "of the weight in the settings"},
    {"points", IN_JSON, "what it adds to the score"},
    {"because", IN_JSON, "a clause; the figures behind it follow, as far as the term has them"},
    {"sections", IN_JSON | SOMETIMES, "the pair that counts most"},
    {"evidence", IN_JSON | SOMETIMES, "0 to 1"},
    {"degrees", IN_JSON | SOMETIMES, "from the middle seats"},
    {"widths", IN_JSON | SOMETIMES, "times what can be told apart"},
    {"delay", IN_JSON | SOMETIMES, "in seconds"},
    {"strain", IN_JSON | SOMETIMES, "times what the shortest notes allow"},
    {"centrality", IN_JSON | SOMETIMES, "of the bass, 0 to 1"},
    {"openness", IN_JSON | SOMETIMES, "of the seconds, -1 to 1"},
    {"year", IN_JSON | SOMETIMES, "of composition"},
    {"preferred", IN_JSON | SOMETIMES, "whether it is the house's usual"},
};
const FieldTable term_fields = FIELD_TABLE("term", of_term);

static const Field of_reason[] = {
    {"text", IN_JSON, "one sentence"},
    {"bars", IN_JSON, "as one text"},
    {"points", IN_JSON, "what it weighs"},
    {"kind", IN_JSON, "which kind of reason"},
    {"sections", IN_JSON | SOMETIMES, "whom it is about"},
    {"against", IN_JSON | SOMETIMES, "the arrangement it is measured against"},
    {"here", IN_JSON | SOMETIMES, "in this arrangement: degrees, seconds, or 0 to 1 for the bass"},
    {"there", IN_JSON | SOMETIMES, "the same in the other"},
    {"shortest", IN_JSON | SOMETIMES, "the shortest notes, in seconds"},
    {"allows", IN_JSON | SOMETIMES, "the delay that they allow, in seconds"},
    {"movement", IN_JSON | SOMETIMES, "with `--work`: which, from 1"},
    {"confidence", IN_JSON | SOMETIMES, "of that movement alone"},
    {"lost_bars", IN_JSON | SOMETIMES, "of that movement: bars in which something is weakened that its own best doesn't weaken"},
    {"lost_seconds", IN_JSON | SOMETIMES, "how long these sound"},
    {"lost", IN_JSON | SOMETIMES, "points given up"},
    {"spans", IN_JSON, "stretches of bars: first and last as printed"},
    {"passages", IN_JSON, "as of a loss"},
};
const FieldTable reason_fields = FIELD_TABLE("reason", of_reason);

void data_order(Buffer *out, spz_order order)
{
    for (int i = 0; i < order.count; i++)
        buffer_printf(out, "%s%s", i ? ", " : "", spz_section_name(order.sections[i]));
}

void data_statement(Buffer *out, const spz_verdict *verdict)
{
    say_statement(out, SPZ_ENGLISH, spz_verdict_statement(verdict));
}

/* '66-71, 102' */
static void data_bars(Buffer *out, const spz_basis *basis)
{
    for (size_t i = 0; i < basis->bar_count; i++) {
        const spz_bars *bars = &basis->bars[i];
        buffer_printf(out, "%s%s", i ? ", " : "", bars->first_bar);
        if (bars->last > bars->first)
            buffer_printf(out, "-%s", bars->last_bar);
    }
}

static void data_loss(Buffer *out, const spz_loss *loss)
{
    if (loss->throughout) {
        buffer_puts(out, "three violin parts throughout");
        return;
    }
    buffer_printf(out, "%s %s", spz_kind_name(loss->kind), spz_section_name(loss->sides[0]));
    buffer_printf(out, loss->sides[1] != SPZ_NO_SECTION ? "/%s " : "%s ", spz_section_name(loss->sides[1]));
    data_bars(out, &loss->basis);
}

void data_losses(Buffer *out, const spz_loss *losses, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        buffer_puts(out, i ? "; " : "");
        data_loss(out, &losses[i]);
    }
}

/* Of a work movement by movement: 'First title: exchange ... | Second title: ...'. */
static void data_all_losses(Buffer *out, const spz_verdict *verdict, const spz_ranked *ranked)
{
    for (size_t i = 0, next; i < ranked->loss_count; i = next) {
        next = losses_end(ranked, i);
        buffer_puts(out, i ? " | " : "");
        if (spz_verdict_movements(verdict)) {
            say_movement(out, SPZ_ENGLISH, verdict, ranked->losses[i].movement);
            buffer_puts(out, ": ");
        }
        data_losses(out, &ranked->losses[i], next - i);
    }
}

static void give_sections(Facts *facts, const spz_section *sections, int count)
{
    if (!fact_list(facts, "sections"))
        return;
    for (int i = 0; i < count; i++)
        if (sections[i] != SPZ_NO_SECTION)
            json_text(&facts->out->json, spz_section_name(sections[i]));
    facts_end_list(facts);
}

/* What it rests on: bars, and the passages by their place in the findings, the weightiest first. */
static void give_basis(Facts *facts, const spz_basis *basis)
{
    Json *json = &facts->out->json;
    if (fact_list(facts, "spans")) {
        for (size_t i = 0; i < basis->bar_count; i++) {
            json_list(json);
            json_text(json, basis->bars[i].first_bar);
            json_text(json, basis->bars[i].last_bar);
            json_end(json);
        }
        facts_end_list(facts);
    }
    if (fact_list(facts, "passages")) {
        for (size_t i = 0; i < basis->passage_count; i++)
            json_integer(json, (long long)basis->passages[i].passage);
        facts_end_list(facts);
    }
}

/* A figure, where there is one. */
static void give_figure(Facts *facts, const char *name, double value, int decimals)
{
    if (value != 0)
        fact_number(facts, name, value, decimals);
}

static void give_term(FactsOut *out, const spz_verdict *verdict, const spz_ranked *ranked, const spz_term *term)
{
    Facts facts = facts_line(out, &term_fields);
    fact_text(&facts, "name", spz_term_name(term->kind));
    fact_number(&facts, "points", term->points, 2);
    say_because(&out->words, SPZ_ENGLISH, verdict, ranked, term);
    fact_said(&facts, "because", "");
    if (term->sections[0] != SPZ_NO_SECTION)
        give_sections(&facts, term->sections, 2);
    give_figure(&facts, "evidence", term->evidence, 3);
    give_figure(&facts, "degrees", term->degrees, 1);
    give_figure(&facts, "widths", term->widths, 2);
    give_figure(&facts, "delay", term->delay, 4);
    give_figure(&facts, "strain", term->strain, 2);
    give_figure(&facts, "centrality", term->centrality, 3);
    give_figure(&facts, "openness", term->openness, 3);
    if (term->kind == SPZ_TERM_ERA && !term->of_movements)
        fact_integer(&facts, "year", term->year);
    if (term->kind == SPZ_TERM_HOUSE && !term->of_movements)
        fact_flag(&facts, "preferred", term->preferred);
    facts_close(&facts);
}

static void give_loss(FactsOut *out, const spz_loss *loss, bool of_work)
{
    Facts facts = facts_line(out, &loss_fields);
    if (of_work)
        fact_integer(&facts, "movement", (long long)loss->movement + 1);
    fact_text(&facts, "kind", spz_kind_name(loss->kind));
    give_sections(&facts, loss->sides, 2);
    fact_flag(&facts, "throughout", loss->throughout);
    give_basis(&facts, &loss->basis);
    facts_close(&facts);
}

void give_losses(Facts *facts, const char *name, const spz_loss *losses, size_t count, bool of_work)
{
    if (!fact_array(facts, name))
        return;
    for (size_t i = 0; i < count; i++)
        give_loss(facts->out, &losses[i], of_work);
    facts_end_list(facts);
}

static void give_terms(Facts *facts, const spz_verdict *verdict, const spz_ranked *ranked)
{
    if (!fact_array(facts, "terms"))
        return;
    for (size_t i = 0; i < ranked->term_count; i++)
        give_term(facts->out, verdict, ranked, &ranked->terms[i]);
    facts_end_list(facts);
}

static void give_ranked(FactsOut *out, const spz_verdict *verdict, size_t place)
{
    const spz_ranked *ranked = spz_verdict_ranked(verdict, place);
    Facts facts = facts_of(out, &ranked_fields);
    fact_integer(&facts, "place", (long long)place + 1);
    fact_text(&facts, "arrangement", ranked->name);
    fact_text(&facts, "violins", ranked->opposed ? "opposed" : "together");
    fact_text(&facts, "outside", spz_section_name(ranked->order.sections[ranked->order.count - 1]));
    data_order(&out->words, ranked->order);
    fact_said(&facts, "order", "");
    give_sections(&facts, ranked->order.sections, ranked->order.count);
    fact_number(&facts, "score", ranked->score, 1);
    fact_number(&facts, "margin", spz_verdict_margin(verdict), 2);
    fact_text(&facts, "confidence", spz_confidence_name(spz_verdict_confidence(verdict)));
    data_all_losses(&out->words, verdict, ranked);
    fact_said(&facts, "losses", "");
    give_losses(&facts, "weakened", ranked->losses, ranked->loss_count, spz_verdict_movements(verdict) > 0);
    fact_integer(&facts, "lost_bars", (long long)ranked->lost_bars);
    fact_number(&facts, "lost_seconds", ranked->lost_seconds, 1);
    give_terms(&facts, verdict, ranked);
    facts_done(&facts);
}

/* The pairs of figures that some kinds of reason have. */
static void give_measures(Facts *facts, const spz_reason *reason)
{
    int decimals = reason->kind == SPZ_REASON_ENSEMBLE ? 4 : reason->kind == SPZ_REASON_BASS ? 3 : 1;
    if (reason->here == 0 && reason->there == 0)
        return;
    fact_number(facts, "here", reason->here, decimals);
    fact_number(facts, "there", reason->there, decimals);
}

static void give_reason_facts(Facts *facts, const spz_reason *reason)
{
    fact_text(facts, "kind", spz_reason_name(reason->kind));
    if (reason->sections[0] != SPZ_NO_SECTION)
        give_sections(facts, reason->sections, 2);
    if (reason->other)
        fact_text(facts, "against", reason->other);
    give_measures(facts, reason);
    give_figure(facts, "shortest", reason->shortest, 3);
    give_figure(facts, "allows", reason->allows, 4);
    if (reason->kind == SPZ_REASON_MOVEMENT) {
        fact_integer(facts, "movement", (long long)reason->movement + 1);
        fact_text(facts, "confidence", spz_confidence_name(reason->alone.confidence));
        fact_integer(facts, "lost_bars", (long long)reason->lost_bars);
        fact_number(facts, "lost_seconds", reason->lost_seconds, 1);
    }
    if (reason->kind == SPZ_REASON_MOVEMENT || reason->kind == SPZ_REMARK_NEIGHBOUR)
        fact_number(facts, "lost", reason->lost, 2);
    give_basis(facts, &reason->basis);
}

static void give_reasons(Facts *verdict_facts, const spz_verdict *verdict)
{
    FactsOut *out = verdict_facts->out;
    if (!fact_array(verdict_facts, "reasons"))
        return;
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++) {
        const spz_reason *reason = spz_verdict_reason(verdict, i);
        Facts facts = facts_line(out, &reason_fields);
        say_reason(&out->words, SPZ_ENGLISH, verdict, reason);
        fact_said(&facts, "text", "");
        data_bars(&out->words, &reason->basis);
        fact_said(&facts, "bars", "");
        fact_number(&facts, "points", reason->points, 2);
        give_reason_facts(&facts, reason);
        facts_close(&facts);
    }
    facts_end_list(verdict_facts);
}

static void give_turning(Facts *facts, spz_turning turning)
{
    say_turning(&facts->out->words, SPZ_ENGLISH, turning);
    fact_said(facts, "turning", "");
    fact_text(facts, "turning_term", turning.factor > 0 ? spz_term_name(turning.term) : NULL);
    fact_number(facts, "turning_factor", turning.factor > 0 ? turning.factor : (double)NAN, 3);
}

static const char *outcome_name(spz_outcome outcome)
{
    static const char *const names[SPZ_OUTCOME_COUNT] = {"judged", "without strings", "without violins", "without movement"};
    return names[outcome];
}

static void give_year(FactsOut *out, int year, const spz_statement *statement)
{
    Facts facts = facts_line(out, &year_fields);
    fact_some(&facts, "year", year != 0, year);
    fact_text(&facts, "recommended", statement->arrangement);
    fact_text(&facts, "confidence", spz_confidence_name(statement->confidence));
    fact_number(&facts, "margin", statement->margin, 2);
    facts_close(&facts);
}

static void give_years(Facts *facts, const spz_verdict *verdict)
{
    spz_by_year by = spz_verdict_by_year(verdict);
    fact_flag(facts, "by_year", spz_verdict_statement(verdict).by_year);
    fact_some(facts, "year_judged", by.year != 0, by.year);
    fact_array(facts, "years");
    give_year(facts->out, 0, &by.silent);
    give_year(facts->out, SPZ_EARLIER_YEAR, &by.earlier);
    give_year(facts->out, SPZ_LATER_YEAR, &by.later);
    facts_end_list(facts);
}

void give_verdict(FactsOut *out, const spz_verdict *verdict)
{
    spz_statement statement = spz_verdict_statement(verdict);
    Facts facts = facts_of(out, &verdict_fields);
    fact_text(&facts, "recommended", statement.arrangement);
    data_statement(&out->words, verdict);
    fact_said(&facts, "statement", "");
    fact_text(&facts, "outcome", outcome_name(statement.outcome));
    fact_array(&facts, "ranked");
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        json_object(&out->json);
        give_ranked(out, verdict, i);
        json_end(&out->json);
    }
    facts_end_list(&facts);
    fact_number(&facts, "margin", statement.margin, 2);
    fact_text(&facts, "confidence", spz_confidence_name(statement.confidence));
    give_years(&facts, verdict);
    give_turning(&facts, spz_verdict_turning(verdict));
    give_reasons(&facts, verdict);
    facts_done(&facts);
}

static void json_movement(spz_report *report, const ShownMovement *shown)
{
    json_object(&report->facts.json);
    give_movement(&report->facts, shown);
    give_verdict(&report->facts, shown->reading.verdict);
    json_end(&report->facts.json);
}

static void begin_rows(spz_report *report)
{
    facts_columns(&report->facts, &seating_columns);
}

static void rows(spz_report *report, const ShownMovement *shown)
{
    for (size_t i = 0; i < spz_verdict_count(shown->reading.verdict); i++) {
        give_movement(&report->facts, shown);
        give_ranked(&report->facts, shown->reading.verdict, i);
        facts_end_row(&report->facts);
    }
}

static void end_rows(spz_report *report)
{
    for (size_t i = 0; report->work && i < spz_verdict_count(report->work); i++) {
        give_all_movements(&report->facts, "all these movements");
        give_ranked(&report->facts, report->work, i);
        facts_end_row(&report->facts);
    }
}

const Form json_seating = {data_begin, json_movement, data_end_with_cautions};
const Form csv_seating = {begin_rows, rows, end_rows};
