#include "editing/score_files.h"

bool judged_all(const spz_reading *const *readings, size_t count)
{
    for (size_t i = 0; i < count; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]); m++)
            if (!spz_reading_at(readings[i], m).verdict)
                return false;
    return true;
}
