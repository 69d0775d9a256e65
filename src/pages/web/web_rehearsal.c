/* The rehearsal sheet at the end of a movement's page: by who is called, with a box to tick. */
#include "advice/rehearsal.h"
#include "pages/web/web.h"
#include "wording/papers/rehearsal_words.h"

/* What the passage is, as a sentence. */
static void put_told(const Speaker *speaker, const spz_passage *passage, Buffer *out)
{
    Buffer told = {0};
    words_told(speaker, passage, &told);
    SAY(out, speaker->language, PHRASE_REHEARSAL_WHAT, slot_text("told", told.text));
    buffer_let_go(out, &told);
}

static void row(const Web *web, const RehearsalItem *item, Buffer *words)
{
    Markup *html = web->html;
    Speaker speaker = {web->view.language, web->map};
    char letter[WORDS_TEXT];
    markup_open(html, "li");
    markup_element(html, "span", "box", "");
    markup_open_class(html, "span", "where");
    web_bars_link(web, item->place);
    if (*words_letter(item->passage, letter))
        markup_element(html, "span", "letter", letter);
    markup_close(html);
    say_lasts(words, web->view.language, item);
    web_element(html, "span", "lasts", words);
    markup_open_class(html, "span", "listen");
    say_entry_bars(words, &speaker, item->passage);
    if (!words->length)
        put_told(&speaker, item->passage, words);
    buffer_puts(words, ". ");
    say_listening(words, web->view.language, item);
    web_words(html, words);
    markup_close(html);
    markup_close_line(html);
}

static void call_of(const Web *web, const RehearsalPlan *plan, const RehearsalCall *call, Buffer *words)
{
    Markup *html = web->html;
    Speaker speaker = {web->view.language, web->map};
    say_call(words, &speaker, call);
    web_element(html, web_heading(web, 2), NULL, words);
    markup_open_class(html, "ul", "to-rehearse");
    for (size_t i = 0; i < call->count; i++)
        row(web, &plan->items.at[call->first + i], words);
    markup_close(html);
}

void web_rehearsal(const Web *web)
{
    RehearsalPlan plan;
    Buffer words = {0};
    spz_sheet_options options = SPZ_SHEET_USUAL;
    options.kinds = web->report->options.kinds;
    options.strength = web->report->options.strength > options.strength ? web->report->options.strength : options.strength;
    if (rehearsal_plan(&web->shown->reading, web->report->options.settings, &options, &plan))
        web->html->failed = true;
    if (plan.calls.count) {
        markup_open_class(web->html, "section", "part rehearsal");
        markup_element(web->html, web_heading(web, 1), NULL, phrase_text(web->view.language, PHRASE_REHEARSAL_TITLE));
        markup_element(web->html, "p", "lead", phrase_text(web->view.language, PHRASE_REHEARSAL_ABOUT));
        for (size_t i = 0; i < plan.calls.count; i++)
            call_of(web, &plan, &plan.calls.at[i], &words);
        markup_close_line(web->html);
    }
    buffer_let_go(web->html, &words);
    rehearsal_free(&plan);
}
