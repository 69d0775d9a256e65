/* Which passages are cited, and whom of their players the citation names. */
#include "citations/citation_facts.h"
#include "support/scores/evening.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static void picked(const Evening *evening, double strength, size_t most, PlaceInFindings *places)
{
    static int32_t as_written[EVENING_BARS];
    static uint8_t once[EVENING_BARS];
    Movement movement = evening->movement;
    for (size_t bar = 0; bar < movement.bar_count; bar++)
        as_written[bar] = (int32_t)bar;
    movement.played = as_written;
    movement.played_pass = once;
    movement.played_count = movement.bar_count;
    spz_movement_reading reading = {.movement = &movement, .sections = &evening->map, .findings = &evening->findings};
    memset(places, 0, sizeof *places);
    CU_ASSERT_EQUAL_FATAL(notes_pick(&reading, strength, most, places), SPZ_OK);
}

static void strong_passages_are_cited_first_and_in_order_of_bars(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.55);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 21, 22, 0.95);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 31, 32, 0.4);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[0], 1);
    CU_ASSERT_EQUAL(places.at[1], 2);
    array_free(&places);
    evening_end(&evening);
}

static void variety_counts_beside_strength(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.98);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.94);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VA, SPZ_VC, 21, 22, 0.91);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[0], 0);
    CU_ASSERT_EQUAL(places.at[1], 2); /* another kind, another pair */
    array_free(&places);
    evening_end(&evening);
}

static void the_striking_comes_before_the_clear(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.88);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.85);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_VC, 21, 22, 0.7);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[1], 1);
    array_free(&places);
    evening_end(&evening);
}

static void a_theme_comes_before_a_figure(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.94)->told.gesture.notes = 2;
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 21, 24, 0.91)->told.gesture.notes = 12;
    picked(&evening, 0.5, 1, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 1);
    CU_ASSERT_EQUAL(places.at[0], 1);
    array_free(&places);
    evening_end(&evening);
}

static void what_overlaps_is_cited_once(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 8, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 4, 5, 0.6);
    picked(&evening, 0.5, 6, &places);
    CU_ASSERT_EQUAL(places.count, 1);
    array_free(&places);
    evening_end(&evening);
}

static void a_single_bar_in_common_does_not_keep_a_passage_out(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 8, 0.94);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 8, 15, 0.91);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 31, 34, 0.6);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[1], 1);
    array_free(&places);
    evening_end(&evening);
}

static void few_are_sure(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.92);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_VC, 11, 12, 0.86);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_WINDS, SPZ_STRINGS, 21, 22, 0.98);
    picked(&evening, 0.5, 6, &places);
    CU_ASSERT_EQUAL(places.count, 1);
    array_free(&places);
    picked(&evening, 0.5, 0, &places); /* all that are strong enough */
    CU_ASSERT_EQUAL(places.count, 3);
    array_free(&places);
    evening.findings.passages.at[0].strength = 0.85;
    picked(&evening, 0.5, 6, &places); /* nothing is sure: what is likely, between strings */
    CU_ASSERT_EQUAL(places.count, 2);
    array_free(&places);
    evening_end(&evening);
}

static void winds_are_cited_where_they_and_the_strings_go_to_and_fro_and_nobody_else_does(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_WINDS, SPZ_STRINGS, 1, 2, 0.98)->turns = 2;
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_WINDS, SPZ_STRINGS, 21, 22, 0.95)->turns = 4;
    evening.findings.passages.at[1].told.gesture.notes = 12;
    picked(&evening, 0.5, 6, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 1);
    CU_ASSERT_EQUAL(places.at[0], 1);
    array_free(&places);
    evening_end(&evening);
}

/* A dialogue with these entries, 'GROUP?' for a call and 'GROUP!' for an answer, each with its onset in quarters of `unit`, four to the bar: "0?0 1!4 0?8"; an entry
 * sounds for `length` such. */
static void enter(spz_passage *passage, const char *text, spz_ticks unit, spz_ticks length)
{
    static spz_entry entries[16];
    static spz_link links[8];
    size_t count = 0, link_count = 0;
    memset(entries, 0, sizeof entries);
    for (int read; count < 16; text += read, count++) {
        int group, onset;
        char sort;
        if (sscanf(text, " %d%c%d%n", &group, &sort, &onset, &read) != 3)
            break;
        size_t link = 0;
        while (link < link_count && links[link].players != players_of_group((size_t)group))
            link++;
        if (link == link_count)
            links[link_count++] = (spz_link){players_of_group((size_t)group), onset * unit, 0};
        entries[count] = (spz_entry){.players = links[link].players, .link = link, .leader = (size_t)group, .bar = (size_t)onset / 4, .onset = onset * unit,
                                     .end = (onset + length) * unit, .answer = sort == '!'};
    }
    passage->entries = entries;
    passage->entry_count = count;
    passage->links = links;
    passage->link_count = link_count;
}

/* Told of it where no stave is at hand. */
static Citation told(Evening *evening, spz_kind kind, const char *text)
{
    spz_passage *passage = evening_passage(evening, kind, SPZ_VN1, SPZ_VN2, 1, 8, 0.95);
    passage->sides[0].players = passage->sides[1].players = 0; /* whoever is in it */
    enter(passage, text, 1, 2);
    Citation citation = {.passage = passage};
    citation_tell(&evening->map, &citation);
    return citation;
}

/* Told of it in this music, onsets in crotchets; the passage is named after groups 0 and 1. */
static Citation told_in(const char *notation, spz_kind kind, const char *text, int length)
{
    static spz_passage passage;
    SheetMusic music = sheet_music(notation);
    spz_movement_reading reading = first_movement(&music);
    passage = (spz_passage){.kind = kind, .sides = {{.players = 1}, {.players = 2}}};
    enter(&passage, text, reading.movement->per_crotchet, length);
    Citation citation = {.passage = &passage};
    citation_tell(reading.sections, &citation);
    sheet_music_end(&music);
    return citation;
}

static void who_answers_nobody_is_not_told(void)
{
    Evening evening;
    evening_begin(&evening, 20);
    Citation citation = told(&evening, SPZ_EXCHANGE, "0?0 1!4 2?4 0?8 1!12 2?12");
    CU_ASSERT_EQUAL_FATAL(citation.told_count, 2);
    CU_ASSERT_EQUAL(citation.told[1].players, 2);
    citation = told(&evening, SPZ_EXCHANGE, "0?0 2?2 1!4 2!8"); /* told where it first answers, not where it first plays */
    CU_ASSERT_EQUAL_FATAL(citation.told_count, 3);
    CU_ASSERT_EQUAL(citation.told[1].players, 2);
    CU_ASSERT_EQUAL(citation.told[2].enters, 8);
    evening_end(&evening);
}

static void who_answers_in_passing_is_not_told_but_in_a_fugue(void)
{
    Evening evening;
    evening_begin(&evening, 20);
    CU_ASSERT_EQUAL(told(&evening, SPZ_EXCHANGE, "0?0 1!4 2!6 0?8 1!12 0?16 1!20").told_count, 2);
    CU_ASSERT_EQUAL(told(&evening, SPZ_EXCHANGE, "0?0 1!4 2!6 0?8 1!12").told_count, 3);
    CU_ASSERT_EQUAL(told(&evening, SPZ_EXCHANGE, "0?0 1!4 2!8").told_count, 3);
    CU_ASSERT_EQUAL(told(&evening, SPZ_IMITATION, "0?0 1!4 2!6 0?8 1!12").told_count, 3);
    evening_end(&evening);
}

static void of_two_the_first_leads_where_its_answer_comes_sooner_than_its_next_call(void)
{
    Evening evening;
    evening_begin(&evening, 20);
    CU_ASSERT_TRUE(told(&evening, SPZ_EXCHANGE, "0?0 1!4").led);
    CU_ASSERT_TRUE(told(&evening, SPZ_EXCHANGE, "0?0 1!2 0?8 1!10").led);
    CU_ASSERT_TRUE(told(&evening, SPZ_EXCHANGE, "0?0 1!4 0?8 1!12").led); /* evenly, a few times */
    CU_ASSERT_FALSE(told(&evening, SPZ_EXCHANGE, "0?0 1!4 0?8 1!12 0?16 1!20 0?24 1!28").led);
    CU_ASSERT_FALSE(told(&evening, SPZ_EXCHANGE, "0?0 1!6 0?8 1!14").led); /* rather the second, answered at once */
    CU_ASSERT_FALSE(told(&evening, SPZ_HOCKET, "0?0 1!1 0?8 1!9").led);
    evening_end(&evening);
}

#define QUARTET(one, two, three, four) "time: 4/4\nViolin I: " one "\nViolin II: " two "\nViola: " three "\nVioloncello: " four "\n"
#define CALL "g4:e a4 b4 g4 d5:q d5"
#define ANSWER "d4:e e4 f#4 d4 a4:q a4"
#define OTHER "c5:q r c5 r"
#define SCALE "c5:s d5 e5 f5 g5 a5 b5 c6 c6 b5 a5 g5 f5 e5 d5 c5 | d5:s e5 f5 g5 a5 b5 c6 d6 d6 c6 b5 a5 g5 f5 e5 d5 | c5:s d5 e5 f5 g5 a5 b5 c6 c6 b5 a5 g5 f5 e5 d5 c5 | c5:w"

static void what_is_unlike_the_call_is_no_answer(void)
{
    CU_ASSERT_EQUAL(told_in(QUARTET(CALL " | R | R", "R | R | " ANSWER, "R | " OTHER " | R", "R | R | R"), SPZ_EXCHANGE, "0?0 2!4 1!8", 4).told[1].players, 2);
    CU_ASSERT_EQUAL(told_in(QUARTET(CALL " | R | R", "R | R | " ANSWER, "R | " ANSWER " | R", "R | R | R"), SPZ_EXCHANGE, "0?0 2!4 1!8", 4).told[1].players, 4);
    Citation citation = told_in(QUARTET(CALL " | R", "R | " OTHER, "R | R", "R | R"), SPZ_EXCHANGE, "0?0 1!4", 4);
    CU_ASSERT_FALSE(citation.borne_out);
    CU_ASSERT_EQUAL(citation.told_count, 2); /* then the passage is taken at its word */
}

static void who_was_told_is_not_told_again_with_those_who_come_in(void)
{
    static const char music[] = QUARTET("R | R | " ANSWER, CALL " | R | " CALL, "R | " ANSWER " | " ANSWER, "R | R | R");
    spz_passage passage = {.kind = SPZ_EXCHANGE};
    SheetMusic sheet = sheet_music(music);
    spz_movement_reading reading = first_movement(&sheet);
    enter(&passage, "1?0 2!4 0!8", reading.movement->per_crotchet, 4);
    spz_entry entries[3] = {passage.entries[0], passage.entries[1], passage.entries[2]};
    entries[2].players = 5; /* the first violins with the violas */
    passage.entries = entries;
    Citation citation = {.passage = &passage};
    citation_tell(reading.sections, &citation);
    CU_ASSERT_EQUAL_FATAL(citation.told_count, 3);
    CU_ASSERT_EQUAL(citation.told[2].players, 1);
    sheet_music_end(&sheet);
}

static void who_has_but_a_scrap_of_it_is_not_told(void)
{
    static const char whole[] = "g4:e a4 b4 g4 d5 e5 f5 g5", scrap[] = "r:h.. g4:e | a4:e r:h..", half[] = "d4:e e4 f4 d4 r:h | R";
    char music[512];
    snprintf(music, sizeof music, QUARTET("%s | R | R | R", "R | %s | R | R", "R | R | %s", "R | R | R | R"), whole, whole, scrap);
    CU_ASSERT_EQUAL(told_in(music, SPZ_EXCHANGE, "0?0 1!4 2!11", 4).told_count, 2);
    snprintf(music, sizeof music, QUARTET("%s | R | R | R", "R | %s | R | R", "R | R | %s", "R | R | R | R"), whole, whole, half);
    CU_ASSERT_EQUAL(told_in(music, SPZ_EXCHANGE, "0?0 1!4 2!8", 4).told_count, 3);
}

static void a_fugue_answer_is_known_by_its_beginning_though_it_goes_on_otherwise(void)
{
    static const char music[] = QUARTET("e5:q a4:e b4 a4 g4 a4:q | e5:q. f5:e g5 a5 b5 c6 | d6:e c6 b5 c6 d6 e6 f6 g6 | a6:h g6:h",
                                        "R | e4:q b3:e c4 b3 a3 b3:q | e4:q. g4:e e4:h | c4:h. a3:q", "R | R | R | R", "R | R | R | R");
    CU_ASSERT_TRUE(told_in(music, SPZ_IMITATION, "0?0 1!4", 12).told_count == 2 && told_in(music, SPZ_IMITATION, "0?0 1!4", 12).borne_out);
    CU_ASSERT_FALSE(told_in(music, SPZ_EXCHANGE, "0?0 1!4", 12).borne_out);
}

static void who_answers_many_times_more_seldom_than_another_is_not_told(void)
{
    Evening evening;
    evening_begin(&evening, 40);
    CU_ASSERT_EQUAL(told(&evening, SPZ_IMITATION, "0?0 1!2 0?4 1!6 0?8 1!10 0?12 1!14 0?16 1!18 0?20 1!22 2!24").told_count, 2);
    CU_ASSERT_EQUAL(told(&evening, SPZ_IMITATION, "0?0 1!2 0?4 1!6 2!8").told_count, 3);
    evening_end(&evening);
}

static void who_is_doubled_by_the_caller_does_not_answer(void)
{
    CU_ASSERT_FALSE(told_in(QUARTET(CALL " | " CALL, "R | " CALL, "R | R", "R | R"), SPZ_EXCHANGE, "0?0 1!4", 4).borne_out);
    CU_ASSERT_TRUE(told_in(QUARTET(CALL " | r:h. g4:q", "R | " CALL, "R | R", "R | R"), SPZ_EXCHANGE, "0?0 1!4", 4).borne_out);
}

static void where_all_begin_together_nobody_begins(void)
{
    static const char music[] = QUARTET(CALL " | R | R", CALL " | R | " ANSWER, "R | R | R", "R | " ANSWER " | R");
    spz_passage passage = {.kind = SPZ_EXCHANGE, .sides = {{.players = 8}, {.players = 2}}};
    SheetMusic sheet = sheet_music(music);
    spz_movement_reading reading = first_movement(&sheet);
    enter(&passage, "0?0 3?4 1!8", reading.movement->per_crotchet, 4);
    spz_entry entries[3] = {passage.entries[0], passage.entries[1], passage.entries[2]};
    entries[0].players = 10; /* both who are heard against each other later */
    passage.entries = entries;
    Citation citation = {.passage = &passage};
    citation_tell(reading.sections, &citation);
    CU_ASSERT_EQUAL_FATAL(citation.told_count, 2);
    CU_ASSERT_EQUAL(citation.told[0].players, 8);
    CU_ASSERT_EQUAL(citation.told[1].players, 2);
    sheet_music_end(&sheet);
}

static void nobody_leads_with_what_was_heard_before(void)
{
    CU_ASSERT_TRUE(told_in(QUARTET("R | " CALL " | R", "R | R | " CALL, OTHER " | R | R", "R | R | R"), SPZ_EXCHANGE, "0?4 1!8", 4).led);
    Citation citation = told_in(QUARTET("R | " CALL " | R", CALL " | R | " CALL, "R | R | R", "R | R | R"), SPZ_EXCHANGE, "0?4 1!8", 4);
    CU_ASSERT_TRUE(citation.heard_before);
    CU_ASSERT_FALSE(citation.led);
}

static void what_each_has_once_is_named_in_its_order(void)
{
    Citation once = told_in(QUARTET("R | R | " CALL, "R | " CALL " | R", "R | R | R", "R | R | R"), SPZ_EXCHANGE, "1?4 0!8", 4);
    CU_ASSERT_FALSE(once.led);
    CU_ASSERT_EQUAL(citation_named_first(&once), 0); /* the seconds, who come first here; the score has them below */
    Citation more = told_in(QUARTET("R | R | " CALL " | R", "R | " CALL " | R | " CALL, "R | R | R | R", "R | R | R | R"), SPZ_EXCHANGE, "1?4 0!8 1?12", 4);
    CU_ASSERT_FALSE(more.led);
    CU_ASSERT_EQUAL(citation_named_first(&more), 1);
}

static void who_change_places_lead_neither(void)
{
    Citation citation = told_in(QUARTET(CALL " | c4:q e4 d4 f4", "c5:q e5 d5 f5 | " ANSWER, "R | R", "R | R"), SPZ_EXCHANGE, "0?0 1!4", 4);
    CU_ASSERT_TRUE(citation.swapped);
    CU_ASSERT_FALSE(citation.led);
    CU_ASSERT_FALSE(told_in(QUARTET(CALL " | g4:w", "g4:w | " ANSWER, "R | R", "R | R"), SPZ_EXCHANGE, "0?0 1!4", 4).swapped);
    CU_ASSERT_FALSE(told_in(QUARTET(CALL " | " CALL, CALL " | " ANSWER, "R | R", "R | R"), SPZ_IMITATION, "0?0 1!4", 4).swapped); /* in unison under the call */
}

static void a_theme_that_answers_a_short_figure_is_what_is_passed_on(void)
{
    Citation citation = told_in(QUARTET("R | c5:e d5 e5 c5 f5 e5 d5 b4 | c5:w", "r:h. g4:e a4 | c4:w | c5:e d5 e5 c5 f5 e5 d5 b4", "R | R | R", "R | R | R"), SPZ_EXCHANGE,
                                "1?3 0!4 1!8", 4);
    CU_ASSERT_EQUAL(citation.told[0].players, 1);
    CU_ASSERT_EQUAL(citation.told[1].players, 2);
}

static void every_entry_of_a_fugato_is_listed_with_its_interval(void)
{
    Citation citation = told_in(QUARTET("R | R | " CALL " | R | R", "R | " ANSWER " | c5:w | R | " CALL, CALL " | c4:w | c4:w | R | R", "R | R | R | " ANSWER " | c3:w"),
                                SPZ_IMITATION, "2?0 1!4 0!8 3!12 1!16", 4);
    CU_ASSERT_EQUAL_FATAL(citation.heard_count, 5);
    CU_ASSERT_EQUAL(citation.heard_all, 5);
    CU_ASSERT_FALSE(citation.heard[0].at_interval);
    CU_ASSERT_TRUE(citation.heard[1].at_interval);
    CU_ASSERT_EQUAL(citation.heard[1].change.semitones, -5);
    CU_ASSERT_EQUAL(citation.heard[1].change.steps, -3);
    CU_ASSERT_EQUAL(citation.heard[2].change.semitones, 0);
    CU_ASSERT_EQUAL(citation.heard[4].entry, 4);
}

static void who_has_its_accompaniment_first_enters_with_the_whole_later(void)
{
    static const char whole[] = "c5:e b4 c5 a5 f5 c5 a4 d4 c5:e b4 c5 a5 f5 c5 a4 d4", head[] = "c5:e b4 c5 r r:h";
    char music[512];
    snprintf(music, sizeof music, "time: 8/4\nViolin I: R | %s | R | R\nViolin II: %s | R | R | R\nViola: R | r:w %s | %s | R\nVioloncello: R | R | R | R\n", whole, whole, head, whole);
    Citation early = told_in(music, SPZ_EXCHANGE, "1?0 0!8 2!12", 12), late = told_in(music, SPZ_EXCHANGE, "1?0 0!8 2!16", 8);
    CU_ASSERT_EQUAL(early.told_count, 2);
    CU_ASSERT_EQUAL(late.told_count, 3);
}

static void entries_of_another_story_are_not_listed(void)
{
    Citation citation = told_in(QUARTET(CALL " | R | R", "R | R | " ANSWER, "R | " OTHER " | R", "R | R | R"), SPZ_EXCHANGE, "0?0 2?4 1!8", 4);
    CU_ASSERT_EQUAL_FATAL(citation.heard_count, 2);
    CU_ASSERT_EQUAL(citation.heard[1].entry, 2);
}

static void what_begins_anew_after_a_long_break_is_another_story(void)
{
    Citation soon = told_in(QUARTET(CALL " | R | R | R | R | R", "R | " ANSWER " | R | R | R | R", "R | R | R | " ANSWER " | R | R", "R | R | R | R | R | R"),
                            SPZ_IMITATION, "0?0 1!4 2!12", 4);
    CU_ASSERT_EQUAL(soon.told_count, 3);
    Citation late = told_in(QUARTET(CALL " | R | R | R | R | R", "R | " ANSWER " | R | R | R | R", "R | R | R | R | R | " ANSWER, "R | R | R | R | R | R"),
                            SPZ_IMITATION, "0?0 1!4 2!20", 4);
    CU_ASSERT_EQUAL(late.told_count, 2);
    CU_ASSERT_EQUAL(late.heard_count, 2);
    CU_ASSERT_EQUAL(late.entries, 2);
}

static void two_sections_that_read_one_part_are_no_two_to_listen_for(void)
{
    for (int parts = 1; parts <= 2; parts++) {
        SheetMusic music = sheet_music(parts == 1 ? "time: 4/4\nViolins: " SCALE "\nVioloncello: R | R | R | c3:w\n"
                                                  : "time: 4/4\nViolin I: " SCALE "\nViolin II: " SCALE "\nVioloncello: R | R | R | c3:w\n");
        spz_movement_reading reading = first_movement(&music);
        size_t coupled = 0, cited = 0;
        PlaceInFindings places = {0};
        CU_ASSERT_EQUAL_FATAL(notes_pick(&reading, 0, 0, &places), SPZ_OK);
        for (size_t i = 0; i < spz_findings_count(reading.findings); i++)
            coupled += spz_findings_at(reading.findings, i)->kind == SPZ_COUPLING;
        for (size_t i = 0; i < places.count; i++)
            cited += spz_findings_at(reading.findings, places.at[i])->kind == SPZ_COUPLING;
        CU_ASSERT_EQUAL(coupled, 1);
        CU_ASSERT_EQUAL(cited, parts == 1 ? 0 : 1);
        array_free(&places);
        sheet_music_end(&music);
    }
}

void suite_citation_choice(void)
{
    static const struct Statement statements[] = {
        STATEMENT(strong_passages_are_cited_first_and_in_order_of_bars),
        STATEMENT(variety_counts_beside_strength),
        STATEMENT(the_striking_comes_before_the_clear),
        STATEMENT(a_theme_comes_before_a_figure),
        STATEMENT(what_overlaps_is_cited_once),
        STATEMENT(a_single_bar_in_common_does_not_keep_a_passage_out),
        STATEMENT(few_are_sure),
        STATEMENT(winds_are_cited_where_they_and_the_strings_go_to_and_fro_and_nobody_else_does),
        STATEMENT(who_answers_nobody_is_not_told),
        STATEMENT(who_answers_in_passing_is_not_told_but_in_a_fugue),
        STATEMENT(what_is_unlike_the_call_is_no_answer),
        STATEMENT(who_was_told_is_not_told_again_with_those_who_come_in),
        STATEMENT(who_has_but_a_scrap_of_it_is_not_told),
        STATEMENT(a_fugue_answer_is_known_by_its_beginning_though_it_goes_on_otherwise),
        STATEMENT(who_answers_many_times_more_seldom_than_another_is_not_told),
        STATEMENT(who_is_doubled_by_the_caller_does_not_answer),
        STATEMENT(where_all_begin_together_nobody_begins),
        STATEMENT(nobody_leads_with_what_was_heard_before),
        STATEMENT(what_each_has_once_is_named_in_its_order),
        STATEMENT(who_change_places_lead_neither),
        STATEMENT(a_theme_that_answers_a_short_figure_is_what_is_passed_on),
        STATEMENT(every_entry_of_a_fugato_is_listed_with_its_interval),
        STATEMENT(who_has_its_accompaniment_first_enters_with_the_whole_later),
        STATEMENT(entries_of_another_story_are_not_listed),
        STATEMENT(two_sections_that_read_one_part_are_no_two_to_listen_for),
        STATEMENT(what_begins_anew_after_a_long_break_is_another_story),
        STATEMENT(of_two_the_first_leads_where_its_answer_comes_sooner_than_its_next_call),
    };
    suite_of("choice of citations", statements, COUNT(statements));
}
