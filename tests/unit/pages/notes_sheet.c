/* What the writer cites: which passages, when they sound, and how it is said. */
#include "wording/notes_language.h"
#include "support/evening.h"
#include "support/memory.h"
#include "support/sheet_music.h"
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

static void clock_times_are_minutes_and_seconds(void)
{
    char text[CLOCK_TEXT];
    CU_ASSERT_STRING_EQUAL(clock_text(0, text), "0:00");
    CU_ASSERT_STRING_EQUAL(clock_text(59.6, text), "1:00");
    CU_ASSERT_STRING_EQUAL(clock_text(430.2, text), "7:10");
    CU_ASSERT_STRING_EQUAL(clock_text(3735, text), "1:02:15");
}

static void picked(const Evening *evening, double strength, size_t most, PlaceInFindings *places)
{
    memset(places, 0, sizeof *places);
    CU_ASSERT_EQUAL_FATAL(notes_pick(&evening->findings, strength, most, places), SPZ_OK);
}

static void strong_passages_are_cited_first_and_in_order_of_bars(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.55);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 21, 22, 0.95);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 31, 32, 0.4);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[0], 1);
    CU_ASSERT_EQUAL(places.at[1], 2);
    array_free(&places);
    evening_end(&evening);
}

static void variety_counts_beside_strength(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 2, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 11, 12, 0.85);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VA, SPZ_VC, 21, 22, 0.7);
    picked(&evening, 0.5, 2, &places);
    CU_ASSERT_EQUAL_FATAL(places.count, 2);
    CU_ASSERT_EQUAL(places.at[0], 0);
    CU_ASSERT_EQUAL(places.at[1], 2); /* another kind, another pair */
    array_free(&places);
    evening_end(&evening);
}

static void what_overlaps_is_cited_once(void)
{
    Evening evening;
    PlaceInFindings places;
    evening_begin(&evening, 60);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 1, 8, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 4, 5, 0.6);
    picked(&evening, 0.5, 6, &places);
    CU_ASSERT_EQUAL(places.count, 1);
    array_free(&places);
    evening_end(&evening);
}

static const char *sentence(const NotesLanguage *language, spz_kind kind, int interval, size_t variant)
{
    static char text[400];
    spz_passage passage = {.kind = kind, .turns = 2, .first = 11, .last = 13};
    Citation citation = {.passage = &passage, .interval = interval, .variant = variant, .body_count = 2};
    Buffer out;
    citation.bodies[0].section = SPZ_VN1;
    citation.bodies[1].section = SPZ_DB;
    buffer_init(&out);
    language->sentence(&out, &citation);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    return text;
}

static void each_language_declines_its_nouns(void)
{
    CU_ASSERT_STRING_EQUAL(sentence(&notes_english, SPZ_EXCHANGE, -12, 0), "The first violins call, the basses answer, an octave lower.");
    CU_ASSERT_STRING_EQUAL(sentence(&notes_german, SPZ_EXCHANGE, -12, 0), "Die ersten Violinen rufen, die Kontrabässe antworten, eine Oktave tiefer.");
    CU_ASSERT_STRING_EQUAL(sentence(&notes_german, SPZ_HOCKET, INTERVAL_MIXED, 0),
                           "Einzelne Töne fliegen zwischen den ersten Violinen und den Kontrabässen hin und her.");
    CU_ASSERT_STRING_EQUAL(sentence(&notes_german, SPZ_EXCHANGE, 0, 1), "Eine Frage der ersten Violinen, eine Antwort der Kontrabässe, auf denselben Tönen.");
    CU_ASSERT_STRING_EQUAL(sentence(&notes_french, SPZ_EXCHANGE, 7, 0), "Les premiers violons appellent, les contrebasses répondent, une quinte plus haut.");
    CU_ASSERT_STRING_EQUAL(sentence(&notes_french, SPZ_HOCKET, INTERVAL_MIXED, 0), "Les notes volent des premiers violons aux contrebasses, et retour.");
}

static void every_kind_has_a_sentence_in_every_language(void)
{
    static const NotesLanguage *const languages[] = {&notes_english, &notes_german, &notes_french};
    for (size_t i = 0; i < COUNT(languages); i++)
        for (int kind = 0; kind < SPZ_KIND_COUNT; kind++) {
            char first[400];
            snprintf(first, sizeof first, "%s", sentence(languages[i], (spz_kind)kind, 6, 0));
            CU_ASSERT_TRUE(strlen(first) > 20 && first[strlen(first) - 1] == '.');
            CU_ASSERT_PTR_NULL(strstr(first, "  "));
            CU_ASSERT_STRING_NOT_EQUAL(sentence(languages[i], (spz_kind)kind, 6, 1), first); /* a second one is told otherwise */
        }
}

static const char *place(const NotesLanguage *language, const char *letter, int after, const char *from, const char *to)
{
    static char text[200];
    spz_passage passage = {.kind = SPZ_EXCHANGE, .first = 11, .last = strcmp(from, to) ? 13 : 11};
    Citation citation = {.passage = &passage, .bar_from = from, .bar_to = to, .letter = letter, .after = after, .times = {135, 340}, .time_count = 2};
    Buffer out;
    buffer_init(&out);
    language->place(&out, &citation);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    return text;
}

static void places_have_bars_letter_and_times(void)
{
    CU_ASSERT_STRING_EQUAL(place(&notes_english, "B", 3, "66", "71"), "Bars 66–71, 3 bars after letter B, at 2:15 and again at 5:40");
    CU_ASSERT_STRING_EQUAL(place(&notes_english, "", 0, "66", "66"), "Bar 66, at 2:15 and again at 5:40");
    CU_ASSERT_STRING_EQUAL(place(&notes_german, "6", 1, "66", "71"), "Takte 66–71, 1 Takt nach Ziffer 6, bei 2:15 und wieder bei 5:40");
    CU_ASSERT_STRING_EQUAL(place(&notes_french, "B", 0, "66", "71"), "Mesures 66–71, lettre B, à 2:15 puis de nouveau à 5:40");
    CU_ASSERT_STRING_EQUAL(place(&notes_english, "", 0, "", "71"), "Bars (12.)–71, at 2:15 and again at 5:40");
}

static const char *paragraph(const NotesLanguage *language, const Overview *overview)
{
    static char text[800];
    Buffer out;
    buffer_init(&out);
    language->paragraph(&out, overview);
    snprintf(text, sizeof text, "%s", out.text);
    buffer_free(&out);
    return text;
}

static void the_paragraph_counts_what_was_found(void)
{
    Overview overview = {.dialogues = 4, .striking = 1, .pair = {{SPZ_VA, 0, 1, false}, {SPZ_VA, 0, 2, false}}, .pair_count = 3, .divided = 2,
                         .threefold = 1, .coupled = 1, .seating = SEATING_OPEN, .strings = true};
    CU_ASSERT_STRING_EQUAL(paragraph(&notes_english, &overview),
                           "Sections answer each other in four passages, strikingly so in one. The violas of the first orchestra and the violas of the second "
                           "orchestra have three of them. In two passages a section divides, in one into three or more voices. In one passage two "
                           "sections move as one. Where the violins sit, the score leaves open.");
    CU_ASSERT_STRING_EQUAL(paragraph(&notes_german, &overview),
                           "Die Gruppen antworten einander in vier Passagen, davon in einer besonders deutlich. Den Bratschen des ersten Orchesters und den "
                           "Bratschen des zweiten Orchesters gehören davon drei. In zwei Passagen teilt sich eine Gruppe, davon in einer in drei oder mehr "
                           "Stimmen. In einer Passage gehen zwei Gruppen wie eine einzige Stimme. Wo die Violinen sitzen, lässt die Partitur offen.");
    CU_ASSERT_STRING_EQUAL(paragraph(&notes_french, &overview),
                           "Les pupitres se répondent dans quatre passages, de façon frappante dans un. Aux altos du premier orchestre et aux altos du second "
                           "orchestre en reviennent trois. Dans deux passages un pupitre se divise, dont un en trois voix ou plus. Dans un passage deux "
                           "pupitres avancent comme une seule voix. La place des violons, la partition la laisse ouverte.");
}

static void a_movement_without_strings_says_so(void)
{
    Overview overview = {.strings = false};
    CU_ASSERT_STRING_EQUAL(paragraph(&notes_english, &overview), "No string sections play in this movement.");
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
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bars 4–7, at 0:12\n")); /* three bars of four seconds before it */
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The first violins call, the second violins answer"));
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
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "Bars 4–7\n"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "The score has no tempo marks"));
    free(text);
    sheet_music_end(&music);
}

static void markdown_shows_signs_of_a_title_as_they_are(void)
{
    SheetMusic music = dialogue_at("  tempo: q=60");
    char *text = notes(&music, SPZ_AS_MARKDOWN, 0);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "## Calls \\<b\\>\\*loud\\*\\</b\\>\n"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "- **Bars 4–7, at 0:12** The first violins"));
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
        STATEMENT(strong_passages_are_cited_first_and_in_order_of_bars),
        STATEMENT(variety_counts_beside_strength),
        STATEMENT(what_overlaps_is_cited_once),
        STATEMENT(each_language_declines_its_nouns),
        STATEMENT(every_kind_has_a_sentence_in_every_language),
        STATEMENT(places_have_bars_letter_and_times),
        STATEMENT(the_paragraph_counts_what_was_found),
        STATEMENT(a_movement_without_strings_says_so),
        STATEMENT(a_citation_tells_when_and_what),
        STATEMENT(without_a_tempo_no_time_is_made_up),
        STATEMENT(markdown_shows_signs_of_a_title_as_they_are),
        STATEMENT(when_memory_ends_there_are_no_notes),
    };
    suite_of("writer's notes", statements, COUNT(statements));
}
