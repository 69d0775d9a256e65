/* parts_words.h - the wording of the librarian's advice. All texts live in the arena; NULL when out of memory. */
#ifndef WORDING_PARTS_WORDS_H
#define WORDING_PARTS_WORDS_H
#include "editing/parts_advice.h"

/* The bodies of players of a chain in order of their first entries; SIZE_MAX for winds. */
enum { CHAIN_MOST = 12 };
typedef struct ChainOrder {
    size_t groups[CHAIN_MOST];
    size_t count;
} ChainOrder;
ChainOrder parts_chain(const spz_passage *passage);

const char *parts_body(const SectionMap *map, const spz_passage *passage, size_t group); /* 'Vn II', 'winds' */

/* What player `place` of the chain gets: 'lead, Vn II answers', 'answer Vn I', 'after Vn I, before Va'. `across`: the neighbours sit at
 * the other side of the stage. */
const char *parts_chain_words(Arena *arena, const SectionMap *map, const spz_passage *passage, const ChainOrder *chain, size_t place,
                              bool across);
/* 'own entries in bars 66, 68; Vn II in 67, 69'. */
const char *parts_entries(Arena *arena, const SectionMap *map, const spz_passage *passage, size_t group);
/* 'div. a 3, by desk'; `said`: the score says itself that the section divides, so only the sharing is left to say. */
const char *parts_division(Arena *arena, const spz_passage *passage, const spz_allotment *allotment, bool said);
/* 'line 1 (top): desks 1, 4, 7; line 2: desks 2, 5, 8; ...' for one section. */
const char *parts_desks(Arena *arena, const spz_allotment *allotment, spz_section section);
/* The desks of one line: 'desks 1, 4, outside player of desk 7'; "" where nobody of the section plays it. */
const char *parts_line_desks(Arena *arena, const spz_allotment *allotment, spz_section section, int line);
#endif
