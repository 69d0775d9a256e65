/* Tables of a season as people keep them. */
#include "season/table/cells.h"
#include "season/table/season_table.h"
#include "support/suite.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

typedef struct Heard {
    int errors, doubts;
    long line; /* of the last error */
    char text[400];
} Heard;

static void hear(void *context, const spz_message *message)
{
    Heard *heard = context;
    heard->doubts += message->severity == SPZ_DOUBT;
    if (message->severity != SPZ_ERROR)
        return;
    heard->errors++;
    heard->line = message->line;
    snprintf(heard->text, sizeof heard->text, "%s", message->text);
}

static spz_status read_bytes(const char *text, size_t length, SeasonTable *table, Heard *heard)
{
    char path[] = "/tmp/spezzato-table-XXXXXX";
    int file = mkstemp(path);
    *heard = (Heard){0};
    CU_ASSERT_TRUE_FATAL(file >= 0);
    CU_ASSERT_EQUAL(write(file, text, length), (ssize_t)length);
    close(file);
    spz_status status = table_read(path, NULL, &(spz_sink){hear, heard}, table);
    unlink(path);
    return status;
}

static spz_status read_text(const char *text, SeasonTable *table, Heard *heard)
{
    return read_bytes(text, strlen(text), table, heard);
}

static void the_columns_may_stand_in_any_order(void)
{
    static const char *const tables[] = {
        "concert,date,hall,order,work,score\nOpening,2027-03-14,Old Mill,1,Serenade,a.xml\n",
        "score;Work;ORDER;Hall;Date;Concert\na.xml;Serenade;1;Old Mill;14.3.2027;Opening\n",
        ("\xEF\xBB\xBF" "Score , work,order,hall,date,concert\r\na.xml,Serenade,1, Old Mill ,2027/3/14,Opening\r\n"),
        "Our season\n\nconcert\t,date,hall,order,work,score\nOpening,2027-03-14,Old Mill,1,\"Serenade\",a.xml",
    };
    for (size_t i = 0; i < COUNT(tables); i++) {
        SeasonTable table;
        Heard heard;
        CU_ASSERT_EQUAL(read_text(tables[i], &table, &heard), SPZ_OK);
        CU_ASSERT_EQUAL_FATAL(table.concerts.count, 1);
        const TableConcert *concert = &table.concerts.at[0];
        CU_ASSERT_STRING_EQUAL(concert->name, "Opening");
        CU_ASSERT_STRING_EQUAL(concert->hall, "Old Mill");
        CU_ASSERT_EQUAL(date_compare(concert->date, (Date){2027, 3, 14}), 0);
        CU_ASSERT_EQUAL_FATAL(concert->works.count, 1);
        CU_ASSERT_STRING_EQUAL(concert->works.at[0].title, "Serenade");
        CU_ASSERT_STRING_EQUAL(concert->works.at[0].scores, "a.xml");
        CU_ASSERT_EQUAL(heard.errors, 0);
        table_free(&table);
    }
}

static void what_cannot_be_used_is_told_with_its_line_and_the_rest_is_planned(void)
{
    static const struct { const char *row, *word; size_t works; } odd[] = {
        {",,,,,,", NULL, 2},
        {"A,,,later,Piece,x.xml,", "later", 3},
        {"A,,,1,Piece,x.xml,perhaps", "perhaps", 3},
        {"A,,,1,,,", "neither", 2},
        {"A,,,1,Piece,x.xml,,more", "more cells", 3},
        {"A,,,1,Pi\xE8" "ce,x.xml,", NULL, 3},
        {"A,,,1,\"Piece,x.xml,", "quotation", 3},
    };
    for (size_t i = 0; i < COUNT(odd); i++) {
        char text[300];
        SeasonTable table;
        Heard heard;
        snprintf(text, sizeof text, "concert,date,hall,order,work,score,interval after\nA,,,1,First,a.xml,\n%s\nA,,,2,Last,b.xml,\n", odd[i].row);
        CU_ASSERT_EQUAL(read_text(text, &table, &heard), SPZ_OK);
        CU_ASSERT_EQUAL_FATAL(table.concerts.count, 1);
        CU_ASSERT_EQUAL(table.concerts.at[0].works.count, odd[i].works);
        CU_ASSERT_EQUAL(heard.errors, odd[i].word ? 1 : 0);
        CU_ASSERT_EQUAL(table.faults, odd[i].word ? 1 : 0);
        if (odd[i].word) {
            CU_ASSERT_EQUAL(heard.line, 3);
            CU_ASSERT_PTR_NOT_NULL(strstr(heard.text, odd[i].word));
        }
        table_free(&table);
    }
}

static void a_line_end_in_a_cell_does_not_shift_the_lines_of_later_rows(void)
{
    SeasonTable table;
    Heard heard;
    CU_ASSERT_EQUAL(read_text("concert,work,score,date\n\nA,\"Piece\nin two lines\",x.xml,\nA,B,c.xml,never\n", &table, &heard), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(table.concerts.count, 2); /* on another day, though nobody knows on which */
    CU_ASSERT_EQUAL(table.concerts.at[0].works.at[0].line, 3);
    CU_ASSERT_STRING_EQUAL(table.concerts.at[0].works.at[0].title, "Piece in two lines");
    CU_ASSERT_EQUAL(heard.line, 5);
    table_free(&table);
}

static void empty_cells_go_on_from_the_row_above(void)
{
    SeasonTable table;
    Heard heard;
    const char *text = "concert,date,hall,work,score,composed,interval\n"
                       "A,2027-01-02,Mill,One,1.xml,c. 1788,yes\n,,,Two,2.xml,1804-06,\nB,2027-01-01,Barn,Three,3.xml,old,\n,,,Four,4.xml,,x\n";
    CU_ASSERT_EQUAL(read_text(text, &table, &heard), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(table.concerts.count, 2);
    CU_ASSERT_EQUAL_FATAL(table.concerts.at[0].works.count, 2);
    CU_ASSERT_EQUAL_FATAL(table.concerts.at[1].works.count, 2);
    CU_ASSERT_EQUAL(table.concerts.at[0].works.at[0].year, 1788);
    CU_ASSERT_TRUE(table.concerts.at[0].works.at[0].interval_after);
    CU_ASSERT_EQUAL(table.concerts.at[0].works.at[1].year, 1804);
    CU_ASSERT_FALSE(table.concerts.at[0].works.at[1].interval_after);
    CU_ASSERT_STRING_EQUAL(table.concerts.at[1].hall, "Barn");
    CU_ASSERT_EQUAL(heard.errors, 1); /* 'old' is no year */
    table_free(&table);
}

static void rows_under_one_without_its_date_go_with_it(void)
{
    SeasonTable table;
    Heard heard;
    CU_ASSERT_EQUAL(read_text("concert,date,work,score\nA,2027-03-14,One,a.xml\n,,Two,b.xml\n"
                              "B,2027-02-31,Three,c.xml\n,,Four,d.xml\nC,2027-05-01,Five,e.xml\n,,Six,f.xml\n", &table, &heard), SPZ_OK);
    CU_ASSERT_EQUAL(heard.errors, 1); /* the day that doesn't exist */
    CU_ASSERT_EQUAL(heard.line, 4);
    CU_ASSERT_EQUAL_FATAL(table.concerts.count, 3);
    for (size_t i = 0; i < 3; i++)
        CU_ASSERT_EQUAL(table.concerts.at[i].works.count, 2);
    CU_ASSERT_FALSE(date_is_set(table.concerts.at[1].date));
    table_free(&table);
}

static void works_follow_their_order_and_a_repeat_on_another_day_is_another_concert(void)
{
    SeasonTable table;
    Heard heard;
    const char *text = "concert,date,order,work,score\nA,2027-01-02,2,Second,b\nA,2027-01-02,1,First,a\nA,2027-01-03,1,First,a\n"
                       "A,2027-01-02,1.5,Between,c\n";
    CU_ASSERT_EQUAL(read_text(text, &table, &heard), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(table.concerts.count, 2);
    CU_ASSERT_EQUAL_FATAL(table.concerts.at[0].works.count, 3);
    CU_ASSERT_STRING_EQUAL(table.concerts.at[0].works.at[0].title, "First");
    CU_ASSERT_STRING_EQUAL(table.concerts.at[0].works.at[1].title, "Between");
    CU_ASSERT_STRING_EQUAL(table.concerts.at[0].works.at[2].title, "Second");
    table_free(&table);
}

static void one_concert_is_in_one_hall(void)
{
    SeasonTable table;
    Heard heard;
    CU_ASSERT_EQUAL(read_text("concert,hall,work,score\nA,Mill,One,1\nA,Barn,Two,2\n", &table, &heard), SPZ_OK);
    CU_ASSERT_EQUAL(heard.errors, 1);
    CU_ASSERT_EQUAL(heard.line, 3);
    CU_ASSERT_STRING_EQUAL(table.concerts.at[0].hall, "Mill");
    CU_ASSERT_EQUAL(table.concerts.at[0].works.count, 2);
    table_free(&table);
}

static void what_is_no_table_is_refused(void)
{
    static const struct { const char *text; size_t length; spz_status status; } bad[] = {
        {"", 0, SPZ_EMPTY},
        {"just words\nand more\n", 20, SPZ_BAD_SETTINGS},
        {"\xFF\xFE" "c\0o\0", 6, SPZ_BAD_SETTINGS},
        {"concert,date\nA,2027-01-01\n", 26, SPZ_BAD_SETTINGS},
        {"\0\0\0\0", 4, SPZ_BAD_SETTINGS},
    };
    for (size_t i = 0; i < COUNT(bad); i++) {
        SeasonTable table;
        Heard heard;
        CU_ASSERT_EQUAL(read_bytes(bad[i].text, bad[i].length, &table, &heard), bad[i].status);
        CU_ASSERT_EQUAL(heard.errors, 1);
        table_free(&table);
    }
    SeasonTable table;
    CU_ASSERT_EQUAL(table_read("no such table.csv", NULL, NULL, &table), SPZ_CANNOT_OPEN);
    table_free(&table);
}

/* Weekdays of the Gregorian calendar: 15 October 1582 was a Friday (papal bull Inter gravissimas), 1 January 2000 a Saturday. */
static void days_have_the_weekday_that_the_calendar_gives_them(void)
{
    CU_ASSERT_EQUAL(date_weekday((Date){1582, 10, 15}), 4);
    CU_ASSERT_EQUAL(date_weekday((Date){2000, 1, 1}), 5);
    CU_ASSERT_EQUAL(date_weekday((Date){2000, 2, 29}), 1);
    int weekday = date_weekday((Date){1999, 12, 31});
    for (int year = 2000; year < 2401; year++)
        for (int month = 1; month <= 12; month++)
            for (int day = 1; day <= date_days_of_month(year, month); day++) {
                weekday = (weekday + 1) % 7;
                if (date_weekday((Date){year, month, day}) != weekday)
                    CU_FAIL("a weekday is left out");
            }
    CU_ASSERT_EQUAL(weekday, date_weekday((Date){2000, 12, 31})); /* 400 years are whole weeks */
}

/* Bytes changed, put in and taken out at random: whatever comes of it, it is told and nothing breaks. */
static void a_damaged_table_is_read_as_far_as_it_goes(void)
{
    static const char good[] = "concert;date;hall;order;work;score;composed;interval after;fixed seating;note\nA;2027-01-02;Mill;1;\"One; two\";a|b;1788;yes;;\n"
                               ";;;2;Two;c;c. 1800;;violins opposed;\"a \"\"note\"\"\"\nB;3.4.2027;Barn;1;Three;d;;x;;\n";
    static const char odd[] = "\";,\n\r\0\xFF\xC3 1x";
    uint64_t state = (uint64_t)time(NULL) | 1;
    printf("\n    damaged tables from seed %llu\n", (unsigned long long)state);
    for (int round = 0; round < 400; round++) {
        char text[sizeof good];
        SeasonTable table;
        Heard heard;
        memcpy(text, good, sizeof good);
        for (int change = 0; change < 6; change++) {
            state = state * 6364136223846793005u + 1442695040888963407u; /* Knuth, The Art of Computer Programming 2, 3.3.4 */
            text[(state >> 33) % (sizeof good - 1)] = odd[(state >> 20) % sizeof odd];
        }
        spz_status status = read_bytes(text, sizeof good - 1, &table, &heard);
        CU_ASSERT_TRUE(status == SPZ_OK || status == SPZ_BAD_SETTINGS);
        if (status != SPZ_OK)
            CU_ASSERT_EQUAL(table.concerts.count, 0);
        table_free(&table);
    }
}

static const struct Statement statements[] = {
    STATEMENT(the_columns_may_stand_in_any_order),
    STATEMENT(what_cannot_be_used_is_told_with_its_line_and_the_rest_is_planned),
    STATEMENT(a_line_end_in_a_cell_does_not_shift_the_lines_of_later_rows),
    STATEMENT(empty_cells_go_on_from_the_row_above),
    STATEMENT(rows_under_one_without_its_date_go_with_it),
    STATEMENT(works_follow_their_order_and_a_repeat_on_another_day_is_another_concert),
    STATEMENT(one_concert_is_in_one_hall),
    STATEMENT(what_is_no_table_is_refused),
    STATEMENT(days_have_the_weekday_that_the_calendar_gives_them),
    STATEMENT(a_damaged_table_is_read_as_far_as_it_goes),
};

void suite_season_table(void)
{
    suite_of("season's table", statements, COUNT(statements));
}
