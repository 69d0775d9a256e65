/* What the writer cites: which passages, when they sound, and how it is said. */
#include "wording/papers/notes_words.h"
#include "support/scores/evening.h"
#include "support/memory.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool about(double seconds, double expected)
{
    return fabs(seconds - expected) < 1e-6;
}

static double begins(const SheetMusic *music, size_t bar, size_t pass, double lasts)
{
    const spz_movement *movement = first_movement(music).movement;
    return spz_movement_sounding(movement, bar, movement->bars[bar].onset, pass, lasts);
}

static void a_bar_lasts_as_long_as_its_tempo_says(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=60\nViolin I: c5:w | d5 | {tempo q=120} e5 | f5\nViolin II: c5:w | d5 | e5 | f5\n");
    CU_ASSERT_TRUE(about(begins(&music, 0, 0, 0), 0));
    CU_ASSERT_TRUE(about(begins(&music, 2, 0, 0), 8));
    CU_ASSERT_TRUE(about(begins(&music, 3, 0, 0), 10));
    CU_ASSERT_TRUE(about(spz_movement_duration(first_movement(&music).movement), 12));
    sheet_music_end(&music);
}

static void tempo_may_change_within_a_bar(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=60\nViolin I: c5:h {tempo q=120} d5:h | e5:w\nViolin II: c5:w | e5\n");
    CU_ASSERT_TRUE(about(begins(&music, 1, 0, 0), 3));
    sheet_music_end(&music);
}

static void a_repeated_bar_sounds_twice(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=60\nViolin I: |: c5:w | d5 :| e5\nViolin II: c5:w | d5 | e5\n");
    CU_ASSERT_TRUE(about(begins(&music, 1, 0, 0), 4));
    CU_ASSERT_TRUE(about(begins(&music, 1, 1, 0), 12));
    CU_ASSERT_TRUE(begins(&music, 1, 2, 0) < 0);
    CU_ASSERT_TRUE(about(begins(&music, 2, 0, 0), 16));
    sheet_music_end(&music);
}

static void a_known_duration_stretches_all_times(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=60\nViolin I: |: c5:w | d5 :| e5\nViolin II: c5:w | d5 | e5\n");
    CU_ASSERT_TRUE(about(begins(&music, 2, 0, 100), 80)); /* 16 of 20 seconds */
    sheet_music_end(&music);
}

static const char *clock_in(spz_language language, double seconds)
{
    static char text[40];
    Buffer out;
    buffer_init(&out);
    say_clock(&out, language, seconds);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    return text;
}

static void clock_times_are_minutes_and_seconds(void)
{
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_ENGLISH, 0), "0:00");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_ENGLISH, 59.6), "1:00");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_GERMAN, 430.2), "7:10");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_ENGLISH, 3735), "1:02:15");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_FRENCH, 356), "5 min 56");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_FRENCH, 7), "7 s");
    CU_ASSERT_STRING_EQUAL(clock_in(SPZ_GERMAN, 7), "0:07");
}

static void without_a_length_places_are_shares(void)
{
    CU_ASSERT_STRING_EQUAL(phrase_text(SPZ_ENGLISH, share_phrase(0.34)), "a third of the way through");
    CU_ASSERT_STRING_EQUAL(phrase_text(SPZ_FRENCH, share_phrase(0.02)), "au début");
    CU_ASSERT_STRING_EQUAL(phrase_text(SPZ_GERMAN, share_phrase(0.49)), "in der Mitte des Satzes");
}

static void known_moments_bend_the_times_between_them(void)
{
    SheetMusic music = sheet_music("time: 4/4  tempo: q=60\nViolin I: c5:w | d5 | e5 | f5 | g5\nViolin II: c5:w | d5 | e5 | f5 | g5\n");
    const spz_movement *movement = first_movement(&music).movement;
    const spz_note_anchor moments[] = {{"3", 10}, {"4", 20}}, backwards[] = {{"4", 10}, {"3", 20}}, nowhere[] = {{"9", 10}};
    TimeLine line;
    CU_ASSERT_EQUAL_FATAL(time_line_make(movement, 0, moments, 2, &line), SPZ_OK);
    CU_ASSERT_TRUE(about(time_line_at(&line, 4), 5));   /* bar 2: half-way to bar 3 */
    CU_ASSERT_TRUE(about(time_line_at(&line, 10), 15)); /* the middle of bar 3 */
    CU_ASSERT_TRUE(about(time_line_end(&line), 20.0 * 20 / 12)); /* goes on in the tempo that led to bar 4 */
    CU_ASSERT_EQUAL_FATAL(time_line_make(movement, 40, moments, 2, &line), SPZ_OK);
    CU_ASSERT_TRUE(about(time_line_at(&line, 16), 30)); /* bar 5: half-way from bar 4 to the end */
    CU_ASSERT_EQUAL(time_line_make(movement, 0, backwards, 2, &line), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(time_line_make(movement, 0, nowhere, 1, &line), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(time_line_make(movement, 15, moments, 2, &line), SPZ_BAD_ARGUMENT);
    sheet_music_end(&music);
}

/* One sentence about a passage from the firsts to the basses, all answers at `steps` and `semitones` from their calls. */
static const char *sentence(spz_language language, Shape shape, int steps, int semitones, size_t variant)
{
    static const spz_kind kinds[SHAPE_COUNT] = {
        [SHAPE_EXCHANGE] = SPZ_EXCHANGE, [SHAPE_IMITATION] = SPZ_IMITATION, [SHAPE_HOCKET] = SPZ_HOCKET, [SHAPE_SPLIT_LINE] = SPZ_SPLIT_LINE,
        [SHAPE_CHAIN] = SPZ_EXCHANGE, [SHAPE_STRETTO] = SPZ_IMITATION, [SHAPE_DIVIDED] = SPZ_DIV2, [SHAPE_VIOLINS] = SPZ_DIV3,
        [SHAPE_SOLOISTS] = SPZ_DIV3, [SHAPE_COUPLING] = SPZ_COUPLING, [SHAPE_TO_AND_FRO] = SPZ_EXCHANGE, [SHAPE_ONCE] = SPZ_EXCHANGE,
        [SHAPE_SWAP] = SPZ_EXCHANGE};
    static char text[400];
    Evening evening;
    Buffer out;
    evening_begin(&evening, 20);
    spz_passage *passage = evening_passage(&evening, kinds[shape], SPZ_VN1, SPZ_DB, 12, 14, 0.9);
    spz_link links[3] = {{.players = 1, .bar = 11}, {.players = 6, .bar = 12}, {.players = 8, .bar = 13}};
    if (shape == SHAPE_CHAIN || shape == SHAPE_STRETTO) {
        passage->links = links;
        passage->link_count = 3;
    }
    if (shape == SHAPE_SPLIT_LINE)
        passage->told.braid = (spz_braid){{SPZ_VN1, SPZ_DB}, 5};
    if (shape == SHAPE_SOLOISTS)
        passage->told.division.soloists = 4;
    MovementNotes notes = {.movement = &evening.movement, .sections = &evening.map};
    Citation citation = {.passage = passage, .shape = shape, .variant = variant, .alike = steps || !semitones, .change = {.semitones = semitones, .steps = steps}};
    citation_tell(&evening.map, &citation);
    buffer_init(&out);
    say_citation(&out, language, &notes, &citation);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    evening_end(&evening);
    return text;
}

static void each_language_declines_its_nouns(void)
{
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_ENGLISH, SHAPE_EXCHANGE, -7, -12, 0), "The first violins call, the basses answer, an octave lower.");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_GERMAN, SHAPE_EXCHANGE, -7, -12, 0), "Die ersten Violinen rufen, die Kontrabässe antworten, eine Oktave tiefer.");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_GERMAN, SHAPE_HOCKET, 0, 1, 0), "Einzelne Töne fliegen zwischen den ersten Violinen und den Kontrabässen hin und her.");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_GERMAN, SHAPE_EXCHANGE, 0, 0, 2), "Eine Frage der ersten Violinen, eine Antwort der Kontrabässe, auf gleicher Tonhöhe.");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_FRENCH, SHAPE_EXCHANGE, 4, 7, 0), "Les premiers violons appellent, les contrebasses répondent, une quinte plus haut.");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_FRENCH, SHAPE_HOCKET, 0, 1, 0), "Les notes volent des premiers violons aux contrebasses, et retour.");
}

static void a_chain_tells_every_entry_and_who_has_it_together(void)
{
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_ENGLISH, SHAPE_CHAIN, 0, 1, 0),
                           "One idea travels through the orchestra: first the first violins (bar 12), then the second violins and the violas together (bar 13) "
                           "and finally the cellos (bar 14).");
    CU_ASSERT_STRING_EQUAL(sentence(SPZ_GERMAN, SHAPE_CHAIN, 0, 1, 0),
                           "Ein Gedanke wandert durch das Orchester: zuerst die ersten Violinen (Takt 12), dann die zweiten Violinen und die Bratschen gemeinsam "
                           "(Takt 13) und zuletzt die Violoncelli (Takt 14).");
}

static void every_shape_has_a_sentence_in_every_language(void)
{
    for (int language = 0; language < SPZ_LANGUAGE_COUNT; language++)
        for (int shape = 0; shape < SHAPE_COUNT; shape++) {
            char first[400];
            snprintf(first, sizeof first, "%s", sentence((spz_language)language, (Shape)shape, 0, 1, 0));
            CU_ASSERT_TRUE(strlen(first) > 20 && first[strlen(first) - 1] == '.');
            CU_ASSERT_PTR_NULL(strstr(first, "  "));
            CU_ASSERT_PTR_NULL(strchr(first, '?'));
            if (shape != SHAPE_SOLOISTS)
                CU_ASSERT_STRING_NOT_EQUAL(sentence((spz_language)language, (Shape)shape, 0, 1, 1), first); /* a second one is told otherwise */
        }
}

static const char *place(spz_language language, const char *letter, int after, size_t from, size_t to, bool upbeat)
{
    static char text[200];
    Evening evening;
    evening_begin(&evening, 80);
    spz_passage *passage = evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, from, to, 0.9);
    passage->letter = letter;
    passage->after_letter = after;
    MovementNotes notes = {.movement = &evening.movement, .sections = &evening.map, .overview = {.given = true}};
    Citation citation = {.passage = passage, .last = passage->last, .upbeat_to = passage->first + upbeat, .times = {{135, 0.2}, {340, 0.6}}, .time_count = 2};
    Buffer out;
    if (from == 12)
        evening.bars[11].number = "";
    buffer_init(&out);
    say_citation_place(&out, language, &notes, &citation);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    evening_end(&evening);
    return text;
}

static void places_have_bars_letter_and_times(void)
{
    CU_ASSERT_STRING_EQUAL(place(SPZ_ENGLISH, "B", 3, 66, 71, false), "Bars 66–71, 3 bars after letter B, at 2:15 and again at 5:40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_ENGLISH, "", 0, 66, 66, false), "Bar 66, at 2:15 and again at 5:40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_GERMAN, "6", 1, 66, 71, false), "Takte 66–71, 1 Takt nach Ziffer 6, bei 2:15 und wieder bei 5:40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_FRENCH, "B", 0, 66, 71, false), "Mesures 66–71, lettre B, à 2 min 15 puis de nouveau à 5 min 40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_ENGLISH, "", 0, 12, 71, false), "Bars (12. in the file)–71, at 2:15 and again at 5:40");
}

static void an_upbeat_is_named_with_the_bar_it_leads_to(void)
{
    CU_ASSERT_STRING_EQUAL(place(SPZ_ENGLISH, "", 0, 65, 71, true), "Bars 66–71, from the upbeat to bar 66, at 2:15 and again at 5:40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_GERMAN, "", 0, 65, 71, true), "Takte 66–71, mit Auftakt zu Takt 66, bei 2:15 und wieder bei 5:40");
    CU_ASSERT_STRING_EQUAL(place(SPZ_FRENCH, "", 0, 65, 71, true), "Mesures 66–71, dès la levée de la mesure 66, à 2 min 15 puis de nouveau à 5 min 40");
}

static const char *paragraph(spz_language language, const Overview *overview)
{
    static char text[800];
    MovementNotes notes = {.overview = *overview};
    Buffer out;
    buffer_init(&out);
    say_overview(&out, language, &notes);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    return text;
}

static void the_paragraph_counts_what_was_found(void)
{
    Overview overview = {.dialogues = 4, .striking = 1, .pair = {{.section = SPZ_VA, .orchestra = 1}, {.section = SPZ_VA, .orchestra = 2}}, .pair_count = 3,
                         .divided = 2, .threefold = 1, .coupled = 1, .seating = SEATING_OPEN, .strings = true};
    CU_ASSERT_STRING_EQUAL(paragraph(SPZ_ENGLISH, &overview),
                           "Sections answer each other in four passages, in one of them strikingly so. Most often (three times) it is the violas of the first orchestra "
                           "and the violas of the second orchestra. In two passages a section divides, in one of them into three voices or more. In one passage "
                           "two sections move as one. The score does not decide where the violins sit.");
    CU_ASSERT_STRING_EQUAL(paragraph(SPZ_GERMAN, &overview),
                           "Die Gruppen antworten einander an vier Stellen, an einer davon besonders deutlich. Am häufigsten (dreimal) sind es die Bratschen des ersten "
                           "Orchesters und die Bratschen des zweiten Orchesters. An zwei Stellen teilt sich eine Gruppe, an einer davon in drei oder mehr "
                           "Stimmen. An einer Stelle bewegen sich zwei Gruppen wie eine einzige Stimme. Wo die Violinen sitzen, lässt die Partitur offen.");
    CU_ASSERT_STRING_EQUAL(paragraph(SPZ_FRENCH, &overview),
                           "Les groupes se répondent dans quatre passages, de façon frappante dans l'un d'eux. Le plus souvent (trois fois), ce sont les altos de l'orchestre 1 "
                           "et les altos de l'orchestre 2. Dans deux passages, un groupe se divise, dans l'un d'eux en trois voix ou plus. Dans un passage, deux "
                           "groupes avancent comme une seule voix. La partition ne tranche pas la question de la place des violons.");
}

static void a_movement_without_strings_says_so(void)
{
    Overview overview = {.strings = false};
    CU_ASSERT_STRING_EQUAL(paragraph(SPZ_ENGLISH, &overview), "No string sections play in this movement.");
}

static const char dialogue[] =
    "title: Calls <b>*loud*</b>\ntime: 4/4%s\n"
    "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n";

static SheetMusic dialogue_at(const char *tempo)
{
    char notation[1000];
    snprintf(notation, sizeof notation, dialogue, tempo);
    return sheet_music(notation);
}

static char *notes(const SheetMusic *music, spz_format format, double lasts)
{
    const spz_reading *readings[] = {music->reading};
    spz_note_options options = SPZ_NOTES_USUAL;
    spz_document *document = NULL;
    options.lasts = &lasts;
    options.lasts_count = 1;
    CU_ASSERT_EQUAL_FATAL(spz_sheet_notes(readings, 1, &options, format, &document), SPZ_OK);
    return text_of(document, NULL);
}

static void a_citation_tells_when_and_what(void)
{
    SheetMusic music = dialogue_at("  tempo: q=60");
    char *text = notes(&music, SPZ_AS_TEXT, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bars 4–7, two fifths of the way through\n")); /* three of eight bars before it */
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The first violin calls, the second violin answers")); /* four single parts: a quartet */
    free(text);
    text = notes(&music, SPZ_AS_TEXT, 64);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bars 4–7, at 0:24\n"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "a performance of 1:04"));
    free(text);
    sheet_music_end(&music);
}

static void without_a_tempo_no_time_is_made_up(void)
{
    SheetMusic music = dialogue_at("");
    char *text = notes(&music, SPZ_AS_TEXT, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bars 4–7, two fifths of the way through\n"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The score has no tempo marks"));
    free(text);
    sheet_music_end(&music);
}

static void a_tempo_that_nobody_reads_is_not_called_a_mark(void)
{
    SheetMusic music = dialogue_at("  tempo: q=60");
    const spz_movement *movement = first_movement(&music).movement;
    char *text = notes(&music, SPZ_AS_TEXT, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "By its tempo marks the movement lasts"));
    free(text);
    for (size_t i = 0; i < movement->tempo_count; i++)
        movement->tempos[i].printed = false;
    text = notes(&music, SPZ_AS_TEXT, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The score has no tempo in figures"));
    CU_ASSERT_PTR_NULL(strstr(text, "By its tempo marks"));
    free(text);
    sheet_music_end(&music);
}

static void markdown_shows_signs_of_a_title_as_they_are(void)
{
    SheetMusic music = dialogue_at("  tempo: q=60");
    char *text = notes(&music, SPZ_AS_MARKDOWN, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "## Calls \\<b\\>\\*loud\\*\\</b\\>\n"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "- **Bars 4–7, two fifths of the way through** The first violin"));
    free(text);
    sheet_music_end(&music);
}

static void when_memory_ends_there_are_no_notes(void)
{
    SheetMusic music = dialogue_at("  tempo: q=60");
    const spz_reading *readings[] = {music.reading};
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && requests < 10000) {
        spz_document *document = NULL;
        memory_starve_after(++requests);
        status = spz_sheet_notes(readings, 1, NULL, SPZ_AS_MARKDOWN, &document);
        memory_starve_after(0);
        CU_ASSERT_EQUAL(document == NULL, status != SPZ_OK);
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(requests > 4);
    sheet_music_end(&music);
}

void suite_notes_sheet(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_bar_lasts_as_long_as_its_tempo_says),
        STATEMENT(tempo_may_change_within_a_bar),
        STATEMENT(a_repeated_bar_sounds_twice),
        STATEMENT(a_known_duration_stretches_all_times),
        STATEMENT(clock_times_are_minutes_and_seconds),
        STATEMENT(without_a_length_places_are_shares),
        STATEMENT(known_moments_bend_the_times_between_them),
        STATEMENT(each_language_declines_its_nouns),
        STATEMENT(a_chain_tells_every_entry_and_who_has_it_together),
        STATEMENT(every_shape_has_a_sentence_in_every_language),
        STATEMENT(places_have_bars_letter_and_times),
        STATEMENT(an_upbeat_is_named_with_the_bar_it_leads_to),
        STATEMENT(the_paragraph_counts_what_was_found),
        STATEMENT(a_movement_without_strings_says_so),
        STATEMENT(a_citation_tells_when_and_what),
        STATEMENT(without_a_tempo_no_time_is_made_up),
        STATEMENT(a_tempo_that_nobody_reads_is_not_called_a_mark),
        STATEMENT(markdown_shows_signs_of_a_title_as_they_are),
        STATEMENT(when_memory_ends_there_are_no_notes),
    };
    suite_of("writer's notes", statements, COUNT(statements));
}
