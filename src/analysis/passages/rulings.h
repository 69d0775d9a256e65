/* rulings.h - the conductor's own ear: [passages] of the settings. A line names bars, if wanted players and a kind, and says what she
 * holds of the passages there: 'no' (not heard, or not worth hearing), 'marginal', 'clear', 'striking'; behind a comma, why.
 *
 *     [passages]                        for every score
 *     46-48 = no, the horns cover it
 *     [passages symphony-1.mxl]         for the score file of that name
 *     66-71 Vn I Vn II = striking
 *     [passages symphony-1.mxl 2]       for its second movement
 *     9 Va Vc imitation = clear
 *
 * A line that gives a weight where no passage stands makes one of what was heard there (analysis/raised.h).
 * A line that meets a passage of just these bars is about it alone; else about every passage of which at least half the bars lie within.
 * Of several lines about one passage the last holds, those for the movement after those for the file, these after those for all. */
#ifndef ANALYSIS_PASSAGES_RULINGS_H
#define ANALYSIS_PASSAGES_RULINGS_H
#include "analysis/passages/findings.h"
#include "spezzato/settings.h"

/* A section and what tells it from its like; fields that the line leaves open fit any. */
typedef struct RuledBody {
    spz_section section;
    int number, orchestra;
    bool solo;
} RuledBody;

typedef struct Ruling {
    char from[24], to[24];      /* bars as printed */
    RuledBody bodies[2];
    int body_count;
    bool any_kind;
    spz_kind kind;
    spz_ruling_kind ruling;
    spz_weight weight;          /* SPZ_WEIGHTED */
    const char *reason;         /* a view into the settings; "" */
    bool of_movement;           /* it names the movement, not its file or all */
    const char *file;           /* where the line stands */
    long line;
    const char *key;
} Ruling;
typedef ARRAY(Ruling) Rulings;

/* 'passages symphony.mxl', with a number 'passages symphony.mxl 2': the section of a settings file for a score file, for a movement of it. A name that is longer than
 * a section's may be is cut, and a closing bracket in it is a round one. Returns `out`. */
enum { RULING_SECTION = 50 };
char *ruling_section_of(const char *path, size_t number, char out[RULING_SECTION]);

/* The lines that hold for the movement, in the order in which they count. SPZ_BAD_SETTINGS after one SPZ_ERROR; SPZ_NO_MEMORY. The array
 * is to be freed in any case. `settings` NULL: none. */
spz_status rulings_read(const Movement *movement, const spz_settings *settings, const spz_sink *sink, Rulings *out);

/* How many of the line's bars something in these bars between these sides covers; 0 where the line is not about it: less than half of its bars
 * lie within, or others have it. */
size_t ruling_covers(const Findings *findings, const Ruling *ruling, size_t first, size_t last, const spz_side sides[2]);

/* Bars that the line names, and the two groups, in score order, where it names two that the movement has; false where it doesn't. */
bool ruling_bars(const Findings *findings, const Ruling *ruling, size_t *first, size_t *last);
bool ruling_groups(const Findings *findings, const Ruling *ruling, size_t groups[2]);

/* Whether the line is about a passage of the findings. */
bool ruling_meets(const Findings *findings, const Ruling *ruling);

/* Puts what the settings say into the passages. Codes as above. */
spz_status rulings_apply(Findings *findings, const spz_settings *settings, const spz_sink *sink);
#endif
