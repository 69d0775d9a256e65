/* The table of passages in three parts: what gains from distance, what is divided, what asks to sit close. */
#include "editing/division_desks.h"
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/passage_words.h"
#include "support/memory.h"
#include <stdlib.h>

enum { INDENT = 2 };

typedef struct Family {
    const char *title;
    size_t most; /* rows on the short page: what fits one side of paper with the verdict */
    bool kinds[SPZ_KIND_COUNT];
} Family;

static const Family families[] = {
    {"SECTIONS THAT ANSWER EACH OTHER", 24, {[SPZ_EXCHANGE] = true, [SPZ_HOCKET] = true, [SPZ_SPLIT_LINE] = true, [SPZ_IMITATION] = true}},
    {"DIVIDED SECTIONS", 10, {[SPZ_DIV2] = true, [SPZ_DIV3] = true}},
    {"SECTIONS THAT MOVE TOGETHER", 8, {[SPZ_COUPLING] = true}},
};

static const double clear = 0.5; /* the scale of passages.h */

typedef struct Pick {
    const spz_passage *passage;
    size_t place; /* in the findings */
} Pick;

static int stronger_first(const void *a, const void *b)
{
    const Pick *one = a, *two = b;
    if (one->passage->strength != two->passage->strength)
        return one->passage->strength < two->passage->strength ? 1 : -1;
    return one->place < two->place ? -1 : one->place > two->place;
}

static int earlier_first(const void *a, const void *b)
{
    const Pick *one = a, *two = b;
    return one->place < two->place ? -1 : one->place > two->place;
}

static size_t pick_family(const spz_report *report, const spz_findings *findings, const Family *family, Pick *picks)
{
    size_t count = 0;
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (family->kinds[passage->kind] && report_shows(&report->options, passage))
            picks[count++] = (Pick){passage, i};
    }
    return count;
}

static size_t count_clear(const Pick *picks, size_t count)
{
    size_t found = 0;
    while (found < count && picks[found].passage->strength >= clear)
        found++;
    return found;
}

/* With the players of `settings` a division names its desks; NULL: it doesn't. */
static void passage_row(Table *table, const Pick *pick, const spz_sections *sections, const spz_settings *settings)
{
    Buffer reason, desks;
    char bars[WORDS_TEXT], kind[WORDS_TEXT], who[WORDS_TEXT];
    const spz_passage *passage = pick->passage;
    table_row(table, (const char *const[]){words_bars(passage, bars), passage->rehearsal, words_kind(passage, kind),
                                           words_who(passage, sections, who), spz_strength_word(passage->strength)});
    buffer_init(&reason);
    words_reason(passage, &reason);
    buffer_init(&desks);
    if (settings)
        division_desks(passage, settings, &desks);
    if (desks.length)
        buffer_printf(&reason, ". Desks: %s", desks.text);
    table_note(table, reason.text);
    table->failed = table->failed || reason.failed || desks.failed;
    buffer_free(&desks);
    buffer_free(&reason);
}

static void say_left_out(spz_report *report, size_t clear_left, size_t marginal)
{
    Buffer line, *out = &line;
    if (clear_left + marginal == 0)
        return;
    buffer_init(out);
    buffer_puts(out, "Not shown:");
    if (clear_left)
        buffer_printf(out, " %zu more clear one%s", clear_left, clear_left == 1 ? "" : "s");
    if (marginal)
        buffer_printf(out, "%s %zu marginal one%s", clear_left ? "," : "", marginal, marginal == 1 ? "" : "s");
    buffer_puts(out, " (--all shows them).");
    layout_flow(&report->out, INDENT, "", out, report->options.width);
}

static void print_family(spz_report *report, const ShownMovement *shown, const Family *family, Pick *picks, size_t count, bool all)
{
    static const char *const heads[] = {"Bars", "Letter", "Kind", "Who", "Strength"};
    static const int most[] = {14, 10, 12, 0, 10};
    size_t rows = count, clear_ones = count;
    if (!all) {
        qsort(picks, count, sizeof *picks, stronger_first);
        clear_ones = count_clear(picks, count);
        rows = clear_ones < family->most ? clear_ones : family->most;
        qsort(picks, rows, sizeof *picks, earlier_first);
    }
    buffer_printf(&report->out, "\n%s\n", family->title);
    if (rows > 0) {
        Table table;
        table_begin(&table, 5, heads, most);
        for (size_t i = 0; i < rows; i++)
            passage_row(&table, &picks[i], shown->reading.sections, all ? report->options.settings : NULL);
        table_end(&table, &report->out, INDENT, report->options.width);
    } else if (count == 0)
        buffer_puts(&report->out, "  None found.\n");
    else
        buffer_puts(&report->out, "  None that is clear.\n");
    say_left_out(report, clear_ones - rows, count - clear_ones);
}

/* Families that the user's choice of kinds leaves out are not spoken of. */
static bool wanted(const spz_report_options *options, const Family *family)
{
    if (!options->kinds)
        return true;
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++)
        if (family->kinds[kind] && (options->kinds & 1u << kind))
            return true;
    return false;
}

void block_passages(spz_report *report, const ShownMovement *shown, bool all)
{
    const spz_findings *findings = shown->reading.findings;
    Pick *picks = memory_resize(NULL, spz_findings_count(findings), sizeof *picks);
    if (!picks) {
        report->out.failed = true;
        return;
    }
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++)
        if (wanted(&report->options, &families[i]))
            print_family(report, shown, &families[i], picks, pick_family(report, findings, &families[i], picks), all);
    memory_free(picks);
}
