/* tie_doubts.c - ties without their other end, as played: a tie from the bar before a repeat may end in any bar that the repeats lead to. */
#include "checking/checks.h"

static void check_note(spz_doubts *doubts, const Movement *m, size_t part, const Note *note, unsigned fate)
{
    DoubtPlace place = {.part = (int)part, .bar = note->bar, .line = (long)note->line};
    if (!(fate & TIE_PLAYED) || (note->flags & NOTE_GRACE))
        return;
    if ((note->flags & NOTE_TIE_START) && !(fate & TIE_START_MET))
        doubts_add(doubts, m, place, (spz_doubt){.fault = SPZ_FAULT_TIE_WITHOUT_END, .pitch = pitch_of(note)});
    if ((note->flags & NOTE_TIE_STOP) && !(fate & TIE_STOP_MET))
        doubts_add(doubts, m, place, (spz_doubt){.fault = SPZ_FAULT_TIE_WITHOUT_BEGINNING, .pitch = pitch_of(note)});
}

void check_ties(spz_doubts *doubts, const Movement *movement)
{
    for (size_t p = 0; p < movement->part_count && !doubts->no_memory; p++) {
        const Part *part = &movement->parts[p];
        unsigned char *fates = memory_get(part->note_count);
        if (!fates || stream_tie_fates(movement, p, fates) != SPZ_OK)
            doubts->no_memory = true;
        for (size_t i = 0; fates && i < part->note_count && !doubts->no_memory; i++)
            check_note(doubts, movement, p, &part->notes[i], fates[i]);
        memory_free(fates);
    }
}
