/* What the librarian reads for each part. */
#include "editing/parts_advice.h"
#include "wording/parts_words.h"
#include "support/evening.h"
#include "support/memory.h"
#include "support/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char dialogue[] =
    "title: Calls <script>alert(1)</script>\ntime: 4/4  tempo: q=96\n"
    "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n";

static char *sheet(const SheetMusic *music, spz_format format, const char *arrangement)
{
    const spz_reading *readings[] = {music->reading};
    spz_sheet_options options = SPZ_SHEET_USUAL;
    spz_document *document = NULL;
    options.arrangement = arrangement;
    CU_ASSERT_EQUAL_FATAL(spz_sheet_parts(readings, 1, NULL, &options, format, &document), SPZ_OK);
    return text_of(document, NULL);
}

static void the_leader_and_the_answerer_each_get_their_word(void)
{
    SheetMusic music = sheet_music(dialogue);
    char *csv = sheet(&music, SPZ_AS_CSV, "violins together, cellos outside");
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn I,Violin I,4,3,1,,,6,lead,\"lead, Vn II answers\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn II,Violin II,5,4,1,,,7,answer,answer Vn I,"));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, "\"enters in bars 4, 6; Vn II in 5, 7\""));
    free(csv);
    sheet_music_end(&music);
}

static void across_the_stage_is_said_where_they_sit_opposed(void)
{
    SheetMusic music = sheet_music(dialogue);
    char *opposed = sheet(&music, SPZ_AS_TEXT, "violins opposed, cellos inside left"), *together = sheet(&music, SPZ_AS_TEXT, "violins together, cellos outside");
    CU_ASSERT_PTR_NOT_NULL(strstr(opposed, "answer Vn I across the stage"));
    CU_ASSERT_PTR_NULL(strstr(together, "across the stage"));
    CU_ASSERT_PTR_NOT_NULL(strstr(opposed, "exits and sight lines")); /* the cautions */
    free(opposed);
    free(together);
    sheet_music_end(&music);
}

static void a_title_is_shown_as_text_in_html(void)
{
    SheetMusic music = sheet_music(dialogue);
    char *html = sheet(&music, SPZ_AS_HTML, NULL);
    CU_ASSERT_PTR_NULL(strstr(html, "<script"));
    CU_ASSERT_PTR_NOT_NULL(strstr(html, "&lt;script&gt;"));
    CU_ASSERT_PTR_NULL(strstr(html, "http")); /* nothing is fetched */
    CU_ASSERT_EQUAL(count_of(html, "<section"), count_of(html, "</section>"));
    CU_ASSERT_EQUAL(count_of(html, "<tr>"), count_of(html, "</tr>"));
    free(html);
    sheet_music_end(&music);
}

static void the_same_score_gives_the_same_sheet(void)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_CSV, SPZ_AS_HTML};
    SheetMusic music = sheet_music(dialogue);
    for (size_t i = 0; i < COUNT(formats); i++) {
        char *one = sheet(&music, formats[i], NULL), *two = sheet(&music, formats[i], NULL);
        CU_ASSERT_STRING_EQUAL(one, two);
        free(one);
        free(two);
    }
    sheet_music_end(&music);
}

static void what_cannot_be_printed_is_refused(void)
{
    spz_document *document = NULL;
    SheetMusic music = sheet_music(dialogue);
    const spz_reading *readings[] = {music.reading};
    spz_sheet_options options = SPZ_SHEET_USUAL;
    CU_ASSERT_EQUAL(spz_sheet_parts(readings, 1, NULL, NULL, SPZ_AS_SVG, &document), SPZ_BAD_ARGUMENT);
    options.arrangement = "in a heap";
    CU_ASSERT_EQUAL(spz_sheet_parts(readings, 1, NULL, &options, SPZ_AS_TEXT, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(document);
    sheet_music_end(&music);
}

static void desks_of_a_division_are_named_line_by_line(void)
{
    Arena arena;
    spz_allotment *two, *three, *four;
    arena_init(&arena);
    CU_ASSERT_EQUAL_FATAL(spz_allotment_make(SPZ_VA, 10, 2, 0, SPZ_SHARE_USUAL, &two), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_allotment_make(SPZ_VC, 6, 3, 0, SPZ_SHARE_USUAL, &three), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_allotment_make(SPZ_VN1, 8, 4, 0, SPZ_SHARE_USUAL, &four), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(parts_desks(&arena, two, SPZ_VA), "line 1 (top): outside players of desks 1-5; line 2: inside players of desks 1-5");
    CU_ASSERT_STRING_EQUAL(parts_desks(&arena, three, SPZ_VC), "line 1 (top): desk 1; line 2: desk 2; line 3: desk 3");
    CU_ASSERT_STRING_EQUAL(parts_desks(&arena, four, SPZ_VN1),
                           "line 1 (top): outside players of desks 1, 3; line 2: inside players of desks 1, 3; "
                           "line 3: outside players of desks 2, 4; line 4: inside players of desks 2, 4");
    CU_ASSERT_STRING_EQUAL(parts_desks(&arena, NULL, SPZ_VA), "");
    spz_allotment_free(two);
    spz_allotment_free(three);
    spz_allotment_free(four);
    arena_release(&arena);
}

static void a_division_ends_with_unis_unless_the_score_says_so(void)
{
    static const char divided[] = "time: 4/4  tempo: q=96\n"
                                  "Violin I:  c5:w | c5 | c5 | c5 | c5 | c5\nViolin II: c5:w | c5 | c5 | c5 | c5 | c5\n"
                                  "Viola: \"div.\" c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4"
                                  " | %sc4:w | d4\n";
    char notation[1000];
    snprintf(notation, sizeof notation, divided, "");
    SheetMusic silent = sheet_music(notation);
    snprintf(notation, sizeof notation, divided, "\"unis.\" ");
    SheetMusic spoken = sheet_music(notation);
    char *one = sheet(&silent, SPZ_AS_CSV, NULL), *two = sheet(&spoken, SPZ_AS_CSV, NULL);
    CU_ASSERT_PTR_NOT_NULL(strstr(one, ",Va,Viola,1,0,1,,,4,divide,outside and inside,")); /* 'div.' stands there already */
    CU_ASSERT_PTR_NOT_NULL(strstr(one, ",Va,Viola,5,4,1,,,,unison,unis.,"));
    CU_ASSERT_PTR_NULL(strstr(two, "unis."));
    free(one);
    free(two);
    sheet_music_end(&silent);
    sheet_music_end(&spoken);
}

static void a_repeated_bar_says_which_time_is_meant(void)
{
    char text[PASS_TEXT];
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I: c5:w | |: d5 | e5 |1. f5 :|2. g5 || a5\n"
                                   "Violin II: c5:w | d5 | e5 | f5 | g5 | a5\n");
    const spz_movement *movement = first_movement(&music).movement;
    CU_ASSERT_STRING_EQUAL(advice_pass(movement, 0, text), "");
    CU_ASSERT_STRING_EQUAL(advice_pass(movement, 1, text), "both times");
    CU_ASSERT_STRING_EQUAL(advice_pass(movement, 3, text), "first time");
    CU_ASSERT_STRING_EQUAL(advice_pass(movement, 4, text), "second time");
    CU_ASSERT_STRING_EQUAL(advice_pass(movement, 5, text), "");
    sheet_music_end(&music);
}

static void a_chain_of_three_names_both_neighbours(void)
{
    static const spz_entry entries[] = {{.leader = 0, .onset = 0}, {.leader = 1, .onset = 1}, {.leader = 2, .onset = 2}, {.leader = 0, .onset = 3}};
    spz_passage passage = {.kind = SPZ_EXCHANGE, .entries = entries, .entry_count = COUNT(entries)};
    Evening evening;
    Arena arena;
    arena_init(&arena);
    evening_begin(&evening, 4);
    ChainOrder chain = parts_chain(&passage);
    CU_ASSERT_EQUAL_FATAL(chain.count, 3);
    CU_ASSERT_STRING_EQUAL(parts_chain_words(&arena, &evening.map, &passage, &chain, 0, false), "lead, Vn II answers");
    CU_ASSERT_STRING_EQUAL(parts_chain_words(&arena, &evening.map, &passage, &chain, 1, false), "after Vn I, before Va");
    CU_ASSERT_STRING_EQUAL(parts_chain_words(&arena, &evening.map, &passage, &chain, 2, false), "answer Vn II");
    passage.kind = SPZ_IMITATION;
    CU_ASSERT_STRING_EQUAL(parts_chain_words(&arena, &evening.map, &passage, &chain, 0, true), "lead, Vn II follows across the stage");
    evening_end(&evening);
    arena_release(&arena);
}

static void a_score_without_strings_has_an_empty_sheet(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\nFlute: c5:w | d5\nOboe: c5:w | d5\n");
    char *text = sheet(&music, SPZ_AS_TEXT, NULL);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "There are no string parts to write into."));
    free(text);
    sheet_music_end(&music);
}

static void when_memory_ends_there_is_no_sheet(void)
{
    SheetMusic music = sheet_music(dialogue);
    const spz_reading *readings[] = {music.reading};
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && requests < 10000) {
        spz_document *document = NULL;
        memory_starve_after(++requests);
        status = spz_sheet_parts(readings, 1, NULL, NULL, SPZ_AS_TEXT, &document);
        memory_starve_after(0);
        CU_ASSERT_EQUAL(document == NULL, status != SPZ_OK);
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(requests > 5);
    sheet_music_end(&music);
}

void suite_parts(void)
{
    static const struct Statement statements[] = {
        STATEMENT(the_leader_and_the_answerer_each_get_their_word),
        STATEMENT(across_the_stage_is_said_where_they_sit_opposed),
        STATEMENT(a_title_is_shown_as_text_in_html),
        STATEMENT(the_same_score_gives_the_same_sheet),
        STATEMENT(what_cannot_be_printed_is_refused),
        STATEMENT(desks_of_a_division_are_named_line_by_line),
        STATEMENT(a_division_ends_with_unis_unless_the_score_says_so),
        STATEMENT(a_repeated_bar_says_which_time_is_meant),
        STATEMENT(a_chain_of_three_names_both_neighbours),
        STATEMENT(a_score_without_strings_has_an_empty_sheet),
        STATEMENT(when_memory_ends_there_is_no_sheet),
    };
    suite_of("librarian's sheets", statements, COUNT(statements));
}
