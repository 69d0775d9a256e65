/* The table of passages in three parts: what gains from distance, what is divided, what asks to sit close. */
#include "wording/papers/desk_words.h"
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/passage_words.h"
#include "support/memory.h"
#include <stdlib.h>

enum { INDENT = 2 };

typedef struct Family {
    Phrase title;
    size_t most; /* rows on the short page: what fits one side of paper with the verdict */
    bool kinds[SPZ_KIND_COUNT];
} Family;

static const Family families[] = {
    {PHRASE_FAMILY_ANSWERING, 24, {[SPZ_EXCHANGE] = true, [SPZ_HOCKET] = true, [SPZ_SPLIT_LINE] = true, [SPZ_IMITATION] = true}},
    {PHRASE_FAMILY_DIVIDED, 10, {[SPZ_DIV2] = true, [SPZ_DIV3] = true}},
    {PHRASE_FAMILY_TOGETHER, 8, {[SPZ_COUPLING] = true}},
};

static const double clear = 0.5; /* the scale of passages.h */

typedef struct Pick {
    const spz_passage *passage;
    size_t place; /* in the findings */
} Pick;

static int stronger_first(const void *a, const void *b)
{
    const Pick *one = a, *two = b;
    double first = spz_passage_standing(one->passage), second = spz_passage_standing(two->passage);
    if (first < second || first > second)
        return first < second ? 1 : -1;
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
    while (found < count && spz_passage_standing(picks[found].passage) >= clear)
        found++;
    return found;
}

void passage_heads(Table *table, spz_language language)
{
    static const int most[] = {14, 10, 12, 0, 20};
    const char *const heads[] = {phrase_text(language, PHRASE_HEAD_BARS), phrase_text(language, PHRASE_HEAD_LETTER), phrase_text(language, PHRASE_HEAD_KIND),
                                 phrase_text(language, PHRASE_HEAD_WHO), phrase_text(language, PHRASE_HEAD_STRENGTH)};
    table_begin(table, 5, heads, most);
}

void passage_cells(Table *table, const Speaker *speaker, const spz_passage *passage)
{
    char bars[WORDS_TEXT], letter[WORDS_TEXT], kind[WORDS_TEXT], who[WORDS_TEXT], standing[WORDS_TEXT];
    table_row(table, (const char *const[]){words_bars(speaker->language, passage, bars), words_letter(passage, letter),
                                           words_kind(speaker->language, passage, kind), words_who(speaker, passage, who),
                                           words_standing(speaker->language, passage, standing)});
}

/* With the players of `settings` a division names its desks; NULL: it doesn't. */
static void passage_row(Table *table, const Pick *pick, const Speaker *speaker, const spz_settings *settings)
{
    Buffer reason = {0}, desks = {0};
    const spz_passage *passage = pick->passage;
    passage_cells(table, speaker, passage);
    words_reason(speaker, passage, &reason);
    if (settings)
        words_division_desks(speaker->language, passage, settings, &desks);
    if (desks.length)
        SAY(&reason, speaker->language, PHRASE_ALLOTMENT_DESKS, slot_text("desks", desks.text));
    table_note(table, reason.text);
    buffers_let_go(table, &reason, &desks);
}

static void say_left_out(spz_report *report, spz_language language, size_t clear_left, size_t marginal)
{
    Buffer line = {0};
    if (clear_left + marginal == 0)
        return;
    SAY(&line, language, !marginal ? PHRASE_FAMILY_LEFT_OUT : clear_left ? PHRASE_FAMILY_LEFT_OUT_BOTH : PHRASE_FAMILY_LEFT_OUT_MARGINAL,
        slot_number("n", (long)clear_left), slot_number("m", (long)marginal));
    layout_flow(&report->out, INDENT, "", &line, report->options.width);
    buffer_free(&line);
}

static Phrase nothing(const spz_findings *findings, const Family *family)
{
    return family->kinds[SPZ_DIV2] && spz_findings_chamber_music(findings) ? PHRASE_FAMILY_NONE_CHAMBER : PHRASE_FAMILY_NONE;
}

static void print_family(spz_report *report, const ShownMovement *shown, const Family *family, Pick *picks, size_t count, bool all)
{
    Speaker speaker = report_speaker(report, shown);
    size_t rows = count, clear_ones = count;
    if (!all) {
        qsort(picks, count, sizeof *picks, stronger_first);
        clear_ones = count_clear(picks, count);
        rows = clear_ones < family->most ? clear_ones : family->most;
        qsort(picks, rows, sizeof *picks, earlier_first);
    }
    buffer_putc(&report->out, '\n');
    SAY(&report->out, speaker.language, family->title, slot_alone(speaker.sections));
    buffer_putc(&report->out, '\n');
    if (rows > 0) {
        Table table;
        passage_heads(&table, speaker.language);
        for (size_t i = 0; i < rows; i++)
            passage_row(&table, &picks[i], &speaker, all ? report->options.settings : NULL);
        table_end(&table, &report->out, INDENT, report->options.width);
    } else if (count == 0)
        buffer_printf(&report->out, "  %s\n", phrase_text(speaker.language, nothing(shown->reading.findings, family)));
    else
        buffer_printf(&report->out, "  %s\n", phrase_text(speaker.language, PHRASE_FAMILY_NONE_CLEAR));
    say_left_out(report, speaker.language, clear_ones - rows, count - clear_ones);
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
