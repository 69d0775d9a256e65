#include "writing/markup.h"
#include "writing/number_text.h"
#include "spezzato/report.h"
#include "support/memory.h"
#include <string.h>

static void check(Html *html, int result)
{
    if (result < 0)
        html->failed = true;
}

void html_begin(Html *html)
{
    html->memory = xmlBufferCreate();
    html->writer = html->memory ? xmlNewTextWriterMemory(html->memory, 0) : NULL;
    html->failed = html->writer == NULL;
}

void html_end(Html *html, Buffer *out)
{
    if (html->writer) {
        check(html, xmlTextWriterFlush(html->writer));
        xmlFreeTextWriter(html->writer);
    }
    if (html->failed)
        out->failed = true;
    else
        buffer_add(out, (const char *)xmlBufferContent(html->memory), (size_t)xmlBufferLength(html->memory));
    xmlBufferFree(html->memory);
    html->writer = NULL;
    html->memory = NULL;
}

/* A clean copy of the text; NULL, and the failure remembered, when there is no memory. */
static char *cleaned(Html *html, const char *text)
{
    size_t size = strlen(text) * 3 + 1; /* a wrong byte becomes three */
    char *copy = html->failed ? NULL : memory_get(size);
    if (!copy)
        html->failed = true;
    return copy ? spz_text_clean(text, copy, size) : NULL;
}

void html_open(Html *html, const char *element)
{
    if (!html->failed)
        check(html, xmlTextWriterStartElement(html->writer, BAD_CAST element));
}

void html_open_class(Html *html, const char *element, const char *class)
{
    html_open(html, element);
    html_put(html, "class", class);
}

void html_close(Html *html)
{
    if (!html->failed)
        check(html, xmlTextWriterFullEndElement(html->writer));
}

void html_close_void(Html *html)
{
    if (!html->failed)
        check(html, xmlTextWriterEndElement(html->writer));
}

void html_put(Html *html, const char *attribute, const char *value)
{
    char *copy = cleaned(html, value ? value : "");
    if (copy)
        check(html, xmlTextWriterWriteAttribute(html->writer, BAD_CAST attribute, BAD_CAST copy));
    memory_free(copy);
}

void html_put_number(Html *html, const char *attribute, double value, int decimals)
{
    char text[NUMBER_TEXT];
    number_text(value, decimals, text);
    if (decimals > 0 && strchr(text, '.')) { /* '12.0' as '12' */
        size_t length = strlen(text);
        while (text[length - 1] == '0')
            text[--length] = '\0';
        if (text[length - 1] == '.')
            text[--length] = '\0';
    }
    if (!html->failed)
        check(html, xmlTextWriterWriteAttribute(html->writer, BAD_CAST attribute, BAD_CAST text));
}

void html_put_format(Html *html, const char *attribute, const char *format, ...)
{
    Buffer text;
    va_list list;
    buffer_init(&text);
    va_start(list, format);
    buffer_vprintf(&text, format, list);
    va_end(list);
    html->failed = html->failed || buffer_failed(&text);
    html_put(html, attribute, text.text);
    buffer_free(&text);
}

void html_words(Html *html, const char *text)
{
    char *copy = cleaned(html, text ? text : "");
    if (copy)
        check(html, xmlTextWriterWriteString(html->writer, BAD_CAST copy));
    memory_free(copy);
}

void html_format(Html *html, const char *format, ...)
{
    Buffer text;
    va_list list;
    buffer_init(&text);
    va_start(list, format);
    buffer_vprintf(&text, format, list);
    va_end(list);
    html->failed = html->failed || buffer_failed(&text);
    html_words(html, text.text);
    buffer_free(&text);
}

void html_line_end(Html *html)
{
    html_raw(html, "\n");
}

void html_raw(Html *html, const char *text)
{
    if (!html->failed)
        check(html, xmlTextWriterWriteRaw(html->writer, BAD_CAST text));
}

void html_element(Html *html, const char *element, const char *class, const char *text)
{
    html_open(html, element);
    if (class)
        html_put(html, "class", class);
    html_words(html, text);
    html_close(html);
}

static void meta(Html *html, const char *attribute, const char *name, const char *content)
{
    html_open(html, "meta");
    html_put(html, attribute, name);
    html_put(html, "content", content);
    html_close_void(html);
}

void html_page_head(Html *html, const char *title, const char *policy)
{
    html_raw(html, "<!DOCTYPE html>\n");
    html_open(html, "html");
    html_put(html, "lang", "en");
    html_open(html, "head");
    html_open(html, "meta");
    html_put(html, "charset", "utf-8");
    html_close_void(html);
    meta(html, "http-equiv", "Content-Security-Policy", policy);
    meta(html, "name", "viewport", "width=device-width, initial-scale=1");
    html_element(html, "title", NULL, title);
}

void html_open_drawing(Html *html, const char *class, double width, double height, const char *label)
{
    char across[NUMBER_TEXT], down[NUMBER_TEXT];
    html_open_class(html, "svg", class);
    html_put_format(html, "viewBox", "0 0 %s %s", number_text(width, 0, across), number_text(height, 0, down));
    if (label) {
        html_put(html, "role", "img");
        html_put(html, "aria-label", label);
    }
}

void html_line(Html *html, const char *class, double x1, double y1, double x2, double y2)
{
    html_open_class(html, "line", class);
    html_put_number(html, "x1", x1, 1);
    html_put_number(html, "y1", y1, 1);
    html_put_number(html, "x2", x2, 1);
    html_put_number(html, "y2", y2, 1);
    html_close_void(html);
}

void html_box(Html *html, const char *class, double x, double y, double width, double height)
{
    html_open_class(html, "rect", class);
    html_put_number(html, "x", x, 1);
    html_put_number(html, "y", y, 1);
    html_put_number(html, "width", width, 1);
    html_put_number(html, "height", height, 1);
    html_close_void(html);
}

void html_label(Html *html, const char *class, double x, double y, const char *text)
{
    html_open_class(html, "text", class);
    html_put_number(html, "x", x, 1);
    html_put_number(html, "y", y, 1);
    html_words(html, text);
    html_close(html);
}

void html_data_address(Buffer *out, const char *type, const char *bytes, size_t length)
{
    static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    buffer_printf(out, "data:%s;base64,", type);
    for (size_t i = 0; i < length; i += 3) {
        unsigned long group = 0;
        for (size_t k = 0; k < 3; k++)
            group = group << 8 | (i + k < length ? (unsigned char)bytes[i + k] : 0u);
        for (size_t k = 0; k < 4; k++)
            buffer_putc(out, i + k > length ? '=' : digits[group >> (18 - 6 * k) & 63u]);
    }
}
