#include "analysis/antiphony/chain_facts.h"
#include <stdlib.h>

static const struct {
    double along; /* share of a statement's notes that a section must begin too, to have the statement with its leader ... */
    double more;  /* ... and how many times as many notes it may begin meanwhile: more is another figure */
} rule = {.along = 0.66, .more = 1.5};

/* One statement of one match, before those that begin together are made one. */
typedef struct Statement {
    size_t melody;        /* who leads it */
    spz_players with;     /* bits of melodies: its side */
    const NoteEvent *first, *last;
    bool answer;
    bool own;             /* of the pair that names the chain, not of one that lost it to that */
    spz_change change;
} Statement;
typedef ARRAY(Statement) StatementList;

static int by_onset_and_melody(const void *left, const void *right)
{
    const Statement *a = left, *b = right;
    if (a->first->onset != b->first->onset)
        return a->first->onset < b->first->onset ? -1 : 1;
    if (a->melody != b->melody)
        return a->melody < b->melody ? -1 : 1;
    return (int)a->answer - (int)b->answer;
}

static spz_change change_between(const NoteEvent *call, const NoteEvent *answer, const Match *match)
{
    return (spz_change){.semitones = answer->midi - call->midi, .steps = event_steps(call, answer), .inverted = match->mirror < 0,
                        .stretch = match->stretch};
}

spz_change match_change(const Texture *texture, const Match *match)
{
    return change_between(&texture->melodies[match->caller].events[match->call_first],
                          &texture->melodies[match->responder].events[match->answer_first], match);
}

/* The calls of a match and their answers, cut where a new statement begins. */
static bool statements_of(const Texture *texture, const Candidate *candidate, bool own, StatementList *out)
{
    const Match *match = &candidate->match;
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered, *first[2] = {0}, *last[2] = {0};
    bool ok = true, more;
    do {
        more = match_next_pair(texture->melodies, match, &call, &answer, &called, &answered);
        if (first[0] && (!more || called->onset - last[0]->onset >= match->lag)) {
            Statement calls = {match->caller, candidate->sides[0].melodies, first[0], last[0], false, own, {0}};
            Statement answers = {match->responder, candidate->sides[1].melodies, first[1], last[1], true, own,
                                 change_between(first[0], first[1], match)};
            ok = ok && array_push(out, calls) && array_push(out, answers);
            first[0] = NULL;
        }
        if (more && !first[0]) {
            first[0] = called;
            first[1] = answered;
        }
        if (more) {
            last[0] = called;
            last[1] = answered;
        }
    } while (more && ok);
    return ok;
}

static bool statements_of_candidates(const Texture *texture, const CandidateList *candidates, const uint32_t *which, size_t count, bool own,
                                     StatementList *out)
{
    bool ok = true;
    for (size_t i = 0; ok && i < count; i++)
        ok = statements_of(texture, &candidates->at[which[i]], own, out);
    return ok;
}

static void keep_within(StatementList *list, Ticks onset, Ticks end)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].first->onset >= onset && list->at[i].last->end <= end)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

/* In time order, each melody once at a moment: an answer that is itself answered stays an answer. */
static void tidy(StatementList *list)
{
    if (!list->count)
        return;
    qsort(list->at, list->count, sizeof *list->at, by_onset_and_melody);
    size_t kept = 1;
    for (size_t i = 1; i < list->count; i++) {
        Statement *last = &list->at[kept - 1];
        const Statement *now = &list->at[i];
        if (now->first->onset == last->first->onset && now->melody == last->melody) {
            if (now->answer)
                *last = *now;
        } else
            list->at[kept++] = *now;
    }
    list->count = kept;
}

static bool statements_of_chain(const Texture *texture, const CandidateList *candidates, const Chain *chain, StatementList *out)
{
    bool ok = statements_of_candidates(texture, candidates, chain->candidates, chain->candidate_count, true, out);
    for (const AbsorbedPair *pair = chain->absorbed; ok && pair; pair = pair->next)
        ok = statements_of_candidates(texture, candidates, pair->candidates, pair->count, false, out);
    keep_within(out, chain->onset, chain->end);
    tidy(out);
    return ok;
}

/* How often the word passes: statements of one side in a row count once. */
static int turns_of(const Chain *chain, const StatementList *list)
{
    int turns = 0, before = -1;
    Ticks end = -1;
    for (size_t i = 0; i < list->count; i++) {
        const Statement *s = &list->at[i];
        int side = (chain->sides[0].melodies >> s->melody & 1) ? 0 : (chain->sides[1].melodies >> s->melody & 1) ? 1 : 2 + (int)s->melody;
        if (side != before || s->first->onset > end)
            turns++;
        before = side;
        end = s->last->end > end ? s->last->end : end;
    }
    return turns;
}

static size_t group_of_line(const SectionMap *map, uint16_t line)
{
    for (size_t g = 0; g < map->group_count; g++)
        for (size_t l = 0; l < map->groups[g].line_count; l++)
            if (map->groups[g].lines[l] == line)
                return g;
    return SIZE_MAX;
}

/* Notes that the group begins within the statement, and at how many of the statement's notes it begins one. */
static void count_together(const Group *group, const Statement *statement, size_t *begun, size_t *shared, size_t *notes)
{
    size_t at = group_sound_at(group, statement->first->onset);
    const NoteEvent *event = statement->first;
    *begun = *shared = *notes = 0;
    for (; event <= statement->last; event++)
        ++*notes;
    event = statement->first;
    for (Ticks last = -1; at < group->sound_count && group->sounds[at].onset <= statement->last->onset; at++) {
        Ticks onset = group->sounds[at].onset;
        while (event < statement->last && event->onset < onset)
            event++;
        *begun += onset != last;
        *shared += onset != last && event->onset == onset;
        last = onset;
    }
}

/* Whether the group has the statement together with its leader: in one rhythm, whatever the pitches. */
static bool plays_along(const Group *group, const Statement *statement)
{
    size_t begun, shared, notes;
    count_together(group, statement, &begun, &shared, &notes);
    return (double)shared >= rule.along * (double)notes && (double)begun <= rule.more * (double)notes;
}

static spz_players playing_along(const SectionMap *map, spz_players players, const Statement *statement)
{
    spz_players along = 0;
    for (size_t g = 0; g < map->group_count && g < 63; g++)
        if ((players >> g & 1) && plays_along(&map->groups[g], statement))
            along |= players_of_group(g);
    return along;
}

/* Who leads and who plays a statement, in groups of `map`. */
static void name_players(const SectionMap *map, const Texture *texture, const Statement *statement, spz_entry *entry)
{
    const Melody *melody = &texture->melodies[statement->melody];
    if (map == texture->map) {
        entry->leader = statement->melody;
        entry->players = playing_along(map, statement->with & ~SPZ_WIND_PLAYERS, statement);
    } else if (melody->group->about.section == SPZ_WINDS) {
        entry->leader = SIZE_MAX;
        entry->players = SPZ_WIND_PLAYERS;
        return;
    } else {
        entry->leader = group_of_line(map, statement->first->sound->line);
        entry->players = playing_along(map, ~SPZ_WIND_PLAYERS, statement);
    }
    entry->players |= players_of_group(entry->leader);
}

static spz_entry entry_of(const SectionMap *map, const Texture *texture, const Statement *statement)
{
    const NoteEvent *first = statement->first, *last = statement->last;
    spz_entry entry = {.link = SIZE_MAX, .onset = first->onset, .end = last->end, .bar = (size_t)first->bar,
                       .beat = beat_of(map->movement, first->onset), .first = pitch_of(first->sound->note),
                       .last = pitch_of(last->sound->note), .answer = statement->answer, .change = statement->change};
    name_players(map, texture, statement, &entry);
    return entry;
}

static const Group *leader_of(const Texture *texture, const Statement *statement)
{
    return &texture->map->groups[statement->melody];
}

/* Statements of one sort that begin together in one rhythm are one entry, led by the highest in the score. What a pair that lost the
 * story hears beside it in another rhythm is none: a held note above a call does not call. */
static void join_statements(const Texture *texture, StatementList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++) {
        Statement now = list->at[i];
        bool joined = false;
        for (size_t k = kept; k-- > 0 && list->at[k].first->onset == now.first->onset && !joined;) {
            Statement *with = &list->at[k];
            if (with->answer != now.answer)
                continue;
            bool along = plays_along(leader_of(texture, &now), with) && plays_along(leader_of(texture, with), &now);
            joined = along || !now.own || !with->own;
            if (along)
                with->with |= now.with;
            else if (!with->own && now.own)
                *with = now;
        }
        if (!joined)
            list->at[kept++] = now;
    }
    list->count = kept;
}

/* Who leads one entry is no company in another that begins with it. */
static void part_entries(ChainFacts *facts)
{
    for (size_t i = 1; i < facts->entries.count; i++) {
        spz_entry *a = &facts->entries.at[i - 1], *b = &facts->entries.at[i];
        if (a->onset != b->onset)
            continue;
        a->players &= ~players_of_group(b->leader);
        b->players &= ~a->players;
    }
}

/* What opens a passage calls there, even if it answers something that lies before. */
static void begin_with_a_call(ChainFacts *facts)
{
    for (size_t i = 0; i < facts->entries.count && facts->entries.at[i].onset == facts->entries.at[0].onset; i++) {
        facts->entries.at[i].answer = false;
        facts->entries.at[i].change = (spz_change){0};
    }
}

/* Where one section has the gesture again alone after a unison, or joins one, it is one link. */
static bool link_entry(ChainFacts *facts, spz_entry *entry)
{
    size_t best = SIZE_MAX;
    int most = 0;
    for (size_t i = 0; i < facts->links.count; i++) {
        int shared = __builtin_popcountll(facts->links.at[i].players & entry->players);
        if (shared > most) {
            most = shared;
            best = i;
        }
    }
    entry->link = best < SIZE_MAX ? best : facts->links.count;
    return best < SIZE_MAX || array_push(&facts->links, ((spz_link){entry->players, entry->onset, entry->bar}));
}

spz_status chain_facts_make(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain,
                            ChainFacts *facts)
{
    StatementList statements = {0};
    *facts = (ChainFacts){.turns = 0};
    bool ok = statements_of_chain(texture, candidates, chain, &statements);
    facts->turns = ok ? turns_of(chain, &statements) : 0;
    join_statements(texture, &statements);
    for (size_t i = 0; ok && i < statements.count; i++)
        ok = array_push(&facts->entries, entry_of(map, texture, &statements.at[i]));
    part_entries(facts);
    begin_with_a_call(facts);
    for (size_t i = 0; ok && i < facts->entries.count; i++)
        ok = link_entry(facts, &facts->entries.at[i]);
    array_free(&statements);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}

void chain_facts_release(ChainFacts *facts)
{
    array_free(&facts->entries);
    array_free(&facts->links);
}

const Candidate *chain_clearest(const CandidateList *candidates, const Chain *chain)
{
    const Candidate *best = &candidates->at[chain->candidates[0]];
    for (size_t i = 1; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        if (c->sides[0].section == chain->sides[0].section && c->evidence.chance > best->evidence.chance)
            best = c;
    }
    return best;
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
    return (spz_gesture){.notes = (int)((match->matched + match->statements / 2) / match->statements),
                         .pizzicato = (first->flags & EVENT_PIZZICATO) != 0, .lag = candidate_lag(texture, candidate),
                         .change = match_change(texture, match)};
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
