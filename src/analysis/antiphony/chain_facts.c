#include "analysis/antiphony/chain_facts.h"
#include <math.h>
#include <stdlib.h>

static const struct {
    double along; /* share of a statement's notes that a section must begin too, to have the statement with its leader ... */
    double more;  /* ... and how many times as many notes it may begin meanwhile: more is another figure */
    double moving; /* share of its steps with which they must move too: who repeats a note under it accompanies it */
    double silence; /* share of the lag for which a caller is silent before it calls anew */
    double opening; /* share of the clearest match's chance from which an earlier one is told as the passage's opening */
} rule = {.along = 0.66, .more = 1.5, .moving = 0.5, .silence = 0.5, .opening = 0.7};

/* One statement of one match, before those that begin together are made one. */
typedef struct Statement {
    size_t melody;        /* who leads it */
    spz_players with;     /* bits of melodies: its side */
    const NoteEvent *first, *last;
    bool answer;
    bool own;             /* of the pair that names the chain, not of one that lost it to that */
    spz_change change;
    size_t pair;  /* the same for a call and its answer */
    bool middle;  /* its player is in the middle of another ... */
    bool idle;    /* ... and begins nothing with it */
    size_t place; /* among those found, in the order of the matches */
} Statement;
typedef ARRAY(Statement) StatementList;

static int by_onset_and_melody(const void *left, const void *right)
{
    const Statement *a = left, *b = right;
    if (a->first->onset != b->first->onset)
        return a->first->onset < b->first->onset ? -1 : 1;
    if (a->melody != b->melody)
        return a->melody < b->melody ? -1 : 1;
    if (a->answer != b->answer)
        return a->answer ? 1 : -1;
    return a->place < b->place ? -1 : a->place > b->place;
}

/* An octave stays one however it is spelt. */
static spz_change change_between(const NoteEvent *call, const NoteEvent *answer, const Match *match)
{
    int semitones = answer->midi - call->midi;
    return (spz_change){.semitones = semitones, .steps = semitones % 12 == 0 ? semitones / 12 * 7 : event_steps(call, answer),
                        .inverted = match->mirror < 0, .stretch = match->stretch};
}

/* How far the notes of an answer lie from those of its call: the distance of most of them, of equals the first. An upbeat may go its own way. */
enum { DISTANCES = 8 };
typedef struct Distances {
    spz_change change[DISTANCES];
    int times[DISTANCES], count;
} Distances;

static void count_distance(Distances *all, spz_change change)
{
    int at = 0;
    while (at < all->count && all->change[at].steps != change.steps)
        at++;
    if (at == DISTANCES)
        return;
    if (at == all->count) {
        all->change[at] = change;
        all->times[all->count++] = 0;
    }
    all->times[at]++;
}

/* In an answer that is upside down each note lies elsewhere: there the first counts. */
static spz_change usual_distance(const Distances *all)
{
    int best = 0;
    for (int i = 1; i < all->count && !all->change[0].inverted; i++)
        if (all->times[i] > all->times[best])
            best = i;
    return all->change[best];
}

/* Walks the statements of a match. */
typedef struct StatementWalk {
    const Texture *texture;
    const Match *match;
    uint32_t call, answer;
    const NoteEvent *called, *answered; /* what begins the next statement */
    size_t voice[2];                    /* melodies whose notes are told of call and answer: those that bear the sides' names */
} StatementWalk;

/* The note that the melody begins with that one; NULL where it begins none. */
static const NoteEvent *in_voice(const Texture *texture, size_t voice, const NoteEvent *event)
{
    const Melody *melody = &texture->melodies[voice];
    size_t at = melody_at(melody, event->onset);
    return at < melody->count && melody->events[at].onset == event->onset ? &melody->events[at] : NULL;
}

/* Whether the melody has the note too, and goes to it the same way from the one before. */
static bool has_step(const Texture *texture, size_t voice, const NoteEvent *before, const NoteEvent *note)
{
    const NoteEvent *from = before ? in_voice(texture, voice, before) : NULL, *to = in_voice(texture, voice, note);
    return to && (!before || (from && event_direction(from, to) == event_direction(before, note)));
}

/* A side that was found by its doubling is told by those after whom it is named, where they have the whole line, at whatever distance. */
static void find_voices(StatementWalk *walk, const Candidate *candidate)
{
    const Match *match = walk->match;
    const NoteEvent *notes[2], *before[2] = {NULL, NULL};
    uint32_t call = match->call_first, answer = match->answer_first;
    const size_t principal[2] = {match->caller, match->responder};
    for (int side = 0; side < 2; side++)
        walk->voice[side] = side_voice(walk->texture->map, &candidate->sides[side], principal[side]);
    while (match_next_pair(walk->texture->melodies, match, &call, &answer, &notes[0], &notes[1]))
        for (int side = 0; side < 2; side++) {
            if (!has_step(walk->texture, walk->voice[side], before[side], notes[side]))
                walk->voice[side] = principal[side];
            before[side] = notes[side];
        }
}

static bool walk_pair(StatementWalk *walk)
{
    if (!match_next_pair(walk->texture->melodies, walk->match, &walk->call, &walk->answer, &walk->called, &walk->answered))
        walk->called = NULL;
    return walk->called != NULL;
}

static StatementWalk walk_begin(const Texture *texture, const Candidate *candidate)
{
    const Match *match = &candidate->match;
    StatementWalk walk = {.texture = texture, .match = match, .call = match->call_first, .answer = match->answer_first};
    find_voices(&walk, candidate);
    walk_pair(&walk);
    return walk;
}

/* Steps by whose rhythm a beginning is known again; how many times as many notes make a turn (set by hand). */
enum { BEGINNING = 3, QUIETER = 2 };

/* Does the caller begin fewer notes while it is answered than while it calls? */
static bool is_quieter(const NoteEvent *first, const NoteEvent *again, Ticks lag)
{
    int calling = 0, answered = 0;
    for (const NoteEvent *event = first; event < again; event++) {
        bool late = (event->onset - first->onset) % (2 * lag) >= lag;
        calling += !late;
        answered += late;
    }
    return QUIETER * answered <= calling;
}

/* Two who take turns come round after twice the lag: does the caller begin there as it began the statement, so that it calls again? */
static bool comes_round(const StatementWalk *walk, const NoteEvent *first)
{
    const Melody *calling = &walk->texture->melodies[walk->match->caller];
    const NoteEvent *again = walk->called, *end = calling->events + calling->count;
    if ((again->onset - first->onset) % (2 * walk->match->lag) || again - first <= BEGINNING || end - again <= BEGINNING)
        return false;
    for (int i = 0; i < BEGINNING; i++)
        if (again[i + 1].onset - again[i].onset != first[i + 1].onset - first[i].onset)
            return false;
    return is_quieter(first, again, walk->match->lag); /* a row of equal notes always looks the same */
}

/* A new statement begins where the answer had time to begin and the one before is over: after a rest, a long note, or other notes; after a silence
 * that leaves the answer as much room as that; or where the turns come round. */
static bool begins_anew(const StatementWalk *walk, const NoteEvent *first, const NoteEvent *last)
{
    Ticks lag = walk->match->lag;
    if (comes_round(walk, first))
        return true;
    bool over = walk->called->onset - last->onset >= lag && (event_is_fresh(walk->called) || walk->called > last + 1);
    return over || ((walk->called->flags & EVENT_AFTER_REST) && (double)(walk->called->onset - walk->called[-1].end) >= rule.silence * (double)lag);
}

/* The next call and its answer, from their first to their last notes; false: no more. */
static bool walk_statement(StatementWalk *walk, Statement *call, Statement *answer)
{
    Distances distances = {.count = 0};
    if (!walk->called)
        return false;
    call->first = walk->called;
    answer->first = walk->answered;
    do {
        call->last = walk->called;
        answer->last = walk->answered;
        count_distance(&distances, change_between(in_voice(walk->texture, walk->voice[0], walk->called), in_voice(walk->texture, walk->voice[1], walk->answered), walk->match));
    } while (walk_pair(walk) && !begins_anew(walk, call->first, call->last));
    answer->change = usual_distance(&distances);
    return true;
}

/* The statement as the side's own voice has it. */
static Statement told_by(const StatementWalk *walk, int side, Statement found)
{
    found.melody = walk->voice[side];
    found.first = in_voice(walk->texture, walk->voice[side], found.first);
    found.last = in_voice(walk->texture, walk->voice[side], found.last);
    return found;
}

/* The calls of a match and their answers, cut where a new statement begins. */
static bool statements_of(const Texture *texture, const Candidate *candidate, bool own, StatementList *out)
{
    const Match *match = &candidate->match;
    StatementWalk walk = walk_begin(texture, candidate);
    Statement call = {.melody = match->caller, .with = candidate->sides[0].melodies, .own = own};
    Statement answer = {.melody = match->responder, .with = candidate->sides[1].melodies, .own = own, .answer = true};
    bool ok = true;
    while (ok && walk_statement(&walk, &call, &answer)) {
        call.pair = answer.pair = out->count;
        ok = array_push(out, told_by(&walk, 0, call)) && array_push(out, told_by(&walk, 1, answer));
    }
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

/* A call whose last note is held under the answer's end is as good as any. */
static void keep_within(StatementList *list, Ticks onset, Ticks end)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].first->onset >= onset && list->at[i].last->onset < end)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

/* In time order, each melody once at a moment: an answer that is itself answered stays an answer, and the passage's own
 * pair goes before others. */
static void tidy(StatementList *list)
{
    if (!list->count)
        return;
    for (size_t i = 0; i < list->count; i++)
        list->at[i].place = i;
    qsort(list->at, list->count, sizeof *list->at, by_onset_and_melody);
    size_t kept = 1;
    for (size_t i = 1; i < list->count; i++) {
        Statement *last = &list->at[kept - 1];
        const Statement *now = &list->at[i];
        if (now->first->onset == last->first->onset && now->melody == last->melody) {
            if (now->answer && !(last->answer && last->own && !now->own))
                *last = *now;
        } else
            list->at[kept++] = *now;
    }
    list->count = kept;
}

/* Is its player in the middle of an earlier statement, of the passage's own pair where `own`? */
static bool in_the_middle(const StatementList *list, size_t index, bool own)
{
    const Statement *now = &list->at[index];
    for (const Statement *before = now; before-- > list->at;)
        if (before->melody == now->melody && before->first < now->first && now->first <= before->last && (before->own || !own))
            return true;
    return false;
}

static bool is_partner_in_the_middle(const StatementList *list, const Statement *one)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].pair == one->pair && list->at[i].answer != one->answer)
            return list->at[i].middle;
    return false;
}

/* Who is in the middle of a statement of the passage's own pair begins no other for others; and where both a caller and its answerer are in the middle of
 * something, neither after a rest, they begin nothing. */
static void leave_out_middles(StatementList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++)
        list->at[i].middle = !(list->at[i].first->flags & EVENT_AFTER_REST) && in_the_middle(list, i, false);
    for (size_t i = 0; i < list->count; i++) {
        Statement *now = &list->at[i];
        now->idle = (now->middle && is_partner_in_the_middle(list, now)) || (!now->own && in_the_middle(list, i, true));
    }
    for (size_t i = 0; i < list->count; i++)
        if (!list->at[i].idle)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

static bool statements_of_chain(const Texture *texture, const CandidateList *candidates, const Chain *chain, StatementList *out)
{
    bool ok = statements_of_candidates(texture, candidates, chain->candidates, chain->candidate_count, true, out);
    for (const AbsorbedPair *pair = chain->absorbed; ok && pair; pair = pair->next)
        ok = statements_of_candidates(texture, candidates, pair->candidates, pair->count, false, out);
    keep_within(out, chain->onset, chain->end);
    tidy(out);
    leave_out_middles(out);
    return ok;
}

static size_t group_of_line(const SectionMap *map, uint16_t line)
{
    for (size_t g = 0; g < map->group_count; g++)
        for (size_t l = 0; l < map->groups[g].line_count; l++)
            if (map->groups[g].lines[l] == line)
                return g;
    return SIZE_MAX;
}

/* What a group has in common with a statement: moments at which it begins notes, how many of these are the statement's, and with how many of the steps that
 * the statement takes at them it moves too. */
typedef struct Together {
    size_t begun, shared, moves, moved, notes;
} Together;

static const GroupSound *top_sound(const Group *group, size_t at)
{
    const GroupSound *top = &group->sounds[at];
    for (size_t i = at + 1; i < group->sound_count && group->sounds[i].onset == top->onset; i++)
        top = group->sounds[i].note->midi > top->note->midi ? &group->sounds[i] : top;
    return top;
}

/* A note struck again under the statement is nothing else than it held. */
static Together count_together(const Group *group, const Statement *statement)
{
    Together found = {.notes = (size_t)(statement->last - statement->first) + 1};
    const NoteEvent *event = statement->first, *met = NULL;
    const GroupSound *last = NULL, *last_met = NULL;
    for (size_t at = group_sound_at(group, event->onset); at < group->sound_count && group->sounds[at].onset <= statement->last->onset; at++) {
        const GroupSound *now = top_sound(group, at);
        if (last && now->onset == last->onset)
            continue;
        while (event < statement->last && event->onset < now->onset)
            event++;
        bool shared = event->onset == now->onset, moves = shared && met && met->midi != event->midi;
        found.begun += shared || !last || last->note->midi != now->note->midi;
        found.shared += shared;
        found.moves += moves;
        found.moved += moves && last_met->note->midi != now->note->midi;
        last = now;
        last_met = shared ? now : last_met;
        met = shared ? event : met;
    }
    return found;
}

/* Whether the group has the statement together with its leader: in its rhythm, at whatever pitches, but moving where it moves. */
static bool plays_along(const Group *group, const Statement *statement)
{
    Together with = count_together(group, statement);
    return (double)with.shared >= rule.along * (double)with.notes && (double)with.begun <= rule.more * (double)with.notes &&
           (double)with.moved >= rule.moving * (double)with.moves;
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

static bool of_one_side(const Statement *a, const Statement *b)
{
    return (a->with >> b->melody & 1) || (b->with >> a->melody & 1);
}

/* One entry of two: as the answer that one of them is, else as the higher in the score has it. */
static Statement both_at_once(const Statement *higher, const Statement *lower)
{
    Statement both = lower->answer && !higher->answer ? *lower : *higher;
    both.with = higher->with | lower->with;
    return both;
}

/* Statements that begin together in one rhythm are one entry, led by the highest in the score. What a pair that lost the
 * story hears beside it in another rhythm is none: a held note above a call does not call. */
static void join_statements(const Texture *texture, StatementList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++) {
        Statement now = list->at[i];
        bool joined = false;
        for (size_t k = kept; k-- > 0 && list->at[k].first->onset == now.first->onset && !joined;) {
            Statement *with = &list->at[k];
            bool along = plays_along(leader_of(texture, &now), with) && plays_along(leader_of(texture, with), &now);
            if (with->answer != now.answer && !(along && of_one_side(with, &now)))
                continue;
            joined = along || !now.own || !with->own;
            if (along)
                *with = both_at_once(with, &now);
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

/* Each section's link is the one with which it first leads: where it has the gesture again, alone or with others, that link has it. Whoever leads
 * for the first time is a link of their own, with those who come in beside them and had none. */
static bool link_entry(ChainFacts *facts, spz_entry *entry)
{
    spz_players leader = entry->leader == SIZE_MAX ? SPZ_WIND_PLAYERS : players_of_group(entry->leader), fresh = entry->players;
    for (entry->link = 0; entry->link < facts->links.count; entry->link++) {
        if (facts->links.at[entry->link].players & leader)
            return true;
        fresh &= ~facts->links.at[entry->link].players;
    }
    return array_push(&facts->links, ((spz_link){fresh, entry->onset, entry->bar}));
}

/* Those who never lead are in the link of those whom they join first. */
static void link_company(ChainFacts *facts)
{
    spz_players linked = 0;
    for (size_t i = 0; i < facts->links.count; i++)
        linked |= facts->links.at[i].players;
    for (size_t i = 0; i < facts->entries.count; i++) {
        facts->links.at[facts->entries.at[i].link].players |= facts->entries.at[i].players & ~linked;
        linked |= facts->entries.at[i].players;
    }
}

/* How often the word passes. */
static int turns_of(const ChainFacts *facts)
{
    int turns = 0;
    for (size_t i = 0; i < facts->entries.count; i++) {
        const spz_entry *entry = &facts->entries.at[i], *before = i ? entry - 1 : NULL;
        turns += !before || entry->link != before->link || entry->onset > before->end;
    }
    return turns;
}

spz_status chain_facts_make(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain,
                            ChainFacts *facts)
{
    StatementList statements = {0};
    *facts = (ChainFacts){.turns = 0};
    bool ok = statements_of_chain(texture, candidates, chain, &statements);
    join_statements(texture, &statements);
    for (size_t i = 0; ok && i < statements.count; i++)
        ok = array_push(&facts->entries, entry_of(map, texture, &statements.at[i]));
    part_entries(facts);
    begin_with_a_call(facts);
    for (size_t i = 0; ok && i < facts->entries.count; i++) {
        spz_entry *entry = &facts->entries.at[i];
        entry->end = entry->end < chain->end ? entry->end : chain->end;
        ok = link_entry(facts, entry);
    }
    if (ok)
        link_company(facts);
    facts->turns = turns_of(facts);
    array_free(&statements);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}

void chain_facts_release(ChainFacts *facts)
{
    array_free(&facts->entries);
    array_free(&facts->links);
}

static const spz_link *link_of(const ChainFacts *facts, size_t group)
{
    for (size_t i = 0; i < facts->links.count; i++)
        if (facts->links.at[i].players & players_of_group(group))
            return &facts->links.at[i];
    return NULL;
}

spz_status chain_name_violas(const Texture *texture, const CandidateList *candidates, Chain *chain)
{
    if (chain->sides[0].section != SPZ_VA && chain->sides[1].section != SPZ_VA)
        return SPZ_OK;
    ChainFacts facts;
    spz_status status = chain_facts_make(texture->map, texture, candidates, chain, &facts);
    const Match *match = &(chain->named_by ? chain->named_by : &candidates->at[chain->candidates[0]])->match;
    const spz_link *links[] = {link_of(&facts, match->caller), link_of(&facts, match->responder)};
    for (int i = 0; status == SPZ_OK && i < 2; i++)
        if (links[0] && links[1] && links[0] != links[1] && chain->sides[!i].section != SPZ_VC)
            side_join_cellos(texture->map, links[i]->players & ~chain->sides[!i].melodies, &chain->sides[i]);
    chain_facts_release(&facts);
    return status;
}

const Side *chain_side_of(const Chain *chain, const Candidate *candidate, int side)
{
    bool joined = chain->sides[side].section == SPZ_VC && candidate->sides[side].section == SPZ_VA;
    return joined ? &chain->sides[side] : &candidate->sides[side];
}

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
    StatementWalk walk = walk_begin(texture, candidate);
    Statement call = {.melody = candidate->match.caller}, answer = {.melody = candidate->match.responder};
    if (!walk_statement(&walk, &call, &answer))
        return -1;
    call = told_by(&walk, 0, call);
    answer = told_by(&walk, 1, answer);
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
    StatementWalk walk = walk_begin(texture, candidate);
    Statement call = {0}, answer = {0};
    while (walk_statement(&walk, &call, &answer) && call.last == call.first && walk.called)
        ; /* a single note is no figure where more of them follow */
    return (spz_gesture){.notes = (int)(call.last - call.first) + 1, .pizzicato = (first->flags & EVENT_PIZZICATO) != 0, .lag = candidate_lag(texture, candidate),
                         .change = answer.change};
}

CallsTold candidate_calls(const Texture *texture, const Candidate *candidate)
{
    StatementWalk walk = walk_begin(texture, candidate);
    Statement call, answer;
    CallsTold told = {0, 0};
    while (walk_statement(&walk, &call, &answer)) {
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
