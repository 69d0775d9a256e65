#include "library/needs.h"
#include <stdint.h>

static int players_of(const spz_division *division)
{
    if (division->soloists)
        return division->soloists + 1;
    return division->lines * (division->by_desk ? 2 : 1);
}

static void raise(Need *need, int players, size_t bar)
{
    if (players > need->players)
        *need = (Need){players, bar};
}

/* All violins as one body: its lines are shared out between firsts and seconds, the firsts take the odd one. */
static void raise_violins(Need needs[SPZ_DB + 1], const spz_passage *passage)
{
    const spz_division *division = &passage->told.division;
    int players = players_of(division), firsts = needs[SPZ_VN1].players, seconds = needs[SPZ_VN2].players;
    if (division->violins == SPZ_THIRD_PART || players <= firsts + seconds)
        return;
    int half = (players + 1) / 2;
    raise(&needs[SPZ_VN1], division->violins == SPZ_SECONDS_DIVIDED ? 1 : division->violins == SPZ_FIRSTS_DIVIDED ? players - 1 : half, passage->first);
    raise(&needs[SPZ_VN2], division->violins == SPZ_FIRSTS_DIVIDED ? 1 : division->violins == SPZ_SECONDS_DIVIDED ? players - 1 : players - half, passage->first);
}

void needs_of(const spz_movement_reading *reading, Need needs[SPZ_DB + 1])
{
    for (int section = 0; section <= SPZ_DB; section++)
        needs[section] = (Need){0, SIZE_MAX};
    for (size_t i = 0; i < spz_sections_groups(reading->sections); i++)
        if (spz_sections_group(reading->sections, i)->section <= SPZ_DB)
            needs[spz_sections_group(reading->sections, i)->section].players++;
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        if (passage->kind != SPZ_DIV2 && passage->kind != SPZ_DIV3)
            continue;
        if (passage->sides[0].section == SPZ_VIOLINS)
            raise_violins(needs, passage);
        else if (passage->sides[0].section <= SPZ_DB)
            raise(&needs[passage->sides[0].section], players_of(&passage->told.division), passage->first);
    }
}
