#include "analysis/division/divisi_soloists.h"
#include "sections/names/division_marks.h"
#include <string.h>

static bool names_soloists(const Part *part)
{
    for (size_t i = 0; i < part->direction_count; i++) {
        DivisionWords words;
        if (part->directions[i].kind == DIRECTION_WORDS && division_words_read(part->directions[i].text, &words) && words.players > 1)
            return true;
    }
    return false;
}

static const Group *soloists_of(const SectionMap *map, const Group *group)
{
    for (size_t i = 0; i < map->group_count; i++) {
        const Group *other = &map->groups[i];
        bool same = other->about.section == group->about.section && other->about.orchestra == group->about.orchestra;
        if (!same || !other->about.solo)
            continue;
        for (size_t k = 0; k < other->line_count; k++)
            if (names_soloists(&map->movement->parts[map->lines[other->lines[k]].part]))
                return other;
    }
    return NULL;
}

static bool sounds_before(const GroupSound *a, const GroupSound *b)
{
    return a->onset != b->onset ? a->onset < b->onset : a->note->midi >= b->note->midi;
}

static void merge_sounds(const Group *a, const Group *b, GroupSound *out)
{
    size_t i = 0, j = 0;
    while (i < a->sound_count || j < b->sound_count) {
        bool takes_a = j == b->sound_count || (i < a->sound_count && sounds_before(&a->sounds[i], &b->sounds[j]));
        *out++ = takes_a ? a->sounds[i++] : b->sounds[j++];
    }
}

/* The section with its soloists as one group; its arrays are the arena's. */
static bool merge_groups(const Group *group, const Group *soloists, Arena *arena, Group *out)
{
    *out = *group;
    out->sound_count = group->sound_count + soloists->sound_count;
    out->line_count = group->line_count + soloists->line_count;
    out->sounds = arena_take(arena, out->sound_count, sizeof *out->sounds);
    out->lines = arena_take(arena, out->line_count, sizeof *out->lines);
    if (!out->sounds || !out->lines)
        return false;
    merge_sounds(group, soloists, out->sounds);
    memcpy(out->lines, group->lines, group->line_count * sizeof *out->lines);
    memcpy(out->lines + group->line_count, soloists->lines, soloists->line_count * sizeof *out->lines);
    return true;
}

spz_status divisi_with_soloists(const SectionMap *map, const Group *group, BarWriting *bars)
{
    const Group *soloists = soloists_of(map, group);
    Group merged;
    Arena work;
    BarWriting *together = NULL;
    if (!soloists)
        return SPZ_OK;
    arena_init(&work);
    spz_status status = SPZ_NO_MEMORY;
    if (merge_groups(group, soloists, &work, &merged))
        status = divisi_writing_of(map, &merged, &together);
    for (size_t i = 0; i < map->movement->bar_count && !status; i++)
        if (together[i].soloists > 1)
            bars[i] = together[i];
    memory_free(together);
    arena_release(&work);
    return status;
}
