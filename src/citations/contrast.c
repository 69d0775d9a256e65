#include "citations/contrast.h"
#include <stdint.h>

enum { LEAST_NOTES = 8, MOST_NOTES = 160 };

typedef struct Tune {
    Ticks onsets[MOST_NOTES];
    int places[MOST_NOTES]; /* on the staff, seven an octave */
    size_t count, hands; /* notes; how often the line changes hands */
} Tune;

/* The upper note of each moment from `from` on. Returns the index behind it; SIZE_MAX past the end. */
static size_t next_note(const Group *group, size_t from, Ticks *onset, int *place)
{
    while (from < group->sound_count && (group->sounds[from].note->midi < 0 || group->sounds[from].duration <= 0))
        from++;
    if (from >= group->sound_count)
        return SIZE_MAX;
    *onset = group->sounds[from].onset;
    *place = 7 * group->sounds[from].note->octave + group->sounds[from].note->step;
    while (from < group->sound_count && group->sounds[from].onset == *onset)
        from++;
    return from;
}

/* The entry's notes up to where the next one begins. */
static void add_entry(Tune *tune, const Group *group, Ticks from, Ticks to)
{
    Ticks onset = 0;
    int place = 0;
    size_t at = group_sound_at(group, from);
    while ((at = next_note(group, at, &onset, &place)) != SIZE_MAX && onset < to && tune->count < MOST_NOTES) {
        tune->onsets[tune->count] = onset;
        tune->places[tune->count++] = place;
    }
}

/* What passes from hand to hand; winds have no line of their own here, so that a passage with them has none. */
static bool take_tune(const SectionMap *map, const spz_passage *passage, size_t entries, Tune *tune)
{
    tune->count = tune->hands = 0;
    for (size_t i = 0; i < entries; i++) {
        const spz_entry *entry = &passage->entries[i];
        Ticks to = i + 1 < passage->entry_count && passage->entries[i + 1].onset < entry->end ? passage->entries[i + 1].onset : entry->end;
        if (entry->leader >= map->group_count)
            return false;
        tune->hands += i > 0 && entry->leader != passage->entries[i - 1].leader;
        add_entry(tune, &map->groups[entry->leader], entry->onset, to);
    }
    return tune->count >= LEAST_NOTES && tune->hands > 0;
}

/* Whether the tune, whose first note is the one given, goes on from `at` to its end. */
static bool goes_on(const Tune *tune, const Group *group, size_t at, Ticks first, int moved, Ticks *end)
{
    Ticks onset = first;
    int place = 0;
    for (size_t n = 1; n < tune->count; n++) {
        at = next_note(group, at, &onset, &place);
        if (at == SIZE_MAX || onset - first != tune->onsets[n] - tune->onsets[0] || place - tune->places[n] != moved)
            return false;
    }
    *end = onset;
    return true;
}

/* The first place of the group outside the passage where it has the tune, before `until`. */
static bool find_in_group(const Group *group, const spz_passage *passage, const Tune *tune, Ticks until, Ticks *begin, Ticks *end, int *moved)
{
    Ticks first = 0, onset = 0, step = tune->onsets[1] - tune->onsets[0];
    int first_place = 0, place = 0;
    size_t at = next_note(group, 0, &onset, &place);
    while (at != SIZE_MAX && onset < until) {
        size_t before = at;
        first = onset;
        first_place = place;
        at = next_note(group, at, &onset, &place);
        if (at == SIZE_MAX || onset - first != step || (first >= passage->onset && first < passage->end))
            continue;
        *moved = first_place - tune->places[0];
        if (goes_on(tune, group, before, first, *moved, end)) {
            *begin = first;
            return true;
        }
    }
    return false;
}

/* The first place outside the passage where one section has the tune. */
static bool find_whole(const SectionMap *map, const spz_passage *passage, const Tune *tune, Contrast *out)
{
    Ticks earliest = INT64_MAX, end = 0;
    int moved = 0;
    bool found = false;
    for (size_t g = 0; g < map->group_count; g++)
        if (find_in_group(&map->groups[g], passage, tune, earliest, &earliest, &end, &moved)) {
            found = true;
            *out = (Contrast){g, (size_t)movement_bar_at(map->movement, earliest), (size_t)movement_bar_at(map->movement, end), moved};
        }
    return found;
}

bool contrast_of(const SectionMap *map, const spz_passage *passage, Contrast *out)
{
    Tune tune;
    const size_t lengths[] = {passage->entry_count, 4, 2}; /* the whole chain, or how it begins */
    if (!spz_kind_is_antiphony(passage->kind))
        return false;
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
        if ((i == 0 || lengths[i] < passage->entry_count) && take_tune(map, passage, lengths[i], &tune) && find_whole(map, passage, &tune, out))
            return true;
    return false;
}
