#include "wording/phrase.h"
#include "support/numbers.h"
#include "support/text/ascii.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* The forms of `section.*`, in the order of the files. */
static const char *const forms[] = {"plain", "the", "to", "from", "of", "by", "with", "in", "short"};
enum { FORM_COUNT = sizeof forms / sizeof *forms, FORM_PLAIN = 0, FORM_SHORT = FORM_COUNT - 1, SLOT_NAME = 32 };
_Static_assert(PHRASE_SECTION_VN1_SHORT - PHRASE_SECTION_VN1_PLAIN == FORM_COUNT - 1, "a section has one line for each form");
_Static_assert(PHRASE_SECTION_WINDS_PLAIN - PHRASE_SECTION_VN1_PLAIN == (SPZ_WINDS - SPZ_VN1) * FORM_COUNT, "sections in score order");
_Static_assert(PHRASE_NUMBERED_SHORT - PHRASE_NUMBERED_PLAIN == FORM_COUNT - 1, "numbered sections have every form");
_Static_assert(PHRASE_SOLO_SHORT - PHRASE_SOLO_PLAIN == FORM_COUNT - 1, "soloists have every form");
_Static_assert(PHRASE_SOLO_ONE_IN - PHRASE_SOLO_ONE_PLAIN == FORM_SHORT - 1 && PHRASE_NUMBERED_ONE_IN - PHRASE_NUMBERED_ONE_PLAIN == FORM_SHORT - 1 &&
               PHRASE_PLAYER_DB_IN - PHRASE_PLAYER_VN1_PLAIN + 1 == (SPZ_DB - SPZ_VN1 + 1) * FORM_SHORT, "one player has every form but the short one, which is the section's");

typedef struct Speech { /* a phrase being said */
    Buffer *out;
    spz_language language;
    const Slot *slots;
    size_t count;
} Speech;

const char *spz_language_code(spz_language language)
{
    return (unsigned)language < SPZ_LANGUAGE_COUNT ? language_texts[language].code : "";
}

const char *spz_language_name(spz_language language)
{
    return (unsigned)language < SPZ_LANGUAGE_COUNT ? language_texts[language].name : "";
}

_Static_assert(PHRASE_LANGUAGE_FR - PHRASE_LANGUAGE_EN == SPZ_LANGUAGE_COUNT - 1, "a name for each language, in each");

bool spz_language_from_name(const char *name, spz_language *out)
{
    for (int i = 0; name && i < SPZ_LANGUAGE_COUNT; i++) {
        bool meant = ascii_same(name, language_texts[i].code) || ascii_same(name, language_texts[i].name);
        for (int in = 0; in < SPZ_LANGUAGE_COUNT && !meant; in++)
            meant = ascii_same(name, phrase_text((spz_language)in, (Phrase)(PHRASE_LANGUAGE_EN + i)));
        if (meant) {
            *out = (spz_language)i;
            return true;
        }
    }
    return false;
}

/* Makes the first letter from `at` on a large one: ASCII, and the Latin letters of UTF-8's C3 row. */
static void capitalise(Buffer *out, size_t at)
{
    if (buffer_failed(out) || at >= out->length)
        return;
    unsigned char *first = (unsigned char *)out->text + at;
    if (first[0] < 0x80)
        first[0] = (unsigned char)ascii_upper(first[0]);
    else if (first[0] == 0xC3 && first[1] >= 0xA0 && first[1] != 0xB7 && first[1] != 0xBF)
        first[1] = (unsigned char)(first[1] - 0x20);
}

static bool is_one(spz_language language, double number)
{
    return number == 1 || (number >= 0 && number < 2 && *phrase_text(language, PHRASE_NUMBER_ZERO_IS_ONE));
}

static void say_word(const Speech *speech, long number, Phrase zero, long most)
{
    if (number >= 0 && number <= most)
        buffer_puts(speech->out, phrase_text(speech->language, (Phrase)(zero + (unsigned)number)));
    else
        buffer_printf(speech->out, "%ld", number);
}

static void say_number(const Speech *speech, const Slot *slot, const char *form)
{
    long number = (long)slot->number;
    if (!strcmp(form, "word"))
        say_word(speech, number, PHRASE_NUMBER_WORD_0, 12);
    else if (!strcmp(form, "th") && number >= 1 && number <= 6)
        say_word(speech, number - 1, PHRASE_ORDINAL_1, 5);
    else if (!strcmp(form, "bare") && number >= 1 && number <= 6)
        say_word(speech, number - 1, PHRASE_ORDINAL_BARE_1, 5);
    else if (!strcmp(form, "times"))
        number == 2 ? buffer_puts(speech->out, phrase_text(speech->language, PHRASE_NUMBER_TWICE))
                    : SAY(speech->out, speech->language, number > 12 ? PHRASE_NUMBER_TIMES_FIGURES : PHRASE_NUMBER_TIMES, slot_number("n", number));
    else
        buffer_printf(speech->out, "%ld", number);
}

static void say_decimal(const Speech *speech, const Slot *slot)
{
    char text[NUMBER_TEXT];
    const char *sign = phrase_text(speech->language, PHRASE_NUMBER_DECIMAL);
    for (const char *c = number_text(slot->number, slot->places, text); *c; c++)
        *c == '.' ? buffer_puts(speech->out, sign) : buffer_putc(speech->out, *c);
}

static const char called[] = "short-";

static int form_of(const char *name)
{
    for (int i = 0; i < FORM_COUNT; i++)
        if (!strcmp(name, forms[i]))
            return i;
    return FORM_PLAIN;
}

static bool is_one_player(const spz_group *body, int form)
{
    return body->single && form != FORM_SHORT && body->section <= SPZ_DB;
}

static Phrase body_phrase(const spz_group *body, int form)
{
    spz_section section = body->section;
    if (is_one_player(body, form))
        return (Phrase)(PHRASE_PLAYER_VN1_PLAIN + (int)(section - SPZ_VN1) * FORM_SHORT + form);
    return (Phrase)(PHRASE_SECTION_VN1_PLAIN + (int)(section - SPZ_VN1) * FORM_COUNT + form);
}

/* One body of players: 'the second violas of the first orchestra', 'to the solo violins', 'Va 2'. */
static void say_body(const Speech *speech, const spz_group *body, int form)
{
    if (body->section < SPZ_VN1 || body->section > SPZ_WINDS)
        return;
    const spz_group own = {.section = body->section, .single = body->single};
    const char *section = phrase_text(speech->language, body_phrase(body, form == FORM_SHORT ? form : FORM_PLAIN));
    bool one = is_one_player(body, form);
    if (body->solo)
        SAY(speech->out, speech->language, (Phrase)((one ? PHRASE_SOLO_ONE_PLAIN : PHRASE_SOLO_PLAIN) + form), slot_players("section", &own, 1), slot_number("n", body->number));
    else if (body->number && one)
        SAY(speech->out, speech->language, (Phrase)(PHRASE_NUMBERED_ONE_PLAIN + form), slot_players("section", &own, 1), slot_number("n", body->number));
    else if (body->number)
        SAY(speech->out, speech->language, (Phrase)(PHRASE_NUMBERED_PLAIN + form), slot_text("section", section), slot_number("n", body->number));
    else
        buffer_puts(speech->out, phrase_text(speech->language, body_phrase(body, form)));
    if (body->orchestra)
        SAY(speech->out, speech->language, form == FORM_SHORT ? PHRASE_PLAYERS_ORCHESTRA_SHORT : PHRASE_PLAYERS_ORCHESTRA,
            slot_number("n", body->orchestra));
}

/* After the first of several the preposition is said again, or not, as the language does it. */
static int following_form(spz_language language, int form)
{
    return form_of(phrase_text(language, (Phrase)(PHRASE_FOLLOWING_PLAIN + form)));
}

static void say_players(const Speech *speech, const Slot *slot, int form);

/* 'short-FORM': an abbreviation as it is ('Vn I'), or with the word that the language puts before it; what has none ('Winds') by its name in that form. */
static void say_called(const Speech *speech, const Slot *slot, int form)
{
    bool lone = slot->count == 1, set = lone && slot->players->section >= SPZ_VIOLINS && !slot->players->solo && !slot->players->number;
    if (set) {
        buffer_puts(speech->out, phrase_text(speech->language, body_phrase(slot->players, form)));
        if (slot->players->orchestra)
            SAY(speech->out, speech->language, PHRASE_PLAYERS_ORCHESTRA_SHORT, slot_number("n", slot->players->orchestra));
        return;
    }
    if (!strcmp(forms[form], "to"))
        buffer_puts(speech->out, phrase_text(speech->language, PHRASE_SHORT_TO));
    say_players(speech, slot, FORM_SHORT);
}

static void say_players(const Speech *speech, const Slot *slot, int form)
{
    for (size_t i = 0; i < slot->count; i++) {
        if (i)
            buffer_puts(speech->out, phrase_text(speech->language, form == FORM_SHORT     ? PHRASE_LIST_SHORT
                                                                   : i + 1 == slot->count ? PHRASE_LIST_LAST
                                                                                          : PHRASE_LIST_NEXT));
        say_body(speech, &slot->players[i], i ? following_form(speech->language, form) : form);
    }
}

static const Slot *slot_of(const Speech *speech, const char *name)
{
    for (size_t i = 0; i < speech->count; i++)
        if (!strcmp(speech->slots[i].name, name))
            return &speech->slots[i];
    return NULL;
}

static void say_slot(const Speech *speech, const Slot *slot, const char *form)
{
    switch (slot->kind) {
    case SLOT_TEXT: buffer_puts(speech->out, slot->text); break;
    case SLOT_NUMBER: say_number(speech, slot, form); break;
    case SLOT_DECIMAL: say_decimal(speech, slot); break;
    case SLOT_PLAYERS:
        if (!strncmp(form, called, strlen(called)))
            say_called(speech, slot, form_of(form + strlen(called)));
        else
            say_players(speech, slot, form_of(form));
        break;
    case SLOT_PHRASE: say(speech->out, speech->language, slot->phrase, speech->slots, speech->count); break;
    }
}

/* One player alone takes the verb of one, a section and several that of many. */
static double number_of_players(const Slot *slot)
{
    return slot->count == 1 && is_one_player(&slot->players[0], FORM_PLAIN) ? 1 : 2;
}

/* What a slot counts as: players as the verb needs it, a figure as it is shown. */
static double counted(const Slot *slot)
{
    double unit = pow(10, slot->places);
    return slot->kind == SLOT_PLAYERS ? number_of_players(slot) : slot->kind == SLOT_DECIMAL ? round(slot->number * unit) / unit : slot->number;
}

/* What stands between the braces: 'name', 'name.form' or 'name|one|many'. */
static void say_braced(const Speech *speech, const char *inside, size_t length)
{
    char text[160], *form = "";
    snprintf(text, sizeof text, "%.*s", (int)length, inside);
    char *one = strchr(text, '|'), *many = one ? strchr(one + 1, '|') : NULL;
    if (one)
        *one++ = '\0';
    if (many)
        *many++ = '\0';
    char *dot = strchr(text, '.');
    if (dot) {
        *dot = '\0';
        form = dot + 1;
    }
    bool large = text[0] >= 'A' && text[0] <= 'Z';
    text[0] = (char)ascii_lower((unsigned char)text[0]);
    const Slot *slot = slot_of(speech, text);
    size_t at = speech->out->length;
    if (!slot)
        buffer_printf(speech->out, "?%s?", text);
    else if (many)
        buffer_puts(speech->out, is_one(speech->language, counted(slot)) ? one : many);
    else
        say_slot(speech, slot, form);
    if (large)
        capitalise(speech->out, at);
}

void say(Buffer *out, spz_language language, Phrase phrase, const Slot *slots, size_t count)
{
    say_template(out, language, phrase_text(language, phrase), slots, count);
}

void say_template(Buffer *out, spz_language language, const char *text, const Slot *slots, size_t count)
{
    Speech speech = {out, language, slots, count};
    while (*text) {
        size_t plain = strcspn(text, "{");
        buffer_add(out, text, plain);
        text += plain;
        const char *end = strchr(text, '}');
        if (*text && text[1] == '{') {
            buffer_putc(out, '{');
            text += 2;
        } else if (*text && end) {
            say_braced(&speech, text + 1, (size_t)(end - text - 1));
            text = end + 1;
        } else if (*text) {
            buffer_putc(out, *text++);
        }
    }
}

void say_list(Buffer *out, spz_language language, const char *const *items, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (i)
            buffer_puts(out, phrase_text(language, i + 1 == count ? PHRASE_LIST_LAST : PHRASE_LIST_NEXT));
        buffer_puts(out, items[i]);
    }
}
