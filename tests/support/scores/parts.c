#include "support/scores/parts.h"
#include <stdio.h>
#include <string.h>

static const char *or_empty(const char *text)
{
    return text ? text : "";
}

static void make_part(TestMovement *room, size_t index, const PartSketch *sketch)
{
    const char *voices = sketch->voices ? sketch->voices : "1";
    Part *part = &room->parts[index];
    *part = (Part){ .id = "", .name = or_empty(sketch->name), .abbreviation = or_empty(sketch->abbreviation), .groups = or_empty(sketch->groups),
                    .instrument = "", .sound = or_empty(sketch->sound), .voices = room->voice_names[index], .notes = sketch->notes,
                    .directions = sketch->marks, .note_count = sketch->note_count, .direction_count = sketch->mark_count,
                    .midi_program = sketch->midi_program, .staves = sketch->staves ? sketch->staves : 1,
                    .clef = sketch->clef, .clef_line = sketch->clef_line, .bracket = sketch->bracket, .inner_bracket = sketch->inner_bracket ? sketch->inner_bracket : sketch->bracket };
    for (; voices[part->voice_count] && part->voice_count < 8; part->voice_count++) {
        char *text = room->voice_text[index][part->voice_count];
        text[0] = voices[part->voice_count];
        text[1] = '\0';
        room->voice_names[index][part->voice_count] = text;
    }
}

const Movement *test_movement(TestMovement *room, const PartSketch *sketches, size_t count)
{
    memset(room, 0, sizeof *room);
    for (size_t i = 0; i < count && i < TEST_PARTS; i++)
        make_part(room, i, &sketches[i]);
    size_t bars = sizeof room->bars / sizeof room->bars[0];
    for (size_t i = 0; i < bars; i++)
        room->bars[i] = (Bar){ .number = "", .onset = (Ticks)i * 4, .length = 4, .nominal = 4, .beat = 1 };
    room->movement = (Movement){ .file = "test.xml", .title = "", .work = "", .composer = "", .parts = room->parts, .bars = room->bars,
                                 .part_count = count, .bar_count = bars, .per_crotchet = 1, .length = (Ticks)bars * 4 };
    return &room->movement;
}

typedef struct Words {
    char text[2000];
    size_t length;
} Words;

static void add(Words *words, const char *format, const char *text, int number)
{
    char piece[200];
    snprintf(piece, sizeof piece, format, text, number);
    size_t size = strlen(piece);
    if (words->length + size + 1 < sizeof words->text) {
        memcpy(words->text + words->length, piece, size + 1);
        words->length += size;
    }
}

static void add_line(Words *words, const spz_line *line)
{
    add(words, "%s", words->length ? "; " : "", 0);
    add(words, "%s", line->section ? spz_section_name(line->section) : spz_family_name(line->family), 0);
    if (line->also)
        add(words, "+%s", spz_section_name(line->also), 0);
    if (line->staff)
        add(words, "%s staff %d", "", line->staff);
    if (line->voice)
        add(words, " voice %s", line->voice, 0);
    if (line->orchestra)
        add(words, "%s orchestra %d", "", line->orchestra);
    if (line->number)
        add(words, "%s number %d", "", line->number);
    if (line->division)
        add(words, "%s line %d", "", line->division);
    if (line->role)
        add(words, " %s", spz_role_name(line->role), 0);
    if (line->left_out)
        add(words, "%s", " left out", 0);
}

const char *map_lines_in_words(const SectionMap *map)
{
    static Words words;
    words.length = 0;
    words.text[0] = '\0';
    for (size_t i = 0; i < map->line_count; i++)
        add_line(&words, &map->lines[i]);
    return words.text;
}

const char *map_groups_in_words(const SectionMap *map)
{
    static Words words;
    words.length = 0;
    words.text[0] = '\0';
    for (size_t i = 0; i < map->group_count; i++) {
        add(&words, "%s", i ? "; " : "", 0);
        add(&words, "%s", map->groups[i].about.name, 0);
    }
    return words.text;
}

const char *lines_in_words(const Movement *movement, const spz_settings *settings)
{
    spz_sections *map;
    if (spz_sections_find(movement, settings, NULL, &map) != SPZ_OK)
        return "not understood";
    const char *words = map_lines_in_words(map);
    spz_sections_free(map);
    return words;
}
