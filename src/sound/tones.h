/* tones.h - a passage as its players play it: which desk takes which of the written notes, when, how long, how loud and in which manner. */
#ifndef SOUND_TONES_H
#define SOUND_TONES_H
#include "sound/cast.h"
#include "sound/holds.h"

typedef ARRAY(SoundTone) ToneList;

typedef struct Excerpt {
    const SectionMap *map;
    const Cast *cast;
    Ticks from, to;
    double tempo;      /* crotchets a minute throughout; 0: the score's */
    spz_players solo;  /* groups heard alone; 0: all that sounds */
    Holds holds;       /* of holds_find; none where it is zeroed */
} Excerpt;

/* Seconds before the first note: grace notes and early players begin there. */
extern const double excerpt_lead;

/* Appends every tone, by onset. Notes that sound already when the excerpt begins are taken up at its beginning. */
spz_status tones_make(const Excerpt *excerpt, ToneList *out);
/* Seconds of a moment of the excerpt, the lead included. */
double excerpt_seconds(const Excerpt *excerpt, Ticks when);
#endif
