/* The word that was meant, for messages about one that isn't known. */
#include "spezzato/status.h"
#include "support/text/ascii.h"
#include <string.h>

enum { WORD_MOST = 40 };

static size_t least(size_t a, size_t b, size_t c)
{
    size_t two = a < b ? a : b;
    return two < c ? two : c;
}

/* Letters to be put in, left out, changed or exchanged with their neighbour (Damerau 1964) to make one word of the other. */
static size_t distance(const char *one, const char *other)
{
    size_t rows[3][WORD_MOST + 1], length = strlen(other);
    size_t *before = rows[0], *last = rows[1], *now = rows[2];
    for (size_t k = 0; k <= length; k++)
        last[k] = k;
    for (size_t i = 1; one[i - 1]; i++) {
        now[0] = i;
        for (size_t k = 1; k <= length; k++) {
            bool same = ascii_lower(one[i - 1]) == ascii_lower(other[k - 1]);
            now[k] = least(last[k] + 1, now[k - 1] + 1, last[k - 1] + !same);
            bool exchanged = i > 1 && k > 1 && ascii_lower(one[i - 1]) == ascii_lower(other[k - 2]) && ascii_lower(one[i - 2]) == ascii_lower(other[k - 1]);
            if (exchanged && before[k - 2] + 1 < now[k])
                now[k] = before[k - 2] + 1;
        }
        size_t *free_row = before;
        before = last;
        last = now;
        now = free_row;
    }
    return last[length];
}

bool spz_guess_look(spz_guess *guess, const char *word)
{
    size_t length = strlen(guess->word), away = 0;
    if (length == 0 || length > WORD_MOST || strlen(word) > WORD_MOST)
        return false;
    if (strncmp(word, guess->word, length) != 0)
        away = distance(guess->word, word);
    if (away > length / 3 + 1 || away >= length || (guess->meant && away >= guess->away))
        return false;
    guess->meant = word;
    guess->away = away;
    return true;
}
