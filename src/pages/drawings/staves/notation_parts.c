#include "pages/drawings/staves/notation_parts.h"

size_t notation_parts(const SectionMap *map, const Movement *movement, spz_players players, ExcerptPart *parts, size_t most)
{
    size_t count = 0;
    for (size_t part = 0; part < movement->part_count && count < most; part++) {
        const char *name = NULL;
        for (size_t group = 0; group < map->group_count && group < 63 && !name; group++) {
            const Group *about = &map->groups[group];
            for (size_t i = 0; i < about->line_count && !name && (players >> group & 1); i++)
                if (map->lines[about->lines[i]].part == part)
                    name = about->about.name;
        }
        if (name)
            parts[count++] = (ExcerptPart){part, name};
    }
    return count;
}
