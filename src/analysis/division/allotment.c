#include "analysis/division/sharing_habits.h"
#include "support/memory.h"
#include <string.h>

enum { PLAYERS_MOST = 200, LINES_MOST = 12 };

struct spz_allotment {
    spz_desk *desks;
    size_t desk_count;
    spz_sharing sharing;
    int lines, sharers;               /* players that share the lines: all but the soloists */
    int players[LINES_MOST + 1];      /* by line */
};

enum { SEAT_FREE = -2 };

static void seat(spz_allotment *allotment, int *place, int line)
{
    *place = line;
    if (line > 0)
        allotment->players[line]++;
}

static void set_out_desks(spz_desk *desks, spz_section section, int players, int solo_players)
{
    for (int i = 0; i < (players + 1) / 2; i++) {
        desks[i].section = section;
        desks[i].number = i + 1;
        desks[i].outside = 2 * i < solo_players ? SPZ_SEAT_SOLO : SEAT_FREE;
        desks[i].inside = 2 * i + 1 >= players ? SPZ_SEAT_EMPTY : 2 * i + 1 < solo_players ? SPZ_SEAT_SOLO : SEAT_FREE;
    }
}

static int *only_free_seat(spz_desk *desk)
{
    bool outside = desk->outside == SEAT_FREE, inside = desk->inside == SEAT_FREE;
    return outside == inside ? NULL : outside ? &desk->outside : &desk->inside;
}

static bool is_free(const spz_desk *desk)
{
    return desk->outside == SEAT_FREE && desk->inside == SEAT_FREE;
}

/* A player who sits alone takes the line that has fewest; the upper one of equals. */
static void seat_single(spz_allotment *allotment, int *place)
{
    int line = 1;
    for (int other = 2; other <= allotment->lines; other++)
        line = allotment->players[other] < allotment->players[line] ? other : line;
    seat(allotment, place, line);
}

static void seat_singles(spz_allotment *allotment)
{
    for (size_t i = 0; i < allotment->desk_count; i++) {
        int *place = only_free_seat(&allotment->desks[i]);
        if (place)
            seat_single(allotment, place);
    }
}

/* By side, and by desk and side: desks in turn take lines 1 and 2, 3 and 4, ... */
static void share_by_side(spz_allotment *allotment)
{
    int turn = 0, turns = (allotment->lines + 1) / 2;
    for (size_t i = 0; i < allotment->desk_count; i++) {
        spz_desk *desk = &allotment->desks[i];
        if (!is_free(desk))
            continue;
        int upper = 2 * turn + 1, lower = upper < allotment->lines ? upper + 1 : upper;
        seat(allotment, &desk->outside, upper);
        seat(allotment, &desk->inside, lower);
        turn = (turn + 1) % turns;
    }
    seat_singles(allotment);
}

static void fill_quotas(const spz_allotment *allotment, int quota[LINES_MOST + 1])
{
    for (int line = 1; line <= allotment->lines; line++)
        quota[line] = allotment->sharers / allotment->lines + (line <= allotment->sharers % allotment->lines);
}

static int next_with_quota(const spz_allotment *allotment, const int quota[], int from, int at_least)
{
    for (int step = 0; step < allotment->lines; step++) {
        int line = (from - 1 + step) % allotment->lines + 1;
        if (quota[line] >= at_least)
            return line;
    }
    return 0;
}

/* Odd shares are best filled by players who sit alone. */
static void quota_singles(spz_allotment *allotment, int quota[])
{
    for (size_t i = 0; i < allotment->desk_count; i++) {
        int *place = only_free_seat(&allotment->desks[i]);
        if (!place)
            continue;
        int line = 0;
        for (int other = 1; other <= allotment->lines && !line; other++)
            line = quota[other] % 2 ? other : 0;
        line = line ? line : next_with_quota(allotment, quota, 1, 1);
        seat(allotment, place, line);
        quota[line]--;
    }
}

/* Each desk one line, in turn or in blocks; the desks that are left when only odd players are missing are split. */
static void share_by_desk(spz_allotment *allotment, bool in_blocks)
{
    int quota[LINES_MOST + 1] = { 0 };
    int turn = 1;
    fill_quotas(allotment, quota);
    quota_singles(allotment, quota);
    for (size_t i = 0; i < allotment->desk_count; i++) {
        spz_desk *desk = &allotment->desks[i];
        if (!is_free(desk))
            continue;
        /* in blocks a desk between two lines is split where the next line begins */
        int line = in_blocks && quota[turn] == 1 ? 0 : next_with_quota(allotment, quota, turn, 2);
        int outside = line ? line : next_with_quota(allotment, quota, turn, 1);
        quota[outside]--;
        int inside = line ? line : next_with_quota(allotment, quota, outside, 1);
        quota[inside]--;
        seat(allotment, &desk->outside, outside);
        seat(allotment, &desk->inside, inside);
        turn = in_blocks ? (quota[inside] ? inside : inside % allotment->lines + 1) : inside % allotment->lines + 1;
    }
}

/* The next player, the next line: outside, inside, then the desk behind. */
static void share_by_player(spz_allotment *allotment)
{
    int turn = 0;
    for (size_t i = 0; i < 2 * allotment->desk_count; i++) {
        spz_desk *desk = &allotment->desks[i / 2];
        int *place = i % 2 ? &desk->inside : &desk->outside;
        if (*place == SEAT_FREE)
            seat(allotment, place, turn++ % allotment->lines + 1);
    }
}

static void share_out(spz_allotment *allotment)
{
    if (allotment->sharing == SPZ_SHARE_BY_PLAYER) {
        share_by_player(allotment);
        return;
    }
    if (allotment->sharing == SPZ_SHARE_BY_SIDE || allotment->sharing == SPZ_SHARE_BY_DESK_AND_SIDE)
        share_by_side(allotment);
    else
        share_by_desk(allotment, allotment->sharing == SPZ_SHARE_IN_BLOCKS);
}

static spz_allotment *new_allotment(size_t desks, int sharers, int lines, spz_sharing sharing)
{
    spz_allotment *allotment = memory_get(sizeof *allotment);
    spz_desk *places = memory_get(desks * sizeof *places);
    if (!allotment || !places) {
        memory_free(allotment);
        memory_free(places);
        return NULL;
    }
    memset(allotment, 0, sizeof *allotment);
    memset(places, 0, desks * sizeof *places);
    allotment->desks = places;
    allotment->desk_count = desks;
    allotment->lines = lines;
    allotment->sharers = sharers;
    allotment->sharing = sharing;
    return allotment;
}

static bool numbers_make_sense(int players, int lines, int solo_players)
{
    return players > 0 && players <= PLAYERS_MOST && lines > 0 && lines <= LINES_MOST && solo_players >= 0 &&
           players - solo_players >= lines;
}

spz_status spz_allotment_make(spz_section section, int players, int lines, int solo_players, spz_sharing sharing,
                              spz_allotment **out)
{
    *out = NULL;
    if (sharing == SPZ_SHARE_USUAL)
        sharing = sharing_usual(lines);
    if (!numbers_make_sense(players, lines, solo_players) || !sharing_fits(sharing, lines))
        return SPZ_BAD_ARGUMENT;
    spz_allotment *allotment = new_allotment((size_t)(players + 1) / 2, players - solo_players, lines, sharing);
    if (!allotment)
        return SPZ_NO_MEMORY;
    set_out_desks(allotment->desks, section, players, solo_players);
    share_out(allotment);
    *out = allotment;
    return SPZ_OK;
}

enum { LEAST_OF_FOUR = 2 /* each section keeps two lines of four */ };

/* Both violin sections as one body: the desks of the firsts, then those of the seconds. In four lines each section keeps its
 * own two. */
static spz_status allot_violins(const spz_settings *settings, int orchestra, int lines, spz_allotment **out)
{
    int first = spz_orchestra_players(settings, SPZ_VN1, orchestra), second = spz_orchestra_players(settings, SPZ_VN2, orchestra);
    size_t first_desks = (size_t)(first + 1) / 2, desks = first_desks + (size_t)(second + 1) / 2;
    int least = lines == 4 ? LEAST_OF_FOUR : 1;
    if (first < least || second < least || !numbers_make_sense(first + second, lines, 0))
        return SPZ_BAD_ARGUMENT;
    bool each_in_two = lines == 4;
    spz_allotment *allotment = new_allotment(desks, first + second, lines, each_in_two ? SPZ_SHARE_BY_SIDE : SPZ_SHARE_IN_BLOCKS);
    if (!allotment)
        return SPZ_NO_MEMORY;
    set_out_desks(allotment->desks, SPZ_VN1, first, 0);
    set_out_desks(allotment->desks + first_desks, SPZ_VN2, second, 0);
    for (size_t i = 0; each_in_two && i < desks; i++) {
        spz_desk *desk = &allotment->desks[i];
        seat(allotment, &desk->outside, i < first_desks ? 1 : 3);
        if (desk->inside != SPZ_SEAT_EMPTY)
            seat(allotment, &desk->inside, i < first_desks ? 2 : 4);
    }
    if (!each_in_two)
        share_by_desk(allotment, true);
    *out = allotment;
    return SPZ_OK;
}

static bool is_division(const spz_passage *passage)
{
    return passage->kind == SPZ_DIV2 || passage->kind == SPZ_DIV3;
}

spz_status spz_allotment_of(const spz_passage *passage, const spz_settings *settings, spz_allotment **out)
{
    const spz_side *who = &passage->sides[0];
    *out = NULL;
    if (!is_division(passage))
        return SPZ_BAD_ARGUMENT;
    if (who->section == SPZ_VIOLINS)
        return allot_violins(settings, who->orchestra, passage->turns, out);
    spz_sharing sharing = passage->told.division.by_desk ? SPZ_SHARE_BY_DESK : spz_sharing_habit(settings, who->section, passage->turns);
    return spz_allotment_make(who->section, spz_orchestra_players(settings, who->section, who->orchestra), passage->turns, 0, sharing, out);
}

bool spz_division_short(const spz_passage *passage, const spz_settings *settings, spz_shortage *out)
{
    const spz_side *who = &passage->sides[0];
    int lines = passage->turns, soloists = passage->told.division.soloists;
    if (!is_division(passage) || lines < 1)
        return false;
    *out = (spz_shortage){who->section, soloists > lines ? soloists : lines, spz_orchestra_players(settings, who->section, who->orchestra)};
    for (int s = SPZ_VN1; s <= SPZ_VN2 && who->section == SPZ_VIOLINS && lines == 4 && out->has >= out->needs; s++) {
        int has = spz_orchestra_players(settings, (spz_section)s, who->orchestra);
        if (has < LEAST_OF_FOUR)
            *out = (spz_shortage){(spz_section)s, LEAST_OF_FOUR, has};
    }
    return out->has < out->needs;
}

void spz_allotment_free(spz_allotment *allotment)
{
    if (!allotment)
        return;
    memory_free(allotment->desks);
    memory_free(allotment);
}

spz_sharing spz_allotment_sharing(const spz_allotment *allotment)
{
    return allotment->sharing;
}

size_t spz_allotment_desks(const spz_allotment *allotment)
{
    return allotment->desk_count;
}

const spz_desk *spz_allotment_desk(const spz_allotment *allotment, size_t index)
{
    return index < allotment->desk_count ? &allotment->desks[index] : NULL;
}

int spz_allotment_lines(const spz_allotment *allotment)
{
    return allotment->lines;
}

int spz_allotment_players(const spz_allotment *allotment, int line)
{
    return line > 0 && line <= allotment->lines ? allotment->players[line] : 0;
}

double spz_allotment_balance(const spz_allotment *allotment, int line)
{
    return (double)spz_allotment_players(allotment, line) * allotment->lines / allotment->sharers;
}

int spz_allotment_split_desks(const spz_allotment *allotment)
{
    int split = 0;
    for (size_t i = 0; i < allotment->desk_count; i++) {
        const spz_desk *desk = &allotment->desks[i];
        split += desk->outside > 0 && desk->inside > 0 && desk->outside != desk->inside;
    }
    return split;
}
