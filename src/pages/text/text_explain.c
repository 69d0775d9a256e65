/* What was considered at one bar: first which section has the line and what the others are to it, then what is reported there, and every call
 * and answer that was compared, with its fate. */
#include "writing/text_layout.h"
#include "pages/text/text_blocks.h"
#include "wording/explain_words.h"
#include <string.h>

enum { INDENT = 2, LISTED_MOST = 12, RAISED_MOST = 3, VOICES_MOST = 64, SECTION_NAME = 128 };

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

static void list_reported(spz_report *report, const ShownMovement *shown, const char *bar)
{
    const spz_movement_reading *reading = &shown->reading;
    Speaker speaker = report_speaker(report, shown);
    Buffer told = {0};
    Table table;
    buffer_putc(&report->out, '\n');
    SAY(&report->out, speaker.language, PHRASE_EXPLAIN_REPORTED_IN, slot_text("bar", bar));
    buffer_putc(&report->out, '\n');
    if (count_reported(reading, bar) == 0) {
        buffer_printf(&report->out, "  %s\n", phrase_text(speaker.language, PHRASE_EXPLAIN_NOTHING));
        return;
    }
    passage_heads(&table, speaker.language);
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        if (!sounds_in(passage, reading->movement, bar))
            continue;
        passage_cells(&table, &speaker, passage);
        buffer_clear(&told);
        words_told(&speaker, passage, &told);
        words_ruling(speaker.language, passage, &told);
        table_note(&table, buffer_text(&told));
    }
    buffer_let_go(&report->out, &told);
    table_end(&table, &report->out, INDENT, report->options.width);
}

/* Lines for a settings file that take the passages of the bar out, or weigh them. */
static void list_lines(spz_report *report, const ShownMovement *shown, const char *bar)
{
    const spz_movement_reading *reading = &shown->reading;
    char section[SECTION_NAME], line[WORDS_TEXT];
    if (count_reported(reading, bar) == 0)
        return;
    buffer_putc(&report->out, '\n');
    layout_paragraph(&report->out, INDENT, "", phrase_text(report->options.language, PHRASE_EXPLAIN_LINES), report->options.width);
    buffer_printf(&report->out, "    [%s]\n", ruling_section(shown, section, sizeof section));
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        if (!sounds_in(passage, reading->movement, bar) || !*spz_passage_line(reading->findings, i, line, sizeof line))
            continue;
        const char *word = passage->ruling.kind == SPZ_VETOED ? "no" : spz_weight_name(spz_weight_of(passage->strength));
        bool reason = passage->ruling.reason && *passage->ruling.reason;
        buffer_printf(&report->out, "    %s = %s%s%s\n", line, word, reason ? ", " : "", reason ? passage->ruling.reason : "");
    }
}

/* The string sections, or the winds, of which the same is said as of voice `first`: its line. Marks them in `told`. */
static void put_voices(const ShownMovement *shown, const spz_explanation *explanation, spz_language language, size_t first, bool told[], Buffer *out)
{
    Buffer what = {0}, same = {0}, who = {0};
    spz_group players[VOICES_MOST];
    size_t count = 0;
    bool wind = spz_explanation_voice(explanation, first)->part != SIZE_MAX;
    explain_role(language, spz_explanation_voice(explanation, first), &what);
    for (size_t i = first; i < spz_explanation_voices(explanation) && i < VOICES_MOST; i++) {
        const spz_voice_in_bar *voice = spz_explanation_voice(explanation, i);
        buffer_clear(&same);
        explain_role(language, voice, &same);
        if (told[i] || wind != (voice->part != SIZE_MAX) || strcmp(buffer_text(&what), buffer_text(&same)) != 0)
            continue;
        told[i] = true;
        if (wind)
            buffer_printf(&who, "%s%s", i == first ? "" : phrase_text(language, PHRASE_LIST_NEXT), spz_movement_part_name(shown->reading.movement, voice->part));
        else
            players[count++] = *spz_sections_group(shown->reading.sections, voice->group);
    }
    if (count)
        SAY(&who, language, PHRASE_ROLES_WHO, slot_players("who", players, count));
    SAY(out, language, PHRASE_ROLES_SAID, slot_text("who", who.text), slot_text("what", what.text));
    buffers_let_go(out, &what, &same, &who);
}

static void list_roles(spz_report *report, const ShownMovement *shown, const char *bar, const spz_explanation *explanation)
{
    spz_language language = report_speaker(report, shown).language;
    bool told[VOICES_MOST] = {false};
    Buffer line = {0};
    buffer_putc(&report->out, '\n');
    SAY(&report->out, language, PHRASE_EXPLAIN_ROLES, slot_text("bar", bar));
    buffer_putc(&report->out, '\n');
    for (size_t i = 0; i < spz_explanation_voices(explanation) && i < VOICES_MOST; i++) {
        if (told[i])
            continue;
        put_voices(shown, explanation, language, i, told, &line);
        layout_flow(&report->out, INDENT, "", &line, report->options.width);
    }
    buffer_let_go(&report->out, &line);
}

static void print_considered(spz_report *report, const ShownMovement *shown, const spz_considered *item)
{
    static void (*const sentences[])(const Speaker *, const spz_movement *, const spz_considered *, Buffer *) = {
        explain_who, explain_measures, explain_comparison, explain_fate};
    Speaker speaker = report_speaker(report, shown);
    Buffer line = {0};
    buffer_putc(&report->out, '\n');
    for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) {
        sentences[i](&speaker, shown->reading.movement, item, &line);
        if (line.length)
            layout_flow(&report->out, i ? 2 * INDENT : INDENT, i ? "" : "- ", &line, report->options.width);
    }
    buffer_free(&line);
}

/* Left out, and not because something stronger says the same. */
static bool can_be_raised(const spz_considered *item)
{
    return item->fate == SPZ_TOO_WEAK || item->fate == SPZ_OVERSHADOWED;
}

/* Lines that make passages of what was left out. */
static void list_raising(spz_report *report, const ShownMovement *shown, const spz_explanation *explanation)
{
    char section[SECTION_NAME], lines[RAISED_MOST][WORDS_TEXT];
    size_t count = 0;
    for (size_t i = 0; i < spz_explanation_count(explanation) && count < RAISED_MOST; i++) {
        const spz_considered *item = spz_explanation_at(explanation, i);
        bool again = !can_be_raised(item) || !*spz_considered_line(shown->reading.sections, item, lines[count], WORDS_TEXT);
        for (size_t k = 0; k < count && !again; k++)
            again = strcmp(lines[k], lines[count]) == 0;
        count += !again;
    }
    if (!count)
        return;
    buffer_putc(&report->out, '\n');
    layout_paragraph(&report->out, INDENT, "", phrase_text(report->options.language, PHRASE_EXPLAIN_RAISE), report->options.width);
    buffer_printf(&report->out, "    [%s]\n", ruling_section(shown, section, sizeof section));
    for (size_t i = 0; i < count; i++)
        buffer_printf(&report->out, "    %s = %s\n", lines[i], spz_weight_name(SPZ_CLEAR));
}

static void list_considered(spz_report *report, const ShownMovement *shown, const spz_explanation *explanation)
{
    size_t count = spz_explanation_count(explanation), more = spz_explanation_more(explanation);
    spz_language language = report_speaker(report, shown).language;
    buffer_printf(&report->out, "\n%s\n", phrase_text(language, PHRASE_EXPLAIN_COMPARED));
    if (count == 0)
        layout_paragraph(&report->out, INDENT, "", phrase_text(language, PHRASE_EXPLAIN_NONE), report->options.width);
    for (size_t i = 0; i < count; i++)
        print_considered(report, shown, spz_explanation_at(explanation, i));
    list_raising(report, shown, explanation);
    if (more) {
        buffer_puts(&report->out, "\n  ");
        SAY(&report->out, language, PHRASE_EXPLAIN_MORE, slot_number("n", (long)more));
        buffer_putc(&report->out, '\n');
    }
}

static void say_no_bar(spz_report *report, const ShownMovement *shown, const char *bar)
{
    const spz_movement *movement = shown->reading.movement;
    size_t bars = spz_movement_bars(movement);
    Buffer line = {0};
    SAY(&line, report_speaker(report, shown).language, bars ? PHRASE_EXPLAIN_NO_BAR : PHRASE_EXPLAIN_NO_BARS, slot_text("bar", bar),
        slot_text("from", bars ? spz_movement_bar_number(movement, 0) : ""), slot_text("to", bars ? spz_movement_bar_number(movement, bars - 1) : ""));
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
        list_roles(report, shown, bar, explanation);
        list_reported(report, shown, bar);
        list_lines(report, shown, bar);
        list_considered(report, shown, explanation);
    }
    spz_explanation_free(explanation);
}

static void end(spz_report *report)
{
    (void)report;
}

const Form text_considered = {begin, movement, end};
