#include "wording/passage_words.h"
#include <inttypes.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

enum { BODIES_MOST = 16 };

/* What a buffer came to, cut to fit a line; the buffer is freed. */
static char *in_line(Buffer *words, char text[WORDS_TEXT])
{
    snprintf(text, WORDS_TEXT, "%s", words->text && !buffer_failed(words) ? words->text : "");
    buffer_free(words);
    return text;
}

char *words_bar(spz_language language, const char *number, size_t index, char text[WORDS_TEXT])
{
    Buffer words = {0};
    if (number && *number)
        buffer_puts(&words, number);
    else
        SAY(&words, language, PHRASE_BAR_UNNUMBERED, slot_number("n", (long)index + 1));
    return in_line(&words, text);
}

char *words_bars(spz_language language, const spz_passage *passage, char text[WORDS_TEXT])
{
    char first[WORDS_TEXT], last[WORDS_TEXT];
    words_bar(language, passage->first_bar, passage->first, first);
    words_bar(language, passage->last_bar, passage->last, last);
    if (passage->first == passage->last)
        snprintf(text, WORDS_TEXT, "%.70s", first);
    else
        snprintf(text, WORDS_TEXT, "%.70s-%.70s", first, last);
    return text;
}

char *words_letter(const spz_passage *passage, char text[WORDS_TEXT])
{
    if (passage->after_letter)
        snprintf(text, WORDS_TEXT, "%.40s+%d", passage->letter, passage->after_letter);
    else
        snprintf(text, WORDS_TEXT, "%.40s", passage->letter);
    return text;
}

_Static_assert(PHRASE_KIND_COUPLING - PHRASE_KIND_EXCHANGE == SPZ_COUPLING - SPZ_EXCHANGE, "kinds in their order");
_Static_assert(PHRASE_WEIGHT_STRIKING - PHRASE_WEIGHT_MARGINAL == SPZ_STRIKING - SPZ_MARGINAL, "weights in their order");

char *words_kind(spz_language language, const spz_passage *passage, char text[WORDS_TEXT])
{
    Buffer words = {0};
    bool divided = passage->kind == SPZ_DIV2 || passage->kind == SPZ_DIV3;
    SAY(&words, language, divided && passage->turns > 1 ? PHRASE_KIND_DIVIDED : (Phrase)(PHRASE_KIND_EXCHANGE + (unsigned)passage->kind),
        slot_number("n", passage->turns));
    return in_line(&words, text);
}

const char *words_weight(spz_language language, double strength)
{
    return phrase_text(language, (Phrase)(PHRASE_WEIGHT_MARGINAL + (unsigned)spz_weight_of(strength)));
}

char *words_standing(spz_language language, const spz_passage *passage, char text[WORDS_TEXT])
{
    Buffer words = {0};
    if (passage->ruling.kind == SPZ_AS_FOUND)
        buffer_puts(&words, words_weight(language, passage->strength));
    else
        SAY(&words, language, passage->ruling.kind == SPZ_VETOED ? PHRASE_RULING_VETOED : PHRASE_RULING_WEIGHTED,
            slot_text("weight", words_weight(language, passage->strength)));
    return in_line(&words, text);
}

void words_ruling(spz_language language, const spz_passage *passage, Buffer *out)
{
    Buffer why = {0};
    const spz_ruling *ruling = &passage->ruling;
    if (ruling->kind == SPZ_AS_FOUND)
        return;
    if (*ruling->reason)
        SAY(&why, language, PHRASE_RULING_WHY, slot_text("reason", ruling->reason));
    SAY(out, language, ruling->kind == SPZ_VETOED ? PHRASE_RULING_TOLD_VETOED : PHRASE_RULING_TOLD_WEIGHTED, slot_text("why", why.text),
        slot_text("heard", words_weight(language, ruling->heard)));
    buffer_let_go(out, &why);
}

static void put_short(spz_language language, const spz_group *bodies, size_t count, Buffer *out)
{
    Slot who = slot_players("who", bodies, count);
    say_template(out, language, "{who.short}", &who, 1);
}

char *words_body(spz_language language, const spz_group *body, char text[WORDS_TEXT])
{
    Buffer words = {0};
    put_short(language, body, 1, &words);
    return in_line(&words, text);
}

char *words_side(const Speaker *speaker, const spz_side *side, char text[WORDS_TEXT])
{
    spz_group body = spz_side_named(speaker->sections, side);
    return words_body(speaker->language, &body, text);
}

static void put_players(const Speaker *speaker, spz_players players, Buffer *out)
{
    spz_group bodies[BODIES_MOST];
    put_short(speaker->language, bodies, spz_players_named(speaker->sections, players, bodies, BODIES_MOST), out);
}

char *words_players(const Speaker *speaker, spz_players players, char text[WORDS_TEXT])
{
    Buffer words = {0};
    put_players(speaker, players, &words);
    return in_line(&words, text);
}

char *words_who(const Speaker *speaker, const spz_passage *passage, char text[WORDS_TEXT])
{
    if (passage->sides[1].section == SPZ_NO_SECTION)
        return words_side(speaker, &passage->sides[0], text);
    Buffer words = {0};
    spz_group first = spz_side_named(speaker->sections, &passage->sides[0]), second = spz_side_named(speaker->sections, &passage->sides[1]);
    bool together = passage->kind == SPZ_COUPLING || passage->kind == SPZ_SPLIT_LINE;
    SAY(&words, speaker->language, together ? PHRASE_WHO_TOGETHER : PHRASE_WHO_ANSWERED, slot_players("first", &first, 1),
        slot_players("second", &second, 1));
    return in_line(&words, text);
}

void words_links(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    for (size_t i = 0; passage->link_count > 2 && i < passage->link_count; i++) {
        buffer_puts(out, i ? phrase_text(speaker->language, PHRASE_LINK_NEXT) : "");
        put_players(speaker, passage->links[i].players, out);
    }
}

char *words_beat(spz_fraction beat, char text[BEAT_TEXT])
{
    if (beat.under < 1 || beat.over < 0)
        text[0] = '\0';
    else if (beat.under > 1 && beat.over > beat.under)
        snprintf(text, BEAT_TEXT, "%" PRId64 " %" PRId64 "/%" PRId64, beat.over / beat.under, beat.over % beat.under, beat.under);
    else if (beat.under > 1)
        snprintf(text, BEAT_TEXT, "%" PRId64 "/%" PRId64, beat.over, beat.under);
    else
        snprintf(text, BEAT_TEXT, "%" PRId64, beat.over);
    return text;
}

_Static_assert(PHRASE_LAG_VALUE_3_MANY - PHRASE_LAG_VALUE_0_ONE == 7 && PHRASE_LAG_TRIPLET_3_MANY - PHRASE_LAG_TRIPLET_0_ONE == 7,
               "four note values, one and many");

/* 'five quavers', 'a semiquaver', 'ten triplet quavers': two crotchets are three triplet crotchets. */
static void put_note_values(spz_language language, spz_fraction crotchets, Buffer *out)
{
    for (int i = 0; i < 8; i++) {
        bool triplet = i >= 4;
        int64_t units = (crotchets.over << i % 4) * (triplet ? 3 : 1), unit = crotchets.under * (triplet ? 2 : 1);
        if (units % unit != 0)
            continue;
        Phrase one = (Phrase)((triplet ? PHRASE_LAG_TRIPLET_0_ONE : PHRASE_LAG_VALUE_0_ONE) + 2 * (i % 4));
        SAY(out, language, (Phrase)(one + (units != unit)), slot_number("n", (long)(units / unit)));
        return;
    }
    SAY(out, language, PHRASE_LAG_FRACTION, slot_number("over", (long)crotchets.over), slot_number("under", (long)crotchets.under));
}

/* From here on nobody counts beats. */
static const double many_bars = 3;

/* 'three and a half bars', 'about five bars'. */
static void put_many_bars(spz_language language, double bars, Buffer *out)
{
    bool half = bars - floor(bars) == 0.5;
    Slot whole = slot_number("n", (long)(half ? floor(bars) : round(bars)));
    say(out, language, half ? PHRASE_LAG_BARS_AND_HALF : PHRASE_LAG_ABOUT_BARS, &whole, 1);
}

void words_length(spz_language language, spz_length length, Buffer *out)
{
    spz_fraction count = length.count;
    bool half = count.under == 2;
    Slot whole = slot_number("n", (long)(count.over / count.under));
    if (length.unit != SPZ_IN_BARS && length.bars > many_bars)
        put_many_bars(language, length.bars, out);
    else if (length.unit == SPZ_IN_CROTCHETS || count.under > 2)
        put_note_values(language, count, out);
    else if (length.unit == SPZ_IN_BARS)
        say(out, language, half ? PHRASE_LAG_HALF_BAR : count.over == 1 ? PHRASE_LAG_BAR : PHRASE_LAG_BARS, &whole, 1);
    else if (!half)
        say(out, language, count.over == 1 ? PHRASE_LAG_BEAT : PHRASE_LAG_BEATS, &whole, 1);
    else
        say(out, language, count.over == 1 ? PHRASE_LAG_HALF_BEAT : count.over == 3 ? PHRASE_LAG_BEAT_AND_HALF : PHRASE_LAG_BEATS_AND_HALF,
            &whole, 1);
}

/* What sounds as a perfect fourth or fifth is one, however it is spelt (an E flat above a G sharp). */
static int steps_heard(spz_change change)
{
    int semitones = abs(change.semitones);
    return semitones == 5 ? 3 : semitones == 7 ? 4 : abs(change.steps);
}

static Phrase interval_phrase(spz_change change)
{
    int steps = steps_heard(change), semitones = abs(change.semitones);
    if (change.semitones == 0)
        return PHRASE_CHANGE_SAME;
    if (steps && steps % 7 == 0 && semitones % 12 == 0)
        return steps == 7 ? PHRASE_CHANGE_OCTAVE : steps == 14 ? PHRASE_CHANGE_OCTAVES : PHRASE_CHANGE_MORE_OCTAVES;
    if (steps == 0)
        return PHRASE_CHANGE_ALTERED;
    if (steps % 7 == 0)
        return change.semitones > 0 ? PHRASE_CHANGE_UP : PHRASE_CHANGE_DOWN;
    return steps < 7 ? (Phrase)(PHRASE_CHANGE_INTERVAL_2 + steps - 1) : PHRASE_CHANGE_WIDE;
}

void words_change(spz_language language, spz_change change, Buffer *out)
{
    SAY(out, language, interval_phrase(change), slot_phrase("way", change.semitones > 0 ? PHRASE_CHANGE_UP : PHRASE_CHANGE_DOWN));
    if (change.inverted)
        buffer_puts(out, phrase_text(language, PHRASE_CHANGE_INVERTED));
    if (change.stretch)
        buffer_puts(out, phrase_text(language, change.stretch > 0 ? PHRASE_CHANGE_AUGMENTED : PHRASE_CHANGE_DIMINISHED));
}

static void put_gesture(spz_language language, const spz_gesture *gesture, spz_kind kind, Buffer *out)
{
    Slot notes = slot_number("n", gesture->notes);
    Phrase phrase = kind == SPZ_HOCKET && gesture->notes <= 1 ? PHRASE_GESTURE_SINGLE
                    : kind == SPZ_HOCKET                      ? PHRASE_GESTURE_FRAGMENTS
                    : gesture->notes == 1                     ? PHRASE_GESTURE_FIGURE_ONE
                    : gesture->notes <= 12                    ? PHRASE_GESTURE_FIGURE
                                                              : PHRASE_GESTURE_PHRASE;
    if (gesture->pizzicato)
        SAY(out, language, PHRASE_GESTURE_PIZZICATO, slot_phrase("plain", phrase), notes);
    else
        say(out, language, phrase, &notes, 1);
}

static void tell_gesture(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    const spz_gesture *gesture = &passage->told.gesture;
    spz_group caller = spz_side_named(speaker->sections, &gesture->sides[0]), responder = spz_side_named(speaker->sections, &gesture->sides[1]);
    Buffer figure = {0}, lag = {0}, change = {0}, turns = {0};
    put_gesture(speaker->language, gesture, passage->kind, &figure);
    words_length(speaker->language, gesture->lag, &lag);
    words_change(speaker->language, gesture->change, &change);
    SAY(&turns, speaker->language, passage->turns > 3 ? PHRASE_PASSAGE_TURNS : PHRASE_PASSAGE_NO_TURNS, slot_number("n", passage->turns));
    SAY(out, speaker->language,
        passage->kind == SPZ_HOCKET ? PHRASE_PASSAGE_HOCKET : passage->kind == SPZ_IMITATION ? PHRASE_PASSAGE_IMITATION : PHRASE_PASSAGE_EXCHANGE,
        slot_phrase("owner", caller.orchestra ? PHRASE_PASSAGE_OWNER_ORCHESTRA : PHRASE_PASSAGE_OWNER), slot_players("caller", &caller, 1),
        slot_players("responder", &responder, 1), slot_text("gesture", figure.text), slot_text("lag", lag.text), slot_text("change", change.text),
        slot_text("turns", turns.text));
    if (gesture->swapped)
        buffer_puts(out, phrase_text(speaker->language, PHRASE_PASSAGE_SWAPPED));
    buffers_let_go(out, &figure, &lag, &change, &turns);
}

static void tell_braid(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    spz_group parts[3];
    size_t count = 0;
    for (size_t i = 0; i < 3 && passage->told.braid.sections[i]; i++)
        parts[count++] = (spz_group){.section = passage->told.braid.sections[i], .single = spz_sections_chamber_music(speaker->sections)};
    SAY(out, speaker->language, PHRASE_PASSAGE_SPLIT_LINE, slot_players("parts", parts, count), slot_number("n", passage->told.braid.changes));
}

_Static_assert(PHRASE_WRITING_IN_TURN - PHRASE_WRITING_CHORDS == SPZ_IN_TURN - SPZ_IN_CHORDS, "textures in their order");
_Static_assert(PHRASE_MANNER_PIZZICATO - PHRASE_MANNER_PLAIN == SPZ_PIZZICATO - SPZ_PLAIN, "manners in their order");
_Static_assert(PHRASE_GROUND_CHORDS - PHRASE_GROUND_MARK == SPZ_BY_CHORDS - SPZ_BY_MARK, "grounds in their order");

static char *writing_words(spz_language language, spz_writing writing, char text[WORDS_TEXT])
{
    snprintf(text, WORDS_TEXT, "%s%s", phrase_text(language, (Phrase)(PHRASE_WRITING_CHORDS + (unsigned)writing.texture)),
             phrase_text(language, (Phrase)(PHRASE_MANNER_PLAIN + (unsigned)writing.manner)));
    return text;
}

static Phrase division_phrase(const spz_division *division)
{
    bool alike = division->writing[0].texture == division->writing[1].texture && division->writing[0].manner == division->writing[1].manner;
    switch (division->violins) {
    case SPZ_FIRSTS_DIVIDED: return PHRASE_DIVISION_VIOLINS_FIRSTS;
    case SPZ_SECONDS_DIVIDED: return PHRASE_DIVISION_VIOLINS_SECONDS;
    case SPZ_BOTH_DIVIDED: return alike ? PHRASE_DIVISION_VIOLINS_ALIKE : PHRASE_DIVISION_VIOLINS_BOTH;
    case SPZ_THIRD_PART: return PHRASE_DIVISION_VIOLINS_THIRD;
    case SPZ_SOLO_ABOVE: return PHRASE_DIVISION_VIOLINS_SOLO;
    default: return division->soloists ? PHRASE_DIVISION_SOLOISTS : division->by_desk ? PHRASE_DIVISION_BY_DESK : PHRASE_DIVISION_SECTION;
    }
}

static void tell_division(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    const spz_division *division = &passage->told.division;
    spz_group who = spz_side_named(speaker->sections, &passage->sides[0]);
    char first[WORDS_TEXT], second[WORDS_TEXT];
    bool of_seconds = division->violins == SPZ_SECONDS_DIVIDED;
    SAY(out, speaker->language, division_phrase(division), slot_players("who", &who, 1),
        slot_number("n", division->violins == SPZ_ONE_SECTION && division->soloists ? division->soloists : division->lines),
        slot_text("writing", writing_words(speaker->language, division->writing[of_seconds], first)),
        slot_text("other", writing_words(speaker->language, division->writing[1], second)),
        slot_phrase("ground", (Phrase)(PHRASE_GROUND_MARK + (unsigned)division->ground)));
}

_Static_assert(PHRASE_PARALLEL_ONE_RHYTHM - PHRASE_PARALLEL_UNISON == SPZ_ONE_RHYTHM - SPZ_UNISON, "parallels in their order");
_Static_assert(PHRASE_LOUDNESS_FULL - PHRASE_LOUDNESS_PLAIN == SPZ_FULL_STRENGTH - SPZ_LOUDNESS_PLAIN, "loudness in its order");

static void tell_unity(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    const spz_unity *unity = &passage->told.unity;
    spz_group who[2] = {spz_side_named(speaker->sections, &passage->sides[0]), spz_side_named(speaker->sections, &passage->sides[1])};
    SAY(out, speaker->language, unity->notes_a_second > 0 ? PHRASE_UNITY_FAST : PHRASE_UNITY, slot_players("who", who, 2),
        slot_phrase("parallel", (Phrase)(PHRASE_PARALLEL_UNISON + (unsigned)unity->parallel)),
        slot_phrase("loudness", (Phrase)(PHRASE_LOUDNESS_PLAIN + (unsigned)unity->loudness)), slot_decimal("n", unity->notes_a_second, 0));
}

void words_told(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    switch (passage->kind) {
    case SPZ_SPLIT_LINE: tell_braid(speaker, passage, out); break;
    case SPZ_DIV2:
    case SPZ_DIV3: tell_division(speaker, passage, out); break;
    case SPZ_COUPLING: tell_unity(speaker, passage, out); break;
    default: tell_gesture(speaker, passage, out);
    }
}

void words_reason(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    Buffer links = {0};
    words_links(speaker, passage, &links);
    words_told(speaker, passage, out);
    if (links.length)
        SAY(out, speaker->language, PHRASE_LINK_ORDER, slot_text("links", links.text));
    words_ruling(speaker->language, passage, out);
    buffer_let_go(out, &links);
}
