#include "sections/understanding.h"
#include "support/memory.h"
#include <string.h>

/* Names every part, then cuts lines and groups. */
static spz_status understand(Understanding *all, SectionMap *map)
{
    parts_read(all);
    spz_status status = corrections_read(all);
    if (status != SPZ_OK)
        return status;
    guesses_make(all);
    context_settle(all);
    orchestras_find(all);
    context_settle_bass_lines(all);
    understanding_settle(all);
    status = numbering_settle(all);
    if (status == SPZ_OK)
        status = lines_make(all, map);
    return status == SPZ_OK ? groups_make(map) : status;
}

spz_status spz_sections_find(const spz_movement *movement, const spz_settings *settings, const spz_sink *sink, spz_sections **out)
{
    *out = NULL;
    SectionMap *map = memory_get(sizeof *map);
    if (!map)
        return SPZ_NO_MEMORY;
    memset(map, 0, sizeof *map);
    arena_init(&map->arena);
    map->movement = movement;
    Understanding all = { .movement = movement, .settings = settings, .sink = sink, .arena = &map->arena };
    all.parts = memory_get((movement->part_count + 1) * sizeof *all.parts);
    spz_status status = all.parts ? SPZ_OK : SPZ_NO_MEMORY;
    if (all.parts) {
        memset(all.parts, 0, (movement->part_count + 1) * sizeof *all.parts);
        status = understand(&all, map);
    }
    array_free(&all.corrections);
    memory_free(all.parts);
    if (status == SPZ_OK)
        *out = map;
    else
        spz_sections_free(map);
    return status;
}

void spz_sections_free(spz_sections *sections)
{
    if (!sections)
        return;
    arena_release(&sections->arena);
    memory_free(sections);
}

size_t spz_sections_lines(const spz_sections *sections)
{
    return sections->line_count;
}

const spz_line *spz_sections_line(const spz_sections *sections, size_t index)
{
    return index < sections->line_count ? &sections->lines[index] : NULL;
}

const char *spz_sections_advice(const spz_sections *sections, size_t line)
{
    return line < sections->line_count ? sections->advice[line] : "";
}

size_t spz_sections_groups(const spz_sections *sections)
{
    return sections->group_count;
}

bool spz_sections_chamber_music(const spz_sections *sections)
{
    return sections->chamber_music;
}

const spz_group *spz_sections_group(const spz_sections *sections, size_t index)
{
    return index < sections->group_count ? &sections->groups[index].about : NULL;
}
