/* Elements and attributes of the file being written, through libxml2's writer. */
#include "notation_writer.h"

#include <stdio.h>

void open_element(struct writer *w, const char *name)
{
    w->failed |= xmlTextWriterStartElement(w->xml, BAD_CAST name) < 0;
}

void close_element(struct writer *w)
{
    w->failed |= xmlTextWriterEndElement(w->xml) < 0;
}

void attribute(struct writer *w, const char *name, const char *value)
{
    w->failed |= xmlTextWriterWriteAttribute(w->xml, BAD_CAST name, BAD_CAST value) < 0;
}

void number_attribute(struct writer *w, const char *name, long value)
{
    char text[24];
    snprintf(text, sizeof text, "%ld", value);
    attribute(w, name, text);
}

void leaf(struct writer *w, const char *name, const char *text)
{
    w->failed |= xmlTextWriterWriteElement(w->xml, BAD_CAST name, BAD_CAST text) < 0;
}

void number_leaf(struct writer *w, const char *name, long value)
{
    char text[24];
    snprintf(text, sizeof text, "%ld", value);
    leaf(w, name, text);
}

void empty(struct writer *w, const char *name)
{
    open_element(w, name);
    close_element(w);
}

void empty_with(struct writer *w, const char *name, const char *attribute_name, const char *value)
{
    open_element(w, name);
    if (value)
        attribute(w, attribute_name, value);
    close_element(w);
}
