/* Where a listener hears a group of notes begin: the strength of the boundary before each note of a section. */
#include "analysis/melody/boundaries.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <stdio.h>

/* The first violins' notes of music in 4/4 (crotchets unless said); what is asked of them is ended by `silence`. */
typedef struct Line {
    Rehearsal rehearsal;
    Arena arena;
    const NoteEvent *notes;
    size_t count;
} Line;

static Line line_of(const char *music)
{
    char text[1000];
    Line line;
    snprintf(text, sizeof text, "time: 4/4  tempo: q=96\nViolin I: %s\nViolin II: R*4\nViola: R*4\nVioloncello: R*4\n", music);
    line.rehearsal = rehearse(text);
    arena_init(&line.arena);
    Melody *melodies = melodies_of(line.rehearsal.sections, &line.arena);
    CU_ASSERT_PTR_NOT_NULL_FATAL(melodies);
    boundaries_mark_all(line.rehearsal.sections, melodies);
    line.notes = melodies[0].events;
    line.count = melodies[0].count;
    return line;
}

static void silence(Line *line)
{
    arena_release(&line->arena);
    rehearsal_end(&line->rehearsal);
}

/* The note (from 0) at which, the first one aside, a group begins most strongly. */
static size_t strongest(const char *music)
{
    Line line = line_of(music);
    size_t best = 1;
    for (size_t i = 2; i < line.count; i++)
        best = line.notes[i].boundary > line.notes[best].boundary ? i : best;
    silence(&line);
    return best;
}

static double strength(const char *music, size_t note)
{
    Line line = line_of(music);
    CU_ASSERT_TRUE_FATAL(note < line.count);
    double found = (double)line.notes[note].boundary;
    silence(&line);
    return found;
}

static void a_group_begins_after_a_rest_a_long_note_or_a_leap(void)
{
    CU_ASSERT_EQUAL(strongest("c5 d5:e r f5 g5 a5:q | g5 f5 e5 d5 | c5:w | c5"), 2);
    CU_ASSERT_TRUE(strength("c5:h. d5:e e5 | f5 e5 f5 e5 c5:h | R | R", 1) > strength("c5 d5 c5 d5:e e5 | f5 e5 f5 e5 c5:h | R | R", 3) + 1);
    CU_ASSERT_TRUE(strength("c5 c6 d6 c6 | d6 c6 d6 c6 | R | R", 1) < strength("c5 d5 c6 d6 | c6 d6 c6 d6 | R | R", 2));
}

static void what_a_slur_binds_is_one_group_and_a_slur_begins_one(void)
{
    CU_ASSERT_TRUE(strength("c5 d5( e5 f5) | g5 a5 g5 a5 | R | R", 2) < strength("c5 d5 e5 f5 | g5 a5 g5 a5 | R | R", 2) - 1);
    CU_ASSERT_TRUE(strength("c5 d5 e5( f5) | g5 a5 g5 a5 | R | R", 2) > strength("c5 d5 e5 f5 | g5 a5 g5 a5 | R | R", 2));
}

static void a_mark_and_a_change_of_touch_begin_a_group(void)
{
    CU_ASSERT_TRUE(strength("c5 d5 <p> e5 f5 | g5 a5 g5 a5 | R | R", 2) > strength("c5 d5 e5 f5 | g5 a5 g5 a5 | R | R", 2));
    CU_ASSERT_TRUE(strength("c5 d5 e5' f5' | g5 a5 g5 a5 | R | R", 2) > strength("c5 d5 e5 f5 | g5 a5 g5 a5 | R | R", 2));
}

static void groups_begin_with_bars_and_half_bars_rather_than_on_other_beats(void)
{
    Line line = line_of("c5 d5 e5 d5 | c5 d5 e5 d5 | R | R");
    CU_ASSERT_TRUE(line.notes[4].boundary > line.notes[2].boundary && line.notes[6].boundary > line.notes[5].boundary);
    silence(&line);
}

/* The rhythm that began after a rest begins a group when it comes again without one. */
static void the_same_rhythm_begins_a_group_again(void)
{
    const char *again = "c5:q r e5:e f5 g5:q | a5:q g5 e5:e f5 g5:q | R | R", *another = "c5:q r e5:e f5 g5:q | a5:q g5 e5:e. f5:s g5:q | R | R";
    CU_ASSERT_TRUE(strength(again, 6) > strength(another, 6));
}

static void dry_quavers_are_no_calls_of_one_note_each(void)
{
    const char *dry = "c5:e r d5 r e5 r f5 r | g5:q r r:h | R | R";
    CU_ASSERT_TRUE(strength(dry, 1) < 1.5 && strength(dry, 3) < 1.5);
    CU_ASSERT_TRUE(strength(dry, 4) > 1.5);
}

static void a_long_note_and_two_short_ones_are_one_group(void)
{
    const char *row = "c5:q d5:e e5 f5:q g5:e f5 | e5:q f5:e g5 c5:h | R | R";
    CU_ASSERT_TRUE(strength(row, 1) < 1.5 && strength(row, 4) < 1.5 && strength(row, 7) < 1.5);
    CU_ASSERT_TRUE(strength(row, 6) > 1.5);
}

static const struct Statement statements[] = {
    STATEMENT(a_group_begins_after_a_rest_a_long_note_or_a_leap),
    STATEMENT(what_a_slur_binds_is_one_group_and_a_slur_begins_one),
    STATEMENT(a_mark_and_a_change_of_touch_begin_a_group),
    STATEMENT(groups_begin_with_bars_and_half_bars_rather_than_on_other_beats),
    STATEMENT(the_same_rhythm_begins_a_group_again),
    STATEMENT(dry_quavers_are_no_calls_of_one_note_each),
    STATEMENT(a_long_note_and_two_short_ones_are_one_group),
};

void suite_boundaries(void);
void suite_boundaries(void)
{
    suite_of("boundaries", statements, COUNT(statements));
}
