#include "analysis/passages/passage_facts.h"
#include <string.h>

const spz_side no_side = {.section = SPZ_NO_SECTION, .group = SIZE_MAX};

const char *spz_kind_name(spz_kind kind)
{
    static const char *const names[SPZ_KIND_COUNT] = {
        [SPZ_EXCHANGE] = "exchange", [SPZ_HOCKET] = "hocket", [SPZ_SPLIT_LINE] = "split-line", [SPZ_IMITATION] = "imitation",
        [SPZ_DIV2] = "div2",         [SPZ_DIV3] = "div3",     [SPZ_COUPLING] = "coupling",
    };
    return (unsigned)kind < SPZ_KIND_COUNT ? names[kind] : "";
}

bool spz_kind_from_name(const char *name, spz_kind *out)
{
    for (int kind = 0; name && kind < SPZ_KIND_COUNT; kind++)
        if (!strcmp(name, spz_kind_name((spz_kind)kind))) {
            *out = (spz_kind)kind;
            return true;
        }
    return false;
}

bool spz_kind_is_antiphony(spz_kind kind)
{
    return kind == SPZ_EXCHANGE || kind == SPZ_HOCKET || kind == SPZ_SPLIT_LINE || kind == SPZ_IMITATION;
}

spz_weight spz_weight_of(double strength)
{
    return strength < 0.5 ? SPZ_MARGINAL : strength < 0.8 ? SPZ_CLEAR : SPZ_STRIKING;
}

const char *spz_weight_name(spz_weight weight)
{
    static const char *const names[SPZ_WEIGHT_COUNT] = {"marginal", "clear", "striking"};
    return (unsigned)weight < SPZ_WEIGHT_COUNT ? names[weight] : "";
}

spz_fraction beat_of(const Movement *movement, Ticks when)
{
    Ticks beat, at = movement_beat_at(movement, when, &beat);
    return fraction_of(at, beat);
}

spz_side side_of_group(const SectionMap *map, size_t group)
{
    const spz_group *about = &map->groups[group].about;
    return (spz_side){.section = about->section, .group = group, .orchestra = about->orchestra, .players = players_of_group(group)};
}

static bool is_tutti_violin(const spz_group *about)
{
    return section_is_violin(about->section) && !about->solo;
}

/* All groups of one kind: every violin group, or every part of a section written in several. */
static spz_players whole_family(const SectionMap *map, const spz_group *about)
{
    spz_players set = 0;
    for (size_t g = 0; g < map->group_count && g < 63; g++) {
        const spz_group *other = &map->groups[g].about;
        bool same = other->orchestra == about->orchestra &&
                    (is_tutti_violin(about) ? is_tutti_violin(other) : other->section == about->section && other->solo == about->solo);
        set |= same ? players_of_group(g) : 0;
    }
    return set;
}

size_t spz_players_named(const spz_sections *sections, spz_players players, spz_group *out, size_t most)
{
    size_t count = 0;
    for (size_t g = 0; g < sections->group_count && g < 63; g++) {
        if (!(players >> g & 1))
            continue;
        spz_group body = sections->groups[g].about;
        spz_players family = whole_family(sections, &body);
        if ((family & (family - 1)) && (players & family) == family) {
            body.section = is_tutti_violin(&body) ? SPZ_VIOLINS : body.section;
            body.number = 0;
            body.name = NULL;
            players &= ~family;
        }
        if (count < most)
            out[count] = body;
        count++;
    }
    if (players & SPZ_WIND_PLAYERS) {
        if (count < most)
            out[count] = (spz_group){.section = SPZ_WINDS, .name = spz_section_name(SPZ_WINDS)};
        count++;
    }
    return count < most ? count : most;
}

spz_group spz_side_named(const spz_sections *sections, const spz_side *side)
{
    if (side->group < sections->group_count)
        return sections->groups[side->group].about;
    return (spz_group){.section = side->section, .orchestra = side->orchestra, .single = sections->chamber_music};
}
