/* tune.h - what the ear follows in one group of players: its upper line, one tone at a time.
 *
 * A tone is the highest note that begins at a moment; grace notes are left out. Tones know what came before them (a rest, a
 * longer note), because that is how a listener hears where a gesture begins. */
#ifndef ANALYSIS_TUNE_H
#define ANALYSIS_TUNE_H
#include "sections/section_map.h"
#include <stddef.h>

enum ToneFlag {
    TONE_AFTER_REST = 1u << 0,
    TONE_ON_BEAT = 1u << 1,
    TONE_AFTER_LONG = 1u << 2, /* the tone before lasted at least twice as long */
    TONE_REPEATED = 1u << 3,   /* same pitch as the tone before, no rest between */
    TONE_TREMOLO = 1u << 4,
    TONE_PIZZICATO = 1u << 5,
    TONE_DOUBLED = 1u << 7,    /* a wind, brass or keyboard part begins the same pitch or its octave */
    TONE_DOUBLES = 1u << 6     /* basses only: the cellos play the same line, which is then theirs */
};

typedef struct Tone {
    Ticks onset, end; /* end: when it stops sounding, at most the next onset */
    Ticks next;       /* onset of the next tone, or the end of the movement */
    const GroupSound *sound;
    uint64_t company; /* bit i: tune i has a tone that begins and ends, or moves on, at the same time */
    uint64_t leaders; /* of these, tunes higher in the score that go on in the same direction and speak for this one */
    int32_t bar;
    int16_t midi;
    uint8_t dynamic;
    uint8_t flags;    /* ToneFlag */
} Tone;

typedef struct Tune {
    const Group *group;
    bool passing_solo; /* a player who steps out of the section for a moment, no concertino */
    size_t group_index;
    Tone *tones;
    size_t count;
} Tune;

/* A gesture may begin here: silence or a longer note came before. */
static inline bool tone_is_fresh(const Tone *tone)
{
    return (tone->flags & (TONE_AFTER_REST | TONE_AFTER_LONG)) != 0;
}

/* 1 up, -1 down, 0 the same pitch. */
static inline int tone_direction(const Tone *from, const Tone *to)
{
    return (to->midi > from->midi) - (to->midi < from->midi);
}

/* Steps of the staff from one tone to the next: a third is two, whatever its semitones, as a tonal answer keeps it. */
static inline int tone_steps(const Tone *from, const Tone *to)
{
    const Note *a = from->sound->note, *b = to->sound->note;
    return 7 * (b->octave - a->octave) + b->step - a->step;
}

/* One tune for each group of the map, in its order; from `arena`. NULL when out of memory. */
Tune *tunes_of(const SectionMap *map, Arena *arena);

/* Index of the first tone at or after `when`; `count` past the end. */
size_t tune_at(const Tune *tune, Ticks when);

/* How far a group stays out of the way between two moments, 0 (as busy as a speaker) to 1 (rests): a held note or a repeated
 * pitch steps back, new notes do not. */
double tune_quietness(const Tune *tune, Ticks from, Ticks to);
#endif
