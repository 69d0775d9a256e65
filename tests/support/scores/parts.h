/* parts.h - small movements made by hand for the tests: a list of parts with names, and a few notes. */
#ifndef TESTS_PARTS_H
#define TESTS_PARTS_H
#include "sections/section_map.h"

enum { TEST_PARTS = 40 };

typedef struct PartSketch {
    const char *name, *abbreviation, *groups, *sound; /* NULL stands for "" */
    int midi_program, staves;                         /* staves 0: one */
    const char *voices;                               /* "12": voices '1' and '2'; NULL: '1' */
    Note *notes;
    size_t note_count;
    Direction *marks;
    size_t mark_count;
    char clef;
    int clef_line, bracket, inner_bracket;
} PartSketch;

typedef struct TestMovement {
    Movement movement;
    Part parts[TEST_PARTS];
    Bar bars[64];
    const char *voice_names[TEST_PARTS][8];
    char voice_text[TEST_PARTS][8][2];
} TestMovement;

/* Bars of four crotchets, a tick each. */
const Movement *test_movement(TestMovement *room, const PartSketch *sketches, size_t count);

/* How the lines were understood: 'Vn I; Vn II staff 2; Va number 1; woodwind'. A static buffer. `settings` may be NULL. */
const char *lines_in_words(const Movement *movement, const spz_settings *settings);

/* The same for a result: lines, or groups: 'Vn I; Vn I (solo)'. */
const char *map_lines_in_words(const SectionMap *map);
const char *map_groups_in_words(const SectionMap *map);
#endif
