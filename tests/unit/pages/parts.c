/* What the librarian reads for each part. */
#include "advice/parts_advice.h"
#include "wording/papers/advice_words.h"
#include "wording/papers/desk_words.h"
#include "support/scores/evening.h"
#include "support/memory.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char dialogue[] =
    "title: Calls <script>alert(1)</script>\ntime: 4/4  tempo: q=96\n"
    "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\nContrabass: c3:w | R*7\n";

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
    CU_ASSERT_PTR_NULL(strstr(html, "http:"));
    CU_ASSERT_PTR_NULL(strstr(html, "https:"));
    CU_ASSERT_PTR_NOT_NULL(strstr(html, "\"default-src 'none'; img-src data:; style-src 'unsafe-inline'\"")); /* nothing is fetched, nothing run */
    CU_ASSERT_EQUAL(count_of(html, "<section"), count_of(html, "</section>"));
    CU_ASSERT_EQUAL(count_of(html, "<tr"), count_of(html, "</tr>"));
    free(html);
    sheet_music_end(&music);
}

static void the_same_score_gives_the_same_sheet(void)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
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

static char said[400];

static const char *taken(Buffer *words)
{
    snprintf(said, sizeof said, "%s", words->text ? words->text : "");
    buffer_free(words);
    return said;
}

static const char *desks_of(spz_section section, int players, int lines)
{
    spz_allotment *allotment;
    Buffer words;
    buffer_init(&words);
    CU_ASSERT_EQUAL_FATAL(spz_allotment_make(section, players, lines, 0, SPZ_SHARE_USUAL, &allotment), SPZ_OK);
    words_lines_desks(SPZ_ENGLISH, allotment, section, &words);
    spz_allotment_free(allotment);
    return taken(&words);
}

static void desks_of_a_division_are_named_line_by_line(void)
{
    CU_ASSERT_STRING_EQUAL(desks_of(SPZ_VA, 10, 2), "line 1 (top): outside players of desks 1-5; line 2: inside players of desks 1-5");
    CU_ASSERT_STRING_EQUAL(desks_of(SPZ_VC, 6, 3), "line 1 (top): desk 1; line 2: desk 2; line 3: desk 3");
    CU_ASSERT_STRING_EQUAL(desks_of(SPZ_VN1, 8, 4),
                           "line 1 (top): outside players of desks 1, 3; line 2: inside players of desks 1, 3; "
                           "line 3: outside players of desks 2, 4; line 4: inside players of desks 2, 4");
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

/* The violas divide for four bars, and their part's page ends behind the second. */
static const char turned[] = "time: 4/4  tempo: q=96\n%s"
                             "Viola: %s\"div.\" c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | %sc4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4"
                             " | \"unis.\" c4:w | d4\n";

static char *turned_sheet(const char *others, const char *first_page, const char *page, spz_format format, const spz_settings *settings)
{
    char notation[1000];
    snprintf(notation, sizeof notation, turned, others, first_page, page);
    SheetMusic music = sheet_music(notation);
    const spz_reading *readings[] = {music.reading};
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_sheet_parts(readings, 1, settings, NULL, format, &document), SPZ_OK);
    char *text = text_of(document, NULL);
    sheet_music_end(&music);
    return text;
}

static void a_page_that_is_turned_in_a_division_is_open_to_dispute(void)
{
    static const struct {
        const char *others, *first_page, *page, *cells, *words;
    } cases[] = {
        {"", "{page 1} ", "{page} ", ",part,3,2,", "the page turns at bar 3; the inside player turns and line 2 is missing"},
        {"", "", "{page} ", ",part,3,2,", "a page ends before bar 3; where it is turned, the inside player turns and line 2 is missing"},
        {"", "{page 2} ", "{page} ", ",part,,,", "The pages that the file tells are those of the parts."}, /* from a left-hand page to the right-hand one */
        {"", "", "", ",none,,,", "The file tells no page turns"},
        {"Violin I: c5:w | c5 | {page} c5 | c5 | c5 | c5\n", "", "{page} ", ",score,,,", "The pages that the file tells are those of the score"},
        {"Violin I: c5:w | c5 | c5 | c5 | {page} c5 | c5\n", "", "{page} ", ",part,3,2,", "a page ends before bar 3"}, /* each part has its own pages */
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char *csv = turned_sheet(cases[i].others, cases[i].first_page, cases[i].page, SPZ_AS_CSV, NULL);
        char *html = turned_sheet(cases[i].others, cases[i].first_page, cases[i].page, SPZ_AS_HTML, NULL);
        CU_ASSERT_PTR_NOT_NULL(strstr(csv, cases[i].cells));
        CU_ASSERT_PTR_NOT_NULL(strstr(html, cases[i].words));
        CU_ASSERT_EQUAL(count_of(html, "Open to dispute"), strstr(cases[i].cells, ",3,2,") ? 1 : 0);
        free(csv);
        free(html);
    }
}

static void by_desk_no_line_is_missing_while_a_page_is_turned(void)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "divisi.violas", "by desk", NULL), SPZ_OK);
    char *text = turned_sheet("", "{page 1} ", "{page} ", SPZ_AS_TEXT, settings);
    CU_ASSERT_PTR_NULL(strstr(text, "Open to dispute"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "violas by desk")); /* the habit is told */
    free(text);
    text = turned_sheet("", "", "", SPZ_AS_TEXT, settings);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The file tells no page turns.\n"));
    CU_ASSERT_PTR_NULL(strstr(text, "is missing"));
    free(text);
    spz_settings_free(settings);
}

static void too_few_players_are_a_warning_with_both_numbers(void)
{
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(settings, "players.violas", "1", NULL), SPZ_OK);
    char *text = turned_sheet("", "", "", SPZ_AS_TEXT, settings), *json = turned_sheet("", "", "", SPZ_AS_JSON, settings);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "! Too few players: violas in 2 lines take at least 2 players, and there is 1 (bar 1)."));
    CU_ASSERT_PTR_NOT_NULL(strstr(json, "\"players_needed\": 2"));
    CU_ASSERT_PTR_NOT_NULL(strstr(json, "\"players_there\": 1"));
    free(text);
    free(json);
    spz_settings_free(settings);
}

static void the_boxes_count_the_stands_of_each_orchestra(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I (orchestra 1):  c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
                                   "Violin II (orchestra 1): c4:w | c4 | c4 | c4 | c4 | c4 | c4 | c4\n"
                                   "Violin I (orchestra 2):  R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
                                   "Violin II (orchestra 2): c4:w | c4 | c4 | c4 | c4 | c4 | c4 | c4\n");
    char *html = sheet(&music, SPZ_AS_HTML, NULL);
    CU_ASSERT_EQUAL(spz_sections_group(first_movement(&music).sections, 0)->orchestra, 1);
    CU_ASSERT_PTR_NOT_NULL(strstr(html, "7 chairs and 4 stands")); /* of 14 first violins */
    CU_ASSERT_PTR_NULL(strstr(html, "14 chairs"));
    free(html);
    sheet_music_end(&music);
}

static const char *pass_of(const spz_movement *movement, size_t bar)
{
    Buffer words;
    buffer_init(&words);
    advice_pass_words(SPZ_ENGLISH, advice_pass(movement, bar), &words);
    return taken(&words);
}

static void a_repeated_bar_says_which_time_is_meant(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I: c5:w | |: d5 | e5 |1. f5 :|2. g5 || a5\n"
                                   "Violin II: c5:w | d5 | e5 | f5 | g5 | a5\n");
    const spz_movement *movement = first_movement(&music).movement;
    CU_ASSERT_STRING_EQUAL(pass_of(movement, 0), "");
    CU_ASSERT_STRING_EQUAL(pass_of(movement, 1), "both times");
    CU_ASSERT_STRING_EQUAL(pass_of(movement, 3), "first time");
    CU_ASSERT_STRING_EQUAL(pass_of(movement, 4), "second time");
    CU_ASSERT_STRING_EQUAL(pass_of(movement, 5), "");
    sheet_music_end(&music);
}

/* What the advice comes to in a language. */
static const char *written(const Evening *evening, spz_language language, Advice advice)
{
    Speaker speaker = {language, &evening->map};
    Buffer words;
    buffer_init(&words);
    advice_words(&speaker, &advice, &words);
    return taken(&words);
}

static void a_player_in_a_chain_is_told_of_both_neighbours(void)
{
    enum { FIRSTS = 1, SECONDS = 2, VIOLAS = 4, CELLOS = 8 };
    const spz_link links[] = {{.players = FIRSTS}, {.players = SECONDS}, {.players = VIOLAS | CELLOS}};
    spz_passage passage = {.kind = SPZ_EXCHANGE, .links = links, .link_count = COUNT(links)};
    Evening evening;
    evening_begin(&evening, 4);
    Advice lead = {.kind = ADVICE_LEAD, .group = 0, .passage = &passage, .after = SECONDS};
    Advice middle = {.kind = ADVICE_ANSWER, .group = 1, .passage = &passage, .before = FIRSTS, .after = VIOLAS | CELLOS};
    Advice last = {.kind = ADVICE_ANSWER, .group = 2, .passage = &passage, .before = SECONDS, .with = CELLOS};
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_ENGLISH, lead), "lead, Vn II answers");
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_ENGLISH, middle), "after Vn I, before Va + Vc");
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_ENGLISH, last), "with Vc: answer Vn II");
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_GERMAN, last), "mit Vc: antworten auf Vl.\u00a0II");
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_FRENCH, lead), "mener, Vl.\u00a0II répond");
    passage.kind = SPZ_IMITATION;
    lead.across = true;
    CU_ASSERT_STRING_EQUAL(written(&evening, SPZ_ENGLISH, lead), "lead, Vn II follows across the stage");
    evening_end(&evening);
}

static void who_enters_together_leads_together(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I:    R | <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | c6:w\n"
                                   "Violin II:   R | <f> g4:q. a4:e b4:q d5 | R | a4:q. b4:e c5:q e5 | R | c5:w\n"
                                   "Viola:       R | d4:w | d4 | e4 | e4 | g4\n"
                                   "Violoncello: R | R | <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | c3:w\n");
    char *csv = sheet(&music, SPZ_AS_CSV, "violins together, violas outside");
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn I,Violin I,2,1,1,,,4,lead,\"with Vn II: lead, Vc answers\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn II,Violin II,2,1,1,,,4,lead,\"with Vn I: lead, Vc answers\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vc,Violoncello,3,2,1,,,5,answer,answer the violins,"));
    CU_ASSERT_EQUAL(count_of(csv, ",coupling,"), 0); /* that they move together is said already */
    free(csv);
    sheet_music_end(&music);
}

/* Four players sit a step from each other: no stage lies between them, and no section. */
static void a_quartet_is_spoken_of_as_four_players(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
                                   "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
                                   "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
                                   "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_reading *readings[] = {music.reading};
    spz_document *document = NULL;
    spz_sheet_options options = SPZ_SHEET_USUAL;
    char *parts = sheet(&music, SPZ_AS_TEXT, "violins opposed, cellos inside left");
    CU_ASSERT_PTR_NULL(strstr(parts, "across"));
    free(parts);
    CU_ASSERT_EQUAL_FATAL(spz_sheet_rehearsal(readings, 1, NULL, &options, SPZ_AS_TEXT, &document), SPZ_OK);
    char *rehearsal = text_of(document, NULL);
    CU_ASSERT_PTR_NOT_NULL(strstr(rehearsal, "First violin's"));
    CU_ASSERT_PTR_NULL(strstr(rehearsal, "desk"));
    CU_ASSERT_PTR_NULL(strstr(rehearsal, "violins'"));
    free(rehearsal);
    sheet_music_end(&music);
}

static void across_the_stage_are_all_of_them_or_it_is_not_said(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I:    R | <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | c6:w\n"
                                   "Violin II:   R | <f> g4:q. a4:e b4:q d5 | R | a4:q. b4:e c5:q e5 | R | c5:w\n"
                                   "Viola:       R | d4:w | d4 | e4 | e4 | g4\n"
                                   "Violoncello: R | R | <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | c3:w\nContrabass:  R*5 | c3:w\n");
    char *csv = sheet(&music, SPZ_AS_CSV, "violins together, cellos outside");
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn I,Violin I,2,1,1,,,4,lead,\"with Vn II: lead, Vc answers across the stage\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vn II,Violin II,2,1,1,,,4,lead,\"with Vn I: lead, Vc answers\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",Vc,Violoncello,3,2,1,,,5,answer,answer the violins,"));
    free(csv);
    sheet_music_end(&music);
}

/* Each orchestra has one edge of the stage, and its first violins sit there. */
static void the_first_violins_of_two_orchestras_sit_across_the_stage(void)
{
    SheetMusic music = sheet_music("time: 4/4  key: 0  tempo: q=96\n"
                                   "Violin I, first orchestra:   R | g5:e( a5 b5 c6) g5:q r | R | a5:e( b5 c6 d6) a5:q r | R | c6:w\n"
                                   "Violin II, first orchestra:  R | c5:w | c5 | d5 | d5 | c5\nViola, first orchestra: R | e4:w | e4 | f4 | f4 | e4\n"
                                   "Violin I, second orchestra:  R | R | g5:e( a5 b5 c6) g5:q r | R | a5:e( b5 c6 d6) a5:q r | c6:w\n"
                                   "Violin II, second orchestra: R | c5:w | c5 | d5 | d5 | c5\nViola, second orchestra: R | e4:w | e4 | f4 | f4 | e4\n");
    char *csv = sheet(&music, SPZ_AS_CSV, "violins together, cellos outside");
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",\"lead, Vn I (orchestra 2) answers across the stage\","));
    CU_ASSERT_PTR_NOT_NULL(strstr(csv, ",answer Vn I (orchestra 1) across the stage,"));
    free(csv);
    sheet_music_end(&music);
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

/* One request alone is refused: no sheet, or the whole one. */
static void a_sheet_hides_no_shortage_of_memory(void)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML};
    SheetMusic music = sheet_music(dialogue);
    const spz_reading *readings[] = {music.reading};
    for (size_t i = 0; i < COUNT(formats); i++) {
        char *whole = sheet(&music, formats[i], NULL);
        bool refused = true;
        for (long request = 1; refused && request < 10000; request++) {
            spz_document *document = NULL;
            memory_refuse_once(request);
            spz_status status = spz_sheet_parts(readings, 1, NULL, NULL, formats[i], &document);
            refused = memory_refuse_once(0);
            CU_ASSERT_EQUAL(status, document ? SPZ_OK : SPZ_NO_MEMORY);
            CU_ASSERT_TRUE(!document || strcmp(spz_document_text(document, NULL), whole) == 0);
            spz_document_free(document);
        }
        CU_ASSERT_FALSE(refused);
        free(whole);
    }
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
        STATEMENT(a_page_that_is_turned_in_a_division_is_open_to_dispute),
        STATEMENT(by_desk_no_line_is_missing_while_a_page_is_turned),
        STATEMENT(too_few_players_are_a_warning_with_both_numbers),
        STATEMENT(the_boxes_count_the_stands_of_each_orchestra),
        STATEMENT(a_repeated_bar_says_which_time_is_meant),
        STATEMENT(a_player_in_a_chain_is_told_of_both_neighbours),
        STATEMENT(who_enters_together_leads_together),
        STATEMENT(across_the_stage_are_all_of_them_or_it_is_not_said), STATEMENT(a_quartet_is_spoken_of_as_four_players),
        STATEMENT(the_first_violins_of_two_orchestras_sit_across_the_stage),
        STATEMENT(a_score_without_strings_has_an_empty_sheet),
        STATEMENT(when_memory_ends_there_is_no_sheet),
        STATEMENT(a_sheet_hides_no_shortage_of_memory),
    };
    suite_of("librarian's sheets", statements, COUNT(statements));
}
