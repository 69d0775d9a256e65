/* The passage map: bars across, sections down, in systems as in a score. Calls are filled, answers hollow, an arrow leads from one to the
 * other; the strength is in the weight of the line and in words; divided sections are hatched bands, coupled ones double lines. */
#include "support/numbers.h"
#include "pages/web/web.h"
#include "wording/passage_words.h"
#include "support/memory.h"
#include "support/ascii.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WIDTH = 1000, RIGHT = 8, AXIS = 46, LANE = 34, BARS_MOST = 90 };

/* One row of the map: a stretch of bars. */
typedef struct System {
    const Web *web;
    size_t first, end;  /* bars */
    double left, bar_width; /* where the first bar begins; units a bar */
    size_t lanes;       /* string groups, then winds where a passage has them */
    bool winds;
    const size_t *shown; /* indices of the passages that the report shows */
    size_t shown_count;
} System;

static double lane_top(size_t lane)
{
    return AXIS + (double)lane * LANE;
}

static double x_of_bar(const System *system, double bar)
{
    double first = (double)system->first, end = (double)system->end;
    double within = bar < first ? first : bar > end ? end : bar;
    return system->left + (within - first) * system->bar_width;
}

static double x_of(const System *system, Ticks when)
{
    const Movement *movement = system->web->movement;
    int bar = movement_bar_at(movement, when);
    if (bar < 0)
        return system->left;
    const Bar *at = &movement->bars[bar];
    double part = at->length > 0 ? (double)(when - at->onset) / (double)at->length : 0;
    return x_of_bar(system, (double)bar + (part > 1 ? 1 : part));
}

static bool overlaps(const System *system, size_t first, size_t last)
{
    return first < system->end && last >= system->first;
}

/* Lines of the lanes with their names, and bar lines. */
static void draw_lanes(const System *system)
{
    Html *html = system->web->html;
    double right = x_of_bar(system, (double)system->end);
    for (size_t lane = 0; lane < system->lanes; lane++) {
        bool wind = system->winds && lane + 1 == system->lanes;
        char text[WORDS_TEXT];
        const char *name = words_body(web_speaker(system->web).language, wind ? &(spz_group){.section = SPZ_WINDS} : &system->web->map->groups[lane].about, text);
        html_box(html, lane % 2 ? "lane odd" : "lane", system->left, lane_top(lane), right - system->left, LANE);
        html_label(html, "lane-name", system->left - 6, lane_top(lane) + LANE / 2.0 + 4, name);
    }
}

static int bar_step(const System *system)
{
    size_t bars = system->end - system->first;
    return bars > 40 ? 10 : bars > 16 ? 5 : 1;
}

static void draw_bar_lines(const System *system)
{
    Html *html = system->web->html;
    double bottom = lane_top(system->lanes);
    int step = bar_step(system);
    double free_from = 0;
    for (size_t bar = system->first; bar < system->end; bar++) {
        const char *number = system->web->movement->bars[bar].number;
        bool counted = ascii_is_digit(*number) && atoi(number) % step == 0;
        if (!counted && bar != system->first)
            continue;
        double x = x_of_bar(system, (double)bar);
        html_line(html, "bar-line", x, AXIS - 4, x, bottom);
        if (x >= free_from)
            html_label(html, "bar-number", x + 2, AXIS - 5, number);
        free_from = x + 12 + 6 * (double)strlen(number);
    }
    html_line(html, "bar-line", x_of_bar(system, (double)system->end), AXIS, x_of_bar(system, (double)system->end), bottom);
}

static void draw_letters(const System *system)
{
    Html *html = system->web->html;
    for (size_t bar = system->first; bar < system->end; bar++) {
        const char *letter = system->web->movement->bars[bar].rehearsal;
        if (!letter || !*letter)
            continue;
        double x = x_of_bar(system, (double)bar), width = 8 + 7 * (double)(strlen(letter) < 12 ? strlen(letter) : 12);
        html_box(html, "letter-box", x, 14, width, 15);
        html_label(html, "letter-name", x + width / 2, 26, letter);
    }
}

/* The words of a tempo mark without what is left of a metronome mark in brackets; "" where nothing is left. */
static const char *tempo_words(const char *text, char words[64])
{
    bool letters = false;
    snprintf(words, 64, "%s", text);
    size_t length = strlen(words);
    while (length > 0 && strchr(" ([=", words[length - 1]))
        words[--length] = '\0';
    for (const char *c = words; *c; c++)
        letters = letters || ascii_is_letter((unsigned char)*c) || (unsigned char)*c >= 0x80;
    return letters ? words : "";
}

/* Changes of tempo in words; one that would run into the one before is left out (a title tells nothing here that the score doesn't). */
static void draw_tempos(const System *system)
{
    const Movement *movement = system->web->movement;
    double free_from = 0;
    for (size_t part = 0; part < movement->part_count; part++) {
        for (size_t i = 0; i < movement->parts[part].direction_count; i++) {
            const Direction *mark = &movement->parts[part].directions[i];
            if (mark->kind != DIRECTION_TEMPO || !mark->text || mark->bar < 0 || !overlaps(system, (size_t)mark->bar, (size_t)mark->bar))
                continue;
            char text[64];
            const char *words = tempo_words(mark->text, text);
            double x = x_of(system, mark->onset);
            if (x < free_from || !*words)
                continue;
            html_label(system->web->html, "tempo", x, 10, words);
            free_from = x + 12 + 6.2 * (double)strlen(words);
        }
        if (free_from > 0)
            return; /* the marks of one part are enough */
    }
}

static const double heights[] = {8, 12, 17}; /* by strength */

static double lane_middle(size_t lane)
{
    return lane_top(lane) + LANE / 2.0 + 3;
}

static size_t lane_of_entry(const System *system, const spz_entry *entry)
{
    return entry->leader < system->web->map->group_count ? entry->leader : system->lanes - 1;
}

static void draw_arrow(Html *html, double x1, double y1, double x2, double y2)
{
    double down = y2 > y1 ? 1 : -1;
    html_line(html, "lead", x1, y1, x2, y2);
    html_open_class(html, "path", "head");
    html_put_format(html, "d", "M%.1f %.1fl-3 %.0fh6z", x2, y2, -5 * down);
    html_close_void(html);
}

/* A heavy outline would fill a short answer: the height alone tells its strength. */
static void draw_entry(Html *html, bool answer, double x, double y, double width, double height)
{
    static const char *const classes[2][2] = {{"call", "call thin"}, {"answer", "answer thin"}};
    html_box(html, classes[answer][width < 5], x, y, width > 2 ? width : 2, height);
}

/* Whether the players of a lane have the entry. */
static bool lane_plays(const System *system, const spz_entry *entry, size_t lane)
{
    bool wind = system->winds && lane + 1 == system->lanes;
    return (entry->players & (wind ? SPZ_WIND_PLAYERS : lane < 63 ? (spz_players)1 << lane : 0)) != 0;
}

static void draw_entries(const System *system, const spz_passage *passage)
{
    Html *html = system->web->html;
    double half = heights[web_strength(passage)] / 2;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!overlaps(system, entry->bar, (size_t)movement_bar_at(system->web->movement, entry->end > entry->onset ? entry->end - 1 : entry->onset)))
            continue;
        size_t lane = lane_of_entry(system, entry);
        double x = x_of(system, entry->onset), end = x_of(system, entry->end), y = lane_middle(lane);
        if (i > 0 && overlaps(system, passage->entries[i - 1].bar, passage->entries[i - 1].bar)) {
            size_t from = lane_of_entry(system, &passage->entries[i - 1]);
            double way = from < lane ? half : -half;
            if (from != lane && entry->answer)
                draw_arrow(html, x_of(system, passage->entries[i - 1].onset) + 1, lane_middle(from) + way, x + 1, y - way);
        }
        for (size_t played = 0; played < system->lanes; played++)
            if (played == lane || lane_plays(system, entry, played))
                draw_entry(html, web_answers(passage, entry), x, lane_middle(played) - half, end - x, 2 * half);
    }
}

/* A passage that comes without its entries: the whole stretch, first the caller, then the responder. */
static void draw_stretch(const System *system, const spz_passage *passage)
{
    double half = heights[web_strength(passage)] / 2;
    double x = x_of(system, passage->onset), end = x_of(system, passage->end);
    for (int side = 0; side < 2; side++)
        for (size_t lane = 0; lane < system->web->map->group_count; lane++)
            if (web_group_takes_part(system->web, passage, side, lane))
                html_box(system->web->html, side ? "answer" : "call", x, lane_middle(lane) - half, end - x > 2 ? end - x : 2, 2 * half);
}

static void draw_band(const System *system, const spz_passage *passage)
{
    Html *html = system->web->html;
    bool divided = passage->kind != SPZ_COUPLING;
    double x = x_of(system, passage->onset), end = x_of(system, passage->end), width = end - x > 2 ? end - x : 2;
    for (int side = 0; side < 2; side++)
        for (size_t lane = 0; lane < system->web->map->group_count; lane++) {
            if (!web_group_takes_part(system->web, passage, side, lane))
                continue;
            if (divided)
                html_line(html, "divided", x, lane_top(lane) + LANE - 6, x + width, lane_top(lane) + LANE - 6);
            else {
                double y = lane_top(lane) + (side ? LANE - 3 : 2);
                html_line(html, "coupled", x, y, x + width, y);
                html_line(html, "coupled", x, y + 3, x + width, y + 3);
            }
        }
}

static const char *mark_of(spz_kind kind)
{
    static const char *const marks[SPZ_KIND_COUNT] = {[SPZ_EXCHANGE] = "E", [SPZ_HOCKET] = "H", [SPZ_SPLIT_LINE] = "S",
                                                      [SPZ_IMITATION] = "I", [SPZ_DIV2] = "2",  [SPZ_DIV3] = "3"};
    return marks[kind] ? marks[kind] : "";
}

/* The first entry in this row of the map; NULL for none. */
static const spz_entry *first_entry(const System *system, const spz_passage *passage)
{
    for (size_t i = 0; i < passage->entry_count && spz_kind_is_antiphony(passage->kind); i++)
        if (overlaps(system, passage->entries[i].bar, passage->entries[i].bar))
            return &passage->entries[i];
    return NULL;
}

static void draw_mark(const System *system, const spz_passage *passage)
{
    const spz_entry *entry = first_entry(system, passage);
    size_t lane = entry ? lane_of_entry(system, entry) : 0;
    while (!entry && lane < system->web->map->group_count && !web_group_takes_part(system->web, passage, 0, lane))
        lane++;
    if ((lane == system->web->map->group_count && !system->winds) || !*mark_of(passage->kind))
        return;
    bool band = !spz_kind_is_antiphony(passage->kind);
    html_label(system->web->html, "mark-name", x_of(system, entry ? entry->onset : passage->onset) + 1, lane_top(lane) + (band ? LANE - 1 : 9), mark_of(passage->kind));
}

static void draw_passage(const System *system, size_t index)
{
    char id[WEB_ID], bars[WORDS_TEXT], kind[WORDS_TEXT], who[WORDS_TEXT], standing[WORDS_TEXT];
    const spz_passage *passage = spz_findings_at(system->web->shown->reading.findings, index);
    Speaker speaker = web_speaker(system->web);
    Html *html = system->web->html;
    if (!overlaps(system, passage->first, passage->last))
        return;
    html_open(html, "a");
    html_put_format(html, "href", "#%s", web_passage_id(system->web, index, id));
    html_put_format(html, "class", "mark k-%s s%d", spz_kind_name(passage->kind), web_strength(passage));
    if (passage->first < system->first) /* its first system has the stop of the keyboard */
        html_put(html, "tabindex", "-1");
    const Slot told[] = {slot_text("bars", words_bars(speaker.language, passage, bars)), slot_text("kind", words_kind(speaker.language, passage, kind)),
                         slot_text("who", words_who(&speaker, passage, who)), slot_text("weight", words_standing(speaker.language, passage, standing))};
    web_put(html, "aria-label", speaker.language, PHRASE_WEB_MARK, told, sizeof told / sizeof *told);
    html_open(html, "title");
    web_say(html, speaker.language, PHRASE_WEB_MARK_TITLE, told, sizeof told / sizeof *told);
    html_close(html);
    if (!spz_kind_is_antiphony(passage->kind))
        draw_band(system, passage);
    else if (passage->entry_count)
        draw_entries(system, passage);
    else
        draw_stretch(system, passage);
    if (passage->first >= system->first)
        draw_mark(system, passage);
    html_close(html);
    html_line_end(html);
}

static void draw_system(const System *system)
{
    Html *html = system->web->html;
    const Bar *bars = system->web->movement->bars;
    html_open_drawing(html, "map", WIDTH, lane_top(system->lanes) + 4, NULL);
    html_put(html, "role", "group");
    WEB_PUT(html, "aria-label", web_speaker(system->web).language, PHRASE_WEB_MAP_BARS, slot_text("from", bars[system->first].number), slot_text("to", bars[system->end - 1].number));
    draw_lanes(system);
    draw_bar_lines(system);
    draw_letters(system);
    draw_tempos(system);
    for (int bands = 1; bands >= 0; bands--) /* bands lie below */
        for (size_t i = 0; i < system->shown_count; i++) {
            const spz_passage *passage = spz_findings_at(system->web->shown->reading.findings, system->shown[i]);
            if (spz_kind_is_antiphony(passage->kind) == !bands)
                draw_passage(system, system->shown[i]);
        }
    html_close(html);
    html_line_end(html);
}

static void draw_key(Html *html, spz_language language)
{
    static const char *const classes[] = {"call", "answer"};
    html_open_class(html, "p", "key");
    for (int i = 0; i < 2; i++) {
        html_open_drawing(html, "sample k-exchange s1", 26, 14, NULL);
        html_put(html, "aria-hidden", "true");
        html_box(html, classes[i], 2, 2, 22, 10);
        html_close(html);
        html_format(html, " %s ", phrase_text(language, i ? PHRASE_WEB_ANSWER : PHRASE_WEB_CALL));
    }
    html_open_drawing(html, "sample k-div3 s2", 26, 14, NULL);
    html_put(html, "aria-hidden", "true");
    html_line(html, "divided", 2, 7, 24, 7);
    html_close(html);
    html_words(html, phrase_text(language, PHRASE_WEB_KEY_DIVIDED));
    html_open_drawing(html, "sample k-coupling s2", 26, 14, NULL);
    html_put(html, "aria-hidden", "true");
    html_line(html, "coupled", 2, 5, 24, 5);
    html_line(html, "coupled", 2, 9, 24, 9);
    html_close(html);
    html_words(html, phrase_text(language, PHRASE_WEB_KEY));
    html_close(html);
}

static void draw_systems(const Web *web, System *system)
{
    size_t bars = web->movement->bar_count, rows = (bars + BARS_MOST - 1) / BARS_MOST;
    size_t each = (bars + rows - 1) / rows;
    system->bar_width = (WIDTH - system->left - RIGHT) / (double)each;
    for (size_t row = 0; row < rows; row++) {
        system->first = row * each;
        system->end = system->first + each < bars ? system->first + each : bars;
        if (system->first < system->end)
            draw_system(system);
    }
}

void web_map(const Web *web)
{
    const spz_findings *findings = web->shown->reading.findings;
    Html *html = web->html;
    size_t count = spz_findings_count(findings);
    size_t *shown = memory_resize(NULL, count, sizeof *shown);
    System system = {.web = web, .left = web_names_width(web), .lanes = web->map->group_count, .shown = shown};
    if (!shown || web->movement->bar_count == 0) {
        html->failed = html->failed || !shown;
        memory_free(shown);
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (!report_shows(&web->report->options, passage))
            continue;
        shown[system.shown_count++] = i;
        system.winds = system.winds || web_has_winds(passage);
    }
    system.lanes += system.winds;
    draw_key(html, web_speaker(web).language);
    html_open_class(html, "div", "scroll maps");
    html_put(html, "tabindex", "0");
    html_put(html, "role", "region");
    html_put(html, "aria-label", phrase_text(web_speaker(web).language, PHRASE_WEB_MAP));
    draw_systems(web, &system);
    html_close(html);
    memory_free(shown);
}
