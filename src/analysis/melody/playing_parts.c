#include "analysis/melody/playing_parts.h"

/* Counts each part once a bar. `sounds` are in order of onset. */
static void count_sounds(PlayingParts *company, const GroupSound *sounds, size_t count, int32_t *last_bar, bool one_part)
{
    for (size_t i = 0; i < count; i++) {
        int32_t bar = sounds[i].note->bar;
        int32_t *seen = &last_bar[one_part ? 0 : sounds[i].part];
        if (bar < 0 || (size_t)bar >= company->bar_count || *seen == bar + 1)
            continue;
        *seen = bar + 1;
        company->parts[bar]++;
    }
}

spz_status playing_parts_of(const SectionMap *map, Arena *arena, PlayingParts *out)
{
    const Movement *movement = map->movement;
    int32_t *last_bar = arena_take(arena, movement->part_count + 1, sizeof *last_bar);
    out->bar_count = movement->bar_count;
    out->parts = arena_take(arena, movement->bar_count, sizeof *out->parts);
    if (!last_bar || !out->parts)
        return SPZ_NO_MEMORY;
    count_sounds(out, map->others, map->other_count, last_bar, false);
    for (size_t i = 0; i < map->group_count; i++) {
        last_bar[0] = 0;
        count_sounds(out, map->groups[i].sounds, map->groups[i].sound_count, last_bar, true);
    }
    return SPZ_OK;
}

double playing_parts_share(const PlayingParts *company, size_t first, size_t last, double own)
{
    double parts = 0;
    for (size_t bar = first; bar <= last && bar < company->bar_count; bar++)
        parts += company->parts[bar];
    double mean = parts / (double)(last - first + 1);
    return mean > own ? own / mean : 1;
}
