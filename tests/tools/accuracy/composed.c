/* composed - prints how many of the passages composed into corpus/ are found, as Markdown, and which are not. Exit status 2 when a score can't
 * be read. */
#include "support/tables/composed.h"
#include <stdio.h>

typedef struct Tally { int all, met, named, clear; } Tally;

static void count_row(const Composed *row, Tally *tally)
{
    tally->all++;
    tally->met += composed_met(row);
    tally->named += composed_named(row);
    tally->clear += composed_met(row) && row->best >= 0.5;
}

static void print_tally(const char *name, const Tally *t)
{
    if (t->all)
        printf("| %s | %d | %d | %.2f | %d | %d |\n", name, t->all, t->met, (double)t->met / t->all, t->named, t->clear);
}

static void print_missed(const Composed *row)
{
    const char *responder = spz_section_name(row->responder);
    printf("- %s, bars %d-%d: %s of %s%s%s, %s to its composer; %d of %d bars found", row->file, row->first, row->last, spz_kind_name(row->kind),
           spz_section_name(row->caller), *responder ? " and " : "", responder, spz_weight_name(spz_weight_of(row->strength)), row->bars_found, row->last - row->first + 1);
    printf(row->bars_found ? ", %s.\n" : ".\n", spz_weight_name(spz_weight_of(row->best)));
}

int main(int argc, char **argv)
{
    static Composed rows[COMPOSED_MOST];
    Tally kinds[SPZ_KIND_COUNT] = {{0}}, apart = {0}, antiphony = {0};
    char path[512];
    if (argc != 2)
        return 2;
    snprintf(path, sizeof path, "%.400s/composed.csv", argv[1]);
    int count = composed_read(path, rows, COMPOSED_MOST);
    if (count < 0 || composed_try(argv[1], rows, count) != SPZ_OK)
        return 2;
    for (int i = 0; i < count; i++) {
        count_row(&rows[i], composed_apart(&rows[i]) ? &apart : &kinds[rows[i].kind]);
        if (!composed_apart(&rows[i]) && spz_kind_is_antiphony(rows[i].kind) && rows[i].strength >= 0.5)
            count_row(&rows[i], &antiphony);
    }
    printf("| composed | passages | found | share | under the same name | found as clear or striking |\n|---|---|---|---|---|---|\n");
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++)
        print_tally(spz_kind_name((spz_kind)kind), &kinds[kind]);
    print_tally("orchestra against orchestra, or winds", &apart);
    print_tally("antiphony of sections, clear or striking to its composer", &antiphony);
    printf("\nNot found, or less than half of them:\n\n");
    for (int i = 0; i < count; i++)
        if (!composed_met(&rows[i]))
            print_missed(&rows[i]);
    return 0;
}
