#include "wording/seasons/shelf_words.h"
#include "wording/papers/notes_words.h"
#include "wording/passage_words.h"
#include "wording/phrase.h"
#include "wording/seatings/seating_words.h"
#include <stdio.h>
#include <string.h>

_Static_assert(PHRASE_INTERVAL_OCTAVE - PHRASE_INTERVAL_UNISON == SPZ_AT_OCTAVE - SPZ_AT_UNISON, "intervals in their order");

static const char *section_short(spz_language language, const char *name)
{
    spz_section section = spz_section_from_name(name);
    return section == SPZ_NO_SECTION ? name : words_section_short(language, section);
}

static void say_sides(Buffer *out, spz_language language, const char *const sides[2])
{
    buffer_puts(out, section_short(language, sides[0]));
    if (*sides[1])
        buffer_printf(out, "/%s", section_short(language, sides[1]));
}

/* '12-18 exchange Vn II/Vn I at the octave, striking'. */
static void say_shelf_passage(Buffer *out, spz_language language, const spz_shelf_passage *passage)
{
    char bars[WORDS_TEXT], kind[WORDS_TEXT];
    Buffer sides = {0}, at = {0};
    const spz_passage as_found = {.kind = passage->kind, .turns = passage->turns, .first_bar = passage->first_bar, .last_bar = passage->last_bar,
                                  .last = strcmp(passage->first_bar, passage->last_bar) != 0};
    say_sides(&sides, language, passage->sides);
    if (passage->interval)
        buffer_printf(&at, " %s", phrase_text(language, (Phrase)(PHRASE_INTERVAL_UNISON + (unsigned)(passage->interval - SPZ_AT_UNISON))));
    SAY(out, language, PHRASE_LIBRARY_PASSAGE, slot_text("bars", words_bars(language, &as_found, bars)),
        slot_text("kind", words_kind(language, &as_found, kind)), slot_text("sides", sides.text), slot_text("at", at.text),
        slot_text("weight", words_weight(language, passage->strength)));
    buffers_let_go(out, &sides, &at);
}

void say_shelf_passages(Buffer *out, spz_language language, const spz_shelf_movement *movement)
{
    for (size_t i = 0; i < movement->passage_count; i++) {
        buffer_puts(out, i ? phrase_text(language, PHRASE_LIST_PART) : "");
        say_shelf_passage(out, language, &movement->passages[i]);
    }
    if (movement->passage_count && movement->found > movement->passage_count)
        SAY(out, language, PHRASE_LIBRARY_MORE, slot_number("n", (long)(movement->found - movement->passage_count)));
}

void say_shelf_needs(Buffer *out, spz_language language, const spz_shelf_work *work)
{
    static const spz_section sections[SPZ_SHELF_SECTIONS] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};
    Buffer players = {0};
    for (int i = 0; i < SPZ_SHELF_SECTIONS; i++)
        if (work->needs[i])
            buffer_printf(&players, "%s%s %d", players.length ? ", " : "", words_section_short(language, sections[i]), work->needs[i]);
    if (work->orchestras > 1)
        buffer_puts(out, phrase_text(language, PHRASE_LIBRARY_TWO_ORCHESTRAS));
    if (work->thirds)
        buffer_printf(out, "%s%s", work->orchestras > 1 ? phrase_text(language, PHRASE_LIST_PART) : "", phrase_text(language, PHRASE_LIBRARY_THIRDS));
    if (players.length && (work->orchestras > 1 || work->thirds))
        buffer_puts(out, phrase_text(language, PHRASE_LIST_PART));
    if (players.length)
        SAY(out, language, PHRASE_LIBRARY_PLAYERS, slot_text("players", players.text));
    buffer_let_go(out, &players);
}

/* One piece of the text: 'exchange Vn I Vn II 12-18, 40'. Names of sections may be two words. */
static void say_loss_piece(Buffer *out, spz_language language, const char *text, size_t length)
{
    char piece[256], *sides[2] = {"", ""};
    spz_kind kind;
    snprintf(piece, sizeof piece, "%.*s", (int)(length < sizeof piece - 1 ? length : sizeof piece - 1), text);
    char *rest = strchr(piece, ' ');
    if (rest)
        *rest++ = '\0';
    if (!spz_kind_from_name(piece, &kind))
        return;
    for (int side = 0; rest && side < 2; side++)
        for (int section = SPZ_WINDS; section >= SPZ_VN1; section--) {
            const char *name = spz_section_name((spz_section)section);
            size_t size = strlen(name);
            if (strncmp(rest, name, size) != 0 || (rest[size] != ' ' && rest[size]))
                continue;
            sides[side] = rest;
            rest += size;
            if (*rest)
                *rest++ = '\0';
            break;
        }
    char word[WORDS_TEXT];
    const spz_passage as_found = {.kind = kind};
    buffer_printf(out, "%s ", words_kind(language, &as_found, word));
    say_sides(out, language, (const char *const *)sides);
    if (rest && *rest)
        buffer_printf(out, " %s", rest);
}

void say_shelf_losses(Buffer *out, spz_language language, const char *weakens)
{
    for (const char *at = weakens; *at;) {
        const char *end = strstr(at, "; ");
        size_t length = end ? (size_t)(end - at) : strlen(at);
        buffer_puts(out, at == weakens ? "" : phrase_text(language, PHRASE_LIST_PART));
        say_loss_piece(out, language, at, length);
        at += length + (end ? 2 : 0);
    }
}

void say_shelf_length(Buffer *out, spz_language language, double seconds, size_t unknown)
{
    if (!(seconds > 0))
        return;
    say_clock(out, language, seconds);
    buffer_puts(out, unknown ? "+" : "");
}

const char *words_shelf_title(const spz_shelf_work *work, const spz_shelf_movement *movement)
{
    size_t length = strlen(work->name);
    bool begins = strncmp(movement->title, work->name, length) == 0;
    if (begins && strncmp(movement->title + length, ": ", 2) == 0)
        return movement->title + length + 2;
    return *movement->title ? movement->title : work->name;
}

/* A whole name in the reader's language; the beginning of one as it was asked. */
static const char *arrangement_asked(spz_language language, const char *name)
{
    return strchr(name, ',') ? words_arrangement(language, name) : name;
}

void say_shelf_question(Buffer *out, spz_language language, const spz_shelf *shelf)
{
    const char *question = spz_shelf_question(shelf);
    long count = (long)spz_shelf_count(shelf), all = (long)spz_shelf_total(shelf);
    switch (spz_shelf_kind_of(shelf)) {
    case SPZ_SHELF_FITS:
        SAY(out, language, PHRASE_LIBRARY_FITS, slot_number("n", count), slot_text("arrangement", arrangement_asked(language, question)));
        break;
    case SPZ_SHELF_PARTNERS:
        SAY(out, language, PHRASE_LIBRARY_PARTNERS, slot_number("n", count), slot_text("work", question));
        break;
    case SPZ_SHELF_ALIKE:
        SAY(out, language, *question ? PHRASE_LIBRARY_ALIKE : PHRASE_LIBRARY_NO_PASSAGE, slot_number("n", all), slot_text("passage", question));
        break;
    default:
        SAY(out, language, !count ? PHRASE_LIBRARY_NONE : count < all ? PHRASE_LIBRARY_LISTED : PHRASE_LIBRARY_WORKS, slot_number("n", count), slot_number("all", all));
    }
}
