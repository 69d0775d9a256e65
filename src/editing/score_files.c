#include "editing/score_files.h"

bool judged_all(const spz_reading *const *readings, size_t count)
{
    for (size_t i = 0; i < count; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]); m++)
            if (!spz_reading_at(readings[i], m).verdict)
                return false;
    return true;
}

const spz_ranked *judged_other_placing(const spz_verdict *verdict)
{
    const spz_ranked *best = spz_verdict_ranked(verdict, 0);
    for (size_t i = 1; i < spz_verdict_count(verdict); i++)
        if (spz_verdict_ranked(verdict, i)->opposed != best->opposed)
            return spz_verdict_ranked(verdict, i);
    return NULL;
}
