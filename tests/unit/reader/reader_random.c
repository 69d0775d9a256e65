/* Random parts, written with divisions that change at random: every onset and duration comes out exactly. The seed is printed when a part fails;
 * SPEZZATO_SEED gives it back. */
#include "support/buffer.h"
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { NOTES = 120, PARTS = 60, DIVISIONS_MOST = 17 };
static const int64_t unit = INT64_C(12252240); /* common multiple of 1 to 17: exact time of the test's own */

typedef struct Expected {
    int64_t onset, duration; /* in 1/unit crotchets */
    int midi;
} Expected;

static uint64_t state;

static int random_below(int limit)
{
    state = state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (int)((state >> 33) % (uint64_t)limit);
}

/* One bar of one voice: notes, rests, chords; returns how long it is. */
static int64_t write_bar(Buffer *xml, Expected *notes, size_t *count, int64_t start)
{
    static const char steps[7] = {'C', 'D', 'E', 'F', 'G', 'A', 'B'};
    static const int semitones[7] = {0, 2, 4, 5, 7, 9, 11};
    int64_t position = 0;
    int divisions = 1 + random_below(DIVISIONS_MOST);
    buffer_printf(xml, "<measure number=\"1\"><attributes><divisions>%d</divisions></attributes>", divisions);
    for (int i = 0; i < 6; i++) {
        int duration = 1 + random_below(2 * divisions), step = random_below(7), octave = 2 + random_below(5);
        int64_t lasts = unit / divisions * duration;
        if (random_below(5) == 0) {
            buffer_printf(xml, "<note><rest/><duration>%d</duration></note>", duration);
        } else {
            buffer_printf(xml, "<note><pitch><step>%c</step><octave>%d</octave></pitch><duration>%d</duration></note>", steps[step], octave, duration);
            notes[(*count)++] = (Expected){start + position, lasts, 12 * (octave + 1) + semitones[step]};
        }
        position += lasts;
    }
    buffer_puts(xml, "</measure>");
    return position;
}

static bool agrees(const Movement *m, const Expected *notes, size_t count)
{
    const Part *part = &m->parts[0];
    if (part->note_count != count)
        return false;
    for (size_t i = 0; i < count; i++) {
        /* a / per == b / unit without division: both sides stay below 2^63 for parts of this length */
        int64_t common = ticks_common_divisor(m->per_crotchet, unit);
        int64_t mine = unit / common, theirs = m->per_crotchet / common;
        if (part->notes[i].onset * mine != notes[i].onset * theirs || part->notes[i].duration * mine != notes[i].duration * theirs || part->notes[i].midi != notes[i].midi)
            return false;
    }
    return true;
}

static void any_mixture_of_divisions_is_read_exactly(void)
{
    const char *given = getenv("SPEZZATO_SEED");
    uint64_t seed = given ? strtoull(given, NULL, 10) : (uint64_t)time(NULL);
    state = seed;
    for (int trial = 0; trial < PARTS; trial++) {
        Buffer xml;
        Expected notes[NOTES];
        size_t count = 0;
        int64_t position = 0;
        buffer_init(&xml);
        buffer_puts(&xml, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\">");
        for (int bar = 0; bar < 12; bar++)
            position += write_bar(&xml, notes, &count, position);
        buffer_puts(&xml, "</part></score-partwise>");
        bool right = agrees(movement_of(xml.text), notes, count);
        if (!right)
            printf("  part %d of SPEZZATO_SEED=%" PRIu64 "\n", trial, seed);
        CU_ASSERT_TRUE(right);
        buffer_free(&xml);
    }
}

static const struct Statement statements[] = {
    STATEMENT(any_mixture_of_divisions_is_read_exactly),
};

void suite_reader_random(void)
{
    suite_of("reader: random parts", statements, COUNT(statements));
}
