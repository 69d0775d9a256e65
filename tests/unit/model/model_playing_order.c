/* The rule of docs/formats.md, "Playing order", case by case. Bars are named 1, 2, 3 ... */
#include "model/playing_order.h"
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

/* One letter a bar and its signs, blanks between bars:
 *   |: forward sign   :| backward sign   :N| backward sign, N times in all   [1 or [1,2 an ending begins   ] it ends
 *   S segno   C coda sign   t to coda   F fine   D da capo   G dal segno   . a bar without signs
 *   ! light-heavy barline at its end   " double bar at its end   and in words alone: d 'Da capo dal Segno'   c 'D.C.'   T 'Trio' */
static void write_bar(char *xml, size_t size, int number, const char *signs, size_t length)
{
    char left[256] = "", right[512] = "", sound[256] = "", ending[32] = "1";
    for (size_t i = 0; i < length; i++) {
        size_t r = strlen(right), s = strlen(sound), n;
        switch (signs[i]) {
        case '|':
            if (i + 1 < length && signs[i + 1] == ':') {
                strcat(left, "<repeat direction=\"forward\"/>");
                i++;
            }
            break;
        case ':':
            if (signs[i + 1] == '|')
                strcat(right, "<repeat direction=\"backward\"/>");
            else
                snprintf(right + r, sizeof right - r, "<repeat direction=\"backward\" times=\"%c\"/>", signs[i + 1]);
            i += signs[i + 1] == '|' ? 1 : 2;
            break;
        case '[':
            n = strspn(signs + i + 1, "0123456789,");
            snprintf(ending, sizeof ending, "%.*s", (int)n, signs + i + 1);
            snprintf(left + strlen(left), sizeof left - strlen(left), "<ending number=\"%s\" type=\"start\"/>", ending);
            i += n;
            break;
        case ']':
            snprintf(right + r, sizeof right - r, "<ending number=\"%s\" type=\"stop\"/>", ending);
            break;
        case 'S': strcat(sound, "<sound segno=\"s\"/>"); break;
        case 'C': strcat(sound, "<sound coda=\"c\"/>"); break;
        case 't': strcat(sound, "<sound tocoda=\"c\"/>"); break;
        case 'F': strcat(sound, "<sound fine=\"yes\"/>"); break;
        case 'D': strcat(sound, "<sound dacapo=\"yes\"/>"); break;
        case 'G': snprintf(sound + s, sizeof sound - s, "<sound dalsegno=\"s\"/>"); break;
        case '!': strcat(right, "<bar-style>light-heavy</bar-style>"); break;
        case '"': strcat(right, "<bar-style>light-light</bar-style>"); break;
        case 'd': strcat(sound, WORDS("Da capo dal Segno")); break;
        case 'c': strcat(sound, WORDS("D.C.")); break;
        case 'T': strcat(sound, WORDS("Trio")); break;
        default: break;
        }
    }
    snprintf(xml + strlen(xml), size - strlen(xml), "<measure number=\"%d\"><barline location=\"left\">%s</barline>%s%s<barline location=\"right\">%s</barline></measure>",
             number, left, REST(1), sound, right);
}

static const char *order_of(const char *bars)
{
    static char xml[32768];
    strcpy(xml, "<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list><part id=\"P1\">");
    for (int number = 1; *bars; number++) {
        size_t length = strcspn(bars, " ");
        write_bar(xml, sizeof xml, number, bars, length);
        bars += length + (bars[length] == ' ');
    }
    strcat(xml, "</part></score-partwise>");
    return order_text(movement_of(xml));
}

#define ORDER(bars, expected) CU_ASSERT_STRING_EQUAL(order_of(bars), expected)

static void bars_without_signs_follow_each_other(void) { ORDER(". . .", "1 2 3"); }
static void a_section_between_repeat_signs_is_played_twice(void) { ORDER(". |: :| .", "1 2 3 2 3 4"); }
static void a_section_of_one_bar_is_played_twice(void) { ORDER(". |::| .", "1 2 2 3"); }
static void without_a_forward_sign_the_repeat_goes_to_the_start(void) { ORDER(". :| .", "1 2 1 2 3"); }
static void after_a_repeat_the_next_backward_sign_goes_behind_it(void) { ORDER(". :| . :| .", "1 2 1 2 3 4 3 4 5"); }
static void three_times_means_three_times(void) { ORDER("|: :3| .", "1 2 1 2 1 2 3"); }
static void once_means_once(void) { ORDER("|: :1| .", "1 2 3"); }
static void first_and_second_endings_take_turns(void) { ORDER("|: . [1:|] [2] .", "1 2 3 1 2 4 5"); }
static void endings_may_be_of_several_bars(void) { ORDER("|: [1 :|] [2 ] .", "1 2 3 1 4 5 6"); }
static void one_ending_may_count_for_two_passes(void) { ORDER("|: [1,2:|] [3] .", "1 2 1 2 1 3 4"); }
static void three_endings_make_three_passes(void) { ORDER("|: [1:|] [2:|] [3] .", "1 2 1 3 1 4 5"); }
static void a_first_ending_without_a_second_is_left_out_the_second_time(void) { ORDER("|: . [1:|] . .", "1 2 3 1 2 4 5"); }
static void a_section_after_endings_is_repeated_on_its_own(void) { ORDER("|: [1:|] [2] . :| .", "1 2 1 3 4 5 4 5 6"); }
static void after_a_lonely_first_ending_the_next_repeat_goes_behind_it(void) { ORDER("|: [1:|] . :| .", "1 2 1 3 4 3 4 5"); }
static void a_section_inside_a_section_is_played_twice_each_time(void) { ORDER("|: |: :| :| .", "1 2 3 2 3 4 1 2 3 2 3 4 5"); }
static void a_forward_sign_without_a_backward_sign_changes_nothing(void) { ORDER("|: . |: :| .", "1 2 3 4 3 4 5"); }
static void two_backward_signs_for_one_forward_repeat_the_rest_alone(void) { ORDER(". |: :| . :| .", "1 2 3 2 3 4 5 4 5 6"); }

static void da_capo_goes_to_the_start_and_plays_to_the_end_once(void) { ORDER(". . D", "1 2 3 1 2 3"); }
static void da_capo_al_fine_ends_at_the_fine(void) { ORDER(". F . D", "1 2 3 4 1 2"); }
static void after_a_da_capo_repeats_are_not_played_again(void) { ORDER("|: :| F |: :|D", "1 2 1 2 3 4 5 4 5 1 2 3"); }
static void after_a_da_capo_the_last_ending_is_taken(void) { ORDER("|: [1:|] [2] F D", "1 2 1 3 4 5 1 3 4"); }
static void dal_segno_goes_to_the_sign(void) { ORDER(". S . G .", "1 2 3 4 2 3 4 5"); }
static void dal_segno_al_coda_leaves_for_the_coda(void) { ORDER(". S t . G C .", "1 2 3 4 5 2 3 6 7"); }
static void da_capo_al_coda_leaves_for_the_coda(void) { ORDER(". t . D C", "1 2 3 4 1 2 5"); }
static void of_two_coda_signs_the_first_is_where_the_players_leave(void) { ORDER(". C . D C .", "1 2 3 4 1 2 5 6"); }
static void to_coda_without_a_coda_is_passed_by(void) { ORDER(". t . D", "1 2 3 4 1 2 3 4"); }
static void the_segno_before_the_jump_that_is_nearest_is_meant(void) { ORDER("S . S . G .", "1 2 3 4 5 3 4 5 6"); }
static void a_jump_to_a_missing_segno_goes_to_the_start(void) { ORDER(". . G .", "1 2 3 1 2 3 4"); }
static void two_jumps_are_taken_once_each(void) { ORDER(". D . D", "1 2 1 2 3 4 1 2 3 4"); }
static void a_fine_before_any_jump_is_passed_by(void) { ORDER(". F . .", "1 2 3 4"); }

/* The order that the words of the score ask for, where a coda follows: written down before the walk was mended. Common practice. */
static void da_capo_dal_segno_goes_to_the_sign(void) { ORDER(". S . d", "1 2 3 4 2 3 4"); }
static void what_sound_says_beats_the_words(void) { ORDER(". S . cG", "1 2 3 4 2 3 4"); }
static void a_scherzo_with_trio_and_coda_goes_round_to_the_coda(void) { ORDER("|: :|! |: t:|! |: :|! D C .", "1 2 1 2 3 4 3 4 5 6 5 6 7 1 2 3 4 8 9"); }
static void dal_segno_passes_a_barline_with_a_repeat_sign_on_its_way_to_the_coda(void) { ORDER(". S|: :|! t . G C .", "1 2 3 2 3 4 5 6 2 3 4 7 8"); }
static void dal_segno_passes_a_final_barline_before_the_to_coda(void) { ORDER(". S ! t . G C", "1 2 3 4 5 6 2 3 4 7"); }
static void da_capo_with_coda_and_no_repeats(void) { ORDER(". t ! . D C", "1 2 3 4 5 1 2 6"); }
static void a_minuet_of_two_repeated_parts_ends_before_its_trio(void) { ORDER("|: :|! |: :|! T|: :|!D", "1 2 1 2 3 4 3 4 5 6 5 6 1 2 3 4"); }
static void without_a_trio_a_barline_with_a_repeat_sign_ends_nothing(void) { ORDER("|: :|! |: :|! |: :|D", "1 2 1 2 3 4 3 4 5 6 5 6 1 2 3 4 5 6"); }
static void an_ending_without_a_stop_ends_at_the_next_forward_sign(void) { ORDER("|: [1:|] [2 . |: [1:|] [2] .", "1 2 1 3 4 5 6 5 7 8"); }
static void an_ending_without_a_stop_ends_at_a_double_bar(void) { ORDER("|: [1:|] [2\" . :| .", "1 2 1 3 4 5 4 5 6"); }
static void an_ending_with_a_stop_runs_over_a_double_bar(void) { ORDER("|: [1\" :|] [2] .", "1 2 3 1 4 5"); }

static void sections_nested_beyond_reason_are_taken_as_written(void)
{
    char bars[400] = "";
    for (int i = 0; i < 30; i++)
        strcat(bars, "|: ");
    for (int i = 0; i < 30; i++)
        strcat(bars, i ? " :|" : ":|");
    order_of(bars);
    const Movement *m = movement_of("<score-partwise><part-list>" LISTED(P1, "Viola") "</part-list>" PART(P1, BAR(1, REST(1))) "</score-partwise>");
    CU_ASSERT_FALSE(m->played_broken);
    const char *order = order_of(bars);
    CU_ASSERT_EQUAL(strncmp(order, "1 2 3 4 5 6", 11), 0);
    CU_ASSERT_STRING_EQUAL(last_message(), "the repeat signs contradict each other; the bars are taken as written");
}

static void a_forward_sign_at_the_end_of_a_bar_is_for_the_next_bar(void)
{
    const char *forward = "<barline location=\"right\"><repeat direction=\"forward\"/></barline>", *backward = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";
    char xml[1024];
    snprintf(xml, sizeof xml, PIECE(BAR(1, REST(1) "%s") BAR(2, REST(1)) BAR(3, REST(1) "%s") BAR(4, REST(1))), forward, backward);
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(xml)), "1 2 3 2 3 4");
}

static void words_alone_order_a_jump_too(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1)) BAR(2, REST(1) WORDS("Fine")) BAR(3, REST(1) WORDS("D.C. al Fine"))))), "1 2 3 1 2");
}

static void a_minuet_without_a_fine_ends_at_its_final_barline(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1)) BAR(2, REST(1) "<barline location=\"right\"><bar-style>light-heavy</bar-style></barline>")
        BAR(3, REST(1)) BAR(4, REST(1) WORDS("Menuetto D. C.") "<barline location=\"right\"><bar-style>light-heavy</bar-style></barline>")))), "1 2 3 4 1 2");
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1) WORDS("Fine")) BAR(2, REST(1) "<barline location=\"right\"><bar-style>light-heavy</bar-style></barline>")
        BAR(3, REST(1) WORDS("Scherzo da capo"))))), "1 2 3 1");
}

static void a_sound_may_order_a_forward_repeat(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1)) BAR(2, "<sound forward-repeat=\"yes\"/>" REST(1))
        BAR(3, REST(1) "<barline location=\"right\"><repeat direction=\"backward\"/></barline>")))), "1 2 3 2 3");
}

/* Twenty thousand bars under one ending, a da capo in each: looking for its end from each of them would take minutes (`make bench` tells how long it takes). */
static void an_ending_and_jumps_in_every_bar_are_played_through(void)
{
    enum { BARS = 20000 };
    static Bar bars[BARS];
    Arena arena;
    Movement movement = {.bars = bars, .bar_count = BARS};
    for (size_t i = 0; i < BARS; i++)
        bars[i] = (Bar){.ending = i > 0, .ending_start = i == 1, .da_capo = i > 1};
    arena_init(&arena);
    CU_ASSERT_EQUAL(playing_order_find(&movement, &arena), SPZ_OK);
    CU_ASSERT_TRUE(movement.played_count >= BARS);
    arena_release(&arena);
}

static void a_jump_goes_to_the_sign_of_its_label(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, "<sound segno=\"one\"/>" REST(1)) BAR(2, REST(1)) BAR(3, "<sound segno=\"two\"/>" REST(1))
        BAR(4, REST(1) "<sound dalsegno=\"one\"/>") BAR(5, REST(1))))), "1 2 3 4 1 2 3 4 5");
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1) "<sound tocoda=\"b\"/>") BAR(2, REST(1) "<sound dacapo=\"yes\"/>") BAR(3, "<sound coda=\"a\"/>" REST(1))
        BAR(4, "<sound coda=\"b\"/>" REST(1))))), "1 2 1 4");
}

static void a_repeat_marked_so_is_played_after_a_jump_too(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1) "<barline location=\"right\"><repeat direction=\"backward\" after-jump=\"yes\"/></barline>")
        BAR(2, REST(1) "<sound dacapo=\"yes\"/>") BAR(3, REST(1))))), "1 1 2 1 1 2 3");
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, REST(1))
        BAR(2, "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>" REST(1)
               "<barline location=\"right\"><ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\" after-jump=\"yes\"/></barline>")
        BAR(3, "<barline location=\"left\"><ending number=\"2\" type=\"start\"/></barline>" REST(1)
               "<barline location=\"right\"><ending number=\"2\" type=\"stop\"/></barline>")
        BAR(4, REST(1) "<sound dacapo=\"yes\"/>")))), "1 2 1 3 4 1 2 1 3 4");
}

static void a_backward_sign_before_the_first_bar_is_passed_over_and_reported(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(PIECE(BAR(1, DIVISIONS(1) "<barline location=\"left\"><repeat direction=\"backward\"/></barline>" REST(1)) BAR(2, REST(1))))), "1 2");
    CU_ASSERT_STRING_EQUAL(last_message(), "a repeat sign stands before the first bar; it is passed over");
}

#define ONLY(times, step, octave, duration) "<note time-only=\"" times "\">" PITCH(step, octave) LASTING(duration) "</note>"
#define BACK "<barline location=\"right\"><repeat direction=\"backward\"/></barline>"
#define BACK_THREE "<barline location=\"right\"><repeat direction=\"backward\" times=\"3\"/></barline>"

static void a_note_for_one_pass_sounds_in_that_pass_only(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) ONLY("1", C, 4, 1) BACKUP(1) ONLY("2", E, 4, 1) BACK) BAR(2, NOTE(G, 4, 1, ""))));
    CU_ASSERT_STRING_EQUAL(played_text(m, 0), "C4@0+1 E4@1+1 G4@2+1");
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+1 E4@0+1 G4@1+1");
    m = movement_of(PIECE(BAR(1, DIVISIONS(1) ONLY("1,3", C, 4, 1) BACKUP(1) ONLY("2", E, 4, 1) BACK_THREE)));
    CU_ASSERT_STRING_EQUAL(played_text(m, 0), "C4@0+1 E4@1+1 C4@2+1");
}

static void after_a_da_capo_the_notes_of_the_last_pass_sound(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) ONLY("1", C, 4, 1) BACKUP(1) ONLY("2", E, 4, 1) BACK) BAR(2, NOTE(G, 4, 1, "") "<sound dacapo=\"yes\"/>")));
    CU_ASSERT_STRING_EQUAL(played_text(m, 0), "C4@0+1 E4@1+1 G4@2+1 E4@3+1 G4@4+1");
}

static void a_sign_in_any_part_counts(void)
{
    CU_ASSERT_STRING_EQUAL(order_text(movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, BAR(1, REST(1)) BAR(2, REST(1)))
        PART(P2, BAR(1, REST(1) "<barline location=\"right\"><repeat direction=\"backward\"/></barline>") BAR(2, REST(1)))))), "1 1 2");
}

static void a_tie_into_the_second_ending_sounds_on(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, TIE_FROM)) BAR(2, "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>" NOTE(C, 4, 1, TIE_TO)
        "<barline location=\"right\"><ending number=\"1\" type=\"stop\"/><repeat direction=\"backward\"/></barline>")
        BAR(3, "<barline location=\"left\"><ending number=\"2\" type=\"start\"/></barline>" NOTE(C, 4, 1, TIE_TO))));
    CU_ASSERT_STRING_EQUAL(played_text(m, 0), "C4@0+2 C4@2+2");
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+2 C4@2+1");
}

static void an_after_grace_at_the_end_of_a_repeated_bar_is_played_each_time(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") GRACE(D, 4, "") "<barline location=\"right\"><repeat direction=\"backward\"/></barline>") BAR(2, NOTE(E, 4, 1, ""))));
    CU_ASSERT_STRING_EQUAL(played_text(m, 0), "C4@0+1 D4@1+0 C4@1+1 D4@2+0 E4@2+1");
}

static const struct Statement statements[] = {
    STATEMENT(bars_without_signs_follow_each_other),
    STATEMENT(a_section_between_repeat_signs_is_played_twice),
    STATEMENT(a_section_of_one_bar_is_played_twice),
    STATEMENT(without_a_forward_sign_the_repeat_goes_to_the_start),
    STATEMENT(after_a_repeat_the_next_backward_sign_goes_behind_it),
    STATEMENT(three_times_means_three_times),
    STATEMENT(once_means_once),
    STATEMENT(first_and_second_endings_take_turns),
    STATEMENT(endings_may_be_of_several_bars),
    STATEMENT(one_ending_may_count_for_two_passes),
    STATEMENT(three_endings_make_three_passes),
    STATEMENT(a_first_ending_without_a_second_is_left_out_the_second_time),
    STATEMENT(a_section_after_endings_is_repeated_on_its_own),
    STATEMENT(after_a_lonely_first_ending_the_next_repeat_goes_behind_it),
    STATEMENT(a_section_inside_a_section_is_played_twice_each_time),
    STATEMENT(a_forward_sign_without_a_backward_sign_changes_nothing),
    STATEMENT(two_backward_signs_for_one_forward_repeat_the_rest_alone),
    STATEMENT(da_capo_goes_to_the_start_and_plays_to_the_end_once),
    STATEMENT(da_capo_al_fine_ends_at_the_fine),
    STATEMENT(after_a_da_capo_repeats_are_not_played_again),
    STATEMENT(after_a_da_capo_the_last_ending_is_taken),
    STATEMENT(dal_segno_goes_to_the_sign),
    STATEMENT(dal_segno_al_coda_leaves_for_the_coda),
    STATEMENT(da_capo_al_coda_leaves_for_the_coda),
    STATEMENT(of_two_coda_signs_the_first_is_where_the_players_leave),
    STATEMENT(to_coda_without_a_coda_is_passed_by),
    STATEMENT(the_segno_before_the_jump_that_is_nearest_is_meant),
    STATEMENT(a_jump_to_a_missing_segno_goes_to_the_start),
    STATEMENT(two_jumps_are_taken_once_each),
    STATEMENT(a_fine_before_any_jump_is_passed_by),
    STATEMENT(da_capo_dal_segno_goes_to_the_sign),
    STATEMENT(what_sound_says_beats_the_words),
    STATEMENT(a_scherzo_with_trio_and_coda_goes_round_to_the_coda),
    STATEMENT(dal_segno_passes_a_barline_with_a_repeat_sign_on_its_way_to_the_coda),
    STATEMENT(dal_segno_passes_a_final_barline_before_the_to_coda),
    STATEMENT(da_capo_with_coda_and_no_repeats),
    STATEMENT(a_minuet_of_two_repeated_parts_ends_before_its_trio),
    STATEMENT(without_a_trio_a_barline_with_a_repeat_sign_ends_nothing),
    STATEMENT(an_ending_without_a_stop_ends_at_the_next_forward_sign),
    STATEMENT(an_ending_without_a_stop_ends_at_a_double_bar),
    STATEMENT(an_ending_with_a_stop_runs_over_a_double_bar),
    STATEMENT(sections_nested_beyond_reason_are_taken_as_written),
    STATEMENT(a_forward_sign_at_the_end_of_a_bar_is_for_the_next_bar),
    STATEMENT(words_alone_order_a_jump_too),
    STATEMENT(a_minuet_without_a_fine_ends_at_its_final_barline),
    STATEMENT(a_sound_may_order_a_forward_repeat),
    STATEMENT(an_ending_and_jumps_in_every_bar_are_played_through),
    STATEMENT(a_jump_goes_to_the_sign_of_its_label),
    STATEMENT(a_repeat_marked_so_is_played_after_a_jump_too),
    STATEMENT(a_backward_sign_before_the_first_bar_is_passed_over_and_reported),
    STATEMENT(a_note_for_one_pass_sounds_in_that_pass_only),
    STATEMENT(after_a_da_capo_the_notes_of_the_last_pass_sound),
    STATEMENT(a_sign_in_any_part_counts),
    STATEMENT(a_tie_into_the_second_ending_sounds_on),
    STATEMENT(an_after_grace_at_the_end_of_a_repeated_bar_is_played_each_time),
};

void suite_model_playing_order(void)
{
    suite_of("model: playing order", statements, COUNT(statements));
}
