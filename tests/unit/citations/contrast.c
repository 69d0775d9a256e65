/* A tune that two sections share in one place and one section has whole in another is told with both places. */
#include "citations/contrast.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>

/* Bars 1-4: the violins share eight notes; bars 13-16: the cellos have them whole, an octave lower, with the last note as given. */
static const char shared_and_whole[] =
    "title: Shared and whole\ntime: 4/4  tempo: q=96\n"
    "Violin I:    c5:q d5 e5 g5 | R | f5:q g5 a5 c6 | R | R*8 | R*4 | c5:w\n"
    "Violin II:   R | g5:q f5 e5 d5 | R | c6:q b5 a5 g5 | R*8 | R*4 | c4:w\n"
    "Viola:       R*4 | R*8 | R*4 | c4:w\n"
    "Violoncello: R*4 | R*8 | c4:q %s e4 g4 | g4:q f4 e4 d4 | f4:q g4 a4 c5 | c5:q b4 a4 %s | c3:w\n";

static bool contrast_with(const char *second, const char *last, Contrast *out)
{
    char notation[1200];
    bool found = false;
    snprintf(notation, sizeof notation, shared_and_whole, second, last);
    SheetMusic music = sheet_music(notation);
    spz_movement_reading reading = first_movement(&music);
    for (size_t i = 0; i < spz_findings_count(reading.findings) && !found; i++)
        found = contrast_of(reading.sections, spz_findings_at(reading.findings, i), out);
    sheet_music_end(&music);
    return found;
}

static void a_shared_tune_is_found_whole(void)
{
    Contrast whole;
    CU_ASSERT_TRUE_FATAL(contrast_with("d4", "g4", &whole));
    CU_ASSERT_EQUAL(whole.group, 3);
    CU_ASSERT_EQUAL(whole.first, 12);
    CU_ASSERT_EQUAL(whole.last, 15);
    CU_ASSERT_EQUAL(whole.steps, -7);
}

static void another_note_is_another_tune(void)
{
    Contrast whole;
    CU_ASSERT_FALSE(contrast_with("f4", "e4", &whole));
    CU_ASSERT_TRUE_FATAL(contrast_with("f4", "g4", &whole)); /* call and answer, from another step of the scale */
    CU_ASSERT_EQUAL(whole.first, 14);
    CU_ASSERT_EQUAL(whole.steps, -4);
}

static void call_and_answer_alone_are_known_again(void)
{
    Contrast whole;
    CU_ASSERT_TRUE_FATAL(contrast_with("d4", "e4", &whole)); /* the end goes another way */
    CU_ASSERT_EQUAL(whole.first, 12);
    CU_ASSERT_EQUAL(whole.last, 13);
}

/* Deutsch's scale, shared out by two sections in bars 1 and 2, and what the seconds play in bars 4 and 5. */
static bool scale_is_whole(const char *later, Contrast *out)
{
    char notation[400];
    const spz_passage *split = NULL;
    snprintf(notation, sizeof notation, "time: 4/4  tempo: q=120\nViolin I: c5 d4 a4 f4 | f4 a4 d4 c5 | R | R | R\nViolin II: c4 b4 e4 g4 | g4 e4 b4 c4 | R | %s\n", later);
    SheetMusic music = sheet_music(notation);
    spz_movement_reading reading = first_movement(&music);
    for (size_t i = 0; i < spz_findings_count(reading.findings); i++)
        if (spz_findings_at(reading.findings, i)->kind == SPZ_SPLIT_LINE)
            split = spz_findings_at(reading.findings, i);
    CU_ASSERT_PTR_NOT_NULL_FATAL(split);
    bool found = contrast_of(reading.sections, split, out);
    sheet_music_end(&music);
    return found;
}

static void a_line_shared_out_note_by_note_is_found_whole_by_the_steps_of_the_staff(void)
{
    Contrast whole;
    CU_ASSERT_TRUE_FATAL(scale_is_whole("g5 f5 e5 d5 | d5 e5 f5 g5", &whole));
    CU_ASSERT_EQUAL(whole.group, 1);
    CU_ASSERT_EQUAL(whole.first, 3);
    CU_ASSERT_EQUAL(whole.last, 4);
    CU_ASSERT_FALSE(scale_is_whole("g5 f5 e5 d5 | d5:h e5 ", &whole)); /* another rhythm */
    CU_ASSERT_FALSE(scale_is_whole("g5 f5 e5 f5 | d5 e5 f5 g5", &whole));
}

static const struct Statement statements[] = {
    STATEMENT(a_shared_tune_is_found_whole),
    STATEMENT(another_note_is_another_tune),
    STATEMENT(call_and_answer_alone_are_known_again),
    STATEMENT(a_line_shared_out_note_by_note_is_found_whole_by_the_steps_of_the_staff),
};

void suite_contrast(void)
{
    suite_of("contrast", statements, COUNT(statements));
}
