/* The passages that matter most, engraved: cut out of the score, sent to the engraver together, and put into the page as images. */
#include "pages/drawings/staves/engrave.h"
#include "pages/drawings/staves/entry_colours.h"
#include "pages/drawings/staves/notation_parts.h"
#include "pages/web/web.h"
#include "wording/passage_words.h"
#include "support/memory.h"
#include <stdlib.h>
#include <string.h>

enum {
    ENGRAVED_MOST = 64, /* a movement: keeps a page within some megabytes */
    BARS_MOST = 12,     /* a passage: two or three lines of notes, enough to hear how it goes */
    PARTS_MOST = 6
};

typedef struct Choice {
    size_t index;
    double strength;
} Choice;

static int stronger_first(const void *a, const void *b)
{
    const Choice *one = a, *two = b;
    if (one->strength != two->strength)
        return one->strength < two->strength ? 1 : -1;
    return one->index < two->index ? -1 : one->index > two->index;
}

static size_t last_shown(const spz_passage *passage)
{
    return passage->last - passage->first < BARS_MOST ? passage->last : passage->first + BARS_MOST - 1;
}

static void cut_passage(const Web *web, ExcerptSource *source, size_t index, Buffer *excerpt)
{
    ExcerptPart parts[PARTS_MOST];
    const spz_passage *passage = spz_findings_at(web->shown->reading.findings, index);
    size_t count = notation_parts(web->map, web->movement, view_players(passage), parts, PARTS_MOST);
    EntryColours colours = {web->map, passage, NULL};
    source->colour = entry_colour;
    source->context = &colours;
    if (count > 0 && passage->last < web->movement->bar_count)
        excerpt_cut(source, parts, count, passage->first, last_shown(passage), excerpt);
    source->colour = NULL;
    source->context = NULL;
}

/* The strongest of the clear and striking passages that are shown. */
static size_t choose(const Web *web, Choice *choices)
{
    size_t count = 0;
    for (size_t i = 0; i < spz_findings_count(web->shown->reading.findings); i++) {
        const spz_passage *passage = spz_findings_at(web->shown->reading.findings, i);
        if (view_strength(passage) > 0 && report_shows(&web->report->options, passage))
            choices[count++] = (Choice){i, passage->strength};
    }
    qsort(choices, count, sizeof *choices, stronger_first);
    return count < ENGRAVED_MOST ? count : ENGRAVED_MOST;
}

static spz_status engrave_chosen(const Web *web, ExcerptSource *source, const Choice *choices, size_t count, Buffer *drawings)
{
    spz_status status = SPZ_OK;
    Buffer excerpts[ENGRAVED_MOST] = {{0}}, made[ENGRAVED_MOST] = {{0}};
    for (size_t i = 0; i < count; i++) {
        cut_passage(web, source, choices[i].index, &excerpts[i]);
        if (excerpts[i].failed)
            status = SPZ_NO_MEMORY;
    }
    if (!status)
        status = engrave_all(web->report->options.engraver, web->report->options.cache, excerpts, made, count);
    for (size_t i = 0; i < count; i++) {
        drawings[choices[i].index] = made[i];
        buffer_free(&excerpts[i]);
    }
    return status;
}

void web_engrave(Web *web)
{
    size_t count = spz_findings_count(web->shown->reading.findings);
    ExcerptSource source;
    if (!web->report->options.engraver || count == 0 || excerpt_open(&source, web->shown->path, web->movement) != SPZ_OK)
        return;
    Choice *choices = memory_resize(NULL, count, sizeof *choices);
    web->drawings = memory_resize(NULL, count, sizeof *web->drawings);
    if (web->drawings)
        memset(web->drawings, 0, count * sizeof *web->drawings);
    if (!choices || !web->drawings)
        web->html->failed = true;
    else if (engrave_chosen(web, &source, choices, choose(web, choices), web->drawings) != SPZ_OK)
        web->html->failed = true;
    memory_free(choices);
    excerpt_close(&source);
}

void web_engraved_free(Web *web)
{
    for (size_t i = 0; web->drawings && i < spz_findings_count(web->shown->reading.findings); i++)
        buffer_free(&web->drawings[i]);
    memory_free(web->drawings);
    web->drawings = NULL;
}

/* Width of the drawing by its viewBox ('0 0 1040 362'), so that all passages have notes of one size. */
static int drawing_width(const Buffer *drawing)
{
    const char *box = strstr(drawing->text, "viewBox=\"0 0 ");
    int width = box ? atoi(box + strlen("viewBox=\"0 0 ")) : 0;
    return width > 0 && width < 10000 ? width : 1000;
}

bool web_notation(const Web *web, const spz_passage *passage, size_t index)
{
    char bars[WORDS_TEXT], who[WORDS_TEXT];
    Markup *html = web->html;
    Buffer address = {0};
    if (!web->drawings || !web->drawings[index].length)
        return false;
    Speaker speaker = web_speaker(web);
    markup_data_address(&address, "image/svg+xml", web->drawings[index].text, web->drawings[index].length);
    html->failed = html->failed || buffer_failed(&address);
    markup_open_class(html, "div", "scroll");
    markup_put(html, "tabindex", "0");
    markup_put(html, "role", "region");
    markup_put(html, "aria-label", phrase_text(speaker.language, PHRASE_WEB_NOTES));
    markup_open_class(html, "img", "notation");
    WEB_PUT(html, "alt", speaker.language, PHRASE_WEB_NOTES_ALT, slot_text("bars", words_bars(speaker.language, passage, bars)), slot_text("who", words_who(&speaker, passage, who)));
    markup_put_format(html, "width", "%d", drawing_width(&web->drawings[index]) * 9 / 10);
    markup_put(html, "loading", "lazy");
    markup_put(html, "src", address.text);
    markup_close_void(html);
    markup_close(html);
    buffer_free(&address);
    if (last_shown(passage) < passage->last) {
        markup_open_class(html, "p", "small");
        WEB_SAY(html, speaker.language, PHRASE_WEB_FIRST_BARS, slot_number("n", BARS_MOST), slot_number("of", (long)(passage->last - passage->first + 1)));
        markup_close(html);
    }
    return true;
}
