#include "analysis/division/shortages.h"
#include "analysis/division/divisi.h"
#include "support/memory.h"
#include "support/message.h"
#include <stdio.h>

static bool same_players(const spz_side *a, const spz_side *b)
{
    return a->section == b->section && a->orchestra == b->orchestra;
}

static bool is_short(const spz_passage *passage, const spz_settings *settings, spz_shortage *shortage)
{
    return passage->ruling.kind != SPZ_VETOED && spz_weight_of(passage->strength) >= SPZ_CLEAR && spz_division_short(passage, settings, shortage);
}

/* Whether another division of the same players asks for more, or for as much and earlier. */
static bool told_by_another(const Findings *findings, const spz_settings *settings, size_t index, int needs)
{
    for (size_t i = 0; i < findings->passages.count; i++) {
        spz_shortage other;
        const spz_passage *passage = &findings->passages.at[i];
        if (i != index && same_players(&passage->sides[0], &findings->passages.at[index].sides[0]) && is_short(passage, settings, &other) &&
            (other.needs > needs || (other.needs == needs && i < index)))
            return true;
    }
    return false;
}

static const char *part_name(const Findings *findings, const spz_passage *passage)
{
    size_t group = passage->sides[0].group;
    if (group >= findings->map->group_count || !findings->map->groups[group].line_count)
        return NULL;
    const Group *body = &findings->map->groups[group];
    return findings->map->movement->parts[findings->map->lines[body->lines[0]].part].name;
}

void shortages_tell(const Findings *findings, const spz_settings *settings, const spz_sink *sink)
{
    for (size_t i = 0; i < findings->passages.count; i++) {
        const spz_passage *passage = &findings->passages.at[i];
        spz_shortage shortage;
        char has[16];
        if (!is_short(passage, settings, &shortage) || told_by_another(findings, settings, i, shortage.needs))
            continue;
        const char *part = part_name(findings, passage), *section = spz_section_name(shortage.section);
        snprintf(has, sizeof has, "%d", shortage.has);
        message_fault(sink, &(spz_message){.severity = SPZ_DOUBT, .file = findings->map->movement->file, .fault = SPZ_FAULT_TOO_FEW_PLAYERS, .part = part ? part : section,
                                           .bar = passage->first_bar, .name = section, .other = has, .count = shortage.needs});
    }
}

spz_status shortages_find(const SectionMap *map, const spz_settings *settings, const spz_sink *sink)
{
    Findings *findings = memory_zeroed(1, sizeof *findings);
    if (!findings)
        return SPZ_NO_MEMORY;
    arena_init(&findings->arena);
    findings->map = map;
    spz_status status = map->movement->bar_count ? detect_divisi(findings, settings) : SPZ_OK;
    if (!status)
        shortages_tell(findings, settings, sink);
    spz_findings_free(findings);
    return status;
}
