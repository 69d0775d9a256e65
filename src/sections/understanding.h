/* understanding.h - what is made of each part of a score, step by step: its own name first, then its neighbours.
 *
 * Steps, in order, each in its own file:
 *   part_readings.c  the part's own evidence: name, abbreviation, part group, instrument name, sound id, MIDI program
 *   corrections.c  what the user's [sections] say about it
 *   guesses.c      parts that nothing names: what clef, range and order say
 *   context.c      names that mean two things ('Alto', 'Basso', 'Continuo', 'Bassi')
 *   orchestras.c   two orchestras, concertino and ripieno
 *   side_parts.c   parts that stand apart: a solo line of a section, a guide below the score
 *   numbering.c    first and second violins, equal parts of one section, lines of a divided one
 *   section_lines.c  parts to lines: staves and voices
 *   groups.c       lines to groups of players
 *   group_streams.c  what each group plays, as one stream */
#ifndef SECTIONS_UNDERSTANDING_H
#define SECTIONS_UNDERSTANDING_H
#include "sections/names/name_reading.h"
#include "sections/section_map.h"
#include "support/array.h"

/* A correction of the user's for one part. */
typedef struct Correction {
    size_t part;
    int staff;          /* 0: the whole part */
    const char *voice;  /* NULL: all voices */
    NameReading says;
    int number;         /* 'number 2'; 0 where not said */
    const char *desk;
    bool not_strings, left_out;
} Correction;

enum { CLUES_MOST = 16 };

typedef struct PartReading {
    NameReading name;            /* what it says itself, with the gaps filled from the weaker sources */
    int number, division;
    int wish;                    /* the line it would be, going by its number: 'Violoncello 2' */
    spz_role role;
    bool left_out;
    bool corrected;              /* the user has said what it is: nothing is guessed */
    const char *desk;            /* NULL where nothing is said */
    const char *folded;          /* its name as name_fold writes it */
    spz_clue clues[CLUES_MOST];  /* what its own names say, then what its neighbours do */
    size_t own_clues, clue_count;
} PartReading;

typedef struct Understanding {
    const Movement *movement;
    const spz_settings *settings;
    const spz_sink *sink;
    Arena *arena;
    PartReading *parts; /* by part */
    ARRAY(Correction) corrections;
    int orchestras;     /* 0 when there is one */
    bool out_of_memory;
} Understanding;

void parts_read(Understanding *all);
spz_status corrections_read(Understanding *all); /* SPZ_BAD_SETTINGS: said to the sink */
void guesses_make(Understanding *all);
void context_settle(Understanding *all);            /* strings or voices */
void orchestras_find(Understanding *all);
void context_settle_bass_lines(Understanding *all); /* once it is known which orchestra each part is in */
void understanding_settle(Understanding *all);
spz_status numbering_settle(Understanding *all);
spz_status lines_make(Understanding *all, SectionMap *map);
spz_status groups_make(SectionMap *map);

/* What its own names say, and what is concluded from the rest of the score. */
void part_own_clue(PartReading *part, spz_clue clue);
void part_add_clue(PartReading *part, spz_clue clue);
void part_clue(PartReading *part, spz_clue_kind kind); /* one without text and number */

void understanding_doubt(const Understanding *all, size_t part, spz_fault fault);
void understanding_send(const Understanding *all, size_t part, spz_message doubt); /* with the names and figures of its fault */

/* The section's own players, neither a solo before it nor left out. */
bool part_is_tutti(const PartReading *part);
bool part_is(const PartReading *part, Instrument instrument); /* tutti and of this instrument (or with it: 'Vc. e B.') */
/* Both in the same orchestra, or one of them in none. */
bool same_orchestra(const PartReading *a, const PartReading *b);
spz_section section_of(Instrument instrument, int ordinal);
#endif
