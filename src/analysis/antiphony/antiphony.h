/* antiphony.h - exchange, hocket and imitation between groups: the line of detection
 *
 *   melodies -> matches -> evidence -> sides -> nearer calls -> conversations -> links -> chains -> passages
 *
 * each step in its own file. */
#ifndef ANALYSIS_ANTIPHONY_ANTIPHONY_H
#define ANALYSIS_ANTIPHONY_ANTIPHONY_H
#include "analysis/antiphony/chaining/chains.h"
#include "analysis/passages/findings.h"

spz_status detect_antiphony(Findings *findings, const spz_settings *settings);

/* All that was looked at on the way, for detect_antiphony, the --explain report and the fitting of weights. */
typedef struct AntiphonySearch {
    Arena arena;
    const Melody *melodies;
    Texture texture;
    RhythmIndex *rhythms;
    MatchList matches;
    CandidateList candidates;
    ChainList chains;
} AntiphonySearch;
spz_status antiphony_search_make(const SectionMap *map, AntiphonySearch *out); /* on failure too, `out` must be released */
/* The same chains from fewer candidates: those that can't come to anything are left out. `melodies`: those of the map, where they are at
 * hand and outlive the search, else NULL. */
spz_status antiphony_search_hopeful(const SectionMap *map, const Melody *melodies, AntiphonySearch *out);
/* The last steps once more: links and chains of candidates that were weighed anew. The chains must be empty. */
spz_status antiphony_search_join(AntiphonySearch *search);
void antiphony_search_release(AntiphonySearch *search);

/* Adds one chain as a passage. The search's groups may be others than the findings' (strings_and_winds.h): entries are then given the group that
 * really plays, SIZE_MAX for winds. */
spz_status antiphony_report(Findings *findings, const AntiphonySearch *search, const Chain *chain);

/* What kind of passage a chain is. */
spz_kind chain_kind(const Texture *texture, const CandidateList *candidates, const Chain *chain);
#endif
