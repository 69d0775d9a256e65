/* scene.h - what else is heard: for every half crotchet, how busy each string group is, how high it lies, and how much the winds
 * play. Foreground is judged against this. Cost: one pass over all sounds. */
#ifndef ANALYSIS_SCENE_H
#define ANALYSIS_SCENE_H
#include "analysis/tune.h"

typedef struct SceneCell {
    uint8_t onsets;  /* tones that begin in the cell */
    uint8_t moves;   /* of these, those at a new pitch */
    int16_t top;     /* highest pitch sounding, -1 for silence */
} SceneCell;

typedef struct Scene {
    const SectionMap *map;
    const Tune *tunes;
    size_t tune_count, cell_count;
    Ticks cell;        /* length of a cell */
    SceneCell *cells;  /* [tune * cell_count + cell] */
    uint16_t *winds;   /* other parts' notes sounding, by cell */
    uint16_t winds_most; /* the largest of these */
} Scene;

spz_status scene_make(const SectionMap *map, const Tune *tunes, Arena *arena, Scene *out);

static inline size_t scene_cell_at(const Scene *scene, Ticks when)
{
    size_t i = when > 0 ? (size_t)(when / scene->cell) : 0;
    return i < scene->cell_count ? i : scene->cell_count - 1;
}

/* Share of what moves at that time that group `tune` has, 0..1: its fresh notes against the busiest group that is not in
 * `company` (bit i: tune i), and whether it lies above that group. */
double scene_prominence(const Scene *scene, size_t tune, uint64_t company, Ticks from, Ticks to);
/* Tones that begin in a cell, on the mean, in the groups outside `sides` (bit i: tune i), all together. */
double scene_busy_beside(const Scene *scene, uint64_t sides, Ticks from, Ticks to);
/* How full the winds are between two moments, 0..1 of the fullest moment of the movement. */
double scene_wind_fullness(const Scene *scene, Ticks from, Ticks to);
#endif
