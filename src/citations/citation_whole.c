/* Contrast: a melody that two sections share out note by note, and the place where one of them plays it whole. */
#include "citations/citation_facts.h"
#include "model/movement.h"
#include "sections/section_map.h"

enum { NOTES_LEAST = 6, NOTES_MOST = 12 }; /* so many in a row are no accident (common practice, no source) */

static int staff_place(spz_pitch pitch)
{
    return pitch.octave * 7 + pitch.step;
}

/* The next upper note of a group behind sound i; sound_count at the end. */
static size_t next_top(const Group *group, size_t i)
{
    Ticks onset = group->sounds[i].onset;
    for (i++; i < group->sound_count; i++)
        if (group->sounds[i].onset > onset && group->sounds[i].duration > 0 && group->sounds[i].note->midi >= 0)
            break;
    return i;
}

/* Does the group play from sound `start` on what the entries are, by steps of the staff and in their rhythm? */
static bool plays_it(const Group *group, size_t start, const spz_passage *split, size_t notes)
{
    const GroupSound *first = &group->sounds[start];
    size_t at = start;
    for (size_t i = 0; i < notes; i++, at = next_top(group, at)) {
        if (at >= group->sound_count || group->sounds[at].onset - first->onset != split->entries[i].onset - split->entries[0].onset)
            return false;
        int step = staff_place(pitch_of(group->sounds[at].note)) - staff_place(pitch_of(first->note));
        if (step != staff_place(split->entries[i].first) - staff_place(split->entries[0].first))
            return false;
    }
    return true;
}

/* Who else than the two together plays the line, first outside the passage. */
void citation_find_whole(const spz_sections *sections, Citation *citation)
{
    const spz_passage *split = citation->passage;
    size_t notes = split->entry_count < NOTES_MOST ? split->entry_count : NOTES_MOST;
    Ticks earliest = -1;
    citation->whole_group = SIZE_MAX;
    if (split->kind != SPZ_SPLIT_LINE || notes < NOTES_LEAST)
        return;
    for (size_t g = 0; g < sections->group_count; g++) {
        const Group *group = &sections->groups[g];
        for (size_t i = 0; i < group->sound_count; i++) {
            const GroupSound *sound = &group->sounds[i];
            bool outside = sound->onset + (split->end - split->onset) <= split->onset || sound->onset >= split->end;
            bool top = i == 0 || group->sounds[i - 1].onset < sound->onset;
            if (!outside || !top || sound->duration <= 0 || sound->note->midi < 0 || !plays_it(group, i, split, notes))
                continue;
            if (earliest < 0 || sound->onset < earliest) {
                earliest = sound->onset;
                citation->whole_group = g;
                citation->whole_bar = spz_movement_bar_at(sections->movement, sound->onset);
            }
            break;
        }
    }
}
