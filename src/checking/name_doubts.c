/* name_doubts.c - parts that could not be named, and divisions that begin and never end. */
#include "analysis/division/divisi_writing.h"
#include "sections/names/division_marks.h"
#include "checking/checks.h"
#include <string.h>

void check_names(spz_doubts *doubts, const SectionMap *map)
{
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        DoubtPlace place = {.part = (int)line->part, .bar = -1};
        if (line->family == SPZ_FAMILY_UNKNOWN && !map->movement->parts[line->part].note_count) /* of one that plays it is said while it is read */
            doubts_add(doubts, map->movement, place, (spz_doubt){.fault = SPZ_FAULT_NAME_UNKNOWN});
        else if (line->family == SPZ_FAMILY_STRINGS && line->section == SPZ_NO_SECTION)
            doubts_add(doubts, map->movement, place, (spz_doubt){.fault = SPZ_FAULT_NO_SECTION});
    }
}

/* Does the part sound as more than one line at once anywhere from `onset` on? Then the division is at least played. */
static bool plays_divided_after(const Part *part, const spz_line *line, Ticks onset)
{
    for (size_t i = 1; i < part->note_count; i++) {
        const Note *a = &part->notes[i - 1], *b = &part->notes[i];
        if (b->onset >= onset && a->onset == b->onset && !((a->flags | b->flags) & NOTE_GRACE) && (line->staff == 0 || a->staff == line->staff))
            return true;
    }
    return false;
}

/* The division that still holds at the end of the line: its mark, or NULL. */
static const Direction *open_division(const Part *part, const spz_line *line)
{
    DivisionState state;
    const Direction *since = NULL;
    memset(&state, 0, sizeof state);
    for (size_t i = 0; i < part->direction_count; i++) {
        const Direction *mark = &part->directions[i];
        DivisionWords words;
        bool ours = line->staff == 0 || mark->staff == 0 || mark->staff == line->staff;
        if (mark->kind != DIRECTION_WORDS || !ours || !division_words_read(mark->text, &words))
            continue;
        bool before = state.divided;
        state = division_state_after(state, &words);
        if (!state.divided)
            since = NULL;
        else if (!before)
            since = mark;
    }
    return since;
}

/* The bar with which a division that no word ends is taken to end (divisi_writing.c lets marks lapse); -1: it holds to the last bar. */
static spz_status lapse_of(const SectionMap *map, size_t line, int32_t since, int32_t *out)
{
    const Group *group = NULL;
    BarWriting *bars = NULL;
    int32_t count = (int32_t)map->movement->bar_count, last = since, i = since;
    *out = -1;
    for (size_t g = 0; g < map->group_count && !group; g++)
        for (size_t l = 0; l < map->groups[g].line_count; l++)
            group = map->groups[g].lines[l] == line ? &map->groups[g] : group;
    spz_status status = group ? divisi_writing_of(map, group, &bars) : SPZ_OK;
    for (; bars && i < count && (i == since || bars[i].divided); i++)
        last = bars[i].thick ? i : last;
    if (bars && i < count)
        *out = last;
    memory_free(bars);
    return status;
}

void check_divisions(spz_doubts *doubts, const SectionMap *map)
{
    const Movement *m = map->movement;
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        const Part *part = &m->parts[line->part];
        bool again = i > 0 && line->part == line[-1].part && line->staff == line[-1].staff; /* two sections on one staff read the same words */
        const Direction *mark = line->section != SPZ_NO_SECTION && !again ? open_division(part, line) : NULL;
        if (!mark)
            continue;
        bool played = plays_divided_after(part, line, mark->onset);
        int32_t last = -1;
        doubts->no_memory |= played && lapse_of(map, i, mark->bar, &last) != SPZ_OK;
        doubts_add(doubts, m, (DoubtPlace){.part = (int)line->part, .bar = mark->bar, .line = (long)mark->line},
                   (spz_doubt){.fault = played ? SPZ_FAULT_DIVISION_OPEN : SPZ_FAULT_DIVISION_NOT_PLAYED, .name = mark->text, .other = last < 0 ? "" : m->bars[last].number});
    }
}
