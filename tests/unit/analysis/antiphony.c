/* What counts as call and response, stated in music. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <math.h>
#include <string.h>

#define QUARTET \
    "time: 4/4  key: 0  tempo: q=96\n" \
    "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"

typedef struct Heard {
    spz_kind kind;
    double strength;
} Heard;

/* What those two say to each other; fails the test when nothing was heard. */
static Heard heard_between(const char *notation, const char *caller, const char *responder)
{
    Rehearsal r = rehearse(notation);
    const spz_passage *p = antiphony(&r, caller, responder);
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    Heard heard = {p->kind, p->strength};
    rehearsal_end(&r);
    return heard;
}

static void a_call_and_its_answer_are_an_exchange(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
                           "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->kind, SPZ_EXCHANGE);
    CU_ASSERT_TRUE(lies_in(p, "4", "7"));
    CU_ASSERT_EQUAL(p->turns, 4);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    CU_ASSERT_EQUAL(p->sides[0].section, SPZ_VN1);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "answered a bar later"));
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "at the same pitch"));
    rehearsal_end(&r);
}

static void an_answer_in_sequence_names_its_interval(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:e( a5 b5 c6) g5:q r | R | a5:e( b5 c6 d6) a5:q r | R | c5:w\n"
                           "Violin II:   R*2 | R | e5:e( f5 g5 a5) e5:q r | R | f5:e( g5 a5 b5) f5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "a third lower"));
    rehearsal_end(&r);
}

static void violins_in_octaves_are_no_exchange(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    g5:e a5 b5 c6 g5:q e5 | f5:e g5 a5 b5 f5:q d5 | g5:e a5 b5 c6 g5:q e5 | c5:w\n"
                           "Violin II:   {col Violin I -1}*4\n"
                           "Viola:       c4:w | d4 | c4 | c4\n"
                           "Violoncello: c3:w | g2 | c3 | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_TRUE(p == NULL || p->strength < 0.5);
    rehearsal_end(&r);
}

static void single_notes_tossed_every_beat_are_a_hocket(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | g5:e' r a5' r b5' r c6' r | d6' r c6' r b5' r a5' r | g5' r f5' r e5' r d5' r | c5:w\n"
                           "Violin II:   R | r:e d5' r e5' r f#5' r g5' | r a5' r g5' r f5' r e5' | r d5' r c5' r b4' r a4' | g4:w\n"
                           "Viola:       c4:w~ | c4 | g4 | g4 | e4\n"
                           "Violoncello: c3:w~ | c3 | g3 | g3 | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->kind, SPZ_HOCKET);
    CU_ASSERT_TRUE(p->turns >= 10);
    rehearsal_end(&r);
}

/* Single notes in turn for three bars, then the theme, two bars for each: two passages, not one of both. */
static void where_the_gesture_changes_a_new_passage_begins(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | g5:e' r a5' r b5' r c6' r | d6' r c6' r b5' r a5' r | g5' r f5' r e5' r d5' r | g5:q. a5:e b5:q d6 | c6:q. b5:e a5:q r | R*2 |"
                           " g5:q. a5:e b5:q d6 | c6:q. b5:e a5:q r | R*2 | c5:w\n"
                           "Violin II:   R | r:e d5' r e5' r f#5' r g5' | r a5' r g5' r f5' r e5' | r d5' r c5' r b4' r a4' | R*2 | g5:q. a5:e b5:q d6 | c6:q. b5:e a5:q r |"
                           " R*2 | g5:q. a5:e b5:q d6 | c6:q. b5:e a5:q r | g4:w\n"
                           "Viola:       c4:w | c4 | g4 | g4 | e4~ | e4 | e4~ | e4 | e4~ | e4 | e4~ | e4 | e4\n"
                           "Violoncello: c3:w | c3 | g3 | g3 | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *first = heard(&r, SPZ_HOCKET, "Vn I", "Vn II"), *second = heard(&r, SPZ_EXCHANGE, "Vn I", "Vn II");
    CU_ASSERT_TRUE_FATAL(first && second);
    CU_ASSERT_TRUE(lies_in(first, "2", "4"));
    CU_ASSERT_TRUE(lies_in(second, "5", "12"));
    CU_ASSERT_EQUAL(second->turns, 4);
    rehearsal_end(&r);
}

static void a_figure_with_a_long_first_note_is_answered_not_tossed(void)
{
    Rehearsal r = rehearse("time: 2/2  key: 0  tempo: h=60\n"
                           "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin I:    R | R | f5:h b4:e c5:s b4:s a4:e b4:e | f5:h r:h | R | f5:h b4:e c5:s b4:s a4:e b4:e | f5:h r:h | R | c5:w\n"
                           "Violin II:   R | R | r:h f4:h | b3:e c4:s b3:s a3:e b3:e f4:h | R | r:h f4:h | b3:e c4:s b3:s a3:e b3:e f4:h | R | g4:w\n"
                           "Viola:       c4:w~ | c4 | R*6 | e4:w\n"
                           "Violoncello: c3:w~ | c3 | R*6 | c3:w\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->kind, SPZ_EXCHANGE);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "figure, answered a beat later"));
    rehearsal_end(&r);
}

static void what_sounds_as_a_fifth_is_told_as_one(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | eb6:e eb6 f6 eb6 c6:q r | R | eb6:e eb6 f6 eb6 c6:q r | R | c5:w\n"
                           "Violin II:   R*2 | R | g#5:e g#5 a#5 g#5 e#5:q r | R | g#5:e g#5 a#5 g#5 e#5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "a fifth lower"));
    rehearsal_end(&r);
}

static void a_canon_is_imitation(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    c5:q e5:e f5 g5:q c6 | b5:e a5 g5 f5 e5:q a5 | d5:e e5 f5 d5 g5:q f5 | e5:e d5 c5:q r:h | c5:w\n"
                           "Violin II:   R | c5:q e5:e f5 g5:q c6 | b5:e a5 g5 f5 e5:q a5 | d5:e e5 f5 d5 g5:q f5 | e5:w\n"
                           "Viola:       R*5\n"
                           "Violoncello: R*5\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->kind, SPZ_IMITATION);
    CU_ASSERT_EQUAL(p->sides[0].section, SPZ_VN1);
    rehearsal_end(&r);
}

static void both_violins_answered_by_the_cellos_are_named_together(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | c6:w\n"
                           "Violin II:   R | <f> g4:q. a4:e b4:q d5 | R | a4:q. b4:e c5:q e5 | R | c5:w\n"
                           "Viola:       R | d4:w | d4 | e4 | e4 | g4\n"
                           "Violoncello: R | R | <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | c3:w\n");
    CU_ASSERT_PTR_NOT_NULL(antiphony(&r, "Violins", "Vc"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn I", "Vc"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn II", "Vc"));
    rehearsal_end(&r);
}

static void violas_whom_the_cellos_join_bear_their_name(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | b5:q. c6:e d6:q f6 | R | c6:w\n"
                           "Violin II:   <f> g4:q. a4:e b4:q d5 | R | a4:q. b4:e c5:q e5 | R | b4:q. c5:e d5:q f5 | R | c5:w\n"
                           "Viola:       R | <f> g3:q. a3:e b3:q d4 | R | a3:q. b3:e c4:q e4 | R | b3:q. c4:e d4:q f4 | c4:w\n"
                           "Violoncello: R | <f> g2:q. a2:e b2:h | R | a2:q. b2:e c3:h | R | b2:q. c3:e d3:h | c3:w\n");
    CU_ASSERT_PTR_NOT_NULL(antiphony(&r, "Violins", "Vc"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Violins", "Va"));
    rehearsal_end(&r);
}

static void violas_whom_the_seconds_join_bear_their_name(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    c6:w~ | c6 | d6~ | d6 | e6~ | e6 | c6:w\n"
                           "Violin II:   R | <f> g4:q. a4:e b4:h | R | a4:q. b4:e c5:h | R | b4:q. c5:e d5:h | c5:w\n"
                           "Viola:       R | <f> g3:q. a3:e b3:q d4 | R | a3:q. b3:e c4:q e4 | R | b3:q. c4:e d4:q f4 | c4:w\n"
                           "Violoncello: <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | R | b2:q. c3:e d3:q f3 | R | c3:w\n");
    CU_ASSERT_PTR_NOT_NULL(antiphony(&r, "Vc", "Vn II"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vc", "Va"));
    rehearsal_end(&r);
}

static void off_beat_accompaniment_is_at_most_marginal(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    g5:h. a5:q | b5:h. c6:q | d6:h c6 | b5:w | a5:h. b5:q | c6:h. d6:q | e6:h d6 | c6:w\n"
                           "Violin II:   r:e e4 e4 e4 r e4 e4 e4 | %*7\n"
                           "Viola:       r:e c4 c4 c4 r c4 c4 c4 | %*7\n"
                           "Violoncello: c3:q r c3 r | %*7\n");
    for (size_t i = 0; i < spz_findings_count(r.findings); i++) {
        const spz_passage *p = spz_findings_at(r.findings, i);
        if (spz_kind_is_antiphony(p->kind))
            CU_ASSERT_TRUE(p->strength < 0.5);
    }
    rehearsal_end(&r);
}

static void an_answer_upside_down_is_known_again(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:e( a5 b5 c6) d6:q r | R | a5:e( b5 c6 d6) e6:q r | R | c5:w\n"
                           "Violin II:   R*2 | R | d6:e( c6 b5 a5) g5:q r | R | e6:e( d6 c6 b5) a5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "a fifth higher, upside down"));
    rehearsal_end(&r);
}

static void one_step_the_other_way_is_no_inversion(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | c6:q c6 d6:h | R | c6:q c6 d6:h | R | c5:w\n"
                           "Violin II:   R*2 | R | g5:q g5 f5:h | R | g5:q g5 f5:h | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    for (size_t i = 0; i < spz_findings_count(r.findings); i++)
        CU_ASSERT_PTR_NULL(strstr(told(&r, spz_findings_at(r.findings, i)), "upside down"));
    rehearsal_end(&r);
}

static void an_answer_in_notes_twice_as_long_is_known_again(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:e a5 c6 b5 d6:q r | R*3 | c5:w\n"
                           "Violin II:   R*2 | R | g5:q a5 c6 b5 | d6:h r | R | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    CU_ASSERT_TRUE(lies_in(p, "3", "5"));
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "answered a bar later by the second violin at the same pitch, in notes twice as long"));
    rehearsal_end(&r);
}

static void an_answer_in_notes_half_as_long_is_known_again(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:q a5 c6 b5 | d6:h r | R*2 | c5:w\n"
                           "Violin II:   R*2 | R*2 | g5:e a5 c6 b5 d6:q r | R | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "3", "5"));
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "in notes half as long"));
    rehearsal_end(&r);
}

static void a_scale_in_other_note_values_is_no_answer(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:e a5 b5 c6 d6:q r | R*3 | c5:w\n"
                           "Violin II:   R*2 | R | g5:q a5 b5 c6 | d6:h r | R | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

static void a_gesture_that_goes_through_three_sections_names_them_in_order(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | g5:e( a5 b5 c6) g5:q r | R*2 | a5:e( b5 c6 d6) a5:q r | R*2 | c6:w\n"
                           "Violin II:   R | R | g4:e( a4 b4 c5) g4:q r | R*2 | a4:e( b4 c5 d5) a4:q r | R | e5:w\n"
                           "Viola:       R | R*2 | g3:e( a3 b3 c4) g3:q r | R*2 | a3:e( b3 c4 d4) a3:q r | g4:w\n"
                           "Violoncello: c3:w | c3~ | c3 | c3 | c3~ | c3 | c3 | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(order_of_entry(&r, p), "Vn I - Vn II - Va");
    rehearsal_end(&r);
}

static void a_wandering_gesture_is_named_by_who_began_and_who_answered_first(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | d6:w~ | d6~ | d6 | e6~ | e6~ | e6 | c6\n"
                           "Violin II:   R | R | g4:e( a4 b4 c5) g4:q r | R*2 | a4:e( b4 c5 d5) a4:q r | R | e5:w\n"
                           "Viola:       R | g3:e( a3 b3 c4) g3:q r | R*2 | a3:e( b3 c4 d4) a3:q r | R*2 | g4:w\n"
                           "Violoncello: R | R*2 | g2:e( a2 b2 c3) g2:q r | R*2 | a2:e( b2 c3 d3) a2:q r | c3:w\n");
    const spz_passage *p = antiphony(&r, "Va", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    CU_ASSERT_STRING_EQUAL(order_of_entry(&r, p), "Va - Vn II - Vc");
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn II", "Vc"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Va", "Vc"));
    rehearsal_end(&r);
}

static void basses_that_answer_without_the_cellos_are_named_themselves(void)
{
    Rehearsal r = rehearse(QUARTET "part: Contrabass; clef bass\n"
                                   "Violin I:    e6:w~ | e6~ | e6 | e6~ | e6 | e6~ | e6\n"
                                   "Violin II:   R*2 | g4:e( a4 b4 c5) g4:q r | R | e4:e( f4 g4 a4) e4:q r | R | c4:w\n"
                                   "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                                   "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n"
                                   "Contrabass:  R*2 | R | g2:e( a2 b2 c3) g2:q r | R | e2:e( f2 g2 a2) e2:q r | c2:w\n");
    CU_ASSERT_PTR_NOT_NULL(antiphony(&r, "Vn II", "Db"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn II", "Vc"));
    rehearsal_end(&r);
}

#define OVER_A_PEDAL(answer) \
    QUARTET "Violin I:    R*2 | c5:e( e5 g5 e5) c5:q r | R*2 | c5:w\nViolin II:   R*2 | R | " answer " | R | c5:w\n" \
            "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4\nVioloncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3\n"

/* A third answered by a third of the other kind is as good: the scale bends the interval, not the player. */
static void a_tonal_answer_is_as_strong_as_a_real_one(void)
{
    Heard real = heard_between(OVER_A_PEDAL("g4:e( b4 d5 b4) g4:q r"), "Vn I", "Vn II");
    Heard tonal = heard_between(OVER_A_PEDAL("d5:e( f5 a5 f5) d5:q r"), "Vn I", "Vn II");
    CU_ASSERT_DOUBLE_EQUAL(real.strength, tonal.strength, 1e-9);
}

#define CALLER_GOES_ON(under) \
    QUARTET "Violin I:    R*2 | R*3 | c6:w\nViolin II:   R*2 | R | g4:q bb4:e d5 g5:q f#5 | g5:w | c5\n" \
            "Viola:       R*2 | g3:q bb3:e d4 g4:q f#4 | " under " | R*2\nVioloncello: g2:w~ | g2~ | g2 | g2~ | g2 | g2\n"

static void a_line_goes_on_in_tremolo_as_it_does_in_plain_notes(void)
{
    Heard plain = heard_between(CALLER_GOES_ON("d4:e c4 bb3 c4 d4 eb4 d4 c4"), "Va", "Vn II");
    Heard moving = heard_between(CALLER_GOES_ON("d4:e=2 c4=2 bb3=2 c4=2 d4=2 eb4=2 d4=2 c4=2"), "Va", "Vn II");
    Heard held = heard_between(CALLER_GOES_ON("d4:w=2"), "Va", "Vn II");
    CU_ASSERT_EQUAL(plain.kind, SPZ_IMITATION);
    CU_ASSERT_EQUAL(moving.kind, SPZ_IMITATION);
    CU_ASSERT_EQUAL(held.kind, SPZ_EXCHANGE);
    CU_ASSERT_TRUE(held.strength > moving.strength);
    CU_ASSERT_TRUE(fabs(plain.strength - moving.strength) < 0.5 * (held.strength - moving.strength));
}

/* Two choirs, antiphony in the oldest sense; inside each, the seconds answer their own firsts as well. */
static void two_orchestras_that_answer_each_other_are_named_before_their_violins(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0  tempo: q=96\n"
                           "part: Violin I, first orchestra\npart: Violin II, first orchestra\n"
                           "part: Violin I, second orchestra\npart: Violin II, second orchestra\n"
                           "Violin I, first orchestra:   R | g5:e( a5 b5 c6) g5:q r | R*3 | a5:e( b5 c6 d6) a5:q r | R*3 | c6:w\n"
                           "Violin II, first orchestra:  R | R | g4:e( a4 b4 c5) g4:q r | R*3 | a4:e( b4 c5 d5) a4:q r | R*2 | c5:w\n"
                           "Violin I, second orchestra:  R | R*2 | g5:e( a5 b5 c6) g5:q r | R*3 | a5:e( b5 c6 d6) a5:q r | R | c6:w\n"
                           "Violin II, second orchestra: R | R*3 | g4:e( a4 b4 c5) g4:q r | R*3 | a4:e( b4 c5 d5) a4:q r | c5:w\n");
    bool between = false, inside = false;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++) {
        const spz_passage *p = spz_findings_at(r.findings, i);
        if (!spz_kind_is_antiphony(p->kind) || p->strength < 0.5 || p->sides[0].group == SIZE_MAX || p->sides[1].group == SIZE_MAX)
            continue;
        bool apart = spz_sections_group(r.sections, p->sides[0].group)->orchestra != spz_sections_group(r.sections, p->sides[1].group)->orchestra;
        between = between || (apart && p->sides[0].section == p->sides[1].section);
        CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "of the second orchestra"));
        inside = inside || !apart;
    }
    CU_ASSERT_TRUE(between);
    CU_ASSERT_FALSE(inside);
    rehearsal_end(&r);
}

static void strings_answered_by_winds_are_told_and_seat_nobody(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=96\n"
                           "Oboe:        R*2 | R | g5:e( a5 b5 c6) g5:q r | R | f5:e( g5 a5 b5) f5:q r | c6:w\n"
                           "Violin I:    R*2 | g5:e( a5 b5 c6) g5:q r | R | f5:e( g5 a5 b5) f5:q r | R | c6:w\n"
                           "Violin II:   R*2 | g4:e( a4 b4 c5) g4:q r | R | f4:e( g4 a4 b4) f4:q r | R | e5:w\n");
    CU_ASSERT_PTR_NOT_NULL(antiphony(&r, "Strings", "Winds"));
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

static void a_short_figure_heard_again_eight_bars_later_is_no_answer(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    g5:e a5 b5 r r:h | R*7 | R | c6:w\n"
                           "Violin II:   R*8 | g5:e a5 b5 r r:h | e5:w\n"
                           "Viola:       c4:w | d4 | e4 | f4 | e4 | d4 | c4 | d4 | e4 | c4\n"
                           "Violoncello: c3:w | g2 | c3 | f2 | g2 | a2 | f2 | g2 | c3 | c3\n");
    CU_ASSERT_PTR_NULL(antiphony(&r, "Vn I", "Vn II"));
    rehearsal_end(&r);
}

/* What is heard depends neither on the key nor on the note values chosen to write it in. */
static void the_same_exchange_in_another_key_or_in_longer_values_is_as_strong(void)
{
    const char *written[] = {
        QUARTET "Violin I:    R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
                "Violin II:   R*2 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
                "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\nVioloncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n",
        QUARTET "Violin I:    R*2 | a5:e( b5 c#6 d6) a5:q r | R | f#5:e( g5 a5 b5) f#5:q r | R | d5:w\n"
                "Violin II:   R*2 | R | a5:e( b5 c#6 d6) a5:q r | R | f#5:e( g5 a5 b5) f#5:q r | d5:w\n"
                "Viola:       d4:w~ | d4~ | d4 | d4~ | d4 | d4~ | d4\nVioloncello: d3:w~ | d3~ | d3 | d3~ | d3 | d3~ | d3\n",
        "time: 4/2  tempo: h=96\npart: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
        "Violin I:    R*2 | g5:q( a5 b5 c6) g5:h r | R | e5:q( f5 g5 a5) e5:h r | R | c5:d\n"
        "Violin II:   R*2 | R | g5:q( a5 b5 c6) g5:h r | R | e5:q( f5 g5 a5) e5:h r | c5:d\n"
        "Viola:       c4:d~ | c4~ | c4 | c4~ | c4 | c4~ | c4\nVioloncello: c3:d~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n"};
    double strength[3] = {0};
    for (size_t i = 0; i < COUNT(written); i++) {
        Rehearsal r = rehearse(written[i]);
        const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
        CU_ASSERT_PTR_NOT_NULL_FATAL(p);
        CU_ASSERT_TRUE(lies_in(p, "3", "6"));
        strength[i] = p->strength;
        rehearsal_end(&r);
    }
    CU_ASSERT_DOUBLE_EQUAL(strength[0], strength[1], 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(strength[0], strength[2], 1e-9);
}

static void silence_has_no_passages(void)
{
    Rehearsal r = rehearse(QUARTET "Violin I: R*4\nViolin II: R*4\nViola: R*4\nVioloncello: R*4\n");
    CU_ASSERT_EQUAL(spz_findings_count(r.findings), 0);
    rehearsal_end(&r);
}

/* A call of the violas and the cellos' answer, each with a mark; `others`: what is set in the violins at the same time. */
#define WITH_MARKS(mark, others) \
    QUARTET "Violin I:    g5:w | " others " f5:w | " others " e5:w | d5:w | c5:w\n" \
            "Violin II:   e5:w | " others " d5:w | " others " c5:w | b4:w | c5:w\n" \
            "Viola:       R | " mark " g4:e( a4 b4 c5) g4:q r | " others " R | R | e4:w\n" \
            "Violoncello: R | " others " R | " mark " g3:e( a3 b3 c4) g3:q r | R | c3:w\n"

static void an_entry_that_the_composer_singles_out_is_heard_more_clearly(void)
{
    Heard plain = heard_between(WITH_MARKS("", ""), "Va", "Vc");
    Heard dolce = heard_between(WITH_MARKS("\"dolce\"", ""), "Va", "Vc");
    Heard loud = heard_between(WITH_MARKS("<sfz>", ""), "Va", "Vc");
    Heard everybody = heard_between(WITH_MARKS("\"dolce\"", "\"dolce\""), "Va", "Vc");
    CU_ASSERT_TRUE(dolce.strength > plain.strength + 0.01);
    CU_ASSERT_TRUE(loud.strength > plain.strength + 0.01);
    CU_ASSERT_DOUBLE_EQUAL(everybody.strength, plain.strength, 1e-9); /* what stands in all parts singles out nobody */
}

static void an_octave_stays_one_however_it_is_spelt(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | f#5:e( g#5 a#5 b5) f#5:q r | R | f#5:e( g#5 a#5 b5) f#5:q r | R | c5:w\n"
                           "Violin II:   R*2 | R | gb4:e( ab4 bb4 cb5) gb4:q r | R | gb4:e( ab4 bb4 cb5) gb4:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "an octave lower"));
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(an_octave_stays_one_however_it_is_spelt),
    STATEMENT(a_call_and_its_answer_are_an_exchange),
    STATEMENT(an_answer_in_sequence_names_its_interval),
    STATEMENT(violins_in_octaves_are_no_exchange),
    STATEMENT(single_notes_tossed_every_beat_are_a_hocket),
    STATEMENT(where_the_gesture_changes_a_new_passage_begins),
    STATEMENT(a_figure_with_a_long_first_note_is_answered_not_tossed),
    STATEMENT(what_sounds_as_a_fifth_is_told_as_one),
    STATEMENT(a_canon_is_imitation),
    STATEMENT(both_violins_answered_by_the_cellos_are_named_together),
    STATEMENT(violas_whom_the_cellos_join_bear_their_name),
    STATEMENT(violas_whom_the_seconds_join_bear_their_name),
    STATEMENT(off_beat_accompaniment_is_at_most_marginal),
    STATEMENT(an_answer_upside_down_is_known_again),
    STATEMENT(one_step_the_other_way_is_no_inversion),
    STATEMENT(an_answer_in_notes_twice_as_long_is_known_again),
    STATEMENT(an_answer_in_notes_half_as_long_is_known_again),
    STATEMENT(a_scale_in_other_note_values_is_no_answer),
    STATEMENT(a_gesture_that_goes_through_three_sections_names_them_in_order),
    STATEMENT(a_wandering_gesture_is_named_by_who_began_and_who_answered_first),
    STATEMENT(basses_that_answer_without_the_cellos_are_named_themselves),
    STATEMENT(a_tonal_answer_is_as_strong_as_a_real_one),
    STATEMENT(a_line_goes_on_in_tremolo_as_it_does_in_plain_notes),
    STATEMENT(an_entry_that_the_composer_singles_out_is_heard_more_clearly),
    STATEMENT(two_orchestras_that_answer_each_other_are_named_before_their_violins),
    STATEMENT(strings_answered_by_winds_are_told_and_seat_nobody),
    STATEMENT(a_short_figure_heard_again_eight_bars_later_is_no_answer),
    STATEMENT(the_same_exchange_in_another_key_or_in_longer_values_is_as_strong),
    STATEMENT(silence_has_no_passages),
};

void suite_antiphony(void);
void suite_antiphony(void)
{
    suite_of("antiphony", statements, COUNT(statements));
}
