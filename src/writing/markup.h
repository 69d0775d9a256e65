/* markup.h - the one door for markup: web pages, drawings (SVG) and pieces of MusicXML. Every element is closed, every text escaped and made
 * safe as for a terminal (spz_text_clean): no control characters, no marks that turn the direction of writing. It writes into a buffer and can
 * hide nothing: what fails, and what would not be well formed, is remembered, and markup_end hands it on to the buffer. */
#ifndef WRITING_MARKUP_H
#define WRITING_MARKUP_H
#include "support/buffer.h"

enum { MARKUP_DEEPEST = 24 };

typedef struct Markup {
    Buffer *out;
    const char *open[MARKUP_DEEPEST]; /* elements that are open, outermost first; views */
    int depth;
    bool in_tag;                    /* attributes may still come */
    bool ascii;                     /* characters beyond ASCII as references: the text goes into a file of any encoding */
    bool failed;
} Markup;

/* Elements go to the end of `out`. */
void markup_begin(Markup *html, Buffer *out);
/* Marks `out` as failed where something failed or an element is still open. */
void markup_end(Markup *html);

void markup_open(Markup *html, const char *element);   /* `element` is borrowed until it is closed */
void markup_close(Markup *html);                       /* with an end tag, also when nothing is in it */
void markup_close_void(Markup *html);                  /* for elements that never hold anything: meta, input, br */
void markup_put(Markup *html, const char *attribute, const char *value); /* of the element just opened */
void markup_put_number(Markup *html, const char *attribute, double value, int decimals); /* '12' for 12.0 */
void markup_put_format(Markup *html, const char *attribute, const char *format, ...) __attribute__((format(printf, 3, 4)));
void markup_words(Markup *html, const char *text);
void markup_format(Markup *html, const char *format, ...) __attribute__((format(printf, 2, 3)));
void markup_line_end(Markup *html);                    /* between elements, so that a page can be compared line by line */
void markup_close_line(Markup *html);                  /* closes, and ends the line */
void markup_raw(Markup *html, const char *text);       /* our own text only: styles, scripts */
void markup_raw_piece(Markup *html, const char *text, size_t length); /* whole elements out of a score that was read as XML */
/* <element class="class">text</element>; `class` NULL for none. */
void markup_element(Markup *html, const char *element, const char *class, const char *text);
/* Opens an element with a class. */
void markup_open_class(Markup *html, const char *element, const char *class);

/* <?xml version="1.0" encoding="UTF-8"?>, before anything else. */
void markup_xml_head(Markup *html);

/* Everything before the first element of a page's body, which stays open for markup_page_end. The head is the same for all pages: it lets the
 * browser fetch nothing, and run nothing but `script` (Content Security Policy Level 2: by its digest). `script` NULL: none. */
typedef struct PageHead {
    const char *language; /* "en" */
    const char *title;
    const char *style, *script; /* of our own */
    const char *more_style, *more_script; /* further ones; NULL: none */
    const char *last_style, *last_script; /* likewise */
    const char *key;                      /* scripts beside the page that may be fetched, by their nonce; NULL: none */
    const char *base, *family;  /* styles that go before it: what the page has in common with all others, with some; NULL: none */
} PageHead;
void markup_page_begin(Markup *html, const PageHead *head);
/* Ends body and page; the script runs last. */
void markup_page_end(Markup *html, const PageHead *head);

/* A drawing: <svg viewBox="0 0 width height" role="img" aria-label="label">; markup_close ends it. */
void markup_open_drawing(Markup *html, const char *class, double width, double height, const char *label);
void markup_line(Markup *html, const char *class, double x1, double y1, double x2, double y2);
void markup_box(Markup *html, const char *class, double x, double y, double width, double height);
void markup_label(Markup *html, const char *class, double x, double y, const char *text);

/* A file's name as an address: all but letters, figures and - . _ ~ escaped (RFC 3986, 2.1). */
void markup_address(Buffer *out, const char *name);
/* The bytes as the value of a data: address (RFC 2397). */
void markup_data_address(Buffer *out, const char *type, const char *bytes, size_t length);
#endif
