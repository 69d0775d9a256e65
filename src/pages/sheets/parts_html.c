/* The sheet for paper: one table a part, each part of each movement begins a page when printed, rows are never cut. One file, nothing
 * is fetched from anywhere. */
#include "pages/sheets/parts_sheet.h"
#include "pages/growing_report.h"

static const char head[] =
    "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>What to write into the string parts</title>\n<style>\n"
    ":root { color-scheme: light dark; }\n"
    "body { font: 1rem/1.4 Georgia, 'DejaVu Serif', serif; max-width: 60rem; margin: 1.5rem auto; padding: 0 1rem; }\n"
    "h1 { font-size: 1.5rem; margin: 0 0 .2rem; overflow-wrap: anywhere; }\n"
    "h2 { font-size: 1.2rem; margin: 1.6rem 0 .3rem; overflow-wrap: anywhere; }\n"
    ".about, .remark, .cautions { font-size: .85rem; }\n"
    ".about { margin: 0; overflow-wrap: anywhere; }\n"
    "table { border-collapse: collapse; width: 100%; }\n"
    "th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid #888; }\n"
    "th { border-bottom-width: 2px; font-size: .85rem; }\n"
    "td.bar, td.beat { font-variant-numeric: tabular-nums; white-space: nowrap; }\n"
    "td.write { font-weight: bold; width: 60%; overflow-wrap: anywhere; }\n"
    ".remark { display: block; font-weight: normal; }\n"
    ".done { display: inline-block; width: .9rem; height: .9rem; border: 1px solid; }\n"
    ".cautions { margin-top: 1.5rem; border-top: 1px solid #888; padding-top: .5rem; }\n"
    "@media (max-width: 40rem) {\n"
    "  thead { position: absolute; left: -200vw; }\n"
    "  table, tbody { display: block; }\n"
    "  tr { display: flex; flex-wrap: wrap; gap: 0 .8rem; border-bottom: 1px solid #888; padding: .4rem 0; }\n"
    "  td { display: block; border: 0; padding: 0; }\n"
    "  td:empty { display: none; }\n"
    "  td.bar::before { content: 'bar '; } td.beat::before { content: 'beat '; }\n"
    "  td.write { flex-basis: 100%; width: auto; }\n}\n"
    "@media print {\n"
    "  @page { margin: 15mm; }\n"
    "  body { max-width: none; margin: 0; padding: 0; font-size: 10.5pt; color: #000; background: #fff; }\n"
    "  section.part { break-before: page; }\n"
    "  section.part.first { break-before: auto; }\n"
    "  section.movement { break-before: page; }\n"
    "  section.movement.first { break-before: auto; }\n"
    "  thead { display: table-header-group; }\n"
    "  tr { break-inside: avoid; }\n"
    "  h1, h2 { break-after: avoid; }\n"
    "  .cautions { break-inside: avoid; }\n}\n"
    "</style>\n</head>\n<body>\n";

static void html_begin(Buffer *out)
{
    buffer_puts(out, head);
}

static void html_end(Buffer *out)
{
    buffer_puts(out, "</body>\n</html>\n");
}

static void cell(Buffer *out, const char *name, const char *text)
{
    buffer_printf(out, "<td class=\"%s\">", name);
    buffer_xml(out, text);
    buffer_puts(out, "</td>");
}

static void html_row(Buffer *out, const PartsPage *page, const Advice *advice)
{
    Buffer remark;
    PartsRow row;
    buffer_init(&remark);
    parts_row(page, advice, &row);
    parts_remark(&remark, page, &row);
    buffer_puts(out, "<tr>");
    cell(out, "bar", row.bar);
    cell(out, "beat", row.beat);
    cell(out, "letter", row.letter);
    cell(out, "time", parts_text_of(&row.pass));
    buffer_puts(out, "<td class=\"write\">");
    buffer_xml(out, parts_text_of(&row.words));
    if (remark.length) {
        buffer_puts(out, " <span class=\"remark\">");
        buffer_xml(out, remark.text);
        buffer_puts(out, "</span>");
    }
    buffer_puts(out, "</td><td><span class=\"done\"></span></td></tr>\n");
    out->failed = out->failed || buffer_failed(&remark) || buffer_failed(&row.words) || buffer_failed(&row.detail);
    parts_row_free(&row);
    buffer_free(&remark);
}

static void html_group_head(Buffer *out, const PartsPage *page, size_t group, bool first)
{
    Buffer names, about;
    char who[WORDS_TEXT];
    buffer_init(&names);
    buffer_init(&about);
    parts_names(&names, page, group);
    SAY(&about, page->speaker.language, PHRASE_PARTS_TITLE_IN_SCORE, slot_text("title", page->title), slot_text("names", parts_text_of(&names)));
    buffer_printf(out, "<section class=\"part%s\">\n<h2>", first ? " first" : "");
    buffer_xml(out, words_body(page->speaker.language, &page->map->groups[group].about, who));
    buffer_puts(out, "</h2>\n<p class=\"about\">");
    buffer_xml(out, parts_text_of(&about));
    buffer_puts(out, "</p>\n");
    out->failed = out->failed || buffer_failed(&names) || buffer_failed(&about);
    buffer_free(&about);
    buffer_free(&names);
}

/* false where the part has nothing to be written. */
static bool html_group(Buffer *out, const PartsPage *page, size_t group, size_t before)
{
    size_t first, end;
    parts_range(page, group, &first, &end);
    if (first == end)
        return false;
    html_group_head(out, page, group, before == 0);
    static const Phrase heads[] = {PHRASE_HEAD_BAR, PHRASE_HEAD_BEAT, PHRASE_HEAD_LETTER, PHRASE_PARTS_HEAD_TIME, PHRASE_PARTS_HEAD_WRITE,
                                   PHRASE_PARTS_HEAD_DONE};
    buffer_puts(out, "<table>\n<thead><tr>");
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        buffer_puts(out, "<th scope=\"col\">");
        buffer_xml(out, phrase_text(page->speaker.language, heads[i]));
        buffer_puts(out, "</th>");
    }
    buffer_puts(out, "</tr></thead>\n<tbody>\n");
    for (size_t i = first; i < end; i++)
        html_row(out, page, &page->advice->items.at[i]);
    buffer_puts(out, "</tbody>\n</table>\n</section>\n");
    return true;
}

/* A paragraph of one class. */
static void html_paragraph(Buffer *out, const char *name, const char *text)
{
    buffer_printf(out, "<p class=\"%s\">", name);
    buffer_xml(out, text);
    buffer_puts(out, "</p>\n");
}

static void html_empty(Buffer *out, const PartsPage *page)
{
    Buffer line, names;
    buffer_init(&line);
    buffer_init(&names);
    parts_untouched(page, &names);
    if (names.length) {
        SAY(&line, page->speaker.language, PHRASE_PARTS_NOTHING, slot_text("names", names.text));
        html_paragraph(out, "empty", parts_text_of(&line));
    }
    out->failed = out->failed || buffer_failed(&line) || buffer_failed(&names);
    buffer_free(&names);
    buffer_free(&line);
}

static void html_movement(Buffer *out, const PartsPage *page)
{
    buffer_printf(out, "<section class=\"movement%s\">\n<h1>", page->number ? "" : " first");
    buffer_xml(out, page->title);
    buffer_puts(out, "</h1>\n<p class=\"about\">");
    buffer_xml(out, page->file);
    buffer_puts(out, ". ");
    Buffer about;
    buffer_init(&about);
    parts_about(page, &about);
    buffer_xml(out, parts_text_of(&about));
    out->failed = out->failed || buffer_failed(&about);
    buffer_free(&about);
    buffer_puts(out, "</p>\n");
    size_t shown = 0;
    for (size_t group = 0; group < page->map->group_count; group++)
        shown += html_group(out, page, group, shown);
    html_empty(out, page);
    if (page->map->group_count == 0)
        html_paragraph(out, "empty", phrase_text(page->speaker.language, PHRASE_PARTS_NONE));
    if (*page->arrangement) {
        buffer_puts(out, "<p class=\"cautions\">");
        buffer_xml(out, report_cautions(page->speaker.language));
        buffer_puts(out, "</p>\n");
    }
    buffer_puts(out, "</section>\n");
}

const PartsForm parts_html = {html_begin, html_movement, html_end};
