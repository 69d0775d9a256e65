/* Ten tables as people really keep them, and what is made of each: concerts with day, time and hall, works in order ('--' an interval behind them), and
 * what is noted by line. */
#include "season/dates/dates.h"
#include "season/table/season_table.h"
#include "support/buffer.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

typedef struct Messy {
    const char *text;
    size_t length; /* 0: up to its zero byte */
    const char *made;
    int told;      /* messages: faults */
    DateOrder dates;
} Messy;

static void count_faults(void *context, const spz_message *message)
{
    *(int *)context += message->severity == SPZ_ERROR;
}

static void describe_concert(Buffer *out, const TableConcert *concert)
{
    buffer_printf(out, "%s", concert->name);
    if (date_is_set(concert->date))
        buffer_printf(out, ", %d-%02d-%02d", concert->date.year, concert->date.month, concert->date.day);
    if (concert->time != NO_TIME)
        buffer_printf(out, " %d:%02d", concert->time / 60, concert->time % 60);
    buffer_printf(out, "%s%s:", *concert->hall ? ", " : "", concert->hall);
    for (size_t i = 0; i < concert->works.count; i++)
        buffer_printf(out, " %s%s", concert->works.at[i].title, concert->works.at[i].interval_after ? " --" : "");
    buffer_puts(out, "\n");
}

static char *describe(const SeasonTable *table)
{
    Buffer out;
    buffer_init(&out);
    for (size_t i = 0; i < table->concerts.count; i++)
        describe_concert(&out, &table->concerts.at[i]);
    for (size_t i = 0; i < table->notes.count; i++) {
        const spz_table_note *note = &table->notes.at[i];
        buffer_printf(&out, "%ld %s%s%s%s\n", note->line, spz_fault_name(note->fault), *note->name ? ": " : "", note->name, note->doubt ? "?" : "");
    }
    return out.text;
}

static const Messy tables[] = {
    /* the dates of five people */
    {"concert,date,work,score\nA,46461,One,1\nB,15.03.27,Two,2\nC,31 May 2027,Three,3\nD,2027-05-31 19:30,Four,4\nE,5/31/2027,Five,5\nF,4/5/2027,Six,6\n", 0,
     "A, 2027-03-15: One\nB, 2027-03-15: Two\nC, 2027-05-31: Three\nD, 2027-05-31 19:30: Four\nE, 2027-05-31: Five\nF, 2027-04-05: Six\n", 0, 0},
    /* nothing says which is the month: asked once, each line noted */
    {"concert,date,work,score\nA,3/4/2027,One,1\nA,4/4/27,Two,2\nB,5/4/2027,Three,3\n", 0,
     "A: One\nA, 2027-04-04: Two\nB: Three\n2 date-two-ways: 3/4/2027\n4 date-like-that: 5/4/2027\n", 1, 0},
    {"concert,date,work,score\nA,3/4/2027,One,1\nB,5/4/2027 8 pm,Three,3\n", 0, "A, 2027-04-03: One\nB, 2027-04-05 20:00: Three\n", 0, DATES_DAY_FIRST},
    /* German, Latin-1, semicolons, a title above, a column of the office's own, TRUE as a German spreadsheet says it */
    {"Spielzeit 26/27;;;\n\nKonzert;Datum;Uhrzeit;Saal;Nr.;Werk;Partitur;Pause;Solist;Kasse\n"
     "Er\xF6""ffnung;Sonntag, 14. M\xE4rz 2027;19.30 Uhr;M\xFChle;1.;Ouvert\xFCre;1;FALSCH;;\n;;;;2.;Zweites;2;WAHR;Frau X;\n;;;;3.;Drittes;3;;;\n", 0,
     "Er\xC3\xB6""ffnung, 2027-03-14 19:30, M\xC3\xBChle: Ouvert\xC3\xBCre Zweites -- Drittes\n3 columns: Kasse?\n", 0, 0},
    /* French, tabs, the interval a row of its own */
    {"Programme\tDate\tSalle\tOrdre\tTitre\tPartition\nA\tdimanche 14 mars 2027 \xC3\xA0 19h30\tMoulin\t1er\tUn\t1\n\t\t\t\tEntracte\t\n\t\t\t2e\tDeux\t2\n", 0,
     "A, 2027-03-14 19:30, Moulin: Un -- Deux\n", 0, 0},
    /* order in words and in figures of all kinds */
    {"concert,order,work,score,interval after\nA,2nd,Two,2,x\nA,first,One,1,\nA,III,Three,3,20 min\nA,No. 4,Four,4,oui\nA,encore,Last,5,\nA,later,When,6,maybe\n", 0,
     "A: One Two -- Three -- Four -- Last When\n2 intervals: A?\n7 no-order: later\n7 no-interval: maybe\n", 2, 0},
    /* cells that can't be used: the works are planned all the same */
    {"concert,date,hall,order,work,score,composed\nA,2027-02-30,Mill,1,One,1,old\nB,2027-03-01,Mill,1,Two,2,\nB,2027-03-01,Barn,2,Three,3,\nB,,,3,,,\n,,,4,Four,4,x,more\n", 0,
     "A, Mill: One\nB, 2027-03-01, Mill: Two Three Four\n2 no-date: 2027-02-30\n2 no-year: old\n4 other-hall: Barn\n5 row-without-work\n6 row-too-long: more\n6 no-year: x\n", 6, 0},
    /* the same row twice, a weekday that isn't that day's, a concert that opens in a row of its own, one without works */
    {"concert,date,hall,work,score\nA,Mon 14 March 2027,Mill,,\n,,,One,1\n,,,One,1\n,,,Two,2\nB,2027-04-01,,,\n", 0,
     "A, 2027-03-14, Mill: One One Two\n2 weekday: Mon 14 March 2027?\n4 row-twice: One?\n6 concert-empty: B\n", 1, 0},
    /* a quotation mark that is never closed */
    {"concert,work,score\nA,Two,2\nA,\"One,1\nA,Three,3\n", 0, "A: Two One Three\n3 quote-open\n", 1, 0},
    /* UTF-16 as spreadsheets save 'Unicode text', with tabs; twice on one day */
    {"\xFF\xFE" "c\0o\0n\0c\0e\0r\0t\0\t\0d\0a\0t\0e\0\t\0s\0c\0o\0r\0e\0\r\0\n\0\xC9\0\t\0" "1\0.\0" "2\0.\0" "2\0" "7\0 \0" "1\0" "5\0h\0\t\0a\0\r\0\n\0\xC9\0\t\0" "1\0.\0" "2\0.\0" "2\0" "7\0 \0" "2\0" "0\0h\0\t\0a\0\r\0\n\0", 106,
     "\xC3\x89, 2027-02-01 15:00: a\n\xC3\x89, 2027-02-01 20:00: a\n", 0, 0},
};

static void messy_tables_are_read_as_they_were_meant(void)
{
    for (size_t i = 0; i < COUNT(tables); i++) {
        char path[] = "/tmp/spezzato-table-XXXXXX";
        int file = mkstemp(path), faults = 0;
        SeasonTable table;
        size_t length = tables[i].length ? tables[i].length : strlen(tables[i].text);
        CU_ASSERT_TRUE_FATAL(file >= 0);
        CU_ASSERT_EQUAL(write(file, tables[i].text, length), (ssize_t)length);
        close(file);
        CU_ASSERT_EQUAL(table_read(path, &(TableOptions){tables[i].dates, NULL}, &(spz_sink){count_faults, &faults}, &table), SPZ_OK);
        unlink(path);
        table_sort_notes(&table);
        char *made = describe(&table);
        CU_ASSERT_STRING_EQUAL(made, tables[i].made);
        if (made && strcmp(made, tables[i].made) != 0)
            printf("\n    table %zu: made of it was\n%s", i + 1, made);
        CU_ASSERT_EQUAL(faults, tables[i].told);
        free(made);
        table_free(&table);
    }
}

static void a_date_is_read_however_it_is_written(void)
{
    static const struct { const char *text; Date date; int time; } days[] = {
        {"2027-03-14", {2027, 3, 14}, NO_TIME}, {"2027/3/14", {2027, 3, 14}, NO_TIME}, {"20270314", {2027, 3, 14}, NO_TIME}, {"14.3.2027", {2027, 3, 14}, NO_TIME},
        {"14.03.27", {2027, 3, 14}, NO_TIME}, {"March 14th, 2027", {2027, 3, 14}, NO_TIME}, {"Sun 14-Mar-27", {2027, 3, 14}, NO_TIME},
        {"14. M\xC3\xA4rz 2027", {2027, 3, 14}, NO_TIME}, {"So, 14. MRZ 2027", {2027, 3, 14}, NO_TIME}, {"1er f\xC3\xA9vrier 2027", {2027, 2, 1}, NO_TIME},
        {"mar. 4 mai 2027", {2027, 5, 4}, NO_TIME}, {"15 ao\xC3\xBBt 2027", {2027, 8, 15}, NO_TIME}, {"2027-05-31T19:30:00Z", {2027, 5, 31}, 1170},
        {"5/31/2027 7:30 PM", {2027, 5, 31}, 1170}, {"31/5/2027, 7.30 p.m.", {2027, 5, 31}, 1170}, {"31.5.2027 um 19 Uhr", {2027, 5, 31}, 1140},
        {"46538.8125", {2027, 5, 31}, 1170}, {"Sunday 3/4/2029", {2029, 3, 4}, NO_TIME}, {"29.2.2028", {2028, 2, 29}, NO_TIME}, {"1.1.69", {1969, 1, 1}, NO_TIME}};
    static const char *const none[] = {"", "2027", "2027-02-29", "2027-13-01", "1.2.", "2027-1/2", "2027-01-01x", "99999-1-1", "soon", "31 May", "30.2.2027",
                                       "13/13/2027", "12345", "2027-05-31 25:00", "jui 2027"};
    DateReading read;
    for (size_t i = 0; i < COUNT(days); i++) {
        CU_ASSERT_EQUAL(date_read(days[i].text, DATES_UNKNOWN, &read), DATE_READ);
        CU_ASSERT_EQUAL(date_compare(read.date, days[i].date), 0);
        CU_ASSERT_EQUAL(read.time, days[i].time);
        if (date_compare(read.date, days[i].date) != 0 || read.time != days[i].time)
            printf("\n    '%s' is read as %d-%d-%d, %d\n", days[i].text, read.date.year, read.date.month, read.date.day, read.time);
    }
    for (size_t i = 0; i < COUNT(none); i++) {
        CU_ASSERT_EQUAL(date_read(none[i], DATES_DAY_FIRST, &read), DATE_NONE);
        if (date_is_set(read.date))
            printf("\n    '%s' is taken for a date\n", none[i]);
    }
    CU_ASSERT_EQUAL(date_read("3/4/2027", DATES_UNKNOWN, &read), DATE_TWO_WAYS);
    CU_ASSERT_EQUAL(date_read("3-4-2027", DATES_UNKNOWN, &read), DATE_TWO_WAYS);
    CU_ASSERT_EQUAL(date_read("3/4/2027", DATES_MONTH_FIRST, &read), DATE_READ);
    CU_ASSERT_EQUAL(read.date.month, 3);
    CU_ASSERT_EQUAL(date_read("4/4/2027", DATES_UNKNOWN, &read), DATE_READ);
}

/* ECMA-376 part 1, 18.17.4.1: in the 1900 date base with its leap year that wasn't, 1 January 2000 is day 36526 (from memory); 1 January 1970, from which
 * POSIX counts, is 25569. Beyond them the days are counted by the calendar's own rule. */
static void days_are_counted_as_spreadsheets_count_them(void)
{
    DateReading read;
    char text[16];
    Date day = {1970, 1, 1};
    for (int count = 25569; count < 60000; count++) {
        snprintf(text, sizeof text, "%d", count);
        CU_ASSERT_EQUAL_FATAL(date_read(text, DATES_UNKNOWN, &read), DATE_READ);
        CU_ASSERT_EQUAL_FATAL(date_compare(read.date, day), 0);
        if (count == 36526)
            CU_ASSERT_EQUAL(date_compare(day, (Date){2000, 1, 1}), 0);
        if (++day.day > date_days_of_month(day.year, day.month))
            day = day.month == 12 ? (Date){day.year + 1, 1, 1} : (Date){day.year, day.month + 1, 1};
    }
}

static const struct Statement statements[] = {
    STATEMENT(messy_tables_are_read_as_they_were_meant),
    STATEMENT(a_date_is_read_however_it_is_written),
    STATEMENT(days_are_counted_as_spreadsheets_count_them),
};

void suite_season_messy(void)
{
    suite_of("messy tables of a season", statements, COUNT(statements));
}
