/* shelf_words.h - a library's answers in the reader's language. Each appends to `out`. */
#ifndef WORDING_SHELF_WORDS_H
#define WORDING_SHELF_WORDS_H
#include "spezzato/library.h"
#include "support/buffer.h"

/* The passages shown, ';' between, and how many more there are. */
void say_shelf_passages(Buffer *out, spz_language language, const spz_shelf_movement *movement);
/* 'two orchestras; violins in three; players at least: Vn I 2, Va 3'. */
void say_shelf_needs(Buffer *out, spz_language language, const spz_shelf_work *work);
/* What the seating weakens: 'exchange Vn I/Vn II 12-18, 40; ...'. */
void say_shelf_losses(Buffer *out, spz_language language, const char *weakens);
/* '12:05', with '+' behind it where movements without tempo marks are not in it; nothing where nothing is known. */
void say_shelf_length(Buffer *out, spz_language language, double seconds, size_t unknown);
/* The movement's title without the work's before it. A view. */
const char *words_shelf_title(const spz_shelf_work *work, const spz_shelf_movement *movement);
/* What was asked, as a heading. */
void say_shelf_question(Buffer *out, spz_language language, const spz_shelf *shelf);
#endif
