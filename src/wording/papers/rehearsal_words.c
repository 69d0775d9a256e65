#include "wording/papers/rehearsal_words.h"
#include "wording/papers/notes_words.h"
#include <stdint.h>

enum { BODIES_MOST = 16, BARS_MOST = 8 };

void say_call(Buffer *out, const Speaker *speaker, const RehearsalCall *call)
{
    spz_group bodies[BODIES_MOST];
    Buffer time = {0};
    say_clock(&time, speaker->language, call->seconds);
    SAY(out, speaker->language, PHRASE_REHEARSAL_CALL, slot_players("who", bodies, spz_players_named(speaker->sections, call->called, bodies, BODIES_MOST)),
        slot_number("n", (long)call->count), slot_text("time", time.text));
    buffer_let_go(out, &time);
}

/* Bars in which a link of the passage enters, each once: '9, 11, 13 ...'. */
static void put_bars(Buffer *out, const Speaker *speaker, const spz_passage *passage, size_t link)
{
    size_t shown = 0, before = SIZE_MAX;
    for (size_t i = 0; i < passage->entry_count && shown <= BARS_MOST; i++) {
        char bar[WORDS_TEXT];
        const spz_entry *entry = &passage->entries[i];
        if (entry->link != link || entry->bar == before)
            continue;
        before = entry->bar;
        if (shown++ == BARS_MOST)
            buffer_puts(out, phrase_text(speaker->language, PHRASE_REHEARSAL_AND_SO_ON));
        else
            buffer_printf(out, "%s%s", shown > 1 ? ", " : "", words_bar(speaker->language, speaker->sections->movement->bars[entry->bar].number, entry->bar, bar));
    }
}

void say_entry_bars(Buffer *out, const Speaker *speaker, const spz_passage *passage)
{
    bool any = false;
    for (size_t link = 0; spz_kind_is_antiphony(passage->kind) && passage->kind != SPZ_SPLIT_LINE && link < passage->link_count; link++) {
        char who[WORDS_TEXT];
        Buffer bars = {0};
        put_bars(&bars, speaker, passage, link);
        if (bars.length) {
            buffer_puts(out, any ? phrase_text(speaker->language, PHRASE_REHEARSAL_ENTERS_NEXT) : "");
            SAY(out, speaker->language, PHRASE_REHEARSAL_ENTERS, slot_text("who", words_players(speaker, passage->links[link].players, who)),
                slot_text("bars", bars.text));
            any = true;
        }
        buffer_let_go(out, &bars);
    }
}

void say_to_rehearse(Buffer *out, const Speaker *speaker, const RehearsalItem *item)
{
    Buffer told = {0}, entries = {0};
    words_told(speaker, item->passage, &told);
    say_entry_bars(&entries, speaker, item->passage);
    words_ruling(speaker->language, item->passage, &told);
    SAY(out, speaker->language, entries.length ? PHRASE_REHEARSAL_WHAT_ENTRIES : PHRASE_REHEARSAL_WHAT, slot_text("told", told.text), slot_text("entries", entries.text));
    buffers_let_go(out, &told, &entries);
}

_Static_assert(PHRASE_LISTEN_TOGETHER - PHRASE_LISTEN_MATCH == LISTEN_TOGETHER - LISTEN_MATCH, "what to listen for in its order");

static Phrase from_phrase(const RehearsalItem *item)
{
    if (item->from != FROM_HALL)
        return item->from == FROM_PODIUM ? PHRASE_LISTEN_FROM_PODIUM : PHRASE_LISTEN_FROM_DESKS;
    return !item->placed ? PHRASE_LISTEN_FROM_HALL_ALONE : item->widths < 1 ? PHRASE_LISTEN_FROM_HALL_NEAR : PHRASE_LISTEN_FROM_HALL;
}

void say_listening(Buffer *out, spz_language language, const RehearsalItem *item)
{
    Phrase listen = item->listen == LISTEN_TOGETHER && item->placed ? PHRASE_LISTEN_TOGETHER_DELAY : (Phrase)(PHRASE_LISTEN_MATCH + (unsigned)item->listen);
    Buffer question = {0};
    SAY(&question, language, listen, slot_decimal("delay", 1000 * item->delay, 0));
    SAY(out, language, from_phrase(item), slot_text("listen", question.text), slot_decimal("degrees", item->degrees, 0));
    buffer_let_go(out, &question);
}

void say_lasts(Buffer *out, spz_language language, const RehearsalItem *item)
{
    Buffer time = {0};
    say_clock(&time, language, item->seconds);
    SAY(out, language, item->times > 1 ? PHRASE_REHEARSAL_LASTS_TIMES : PHRASE_REHEARSAL_LASTS, slot_text("time", time.text), slot_number("n", (long)item->times));
    buffer_let_go(out, &time);
}
