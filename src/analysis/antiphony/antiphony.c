#include "analysis/antiphony/antiphony.h"
#include "analysis/antiphony/later_links.h"
#include "support/buffer.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

void antiphony_search_release(AntiphonySearch *search)
{
    rhythm_index_free(search->rhythms);
    array_free(&search->matches);
    array_free(&search->candidates);
    array_free(&search->chains);
    arena_release(&search->arena);
}

static spz_status weigh_all(const SectionMap *map, bool hopeless_too, AntiphonySearch *search)
{
    for (size_t i = 0; i < search->matches.count; i++) {
        if (!hopeless_too && !evidence_may_reach(&search->texture, &search->matches.at[i], chains_least_chance))
            continue;
        Candidate candidate = {.match = search->matches.at[i]};
        evidence_weigh(&search->texture, search->rhythms, &candidate.match, &candidate.evidence);
        if (!hopeless_too && candidate.evidence.chance < chains_least_chance)
            continue;
        sides_of(map, &candidate.match, &candidate.evidence, candidate.sides);
        candidate.first = movement_bar_at(map->movement, candidate.match.onset);
        candidate.last = movement_bar_at(map->movement, candidate.match.end - 1);
        if (!array_push(&search->candidates, candidate))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

spz_status antiphony_search_join(AntiphonySearch *search)
{
    spz_status status = links_weigh(&search->texture, &search->candidates);
    return status == SPZ_OK ? chains_make(&search->texture, &search->candidates, &search->arena, &search->chains) : status;
}

static spz_status listen(const SectionMap *map, const Melody *melodies, bool hopeless_too, AntiphonySearch *out)
{
    memset(out, 0, sizeof *out);
    arena_init(&out->arena);
    out->melodies = melodies ? melodies : melodies_of(map, &out->arena);
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

spz_kind chain_kind(const Texture *texture, const CandidateList *candidates, const Chain *chain)
{
    double weight = 0, short_turns = 0, overlap = 0;
    for (size_t i = 0; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        double w = c->evidence.chance * (double)(c->match.end - c->match.onset);
        double notes = (double)c->match.matched / c->match.statements;
        bool quick = c->match.lag <= beat_at(texture, c->first) && c->match.statements >= 2 && notes <= 4;
        weight += w;
        short_turns += quick ? w : 0;
        overlap += w * c->evidence.at[F_OVERLAP];
    }
    if (weight <= 0)
        return SPZ_EXCHANGE;
    if (overlap / weight > 0.5)
        return SPZ_IMITATION;
    return short_turns / weight > 0.5 ? SPZ_HOCKET : SPZ_EXCHANGE;
}

typedef ARRAY(spz_entry) EntryList;

static int by_onset_and_group(const void *left, const void *right)
{
    const spz_entry *a = left, *b = right;
    if (a->onset != b->onset)
        return a->onset < b->onset ? -1 : 1;
    if (a->group != b->group)
        return a->group < b->group ? -1 : 1;
    return (int)a->answer - (int)b->answer;
}

static bool push_entry(const Texture *texture, EntryList *entries, Arena *arena, size_t melody, const NoteEvent *first, const NoteEvent *last,
                       int interval, bool answer)
{
    char pitch[PITCH_TEXT], beat[TICKS_TEXT];
    const Movement *m = texture->map->movement;
    spz_entry entry = {.group = melody, .onset = first->onset, .end = last->end, .bar = (size_t)first->bar, .answer = answer,
                       .interval = interval};
    entry.beat = arena_string(arena, movement_beat_text(m, first->onset, beat));
    entry.first = arena_string(arena, note_pitch_text(first->sound->note, pitch));
    entry.last = arena_string(arena, note_pitch_text(last->sound->note, pitch));
    return entry.beat && entry.first && entry.last && array_push(entries, entry);
}

/* The calls of a match and their answers, cut where a new statement begins. */
static bool entries_of_match(const Texture *texture, const Match *match, EntryList *entries, Arena *arena)
{
    uint32_t call = match->call_first, answer = match->answer_first;
    const NoteEvent *called, *answered, *first[2] = {0}, *last[2] = {0};
    bool ok = true, more;
    do {
        more = match_next_pair(texture->melodies, match, &call, &answer, &called, &answered);
        bool ends = first[0] && (!more || called->onset - last[0]->onset >= match->lag);
        if (ends) {
            ok = ok && push_entry(texture, entries, arena, match->caller, first[0], last[0], 0, false) &&
                 push_entry(texture, entries, arena, match->responder, first[1], last[1], first[1]->midi - first[0]->midi, true);
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

/* Entries in time order, each group once at a moment: an answer that is itself answered stays an answer. */
static void tidy_entries(EntryList *entries)
{
    if (!entries->count)
        return;
    qsort(entries->at, entries->count, sizeof *entries->at, by_onset_and_group);
    size_t kept = 1;
    for (size_t i = 1; i < entries->count; i++) {
        spz_entry *last = &entries->at[kept - 1];
        const spz_entry *now = &entries->at[i];
        if (now->onset == last->onset && now->group == last->group) {
            if (now->answer)
                *last = *now;
        } else
            entries->at[kept++] = *now;
    }
    entries->count = kept;
}

static bool entries_of_candidates(const Texture *texture, const CandidateList *candidates, const uint32_t *which, size_t count,
                                  EntryList *entries, Arena *arena)
{
    bool ok = true;
    for (size_t i = 0; ok && i < count; i++)
        ok = entries_of_match(texture, &candidates->at[which[i]].match, entries, arena);
    return ok;
}

static void keep_within(EntryList *entries, Ticks onset, Ticks end)
{
    size_t kept = 0;
    for (size_t i = 0; i < entries->count; i++)
        if (entries->at[i].onset >= onset && entries->at[i].end <= end)
            entries->at[kept++] = entries->at[i];
    entries->count = kept;
}

static spz_status entries_of_chain(const Texture *texture, const CandidateList *candidates, const Chain *chain, Arena *arena,
                                   EntryList *entries)
{
    bool ok = entries_of_candidates(texture, candidates, chain->candidates, chain->candidate_count, entries, arena);
    for (const AbsorbedPair *r = chain->absorbed; ok && r; r = r->next)
        ok = entries_of_candidates(texture, candidates, r->candidates, r->count, entries, arena);
    keep_within(entries, chain->onset, chain->end);
    tidy_entries(entries);
    return ok ? SPZ_OK : SPZ_NO_MEMORY;
}

/* How often the word passes: entries of one side in a row count once. */
static int turns_of(const Chain *chain, const EntryList *entries)
{
    int turns = 0, before = -1;
    Ticks end = -1;
    for (size_t i = 0; i < entries->count; i++) {
        const spz_entry *e = &entries->at[i];
        int side = (chain->sides[0].melodies >> e->group & 1) ? 0 : (chain->sides[1].melodies >> e->group & 1) ? 1 : 2 + (int)e->group;
        if (side != before || e->onset > end)
            turns++;
        before = side;
        end = e->end > end ? e->end : end;
    }
    return turns;
}

static bool plays_violin(const spz_group *group)
{
    return !group->solo && section_is_violin(group->section);
}

/* All groups of one kind: every violin group, or every part of a section written in several. */
static uint64_t whole_set(const SectionMap *map, size_t group)
{
    uint64_t set = 0;
    const spz_group *about = &map->groups[group].about;
    for (size_t t = 0; t < map->group_count && t < 64; t++) {
        const spz_group *other = &map->groups[t].about;
        bool same = other->orchestra == about->orchestra &&
                    (plays_violin(about) ? plays_violin(other) : other->section == about->section && other->solo == about->solo);
        set |= (uint64_t)same << t;
    }
    return set;
}

/* 'Vn I + Va', 'Violins + Vc', 'Violins (orchestra 2)': the groups of `set`, whole families by one name. */
static void name_moment(const SectionMap *map, uint64_t set, Buffer *out)
{
    bool first = true;
    while (set) {
        size_t group = (size_t)__builtin_ctzll(set);
        const spz_group *about = &map->groups[group].about;
        uint64_t whole = whole_set(map, group);
        bool all = (whole & (whole - 1)) && (set & whole) == whole;
        const char *name = !all ? about->name : plays_violin(about) ? "Violins" : spz_section_name(about->section);
        set &= all ? ~whole : set - 1;
        buffer_printf(out, "%s%s", first ? "" : " + ", name);
        if (all && about->orchestra)
            buffer_printf(out, " (orchestra %d)", about->orchestra);
        first = false;
    }
}

static Ticks next_entrance(const Texture *texture, const Chain *chain, Ticks after)
{
    Ticks next = INT64_MAX;
    for (size_t t = 0; t < texture->melody_count && t < 64; t++)
        if (chain->enters[t] > after && chain->enters[t] < next)
            next = chain->enters[t];
    return next < chain->end ? next : INT64_MAX; /* who enters after the passage is none of its chain */
}

/* 'Vn II - Va - Vn I + Vc': who speaks after whom, + where groups begin together; "" when there are just two moments. */
static const char *chain_names(const Texture *texture, const Chain *chain, Arena *arena)
{
    Buffer text;
    size_t moments = 0;
    buffer_init(&text);
    for (Ticks next = next_entrance(texture, chain, -1); next != INT64_MAX; next = next_entrance(texture, chain, next)) {
        uint64_t set = 0;
        for (size_t t = 0; t < texture->melody_count && t < 64; t++)
            set |= (uint64_t)(chain->enters[t] == next) << t;
        buffer_puts(&text, moments++ ? " - " : "");
        name_moment(texture->map, set, &text);
    }
    const char *names = buffer_failed(&text) ? NULL : arena_string(arena, moments > 2 ? text.text : "");
    buffer_free(&text);
    return names;
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

/* Shortest note that is answered, in seconds at the tempo in force; 0 when the score gives no tempo. */
static double shortest_seconds(const Texture *texture, const CandidateList *candidates, const Chain *chain)
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

static double foreground_of(const CandidateList *candidates, const Chain *chain)
{
    double front = weighted(candidates, chain, F_FRONT), doubled = weighted(candidates, chain, F_DOUBLED);
    return fmin(1, 1.6 * front) * (1 - 0.5 * doubled);
}

static size_t group_of_line(const SectionMap *map, uint16_t line)
{
    for (size_t g = 0; g < map->group_count; g++)
        for (size_t l = 0; l < map->groups[g].line_count; l++)
            if (map->groups[g].lines[l] == line)
                return g;
    return SIZE_MAX;
}

/* From the melodies that were heard to the groups of the findings. */
static void name_players(const SectionMap *map, const Texture *texture, EntryList *entries)
{
    for (size_t i = 0; map != texture->map && i < entries->count; i++) {
        const Melody *melody = &texture->melodies[entries->at[i].group];
        size_t event = melody_at(melody, entries->at[i].onset);
        bool strings = melody->group->about.section != SPZ_WINDS && event < melody->count;
        entries->at[i].group = strings ? group_of_line(map, melody->events[event].sound->line) : SIZE_MAX;
    }
}

spz_status antiphony_report(Findings *findings, const AntiphonySearch *search, const Chain *chain)
{
    EntryList entries = {0};
    const CandidateList *candidates = &search->candidates;
    spz_status status = entries_of_chain(&search->texture, candidates, chain, &findings->arena, &entries);
    if (status == SPZ_OK) {
        spz_passage passage = {.kind = chain_kind(&search->texture, candidates, chain), .onset = chain->onset, .end = chain->end,
                               .strength = chain->strength, .turns = turns_of(chain, &entries), .entries = entries.at,
                               .entry_count = entries.count, .foreground = foreground_of(candidates, chain),
                               .shortest = shortest_seconds(&search->texture, candidates, chain)};
        name_players(findings->map, &search->texture, &entries);
        for (int side = 0; side < 2; side++) {
            passage.sections[side] = chain->sides[side].section;
            passage.groups[side] = findings->map == search->texture.map ? chain->sides[side].group : SIZE_MAX;
        }
        passage.chain = chain_names(&search->texture, chain, &findings->arena);
        passage.reason = chain_reason(&search->texture, candidates, chain, passage.kind, passage.turns, &findings->arena);
        status = passage.chain && passage.reason ? findings_add(findings, &passage) : SPZ_NO_MEMORY;
    }
    array_free(&entries);
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
