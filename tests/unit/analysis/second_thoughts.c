/* What a musician holds against a call and its answer however alike they are, or for them. Each score stands beside one in which that
 * one thing is otherwise. */
#include "spezzato/explain.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <stdio.h>

/* Of all that was compared in the bar between firsts and seconds: whether one is held to be this, and whether all are. */
typedef struct Held {
    bool some, all;
} Held;

static Held held(const char *notation, const char *bar, spz_thought thought)
{
    Rehearsal r = rehearse(notation);
    spz_explanation *e = NULL;
    Held found = {false, true};
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r.sections, bar, 12, &e), SPZ_OK);
    CU_ASSERT_TRUE(spz_explanation_count(e) > 0);
    for (size_t i = 0; i < spz_explanation_count(e); i++) {
        bool this_one = spz_explanation_at(e, i)->thoughts >> thought & 1;
        found.some |= this_one;
        found.all &= this_one;
    }
    found.all &= found.some;
    spz_explanation_free(e);
    rehearsal_end(&r);
    return found;
}

#define PARTS "time: 4/4  key: 0  tempo: q=96\npart: Flute\npart: Violin I\npart: Violin II\npart: Violoncello; clef bass\n"

static void who_plays_the_answer_along_is_not_answered(void)
{
    static const char score[] = PARTS "Flute: R*5\n"
                                      "Violin I:    R | g5:e a5 b5 d6 g5:q r | %s | R | R\n"
                                      "Violin II:   R | R | g4:e a4 b4 d5 g4:q r | R | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3\n";
    char together[600], alone[600];
    snprintf(together, sizeof together, score, "g5:e a5 b5 r r:h");
    snprintf(alone, sizeof alone, score, "R");
    CU_ASSERT_TRUE(held(together, "2", SPZ_THOUGHT_JOINED).some);
    CU_ASSERT_FALSE(held(alone, "2", SPZ_THOUGHT_JOINED).some);
}

static void a_bar_of_the_winds_alone_comes_between_call_and_answer(void)
{
    static const char score[] = PARTS "Flute:       R | R | %s | R | R\n"
                                      "Violin I:    R | g5:e a5 b5 d6 g5:q r | R | R | R\n"
                                      "Violin II:   R | R | R | g4:e a4 b4 d5 g4:q r | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3~ | c3~ | c3\n";
    char winds[600], silence[600];
    snprintf(winds, sizeof winds, score, "c6:e b5 a5 f5 g5 a5 b5 a5");
    snprintf(silence, sizeof silence, score, "R");
    CU_ASSERT_TRUE(held(winds, "2", SPZ_THOUGHT_INTERRUPTED).all);
    CU_ASSERT_FALSE(held(silence, "2", SPZ_THOUGHT_INTERRUPTED).some);
}

static void a_call_that_a_wind_leads_is_not_answered_by_strings_alone(void)
{
    static const char score[] = PARTS "Flute:       R | %s | %s | R\n"
                                      "Violin I:    R | g5:e a5 b5 d6 g5:q r | R | R\n"
                                      "Violin II:   R | R | g4:e a4 b4 d5 g4:q r | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3~ | c3\n";
    char call[600], both[600], neither[600];
    snprintf(call, sizeof call, score, "b5:e c6 d6 f6 b5:q r", "R");
    snprintf(both, sizeof both, score, "b5:e c6 d6 f6 b5:q r", "b5:e c6 d6 f6 b5:q r");
    snprintf(neither, sizeof neither, score, "R", "R");
    CU_ASSERT_TRUE(held(call, "2", SPZ_THOUGHT_WINDS_LEAD).all);
    CU_ASSERT_FALSE(held(both, "2", SPZ_THOUGHT_WINDS_LEAD).some);
    CU_ASSERT_FALSE(held(neither, "2", SPZ_THOUGHT_WINDS_LEAD).some);
}

static void rocking_on_two_notes_out_of_other_notes_is_a_murmur(void)
{
    static const char score[] = PARTS "Flute: R*5\n"
                                      "Violin I:    g5:e f5 e5 d5 g5 f5 e5 d5 | %s g5:q | g4:w | R | R\n"
                                      "Violin II:   e4:w | g4:e f4 e4 d4 g4 f4 e4 d4 | %s b4:q | R | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3\n";
    char murmur[600], figure[600];
    snprintf(murmur, sizeof murmur, score, "c5:s d5 c5 d5 c5 d5 c5 d5 c5 d5 c5 d5", "e4:s f4 e4 f4 e4 f4 e4 f4 e4 f4 e4 f4");
    snprintf(figure, sizeof figure, score, "c5:s d5 e5 g5 f5 e5 d5 g5 a5 b5 a5 d5", "e4:s f4 g4 b4 a4 g4 f4 b4 c5 d5 c5 f4");
    CU_ASSERT_TRUE(held(murmur, "2", SPZ_THOUGHT_MURMUR).some);
    CU_ASSERT_FALSE(held(figure, "2", SPZ_THOUGHT_MURMUR).some);
}

static void beat_and_afterbeat_beneath_a_wind_accompany(void)
{
    static const char score[] = PARTS "Flute:       R | %s | %s | R\n"
                                      "Violin I:    R | g4:e g4 r:q a4:e a4 r:q | b4:e b4 r:q a4:e a4 r:q | R\n"
                                      "Violin II:   R | r:q d4:e d4 r:q e4:e e4 | r:q f4:e f4 r:q e4:e e4 | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3~ | c3\n";
    char beneath[600], bare[600];
    snprintf(beneath, sizeof beneath, score, "e6:e f6 d6:e c6 b5 c6 d6 e6", "f6:e g6 e6:e d6 c6 d6 e6 f6");
    snprintf(bare, sizeof bare, score, "R", "R");
    CU_ASSERT_TRUE(held(beneath, "2", SPZ_THOUGHT_AFTERBEATS).some);
    CU_ASSERT_FALSE(held(bare, "2", SPZ_THOUGHT_AFTERBEATS).some);
}

static void a_marked_rhythm_is_known_again_though_its_notes_move_otherwise(void)
{
    static const char score[] = PARTS "Flute: R*6\n"
                                      "Violin I:    R | r:q %s g5:e. a5:s b5:q d5 | R | r:q %s a5:e. b5:s c6:q e5 | R | R\n"
                                      "Violin II:   R | R | r:q %s e5:e. f5:s c5:q b4 | R | r:q %s f5:e. g5:s d5:q c5 | R\n"
                                      "Violoncello: c3:w~ | c3~ | c3~ | c3~ | c3~ | c3\n";
    char marked[600], plain[600];
    snprintf(marked, sizeof marked, score, "<ff>", "<ff>", "<ff>", "<ff>");
    snprintf(plain, sizeof plain, score, "", "", "", "");
    Held m = held(marked, "2", SPZ_THOUGHT_BARE_RHYTHM);
    CU_ASSERT_TRUE(m.some);
    CU_ASSERT_FALSE(held(plain, "2", SPZ_THOUGHT_BARE_RHYTHM).some);
}

static const struct Statement statements[] = {
    STATEMENT(who_plays_the_answer_along_is_not_answered),
    STATEMENT(a_bar_of_the_winds_alone_comes_between_call_and_answer),
    STATEMENT(a_call_that_a_wind_leads_is_not_answered_by_strings_alone),
    STATEMENT(rocking_on_two_notes_out_of_other_notes_is_a_murmur),
    STATEMENT(beat_and_afterbeat_beneath_a_wind_accompany),
    STATEMENT(a_marked_rhythm_is_known_again_though_its_notes_move_otherwise),
};

void suite_second_thoughts(void);
void suite_second_thoughts(void)
{
    suite_of("second_thoughts", statements, COUNT(statements));
}
