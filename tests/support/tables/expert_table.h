/* expert_table.h - tables of passages that readers marked in real scores (shared folder: expert/ and quartets/, with the protocol), and what the
 * program lists held against them. The rules are those of score_passages.py there, written again: one checks the other. */
#ifndef TESTS_EXPERT_TABLE_H
#define TESTS_EXPERT_TABLE_H
#include "spezzato/spezzato.h"
#include <stdbool.h>
#include <stddef.h>

enum { LINKS_MOST = 16, PASSAGES_MOST = 200 };

typedef unsigned SectionSet; /* bit `1u << section`; winds and soloists have none */

/* A passage that a reader marked. */
typedef struct Marked {
    bool division;                /* div2 or div3; else antiphony */
    SectionSet links[LINKS_MOST]; /* all who have the gesture, in order of entry */
    int link_count;               /* with fewer than two the row is kept and not scored */
    spz_section named[2];         /* caller and responder */
    int first, last;              /* bars as printed */
    int strength;                 /* 1 marginal, 2 clear, 3 striking */
} Marked;
typedef struct MarkedTable { Marked at[PASSAGES_MOST]; int count; } MarkedTable;

/* A passage that the program lists, between sections of strings. */
typedef struct Listed { bool division; spz_section pair[2]; int first, last; bool clear; } Listed;
typedef struct ListedTable { Listed at[PASSAGES_MOST]; int count; } ListedTable;

/* Divisions are asked for at every strength, antiphony from clear on. Bars: those of first against second violins. */
typedef struct Agreement {
    int wanted, met;         /* passages marked; of these: half of the bars lie in listed ones of the same pair */
    int striking, struck;    /* the same, of the striking alone */
    int listed, right;       /* passages listed as clear; of these: half of the bars lie in marked ones */
    int named;               /* of the right: the two sections are caller and responder of the row that covers most of it */
    int marked_bars, listed_bars, common_bars;
} Agreement;

/* One row of a table; false when it is none (columns: kind, caller, responder, start, end, strength, links, note). */
bool marked_row_read(const char *line, Marked *row);
/* False when the file can't be read, or holds anything but such rows under their heads. */
bool marked_table_read(const char *path, MarkedTable *table);
/* False where there are more than PASSAGES_MOST. */
bool listed_of(const spz_findings *findings, ListedTable *listed);
/* What the reader of the table would list: the ruler held against itself. */
void listed_of_marked(const MarkedTable *table, ListedTable *listed);
/* Adds the figures of one movement. */
void agreement_add(const MarkedTable *table, const ListedTable *listed, bool divisions, Agreement *sum);
#endif
