/* writings.h - names in other writings than Latin: Greek and Cyrillic letter by letter, Japanese, Chinese and Korean word by word. */
#ifndef SECTIONS_NAMES_WRITINGS_H
#define SECTIONS_NAMES_WRITINGS_H
#include <stdint.h>

/* The Latin letters for a Greek or Cyrillic letter, without accents, in lower case; "" for signs without a sound of their own; NULL for
 * any other character. */
const char *writing_letter(uint32_t code);

/* Where `*at` begins with a word for an instrument or a number in Japanese, Chinese or Korean, or with a Greek number sign: the name that
 * the vocabulary has for it, between blanks, and `*at` moves behind it. Else NULL, and `*at` stays. */
const char *writing_word(const char **at);
enum { WRITING_LONGEST = 20 }; /* bytes of what either gives, with its end */
#endif
