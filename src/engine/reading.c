/* The main job in one call: every step of it for every movement of one file. */
#include "analysis/passages/rulings.h"
#include "engine/bar_rules.h"
#include "engine/steps.h"
#include "support/memory.h"
#include "support/message.h"
#include "support/path.h"
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

/* Whether a line of [passages] meets a passage of the movement, or of any where it names none. */
static bool is_met(const spz_reading *reading, const Ruling *ruling, size_t movement)
{
    bool met = false;
    for (size_t i = 0; i < reading->count && !met; i++)
        met = (i == movement || !ruling->of_movement) && ruling_meets(reading->movements[i].findings, ruling);
    return met;
}

/* Why nothing is made of a line that would make a passage. */
static const char *why_not_made(const Ruling *ruling)
{
    if (ruling->ruling != SPZ_WEIGHTED || ruling->any_kind)
        return "";
    if (ruling->kind == SPZ_DIV2 || ruling->kind == SPZ_DIV3)
        return " (a division stands in the parts or it doesn't: no line makes one)";
    if (ruling->kind != SPZ_COUPLING && ruling->kind != SPZ_SPLIT_LINE)
        return "";
    if (ruling->body_count != 2)
        return " (to make one of what is there the line names two sections)";
    return ruling->kind == SPZ_COUPLING ? " (the notes don't bear it: the two have less than half of their attacks there together)"
                                        : " (the notes don't bear it: no line on top passes between the two there)";
}

static void tell_unmet(const spz_reading *reading, const Ruling *ruling, const spz_sink *sink)
{
    spz_message place = {.severity = SPZ_DOUBT, .file = ruling->file, .line = ruling->line};
    message_send(sink, &place, "'%.60s' meets no passage of %.60s%s; `spezzato passages --explain %s` tells what was compared there", ruling->key,
                 path_name(spz_score_file(reading->score)), why_not_made(ruling), ruling->from);
}

/* Lines of [passages] that are about nothing. */
static spz_status tell_unmet_lines(const spz_reading *reading, const StepsWanted *wanted, const spz_sink *sink)
{
    spz_status status = SPZ_OK;
    for (size_t m = 0; m < reading->count && wanted->depth >= SPZ_TO_PASSAGES && !status; m++) {
        Rulings rulings;
        status = rulings_read(spz_score_movement(reading->score, m), wanted->settings, NULL, &rulings);
        for (size_t i = 0; i < rulings.count && !status; i++)
            if ((m == 0 || rulings.at[i].of_movement) && !is_met(reading, &rulings.at[i], m))
                tell_unmet(reading, &rulings.at[i], sink);
        array_free(&rulings);
    }
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
    StepsWanted wanted = {settings ? settings : usual, year, depth};
    if (status == SPZ_BAD_SETTINGS)
        steps_tell_settings(spz_score_movement(score, 0), wanted.settings, sink);
    if (!status)
        status = read_movements(reading, &wanted, sink);
    if (!status)
        status = tell_unmet_lines(reading, &wanted, sink);
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
