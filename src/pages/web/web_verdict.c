/* The recommendation on the conductor's page, the table of arrangements, the stage. */
#include "support/numbers.h"
#include "pages/drawings/stage_svg.h"
#include "pages/web/web.h"
#include "wording/seating_words.h"
#include "spezzato/stage.h"
#include <string.h>

/* The buffer in the element that is open; it is emptied. */
static void put_words(Html *html, Buffer *words)
{
    html_words(html, words->text ? words->text : "");
    html->failed = html->failed || buffer_failed(words);
    buffer_clear(words);
}

static void open_with(Html *html, const char *element, const char *class)
{
    if (class)
        html_open_class(html, element, class);
    else
        html_open(html, element);
}

static void put_paragraph(Html *html, const char *class, Buffer *words)
{
    if (!words->length)
        return;
    open_with(html, "p", class);
    put_words(html, words);
    html_close(html);
}

/* With the word for how sure it is, which stands first in every language, in bold. */
static void put_margin(Html *html, const char *sure, Buffer *words)
{
    size_t length = strlen(sure);
    html_open(html, "p");
    if (words->text && strncmp(words->text, sure, length) == 0) {
        html_element(html, "strong", NULL, sure);
        html_words(html, words->text + length);
        buffer_clear(words);
    } else {
        put_words(html, words);
    }
    html_close(html);
}

static void reasons(Html *html, spz_language language, const spz_verdict *verdict, Buffer *words)
{
    if (spz_verdict_reasons(verdict) == 0)
        return;
    html_open_class(html, "ul", "reasons");
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++) {
        html_open(html, "li");
        say_reason_and_place(words, language, verdict, spz_verdict_reason(verdict, i));
        put_words(html, words);
        html_close(html);
        html_line_end(html);
    }
    html_close(html);
}

void web_verdict(Html *html, spz_language language, const spz_verdict *verdict)
{
    Buffer words;
    buffer_init(&words);
    if (spz_verdict_count(verdict) == 0) {
        say_statement(&words, language, spz_verdict_statement(verdict));
        put_paragraph(html, "verdict", &words);
        buffer_free(&words);
        return;
    }
    html_open_class(html, "p", "verdict");
    html_open(html, "strong");
    SAY(&words, language, PHRASE_ARRANGEMENT_TITLE, slot_text("arrangement", words_arrangement(language, spz_verdict_ranked(verdict, 0)->name)));
    put_words(html, &words);
    html_close(html);
    html_close(html);
    say_best_order(&words, language, verdict);
    put_paragraph(html, NULL, &words);
    say_margin(&words, language, verdict);
    put_margin(html, words_confidence(language, spz_verdict_confidence(verdict)), &words);
    say_year(&words, language, verdict);
    put_paragraph(html, "year", &words);
    reasons(html, language, verdict, &words);
    say_instead(&words, language, verdict);
    put_paragraph(html, NULL, &words);
    buffer_free(&words);
}

static void head_cell(Html *html, const char *scope, const char *text)
{
    html_open(html, "th");
    html_put(html, "scope", scope);
    html_words(html, text);
    html_close(html);
}

/* The points once more as a bar, for the eye. */
static void points_cell(Html *html, spz_language language, double score)
{
    Buffer text;
    buffer_init(&text);
    say_figure(&text, language, score, 1);
    html_open_class(html, "td", "points");
    put_words(html, &text);
    buffer_free(&text);
    html_open_drawing(html, "meter", 100, 8, NULL);
    html_put(html, "aria-hidden", "true");
    html_box(html, "meter-ground", 0, 0, 100, 8);
    html_box(html, "meter-fill", 0, 0, score < 0 ? 0 : score > 100 ? 100 : score, 8);
    html_line(html, "meter-middle", 50, 0, 50, 8);
    html_close(html);
    html_close(html);
}

/* The buffer as a cell; it is emptied. */
static void cell(Html *html, const char *class, Buffer *words)
{
    open_with(html, "td", class);
    put_words(html, words);
    html_close(html);
}

static void arrangement_row(Html *html, spz_language language, const spz_verdict *verdict, size_t place)
{
    const spz_ranked *ranked = spz_verdict_ranked(verdict, place);
    Buffer words;
    buffer_init(&words);
    html_open(html, "tr");
    html_open(html, "td");
    html_format(html, "%zu.", place + 1);
    html_close(html);
    points_cell(html, language, ranked->score);
    head_cell(html, "row", words_arrangement(language, ranked->name));
    say_order(&words, language, ranked->order);
    cell(html, NULL, &words);
    say_ranked_losses(&words, language, verdict, ranked);
    buffer_puts(&words, words.length ? "" : phrase_text(language, PHRASE_ARRANGEMENTS_NOTHING));
    cell(html, NULL, &words);
    html_close(html);
    html_line_end(html);
    buffer_free(&words);
}

static void term_row(Html *html, spz_language language, const spz_verdict *verdict, size_t index)
{
    Buffer words;
    buffer_init(&words);
    html_open(html, "tr");
    head_cell(html, "row", words_term(language, spz_verdict_ranked(verdict, 0)->terms[index].kind));
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        double points = spz_verdict_ranked(verdict, i)->terms[index].points;
        buffer_puts(&words, points >= 0.05 ? "+" : "");
        say_figure(&words, language, points, 1);
        cell(html, "figure", &words);
    }
    say_first_because(&words, language, verdict, index);
    cell(html, NULL, &words);
    html_close(html);
    html_line_end(html);
    buffer_free(&words);
}

static void terms(Html *html, spz_language language, const spz_verdict *verdict)
{
    html_open(html, "details");
    html_element(html, "summary", NULL, phrase_text(language, PHRASE_TERMS_HEADING));
    html_open_class(html, "div", "scroll");
    html_open(html, "table");
    html_open(html, "thead");
    html_open(html, "tr");
    head_cell(html, "col", phrase_text(language, PHRASE_TERMS_HEAD_GROUND));
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        char place[NUMBER_TEXT];
        head_cell(html, "col", number_text((double)i + 1, 0, place));
    }
    head_cell(html, "col", phrase_text(language, PHRASE_TERMS_HEAD_BECAUSE));
    html_close(html);
    html_close(html);
    html_open(html, "tbody");
    for (size_t t = 0; t < spz_verdict_ranked(verdict, 0)->term_count; t++)
        term_row(html, language, verdict, t);
    for (int i = 0; i < 4; i++) /* tbody, table, div, details */
        html_close(html);
}

void web_arrangements(Html *html, spz_language language, const spz_verdict *verdict)
{
    static const Phrase heads[] = {PHRASE_ARRANGEMENTS_HEAD_POINTS, PHRASE_ARRANGEMENTS_HEAD_NAME, PHRASE_ARRANGEMENTS_HEAD_ORDER,
                                   PHRASE_ARRANGEMENTS_HEAD_WEAKENS};
    if (spz_verdict_count(verdict) == 0)
        return;
    html_element(html, "h3", NULL, phrase_text(language, PHRASE_ARRANGEMENTS_HEADING));
    html_element(html, "p", "small", phrase_text(language, PHRASE_ARRANGEMENTS_ABOUT));
    html_open_class(html, "div", "scroll");
    html_open_class(html, "table", "arrangements");
    html_open(html, "thead");
    html_open(html, "tr");
    head_cell(html, "col", "");
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++)
        head_cell(html, "col", phrase_text(language, heads[i]));
    html_close(html);
    html_close(html);
    html_open(html, "tbody");
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        arrangement_row(html, language, verdict, i);
    html_close(html);
    html_close(html);
    html_close(html);
    terms(html, language, verdict);
}

/* The drawing goes in as an image of its own, so that its styles stay its own. */
static void stage_image(Html *html, spz_language language, const spz_plan *plan, const spz_document *drawing)
{
    Buffer address, words, order;
    size_t length = 0;
    const char *svg = spz_document_text(drawing, &length);
    buffer_init(&address);
    buffer_init(&words);
    buffer_init(&order);
    html_data_address(&address, "image/svg+xml", svg, length);
    say_order(&order, language, spz_plan_order(plan));
    SAY(&words, language, PHRASE_STAGE_IMAGE, slot_text("arrangement", words_arrangement(language, spz_plan_arrangement(plan))),
        slot_text("order", order.text));
    html->failed = html->failed || address.failed || words.failed || order.failed;
    html_open_class(html, "img", "stage");
    html_put(html, "alt", words.text);
    html_put(html, "src", address.text);
    html_close_void(html);
    html_line_end(html);
    buffer_free(&address);
    buffer_free(&words);
    buffer_free(&order);
}

void web_stage(const Web *web)
{
    const spz_verdict *verdict = web->shown->reading.verdict;
    spz_language language = web->report->options.language;
    spz_section pairs[2][2];
    size_t count = 0;
    spz_plan *plan = NULL;
    spz_document *drawing = NULL;
    if (!web->report->options.settings || spz_verdict_count(verdict) == 0)
        return;
    while (count < 2 && spz_verdict_pair(verdict, count, pairs[count]))
        count++;
    html_element(web->html, "h3", NULL, phrase_text(language, PHRASE_STAGE_HEADING));
    spz_status (*const lay_out)(const spz_settings *, const char *, bool, const spz_sink *, spz_plan **) =
        spz_verdict_orchestras(verdict) > 1 ? spz_stage_plan_double : spz_stage_plan;
    spz_status status = lay_out(web->report->options.settings, spz_verdict_ranked(verdict, 0)->name, spz_verdict_thirds(verdict), NULL, &plan);
    if (!status)
        status = stage_svg(plan, (StagePairs)pairs, count, language, &drawing);
    if (!status)
        stage_image(web->html, language, plan, drawing);
    else if (status == SPZ_NO_MEMORY)
        web->html->failed = true;
    else
        html_element(web->html, "p", NULL, phrase_text(language, PHRASE_STAGE_NO_ROOM));
    spz_document_free(drawing);
    spz_plan_free(plan);
}
