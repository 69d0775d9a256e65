#include "wording/section_words.h"
#include "wording/phrase.h"
#include <stdio.h>
#include <string.h>

_Static_assert(PHRASE_CLUE_LOWER_VOICE - PHRASE_CLUE_NAME == SPZ_CLUE_KIND_COUNT - 1, "every clue has its phrase, in the order of sections.h");
_Static_assert(PHRASE_INSTRUMENTS_VOICES - PHRASE_INSTRUMENTS_UNKNOWN == SPZ_FAMILY_COUNT - 1, "every family has its name, in the order of sections.h");

void say_clues(Buffer *out, spz_language language, const spz_line *line)
{
    if (line->clue_count == 0)
        buffer_puts(out, phrase_text(language, PHRASE_CLUE_NONE));
    for (size_t i = 0; i < line->clue_count; i++) {
        const spz_clue *clue = &line->clues[i];
        buffer_puts(out, i ? phrase_text(language, PHRASE_CLUE_NEXT) : "");
        SAY(out, language, (Phrase)(PHRASE_CLUE_NAME + (int)clue->kind), slot_text("text", clue->text), slot_number("n", clue->number));
    }
}

const char *clue_name(spz_clue_kind kind)
{
    return phrase_keys[PHRASE_CLUE_NAME + (int)kind] + strlen("clue.");
}

const char *words_family(spz_language language, spz_family family)
{
    return phrase_text(language, (Phrase)(PHRASE_INSTRUMENTS_UNKNOWN + (family < SPZ_FAMILY_COUNT ? (int)family : 0)));
}

static void add_section(Buffer *out, spz_language language, spz_section section)
{
    const spz_group players = {.section = section};
    Slot who = slot_players("who", &players, 1);
    say_template(out, language, "{who.short}", &who, 1);
}

void say_line_section(Buffer *out, spz_language language, const spz_line *line)
{
    if (!line->section)
        buffer_putc(out, '-');
    add_section(out, language, line->section);
    if (line->also) {
        buffer_puts(out, phrase_text(language, PHRASE_LIST_LAST));
        add_section(out, language, line->also);
    }
}

/* What follows what is there already, with a comma between. */
static void add(Buffer *out, spz_language language, Phrase phrase, int number, const char *name)
{
    buffer_puts(out, out->length ? ", " : "");
    SAY(out, language, phrase, slot_number("n", number), slot_text("name", name));
}

void say_line_staff(Buffer *out, spz_language language, const spz_line *line)
{
    if (line->staff)
        add(out, language, PHRASE_LINES_STAFF, line->staff, NULL);
    if (line->voice)
        add(out, language, PHRASE_LINES_VOICE, 0, line->voice);
}

void say_line_place(Buffer *out, spz_language language, const spz_line *line)
{
    if (line->orchestra)
        add(out, language, PHRASE_LINES_ORCHESTRA, line->orchestra, NULL);
    if (line->number)
        add(out, language, PHRASE_LINES_NUMBER, line->number, NULL);
    if (line->division)
        add(out, language, PHRASE_LINES_DIVISION, line->division, NULL);
    if (line->desk)
        buffer_printf(out, "%s%s", out->length ? ", " : "", line->desk);
    if (line->left_out)
        add(out, language, PHRASE_LINES_LEFT_OUT, 0, NULL);
    if (line->role == SPZ_SOLO || line->role == SPZ_CONTINUO)
        add(out, language, line->role == SPZ_SOLO ? PHRASE_LINES_SOLO : PHRASE_LINES_CONTINUO, 0, NULL);
}

const char *words_undecided(spz_language language, const spz_sections *sections)
{
    bool open = false, firsts = false, seconds = false;
    for (size_t i = 0; i < spz_sections_lines(sections); i++) {
        const spz_line *line = spz_sections_line(sections, i);
        bool counts = !line->left_out && line->role == SPZ_TUTTI;
        firsts |= counts && line->section == SPZ_VN1;
        seconds |= counts && line->section == SPZ_VN2;
        open |= counts && !line->section && (line->family == SPZ_FAMILY_UNKNOWN || line->family == SPZ_FAMILY_STRINGS);
    }
    return phrase_text(language, open && !(firsts && seconds) ? PHRASE_PAGE_NOT_RECOGNISED : PHRASE_PAGE_NOTHING_TO_DECIDE);
}

/* 'Brelisk, Ottavan' is how a catalogue has it: one comma, and no more than names on both sides. */
static bool is_turned(const char *name, size_t comma)
{
    const char *given = name + comma + 1 + (name[comma + 1] == ' ');
    return comma > 0 && *given && !strpbrk(name, "0123456789;:/&()") && !strchr(given, ',') && !strstr(name, " and ") && !strchr(given, '.');
}

char *words_composer(const spz_movement *movement, char text[SOURCE_TEXT])
{
    const char *name = spz_movement_composer(movement);
    size_t comma = strcspn(name, ",");
    if (name[comma] && is_turned(name, comma))
        snprintf(text, SOURCE_TEXT, "%s %.*s", name + comma + 1 + (name[comma + 1] == ' '), (int)comma, name);
    else
        snprintf(text, SOURCE_TEXT, "%s", name);
    return text;
}

char *words_source(const spz_movement *movement, const char *file, char text[SOURCE_TEXT])
{
    words_composer(movement, text);
    size_t length = strlen(text);
    snprintf(text + length, SOURCE_TEXT - length, "%s%s", !length ? "" : text[length - 1] == '.' ? " " : ". ", file);
    return text;
}
