#include "support/score_text.h"
#include "model/stream.h"
#include "support/buffer.h"
#include <CUnit/CUnit.h>
#include <stdio.h>
#include <string.h>

static struct {
    spz_status status;
    char message[512];
    long line;
    int count;
    spz_score *score;
    Buffer text;
} last;

static void hear(void *context, const spz_message *message)
{
    (void)context;
    snprintf(last.message, sizeof last.message, "%s", message->text);
    last.line = message->line;
    last.count++;
}

spz_score *score_of_bytes(const void *bytes, size_t size)
{
    spz_sink sink = {hear, NULL};
    spz_score *score = NULL;
    last.message[0] = '\0';
    last.line = 0;
    last.count = 0;
    last.status = spz_score_read_memory(bytes, size, "test.musicxml", &sink, &score);
    CU_ASSERT_EQUAL(last.status == SPZ_OK, score != NULL);
    if (last.status != SPZ_OK)
        CU_ASSERT_NOT_EQUAL(last.message[0], '\0');
    return score;
}

spz_score *score_of(const char *xml)
{
    return score_of_bytes(xml, strlen(xml));
}

spz_status last_status(void)
{
    return last.status;
}

const char *last_message(void)
{
    return last.message;
}

long last_line(void)
{
    return last.line;
}

int message_count(void)
{
    return last.count;
}

const Movement *movement_of(const char *xml)
{
    spz_score_free(last.score);
    last.score = score_of(xml);
    if (!last.score)
        printf("  refused: %s\n", last.message);
    CU_ASSERT_PTR_NOT_NULL_FATAL(last.score);
    return spz_score_movement(last.score, 0);
}

static const char *finished(void)
{
    return last.text.text ? last.text.text : "";
}

static const char *list_sounds(const Movement *movement, size_t part, spz_status (*stream)(const Movement *, size_t, SoundList *))
{
    SoundList sounds = {NULL, 0, 0};
    buffer_clear(&last.text);
    CU_ASSERT_EQUAL_FATAL(stream(movement, part, &sounds), SPZ_OK);
    for (size_t i = 0; i < sounds.count; i++) {
        char pitch[PITCH_TEXT], onset[TICKS_TEXT], duration[TICKS_TEXT];
        buffer_printf(&last.text, "%s%s@%s+%s", i ? " " : "", note_pitch_text(sounds.at[i].note, pitch),
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
    buffer_clear(&last.text);
    for (size_t i = 0; i < movement->played_count; i++)
        buffer_printf(&last.text, "%s%s", i ? " " : "", movement->bars[movement->played[i]].number);
    return finished();
}

const char *lengths_text(const Movement *movement)
{
    buffer_clear(&last.text);
    for (size_t i = 0; i < movement->bar_count; i++) {
        char length[TICKS_TEXT];
        buffer_printf(&last.text, "%s%s", i ? " " : "", ticks_text(movement->bars[i].length, movement->per_crotchet, length));
    }
    return finished();
}
