/* What counts as a divided section, stated in music. */
#include "analysis/division/divisi.h"
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

#define STRINGS \
    "time: 4/4  key: 0  tempo: q=96\n" \
    "part: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\npart: Contrabass; clef bass; transpose -12\n"
#define QUIET_BASS "Violoncello: c3:w | %*5\nContrabass: c3:w | %*5\n"

static const spz_passage *divided(const Rehearsal *r, spz_kind kind, const char *section)
{
    return heard(r, kind, section, "");
}

static bool says(const Rehearsal *r, const spz_passage *passage, const char *words)
{
    bool there = strstr(told(r, passage), words) != NULL;
    if (!there)
        printf("\n    '%s' does not say '%s'", told(r, passage), words);
    return there;
}

static size_t count_divided(const Rehearsal *r)
{
    size_t count = 0;
    for (size_t i = 0; i < spz_findings_count(r->findings); i++) {
        spz_kind kind = spz_findings_at(r->findings, i)->kind;
        count += kind == SPZ_DIV2 || kind == SPZ_DIV3;
    }
    return count;
}

static void a_mark_divides_until_unis(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | g5 | g5 | g5 | g5 | g5\n"
        "Violin II:   e5:w | \"div.\" c5+e5:q d5+f5 e5+g5 d5+f5 | c5+e5 d5+f5 e5+g5 d5+f5 | c5+e5 b4+d5 a4+c5 g4+b4 | \"unis.\" c5+e5:q d5+f5 e5+g5 d5+f5 | c5:w\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "2", "4"));
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "4");
    CU_ASSERT_EQUAL(p->turns, 2);
    CU_ASSERT_EQUAL(p->sides[1].section, SPZ_NO_SECTION);
    CU_ASSERT_TRUE(says(&r, p, "second violins in two: thirds"));
    rehearsal_end(&r);
}

static void double_stops_without_a_mark_are_no_division(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:q a5 b5 c6 | d6 c6 b5 a5 | g5 a5 b5 c6 | d6 c6 b5 a5 | g5:w | g5\n"
        "Violin II:   d4+b4:e*8 | d4+c5:e*8 | d4+b4:e*8 | d4+f#4:e*8 | d4+g4:e*8 | g3+d4+b4:h g3+d4+b4\n"
        "Viola:       g3+d4:e*8 | g3+e4:e*8 | g3+d4:e*8 | a3+d4:e*8 | g3+d4:e*8 | g3:w\n" QUIET_BASS);
    CU_ASSERT_EQUAL(count_divided(&r), 0);
    rehearsal_end(&r);
}

static void non_div_means_one_player_takes_both(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\nViolin II:   e5:w | \"non div.\" d4+b4:q d4+c5 d4+b4 d4+a4 | d4+b4 d4+c5 d4+b4 d4+a4 | d4+b4 d4+c5 d4+b4 d4+a4 | d4+b4:w | d4\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    CU_ASSERT_EQUAL(count_divided(&r), 0);
    rehearsal_end(&r);
}

/* Two voices under a 'div.' that names no number: the chords in one of them are double stops of that line, no third. */
static void chords_in_one_of_two_marked_voices_are_stopped(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*7\n"
        "Violin II:   e5:w | \"div.\" c5:h d5 // a4:h a4 | d5 e5 // g4+b4:h g4+b4 | e5 d5 // g4+b4:h g4+b4 | d5 c5 // g4+b4:h g4+b4 | c5 b4 // a4:h g4 | b4 a4 // g4:h f4 | \"unis.\" c5:w\n"
        "Viola:       c4:w | %*7\nVioloncello: c3:w | %*7\nContrabass: c3:w | %*7\n");
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "2", "7"));
    CU_ASSERT_EQUAL(count_divided(&r), 1);
    CU_ASSERT_EQUAL(p->turns, 2);
    rehearsal_end(&r);
}

/* One stroke through crotchets: repeated quavers, plucked to the end of the division; three strokes are a tremolo. */
static void strokes_that_are_counted_are_no_tremolo(void)
{
    static const struct { const char *strokes; spz_manner manner; } cases[] = {{"=1", SPZ_PIZZICATO}, {"=2", SPZ_PIZZICATO}, {"=3", SPZ_TREMOLO}};
    for (size_t i = 0; i < COUNT(cases); i++) {
        char text[1024];
        const char *s = cases[i].strokes;
        snprintf(text, sizeof text, STRINGS "Violin I: g5:w | %%*3\nViolin II: \"div. pizz.\" c5+e5:q%s d5+f5%s e5+g5%s d5+f5%s | %%*2 | \"unis.\" c5:w\nViola: c4:w | %%*3\n" "Violoncello: c3:w | %%*3\nContrabass: c3:w | %%*3\n", s, s, s, s);
        Rehearsal r = rehearse(text);
        const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
        CU_ASSERT_PTR_NOT_NULL_FATAL(p);
        CU_ASSERT_EQUAL(p->told.division.writing[0].manner, cases[i].manner);
        rehearsal_end(&r);
    }
}

static void chords_beyond_one_hand_are_a_division(void)
{
    /* close three-note tremolos: no bow stays on three strings, and d4 f4 lie on one */
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\nViolin II:   e5:w | %*5\n"
        "Viola:       c4:w | d4+f4+a4:h=3 d4+f4+a4=3 | c4+e4+a4:h=3 c4+e4+a4=3 | d4+f4+a4:h=3 d4+f4+a4=3 | c4+e4+g4:h=3 c4+e4+g4=3 | c4:w\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV3, "Va");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "5");
    CU_ASSERT_EQUAL(p->turns, 3);
    CU_ASSERT_TRUE(says(&r, p, "more than one player can stop"));
    rehearsal_end(&r);
}

static void soft_held_chords_of_three_are_divided_and_loud_ones_broken(void)
{
    const char *const music = STRINGS
        "Violin I:    g5:w | %%*5\nViolin II:   e5:w | %%*5\n"
        "Viola:       c4:w | %s c3+g3+e4:w | d3+a3+f4 | c3+g3+e4 | d3+a3+f4 | c4\n"
        "Violoncello: c3:w | %%*5\nContrabass: c3:w | %%*5\n";
    char text[1024];
    snprintf(text, sizeof text, music, "<pp>");
    Rehearsal soft = rehearse(text);
    const spz_passage *p = divided(&soft, SPZ_DIV3, "Va");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "2", "5"));
    snprintf(text, sizeof text, music, "<ff>");
    Rehearsal loud = rehearse(text);
    CU_ASSERT_EQUAL(count_divided(&loud), 0);
    rehearsal_end(&soft);
    rehearsal_end(&loud);
}

/* Nothing says 'div.', and one hand can do it: told, but never as clear. */
static void voices_that_one_hand_can_stop_are_marginal_without_a_mark(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\n"
        "Violin II:   c5:w | c5:w // e4:q f4 g4 a4 | c5:w // a4:q g4 f4 e4 | d5:w // f4:q g4 a4 b4 | c5:w // e4:q f4 g4 e4 | c5:w\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "5");
    CU_ASSERT_TRUE(p->strength < 0.5);
    CU_ASSERT_TRUE(says(&r, p, "held upper notes over a moving lower line"));
    rehearsal_end(&r);
}

static void the_same_voices_with_a_mark_are_clear(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\n"
        "Violin II:   c5:w | \"div.\" c5:w // e4:q f4 g4 a4 | c5:w // a4:q g4 f4 e4 | d5:w // f4:q g4 a4 b4 | c5:w // e4:q f4 g4 e4 | \"unis.\" c5:w\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    rehearsal_end(&r);
}

static void lines_of_their_own_beyond_one_hand_are_clear_without_a_mark(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\n"
        "Violin II:   c5:w | g6:w // c4:q d4 e4 f4 | a6:w // e4:q d4 c4 d4 | g6:w // c4:q d4 e4 f4 | a6:w // e4:q d4 c4 d4 | c5:w\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(p->strength >= 0.5);
    rehearsal_end(&r);
}

#define ONE_PLAYER_A_PART \
    "time: 4/4  key: 0  tempo: q=96\n" \
    "part: Violin 1\npart: Violin 2\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
#define BEYOND_ONE_HAND(mark) \
    "Violin 1:    g5:w | %*5\n" \
    "Violin 2:    c5:w | " mark "g6:w // c4:q d4 e4 f4 | a6:w // e4:q d4 c4 d4 | g6:w // c4:q d4 e4 f4 | a6:w // e4:q d4 c4 d4 | c5:w\n" \
    "Viola:       c4:w | %*5\nVioloncello: c3:w | %*5\n"

static void a_part_of_one_player_is_never_divided(void)
{
    Rehearsal quartet = rehearse(ONE_PLAYER_A_PART BEYOND_ONE_HAND(""));
    CU_ASSERT_EQUAL(count_divided(&quartet), 0);
    CU_ASSERT_TRUE(spz_findings_chamber_music(quartet.findings));
    rehearsal_end(&quartet);
}

static void a_word_that_divides_tells_of_a_section(void)
{
    Rehearsal strings = rehearse(ONE_PLAYER_A_PART BEYOND_ONE_HAND("\"div.\" "));
    CU_ASSERT_PTR_NOT_NULL(divided(&strings, SPZ_DIV2, "Vn II"));
    CU_ASSERT_FALSE(spz_findings_chamber_music(strings.findings));
    rehearsal_end(&strings);
}

static void a_solo_violin_beside_firsts_and_seconds_is_marginal(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\n"
        "part: Violin I solo\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\npart: Contrabass; clef bass; transpose -12\n"
        "Violin I solo: R*4 | a5:q b5 c6 d6 | c6:w | R*4\n"
        "Violin I:    g5:q a5 b5 c6 | d6:e c6 b5 a5 g5:h | g5:q a5 b5 c6 | d6:e c6 b5 a5 g5:h | g5:w | g5 | g5:q a5 b5 c6 | d6:e c6 b5 a5 g5:h | g5:q a5 b5 c6 | g5:w\n"
        "Violin II:   e5:w | %*9\nViola: c4:w | %*9\nVioloncello: c3:w | %*9\nContrabass: c3:w | %*9\n");
    const spz_passage *p = divided(&r, SPZ_DIV3, "Violins");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_TRUE(lies_in(p, "5", "6"));
    CU_ASSERT_TRUE(p->strength < 0.5);
    CU_ASSERT_TRUE(says(&r, p, "solo violin"));
    rehearsal_end(&r);
}

static void one_bar_in_two_is_not_listed(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\nViolin II:   c5:w | \"div.\" c5+e5:q d5+f5 e5+g5 d5+f5 | \"unis.\" c5:w | c5 | c5 | c5\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    CU_ASSERT_EQUAL(count_divided(&r), 0);
    rehearsal_end(&r);
}

static void a_mark_never_ended_lapses_when_the_section_plays_as_one(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*9\nViolin II:   e5:w | %*9\n"
        "Viola:       \"div.\" c4+e4:q d4+f4 e4+g4 d4+f4 | c4+e4 d4+f4 e4+g4 d4+f4 | c4+e4:w | c4:q d4 e4 f4 | g4 f4 e4 d4 | c4:w | R | g3+d4:e*8 | g3+d4:e*8 | g3+d4:e*8\n"
        "Violoncello: c3:w | %*9\nContrabass: c3:w | %*9\n");
    const spz_passage *p = divided(&r, SPZ_DIV2, "Va");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->last_bar, "3");
    CU_ASSERT_EQUAL(count_divided(&r), 1);
    rehearsal_end(&r);
}

static void a_unis_in_the_first_ending_does_not_end_the_division_of_the_second(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | g5 | |1. g5 | g5 :|2. g5 | g5 ||\n"
        "Violin II:   \"div.\" c5+e5:q d5+f5 e5+g5 d5+f5 | c5+e5 d5+f5 e5+g5 d5+f5 | |1. \"unis.\" c5:w | c5 :|2. d4+b4:q d4+c5 d4+b4 d4+a4 | d4+b4:q d4+c5 d4+b4 d4+a4 ||\n"
        "Viola:       c4:w | c4 | |1. c4 | c4 :|2. c4 | c4 ||\n"
        "Violoncello: c3:w | c3 | |1. c3 | c3 :|2. c3 | c3 ||\n"
        "Contrabass:  c3:w | c3 | |1. c3 | c3 :|2. c3 | c3 ||\n");
    CU_ASSERT_EQUAL(count_divided(&r), 2);
    rehearsal_end(&r);
}

static void both_violin_sections_divided_are_one_passage_of_all_violins(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    \"div.\" g5+b5:q a5+c6 b5+d6 a5+c6 | g5+b5 a5+c6 b5+d6 a5+c6 | g5+b5 a5+c6 b5+d6 a5+c6 | g5+b5 a5+c6 b5+d6 a5+c6 | \"unis.\" g5:w | g5\n"
        "Violin II:   \"div.\" b4+d5:q c5+e5 d5+g5 c5+e5 | b4+d5 c5+e5 d5+g5 c5+e5 | b4+d5 c5+e5 d5+g5 c5+e5 | b4+d5 c5+e5 d5+g5 c5+e5 | \"unis.\" d5:w | d5\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV3, "Violins");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->turns, 4);
    CU_ASSERT_EQUAL(count_divided(&r), 1);
    CU_ASSERT_TRUE(says(&r, p, "violins in four, both sections divided"));
    rehearsal_end(&r);
}

static void seconds_in_two_under_the_firsts_in_one_rhythm_are_violins_in_three(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:q a5 b5 a5 | g5 a5 b5 a5 | g5 f5 e5 f5 | g5 a5 b5 c6 | g5:w | g5\n"
        "Violin II:   \"div.\" b4+d5:q c5+e5 d5+g5 c5+e5 | b4+d5 c5+e5 d5+g5 c5+e5 | b4+d5 a4+d5 g4+c5 a4+d5 | b4+d5 c5+e5 d5+g5 e5+g5 | \"unis.\" d5:w | d5\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    const spz_passage *p = divided(&r, SPZ_DIV3, "Violins");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL(p->turns, 3);
    CU_ASSERT_PTR_NULL(divided(&r, SPZ_DIV2, "Vn II"));
    rehearsal_end(&r);
}

static void seconds_in_two_under_a_melody_are_an_inner_voice_and_stay_their_own(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:q. a5:e b5:h | c6:q. b5:e a5:h | g5:e f5 e5 f5 g5:h | g5:q a5:e b5 c6:h | g5:w | g5\n"
        "Violin II:   \"div.\" b4+d5:e*8 | c5+e5:e*8 | b4+d5:e*8 | c5+e5:e*8 | \"unis.\" d5:w | d5\n"
        "Viola:       c4:w | %*5\n" QUIET_BASS);
    CU_ASSERT_PTR_NULL(divided(&r, SPZ_DIV3, "Violins"));
    CU_ASSERT_PTR_NOT_NULL(divided(&r, SPZ_DIV2, "Vn II"));
    rehearsal_end(&r);
}

static void parts_that_stand_for_one_section_divide_it_while_they_differ(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\n"
        "part: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello 1; clef bass\npart: Violoncello 2; clef bass\n"
        "Violin I:    g5:w | %*5\nViolin II:   e5:w | %*5\nViola:       c4:w | %*5\n"
        "Violoncello 1: c3:q d3 e3 f3 | g3 a3 b3 c4 | d4 c4 b3 a3 | g3 f3 e3 d3 | c3 d3 e3 f3 | c3:w\n"
        "Violoncello 2: c3:q d3 e3 f3 | c3:w | g2 | c3 | c3:q d3 e3 f3 | c3:w\n");
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vc");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "4");
    CU_ASSERT_TRUE(says(&r, p, "each on a staff of its own"));
    rehearsal_end(&r);
}

static void halves_that_take_turns_are_divided(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    g5:w | %*5\nViolin II:   e5:w | %*5\nViola: c4:w | %*5\nVioloncello: c3:w | %*5\n"
        "Contrabass:  c3:w | \"div.\" c4:e r c4 r c4 r c4 r // r:e c3 r c3 r c3 r c3 | c4:e r c4 r c4 r c4 r // r:e c3 r c3 r c3 r c3 | c4:e r c4 r c4 r c4 r // r:e c3 r c3 r c3 r c3 | \"unis.\" c3:w | c3\n");
    const spz_passage *p = divided(&r, SPZ_DIV2, "Db");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "4");
    CU_ASSERT_TRUE(says(&r, p, "take turns"));
    rehearsal_end(&r);
}

static void a_concerto_laid_out_in_threes_is_no_division(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\n"
        "part: Violin 1\npart: Violin 2\npart: Violin 3\npart: Viola 1; clef alto\npart: Viola 2; clef alto\npart: Viola 3; clef alto\n"
        "part: Violoncello 1; clef bass\npart: Violoncello 2; clef bass\npart: Violoncello 3; clef bass\n"
        "Violin 1:    g5:q a5 b5 c6 | d6:w | g5:q a5 b5 c6 | d6:w\nViolin 2:   e5:w | g5:q f5 e5 d5 | e5:w | c5\n"
        "Violin 3:  c5:w | b4 | c5:q d5 e5 f5 | g5:w\nViola 1: c4:w | %*3\nViola 2: e4:w | %*3\nViola 3: g3:w | %*3\n"
        "Violoncello 1: g3:w | %*3\nVioloncello 2: e3:w | %*3\nVioloncello 3: c3:w | %*3\n");
    CU_ASSERT_EQUAL(count_divided(&r), 0);
    rehearsal_end(&r);
}

static void a_third_violin_part_in_one_place_is_violins_in_three(void)
{
    Rehearsal r = rehearse(
        "time: 4/4  key: 0  tempo: q=96\n"
        "part: Violin I\npart: Violin II\npart: Violin III\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
        "Violin I:    g5:q a5 b5 c6 | d6:w | g5:q a5 b5 c6 | d6:w | g5:q a5 b5 c6 | d6:w | g5 | g5\n"
        "Violin II:   e5:w | g5:q f5 e5 d5 | e5:w | c5 | c5 | c5 | c5 | c5\n"
        "Violin III:  R | R | c5:q d5 e5 f5 | g5:w | e5:w | R | R | R\nViola: c4:w | %*7\nVioloncello: c3:w | %*7\n");
    const spz_passage *p = divided(&r, SPZ_DIV3, "Violins");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "3");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "5");
    rehearsal_end(&r);
}

static void two_soloists_named_by_the_words_divide_their_section(void)
{
    const char *const music =
        "time: 4/4  key: 0  tempo: q=96\n"
        "part: Violin solo\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
        "Violin solo: c6:q d6 e6 f6 | %s g6:w | e6:q d6 c6 b5 | c6:w | R | R\n"
        "Violin I:    g5:w | e5:q f5 g5 e5 | c6:w | e5:q f5 e5 d5 | c5:w | c5\nViolin II:   e4:w | %%*5\n"
        "Viola: c4:w | %%*5\nVioloncello: c3:w | %%*5\n";
    char text[1024];
    snprintf(text, sizeof text, music, "\"2 Soli\"");
    Rehearsal r = rehearse(text);
    const spz_passage *p = divided(&r, SPZ_DIV2, "Vn I");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(p->first_bar, "2");
    CU_ASSERT_STRING_EQUAL(p->last_bar, "4");
    CU_ASSERT_TRUE(says(&r, p, "two solo players of the first violins"));
    rehearsal_end(&r);
    snprintf(text, sizeof text, music, ""); /* one soloist before the section is none */
    r = rehearse(text);
    CU_ASSERT_EQUAL(count_divided(&r), 0);
    rehearsal_end(&r);
}

static void sections_written_alike_at_the_same_time_are_surely_divided(void)
{
    const char *const music = STRINGS
        "Violin I:    g5:w | %%*5\nViolin II:   e5:w | %%*5\n"
        "Viola:       c4:w | g4+b4:q( a4+c5 b4+d5 c5+e5) | b4:q. a4:e g4:h // g4:h f4:q. e4:e | b4:h a4:q. g4:e // g4:q. f4:e e4:h | g4+b4:q( a4+c5 b4+d5 c5+e5) | c4:w\n"
        "Violoncello: %s\nContrabass: c3:w | %%*5\n";
    char text[2048];
    snprintf(text, sizeof text, music, "c3:w | %*5");
    Rehearsal alone = rehearse(text);
    snprintf(text, sizeof text, music, "c3:w | {col Viola -1}*4 | c3:w");
    Rehearsal both = rehearse(text);
    const spz_passage *p = divided(&alone, SPZ_DIV2, "Va"), *q = divided(&both, SPZ_DIV2, "Va");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_PTR_NOT_NULL_FATAL(q);
    CU_ASSERT_PTR_NOT_NULL(divided(&both, SPZ_DIV2, "Vc"));
    CU_ASSERT_TRUE(q->strength > p->strength);
    rehearsal_end(&alone);
    rehearsal_end(&both);
}

/* Each request for memory fails once: the answer is SPZ_NO_MEMORY, nothing is lost (the sanitizers look), and in the end it works. */
static void want_of_memory_is_answered_and_leaves_nothing_behind(void)
{
    Rehearsal r = rehearse(STRINGS
        "Violin I:    \"div.\" g5+b5:q a5+c6 b5+d6 a5+c6 | g5+b5 a5+c6 b5+d6 a5+c6 | \"unis.\" g5:w | g5\n"
        "Violin II:   \"div.\" b4+d5:q c5+e5 d5+g5 c5+e5 | b4+d5 c5+e5 d5+g5 c5+e5 | c5+e5 b4+d5 a4+c5 g4+b4 | a4+c5 b4+d5 c5+e5 d5+g5\n"
        "Viola:       d4+f4+a4:h=3 d4+f4+a4=3 | %*3\nVioloncello: c3:w | %*3\nContrabass: c3:w | %*3\n");
    long requests = 0;
    spz_status status = SPZ_NO_MEMORY;
    while (status == SPZ_NO_MEMORY && ++requests < 200) {
        Findings findings = { .map = r.sections };
        arena_init(&findings.arena);
        memory_starve_after(requests);
        status = detect_divisi(&findings, NULL);
        memory_starve_after(0);
        array_free(&findings.passages);
        array_free(&findings.pairings);
        arena_release(&findings.arena);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(requests > 10);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(a_mark_divides_until_unis),
    STATEMENT(double_stops_without_a_mark_are_no_division),
    STATEMENT(non_div_means_one_player_takes_both),
    STATEMENT(strokes_that_are_counted_are_no_tremolo), STATEMENT(chords_in_one_of_two_marked_voices_are_stopped), STATEMENT(chords_beyond_one_hand_are_a_division),
    STATEMENT(soft_held_chords_of_three_are_divided_and_loud_ones_broken),
    STATEMENT(voices_that_one_hand_can_stop_are_marginal_without_a_mark), STATEMENT(the_same_voices_with_a_mark_are_clear),
    STATEMENT(lines_of_their_own_beyond_one_hand_are_clear_without_a_mark), STATEMENT(a_part_of_one_player_is_never_divided),
    STATEMENT(a_word_that_divides_tells_of_a_section), STATEMENT(a_solo_violin_beside_firsts_and_seconds_is_marginal),
    STATEMENT(one_bar_in_two_is_not_listed),
    STATEMENT(a_mark_never_ended_lapses_when_the_section_plays_as_one),
    STATEMENT(a_unis_in_the_first_ending_does_not_end_the_division_of_the_second),
    STATEMENT(both_violin_sections_divided_are_one_passage_of_all_violins),
    STATEMENT(seconds_in_two_under_the_firsts_in_one_rhythm_are_violins_in_three),
    STATEMENT(seconds_in_two_under_a_melody_are_an_inner_voice_and_stay_their_own),
    STATEMENT(parts_that_stand_for_one_section_divide_it_while_they_differ),
    STATEMENT(halves_that_take_turns_are_divided),
    STATEMENT(a_concerto_laid_out_in_threes_is_no_division),
    STATEMENT(a_third_violin_part_in_one_place_is_violins_in_three),
    STATEMENT(two_soloists_named_by_the_words_divide_their_section),
    STATEMENT(sections_written_alike_at_the_same_time_are_surely_divided),
    STATEMENT(want_of_memory_is_answered_and_leaves_nothing_behind),
};
void suite_divisi(void) { suite_of("divisi", statements, COUNT(statements)); }
