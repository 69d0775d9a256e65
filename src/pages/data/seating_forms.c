#include "pages/data/seating_forms.h"
#include "wording/seating_words.h"

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

/* Takes the text from the buffer, which is emptied. */
static void put_words(Json *json, const char *key, Buffer *words)
{
    json_put_text(json, key, words->length ? words->text : "");
    json->out->failed = json->out->failed || buffer_failed(words);
    buffer_clear(words);
}

static void put_sections(Json *json, const spz_section *sections, int count)
{
    json_key(json, "sections");
    json_list(json);
    for (int i = 0; i < count; i++)
        if (sections[i] != SPZ_NO_SECTION)
            json_text(json, spz_section_name(sections[i]));
    json_end(json);
}

/* What it rests on: bars as printed, first and last, and the passages by their place in the findings, the weightiest first. */
static void put_basis(Json *json, const spz_basis *basis)
{
    json_key(json, "spans");
    json_list(json);
    for (size_t i = 0; i < basis->bar_count; i++) {
        json_list(json);
        json_text(json, basis->bars[i].first_bar);
        json_text(json, basis->bars[i].last_bar);
        json_end(json);
    }
    json_end(json);
    json_key(json, "passages");
    json_list(json);
    for (size_t i = 0; i < basis->passage_count; i++)
        json_integer(json, (long long)basis->passages[i].passage);
    json_end(json);
}

/* A figure, where there is one. */
static void put_figure(Json *json, const char *key, double value, int decimals)
{
    if (value != 0)
        json_put_number(json, key, value, decimals);
}

static void put_term_figures(Json *json, const spz_term *term)
{
    if (term->sections[0] != SPZ_NO_SECTION)
        put_sections(json, term->sections, 2);
    put_figure(json, "evidence", term->evidence, 3);
    put_figure(json, "degrees", term->degrees, 1);
    put_figure(json, "widths", term->widths, 2);
    put_figure(json, "delay", term->delay, 4);
    put_figure(json, "strain", term->strain, 2);
    put_figure(json, "centrality", term->centrality, 3);
    put_figure(json, "openness", term->openness, 3);
    if (term->kind == SPZ_TERM_ERA && !term->of_movements)
        json_put_integer(json, "year", term->year);
    if (term->kind == SPZ_TERM_HOUSE && !term->of_movements)
        json_put_flag(json, "preferred", term->preferred);
}

static void put_terms(Json *json, const spz_ranked *ranked)
{
    Buffer words;
    buffer_init(&words);
    json_key(json, "terms");
    json_array(json);
    for (size_t i = 0; i < ranked->term_count; i++) {
        const spz_term *term = &ranked->terms[i];
        json_row(json);
        json_put_text(json, "name", spz_term_name(term->kind));
        json_put_number(json, "points", term->points, 2);
        say_because(&words, SPZ_ENGLISH, ranked, term);
        put_words(json, "because", &words);
        put_term_figures(json, term);
        json_end(json);
    }
    json_end(json);
    buffer_free(&words);
}

void json_put_losses(Json *json, const char *key, const spz_loss *losses, size_t count, bool of_work)
{
    json_key(json, key);
    json_array(json);
    for (size_t i = 0; i < count; i++) {
        json_row(json);
        if (of_work)
            json_put_integer(json, "movement", (long long)losses[i].movement + 1);
        json_put_text(json, "kind", spz_kind_name(losses[i].kind));
        put_sections(json, losses[i].sides, 2);
        json_put_flag(json, "throughout", losses[i].throughout);
        put_basis(json, &losses[i].basis);
        json_end(json);
    }
    json_end(json);
}

static void put_ranked(Json *json, const spz_verdict *verdict, const spz_ranked *ranked)
{
    Buffer words;
    buffer_init(&words);
    json_object(json);
    json_put_text(json, "arrangement", ranked->name);
    json_put_text(json, "violins", ranked->opposed ? "opposed" : "together");
    json_put_text(json, "outside", spz_section_name(ranked->order.sections[ranked->order.count - 1]));
    json_put_number(json, "score", ranked->score, 1);
    data_order(&words, ranked->order);
    put_words(json, "order", &words);
    put_sections(json, ranked->order.sections, ranked->order.count);
    data_all_losses(&words, verdict, ranked);
    put_words(json, "losses", &words);
    json_put_losses(json, "weakened", ranked->losses, ranked->loss_count, spz_verdict_movements(verdict) > 0);
    put_terms(json, ranked);
    json_end(json);
    buffer_free(&words);
}

/* The pairs of figures that some kinds of reason have. */
static void put_measures(Json *json, const spz_reason *reason)
{
    int decimals = reason->kind == SPZ_REASON_ENSEMBLE ? 4 : reason->kind == SPZ_REASON_BASS ? 3 : 1;
    if (reason->here == 0 && reason->there == 0)
        return;
    json_put_number(json, "here", reason->here, decimals);
    json_put_number(json, "there", reason->there, decimals);
}

static void put_alone(Json *json, const spz_reason *reason)
{
    json_put_integer(json, "movement", (long long)reason->movement + 1);
    json_put_text(json, "confidence", spz_confidence_name(reason->alone.confidence));
    json_put_number(json, "lost", reason->lost, 2);
}

static void put_reason_facts(Json *json, const spz_reason *reason)
{
    json_put_text(json, "kind", spz_reason_name(reason->kind));
    if (reason->sections[0] != SPZ_NO_SECTION)
        put_sections(json, reason->sections, 2);
    if (reason->other)
        json_put_text(json, "against", reason->other);
    put_measures(json, reason);
    put_figure(json, "shortest", reason->shortest, 3);
    put_figure(json, "allows", reason->allows, 4);
    if (reason->kind == SPZ_REASON_MOVEMENT)
        put_alone(json, reason);
    if (reason->kind == SPZ_REMARK_NEIGHBOUR)
        json_put_number(json, "lost", reason->lost, 2);
    put_basis(json, &reason->basis);
}

static void put_reasons(Json *json, const spz_verdict *verdict)
{
    Buffer words;
    buffer_init(&words);
    json_key(json, "reasons");
    json_array(json);
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++) {
        const spz_reason *reason = spz_verdict_reason(verdict, i);
        json_row(json);
        say_reason(&words, SPZ_ENGLISH, verdict, reason);
        put_words(json, "text", &words);
        data_bars(&words, &reason->basis);
        put_words(json, "bars", &words);
        json_put_number(json, "points", reason->points, 2);
        put_reason_facts(json, reason);
        json_end(json);
    }
    json_end(json);
    buffer_free(&words);
}

static void put_turning(Json *json, const spz_verdict *verdict)
{
    spz_turning turning = spz_verdict_turning(verdict);
    json_put_text(json, "turning_term", turning.factor > 0 ? spz_term_name(turning.term) : NULL);
    json_key(json, "turning_factor");
    if (turning.factor > 0)
        json_number(json, turning.factor, 3);
    else
        json_text(json, NULL);
}

static const char *outcome_name(spz_outcome outcome)
{
    static const char *const names[SPZ_OUTCOME_COUNT] = {"judged", "without strings", "without violins", "without movement"};
    return names[outcome];
}

void json_put_verdict(Json *json, const spz_verdict *verdict)
{
    spz_statement statement = spz_verdict_statement(verdict);
    Buffer words;
    buffer_init(&words);
    json_put_text(json, "recommended", statement.arrangement);
    say_statement(&words, SPZ_ENGLISH, statement);
    put_words(json, "statement", &words);
    json_put_text(json, "outcome", outcome_name(statement.outcome));
    json_key(json, "ranked");
    json_array(json);
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        put_ranked(json, verdict, spz_verdict_ranked(verdict, i));
    json_end(json);
    json_put_number(json, "margin", statement.margin, 2);
    json_put_text(json, "confidence", spz_confidence_name(statement.confidence));
    say_turning(&words, SPZ_ENGLISH, spz_verdict_turning(verdict));
    put_words(json, "turning", &words);
    put_turning(json, verdict);
    put_reasons(json, verdict);
    buffer_free(&words);
}

static void begin_csv(spz_report *report)
{
    csv_header(&report->row, "file,title,place,arrangement,violins,outside,order,score,margin,confidence,losses");
}

static void csv_rows(CsvRow *row, const spz_verdict *verdict, const char *file, const char *title)
{
    Buffer order, losses;
    buffer_init(&order);
    buffer_init(&losses);
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        buffer_clear(&order);
        buffer_clear(&losses);
        data_order(&order, ranked->order);
        data_all_losses(&losses, verdict, ranked);
        csv_text(row, file);
        csv_text(row, title);
        csv_integer(row, (long long)i + 1);
        csv_text(row, ranked->name);
        csv_text(row, ranked->opposed ? "opposed" : "together");
        csv_text(row, spz_section_name(ranked->order.sections[ranked->order.count - 1]));
        csv_text(row, order.text);
        csv_number(row, ranked->score, 1);
        csv_number(row, spz_verdict_margin(verdict), 2);
        csv_text(row, spz_confidence_name(spz_verdict_confidence(verdict)));
        csv_text(row, losses.length ? losses.text : "");
        csv_end(row);
    }
    row->out->failed = row->out->failed || order.failed || losses.failed;
    buffer_free(&order);
    buffer_free(&losses);
}

static void csv_movement(spz_report *report, const ShownMovement *shown)
{
    csv_rows(&report->row, shown->reading.verdict, shown->file, shown->title);
}

static void end_csv(spz_report *report)
{
    if (report->work)
        csv_rows(&report->row, report->work, "", "all these movements");
}

const Form csv_seating = {begin_csv, csv_movement, end_csv};
