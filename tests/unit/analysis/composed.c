/* What was composed into the scores of corpus/ is heard in them. Floors lie a little under the figures of docs/accuracy.md; a fall below them
 * prints the figures kind by kind. */
#include "support/tables/composed.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static Composed rows[COMPOSED_MOST];
static int count;

static void read_once(void)
{
    if (count)
        return;
    count = composed_read("corpus/composed.csv", rows, COMPOSED_MOST);
    CU_ASSERT_TRUE_FATAL(count > 80);
    CU_ASSERT_EQUAL_FATAL(composed_try("corpus", rows, count), SPZ_OK);
}

typedef bool Chosen(const Composed *row);

static bool antiphony(const Composed *row)
{
    return spz_kind_is_antiphony(row->kind) && !composed_apart(row) && row->strength >= 0.5;
}

static bool between_orchestras_or_with_winds(const Composed *row)
{
    return spz_kind_is_antiphony(row->kind) && composed_apart(row);
}

static bool of_the_classical_symphony(const Composed *row)
{
    return antiphony(row) && !strncmp(row->file, "brelisk-", 8);
}

static bool split_line(const Composed *row)
{
    return row->kind == SPZ_SPLIT_LINE;
}

static bool division(const Composed *row)
{
    return row->kind == SPZ_DIV2 || row->kind == SPZ_DIV3;
}

static bool coupling(const Composed *row)
{
    return row->kind == SPZ_COUPLING;
}

/* At least `percent` of the chosen rows are met. */
static void expect(Chosen *chosen, const char *what, int least_rows, int percent)
{
    int all = 0, met = 0, named = 0;
    read_once();
    for (int i = 0; i < count; i++)
        if (chosen(&rows[i])) {
            all++;
            met += composed_met(&rows[i]);
            named += composed_named(&rows[i]);
        }
    CU_ASSERT_TRUE(all >= least_rows);
    CU_ASSERT_TRUE(met * 100 >= all * percent);
    if (met * 100 < all * percent)
        printf("\n    %s: %d of %d found, %d of them under the same name; at least %d in a hundred expected", what, met, all, named, percent);
}

static void most_composed_dialogues_are_found(void)
{
    expect(antiphony, "antiphony", 60, 91);
}

static void every_dialogue_of_orchestras_and_of_strings_with_winds_is_found(void)
{
    expect(between_orchestras_or_with_winds, "orchestra against orchestra, or winds", 5, 100);
}

static void nearly_all_dialogues_of_the_classical_symphony_are_found(void)
{
    expect(of_the_classical_symphony, "antiphony of the classical symphony", 30, 88);
}

static void every_composed_split_line_is_found(void)
{
    expect(split_line, "split line", 3, 100);
}

static void composed_divisions_are_found(void)
{
    expect(division, "divisions", 14, 90);
}

static void most_composed_couplings_are_found(void)
{
    expect(coupling, "coupling", 15, 60);
}

static const struct Statement statements[] = {
    STATEMENT(most_composed_dialogues_are_found),
    STATEMENT(every_dialogue_of_orchestras_and_of_strings_with_winds_is_found),
    STATEMENT(nearly_all_dialogues_of_the_classical_symphony_are_found),
    STATEMENT(every_composed_split_line_is_found),
    STATEMENT(composed_divisions_are_found),
    STATEMENT(most_composed_couplings_are_found),
};
void suite_composed(void) { suite_of("composed passages", statements, COUNT(statements)); }
