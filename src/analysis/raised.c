#include "analysis/raised.h"
#include "analysis/antiphony/antiphony.h"
#include "analysis/antiphony/split_line.h"
#include "analysis/passages/coupling.h"
#include "analysis/passages/rulings.h"
#include <string.h>

/* Whether the line asks for a passage where none stands. */
static bool asks(const Findings *findings, const Ruling *ruling)
{
    return ruling->ruling == SPZ_WEIGHTED && !ruling_meets(findings, ruling);
}

static spz_side side_of(const Side *side)
{
    return (spz_side){.section = side->section, .group = side->group, .orchestra = side->orchestra};
}

/* Bars of the line that the match covers; 0 where it is not about it. */
static int covers(const Findings *findings, const Ruling *ruling, const Candidate *candidate)
{
    spz_side sides[2] = {side_of(&candidate->sides[0]), side_of(&candidate->sides[1])};
    return (int)ruling_covers(findings, ruling, (size_t)candidate->first, (size_t)candidate->last, sides);
}

/* The match that covers most of the line's bars, of equals the strongest; NULL: none. */
static Candidate *meant(const Findings *findings, const Ruling *ruling, AntiphonySearch *search)
{
    Candidate *best = NULL;
    int most = 0;
    for (size_t i = 0; i < search->candidates.count; i++) {
        Candidate *candidate = &search->candidates.at[i];
        int bars = covers(findings, ruling, candidate);
        if (bars > most || (bars && bars == most && candidate->evidence.chance > best->evidence.chance)) {
            best = candidate;
            most = bars;
        }
    }
    return best;
}

/* Kinds that lie in what two sections do at once, where the line names one of them and two sections. */
static spz_status raise_together(Findings *findings, const Ruling *ruling)
{
    size_t first, last, groups[2];
    bool made = false;
    if (ruling->any_kind || !ruling_bars(findings, ruling, &first, &last) || !ruling_groups(findings, ruling, groups))
        return SPZ_OK;
    if (ruling->kind == SPZ_COUPLING)
        return coupling_raise(findings, groups, first, last, &made);
    return ruling->kind == SPZ_SPLIT_LINE ? split_line_raise(findings, groups, first, last, &made) : SPZ_OK;
}

static bool answers(const Ruling *ruling)
{
    return ruling->any_kind || (spz_kind_is_antiphony(ruling->kind) && ruling->kind != SPZ_SPLIT_LINE);
}

static spz_status raise(Findings *findings, const Ruling *ruling, AntiphonySearch *search)
{
    ChainList made = {0};
    Candidate *one = meant(findings, ruling, search);
    const ChainMaker maker = {&search->texture, search->candidates.at, &search->arena, &made};
    spz_status status = one ? chains_cut(&maker, &one, 1) : SPZ_OK;
    for (size_t i = 0; i < made.count && !status; i++)
        status = antiphony_report(findings, search, &made.at[i]);
    array_free(&made);
    return status;
}

spz_status raised_add(Findings *findings, const spz_settings *settings, const spz_sink *sink)
{
    Rulings rulings;
    AntiphonySearch search;
    bool listened = false;
    spz_status status = rulings_read(findings->map->movement, settings, sink, &rulings);
    for (size_t i = 0; i < rulings.count && !status && findings->map->group_count > 1; i++) {
        if (!asks(findings, &rulings.at[i]))
            continue;
        if (!answers(&rulings.at[i])) {
            status = raise_together(findings, &rulings.at[i]);
            continue;
        }
        status = listened ? SPZ_OK : antiphony_search_make(findings->map, &search);
        listened = true;
        if (!status)
            status = raise(findings, &rulings.at[i], &search);
    }
    if (listened)
        antiphony_search_release(&search);
    array_free(&rulings);
    return status;
}
