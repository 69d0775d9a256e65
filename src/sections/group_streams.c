/* Each group's stream.
 *
 * Each part's sounds come in order of onset, so what a part gives to a group is a sorted run; the runs are merged two by two:
 * n log(parts), nothing is sorted from scratch. Only sounds of one moment are then put in order of pitch. */
#include "sections/groups.h"
#include "sections/shared_staff.h"
#include "sections/understanding.h"
#include <stdlib.h>
#include <string.h>

typedef struct Collector {
    ARRAY(GroupSound) sounds;
    ARRAY(size_t) runs; /* where each run starts */
} Collector;

typedef struct Gathering {
    SectionMap *map;
    Collector *collectors; /* by group; the last one takes all that belongs to no string group */
    SoundList part_sounds;
} Gathering;

static bool line_holds(const Part *part, const spz_line *line, const Note *note)
{
    return (!line->staff || line->staff == note->staff) && (!line->voice || strcmp(line->voice, part->voices[note->voice]) == 0);
}

static bool give(Collector *collector, const Sound *sound, size_t line)
{
    GroupSound own = { sound->onset, sound->duration, sound->note, sound->part, (uint16_t)line, sound->slur_stops, sound->slur_starts };
    return array_push(&collector->sounds, own);
}

/* Gives the sounds that line `index` holds to one collector, as one run. */
static bool give_line(Gathering *gathering, size_t index, size_t collector)
{
    const spz_line *line = &gathering->map->lines[index];
    const Part *part = &gathering->map->movement->parts[line->part];
    Collector *into = &gathering->collectors[collector];
    bool whole = !line->staff && !line->voice;
    if (!array_push(&into->runs, into->sounds.count))
        return false;
    for (size_t i = 0; i < gathering->part_sounds.count; i++) {
        const Sound *sound = &gathering->part_sounds.at[i];
        if ((whole || line_holds(part, line, sound->note)) && !give(into, sound, index))
            return false;
    }
    return true;
}

/* As far as a chord can reach. */
enum { CHORD_LIMIT = 64 };

/* Which of the sounds of one side at the moment of sound `index` it is. */
static void look_around(const SoundList *sounds, size_t index, const bool *second, bool *alone, bool *highest)
{
    const Sound *own = &sounds->at[index];
    size_t first = index;
    while (first > 0 && index - first < CHORD_LIMIT && sounds->at[first - 1].onset == own->onset)
        first--;
    *alone = *highest = true;
    for (size_t i = first; i < sounds->count && i < index + CHORD_LIMIT && sounds->at[i].onset == own->onset; i++) {
        const Note *other = sounds->at[i].note;
        if (i == index || second[other->voice] != second[own->note->voice])
            continue;
        *alone = false;
        *highest &= other->midi < own->note->midi || (other->midi == own->note->midi && i > index);
    }
}

/* Line of the part for one side of a shared staff: the one with this voice where it is that side's own, else that side's first. */
static size_t side_line(const SectionMap *map, size_t part, const char *voice, spz_section section)
{
    size_t found = map->line_count;
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        if (line->part == part && line->section == section && (found == map->line_count || strcmp(line->voice, voice) == 0))
            found = i;
    }
    return found;
}

static bool give_to_side(Gathering *gathering, const Sound *sound, const char *voice, spz_section section)
{
    size_t line = side_line(gathering->map, sound->part, voice, section);
    spz_group about = group_of_line(&gathering->map->lines[line], section);
    return give(&gathering->collectors[group_find(gathering->map, &about)], sound, line);
}

static bool open_run(Gathering *gathering, size_t line)
{
    spz_group about = group_of_line(&gathering->map->lines[line], gathering->map->lines[line].section);
    Collector *into = &gathering->collectors[group_find(gathering->map, &about)];
    return array_push(&into->runs, into->sounds.count);
}

/* Two sections on one staff: own voices where both are written, the common voice to both (a chord from the top) where not. */
static spz_status give_shared_staff(Gathering *gathering, size_t first_line, size_t second_line)
{
    SectionMap *map = gathering->map;
    size_t index = map->lines[first_line].part;
    const Part *part = &map->movement->parts[index];
    spz_section upper = map->lines[first_line].section, lower = map->lines[second_line].section;
    bool *second = arena_take(&map->arena, part->voice_count + 1, sizeof *second);
    if (!second)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < map->line_count; i++)
        for (size_t v = 0; v < part->voice_count; v++)
            if (map->lines[i].part == index && strcmp(map->lines[i].voice, part->voices[v]) == 0)
                second[v] = map->lines[i].section == lower;
    const unsigned char *both = shared_staff_bars(map->movement, index, second, &map->arena);
    bool given = both && open_run(gathering, first_line) && open_run(gathering, second_line);
    for (size_t i = 0; given && i < gathering->part_sounds.count; i++) {
        const Sound *sound = &gathering->part_sounds.at[i];
        const char *voice = part->voices[sound->note->voice];
        bool alone = false, highest = true, low = second[sound->note->voice], common = both[sound->note->bar] && !low;
        if (common)
            look_around(&gathering->part_sounds, i, second, &alone, &highest);
        if (!low && (!common || alone || highest))
            given = give_to_side(gathering, sound, voice, upper);
        if (given && (low || (common && (alone || !highest))))
            given = give_to_side(gathering, sound, voice, lower);
    }
    return given ? SPZ_OK : SPZ_NO_MEMORY;
}

/* The lines of both sides when this part is a shared staff. */
static bool is_shared_staff(const SectionMap *map, size_t part, size_t *first, size_t *second)
{
    *first = *second = map->line_count;
    for (size_t i = 0; i < map->line_count; i++) {
        if (map->lines[i].part != part || !map->on_shared_staff[i] || map->lines[i].left_out)
            continue;
        if (*first == map->line_count)
            *first = i;
        else if (map->lines[i].section != map->lines[*first].section && *second == map->line_count)
            *second = i;
    }
    if (*second < map->line_count && map->lines[*second].section < map->lines[*first].section) {
        size_t swap = *first;
        *first = *second;
        *second = swap;
    }
    return *second < map->line_count;
}

static spz_status gather_part(Gathering *gathering, size_t part)
{
    const SectionMap *map = gathering->map;
    size_t upper, lower;
    gathering->part_sounds.count = 0;
    spz_status status = stream_of_part(map->movement, part, &gathering->part_sounds);
    if (status == SPZ_OK && is_shared_staff(map, part, &upper, &lower))
        return give_shared_staff(gathering, upper, lower);
    for (size_t i = 0; status == SPZ_OK && i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        if (line->part != part || line->left_out)
            continue;
        spz_group first = group_of_line(line, line->section), second = group_of_line(line, line->also);
        size_t own = line->section ? group_find(map, &first) : map->group_count;
        bool given = give_line(gathering, i, own) && (!line->also || give_line(gathering, i, group_find(map, &second)));
        status = given ? SPZ_OK : SPZ_NO_MEMORY;
    }
    return status;
}

static void merge_two(const GroupSound *a, const GroupSound *a_end, const GroupSound *b, const GroupSound *b_end, GroupSound *out)
{
    while (a < a_end && b < b_end)
        *out++ = b->onset < a->onset ? *b++ : *a++;
    if (a < a_end)
        memcpy(out, a, (size_t)(a_end - a) * sizeof *out);
    out += a_end - a;
    if (b < b_end)
        memcpy(out, b, (size_t)(b_end - b) * sizeof *out);
}

/* One round: neighbouring runs of `from` merged into `to`. Returns how many runs are left. */
static size_t merge_round(const GroupSound *from, GroupSound *to, size_t count, size_t *runs, size_t run_count)
{
    size_t left = 0;
    for (size_t i = 0; i < run_count; i += 2) {
        size_t start = runs[i], middle = i + 1 < run_count ? runs[i + 1] : count, end = i + 2 < run_count ? runs[i + 2] : count;
        merge_two(from + start, from + middle, from + middle, from + end, to + start);
        runs[left++] = start;
    }
    return left;
}

/* Grace notes first and in their order, then from the top; equal pitches by line. */
static int compare_in_moment(const void *left, const void *right)
{
    const GroupSound *a = left, *b = right;
    bool grace_a = (a->note->flags & NOTE_GRACE) != 0, grace_b = (b->note->flags & NOTE_GRACE) != 0;
    if (grace_a != grace_b)
        return grace_a ? -1 : 1;
    if (!grace_a && a->note->midi != b->note->midi)
        return a->note->midi > b->note->midi ? -1 : 1;
    if (a->line != b->line)
        return a->line < b->line ? -1 : 1;
    return a->note < b->note ? -1 : a->note > b->note;
}

static void order_moments(GroupSound *sounds, size_t count)
{
    for (size_t first = 0, end; first < count; first = end) {
        bool ordered = true;
        for (end = first + 1; end < count && sounds[end].onset == sounds[first].onset; end++)
            ordered &= compare_in_moment(&sounds[end - 1], &sounds[end]) <= 0;
        if (!ordered)
            qsort(sounds + first, end - first, sizeof *sounds, compare_in_moment);
    }
}

/* The runs of a collector as one stream in the arena. */
static spz_status settle(Arena *arena, Collector *collector, GroupSound **out, size_t *out_count)
{
    size_t count = collector->sounds.count, runs = collector->runs.count;
    GroupSound *stream = arena_take(arena, count ? count : 1, sizeof *stream);
    if (!stream)
        return SPZ_NO_MEMORY;
    GroupSound *from = collector->sounds.at, *to = stream;
    while (runs > 1 && count > 0) {
        runs = merge_round(from, to, count, collector->runs.at, runs);
        GroupSound *swap = from;
        from = to;
        to = swap;
    }
    if (from != stream && count)
        memcpy(stream, from, count * sizeof *stream);
    order_moments(stream, count);
    *out = stream;
    *out_count = count;
    return SPZ_OK;
}

static spz_status gather_all(Gathering *gathering)
{
    SectionMap *map = gathering->map;
    spz_status status = SPZ_OK;
    for (size_t part = 0; status == SPZ_OK && part < map->movement->part_count; part++)
        status = gather_part(gathering, part);
    for (size_t i = 0; status == SPZ_OK && i < map->group_count; i++)
        status = settle(&map->arena, &gathering->collectors[i], &map->groups[i].sounds, &map->groups[i].sound_count);
    if (status == SPZ_OK)
        status = settle(&map->arena, &gathering->collectors[map->group_count], &map->others, &map->other_count);
    return status;
}

spz_status groups_make(SectionMap *map)
{
    Gathering gathering = { .map = map };
    spz_status status = groups_list(map);
    if (status != SPZ_OK)
        return status;
    gathering.collectors = arena_take(&map->arena, map->group_count + 1, sizeof *gathering.collectors);
    if (!gathering.collectors)
        return SPZ_NO_MEMORY;
    status = gather_all(&gathering);
    for (size_t i = 0; i <= map->group_count; i++) {
        array_free(&gathering.collectors[i].sounds);
        array_free(&gathering.collectors[i].runs);
    }
    array_free(&gathering.part_sounds);
    return status;
}
