#include "sound/cast.h"
#include "support/text/ascii.h"
#include <math.h>
#include <string.h>

/* How instruments send out what lies high: a violin radiates its upper partials mainly off its top plate, cellos and basses likewise to the front;
 * brass and woodwind along the bell (Meyer, Acoustics and the Performance of Music; the figures in dB, front against back from about 1 kHz on, from memory). */
static const struct Beams {
    double violins, violas, low_strings, woodwind, brass;
} beams = {9, 8, 8, 5, 14};

static const struct Platform {
    double instrument;   /* metres above the floor */
    double first_row, row, step, rise; /* behind the strings' depth; from row to row; from part to part; upward */
} platform = {1.1, 1, 1.6, 1.6, 0.3};

static bool add(Cast *cast, Member member)
{
    return cast->count >= CAST_LIMIT || array_push(cast, member);
}

static bool add_desks(Cast *cast, const spz_plan *plan)
{
    bool room = true;
    for (size_t i = 0; i < spz_plan_desks(plan) && room; i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        room = add(cast, (Member){.kind = MEMBER_DESK, .section = desk->section, .orchestra = desk->orchestra, .number = desk->number, .players = desk->players});
    }
    return room;
}

static bool sits(const Cast *cast, const spz_group *about)
{
    for (size_t i = 0; i < cast->count; i++)
        if (cast->at[i].kind == MEMBER_DESK && cast->at[i].section == about->section && (!cast->at[i].orchestra || cast->at[i].orchestra == about->orchestra))
            return true;
    return false;
}

/* Also a section that has no desks on this stage is heard, as one player. */
static bool add_soloists(Cast *cast, const SectionMap *map)
{
    bool room = true;
    for (size_t i = 0; i < map->group_count && room; i++) {
        const spz_group *about = &map->groups[i].about;
        if (about->solo || !sits(cast, about))
            room = add(cast, (Member){.kind = MEMBER_SOLOIST, .section = about->section, .orchestra = about->orchestra, .number = 1, .players = 1, .group = i});
    }
    return room;
}

static bool add_others(Cast *cast, const SectionMap *map)
{
    bool room = true;
    for (size_t part = 0; part < map->movement->part_count && room; part++) {
        bool sounds = false;
        for (size_t i = 0; i < map->other_count && !sounds; i++)
            sounds = map->others[i].part == part;
        if (sounds)
            room = add(cast, (Member){.kind = MEMBER_OTHER, .players = 1, .part = part});
    }
    return room;
}

spz_status cast_make(const SectionMap *map, const spz_plan *plan, Cast *out)
{
    *out = (Cast){0};
    return add_desks(out, plan) && add_soloists(out, map) && add_others(out, map) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* A violin's top looks up and to its player's right; a cello's to the front; its player looks at the podium. */
static Place top_of(spz_section section, Place at)
{
    double far = hypot(at.x, at.y);
    double ahead_x = far > 0 ? -at.x / far : 0, ahead_y = far > 0 ? -at.y / far : -1;
    const double half = 0.70710678118654752;
    if (section == SPZ_VC || section == SPZ_DB)
        return (Place){ahead_x, ahead_y, 0};
    return (Place){half * ahead_y, half * -ahead_x, half};
}

static double beam_of(spz_section section)
{
    return section_is_violin(section) ? beams.violins : section == SPZ_VA ? beams.violas : beams.low_strings;
}

static Source at_desk(const spz_stage_desk *desk)
{
    Place at = {desk->x, desk->y, desk->z + platform.instrument};
    return (Source){at, top_of(desk->section, at), beam_of(desk->section)};
}

/* The desk of that number; else the first of the section; else the middle of the stage. */
static Source string_source(const Member *member, const spz_plan *plan)
{
    const spz_stage_desk *found = NULL;
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        bool own = desk->section == member->section && (!member->orchestra || !desk->orchestra || desk->orchestra == member->orchestra);
        if (own && (!found || desk->number == member->number))
            found = desk;
    }
    spz_stage_desk middle = {.section = member->section, .y = 3};
    return at_desk(found ? found : &middle);
}

static int row_of(spz_family family)
{
    return family == SPZ_FAMILY_BRASS ? 1 : family == SPZ_FAMILY_PERCUSSION ? 2 : family == SPZ_FAMILY_VOICES ? 3 : 0;
}

static Source other_source(const Cast *cast, size_t index, const SectionMap *map, double first_row)
{
    spz_family family = section_map_family(map, cast->at[index].part);
    int row = row_of(family), before = 0, all = 0;
    for (size_t i = 0; i < cast->count; i++)
        if (cast->at[i].kind == MEMBER_OTHER && row_of(section_map_family(map, cast->at[i].part)) == row) {
            before += i < index;
            all++;
        }
    double step = fmin(platform.step, 14.0 / all);
    Place at = {(before - (all - 1) / 2.0) * step, first_row + row * platform.row, platform.instrument + platform.rise * row};
    double beam = family == SPZ_FAMILY_BRASS ? beams.brass : family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_VOICES ? beams.woodwind : 0;
    return (Source){at, {0, -1, 0}, beam};
}

void cast_place(const Cast *cast, const SectionMap *map, const spz_plan *plan, Source *out)
{
    double first_row = spz_plan_stage_depth(plan) - spz_plan_front(plan) + platform.first_row;
    for (size_t i = 0; i < cast->count; i++)
        out[i] = cast->at[i].kind == MEMBER_OTHER ? other_source(cast, i, map, first_row) : string_source(&cast->at[i], plan);
}

uint8_t cast_program_of_section(spz_section section)
{
    return section == SPZ_VA ? 41 : section == SPZ_VC ? 42 : section == SPZ_DB ? 43 : 40;
}

/* General MIDI level 1 (MIDI Manufacturers Association): words of MusicXML sound ids and of names, and the program less one. */
static const struct Instrument {
    const char *word;
    uint8_t program;
} instruments[] = {
    {"piccolo", 72}, {"english-horn", 69}, {"flute", 73}, {"flaut", 73}, {"oboe", 68}, {"clarinet", 71}, {"bassoon", 70}, {"fagott", 70},
    {"trumpet", 56}, {"tromba", 56}, {"trombon", 57}, {"posaun", 57}, {"tuba", 58}, {"horn", 60}, {"corn", 60}, {"timpani", 47}, {"pauk", 47},
    {"harpsichord", 6}, {"cembalo", 6}, {"harp", 46}, {"organ", 19}, {"celesta", 8}, {"glocken", 9}, {"piano", 0},
};

static const uint8_t by_family[SPZ_FAMILY_COUNT] = {
    [SPZ_FAMILY_UNKNOWN] = 48, [SPZ_FAMILY_STRINGS] = 48, [SPZ_FAMILY_WOODWIND] = 73, [SPZ_FAMILY_BRASS] = 60, [SPZ_FAMILY_PERCUSSION] = 47,
    [SPZ_FAMILY_KEYBOARD] = 6, [SPZ_FAMILY_PLUCKED] = 46, [SPZ_FAMILY_VOICES] = 52,
};

static bool names(const char *text, const char *word)
{
    size_t length = strlen(word);
    for (; *text; text++) {
        size_t i = 0;
        while (i < length && text[i] && ascii_lower((unsigned char)text[i]) == word[i])
            i++;
        if (i == length)
            return true;
    }
    return false;
}

uint8_t cast_program_of_part(const SectionMap *map, size_t index)
{
    const Part *part = &map->movement->parts[index];
    for (int clue = 0; clue < 2; clue++)
        for (size_t i = 0; i < sizeof instruments / sizeof instruments[0]; i++)
            if (names(clue ? part->name : part->sound, instruments[i].word))
                return instruments[i].program;
    if (part->midi_program > 0 && part->midi_program <= 128)
        return (uint8_t)(part->midi_program - 1);
    return by_family[section_map_family(map, index)];
}
