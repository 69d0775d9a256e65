/* score_list.h - the scores of a command line, those of a season's table among them. */
#ifndef CLI_SCORE_LIST_H
#define CLI_SCORE_LIST_H
#include "cli/options/arguments.h"

typedef struct ScoreItem {
    char *path;
    int year;            /* of composition, as the table of a season has it; 0 none */
} ScoreItem;

typedef struct ScoreList {
    ScoreItem *at;       /* each score once, in the order given */
    size_t count;
    spz_season *season;  /* as planned; NULL where no table was given */
} ScoreList;

/* An operand 'library:NAME' stands for the scores of that work. Operands that end in .csv, .tsv, .ods or .xlsx are tables of a season: it is planned, and its scores come in its place. Exit status: EXIT_INPUT where
 * something could not be used (what could be is in the list), EXIT_USAGE for two tables. The caller frees. */
int score_list_make(ScoreList *list, const Arguments *arguments, const spz_settings *settings);
/* Whether the file is a table by its name; and the line that says why a command that reads scores can't take it. */
bool is_season_table(const char *path);
spz_status refuse_season_table(const char *path);
/* Whether what is asked for may come from a library: a table, 'library:NAME'. */
bool score_list_asks_library(const Arguments *arguments);
void score_list_free(ScoreList *list);
#endif
