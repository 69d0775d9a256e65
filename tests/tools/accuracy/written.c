/* written - every note of a score as it is written, tied notes apart, for a comparison with another reader. First a line 'per TICKS', then a
 * line a bar 'bar NUMBER ONSET LENGTH', a line 'order INDEX...' with the bars in playing order, and a line a note:
 * 'note STAFF ONSET DURATION MIDI BAR KIND' with the staff counted over the whole score from 1, times in ticks, the bar by index, and KIND one
 * of main, grace, cue, copied, unpitched. */
#include "model/movement.h"
#include <inttypes.h>
#include <stdio.h>

static const char *kind_of(const Note *note)
{
    if (note->flags & NOTE_UNPITCHED)
        return "unpitched";
    if (note->flags & NOTE_CUE)
        return "cue";
    if (note->flags & NOTE_GRACE)
        return "grace";
    return note->flags & NOTE_COPIED ? "copied" : "main";
}

static void print_part(const Part *part, int first_staff)
{
    for (size_t i = 0; i < part->note_count; i++) {
        const Note *note = &part->notes[i];
        printf("note %d %" PRId64 " %" PRId64 " %d %d %s\n", first_staff + note->staff, note->onset, note->duration, note->midi, (int)note->bar,
               kind_of(note));
    }
}

static void print_movement(const Movement *m)
{
    int staff = 0;
    printf("per %" PRId64 "\n", m->per_crotchet);
    for (size_t i = 0; i < m->bar_count; i++)
        printf("bar %s %" PRId64 " %" PRId64 "\n", *m->bars[i].number ? m->bars[i].number : "-", m->bars[i].onset, m->bars[i].length);
    printf("order");
    for (size_t i = 0; i < m->played_count; i++)
        printf(" %d", (int)m->played[i]);
    printf("\n");
    for (size_t p = 0; p < m->part_count; p++) {
        print_part(&m->parts[p], staff);
        staff += m->parts[p].staves;
    }
}

int main(int argc, char **argv)
{
    spz_score *score = NULL;
    if (argc != 2 || spz_score_read(argv[1], NULL, &score) != SPZ_OK) {
        fprintf(stderr, "usage: written SCORE\n");
        return 2;
    }
    print_movement(spz_score_movement(score, 0));
    spz_score_free(score);
    return 0;
}
