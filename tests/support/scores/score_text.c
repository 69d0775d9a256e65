#include "support/scores/score_text.h"
#include <CUnit/CUnit.h>
#include <stdio.h>
#include <string.h>

static struct {
    spz_status status;
    char message[512];
    long line;
    int count;
    spz_score *score;
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
