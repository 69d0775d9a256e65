/* Who plays what. Habits: Del Mar, Anatomy of the Orchestra (1981), and Gould, Behind Bars (2011), on divisi, from memory. */
#include "spezzato/allotment.h"
#include "support/suite.h"
#include <stdlib.h>

static spz_allotment *allot(int players, int lines, int soloists, spz_sharing sharing)
{
    spz_allotment *allotment = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_allotment_make(SPZ_VN1, players, lines, soloists, sharing, &allotment), SPZ_OK);
    return allotment;
}

static void check_desk(const spz_allotment *allotment, size_t index, int outside, int inside)
{
    const spz_desk *desk = spz_allotment_desk(allotment, index);
    CU_ASSERT_PTR_NOT_NULL_FATAL(desk);
    CU_ASSERT_EQUAL(desk->outside, outside);
    CU_ASSERT_EQUAL(desk->inside, inside);
}

static void in_two_the_outside_players_take_the_upper_line(void)
{
    spz_allotment *allotment = allot(14, 2, 0, SPZ_SHARE_USUAL);
    CU_ASSERT_EQUAL(spz_allotment_desks(allotment), 7);
    for (size_t i = 0; i < 7; i++)
        check_desk(allotment, i, 1, 2);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1), 7);
    CU_ASSERT_DOUBLE_EQUAL(spz_allotment_balance(allotment, 2), 1, 1e-9);
    spz_allotment_free(allotment);
}

static void in_three_each_desk_has_one_line_and_only_the_last_is_split(void)
{
    spz_allotment *allotment = allot(14, 3, 0, SPZ_SHARE_USUAL);
    for (size_t i = 0; i < 6; i++)
        check_desk(allotment, i, (int)(i % 3) + 1, (int)(i % 3) + 1);
    check_desk(allotment, 6, 1, 2); /* 5 + 5 + 4 players */
    CU_ASSERT_EQUAL(spz_allotment_split_desks(allotment), 1);
    CU_ASSERT_DOUBLE_EQUAL(spz_allotment_balance(allotment, 1), 15.0 / 14, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(spz_allotment_balance(allotment, 3), 12.0 / 14, 1e-9);
    spz_allotment_free(allotment);
}

static void twelve_in_three_splits_no_desk(void)
{
    spz_allotment *allotment = allot(12, 3, 0, SPZ_SHARE_USUAL);
    CU_ASSERT_EQUAL(spz_allotment_split_desks(allotment), 0);
    for (int line = 1; line <= 3; line++)
        CU_ASSERT_EQUAL(spz_allotment_players(allotment, line), 4);
    spz_allotment_free(allotment);
}

static void in_four_desks_take_turns_with_two_lines_each(void)
{
    spz_allotment *allotment = allot(12, 4, 0, SPZ_SHARE_USUAL);
    CU_ASSERT_EQUAL(spz_allotment_sharing(allotment), SPZ_SHARE_BY_DESK_AND_SIDE);
    for (size_t i = 0; i < 6; i++)
        check_desk(allotment, i, i % 2 ? 3 : 1, i % 2 ? 4 : 2);
    spz_allotment_free(allotment);
}

static void a_player_who_sits_alone_fills_the_weakest_line(void)
{
    spz_allotment *allotment = allot(9, 4, 0, SPZ_SHARE_USUAL);
    check_desk(allotment, 4, 1, SPZ_SEAT_EMPTY); /* two in each line, one over: it goes on top */
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1), 3);
    spz_allotment_free(allotment);
    allotment = allot(11, 3, 0, SPZ_SHARE_USUAL);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1), 4);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 3), 3);
    CU_ASSERT_EQUAL(spz_allotment_split_desks(allotment), 0);
    check_desk(allotment, 5, 3, SPZ_SEAT_EMPTY);
    spz_allotment_free(allotment);
}

static void soloists_leave_the_front_before_the_rest_is_shared_out(void)
{
    spz_allotment *allotment = allot(12, 2, 1, SPZ_SHARE_USUAL);
    const spz_desk *front = spz_allotment_desk(allotment, 0);
    CU_ASSERT_EQUAL(front->outside, SPZ_SEAT_SOLO);
    CU_ASSERT(front->inside > 0);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1) + spz_allotment_players(allotment, 2), 11);
    spz_allotment_free(allotment);
    allotment = allot(12, 2, 4, SPZ_SHARE_BY_DESK);
    check_desk(allotment, 0, SPZ_SEAT_SOLO, SPZ_SEAT_SOLO);
    check_desk(allotment, 1, SPZ_SEAT_SOLO, SPZ_SEAT_SOLO);
    check_desk(allotment, 2, 1, 1);
    check_desk(allotment, 3, 2, 2);
    spz_allotment_free(allotment);
}

static void violins_in_three_are_one_body_in_equal_thirds(void)
{
    spz_passage passage = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_VIOLINS }}, .turns = 3 };
    spz_allotment *allotment = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_allotment_of(&passage, NULL, &allotment), SPZ_OK); /* 14 + 12 */
    CU_ASSERT_EQUAL(spz_allotment_desks(allotment), 13);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1), 9);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 2), 9);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 3), 8);
    CU_ASSERT_EQUAL(spz_allotment_split_desks(allotment), 1);
    check_desk(allotment, 4, 1, 2);
    CU_ASSERT_EQUAL(spz_allotment_desk(allotment, 7)->section, SPZ_VN2);
    CU_ASSERT_EQUAL(spz_allotment_desk(allotment, 7)->outside, 2); /* the front seconds join the middle line */
    spz_allotment_free(allotment);
}

static void violins_in_four_keep_to_their_sections(void)
{
    spz_passage passage = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_VIOLINS }}, .turns = 4 };
    spz_allotment *allotment = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_allotment_of(&passage, NULL, &allotment), SPZ_OK);
    check_desk(allotment, 0, 1, 2);
    check_desk(allotment, 7, 3, 4);
    spz_allotment_free(allotment);
}

static void too_few_players_or_an_unfit_sharing_is_refused(void)
{
    spz_allotment *allotment;
    CU_ASSERT_EQUAL(spz_allotment_make(SPZ_DB, 2, 3, 0, SPZ_SHARE_USUAL, &allotment), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_allotment_make(SPZ_DB, 6, 3, 0, SPZ_SHARE_BY_SIDE, &allotment), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_allotment_make(SPZ_DB, 6, 3, 0, SPZ_SHARE_BY_DESK_AND_SIDE, &allotment), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_allotment_make(SPZ_DB, 6, 0, 0, SPZ_SHARE_USUAL, &allotment), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(spz_allotment_make(SPZ_DB, 3, 2, 2, SPZ_SHARE_USUAL, &allotment), SPZ_BAD_ARGUMENT);
    spz_settings *settings = NULL; /* a lone first violin can't keep two lines of four, however many seconds there are */
    spz_passage four = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_VIOLINS }}, .turns = 4 };
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "players.first violins", "1", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_allotment_of(&four, settings, &allotment), SPZ_BAD_ARGUMENT);
    spz_settings_free(settings);
    CU_ASSERT_PTR_NULL(allotment);
}

static spz_settings *house(const char *name, const char *value)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, name, value, NULL), SPZ_OK);
    return settings;
}

static spz_sharing shared_by(const spz_settings *settings, spz_passage passage)
{
    spz_allotment *allotment = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_allotment_of(&passage, settings, &allotment), SPZ_OK);
    spz_sharing sharing = spz_allotment_sharing(allotment);
    spz_allotment_free(allotment);
    return sharing;
}

static void a_house_divides_by_its_own_habit_a_section_by_its_own_and_the_score_before_both(void)
{
    const spz_passage two = { .kind = SPZ_DIV2, .sides = {{ .section = SPZ_VC }}, .turns = 2 }, three = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_VC }}, .turns = 3 };
    spz_passage marked = two;
    marked.told.division.by_desk = true;
    CU_ASSERT_EQUAL(shared_by(NULL, two), SPZ_SHARE_BY_SIDE);
    CU_ASSERT_EQUAL(shared_by(NULL, marked), SPZ_SHARE_BY_DESK);
    spz_settings *settings = house("divisi.in two", "in blocks");
    CU_ASSERT_EQUAL(shared_by(settings, two), SPZ_SHARE_IN_BLOCKS);
    CU_ASSERT_EQUAL(shared_by(settings, three), SPZ_SHARE_BY_DESK);
    CU_ASSERT_EQUAL(shared_by(settings, marked), SPZ_SHARE_BY_DESK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "divisi.cellos", "outside and inside", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(shared_by(settings, two), SPZ_SHARE_BY_SIDE);
    CU_ASSERT_EQUAL(shared_by(settings, three), SPZ_SHARE_BY_DESK); /* in three there is no outside and inside */
    CU_ASSERT_EQUAL(spz_settings_set(settings, "divisi.in two", "from the hip", NULL), SPZ_BAD_SETTINGS);
    spz_settings_free(settings);
}

static void by_player_the_lines_go_round_seat_after_seat(void)
{
    spz_allotment *allotment = allot(7, 3, 0, SPZ_SHARE_BY_PLAYER);
    check_desk(allotment, 0, 1, 2);
    check_desk(allotment, 1, 3, 1);
    check_desk(allotment, 2, 2, 3);
    check_desk(allotment, 3, 1, SPZ_SEAT_EMPTY);
    CU_ASSERT_EQUAL(spz_allotment_players(allotment, 1), 3);
    spz_allotment_free(allotment);
}

static void a_division_that_takes_more_players_than_there_are_says_how_many(void)
{
    const spz_passage four = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_DB }}, .turns = 4 };
    spz_passage soloists = { .kind = SPZ_DIV2, .sides = {{ .section = SPZ_DB }}, .turns = 2 };
    soloists.told.division.soloists = 5;
    spz_shortage shortage;
    spz_settings *settings = house("players.basses", "3");
    CU_ASSERT_FALSE(spz_division_short(&four, NULL, &shortage));
    CU_ASSERT_TRUE(spz_division_short(&four, settings, &shortage));
    CU_ASSERT(shortage.section == SPZ_DB && shortage.needs == 4 && shortage.has == 3);
    CU_ASSERT_TRUE(spz_division_short(&soloists, settings, &shortage));
    CU_ASSERT(shortage.needs == 5 && shortage.has == 3);
    const spz_passage violins = { .kind = SPZ_DIV3, .sides = {{ .section = SPZ_VIOLINS }}, .turns = 4 };
    CU_ASSERT_EQUAL(spz_settings_set(settings, "players.second violins", "1", NULL), SPZ_OK);
    CU_ASSERT_TRUE(spz_division_short(&violins, settings, &shortage));
    CU_ASSERT(shortage.section == SPZ_VN2 && shortage.needs == 2 && shortage.has == 1);
    spz_settings_free(settings);
}

static void two_orchestras_have_half_of_a_section_each_the_first_the_player_over(void)
{
    CU_ASSERT_EQUAL(spz_orchestra_players(NULL, SPZ_VN1, 0), 14);
    spz_settings *settings = house("players.cellos", "7");
    CU_ASSERT_EQUAL(spz_orchestra_players(settings, SPZ_VC, 1), 4);
    CU_ASSERT_EQUAL(spz_orchestra_players(settings, SPZ_VC, 2), 3);
    CU_ASSERT_EQUAL(spz_orchestra_players(settings, SPZ_VIOLINS, 2), 7 + 6);
    const spz_passage two = { .kind = SPZ_DIV2, .sides = {{ .section = SPZ_VC, .orchestra = 2 }}, .turns = 2 };
    spz_allotment *allotment = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_allotment_of(&two, settings, &allotment), SPZ_OK);
    CU_ASSERT_EQUAL(spz_allotment_desks(allotment), 2);
    spz_allotment_free(allotment);
    spz_settings_free(settings);
}

/* The law behind the habits, for every section up to twenty players and every number of lines. */
static void lines_never_differ_by_more_than_one_player(void)
{
    for (int players = 1; players <= 20; players++)
        for (int lines = 1; lines <= 6 && lines <= players; lines++)
            for (int soloists = 0; soloists <= 2 && players - soloists >= lines; soloists++) {
                spz_allotment *allotment = allot(players, lines, soloists, players % 2 ? SPZ_SHARE_USUAL : SPZ_SHARE_BY_PLAYER);
                int least = players, most = 0, all = 0;
                for (int line = 1; line <= lines; line++) {
                    int count = spz_allotment_players(allotment, line);
                    least = count < least ? count : least;
                    most = count > most ? count : most;
                    all += count;
                }
                CU_ASSERT_EQUAL(all, players - soloists);
                CU_ASSERT(most - least <= 1);
                if (most - least > 1)
                    printf("\n    %d players, %d lines, %d soloists: %d to %d", players, lines, soloists, least, most);
                spz_allotment_free(allotment);
            }
}

static const struct Statement statements[] = {
    STATEMENT(in_two_the_outside_players_take_the_upper_line),
    STATEMENT(in_three_each_desk_has_one_line_and_only_the_last_is_split),
    STATEMENT(twelve_in_three_splits_no_desk),
    STATEMENT(in_four_desks_take_turns_with_two_lines_each),
    STATEMENT(a_player_who_sits_alone_fills_the_weakest_line),
    STATEMENT(soloists_leave_the_front_before_the_rest_is_shared_out),
    STATEMENT(violins_in_three_are_one_body_in_equal_thirds),
    STATEMENT(violins_in_four_keep_to_their_sections),
    STATEMENT(too_few_players_or_an_unfit_sharing_is_refused),
    STATEMENT(a_house_divides_by_its_own_habit_a_section_by_its_own_and_the_score_before_both),
    STATEMENT(by_player_the_lines_go_round_seat_after_seat),
    STATEMENT(a_division_that_takes_more_players_than_there_are_says_how_many),
    STATEMENT(two_orchestras_have_half_of_a_section_each_the_first_the_player_over),
    STATEMENT(lines_never_differ_by_more_than_one_player),
};
void suite_allotment(void) { suite_of("allotment", statements, COUNT(statements)); }
