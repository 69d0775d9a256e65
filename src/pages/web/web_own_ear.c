/* Her own ear in the browser: at each passage a choice of what it is to count for, and the lines that say so in a settings file. Without a script
 * the page tells only where such lines go. */
#include "pages/web/web.h"

void web_ruled(const Web *web, size_t index)
{
    char line[WORDS_TEXT];
    Markup *html = web->html;
    const spz_findings *findings = web->shown->reading.findings;
    const spz_passage *passage = spz_findings_at(findings, index);
    if (*spz_passage_line(findings, index, line, sizeof line))
        markup_put(html, "data-line", line);
    if (passage->ruling.kind == SPZ_AS_FOUND)
        return;
    markup_put(html, "data-ruling", passage->ruling.kind == SPZ_VETOED ? "no" : spz_weight_name(spz_weight_of(passage->strength)));
    markup_put(html, "data-why", passage->ruling.reason);
}

static void choice(Markup *html, const char *value, const char *words)
{
    markup_open(html, "option");
    markup_put(html, "value", value);
    markup_words(html, words);
    markup_close(html);
}

/* What the script puts into each passage. */
static void choices(Markup *html, spz_language language)
{
    markup_open(html, "template");
    markup_open_class(html, "p", "ear-choice");
    markup_open(html, "label");
    markup_words(html, phrase_text(language, PHRASE_EAR_COUNTS));
    markup_words(html, " ");
    markup_open(html, "select");
    choice(html, "", phrase_text(language, PHRASE_EAR_AS_FOUND));
    choice(html, "no", phrase_text(language, PHRASE_RULING_VETOED));
    for (int weight = 0; weight < SPZ_WEIGHT_COUNT; weight++)
        choice(html, spz_weight_name((spz_weight)weight), phrase_text(language, (Phrase)(PHRASE_WEIGHT_MARGINAL + weight)));
    markup_close(html);
    markup_close(html);
    markup_words(html, " ");
    markup_open(html, "label");
    markup_words(html, phrase_text(language, PHRASE_EAR_BECAUSE));
    markup_words(html, " ");
    markup_open(html, "input");
    markup_put(html, "type", "text");
    markup_put(html, "maxlength", "90"); /* the line stays within what a settings file takes */
    markup_close_void(html);
    markup_close(html);
    markup_close(html);
    markup_close(html);
}

void web_own_ear(const Web *web)
{
    char section[WORDS_TEXT];
    Markup *html = web->html;
    spz_language language = web_speaker(web).language;
    markup_open_class(html, "section", "ear");
    markup_put(html, "data-section", ruling_section(web->shown, section, sizeof section));
    choices(html, language);
    markup_element(html, web_heading(web, 2), NULL, phrase_text(language, PHRASE_EAR_TITLE));
    markup_element(html, "p", NULL, phrase_text(language, PHRASE_EAR_ABOUT));
    markup_open_class(html, "pre", "ear-lines");
    markup_put(html, "tabindex", "0");
    markup_put(html, "hidden", "hidden");
    markup_close(html);
    markup_open(html, "p");
    markup_open_class(html, "button", "ear-copy");
    markup_put(html, "type", "button");
    markup_put(html, "hidden", "hidden");
    markup_put(html, "data-done", phrase_text(language, PHRASE_EAR_COPIED));
    markup_words(html, phrase_text(language, PHRASE_EAR_COPY));
    markup_close(html);
    markup_close(html);
    markup_close_line(html);
}
