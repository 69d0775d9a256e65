/* section_map.h - the result of naming the parts, with the streams of each group of players. */
#ifndef SECTIONS_SECTION_MAP_H
#define SECTIONS_SECTION_MAP_H
#include "model/stream.h"
#include "spezzato/sections.h"

/* A sound of a group: which line of the score it came from is kept for divisi. */
typedef struct GroupSound {
    Ticks onset, duration;
    const Note *note;
    uint16_t part;
    uint16_t line; /* index into lines */
    bool slur_stops, slur_starts; /* as in Sound */
} GroupSound;

typedef struct Group {
    spz_group about;
    GroupSound *sounds; /* by onset, then pitch from the top; grace notes in, cue notes out; the lines of one group merged */
    size_t sound_count;
    uint16_t *lines;    /* the lines that belong to it, in score order */
    size_t line_count;
    bool shares_bass;   /* a Db group that only reads the cellos' line ('Violoncello e Basso') */
} Group;

struct spz_sections {
    Arena arena;
    const Movement *movement;
    spz_line *lines;
    const char **advice; /* by line: the [sections] entry that says what the line was taken for */
    bool *on_shared_staff; /* by line: one of two sections that share a staff as its voices (see shared_staff.h) */
    size_t line_count;
    Group *groups;      /* strings only; score order: orchestra, section, number; solo groups of a section before its tutti */
    size_t group_count;
    bool chamber_music; /* every string part is one player's */
    /* Everything else that sounds, merged, for the foreground and for strings against winds; part tells which. */
    GroupSound *others; /* by onset */
    size_t other_count;
};
typedef struct spz_sections SectionMap;

static inline bool section_is_violin(spz_section section)
{
    return section == SPZ_VN1 || section == SPZ_VN2 || section == SPZ_VN3;
}

/* First group of `section` that is not solo, of `orchestra` (0: any) and lowest number; NULL when there is none. */
const Group *section_map_group(const SectionMap *map, spz_section section, int orchestra);
/* Index of the first sound of the group that begins at or after `when`; sound_count past the end. */
size_t group_sound_at(const Group *group, Ticks when);
/* The family of a part (its first line's). */
spz_family section_map_family(const SectionMap *map, size_t part);
#endif
