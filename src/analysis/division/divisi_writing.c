#include "analysis/division/divisi_writing.h"
#include "sections/names/division_marks.h"
#include "analysis/division/stopping.h"
#include <string.h>

/* More sounds of one section at once than any score writes: later ones at that moment are left out of the count. */
enum { ACTIVE_MOST = 32, STOP_MEMORY = 256, VOICES_MOST = 8 };

/* A mark lapses when it is plainly no longer followed, because many scores never write the 'unis.': so many bars of playing in
 * one line, or of rest (after which parts say 'div.' again). A bar in one line still occurs inside a divided passage, more
 * before it has begun; a part that never says 'unis.' gets less patience. */
static const struct { int single, single_before_begun, rest, rest_without_unison; } lapses = {
    .single = 2, .single_before_begun = 4, .rest = 6, .rest_without_unison = 3,
};

/* A chord is held where it lasts longer than this; shorter ones are struck, so that three notes can be caught at once. In
 * crotchets. */
static const Ticks struck_at_most = 1;

typedef struct LineState {
    size_t line;         /* index into the map's lines */
    size_t next;         /* next mark of its part */
    DivisionState now, before_ending;
    int single_bars, rest_bars;
    bool thick_in_bar, heard_in_bar;
    bool begun;          /* the mark in force has been followed */
    bool says_unison;    /* somewhere in this part */
} LineState;

typedef struct StopMemory { uint64_t key; Stopping verdict; } StopMemory;

typedef struct Sweep {
    const SectionMap *map;
    const Group *group;
    BarWriting *bars;
    BarWriting *bar;
    LineState *states;
    const GroupSound *active[ACTIVE_MOST];
    int active_count;
    size_t next_sound;
    const GroupSound *voices[VOICES_MOST]; /* one sound of each voice that began a note in this bar */
    uint16_t alone[VOICES_MOST];           /* moments at which it began one and no other voice did */
    int voice_count;
    bool several_players;      /* of these voices, for certain */
    StopMemory memory[STOP_MEMORY];
} Sweep;

static Instrument instrument_of(spz_section section)
{
    switch (section) {
    case SPZ_VA: return INSTRUMENT_VIOLA;
    case SPZ_VC: return INSTRUMENT_CELLO;
    case SPZ_DB: return INSTRUMENT_BASS_FIVE;
    default: return INSTRUMENT_VIOLIN;
    }
}

static LineState *state_of(Sweep *sweep, size_t line)
{
    for (size_t i = 0; i < sweep->group->line_count; i++)
        if (sweep->states[i].line == line)
            return &sweep->states[i];
    return &sweep->states[0];
}

/* Different players for certain: other parts, or other staves read as lines of their own. */
static bool same_player(const GroupSound *a, const GroupSound *b)
{
    return a->part == b->part && a->line == b->line && a->note->staff == b->note->staff;
}

static bool same_voice(const GroupSound *a, const GroupSound *b)
{
    return same_player(a, b) && a->note->voice == b->note->voice;
}

/* Distinct pitches that sound, from the bottom. */
static int sounding_pitches(const Sweep *sweep, int pitches[ACTIVE_MOST])
{
    int count = 0;
    for (int i = 0; i < sweep->active_count; i++) {
        int midi = sweep->active[i]->note->midi, at = count;
        while (at > 0 && pitches[at - 1] > midi)
            at--;
        if (at > 0 && pitches[at - 1] == midi)
            continue;
        memmove(&pitches[at + 1], &pitches[at], (size_t)(count - at) * sizeof *pitches);
        pitches[at] = midi;
        count++;
    }
    return count;
}

/* How the notes of one staff are meant; files put the signs of a chord on any one of its notes. */
static Manner manner_of(const Sweep *sweep, const GroupSound *of)
{
    uint32_t flags = 0;
    Ticks shortest = of->duration;
    for (int i = 0; i < sweep->active_count; i++)
        if (same_player(sweep->active[i], of)) {
            flags |= sweep->active[i]->note->flags;
            shortest = sweep->active[i]->duration < shortest ? sweep->active[i]->duration : shortest;
        }
    if (trembles(flags))
        return MANNER_TREMOLO;
    if (flags & NOTE_PIZZICATO)
        return MANNER_PLUCKED;
    return shortest > struck_at_most * sweep->map->movement->per_crotchet ? MANNER_HELD : MANNER_STRUCK;
}

static Stopping stopping_remembered(Sweep *sweep, const int *midi, int count, Manner manner)
{
    uint64_t key = (uint64_t)count + 8 * (uint64_t)manner;
    for (int i = 0; i < count && i < 7; i++)
        key = (key << 7) + (uint64_t)(midi[i] & 127);
    StopMemory *place = &sweep->memory[(key ^ key >> 9 ^ key >> 20) % STOP_MEMORY];
    if (place->key != key) {
        place->key = key;
        place->verdict = stopping_find(instrument_of(sweep->group->about.section), midi, NULL, count, manner, NULL);
    }
    return place->verdict;
}

/* Whether what sounds on one staff is beyond one player. */
static bool beyond_one_player(Sweep *sweep, const GroupSound *of)
{
    int pitches[CHORD_MOST], count = 0;
    Manner manner = manner_of(sweep, of);
    for (int i = 0; i < sweep->active_count; i++) {
        const GroupSound *sound = sweep->active[i];
        if (!same_player(sound, of) || sound->note->flags & NOTE_HARMONIC)
            continue;
        bool there = false;
        for (int j = 0; j < count; j++)
            there |= pitches[j] == sound->note->midi;
        if (there)
            continue;
        if (count == CHORD_MOST)
            return true;
        pitches[count++] = sound->note->midi;
    }
    if (count < 2)
        return false;
    Stopping stopping = stopping_remembered(sweep, pitches, count, manner);
    /* a section divides a soft held chord rather than break it */
    bool soft = of->note->dynamic != DYNAMIC_NONE && of->note->dynamic <= DYNAMIC_MP;
    return stopping == STOPPED_NEVER || (stopping == STOPPED_BROKEN && manner == MANNER_HELD && soft);
}

static Evidence evidence_now(Sweep *sweep)
{
    const GroupSound *first = sweep->active[0];
    bool parts = false, voices = false, marked = false, desks = false;
    for (int i = 0; i < sweep->active_count; i++) {
        const GroupSound *sound = sweep->active[i];
        const DivisionState *state = &state_of(sweep, sound->line)->now;
        marked |= state->divided;
        desks |= state->solo;
        if (sound->note->midi == first->note->midi)
            continue;
        parts |= !same_player(sound, first);
        voices |= !same_voice(sound, first);
    }
    if (marked || (desks && voices)) /* 'solo' or '1. Pult' over one of two voices: the other is the rest of the section */
        return EVIDENCE_MARK;
    if (parts)
        return EVIDENCE_PARTS;
    if (state_of(sweep, first->line)->now.double_stops)
        return EVIDENCE_CHORDS;
    if (beyond_one_player(sweep, first))
        return EVIDENCE_HAND;
    return voices ? EVIDENCE_VOICES : EVIDENCE_CHORDS;
}

static void book_time(Sweep *sweep, Ticks span)
{
    int pitches[ACTIVE_MOST];
    int count = sounding_pitches(sweep, pitches);
    if (!count || span <= 0)
        return;
    BarWriting *bar = sweep->bar;
    bar->heard += span;
    for (int n = 2; n <= count && n <= 4; n++)
        bar->at_least[n] += span;
    if (count >= 2) {
        bar->evidence[evidence_now(sweep)] += span;
        for (int i = 0; i < sweep->active_count; i++)
            state_of(sweep, sweep->active[i]->line)->thick_in_bar = true;
    }
    for (int i = 0; i < sweep->active_count; i++)
        state_of(sweep, sweep->active[i]->line)->heard_in_bar = true;
    bar->bottom = !bar->bottom || pitches[0] < bar->bottom ? (int8_t)pitches[0] : bar->bottom;
    bar->top = pitches[count - 1] > bar->top ? (int8_t)pitches[count - 1] : bar->top;
}

static void count_interval(BarWriting *bar, int interval)
{
    switch (interval % 12) {
    case 0: bar->octaves++; break;
    case 3:
    case 4: bar->thirds++; break;
    case 7: bar->fifths++; break;
    case 8:
    case 9: bar->sixths++; break;
    default: break;
    }
}

/* A moment at which something begins: do all voices move, or does one sound on? */
static void count_attack(Sweep *sweep, Ticks now)
{
    BarWriting *bar = sweep->bar;
    int pitches[ACTIVE_MOST], count = sounding_pitches(sweep, pitches);
    const GroupSound *beginning = NULL, *holding = NULL;
    uint32_t flags = 0;
    for (int i = 0; i < sweep->active_count; i++) {
        *(sweep->active[i]->onset == now ? &beginning : &holding) = sweep->active[i];
        flags |= sweep->active[i]->onset == now ? sweep->active[i]->note->flags : 0;
    }
    bar->attacks++;
    if (count < 2 || !beginning)
        return;
    bar->thick++;
    bar->tremolo = (uint16_t)(bar->tremolo + trembles(flags));
    bar->plucked = (uint16_t)(bar->plucked + !!(flags & NOTE_PIZZICATO));
    if (count == 2)
        count_interval(bar, pitches[1] - pitches[0]);
    if (holding && holding->note->midi != beginning->note->midi) {
        bar->apart++;
        *(beginning->note->midi > holding->note->midi ? &bar->upper : &bar->lower) += 1;
    }
}

static void drop_ended(Sweep *sweep, Ticks now)
{
    int kept = 0;
    for (int i = 0; i < sweep->active_count; i++)
        if (sweep->active[i]->onset + sweep->active[i]->duration > now)
            sweep->active[kept++] = sweep->active[i];
    sweep->active_count = kept;
}

/* Harmonics are often printed as chords: the stopped note, a diamond where the string is touched, and what is heard. Only the
 * highest note counts; `index` is any note of the chord. The others are recognised by a touched note at that moment in their
 * voice, a third to a fifth above the lowest. */
static bool is_part_of_harmonic(const Group *group, size_t index)
{
    const GroupSound *sound = &group->sounds[index];
    const GroupSound *highest = sound, *lowest = sound, *touched = NULL;
    size_t from = index, past = index + 1;
    while (from > 0 && index - from < ACTIVE_MOST && group->sounds[from - 1].onset == sound->onset)
        from--;
    while (past < group->sound_count && past - index < ACTIVE_MOST && group->sounds[past].onset == sound->onset)
        past++;
    for (size_t i = from; i < past; i++) {
        const GroupSound *other = &group->sounds[i];
        if (!same_voice(other, sound) || !other->duration)
            continue;
        highest = other->note->midi > highest->note->midi ? other : highest;
        lowest = other->note->midi < lowest->note->midi ? other : lowest;
        touched = other->note->flags & NOTE_HARMONIC ? other : touched;
    }
    if (!touched || sound == highest)
        return false;
    int reach = touched->note->midi - lowest->note->midi;
    return reach >= 3 && reach <= 7;
}

static int voice_of(Sweep *sweep, const GroupSound *sound)
{
    for (int i = 0; i < sweep->voice_count; i++)
        if (same_voice(sweep->voices[i], sound))
            return i;
    if (sweep->voice_count == VOICES_MOST)
        return 0;
    for (int i = 0; i < sweep->voice_count; i++)
        sweep->several_players |= !same_player(sweep->voices[i], sound);
    sweep->voices[sweep->voice_count] = sound;
    sweep->alone[sweep->voice_count] = 0;
    return sweep->voice_count++;
}

/* Keeps account of which voice moves at this moment, and whether it does so alone. */
static void note_voices_beginning(Sweep *sweep, Ticks now)
{
    int first = -1;
    bool alone = true;
    for (int i = 0; i < sweep->active_count; i++) {
        if (sweep->active[i]->onset != now)
            continue;
        int voice = voice_of(sweep, sweep->active[i]);
        alone &= first < 0 || voice == first;
        first = voice;
    }
    if (first >= 0 && alone)
        sweep->alone[first]++;
}

static bool take_beginning(Sweep *sweep, Ticks now)
{
    bool any = false;
    for (; sweep->next_sound < sweep->group->sound_count; sweep->next_sound++) {
        const GroupSound *sound = &sweep->group->sounds[sweep->next_sound];
        if (sound->onset > now)
            break;
        if (sound->duration <= 0 || sound->note->midi < 0 || sweep->active_count == ACTIVE_MOST)
            continue;
        if (is_part_of_harmonic(sweep->group, sweep->next_sound))
            continue;
        sweep->active[sweep->active_count++] = sound;
        any = true;
    }
    return any;
}

static Ticks next_moment(const Sweep *sweep, Ticks end)
{
    if (sweep->next_sound < sweep->group->sound_count && sweep->group->sounds[sweep->next_sound].onset < end)
        end = sweep->group->sounds[sweep->next_sound].onset;
    for (int i = 0; i < sweep->active_count; i++) {
        Ticks ends = sweep->active[i]->onset + sweep->active[i]->duration;
        end = ends < end ? ends : end;
    }
    return end;
}

static bool mark_is_for(const Direction *mark, const spz_line *line)
{
    return mark->kind == DIRECTION_WORDS && mark->text && (!mark->staff || !line->staff || mark->staff == line->staff);
}

/* Takes in the words up to and at `now`. */
static void read_marks(Sweep *sweep, Ticks now)
{
    for (size_t i = 0; i < sweep->group->line_count; i++) {
        LineState *state = &sweep->states[i];
        const spz_line *line = &sweep->map->lines[state->line];
        const Part *part = &sweep->map->movement->parts[line->part];
        for (; state->next < part->direction_count && part->directions[state->next].onset <= now; state->next++) {
            DivisionWords words;
            if (!mark_is_for(&part->directions[state->next], line) || !division_words_read(part->directions[state->next].text, &words))
                continue;
            state->now = division_state_after(state->now, &words);
            state->single_bars = state->rest_bars = 0;
            state->begun = false;
            sweep->bar->mark_begins |= words.divided;
            sweep->bar->mark_ends = !state->now.divided && (words.unison || words.double_stops || words.all);
        }
    }
}

/* A division said inside a first ending does not hold in the second, and one ended there goes on. */
static void mind_endings(Sweep *sweep, const Bar *bar)
{
    if (!bar->ending_start)
        return;
    for (size_t i = 0; i < sweep->group->line_count; i++) {
        LineState *state = &sweep->states[i];
        if (bar->ending & 1u)
            state->before_ending = state->now;
        else
            state->now = state->before_ending;
    }
}

static void note_state(Sweep *sweep)
{
    for (size_t i = 0; i < sweep->group->line_count; i++) {
        const DivisionState *now = &sweep->states[i].now;
        if (now->divided && now->lines > sweep->bar->said)
            sweep->bar->said = (uint8_t)now->lines;
        sweep->bar->by_desk |= now->by_desk;
        sweep->bar->half |= now->half;
        sweep->bar->solo |= now->solo;
        if (now->soloists > 1 && now->soloists > sweep->bar->soloists)
            sweep->bar->soloists = (uint8_t)(now->soloists < 100 ? now->soloists : 100);
    }
}

static void let_marks_lapse(Sweep *sweep)
{
    for (size_t i = 0; i < sweep->group->line_count; i++) {
        LineState *state = &sweep->states[i];
        state->begun |= state->thick_in_bar;
        state->single_bars = state->thick_in_bar ? 0 : state->single_bars + state->heard_in_bar;
        state->rest_bars = state->heard_in_bar ? 0 : state->rest_bars + 1;
        int single = !state->begun ? lapses.single_before_begun : state->says_unison ? lapses.single : lapses.single - 1;
        if (state->single_bars >= single || state->rest_bars >= (state->says_unison ? lapses.rest : lapses.rest_without_unison))
            state->now.divided = false;
        state->thick_in_bar = state->heard_in_bar = false;
        sweep->bar->divided |= state->now.divided;
    }
}

/* Voices of several players that take turns are lines all the same, even where they hardly sound together. */
static void judge_turns(Sweep *sweep)
{
    bool marked = false;
    int moving = 0;
    for (size_t i = 0; i < sweep->group->line_count; i++)
        marked |= sweep->states[i].now.divided && sweep->states[i].heard_in_bar;
    for (int i = 0; i < sweep->voice_count; i++)
        moving += sweep->alone[i] > 0;
    sweep->bar->voices = (uint8_t)sweep->voice_count;
    sweep->bar->in_turn = sweep->voice_count > 1 && ((marked && moving > 0) || (sweep->several_players && moving > 1));
    for (int i = 0; i < sweep->voice_count && sweep->voice_count > 1; i++)
        sweep->bar->alone = (uint16_t)(sweep->bar->alone + sweep->alone[i]);
    for (size_t i = 0; i < sweep->group->line_count && sweep->voice_count > 1; i++)
        sweep->states[i].thick_in_bar |= sweep->states[i].heard_in_bar;
}

static void sweep_bar(Sweep *sweep, const Bar *bar)
{
    Ticks now = bar->onset, end = bar->onset + bar->length;
    sweep->bar->crotchets = (float)bar->length / (float)sweep->map->movement->per_crotchet;
    sweep->voice_count = 0;
    sweep->several_players = false;
    mind_endings(sweep, bar);
    while (now < end) {
        read_marks(sweep, now);
        drop_ended(sweep, now);
        if (take_beginning(sweep, now)) {
            note_voices_beginning(sweep, now);
            count_attack(sweep, now);
        }
        Ticks until = next_moment(sweep, end);
        book_time(sweep, until - now);
        now = until > now ? until : end;
    }
    read_marks(sweep, end - 1);
    note_state(sweep);
    judge_turns(sweep);
    let_marks_lapse(sweep);
}

static bool part_says_unison(const Part *part)
{
    for (size_t i = 0; i < part->direction_count; i++) {
        DivisionWords words;
        if (part->directions[i].kind == DIRECTION_WORDS && division_words_read(part->directions[i].text, &words) && (words.unison || words.all))
            return true;
    }
    return false;
}

spz_status divisi_writing_of(const SectionMap *map, const Group *group, BarWriting **out)
{
    const Movement *movement = map->movement;
    spz_status status = SPZ_NO_MEMORY;
    Sweep *sweep = memory_get(sizeof *sweep);
    BarWriting *bars = memory_get(movement->bar_count * sizeof *bars);
    LineState *states = memory_get((group->line_count + 1) * sizeof *states);
    if (sweep && bars && states) {
        memset(sweep, 0, sizeof *sweep);
        memset(bars, 0, movement->bar_count * sizeof *bars);
        memset(states, 0, (group->line_count + 1) * sizeof *states);
        for (size_t i = 0; i < group->line_count; i++) {
            states[i].line = group->lines[i];
            states[i].says_unison = part_says_unison(&movement->parts[map->lines[group->lines[i]].part]);
        }
        sweep->map = map;
        sweep->group = group;
        sweep->states = states;
        for (size_t i = 0; i < movement->bar_count; i++) {
            sweep->bar = &bars[i];
            sweep_bar(sweep, &movement->bars[i]);
        }
        *out = bars;
        bars = NULL;
        status = SPZ_OK;
    }
    memory_free(sweep);
    memory_free(states);
    memory_free(bars);
    return status;
}
