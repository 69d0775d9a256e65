/* texture.h - what else is heard: for every half crotchet, how busy each string group is, how high it lies, and how much the winds
 * play. Foreground is judged against this. Cost: one pass over all sounds. */
#ifndef ANALYSIS_MELODY_TEXTURE_H
#define ANALYSIS_MELODY_TEXTURE_H
#include "analysis/melody/melody.h"

typedef struct TextureCell {
    uint8_t onsets;  /* notes that begin in the cell */
    uint8_t moves;   /* of these, those at a new pitch */
    int16_t top;     /* highest pitch sounding, -1 for silence */
} TextureCell;

typedef struct Texture {
    const SectionMap *map;
    const Melody *melodies;
    size_t melody_count, cell_count;
    Ticks cell;        /* length of a cell */
    TextureCell *cells;  /* [cell * melody_count + melody] */
    uint16_t *winds;   /* other parts' notes sounding, by cell */
    uint16_t winds_most; /* the largest of these */
    int16_t *wind_top; /* by cell: the highest note that a wind part begins in it, -1 for none */
} Texture;

spz_status texture_make(const SectionMap *map, const Melody *melodies, Arena *arena, Texture *out);

static inline size_t texture_cell_at(const Texture *texture, Ticks when)
{
    size_t i = when > 0 ? (size_t)(when / texture->cell) : 0;
    return i < texture->cell_count ? i : texture->cell_count - 1;
}

/* Of the bar in which the note begins, by its time signature. */
Ticks texture_bar_length(const Texture *texture, const NoteEvent *event);

typedef struct Foreground {
    double prominence; /* share of what moves that a melody has, 0..1: its fresh notes against the busiest of the others, and whether it lies above them */
    double on_top;     /* share of the time, 0..1, in which it sounds and nothing that moves lies above it, no wind either */
    double wind_above; /* share of the time, 0..1, in which a moving wind lies above it */
} Foreground;

/* How group `melody` stands out from those not in `company` (bit i: melody i). */
Foreground texture_foreground(const Texture *texture, size_t melody, uint64_t company, Ticks from, Ticks to);
/* Tones that begin in a cell, on the mean, in the groups outside `sides` (bit i: melody i), all together. */
double texture_busy_beside(const Texture *texture, uint64_t sides, Ticks from, Ticks to);
/* How full the winds are between two moments, 0..1 of the fullest moment of the movement. */
double texture_wind_fullness(const Texture *texture, Ticks from, Ticks to);
#endif
