#include "seating/stage/seating_names.h"
#include "spezzato/language.h"
#include "spezzato/stage.h"
#include "support/message.h"
#include "support/text/ascii.h"
#include <stdio.h>
#include <string.h>

_Static_assert((int)SEATING_LANGUAGES == SPZ_LANGUAGE_COUNT, "names in every language");

static const char between[] = " \t,'";

typedef struct Word {
    const char *at;
    size_t length; /* 0: there is none */
} Word;

static Word word_next(const char **text)
{
    Word word = {*text + strspn(*text, between), 0};
    word.length = strcspn(word.at, between);
    *text = word.at + word.length;
    return word;
}

static bool begins_so(Word word, Word beginning)
{
    size_t i = 0;
    while (i < beginning.length && i < word.length && ascii_lower((unsigned char)word.at[i]) == ascii_lower((unsigned char)beginning.at[i]))
        i++;
    return i == beginning.length;
}

/* Whether the words of `asked` stand in `name` in this order, the last of them perhaps cut short; `*whole`: and no others. */
static bool has_words(const char *name, const char *asked, bool *whole)
{
    Word wanted = word_next(&asked);
    bool all = wanted.length > 0;
    for (Word word = word_next(&name); word.length; word = word_next(&name)) {
        bool last = !asked[strspn(asked, between)], meant = wanted.length && begins_so(word, wanted) && (last || word.length == wanted.length);
        all = all && meant && word.length == wanted.length;
        if (meant)
            wanted = word_next(&asked);
    }
    *whole = all && !wanted.length;
    return !wanted.length;
}

/* By its own name, or by what the documents call it. */
static bool is_meant(const char *name, const char *asked, bool *whole)
{
    spz_standard standard = spz_arrangement_standard(name);
    bool meant = has_words(name, asked, whole);
    for (int i = 0; standard != SPZ_OWN_ARRANGEMENT && i < SEATING_LANGUAGES * SEATING_FORMS && !*whole; i++) {
        bool also = has_words(seating_texts[i / SEATING_FORMS][i % SEATING_FORMS][standard], asked, whole);
        meant = meant || also;
    }
    return meant;
}

static uint32_t all_bits(size_t count)
{
    return count < 32 ? ((uint32_t)1 << count) - 1 : ~(uint32_t)0;
}

uint32_t seating_meant(const char *const *names, size_t count, const char *words)
{
    uint32_t meant = 0, called = 0;
    for (size_t i = 0; i < count && i < 32; i++) {
        bool whole;
        meant |= (uint32_t)is_meant(names[i], words, &whole) << i;
        called |= (uint32_t)whole << i;
    }
    if (called)
        return called;
    const char *rest = words;
    bool lone_word = word_next(&rest).length && !word_next(&rest).length; /* 'violins' */
    return meant == all_bits(count) && (count > 1 || lone_word) ? 0 : meant;
}

enum { WORDS_MOST = 256 };

/* The next name of the list, blanks around it dropped, cut where it is over-long; false behind the last. */
static bool list_next(const char **list, char words[WORDS_MOST])
{
    if (!*list)
        return false;
    const char *at = *list + strspn(*list, " \t");
    size_t length = strcspn(at, "|");
    *list = at[length] ? at + length + 1 : NULL;
    while (length && strchr(" \t", at[length - 1]))
        length--;
    snprintf(words, WORDS_MOST, "%.*s", (int)length, at);
    return true;
}

uint32_t seatings_meant(const char *const *names, size_t count, const char *list)
{
    char words[WORDS_MOST];
    uint32_t meant = 0;
    while (list_next(&list, words)) {
        uint32_t one = seating_meant(names, count, words);
        if (!one)
            return 0;
        meant |= one;
    }
    return meant;
}

typedef struct Names {
    const char *at[SPZ_ARRANGEMENT_LIMIT];
    size_t count;
} Names;

static Names names_of(const ArrangementList *list)
{
    Names names = {.count = list->count};
    for (size_t i = 0; i < list->count; i++)
        names.at[i] = list->at[i].name;
    return names;
}

uint32_t arrangements_meant(const ArrangementList *list, const char *words)
{
    Names names = names_of(list);
    return seatings_meant(names.at, names.count, words);
}

spz_status seating_refuse(const char *const *names, size_t count, const char *words, const spz_message *place, const spz_sink *sink)
{
    char choices[640] = "";
    size_t used = 0;
    uint32_t meant = seating_meant(names, count, words);
    for (size_t i = 0; i < count && used < sizeof choices; i++)
        if (!meant || meant & 1u << i)
            used += (size_t)snprintf(choices + used, sizeof choices - used, "%s'%s'", used ? "; " : "", names[i]);
    spz_message message = *place;
    message.severity = SPZ_ERROR;
    message.text = NULL;
    message_send(sink, &message, meant ? "%s'%s' may be several seatings: %s" : "%sthere is no seating '%s'; there are %s", place->text ? place->text : "", words, choices);
    return SPZ_BAD_ARGUMENT;
}

void arrangements_refuse(const ArrangementList *list, const char *asked, const spz_message *place, const spz_sink *sink)
{
    Names names = names_of(list);
    char words[WORDS_MOST];
    while (list_next(&asked, words))
        if (!seating_meant(names.at, names.count, words)) {
            seating_refuse(names.at, names.count, words, place, sink);
            return;
        }
}

const Arrangement *arrangements_choose(const ArrangementList *list, const char *words, const spz_message *place, const spz_sink *sink)
{
    Names names = names_of(list);
    uint32_t meant = seating_meant(names.at, names.count, words);
    for (size_t i = 0; i < names.count; i++)
        if (meant == (uint32_t)1 << i)
            return &list->at[i];
    seating_refuse(names.at, names.count, words, place, sink);
    return NULL;
}

spz_status spz_seatings_meant(const spz_settings *settings, const char *words, bool one, const spz_sink *sink, char *out, size_t size)
{
    Names names = {.count = 0};
    size_t used = 0, found = 0;
    *out = '\0';
    spz_status status = spz_arrangements_list(settings, sink, names.at, &names.count);
    if (status != SPZ_OK)
        return status;
    uint32_t meant = seating_meant(names.at, names.count, words);
    for (size_t i = 0; i < names.count && used < size; i++)
        if (meant & 1u << i)
            used += (size_t)snprintf(out + used, size - used, "%s%s", found++ ? "|" : "", names.at[i]);
    if (used >= size)
        return SPZ_OVER_LIMIT;
    return found == 0 || (one && found > 1) ? seating_refuse(names.at, names.count, words, &(spz_message){.severity = SPZ_ERROR}, sink) : SPZ_OK;
}
