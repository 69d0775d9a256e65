#include "analysis/antiphony/sides.h"

static unsigned violins_in(const SectionMap *map, uint64_t melodies)
{
    unsigned found = 0;
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if ((melodies >> i & 1) && section_is_violin(map->groups[i].about.section) && !map->groups[i].about.solo)
            found++;
    return found;
}

static bool has(const SectionMap *map, uint64_t melodies, spz_section section)
{
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if ((melodies >> i & 1) && map->groups[i].about.section == section)
            return true;
    return false;
}

static size_t groups_of_section(const SectionMap *map, uint64_t melodies, spz_section section)
{
    size_t found = 0;
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        found += (melodies >> i & 1) && map->groups[i].about.section == section;
    return found;
}

/* The violins lead when they are all there; else the highest violin section; else the cellos, with or without basses, as they answer
 * the violins from below; else whoever speaks. */
static spz_section name_of(const SectionMap *map, uint64_t melodies, spz_section principal)
{
    if (section_is_violin(principal) && violins_in(map, melodies) >= 2)
        return SPZ_VIOLINS;
    if (section_is_violin(principal))
        return principal;
    spz_section all[] = {SPZ_VN1, SPZ_VN2, SPZ_VN3};
    if (violins_in(map, melodies) >= 2)
        return SPZ_VIOLINS;
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        if (has(map, melodies, all[i]))
            return all[i];
    return has(map, melodies, SPZ_VC) ? SPZ_VC : principal;
}

static int orchestra_of(const SectionMap *map, uint64_t melodies)
{
    int orchestra = -1;
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if (melodies >> i & 1)
            orchestra = orchestra < 0 || orchestra == map->groups[i].about.orchestra ? map->groups[i].about.orchestra : 0;
    return orchestra;
}

static void name_side(const SectionMap *map, size_t principal, Side *side)
{
    side->section = name_of(map, side->melodies, map->groups[principal].about.section);
    bool single = groups_of_section(map, side->melodies, map->groups[principal].about.section) == 1 &&
                  side->section == map->groups[principal].about.section;
    side->group = single ? principal : SIZE_MAX;
    side->orchestra = orchestra_of(map, side->melodies);
}

void sides_of(const SectionMap *map, const Match *match, const Evidence *evidence, Side sides[2])
{
    uint64_t caller = (uint64_t)1 << match->caller, responder = (uint64_t)1 << match->responder;
    uint64_t calls = evidence->with_caller & ~responder, answers = evidence->with_responder & ~caller;
    uint64_t both = calls & answers;
    sides[0].melodies = (calls & ~both) | caller;
    sides[1].melodies = (answers & ~both) | responder;
    name_side(map, match->caller, &sides[0]);
    name_side(map, match->responder, &sides[1]);
    spz_section own[] = {map->groups[match->caller].about.section, map->groups[match->responder].about.section};
    if (sides[0].section == sides[1].section && own[0] != own[1]) /* basses against cellos */
        for (int i = 0; i < 2; i++) {
            sides[i].section = own[i];
            sides[i].group = i == 0 ? match->caller : match->responder;
        }
}

/* Who speaks on a side, as far as it tells pairs apart: section and orchestra, and the group where both sides are of one section. */
static uint64_t side_key(const Side *side, bool by_group)
{
    return (uint64_t)side->section << 24 | (uint64_t)side->orchestra << 16 | (by_group ? side->group + 1 : 0);
}

uint64_t sides_pair_key(const Side sides[2])
{
    bool by_group = sides[0].section == sides[1].section;
    uint64_t a = side_key(&sides[0], by_group), b = side_key(&sides[1], by_group);
    return a > b ? b << 32 | a : a << 32 | b;
}
