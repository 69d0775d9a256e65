/* The picture lies across one page: lanes for the players, time from left to right as it is heard, repeats counted. */
#include "pages/sheets/notes/notes_timeline.h"
#include "model/durations.h"
#include "pages/drawings/score_view.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "sections/section_map.h"
#include "support/text/utf8.h"
#include "wording/passage_words.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { LANES_MOST = 16, FLAGS_MOST = 10, TEXT_LINES_MOST = 14, LINE_MOST = 256 };
/* Units of the drawing; the page is an A4 page across. */
static const double width = 1080, left = 150, right = 20, title_height = 66, line_height = 16, letter_width = 7, lane_height = 22, lane_gap = 4, flag_air = 34;

typedef struct Lane {
    spz_section section;
    int orchestra;
    spz_players players;
    double top;
} Lane;

typedef struct Chart {
    SheetOut *sheet;
    Markup *html;
    const MovementNotes *notes;
    Lane lanes[LANES_MOST];
    size_t lane_count, flags;
    double text_top, top, bottom; /* of the texts; of the lanes */
} Chart;

static double x_at(const Chart *chart, double marked)
{
    double end = time_line_end(&chart->notes->line), heard = time_line_at(&chart->notes->line, marked);
    return left + (end > 0 ? fmin(fmax(heard / end, 0), 1) : 0) * (width - left - right);
}

static void add_player(Chart *chart, spz_section section, int orchestra, spz_players players)
{
    size_t i = 0;
    while (i < chart->lane_count && (chart->lanes[i].section != section || chart->lanes[i].orchestra != orchestra))
        i++;
    if (i == LANES_MOST)
        return;
    if (i == chart->lane_count)
        chart->lanes[chart->lane_count++] = (Lane){.section = section, .orchestra = orchestra};
    chart->lanes[i].players |= players;
}

static bool winds_are_cited(const MovementNotes *notes)
{
    for (size_t i = 0; i < notes->citations.count; i++)
        if (view_players(notes->citations.at[i].passage) & SPZ_WIND_PLAYERS)
            return true;
    return false;
}

static void find_lanes(Chart *chart)
{
    const SectionMap *map = chart->notes->sections;
    if (winds_are_cited(chart->notes))
        add_player(chart, SPZ_WINDS, 0, SPZ_WIND_PLAYERS);
    for (size_t i = 0; i < map->group_count && i < 63; i++)
        add_player(chart, map->groups[i].about.section, map->groups[i].about.orchestra, (spz_players)1 << i);
}

/* The next line of at most `columns` letters, cut at a blank; false at the end. */
static bool next_line(const char **text, size_t columns, char line[LINE_MOST])
{
    size_t fits = 0, length = 0;
    while (**text == ' ')
        ++*text;
    if (!**text)
        return false;
    for (size_t at = 0; (*text)[at]; at = length) {
        size_t word = strcspn(*text + at + ((*text)[at] == ' '), " ") + ((*text)[at] == ' ');
        if (fits && utf8_columns(*text, at + word) > columns)
            break;
        length = at + word;
        fits++;
        if (length >= LINE_MOST)
            length = LINE_MOST - 1;
        if (utf8_columns(*text, length) > columns || length == LINE_MOST - 1)
            break;
    }
    snprintf(line, LINE_MOST, "%.*s", (int)length, *text);
    *text += length;
    return true;
}

static double column_width(const Chart *chart)
{
    double whole = (width - 2 * right) / (double)(chart->flags ? chart->flags : 1);
    return fmin(whole, 300);
}

static const char *time_of(Chart *chart, const Citation *citation)
{
    SheetOut *sheet = chart->sheet;
    buffer_clear(&sheet->line);
    say_moment_alone(&sheet->line, sheet->language, chart->notes, citation);
    return sheet->line.text && !buffer_failed(&sheet->line) ? sheet->line.text : "";
}

/* The text in lines below each other, beginning at y; where the next line would stand. `html` NULL: nothing is drawn. */
static double put_lines(Markup *html, const char *class, double x, double y, const char *text, size_t columns)
{
    char line[LINE_MOST];
    for (size_t lines = 0; lines < TEXT_LINES_MOST && next_line(&text, columns, line); lines++, y += line_height)
        if (html)
            markup_label(html, class, x, y, line);
    return y;
}

/* What stands over a moment: when it comes, and what to listen for. Returns where it ends. */
static double put_flag(Chart *chart, Markup *html, size_t i)
{
    const Citation *citation = &chart->notes->citations.at[i];
    double column = column_width(chart), x = right + column * (double)i;
    size_t columns = (size_t)((column - 14) / letter_width);
    double y = put_lines(html, "when", x, chart->text_top, time_of(chart, citation), columns - columns / 8); /* bold letters are wider */
    return put_lines(html, "what", x, y, said_of_one(chart->sheet, say_for_listeners, chart->notes, citation), columns);
}

static double flag_x(const Chart *chart, const Citation *citation)
{
    double marked = spz_movement_sounding(chart->notes->movement, citation->passage->first, citation->passage->onset, 0, 0);
    return x_at(chart, marked < 0 ? 0 : marked);
}

/* A line from below the text to its moment. */
static void draw_leader(const Chart *chart, double from, double top, double to)
{
    Markup *html = chart->html;
    markup_line(html, "leader", from, top, from, top + 6);
    markup_line(html, "leader", from, top + 6, to, chart->top - 12);
    markup_line(html, "leader", to, chart->top - 12, to, chart->bottom);
}

static void draw_lanes(Chart *chart)
{
    char name[WORDS_TEXT];
    for (size_t i = 0; i < chart->lane_count; i++) {
        const Lane *lane = &chart->lanes[i];
        markup_box(chart->html, "lane", left, lane->top, width - left - right, lane_height);
        spz_group body = {.section = lane->section, .orchestra = lane->orchestra};
        markup_label(chart->html, "name", left - 8, lane->top + lane_height / 2 + 4, words_body(chart->sheet->language, &body, name));
    }
}

static bool plays_in(const SectionMap *map, const Lane *lane, const Bar *bar)
{
    for (size_t i = 0; i < map->group_count && i < 63; i++) {
        size_t at = lane->players >> i & 1 ? group_sound_at(&map->groups[i], bar->onset) : map->groups[i].sound_count;
        if (at < map->groups[i].sound_count && map->groups[i].sounds[at].onset < bar->onset + bar->length)
            return true;
    }
    return false;
}

/* Where a lane plays, bar by bar as they are heard; bars that follow each other are one box. */
static void draw_playing(Chart *chart, const Lane *lane)
{
    const Movement *movement = chart->notes->movement;
    double at = 0, since = -1;
    for (size_t i = 0; i <= movement->played_count && lane->section != SPZ_WINDS; i++) {
        bool plays = i < movement->played_count && plays_in(chart->notes->sections, lane, &movement->bars[movement->played[i]]);
        if (plays && since < 0)
            since = at;
        if (!plays && since >= 0) {
            markup_box(chart->html, "plays", x_at(chart, since), lane->top, x_at(chart, at) - x_at(chart, since), lane_height);
            since = -1;
        }
        at += i < movement->played_count ? movement_bar_seconds(movement, (size_t)movement->played[i]) : 0;
    }
}

static void draw_mark(Chart *chart, spz_players players, bool answers, double from, double to)
{
    double x = x_at(chart, from), end = x_at(chart, to);
    char class[32];
    for (size_t i = 0; i < chart->lane_count; i++) {
        const Lane *lane = &chart->lanes[i];
        if (!(lane->players & players))
            continue;
        snprintf(class, sizeof class, "%s %s", answers ? "answer" : "call", view_class(lane->section));
        markup_box(chart->html, class, x, lane->top + 3, fmax(end - x, 2.5), lane_height - 6);
    }
}

static void draw_entries(Chart *chart, const spz_passage *passage, size_t pass)
{
    const Movement *movement = chart->notes->movement;
    double whole = spz_movement_sounding(movement, passage->first, passage->onset, pass, 0);
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        double from = spz_movement_sounding(movement, entry->bar, entry->onset, pass, 0);
        if (from >= 0)
            draw_mark(chart, entry->players, view_answers(passage, entry), from, from + movement_seconds(movement, entry->onset, entry->end));
    }
    if (!passage->entry_count && whole >= 0)
        draw_mark(chart, passage->sides[0].players | passage->sides[1].players, false, whole, whole + movement_seconds(movement, passage->onset, passage->end));
}

static void draw_passages(Chart *chart)
{
    for (size_t i = 0; i < chart->notes->citations.count; i++) {
        const Citation *citation = &chart->notes->citations.at[i];
        for (size_t pass = 0; pass < citation->time_count; pass++)
            draw_entries(chart, citation->passage, pass);
        for (size_t again = 0; again < citation->return_count; again++)
            for (size_t pass = 0; pass < TIMES_MOST; pass++)
                draw_entries(chart, citation->returns[again], pass);
    }
}

/* Minutes below, or, where no length is known, beginning, middle and end. */
static void draw_times(Chart *chart)
{
    const Overview *overview = &chart->notes->overview;
    double end = overview->duration, step = end > 30 * 60 ? 300 : end > 12 * 60 ? 120 : 60, y = chart->bottom + 20;
    char text[32];
    for (double at = 0; end > 0 && at <= end; at += step) {
        double x = left + at / end * (width - left - right);
        markup_line(chart->html, "minute", x, chart->top, x, chart->bottom + 6);
        snprintf(text, sizeof text, "%d", (int)lround(at / 60));
        markup_label(chart->html, "minutes", x, y, text);
    }
    for (int part = 0; part <= 2 && end <= 0; part++) {
        double x = left + part / 2.0 * (width - left - right);
        markup_line(chart->html, "minute", x, chart->top, x, chart->bottom + 6);
        markup_label(chart->html, part == 0 ? "first" : part == 2 ? "last" : "minutes", x, y, phrase_text(chart->sheet->language, share_phrase(part / 2.0)));
    }
    if (end > 0)
        markup_label(chart->html, "name", left - 8, y, phrase_text(chart->sheet->language, PHRASE_NOTES_MINUTES));
}

/* What the marks mean, and how the times were found. */
static void draw_key(Chart *chart, double y)
{
    const char *calls = phrase_text(chart->sheet->language, PHRASE_NOTES_KEY_CALLS), *answers = phrase_text(chart->sheet->language, PHRASE_NOTES_KEY_ANSWERS);
    double second = left + 34 + 6.4 * (double)utf8_columns(calls, strlen(calls)), third = second + 40 + 6.4 * (double)utf8_columns(answers, strlen(answers));
    markup_box(chart->html, "call", left, y - 10, 12, 10);
    markup_label(chart->html, "foot", left + 18, y, calls);
    markup_box(chart->html, "answer", second, y - 10, 12, 10);
    markup_label(chart->html, "foot", second + 18, y, answers);
    markup_label(chart->html, "foot", third, y, said_of_all(chart->sheet, say_timing, chart->notes));
}

static Chart chart_of(SheetOut *sheet, const MovementNotes *notes)
{
    Chart chart = {.sheet = sheet, .html = &sheet->html, .notes = notes};
    chart.flags = notes->citations.count < FLAGS_MOST ? notes->citations.count : FLAGS_MOST;
    find_lanes(&chart);
    return chart;
}

static void draw(SheetOut *sheet, const MovementNotes *notes, bool alone)
{
    Chart chart = chart_of(sheet, notes);
    Markup *html = &sheet->html;
    chart.text_top = alone ? title_height : line_height;
    double text_bottom = chart.text_top;
    for (size_t i = 0; i < chart.flags; i++)
        text_bottom = fmax(text_bottom, put_flag(&chart, NULL, i) - line_height + 6);
    chart.top = text_bottom + flag_air;
    for (size_t i = 0; i < chart.lane_count; i++)
        chart.lanes[i].top = chart.top + (lane_height + lane_gap) * (double)i;
    chart.bottom = chart.top + (lane_height + lane_gap) * (double)chart.lane_count - lane_gap;
    double height = chart.bottom + 52;
    markup_open_class(html, "svg", "timeline");
    if (alone) {
        markup_put(html, "xmlns", "http://www.w3.org/2000/svg");
        markup_put_number(html, "width", width, 0);
        markup_put_number(html, "height", height, 0);
    }
    markup_put_format(html, "viewBox", "0 0 %d %d", (int)width, (int)ceil(height));
    markup_open(html, "style");
    markup_raw(html, text_timeline_css);
    markup_close(html);
    if (alone) {
        markup_label(html, "title", right, 24, notes->title);
        markup_label(html, "origin", right, 42, said_of_all(sheet, say_origin, notes));
    }
    draw_lanes(&chart);
    for (size_t i = 0; i < chart.lane_count; i++)
        draw_playing(&chart, &chart.lanes[i]);
    draw_times(&chart);
    for (size_t i = 0; i < chart.flags; i++) {
        draw_leader(&chart, right + column_width(&chart) * (double)i + 4, text_bottom, flag_x(&chart, &notes->citations.at[i]));
        put_flag(&chart, html, i);
    }
    draw_passages(&chart);
    draw_key(&chart, height - 10);
    markup_close_line(html);
}

static void html_start(SheetOut *sheet)
{
    sheet_page_begin(sheet, page_head_of_sheet(sheet->language, phrase_text(sheet->language, PHRASE_NOTES_LISTENERS), text_notes_css), NULL);
}

static void html_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Markup *html = &sheet->html;
    markup_open_class(html, "section", "listeners");
    markup_line_end(html);
    markup_element(html, "h1", NULL, notes->title);
    markup_element(html, "p", "origin", said_of_all(sheet, say_origin, notes));
    draw(sheet, notes, false);
    markup_close_line(html);
}

const NotesForm timeline_html = {html_start, html_movement, sheet_page_end};

static void svg_start(SheetOut *sheet)
{
    markup_xml_head(&sheet->html);
}

static void svg_movement(SheetOut *sheet, const MovementNotes *notes)
{
    draw(sheet, notes, true);
}

static void svg_stop(SheetOut *sheet)
{
    markup_end(&sheet->html);
}

const NotesForm timeline_svg = {svg_start, svg_movement, svg_stop};
