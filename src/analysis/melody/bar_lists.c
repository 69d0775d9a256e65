#include "analysis/melody/bar_lists.h"
#include "support/memory.h"

bool bar_notes_make(size_t bar_count, BarNotes *out)
{
    *out = (BarNotes){.newest = memory_zeroed(bar_count, sizeof *out->newest)};
    return out->newest != NULL;
}

void bar_notes_release(BarNotes *notes)
{
    array_free(&notes->notes);
    memory_free(notes->newest);
}

bool bar_notes_add(BarNotes *notes, int first, int last, uint32_t index)
{
    for (int bar = first; bar <= last; bar++) {
        BarNote note = {index, notes->newest[bar]};
        if (!array_push(&notes->notes, note))
            return false;
        notes->newest[bar] = (uint32_t)notes->notes.count;
    }
    return true;
}
