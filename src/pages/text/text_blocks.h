/* text_blocks.h - the pieces from which the text pages are put together. */
#ifndef PAGES_TEXT_TEXT_BLOCKS_H
#define PAGES_TEXT_TEXT_BLOCKS_H
#include "pages/growing_report.h"
#include "writing/text_layout.h"

/* Title with a line below, the file, its bars and year. */
void block_title(spz_report *report, const ShownMovement *shown);
/* The recommendation, how sure it is, its reasons (the weightiest, or all), and what the other placing of the violins loses. */
void block_verdict(spz_report *report, const spz_verdict *verdict, bool all);
/* All arrangements, best first; with what each loses. */
void block_ranking(spz_report *report, const spz_verdict *verdict, bool losses);
/* What speaks for and against each arrangement, one row a ground. */
void block_terms(spz_report *report, const spz_verdict *verdict);
/* The passages: those worth a conductor's time, or all. */
void block_passages(spz_report *report, const ShownMovement *shown, bool all);
/* A table of passages: its heads, and the cells of one. */
void passage_heads(Table *table, spz_language language);
void passage_cells(Table *table, const Speaker *speaker, const spz_passage *passage);
void block_cautions(spz_report *report);
#endif
