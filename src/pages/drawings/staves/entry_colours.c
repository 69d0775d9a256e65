#include "pages/drawings/staves/entry_colours.h"

/* Those of drawings.css. */
static const char *const of_violins[SPZ_SECTION_COUNT] = {[SPZ_VN1] = "#184f7e", [SPZ_VN2] = "#9f5913", [SPZ_VN3] = "#9f5913"};

static bool is_of_entry(const spz_passage *passage, const GroupSound *sound, spz_players players)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].players & players && sound->onset >= passage->entries[i].onset && sound->onset < passage->entries[i].end)
            return true;
    return false;
}

const char *entry_colour(const void *context, size_t part, uint32_t line)
{
    const EntryColours *colours = context;
    const spz_passage *passage = colours->passage;
    spz_ticks from = colours->map->movement->bars[passage->first].onset;
    for (size_t g = 0; g < colours->map->group_count && g < 63; g++) {
        const Group *group = &colours->map->groups[g];
        for (size_t i = group_sound_at(group, from); i < group->sound_count && group->sounds[i].onset < passage->end; i++) {
            const GroupSound *sound = &group->sounds[i];
            if (sound->part != part || sound->note->line != line)
                continue;
            const char *own = of_violins[group->about.section];
            return !is_of_entry(passage, sound, (spz_players)1 << g) ? NULL : own ? own : colours->lower;
        }
    }
    for (size_t i = 0; i < colours->map->other_count && colours->map->others[i].onset < passage->end; i++) {
        const GroupSound *sound = &colours->map->others[i];
        if (sound->part == part && sound->note->line == line)
            return is_of_entry(passage, sound, SPZ_WIND_PLAYERS) ? colours->lower : NULL;
    }
    return NULL;
}
