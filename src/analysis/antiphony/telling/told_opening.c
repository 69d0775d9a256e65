#include "analysis/antiphony/telling/told_opening.h"
#include "analysis/antiphony/telling/statements.h"
#include <math.h>

static const struct {
    double opening; /* share of the clearest match's chance from which an earlier one is told as the passage's opening */
} rule = {.opening = 0.7};

/* Whether it is the passage's first section that calls in it, and about as clearly as anywhere. */
static bool may_open(const Chain *chain, const Candidate *candidate, double clearest)
{
    return chain_side_of(chain, candidate, 0)->section == chain->sides[0].section && candidate->evidence.chance >= rule.opening * clearest;
}

const Candidate *chain_opening(const CandidateList *candidates, const Chain *chain)
{
    const Candidate *opening = NULL;
    double clearest = 0;
    if (chain->named_by)
        return chain->named_by;
    for (size_t i = 0; i < chain->candidate_count; i++)
        clearest = fmax(clearest, candidates->at[chain->candidates[i]].evidence.chance);
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        Ticks answer = c->match.onset + c->match.lag, first = opening ? opening->match.onset + opening->match.lag : 0;
        if (may_open(chain, c, clearest) && (!opening || answer < first || (answer == first && c->evidence.chance > opening->evidence.chance)))
            opening = c;
    }
    return opening ? opening : &candidates->at[chain->candidates[0]];
}

static bool is_listed(const SectionMap *map, const Texture *texture, const ChainFacts *facts, const Statement *statement)
{
    bool winds = texture->melodies[statement->melody].group->about.section == SPZ_WINDS;
    spz_players who = winds ? SPZ_WIND_PLAYERS : map == texture->map ? players_of_group(statement->melody) : ~SPZ_WIND_PLAYERS;
    for (size_t i = 0; i < facts->entries.count; i++)
        if (facts->entries.at[i].onset == statement->first->onset && (facts->entries.at[i].players & who))
            return true;
    return false;
}

/* When its first answer comes, where that and its call are among the entries; -1 where they are not. */
static Ticks answer_listed(const SectionMap *map, const Texture *texture, const ChainFacts *facts, const Candidate *candidate)
{
    StatementWalk walk = statements_begin(texture, candidate);
    Statement call = {.melody = candidate->match.caller}, answer = {.melody = candidate->match.responder};
    if (!statements_next(&walk, &call, &answer))
        return -1;
    call = statement_told_by(&walk, 0, call);
    answer = statement_told_by(&walk, 1, answer);
    return is_listed(map, texture, facts, &call) && is_listed(map, texture, facts, &answer) ? answer.first->onset : -1;
}

const Candidate *listed_opening(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain, const ChainFacts *facts)
{
    const Candidate *opening = chain_opening(candidates, chain), *listed = NULL;
    Ticks first = INT64_MAX;
    if (answer_listed(map, texture, facts, opening) >= 0)
        return opening;
    const AbsorbedPair own = {chain->candidates, chain->candidate_count, chain->absorbed};
    for (const AbsorbedPair *pair = &own; pair; pair = pair->next)
        for (size_t i = 0; i < pair->count; i++) {
            const Candidate *candidate = &candidates->at[pair->candidates[i]];
            Ticks answer = answer_listed(map, texture, facts, candidate);
            if (answer >= 0 && answer < first) {
                listed = candidate;
                first = answer;
            }
        }
    return listed ? listed : opening;
}

spz_length candidate_lag(const Texture *texture, const Candidate *candidate)
{
    const Movement *m = texture->map->movement;
    const Bar *bar = &m->bars[candidate->first];
    Ticks lag = candidate->match.lag, beat = bar->beat > 0 ? bar->beat : m->per_crotchet, nominal = bar->nominal > 0 ? bar->nominal : 0;
    if (nominal && (lag % nominal == 0 || (lag * 2 == nominal && nominal > 2 * beat)))
        return (spz_length){fraction_of(lag, nominal), SPZ_IN_BARS};
    if (lag * 2 % beat == 0)
        return (spz_length){fraction_of(lag, beat), SPZ_IN_BEATS};
    return (spz_length){fraction_of(lag, m->per_crotchet), SPZ_IN_CROTCHETS};
}

spz_gesture candidate_gesture(const Texture *texture, const Candidate *candidate)
{
    const Match *match = &candidate->match;
    const NoteEvent *first = &texture->melodies[match->caller].events[match->call_first];
    StatementWalk walk = statements_begin(texture, candidate);
    Statement call = {0}, answer = {0};
    while (statements_next(&walk, &call, &answer) && call.last == call.first && walk.called)
        ; /* a single note is no figure where more of them follow */
    return (spz_gesture){.notes = (int)(call.last - call.first) + 1, .pizzicato = (first->flags & EVENT_PIZZICATO) != 0, .lag = candidate_lag(texture, candidate),
                         .change = answer.change};
}

CallsTold candidate_calls(const Texture *texture, const Candidate *candidate)
{
    StatementWalk walk = statements_begin(texture, candidate);
    Statement call, answer;
    CallsTold told = {0, 0};
    while (statements_next(&walk, &call, &answer)) {
        int notes = (int)(call.last - call.first) + 1;
        told.longest = notes > told.longest ? notes : told.longest;
        told.count++;
    }
    return told;
}

double chain_shortest_seconds(const Texture *texture, const CandidateList *candidates, const Chain *chain)
{
    const Movement *m = texture->map->movement;
    double tempo = movement_tempo_at(m, chain->onset);
    Ticks least = INT64_MAX;
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Match *match = &candidates->at[chain->candidates[i]].match;
        for (uint32_t t = match->call_first; t < match->call_last; t++) {
            const NoteEvent *event = &texture->melodies[match->caller].events[t];
            if (event->next - event->onset < least)
                least = event->next - event->onset;
        }
    }
    return tempo > 0 && least < INT64_MAX ? (double)least / (double)m->per_crotchet * 60 / tempo : 0;
}
