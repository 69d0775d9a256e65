/* What the marks of a strip mean, as a row of samples. */
#include "pages/drawings/strip.h"

static void begin_sample(const ScoreView *view)
{
    html_open(view->html, "span");
    html_open(view->html, "svg");
    html_put(view->html, "width", "18");
    html_put(view->html, "height", "13");
    html_put(view->html, "aria-hidden", "true");
}

static void open_sample(const ScoreView *view, const char *class)
{
    begin_sample(view);
    html_box(view->html, class, 1.5, 1.5, 14, 10);
    html_close(view->html);
}

static void sample(const ScoreView *view, const char *class, const char *words)
{
    open_sample(view, class);
    html_words(view->html, words);
    html_close(view->html);
}

/* One or two lines as they run through a lane. */
static void line_sample(const ScoreView *view, const char *class, int lines, const char *words)
{
    begin_sample(view);
    for (int i = 0; i < lines; i++)
        html_line(view->html, class, 0, 13.0 * (i + 1) / (lines + 1), 16, 13.0 * (i + 1) / (lines + 1));
    html_close(view->html);
    html_words(view->html, words);
    html_close(view->html);
}

/* Whether there is anything of that sort; in a key to many movements there may be. */
static bool any(const ScoreView *view, bool coupled)
{
    bool found = !view->findings && !coupled;
    for (size_t i = 0; view->findings && !found && i < spz_findings_count(view->findings); i++) {
        spz_kind kind = spz_findings_at(view->findings, i)->kind;
        found = view_shows(view, i) && (coupled ? kind == SPZ_COUPLING : kind == SPZ_DIV2 || kind == SPZ_DIV3);
    }
    return found;
}

void strip_key(const ScoreView *view, const char *lost, const char *lost_with)
{
    html_open_class(view->html, "p", "key");
    sample(view, "call", phrase_text(view->language, PHRASE_STRIP_CALLS));
    sample(view, "answer", phrase_text(view->language, PHRASE_STRIP_ANSWERS));
    if (any(view, false))
        line_sample(view, "divided", 2, phrase_text(view->language, PHRASE_STRIP_DIVIDED));
    if (any(view, true) && view->movement->bar_count <= STRIP_LANES_MOST)
        line_sample(view, "coupled", 1, phrase_text(view->language, PHRASE_STRIP_COUPLED));
    if (*lost) {
        open_sample(view, "lost-sample");
        html_open_class(view->html, "span", "lost-words");
        html_put(view->html, "data-words", lost_with);
        html_words(view->html, lost);
        html_close(view->html);
        html_close(view->html);
    }
    html_close(view->html);
}
