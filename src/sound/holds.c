#include "sound/holds.h"

/* A fermata about doubles its note, by taste (common practice; from memory). */
const double hold_factor = 2;

static void add(Holds *holds, Ticks from, Ticks to)
{
    for (size_t i = 0; i < holds->count; i++)
        if (from < holds->at[i].to && to > holds->at[i].from) {
            holds->at[i].from = from > holds->at[i].from ? from : holds->at[i].from;
            holds->at[i].to = to < holds->at[i].to ? to : holds->at[i].to;
            return;
        }
    if (holds->count == HOLDS_MOST)
        return;
    size_t place = holds->count++;
    for (; place > 0 && holds->at[place - 1].from > from; place--)
        holds->at[place] = holds->at[place - 1];
    holds->at[place].from = from;
    holds->at[place].to = to;
}

static void add_sounds(Holds *holds, const GroupSound *sounds, size_t count, Ticks from, Ticks to)
{
    for (size_t i = 0; i < count && sounds[i].onset < to; i++)
        if (sounds[i].onset >= from && sounds[i].note->flags & NOTE_FERMATA && sounds[i].duration > 0)
            add(holds, sounds[i].onset, sounds[i].onset + sounds[i].duration);
}

void holds_find(const SectionMap *map, Ticks from, Ticks to, Holds *out)
{
    *out = (Holds){.count = 0};
    for (size_t i = 0; i < map->group_count; i++)
        add_sounds(out, map->groups[i].sounds, map->groups[i].sound_count, from, to);
    add_sounds(out, map->others, map->other_count, from, to);
}
