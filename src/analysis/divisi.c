#include "analysis/divisi.h"
#include "analysis/divisi_stretch.h"
#include <stdlib.h>
#include <string.h>

/* What is known of one group while the detector runs. */
typedef struct Divided {
    const Group *group;
    size_t index;
    BarWriting *bars;
    StretchList stretches;
} Divided;

static spz_status report(Findings *findings, const Divided *divided, const Stretch *stretch)
{
    const Movement *movement = findings->map->movement;
    const Bar *first = &movement->bars[stretch->first], *last = &movement->bars[stretch->last];
    spz_passage passage = {
        .kind = stretch->lines > 2 ? SPZ_DIV3 : SPZ_DIV2,
        .sections = { divided->group->about.section, SPZ_NO_SECTION },
        .groups = { divided->index, SIZE_MAX },
        .onset = first->onset,
        .end = last->onset + last->length,
        .strength = stretch->strength,
        .turns = stretch->lines,
        .foreground = stretch->foreground,
        .fully_voiced = stretch->lines > 2 && stretch->independence >= 0.5,
    };
    passage.reason = arena_format(&findings->arena, "%s in %d", spz_section_words(passage.sections[0]), stretch->lines);
    return passage.reason ? findings_add(findings, &passage) : SPZ_NO_MEMORY;
}

static spz_status look_at_group(Findings *findings, const Company *company, Divided *divided)
{
    spz_status status = divisi_writing_of(findings->map, divided->group, &divided->bars);
    if (!status)
        status = stretches_find(divided->bars, findings->map->movement->bar_count, company, &divided->stretches);
    return status;
}

static spz_status report_group(Findings *findings, const Divided *divided)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < divided->stretches.count && !status; i++)
        status = report(findings, divided, &divided->stretches.at[i]);
    return status;
}

static void let_go(Divided *all, size_t count)
{
    for (size_t i = 0; all && i < count; i++) {
        memory_give(all[i].bars);
        array_free(&all[i].stretches);
    }
    memory_give(all);
}

spz_status detect_divisi(Findings *findings, const spz_settings *settings)
{
    (void)settings;
    const SectionMap *map = findings->map;
    Arena work;
    Company company;
    arena_init(&work);
    Divided *all = memory_get((map->group_count + 1) * sizeof *all);
    spz_status status = all ? company_of(map, &work, &company) : SPZ_NO_MEMORY;
    if (all)
        memset(all, 0, (map->group_count + 1) * sizeof *all);
    for (size_t i = 0; i < map->group_count && !status; i++) {
        all[i].group = &map->groups[i];
        all[i].index = i;
        status = look_at_group(findings, &company, &all[i]);
    }
    for (size_t i = 0; i < map->group_count && !status; i++)
        status = report_group(findings, &all[i]);
    let_go(all, map->group_count);
    arena_release(&work);
    return status;
}
