/* What every part was taken for, as a settings file that only has to be set right: each entry under the reason for it. */
#include "pages/text/text_blocks.h"
#include "wording/section_words.h"
#include <string.h>

static const char heading[] =
    "# How each part was understood. Change what is wrong, and give this file to any command: --settings FILE\n"
    "#\n"
    "# What may stand behind '=' (several for one part with commas between them):\n"
    "#   Vn I, Vn II, Vn III, Va, Vc, Db    a string section; 'Vc and Db' where two read the same notes\n"
    "#   staff 2, voice 1                   behind a section: where one part holds several\n"
    "#   orchestra 2                        behind a section: of the second orchestra or choir\n"
    "#   number 2                           behind a section: the second of several bodies of players ('Viola 2')\n"
    "#   line 2                             behind a section: the second line of a divided section\n"
    "#   solo, desk, continuo               behind a section: one player before it, some desks of it, or along with the bass\n"
    "#   woodwind, brass, percussion, keyboard, plucked, voices, other strings, not strings\n"
    "#   not played                         a reduction, a guide: not looked at\n"
    "\n"
    "[sections]\n";

static void begin(spz_report *report)
{
    buffer_puts(&report->out, heading);
}

/* The entry without its heading. */
static const char *entry_of(const spz_sections *sections, size_t index)
{
    const char *advice = spz_sections_advice(sections, index), *entry = strchr(advice, '\n');
    return entry ? entry + 1 : advice;
}

/* Whether a line of the file before `end` begins with these bytes. */
static bool stands(const Buffer *out, size_t end, const char *text, size_t length)
{
    for (const char *at = out->text; at && (at = strchr(at, '\n')) != NULL && (size_t)(at - out->text) + 1 < end; at++)
        if (strncmp(at + 1, text, length) == 0)
            return true;
    return false;
}

static void remark(spz_report *report, const spz_line *line, const char *part)
{
    char name[120];
    Buffer why = {0};
    say_clues(&why, SPZ_ENGLISH, line);
    buffer_printf(&report->out, "# %s: %s\n", spz_text_clean(part, name, sizeof name), buffer_text(&why));
    buffer_let_go(&report->out, &why);
}

/* Movements of one file have the same parts: what an earlier one says of a part stays. */
static void movement(spz_report *report, const ShownMovement *shown)
{
    const spz_sections *sections = shown->reading.sections;
    size_t before = report->out.length;
    for (size_t i = 0; i < spz_sections_lines(sections) && !report->out.failed; i++) {
        const spz_line *line = spz_sections_line(sections, i);
        const char *entry = entry_of(sections, i), *equals = strchr(entry, '=');
        size_t key = equals ? (size_t)(equals - entry) + 1 : strlen(entry);
        if (stands(&report->out, before, entry, key) || stands(&report->out, report->out.length, entry, strlen(entry)))
            continue;
        remark(report, line, spz_movement_part_name(shown->reading.movement, line->part));
        buffer_printf(&report->out, "%s\n", entry);
    }
}

static void end(spz_report *report)
{
    (void)report;
}

const Form text_corrections = {begin, movement, end};
