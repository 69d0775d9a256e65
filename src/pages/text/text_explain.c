/* What was considered at one bar: first what is reported there, then every call and answer that was compared, with its fate. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/passage_words.h"
#include "spezzato/explain.h"
#include <string.h>

enum { INDENT = 2, LISTED_MOST = 12 };

static void begin(spz_report *report)
{
    (void)report;
}

static bool sounds_in(const spz_passage *passage, const spz_movement *movement, const char *bar)
{
    for (size_t i = passage->first; i <= passage->last; i++)
        if (!strcmp(spz_movement_bar_number(movement, i), bar))
            return true;
    return false;
}

static size_t count_reported(const spz_movement_reading *reading, const char *bar)
{
    size_t count = 0;
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++)
        count += sounds_in(spz_findings_at(reading->findings, i), reading->movement, bar);
    return count;
}

static void list_reported(spz_report *report, const spz_movement_reading *reading, const char *bar)
{
    static const char *const heads[] = {"Bars", "Letter", "Kind", "Who", "Strength"};
    static const int most[] = {14, 10, 12, 0, 10};
    char bars[WORDS_TEXT], kind[WORDS_TEXT], who[WORDS_TEXT];
    Table table;
    buffer_printf(&report->out, "\nREPORTED IN BAR %s\n", bar);
    if (count_reported(reading, bar) == 0) {
        buffer_puts(&report->out, "  Nothing.\n");
        return;
    }
    table_begin(&table, 5, heads, most);
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        if (!sounds_in(passage, reading->movement, bar))
            continue;
        table_row(&table, (const char *const[]){words_bars(passage, bars), passage->rehearsal, words_kind(passage, kind),
                                               words_who(passage, reading->sections, who), spz_strength_word(passage->strength)});
        table_note(&table, passage->reason);
    }
    table_end(&table, &report->out, INDENT, report->options.width);
}

static const char *aside_words(double aside)
{
    return aside >= 0.85 ? "out of the way" : aside >= 0.6 ? "mostly out of the way" : aside >= 0.35 ? "half out of the way" : "as busy";
}

static void say_who(const spz_considered *item, Buffer *line)
{
    char first[WORDS_TEXT];
    bool one = item->first == item->last;
    buffer_printf(line, "%s %s%s%s: %s, answered %s later by the %s %s.", one ? "Bar" : "Bars", item->first_bar, one ? "" : "-",
                  one ? "" : item->last_bar, words_capital(item->caller, first, sizeof first), item->lag, item->responder,
                  item->interval);
}

static void say_measures(const spz_considered *item, Buffer *line)
{
    buffer_printf(line, "%d notes in common in %d call%s; likeness %.2f (%.2f of the steps by the same interval); under the answer the "
                        "caller is %s (%.2f), under the call the responder is %s (%.2f); foreground %.2f; strength %.2f, %s.",
                  item->tones, item->statements, item->statements == 1 ? "" : "s", item->alike, item->exact,
                  aside_words(item->caller_aside), item->caller_aside, aside_words(item->responder_aside), item->responder_aside,
                  item->foreground, item->strength, spz_strength_word(item->strength));
}

static void say_comparison(const spz_considered *item, Buffer *line)
{
    if (!*item->for_it && !*item->against_it)
        return;
    buffer_puts(line, "Beside the clear passages of this movement");
    if (*item->for_it)
        buffer_printf(line, ", for it: %s", item->for_it);
    if (*item->against_it)
        buffer_printf(line, "%s against it: %s", *item->for_it ? ";" : ",", item->against_it);
    buffer_putc(line, '.');
}

static void print_considered(spz_report *report, const spz_considered *item)
{
    char fate[2 * WORDS_TEXT];
    Buffer line;
    buffer_init(&line);
    buffer_putc(&report->out, '\n');
    say_who(item, &line);
    layout_flow(&report->out, INDENT, "- ", &line, report->options.width);
    say_measures(item, &line);
    layout_flow(&report->out, 2 * INDENT, "", &line, report->options.width);
    say_comparison(item, &line);
    if (line.length)
        layout_flow(&report->out, 2 * INDENT, "", &line, report->options.width);
    buffer_printf(&line, "%s.", words_capital(item->because, fate, sizeof fate));
    layout_flow(&report->out, 2 * INDENT, "", &line, report->options.width);
    buffer_free(&line);
}

static void list_considered(spz_report *report, const spz_explanation *explanation)
{
    size_t count = spz_explanation_count(explanation), more = spz_explanation_more(explanation);
    buffer_puts(&report->out, "\nCALLS AND ANSWERS THAT WERE COMPARED, THE STRONGEST FIRST\n");
    if (count == 0)
        layout_paragraph(&report->out, INDENT, "", "None: no section plays here what another plays within eight bars, alike enough and with one of "
                                                   "them making way for the other, so that it would be weighed.", report->options.width);
    for (size_t i = 0; i < count; i++)
        print_considered(report, spz_explanation_at(explanation, i));
    if (more)
        buffer_printf(&report->out, "\n  %zu more, weaker than these, %s left out.\n", more, more == 1 ? "was" : "were");
}

static void say_no_bar(spz_report *report, const ShownMovement *shown, const char *bar)
{
    const spz_movement *movement = shown->reading.movement;
    size_t bars = spz_movement_bars(movement);
    Buffer line;
    buffer_init(&line);
    buffer_printf(&line, "There is no bar %s in this movement", bar);
    if (bars)
        buffer_printf(&line, ": its bars are %s to %s", spz_movement_bar_number(movement, 0), spz_movement_bar_number(movement, bars - 1));
    buffer_putc(&line, '.');
    buffer_putc(&report->out, '\n');
    layout_flow(&report->out, 0, "", &line, report->options.width);
    buffer_free(&line);
}

static void movement(spz_report *report, const ShownMovement *shown)
{
    const char *bar = report->options.bar ? report->options.bar : "";
    spz_explanation *explanation = NULL;
    block_title(report, shown);
    spz_status status = spz_explanation_make(shown->reading.sections, bar, LISTED_MOST, &explanation);
    if (status == SPZ_BAD_ARGUMENT)
        say_no_bar(report, shown, bar);
    else if (status != SPZ_OK)
        report->out.failed = true;
    else {
        list_reported(report, &shown->reading, bar);
        list_considered(report, explanation);
    }
    spz_explanation_free(explanation);
}

static void end(spz_report *report)
{
    (void)report;
}

const Form text_considered = {begin, movement, end};
