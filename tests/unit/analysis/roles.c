#include "spezzato/explain.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <string.h>

static const char strings[] = "time: 4/4  key: 0  tempo: q=96\n"
                              "part: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n";

enum { MUSIC_MOST = 4096, FIRSTS = 0, SECONDS, VIOLAS, CELLOS };

static Rehearsal play(const char *music)
{
    char text[MUSIC_MOST];
    CU_ASSERT_FATAL(strlen(strings) + strlen(music) < sizeof text);
    strcpy(text, strings);
    strcat(text, music);
    return rehearse(text);
}

/* What section `group` is in a bar, when it is one thing all through it; else nothing that there is. */
static spz_voice_role role_in(const Rehearsal *r, size_t group, const char *bar)
{
    spz_explanation *e = NULL;
    spz_voice_role role = SPZ_VOICE_ROLE_COUNT;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r->sections, bar, 1, &e), SPZ_OK);
    for (size_t i = 0; i < spz_explanation_voices(e); i++)
        if (spz_explanation_voice(e, i)->group == group && spz_explanation_voice(e, i)->role_count == 1)
            role = spz_explanation_voice(e, i)->roles[0];
    spz_explanation_free(e);
    return role;
}

#define TUNE_1 "g5:q. a5:e b5:q d6"
#define TUNE_2 "c6:h a5:q f#5"
#define TUNE_3 "g5:q a5:e b5 c6:q a5"
#define TUNE_4 "b5:h g5:q d5"

/* Alberti's bass: the chord broken in quavers, the same in each half bar. */
static void a_melody_over_a_broken_chord_is_line_and_figure(void)
{
    Rehearsal r = play("Violin I: " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 "\n"
                       "Violin II: d4:e b4 g4 b4 d4 b4 g4 b4 | d4 c5 f#4 c5 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 b4 g4 b4\n"
                       "Viola: R*4\nVioloncello: g2:w | d3 | g2 | g2\n");
    CU_ASSERT_EQUAL(role_in(&r, FIRSTS, "2"), SPZ_VOICE_LINE);
    CU_ASSERT_EQUAL(role_in(&r, SECONDS, "2"), SPZ_VOICE_FIGURE);
    CU_ASSERT_EQUAL(role_in(&r, VIOLAS, "2"), SPZ_VOICE_RESTS);
    CU_ASSERT_EQUAL(role_in(&r, CELLOS, "2"), SPZ_VOICE_PAD);
    spz_explanation *e = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r.sections, "2", 1, &e), SPZ_OK);
    const spz_voice_in_bar *seconds = spz_explanation_voice(e, SECONDS), *cellos = spz_explanation_voice(e, CELLOS);
    CU_ASSERT_TRUE(seconds->value.over == 1 && seconds->value.under == 2);
    CU_ASSERT_TRUE(cellos->value.over == 4 && cellos->value.under == 1);
    CU_ASSERT_FALSE(cellos->strikes_again);
    spz_explanation_free(e);
    rehearsal_end(&r);
}

static void held_chords_and_repeated_notes_are_a_pad_and_the_low_tune_is_the_line(void)
{
    Rehearsal r = play("Violin I: b4:w | c5 | b4 | b4\n"
                       "Violin II: g4:w~ | g4~ | g4~ | g4\n"
                       "Viola: d4:e d4 d4 d4 d4 d4 d4 d4 | d4 d4 d4 d4 d4 d4 d4 d4 | d4 d4 d4 d4 d4 d4 d4 d4 | d4 d4 d4 d4 d4 d4 d4 d4\n"
                       "Violoncello: g3:q. a3:e b3:q d4 | c4:h a3:q f#3 | g3:q a3:e b3 c4:q a3 | b3:h g3:q d3\n");
    CU_ASSERT_EQUAL(role_in(&r, CELLOS, "2"), SPZ_VOICE_LINE);
    CU_ASSERT_EQUAL(role_in(&r, FIRSTS, "2"), SPZ_VOICE_PAD);
    CU_ASSERT_EQUAL(role_in(&r, SECONDS, "2"), SPZ_VOICE_PAD);
    CU_ASSERT_EQUAL(role_in(&r, VIOLAS, "2"), SPZ_VOICE_PAD);
    rehearsal_end(&r);
}

static void a_tremolo_of_two_pitches_is_a_figure_though_it_lies_on_top(void)
{
    Rehearsal r = play("Violin I: d5:s b4 d5 b4 d5 b4 d5 b4 d5 b4 d5 b4 d5 b4 d5 b4 | %*3\n"
                       "Violin II: R*4\n"
                       "Viola: g4:q. a4:e b4:q d5 | c5:h a4:q f#4 | g4:q a4:e b4 c5:q a4 | b4:h g4:q d4\n"
                       "Violoncello: g2:w | d3 | g2 | g2\n");
    CU_ASSERT_EQUAL(role_in(&r, FIRSTS, "2"), SPZ_VOICE_FIGURE);
    CU_ASSERT_EQUAL(role_in(&r, VIOLAS, "2"), SPZ_VOICE_LINE);
    rehearsal_end(&r);
}

static void the_line_passes_from_firsts_to_cellos(void)
{
    Rehearsal r = play("Violin I: <f> " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 " | <p> b4:w | c5 | b4 | b4\n"
                       "Violin II: <p> d4:e b4 g4 b4 d4 b4 g4 b4 | d4 c5 f#4 c5 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 b4 g4 b4 | "
                       "d4:e b4 g4 b4 d4 b4 g4 b4 | d4 c5 f#4 c5 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 c5 f#4 c5 | d4 b4 g4 b4 d4 b4 g4 b4\n"
                       "Viola: R*8\n"
                       "Violoncello: <p> g2:w | d3 | g2 | g2 | <f> g3:q. a3:e b3:q d4 | c4:h a3:q f#3 | g3:q a3:e b3 c4:q a3 | b3:h g3:q d3\n");
    for (const char *bar = "123"; *bar; bar++)
        CU_ASSERT_EQUAL(role_in(&r, FIRSTS, (char[]){*bar, 0}), SPZ_VOICE_LINE);
    for (const char *bar = "678"; *bar; bar++) {
        CU_ASSERT_EQUAL(role_in(&r, CELLOS, (char[]){*bar, 0}), SPZ_VOICE_LINE);
        CU_ASSERT_EQUAL(role_in(&r, FIRSTS, (char[]){*bar, 0}), SPZ_VOICE_PAD);
    }
    rehearsal_end(&r);
}

static void a_voice_with_values_and_pitches_of_its_own_is_a_counter_line(void)
{
    Rehearsal r = play("Violin I: " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 "\n"
                       "Violin II: R*4\n"
                       "Viola: r:q b3:e c4 d4:q g4 | f#4:q e4:e d4 c4:h | b3:q. d4:e e4:q f#4 | g4:q d4:e c4 b3:h\n"
                       "Violoncello: g2:w | d3 | g2 | g2\n");
    CU_ASSERT_EQUAL(role_in(&r, FIRSTS, "2"), SPZ_VOICE_LINE);
    CU_ASSERT_EQUAL(role_in(&r, VIOLAS, "2"), SPZ_VOICE_COUNTER);
    rehearsal_end(&r);
}

static void all_in_unison_and_octaves_have_the_line(void)
{
    Rehearsal r = play("Violin I: " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 "\n"
                       "Violin II: {col Violin I}*4\nViola: {col Violin I -1}*4\nVioloncello: {col Violin I -2}*4\n");
    for (size_t group = FIRSTS; group <= CELLOS; group++)
        CU_ASSERT_EQUAL(role_in(&r, group, "2"), SPZ_VOICE_LINE);
    rehearsal_end(&r);
}

static void thirds_below_the_line_go_along_with_it(void)
{
    Rehearsal r = play("Violin I: " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 "\n"
                       "Violin II: e5:q. f#5:e g5:q b5 | a5:h f#5:q d5 | e5:q f#5:e g5 a5:q f#5 | g5:h e5:q b4\n"
                       "Viola: R*4\nVioloncello: g2:w | d3 | g2 | g2\n");
    CU_ASSERT_EQUAL(role_in(&r, FIRSTS, "2"), SPZ_VOICE_LINE);
    CU_ASSERT_EQUAL(role_in(&r, SECONDS, "2"), SPZ_VOICE_ALONG);
    rehearsal_end(&r);
}

static void in_a_chorale_the_top_has_the_line(void)
{
    Rehearsal r = play("Violin I: g4:q a4 b4 g4 | c5 b4 a4:h | b4:q a4 g4 a4 | f#4:h g4\n"
                       "Violin II: d4:q f#4 g4 d4 | e4 g4 f#4:h | g4:q f#4 e4 e4 | d4:h d4\n"
                       "Viola: b3:q d4 d4 b3 | c4 d4 d4:h | d4:q d4 b3 c4 | a3:h b3\n"
                       "Violoncello: g3:q d3 g3 g3 | c3 g2 d3:h | g2:q d3 e3 c3 | d3:h g2\n");
    for (const char *bar = "123"; *bar; bar++)
        CU_ASSERT_EQUAL(role_in(&r, FIRSTS, (char[]){*bar, 0}), SPZ_VOICE_LINE);
    for (size_t group = SECONDS; group <= CELLOS; group++)
        CU_ASSERT_NOT_EQUAL(role_in(&r, group, "2"), SPZ_VOICE_LINE);
    rehearsal_end(&r);
}

static void a_wind_that_has_the_line_leaves_none_to_the_strings(void)
{
    Rehearsal r = rehearse("time: 4/4  key: 0  tempo: q=96\n"
                           "part: Oboe; sound wind.reed.oboe\npart: Violin I\npart: Violin II\n"
                           "Oboe: " TUNE_1 " | " TUNE_2 " | " TUNE_3 " | " TUNE_4 "\n"
                           "Violin I: b4:w | c5 | b4 | b4\nViolin II: d4:e d4 d4 d4 d4 d4 d4 d4 | % | % | %\n");
    spz_explanation *e = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r.sections, "2", 1, &e), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_explanation_voices(e), 3);
    const spz_voice_in_bar *oboe = spz_explanation_voice(e, 2);
    CU_ASSERT_TRUE(oboe->group == SIZE_MAX && oboe->part == 0 && oboe->roles[0] == SPZ_VOICE_LINE);
    CU_ASSERT_EQUAL(spz_explanation_voice(e, 0)->roles[0], SPZ_VOICE_PAD);
    CU_ASSERT_EQUAL(spz_explanation_voice(e, 1)->roles[0], SPZ_VOICE_PAD);
    CU_ASSERT_TRUE(spz_explanation_voice(e, 1)->strikes_again);
    CU_ASSERT_PTR_NULL(spz_explanation_voice(e, 3));
    spz_explanation_free(e);
    rehearsal_end(&r);
}

/* A figure that violas and cellos toss to each other beneath `firsts` and `seconds`. */
#define TOSSED(firsts, seconds) \
    "Violin I: R | " firsts "\nViolin II: R | " seconds "\n" \
    "Viola: R | g4:s d4 b3 d4 r:q g4:s d4 b3 d4 r:q | a4:s d4 c4 d4 r:q a4:s d4 c4 d4 r:q | g4:s d4 b3 d4 r:q g4:s d4 b3 d4 r:q | f#4:s d4 a3 d4 r:q f#4:s d4 a3 d4 r:q | g4:w\n" \
    "Violoncello: R | r:q g3:s d3 b2 d3 r:q g3:s d3 b2 d3 | r:q a3:s d3 c3 d3 r:q a3:s d3 c3 d3 | r:q g3:s d3 b2 d3 r:q g3:s d3 b2 d3 | r:q f#3:s d3 a2 d3 r:q f#3:s d3 a2 d3 | g2:w\n"

static const char tune[] = TOSSED("<f> d6:q. c6:e b5:q g5 | c6:h a5:e( g5) f#5:q | g5:q. a5:e b5:q d6 | c6:h a5:q. f#5:e | g5:w",
                                  "<f> d5:q. c5:e b4:q g4 | c5:h a4:e( g4) f#4:q | g4:q. a4:e b4:q d5 | c5:h a4:q. f#4:e | g4:w");
static const char alone[] = TOSSED("R | R | R | R | g5:w", "R | R | R | R | b4:w");

/* The passage of violas and cellos in bars 2 to 5: how strong, and whether it is told as an accompaniment. */
static bool accompanies(const char *music, double *strength)
{
    Rehearsal r = play(music);
    spz_explanation *e = NULL;
    bool so = false;
    const spz_passage *passage = antiphony(&r, "Va", "Vc");
    CU_ASSERT_PTR_NOT_NULL_FATAL(passage);
    *strength = passage->strength;
    CU_ASSERT_EQUAL_FATAL(spz_explanation_make(r.sections, "2", 12, &e), SPZ_OK);
    for (size_t i = 0; i < spz_explanation_count(e); i++)
        so |= spz_explanation_at(e, i)->fate == SPZ_REPORTED && spz_explanation_at(e, i)->instead.accompanies;
    spz_explanation_free(e);
    rehearsal_end(&r);
    return so;
}

static void a_figure_tossed_beneath_a_tune_is_an_accompaniment_and_strikes_nobody(void)
{
    double beneath, bare;
    bool below = accompanies(tune, &beneath), free = accompanies(alone, &bare);
    CU_ASSERT_FALSE(free);
    CU_ASSERT_TRUE(below);
    CU_ASSERT_TRUE(bare >= 0.8);
    CU_ASSERT_TRUE(beneath >= 0.5 && beneath < 0.8);
}

static const struct Statement statements[] = {
    STATEMENT(a_melody_over_a_broken_chord_is_line_and_figure),
    STATEMENT(held_chords_and_repeated_notes_are_a_pad_and_the_low_tune_is_the_line),
    STATEMENT(a_tremolo_of_two_pitches_is_a_figure_though_it_lies_on_top),
    STATEMENT(the_line_passes_from_firsts_to_cellos),
    STATEMENT(a_voice_with_values_and_pitches_of_its_own_is_a_counter_line),
    STATEMENT(all_in_unison_and_octaves_have_the_line),
    STATEMENT(thirds_below_the_line_go_along_with_it),
    STATEMENT(in_a_chorale_the_top_has_the_line),
    STATEMENT(a_figure_tossed_beneath_a_tune_is_an_accompaniment_and_strikes_nobody),
    STATEMENT(a_wind_that_has_the_line_leaves_none_to_the_strings),
};
void suite_roles(void) { suite_of("roles", statements, COUNT(statements)); }
