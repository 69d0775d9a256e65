/* The recommendation in words, and the tables that let a reader attack it. */
#include "pages/text/text_blocks.h"
#include "wording/seatings/seating_words.h"
#include <stdio.h>

enum { INDENT = 2, REASONS_ON_PAGE = 5 };

/* The buffer as a paragraph; it is emptied. Nothing where it holds nothing. */
static void flow(spz_report *report, const char *mark, Buffer *line)
{
    if (line->length) {
        layout_flow(&report->out, INDENT, mark, line, report->options.width);
        return;
    }
    buffer_let_go(&report->out, line);
}

static void show_recommendation(spz_report *report, const spz_verdict *verdict)
{
    spz_language language = report->options.language;
    Buffer line = {0};
    SAY(&line, language, PHRASE_SEATING_BEST, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(verdict, 0)->name)));
    buffer_putc(&line, ' ');
    say_best_order(&line, language, verdict);
    flow(report, "", &line);
    say_margin(&line, language, verdict);
    flow(report, "", &line);
    say_year(&line, language, verdict);
    flow(report, "", &line);
}

/* A stage that is too small is no small ground. */
static bool is_never_left_out(const spz_reason *reason)
{
    return reason->kind == SPZ_REMARK_SMALL_STAGE;
}

static void show_reasons(spz_report *report, const spz_verdict *verdict, bool all)
{
    spz_language language = report->options.language;
    size_t count = spz_verdict_reasons(verdict);
    size_t first = all || count <= REASONS_ON_PAGE + 1 ? count : REASONS_ON_PAGE, shown = 0;
    Buffer line = {0};
    if (count)
        buffer_printf(&report->out, "\n  %s\n", phrase_text(language, PHRASE_SEATING_WHY));
    for (size_t i = 0; i < count; i++) {
        if (i >= first && !is_never_left_out(spz_verdict_reason(verdict, i)))
            continue;
        shown++;
        say_reason_and_place(&line, language, verdict, spz_verdict_reason(verdict, i));
        flow(report, "- ", &line);
    }
    if (shown < count)
        SAY(&line, language, PHRASE_SEATING_LEFT_OUT, slot_number("n", (long)(count - shown)));
    flow(report, "- ", &line);
}

void block_verdict(spz_report *report, const spz_verdict *verdict, bool all)
{
    spz_language language = report->options.language;
    Buffer line = {0};
    buffer_printf(&report->out, "\n%s\n", phrase_text(language, PHRASE_SEATING_TITLE));
    if (spz_verdict_count(verdict) == 0) {
        say_statement(&line, language, spz_verdict_statement(verdict));
        flow(report, "", &line);
        return;
    }
    show_recommendation(report, verdict);
    show_reasons(report, verdict, all);
    buffer_putc(&report->out, '\n');
    say_instead(&line, language, verdict);
    flow(report, "", &line);
}

static void ranked_row(Table *table, spz_language language, const spz_verdict *verdict, size_t index, bool losses)
{
    const spz_ranked *ranked = spz_verdict_ranked(verdict, index);
    char place[24];
    Buffer score = {0}, order = {0}, lost = {0}, note = {0};
    snprintf(place, sizeof place, "%zu.", index + 1);
    say_figure(&score, language, ranked->score, 1);
    say_order(&order, language, ranked->order);
    table_row(table, (const char *const[]){place, score.text, words_arrangement(language, ranked->name), order.text});
    if (losses)
        say_ranked_losses(&lost, language, verdict, ranked);
    if (lost.length)
        SAY(&note, language, PHRASE_ARRANGEMENTS_WEAKENED, slot_text("losses", lost.text));
    table_note(table, note.text);
    buffer_free(&score);
    buffer_free(&order);
    buffer_free(&lost);
    buffer_free(&note);
}

void block_ranking(spz_report *report, const spz_verdict *verdict, bool losses)
{
    spz_language language = report->options.language;
    const char *const heads[] = {"", phrase_text(language, PHRASE_ARRANGEMENTS_HEAD_POINTS), phrase_text(language, PHRASE_ARRANGEMENTS_HEAD_NAME),
                                 phrase_text(language, PHRASE_ARRANGEMENTS_HEAD_ORDER)};
    static const int most[] = {4, 8, 52, 0};
    if (spz_verdict_count(verdict) == 0)
        return;
    Table table;
    table_begin(&table, 4, heads, most);
    table_align_right(&table, 1);
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        ranked_row(&table, language, verdict, i, losses);
    buffer_printf(&report->out, "\n%s\n", phrase_text(language, PHRASE_ARRANGEMENTS_TITLE));
    layout_paragraph(&report->out, INDENT, "", phrase_text(language, PHRASE_ARRANGEMENTS_ABOUT), report->options.width);
    table_end(&table, &report->out, INDENT, report->options.width);
}

enum { ARRANGEMENTS_SHOWN = 6 };

/* What a term gives each arrangement, and its figures in the first one that it touches. */
static void term_row(Table *table, spz_language language, const spz_verdict *verdict, size_t shown, size_t index)
{
    const char *cells[TABLE_COLUMNS_MOST] = {words_term(language, spz_verdict_ranked(verdict, 0)->terms[index].kind)};
    Buffer points[ARRANGEMENTS_SHOWN] = {{0}}, because;
    buffer_init(&because);
    for (size_t i = 0; i < shown; i++) {
        double here = spz_verdict_ranked(verdict, i)->terms[index].points;
        buffer_puts(&points[i], here >= 0.05 ? "+" : "");
        say_figure(&points[i], language, here, 1);
        cells[i + 1] = points[i].text;
    }
    say_first_because(&because, language, verdict, index);
    cells[shown + 1] = because.text;
    table_row(table, cells);
    for (size_t i = 0; i < shown; i++)
        buffer_free(&points[i]);
    buffer_free(&because);
}

void block_terms(spz_report *report, const spz_verdict *verdict)
{
    static const char *const places[] = {"", "1.", "2.", "3.", "4.", "5.", "6."};
    static const int widest[] = {28, 7, 7, 7, 7, 7, 7, 0};
    spz_language language = report->options.language;
    size_t count = spz_verdict_count(verdict);
    size_t columns = count < ARRANGEMENTS_SHOWN ? count : ARRANGEMENTS_SHOWN;
    const char *heads[TABLE_COLUMNS_MOST] = {NULL};
    int most[TABLE_COLUMNS_MOST] = {0};
    if (count == 0)
        return;
    for (size_t i = 0; i <= columns; i++) {
        heads[i] = i ? places[i] : phrase_text(language, PHRASE_TERMS_HEAD_GROUND);
        most[i] = widest[i];
    }
    heads[columns + 1] = phrase_text(language, PHRASE_TERMS_HEAD_BECAUSE);
    Table table;
    table_begin(&table, (int)columns + 2, heads, most);
    for (size_t i = 1; i <= columns; i++)
        table_align_right(&table, (int)i);
    for (size_t t = 0; t < spz_verdict_ranked(verdict, 0)->term_count; t++)
        term_row(&table, language, verdict, columns, t);
    buffer_printf(&report->out, "\n%s\n", phrase_text(language, PHRASE_TERMS_TITLE));
    table_end(&table, &report->out, INDENT, report->options.width);
}

void block_cautions(spz_report *report)
{
    layout_paragraph(&report->out, 0, "", report_cautions(report->options.language), report->options.width);
}
