/* melody.h - what the ear follows in one group of players: its upper line, one note at a time.
 *
 * A note is the highest note that begins at a moment; grace notes are left out. Notes know what came before them (a rest, a
 * longer note), because that is how a listener hears where a gesture begins. */
#ifndef ANALYSIS_MELODY_MELODY_H
#define ANALYSIS_MELODY_MELODY_H
#include "sections/section_map.h"
#include <stddef.h>

enum NoteEventFlag {
    EVENT_AFTER_REST = 1u << 0,
    EVENT_ON_BEAT = 1u << 1,
    EVENT_AFTER_LONG = 1u << 2, /* the note before lasted at least twice as long */
    EVENT_REPEATED = 1u << 3,   /* same pitch as the note before, no rest between */
    EVENT_TREMOLO = 1u << 4,    /* or repeated by strokes through its stem: the ear stays on its pitch */
    EVENT_PIZZICATO = 1u << 5,
    EVENT_DOUBLED = 1u << 7,    /* a wind, brass or keyboard part begins the same pitch or its octave */
    EVENT_DOUBLES = 1u << 6     /* basses only: the cellos play the same line, which is then theirs */
};

typedef struct NoteEvent {
    Ticks onset, end; /* end: when it stops sounding, at most the next onset */
    Ticks next;       /* onset of the next note, or the end of the movement */
    const GroupSound *sound;
    uint64_t company; /* bit i: melody i has a note that begins and ends, or moves on, at the same time */
    uint64_t parallel; /* of these, melodies that go on in the same direction */
    uint64_t unison;  /* bit i: melody i sounds this pitch or its octave then, struck with it or earlier */
    uint64_t leaders; /* of these, melodies higher in the score that go on in the same direction and speak for this one */
    float boundary;   /* how strongly a group begins here, in log odds, once boundaries.h has marked it */
    int32_t bar;
    int16_t midi;
    int16_t place;    /* on the staff as it sounds: steps above the lowest C */
    uint8_t dynamic;
    uint8_t flags;    /* NoteEventFlag */
} NoteEvent;

typedef struct Melody {
    const Group *group;
    bool passing_solo; /* a player who steps out of the section for a moment, no concertino */
    size_t group_index;
    NoteEvent *events;
    size_t count;
    uint32_t *by_time; /* the first note from each `unit` of time on, counted from the first note; one more for the end. NULL: to be searched for */
    Ticks unit;
} Melody;

/* A gesture may begin here: silence or a longer note came before. */
static inline bool event_is_fresh(const NoteEvent *event)
{
    return (event->flags & (EVENT_AFTER_REST | EVENT_AFTER_LONG)) != 0;
}

/* 1 up, -1 down, 0 the same pitch. */
static inline int event_direction(const NoteEvent *from, const NoteEvent *to)
{
    return (to->midi > from->midi) - (to->midi < from->midi);
}

/* Steps of the staff from one note to the next: a third is two, whatever its semitones, as a tonal answer keeps it. */
static inline int event_steps(const NoteEvent *from, const NoteEvent *to)
{
    return to->place - from->place;
}

/* One melody for each group of the map, in its order; from `arena`. NULL when out of memory. */
Melody *melodies_of(const SectionMap *map, Arena *arena);

/* Index of the first note at or after `when`; `count` past the end. */
size_t melody_at(const Melody *melody, Ticks when);
/* The note that begins then; NULL where none does. */
const NoteEvent *melody_note_at(const Melody *melody, Ticks when);

/* Which of the melodies has the next note of all, where melody i stands at its note next[i]; the first of those that have; the count where all are through. */
size_t melody_earliest(const Melody *melodies, size_t count, const uint32_t next[]);

/* How far a group stays out of the way between two moments, 0 (as busy as a speaker) to 1 (rests): a held note or a repeated
 * pitch steps back, new notes do not. */
double melody_quietness(const Melody *melody, Ticks from, Ticks to);
#endif
