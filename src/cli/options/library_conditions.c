#include "cli/options/library_conditions.h"
#include "cli/messages.h"
#include <stdlib.h>
#include <string.h>

const Option option_between = {"between", 0, "SECTIONS", "passages between these two, such as 'Vn I, Vn II'; 'Vn II > Vn I': the first\n"
                                                          "                              leads; one alone: it has a part in it"};
const Option option_composer = {"composer", 0, "NAME", "works whose composer has this in the name"};
const Option option_titled = {"titled", 0, "WORDS", "movements that have this in the name of work or movement"};
const Option option_from = {"from", 0, "YEAR", "composed in this year or later"};
const Option option_before = {"before", 0, "YEAR", "composed before this year"};
const Option option_players = {"players", 0, "N-N-N-N-N", "works that so many Vn I, Vn II, Va, Vc, Db can play: 8-7-6-4-3; 0: any number"};
const Option option_too_large = {"too-large", 0, NULL, "instead: works that these can't play; without --players, the house's"};
const Option option_lasts = {"lasts", 0, "A..B", "works that last from A to B minutes; either may be left out"};
const Option option_at = {"at", 0, "INTERVAL", "answers at this interval: unison, second .. octave"};
const Option option_two_orchestras = {"two-orchestras", 0, NULL, "works for two orchestras"};
const Option option_thirds = {"violins-in-three", 0, NULL, "works with violins in three sections"};
const Option option_recommended = {"recommended", 0, "SEATING", "movements whose recommended seating is this, or has these words: 'violins opposed'"};

static bool read_section(const char *text, size_t length, spz_section *section)
{
    char name[32];
    while (length && text[0] == ' ')
        text++, length--;
    while (length && text[length - 1] == ' ')
        length--;
    if (length >= sizeof name)
        return false;
    memcpy(name, text, length);
    name[length] = '\0';
    *section = spz_section_from_name(name);
    return *section != SPZ_NO_SECTION;
}

static bool read_between(const Arguments *arguments, spz_conditions *out)
{
    const char *value = arguments_value(arguments, &option_between, NULL);
    if (!value)
        return true;
    size_t length = strcspn(value, ",>");
    out->led = value[length] == '>';
    if (read_section(value, length, &out->between[0]) && (!value[length] || read_section(value + length + 1, strlen(value + length + 1), &out->between[1])))
        return true;
    complain_usage("library", "--between %s: it is one or two of Vn I, Vn II, Vn III, Va, Vc, Db, Violins, Strings, Winds, with ',' or '>' between", value);
    return false;
}

/* A whole number of at most six digits; 0 where the text is empty. `*end` is behind it. */
static bool read_whole(const char *text, char **end, int *number)
{
    *end = (char *)text + strspn(text, "0123456789");
    *number = *end > text ? (int)strtol(text, NULL, 10) : 0;
    return *end - text <= 6;
}

static bool read_lasts(const Arguments *arguments, spz_conditions *out)
{
    const char *value = arguments_value(arguments, &option_lasts, NULL), *dots = value ? strstr(value, "..") : NULL;
    if (!value)
        return true;
    char *end;
    int least, most;
    if (dots && strlen(value) > 2 && read_whole(value, &end, &least) && end == dots && read_whole(dots + 2, &end, &most) && !*end) {
        out->shortest = least;
        out->longest = most;
        return true;
    }
    complain_usage("library", "--lasts %s: it is a length in minutes, such as ..20, 10..20 or 30..", value);
    return false;
}

static bool split_players(const char *text, int players[SPZ_SHELF_SECTIONS])
{
    for (int i = 0; i < SPZ_SHELF_SECTIONS; i++) {
        char *end;
        if (!read_whole(text, &end, &players[i]) || end == text || *end != (i + 1 < SPZ_SHELF_SECTIONS ? '-' : '\0'))
            return false;
        text = end + 1;
    }
    return true;
}

static bool read_players(const Arguments *arguments, const spz_settings *settings, spz_conditions *out)
{
    static const char *const names[SPZ_SHELF_SECTIONS] = {"players.first violins", "players.second violins", "players.violas", "players.cellos", "players.basses"};
    const char *value = arguments_value(arguments, &option_players, NULL);
    out->too_large = arguments_have(arguments, &option_too_large);
    if (!value) {
        for (int i = 0; i < SPZ_SHELF_SECTIONS && out->too_large; i++)
            out->players[i] = (int)spz_settings_number(settings, names[i]);
        return true;
    }
    if (split_players(value, out->players)) {
        for (int i = 0; i < SPZ_SHELF_SECTIONS; i++)
            if (out->players[i])
                return true;
        complain_usage("library", "--players %s: nobody would play; where a section may be as large as you like, its number is 0, but not of all", value);
        return false;
    }
    complain_usage("library", "--players %s: it is the players of Vn I, Vn II, Va, Vc, Db, such as 8-7-6-4-3", value);
    return false;
}

static bool read_interval(const Arguments *arguments, spz_conditions *out)
{
    const char *value = arguments_value(arguments, &option_at, NULL);
    if (!value || spz_interval_from_name(value, &out->interval))
        return true;
    complain_usage("library", "--at %s: it is unison, second, third, fourth, fifth, sixth, seventh or octave", value);
    return false;
}

bool library_conditions(const Arguments *arguments, const spz_settings *settings, spz_conditions *out)
{
    *out = (spz_conditions){.composer = arguments_value(arguments, &option_composer, NULL), .title = arguments_value(arguments, &option_titled, NULL),
                            .two_orchestras = arguments_have(arguments, &option_two_orchestras), .thirds = arguments_have(arguments, &option_thirds),
                            .seating = arguments_value(arguments, &option_recommended, NULL)};
    return arguments_kinds(arguments, &out->kinds) && arguments_strength(arguments, &out->strength) &&
           arguments_whole(arguments, &option_from, 1000, 2100, &out->from) && arguments_whole(arguments, &option_before, 1000, 2100, &out->before) &&
           read_between(arguments, out) && read_lasts(arguments, out) && read_players(arguments, settings, out) && read_interval(arguments, out);
}
