/* parts_sheet.h - the librarian's sheet in its four forms, movement by movement. */
#ifndef PAGES_SHEETS_PARTS_SHEET_H
#define PAGES_SHEETS_PARTS_SHEET_H
#include "pages/sheets/sheet_out.h"
#include "wording/papers/advice_words.h"

typedef struct PartsPage { /* one movement */
    const Movement *movement;
    const SectionMap *map;
    const AdviceList *advice;
    const char *file, *title; /* file: the last part of its path; title never empty */
    const char *arrangement;  /* "" where none was judged */
    Speaker speaker;
    size_t number;            /* of the movement in the whole sheet, from 0 */
    const spz_settings *settings; /* whose [players] are counted; NULL: the usual */
} PartsPage;

typedef struct PartsForm {
    SheetStep *begin;
    void (*movement)(SheetOut *sheet, const PartsPage *page);
    SheetStep *end;
    bool data; /* in English */
} PartsForm;
extern const PartsForm parts_text, parts_csv, parts_json, parts_html;
extern const FieldTable parts_movement_fields, advice_fields; /* parts_data.c */
extern const Columns parts_columns;

/* One row of a sheet, ready to be shown; to be released with parts_row_free. */
typedef struct PartsRow {
    char bar[WORDS_TEXT], until[WORDS_TEXT], beat[BEAT_TEXT], letter[REHEARSAL_TEXT];
    Buffer pass, words, detail;
    Buffer warning, question; /* too few players; what is open to dispute */
    const Advice *advice;
} PartsRow;
void parts_row(const PartsPage *page, const Advice *advice, PartsRow *row);
bool parts_row_failed(const PartsRow *row);
void parts_row_free(PartsRow *row);
/* The parts that stay as they are: 'Va, Vc'; nothing where every part has something. */
void parts_untouched(const PartsPage *page, Buffer *out);
/* 'What to write into the string parts. Seating: ...' */
void parts_about(const PartsPage *page, Buffer *out);
/* 'Violino I, Violino I div.': the names of the score's parts that the group reads. */
void parts_names(Buffer *out, const PartsPage *page, size_t group);
/* What has to be known before the rows are read, a sentence each: the house's habits, whose pages are told, divisions that are short of players. From
 * index 0; false past the last. `*warning`: it is one of the last. */
bool parts_preface(const PartsPage *page, size_t index, bool *warning, Buffer *out);
/* Whose pages the file tells the players who divide; PAGES_UNTOLD where nobody does. */
PagesOf parts_pages(const PartsPage *page);
/* Players of the group by the settings: of two orchestras, and of a section written as several parts, its own share. 0 where they don't say it (soloists). */
int parts_players(const PartsPage *page, size_t group);
/* Range of the advice for one group. */
void parts_range(const PartsPage *page, size_t group, size_t *first, size_t *end);
/* 'Until bar 71. Enters in bars 66, 68'; empty when there is nothing to add. */
void parts_remark(Buffer *out, const PartsPage *page, const PartsRow *row);
#endif
