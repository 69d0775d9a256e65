/* What the players play, stated in music. */
#include "sound/tones.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define STRINGS "time: 4/4  key: 0  tempo: q=60\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
#define BELOW "Violin II: R\nViola: R\nVioloncello: c3:w\n"

typedef struct Played {
    SheetMusic music;
    spz_plan *plan;
    Cast cast;
    ToneList tones;
} Played;

static Played play_bars(const char *notation, size_t first, size_t last, spz_players solo)
{
    Played played = {.music = sheet_music(notation)};
    spz_movement_reading movement = first_movement(&played.music);
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(NULL, NULL, false, NULL, &played.plan), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(cast_make(movement.sections, played.plan, &played.cast), SPZ_OK);
    Excerpt excerpt = {.map = movement.sections, .cast = &played.cast, .from = movement.movement->bars[first].onset,
                       .to = movement.movement->bars[last].onset + movement.movement->bars[last].length, .solo = solo};
    holds_find(excerpt.map, excerpt.from, excerpt.to, &excerpt.holds);
    CU_ASSERT_EQUAL_FATAL(tones_make(&excerpt, &played.tones), SPZ_OK);
    return played;
}

static void played_end(Played *played)
{
    array_free(&played->tones);
    array_free(&played->cast);
    spz_plan_free(played->plan);
    sheet_music_end(&played->music);
}

/* The tones of a section that lie nearest to a key: how many, and the mean of what is asked. */
typedef struct Mean {
    int count;
    double onset, length, velocity, key;
} Mean;
static Mean mean_of(const Played *played, spz_section section, int key)
{
    Mean mean = {0};
    for (size_t i = 0; i < played->tones.count; i++) {
        const SoundTone *tone = &played->tones.at[i];
        const Member *member = &played->cast.at[tone->member];
        if (member->kind == MEMBER_OTHER || member->section != section || lround(tone->key) != key)
            continue;
        mean.count++;
        mean.onset += tone->onset - excerpt_lead;
        mean.length += tone->length;
        mean.velocity += tone->velocity;
        mean.key += tone->key;
    }
    if (mean.count) {
        mean.onset /= mean.count;
        mean.length /= mean.count;
        mean.velocity /= mean.count;
        mean.key /= mean.count;
    }
    return mean;
}

/* Twelve players: each plays the tone, each a little apart; together they are in time and in tune. */
static void a_section_is_twelve_players_and_not_one_loud_violin(void)
{
    Played played = play_bars(STRINGS "Violin I: <mf> c5:h d5\n" BELOW, 0, 0, 0);
    Mean c = mean_of(&played, SPZ_VN1, 72), d = mean_of(&played, SPZ_VN1, 74);
    CU_ASSERT_EQUAL(spz_plan_players(played.plan, SPZ_VN1), c.count);
    CU_ASSERT_EQUAL(c.count, d.count);
    CU_ASSERT_DOUBLE_EQUAL(c.onset, 0, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(d.onset, 2, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(c.key, 72, 0.05);
    CU_ASSERT_DOUBLE_EQUAL(c.velocity, 80, 4);
    CU_ASSERT_DOUBLE_EQUAL(c.length, 2 * 0.92, 0.001);
    for (size_t i = 1; i < played.tones.count; i++) {
        CU_ASSERT(played.tones.at[i].onset >= played.tones.at[i - 1].onset);
        CU_ASSERT(played.tones.at[i].onset != played.tones.at[i - 1].onset || played.tones.at[i].onset == 0);
    }
    played_end(&played);
}

/* Onsets within one section spread over a few tens of milliseconds (Rasch 1979: 20 to 50 in an ensemble). */
static void players_of_a_section_are_not_quite_together(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:q*4\n" BELOW, 0, 0, 0);
    double first = 9, last = 0;
    for (size_t i = 0; i < played.tones.count; i++)
        if (lround(played.tones.at[i].key) == 72 && played.tones.at[i].onset > 1 && played.tones.at[i].onset < 2) {
            first = fmin(first, played.tones.at[i].onset);
            last = fmax(last, played.tones.at[i].onset);
        }
    CU_ASSERT(last - first > 0.02 && last - first < 0.08);
    played_end(&played);
}

static void the_same_passage_is_played_the_same_way_twice(void)
{
    const char *notation = STRINGS "Violin I: c5:q( d5 e5 f5)\n" BELOW;
    Played once = play_bars(notation, 0, 0, 0), again = play_bars(notation, 0, 0, 0);
    CU_ASSERT_EQUAL_FATAL(once.tones.count, again.tones.count);
    for (size_t i = 0; i < once.tones.count; i++) {
        CU_ASSERT_EQUAL(once.tones.at[i].onset, again.tones.at[i].onset);
        CU_ASSERT_EQUAL(once.tones.at[i].key, again.tones.at[i].key);
    }
    played_end(&once);
    played_end(&again);
}

/* Everybody plays one of the two notes; an odd desk more or less on either. */
static void are_shared(const Played *played, int upper, int lower)
{
    int players = spz_plan_players(played->plan, SPZ_VN1), above = mean_of(played, SPZ_VN1, upper).count, below = mean_of(played, SPZ_VN1, lower).count;
    CU_ASSERT_EQUAL(above + below, players);
    CU_ASSERT(abs(above - below) <= 2);
}

static void desks_share_a_chord_and_the_voices_of_a_staff(void)
{
    Played chord = play_bars(STRINGS "Violin I: c5+g5:w\n" BELOW, 0, 0, 0), voices = play_bars(STRINGS "Violin I: g5:w // c5:h d5\n" BELOW, 0, 0, 0);
    are_shared(&chord, 79, 72);
    are_shared(&voices, 79, 72);
    are_shared(&voices, 79, 74);
    played_end(&chord);
    played_end(&voices);
}

static void dots_shorten_and_slurs_bind(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:q' d5( e5) f5\n" BELOW, 0, 0, 0);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 72).length, 0.5, 0.001);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 74).length, 1.03, 0.001);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 76).length, 0.92, 0.001);
    played_end(&played);
}

static void dynamics_hairpins_and_accents_are_heard(void)
{
    Played played = play_bars(STRINGS "Violin I: <p> c5:q d5 <f> e5 f5> | <p> g5:q < a5 b5 c6 ! <f> | d6:w\nVioloncello: c3:w | c3 | c3\n", 0, 2, 0);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 72).velocity, 48, 4);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 76).velocity, 96, 4);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 77).velocity, 112, 4);
    double a = mean_of(&played, SPZ_VN1, 81).velocity, b = mean_of(&played, SPZ_VN1, 83).velocity, c = mean_of(&played, SPZ_VN1, 84).velocity;
    CU_ASSERT(a > 44 && b > a + 5 && c > b + 5 && c < 100);
    played_end(&played);
}

static int with_program(const Played *played, uint8_t program)
{
    int count = 0;
    for (size_t i = 0; i < played->tones.count; i++)
        count += played->tones.at[i].program == program;
    return count;
}

static int with_key(const Played *played, int key)
{
    int count = 0;
    for (size_t i = 0; i < played->tones.count; i++)
        count += fabs(played->tones.at[i].key - key) < 0.5;
    return count;
}

static void plucked_and_tremolo_are_played_so(void)
{
    Played played = play_bars(STRINGS "Violin I: \"pizz.\" c5:q d5 \"arco\" e5:h=3\n" BELOW, 0, 0, 0);
    int players = spz_plan_players(played.plan, SPZ_VN1);
    CU_ASSERT_EQUAL(with_program(&played, PROGRAM_PIZZICATO_STRINGS), 2 * players);
    CU_ASSERT_EQUAL(with_program(&played, PROGRAM_TREMOLO_STRINGS), players);
    played_end(&played);
}

/* A crotchet with two strokes is four semiquavers, a dotted one with a single stroke three quavers; plucked ones stay plucked. */
static void notes_with_one_stroke_or_two_are_struck_that_often(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:q=2 d5:q.=1 \"pizz.\" e5:q.=1\n" BELOW, 0, 0, 0);
    int players = spz_plan_players(played.plan, SPZ_VN1);
    CU_ASSERT_EQUAL(with_program(&played, PROGRAM_PIZZICATO_STRINGS), 3 * players);
    CU_ASSERT_EQUAL(with_program(&played, PROGRAM_TREMOLO_STRINGS), 0);
    CU_ASSERT_EQUAL(with_key(&played, 72), 4 * players);
    CU_ASSERT_EQUAL(with_key(&played, 74), 3 * players);
    CU_ASSERT_EQUAL(with_key(&played, 76), 3 * players);
    played_end(&played);
}

static void grace_notes_come_before_the_beat_in_their_order(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:h `d5 `e5 f5\n" BELOW, 0, 0, 0);
    double d = mean_of(&played, SPZ_VN1, 74).onset, e = mean_of(&played, SPZ_VN1, 76).onset, f = mean_of(&played, SPZ_VN1, 77).onset;
    CU_ASSERT(d < e && e < f);
    CU_ASSERT_DOUBLE_EQUAL(f, 2, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(d, 1.83, 0.02);
    played_end(&played);
}

static void a_trill_alternates_with_the_step_above_in_the_key(void)
{
    Played played = play_bars("time: 4/4  key: -1  tempo: q=60\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello; clef bass\n"
                              "Violin I: a5:w$\n" BELOW, 0, 0, 0);
    CU_ASSERT(mean_of(&played, SPZ_VN1, 82).count > 60); /* b flat */
    CU_ASSERT_EQUAL(mean_of(&played, SPZ_VN1, 83).count, 0);
    played_end(&played);
}

static void tempo_marks_within_the_passage_are_followed(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:w | {tempo q=120} d5:h e5 | f5:w\nVioloncello: c3:w | c3 | c3\n", 0, 2, 0);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 74).onset, 4, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 76).onset, 5, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 77).onset, 6, 0.015);
    played_end(&played);
}

/* A held note lasts twice as long, for everybody; who moves under it goes on moving until the music stands. */
static void a_fermata_holds_up_everybody(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:h d5:h@ | e5:w\nVioloncello: c3:w@ | d3\n", 0, 1, 0);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 74).onset, 2, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 74).length, 4 * 0.92, 0.001);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VN1, 76).onset, 6, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VC, 50).onset, 6, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(mean_of(&played, SPZ_VC, 48).length, 6 * 0.92, 0.001);
    played_end(&played);
}

static const SoundTone *first_tone(const Played *played, int key)
{
    for (size_t i = 0; i < played->tones.count; i++)
        if (lround(played->tones.at[i].key) == key)
            return &played->tones.at[i];
    CU_FAIL_FATAL("no such tone");
    return NULL;
}

/* From piano to forte within one note: struck at its loudest, held back at first. What is plucked stays as loud as it was struck. */
static void a_held_note_grows_within_its_hairpin(void)
{
    Played played = play_bars(STRINGS "Violin I: <p> < c5:w | ! <f> d5:h e5 | \"pizz.\" <p> < g5:w | ! <f> f5:w\nVioloncello: c3:w | c3 | c3 | c3\n", 0, 3, 0);
    const SoundTone *c = first_tone(&played, 72), *d = first_tone(&played, 74), *g = first_tone(&played, 79);
    CU_ASSERT_DOUBLE_EQUAL(c->swell[0], 48, 5);
    CU_ASSERT_DOUBLE_EQUAL(c->swell[SWELL_POINTS - 1], 96, 5);
    CU_ASSERT_EQUAL(c->velocity, c->swell[SWELL_POINTS - 1]);
    for (int i = 1; i < SWELL_POINTS; i++)
        CU_ASSERT(c->swell[i] > c->swell[i - 1]);
    CU_ASSERT_EQUAL(d->swell[0], 0);
    CU_ASSERT_EQUAL(g->swell[0], 0);
    played_end(&played);
}

static void what_is_tied_over_the_first_barline_is_taken_up_there(void)
{
    Played played = play_bars(STRINGS "Violin I: c5:w~ | c5:h d5\nVioloncello: c3:w | c3\n", 1, 1, 0);
    Mean c = mean_of(&played, SPZ_VN1, 72);
    CU_ASSERT_EQUAL(c.count, spz_plan_players(played.plan, SPZ_VN1));
    CU_ASSERT_DOUBLE_EQUAL(c.onset, 0, 0.015);
    CU_ASSERT_DOUBLE_EQUAL(c.length, 2 * 0.92, 0.001);
    played_end(&played);
}

static void soloed_sections_are_heard_alone(void)
{
    Played played = play_bars(STRINGS "part: Flute; sound wind.flutes.flute\nViolin I: c5:w\nFlute: c6:w\n" BELOW, 0, 0, 1);
    CU_ASSERT_EQUAL((int)played.tones.count, spz_plan_players(played.plan, SPZ_VN1));
    played_end(&played);
}

static void winds_play_their_own_instruments_from_behind_the_strings(void)
{
    Played played = play_bars(STRINGS "part: Flute\npart: Horn in F; transpose -7\nViolin I: c5:w\nFlute: c6:w\nHorn in F: g4:w\n" BELOW, 0, 0, 0);
    Source *sources = calloc(played.cast.count, sizeof *sources);
    double deepest = 0;
    CU_ASSERT_EQUAL(with_program(&played, 73), 1);
    CU_ASSERT_EQUAL(with_program(&played, 60), 1);
    cast_place(&played.cast, first_movement(&played.music).sections, played.plan, sources);
    for (size_t i = 0; i < spz_plan_desks(played.plan); i++)
        deepest = fmax(deepest, spz_plan_desk(played.plan, i)->y);
    for (size_t i = 0; i < played.cast.count; i++)
        CU_ASSERT(played.cast.at[i].kind != MEMBER_OTHER || sources[i].at.y > deepest);
    free(sources);
    played_end(&played);
}

static void basses_that_read_the_cellos_part_sound_an_octave_below(void)
{
    Played played = play_bars("time: 4/4  key: 0  tempo: q=60\npart: Violin I\npart: Violin II\npart: Viola; clef alto\npart: Violoncello e Basso; clef bass\n"
                              "Violin I: c5:w\nViolin II: R\nViola: R\nVioloncello e Basso: c3:w\n", 0, 0, 0);
    CU_ASSERT_EQUAL(mean_of(&played, SPZ_VC, 48).count, spz_plan_players(played.plan, SPZ_VC));
    CU_ASSERT_EQUAL(mean_of(&played, SPZ_DB, 36).count, spz_plan_players(played.plan, SPZ_DB));
    played_end(&played);
}

static const struct Statement statements[] = {
    STATEMENT(a_section_is_twelve_players_and_not_one_loud_violin),
    STATEMENT(players_of_a_section_are_not_quite_together),
    STATEMENT(the_same_passage_is_played_the_same_way_twice),
    STATEMENT(desks_share_a_chord_and_the_voices_of_a_staff),
    STATEMENT(dots_shorten_and_slurs_bind),
    STATEMENT(dynamics_hairpins_and_accents_are_heard),
    STATEMENT(plucked_and_tremolo_are_played_so), STATEMENT(notes_with_one_stroke_or_two_are_struck_that_often),
    STATEMENT(grace_notes_come_before_the_beat_in_their_order),
    STATEMENT(a_trill_alternates_with_the_step_above_in_the_key),
    STATEMENT(tempo_marks_within_the_passage_are_followed),
    STATEMENT(a_fermata_holds_up_everybody),
    STATEMENT(a_held_note_grows_within_its_hairpin),
    STATEMENT(what_is_tied_over_the_first_barline_is_taken_up_there),
    STATEMENT(soloed_sections_are_heard_alone),
    STATEMENT(winds_play_their_own_instruments_from_behind_the_strings),
    STATEMENT(basses_that_read_the_cellos_part_sound_an_octave_below),
};
void suite_sound_tones(void) { suite_of("sound_tones", statements, COUNT(statements)); }
