/* parts_sheet.h - the librarian's sheet in its three forms, movement by movement. */
#ifndef PAGES_SHEETS_PARTS_SHEET_H
#define PAGES_SHEETS_PARTS_SHEET_H
#include "editing/parts_advice.h"
#include "wording/passage_words.h"
#include "support/buffer.h"

typedef struct PartsPage { /* one movement */
    const Movement *movement;
    const SectionMap *map;
    const AdviceList *advice;
    const char *file, *title; /* file: the last part of its path; title never empty */
    const char *arrangement;  /* "" where none was judged */
    size_t number;            /* of the movement in the whole sheet, from 0 */
} PartsPage;

typedef struct PartsForm {
    void (*begin)(Buffer *out);
    void (*movement)(Buffer *out, const PartsPage *page);
    void (*end)(Buffer *out);
} PartsForm;
extern const PartsForm parts_text, parts_csv, parts_html;

/* One row of a sheet, ready to be shown. */
typedef struct PartsRow {
    char bar[96], until[96], beat[BEAT_TEXT], letter[REHEARSAL_TEXT], pass[PASS_TEXT];
    const Advice *advice;
} PartsRow;
void parts_row(const PartsPage *page, const Advice *advice, PartsRow *row);
/* 'Violino I, Violino I div.': the names of the score's parts that the group reads. */
void parts_names(Buffer *out, const PartsPage *page, size_t group);
/* Range of the advice for one group. */
void parts_range(const PartsPage *page, size_t group, size_t *first, size_t *end);
/* 'until bar 71. Enters in bars 66, 68'; empty when there is nothing to add. */
void parts_remark(Buffer *out, const PartsRow *row);
#endif
