/* advice_words.h - the librarian's advice in words: what to write into a part, and what the librarian should know beside it. */
#ifndef WORDING_ADVICE_WORDS_H
#define WORDING_ADVICE_WORDS_H
#include "advice/parts_advice.h"
#include "wording/passage_words.h"

/* To write in: 'lead, Vn II answers', 'answer Vn I, with Va', 'div. a 3, by desk', 'unis.'. */
void advice_words(const Speaker *speaker, const Advice *advice, Buffer *out);
/* For the librarian: 'enters in bars 66, 68; Vn II in 67, 69', who reads which line, what the passage is. May be empty. */
void advice_detail(const Speaker *speaker, const Advice *advice, Buffer *out);
/* What is to be settled first: too few players, a page that is turned while the lines are shared. `list` is the advice's. May be empty. */
void advice_shortage(const Speaker *speaker, const Advice *advice, Buffer *out);
void advice_question(const Speaker *speaker, const AdviceList *list, const Advice *advice, Buffer *out);
/* 'In two lines outside and inside, in three by desk, ...': the house's habits, and those of single sections. */
void words_sharing_habits(spz_language language, const spz_settings *settings, Buffer *out);
/* 'first time', 'both times'; nothing where the bar is played once. */
void advice_pass_words(spz_language language, AdvicePass pass, Buffer *out);
/* 'outside and inside', 'by desk'. */
const char *words_sharing(spz_language language, spz_sharing sharing);
#endif
