/* The text is folded to small letters without accents and cut into words; a number stuck to letters ('3fach', 'a2', '1er') is a
 * word of its own. Each word is looked up in one table; the few meanings that hang on two words ('non div.', 'in 3', 'alle
 * geteilt') are read off what stands before. */
#include "sections/names/division_marks.h"
#include "support/text/ascii.h"
#include <stdlib.h>
#include <string.h>

enum { WORD_MOST = 24, WORDS_MOST = 16 };

typedef enum Meaning {
    SAYS_NOTHING, SAYS_DIVIDED, SAYS_UNISON, SAYS_NOT, SAYS_DOUBLE, SAYS_STOPS, SAYS_DESK, SAYS_BY_DESK, SAYS_HALF, SAYS_SOLO,
    SAYS_OTHERS, SAYS_ALL, SAYS_IN, SAYS_FOLD, SAYS_NUMBER, SAYS_PLAYER, SAYS_DIVIDED_FOLD, SAYS_PARTS, SAYS_NO_MORE
} Meaning;

/* `stem`: the word need only begin so. Longer entries come first where one begins another. */
static const struct { const char *word; bool stem; Meaning meaning; int number; } vocabulary[] = {
    /* divided: English and Italian, French, German with its old spelling, Spanish */
    { "div", false, SAYS_DIVIDED, 0 }, { "divid", true, SAYS_DIVIDED, 0 }, { "divis", true, SAYS_DIVIDED, 0 },
    { "geteilt", true, SAYS_DIVIDED, 0 }, { "getheilt", true, SAYS_DIVIDED, 0 }, { "get", false, SAYS_DIVIDED, 0 },
    { "geth", false, SAYS_DIVIDED, 0 }, { "partag", true, SAYS_DIVIDED, 0 }, { "split", false, SAYS_DIVIDED, 0 },
    /* in so many: '3fach', 'dreifach geteilt' */
    { "fach", false, SAYS_FOLD, 0 }, { "zweifach", true, SAYS_DIVIDED_FOLD, 2 }, { "dreifach", true, SAYS_DIVIDED_FOLD, 3 },
    { "vierfach", true, SAYS_DIVIDED_FOLD, 4 },
    { "funffach", true, SAYS_DIVIDED_FOLD, 5 }, { "sechsfach", true, SAYS_DIVIDED_FOLD, 6 },
    /* together again */
    { "unis", true, SAYS_UNISON, 0 }, { "unit", false, SAYS_UNISON, 0 }, { "uniti", false, SAYS_UNISON, 0 },
    { "unidos", false, SAYS_UNISON, 0 }, { "zus", false, SAYS_UNISON, 0 }, { "unite", false, SAYS_UNISON, 0 }, { "l'uniss", true, SAYS_UNISON, 0 },
    { "all'unis", true, SAYS_UNISON, 0 }, { "reunis", false, SAYS_UNISON, 0 }, { "reunies", false, SAYS_UNISON, 0 }, { "zusammen", false, SAYS_UNISON, 0 },
    { "ensemble", false, SAYS_UNISON, 0 }, { "insieme", false, SAYS_UNISON, 0 }, { "juntos", false, SAYS_UNISON, 0 },
    { "together", false, SAYS_UNISON, 0 },
    /* not divided */
    { "non", false, SAYS_NOT, 0 }, { "nicht", false, SAYS_NOT, 0 }, { "not", false, SAYS_NOT, 0 }, { "pas", false, SAYS_NOT, 0 },
    { "sin", false, SAYS_NOT, 0 }, { "sans", false, SAYS_NOT, 0 }, { "senza", false, SAYS_NOT, 0 },
    { "piu", false, SAYS_NO_MORE, 0 }, { "mehr", false, SAYS_NO_MORE, 0 }, { "plus", false, SAYS_NO_MORE, 0 }, { "longer", false, SAYS_NO_MORE, 0 },
    { "mas", false, SAYS_NO_MORE, 0 }, { "ungeteilt", true, SAYS_DOUBLE, 0 },
    { "ungetheilt", true, SAYS_DOUBLE, 0 }, { "indivis", true, SAYS_DOUBLE, 0 }, { "undivided", false, SAYS_DOUBLE, 0 },
    { "doppelgriff", true, SAYS_DOUBLE, 0 }, { "double", false, SAYS_STOPS, 0 }, { "doubles", false, SAYS_STOPS, 0 },
    { "doppie", false, SAYS_STOPS, 0 }, { "doppia", false, SAYS_STOPS, 0 }, { "dobles", false, SAYS_STOPS, 0 },
    { "doble", false, SAYS_STOPS, 0 },
    /* desks */
    { "pultweise", false, SAYS_BY_DESK, 0 }, { "pult", true, SAYS_DESK, 0 }, { "desk", true, SAYS_DESK, 0 },
    { "stand", false, SAYS_DESK, 0 }, { "stands", false, SAYS_DESK, 0 }, { "pup", true, SAYS_DESK, 0 },
    { "leggio", false, SAYS_DESK, 0 }, { "leggii", false, SAYS_DESK, 0 }, { "atril", true, SAYS_DESK, 0 },
    /* half of them */
    { "half", false, SAYS_HALF, 0 }, { "halfte", false, SAYS_HALF, 0 }, { "haelfte", false, SAYS_HALF, 0 },
    { "halbe", true, SAYS_HALF, 0 }, { "moitie", false, SAYS_HALF, 0 }, { "moit", false, SAYS_HALF, 0 },
    { "meta", false, SAYS_HALF, 0 },
    { "mitad", false, SAYS_HALF, 0 },
    /* one or a few alone */
    { "solo", false, SAYS_SOLO, 0 }, { "soli", false, SAYS_SOLO, 0 }, { "solos", false, SAYS_SOLO, 0 }, { "solist", true, SAYS_SOLO, 0 },
    { "sola", false, SAYS_SOLO, 0 },
    { "seul", true, SAYS_SOLO, 0 }, { "allein", false, SAYS_SOLO, 0 }, { "player", true, SAYS_PLAYER, 0 },
    { "spieler", false, SAYS_PLAYER, 0 },
    /* the others; all */
    { "altri", false, SAYS_OTHERS, 0 }, { "altre", false, SAYS_OTHERS, 0 }, { "others", false, SAYS_OTHERS, 0 },
    { "ubrig", true, SAYS_OTHERS, 0 }, { "uebrig", true, SAYS_OTHERS, 0 }, { "andere", true, SAYS_OTHERS, 0 },
    { "autres", false, SAYS_OTHERS, 0 }, { "demas", false, SAYS_OTHERS, 0 }, { "otros", false, SAYS_OTHERS, 0 },
    { "rest", false, SAYS_OTHERS, 0 }, { "reste", false, SAYS_OTHERS, 0 }, { "tutti", false, SAYS_ALL, 0 }, { "tutte", false, SAYS_ALL, 0 },
    { "alle", false, SAYS_ALL, 0 },
    { "tous", false, SAYS_ALL, 0 }, { "toutes", false, SAYS_ALL, 0 }, { "todos", false, SAYS_ALL, 0 },
    { "all", false, SAYS_ALL, 0 },
    /* 'a 3', 'in 3', 'en 3', 'zu 3', 'e 3' (a misprint that occurs) */
    { "a", false, SAYS_IN, 0 }, { "in", false, SAYS_IN, 0 }, { "en", false, SAYS_IN, 0 }, { "zu", false, SAYS_IN, 0 },
    { "e", false, SAYS_IN, 0 }, { "into", false, SAYS_IN, 0 },
    /* 'in 3 parts' */
    { "parts", false, SAYS_PARTS, 0 }, { "parti", false, SAYS_PARTS, 0 }, { "partien", false, SAYS_PARTS, 0 },
    { "parties", false, SAYS_PARTS, 0 }, { "partes", false, SAYS_PARTS, 0 }, { "teile", true, SAYS_PARTS, 0 },
    { "gruppen", false, SAYS_PARTS, 0 }, { "groups", false, SAYS_PARTS, 0 }, { "groupes", false, SAYS_PARTS, 0 }, { "gruppi", false, SAYS_PARTS, 0 },
    { "grupos", false, SAYS_PARTS, 0 },
    /* numbers written out */
    { "due", false, SAYS_NUMBER, 2 }, { "two", false, SAYS_NUMBER, 2 }, { "zwei", false, SAYS_NUMBER, 2 },
    { "deux", false, SAYS_NUMBER, 2 }, { "dos", false, SAYS_NUMBER, 2 }, { "tre", false, SAYS_NUMBER, 3 },
    { "three", false, SAYS_NUMBER, 3 }, { "drei", false, SAYS_NUMBER, 3 }, { "trois", false, SAYS_NUMBER, 3 },
    { "tres", false, SAYS_NUMBER, 3 }, { "zweien", false, SAYS_NUMBER, 2 }, { "dreien", false, SAYS_NUMBER, 3 }, { "vieren", false, SAYS_NUMBER, 4 }, { "quattro", false, SAYS_NUMBER, 4 }, { "four", false, SAYS_NUMBER, 4 },
    { "vier", false, SAYS_NUMBER, 4 }, { "quatre", false, SAYS_NUMBER, 4 }, { "cuatro", false, SAYS_NUMBER, 4 },
    { "first", false, SAYS_NUMBER, 1 }, { "primo", false, SAYS_NUMBER, 1 }, { "erste", true, SAYS_NUMBER, 1 },
    { "premier", true, SAYS_NUMBER, 1 },
};

/* Accented letters of the five languages after the byte 0xC3 (Latin-1 in UTF-8), by second byte from 0x80. */
static char folded_letter(unsigned char second)
{
    static const char letters[] = "aaaaaaaceeeeiiiidnooooo*ouuuuypsaaaaaaaceeeeiiiidnooooo*ouuuuypy";
    return second >= 0x80 && second <= 0xBF ? letters[second - 0x80] : ' ';
}

/* Next letter or digit, folded; a space for everything else. Accents written as characters of their own (U+0300 to U+036F) are
 * passed over. Advances `text`. */
static char next_letter(const unsigned char **text)
{
    while (((*text)[0] == 0xCC || (*text)[0] == 0xCD) && (*text)[1])
        *text += 2;
    unsigned char c = **text;
    if (!c)
        return ' ';
    ++*text;
    if (c == 0xE2 && (*text)[0] == 0x80 && (*text)[1] == 0x99) { /* the typographic apostrophe */
        *text += 2;
        return '\'';
    }
    if (c == 0xC3 && **text)
        return folded_letter(*(*text)++);
    return ascii_is_letter(c) || ascii_is_digit(c) ? (char)ascii_lower(c) : c == '\'' ? '\'' : ' ';
}

static int cut_words(const char *text, char words[WORDS_MOST][WORD_MOST])
{
    const unsigned char *at = (const unsigned char *)text;
    int count = 0, length = 0;
    char before = ' ';
    while (*at && count < WORDS_MOST) {
        char c = next_letter(&at);
        bool edge = c == ' ' || (before != ' ' && !ascii_is_digit((unsigned char)c) != !ascii_is_digit((unsigned char)before));
        if (edge && length) {
            words[count++][length] = 0;
            length = 0;
        }
        if (c != ' ' && count < WORDS_MOST && length < WORD_MOST - 1)
            words[count][length++] = c;
        before = c;
    }
    if (length && count < WORDS_MOST)
        words[count++][length] = 0;
    return count;
}

static Meaning meaning_of(const char *word, int *number)
{
    *number = 0;
    if (ascii_is_digit((unsigned char)word[0])) {
        *number = strlen(word) <= 2 ? atoi(word) : 0;
        return *number ? SAYS_NUMBER : SAYS_NOTHING;
    }
    for (size_t i = 0; i < sizeof vocabulary / sizeof *vocabulary; i++) {
        if (vocabulary[i].word[0] != word[0])
            continue;
        size_t length = strlen(vocabulary[i].word);
        if (!strncmp(word, vocabulary[i].word, length) && (vocabulary[i].stem || !word[length])) {
            *number = vocabulary[i].number;
            return vocabulary[i].meaning;
        }
    }
    return SAYS_NOTHING;
}

/* What stood before the word in hand. */
typedef struct Reading {
    DivisionWords said;
    Meaning before;
    int number;         /* last number read and not yet used; 0 */
    bool in;            /* 'in' or 'a' stands right before */
    bool bare_in;       /* 'in 3' or 'a 3' was said */
    int in_lines;
    bool no_more;       /* 'nicht mehr', 'non piu' stands right before */
} Reading;

static void take_number(Reading *reading, int number)
{
    if (reading->in && number >= 2 && number <= 8) {
        reading->in_lines = number;
        reading->bare_in = true;
    } else if (reading->before == SAYS_DIVIDED && number >= 2 && number <= 8) { /* 'div. 3' */
        reading->said.lines = reading->number = number;
    } else if (reading->before == SAYS_SOLO) { /* 'soli 2' */
        reading->said.players = number;
    } else if (reading->before == SAYS_DESK && reading->said.by_desk) { /* 'desks 1-2' */
        reading->said.by_desk = reading->said.divided = false;
        reading->said.solo = true;
        reading->said.desks = 1;
    } else if (reading->before == SAYS_NUMBER && reading->said.desks) {
        reading->said.desks = 2;
    } else {
        reading->number = number;
    }
}

static void take_desk(Reading *reading, const char *word)
{
    static const char *const plurals[] = { "pulte", "pulten", "pup", "leggii" };
    bool several = word[strlen(word) - 1] == 's';
    for (size_t i = 0; i < sizeof plurals / sizeof *plurals; i++)
        several |= !strcmp(word, plurals[i]);
    if (reading->number && reading->said.lines == reading->number && !reading->bare_in) /* 'div. 2. Pult': that was the desk */
        reading->said.lines = 0;
    reading->said.solo = true;
    reading->said.desks = several && reading->number > 1 ? reading->number : 1;
    if (!reading->number && several) { /* 'by desks', 'par pupitres', 'a leggii' */
        reading->said.by_desk = reading->said.divided = true;
        reading->said.solo = false;
        reading->said.desks = 0;
    }
    reading->number = 0;
}

static void take_solo(Reading *reading)
{
    reading->said.solo = true;
    if (reading->number > 0)
        reading->said.players = reading->number;
    reading->number = 0;
}

static void take_word(Reading *reading, const char *word)
{
    int number;
    Meaning meaning = meaning_of(word, &number);
    DivisionWords *said = &reading->said;
    switch (meaning) {
    case SAYS_NOTHING: break;
    case SAYS_DIVIDED: *(reading->no_more ? &said->unison : reading->before == SAYS_NOT ? &said->double_stops : &said->divided) = true; break;
    case SAYS_DIVIDED_FOLD: said->divided = true; said->lines = number; break;
    case SAYS_FOLD: said->divided = true; said->lines = reading->number; break;
    case SAYS_UNISON: said->unison = true; break;
    case SAYS_DOUBLE: said->double_stops = true; break;
    case SAYS_STOPS: reading->before = meaning; break;
    case SAYS_DESK: take_desk(reading, word); break;
    case SAYS_BY_DESK: said->by_desk = said->divided = true; break;
    case SAYS_HALF: said->half = true; break;
    case SAYS_SOLO: take_solo(reading); break;
    case SAYS_PLAYER: said->players = reading->number ? reading->number : 1; said->solo = true; break;
    case SAYS_OTHERS: said->others = true; break;
    case SAYS_ALL: said->all = true; break;
    case SAYS_NUMBER: take_number(reading, number); break;
    case SAYS_PARTS: said->divided |= reading->bare_in; break;
    case SAYS_NO_MORE:
    case SAYS_NOT:
    case SAYS_IN: break;
    }
    if (reading->before == SAYS_STOPS && (!strncmp(word, "stop", 4) || !strncmp(word, "cord", 4) || !strncmp(word, "corda", 5) ||
                                          !strncmp(word, "cuerda", 6)))
        said->double_stops = true;
    reading->in = meaning == SAYS_IN;
    reading->no_more = meaning == SAYS_NO_MORE && (reading->before == SAYS_NOT || !strcmp(word, "plus"));
    reading->before = meaning;
}

/* 'a 3' by itself divides; 'a 2' by itself may just as well mean both together (as it does for winds): left to the writing. */
static void settle_lines(Reading *reading, bool alone)
{
    DivisionWords *said = &reading->said;
    if (!reading->bare_in)
        return;
    if (said->divided || said->all || (alone && reading->in_lines > 2)) {
        said->divided = true;
        said->lines = reading->in_lines;
    }
}

bool division_words_read(const char *text, DivisionWords *out)
{
    char words[WORDS_MOST][WORD_MOST];
    Reading reading = { .before = SAYS_NOTHING };
    int count = text ? cut_words(text, words) : 0;
    for (int i = 0; i < count; i++)
        take_word(&reading, words[i]);
    settle_lines(&reading, count == 2);
    *out = reading.said;
    return out->divided || out->unison || out->double_stops || out->half || out->solo || out->others || out->all;
}

DivisionState division_state_after(DivisionState before, const DivisionWords *words)
{
    DivisionState after = before;
    if (words->unison || words->double_stops || words->all || words->others)
        after = (DivisionState){ .double_stops = words->double_stops };
    if (words->solo) {
        after.solo = true;
        after.soloists = words->players;
    }
    if (words->half)
        after.half = true;
    if (words->divided) {
        after.divided = true;
        after.double_stops = false;
        after.by_desk = words->by_desk;
        after.lines = words->lines;
    }
    return after;
}
