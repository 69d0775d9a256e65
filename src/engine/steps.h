/* steps.h - the way from a movement to its verdict, which every user of the library's own goes: readings, marked scores, seasons. */
#ifndef ENGINE_STEPS_H
#define ENGINE_STEPS_H
#include "spezzato/reading.h"

typedef struct Steps {
    spz_sections *sections;
    spz_findings *findings; /* NULL when the depth asked for stops before */
    spz_verdict *verdict;   /* likewise */
} Steps;

typedef struct StepsWanted {
    const spz_settings *settings;
    int year;               /* 0: as the score says */
    spz_depth depth;
} StepsWanted;

/* Codes of each step; what was made until then is to be freed in any case. */
spz_status steps_take(const spz_movement *movement, const StepsWanted *wanted, const spz_sink *sink, Steps *steps);
/* Says what can't be used in [sections] and [passages]; nothing is kept. For settings that are refused already. */
void steps_tell_settings(const spz_movement *movement, const spz_settings *settings, const spz_sink *sink);
void steps_free(Steps *steps);
#endif
