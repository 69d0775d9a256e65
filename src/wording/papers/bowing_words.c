#include "wording/papers/bowing_words.h"
#include "analysis/passages/passage_facts.h"
#include <string.h>

static const char *text_of(const Buffer *buffer)
{
    return buffer->length ? buffer->text : "";
}

static size_t bar_at(const Speaker *speaker, Ticks when)
{
    int bar = movement_bar_at(speaker->sections->movement, when);
    return bar < 0 ? 0 : (size_t)bar;
}

static char *bar_words(const Speaker *speaker, size_t bar, char text[WORDS_TEXT])
{
    return words_bar(speaker->language, speaker->sections->movement->bars[bar].number, bar, text);
}

static char *group_words(const Speaker *speaker, size_t group, char text[WORDS_TEXT])
{
    return words_body(speaker->language, &speaker->sections->groups[group].about, text);
}

/* Whether they are several. */
static bool say_bars_of(Buffer *out, const Speaker *speaker, const BowingStrand *strand)
{
    char first[WORDS_TEXT], last[WORDS_TEXT];
    size_t from = bar_at(speaker, strand->from), to = bar_at(speaker, strand->to > strand->from ? strand->to - 1 : strand->from);
    buffer_puts(out, bar_words(speaker, from, first));
    if (to > from)
        buffer_printf(out, "-%s", bar_words(speaker, to, last));
    return to > from;
}

void say_meeting(Buffer *out, const Speaker *speaker, const BowingMeeting *meeting)
{
    const char *items[STRANDS_MOST];
    Buffer parts[STRANDS_MOST], bars;
    bool several = false;
    buffer_init(&bars);
    for (size_t i = 0; i < meeting->strand_count; i++) {
        char who[WORDS_TEXT];
        buffer_init(&parts[i]);
        group_words(speaker, meeting->strands[i].group, who);
        buffer_clear(&bars);
        several = say_bars_of(&bars, speaker, &meeting->strands[i]);
        SAY(&parts[i], speaker->language, meeting->in_turn ? PHRASE_BOWINGS_IN_BAR : PHRASE_ADVICE_PLAIN, slot_text("what", who), slot_text("bars", text_of(&bars)),
            slot_number("n", several ? 2 : 1));
        items[i] = text_of(&parts[i]);
    }
    Buffer who = {0};
    say_list(&who, speaker->language, items, meeting->strand_count);
    SAY(out, speaker->language, meeting->in_turn ? PHRASE_ADVICE_PLAIN : PHRASE_BOWINGS_TOGETHER, slot_text("what", text_of(&who)), slot_text("bars", text_of(&bars)),
        slot_number("n", several ? 2 : 1));
    for (size_t i = 0; i < meeting->strand_count; i++)
        buffer_let_go(out, &parts[i]);
    buffers_let_go(out, &who, &bars);
}

_Static_assert(PHRASE_BOWING_TREMOLO - PHRASE_BOWING_SLUR == BOWING_SIGN_COUNT - 1, "a phrase for each sign");

const char *words_bowing_sign(spz_language language, BowingSign sign)
{
    return phrase_text(language, (Phrase)(PHRASE_BOWING_SLUR + (int)sign));
}

void say_bowing_bars(Buffer *out, const Speaker *speaker, const BowingDifference *difference)
{
    char bar[WORDS_TEXT];
    buffer_puts(out, bar_words(speaker, difference->bars[0], bar));
    if (difference->bars[1] != difference->bars[0])
        buffer_printf(out, ", %s", bar_words(speaker, difference->bars[1], bar));
}

/* A beat of that bar; of another one with its bar. */
static void say_moment(Buffer *out, const Speaker *speaker, size_t bar, Ticks when)
{
    char beat[BEAT_TEXT], number[WORDS_TEXT];
    size_t own = bar_at(speaker, when);
    words_beat(beat_of(speaker->sections->movement, when), beat);
    if (own == bar)
        buffer_puts(out, beat);
    else
        SAY(out, speaker->language, PHRASE_BOWINGS_BEAT_OF, slot_text("beat", beat), slot_text("bar", bar_words(speaker, own, number)));
}

void say_bowing_marks(Buffer *out, const Speaker *speaker, const BowingList *list, const BowingDifference *difference, bool other)
{
    size_t shown = 0;
    for (size_t i = 0; i < difference->count; i++) {
        const BowingMark *mark = &list->marks.at[difference->first + i];
        if (mark->other != other)
            continue;
        buffer_puts(out, shown++ ? ", " : "");
        say_moment(out, speaker, difference->bars[other], mark->from);
        if (mark->to > mark->from) {
            buffer_puts(out, "-");
            say_moment(out, speaker, difference->bars[other], mark->to);
        }
    }
}

void say_bowing_difference(Buffer *out, const Speaker *speaker, const BowingList *list, const BowingMeeting *meeting, const BowingDifference *difference)
{
    for (int other = 0; other < 2; other++) {
        Buffer marks = {0};
        char who[WORDS_TEXT];
        say_bowing_marks(&marks, speaker, list, difference, other);
        group_words(speaker, meeting->strands[other ? difference->strand : 0].group, who);
        buffer_puts(out, other ? phrase_text(speaker->language, PHRASE_LIST_PART) : "");
        SAY(out, speaker->language, marks.length ? PHRASE_BOWINGS_HAS : PHRASE_BOWINGS_HAS_NOT, slot_text("who", who), slot_text("marks", text_of(&marks)));
        buffer_let_go(out, &marks);
    }
}

/* Bars in which something differs, each once. */
static long bars_that_differ(const BowingList *list)
{
    long count = 0;
    for (size_t i = 0; i < list->differences.count; i++) {
        bool again = false;
        for (size_t k = 0; k < i && !again; k++)
            again = list->differences.at[k].bars[0] == list->differences.at[i].bars[0];
        count += !again;
    }
    return count;
}

void say_bowings(Buffer *out, const Speaker *speaker, const BowingList *list)
{
    long differing = 0;
    for (size_t i = 0; i < list->meetings.count; i++)
        differing += list->meetings.at[i].count > 0;
    SAY(out, speaker->language, !list->meetings.count ? PHRASE_BOWINGS_NONE : differing ? PHRASE_BOWINGS_SUM : PHRASE_BOWINGS_ALIKE, slot_number("n", (long)list->meetings.count),
        slot_number("m", differing), slot_number("bars", bars_that_differ(list)));
}
