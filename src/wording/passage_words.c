#include "wording/passage_words.h"
#include <ctype.h>
#include <stdint.h>
#include <stdio.h>

static char *bar_name(const char *number, size_t index, char text[WORDS_TEXT])
{
    if (number && *number)
        snprintf(text, WORDS_TEXT, "%.60s", number);
    else
        snprintf(text, WORDS_TEXT, "(%zu. in the file)", index + 1);
    return text;
}

char *words_bars(const spz_passage *passage, char text[WORDS_TEXT])
{
    char first[WORDS_TEXT], last[WORDS_TEXT];
    bar_name(passage->first_bar, passage->first, first);
    bar_name(passage->last_bar, passage->last, last);
    if (passage->first == passage->last)
        snprintf(text, WORDS_TEXT, "%.70s", first);
    else
        snprintf(text, WORDS_TEXT, "%.70s-%.70s", first, last);
    return text;
}

char *words_kind(const spz_passage *passage, char text[WORDS_TEXT])
{
    static const char *const names[SPZ_KIND_COUNT] = {
        [SPZ_EXCHANGE] = "exchange", [SPZ_HOCKET] = "hocket",  [SPZ_SPLIT_LINE] = "split line", [SPZ_IMITATION] = "imitation",
        [SPZ_DIV2] = "div.",         [SPZ_DIV3] = "div.", [SPZ_COUPLING] = "coupling",
    };
    bool divided = passage->kind == SPZ_DIV2 || passage->kind == SPZ_DIV3;
    if (divided && passage->turns > 1)
        snprintf(text, WORDS_TEXT, "div. a %d", passage->turns);
    else
        snprintf(text, WORDS_TEXT, "%s", names[passage->kind]);
    return text;
}

/* Of two orchestras' sections of one name, who calls and who answers first; "" where that can't be told. */
static const char *first_of_side(const spz_passage *passage, const spz_sections *sections, int side)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].answer == (side == 1) && passage->entries[i].group < spz_sections_groups(sections))
            return spz_sections_group(sections, passage->entries[i].group)->name;
    return "";
}

const char *words_side(const spz_passage *passage, const spz_sections *sections, int side)
{
    const char *name = sections && passage->sections[0] == passage->sections[1] ? first_of_side(passage, sections, side) : "";
    if (passage->groups[side] != SIZE_MAX && sections && passage->groups[side] < spz_sections_groups(sections))
        return spz_sections_group(sections, passage->groups[side])->name;
    return *name ? name : spz_section_name(passage->sections[side]);
}

char *words_who(const spz_passage *passage, const spz_sections *sections, char text[WORDS_TEXT])
{
    const char *first = words_side(passage, sections, 0), *second = words_side(passage, sections, 1);
    if (!*second)
        snprintf(text, WORDS_TEXT, "%.150s", first);
    else if (passage->kind == SPZ_COUPLING || passage->kind == SPZ_SPLIT_LINE)
        snprintf(text, WORDS_TEXT, "%.70s with %.70s", first, second);
    else
        snprintf(text, WORDS_TEXT, "%.70s, answered by %.70s", first, second);
    return text;
}

char *words_beat(const char *beat, char text[BEAT_TEXT])
{
    int above, below;
    if (sscanf(beat, "%9d/%9d", &above, &below) == 2 && below > 0 && above >= below)
        snprintf(text, BEAT_TEXT, "%d %d/%d", above / below, above % below, below);
    else
        snprintf(text, BEAT_TEXT, "%.40s", beat);
    return text;
}

const char *words_confidence(spz_confidence confidence)
{
    return confidence == SPZ_FIRM ? "Firm" : confidence == SPZ_LEANING ? "Leaning" : "Open";
}

const char *words_confidence_meaning(spz_confidence confidence)
{
    switch (confidence) {
    case SPZ_FIRM: return "the score decides this, and it would take much to overturn it";
    case SPZ_LEANING: return "the score points this way, but other grounds may weigh more";
    default: return "the score does not decide this; the hall, the house's habit or the other works of the evening may";
    }
}

void words_reason(const spz_passage *passage, Buffer *out)
{
    buffer_puts(out, passage->reason);
    if (passage->chain && *passage->chain)
        buffer_printf(out, "; in order of entry: %s", passage->chain);
}

char *words_capital(const char *from, char *text, size_t size)
{
    snprintf(text, size, "%s", from);
    text[0] = (char)toupper((unsigned char)text[0]);
    return text;
}
