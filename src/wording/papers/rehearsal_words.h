/* rehearsal_words.h - the rehearsal sheet in words. */
#ifndef WORDING_REHEARSAL_WORDS_H
#define WORDING_REHEARSAL_WORDS_H
#include "advice/rehearsal.h"
#include "wording/passage_words.h"

/* 'First violins and second violins: 7 passages, 2:31 of music'. */
void say_call(Buffer *out, const Speaker *speaker, const RehearsalCall *call);
/* 'Vn I in 9, 11; Vn II in 10, 12': who enters where; nothing for what has no entries. */
void say_entry_bars(Buffer *out, const Speaker *speaker, const spz_passage *passage);
/* What the passage is, and who enters where. */
void say_to_rehearse(Buffer *out, const Speaker *speaker, const RehearsalItem *item);
/* From where to listen, and for what. */
void say_listening(Buffer *out, spz_language language, const RehearsalItem *item);
/* '0:18', '0:18, twice'. */
void say_lasts(Buffer *out, spz_language language, const RehearsalItem *item);
#endif
