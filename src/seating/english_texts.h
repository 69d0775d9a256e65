/* english_texts.h - statement and losses in English, for the results of a season until they hold facts. */
#ifndef SEATING_ENGLISH_TEXTS_H
#define SEATING_ENGLISH_TEXTS_H
#include "seating/verdict.h"
#include "support/buffer.h"

const char *words_outcome(spz_outcome outcome); /* why nothing was judged */
void words_statement(const Verdict *verdict, Buffer *text);
/* 'exchange Vn I/Vn II 66-71, 102; div3 Violins 20-24'. False: no memory. */
bool words_losses(const spz_loss *losses, size_t count, Buffer *text);
#endif
