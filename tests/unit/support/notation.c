/* The notation in which tests and corpus are written: what it gives, and what it says of mistakes. */
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* How often `part` stands in the MusicXML of the music; -1 when the music is refused. Line ends and indents are not compared. */
static int times_written(const char *music, const char *part)
{
    char error[300];
    char *xml = notation_to_musicxml(music, NULL, error, sizeof error);
    int times = 0;
    if (!xml)
        return -1;
    size_t used = 0;
    for (const char *at = xml; *at; at++)
        if (*at != '\n' && !(*at == ' ' && (used == 0 || xml[used - 1] == '>')))
            xml[used++] = *at;
    xml[used] = '\0';
    for (const char *at = strstr(xml, part); at; at = strstr(at + 1, part))
        times++;
    free(xml);
    return times;
}

static bool refused_with(const char *music, const char *message)
{
    char error[300];
    char *xml = notation_to_musicxml(music, NULL, error, sizeof error);
    bool same = !xml && strcmp(error, message) == 0;
    if (!same)
        printf("  said '%s', not '%s'\n", xml ? "" : error, message);
    free(xml);
    return same;
}

static void a_bar_must_hold_its_beats(void)
{
    CU_ASSERT_TRUE(refused_with("time: 4/4\nViolin I: R*3\nViolin II: R*2 | c5*5\n", "line 3: Violin II, bar 3: five beats in a 4/4 bar"));
    CU_ASSERT_TRUE(refused_with("time: 3/4\nViola: c4 d4 e4:e\n", "line 2: Viola, bar 1: 2 1/2 beats in a 3/4 bar"));
    CU_ASSERT_TRUE(refused_with("time: 4/4\nViola: c4:w // e4:h\n", "line 2: Viola, bar 1: two beats in a 4/4 bar (in a further voice)"));
}

static void parts_must_have_the_same_bars(void)
{
    CU_ASSERT_TRUE(refused_with("Violin I: R*3\nViola: R*2\n", "Viola has 2 bars in this block, Violin I has 3"));
    CU_ASSERT_TRUE(refused_with("Violin I: R*3\nbar: 5\n", "line 2: the next bar is 4, not 5"));
}

static void a_tie_must_arrive(void)
{
    CU_ASSERT_TRUE(refused_with("Violin I: c5:w~ | d5:w\n", "line 1: Violin I, bar 1: a tie does not reach the same note"));
    CU_ASSERT_EQUAL(times_written("Violin I: c5:w~ | c5:w\n", "<tie type=\"stop\"/>"), 1);
}

static void mistakes_are_named_with_their_bar(void)
{
    CU_ASSERT_TRUE(refused_with("Viola: c4:w | h4\n", "line 1: Viola, bar 2: 'h4' is no note"));
    CU_ASSERT_TRUE(refused_with("Viola: c4 d4 e4 (3 f4:e g4 a4\n", "line 1: Viola, bar 1: a tuplet is not closed"));
    CU_ASSERT_TRUE(refused_with("Viola: {col Cello}\n", "line 1: Viola, bar 1: the part to double is not there"));
    CU_ASSERT_TRUE(refused_with("", "there is no music in it"));
}

static void a_silent_part_rests_through_the_block(void)
{
    const char *music = "part: Oboe\nViolin I: c5:w | d5:w\nbar: 3\nViolin I: e5:w\nOboe: g5:w\n";
    CU_ASSERT_EQUAL(times_written(music, "<rest measure=\"yes\"/>"), 2);
    CU_ASSERT_EQUAL(times_written(music, "<step>G</step>"), 1);
}

static void an_octave_below_is_written_with_the_other_part(void)
{
    const char *music = "Violin I: \"div.\" c5:h d5\nViola: {col Violin I -1}\n";
    CU_ASSERT_EQUAL(times_written(music, "<step>C</step><octave>4</octave>"), 1);
    CU_ASSERT_EQUAL(times_written(music, "<words>div.</words>"), 1);
}

static void the_same_bar_again_is_not_marked_again(void)
{
    CU_ASSERT_EQUAL(times_written("Viola: <p> c4:e*8 | %*2\n", "<step>C</step>"), 24);
    CU_ASSERT_EQUAL(times_written("Viola: <p> c4:e*8 | %*2\n", "<p/>"), 1);
}

static void a_horn_reads_its_own_key(void)
{
    CU_ASSERT_EQUAL(times_written("key: -1\npart: Horn in F; transpose -7\nHorn in F: c5:w\n", "<fifths>0</fifths>"), 1);
    CU_ASSERT_EQUAL(times_written("key: 2\npart: Clarinet; transpose -3\nClarinet: c5:w\n", "<fifths>-1</fifths>"), 1);
    CU_ASSERT_EQUAL(times_written("part: Double bass; transpose -12\nDouble bass: c3:w\n",
                                  "<diatonic>0</diatonic><chromatic>0</chromatic><octave-change>-1</octave-change>"),
                    1);
}

static void accidentals_hold_for_the_bar(void)
{
    CU_ASSERT_EQUAL(times_written("key: 1\nViolin: f#5 f5 f5 f#5 | f#5:w\n", "<accidental>"), 2);
}

static void a_triplet_takes_two_thirds(void)
{
    CU_ASSERT_EQUAL(times_written("time: 1/4\nViolin: (3 c5:e d5 e5 )\n", "<divisions>3</divisions>"), 1);
    CU_ASSERT_EQUAL(times_written("time: 1/4\nViolin: (3 c5:e d5 e5 )\n", "<duration>1</duration>"), 3);
}

static void an_upbeat_is_bar_nought(void)
{
    CU_ASSERT_EQUAL(times_written("pickup: 1/4\nViolin: g4 | c5:w\n", "<measure number=\"0\" implicit=\"yes\">"), 1);
    CU_ASSERT_EQUAL(times_written("pickup: 1/4\nViolin: g4 | c5:w\n", "<measure number=\"1\">"), 1);
    CU_ASSERT_EQUAL(times_written("Violin: R | {bar 12a} R | R\n", "<measure number=\"2\">"), 1);
}

static void endings_close_with_the_repeat(void)
{
    const char *music = "Violin: |: R |1. R :|2. R |]\n";
    CU_ASSERT_EQUAL(times_written(music, "<ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\"/>"), 1);
    CU_ASSERT_EQUAL(times_written(music, "<ending number=\"2\" type=\"discontinue\"/>"), 1);
}

static const struct Statement statements[] = {
    STATEMENT(a_bar_must_hold_its_beats),
    STATEMENT(parts_must_have_the_same_bars),
    STATEMENT(a_tie_must_arrive),
    STATEMENT(mistakes_are_named_with_their_bar),
    STATEMENT(a_silent_part_rests_through_the_block),
    STATEMENT(an_octave_below_is_written_with_the_other_part),
    STATEMENT(the_same_bar_again_is_not_marked_again),
    STATEMENT(a_horn_reads_its_own_key),
    STATEMENT(accidentals_hold_for_the_bar),
    STATEMENT(a_triplet_takes_two_thirds),
    STATEMENT(an_upbeat_is_bar_nought),
    STATEMENT(endings_close_with_the_repeat),
};

void suite_notation(void);
void suite_notation(void)
{
    suite_of("notation", statements, COUNT(statements));
}
