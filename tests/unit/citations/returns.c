/* What is heard again is a return, in whatever key and whoever joins in; what is heard after a long break is something else. */
#include "citations/citation_facts.h"
#include "support/scores/evening.h"
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

/* Firsts and seconds in bars 1 and 2, the seconds and the firsts with something else in bars 8 and 9: one passage in the list. */
static void the_rest_behind_a_long_break_is_cited_by_itself_where_there_is_room(void)
{
    SheetMusic music = sheet_music("time: 4/4\nViolin I: g5:e a5 b5 g5 d6:q d6 | R | R*6 | c5:q d5 e5 f5\n"
                                   "Violin II: R | g4:e a4 b4 g4 d5:q d5 | R*5 | c4:q d4 e4 f4 | R\n");
    spz_movement_reading reading = first_movement(&music);
    Evening evening;
    spz_ticks whole = 4 * reading.movement->per_crotchet;
    static const size_t bars[4] = {0, 1, 7, 8}, who[4] = {0, 1, 1, 0};
    spz_entry entries[4];
    spz_link links[2] = {{1, 0, 0}, {2, whole, 1}};
    evening_begin(&evening, 20);
    spz_passage *passage = evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 9, 0.95);
    for (size_t i = 0; i < 4; i++)
        entries[i] = (spz_entry){.players = (spz_players)1 << who[i], .link = who[i], .leader = who[i], .bar = bars[i], .onset = (spz_ticks)bars[i] * whole,
                                 .end = (spz_ticks)(bars[i] + 1) * whole, .answer = i % 2};
    passage->onset = 0;
    passage->end = 9 * whole;
    passage->entries = entries;
    passage->entry_count = 4;
    passage->links = links;
    passage->link_count = 2;
    passage->sides[0].players = 1;
    passage->sides[1].players = 2;
    reading.findings = &evening.findings;
    for (size_t most = 0; most <= 2; most++) {
        NotesRun run = {0};
        MovementNotes notes;
        spz_note_options options = {.strength = 0.5, .citations = most};
        CU_ASSERT_EQUAL_FATAL(notes_of(&reading, &options, &run, &notes), SPZ_OK);
        CU_ASSERT_EQUAL_FATAL(notes.citations.count, most == 1 ? 1 : 2);
        CU_ASSERT_EQUAL(notes.citations.at[0].last, 1);
        CU_ASSERT_TRUE(most == 1 || (notes.citations.at[1].passage->first == 7 && notes.citations.at[1].last == 8 && notes.citations.at[1].told[0].players == 2));
        notes_free(&notes);
    }
    evening_end(&evening);
    sheet_music_end(&music);
}

void suite_returns(void)
{
    static const struct Statement statements[] = {
        STATEMENT(the_rest_behind_a_long_break_is_cited_by_itself_where_there_is_room),
        STATEMENT(a_return_is_known_by_the_notes_of_call_and_answer),
    };
    suite_of("returns", statements, COUNT(statements));
}
