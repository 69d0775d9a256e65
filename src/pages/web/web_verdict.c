/* The recommendation on the conductor's page, the table of arrangements, the stage. */
#include "editing/score_files.h"
#include "writing/number_text.h"
#include "pages/drawings/stage_svg.h"
#include "pages/web/web.h"
#include "wording/passage_words.h"
#include "spezzato/stage.h"
#include <math.h>
#include <string.h>

static void reasons(Html *html, const spz_verdict *verdict)
{
    if (spz_verdict_reasons(verdict) == 0)
        return;
    html_open_class(html, "ul", "reasons");
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++) {
        const spz_reason *reason = spz_verdict_reason(verdict, i);
        html_open(html, "li");
        html_words(html, reason->text);
        if (*reason->bars)
            html_format(html, " (bars %s)", reason->bars);
        html_close(html);
        html_line_end(html);
    }
    html_close(html);
}

void web_verdict(Html *html, const spz_verdict *verdict)
{
    char name[WORDS_TEXT];
    if (spz_verdict_count(verdict) == 0) {
        html_element(html, "p", "verdict", spz_verdict_statement_text(verdict));
        return;
    }
    const spz_ranked *best = spz_verdict_ranked(verdict, 0), *other = judged_other_placing(verdict);
    html_open_class(html, "p", "verdict");
    html_element(html, "strong", NULL, words_capital(best->name, name, sizeof name));
    html_close(html);
    html_open(html, "p");
    html_format(html, "From house left to house right: %s.", best->order_text);
    html_close(html);
    html_open(html, "p");
    html_element(html, "strong", NULL, words_confidence(spz_verdict_confidence(verdict)));
    html_format(html, ": %s. Margin over the best seating with the violins %s: %ld of 100.",
                words_confidence_meaning(spz_verdict_confidence(verdict)), best->opposed ? "together" : "opposed",
                lround(spz_verdict_margin(verdict) * 100));
    if (*spz_verdict_turning(verdict))
        html_format(html, " It %s.", spz_verdict_turning(verdict));
    html_close(html);
    reasons(html, verdict);
    if (!other)
        return;
    html_open(html, "p");
    if (*other->losses_text)
        html_format(html, "With %s instead: lost or weakened are %s.", other->name, other->losses_text);
    else
        html_format(html, "With %s instead: no passage of the score is weakened.", other->name);
    html_close(html);
}

static void head_cell(Html *html, const char *scope, const char *text)
{
    html_open(html, "th");
    html_put(html, "scope", scope);
    html_words(html, text);
    html_close(html);
}

/* The points once more as a bar, for the eye. */
static void points_cell(Html *html, double score)
{
    char text[NUMBER_TEXT];
    html_open_class(html, "td", "points");
    html_words(html, number_text(score, 1, text));
    html_open_drawing(html, "meter", 100, 8, NULL);
    html_put(html, "aria-hidden", "true");
    html_box(html, "meter-ground", 0, 0, 100, 8);
    html_box(html, "meter-fill", 0, 0, score < 0 ? 0 : score > 100 ? 100 : score, 8);
    html_line(html, "meter-middle", 50, 0, 50, 8);
    html_close(html);
    html_close(html);
}

static void arrangement_row(Html *html, const spz_ranked *ranked, size_t place)
{
    html_open(html, "tr");
    html_open(html, "td");
    html_format(html, "%zu.", place + 1);
    html_close(html);
    points_cell(html, ranked->score);
    head_cell(html, "row", ranked->name);
    html_element(html, "td", NULL, ranked->order_text);
    html_element(html, "td", NULL, *ranked->losses_text ? ranked->losses_text : "nothing");
    html_close(html);
    html_line_end(html);
}

static const spz_term *term_of(const spz_ranked *ranked, const char *name)
{
    for (size_t i = 0; i < ranked->term_count; i++)
        if (strcmp(ranked->terms[i].name, name) == 0)
            return &ranked->terms[i];
    return NULL;
}

static void term_row(Html *html, const spz_verdict *verdict, const char *name)
{
    const char *because = "";
    html_open(html, "tr");
    head_cell(html, "row", name);
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const spz_term *term = term_of(spz_verdict_ranked(verdict, i), name);
        char points[NUMBER_TEXT];
        html_open_class(html, "td", "figure");
        html_format(html, "%s%s", term && term->points > 0.05 ? "+" : "", number_text(term ? term->points : 0, 1, points));
        html_close(html);
        because = term && !*because ? term->because : because;
    }
    html_element(html, "td", NULL, because);
    html_close(html);
    html_line_end(html);
}

static void terms(Html *html, const spz_verdict *verdict)
{
    html_open(html, "details");
    html_element(html, "summary", NULL, "What speaks for (+) and against (-) each arrangement");
    html_open_class(html, "div", "scroll");
    html_open(html, "table");
    html_open(html, "thead");
    html_open(html, "tr");
    head_cell(html, "col", "Ground");
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        char place[NUMBER_TEXT];
        head_cell(html, "col", number_text((double)i + 1, 0, place));
    }
    head_cell(html, "col", "In the first arrangement that it touches");
    html_close(html);
    html_close(html);
    html_open(html, "tbody");
    for (size_t place = 0; place < spz_verdict_count(verdict); place++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, place);
        for (size_t t = 0; t < ranked->term_count; t++) {
            bool before = false;
            for (size_t i = 0; i < place && !before; i++)
                before = term_of(spz_verdict_ranked(verdict, i), ranked->terms[t].name) != NULL;
            if (!before)
                term_row(html, verdict, ranked->terms[t].name);
        }
    }
    for (int i = 0; i < 4; i++) /* tbody, table, div, details */
        html_close(html);
}

void web_arrangements(Html *html, const spz_verdict *verdict)
{
    static const char *const names[] = {"", "Points", "Arrangement", "From house left to house right", "What it weakens"};
    if (spz_verdict_count(verdict) == 0)
        return;
    html_element(html, "h3", NULL, "Arrangements");
    html_element(html, "p", "small", "100 points: all evidence speaks for it; 50: none either way.");
    html_open_class(html, "div", "scroll");
    html_open_class(html, "table", "arrangements");
    html_open(html, "thead");
    html_open(html, "tr");
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        head_cell(html, "col", names[i]);
    html_close(html);
    html_close(html);
    html_open(html, "tbody");
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        arrangement_row(html, spz_verdict_ranked(verdict, i), i);
    html_close(html);
    html_close(html);
    html_close(html);
    terms(html, verdict);
}

/* The drawing goes in as an image of its own, so that its styles stay its own. */
static void stage_image(Html *html, const spz_plan *plan, const spz_document *drawing)
{
    Buffer address;
    size_t length = 0;
    const char *svg = spz_document_text(drawing, &length);
    buffer_init(&address);
    html_data_address(&address, "image/svg+xml", svg, length);
    html->failed = html->failed || buffer_failed(&address);
    html_open_class(html, "img", "stage");
    html_put_format(html, "alt", "Plan of the stage to scale: %s, from house left to house right %s", spz_plan_arrangement(plan), spz_plan_order_text(plan));
    html_put(html, "src", address.text);
    html_close_void(html);
    html_line_end(html);
    buffer_free(&address);
}

void web_stage(const Web *web)
{
    const spz_verdict *verdict = web->shown->reading.verdict;
    spz_section pairs[2][2];
    size_t count = 0;
    spz_plan *plan = NULL;
    spz_document *drawing = NULL;
    if (!web->report->options.settings || spz_verdict_count(verdict) == 0)
        return;
    while (count < 2 && spz_verdict_pair(verdict, count, pairs[count]))
        count++;
    html_element(web->html, "h3", NULL, "Stage");
    spz_status (*const lay_out)(const spz_settings *, const char *, bool, const spz_sink *, spz_plan **) =
        spz_verdict_orchestras(verdict) > 1 ? spz_stage_plan_double : spz_stage_plan;
    spz_status status = lay_out(web->report->options.settings, spz_verdict_ranked(verdict, 0)->name, spz_verdict_thirds(verdict), NULL, &plan);
    if (!status)
        status = stage_svg(plan, (StagePairs)pairs, count, &drawing);
    if (!status)
        stage_image(web->html, plan, drawing);
    else if (status == SPZ_NO_MEMORY)
        web->html->failed = true;
    else
        html_element(web->html, "p", NULL, "The players of the settings do not fit on the stage of the settings: `spezzato stage` says what would.");
    spz_document_free(drawing);
    spz_plan_free(plan);
}
