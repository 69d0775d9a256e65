#include "analysis/melody/entry_marks.h"

static bool part_is_marked(const Part *part, Ticks from, Ticks to)
{
    for (size_t i = FIRST_FROM(part->directions, part->direction_count, from); i < part->direction_count && part->directions[i].onset <= to; i++)
        if (part->directions[i].kind == DIRECTION_DYNAMIC || part->directions[i].kind == DIRECTION_WORDS)
            return true;
    return false;
}

bool entry_is_marked(const SectionMap *map, const Group *group, Ticks when)
{
    Ticks near = map->movement->per_crotchet / 2;
    for (size_t i = 0; map->line_count && i < group->line_count; i++) /* voices put together from several parts have none */
        if (part_is_marked(&map->movement->parts[map->lines[group->lines[i]].part], when - near, when + near))
            return true;
    return false;
}

double entry_singled_out(const SectionMap *map, size_t group, uint64_t with, Ticks when)
{
    size_t others = 0, unmarked = 0;
    if (!entry_is_marked(map, &map->groups[group], when))
        return 0;
    for (size_t g = 0; g < map->group_count && g < 64; g++) {
        if (g == group || (with >> g & 1) || !map->groups[g].sound_count)
            continue;
        others++;
        unmarked += !entry_is_marked(map, &map->groups[g], when);
    }
    return others ? (double)unmarked / (double)others : 1;
}
