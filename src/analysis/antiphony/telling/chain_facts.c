#include "analysis/antiphony/telling/chain_facts.h"
#include "analysis/antiphony/telling/told_head.h"

static const struct {
    double along; /* share of a statement's notes that a section must begin too, to have the statement with its leader ... */
    double more;  /* ... and how many times as many notes it may begin meanwhile: more is another figure */
    double moving; /* share of its steps with which they must move too: who repeats a note under it accompanies it */
    long run;      /* steps from which it is a run, where this share of them is equally long; */
    double equal, alike; /* in it they must move the same way with this share: the rhythm tells nothing */
} rule = {.along = 0.66, .more = 1.5, .moving = 0.5, .run = 7, .equal = 0.8, .alike = 0.6};

static size_t group_of_line(const SectionMap *map, uint16_t line)
{
    for (size_t g = 0; g < map->group_count; g++)
        for (size_t l = 0; l < map->groups[g].line_count; l++)
            if (map->groups[g].lines[l] == line)
                return g;
    return SIZE_MAX;
}

/* What a group has in common with a statement: moments at which it begins notes, how many of these are the statement's, and with how many of the steps that
 * the statement takes at them it moves too, and the same way. */
typedef struct Together {
    size_t begun, shared, moves, moved, alike, notes;
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
        found.alike += moves && (now->note->midi > last_met->note->midi) == (event->midi > met->midi) && now->note->midi != last_met->note->midi;
        last = now;
        last_met = shared ? now : last_met;
        met = shared ? event : met;
    }
    return found;
}

/* A run of equal notes, but for a few: others go along in it as well, whatever they play. */
static bool is_run(const Statement *statement)
{
    long steps = statement->last - statement->first, equal = 1;
    for (const NoteEvent *event = statement->first + 1; event < statement->last; event++)
        equal += event[1].onset - event->onset == event->onset - event[-1].onset;
    return steps >= rule.run && (double)equal >= rule.equal * (double)steps;
}

/* Whether the group has the statement together with its leader: in its rhythm, at whatever pitches, but moving where it moves; in a run the same way. */
static bool plays_along(const Group *group, const Statement *statement)
{
    Together with = count_together(group, statement);
    return (double)with.shared >= rule.along * (double)with.notes && (double)with.begun <= rule.more * (double)with.notes &&
           (double)with.moved >= rule.moving * (double)with.moves &&
           (!is_run(statement) || (double)with.alike >= rule.alike * (double)with.moves);
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

static spz_entry entry_of(const SectionMap *map, const Texture *texture, const StatementList *list, size_t index)
{
    const Statement *statement = &list->at[index];
    const NoteEvent *first = told_head(texture, list, index), *last = statement->last;
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

/* Do both come from the same players, one of whom joins the other in his? */
static bool goes_on_in(const Texture *texture, const Statement *one, const Statement *next)
{
    return one->melody == next->melody || ((next->with >> one->melody & 1) && statement_has_line(&texture->melodies[one->melody], next)) ||
           ((one->with >> next->melody & 1) && statement_has_line(&texture->melodies[next->melody], one));
}

/* A statement is told to where its players begin the next; who leads another, or is in the middle of one, is no company meanwhile. */
static void part_statements(const Texture *texture, StatementList *list)
{
    for (size_t i = 0; i < list->count; i++)
        for (size_t k = i + 1; k < list->count; k++) {
            Statement *one = &list->at[i], *next = &list->at[k];
            Ticks begins = next->first->onset;
            while (begins > one->first->onset && one->last > one->first && one->last->onset >= begins && goes_on_in(texture, one, next))
                one->last--;
            if (begins == one->first->onset || begins >= one->last->end)
                continue;
            one->with &= ~(players_of_group(next->melody) & ~players_of_group(one->melody));
            next->with &= ~(one->with & ~players_of_group(next->melody));
        }
}

/* Who leads one entry is no company in another that begins with it; and one ends where its players begin another, which may be told from a head of its own. */
static void part_entries(ChainFacts *facts)
{
    for (size_t i = 0; i < facts->entries.count; i++)
        for (size_t k = i + 1; k < facts->entries.count; k++) {
            spz_entry *a = &facts->entries.at[i], *b = &facts->entries.at[k];
            if (a->onset == b->onset) {
                a->players &= ~players_of_group(b->leader);
                b->players &= ~a->players;
            } else if ((a->players & b->players) && a->onset < b->onset && a->end > b->onset)
                a->end = b->onset;
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

/* Each section's link is the one with which it first leads: where it has the gesture again, alone or with others, that link has it. Whoever leads for the first
 * time is a link of their own, with those who come in beside them and had none; where what is told is one gesture, they join whoever had answered with it before. */
static bool link_entry(ChainFacts *facts, spz_entry *entry, bool one_gesture)
{
    spz_players leader = entry->leader == SIZE_MAX ? SPZ_WIND_PLAYERS : players_of_group(entry->leader), fresh = entry->players;
    size_t beside = 0;
    for (entry->link = 0; entry->link < facts->links.count; entry->link++) {
        if (facts->links.at[entry->link].players & leader)
            return true;
        beside = !beside && (entry->players & facts->links.at[entry->link].players) ? entry->link : beside;
        fresh &= ~facts->links.at[entry->link].players;
    }
    if (!beside || !one_gesture)
        return array_push(&facts->links, ((spz_link){fresh, entry->onset, entry->bar}));
    entry->link = beside;
    facts->links.at[beside].players |= leader;
    return true;
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

/* How often the word passes: who has it again before anybody answers has not passed it. */
static int turns_of(const ChainFacts *facts)
{
    int turns = 0;
    for (size_t i = 0; i < facts->entries.count; i++) {
        const spz_entry *entry = &facts->entries.at[i], *before = i ? entry - 1 : NULL;
        turns += !before || entry->link != before->link;
    }
    return turns;
}

/* Basses who only read the cellos' line have what these have. */
static spz_players basses_with(const Texture *texture, const Statement *statement)
{
    const Group *leader = leader_of(texture, statement);
    spz_players basses = 0;
    for (size_t g = 0; leader->about.section == SPZ_VC && g < texture->map->group_count && g < 63; g++)
        if (texture->map->groups[g].shares_bass && texture->map->groups[g].about.orchestra == leader->about.orchestra &&
            melody_note_at(&texture->melodies[g], statement->first->onset))
            basses |= players_of_group(g);
    return basses;
}

/* Who stands with each statement: those who play along, not those who only begin with it. */
static void name_company(const Texture *texture, StatementList *list)
{
    for (size_t i = 0; i < list->count; i++) {
        Statement *one = &list->at[i];
        one->with = playing_along(texture->map, (one->with | basses_with(texture, one)) & ~SPZ_WIND_PLAYERS, one) | players_of_group(one->melody);
    }
}

static spz_status make_facts(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain, bool whatever,
                             ChainFacts *facts)
{
    StatementList statements = {0};
    *facts = (ChainFacts){.turns = 0};
    bool ok = statements_of_chain(texture, candidates, chain, whatever, &statements);
    join_statements(texture, &statements);
    if (map == texture->map)
        name_company(texture, &statements);
    part_statements(texture, &statements);
    facts->opening = opening_of(texture, chain, &statements);
    for (size_t i = 0; ok && i < statements.count; i++)
        ok = array_push(&facts->entries, entry_of(map, texture, &statements, i));
    part_entries(facts);
    begin_with_a_call(facts);
    for (size_t i = 0; ok && i < facts->entries.count; i++) {
        spz_entry *entry = &facts->entries.at[i];
        entry->end = entry->end < chain->end ? entry->end : chain->end;
        ok = link_entry(facts, entry, !whatever);
    }
    if (ok)
        link_company(facts);
    facts->turns = turns_of(facts);
    array_free(&statements);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status chain_facts_make(const SectionMap *map, const Texture *texture, const CandidateList *candidates, const Chain *chain,
                            ChainFacts *facts)
{
    spz_status status = make_facts(map, texture, candidates, chain, false, facts);
    if (status != SPZ_OK || facts->opening.told)
        return status;
    chain_facts_release(facts); /* one side alone has its gesture: then what the matches say */
    return make_facts(map, texture, candidates, chain, true, facts);
}

Ticks chain_begins_at(const Chain *chain, const ChainFacts *facts)
{
    enum { EMPTY_BARS = 3 };
    const spz_entry *first = facts->entries.count ? &facts->entries.at[0] : NULL;
    return first && (first->onset < chain->onset || (int)first->bar > chain->first + EMPTY_BARS) ? first->onset : chain->onset;
}

void chain_facts_release(ChainFacts *facts)
{
    array_free(&facts->entries);
    array_free(&facts->links);
}

spz_status chain_facts_keep(const Texture *texture, const CandidateList *candidates, Chain *chain)
{
    if (chain->facts)
        return SPZ_OK;
    chain->facts = memory_zeroed(1, sizeof *chain->facts);
    return chain->facts ? chain_facts_make(texture->map, texture, candidates, chain, chain->facts) : SPZ_NO_MEMORY;
}

void chain_facts_forget(Chain *chain)
{
    if (chain->facts)
        chain_facts_release(chain->facts);
    memory_free(chain->facts);
    chain->facts = NULL;
}

void chains_release(ChainList *chains)
{
    for (size_t i = 0; i < chains->count; i++)
        chain_facts_forget(&chains->at[i]);
    array_free(chains);
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
    spz_status status = make_facts(texture->map, texture, candidates, chain, true, &facts);
    const Match *match = &(chain->named_by ? chain->named_by : &candidates->at[chain->candidates[0]])->match;
    const spz_link *links[] = {link_of(&facts, match->caller), link_of(&facts, match->responder)};
    for (int i = 0; status == SPZ_OK && i < 2; i++)
        if (links[0] && links[1] && links[0] != links[1])
            side_join_company(texture->map, links[i]->players & ~chain->sides[!i].melodies, &chain->sides[!i], &chain->sides[i]);
    chain_facts_release(&facts);
    return status;
}
