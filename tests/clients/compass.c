/* compass SCORE: the lowest and the highest note that each part sounds, as a program of one's own would ask the library for them.
 *
 *     cc compass.c $(pkg-config --cflags --libs spezzato) -o compass */
#include <spezzato/spezzato.h>
#include <stdio.h>

static int no_part(const spz_movement *movement, size_t part, spz_status status)
{
    fprintf(stderr, "%s: %s\n", spz_movement_part_name(movement, part), spz_status_text(status));
    return 1;
}

static int tell_part(const spz_movement *movement, size_t part)
{
    spz_notes *notes;
    const spz_note *lowest = NULL, *highest = NULL;
    char low[SPZ_PITCH_TEXT], high[SPZ_PITCH_TEXT];
    spz_status status = spz_notes_make(movement, part, SPZ_NOTES_HEARD, &notes);
    if (status != SPZ_OK)
        return no_part(movement, part, status);
    for (size_t i = 0; i < spz_notes_count(notes); i++) {
        const spz_note *note = spz_notes_at(notes, i);
        if (note->sounding.midi < 0) /* drums and the like */
            continue;
        if (!lowest || note->sounding.midi < lowest->sounding.midi)
            lowest = note;
        if (!highest || note->sounding.midi > highest->sounding.midi)
            highest = note;
    }
    if (lowest)
        printf("%s\t%s\t%s\n", spz_movement_part_name(movement, part), spz_pitch_text(lowest->sounding, low), spz_pitch_text(highest->sounding, high));
    spz_notes_free(notes);
    return 0;
}

static void say(void *context, const spz_message *message)
{
    (void)context;
    fprintf(stderr, "%s: %s\n", message->file ? message->file : "", message->text);
}

int main(int count, char **words)
{
    spz_sink sink = {say, NULL};
    spz_score *score;
    int faults = 0;
    if (count != 2 || spz_score_read(words[1], &sink, &score) != SPZ_OK)
        return 2;
    for (size_t m = 0; m < spz_score_movement_count(score); m++) {
        const spz_movement *movement = spz_score_movement(score, m);
        printf("%s\n", spz_movement_title(movement));
        for (size_t part = 0; part < spz_movement_parts(movement); part++)
            faults += tell_part(movement, part);
    }
    spz_score_free(score);
    return faults ? 1 : 0;
}
