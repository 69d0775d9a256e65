/* What the drawings of a page show: every bar is full, every entry has its block, every section its place. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/staves/stave_bars.h"
#include "pages/drawings/strip.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static const char dialogue[] =
    "title: Calls\ntime: 4/4  tempo: q=96\n"
    "Violin I:    c5:h. d5:q | e5:q. f5:e r:h | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w~ | c5:q (3 d5:e e5 f5 ) g5:h\n"
    "Violin II:   R*3 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n";

static spz_report_options usual;

static ScoreView view_of(const SheetMusic *music, Markup *html)
{
    usual = SPZ_REPORT_USUAL;
    ShownMovement shown = {.reading = spz_reading_at(music->reading, 0), .number = 1, .of = 1};
    return score_view(html, &usual, &shown);
}

/* The first exchange between the violins. */
static const spz_passage *exchange_of(const ScoreView *view)
{
    for (size_t i = 0; i < spz_findings_count(view->findings); i++)
        if (spz_findings_at(view->findings, i)->kind == SPZ_EXCHANGE)
            return spz_findings_at(view->findings, i);
    return NULL;
}

static void every_bar_of_a_stave_is_full(void)
{
    SheetMusic music = sheet_music(dialogue);
    ScoreView view = view_of(&music, NULL);
    const Movement *movement = view.movement;
    Stave stave = {.group = &view.map->groups[0], .index = 0, .sounds = view.map->groups[0].sounds, .sound_count = view.map->groups[0].sound_count};
    CU_ASSERT_FATAL(stave_fill(&view, exchange_of(&view), &stave, 0, movement->bar_count));
    Ticks filled = 0;
    size_t bar = 0;
    for (size_t i = 0; i < stave.chords.count; i++) {
        const StaveChord *chord = &stave.chords.at[i];
        if (chord->bar != bar) {
            CU_ASSERT_EQUAL(filled, movement->bars[bar].length);
            bar = chord->bar;
            filled = 0;
        }
        CU_ASSERT_EQUAL(chord->onset, filled);
        filled += chord->duration;
    }
    CU_ASSERT_EQUAL(bar, movement->bar_count - 1);
    CU_ASSERT_EQUAL(filled, movement->bars[bar].length);
    staves_free(&stave, 1);
    sheet_music_end(&music);
}

/* Bar 1: a dotted minim, a crotchet; bar 2: a dotted crotchet, a quaver; the last: tied over, three quavers of a triplet. */
static void lengths_are_written_as_they_sound(void)
{
    static const Value written[] = {{1, 1, false}, {2, 0, false}, {2, 1, false}, {3, 0, false}};
    SheetMusic music = sheet_music(dialogue);
    ScoreView view = view_of(&music, NULL);
    Stave stave = {.group = &view.map->groups[0], .index = 0, .sounds = view.map->groups[0].sounds, .sound_count = view.map->groups[0].sound_count};
    CU_ASSERT_FATAL(stave_fill(&view, exchange_of(&view), &stave, 0, view.movement->bar_count));
    for (size_t i = 0; i < sizeof written / sizeof *written; i++) {
        CU_ASSERT_EQUAL(stave.chords.at[i].value.type, written[i].type);
        CU_ASSERT_EQUAL(stave.chords.at[i].value.dots, written[i].dots);
    }
    size_t triplets = 0, went_on = 0;
    for (size_t i = 0; i < stave.chords.count; i++) {
        triplets += stave.chords.at[i].value.triplet && stave.chords.at[i].value.type == 3;
        went_on += stave.chords.at[i].went_on;
    }
    CU_ASSERT_EQUAL(triplets, 3);
    CU_ASSERT_EQUAL(went_on, 1);
    staves_free(&stave, 1);
    sheet_music_end(&music);
}

static void a_passage_is_drawn_on_the_staves_of_those_who_speak_in_it(void)
{
    SheetMusic music = sheet_music(dialogue);
    Buffer out;
    Markup html;
    buffer_init(&out);
    markup_begin(&html, &out);
    ScoreView view = view_of(&music, &html);
    const spz_passage *passage = exchange_of(&view);
    CU_ASSERT_PTR_NOT_NULL_FATAL(passage);
    CU_ASSERT_EQUAL(stave_line(&view, passage, passage->first, stave_full), passage->last + 1);
    markup_end(&html);
    CU_ASSERT_FALSE(out.failed);
    CU_ASSERT_EQUAL(count_of(out.text, "class=\"staff-name\""), 2);
    int calls = 0, answers = 0, notes = 0;
    for (size_t i = 0; i < passage->entry_count; i++) {
        calls += !passage->entries[i].answer;
        answers += passage->entries[i].answer;
    }
    CU_ASSERT_EQUAL(count_of(out.text, "<rect class=\"hollow\""), answers);
    CU_ASSERT(calls > 0 && answers > 0);
    const Movement *movement = view.movement;
    for (size_t bar = passage->first; bar <= passage->last; bar++) /* a tied note stands in every bar that it reaches */
        for (size_t g = 0; g < 2; g++)
            for (size_t i = 0; i < view.map->groups[g].sound_count; i++) {
                const GroupSound *sound = &view.map->groups[g].sounds[i];
                notes += sound->onset < movement->bars[bar].onset + movement->bars[bar].length && sound->onset + sound->duration > movement->bars[bar].onset;
            }
    CU_ASSERT_EQUAL(count_of(out.text, "<ellipse") + count_of(out.text, "l1.3 -.5"), notes);
    buffer_free(&out);
    sheet_music_end(&music);
}

static void every_entry_has_a_block_in_the_strip_and_leads_to_its_passage(void)
{
    SheetMusic music = sheet_music(dialogue);
    Buffer out;
    Markup html;
    buffer_init(&out);
    markup_begin(&html, &out);
    ScoreView view = view_of(&music, &html);
    strip_whole(&view, NULL, 0);
    markup_end(&html);
    CU_ASSERT_FALSE(out.failed);
    int answers = 0, shown = 0;
    for (size_t i = 0; i < spz_findings_count(view.findings); i++) {
        const spz_passage *passage = spz_findings_at(view.findings, i);
        char link[32];
        snprintf(link, sizeof link, "href=\"#m1-p%zu\"", i + 1);
        CU_ASSERT_EQUAL(count_of(out.text, link), 1);
        shown++;
        for (size_t e = 0; e < passage->entry_count && spz_kind_is_antiphony(passage->kind); e++)
            for (size_t g = 0; g < view.map->group_count; g++)
                answers += view_answers(passage, &passage->entries[e]) && (passage->entries[e].players >> g & 1);
    }
    CU_ASSERT(shown > 0);
    CU_ASSERT_EQUAL(count_of(out.text, "<rect class=\"answer "), answers);
    buffer_free(&out);
    sheet_music_end(&music);
}

/* From house left to house right each section has one area, as the plan orders them. */
static void the_stage_has_an_area_for_each_section_in_its_order(void)
{
    static const char *const names[] = {"violins opposed, cellos inside left", "violins opposed, violas inside left", "violins together, cellos outside", "violins together, violas outside"};
    for (size_t i = 0; i < COUNT(names); i++) {
        spz_plan *plan = NULL;
        Buffer out;
        Markup html;
        buffer_init(&out);
        markup_begin(&html, &out);
        CU_ASSERT_EQUAL_FATAL(spz_stage_plan(NULL, names[i], false, NULL, &plan), SPZ_OK);
        stage_picture(&html, SPZ_ENGLISH, plan, NULL, STAGE_WHOLE);
        markup_end(&html);
        CU_ASSERT_FALSE(out.failed);
        CU_ASSERT_EQUAL(count_of(out.text, "class=\"area "), 5);
        spz_order order = spz_plan_order(plan);
        const char *at = out.text;
        for (int k = 0; k < order.count; k++) {
            char area[32];
            snprintf(area, sizeof area, "class=\"area %s\"", view_class(order.sections[k]));
            const char *found = strstr(out.text, area);
            CU_ASSERT_PTR_NOT_NULL_FATAL(found);
            CU_ASSERT(found > at);
            at = found;
        }
        spz_plan_free(plan);
        buffer_free(&out);
    }
}

/* The same music twice is told once; a bar with another note is no repeat. */
static void what_is_played_again_note_for_note_is_a_repeat(void)
{
    static const char twice[] =
        "title: Twice\ntime: 4/4  tempo: q=96\n"
        "Violin I:    g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | R*16 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
        "Violin II:   R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R*16 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c4:w\n"
        "Viola:       R*4 | R*16 | R*4 | c4:w\n"
        "Violoncello: R*4 | R*16 | R*4 | c3:w\n";
    SheetMusic music = sheet_music(twice);
    ScoreView view = view_of(&music, NULL);
    size_t repeats = 0;
    for (size_t i = 0; i < spz_findings_count(view.findings); i++)
        if (view_first_heard(&view, i) != i) {
            const spz_passage *first = spz_findings_at(view.findings, view_first_heard(&view, i)), *later = spz_findings_at(view.findings, i);
            CU_ASSERT_EQUAL(later->first - first->first, 20);
            repeats++;
        }
    CU_ASSERT(repeats > 0);
    sheet_music_end(&music);
    SheetMusic other = sheet_music(dialogue);
    view = view_of(&other, NULL);
    for (size_t i = 0; i < spz_findings_count(view.findings); i++)
        CU_ASSERT_EQUAL(view_first_heard(&view, i), i);
    sheet_music_end(&other);
}

static const struct Statement statements[] = {
    STATEMENT(every_bar_of_a_stave_is_full),
    STATEMENT(lengths_are_written_as_they_sound),
    STATEMENT(a_passage_is_drawn_on_the_staves_of_those_who_speak_in_it),
    STATEMENT(every_entry_has_a_block_in_the_strip_and_leads_to_its_passage),
    STATEMENT(the_stage_has_an_area_for_each_section_in_its_order),
    STATEMENT(what_is_played_again_note_for_note_is_a_repeat),
};

void suite_drawings(void)
{
    suite_of("drawings", statements, COUNT(statements));
}
