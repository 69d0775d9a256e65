#include "citations/contrast.h"
#include <string.h>

enum { LEAST_NOTES = 8, MOST_NOTES = 160 };

typedef struct Tune {
    Ticks onsets[MOST_NOTES];
    int midi[MOST_NOTES];
    size_t count, hands; /* notes; how often the line changes hands */
} Tune;

/* The upper note of each moment from `from` on. Returns the index behind it; SIZE_MAX past the end. */
static size_t next_note(const Group *group, size_t from, Ticks *onset, int *midi)
{
    while (from < group->sound_count && (group->sounds[from].note->midi < 0 || group->sounds[from].duration <= 0))
        from++;
    if (from >= group->sound_count)
        return SIZE_MAX;
    *onset = group->sounds[from].onset;
    *midi = group->sounds[from].note->midi;
    while (from < group->sound_count && group->sounds[from].onset == *onset)
        from++;
    return from;
}

/* The entry's notes up to where the next one begins. */
static void add_entry(Tune *tune, const Group *group, Ticks from, Ticks to)
{
    Ticks onset = 0;
    int midi = 0;
    size_t at = group_sound_at(group, from);
    while ((at = next_note(group, at, &onset, &midi)) != SIZE_MAX && onset < to && tune->count < MOST_NOTES) {
        tune->onsets[tune->count] = onset;
        tune->midi[tune->count++] = midi;
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

/* Whether the tune stands whole from the sound `at` on. */
static bool stands_at(const Tune *tune, const Group *group, size_t at, Ticks *end)
{
    Ticks onset = 0, first = 0;
    int midi = 0, key = 0;
    for (size_t n = 0; n < tune->count; n++) {
        at = next_note(group, at, &onset, &midi);
        if (at == SIZE_MAX)
            return false;
        if (n == 0) {
            first = onset;
            key = midi - tune->midi[0];
        } else if (onset - first != tune->onsets[n] - tune->onsets[0] || midi - tune->midi[n] != key) {
            return false;
        }
    }
    *end = onset;
    return true;
}

/* The first place outside the passage where one section has the tune. */
static bool find_whole(const SectionMap *map, const spz_passage *passage, const Tune *tune, Contrast *out)
{
    bool found = false;
    Ticks earliest = 0;
    for (size_t g = 0; g < map->group_count; g++) {
        const Group *group = &map->groups[g];
        for (size_t at = 0; at < group->sound_count; at++) {
            Ticks onset = group->sounds[at].onset, end = 0;
            bool apart = onset >= passage->end || onset < passage->onset, new_moment = at == 0 || group->sounds[at - 1].onset != onset;
            if (!apart || !new_moment || (found && onset >= earliest) || !stands_at(tune, group, at, &end))
                continue;
            found = true;
            earliest = onset;
            *out = (Contrast){g, (size_t)movement_bar_at(map->movement, onset), (size_t)movement_bar_at(map->movement, end), group->sounds[at].note->midi - tune->midi[0]};
        }
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
