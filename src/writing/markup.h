/* markup.h - web pages and drawings, written with libxml2's writer: every element is closed, every text escaped. All text is made safe as
 * for a terminal (spz_text_clean). A failure is remembered: write freely, ask html_end. */
#ifndef WRITING_MARKUP_H
#define WRITING_MARKUP_H
#include "support/buffer.h"
#include <libxml/xmlwriter.h>

typedef struct Html {
    xmlBufferPtr memory;
    xmlTextWriterPtr writer;
    bool failed;
} Html;

void html_begin(Html *html);
/* Appends what was written to `out` (unless it failed: then `out` is marked as failed) and releases. */
void html_end(Html *html, Buffer *out);

void html_open(Html *html, const char *element);
void html_close(Html *html);                       /* with an end tag, also when nothing is in it */
void html_close_void(Html *html);                  /* for elements that never hold anything: meta, input, br */
void html_put(Html *html, const char *attribute, const char *value); /* of the element just opened */
void html_put_number(Html *html, const char *attribute, double value, int decimals);
void html_put_format(Html *html, const char *attribute, const char *format, ...) __attribute__((format(printf, 3, 4)));
void html_words(Html *html, const char *text);
void html_format(Html *html, const char *format, ...) __attribute__((format(printf, 2, 3)));
void html_line_end(Html *html);                    /* between elements, so that a page can be compared line by line */
void html_raw(Html *html, const char *text);       /* our own text only: styles, scripts, the document type */
/* <element class="class">text</element>; `class` NULL for none. */
void html_element(Html *html, const char *element, const char *class, const char *text);
/* Opens an element with a class. */
void html_open_class(Html *html, const char *element, const char *class);

/* Begins a page in English up to its title, head left open for the styles; `policy` says what the browser may fetch. */
void html_page_head(Html *html, const char *title, const char *policy);

/* A drawing: <svg viewBox="0 0 width height" role="img" aria-label="label">; html_close ends it. */
void html_open_drawing(Html *html, const char *class, double width, double height, const char *label);
void html_line(Html *html, const char *class, double x1, double y1, double x2, double y2);
void html_box(Html *html, const char *class, double x, double y, double width, double height);
void html_label(Html *html, const char *class, double x, double y, const char *text);

/* The bytes as the value of a data: address (RFC 2397), base64 (RFC 4648). */
void html_data_address(Buffer *out, const char *type, const char *bytes, size_t length);
#endif
