/* each_movement.h - for tools that print a table of a score: reads it, and prints of each movement as its parts were understood. */
#ifndef TESTS_TOOLS_EACH_MOVEMENT_H
#define TESTS_TOOLS_EACH_MOVEMENT_H
#include "sections/section_map.h"
#include "spezzato/spezzato.h"

/* 0; 2 when the score can't be read; else what `print` gave first that is not 0. */
static inline int each_movement(const char *path, int (*print)(const SectionMap *map))
{
    spz_score *score = NULL;
    if (spz_score_read(path, NULL, &score) != SPZ_OK)
        return 2;
    int failed = 0;
    for (size_t i = 0; i < spz_score_movement_count(score) && !failed; i++) {
        spz_sections *sections = NULL;
        failed = spz_sections_find(spz_score_movement(score, i), NULL, NULL, &sections) != SPZ_OK;
        failed = failed || print(sections);
        spz_sections_free(sections);
    }
    spz_score_free(score);
    return failed;
}
#endif
