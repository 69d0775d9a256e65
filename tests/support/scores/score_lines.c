#include "support/scores/score_lines.h"
#include "model/stream.h"
#include "support/buffer.h"

static Buffer text; /* of the last call */

static const char *finished(void)
{
    return text.text ? text.text : "";
}

static const char *list_sounds(const Movement *movement, size_t part, spz_status (*stream)(const Movement *, size_t, SoundList *))
{
    SoundList sounds = {NULL, 0, 0};
    buffer_clear(&text);
    if (part >= movement->part_count || stream(movement, part, &sounds) != SPZ_OK)
        return "";
    for (size_t i = 0; i < sounds.count; i++) {
        char pitch[PITCH_TEXT], onset[TICKS_TEXT], duration[TICKS_TEXT];
        buffer_printf(&text, "%s%s@%s+%s", i ? " " : "", note_pitch_text(sounds.at[i].note, pitch),
                      ticks_text(sounds.at[i].onset, movement->per_crotchet, onset),
                      ticks_text(sounds.at[i].duration, movement->per_crotchet, duration));
    }
    array_free(&sounds);
    return finished();
}

const char *sounds_text(const Movement *movement, size_t part)
{
    return list_sounds(movement, part, stream_of_part);
}

const char *played_text(const Movement *movement, size_t part)
{
    return list_sounds(movement, part, stream_of_part_played);
}

const char *order_text(const Movement *movement)
{
    buffer_clear(&text);
    for (size_t i = 0; i < movement->played_count; i++)
        buffer_printf(&text, "%s%s", i ? " " : "", movement->bars[movement->played[i]].number);
    return finished();
}

const char *lengths_text(const Movement *movement)
{
    buffer_clear(&text);
    for (size_t i = 0; i < movement->bar_count; i++) {
        char length[TICKS_TEXT];
        buffer_printf(&text, "%s%s", i ? " " : "", ticks_text(movement->bars[i].length, movement->per_crotchet, length));
    }
    return finished();
}
