#include "analysis/antiphony/telling/told_opening.h"

static const struct {
    double parallel; /* share of a statement's steps with which those must go who name a side */
} rule = {.parallel = 0.6};

static bool of_one_side(const Statement *a, const Statement *b)
{
    return a->melody == b->melody || (a->with >> b->melody & 1) || (b->with >> a->melody & 1);
}

/* The call that the answer was found to answer, else the last that its players made before it. */
static size_t call_of(const StatementList *list, const Statement *first, size_t answer)
{
    size_t call = 0;
    for (size_t i = 0; i < answer; i++) {
        bool theirs = of_one_side(&list->at[i], first);
        if (theirs && list->at[i].pair == list->at[answer].pair)
            return i;
        call = theirs ? i : call;
    }
    return call;
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

static size_t first_answer(const Texture *texture, const StatementList *list, enum Answering who)
{
    for (; who < NOBODY; who++)
        for (size_t i = 1; i < list->count; i++)
            if (answers(texture, &list->at[0], &list->at[i], who))
                return i;
    return 0;
}

Opening opening_of(const Texture *texture, const Chain *chain, StatementList *list)
{
    bool orchestras = chain->sides[0].orchestra != chain->sides[1].orchestra;
    size_t at = first_answer(texture, list, orchestras ? OTHER_ORCHESTRA : OTHER_SIDE);
    if (!at)
        return (Opening){.told = false};
    size_t call = call_of(list, &list->at[0], at);
    Statement *answer = &list->at[at];
    bool found = answer->answer && answer->pair == list->at[call].pair;
    size_t notes = (size_t)(list->at[call].last - list->at[call].first) + 1;
    answer->answer = true;
    if (!found)
        notes = statements_shared(texture, &list->at[call], answer, &answer->change);
    return (Opening){true, call, at, notes, list->at[call], *answer};
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

spz_gesture opening_gesture(const Texture *texture, const Opening *opening)
{
    const NoteEvent *call = opening->call.first;
    return (spz_gesture){.notes = (int)opening->notes, .pizzicato = (call->flags & EVENT_PIZZICATO) != 0,
                         .lag = length_of(texture, call->bar, opening_lag(texture, opening)), .change = opening->answer.change};
}

/* Whether the melody has the line of the statement, in unison or in parallel, and not its rhythm alone. */
static bool has_line(const Melody *melody, const Statement *statement)
{
    const NoteEvent *before = melody_note_at(melody, statement->first->onset);
    int steps = 0, alike = 0;
    for (const NoteEvent *event = statement->first + 1; event <= statement->last; event++) {
        const NoteEvent *now = melody_note_at(melody, event->onset);
        steps++;
        alike += before && now && event_direction(before, now) == event_direction(event - 1, event);
        before = now;
    }
    return alike >= rule.parallel * steps;
}

Side opening_side(const Texture *texture, const Statement *statement, spz_players players)
{
    Side side = {.melodies = (uint64_t)1 << statement->melody};
    for (size_t i = 0; i < texture->map->group_count && i < 63; i++)
        if ((players >> i & 1) && has_line(&texture->melodies[i], statement))
            side.melodies |= (uint64_t)1 << i;
    side_name(texture->map, statement->melody, side.melodies, &side);
    if (side_named_after(texture->map, &side, (uint64_t)1 << statement->melody))
        return side;
    Side leader = {.melodies = (uint64_t)1 << statement->melody}; /* by whose notes it is measured */
    side_name(texture->map, statement->melody, leader.melodies, &leader);
    return leader;
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
