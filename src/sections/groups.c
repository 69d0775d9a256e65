/* Lines to groups of players. */
#include "sections/groups.h"
#include "sections/chamber_music.h"

static bool same_group(const spz_group *a, const spz_group *b)
{
    return a->section == b->section && a->orchestra == b->orchestra && a->number == b->number && a->solo == b->solo;
}

spz_group group_of_line(const spz_line *line, spz_section section)
{
    return (spz_group){ .section = section, .orchestra = line->orchestra, .number = line->number, .solo = line->role == SPZ_SOLO };
}

static bool comes_before(const spz_group *a, const spz_group *b)
{
    if (a->orchestra != b->orchestra)
        return a->orchestra < b->orchestra;
    if (a->section != b->section)
        return a->section < b->section;
    if (a->solo != b->solo)
        return a->solo;
    return a->number < b->number;
}

size_t group_find(const SectionMap *map, const spz_group *about)
{
    for (size_t i = 0; i < map->group_count; i++)
        if (same_group(&map->groups[i].about, about))
            return i;
    return map->group_count;
}

static void insert_group(SectionMap *map, const spz_group *about)
{
    size_t at = map->group_count;
    if (group_find(map, about) < map->group_count)
        return;
    for (; at > 0 && comes_before(about, &map->groups[at - 1].about); at--)
        map->groups[at] = map->groups[at - 1];
    map->groups[at] = (Group){ .about = *about };
    map->group_count++;
}

static const char *group_name(Arena *arena, const spz_group *about)
{
    const char *name = spz_section_name(about->section);
    const char *number = about->number ? arena_format(arena, " %d", about->number) : "";
    const char *orchestra = about->orchestra ? arena_format(arena, about->solo ? "solo, orchestra %d" : "orchestra %d", about->orchestra)
                                             : about->solo ? "solo" : "";
    if (!number || !orchestra)
        return NULL;
    return arena_format(arena, orchestra[0] ? "%s%s (%s)" : "%s%s%s", name, number, orchestra);
}

/* How many lines give to this group; `only_shared` when none has it as its first section. */
static size_t list_lines(const SectionMap *map, const spz_group *about, uint16_t *out, bool *only_shared)
{
    size_t count = 0;
    *only_shared = true;
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        spz_group first = group_of_line(line, line->section), second = group_of_line(line, line->also);
        bool own = line->section && same_group(&first, about), shared = line->also && same_group(&second, about);
        if (line->left_out || (!own && !shared))
            continue;
        *only_shared &= !own;
        if (out)
            out[count] = (uint16_t)i;
        count++;
    }
    return count;
}

/* A soloist, or a part of chamber music. */
static bool is_single(const SectionMap *map, const Group *group)
{
    return map->chamber_music || (group->about.solo && group->line_count == 1 && !map->lines[group->lines[0]].several);
}

static spz_status describe_groups(SectionMap *map)
{
    map->chamber_music = chamber_music(map);
    for (size_t i = 0; i < map->group_count; i++) {
        Group *group = &map->groups[i];
        bool shared;
        group->line_count = list_lines(map, &group->about, NULL, &shared);
        group->lines = arena_take(&map->arena, group->line_count, sizeof *group->lines);
        group->about.name = group_name(&map->arena, &group->about);
        if (!group->lines || !group->about.name)
            return SPZ_NO_MEMORY;
        list_lines(map, &group->about, group->lines, &shared);
        group->about.single = is_single(map, group);
        group->shares_bass = shared && group->about.section == SPZ_DB;
    }
    return SPZ_OK;
}

spz_status groups_list(SectionMap *map)
{
    map->groups = arena_take(&map->arena, map->line_count * 2 + 1, sizeof *map->groups);
    if (!map->groups)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        spz_group first = group_of_line(line, line->section), second = group_of_line(line, line->also);
        if (line->section && !line->left_out)
            insert_group(map, &first);
        if (line->also && !line->left_out)
            insert_group(map, &second);
    }
    return describe_groups(map);
}

const Group *section_map_group(const SectionMap *map, spz_section section, int orchestra)
{
    for (size_t i = 0; i < map->group_count; i++) {
        const spz_group *about = &map->groups[i].about;
        if (about->section == section && !about->solo && (orchestra == 0 || about->orchestra == orchestra))
            return &map->groups[i];
    }
    return NULL;
}

size_t group_sound_at(const Group *group, Ticks when)
{
    return FIRST_FROM(group->sounds, group->sound_count, when);
}

spz_family section_map_family(const SectionMap *map, size_t part)
{
    for (size_t i = 0; i < map->line_count; i++)
        if (map->lines[i].part == part)
            return map->lines[i].family;
    return SPZ_FAMILY_UNKNOWN;
}
