#include "analysis/antiphony/telling/told_opening.h"
#include "analysis/melody/tune.h"

static const struct {
    double parallel; /* share of a statement's steps with which those must go who name a side */
} rule = {.parallel = 0.6};

static const size_t known_from = 3; /* notes that two statements share, by which one is known in the other */

static bool of_one_side(const Statement *a, const Statement *b)
{
    return a->melody == b->melody || (a->with >> b->melody & 1) || (b->with >> a->melody & 1);
}

static int orchestra_of(const Texture *texture, const Statement *statement)
{
    return texture->map->groups[statement->melody].about.orchestra;
}

/* Who answers the first call: the other orchestra, where two answer each other; others; at least another player. */
enum Answering { OTHER_ORCHESTRA, OTHER_SIDE, OTHER_PLAYER, NOBODY };

static bool answers(const Texture *texture, const Statement *first, const Statement *now, enum Answering who)
{
    if (now->first->onset == first->first->onset || now->melody == first->melody)
        return false;
    return who == OTHER_PLAYER || (!of_one_side(now, first) && (who == OTHER_SIDE || orchestra_of(texture, now) != orchestra_of(texture, first)));
}

bool statement_has_line(const Melody *melody, const Statement *statement)
{
    const NoteEvent *before = NULL;
    int steps = 0, alike = 0;
    size_t at = melody_at(melody, statement->first->onset);
    for (const NoteEvent *event = statement->first; event <= statement->last; event++) {
        while (at < melody->count && melody->events[at].onset < event->onset)
            at++;
        const NoteEvent *now = at < melody->count && melody->events[at].onset == event->onset ? &melody->events[at] : NULL;
        steps += event > statement->first;
        alike += before && now && event_direction(before, now) == event_direction(event - 1, event);
        before = now;
    }
    return alike >= rule.parallel * steps;
}

/* Those who have the statement's line. */
static spz_players having_line(const Texture *texture, const Statement *statement)
{
    spz_players players = players_of_group(statement->melody);
    for (size_t i = 0; i < texture->map->group_count && i < 63; i++)
        if ((statement->with >> i & 1) && statement_has_line(&texture->melodies[i], statement))
            players |= players_of_group(i);
    return players;
}

/* The name of those who have the line; the leader's, by whose notes it is measured, where that would be others'. */
static Side side_of(const Texture *texture, const Statement *statement)
{
    spz_players leader = players_of_group(statement->melody);
    Side side = {.melodies = having_line(texture, statement)}, alone = {.melodies = leader};
    side_name(texture->map, statement->melody, side.melodies, &side);
    side_name(texture->map, statement->melody, leader, &alone);
    return side_named_after(texture->map, &side, leader) ? side : alone;
}

/* The statement as one of those has it after whom the side is named, its leader before others; false: they are not in it. */
static bool tell_by(const Texture *texture, const Side *side, Statement *statement)
{
    if (side_named_after(texture->map, side, players_of_group(statement->melody)))
        return true;
    for (size_t i = 0; i < texture->map->group_count && i < 63; i++) {
        const Melody *melody = &texture->melodies[i];
        const NoteEvent *first = melody_note_at(melody, statement->first->onset);
        if (!(statement->with >> i & 1) || !side_named_after(texture->map, side, players_of_group(i)) || !first)
            continue;
        const NoteEvent *last = melody->events + melody_at(melody, statement->last->onset + 1) - 1;
        *statement = (Statement){.melody = i, .with = statement->with, .first = first, .last = last, .answer = statement->answer, .pair = SIZE_MAX};
        return true;
    }
    return false;
}

/* Of a section with several parts, those are named who have it there. */
static void tell_as_named(const Texture *texture, Side *side, Statement *statement)
{
    tell_by(texture, side, statement);
    Side those = side_of(texture, statement);
    if (those.section == side->section && those.orchestra == side->orchestra && those.group != side->group)
        *side = those;
}

/* The call that the answer was found to answer, else the last that its players made before it. */
static size_t call_of(const Texture *texture, const StatementList *list, size_t first, size_t answer, const Side *side)
{
    size_t call = first;
    for (size_t i = first; i < answer; i++) {
        Statement now = list->at[i];
        bool theirs = of_one_side(&now, &list->at[first]) && (!side || tell_by(texture, side, &now));
        if (theirs && list->at[i].pair == list->at[answer].pair)
            return i;
        call = theirs ? i : call;
    }
    return call;
}

/* The first to answer `call` as one of those who bear the side's name, where that is given. */
static size_t answer_to(const Texture *texture, const StatementList *list, size_t call, enum Answering who, const Side *side)
{
    for (size_t i = call + 1; i < list->count; i++) {
        Statement now = list->at[i];
        if (answers(texture, &list->at[call], &now, who) && (!side || tell_by(texture, side, &now)))
            return i;
    }
    return 0;
}

/* Whether a match found that one to answer the other, or it has as much of it as makes it known. */
static bool has_call(const Texture *texture, const Statement *call, const Statement *answer)
{
    spz_change change;
    long notes = (call->last - call->first < answer->last - answer->first ? call->last - call->first : answer->last - answer->first) + 1;
    long shared = (long)statements_shared(texture, call, answer, &change);
    return (answer->answer && answer->pair == call->pair) || (shared >= (long)known_from && 2 * shared >= notes);
}

/* The first call of one of the two sides after whom the chain is named and the first answer of the other, whoever calls; one that is `known` in it. */
static bool find_pair(const Texture *texture, const Chain *chain, const StatementList *list, bool known, Opening *out)
{
    for (size_t i = 0; i < list->count; i++)
        for (int side = 0; side < 2; side++) {
            const Side *calls = &chain->sides[side], *replies = &chain->sides[!side];
            Statement call = list->at[i];
            size_t at = tell_by(texture, calls, &call) ? answer_to(texture, list, i, OTHER_SIDE, replies) : 0;
            if (!at)
                continue;
            *out = (Opening){.told = true, .call_entry = call_of(texture, list, i, at, calls), .answer_entry = at, .sides = {*calls, *replies}};
            if (!known || has_call(texture, &list->at[out->call_entry], &list->at[at]))
                return true;
        }
    return false;
}

/* The first entry, and the first of others. */
static bool find_first(const Texture *texture, const Chain *chain, const StatementList *list, bool known, Opening *out)
{
    bool orchestras = chain->sides[0].orchestra != chain->sides[1].orchestra;
    size_t at = 0;
    for (int who = orchestras ? OTHER_ORCHESTRA : OTHER_SIDE; who < NOBODY && !at; who++)
        at = answer_to(texture, list, 0, (enum Answering)who, NULL);
    if (at)
        *out = (Opening){.told = true, .call_entry = call_of(texture, list, 0, at, NULL), .answer_entry = at};
    for (int i = 0; at && i < 2; i++)
        out->sides[i] = side_of(texture, &list->at[i ? at : out->call_entry]);
    return at > 0 && (!known || has_call(texture, &list->at[out->call_entry], &list->at[at]));
}

/* How much the answer has of the call, each as those have it after whom its side is named; as their leaders have it where these have more. */
static void measure(const Texture *texture, const Statement *call, const Statement *answer, Opening *opening)
{
    bool found = answer->answer && answer->pair == call->pair, led = opening->call.melody == call->melody && opening->answer.melody == answer->melody;
    Statement leads = *answer;
    size_t shared = found ? (size_t)(call->last - call->first) + 1 : statements_shared(texture, call, answer, &leads.change);
    opening->notes = led ? shared : statements_shared(texture, &opening->call, &opening->answer, &opening->answer.change);
    if (!led && (opening->notes >= known_from || opening->notes >= shared))
        return;
    opening->call = *call;
    opening->answer = leads;
    opening->notes = shared;
}

Opening opening_of(const Texture *texture, const Chain *chain, StatementList *list)
{
    Opening opening = {.told = false};
    bool found_pair = find_pair(texture, chain, list, true, &opening);
    if (!found_pair && !find_first(texture, chain, list, true, &opening) && !find_pair(texture, chain, list, false, &opening) && !find_first(texture, chain, list, false, &opening))
        return opening;
    Statement *answer = &list->at[opening.answer_entry];
    opening.call = list->at[opening.call_entry];
    opening.answer = *answer;
    tell_as_named(texture, &opening.sides[0], &opening.call);
    tell_as_named(texture, &opening.sides[1], &opening.answer);
    measure(texture, &list->at[opening.call_entry], answer, &opening);
    if (!answer->answer || answer->pair != list->at[opening.call_entry].pair)
        answer->change = opening.answer.change;
    answer->answer = true;
    return opening;
}

/* The same of a match alone. */
Opening opening_of_match(const Texture *texture, const Candidate *candidate)
{
    StatementWalk walk = statements_begin(texture, candidate);
    Opening opening = {.told = false, .call = {.melody = candidate->match.caller}, .answer = {.melody = candidate->match.responder}};
    while (statements_next(&walk, &opening.call, &opening.answer) && opening.call.last == opening.call.first && walk.called)
        ; /* a single note is no figure where more of them follow */
    opening.notes = (size_t)(opening.call.last - opening.call.first) + 1;
    return opening;
}

/* From a call in that bar to its answer. */
static spz_length length_of(const Texture *texture, int in_bar, Ticks lag)
{
    const Movement *m = texture->map->movement;
    const Bar *bar = &m->bars[in_bar];
    Ticks beat = bar->beat > 0 ? bar->beat : m->per_crotchet, nominal = bar->nominal > 0 ? bar->nominal : 0;
    double bars = nominal ? (double)lag / (double)nominal : 0;
    if (nominal && (lag % nominal == 0 || (lag * 2 == nominal && nominal > 2 * beat)))
        return (spz_length){fraction_of(lag, nominal), SPZ_IN_BARS, bars};
    if (lag * 2 % beat == 0)
        return (spz_length){fraction_of(lag, beat), SPZ_IN_BEATS, bars};
    return (spz_length){fraction_of(lag, m->per_crotchet), SPZ_IN_CROTCHETS, bars};
}

spz_length candidate_lag(const Texture *texture, const Candidate *candidate)
{
    return length_of(texture, candidate->first, candidate->match.lag);
}

/* From where both are alike, which may be their second notes: a first may be longer in one of them, or missing. */
static Ticks opening_lag(const Texture *texture, const Opening *opening)
{
    const Movement *m = texture->map->movement;
    const NoteEvent *call = opening->call.second, *answer = opening->answer.second;
    Ticks beat = m->bars[opening->call.first->bar].beat, lag = opening->answer.first->onset - opening->call.first->onset;
    bool known = call && answer && beat > 0 && (answer->onset - call->onset) * 2 % beat == 0;
    return known ? answer->onset - call->onset : lag;
}

static bool is_swapped(const Texture *texture, const Opening *opening)
{
    const Statement *call = &opening->call, *answer = &opening->answer;
    const Group *groups = texture->map->groups;
    return tunes_swapped(&groups[call->melody], call->first->onset, call->last->end, &groups[answer->melody], answer->first->onset);
}

spz_gesture opening_gesture(const Texture *texture, const Opening *opening)
{
    const NoteEvent *call = opening->call.first;
    return (spz_gesture){.notes = (int)opening->notes, .pizzicato = (call->flags & EVENT_PIZZICATO) != 0,
                         .lag = length_of(texture, call->bar, opening_lag(texture, opening)), .change = opening->answer.change,
                         .swapped = is_swapped(texture, opening)};
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
