#include "analysis/antiphony/antiphony.h"
#include "analysis/antiphony/chaining/conversations.h"
#include "analysis/antiphony/chaining/later_links.h"
#include "analysis/antiphony/chaining/nearer_calls.h"
#include "analysis/antiphony/matching/match_head.h"
#include "analysis/antiphony/telling/beneath_line.h"
#include "analysis/antiphony/telling/chain_facts.h"
#include "analysis/antiphony/telling/told_once.h"
#include "analysis/melody/boundaries.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

void antiphony_search_release(AntiphonySearch *search)
{
    rhythm_index_free(search->rhythms);
    array_free(&search->matches);
    array_free(&search->candidates);
    chains_release(&search->chains);
    arena_release(&search->arena);
}

static spz_status weigh_all(const SectionMap *map, bool hopeless_too, AntiphonySearch *search)
{
    for (size_t i = 0; i < search->matches.count; i++) {
        Candidate candidate = {.match = search->matches.at[i]};
        if (!evidence_weigh(&search->texture, search->rhythms, &candidate.match, hopeless_too ? 0 : chains_least_chance, &candidate.evidence))
            continue;
        sides_of(map, &candidate.match, &candidate.evidence, candidate.sides);
        match_take_head(map->movement, search->melodies, &candidate.match);
        candidate.first = movement_bar_at(map->movement, candidate.match.onset);
        candidate.last = movement_bar_at(map->movement, candidate.match.end - 1);
        if (!array_push(&search->candidates, candidate))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

spz_status antiphony_search_join(AntiphonySearch *search)
{
    spz_status status = nearer_calls_weigh(&search->texture, &search->candidates);
    if (status == SPZ_OK)
        status = conversations_weigh(&search->texture, &search->candidates);
    if (status == SPZ_OK)
        status = links_weigh(&search->texture, &search->candidates);
    if (status == SPZ_OK)
        status = chains_make(&search->texture, &search->candidates, &search->arena, &search->chains);
    for (size_t i = 0; i < search->chains.count && status == SPZ_OK; i++)
        status = chain_name_violas(&search->texture, &search->candidates, &search->chains.at[i]);
    if (status == SPZ_OK)
        status = chains_tell_once(&search->texture, &search->candidates, &search->arena, &search->chains);
    if (status == SPZ_OK && search->texture.map->line_count > 0) /* not all strings as one voice */
        status = chains_weigh_lines(&search->texture, &search->candidates, &search->chains);
    return status;
}

static spz_status listen(const SectionMap *map, const Melody *melodies, bool hopeless_too, AntiphonySearch *out)
{
    memset(out, 0, sizeof *out);
    arena_init(&out->arena);
    Melody *own = melodies ? NULL : melodies_of(map, &out->arena);
    boundaries_mark_all(map, own);
    out->melodies = melodies ? melodies : own;
    spz_status status = out->melodies ? texture_make(map, out->melodies, &out->arena, &out->texture) : SPZ_NO_MEMORY;
    if (status == SPZ_OK)
        status = rhythm_index_make(out->melodies, map->group_count, &out->rhythms);
    if (status == SPZ_OK)
        status = matches_find(map->movement, out->melodies, map->group_count, &out->matches);
    if (status == SPZ_OK)
        status = weigh_all(map, hopeless_too, out);
    return status == SPZ_OK ? antiphony_search_join(out) : status;
}

spz_status antiphony_search_make(const SectionMap *map, AntiphonySearch *out)
{
    return listen(map, NULL, true, out);
}

spz_status antiphony_search_hopeful(const SectionMap *map, const Melody *melodies, AntiphonySearch *out)
{
    return listen(map, melodies, false, out);
}

static Ticks beat_at(const Texture *texture, int bar)
{
    const Movement *m = texture->map->movement;
    return m->bars[bar].beat > 0 ? m->bars[bar].beat : m->per_crotchet;
}

/* Fragments that go to and fro within a beat: as they are told, for a figure that is told whole is answered, not tossed. */
static bool alternates_quickly(const Texture *texture, const Candidate *candidate)
{
    enum { FRAGMENT = 4, TOSSED = 2 };
    CallsTold calls = candidate_calls(texture, candidate);
    return candidate->match.lag <= beat_at(texture, candidate->first) && calls.count >= TOSSED && calls.longest <= FRAGMENT;
}

spz_kind chain_kind(const Texture *texture, const CandidateList *candidates, const Chain *chain)
{
    double weight = 0, short_turns = 0, overlap = 0;
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        double w = c->evidence.chance * (double)(c->match.end - c->match.onset);
        weight += w;
        short_turns += alternates_quickly(texture, c) ? w : 0;
        overlap += w * c->evidence.at[F_OVERLAP];
    }
    if (weight <= 0)
        return SPZ_EXCHANGE;
    if (overlap / weight > 0.5)
        return SPZ_IMITATION;
    return short_turns / weight > 0.5 ? SPZ_HOCKET : SPZ_EXCHANGE;
}

static double weighted(const CandidateList *candidates, const Chain *chain, enum Feature feature)
{
    double sum = 0, weight = 0;
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        sum += c->evidence.chance * c->evidence.at[feature];
        weight += c->evidence.chance;
    }
    return weight > 0 ? sum / weight : 0;
}

static double foreground_of(const CandidateList *candidates, const Chain *chain)
{
    double front = weighted(candidates, chain, F_FRONT), doubled = weighted(candidates, chain, F_DOUBLED);
    return fmin(1, 1.6 * front) * (1 - 0.5 * doubled);
}

/* The side of a chain in the findings' groups: where all strings were taken as one voice, all of them, or the winds. */
static spz_side side_told(const Findings *findings, const AntiphonySearch *search, const Side *side)
{
    spz_side told = {.section = side->section, .group = SIZE_MAX, .orchestra = side->orchestra};
    if (findings->map == search->texture.map) {
        told.group = side->group;
        told.players = side->melodies & ~SPZ_WIND_PLAYERS;
    } else if (side->section == SPZ_WINDS)
        told.players = SPZ_WIND_PLAYERS;
    else
        for (size_t g = 0; g < findings->map->group_count; g++)
            told.players |= players_of_group(g);
    return told;
}

/* Where only one side is within the limits of the passage, its first match is told. */
static void tell_opening(const Findings *findings, const AntiphonySearch *search, const Chain *chain, const ChainFacts *facts, spz_passage *passage)
{
    bool told = facts->opening.told;
    Opening opening = told ? facts->opening : opening_of_match(&search->texture, &search->candidates.at[chain->candidates[0]]);
    passage->told.gesture = opening_gesture(&search->texture, &opening);
    for (int i = 0; i < 2; i++)
        passage->sides[i] = passage->told.gesture.sides[i] = side_told(findings, search, told ? &opening.sides[i] : &chain->sides[i]);
}

spz_status antiphony_report(Findings *findings, const AntiphonySearch *search, const Chain *chain)
{
    ChainFacts own = {.turns = 0};
    bool kept = chain->facts && findings->map == search->texture.map;
    const ChainFacts *facts = kept ? chain->facts : &own;
    const CandidateList *candidates = &search->candidates;
    spz_kind kind = chain_kind(&search->texture, candidates, chain);
    spz_status status = kept ? SPZ_OK : chain_facts_make(findings->map, &search->texture, candidates, chain, &own);
    if (status == SPZ_OK) {
        spz_passage passage = {.kind = kind, .onset = chain_begins_at(chain, facts), .end = chain->end, .strength = chain->strength, .turns = facts->turns,
                               .entries = facts->entries.at, .entry_count = facts->entries.count, .links = facts->links.at,
                               .link_count = facts->links.count, .foreground = foreground_of(candidates, chain),
                               .shortest = chain_shortest_seconds(&search->texture, candidates, chain)};
        tell_opening(findings, search, chain, facts, &passage);
        status = findings_add(findings, &passage);
    }
    chain_facts_release(&own);
    return status;
}

spz_status detect_antiphony(Findings *findings, const spz_settings *settings)
{
    (void)settings; /* what is heard does not depend on the house */
    if (findings->map->group_count < 2)
        return SPZ_OK;
    const Melody *melodies = findings_melodies(findings);
    if (!melodies)
        return SPZ_NO_MEMORY;
    AntiphonySearch search;
    spz_status status = antiphony_search_hopeful(findings->map, melodies, &search);
    for (size_t i = 0; status == SPZ_OK && i < search.chains.count; i++)
        status = antiphony_report(findings, &search, &search.chains.at[i]);
    antiphony_search_release(&search);
    return status;
}
