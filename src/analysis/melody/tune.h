/* tune.h - the upper notes of a group between two moments, held against what the same or another group plays elsewhere. */
#ifndef ANALYSIS_MELODY_TUNE_H
#define ANALYSIS_MELODY_TUNE_H
#include "sections/section_map.h"

enum { TUNE_MOST = 48 }; /* notes: enough to know a gesture by */

typedef struct TuneNote {
    Ticks onset;
    int midi, place; /* place: on the staff, seven an octave */
} TuneNote;

typedef struct Tune {
    TuneNote notes[TUNE_MOST];
    size_t count;
} Tune;

/* From `from` on, before `to`. */
void tune_take(const Group *group, Ticks from, Ticks to, Tune *out);

/* Share of the tune's notes at which the group begins the same note, or its octave: from 0 to 1. */
double tune_doubled(const Tune *tune, const Group *group);

/* How far the group plays at `when` what the tune is: 0..1. Counted are notes that come at the same place (stretch 1: in notes twice as long, -1: half as
 * long) and, from the second on, go the same way there, upside down where `mirror` is -1. */
double tune_alike(const Tune *tune, const Group *group, Ticks when, int stretch, int mirror);
/* The same, but that each interval must be the same, in steps of the staff. */
double tune_same(const Tune *tune, const Group *group, Ticks when);
extern const double tune_same_least; /* from here on it is the same tune */
/* Whether two change places (voice exchange): the caller has under the answer what the answerer had under the call, of `call` to `call_end`. */
bool tunes_swapped(const Group *calling, Ticks call, Ticks call_end, const Group *answering, Ticks answer);
/* The interval at which most of the notes stand that the group has there at the same places: in semitones and in steps of the staff. Returns their share
 * of those notes; 0 where it has none of them. */
double tune_interval(const Tune *tune, const Group *group, Ticks when, int *semitones, int *steps);
#endif
