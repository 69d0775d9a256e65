/* Doubts as each language says them. */
#include "support/message.h"
#include "support/suite.h"
#include "wording/doubt_words.h"
#include <stdio.h>
#include <string.h>

static char said[400];

static const char *kept(Buffer *out)
{
    snprintf(said, sizeof said, "%s", out->text ? out->text : "");
    buffer_free(out);
    return said;
}

static const char *doubt_in(spz_language language, spz_doubt doubt)
{
    Buffer out;
    buffer_init(&out);
    say_doubt(&out, language, &doubt);
    return kept(&out);
}

static const char *pitch_in(spz_language language, int step, int alter, int octave)
{
    Buffer out;
    buffer_init(&out);
    say_pitch(&out, language, (spz_pitch){.step = (signed char)step, .alter = (signed char)alter, .octave = (signed char)octave, .midi = 60});
    return kept(&out);
}

/* Helmholtz's octaves in German (c' is middle C, the B of English a H); in French middle C is do3, the lowest key of the piano la-1. */
static void a_pitch_is_written_as_in_the_country(void)
{
    enum { C, D, E, F, G, A, B };
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_ENGLISH, E, -1, 5), "Eb5");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_GERMAN, E, -1, 5), "es''");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_GERMAN, B, 0, 2), "H");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_GERMAN, B, -1, 3), "b");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_GERMAN, C, 1, 1), "Kontra-Cis");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_FRENCH, C, 0, 4), "do3");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_FRENCH, A, 0, 0), "la-1");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_FRENCH, F, 1, 1), "fa♯0");
    CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_FRENCH, B, 2, 3), "si♯♯2");
}

/* English pitches are those of the data. */
static void english_pitches_are_those_of_the_data(void)
{
    for (int step = 0; step < 7; step++)
        for (int alter = -2; alter <= 2; alter++) {
            char text[SPZ_PITCH_TEXT];
            spz_pitch pitch = {.step = (signed char)step, .alter = (signed char)alter, .octave = 4, .midi = 60};
            CU_ASSERT_STRING_EQUAL(pitch_in(SPZ_ENGLISH, step, alter, 4), spz_pitch_text(pitch, text));
        }
}

static void a_doubt_is_said_in_three_languages(void)
{
    const spz_doubt low = {.fault = SPZ_FAULT_OUT_OF_RANGE, .pitch = {.step = 6, .octave = 2, .midi = 47}, .range = 1, .count = 3};
    const spz_doubt ends = {.fault = SPZ_FAULT_PART_ENDS, .count = 1, .of = 2}, short_bar = {.fault = SPZ_FAULT_BAR_OF_PART, .holds = {7, 2}, .asks = {4, 1}};
    const spz_doubt open = {.fault = SPZ_FAULT_DIVISION_OPEN, .name = "div."};
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_ENGLISH, low), "B2 is out of the range of the viola, the first of 3 such notes");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_GERMAN, low), "das H liegt außerhalb des Tonumfangs der Bratsche, das erste von 3 solchen Tönen");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_FRENCH, low), "le si1 sort de l'étendue de l'alto\u00A0; c'est la première de 3 notes dans ce cas");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_ENGLISH, ends), "ends here, after 1 bar; the longest part has 2");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_GERMAN, ends), "endet hier, nach 1 Takt; die längste Stimme hat 2");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_ENGLISH, short_bar), "holds 7/2 crotchets instead of 4");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_FRENCH, short_bar), "compte 7/2 noires au lieu de 4");
    const spz_doubt lapsed = {.fault = SPZ_FAULT_DIVISION_OPEN, .name = "divisi", .other = "37"};
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_ENGLISH, lapsed), "divided from here ('divisi') with no word that ends it; taken to end with bar 37");
    CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_GERMAN, open), "ab hier geteilt („div.“) bis zum Schluss; kein Wort hebt es auf");
}

static void hear(void *context, const spz_message *message)
{
    snprintf(context, 400, "%s", message->text);
}

/* A message about a fault is what the English document says of it; so is its name in data what the phrase is called by. */
static void messages_and_documents_say_the_same(void)
{
    for (int fault = SPZ_NO_FAULT + 1; fault < SPZ_FAULT_COUNT; fault++) {
        const spz_doubt doubt = {.fault = (spz_fault)fault, .name = "Viola", .other = "Va staff 3", .count = 5};
        char heard[400] = "";
        const spz_sink sink = {hear, heard};
        CU_ASSERT_TRUE(*spz_fault_name((spz_fault)fault));
        if (fault > SPZ_FAULT_NO_SECTION) /* never sent as a message */
            continue;
        message_fault(&sink, &(spz_message){.fault = doubt.fault, .name = doubt.name, .other = doubt.other, .count = doubt.count});
        CU_ASSERT_STRING_EQUAL(heard, doubt_in(SPZ_ENGLISH, doubt));
    }
    CU_ASSERT_STRING_EQUAL(spz_fault_name(SPZ_FAULT_CHORD_NOTE_ALONE), "chord-note-alone");
    CU_ASSERT_STRING_EQUAL(spz_fault_name(SPZ_FAULT_NEVER_PLAYED), "never-played");
    CU_ASSERT_STRING_EQUAL(spz_fault_name(SPZ_FAULT_COUNT), "");
}

/* The instruments of the phrases stand in the order of the ranges. */
static void every_instrument_has_its_name(void)
{
    for (size_t i = 0; i < spz_range_count(); i++) {
        const spz_doubt doubt = {.fault = SPZ_FAULT_OUT_OF_RANGE, .pitch = {.midi = 20}, .range = i, .count = 1};
        char expected[80];
        snprintf(expected, sizeof expected, "C0 is out of the range of the %s", spz_range_at(i)->name);
        CU_ASSERT_STRING_EQUAL(doubt_in(SPZ_ENGLISH, doubt), expected);
    }
}

static const struct Statement statements[] = {
    STATEMENT(a_pitch_is_written_as_in_the_country),
    STATEMENT(english_pitches_are_those_of_the_data),
    STATEMENT(a_doubt_is_said_in_three_languages),
    STATEMENT(messages_and_documents_say_the_same),
    STATEMENT(every_instrument_has_its_name),
};
void suite_doubt_words(void) { suite_of("doubt words", statements, COUNT(statements)); }
