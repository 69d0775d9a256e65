/* The recommendation in words, and the tables that let a reader attack it. */
#include "editing/score_files.h"
#include "writing/text_layout.h"
#include "writing/number_text.h"
#include "pages/text/text_blocks.h"
#include "wording/passage_words.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { INDENT = 2, REASONS_ON_PAGE = 5 };

static void say_recommendation(spz_report *report, const spz_verdict *verdict)
{
    char name[WORDS_TEXT];
    const spz_ranked *best = spz_verdict_ranked(verdict, 0);
    spz_confidence confidence = spz_verdict_confidence(verdict);
    Buffer line;
    buffer_init(&line);
    buffer_printf(&line, "%s. From house left to house right: %s.", words_capital(best->name, name, sizeof name), best->order_text);
    layout_flow(&report->out, INDENT, "", &line, report->options.width);
    buffer_printf(&line, "%s: %s. Margin over the best seating with the violins %s: %ld of 100.", words_confidence(confidence),
                  words_confidence_meaning(confidence), best->opposed ? "together" : "opposed",
                  lround(spz_verdict_margin(verdict) * 100));
    if (*spz_verdict_turning(verdict))
        buffer_printf(&line, " It %s.", spz_verdict_turning(verdict));
    layout_flow(&report->out, INDENT, "", &line, report->options.width);
}

static void say_reason(spz_report *report, const spz_reason *reason)
{
    Buffer line;
    buffer_init(&line);
    buffer_puts(&line, reason->text);
    if (*reason->bars)
        buffer_printf(&line, " (bars %s)", reason->bars);
    layout_flow(&report->out, INDENT, "- ", &line, report->options.width);
}

static void say_losses(spz_report *report, const spz_verdict *verdict)
{
    const spz_ranked *other = judged_other_placing(verdict);
    if (!other)
        return;
    Buffer line;
    buffer_init(&line);
    buffer_printf(&line, "With %s instead: ", other->name);
    if (*other->losses_text)
        buffer_printf(&line, "lost or weakened are %s.", other->losses_text);
    else
        buffer_puts(&line, "no passage of the score is weakened.");
    layout_flow(&report->out, INDENT, "", &line, report->options.width);
}

static void say_reasons(spz_report *report, const spz_verdict *verdict, bool all)
{
    size_t count = spz_verdict_reasons(verdict);
    size_t shown = all || count <= REASONS_ON_PAGE + 1 ? count : REASONS_ON_PAGE;
    Buffer line;
    if (count)
        buffer_puts(&report->out, "\n  Why:\n");
    for (size_t i = 0; i < shown; i++)
        say_reason(report, spz_verdict_reason(verdict, i));
    if (shown == count)
        return;
    buffer_init(&line);
    buffer_printf(&line, "%zu smaller grounds are left out (--all shows them)", count - shown);
    layout_flow(&report->out, INDENT, "- ", &line, report->options.width);
}

void block_verdict(spz_report *report, const spz_verdict *verdict, bool all)
{
    buffer_puts(&report->out, "\nSEATING\n");
    if (spz_verdict_count(verdict) == 0) {
        layout_paragraph(&report->out, INDENT, "", spz_verdict_statement_text(verdict), report->options.width);
        return;
    }
    say_recommendation(report, verdict);
    say_reasons(report, verdict, all);
    buffer_putc(&report->out, '\n');
    say_losses(report, verdict);
}

void block_ranking(spz_report *report, const spz_verdict *verdict, bool losses)
{
    static const char *const heads[] = {"", "Points", "Arrangement", "From house left to house right"};
    static const int most[] = {4, 8, 48, 0};
    if (spz_verdict_count(verdict) == 0)
        return;
    Table table;
    table_begin(&table, 4, heads, most);
    table_align_right(&table, 1);
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        char place[24], score[NUMBER_TEXT];
        snprintf(place, sizeof place, "%zu.", i + 1);
        table_row(&table, (const char *const[]){place, number_text(ranked->score, 1, score), ranked->name, ranked->order_text});
        table_note_about(&table, "weakened: ", losses ? ranked->losses_text : "");
    }
    buffer_puts(&report->out, "\nARRANGEMENTS\n");
    layout_paragraph(&report->out, INDENT, "", "100 points: all evidence speaks for it; 50: none either way", report->options.width);
    table_end(&table, &report->out, INDENT, report->options.width);
}

static const spz_term *term_of(const spz_ranked *ranked, const char *name)
{
    for (size_t i = 0; i < ranked->term_count; i++)
        if (strcmp(ranked->terms[i].name, name) == 0)
            return &ranked->terms[i];
    return NULL;
}

static bool named_before(const spz_verdict *verdict, size_t place, size_t index)
{
    const char *name = spz_verdict_ranked(verdict, place)->terms[index].name;
    for (size_t i = 0; i < place; i++)
        if (term_of(spz_verdict_ranked(verdict, i), name))
            return true;
    return false;
}

enum { ARRANGEMENTS_SHOWN = 6 };

static void term_row(Table *table, const spz_verdict *verdict, size_t shown, const spz_term *term)
{
    const char *cells[TABLE_COLUMNS_MOST] = {term->name};
    char points[ARRANGEMENTS_SHOWN][NUMBER_TEXT + 1];
    for (size_t i = 0; i < shown; i++) {
        const spz_term *here = term_of(spz_verdict_ranked(verdict, i), term->name);
        number_text(here ? here->points : 0, 1, points[i] + 1);
        points[i][0] = '+';
        cells[i + 1] = here && here->points > 0 && strcmp(points[i] + 1, "0.0") ? points[i] : points[i] + 1;
    }
    cells[shown + 1] = term->because;
    table_row(table, cells);
}

void block_terms(spz_report *report, const spz_verdict *verdict)
{
    static const char *const heads[] = {"Ground", "1.", "2.", "3.", "4.", "5.", "6."};
    static const int widest[] = {28, 7, 7, 7, 7, 7, 7, 0};
    size_t count = spz_verdict_count(verdict);
    size_t columns = count < ARRANGEMENTS_SHOWN ? count : ARRANGEMENTS_SHOWN;
    const char *named[TABLE_COLUMNS_MOST] = {NULL};
    int most[TABLE_COLUMNS_MOST] = {0};
    if (count == 0)
        return;
    for (size_t i = 0; i <= columns; i++) {
        named[i] = heads[i];
        most[i] = widest[i];
    }
    named[columns + 1] = "In the first arrangement that it touches";
    Table table;
    table_begin(&table, (int)columns + 2, named, most);
    for (size_t i = 1; i <= columns; i++)
        table_align_right(&table, (int)i);
    for (size_t place = 0; place < count; place++)
        for (size_t t = 0; t < spz_verdict_ranked(verdict, place)->term_count; t++)
            if (!named_before(verdict, place, t))
                term_row(&table, verdict, columns, &spz_verdict_ranked(verdict, place)->terms[t]);
    buffer_puts(&report->out, "\nWHAT SPEAKS FOR (+) AND AGAINST (-) EACH\n");
    table_end(&table, &report->out, INDENT, report->options.width);
}

void block_cautions(spz_report *report)
{
    layout_paragraph(&report->out, 0, "", report_cautions(report->options.language), report->options.width);
}
