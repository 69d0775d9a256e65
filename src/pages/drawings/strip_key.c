/* What the marks of a strip mean, as a row of samples. */
#include "pages/drawings/strip.h"

static void begin_sample(const ScoreView *view)
{
    markup_open(view->html, "span");
    markup_open(view->html, "svg");
    markup_put(view->html, "width", "18");
    markup_put(view->html, "height", "13");
    markup_put(view->html, "aria-hidden", "true");
}

static void open_sample(const ScoreView *view, const char *class)
{
    begin_sample(view);
    markup_box(view->html, class, 1.5, 1.5, 14, 10);
    markup_close(view->html);
}

static void sample(const ScoreView *view, const char *class, const char *words)
{
    open_sample(view, class);
    markup_words(view->html, words);
    markup_close(view->html);
}

/* One or two lines as they run through a lane. */
static void line_sample(const ScoreView *view, const char *class, int lines, const char *words)
{
    begin_sample(view);
    for (int i = 0; i < lines; i++)
        markup_line(view->html, class, 0, 13.0 * (i + 1) / (lines + 1), 16, 13.0 * (i + 1) / (lines + 1));
    markup_close(view->html);
    markup_words(view->html, words);
    markup_close(view->html);
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
    markup_open_class(view->html, "p", "key");
    sample(view, "call", phrase_text(view->language, PHRASE_STRIP_CALLS));
    sample(view, "answer", phrase_text(view->language, PHRASE_STRIP_ANSWERS));
    if (any(view, false))
        line_sample(view, "divided", 2, phrase_text(view->language, PHRASE_STRIP_DIVIDED));
    if (any(view, true) && view->movement->bar_count <= STRIP_LANES_MOST)
        line_sample(view, "coupled", 1, phrase_text(view->language, PHRASE_STRIP_COUPLED));
    if (*lost) {
        open_sample(view, "lost-sample");
        markup_open_class(view->html, "span", "lost-words");
        markup_put(view->html, "data-words", lost_with);
        markup_words(view->html, lost);
        markup_close(view->html);
        markup_close(view->html);
    }
    markup_close(view->html);
}
