/* Which instruments a score asks for besides its strings, and how many players. Names of instruments in the five languages as the scores
 * of the trade print them (common practice); which family a part is has been told by its whole name before. */
#include "sections/names/name_tokens.h"
#include "sections/section_map.h"
#include "spezzato/laying.h"
#include <string.h>

enum { PLAYERS_MOST = 12 };

static const struct Beginning { /* of a word, folded */
    const char *text;
    spz_family family;
    spz_instrument instrument;
} beginnings[] = {
    {"fl", SPZ_FAMILY_WOODWIND, SPZ_FLUTES},          {"picc", SPZ_FAMILY_WOODWIND, SPZ_FLUTES},      {"ottavino", SPZ_FAMILY_WOODWIND, SPZ_FLUTES},
    {"ob", SPZ_FAMILY_WOODWIND, SPZ_OBOES},           {"hautb", SPZ_FAMILY_WOODWIND, SPZ_OBOES},      {"engl", SPZ_FAMILY_WOODWIND, SPZ_OBOES},
    {"angl", SPZ_FAMILY_WOODWIND, SPZ_OBOES},         {"ingl", SPZ_FAMILY_WOODWIND, SPZ_OBOES},       {"cl", SPZ_FAMILY_WOODWIND, SPZ_CLARINETS},
    {"kl", SPZ_FAMILY_WOODWIND, SPZ_CLARINETS},       {"basset", SPZ_FAMILY_WOODWIND, SPZ_CLARINETS}, {"basskl", SPZ_FAMILY_WOODWIND, SPZ_CLARINETS},
    {"fag", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},       {"basson", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},  {"bassoon", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},
    {"bsn", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},       {"bn", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},      {"contrafag", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},
    {"kontrafag", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS}, {"controfag", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS}, {"contrebasson", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS},
    {"contrabassoon", SPZ_FAMILY_WOODWIND, SPZ_BASSOONS}, {"cornet", SPZ_FAMILY_BRASS, SPZ_TRUMPETS}, {"kornett", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},
    {"cor", SPZ_FAMILY_BRASS, SPZ_HORNS},             {"horn", SPZ_FAMILY_BRASS, SPZ_HORNS},          {"hn", SPZ_FAMILY_BRASS, SPZ_HORNS},
    {"hr", SPZ_FAMILY_BRASS, SPZ_HORNS},              {"waldhorn", SPZ_FAMILY_BRASS, SPZ_HORNS},      {"tromb", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},
    {"trombon", SPZ_FAMILY_BRASS, SPZ_TROMBONES},     {"tbn", SPZ_FAMILY_BRASS, SPZ_TROMBONES},       {"trb", SPZ_FAMILY_BRASS, SPZ_TROMBONES},
    {"pos", SPZ_FAMILY_BRASS, SPZ_TROMBONES},         {"trump", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},      {"tromp", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},
    {"tpt", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},          {"trp", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},        {"tr", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},
    {"clarin", SPZ_FAMILY_BRASS, SPZ_TRUMPETS},       {"timp", SPZ_FAMILY_PERCUSSION, SPZ_TIMPANI},   {"pauk", SPZ_FAMILY_PERCUSSION, SPZ_TIMPANI},
    {"pk", SPZ_FAMILY_PERCUSSION, SPZ_TIMPANI},       {"timbal", SPZ_FAMILY_PERCUSSION, SPZ_TIMPANI}, {"kettle", SPZ_FAMILY_PERCUSSION, SPZ_TIMPANI},
};

const char *spz_instrument_name(spz_instrument instrument)
{
    static const char *const names[SPZ_INSTRUMENT_COUNT] = {"flutes", "oboes", "clarinets", "bassoons", "other woodwind", "horns", "trumpets", "trombones",
                                                            "low brass", "timpani", "percussion", "plucked", "keyboards"};
    return (unsigned)instrument < SPZ_INSTRUMENT_COUNT ? names[instrument] : "";
}

static spz_instrument of_family(spz_family family)
{
    switch (family) {
    case SPZ_FAMILY_WOODWIND: return SPZ_OTHER_WOODWIND;
    case SPZ_FAMILY_BRASS: return SPZ_LOW_BRASS;
    case SPZ_FAMILY_PERCUSSION: return SPZ_PERCUSSION;
    case SPZ_FAMILY_PLUCKED: return SPZ_PLUCKED;
    case SPZ_FAMILY_KEYBOARD: return SPZ_KEYBOARDS;
    default: return SPZ_INSTRUMENT_COUNT; /* voices, strings, and what is not known, have no place here */
    }
}

/* The longest beginning of any of its words counts. */
static spz_instrument instrument_of(const NameTokens *tokens, spz_family family)
{
    spz_instrument best = of_family(family);
    size_t longest = 0;
    for (size_t t = 0; t < tokens->count; t++)
        for (size_t i = 0; i < sizeof beginnings / sizeof *beginnings; i++) {
            size_t length = strlen(beginnings[i].text);
            if (beginnings[i].family == family && length > longest && strncmp(tokens->at[t].text, beginnings[i].text, length) == 0) {
                best = beginnings[i].instrument;
                longest = length;
            }
        }
    return best;
}

static bool is_plural(const char *word)
{
    static const char *const words[] = {"corni", "flauti", "oboi", "clarinetti", "fagotti", "trombe", "tromboni", "clarini", "floten", "floeten", "oboen",
                                        "klarinetten", "fagotte", "horner", "hoerner", "trompeten", "posaunen"};
    size_t length = strlen(word);
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strcmp(word, words[i]) == 0)
            return true;
    return length > 3 && word[length - 1] == 's' && strcmp(word, "cors") != 0 && word[length - 2] != 's';
}

/* 'Corni I.II', 'Horns 1-4', '2 Oboes', 'Flutes'; what comes after 'in' is a key. */
static int players_by_name(const NameTokens *tokens)
{
    unsigned numbers = 0;
    int last = 0;
    unsigned count = 0;
    bool plural = false;
    for (size_t t = 0; t < tokens->count && strcmp(tokens->at[t].text, "in") != 0; t++) {
        const NameToken *token = &tokens->at[t];
        plural = plural || is_plural(token->text);
        if (token->number < 1 || token->number > PLAYERS_MOST)
            continue;
        if (t == 0 && !token->roman && !token->dot && !tokens->at[1].joint && tokens->count > 1 && tokens->at[1].number == 0)
            return token->number;
        for (int n = last && token->joint == '-' ? last + 1 : token->number; n <= token->number; n++)
            numbers |= 1u << n;
        last = token->number;
    }
    for (int n = 1; n <= PLAYERS_MOST; n++)
        count += numbers >> n & 1;
    return count ? (int)count : plural || (tokens->count && strcmp(tokens->at[0].text, "cors") == 0) ? 2 : 1;
}

/* Whether its name gives the player's number: 'Flute 2' is one player, whatever else is written into his part. */
static bool is_numbered(const NameTokens *tokens)
{
    for (size_t t = 0; t < tokens->count && strcmp(tokens->at[t].text, "in") != 0; t++)
        if (tokens->at[t].number > 0)
            return true;
    return false;
}

/* The most notes of the part that begin together, grace notes aside. */
static int players_by_notes(const SectionMap *map, size_t part)
{
    int most = 0, together = 0;
    Ticks when = -1;
    for (size_t i = 0; i < map->other_count; i++) {
        const GroupSound *sound = &map->others[i];
        if (sound->part != part || sound->duration <= 0)
            continue;
        together = sound->onset == when ? together + 1 : 1;
        when = sound->onset;
        most = together > most ? together : most;
    }
    return most < PLAYERS_MOST ? most : PLAYERS_MOST;
}

static void add_part(spz_forces *forces, const SectionMap *map, const spz_line *line)
{
    NameTokens tokens;
    name_tokens(spz_movement_part_name(map->movement, line->part), &tokens);
    spz_instrument instrument = instrument_of(&tokens, line->family);
    if (instrument == SPZ_INSTRUMENT_COUNT)
        return;
    bool winds = line->family == SPZ_FAMILY_WOODWIND || line->family == SPZ_FAMILY_BRASS;
    int named = winds ? players_by_name(&tokens) : 1, heard = winds && !is_numbered(&tokens) ? players_by_notes(map, line->part) : 1;
    forces->players[instrument] += named > heard ? named : heard;
}

void spz_forces_add(spz_forces *forces, const spz_sections *sections)
{
    spz_forces here = {{0}, {0}};
    for (size_t i = 0; i < sections->line_count; i++) {
        const spz_line *line = &sections->lines[i];
        bool first = i == 0 || sections->lines[i - 1].part != line->part;
        if (line->left_out)
            continue;
        if (line->section != SPZ_NO_SECTION)
            here.soloists[line->section] += line->role == SPZ_SOLO;
        else if (first)
            add_part(&here, sections, line);
    }
    for (int i = 0; i < SPZ_INSTRUMENT_COUNT; i++)
        forces->players[i] = here.players[i] > forces->players[i] ? here.players[i] : forces->players[i];
    for (int i = 0; i < SPZ_SECTION_COUNT; i++)
        forces->soloists[i] = here.soloists[i] > forces->soloists[i] ? here.soloists[i] : forces->soloists[i];
}
