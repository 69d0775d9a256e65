/* text_layout.h - plain text for people: wrapped paragraphs and tables whose columns line up whatever the language of the score. All text
 * that goes through here is made safe for a terminal. */
#ifndef WRITING_TEXT_LAYOUT_H
#define WRITING_TEXT_LAYOUT_H
#include "support/arena.h"
#include "support/array.h"
#include "support/buffer.h"

enum { LAYOUT_USUAL_WIDTH = 96, LAYOUT_LEAST_WIDTH = 60, LAYOUT_MOST_WIDTH = 200 };

/* The text made safe for a terminal (spz_text_clean), without a line end. */
void layout_words(Buffer *out, const char *text);

/* Lines of at most `width` columns; the first begins with `lead` ("" or "- "), the others are indented by as much. `indent` blanks stand
 * before all. A word longer than the line is broken. Ends with a line end. */
void layout_paragraph(Buffer *out, int indent, const char *lead, const char *text, int width);
/* The same for a paragraph that was put together in a buffer, which is empty afterwards. */
void layout_flow(Buffer *out, int indent, const char *lead, Buffer *line, int width);
/* The text with a line of `mark` below it. */
void layout_heading(Buffer *out, const char *text, char mark, int width);

enum { TABLE_COLUMNS_MOST = 10 };

typedef struct TableRow {
    const char *cells[TABLE_COLUMNS_MOST];
    const char *note; /* a sentence under the row, from its second column on; NULL for none */
} TableRow;

typedef struct Table {
    Arena arena;
    int columns;
    const char *heads[TABLE_COLUMNS_MOST]; /* NULL: no line of heads */
    int most[TABLE_COLUMNS_MOST];          /* widest the column may grow; 0: what is left of the line */
    bool right[TABLE_COLUMNS_MOST];        /* figures stand at the right */
    ARRAY(TableRow) rows;
    bool fixed;                            /* columns as wide as `most`, so that tables of one row each stand in line */
    bool failed;                           /* out of memory */
} Table;

/* Heads and limits are views of the caller's. A column that stays empty in all rows is not printed. */
void table_begin(Table *table, int columns, const char *const *heads, const int *most);
void table_align_right(Table *table, int column);
void table_row(Table *table, const char *const *cells); /* copies; NULL cells are empty */
void table_note(Table *table, const char *note);        /* for the row last added; copies; nothing for an empty one */
/* Prints and releases. */
void table_end(Table *table, Buffer *out, int indent, int width);
#endif
