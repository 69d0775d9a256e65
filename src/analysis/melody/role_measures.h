/* role_measures.h - what tells figure from ground: what each voice does in each beat, beside what it does around it and what others do.
 * Only what a listener needs a beat or two to hear: novelty of pitch, repetition at short periods, height, loudness, company. Cost: beats times voices. */
#ifndef ANALYSIS_MELODY_ROLE_MEASURES_H
#define ANALYSIS_MELODY_ROLE_MEASURES_H
#include "analysis/melody/voices.h"

enum RoleMeasure {
    RM_SOUNDS,     /* share of the beats around in which it sounds */
    RM_BUSY,       /* log2 of 1 + notes a beat */
    RM_MOVES,      /* share of notes at a new pitch */
    RM_STEPS,      /* of these, by a tone or a semitone */
    RM_BROKEN,     /* of these, by more than a fourth, times how much of it comes back: broken chords */
    RM_PITCHES,    /* log2 of 1 + the different pitches */
    RM_RECURS,     /* share of notes that stood at the same pitch one period earlier, for the best of half a beat, a beat, two beats */
    RM_RECURS_BAR, /* ... a bar earlier */
    RM_SHUTTLES,   /* share of notes that go back to the pitch before the last: tremolos of two pitches, rocking figures */
    RM_VALUES,     /* log2 of 1 + the different note values around */
    RM_LONG,       /* log2 of the mean length of a note in beats */
    RM_HELD,       /* ... by how much that passes two beats */
    RM_BOUND,      /* share of notes under a slur */
    RM_PLUCKED,
    RM_TREMOLO,
    RM_TOP,        /* 1: nothing that moves lies above it; else 1 / (1 + voices that do) */
    RM_ABOVE,      /* octaves by which it lies above the highest other moving voice, -2..2 */
    RM_COMPANY,    /* share of the sounding voices that share its rhythm and not its pitch */
    RM_LOUD,       /* steps by which it is marked louder than the mean of the others, -2..2 */
    RM_MARKED,     /* a dynamic or words begin here that the others have not */
    RM_ENTERS,     /* share of the beats around that begin after a rest */
    RM_VIOLIN, RM_SECOND, RM_MIDDLE, RM_BASS, RM_BRASS, /* firsts; other violins; violas, cellos; basses; brass. None: woodwind */
    RM_COUNT
};

typedef struct BeatGrid {
    Ticks *onsets;   /* of each beat */
    int32_t *bars;   /* index */
    size_t count;
    Ticks end;       /* of the last beat */
} BeatGrid;

typedef struct RoleCell RoleCell;

typedef struct RoleSurvey {
    const Voices *voices;
    const SectionMap *strings;
    BeatGrid beats;
    RoleCell *cells;       /* [beat * voices + voice], as all below */
    uint64_t *unison;      /* voices in unison or octaves with most of its notes of the beat (a held note counts); bit i: voice i */
    uint64_t *parallel;    /* voices that move with most of its notes, in the same rhythm and direction */
} RoleSurvey;

/* In bars first..last (indices). `voices` and `strings`, of which they were made, must outlive it. SPZ_NO_MEMORY. */
spz_status role_survey_make(const Voices *voices, const SectionMap *strings, size_t first, size_t last, Arena *arena, RoleSurvey *out);
/* What each voice does around a beat; all 0 for one that is silent around it. */
void role_measures_at(const RoleSurvey *survey, size_t beat, float out[VOICES_MOST][RM_COUNT]);
/* Whether the voice sounds in the beat itself. */
bool role_sounds_in(const RoleSurvey *survey, size_t beat, size_t voice);
const char *role_measure_name(enum RoleMeasure measure);
#endif
