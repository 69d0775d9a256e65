#include "writing/markup.h"
#include "support/numbers.h"
#include "support/text/utf8.h"
#include <stdarg.h>
#include <string.h>

void markup_begin(Markup *html, Buffer *out)
{
    *html = (Markup){.out = out};
}

void markup_end(Markup *html)
{
    if (html->failed || html->depth > 0)
        html->out->failed = true;
}

/* What follows stands in the element, behind its attributes. */
static void end_tag(Markup *html)
{
    if (html->in_tag)
        buffer_putc(html->out, '>');
    html->in_tag = false;
}

void markup_open(Markup *html, const char *element)
{
    if (html->depth == MARKUP_DEEPEST) {
        html->failed = true;
        return;
    }
    end_tag(html);
    buffer_putc(html->out, '<');
    buffer_puts(html->out, element);
    html->open[html->depth++] = element;
    html->in_tag = true;
}

void markup_open_class(Markup *html, const char *element, const char *class)
{
    markup_open(html, element);
    markup_put(html, "class", class);
}

void markup_close(Markup *html)
{
    if (html->depth == 0) {
        html->failed = true;
        return;
    }
    end_tag(html);
    buffer_puts(html->out, "</");
    buffer_puts(html->out, html->open[--html->depth]);
    buffer_putc(html->out, '>');
}

void markup_close_void(Markup *html)
{
    if (!html->in_tag) {
        html->failed = true;
        return;
    }
    buffer_puts(html->out, "/>");
    html->in_tag = false;
    html->depth--;
}

static void add_character(Markup *html, uint32_t character)
{
    char bytes[UTF8_LONGEST];
    switch (character) {
    case '&': buffer_puts(html->out, "&amp;"); break;
    case '<': buffer_puts(html->out, "&lt;"); break;
    case '>': buffer_puts(html->out, "&gt;"); break;
    case '"': buffer_puts(html->out, "&quot;"); break;
    default:
        if (html->ascii && character > 126)
            buffer_printf(html->out, "&#%lu;", (unsigned long)character);
        else
            buffer_add(html->out, bytes, utf8_write(character, bytes));
    }
}

static bool is_plain(char c)
{
    return c >= ' ' && c <= '~' && c != '&' && c != '<' && c != '>' && c != '"';
}

/* How much of the text stands as it is. */
static size_t plain_length(const char *text)
{
    size_t length = 0;
    while (is_plain(text[length]))
        length++;
    return length;
}

static void add_text(Markup *html, const char *text)
{
    for (;;) {
        size_t plain = plain_length(text);
        buffer_add(html->out, text, plain);
        text += plain;
        if (!*text)
            return;
        uint32_t character = utf8_safe(utf8_next(&text));
        if (character == 0xFFFE || character == 0xFFFF) /* no characters of XML (XML 1.0, production 2) */
            character = 0xFFFD;
        if (character)
            add_character(html, character);
    }
}

void markup_put(Markup *html, const char *attribute, const char *value)
{
    if (!html->in_tag) {
        html->failed = true;
        return;
    }
    buffer_putc(html->out, ' ');
    buffer_puts(html->out, attribute);
    buffer_puts(html->out, "=\"");
    add_text(html, value ? value : "");
    buffer_putc(html->out, '"');
}

void markup_put_number(Markup *html, const char *attribute, double value, int decimals)
{
    char text[NUMBER_TEXT];
    markup_put(html, attribute, number_text_short(value, decimals, text));
}

/* As the attribute's value, or as words where `attribute` is NULL. */
static void format(Markup *html, const char *pattern, va_list list, const char *attribute)
{
    Buffer text = {0};
    buffer_vprintf(&text, pattern, list);
    html->failed = html->failed || buffer_failed(&text);
    if (attribute)
        markup_put(html, attribute, text.text);
    else
        markup_words(html, text.text);
    buffer_free(&text);
}

void markup_put_format(Markup *html, const char *attribute, const char *pattern, ...)
{
    va_list list;
    va_start(list, pattern);
    format(html, pattern, list, attribute);
    va_end(list);
}

void markup_words(Markup *html, const char *text)
{
    end_tag(html);
    add_text(html, text ? text : "");
}

void markup_format(Markup *html, const char *pattern, ...)
{
    va_list list;
    va_start(list, pattern);
    format(html, pattern, list, NULL);
    va_end(list);
}

void markup_line_end(Markup *html)
{
    markup_raw(html, "\n");
}

void markup_raw(Markup *html, const char *text)
{
    end_tag(html);
    buffer_puts(html->out, text);
}

void markup_raw_piece(Markup *html, const char *text, size_t length)
{
    end_tag(html);
    buffer_add(html->out, text, length);
}

void markup_element(Markup *html, const char *element, const char *class, const char *text)
{
    markup_open(html, element);
    if (class)
        markup_put(html, "class", class);
    markup_words(html, text);
    markup_close(html);
}

void markup_close_line(Markup *html)
{
    markup_close(html);
    markup_line_end(html);
}

void markup_xml_head(Markup *html)
{
    markup_raw(html, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
}

void markup_open_drawing(Markup *html, const char *class, double width, double height, const char *label)
{
    char across[NUMBER_TEXT], down[NUMBER_TEXT];
    markup_open_class(html, "svg", class);
    markup_put_format(html, "viewBox", "0 0 %s %s", number_text(width, 0, across), number_text(height, 0, down));
    if (label) {
        markup_put(html, "role", "img");
        markup_put(html, "aria-label", label);
    }
}

void markup_line(Markup *html, const char *class, double x1, double y1, double x2, double y2)
{
    markup_open_class(html, "line", class);
    markup_put_number(html, "x1", x1, 1);
    markup_put_number(html, "y1", y1, 1);
    markup_put_number(html, "x2", x2, 1);
    markup_put_number(html, "y2", y2, 1);
    markup_close_void(html);
}

void markup_box(Markup *html, const char *class, double x, double y, double width, double height)
{
    markup_open_class(html, "rect", class);
    markup_put_number(html, "x", x, 1);
    markup_put_number(html, "y", y, 1);
    markup_put_number(html, "width", width, 1);
    markup_put_number(html, "height", height, 1);
    markup_close_void(html);
}

void markup_label(Markup *html, const char *class, double x, double y, const char *text)
{
    markup_open_class(html, "text", class);
    markup_put_number(html, "x", x, 1);
    markup_put_number(html, "y", y, 1);
    markup_words(html, text);
    markup_close(html);
}

void markup_address(Buffer *out, const char *name)
{
    for (; *name; name++) {
        unsigned char c = (unsigned char)*name;
        if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '_' || c == '~')
            buffer_putc(out, *name);
        else
            buffer_printf(out, "%%%02X", c);
    }
}
