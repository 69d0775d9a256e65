/* The frame of every web page, and the digest by which the browser knows the script it may run. */
#include "writing/markup.h"
#include "support/sha256.h"
#include <string.h>

/* RFC 4648, section 4. */
static void add_base64(Buffer *out, const char *bytes, size_t length)
{
    static const char digits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t i = 0; i < length; i += 3) {
        unsigned long group = 0;
        for (size_t k = 0; k < 3; k++)
            group = group << 8 | (i + k < length ? (unsigned char)bytes[i + k] : 0u);
        for (size_t k = 0; k < 4; k++)
            buffer_putc(out, i + k > length ? '=' : digits[group >> (18 - 6 * k) & 63u]);
    }
}

void markup_data_address(Buffer *out, const char *type, const char *bytes, size_t length)
{
    buffer_printf(out, "data:%s;base64,", type);
    add_base64(out, bytes, length);
}

static void meta(Markup *html, const char *attribute, const char *name, const char *content)
{
    markup_open(html, "meta");
    markup_put(html, attribute, name);
    markup_put(html, "content", content);
    markup_close_void(html);
}

/* The script stands on a line of its own; the digest covers that line's end. */
static void add_digest(Buffer *policy, const char *script, const char *before)
{
    Sha256 sum;
    unsigned char digest[SHA256_BYTES];
    sha256_begin(&sum);
    sha256_add(&sum, "\n", 1);
    sha256_add(&sum, script, strlen(script));
    sha256_end_bytes(&sum, digest);
    buffer_printf(policy, "%s'sha256-", before);
    add_base64(policy, (const char *)digest, sizeof digest);
    buffer_puts(policy, "'");
}

static void put_policy(Markup *html, const PageHead *head)
{
    Buffer policy = {0};
    buffer_puts(&policy, "default-src 'none'; img-src data:; style-src 'unsafe-inline'");
    if (head->script)
        add_digest(&policy, head->script, "; script-src ");
    if (head->script && head->more_script)
        add_digest(&policy, head->more_script, " ");
    if (head->script && head->last_script)
        add_digest(&policy, head->last_script, " ");
    if (head->script && head->key)
        buffer_printf(&policy, " 'nonce-%s'", head->key);
    html->failed = html->failed || buffer_failed(&policy);
    meta(html, "http-equiv", "Content-Security-Policy", policy.text);
    buffer_free(&policy);
}

static void own_text(Markup *html, const char *element, const char *text)
{
    markup_open(html, element);
    markup_line_end(html);
    markup_raw(html, text);
    markup_close(html);
}

void markup_page_begin(Markup *html, const PageHead *head)
{
    markup_raw(html, "<!DOCTYPE html>\n");
    markup_open(html, "html");
    markup_put(html, "lang", head->language);
    markup_open(html, "head");
    markup_open(html, "meta");
    markup_put(html, "charset", "utf-8");
    markup_close_void(html);
    put_policy(html, head);
    meta(html, "name", "viewport", "width=device-width, initial-scale=1");
    markup_element(html, "title", NULL, head->title);
    if (head->base)
        own_text(html, "style", head->base);
    if (head->family)
        own_text(html, "style", head->family);
    own_text(html, "style", head->style);
    if (head->more_style)
        own_text(html, "style", head->more_style);
    if (head->last_style)
        own_text(html, "style", head->last_style);
    markup_close_line(html);
    markup_open(html, "body");
}

void markup_page_end(Markup *html, const PageHead *head)
{
    if (head->script)
        own_text(html, "script", head->script);
    if (head->script && head->more_script)
        own_text(html, "script", head->more_script);
    if (head->script && head->last_script)
        own_text(html, "script", head->last_script);
    markup_close(html);
    markup_close_line(html);
}
