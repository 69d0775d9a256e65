#include "cli/options/one_work.h"
#include <stdlib.h>

static spz_status keep(Verdicts *verdicts, spz_verdict *verdict)
{
    if (verdicts->count == verdicts->capacity) {
        size_t larger = verdicts->capacity ? verdicts->capacity * 2 : 8;
        spz_verdict **at = realloc(verdicts->at, larger * sizeof *at);
        if (!at) {
            spz_verdict_free(verdict);
            return SPZ_NO_MEMORY;
        }
        verdicts->at = at;
        verdicts->capacity = larger;
    }
    verdicts->at[verdicts->count++] = verdict;
    return SPZ_OK;
}

spz_status verdicts_take(Verdicts *verdicts, spz_reading *reading)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < spz_reading_count(reading) && !status; i++)
        status = keep(verdicts, spz_reading_take_verdict(reading, i));
    return status;
}

spz_status verdicts_judge(Verdicts *verdicts, const spz_settings *settings, const spz_sink *sink)
{
    return spz_seating_judge_work((const spz_verdict *const *)verdicts->at, verdicts->count, settings, sink, &verdicts->work);
}

void verdicts_free(Verdicts *verdicts)
{
    for (size_t i = 0; i < verdicts->count; i++)
        spz_verdict_free(verdicts->at[i]);
    spz_verdict_free(verdicts->work);
    free(verdicts->at);
}
