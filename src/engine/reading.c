/* The main job in one call: every step of it for every movement of one file. */
#include "engine/bar_rules.h"
#include "engine/steps.h"
#include "support/memory.h"
#include <stdlib.h>

struct spz_reading {
    spz_score *score;
    Steps *movements; /* one for each movement of the score */
    size_t count;
};

static spz_status read_movements(spz_reading *reading, const StepsWanted *wanted, const spz_sink *sink)
{
    size_t count = spz_score_movement_count(reading->score);
    spz_status status = SPZ_OK;
    reading->movements = memory_resize(NULL, count, sizeof *reading->movements);
    if (!reading->movements)
        return SPZ_NO_MEMORY;
    for (; reading->count < count && !status; reading->count++)
        status = steps_take(spz_score_movement(reading->score, reading->count), wanted, sink, &reading->movements[reading->count]);
    return status;
}

spz_status spz_reading_of_score(spz_score *score, const spz_settings *settings, int year, spz_depth depth, const spz_sink *sink,
                                spz_reading **out)
{
    spz_settings *usual = NULL;
    spz_reading *reading = memory_get(sizeof *reading);
    spz_status status = !reading ? SPZ_NO_MEMORY : settings ? SPZ_OK : spz_settings_new(&usual);
    *out = NULL;
    if (reading)
        *reading = (spz_reading){score, NULL, 0};
    else
        spz_score_free(score);
    if (!status)
        status = bar_rules_apply(score, settings ? settings : usual, sink);
    if (!status)
        status = read_movements(reading, &(StepsWanted){settings ? settings : usual, year, depth}, sink);
    spz_settings_free(usual);
    if (status)
        spz_reading_free(reading);
    else
        *out = reading;
    return status;
}

spz_status spz_reading_make(const char *path, const spz_settings *settings, int year, spz_depth depth, const spz_sink *sink,
                            spz_reading **out)
{
    spz_score *score = NULL;
    *out = NULL;
    spz_status status = spz_score_read(path, sink, &score);
    return status ? status : spz_reading_of_score(score, settings, year, depth, sink, out);
}

void spz_reading_free(spz_reading *reading)
{
    if (!reading)
        return;
    for (size_t i = 0; i < reading->count; i++)
        steps_free(&reading->movements[i]);
    memory_free(reading->movements);
    spz_score_free(reading->score);
    memory_free(reading);
}

const spz_score *spz_reading_score(const spz_reading *reading)
{
    return reading->score;
}

size_t spz_reading_count(const spz_reading *reading)
{
    return reading->count;
}

spz_verdict *spz_reading_take_verdict(spz_reading *reading, size_t index)
{
    if (index >= reading->count)
        return NULL;
    spz_verdict *verdict = reading->movements[index].verdict;
    reading->movements[index].verdict = NULL;
    return verdict;
}

spz_movement_reading spz_reading_at(const spz_reading *reading, size_t index)
{
    if (index >= reading->count)
        return (spz_movement_reading){NULL, NULL, NULL, NULL};
    const Steps *step = &reading->movements[index];
    return (spz_movement_reading){spz_score_movement(reading->score, index), step->sections, step->findings, step->verdict};
}
