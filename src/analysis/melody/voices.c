#include "analysis/melody/voices.h"
#include "spezzato/sections.h"

static bool blows(const SectionMap *map, size_t part)
{
    spz_family family = section_map_family(map, part);
    return family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_BRASS;
}

/* Room for the sounds of each wind part, counted first; false when out of memory. */
static bool make_winds(const SectionMap *strings, Arena *arena, Group **wind_of, SectionMap *out)
{
    size_t parts = strings->movement->part_count;
    size_t *count = arena_take(arena, parts, sizeof *count);
    for (size_t i = 0; count && i < strings->other_count; i++)
        count[strings->others[i].part]++;
    for (size_t p = 0; count && p < parts && out->group_count < VOICES_MOST; p++) {
        if (!count[p] || !blows(strings, p))
            continue;
        Group *wind = wind_of[p] = &out->groups[out->group_count++];
        *wind = (Group){.about = {.section = SPZ_WINDS, .name = strings->movement->parts[p].name},
                        .sounds = arena_take(arena, count[p], sizeof *wind->sounds)};
        if (!wind->sounds)
            return false;
    }
    return count != NULL;
}

spz_status voices_of(const SectionMap *strings, Arena *arena, Voices *out)
{
    size_t parts = strings->movement->part_count;
    Group **wind_of = arena_take(arena, parts, sizeof *wind_of);
    *out = (Voices){.map = {.movement = strings->movement, .groups = arena_take(arena, strings->group_count + parts, sizeof(Group))}};
    if (!wind_of || !out->map.groups)
        return SPZ_NO_MEMORY;
    for (size_t g = 0; g < strings->group_count && g < VOICES_MOST; g++)
        out->map.groups[out->map.group_count++] = strings->groups[g];
    out->string_count = out->map.group_count;
    if (!make_winds(strings, arena, wind_of, &out->map))
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < strings->other_count; i++) {
        Group *wind = wind_of[strings->others[i].part];
        if (wind)
            wind->sounds[wind->sound_count++] = strings->others[i];
    }
    out->melodies = melodies_of(&out->map, arena);
    return out->melodies ? SPZ_OK : SPZ_NO_MEMORY;
}
