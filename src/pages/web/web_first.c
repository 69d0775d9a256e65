/* The first screen: the stage, the verdict and how sure it is, the passages that weigh most, the whole movement as one strip. */
#include "pages/drawings/stage/stage_picture.h"
#include "pages/drawings/staves/stave.h"
#include "pages/drawings/strip.h"
#include "pages/web/web.h"
#include "spezzato/sheets.h"
#include "wording/papers/notes_words.h"
#include "wording/seatings/seating_words.h"
#include <math.h>
#include <string.h>

/* 'From a middle seat the violins are heard 26 degrees apart; with the violins together it would be 10.' */
static void heard(const Web *web, const spz_plan *best, const spz_plan *other)
{
    spz_separation here, there;
    if (!spz_plan_separation(best, SPZ_VN1, SPZ_VN2, SPZ_MIDDLE_SEATS, &here))
        return;
    bool two = other && spz_plan_separation(other, SPZ_VN1, SPZ_VN2, SPZ_MIDDLE_SEATS, &there);
    markup_open_class(web->html, "figcaption", "small");
    WEB_SAY(web->html, web->view.language, two ? PHRASE_FIRST_HEARD_TWO : PHRASE_FIRST_HEARD, slot_number("here", lround(here.angle)), slot_number("there", two ? lround(there.angle) : 0),
            slot_text("other", two ? words_arrangement(web->view.language, spz_plan_arrangement(other)) : ""));
    markup_close(web->html);
}

static void stage_of(const Web *web)
{
    const spz_verdict *verdict = web->view.verdict;
    const spz_settings *settings = web->report->options.settings;
    Markup *html = web->html;
    size_t rival = view_other(verdict);
    if (spz_verdict_count(verdict) == 0)
        return;
    spz_plan *best = stage_plan_of(settings, verdict, 0), *other = rival ? stage_plan_of(settings, verdict, rival) : NULL;
    markup_open_class(html, "figure", "seen");
    if (best) {
        stage_picture(html, web->view.language, best, web->map, STAGE_WHOLE);
        heard(web, best, other);
    }
    markup_close_line(html);
    spz_plan_free(best);
    spz_plan_free(other);
}

/* 'open leaning FIRM': the word that was reached stands out. */
static void sure(const Web *web)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    spz_confidence reached = spz_verdict_confidence(web->view.verdict);
    markup_open_class(html, "p", "sure");
    markup_element(html, "span", "unseen", phrase_text(language, PHRASE_PAGE_HEAD_SURE));
    for (int i = SPZ_OPEN; i <= SPZ_FIRM; i++) {
        const char *word = phrase_text(language, (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + i));
        if ((spz_confidence)i == reached)
            markup_element(html, "strong", NULL, word);
        else {
            markup_open(html, "span");
            markup_put(html, "aria-hidden", "true");
            markup_words(html, word);
            markup_close(html);
        }
        markup_words(html, " ");
    }
    markup_close(html);
}

/* One question as a beam: both answers at its ends, the dot where the evidence has it; the middle is even. `lean` 0..1 toward the left end. */
static void beam(const Web *web, const char *chosen, const char *other, double lean, const char *word)
{
    static const double full = 0.5; /* of the score: the end of the beam */
    Markup *html = web->html;
    double at = 0.5 - 0.5 * fmin(lean / full, 1);
    markup_open_class(html, "div", "beam");
    markup_element(html, "span", "chosen", chosen);
    markup_open_class(html, "svg", "track");
    markup_put(html, "height", "16");
    markup_put(html, "aria-hidden", "true");
    draw_across(html, "axis", 0, 1, 8, 8);
    draw_across(html, "axis", 0.5, 0.5, 1, 15);
    draw_across(html, "reach", at, 0.5, 8, 8);
    draw_dot(html, at, 8, 5.5);
    markup_close(html);
    markup_element(html, "span", "other", other);
    markup_element(html, "em", NULL, word);
    markup_close(html);
}

/* What stands inside or outside where the violins sit one way: 'cellos inside left'; the user's own arrangements by their names. */
static const char *inner_words(spz_language language, const char *name)
{
    spz_standard standard = spz_arrangement_standard(name);
    return standard == SPZ_OWN_ARRANGEMENT ? name : phrase_text(language, (Phrase)(PHRASE_INNER_OPPOSED_CELLOS + (unsigned)standard));
}

static void beams(const Web *web)
{
    static const double even = 0.05;
    const spz_verdict *verdict = web->view.verdict;
    spz_language language = web->view.language;
    const spz_ranked *best = spz_verdict_ranked(verdict, 0), *inner = NULL, *rival = NULL;
    for (size_t i = spz_verdict_count(verdict); i-- > 1;) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        *(ranked->opposed == best->opposed ? &inner : &rival) = ranked;
    }
    markup_open_class(web->html, "div", "beams");
    if (rival)
        beam(web, phrase_text(language, best->opposed ? PHRASE_SIDE_OPPOSED : PHRASE_SIDE_TOGETHER), phrase_text(language, best->opposed ? PHRASE_SIDE_TOGETHER : PHRASE_SIDE_OPPOSED),
             (best->score - rival->score) / 100, phrase_text(language, (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + (unsigned)spz_verdict_confidence(verdict))));
    if (inner) {
        double ahead = (best->score - inner->score) / 100;
        beam(web, inner_words(language, best->name), inner_words(language, inner->name), ahead, phrase_text(language, ahead < even ? PHRASE_SURE_EVEN : PHRASE_SURE_AHEAD));
    }
    markup_close_line(web->html);
}

/* One sentence; the year is asked for further down, where it is told what it would change. */
static void meaning(const Web *web)
{
    spz_language language = web->view.language;
    Buffer words = {0};
    say_sure(&words, language, web->view.verdict);
    markup_open_class(web->html, "p", "meaning");
    web_words(web->html, &words);
    buffer_free(&words);
    if (!spz_verdict_by_year(web->view.verdict).year) {
        markup_words(web->html, " ");
        markup_open(web->html, "a");
        markup_put_format(web->html, "href", "#m%zu-year", web->shown->number);
        markup_words(web->html, phrase_text(language, PHRASE_SURE_YEAR));
        markup_close(web->html);
    }
    markup_close(web->html);
}

static void verdict_of(const Web *web)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    const spz_verdict *verdict = web->view.verdict;
    Buffer words = {0};
    markup_open_class(html, "div", "verdict");
    if (spz_verdict_count(verdict) == 0) {
        say_statement(&words, language, spz_verdict_statement(verdict));
        web_element(html, web_heading(web, 1), NULL, &words);
    } else {
        SAY(&words, language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(verdict, 0)->name)));
        web_element(html, web_heading(web, 1), NULL, &words);
        sure(web);
        beams(web);
        meaning(web);
    }
    markup_close_line(html);
    buffer_free(&words);
}

/* ', C+8, at 1:38' */
static void place_of(const Web *web, const spz_passage *passage)
{
    char letter[WORDS_TEXT];
    Buffer clock = {0};
    words_letter(passage, letter);
    double seconds = web->movement->tempo_count ? spz_movement_sounding(web->movement, passage->first, passage->onset, 0, 0) : -1;
    if (seconds >= 0)
        say_clock(&clock, web->view.language, seconds);
    markup_open_class(web->html, "span", "small soft");
    markup_format(web->html, "%s%s%s", letter, *letter && clock.length ? ", " : "", buffer_text(&clock));
    markup_close(web->html);
    buffer_let_go(web->html, &clock);
}

static void decisive(const Web *web, size_t index)
{
    const spz_passage *passage = spz_findings_at(web->view.findings, index);
    Speaker speaker = web_speaker(web);
    Markup *html = web->html;
    Buffer words = {0};
    markup_open(html, "li");
    markup_open(html, "div");
    markup_open_class(html, "p", "where");
    web_bars_link(web, index);
    markup_words(html, " ");
    place_of(web, passage);
    markup_close(html);
    words_told(&speaker, passage, &words);
    web_element(html, "p", "small told", &words);
    markup_close(html);
    stave_line(&web->view, passage, passage->first, stave_short);
    web_player(web, index);
    markup_close_line(html);
    buffer_free(&words);
}

static void decisive_ones(const Web *web, const size_t *chosen, size_t count)
{
    Markup *html = web->html;
    if (count == 0)
        return;
    markup_open_class(html, "div", "proof");
    markup_element(html, web_heading(web, 2), "unseen", phrase_text(web->view.language, PHRASE_FIRST_THREE));
    markup_open_class(html, "ol", "decide");
    for (size_t i = 0; i < count; i++)
        decisive(web, chosen[i]);
    markup_close(html);
    web_player_caution(web);
    markup_close_line(html);
}

static void whole(const Web *web, const size_t *chosen, size_t count)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    size_t other = view_other(web->view.verdict);
    Buffer lost = {0}, with = {0};
    if (web->map->group_count == 0)
        return;
    SAY(&with, language, PHRASE_STRIP_LOST, slot_text("arrangement", "#"));
    if (other)
        SAY(&lost, language, PHRASE_STRIP_LOST, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(web->view.verdict, other)->name)));
    markup_open_class(html, "div", "whole");
    markup_open_class(html, "div", "whole-head");
    markup_element(html, web_heading(web, 1), NULL, phrase_text(language, PHRASE_FIRST_WHOLE));
    strip_key(&web->view, buffer_text(&lost), buffer_text(&with));
    markup_open(html, "a");
    markup_put_format(html, "href", "#m%zu-map", web->shown->number);
    markup_words(html, phrase_text(language, PHRASE_FIRST_TO_MAP));
    markup_close(html);
    markup_close(html);
    strip_whole(&web->view, chosen, count);
    markup_close(html);
    buffers_let_go(html, &lost, &with);
}

void web_first_screen(const Web *web)
{
    size_t chosen[VIEW_DECISIVE], count = view_decisive(&web->view, chosen);
    markup_open_class(web->html, "div", spz_verdict_count(web->view.verdict) ? "first" : "first undecided");
    verdict_of(web);
    stage_of(web);
    decisive_ones(web, chosen, count);
    whole(web, chosen, count);
    markup_close_line(web->html);
}
