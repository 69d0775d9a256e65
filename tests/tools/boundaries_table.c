/* boundaries_table.c - prints of each string group's notes the cues and strength of the boundary before them, for fitting and checking boundaries (see
 * docs/method.md): lines 'part GROUP PART NAME' and 'note GROUP BAR BEAT ONSET END NEXT INTERVAL BAR-LENGTH STRENGTH CUES...', times in crotchets. */
#include "analysis/melody/boundaries.h"
#include "tools/each_movement.h"
#include <stdio.h>

static int print_melody(const SectionMap *map, size_t index, Melody *melody)
{
    double crotchet = (double)map->movement->per_crotchet, *cues = memory_zeroed(melody->count + 1, BOUNDARY_CUES * sizeof *cues);
    if (!cues)
        return 1;
    boundaries_mark(map, melody, cues);
    for (size_t l = 0; l < melody->group->line_count; l++)
        printf("part\t%zu\t%d\t%s\n", index, (int)map->lines[melody->group->lines[l]].part, melody->group->about.name);
    for (size_t i = 0; i < melody->count; i++) {
        const NoteEvent *event = &melody->events[i];
        const Bar *in = &map->movement->bars[event->bar];
        Ticks bar = in->nominal, beat = in->beat > 0 ? in->beat : map->movement->per_crotchet;
        printf("note\t%zu\t%s\t%.3f", index, in->number, 1 + (double)(event->onset - in->onset) / (double)beat);
        printf("\t%g\t%g\t%g\t%d\t%g\t%.3f", (double)event->onset / crotchet, (double)event->end / crotchet, (double)event->next / crotchet, i ? event->midi - event[-1].midi : 0,
               bar > 0 ? (double)bar / crotchet : 4, (double)event->boundary);
        for (int c = 0; c < BOUNDARY_CUES; c++)
            printf("\t%.3g", cues[i * BOUNDARY_CUES + (size_t)c]);
        putchar('\n');
    }
    memory_free(cues);
    return 0;
}

static int print_movement(const SectionMap *map)
{
    Arena arena;
    arena_init(&arena);
    Melody *melodies = melodies_of(map, &arena);
    int failed = melodies == NULL;
    for (size_t i = 0; i < map->group_count && !failed; i++)
        failed = print_melody(map, i, &melodies[i]);
    arena_release(&arena);
    return failed;
}

int main(int count, char **arguments)
{
    if (count != 2)
        return 2;
    printf("names");
    for (int c = 0; c < BOUNDARY_CUES; c++)
        printf("\t%s", boundary_cue_name((enum BoundaryCue)c));
    putchar('\n');
    return each_movement(arguments[1], print_movement);
}
