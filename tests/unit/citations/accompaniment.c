/* A dialogue under somebody else's tune is an accompaniment, and no usual citation. */
#include "citations/accompaniment.h"
#include "citations/citation_facts.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

/* The violins hand a figure to and fro; bars 1-8 are theirs, and whatever the cellos and the oboe play. */
static const char music_with[] = "title: To and fro\ntime: 4/4  tempo: q=96\n"
                                 "Oboe:        %s | R*8\n"
                                 "Violin I:    c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R | R*8\n"
                                 "Violin II:   R | c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R | c5:e d5 e5 c5 g5:q r | R*8\n"
                                 "Viola:       R*8 | R*8\n"
                                 "Violoncello: %s | R*8\n";
static const char silence[] = "R*8";
static const char tune[] = "a3:q. b3:e d4:h | f4:q. d4:e b3:h | a3:q. f3:e b3:h | f3:w | a3:q. b3:e d4:h | f4:q. d4:e b3:h | a3:q. f3:e b3:h | f3:w";
static const char high_tune[] = "a5:q. b5:e d6:h | f6:q. d6:e b5:h | a5:q. f5:e b5:h | f5:w | a5:q. b5:e d6:h | f6:q. d6:e b5:h | a5:q. f5:e b5:h | f5:w";
static const char held[] = "a3:w | a3:w | a3:w | a3:w | a3:w | a3:w | a3:w | a3:w";
static const char along[] = "c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r | "
                            "c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r | c4:e d4 e4 c4 g4:q r";

static SheetMusic music(const char *oboe, const char *cellos)
{
    char notation[2400];
    snprintf(notation, sizeof notation, music_with, oboe, cellos);
    return sheet_music(notation);
}

static OtherTune others_in(const char *oboe, const char *cellos)
{
    SheetMusic sheet = music(oboe, cellos);
    spz_movement_reading reading = first_movement(&sheet);
    OtherTune others = tune_of_others(reading.sections, (spz_players)3, 0, 32 * reading.movement->per_crotchet);
    sheet_music_end(&sheet);
    return others;
}

static void a_tune_of_others_sounds_and_moves_and_is_their_own(void)
{
    CU_ASSERT_EQUAL(others_in(silence, silence).most, 0);
    OtherTune low = others_in(silence, tune), high = others_in(high_tune, silence);
    CU_ASSERT_DOUBLE_EQUAL(low.most, 1, 1e-9);
    CU_ASSERT_EQUAL(low.above, 0);
    CU_ASSERT_EQUAL(low.values, 4);
    CU_ASSERT_DOUBLE_EQUAL(high.above, 1, 1e-9);
    CU_ASSERT_EQUAL(others_in(silence, held).most, 0);  /* never moves */
    CU_ASSERT_EQUAL(others_in(silence, along).most, 0); /* plays what the violins have */
}

/* Exchanges among the few, each of the strength given. */
static size_t exchanges_picked(const char *oboe, const char *cellos, double strength)
{
    SheetMusic sheet = music(oboe, cellos);
    spz_movement_reading reading = first_movement(&sheet);
    PlaceInFindings places = {0};
    size_t exchanges = 0;
    for (size_t i = 0; i < spz_findings_count(reading.findings); i++)
        ((spz_passage *)spz_findings_at(reading.findings, i))->strength = strength;
    CU_ASSERT_EQUAL_FATAL(notes_pick(&reading, 0.5, 6, &places), SPZ_OK);
    for (size_t i = 0; i < places.count; i++)
        exchanges += spz_findings_at(reading.findings, places.at[i])->kind == SPZ_EXCHANGE;
    array_free(&places);
    sheet_music_end(&sheet);
    return exchanges;
}

static void an_accompaniment_is_not_among_the_few(void)
{
    CU_ASSERT_EQUAL(exchanges_picked(silence, silence, 0.95), 1);
    CU_ASSERT_EQUAL(exchanges_picked(silence, held, 0.95), 1);
    CU_ASSERT_EQUAL(exchanges_picked(silence, tune, 0.95), 0);
    CU_ASSERT_EQUAL(exchanges_picked(high_tune, silence, 0.95), 0);
    CU_ASSERT_EQUAL(exchanges_picked(silence, silence, 0.85), 1);
    CU_ASSERT_EQUAL(exchanges_picked("a5:h b5 | d6:h f6 | R | R | a5:h b5 | d6:h g6 | R | a5:w", silence, 0.85), 0); /* a tune with rests, above what is not sure */
    CU_ASSERT_EQUAL(exchanges_picked("a5:h b5 | d6:h f6 | R | R | a5:h b5 | d6:h g6 | R | a5:w", silence, 0.95), 1);
}

void suite_accompaniment(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_tune_of_others_sounds_and_moves_and_is_their_own),
        STATEMENT(an_accompaniment_is_not_among_the_few),
    };
    suite_of("accompaniments", statements, COUNT(statements));
}
