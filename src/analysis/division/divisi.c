#include "analysis/division/divisi.h"
#include "analysis/division/divisi_soloists.h"
#include "analysis/division/divisi_violins.h"
#include "analysis/division/divisi_texture.h"
#include <string.h>

static spz_status report(Findings *findings, const Divided *divided, const Stretch *stretch)
{
    const Movement *movement = findings->map->movement;
    const Bar *first = &movement->bars[stretch->first], *last = &movement->bars[stretch->last];
    spz_passage passage = {
        .kind = stretch->lines > 2 ? SPZ_DIV3 : SPZ_DIV2,
        .sides = { side_of_group(findings->map, divided->index), no_side },
        .onset = first->onset,
        .end = last->onset + last->length,
        .strength = stretch->strength,
        .turns = stretch->lines,
        .told.division = divisi_told(stretch),
        .foreground = stretch->foreground,
        .fully_voiced = stretch->lines > 2 && stretch->independence >= 0.5,
    };
    return findings_add(findings, &passage);
}

static spz_status look_at_group(Findings *findings, const PlayingParts *company, Divided *divided)
{
    spz_status status = divisi_writing_of(findings->map, divided->group, &divided->bars);
    if (!status)
        status = divisi_with_soloists(findings->map, divided->group, divided->bars);
    if (!status)
        status = divisi_stretches_find(divided->bars, findings->map->movement->bar_count, company, &divided->stretches);
    return status;
}

static spz_status report_group(Findings *findings, const Divided *divided)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < divided->stretches.count && !status; i++)
        status = report(findings, divided, &divided->stretches.at[i]);
    return status;
}

/* How many bars of `stretch` are divided in another section too. */
static size_t bars_in_company(const Stretch *stretch, const StretchList *others, size_t *from)
{
    size_t bars = 0;
    while (*from < others->count && others->at[*from].last < stretch->first)
        ++*from;
    for (size_t i = *from; i < others->count && others->at[i].first <= stretch->last; i++) {
        size_t first = others->at[i].first > stretch->first ? others->at[i].first : stretch->first;
        size_t last = others->at[i].last < stretch->last ? others->at[i].last : stretch->last;
        bars += last - first + 1;
    }
    return bars;
}

/* Two sections written alike at the same time are hardly double stops in both: that makes an unmarked division certain. */
static void note_company(StretchList *stretches, const StretchList *others)
{
    size_t from = 0;
    for (size_t i = 0; i < stretches->count; i++) {
        Stretch *stretch = &stretches->at[i];
        stretch->in_company |= 2 * bars_in_company(stretch, others, &from) > stretch->last - stretch->first + 1;
        stretch->strength = divisi_strength(stretch);
    }
}

static void look_for_company(Divided *all, size_t count)
{
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < count; j++)
            if (i != j)
                note_company(&all[i].stretches, &all[j].stretches);
}

/* The group of `section` that sits with the first violins `with`, or NULL. */
static Divided *same_orchestra(Divided *all, size_t count, spz_section section, const Group *with)
{
    for (size_t i = 0; i < count; i++) {
        const spz_group *about = &all[i].group->about;
        if (about->section == section && about->orchestra == with->about.orchestra && !about->solo)
            return &all[i];
    }
    return NULL;
}

static spz_status look_at_soloists(Findings *findings, const PlayingParts *company, const Divided *first, const Divided *second, Divided *all,
                                   size_t count)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < count && !status; i++) {
        const spz_group *about = &all[i].group->about;
        if (about->solo && section_is_violin(about->section) && about->orchestra == first->group->about.orchestra)
            status = divisi_of_solo_violin(findings, company, first, second, &all[i]);
    }
    return status;
}

static spz_status look_at_violins(Findings *findings, const PlayingParts *company, Divided *all, size_t count)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < count && !status; i++) {
        const spz_group *about = &all[i].group->about;
        if (about->section != SPZ_VN1 || about->solo || about->number > 1)
            continue;
        Divided *second = same_orchestra(all, count, SPZ_VN2, all[i].group);
        Divided *third = same_orchestra(all, count, SPZ_VN3, all[i].group);
        if (second)
            status = divisi_of_both_violins(findings, company, &all[i], second);
        if (!status && second && third)
            status = divisi_of_third_violins(findings, company, &all[i], second, third);
        if (!status && second)
            status = look_at_soloists(findings, company, &all[i], second, all, count);
    }
    return status;
}

static void let_go(Divided *all, size_t count)
{
    for (size_t i = 0; all && i < count; i++) {
        memory_free(all[i].bars);
        array_free(&all[i].stretches);
    }
    memory_free(all);
}

spz_status detect_divisi(Findings *findings, const spz_settings *settings)
{
    (void)settings;
    const SectionMap *map = findings->map;
    Arena work;
    PlayingParts company;
    if (map->chamber_music) /* one player is not divided */
        return SPZ_OK;
    arena_init(&work);
    Divided *all = memory_get((map->group_count + 1) * sizeof *all);
    spz_status status = all ? playing_parts_of(map, &work, &company) : SPZ_NO_MEMORY;
    if (all)
        memset(all, 0, (map->group_count + 1) * sizeof *all);
    for (size_t i = 0; i < map->group_count && !status; i++) {
        all[i].group = &map->groups[i];
        all[i].index = i;
        if (!map->groups[i].about.solo) /* one player is not divided */
            status = look_at_group(findings, &company, &all[i]);
    }
    if (!status)
        look_for_company(all, map->group_count);
    if (!status)
        status = look_at_violins(findings, &company, all, map->group_count);
    for (size_t i = 0; i < map->group_count && !status; i++)
        status = report_group(findings, &all[i]);
    let_go(all, map->group_count);
    arena_release(&work);
    return status;
}
