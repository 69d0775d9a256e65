/* findings.h - what the detectors write into. Each detector of the table in detectors.c is a function that reads the section map
 * (and the shared gestures) and adds passages; nothing else happens in it. */
#ifndef ANALYSIS_PASSAGES_FINDINGS_H
#define ANALYSIS_PASSAGES_FINDINGS_H
#include "analysis/melody/melody.h"
#include "analysis/passages/passage_facts.h"
#include "spezzato/passages.h"
#include "support/array.h"

struct spz_findings {
    Arena arena;               /* links and entries of the passages */
    const SectionMap *map;
    const Melody *melodies;         /* of the map's groups, from the arena; set by findings_melodies */
    ARRAY(spz_passage) passages;
    ARRAY(spz_pairing) pairings;
};
typedef struct spz_findings Findings;

/* Adds a passage: the caller has filled kind, sides, onset, end, strength, turns, links, entries, what its kind tells, and terms;
 * links and entries are copied; bars, their numbers and the rehearsal letter are derived here. */
spz_status findings_add(Findings *findings, const spz_passage *passage);

/* The melodies of all groups, made at the first call and shared by the detectors; NULL when out of memory. */
const Melody *findings_melodies(Findings *findings);

/* Order of spz_passages_find. */
void findings_sort(Findings *findings);
#endif
