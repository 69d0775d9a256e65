/* Names for sections, families and roles, as reports print them. */
#include "spezzato/sections.h"
#include <string.h>

static const struct { const char *name, *words; } sections[SPZ_SECTION_COUNT] = {
    [SPZ_NO_SECTION] = { "", "" },
    [SPZ_VN1] = { "Vn I", "first violins" },
    [SPZ_VN2] = { "Vn II", "second violins" },
    [SPZ_VN3] = { "Vn III", "third violins" },
    [SPZ_VA] = { "Va", "violas" },
    [SPZ_VC] = { "Vc", "cellos" },
    [SPZ_DB] = { "Db", "basses" },
    [SPZ_VIOLINS] = { "Violins", "violins" },
    [SPZ_STRINGS] = { "Strings", "strings" },
    [SPZ_WINDS] = { "Winds", "winds" },
};

static const char *const families[SPZ_FAMILY_COUNT] = {
    [SPZ_FAMILY_UNKNOWN] = "not known", [SPZ_FAMILY_STRINGS] = "strings", [SPZ_FAMILY_WOODWIND] = "woodwind",
    [SPZ_FAMILY_BRASS] = "brass", [SPZ_FAMILY_PERCUSSION] = "percussion", [SPZ_FAMILY_KEYBOARD] = "keyboard",
    [SPZ_FAMILY_PLUCKED] = "plucked", [SPZ_FAMILY_VOICES] = "voices",
};

static const char *const roles[SPZ_ROLE_COUNT] = {
    [SPZ_TUTTI] = "tutti", [SPZ_DESK] = "desk", [SPZ_SOLO] = "solo", [SPZ_CONTINUO] = "continuo",
};

static bool known(int value, int count)
{
    return value >= 0 && value < count;
}

const char *spz_section_name(spz_section section)
{
    return known((int)section, SPZ_SECTION_COUNT) ? sections[section].name : "";
}

const char *spz_section_words(spz_section section)
{
    return known((int)section, SPZ_SECTION_COUNT) ? sections[section].words : "";
}

spz_section spz_section_from_name(const char *name)
{
    for (int i = 1; i < SPZ_SECTION_COUNT; i++)
        if (strcmp(name, sections[i].name) == 0)
            return (spz_section)i;
    return SPZ_NO_SECTION;
}

const char *spz_family_name(spz_family family)
{
    return families[known((int)family, SPZ_FAMILY_COUNT) ? family : SPZ_FAMILY_UNKNOWN];
}

const char *spz_role_name(spz_role role)
{
    return known((int)role, SPZ_ROLE_COUNT) ? roles[role] : "";
}
