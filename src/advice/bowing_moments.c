#include "advice/bowing_moments.h"
#include "sections/slurs.h"
#include "support/memory.h"

static uint32_t signs_of(const Note *note)
{
    static const struct {
        uint32_t flags;
        BowingSign sign;
    } signs[] = {{NOTE_STACCATO, BOWING_STACCATO}, {NOTE_TENUTO, BOWING_TENUTO},       {NOTE_ACCENT, BOWING_ACCENT},
                 {NOTE_UP_BOW, BOWING_UP_BOW},     {NOTE_DOWN_BOW, BOWING_DOWN_BOW},   {NOTE_PIZZICATO, BOWING_PIZZICATO}};
    uint32_t found = trembles(note->flags) ? 1u << BOWING_TREMOLO : 0;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        found |= note->flags & signs[i].flags ? 1u << signs[i].sign : 0;
    return found;
}

bool bowing_moments(const Group *group, BowingMoments *out)
{
    SlurBook *book = memory_get(sizeof *book);
    *out = (BowingMoments){memory_resize(NULL, group->sound_count + 1, sizeof *out->at), 0};
    if (!book || !out->at) {
        memory_free(book);
        return false;
    }
    *book = (SlurBook){.count = 0};
    for (size_t i = 0; i < group->sound_count; i++) {
        const GroupSound *sound = &group->sounds[i];
        bool bound = slur_place(book, group->sounds, group->sound_count, i).on;
        if (sound->note->flags & NOTE_GRACE)
            continue;
        uint32_t signs = signs_of(sound->note) | (bound ? 1u << BOWING_SLUR : 0);
        if (out->count && out->at[out->count - 1].onset == sound->onset)
            out->at[out->count - 1].signs |= signs;
        else
            out->at[out->count++] = (BowingMoment){sound->onset, signs};
    }
    memory_free(book);
    return true;
}

size_t bowing_moment_at(const BowingMoments *moments, Ticks when)
{
    size_t low = 0, high = moments->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (moments->at[middle].onset < when)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}
