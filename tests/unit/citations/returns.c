/* What is heard again is a return, in whatever key and whoever joins in. */
#include "citations/citation_facts.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>

/* The firsts call and the seconds answer in bars 1-2, and again in bars 5 and `again`, a fifth lower. */
static bool comes_again(const char *seconds, int again, spz_kind kind)
{
    char notation[800];
    snprintf(notation, sizeof notation, "time: 4/4\nViolin I: g5:e a5 b5 g5 d6:q d6 | R | R | R | c5:e d5 e5 c5 g5:q g5 | R | R\n"
                                        "Violin II: R | g4:e a4 b4 g4 d5:q d5 | R | R | %s\nViola: R | R | R | R | c4:e d4 e4 c4 g4:q g4 | R | R\n", seconds);
    SheetMusic music = sheet_music(notation);
    spz_movement_reading reading = first_movement(&music);
    spz_ticks whole = 4 * reading.movement->per_crotchet;
    spz_link links[4] = {{1, 0, 0}, {2, whole, 1}, {5, 4 * whole, 4}, {2, again * whole, (size_t)again}};
    spz_entry entries[4];
    for (size_t i = 0; i < 4; i++)
        entries[i] = (spz_entry){.players = links[i].players, .link = i % 2, .leader = i % 2, .onset = links[i].enters, .end = links[i].enters + whole, .answer = i % 2};
    spz_passage one = {.kind = SPZ_EXCHANGE, .onset = 0, .links = links, .link_count = 2, .entries = entries, .entry_count = 2}, two = one;
    two = (spz_passage){.kind = kind, .onset = 4 * whole, .links = links + 2, .link_count = 2, .entries = entries + 2, .entry_count = 2};
    bool found = passages_twins(reading.sections, &one, &two);
    CU_ASSERT_FALSE(passages_twins(reading.sections, &two, &one));
    sheet_music_end(&music);
    return found;
}

static void a_return_is_known_by_the_notes_of_call_and_answer(void)
{
    static const char same[] = "R | c4:e d4 e4 c4 g4:q g4 | R";
    CU_ASSERT_TRUE(comes_again(same, 5, SPZ_EXCHANGE));
    CU_ASSERT_TRUE(comes_again(same, 5, SPZ_IMITATION));
    CU_ASSERT_FALSE(comes_again(same, 5, SPZ_HOCKET));
    CU_ASSERT_FALSE(comes_again("R | g4:e f4 e4 g4 c4:q c4 | R", 5, SPZ_EXCHANGE));
    CU_ASSERT_FALSE(comes_again("R | R | c4:e d4 e4 c4 g4:q g4", 6, SPZ_EXCHANGE)); /* answered later */
}

void suite_returns(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_return_is_known_by_the_notes_of_call_and_answer),
    };
    suite_of("returns", statements, COUNT(statements));
}
