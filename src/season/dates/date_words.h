/* date_words.h - names of months and weekdays as people write them into tables: English, German and French, whole or shortened. */
#ifndef SEASON_TABLE_DATE_WORDS_H
#define SEASON_TABLE_DATE_WORDS_H
#include <stdbool.h>
#include <stddef.h>

enum { DATE_WORD_MOST = 24 };
/* Takes the letters at `*text` into `word`, small and without accents; what is longer than a name can be is cut. "" where there is none. */
void date_word_take(const char **text, char word[DATE_WORD_MOST]);
int date_word_month(const char *word);   /* 1..12; 0 for what is no month, or could be two */
int date_word_weekday(const char *word); /* 0 Monday .. 6 Sunday; -1 */
/* Words that stand in a date and say nothing: 'the', 'of', 'den', 'le', 'at', 'Uhr'. */
bool date_word_is_filler(const char *word);
#endif
