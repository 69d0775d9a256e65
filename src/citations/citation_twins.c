/* Returns: what is heard again, perhaps in another key, is one citation. */
#include "citations/citation_facts.h"
#include "citations/likeness.h"
#include "sections/section_map.h"
#include <stdlib.h>
#include <string.h>

static int staff_place(spz_pitch pitch)
{
    return pitch.octave * 7 + pitch.step;
}

/* From its first note to its last, in steps. */
static int course(const spz_entry *entry)
{
    return staff_place(entry->last) - staff_place(entry->first);
}

static bool same_links(const spz_passage *a, const spz_passage *b)
{
    if (a->link_count != b->link_count || a->link_count < 2)
        return false;
    for (size_t i = 0; i < a->link_count; i++)
        if (a->links[i].players != b->links[i].players)
            return false;
    return true;
}

static const spz_entry *first_answer(const spz_passage *passage)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].answer)
            return &passage->entries[i];
    return NULL;
}

static bool same_gesture(const spz_passage *a, const spz_passage *b)
{
    const spz_length *one = &a->told.gesture.lag, *two = &b->told.gesture.lag;
    return abs(a->told.gesture.notes - b->told.gesture.notes) <= 1 && one->unit == two->unit && one->count.over == two->count.over &&
           one->count.under == two->count.under;
}

static bool is_dialogue(const spz_passage *passage)
{
    return spz_kind_is_antiphony(passage->kind) && passage->kind != SPZ_SPLIT_LINE && passage->entry_count > 1;
}

bool passages_twins(const spz_sections *map, const spz_passage *first, const spz_passage *later)
{
    if (!is_dialogue(first) || !is_dialogue(later) || first->onset >= later->onset)
        return false;
    const spz_entry *one = first_answer(first), *two = first_answer(later), *call = first->entries, *again = later->entries;
    bool same_sort = (first->kind == SPZ_HOCKET) == (later->kind == SPZ_HOCKET) && later->link_count <= 2 * first->link_count; /* what goes on through many more is its own */
    bool same_time = same_sort && one && two && one->onset - call->onset == two->onset - again->onset;
    if (same_time && same_again(map, call, again) && same_again(map, one, two))
        return true;
    return one && two && first->kind == later->kind && same_links(first, later) && same_gesture(first, later) && one->change.steps == two->change.steps &&
           one->change.inverted == two->change.inverted && course(one) == course(two) && course(first->entries) == course(later->entries);
}

bool passage_is_of_one_stave(const spz_sections *sections, const spz_passage *passage)
{
    size_t one = passage->sides[0].group, two = passage->sides[1].group;
    if (passage->kind != SPZ_COUPLING || one >= sections->group_count || two >= sections->group_count)
        return false;
    const Group *first = &sections->groups[one], *second = &sections->groups[two];
    return first->line_count && first->line_count == second->line_count && !memcmp(first->lines, second->lines, first->line_count * sizeof *first->lines);
}
