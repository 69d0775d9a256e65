/* buffer.h - text that grows. A failed append is remembered: write freely, ask buffer_failed once at the end. */
#ifndef SUPPORT_BUFFER_H
#define SUPPORT_BUFFER_H
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct Buffer {
    char *text; /* ended with a zero byte once anything was added; NULL before */
    size_t length, capacity;
    bool failed;
    size_t shortages; /* of memory (memory_shortages) before it was begun */
} Buffer;

void buffer_init(Buffer *buffer);
void buffer_free(Buffer *buffer);
void buffer_clear(Buffer *buffer); /* keeps the memory */
bool buffer_failed(const Buffer *buffer);
/* Never NULL: "" before anything was added. */
static inline const char *buffer_text(const Buffer *buffer)
{
    return buffer->text ? buffer->text : "";
}
/* Ends pieces that were written for a larger text (a buffer, a page, a drawing): what failed in them has failed in that too. A piece may begin as {0}. */
#define buffer_let_go(whole, piece) ((whole)->failed = (whole)->failed || (piece)->failed, buffer_free(piece))
#define buffers_let_go(whole, ...) \
    buffers_end(&(whole)->failed, (Buffer *const[]){__VA_ARGS__}, sizeof((Buffer *const[]){__VA_ARGS__}) / sizeof(Buffer *))
void buffers_end(bool *failed, Buffer *const *pieces, size_t count);
/* Whether the thread was refused memory anywhere since buffer_init or buffer_go_on: a text put together elsewhere may lack a piece. */
bool buffer_in_doubt(const Buffer *buffer);
void buffer_go_on(Buffer *buffer);
void buffer_add(Buffer *buffer, const char *text, size_t length);
void buffer_puts(Buffer *buffer, const char *text);
void buffer_putc(Buffer *buffer, char c);
void buffer_printf(Buffer *buffer, const char *format, ...) __attribute__((format(printf, 2, 3)));
void buffer_vprintf(Buffer *buffer, const char *format, va_list list);
#endif
