/* reading.h - the main job in one call: a score file read, its sections named, its passages found, its seating judged. */
#ifndef SPEZZATO_READING_H
#define SPEZZATO_READING_H

#include "spezzato/seating.h"

SPZ_C_BEGIN

typedef struct spz_reading spz_reading;

typedef struct spz_movement_reading { /* views */
    const spz_movement *movement;
    const spz_sections *sections;
    const spz_findings *findings; /* NULL when the depth asked for stops before */
    const spz_verdict *verdict;   /* likewise */
} spz_movement_reading;

typedef enum spz_depth { SPZ_TO_SECTIONS, SPZ_TO_PASSAGES, SPZ_TO_SEATING } spz_depth;

/* Codes of spz_score_read and of each later step. `year` 0: as the score says. */
SPZ_API spz_status spz_reading_make(const char *path, const spz_settings *settings, int year, spz_depth depth,
                                    const spz_sink *sink, spz_reading **out);
/* The same of a score that is read already; the reading takes ownership of `score`, on failure too. */
SPZ_API spz_status spz_reading_of_score(spz_score *score, const spz_settings *settings, int year, spz_depth depth, const spz_sink *sink,
                                        spz_reading **out);
SPZ_API void spz_reading_free(spz_reading *reading); /* takes NULL; score, sections, findings and verdicts go with it */
SPZ_API const spz_score *spz_reading_score(const spz_reading *reading); /* the score that was read */
SPZ_API size_t spz_reading_count(const spz_reading *reading); /* movements, at least 1 */
SPZ_API spz_movement_reading spz_reading_at(const spz_reading *reading, size_t index); /* all NULL past the end */
/* Hands the verdict of a movement over to the caller, who may free the reading and keep the verdict (for spz_seating_judge_work). NULL
 * where there is none, or it was taken before. */
SPZ_API spz_verdict *spz_reading_take_verdict(spz_reading *reading, size_t index);

SPZ_C_END
#endif
