/* sheet_out.h - a sheet under way: the text that grows, with the writers over it (a form uses one of them), and the one way from readings to a
 * document. */
#ifndef PAGES_SHEETS_SHEET_OUT_H
#define PAGES_SHEETS_SHEET_OUT_H
#include "spezzato/reading.h"
#include "spezzato/report.h"
#include "writing/facts.h"
#include "writing/markup.h"

typedef struct SheetOut {
    Buffer text;
    Markup html;
    FactsOut facts;
    Buffer line; /* what is being said just now */
    spz_language language;
    size_t number;          /* of the movement in the whole sheet, from 0 */
    const Buffer *pictures; /* of what is being written just now, one each; NULL for none */
    PageHead head;          /* of a page */
    const char *within;     /* the element around the movements of a page; NULL for none */
} SheetOut;

enum { SHEET_FORMATS = SPZ_AS_ICS + 1 };
typedef void SheetStep(SheetOut *sheet);
typedef struct SheetRun {
    SheetStep *begin, *end; /* NULL: there is no such form */
    spz_status (*movement)(SheetOut *sheet, const spz_reading *reading, size_t movement, void *context);
    void *context;
    spz_language language;
} SheetRun;

/* True when every movement was read as far as its verdict. */
bool judged_all(const spz_reading *const *readings, size_t count);
/* SPZ_BAD_ARGUMENT also where a score was not judged. */
spz_status sheet_write(const SheetRun *run, const spz_reading *const *readings, size_t count, spz_document **out);

const char *sheet_title(const spz_movement *movement); /* never empty: the file where the movement has none */

/* Steps that several forms share: none; a page, with its end; the object around the movements, and its end with the cautions and without. */
void sheet_nothing(SheetOut *sheet);
void sheet_page_begin(SheetOut *sheet, PageHead head, const char *within);
void sheet_page_end(SheetOut *sheet);
void sheet_json_begin(SheetOut *sheet);
void sheet_json_end(SheetOut *sheet);
void sheet_json_end_cautioned(SheetOut *sheet);

/* What has been said on the line as an element; the line is emptied. */
void sheet_put_line(SheetOut *sheet, const char *element, const char *class);
#endif
