#include "analysis/division/sharing_habits.h"
#include <stdio.h>
#include <string.h>

/* Sections as [players] and [divisi] of the settings name them. */
static const struct {
    spz_section section;
    const char *name;
    int usual; /* players */
} sections[] = {
    {SPZ_VN1, "first violins", 14}, {SPZ_VN2, "second violins", 12}, {SPZ_VN3, "third violins", 0}, {SPZ_VA, "violas", 10}, {SPZ_VC, "cellos", 8}, {SPZ_DB, "basses", 6},
};
enum { SECTIONS = sizeof sections / sizeof *sections, NAME_MOST = 40 };

static const char *setting_name(const char *group, const char *key, char name[NAME_MOST])
{
    snprintf(name, NAME_MOST, "%s.%s", group, key);
    return name;
}

const char *spz_sharing_name(spz_sharing sharing)
{
    static const char *const words[SPZ_SHARING_COUNT] = {
        "as usual", "outside and inside", "by desk", "by desk and side", "in blocks", "by player",
    };
    return (unsigned)sharing < SPZ_SHARING_COUNT ? words[sharing] : "";
}

int spz_section_players(const spz_settings *settings, spz_section section)
{
    int players = 0;
    char name[NAME_MOST];
    for (size_t i = 0; i < SECTIONS; i++) {
        bool wanted = sections[i].section == section || (section == SPZ_VIOLINS && sections[i].section <= SPZ_VN3);
        if (wanted)
            players += settings ? (int)spz_settings_number(settings, setting_name("players", sections[i].name, name)) : sections[i].usual;
    }
    return players;
}

int spz_orchestra_players(const spz_settings *settings, spz_section section, int orchestra)
{
    int players = 0;
    if (section == SPZ_VIOLINS && orchestra > 0)
        for (int violins = SPZ_VN1; violins <= SPZ_VN3; violins++)
            players += spz_orchestra_players(settings, (spz_section)violins, orchestra);
    else
        players = spz_section_players(settings, section);
    return section == SPZ_VIOLINS || orchestra <= 0 ? players : (players + (orchestra == 1)) / 2;
}

spz_sharing sharing_usual(int lines)
{
    return lines <= 2 ? SPZ_SHARE_BY_SIDE : lines % 2 ? SPZ_SHARE_BY_DESK : SPZ_SHARE_BY_DESK_AND_SIDE;
}

bool sharing_fits(spz_sharing sharing, int lines)
{
    switch (sharing) {
    case SPZ_SHARE_BY_SIDE: return lines <= 2;
    case SPZ_SHARE_BY_DESK_AND_SIDE: return lines % 2 == 0;
    case SPZ_SHARE_BY_DESK:
    case SPZ_SHARE_BY_PLAYER:
    case SPZ_SHARE_IN_BLOCKS: return true;
    default: return false;
    }
}

/* SPZ_SHARE_USUAL for a word that names none. */
static spz_sharing sharing_set(const spz_settings *settings, const char *key)
{
    char name[NAME_MOST];
    const char *word = spz_settings_text(settings, setting_name("divisi", key, name));
    for (int sharing = SPZ_SHARE_USUAL + 1; sharing < SPZ_SHARING_COUNT; sharing++)
        if (strcmp(word, spz_sharing_name((spz_sharing)sharing)) == 0)
            return (spz_sharing)sharing;
    return SPZ_SHARE_USUAL;
}

spz_sharing spz_sharing_habit(const spz_settings *settings, spz_section section, int lines)
{
    spz_sharing habit = SPZ_SHARE_USUAL;
    if (!settings)
        return sharing_usual(lines);
    for (size_t i = 0; i < SECTIONS; i++)
        if (sections[i].section == section)
            habit = sharing_set(settings, sections[i].name);
    if (!sharing_fits(habit, lines))
        habit = sharing_set(settings, lines <= 2 ? "in two" : lines % 2 ? "in three" : "in four");
    return sharing_fits(habit, lines) ? habit : sharing_usual(lines);
}
