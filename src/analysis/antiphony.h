/* antiphony.h - exchange, hocket and imitation between groups: the line of detection
 *
 *   tunes -> matches -> evidence -> sides -> links -> chains -> passages
 *
 * each step in its own file. */
#ifndef ANALYSIS_ANTIPHONY_H
#define ANALYSIS_ANTIPHONY_H
#include "analysis/chains.h"
#include "analysis/findings.h"

spz_status detect_antiphony(Findings *findings, const spz_settings *settings);

/* All that was looked at on the way, for detect_antiphony, the --explain report and the fitting of weights. */
typedef struct Hearing {
    Arena arena;
    const Tune *tunes;
    Scene scene;
    RhythmIndex *rhythms;
    MatchList matches;
    CandidateList candidates;
    ChainList chains;
} Hearing;
spz_status hearing_make(const SectionMap *map, Hearing *out); /* on failure too, `out` must be released */
/* The same chains from fewer candidates: those that can't come to anything are left out. `tunes`: those of the map, where they are at
 * hand and outlive the hearing, else NULL. */
spz_status hearing_make_hopeful(const SectionMap *map, const Tune *tunes, Hearing *out);
/* The last steps once more: links and chains of candidates that were weighed anew. The chains must be empty. */
spz_status hearing_join(Hearing *hearing);
void hearing_release(Hearing *hearing);

/* Adds one chain as a passage. The hearing's groups may be others than the findings' (winds.h): entries are then given the group that
 * really plays, SIZE_MAX for winds. */
spz_status antiphony_report(Findings *findings, const Hearing *hearing, const Chain *chain);

/* What kind of passage a chain is. */
spz_kind chain_kind(const Scene *scene, const CandidateList *candidates, const Chain *chain);

/* One sentence: "first violins' four-note figure, answered two beats later by the second violins a third lower, five times". */
char *chain_reason(const Scene *scene, const CandidateList *candidates, const Chain *chain, spz_kind kind, int turns,
                   Arena *arena);
#endif
