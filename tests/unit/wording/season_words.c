/* A season in the words of conductors and stage crews, in each language. */
#include "support/suite.h"
#include "wording/seasons/evening_words.h"
#include <stdio.h>
#include <string.h>

static char said[600];

static const char *kept(Buffer *out)
{
    snprintf(said, sizeof said, "%s", out->text ? out->text : "");
    buffer_free(out);
    return said;
}

#define SAID(sayer, language, about) (buffer_init(&out), sayer(&out, language, about), kept(&out))

static const char opposed[] = "violins opposed, cellos inside left", together[] = "violins together, cellos outside";

static void a_date_is_written_as_in_the_country(void)
{
    const spz_planned_concert may = {.year = 2032, .month = 5, .day = 1, .weekday = 5, .hall = ""}, never = {.hall = ""};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_date, SPZ_ENGLISH, &may), "Saturday 1 May 2032");
    CU_ASSERT_STRING_EQUAL(SAID(say_date, SPZ_GERMAN, &may), "Samstag, 1. Mai 2032");
    CU_ASSERT_STRING_EQUAL(SAID(say_date, SPZ_FRENCH, &may), "Samedi 1er mai 2032");
    CU_ASSERT_STRING_EQUAL(SAID(say_month, SPZ_FRENCH, &may), "Mai 2032");
    CU_ASSERT_STRING_EQUAL(SAID(say_date, SPZ_GERMAN, &never), "ohne Datum");
}

/* In French less than two is one: '1,5 minute'. */
static void figures_count_as_the_language_counts(void)
{
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_minutes, SPZ_ENGLISH, 1.0), "1 minute");
    CU_ASSERT_STRING_EQUAL(SAID(say_minutes, SPZ_ENGLISH, 1.52), "1.5 minutes");
    CU_ASSERT_STRING_EQUAL(SAID(say_minutes, SPZ_GERMAN, 3.46), "3,5 Minuten");
    CU_ASSERT_STRING_EQUAL(SAID(say_minutes, SPZ_FRENCH, 1.5), "1,5 minute");
    CU_ASSERT_STRING_EQUAL(SAID(say_points, SPZ_ENGLISH, 0.04), "less than 0.1 points");
    CU_ASSERT_STRING_EQUAL(SAID(say_points, SPZ_ENGLISH, 0.98), "1 point");
    CU_ASSERT_STRING_EQUAL(SAID(say_points, SPZ_FRENCH, 0.0), "0 point");
    CU_ASSERT_STRING_EQUAL(SAID(say_points, SPZ_GERMAN, 0.0), "0 Punkte");
}

static void the_crew_is_told_who_goes_where(void)
{
    const spz_section_move move = {SPZ_VN2, 12, SPZ_PLACE_INNER_LEFT, SPZ_PLACE_OUTER_RIGHT};
    const spz_changeover change = {.gap = SPZ_AT_INTERVAL, .from = together, .to = opposed, .after = "A", .before = "B", .moves = &move, .move_count = 1,
                                   .minutes = 3.5, .chairs = 24, .stands = 1, .desks = 20, .violins = SPZ_VIOLINS_IN_THREE};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_move, SPZ_ENGLISH, &move), "Second violins (12 players): from inner left to outer right");
    CU_ASSERT_STRING_EQUAL(SAID(say_move, SPZ_GERMAN, &move), "Zweite Violinen (12 Spieler): von innen links nach außen rechts");
    CU_ASSERT_STRING_EQUAL(SAID(say_move, SPZ_FRENCH, &move), "Seconds violons (12 musiciens)\u00A0: de l'intérieur jardin à l'extérieur cour");
    CU_ASSERT_STRING_EQUAL(SAID(say_load_of, SPZ_ENGLISH, &change), "24 chairs and 1 stand to be carried, of 20 desks");
    CU_ASSERT_STRING_EQUAL(SAID(say_change_place, SPZ_GERMAN, &change), "In der Pause, zwischen „A“ und „B“");
    CU_ASSERT_STRING_EQUAL(SAID(say_change_remark, SPZ_ENGLISH, &change), "the violins are in three sections from here, desk by desk as they sit");
    CU_ASSERT_STRING_EQUAL(SAID(say_whole_change, SPZ_ENGLISH, &change),
                           "At the interval, between 'A' and 'B': from violins together, cellos outside to violins opposed, cellos inside left. "
                           "Vn II (12 players) from inner left to outer right. To be carried: 24 chairs and 1 stand; 3.5 minutes; "
                           "the violins are in three sections from here, desk by desk as they sit.");
}

static void doubts_about_a_change_come_first(void)
{
    const spz_changeover banned = {.not_allowed = true, .violins = SPZ_VIOLINS_IN_TWO_AGAIN}, slow = {.longest = 6}, plain = {0};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_change_remark, SPZ_GERMAN, &banned),
                           "das Haus erlaubt hier keinen Umbau, aber die Werke verlangen ihn; die Violinen spielen wieder in zwei Gruppen");
    CU_ASSERT_STRING_EQUAL(SAID(say_change_remark, SPZ_ENGLISH, &slow), "this takes longer than the 6 minutes that the house gives");
    CU_ASSERT_STRING_EQUAL(SAID(say_change_remark, SPZ_ENGLISH, &plain), "");
}

static void one_orchestra_becomes_two(void)
{
    const spz_changeover parts = {.from = opposed, .to = opposed, .two_after = true}, joins = {.from = together, .to = opposed, .two_before = true};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_change, SPZ_ENGLISH, &parts), "from violins opposed, cellos inside left to the same for two orchestras");
    CU_ASSERT_STRING_EQUAL(SAID(say_change, SPZ_ENGLISH, &joins),
                           "from violins together, cellos outside for two orchestras to violins opposed, cellos inside left for one");
    CU_ASSERT_STRING_EQUAL(SAID(say_moves, SPZ_FRENCH, &joins), "Les deux orchestres se réunissent en un seul");
}

static void a_concert_that_could_not_be_planned_says_why(void)
{
    const spz_planned_concert odd = {.problem = SPZ_HALL_UNREADABLE, .hall_settings = "halls/odd.ini", .hall_line = 2};
    const spz_planned_work lost = {.problem = SPZ_WORK_UNREADABLE, .cause = SPZ_NOT_XML}, none = {.problem = SPZ_WORK_WITHOUT_SCORE};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_not_planned, SPZ_ENGLISH, &odd), "Not planned: the settings of its hall can't be used (odd.ini, line 2).");
    CU_ASSERT_STRING_EQUAL(SAID(say_not_planned, SPZ_GERMAN, &odd), "Nicht geplant: die Einstellungen des Saals sind nicht zu gebrauchen (odd.ini, Zeile 2).");
    CU_ASSERT_STRING_EQUAL(SAID(say_evidence, SPZ_ENGLISH, &lost), "Not judged: the file is damaged or breaks off; any seating will do.");
    CU_ASSERT_STRING_EQUAL(SAID(say_evidence, SPZ_FRENCH, &none), "Non jugé\u00A0: il n'y a pas de partition\u00A0; toute disposition convient.");
    for (int cause = SPZ_CANNOT_OPEN; cause <= SPZ_NO_STRINGS; cause++) { /* as the messages say it */
        const spz_planned_work work = {.problem = SPZ_WORK_UNREADABLE, .cause = (spz_status)cause};
        CU_ASSERT_STRING_EQUAL(SAID(say_work_problem, SPZ_ENGLISH, &work), spz_status_text((spz_status)cause));
    }
}

static void plans_that_were_not_taken_are_one_sentence_each(void)
{
    const spz_other_change change = {.gap = SPZ_BETWEEN_WORKS, .after = "A", .before = "B", .to = opposed, .minutes = 3.9, .price = 13.9, .allowed = true};
    const char *const order[] = {"A", "C", "B"};
    const spz_planned_concert concert = {.points = 10, .one_more = {.possible = true, .points = 4, .changes = 1, .list = &change, .list_count = 1},
                                         .other_order = {.possible = true, .points = 4, .changes = 2, .order = order, .order_count = 3}};
    Buffer out;
    CU_ASSERT_STRING_EQUAL(SAID(say_one_more, SPZ_ENGLISH, &concert),
                           "If one change more were allowed, 6 points less would be given up. The change: between 'A' and 'B' to violins opposed, cellos inside "
                           "left (3.9 minutes, at a price of 13.9 points).");
    CU_ASSERT_STRING_EQUAL(SAID(say_other_order, SPZ_ENGLISH, &concert), "Remark: in the order 'A', 'C' and then 'B' it would need 2 changes and give up 4 points.");
    CU_ASSERT_STRING_EQUAL(SAID(say_other_order, SPZ_GERMAN, &concert),
                           "Hinweis: in der Folge „A“, „C“, dann „B“ bräuchte das Konzert 2 Umbauten und gäbe 4 Punkte preis.");
    CU_ASSERT_STRING_EQUAL(SAID(say_one_seating, SPZ_FRENCH, &concert), "Aucune disposition unique ne convient à la soirée\u00A0: le tableau en fixe plusieurs.");
}

static const struct Statement statements[] = {
    STATEMENT(a_date_is_written_as_in_the_country),
    STATEMENT(figures_count_as_the_language_counts),
    STATEMENT(the_crew_is_told_who_goes_where),
    STATEMENT(doubts_about_a_change_come_first),
    STATEMENT(one_orchestra_becomes_two),
    STATEMENT(a_concert_that_could_not_be_planned_says_why),
    STATEMENT(plans_that_were_not_taken_are_one_sentence_each),
};
void suite_season_words(void) { suite_of("season words", statements, COUNT(statements)); }
