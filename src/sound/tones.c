#include "sound/tones.h"
#include "sound/chance.h"
#include "sound/manner.h"
#include <math.h>
#include <stdlib.h>

const double excerpt_lead = 0.4;

/* Players of one section are never quite together nor quite in tune. Onsets of an ensemble spread over 20 to 50 ms (Rasch, Acustica 43 (1979)
 * 121); the mistuning is common practice. Deviations: seconds, cents; what they are of a player throughout and of each tone. */
static const struct Looseness {
    double habit, onset, tuning, intonation; /* standard deviations */
    double alone;  /* share of these for who plays a part alone */
    double farthest;
    int velocity;
} looseness = {0.006, 0.014, 5, 3, 0.4, 0.04, 4};

static const double unknown_tempo = 90; /* crotchets a minute; common practice */

/* Without fermatas. */
static double plain_seconds(const Excerpt *excerpt, Ticks when)
{
    const Movement *movement = excerpt->map->movement;
    double per_crotchet = (double)movement->per_crotchet, seconds = excerpt_lead;
    double rate = excerpt->tempo > 0 ? excerpt->tempo : movement_tempo_at(movement, excerpt->from);
    if (rate <= 0)
        rate = unknown_tempo;
    Ticks at = excerpt->from;
    for (size_t i = 0; i < movement->tempo_count && !(excerpt->tempo > 0); i++) {
        const Tempo *tempo = &movement->tempos[i];
        if (tempo->onset <= at || tempo->onset >= when || tempo->rate <= 0)
            continue;
        seconds += (double)(tempo->onset - at) / per_crotchet * 60 / rate;
        at = tempo->onset;
        rate = tempo->rate;
    }
    return seconds + (double)(when - at) / per_crotchet * 60 / rate;
}

double excerpt_seconds(const Excerpt *excerpt, Ticks when)
{
    double seconds = plain_seconds(excerpt, when);
    for (size_t i = 0; i < excerpt->holds.count && excerpt->holds.at[i].from < when; i++) {
        Ticks to = excerpt->holds.at[i].to < when ? excerpt->holds.at[i].to : when;
        seconds += (hold_factor - 1) * (plain_seconds(excerpt, to) - plain_seconds(excerpt, excerpt->holds.at[i].from));
    }
    return seconds;
}

/* 1..127 for a dynamic, half steps between two of them for a hairpin: p 48, mf 80, f 96 (common practice). */
static uint8_t tone_velocity(double rung)
{
    return (uint8_t)fmax(12, fmin(127, 16 * rung - 16));
}

/* One player's deviations. */
typedef struct Hand {
    double habit, tuning;
    Chance chance;
    double scale;
} Hand;

static Hand hand_of(const Member *member, int player)
{
    Hand hand = {.chance = {(uint64_t)member->kind * 7919 + (uint64_t)member->section * 104729 + (uint64_t)member->orchestra * 15485863 +
                            (uint64_t)member->number * 32452843 + member->group * 49979687 + member->part * 67867967 + (uint64_t)player * 86028121},
                 .scale = member->kind == MEMBER_DESK ? 1 : looseness.alone};
    hand.habit = chance_normal(&hand.chance) * looseness.habit;
    hand.tuning = chance_normal(&hand.chance) * looseness.tuning;
    return hand;
}

typedef struct Writer {
    const Excerpt *excerpt;
    Manners manners;
    Hand *hands; /* SOUND_PLAYERS of each member */
    ToneList *out;
} Writer;

/* A note and who plays it. */
typedef struct Stroke {
    const GroupSound *sound;
    uint8_t program;
    int transpose;
    bool slurred, bowed;
    double early; /* seconds: grace notes */
    bool swells;  /* it sounds on and may grow and fade: not what is plucked or struck */
} Stroke;

/* General MIDI's pianos, mallets, plucked strings and drums die away by themselves. */
static bool can_swell(uint8_t program)
{
    return program >= 16 && !(program >= 24 && program <= 37) && !(program >= 45 && program <= 47);
}

/* Within a hairpin a held tone is struck as loudly as it ever gets, and held back where it is softer. */
static void add_swell(const Writer *writer, const Stroke *stroke, int deviation, SoundTone *tone)
{
    double rungs[SWELL_POINTS];
    if (!stroke->swells || !manner_swell(&writer->manners, stroke->sound, rungs, SWELL_POINTS))
        return;
    tone->velocity = 1;
    for (int i = 0; i < SWELL_POINTS; i++) {
        int velocity = tone_velocity(rungs[i]) + deviation;
        tone->swell[i] = (uint8_t)(velocity < 1 ? 1 : velocity > 127 ? 127 : velocity);
        tone->velocity = tone->swell[i] > tone->velocity ? tone->swell[i] : tone->velocity;
    }
}

static bool push(Writer *writer, size_t index, int player, double onset, double length, const Stroke *stroke, double key)
{
    Hand *hand = &writer->hands[index * SOUND_PLAYERS + (size_t)player];
    double shift = hand->scale * (hand->habit + chance_normal(&hand->chance) * looseness.onset);
    double cents = hand->scale * (hand->tuning + chance_normal(&hand->chance) * looseness.intonation);
    int deviation = (int)(chance_even(&hand->chance) * (2 * looseness.velocity + 1)) - looseness.velocity;
    int velocity = tone_velocity(manner_rung(&writer->manners, stroke->sound)) + deviation;
    shift = fmax(-looseness.farthest, fmin(looseness.farthest, shift));
    SoundTone tone = {.onset = fmax(0, onset + shift), .length = length, .key = key + cents / 100, .member = (uint16_t)index, .player = (uint8_t)player,
                      .velocity = (uint8_t)(velocity < 1 ? 1 : velocity > 127 ? 127 : velocity), .program = stroke->program};
    add_swell(writer, stroke, deviation, &tone);
    return array_push(writer->out, tone);
}

/* A trill or a drum roll is struck again and again. */
static int strokes_of_roll(double length)
{
    const double each = 0.075;
    return (int)fmax(2, fmin(200, length / each));
}

static bool play_repeated(Writer *writer, size_t member, int player, double onset, double length, const Stroke *stroke, double key, double upper, int strokes)
{
    bool room = true;
    for (int i = 0; i < strokes && room; i++)
        room = push(writer, member, player, onset + i * length / strokes, length / strokes, stroke, i % 2 ? upper : key);
    return room;
}

static bool play(Writer *writer, size_t member, const Stroke *stroke)
{
    const Note *note = stroke->sound->note;
    const Excerpt *excerpt = writer->excerpt;
    Ticks from = stroke->sound->onset < excerpt->from ? excerpt->from : stroke->sound->onset;
    Ticks to = stroke->sound->onset + stroke->sound->duration;
    double onset = excerpt_seconds(excerpt, from) - stroke->early;
    double written = note->flags & NOTE_GRACE ? manner_grace_seconds : excerpt_seconds(excerpt, to > excerpt->to ? excerpt->to : to) - onset;
    double length = manner_length(note, written, stroke->slurred, stroke->program);
    double key = note->midi + stroke->transpose + note->cents / 100.0;
    Stroke struck = *stroke; /* anew and anew: nothing of it swells */
    struck.swells = false;
    int counted = manner_repeats(stroke->sound, to - from, excerpt->map->movement->per_crotchet);
    bool room = true;
    for (int player = 0; player < excerpt->cast->at[member].players && player < SOUND_PLAYERS && room; player++) {
        if (note->flags & NOTE_TRILL)
            room = play_repeated(writer, member, player, onset, length, &struck, key, manner_upper_neighbour(excerpt->map->movement, note) + stroke->transpose,
                                 strokes_of_roll(length));
        else if (counted > 1)
            room = play_repeated(writer, member, player, onset, length, &struck, key, key, counted);
        else if (!stroke->bowed && trembles(note->flags))
            room = play_repeated(writer, member, player, onset, length, &struck, key, key, strokes_of_roll(length));
        else
            room = push(writer, member, player, onset, length, stroke, key);
    }
    return room;
}

/* The desks of a group, in order. */
typedef struct Desks {
    size_t at[CAST_LIMIT], count;
} Desks;

static size_t bodies_like(const SectionMap *map, const spz_group *about)
{
    size_t count = 0;
    for (size_t i = 0; i < map->group_count; i++) {
        const spz_group *other = &map->groups[i].about;
        count += other->section == about->section && other->orchestra == about->orchestra && !other->solo;
    }
    return count;
}

/* Violas 1 and 2 of one section take every other desk. */
static void find_desks(const Excerpt *excerpt, size_t group, Desks *out)
{
    const spz_group *about = &excerpt->map->groups[group].about;
    size_t bodies = about->number ? bodies_like(excerpt->map, about) : 1;
    out->count = 0;
    for (size_t i = 0; i < excerpt->cast->count; i++) {
        const Member *member = &excerpt->cast->at[i];
        bool own = member->kind == MEMBER_DESK && !about->solo && member->section == about->section && (!member->orchestra || member->orchestra == about->orchestra);
        if ((own && (bodies < 2 || (size_t)(member->number - 1) % bodies == (size_t)(about->number - 1) % bodies)) ||
            (member->kind == MEMBER_SOLOIST && member->group == group))
            out->at[out->count++] = i;
    }
}

/* Staves and voices that one group plays from in one bar: its desks share them out among themselves. */
enum { LINES_AT_ONCE = 8 };
typedef struct Lines {
    const Note *of[LINES_AT_ONCE];
    uint16_t part[LINES_AT_ONCE];
    size_t count;
} Lines;

static size_t line_of(const Lines *lines, const GroupSound *sound)
{
    size_t i = 0;
    while (i < lines->count && (lines->part[i] != sound->part || lines->of[i]->staff != sound->note->staff || lines->of[i]->voice != sound->note->voice))
        i++;
    return i;
}

static void find_lines(const Group *group, size_t index, Lines *lines)
{
    int bar = group->sounds[index].note->bar;
    size_t first = index;
    lines->count = 0;
    while (first > 0 && group->sounds[first - 1].note->bar == bar)
        first--;
    for (size_t i = first; i < group->sound_count && group->sounds[i].note->bar == bar; i++)
        if (line_of(lines, &group->sounds[i]) == lines->count && lines->count < LINES_AT_ONCE) {
            lines->part[lines->count] = group->sounds[i].part;
            lines->of[lines->count++] = group->sounds[i].note;
        }
}

/* Which note of a chord it is, from the top, and of how many. */
static void find_in_chord(const Group *group, size_t index, size_t *rank, size_t *notes)
{
    const GroupSound *own = &group->sounds[index];
    *rank = *notes = 0;
    if (own->note->flags & NOTE_GRACE) {
        *notes = 1;
        return;
    }
    size_t first = index;
    while (first > 0 && group->sounds[first - 1].onset == own->onset)
        first--;
    for (size_t i = first; i < group->sound_count && group->sounds[i].onset == own->onset; i++) {
        const GroupSound *other = &group->sounds[i];
        if (other->part != own->part || other->note->staff != own->note->staff || other->note->voice != own->note->voice || other->note->flags & NOTE_GRACE)
            continue;
        *rank += i < index;
        ++*notes;
    }
}

static bool takes(size_t desk, size_t desks, size_t share, size_t shares)
{
    return shares < 2 || (desks >= shares ? desk * shares / desks == share : desk == share % desks);
}

static bool play_group_sound(Writer *writer, const Group *group, size_t index, const Desks *desks, const Stroke *stroke)
{
    Lines lines;
    size_t rank, notes;
    bool room = true;
    find_lines(group, index, &lines);
    find_in_chord(group, index, &rank, &notes);
    size_t line = line_of(&lines, stroke->sound), all = lines.count, own = 0, place = 0;
    for (size_t d = 0; d < desks->count; d++)
        own += takes(d, desks->count, line, all);
    for (size_t d = 0; d < desks->count && room; d++) {
        if (!takes(d, desks->count, line, all))
            continue;
        bool sounds = notes < 2 || (own >= notes ? place % notes == rank : place == rank % own);
        place++;
        if (sounds)
            room = play(writer, desks->at[d], stroke);
    }
    return room;
}

static bool within(const Excerpt *excerpt, const GroupSound *sound)
{
    bool grace = sound->note->flags & NOTE_GRACE;
    return sound->onset < excerpt->to && sound->note->midi >= 0 && (grace ? sound->onset >= excerpt->from : sound->onset + sound->duration > excerpt->from);
}

static bool play_group(Writer *writer, size_t index)
{
    const Excerpt *excerpt = writer->excerpt;
    const Group *group = &excerpt->map->groups[index];
    Desks desks;
    SlurBook slurs = {0};
    bool room = true;
    find_desks(excerpt, index, &desks);
    for (size_t i = 0; i < group->sound_count && room && group->sounds[i].onset < excerpt->to; i++) {
        const GroupSound *sound = &group->sounds[i];
        bool slurred = slur_place(&slurs, group->sounds, group->sound_count, i).on;
        if (!within(excerpt, sound) || desks.count == 0)
            continue;
        Stroke stroke = {sound, manner_program(sound->note, cast_program_of_section(group->about.section)), group->shares_bass ? -12 : 0, slurred, true,
                         manner_grace_early(group->sounds, group->sound_count, i), false};
        stroke.swells = can_swell(stroke.program);
        room = play_group_sound(writer, group, i, &desks, &stroke);
    }
    return room;
}

static bool play_others(Writer *writer)
{
    const Excerpt *excerpt = writer->excerpt;
    const SectionMap *map = excerpt->map;
    SlurBook slurs = {0};
    bool room = true;
    size_t of_part[CAST_LIMIT];
    for (size_t part = 0; part < CAST_LIMIT; part++)
        of_part[part] = SIZE_MAX;
    for (size_t i = 0; i < excerpt->cast->count; i++)
        if (excerpt->cast->at[i].kind == MEMBER_OTHER && excerpt->cast->at[i].part < CAST_LIMIT)
            of_part[excerpt->cast->at[i].part] = i;
    for (size_t i = 0; i < map->other_count && room && map->others[i].onset < excerpt->to; i++) {
        const GroupSound *sound = &map->others[i];
        bool slurred = slur_place(&slurs, map->others, map->other_count, i).on;
        if (!within(excerpt, sound) || sound->part >= CAST_LIMIT || of_part[sound->part] == SIZE_MAX)
            continue;
        Stroke stroke = {sound, cast_program_of_part(map, sound->part), 0, slurred, false, manner_grace_early(map->others, map->other_count, i), false};
        stroke.swells = can_swell(stroke.program);
        room = play(writer, of_part[sound->part], &stroke);
    }
    return room;
}

static int earlier(const void *left, const void *right)
{
    const SoundTone *a = left, *b = right;
    if (a->onset != b->onset)
        return a->onset < b->onset ? -1 : 1;
    if (a->member != b->member)
        return a->member < b->member ? -1 : 1;
    if (a->player != b->player)
        return a->player < b->player ? -1 : 1;
    return a->key < b->key ? -1 : a->key > b->key;
}

spz_status tones_make(const Excerpt *excerpt, ToneList *out)
{
    Writer writer = {.excerpt = excerpt, .out = out};
    manners_open(&writer.manners, excerpt->map->movement);
    writer.hands = memory_zeroed(excerpt->cast->count * SOUND_PLAYERS + 1, sizeof *writer.hands);
    bool room = writer.hands != NULL;
    for (size_t i = 0; room && i < excerpt->cast->count * SOUND_PLAYERS; i++)
        writer.hands[i] = hand_of(&excerpt->cast->at[i / SOUND_PLAYERS], (int)(i % SOUND_PLAYERS));
    for (size_t i = 0; i < excerpt->map->group_count && room; i++)
        if (!excerpt->solo || excerpt->solo >> i & 1)
            room = play_group(&writer, i);
    if (room && !excerpt->solo)
        room = play_others(&writer);
    if (room && out->count > 1)
        qsort(out->at, out->count, sizeof *out->at, earlier);
    memory_free(writer.hands);
    return room ? SPZ_OK : SPZ_NO_MEMORY;
}
