#include "wording/notes_language.h"
#include <stdio.h>
#include <string.h>

static const char *const numbers[] = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"};
static const char *const ordinals[] = {"", "first ", "second ", "third ", "fourth ", "fifth ", "sixth "};
static const char *const intervals[INTERVAL_NAMES] = {
    "on the same notes", "a step", "a third", "a fourth", "a fifth", "a sixth", "a seventh", "an octave", "a tenth", "a twelfth", "two octaves"};

static const char *number_word(size_t number, char text[24])
{
    if (number < sizeof numbers / sizeof numbers[0])
        return numbers[number];
    snprintf(text, 24, "%zu", number);
    return text;
}

/* 'second violins', 'second violas of the first orchestra', 'soloists of the first violins'. */
static char *name(const Body *body, char text[BODY_TEXT])
{
    const char *order = body->number >= 1 && body->number <= 6 ? ordinals[body->number] : "";
    snprintf(text, BODY_TEXT, "%s%s%s", body->solo ? "soloists of the " : "", order, spz_section_words(body->section));
    size_t length = strlen(text);
    if (body->orchestra >= 1 && body->orchestra <= 6)
        snprintf(text + length, BODY_TEXT - length, " of the %sorchestra", ordinals[body->orchestra]);
    return text;
}

static void interval_words(Buffer *out, const Citation *citation)
{
    IntervalName interval = citation->interval == INTERVAL_MIXED ? INTERVAL_NAMELESS : interval_name(citation->interval);
    if (interval == INTERVAL_SAME)
        buffer_printf(out, ", %s", intervals[interval]);
    else if (interval != INTERVAL_NAMELESS)
        buffer_printf(out, ", %s %s", intervals[interval], citation->interval > 0 ? "higher" : "lower");
}

static void entries_words(Buffer *out, const Citation *citation)
{
    char text[24];
    if (citation->passage->turns >= 4)
        buffer_printf(out, ", with %s entries in all", number_word((size_t)citation->passage->turns, text));
}

static void dialogue(Buffer *out, const Citation *citation, const char *a, const char *b)
{
    static const char *const exchanges[] = {
        "The %s call, the %s answer", "A question from the %s, a reply from the %s", "What the %s propose, the %s take up"};
    static const char *const imitations[] = {
        "While the %s are still playing, the %s come in with the same idea", "On the heels of the %s the %s follow with the same idea"};
    static const char *const hockets[] = {"Notes fly to and fro between the %s and the %s", "The %s and the %s share out one figure, note by note"};
    size_t variant = citation->variant;
    switch (citation->passage->kind) {
    case SPZ_HOCKET:
        buffer_printf(out, variant % 2 ? hockets[1] : hockets[0], a, b);
        break;
    case SPZ_SPLIT_LINE:
        buffer_printf(out, variant % 2 ? "Once more a tune is shared out: the %s and the %s take its notes by turns"
                                       : "One melody whose notes come in turn from the %s and the %s: neither of them plays alone the tune that one hears", a, b);
        break;
    case SPZ_IMITATION:
        buffer_printf(out, variant % 2 ? imitations[1] : imitations[0], a, b);
        interval_words(out, citation);
        entries_words(out, citation);
        break;
    default:
        buffer_printf(out, variant % 3 == 0 ? exchanges[0] : variant % 3 == 1 ? exchanges[1] : exchanges[2], a, b);
        interval_words(out, citation);
        entries_words(out, citation);
    }
}

/* A chain of more than two: all of them, or the first and the last. */
static void journey(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    size_t last = citation->body_count - 1;
    bool named = citation->body_count <= BODIES_NAMED;
    if (named)
        buffer_puts(out, citation->variant % 2 ? "From group to group: an idea that begins in the " : "One idea wanders from the ");
    else
        buffer_printf(out, "One idea goes round %s groups, from the ", number_word(citation->body_count, number));
    buffer_puts(out, name(&citation->bodies[0], text));
    if (named && citation->variant % 2) {
        for (size_t i = 1; i <= last; i++)
            buffer_printf(out, "%s the %s", i == last ? " and ends in" : i == 1 ? ", passes to" : ", then to", name(&citation->bodies[i], text));
        return;
    }
    for (size_t i = 1; i < last && named; i++)
        buffer_printf(out, "%s the %s", i == 1 ? " by way of" : " and", name(&citation->bodies[i], text));
    buffer_printf(out, " to the %s", name(&citation->bodies[last], text));
}

static void divided(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    int lines = citation->passage->turns;
    const char *count = number_word(lines > 0 ? (size_t)lines : 2, number);
    const char *all = citation->bodies[0].section == SPZ_VIOLINS ? "All the " : "The ";
    buffer_printf(out, "%s%s %s %s voices", all, name(&citation->bodies[0], text), citation->variant % 2 ? "sound in" : "divide into", count);
    if (lines > 2)
        buffer_puts(out, citation->passage->fully_voiced ? ", each with a line of its own" : ", a full chord by themselves");
}

static void coupled(Buffer *out, const Citation *citation, const char *a, const char *b)
{
    buffer_printf(out, citation->variant % 2 ? "One voice out of two sections: the %s and the %s in the same rhythm" : "The %s and the %s move as one",
                  a, b);
    if (citation->quick)
        buffer_puts(out, ", in quick notes");
}

static void sentence(Buffer *out, const Citation *citation)
{
    char a[BODY_TEXT] = "", b[BODY_TEXT] = "";
    spz_kind kind = citation->passage->kind;
    if (citation->body_count > 0)
        name(&citation->bodies[0], a);
    if (citation->body_count > 1)
        name(&citation->bodies[1], b);
    if (spz_kind_is_antiphony(kind) && citation->body_count > 2)
        journey(out, citation);
    else if (spz_kind_is_antiphony(kind))
        dialogue(out, citation, a, b);
    else if (kind == SPZ_COUPLING)
        coupled(out, citation, a, b);
    else
        divided(out, citation);
    buffer_putc(out, '.');
}

static void place(Buffer *out, const Citation *citation)
{
    char clock[CLOCK_TEXT];
    buffer_puts(out, citation->passage->first == citation->passage->last ? "Bar " : "Bars ");
    put_bars(out, citation);
    if (citation->letter[0]) {
        buffer_puts(out, ", ");
        if (citation->after)
            buffer_printf(out, "%d %s after ", citation->after, citation->after == 1 ? "bar" : "bars");
        buffer_printf(out, "%s %s", letter_is_number(citation) ? "figure" : "letter", citation->letter);
    }
    for (size_t i = 0; i < citation->time_count; i++)
        buffer_printf(out, "%s %s", i == 0 ? ", at" : i == 1 ? " and again at" : ",", clock_text(citation->times[i], clock));
}

static void dialogues(Buffer *out, const Overview *overview)
{
    char text[24], a[BODY_TEXT], b[BODY_TEXT], clock[CLOCK_TEXT];
    buffer_printf(out, "Sections answer each other in %s %s", number_word(overview->dialogues, text), overview->dialogues == 1 ? "passage" : "passages");
    if (overview->striking == overview->dialogues)
        buffer_puts(out, overview->dialogues == 1 ? ", and strikingly so" : ", each time strikingly so");
    else if (overview->striking)
        buffer_printf(out, ", strikingly so in %s", number_word(overview->striking, text));
    buffer_puts(out, ".");
    if (overview->dialogues > 1 && overview->pair_count > 1)
        buffer_printf(out, " The %s and the %s have %s of them.", name(&overview->pair[0], a), name(&overview->pair[1], b),
                      overview->pair_count == overview->dialogues ? "all" : number_word(overview->pair_count, text));
    if (overview->strongest) {
        buffer_puts(out, overview->dialogues == 1 ? " It begins in bar " : " The one not to miss begins in bar ");
        buffer_puts(out, overview->strongest->bar_from);
        if (overview->strongest->time_count)
            buffer_printf(out, ", at %s", clock_text(overview->strongest->times[0], clock));
        buffer_puts(out, ".");
    }
}

static void paragraph(Buffer *out, const Overview *overview)
{
    static const char *const seatings[] = {
        [SEATING_NONE] = "",
        [SEATING_OPEN] = " Where the violins sit, the score leaves open.",
        [SEATING_OPPOSED] = " The score speaks for first and second violins on opposite sides of the stage, so that question and reply come from left and right.",
        [SEATING_TOGETHER] = " The score speaks for all the violins sitting together.",
    };
    char text[24];
    if (!overview->strings) {
        buffer_puts(out, "No string sections play in this movement.");
        return;
    }
    if (overview->dialogues)
        dialogues(out, overview);
    else
        buffer_puts(out, "No two sections answer each other clearly in this movement.");
    if (overview->divided) {
        buffer_printf(out, " In %s %s a section divides", number_word(overview->divided, text), overview->divided == 1 ? "passage" : "passages");
        if (overview->threefold)
            buffer_printf(out, ", in %s into three or more voices", overview->threefold == overview->divided ? "all of them" : number_word(overview->threefold, text));
        buffer_putc(out, '.');
    }
    if (overview->coupled)
        buffer_printf(out, " In %s %s two sections move as one.", number_word(overview->coupled, text), overview->coupled == 1 ? "passage" : "passages");
    buffer_puts(out, seatings[overview->seating]);
}

static void times(Buffer *out, const Overview *overview)
{
    char clock[CLOCK_TEXT];
    if (overview->duration <= 0)
        buffer_puts(out, "The score has no tempo marks, so no times are given; say how long the movement lasts and they will be.");
    else if (overview->stretched)
        buffer_printf(out, "Times count from the first note of a performance of %s%s.", clock_text(overview->duration, clock),
                      overview->repeats ? ", with all repeats" : "");
    else
        buffer_printf(out, "Times count from the first note and follow the tempo marks of the score, by which the movement lasts %s%s.",
                      clock_text(overview->duration, clock), overview->repeats ? " with all repeats" : "");
}

const NotesLanguage notes_english = {
    "en", "Listen for", "No passage of this movement stands out enough to be cited.", place, sentence, paragraph, times};
