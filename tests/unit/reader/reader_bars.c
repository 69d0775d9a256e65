/* Bars, parts, repeats by copying, several movements in one file. */
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

#define LENGTHS(bars, expected) CU_ASSERT_STRING_EQUAL(lengths_text(movement_of(PIECE(bars))), expected)

static void an_upbeat_is_as_long_as_its_notes(void)
{
    const Movement *m = movement_of(PIECE("<measure number=\"0\" implicit=\"yes\">" DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 1, "") "</measure>" BAR(1, NOTE(D, 4, 4, ""))));
    char beat[TICKS_TEXT];
    CU_ASSERT_STRING_EQUAL(lengths_text(m), "1 4");
    CU_ASSERT_TRUE(m->bars[0].implicit);
    CU_ASSERT_STRING_EQUAL(movement_beat_text(m, 0, beat), "4");
    CU_ASSERT_STRING_EQUAL(movement_beat_text(m, m->bars[1].onset, beat), "1");
}

static void an_empty_bar_is_as_long_as_its_time_signature(void)
{
    LENGTHS(BAR(1, DIVISIONS(1) TIME(3, 4)) BAR(2, NOTE(C, 4, 3, "")) BAR(3, TIME(6, 8)), "3 3 3");
}

static void the_longest_part_gives_a_bar_its_length(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Violin II"),
        PART(P1, BAR(1, DIVISIONS(1) TIME(4, 4) NOTE(C, 4, 3, "")) BAR(2, NOTE(C, 4, 4, ""))) PART(P2, BAR(1, DIVISIONS(2) NOTE(C, 4, 8, "")) BAR(2, NOTE(C, 4, 8, "")))));
    CU_ASSERT_STRING_EQUAL(lengths_text(m), "4 4");
    CU_ASSERT_EQUAL(m->parts[0].filled[0], 3 * m->per_crotchet);
    CU_ASSERT_EQUAL(m->parts[0].asked[0], 4 * m->per_crotchet);
}

static void composite_signatures_are_added(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(2) "<attributes><time><beats>3+2</beats><beat-type>8</beat-type><beats>3</beats><beat-type>4</beat-type></time></attributes>")));
    CU_ASSERT_EQUAL(m->bars[0].nominal * 2, 11 * m->per_crotchet);
}

static void a_conductor_beats_six_eight_in_dotted_crotchets(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(2) TIME(6, 8)) BAR(2, TIME(3, 8)) BAR(3, TIME(2, 2)) BAR(4, TIME(12, 16))));
    CU_ASSERT_EQUAL(m->bars[0].beat * 2, 3 * m->per_crotchet);
    CU_ASSERT_EQUAL(m->bars[1].beat * 2, m->per_crotchet);
    CU_ASSERT_EQUAL(m->bars[2].beat, 2 * m->per_crotchet);
    CU_ASSERT_EQUAL(m->bars[3].beat * 4, 3 * m->per_crotchet);
}

static void music_without_bars_is_as_long_as_it_is(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, "<attributes><divisions>2</divisions><time><senza-misura/></time></attributes>" NOTE(C, 4, 23, ""))));
    CU_ASSERT_STRING_EQUAL(lengths_text(m), "23/2");
    CU_ASSERT_EQUAL(m->bars[0].nominal, 0);
}

static void bar_numbers_are_kept_as_printed(void)
{
    const Movement *m = movement_of(PIECE(BAR(0, DIVISIONS(1) NOTE(C, 4, 1, "")) BAR(12a, NOTE(C, 4, 1, "")) BAR(X1, NOTE(C, 4, 1, "")) BAR(12a, NOTE(C, 4, 1, ""))
        "<measure number=\"5\" text=\"V\">" NOTE(C, 4, 1, "") "</measure>"));
    CU_ASSERT_STRING_EQUAL(order_text(m), "0 12a X1 12a V");
}

static void parts_of_different_length_share_the_longest_row_of_bars(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Violin II"),
        PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))) PART(P2, BAR(1, DIVISIONS(1) NOTE(D, 4, 1, "")) BAR(2, NOTE(E, 4, 1, "")))));
    CU_ASSERT_EQUAL(m->bar_count, 2);
    CU_ASSERT_EQUAL(m->parts[0].written_bars, 1);
    CU_ASSERT_EQUAL(m->parts[1].written_bars, 2);
}

static void a_part_missing_from_the_list_is_read_and_reported(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I"), PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))) PART(P9, BAR(1, DIVISIONS(1) NOTE(D, 4, 1, "")))));
    CU_ASSERT_EQUAL(m->part_count, 2);
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 1), "D4@0+1");
    CU_ASSERT_STRING_EQUAL(last_message(), "the part 'P9' is missing from the list of parts; it is read all the same");
}

static void a_listed_part_without_music_is_kept_silent_and_reported(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")))));
    CU_ASSERT_EQUAL(m->part_count, 2);
    CU_ASSERT_EQUAL(m->parts[1].note_count, 0);
    CU_ASSERT_STRING_EQUAL(last_message(), "the list of parts names 'Viola', but the file has no music for it");
    m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Violoncello"), PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))) PART(P2, "")));
    CU_ASSERT_EQUAL(m->part_count, 2);
    CU_ASSERT_STRING_EQUAL(last_message(), "the list of parts names 'Violoncello', but the file has no music for it");
}

static void a_score_bar_by_bar_reads_as_one_part_by_part(void)
{
    const char *timewise = "<score-timewise><part-list>" LISTED(P1, "Violin I") LISTED(P2, "Viola") "</part-list>"
        BAR(1, PART(P1, DIVISIONS(2) TIME(2, 4) NOTE(C, 5, 4, TIE_FROM)) PART(P2, DIVISIONS(3) NOTE(C, 4, 2, "") NOTE(D, 4, 4, "")))
        BAR(2, PART(P1, NOTE(C, 5, 2, TIE_TO)) PART(P2, NOTE(E, 4, 6, ""))) "</score-timewise>";
    const Movement *m = movement_of(timewise);
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C5@0+3");
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 1), "C4@0+2/3 D4@2/3+4/3 E4@2+2");
    CU_ASSERT_STRING_EQUAL(lengths_text(m), "2 2");
}

static void a_part_that_enters_late_in_a_score_bar_by_bar_keeps_its_place(void)
{
    const char *timewise = "<score-timewise><part-list>" LISTED(P1, "Violin I") LISTED(P2, "Viola") "</part-list>"
        BAR(1, PART(P1, DIVISIONS(1) NOTE(C, 5, 4, ""))) BAR(2, PART(P1, NOTE(C, 5, 4, "")) PART(P2, DIVISIONS(1) NOTE(E, 4, 1, ""))) "</score-timewise>";
    CU_ASSERT_STRING_EQUAL(sounds_text(movement_of(timewise), 1), "E4@4+1");
}

#define REPEAT_BAR(type, span) "<attributes><measure-style><measure-repeat type=\"" type "\">" span "</measure-repeat></measure-style></attributes>"

static void a_repeat_sign_for_one_bar_is_filled_with_the_bar_before(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") NOTE(E, 4, 1, "")) BAR(2, REPEAT_BAR("start", "1") REST(2)) BAR(3, REST(2)) BAR(4, REPEAT_BAR("stop", "") NOTE(G, 4, 2, ""))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+1 E4@1+1 C4@2+1 E4@3+1 C4@4+1 E4@5+1 G4@6+2");
    CU_ASSERT_TRUE(m->parts[0].notes[2].flags & NOTE_COPIED);
    CU_ASSERT_FALSE(m->parts[0].notes[1].flags & NOTE_COPIED);
}

static void a_repeat_sign_for_two_bars_goes_back_two(void)
{
    CU_ASSERT_STRING_EQUAL(sounds_text(movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")) BAR(2, NOTE(D, 4, 1, "")) BAR(3, REPEAT_BAR("start", "2") REST(1)) BAR(4, REST(1)))), 0),
                           "C4@0+1 D4@1+1 C4@2+1 D4@3+1");
}

static void a_repeat_sign_over_written_notes_adds_nothing(void)
{
    CU_ASSERT_STRING_EQUAL(sounds_text(movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")) BAR(2, REPEAT_BAR("start", "1") NOTE(C, 4, 1, "")))), 0), "C4@0+1 C4@1+1");
}

static void a_repeat_sign_over_one_staff_leaves_the_other_alone(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, "<attributes><divisions>1</divisions><staves>2</staves></attributes>" NOTE(C, 5, 2, "<staff>1</staff>") BACKUP(2) NOTE(C, 3, 2, "<staff>2</staff>"))
        BAR(2, "<attributes><measure-style number=\"2\"><measure-repeat type=\"start\">1</measure-repeat></measure-style></attributes>" NOTE(D, 5, 2, "<staff>1</staff>"))
        BAR(3, "<attributes><measure-style number=\"2\"><measure-repeat type=\"stop\"/></measure-style></attributes>" NOTE(E, 5, 2, "<staff>1</staff>"))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C5@0+2 C3@0+2 D5@2+2 C3@2+2 E5@4+2");
}

static void slashes_over_nothing_are_reported_once(void)
{
    movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 4, "")) BAR(2, "<attributes><measure-style><slash type=\"start\"/></measure-style></attributes>" REST(4)) BAR(3, REST(4))));
    CU_ASSERT_EQUAL(message_count(), 1);
    CU_ASSERT_STRING_EQUAL(last_message(), "slashes stand for music that the file does not write; it is missing from here on");
    movement_of(PIECE(BAR(1, DIVISIONS(1) "<attributes><measure-style><slash type=\"start\"/></measure-style></attributes>" NOTE(C, 4, 4, "")) BAR(2, "<attributes><measure-style><slash type=\"stop\"/></measure-style></attributes>" REST(4))));
    CU_ASSERT_EQUAL(message_count(), 0);
}

static void a_repeat_sign_in_the_first_bar_is_reported(void)
{
    movement_of(PIECE(BAR(1, DIVISIONS(1) REPEAT_BAR("start", "1") REST(2))));
    CU_ASSERT_STRING_EQUAL(last_message(), "a sign repeats bars from before the beginning");
}

static void bars_under_a_long_rest_are_all_there(void)
{
    LENGTHS(BAR(1, DIVISIONS(1) TIME(2, 4) "<attributes><measure-style><multiple-rest>3</multiple-rest></measure-style></attributes>" REST(2)) BAR(2, REST(2)) BAR(3, REST(2)), "2 2 2");
}

static void names_instruments_and_brackets_of_a_part_are_kept(void)
{
    const Movement *m = movement_of(SCORE("<part-group type=\"start\" number=\"1\"><group-name>Strings</group-name></part-group>"
        "<part-group type=\"start\" number=\"2\"><group-name>Violins</group-name></part-group>"
        "<score-part id=\"P1\"><part-name>Violin\n  I</part-name><part-abbreviation>Vl. I</part-abbreviation><score-instrument id=\"I1\"><instrument-name>Violin</instrument-name>"
        "<instrument-sound>strings.violin</instrument-sound><ensemble>14</ensemble></score-instrument><midi-instrument id=\"I1\"><midi-program>49</midi-program></midi-instrument></score-part>"
        "<part-group type=\"stop\" number=\"2\"/>" LISTED(P2, "") "<part-group type=\"stop\" number=\"1\"/>",
        PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, ""))) PART(P2, BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "")))));
    const Part *part = &m->parts[0];
    CU_ASSERT_STRING_EQUAL(part->name, "Violin I");
    CU_ASSERT_STRING_EQUAL(part->abbreviation, "Vl. I");
    CU_ASSERT_STRING_EQUAL(part->groups, "Strings|Violins");
    CU_ASSERT_STRING_EQUAL(part->sound, "strings.violin");
    CU_ASSERT_EQUAL(part->ensemble, 14);
    CU_ASSERT_EQUAL(part->midi_program, 49);
    CU_ASSERT_STRING_EQUAL(m->parts[1].groups, "Strings");
    CU_ASSERT_STRING_EQUAL(m->parts[1].name, "");
}

static void overlapping_brackets_end_each_on_its_own(void)
{
    const Movement *m = movement_of(SCORE("<part-group type=\"start\" number=\"1\"><group-name>A</group-name></part-group>" LISTED(P1, "1")
        "<part-group type=\"start\" number=\"2\"><group-name>B</group-name></part-group>" LISTED(P2, "2") "<part-group type=\"stop\" number=\"1\"/>" LISTED(P3, "3") "<part-group type=\"stop\" number=\"2\"/>",
        PART(P1, BAR(1, "")) PART(P2, BAR(1, "")) PART(P3, BAR(1, ""))));
    CU_ASSERT_STRING_EQUAL(m->parts[0].groups, "A");
    CU_ASSERT_STRING_EQUAL(m->parts[1].groups, "A|B");
    CU_ASSERT_STRING_EQUAL(m->parts[2].groups, "B");
}

#define BRACKET(number, symbol) "<part-group type=\"start\" number=\"" #number "\"><group-symbol>" symbol "</group-symbol></part-group>"
#define BRACKET_END(number) "<part-group type=\"stop\" number=\"" #number "\"/>"

/* What is not drawn (MusicXML 4.0, group-symbol-value 'none', which is also the default) groups nothing for the eye. */
static void brackets_that_are_drawn_are_told_apart(void)
{
    const Movement *m = movement_of(SCORE(BRACKET(1, "none") BRACKET(2, "bracket") LISTED(P1, "1") BRACKET(3, "square") LISTED(P2, "2") BRACKET_END(3) BRACKET_END(2)
        BRACKET(2, "bracket") LISTED(P3, "3") BRACKET_END(2) LISTED(P4, "4") BRACKET_END(1),
        PART(P1, BAR(1, "")) PART(P2, BAR(1, "")) PART(P3, BAR(1, "")) PART(P4, BAR(1, ""))));
    static const int outer[] = {1, 1, 3, 0}, inner[] = {1, 2, 3, 0};
    for (int i = 0; i < 4; i++) {
        CU_ASSERT_EQUAL(m->parts[i].bracket, outer[i]);
        CU_ASSERT_EQUAL(m->parts[i].inner_bracket, inner[i]);
    }
}

#define FINAL "<barline location=\"right\"><bar-style>light-heavy</bar-style></barline>"
#define HEAD "<work><work-title>Suite</work-title></work>"

static const char *titles_of(const char *xml)
{
    static char text[512];
    spz_score *score = score_of(xml);
    text[0] = '\0';
    for (size_t i = 0; score && i < spz_score_movement_count(score); i++) {
        const Movement *m = spz_score_movement(score, i);
        size_t used = strlen(text);
        snprintf(text + used, sizeof text - used, "%s%s (%zu)", i ? "; " : "", m->title, m->bar_count);
    }
    spz_score_free(score);
    return text;
}

static void numbers_that_begin_again_after_a_final_barline_begin_a_movement(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of("<score-partwise>" HEAD "<movement-title>Allegro</movement-title><part-list>" LISTED(P1, "Viola") "</part-list>"
        PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 4, "")) BAR(2, NOTE(C, 4, 4, "") FINAL) BAR(1, NOTE(D, 4, 3, "")) BAR(2, NOTE(E, 4, 3, "") FINAL)) "</score-partwise>"),
        "Suite: I. Allegro (2); Suite: II (2)");
}

static void a_movement_inside_a_file_counts_its_own_time(void)
{
    spz_score *score = score_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(C, 4, 4, TIE_TO) FINAL) BAR(1, DYNAMICS(pp) NOTE(D, 4, 3, "")) BAR(2, NOTE(E, 4, 3, "") FINAL)));
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_EQUAL_FATAL(spz_score_movement_count(score), 2);
    const Movement *second = spz_score_movement(score, 1);
    CU_ASSERT_STRING_EQUAL(sounds_text(spz_score_movement(score, 0), 0), "C4@0+8");
    CU_ASSERT_STRING_EQUAL(sounds_text(second, 0), "D4@0+3 E4@3+3");
    CU_ASSERT_EQUAL(second->parts[0].notes[0].dynamic, DYNAMIC_PP);
    CU_ASSERT_EQUAL(second->parts[0].notes[1].bar, 1);
    CU_ASSERT_EQUAL(second->length, 6 * second->per_crotchet);
    spz_score_free(score);
}

static void a_title_in_words_after_a_final_barline_begins_a_movement(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of("<score-partwise>" HEAD "<part-list>" LISTED(P1, "Viola") "</part-list>"
        PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 4, "") FINAL) BAR(2, WORDS("II. Andante") NOTE(D, 4, 3, ""))) "</score-partwise>"),
        "Suite: I (1); Suite: II. Andante (1)");
}

static void a_title_on_a_new_page_after_a_final_barline_begins_a_movement(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of("<score-partwise>" HEAD "<credit page=\"2\"><credit-type>subtitle</credit-type><credit-words>Menuetto</credit-words></credit><part-list>" LISTED(P1, "Viola") "</part-list>"
        PART(P1, BAR(1, DIVISIONS(1) NOTE(C, 4, 4, "") FINAL) BAR(2, "<print new-page=\"yes\"/>" NOTE(D, 4, 3, ""))) "</score-partwise>"),
        "Suite: I (1); Suite: II. Menuetto (1)");
}

static void a_final_barline_alone_parts_nothing(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 4, "") FINAL) BAR(2, WORDS("1. Solo") NOTE(C, 4, 4, "")))), " (2)");
}

static void a_trio_that_leads_back_to_its_minuet_stays_with_it(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 3, "")) BAR(2, NOTE(C, 4, 3, "") "<sound fine=\"yes\"/>" FINAL) BAR(1, NOTE(D, 4, 3, "")) BAR(2, NOTE(D, 4, 3, "") "<sound dacapo=\"yes\"/>" FINAL))), " (4)");
}

static void the_title_on_the_page_serves_where_the_head_has_none(void)
{
    CU_ASSERT_STRING_EQUAL(titles_of("<score-partwise><credit page=\"1\"><credit-type>title</credit-type><credit-words>Notturno</credit-words></credit><part-list>" LISTED(P1, "Viola") "</part-list>" PART(P1, BAR(1, "")) "</score-partwise>"),
                           "Notturno (1)");
}

static void the_year_is_that_of_the_composition_never_of_the_file(void)
{
    const char *head = "<score-partwise><identification><encoding><encoding-date>2026-01-02</encoding-date></encoding><miscellaneous><miscellaneous-field name=\"creationDate\">2025-05-05</miscellaneous-field>%s</miscellaneous></identification>"
                       "<part-list>" LISTED(P1, "Viola") "</part-list>" PART(P1, BAR(1, "")) "</score-partwise>";
    char xml[1024];
    snprintf(xml, sizeof xml, head, "");
    CU_ASSERT_EQUAL(movement_of(xml)->year, 0);
    snprintf(xml, sizeof xml, head, "<miscellaneous-field name=\"year of composition\">about 1788</miscellaneous-field>");
    CU_ASSERT_EQUAL(movement_of(xml)->year, 1788);
}

static const struct Statement statements[] = {
    STATEMENT(an_upbeat_is_as_long_as_its_notes),
    STATEMENT(an_empty_bar_is_as_long_as_its_time_signature),
    STATEMENT(the_longest_part_gives_a_bar_its_length),
    STATEMENT(composite_signatures_are_added),
    STATEMENT(a_conductor_beats_six_eight_in_dotted_crotchets),
    STATEMENT(music_without_bars_is_as_long_as_it_is),
    STATEMENT(bar_numbers_are_kept_as_printed),
    STATEMENT(parts_of_different_length_share_the_longest_row_of_bars),
    STATEMENT(a_part_missing_from_the_list_is_read_and_reported),
    STATEMENT(a_listed_part_without_music_is_kept_silent_and_reported),
    STATEMENT(a_score_bar_by_bar_reads_as_one_part_by_part),
    STATEMENT(a_part_that_enters_late_in_a_score_bar_by_bar_keeps_its_place),
    STATEMENT(a_repeat_sign_for_one_bar_is_filled_with_the_bar_before),
    STATEMENT(a_repeat_sign_for_two_bars_goes_back_two),
    STATEMENT(a_repeat_sign_over_written_notes_adds_nothing),
    STATEMENT(a_repeat_sign_over_one_staff_leaves_the_other_alone),
    STATEMENT(slashes_over_nothing_are_reported_once),
    STATEMENT(a_repeat_sign_in_the_first_bar_is_reported),
    STATEMENT(bars_under_a_long_rest_are_all_there),
    STATEMENT(names_instruments_and_brackets_of_a_part_are_kept),
    STATEMENT(overlapping_brackets_end_each_on_its_own),
    STATEMENT(brackets_that_are_drawn_are_told_apart),
    STATEMENT(numbers_that_begin_again_after_a_final_barline_begin_a_movement),
    STATEMENT(a_movement_inside_a_file_counts_its_own_time),
    STATEMENT(a_title_in_words_after_a_final_barline_begins_a_movement),
    STATEMENT(a_title_on_a_new_page_after_a_final_barline_begins_a_movement),
    STATEMENT(a_final_barline_alone_parts_nothing),
    STATEMENT(a_trio_that_leads_back_to_its_minuet_stays_with_it),
    STATEMENT(the_title_on_the_page_serves_where_the_head_has_none),
    STATEMENT(the_year_is_that_of_the_composition_never_of_the_file),
};

void suite_reader_bars(void)
{
    suite_of("reader: bars, parts, movements", statements, COUNT(statements));
}
