#include "analysis/antiphony/chaining/sides.h"

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

/* Of the violins only those name the side that have the line themselves, in unison or in parallel: the others share its rhythm. */
static uint64_t without_idle_violins(const SectionMap *map, uint64_t melodies, uint64_t speakers)
{
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if (section_is_violin(map->groups[i].about.section) && !(speakers >> i & 1))
            melodies &= ~((uint64_t)1 << i);
    return melodies;
}

void side_name(const SectionMap *map, size_t principal, uint64_t speakers, Side *side)
{
    side->section = name_of(map, without_idle_violins(map, side->melodies, speakers), map->groups[principal].about.section);
    bool single = groups_of_section(map, side->melodies, map->groups[principal].about.section) == 1 &&
                  side->section == map->groups[principal].about.section;
    side->group = single ? principal : SIZE_MAX;
    side->orchestra = orchestra_of(map, side->melodies);
}

/* Whom violas double: the only violin section among them, or the cellos where there is no violin; themselves where it is neither. */
static spz_section doubled_by_violas(const SectionMap *map, uint64_t company)
{
    for (size_t i = 0; violins_in(map, company) == 1 && i < map->group_count && i < 64; i++)
        if ((company >> i & 1) && section_is_violin(map->groups[i].about.section) && !map->groups[i].about.solo)
            return map->groups[i].about.section;
    return violins_in(map, company) == 0 && has(map, company, SPZ_VC) ? SPZ_VC : SPZ_VA;
}

void side_join_company(const SectionMap *map, uint64_t company, const Side *other, Side *side)
{
    spz_section name = side->section == SPZ_VA ? doubled_by_violas(map, company) : SPZ_VA;
    if (name == SPZ_VA || name == other->section || (other->section == SPZ_VIOLINS && section_is_violin(name)))
        return;
    side->section = name;
    side->group = SIZE_MAX;
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if ((company >> i & 1) && (map->groups[i].about.section == name || (name == SPZ_VC && map->groups[i].about.section == SPZ_DB))) {
            side->melodies |= (uint64_t)1 << i;
            side->group = section_is_violin(name) ? i : SIZE_MAX;
        }
}

/* Unison goes before rhythm: who has the pitches of one side stands there, even where it shares the rhythm of both, as octave doublings of
 * the caller do in imitation. */
void sides_of(const SectionMap *map, const Match *match, const Evidence *evidence, Side sides[2])
{
    const size_t principal[] = {match->caller, match->responder};
    const uint64_t own[] = {(uint64_t)1 << match->caller, (uint64_t)1 << match->responder};
    uint64_t in_both = evidence->with[0].rhythm & evidence->with[1].rhythm;
    uint64_t torn = evidence->with[0].unison & evidence->with[1].unison;
    for (int i = 0; i < 2; i++) {
        uint64_t unison = evidence->with[i].unison & ~torn & ~own[!i], elsewhere = evidence->with[!i].unison & ~torn;
        sides[i].melodies = (evidence->with[i].rhythm & ~in_both & ~own[!i] & ~elsewhere) | unison | own[i];
        side_name(map, principal[i], unison | evidence->with[i].parallel | own[i], &sides[i]);
    }
    spz_section sections[] = {map->groups[match->caller].about.section, map->groups[match->responder].about.section};
    bool same = sides[0].section == sides[1].section && sections[0] != sections[1];
    for (int i = 0; same && i < 2; i++) { /* basses against cellos */
        sides[i].section = sections[i];
        sides[i].group = principal[i];
    }
}

static bool bears_name(const spz_group *about, spz_section name)
{
    return about->section == name || (name == SPZ_VIOLINS && section_is_violin(about->section));
}

bool side_named_after(const SectionMap *map, const Side *side, uint64_t melodies)
{
    for (size_t i = 0; i < map->group_count && i < 64; i++)
        if ((melodies >> i & 1) && (side->group == SIZE_MAX ? bears_name(&map->groups[i].about, side->section) : side->group == i))
            return true;
    return false;
}

size_t side_voice(const SectionMap *map, const Side *side, size_t principal)
{
    size_t voice = principal;
    for (size_t i = map->group_count < 64 ? map->group_count : 64; i-- > 0 && !bears_name(&map->groups[principal].about, side->section);)
        if ((side->melodies >> i & 1) && bears_name(&map->groups[i].about, side->section))
            voice = i;
    return voice;
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
