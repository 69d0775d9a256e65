/* Any bytes as a score in memory: read, joined, played, each ending in a status. */
#include "model/stream.h"
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void walk(const Movement *movement)
{
    for (size_t part = 0; part < movement->part_count; part++) {
        SoundList sounds = {NULL, 0, 0};
        char text[TICKS_TEXT], pitch[PITCH_TEXT];
        if (stream_of_part(movement, part, &sounds) != SPZ_OK || stream_of_part_played(movement, part, &sounds) != SPZ_OK)
            abort();
        for (size_t i = 0; i < sounds.count; i++) {
            if (sounds.at[i].onset < 0 || sounds.at[i].duration < 0 || sounds.at[i].note->bar < 0 ||
                (size_t)sounds.at[i].note->bar >= movement->bar_count)
                abort();
            note_pitch_text(sounds.at[i].note, pitch);
            movement_beat_text(movement, sounds.at[i].note->onset, text);
        }
        array_free(&sounds);
    }
    for (size_t i = 0; i + 1 < movement->bar_count; i++)
        if (movement->bars[i].onset + movement->bars[i].length != movement->bars[i + 1].onset)
            abort();
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 1; i < movement->parts[part].note_count; i++)
            if (movement->parts[part].notes[i].onset < movement->parts[part].notes[i - 1].onset)
                abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    spz_score *score = NULL;
    spz_status status = spz_score_read_memory(data, size, "fuzz", NULL, &score);
    if ((status == SPZ_OK) != (score != NULL))
        abort();
    for (size_t i = 0; score && i < spz_score_movement_count(score); i++)
        walk(spz_score_movement(score, i));
    spz_score_free(score);
    return 0;
}
