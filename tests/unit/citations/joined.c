/* A fugato that the list of passages has in pieces is one citation. */
#include "citations/citation_facts.h"
#include "support/scores/evening.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"

#define SUBJECT "c5:e d5 e5 f5 g5:q e5"
#define LOWER "c4:e d4 e4 f4 g4:q e4"
static const char fugato[] = "time: 4/4\nViolin I: R | R | R | " SUBJECT "\nViolin II: R | R | " LOWER " | c4:w\n"
                             "Viola: R | " LOWER " | c4:w | c4:w\nVioloncello: " LOWER " | c3:w | c3:w | c3:w\n";
enum { VN1, VN2, VA, VC };

/* Two who enter one bar after the other, the first in `bar`. */
static void piece(Evening *evening, spz_entry entries[2], spz_link links[2], size_t call, size_t answer, size_t bar, double strength, spz_ticks whole)
{
    size_t who[2] = {call, answer};
    spz_passage *passage = evening_passage(evening, SPZ_IMITATION, SPZ_VN1, SPZ_VN2, bar + 1, bar + 2, strength);
    for (size_t i = 0; i < 2; i++) {
        links[i] = (spz_link){(spz_players)1 << who[i], (spz_ticks)(bar + i) * whole, bar + i};
        entries[i] = (spz_entry){.players = links[i].players, .link = i, .leader = who[i], .onset = links[i].enters, .end = links[i].enters + whole,
                                 .bar = links[i].bar, .answer = i == 1};
    }
    passage->entries = entries;
    passage->links = links;
    passage->entry_count = passage->link_count = 2;
    passage->onset = links[0].enters;
    passage->end = links[1].enters + whole;
    passage->sides[0].players = links[0].players;
    passage->sides[1].players = links[1].players;
}

/* What is told of the second of three pieces, cellos to violas to seconds to firsts bar by bar, of which the last begins in `bar`. */
static Citation told_of_three(size_t bar, double strength, Joined *joined)
{
    static Evening evening;
    static spz_entry entries[3][2];
    static spz_link links[3][2];
    static Arena arena;
    SheetMusic music = sheet_music(fugato);
    spz_movement_reading reading = first_movement(&music);
    spz_ticks whole = 4 * reading.movement->per_crotchet;
    evening_begin(&evening, 20);
    arena_init(&arena);
    piece(&evening, entries[0], links[0], VC, VA, 0, 0.7, whole);
    piece(&evening, entries[1], links[1], VA, VN2, 1, 0.95, whole);
    piece(&evening, entries[2], links[2], VN2, VN1, bar, strength, whole);
    reading.findings = &evening.findings;
    CU_ASSERT_EQUAL_FATAL(citation_join(&reading, 1, 0.5, &arena, joined), SPZ_OK);
    Citation citation = {.passage = joined->passage};
    citation_tell(reading.sections, &citation);
    CU_ASSERT_EQUAL(joined->places[0], 1);
    CU_ASSERT_EQUAL(joined->passage->strength, 0.95);
    arena_release(&arena);
    evening_end(&evening);
    sheet_music_end(&music);
    return citation;
}

static void pieces_that_overlap_and_go_on_are_one(void)
{
    Joined joined;
    Citation citation = told_of_three(2, 0.7, &joined);
    CU_ASSERT_EQUAL(joined.count, 3);
    CU_ASSERT_EQUAL_FATAL(citation.told_count, 4);
    CU_ASSERT_EQUAL_FATAL(citation.heard_count, 4);
    CU_ASSERT_EQUAL(citation.told[0].players, 1 << VC);
    CU_ASSERT_EQUAL(citation.told[3].players, 1 << VN1);
    CU_ASSERT_EQUAL(citation.heard[3].change.semitones, 12);
}

static void what_begins_when_it_is_over_or_is_hardly_clear_stands_by_itself(void)
{
    Joined joined;
    CU_ASSERT_EQUAL(told_of_three(4, 0.7, &joined).told_count, 3);
    CU_ASSERT_EQUAL(joined.count, 2);
    CU_ASSERT_EQUAL(told_of_three(2, 0.55, &joined).told_count, 3);
    CU_ASSERT_EQUAL(joined.count, 2);
}

void suite_joined(void)
{
    static const struct Statement statements[] = {
        STATEMENT(pieces_that_overlap_and_go_on_are_one),
        STATEMENT(what_begins_when_it_is_over_or_is_hardly_clear_stands_by_itself),
    };
    suite_of("pieces of a fugato", statements, COUNT(statements));
}
