/* Her own ear in the browser: at each passage a choice of what it is to count for, and the lines that say so in a settings file. Without a script
 * the page tells only where such lines go. */
#include "pages/web/web.h"

void web_ruled(const Web *web, size_t index)
{
    char line[WORDS_TEXT];
    Html *html = web->html;
    const spz_findings *findings = web->shown->reading.findings;
    const spz_passage *passage = spz_findings_at(findings, index);
    if (*spz_passage_line(findings, index, line, sizeof line))
        html_put(html, "data-line", line);
    if (passage->ruling.kind == SPZ_AS_FOUND)
        return;
    html_put(html, "data-ruling", passage->ruling.kind == SPZ_VETOED ? "no" : spz_weight_name(spz_weight_of(passage->strength)));
    html_put(html, "data-why", passage->ruling.reason);
}

static void choice(Html *html, const char *value, const char *words)
{
    html_open(html, "option");
    html_put(html, "value", value);
    html_words(html, words);
    html_close(html);
}

/* What the script puts into each passage. */
static void choices(Html *html, spz_language language)
{
    html_open(html, "template");
    html_open_class(html, "p", "ear-choice");
    html_open(html, "label");
    html_words(html, phrase_text(language, PHRASE_EAR_COUNTS));
    html_words(html, " ");
    html_open(html, "select");
    choice(html, "", phrase_text(language, PHRASE_EAR_AS_FOUND));
    choice(html, "no", phrase_text(language, PHRASE_RULING_VETOED));
    for (int weight = 0; weight < SPZ_WEIGHT_COUNT; weight++)
        choice(html, spz_weight_name((spz_weight)weight), phrase_text(language, (Phrase)(PHRASE_WEIGHT_MARGINAL + weight)));
    html_close(html);
    html_close(html);
    html_words(html, " ");
    html_open(html, "label");
    html_words(html, phrase_text(language, PHRASE_EAR_BECAUSE));
    html_words(html, " ");
    html_open(html, "input");
    html_put(html, "type", "text");
    html_put(html, "maxlength", "90"); /* the line stays within what a settings file takes */
    html_close_void(html);
    html_close(html);
    html_close(html);
    html_close(html);
}

void web_own_ear(const Web *web)
{
    char section[WORDS_TEXT];
    Html *html = web->html;
    spz_language language = web_speaker(web).language;
    html_open_class(html, "section", "ear");
    html_put(html, "data-section", ruling_section(web->shown, section, sizeof section));
    choices(html, language);
    html_element(html, web_heading(web, 2), NULL, phrase_text(language, PHRASE_EAR_TITLE));
    html_element(html, "p", NULL, phrase_text(language, PHRASE_EAR_ABOUT));
    html_open_class(html, "pre", "ear-lines");
    html_put(html, "tabindex", "0");
    html_put(html, "hidden", "hidden");
    html_close(html);
    html_open(html, "p");
    html_open_class(html, "button", "ear-copy");
    html_put(html, "type", "button");
    html_put(html, "hidden", "hidden");
    html_put(html, "data-done", phrase_text(language, PHRASE_EAR_COPIED));
    html_words(html, phrase_text(language, PHRASE_EAR_COPY));
    html_close(html);
    html_close(html);
    html_close(html);
    html_line_end(html);
}
