/* What the program lists against the tables of expert readers (shared folder: expert/, protocol beside them; each settled from two blind readings).
 * Floors are what was measured when they were set (docs/accuracy.md), cut off behind the third digit; a fall below one prints it. The quartets'
 * tables, of a single reading each, bear no floor. */
#include "support/tables/expert_table.h"
#include "support/suite.h"
#include <dirent.h>
#include <stdio.h>
#include <string.h>

static const char heads[] = "exchange\tVn1\tVa\t12\t15\t2\t";

static Marked row_with_links(const char *links)
{
    char line[200];
    Marked row;
    snprintf(line, sizeof line, "%s%s\ta rising figure\n", heads, links);
    CU_ASSERT_TRUE_FATAL(marked_row_read(line, &row));
    return row;
}

static void links_are_all_who_have_the_gesture_in_order_of_entry(void)
{
    Marked row = row_with_links("Vn1>Vn2>Va+VcCb");
    CU_ASSERT_EQUAL_FATAL(row.link_count, 3);
    CU_ASSERT_EQUAL(row.links[0], 1u << SPZ_VN1);
    CU_ASSERT_EQUAL(row.links[1], 1u << SPZ_VN2);
    CU_ASSERT_EQUAL(row.links[2], 1u << SPZ_VA | 1u << SPZ_VC | 1u << SPZ_DB);
    CU_ASSERT_TRUE(row.named[0] == SPZ_VN1 && row.named[1] == SPZ_VA && row.first == 12 && row.last == 15 && row.strength == 2);
}

static void winds_and_soloists_are_no_link_and_parts_count_as_their_section(void)
{
    Marked row = row_with_links("Va1>Wind>Va2>Solo");
    CU_ASSERT_EQUAL_FATAL(row.link_count, 2);
    CU_ASSERT_TRUE(row.links[0] == 1u << SPZ_VA && row.links[1] == 1u << SPZ_VA);
    CU_ASSERT_EQUAL(row_with_links("Wind>Str").link_count, 0);
}

static void without_links_caller_and_responder_are_the_links(void)
{
    Marked row = row_with_links("");
    CU_ASSERT_EQUAL_FATAL(row.link_count, 2);
    CU_ASSERT_TRUE(row.links[0] == 1u << SPZ_VN1 && row.links[1] == 1u << SPZ_VA);
    CU_ASSERT_FALSE(marked_row_read("exchange\tVn1\tVa\t12\t15\t2\ta rising figure\n", &row));
    CU_ASSERT_FALSE(marked_row_read("exchange\tVn1\tVa\t15\t12\t2\t\tbackwards\n", &row));
}

/* Two sections of a row that is marked from 12 to 15, listed from `first` to `last`. */
static Agreement one_listed(const char *links, spz_section one, spz_section other, int first, int last)
{
    MarkedTable table = { .count = 1 };
    ListedTable listed = { .count = 1 };
    Agreement sum = { 0 };
    table.at[0] = row_with_links(links);
    listed.at[0] = (Listed){ false, { one, other }, first, last, true };
    agreement_add(&table, &listed, false, &sum);
    return sum;
}

static void half_of_the_bars_is_enough_and_less_is_not(void)
{
    Agreement half = one_listed("Vn1>Va", SPZ_VN1, SPZ_VA, 14, 17), third = one_listed("Vn1>Va", SPZ_VN1, SPZ_VA, 15, 17);
    CU_ASSERT_TRUE(half.met == 1 && half.right == 1 && half.named == 1);
    CU_ASSERT_TRUE(third.met == 0 && third.right == 0 && third.wanted == 1 && third.listed == 1);
}

static void any_two_links_are_right_and_only_caller_and_responder_are_the_name(void)
{
    Agreement others = one_listed("Vn1>Vn2>Va", SPZ_VN2, SPZ_VN1, 12, 15), one_link = one_listed("Vn1+Vn2>Va", SPZ_VN1, SPZ_VN2, 12, 15);
    CU_ASSERT_TRUE(others.met == 1 && others.right == 1 && others.named == 0);
    CU_ASSERT_TRUE(others.marked_bars == 4 && others.listed_bars == 4 && others.common_bars == 4);
    CU_ASSERT_TRUE(one_link.met == 0 && one_link.right == 0 && one_link.marked_bars == 0 && one_link.listed_bars == 4);
}

static void all_violins_stand_for_either_section(void)
{
    Agreement all = one_listed("Vn2>Va", SPZ_VIOLINS, SPZ_VA, 12, 15), either = one_listed("Vns>Va", SPZ_VN1, SPZ_VA, 12, 15);
    CU_ASSERT_TRUE(all.met == 1 && all.named == 0);
    CU_ASSERT_TRUE(either.met == 1 && either.named == 1);
}

typedef void Tried(const MarkedTable *table, const char *name, void *sum);

/* Calls `tried` for each table of a folder; how many there are. */
static int for_each_table(const char *where, Tried *tried, void *sum)
{
    static MarkedTable table;
    const char *path = shared_file(where);
    DIR *folder = path ? opendir(path) : NULL;
    int count = 0;
    for (struct dirent *entry; folder && (entry = readdir(folder));) {
        char name[300];
        size_t length = strlen(entry->d_name);
        if (length < 5 || length > 250 || strcmp(entry->d_name + length - 4, ".tsv"))
            continue;
        snprintf(name, sizeof name, "%s/%s", where, entry->d_name);
        CU_ASSERT_TRUE_FATAL(marked_table_read(shared_file(name), &table));
        snprintf(name, sizeof name, "%.*s", (int)length - 4, entry->d_name);
        tried(&table, name, sum);
        count++;
    }
    if (folder)
        closedir(folder);
    return count;
}

static void against_itself(const MarkedTable *table, const char *name, void *sum)
{
    static ListedTable listed;
    Agreement agreement = { 0 };
    listed_of_marked(table, &listed);
    for (int divisions = 0; divisions < 2; divisions++)
        agreement_add(table, &listed, divisions, &agreement);
    if (agreement.met != agreement.wanted || agreement.right != agreement.listed)
        printf("\n    %s against itself: %d of %d met, %d of %d right", name, agreement.met, agreement.wanted, agreement.right, agreement.listed);
    CU_ASSERT_TRUE(agreement.met == agreement.wanted && agreement.struck == agreement.striking);
    CU_ASSERT_TRUE(agreement.right == agreement.listed && agreement.common_bars <= agreement.marked_bars);
    *(int *)sum += agreement.wanted;
}

static void a_table_held_against_itself_is_met_in_full(void)
{
    int wanted = 0;
    if (!shared_file("expert"))
        return;
    CU_ASSERT_EQUAL(for_each_table("expert", against_itself, &wanted), 21);
    for_each_table("quartets", against_itself, &wanted);
    CU_ASSERT_TRUE(wanted > 300);
}

typedef struct Both { Agreement antiphony, divisions; } Both;

static void against_the_program(const MarkedTable *table, const char *name, void *sum)
{
    static ListedTable listed;
    char file[300];
    spz_reading *reading = NULL;
    Both *both = sum;
    snprintf(file, sizeof file, "scores/%.250s.mxl", name);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(shared_file(file), NULL, 0, SPZ_TO_PASSAGES, NULL, &reading), SPZ_OK);
    CU_ASSERT_TRUE(listed_of(spz_reading_at(reading, 0).findings, &listed));
    spz_reading_free(reading);
    agreement_add(table, &listed, false, &both->antiphony);
    agreement_add(table, &listed, true, &both->divisions);
}

/* The figures of all movements together, read once; false without the shared folder. */
static bool program_against_experts(Both *sum)
{
    static Both kept;
    if (!shared_file("expert"))
        return false;
    if (!kept.antiphony.wanted)
        CU_ASSERT_EQUAL(for_each_table("expert", against_the_program, &kept), 21);
    *sum = kept;
    return true;
}

static void at_least(const char *what, int part, int whole, double least)
{
    CU_ASSERT_TRUE(whole > 0 && part >= least * whole);
    if (whole <= 0 || part < least * whole)
        printf("\n    %s: %d of %d; at least %.3f expected", what, part, whole, least);
}

static void answers_that_readers_hear_are_found_and_hardly_others(void)
{
    Both sum;
    if (!program_against_experts(&sum))
        return;
    at_least("passages found", sum.antiphony.met, sum.antiphony.wanted, 0.835);
    at_least("passages right", sum.antiphony.right, sum.antiphony.listed, 0.840);
}

static void what_readers_call_striking_is_found(void)
{
    Both sum;
    if (program_against_experts(&sum))
        at_least("striking passages found", sum.antiphony.struck, sum.antiphony.striking, 0.967);
}

static void passages_are_named_as_readers_name_them(void)
{
    Both sum;
    if (program_against_experts(&sum))
        at_least("passages named so", sum.antiphony.named, sum.antiphony.right, 0.842);
}

static void bars_of_first_against_second_violins_are_those_of_the_readers(void)
{
    Both sum;
    if (program_against_experts(&sum))
        at_least("bars of the violins, F1", 2 * sum.antiphony.common_bars, sum.antiphony.marked_bars + sum.antiphony.listed_bars, 0.747);
}

static void divided_sections_are_those_that_readers_mark(void)
{
    Both sum;
    if (!program_against_experts(&sum))
        return;
    at_least("divisions found", sum.divisions.met, sum.divisions.wanted, 0.951);
    at_least("divisions right", sum.divisions.right, sum.divisions.listed, 0.964);
    at_least("divisions named so", sum.divisions.named, sum.divisions.right, 0.944);
}

static const struct Statement statements[] = {
    STATEMENT(links_are_all_who_have_the_gesture_in_order_of_entry),
    STATEMENT(winds_and_soloists_are_no_link_and_parts_count_as_their_section),
    STATEMENT(without_links_caller_and_responder_are_the_links),
    STATEMENT(half_of_the_bars_is_enough_and_less_is_not),
    STATEMENT(any_two_links_are_right_and_only_caller_and_responder_are_the_name),
    STATEMENT(all_violins_stand_for_either_section),
    STATEMENT(a_table_held_against_itself_is_met_in_full),
    STATEMENT(answers_that_readers_hear_are_found_and_hardly_others),
    STATEMENT(what_readers_call_striking_is_found),
    STATEMENT(passages_are_named_as_readers_name_them),
    STATEMENT(bars_of_first_against_second_violins_are_those_of_the_readers),
    STATEMENT(divided_sections_are_those_that_readers_mark),
};
void suite_expert_tables(void) { suite_of("passages against expert tables", statements, COUNT(statements)); }
