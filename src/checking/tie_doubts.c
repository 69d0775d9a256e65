/* ties.c - ties without their other end, as played: a tie from the bar before a repeat may end in any bar that the repeats lead to. */
#include "checking/checks.h"

static void check_note(spz_doubts *doubts, const Movement *m, size_t part, const Note *note, unsigned fate)
{
    char pitch[PITCH_TEXT];
    DoubtPlace place = {(int)part, note->bar, (long)note->line};
    if (!(fate & TIE_PLAYED) || (note->flags & NOTE_GRACE))
        return;
    note_pitch_text(note, pitch);
    if ((note->flags & NOTE_TIE_START) && !(fate & TIE_START_MET))
        doubts_add(doubts, SPZ_DOUBT_TIE, SPZ_DOUBT, m, place, "the tie from %s has no end", pitch);
    if ((note->flags & NOTE_TIE_STOP) && !(fate & TIE_STOP_MET))
        doubts_add(doubts, SPZ_DOUBT_TIE, SPZ_DOUBT, m, place, "the tie to %s has no beginning", pitch);
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
