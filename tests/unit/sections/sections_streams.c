/* What each group of players sounds, as one stream. */
#include "sections/slurs.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Heard {
    spz_score *score;
    spz_sections *map;
} Heard;

static Heard hear(const char *music)
{
    Heard heard = { NULL, NULL };
    char error[300] = "";
    size_t length = 0;
    char *xml = notation_to_musicxml(music, &length, error, sizeof error);
    if (!xml)
        printf("\n    %s", error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(xml, length, "test.xml", NULL, &heard.score), SPZ_OK);
    free(xml);
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(spz_score_movement(heard.score, 0), NULL, NULL, &heard.map), SPZ_OK);
    return heard;
}

static void forget(Heard *heard)
{
    spz_sections_free(heard->map);
    spz_score_free(heard->score);
}

/* 'C5 0, D5 1': pitches with their onsets in crotchets. A static buffer. */
static const char *sounds_in_words(const Heard *heard, const GroupSound *sounds, size_t count)
{
    static char text[2000];
    size_t at = 0;
    text[0] = '\0';
    for (size_t i = 0; i < count && at + 100 < sizeof text; i++) {
        char pitch[PITCH_TEXT], when[TICKS_TEXT];
        at += (size_t)snprintf(text + at, sizeof text - at, "%s%s %s", i ? ", " : "", note_pitch_text(sounds[i].note, pitch),
                               ticks_text(sounds[i].onset, heard->map->movement->per_crotchet, when));
    }
    return text;
}

static const char *group_in_words(const Heard *heard, const char *name)
{
    for (size_t i = 0; i < heard->map->group_count; i++)
        if (strcmp(heard->map->groups[i].about.name, name) == 0)
            return sounds_in_words(heard, heard->map->groups[i].sounds, heard->map->groups[i].sound_count);
    return "no such group";
}

static void the_lines_of_a_divided_section_make_one_stream_from_the_top(void)
{
    Heard heard = hear("time: 2/4\nViolin I.1: c5 d5\nViolin I.2: e5 b4\nViolin II: a4:h\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "E5 0, C5 0, D5 1, B4 1");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn II"), "A4 0");
    forget(&heard);
}

static void a_tied_note_sounds_once(void)
{
    Heard heard = hear("time: 2/4\nViolin I: c5 d5~ | d5 e5\nViolin II: a4:h | a4\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "C5 0, D5 1, E5 3");
    forget(&heard);
}

static void grace_notes_come_before_their_moment(void)
{
    Heard heard = hear("time: 2/4\nViolin I: `g4 `a4 c5 d5\nViolin II: a4:h\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "G4 0, A4 0, C5 0, D5 1");
    forget(&heard);
}

static void basses_that_read_the_cellos_part_have_its_notes(void)
{
    Heard heard = hear("time: 2/4\nViolino I: c5:h\nViolino II: a4:h\nViola: e4:h\nVioloncello e Basso: c3 g2\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vc"), "C3 0, G2 1");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Db"), "C3 0, G2 1");
    const Group *basses = section_map_group(heard.map, SPZ_DB, 0);
    CU_ASSERT_PTR_NOT_NULL_FATAL(basses);
    CU_ASSERT_TRUE(basses->shares_bass);
    CU_ASSERT_FALSE(section_map_group(heard.map, SPZ_VC, 0)->shares_bass);
    forget(&heard);
}

static void two_violin_sections_on_one_staff_are_its_two_voices(void)
{
    Heard heard = hear("time: 2/4\nViolini I e II: c5 d5 // e4 f4 | g5:h // c5:h\nViola: c4:h | c4\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "C5 0, D5 1, G5 2");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn II"), "E4 0, F4 1, C5 2");
    forget(&heard);
}

static void on_one_staff_a_single_voice_is_both_and_a_chord_is_shared_out(void)
{
    Heard heard = hear("time: 2/4\nViolini I e II: c5 d5 // e4 f4 | g5:h | b4+d5:h\nViola: c4:h | c4 | c4\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "C5 0, D5 1, G5 2, D5 4");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn II"), "E4 0, F4 1, G5 2, B4 4");
    forget(&heard);
}

static void on_one_staff_voices_that_answer_each_other_are_not_in_unison(void)
{
    Heard heard = hear("time: 2/4\nViolini I e II: c5 d5 // r:h | r:h // e4:q f4 | g5:h // r:h | r:h // c5:h\nViola: c4:h | c4 | c4 | c4\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "C5 0, D5 1, G5 4");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn II"), "E4 2, F4 3, C5 6");
    forget(&heard);
}

static void violins_on_two_staves_are_two_streams(void)
{
    Heard heard = hear("time: 2/4\npart: Violins; staves 2\nViolins: c5 d5\nViolins/2: e4 f4\nViola: c4:h\n");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "C5 0, D5 1");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn II"), "E4 0, F4 1");
    forget(&heard);
}

static void all_that_is_not_in_a_string_section_stands_with_the_others(void)
{
    Heard heard = hear("time: 2/4\nOboe: c5 e5\nHorn: c4:h\nViolin I: g5:h\nViolin II: a4:h\n");
    CU_ASSERT_EQUAL(heard.map->group_count, 2);
    CU_ASSERT_EQUAL(heard.map->other_count, 3);
    for (size_t i = 1; i < heard.map->other_count; i++)
        CU_ASSERT_TRUE(heard.map->others[i - 1].onset <= heard.map->others[i].onset);
    CU_ASSERT_EQUAL(section_map_family(heard.map, 0), SPZ_FAMILY_WOODWIND);
    CU_ASSERT_EQUAL(section_map_family(heard.map, 1), SPZ_FAMILY_BRASS);
    CU_ASSERT_EQUAL(section_map_family(heard.map, 2), SPZ_FAMILY_STRINGS);
    CU_ASSERT_EQUAL(section_map_family(heard.map, 99), SPZ_FAMILY_UNKNOWN);
    forget(&heard);
}

static void groups_stand_in_score_order_with_soloists_first(void)
{
    Heard heard = hear("time: 2/4\nViola: c4:h\nViolin II: a4:h\nViolin I: g5:h\nViolin solo: c6:h\nViolin I 2. Pult: e5:h\n");
    CU_ASSERT_EQUAL_FATAL(heard.map->group_count, 4);
    CU_ASSERT_STRING_EQUAL(spz_sections_group(heard.map, 0)->name, "Vn I (solo)");
    CU_ASSERT_STRING_EQUAL(spz_sections_group(heard.map, 1)->name, "Vn I");
    CU_ASSERT_STRING_EQUAL(spz_sections_group(heard.map, 2)->name, "Vn II");
    CU_ASSERT_STRING_EQUAL(spz_sections_group(heard.map, 3)->name, "Va");
    CU_ASSERT_STRING_EQUAL(group_in_words(&heard, "Vn I"), "G5 0, E5 0"); /* the second desk plays with the section */
    CU_ASSERT_PTR_NULL(spz_sections_group(heard.map, 4));
    CU_ASSERT_FALSE(section_map_group(heard.map, SPZ_VN1, 0)->about.solo);
    CU_ASSERT_PTR_NULL(section_map_group(heard.map, SPZ_DB, 0));
    forget(&heard);
}

static void every_sound_goes_to_exactly_one_place(void)
{
    Heard heard = hear("time: 2/4\nOboe: c5 e5\nViolin I: g5 `a5 b5+d5\nViolin II: a4:h\nViola 1: c4 d4\nViola 2: e4 d4\nViola 3: c4 c4\nCello: c3:h\nBass: c3:h\n");
    size_t expected = 0, placed = heard.map->other_count;
    SoundList sounds = { NULL, 0, 0 };
    for (size_t part = 0; part < heard.map->movement->part_count; part++)
        CU_ASSERT_EQUAL(stream_of_part(heard.map->movement, part, &sounds), SPZ_OK);
    expected = sounds.count;
    for (size_t i = 0; i < heard.map->group_count; i++)
        placed += heard.map->groups[i].sound_count;
    CU_ASSERT_EQUAL(placed, expected);
    CU_ASSERT_TRUE(expected > 10);
    array_free(&sounds);
    forget(&heard);
}

static void a_search_that_runs_out_of_memory_leaves_nothing_behind(void)
{
    Heard heard = hear("time: 2/4\nOboe: c5 e5\nViolin I: g5 a5\nViolin II: a4:h\nVioloncello e Basso: c3:h\n");
    spz_sections *map = NULL;
    long requests = 1;
    for (;; requests++) {
        memory_starve_after(requests);
        spz_status status = spz_sections_find(spz_score_movement(heard.score, 0), NULL, NULL, &map);
        memory_starve_after(0);
        if (status == SPZ_OK)
            break;
        CU_ASSERT_EQUAL_FATAL(status, SPZ_NO_MEMORY);
        CU_ASSERT_PTR_NULL_FATAL(map);
        CU_ASSERT_TRUE_FATAL(requests < 1000);
    }
    CU_ASSERT_TRUE(requests > 5);
    spz_sections_free(map);
    forget(&heard);
}

/* '(' behind a sound bound to the next: what is under slurs in the first violins. A static buffer. */
static const char *bound_in_words(const Heard *heard)
{
    static char text[100];
    const Group *group = &heard->map->groups[0];
    SlurBook book = {.count = 0};
    size_t at = 0;
    for (size_t i = 0; i < group->sound_count && at + 10 < sizeof text; i++)
        at += (size_t)snprintf(text + at, sizeof text - at, "%s%c", slur_place(&book, group->sounds, group->sound_count, i).on ? "(" : "",
                               "cdefgab"[group->sounds[i].note->step]);
    return text;
}

static void a_slur_ends_on_a_tied_note_in_another_voice_and_before_a_long_silence(void)
{
    static const struct {
        const char *music, *bound;
    } cases[] = {
        {"Violin I: c5( d5~ | d5) e5 | f5 g5\n", "(cdefg"},            /* the slur ends on the note that the tie leads to */
        {"Violin I: c5 d5~ | d5( e5) | f5 g5\n", "c(defg"},            /* and begins on it */
        {"Violin I: c5:q( d5 // a4:h | e5:q f5 // a4:q a4) | g5 b5\n", "(ca(d(ea(fagb"}, /* begins in the upper voice, ends in the lower: what comes after is free */
        {"Violin I: c5:q( d5 | R*3 | e5 f5\n", "(c(def"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char music[200];
        snprintf(music, sizeof music, "time: 2/4\n%s", cases[i].music);
        Heard heard = hear(music);
        CU_ASSERT_STRING_EQUAL(bound_in_words(&heard), cases[i].bound);
        forget(&heard);
    }
}

void suite_sections_streams(void);
void suite_sections_streams(void)
{
    static const struct Statement statements[] = {
        STATEMENT(the_lines_of_a_divided_section_make_one_stream_from_the_top),
        STATEMENT(a_tied_note_sounds_once),
        STATEMENT(grace_notes_come_before_their_moment),
        STATEMENT(basses_that_read_the_cellos_part_have_its_notes),
        STATEMENT(two_violin_sections_on_one_staff_are_its_two_voices),
        STATEMENT(on_one_staff_a_single_voice_is_both_and_a_chord_is_shared_out),
        STATEMENT(on_one_staff_voices_that_answer_each_other_are_not_in_unison),
        STATEMENT(violins_on_two_staves_are_two_streams),
        STATEMENT(all_that_is_not_in_a_string_section_stands_with_the_others),
        STATEMENT(groups_stand_in_score_order_with_soloists_first),
        STATEMENT(every_sound_goes_to_exactly_one_place),
        STATEMENT(a_slur_ends_on_a_tied_note_in_another_voice_and_before_a_long_silence),
        STATEMENT(a_search_that_runs_out_of_memory_leaves_nothing_behind),
    };
    suite_of("streams of groups", statements, COUNT(statements));
}
