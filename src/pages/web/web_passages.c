/* The list of passages: each a line that opens, and the form that filters them. */
#include "citations/contrast.h"
#include "pages/drawings/staves/stave.h"
#include "pages/drawings/strip.h"
#include "pages/web/web.h"
#include "wording/passage_words.h"
#include <stdio.h>
#include <string.h>

/* 'm1-p12': where passage `index` of the movement stands on its page. */
static char *web_passage_id(const Web *web, size_t index, char id[WEB_ID])
{
    snprintf(id, WEB_ID, "m%zu-p%zu", web->shown->number, index + 1);
    return id;
}

void web_bars_link(const Web *web, size_t index)
{
    char id[WEB_ID], bars[WORDS_TEXT];
    const spz_passage *passage = spz_findings_at(web->view.findings, index);
    markup_open_class(web->html, "a", "bars-link");
    markup_put_format(web->html, "href", "#%s", web_passage_id(web, index, id));
    WEB_SAY(web->html, web->view.language, passage->first == passage->last ? PHRASE_WEB_BAR : PHRASE_WEB_BARS, slot_text("bars", words_bars(web->view.language, passage, bars)));
    markup_close(web->html);
}

/* 'Vn I / Vn II' in score order, whoever calls. */
static void pair_words(const Web *web, const spz_passage *passage, char text[WORDS_TEXT])
{
    Speaker speaker = web_speaker(web);
    char of_side[2][WORDS_TEXT];
    const char *names[2] = {words_side(&speaker, &passage->sides[0], of_side[0]), words_side(&speaker, &passage->sides[1], of_side[1])};
    int first = passage->sides[1].section != SPZ_NO_SECTION && passage->sides[1].section < passage->sides[0].section;
    if (*names[1])
        snprintf(text, WORDS_TEXT, "%.70s / %.70s", names[first], names[!first]);
    else
        snprintf(text, WORDS_TEXT, "%.150s", names[0]);
}

/* All who enter in a chain, 'Vn I|Vn II|Va': the filter finds the passage under each pair of them. */
static void put_bodies(const Web *web, const spz_passage *passage)
{
    Buffer text = {0};
    spz_players all = 0;
    for (size_t i = 0; i < passage->link_count; i++)
        all |= passage->links[i].players;
    for (size_t g = 0; g < web->map->group_count && g < 63; g++)
        if (all >> g & 1)
            buffer_printf(&text, "%s%s", text.length ? "|" : "", web->map->groups[g].about.name);
    if (all & SPZ_WIND_PLAYERS)
        buffer_printf(&text, "%s%s", text.length ? "|" : "", spz_section_name(SPZ_WINDS));
    web->html->failed = web->html->failed || buffer_failed(&text);
    markup_put(web->html, "data-bodies", buffer_text(&text));
    buffer_free(&text);
}

static void entry_row(const Web *web, const spz_passage *passage, const spz_entry *entry)
{
    Markup *html = web->html;
    char beat[BEAT_TEXT], who[WORDS_TEXT], first[SPZ_PITCH_TEXT], last[SPZ_PITCH_TEXT];
    Speaker speaker = web_speaker(web);
    markup_open(html, "tr");
    markup_element(html, "td", NULL, web->movement->bars[entry->bar].number);
    markup_element(html, "td", NULL, words_beat(entry->beat, beat));
    markup_element(html, "td", NULL, words_players(&speaker, entry->players, who));
    markup_element(html, "td", NULL, phrase_text(speaker.language, passage->kind == SPZ_SPLIT_LINE ? PHRASE_WEB_HAS_LINE : entry->answer ? PHRASE_WEB_ANSWERS : PHRASE_WEB_CALLS));
    markup_open(html, "td");
    WEB_SAY(html, speaker.language, PHRASE_WEB_FROM_TO, slot_text("from", spz_pitch_text(entry->first, first)), slot_text("to", spz_pitch_text(entry->last, last)));
    markup_close(html);
    markup_close(html);
}

static void heads(Markup *html, const char *const *names, size_t count)
{
    markup_open(html, "thead");
    markup_open(html, "tr");
    for (size_t i = 0; i < count; i++) {
        markup_open(html, *names[i] ? "th" : "td");
        if (*names[i])
            markup_put(html, "scope", "col");
        markup_words(html, names[i]);
        markup_close(html);
    }
    markup_close(html);
    markup_close(html);
}

static void entry_table(const Web *web, const spz_passage *passage)
{
    spz_language language = web_speaker(web).language;
    const char *const names[] = {phrase_text(language, PHRASE_HEAD_BAR), phrase_text(language, PHRASE_HEAD_BEAT), phrase_text(language, PHRASE_HEAD_SECTION), "",
                                 phrase_text(language, PHRASE_HEAD_FROM_TO)};
    Markup *html = web->html;
    markup_open_class(html, "div", "scroll");
    markup_open_class(html, "table", "entries");
    heads(html, names, sizeof names / sizeof names[0]);
    markup_open(html, "tbody");
    for (size_t i = 0; i < passage->entry_count; i++)
        entry_row(web, passage, &passage->entries[i]);
    markup_close(html);
    markup_close(html);
    markup_close(html);
}

/* Bar by bar, folded: the notes stand above it. */
static void entries(const Web *web, const spz_passage *passage)
{
    Markup *html = web->html;
    if (passage->entry_count == 0 || !spz_kind_is_antiphony(passage->kind))
        return;
    markup_open_class(html, "details", "more");
    markup_open(html, "summary");
    WEB_SAY(html, web_speaker(web).language, PHRASE_WEB_ENTRIES, slot_number("n", (long)passage->entry_count));
    markup_close(html);
    entry_table(web, passage);
    markup_close(html);
}

static void summary(const Web *web, const spz_passage *passage)
{
    Buffer reason = {0};
    char text[WORDS_TEXT];
    Speaker speaker = web_speaker(web);
    Markup *html = web->html;
    markup_open(html, "summary");
    markup_open_class(html, "span", "bars");
    WEB_SAY(html, speaker.language, passage->first == passage->last ? PHRASE_WEB_BAR : PHRASE_WEB_BARS, slot_text("bars", words_bars(speaker.language, passage, text)));
    markup_close(html);
    markup_words(html, " ");
    markup_element(html, "span", "letter", words_letter(passage, text));
    markup_words(html, " ");
    markup_element(html, "span", "kind", words_kind(speaker.language, passage, text));
    markup_words(html, " ");
    markup_element(html, "span", "who", words_who(&speaker, passage, text));
    markup_words(html, " ");
    markup_element(html, "span", "strength", words_standing(speaker.language, passage, text));
    markup_words(html, " ");
    words_reason(&speaker, passage, &reason);
    markup_element(html, "span", "reason", reason.text);
    buffer_let_go(html, &reason);
    markup_close(html);
}

static size_t sounds_how_often(const Movement *movement, size_t bar)
{
    size_t times = 0;
    for (size_t i = 0; i < movement->played_count; i++)
        times += (size_t)movement->played[i] == bar;
    return times;
}

/* Without an engraver: a few lines of notes. */
static void drawn_notes(const Web *web, const spz_passage *passage)
{
    enum { LINES_MOST = 4 };
    spz_language language = web->view.language;
    size_t bar = passage->first, next = bar;
    markup_open_class(web->html, "div", "drawn");
    for (int line = 0; line < LINES_MOST && bar <= passage->last; line++, bar = next) {
        next = stave_line(&web->view, passage, bar, stave_full);
        if (next == bar)
            break;
    }
    markup_close(web->html);
    if (bar > passage->first && bar <= passage->last) {
        markup_open_class(web->html, "p", "small");
        WEB_SAY(web->html, language, PHRASE_WEB_FIRST_BARS, slot_number("n", (long)(bar - passage->first)), slot_number("of", (long)(passage->last - passage->first + 1)));
        markup_close(web->html);
    }
}

/* 'and again bars 329-346', as links. */
static void again(const Web *web, size_t index)
{
    size_t count = 0;
    const spz_passage *passage = spz_findings_at(web->view.findings, index);
    size_t times = sounds_how_often(web->movement, passage->first);
    for (size_t later = index + 1; later < spz_findings_count(web->view.findings); later++) {
        if (!view_repeats(&web->view, index, later) || !view_shows(&web->view, later))
            continue;
        if (count == 0)
            markup_open_class(web->html, "p", "again");
        markup_words(web->html, count++ ? ", " : phrase_text(web->view.language, PHRASE_WEB_AGAIN));
        web_bars_link(web, later);
    }
    if (count)
        markup_close(web->html);
    if (times > 1) {
        markup_open_class(web->html, "p", "again");
        WEB_SAY(web->html, web->view.language, PHRASE_WEB_PLAYED, slot_number("n", (long)times));
        markup_close(web->html);
    }
}

/* Those who double a side without standing in its name. */
static void doubled(const Web *web, const spz_passage *passage)
{
    char names[WORDS_TEXT];
    spz_players others = 0;
    Speaker speaker = web_speaker(web);
    for (int side = 0; side < 2; side++)
        if (passage->sides[side].group < 63)
            others |= passage->sides[side].players & ~((spz_players)1 << passage->sides[side].group);
    for (int side = 0; side < 2; side++)
        if (passage->sides[side].group < 63)
            others &= ~((spz_players)1 << passage->sides[side].group);
    if (!others)
        return;
    markup_open_class(web->html, "p", "again");
    WEB_SAY(web->html, speaker.language, PHRASE_WEB_DOUBLED, slot_text("names", words_players(&speaker, others, names)));
    markup_close(web->html);
}

/* Where one section has the same line by itself: what the sharing out is heard against. */
static void contrast(const Web *web, const spz_passage *passage)
{
    Contrast whole;
    char name[WORDS_TEXT];
    if (!contrast_of(web->map, passage, &whole))
        return;
    const Bar *bars = web->movement->bars;
    markup_open_class(web->html, "p", "again");
    WEB_SAY(web->html, web->view.language, whole.first == whole.last ? PHRASE_WEB_WHOLE_BAR : PHRASE_WEB_WHOLE, slot_text("who", view_name(&web->view, &web->map->groups[whole.group], name)),
            slot_text("from", bars[whole.first].number), slot_text("to", bars[whole.last].number));
    markup_close(web->html);
}

/* A repeat, note for note, is told where the music is heard first. */
static void as_before(const Web *web, size_t first)
{
    markup_open_class(web->html, "p", "again");
    markup_words(web->html, phrase_text(web->view.language, PHRASE_WEB_AS));
    markup_words(web->html, " ");
    web_bars_link(web, first);
    markup_close(web->html);
}

static void passage_details(const Web *web, const spz_passage *passage, size_t index, bool open)
{
    char id[WEB_ID], pair[WORDS_TEXT];
    Markup *html = web->html;
    markup_open(html, "details");
    size_t first = view_first_heard(&web->view, index);
    markup_put_format(html, "class", "passage k-%s s%d%s", spz_kind_name(passage->kind), view_strength(passage), first == index ? "" : " repeat");
    markup_put(html, "id", web_passage_id(web, index, id));
    markup_put(html, "data-kind", spz_kind_name(passage->kind));
    markup_put_format(html, "data-strength", "%d", view_strength(passage));
    if (open)
        markup_put(html, "open", "open");
    if (view_cites(&web->view, index))
        markup_put(html, "data-cited", "cited");
    pair_words(web, passage, pair);
    markup_put(html, "data-pair", pair);
    put_bodies(web, passage);
    web_ruled(web, index);
    summary(web, passage);
    if (first == index)
        again(web, index);
    else
        as_before(web, first);
    doubled(web, passage);
    contrast(web, passage);
    if (!web_notation(web, passage, index))
        drawn_notes(web, passage);
    entries(web, passage);
    markup_close_line(html);
}

static void kind_box(Markup *html, spz_language language, spz_kind kind)
{
    char name[WORDS_TEXT];
    markup_open(html, "label");
    markup_open(html, "input");
    markup_put(html, "type", "checkbox");
    markup_put(html, "name", "kind");
    markup_put(html, "value", spz_kind_name(kind));
    markup_put(html, "checked", "checked");
    markup_close_void(html);
    markup_words(html, words_kind(language, &(spz_passage){.kind = kind}, name));
    if (kind == SPZ_DIV2 || kind == SPZ_DIV3)
        markup_words(html, phrase_text(language, kind == SPZ_DIV2 ? PHRASE_WEB_IN_TWO : PHRASE_WEB_IN_THREE));
    markup_close(html);
}

static bool has_kind(const spz_findings *findings, spz_kind kind)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++)
        if (spz_findings_at(findings, i)->kind == kind)
            return true;
    return false;
}

static void strength_choice(Markup *html, const char *form, int value, const char *words, bool chosen)
{
    markup_open(html, "label");
    markup_open(html, "input");
    markup_put(html, "type", "radio");
    markup_put_format(html, "name", "%s-strength", form);
    markup_put_format(html, "value", "%d", value);
    if (chosen)
        markup_put(html, "checked", "checked");
    markup_close_void(html);
    markup_words(html, words);
    markup_close(html);
}

/* The choice among the pairs is made from the list by the script: without a script nothing is filtered. */
static void filters(const Web *web)
{
    Markup *html = web->html;
    spz_language language = web_speaker(web).language;
    char form[WEB_ID];
    snprintf(form, sizeof form, "m%zu", web->shown->number);
    markup_open_class(html, "form", "filters");
    markup_open(html, "fieldset");
    markup_element(html, "legend", NULL, phrase_text(language, PHRASE_HEAD_KIND));
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++)
        if (has_kind(web->shown->reading.findings, (spz_kind)kind))
            kind_box(html, language, (spz_kind)kind);
    markup_close(html);
    markup_open(html, "fieldset");
    markup_element(html, "legend", NULL, phrase_text(language, PHRASE_HEAD_STRENGTH));
    strength_choice(html, form, 0, phrase_text(language, PHRASE_WEB_ALL), false);
    strength_choice(html, form, 1, phrase_text(language, PHRASE_WEB_CLEAR_OR_STRIKING), true);
    strength_choice(html, form, 2, words_weight(language, 1), false);
    markup_close(html);
    markup_open(html, "fieldset");
    markup_element(html, "legend", NULL, phrase_text(language, PHRASE_HEAD_SECTION));
    markup_open(html, "select");
    markup_put(html, "name", "pair");
    markup_put(html, "aria-label", phrase_text(language, PHRASE_HEAD_SECTION));
    markup_open(html, "option");
    markup_put(html, "value", "");
    markup_words(html, phrase_text(language, PHRASE_WEB_ALL));
    markup_close(html);
    markup_close(html);
    markup_close(html);
    markup_open(html, "output");
    markup_put(html, "aria-live", "polite");
    markup_put(html, "data-words", phrase_text(language, PHRASE_WEB_SHOWN));
    markup_close(html);
    markup_close(html);
}

/* Opened from the start: the first of those that strike the ear. */
static void list(const Web *web)
{
    enum { OPEN_MOST = 12 };
    const spz_findings *findings = web->view.findings;
    size_t opened = 0;
    markup_open_class(web->html, "div", "passages");
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (!view_shows(&web->view, i))
            continue;
        bool open = opened < OPEN_MOST && view_first_heard(&web->view, i) == i && view_strength(passage) == 2 && spz_kind_is_antiphony(passage->kind);
        opened += open;
        passage_details(web, passage, i, open);
    }
    markup_close(web->html);
}

/* The map with all lanes, line under line, where the first screen has three rows only. */
static void map(const Web *web)
{
    Markup *html = web->html;
    markup_open_class(html, "div", "map");
    markup_put_format(html, "id", "m%zu-map", web->shown->number);
    if (web->movement->bar_count > STRIP_LANES_MOST)
        strip_systems(&web->view);
    markup_close(html);
}

void web_passages(const Web *web)
{
    Markup *html = web->html;
    spz_language language = web_speaker(web).language;
    markup_open_class(html, "section", "part");
    markup_element(html, web_heading(web, 1), NULL, phrase_text(language, PHRASE_WEB_PASSAGES));
    if (spz_findings_count(web->view.findings) == 0) {
        markup_element(html, "p", NULL, phrase_text(language, PHRASE_WEB_NONE));
    } else {
        filters(web);
        map(web);
        list(web);
        web_own_ear(web);
    }
    markup_close_line(html);
}
