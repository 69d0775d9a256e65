/* parts_advice.h - what a player should find written in the part, said once for the sheets and for the marks in the score. */
#ifndef EDITING_PARTS_ADVICE_H
#define EDITING_PARTS_ADVICE_H
#include "sections/section_map.h"
#include "spezzato/sheets.h"
#include "support/array.h"

typedef enum AdviceKind { /* in the order in which they stand where several fall on one moment */
    ADVICE_UNISON,
    ADVICE_DIVIDE,
    ADVICE_LEAD,
    ADVICE_ANSWER,
    ADVICE_SHARE, /* hocket, split line: both at once */
    ADVICE_WITH
} AdviceKind;

typedef struct Advice {
    AdviceKind kind;
    size_t group;          /* of players: index into the section map's groups */
    const spz_passage *passage;
    Ticks from, to;        /* what it is about, for these players */
    size_t bar, last_bar;  /* indices */
    const char *words;     /* to write in: 'answer Vn I' */
    const char *detail;    /* for the librarian: entries, desks; "" */
    const char **line_desks; /* a division: 'desks 1, 4', for each of line_count lines from the top; else NULL */
    int line_count;
} Advice;

typedef struct AdviceList {
    Arena arena; /* holds the texts */
    ARRAY(Advice) items;
} AdviceList;

/* All advice for one movement by group, then moment, then kind. The order of arguments to release: advice_free, always. SPZ_BAD_ARGUMENT where
 * the arrangement that the options name isn't among those ranked. */
spz_status advice_find(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                       AdviceList *list);
void advice_free(AdviceList *list);

/* 'first time', 'both times'; "" where the bar is played once. */
enum { PASS_TEXT = 48 };
char *advice_pass(const Movement *movement, size_t bar, char text[PASS_TEXT]);

/* Name of the seating that the advice counts with; "" where none was judged. */
const char *advice_arrangement(const spz_movement_reading *reading, const spz_sheet_options *options);
#endif
