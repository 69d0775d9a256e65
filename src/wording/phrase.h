/* phrase.h - the one walker that puts results into words.
 *
 * Every phrase of every document stands in src/wording/languages, one file a language, one line a phrase, with slots:
 *
 *   {who}              a text, a number in digits, a phrase (which sees the same slots), or players ("first violins")
 *   {who.by}           players in a form: the, to, from, of, by, with, in, short (see `section.vn1.*` in the files)
 *   {Who.the}          a capital letter in the slot's name makes the first letter large
 *   {n.word} {n.times} {n.th}   a number as a word, 'twice', 'second'
 *   {n|bar|bars}       the first word where the number is one as the language counts it, else the second
 *   {{                 a brace
 *
 * A slot that a phrase asks for and nobody filled is a fault of the program: it is written as '?name?' and the tests walk every phrase. */
#ifndef WORDING_PHRASE_H
#define WORDING_PHRASE_H
#include "phrases.h"
#include "spezzato/language.h"
#include "spezzato/sections.h"
#include "support/buffer.h"

typedef struct LanguageText {
    const char *code, *name;
    const char *phrases[PHRASE_COUNT];
} LanguageText;
extern const LanguageText language_texts[SPZ_LANGUAGE_COUNT];
extern const char *const phrase_keys[PHRASE_COUNT]; /* as in the files, for messages and tests */

typedef enum SlotKind { SLOT_TEXT, SLOT_NUMBER, SLOT_DECIMAL, SLOT_PLAYERS, SLOT_PHRASE } SlotKind;

typedef struct Slot {
    const char *name;          /* lower case */
    SlotKind kind;
    const char *text;          /* SLOT_TEXT */
    double number;             /* SLOT_NUMBER, a whole one; SLOT_DECIMAL */
    int places;                /* SLOT_DECIMAL: digits after the sign */
    const spz_group *players;  /* SLOT_PLAYERS: of each its section, number, orchestra and solo count, not its name */
    size_t count;
    Phrase phrase;             /* SLOT_PHRASE */
} Slot;

static inline Slot slot_text(const char *name, const char *text)
{
    return (Slot){.name = name, .kind = SLOT_TEXT, .text = text ? text : ""};
}

static inline Slot slot_number(const char *name, long number)
{
    return (Slot){.name = name, .kind = SLOT_NUMBER, .number = (double)number};
}

static inline Slot slot_decimal(const char *name, double number, int places)
{
    return (Slot){.name = name, .kind = SLOT_DECIMAL, .number = number, .places = places};
}

static inline Slot slot_players(const char *name, const spz_group *players, size_t count)
{
    return (Slot){.name = name, .kind = SLOT_PLAYERS, .players = players, .count = count};
}

static inline Slot slot_phrase(const char *name, Phrase phrase)
{
    return (Slot){.name = name, .kind = SLOT_PHRASE, .phrase = phrase};
}

/* Whether each part is one player's: '{alone|players|sections}'. */
static inline Slot slot_alone(const spz_sections *sections)
{
    return slot_number("alone", sections && spz_sections_chamber_music(sections) ? 1 : 2);
}

/* Appends the phrase with its slots filled. */
void say(Buffer *out, spz_language language, Phrase phrase, const Slot *slots, size_t count);
#define SAY(out, language, phrase, ...) \
    say(out, language, phrase, (const Slot[]){__VA_ARGS__}, sizeof((const Slot[]){__VA_ARGS__}) / sizeof(Slot))

/* The same for a text that stands in no file: for the tests, and for phrases put together from others. */
void say_template(Buffer *out, spz_language language, const char *text, const Slot *slots, size_t count);

/* A phrase without slots: labels, headings. A view for ever. */
static inline const char *phrase_text(spz_language language, Phrase phrase)
{
    return language_texts[language].phrases[phrase];
}

/* A figure with the language's decimal sign. */
static inline void say_figure(Buffer *out, spz_language language, double figure, int places)
{
    Slot n = slot_decimal("n", figure, places);
    say_template(out, language, "{n}", &n, 1);
}

/* 'a', 'a and b', 'a, b and c' as the language joins them. */
void say_list(Buffer *out, spz_language language, const char *const *items, size_t count);
#endif
