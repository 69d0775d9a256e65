/* chamber_music.h - whether every string part is one player's. */
#ifndef SECTIONS_CHAMBER_MUSIC_H
#define SECTIONS_CHAMBER_MUSIC_H
#include "sections/section_map.h"

/* True for the usual combinations of single strings (duo to octet, without basses) with at most one other instrument, where no name speaks
 * of several players and no word over a string staff divides, unites or counts them. */
bool chamber_music(const SectionMap *map);
#endif
