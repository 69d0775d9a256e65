/* A passage as pitch over time: for each group of players a strip, a few bars a line. It stands where no engraved notes are to be had. */
#include "support/numbers.h"
#include "support/utf8.h"
#include "pages/web/web.h"
#include <stdint.h>
#include <stdio.h>
#include <string.h>

enum { WIDTH = 1000, RIGHT = 6, NUMBERS = 10, TOP = 24, GAP = 11, BARS_A_LINE = 8, LINES_MOST = 4, STRIPS_MOST = 4, LEAST_RANGE = 12 };
static const double semitone = 3.6; /* units of the drawing */

/* One strip: the sounds of a group within the passage. */
typedef struct Strip {
    const Group *group;
    size_t index;
    size_t first, end; /* sounds that begin in the passage, or reach into it */
    int low, high;     /* midi */
} Strip;

typedef struct Excerpt {
    const Web *web;
    const spz_passage *passage;
    Strip strips[STRIPS_MOST];
    size_t strip_count;
    size_t first_bar, end_bar; /* of the line at hand */
    double left, per_tick;
    Ticks from, to;
} Excerpt;

static bool begin_strip(Excerpt *excerpt, size_t index, Ticks from, Ticks to)
{
    const Group *group = &excerpt->web->map->groups[index];
    Strip strip = {.group = group, .index = index, .low = 127, .high = 0};
    strip.first = group_sound_at(group, from);
    strip.end = group_sound_at(group, to);
    for (size_t i = strip.first; i < strip.end; i++) {
        int midi = group->sounds[i].note->midi;
        if (midi < 0)
            continue;
        strip.low = midi < strip.low ? midi : strip.low;
        strip.high = midi > strip.high ? midi : strip.high;
    }
    if (strip.low > strip.high || excerpt->strip_count == STRIPS_MOST)
        return false;
    if (strip.high - strip.low < LEAST_RANGE)
        strip.high = strip.low + LEAST_RANGE;
    excerpt->strips[excerpt->strip_count++] = strip;
    return true;
}

static bool has_entry(const spz_passage *passage, size_t group)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (group < 63 && (passage->entries[i].players >> group & 1))
            return true;
    return false;
}

static void begin_strips(Excerpt *excerpt, Ticks from, Ticks to)
{
    const Web *web = excerpt->web;
    for (size_t group = 0; group < web->map->group_count; group++)
        if (has_entry(excerpt->passage, group) || web_group_takes_part(excerpt->passage, 0, group) ||
            web_group_takes_part(excerpt->passage, 1, group))
            begin_strip(excerpt, group, from, to);
}

static double strip_height(const Strip *strip)
{
    return (strip->high - strip->low + 1) * semitone + 4;
}

static double x_of(const Excerpt *excerpt, Ticks when)
{
    Ticks within = when < excerpt->from ? excerpt->from : when > excerpt->to ? excerpt->to : when;
    return excerpt->left + (double)(within - excerpt->from) * excerpt->per_tick;
}

static double y_of(const Strip *strip, double top, int midi)
{
    return top + 2 + (strip->high - midi) * semitone;
}

/* Calls and answers as shades behind the notes. */
static void draw_entries(const Excerpt *excerpt, const Strip *strip, double top)
{
    Html *html = excerpt->web->html;
    for (size_t i = 0; i < excerpt->passage->entry_count; i++) {
        const spz_entry *entry = &excerpt->passage->entries[i];
        if (strip->index > 62 || !(entry->players >> strip->index & 1) || entry->onset >= excerpt->to || entry->end <= excerpt->from)
            continue;
        double x = x_of(excerpt, entry->onset);
        html_box(html, view_answers(excerpt->passage, entry) ? "shade answers" : "shade calls", x, top, x_of(excerpt, entry->end) - x, strip_height(strip));
        bool said = spz_kind_is_antiphony(excerpt->passage->kind) && excerpt->passage->kind != SPZ_SPLIT_LINE;
        if (entry->onset >= excerpt->from && said)
            html_label(html, "said", x, top - 2, phrase_text(web_speaker(excerpt->web).language, entry->answer ? PHRASE_WEB_ANSWER : PHRASE_WEB_CALL));
    }
}

static void draw_notes(const Excerpt *excerpt, const Strip *strip, double top)
{
    Buffer path;
    buffer_init(&path);
    for (size_t i = strip->first; i < strip->end; i++) {
        const GroupSound *sound = &strip->group->sounds[i];
        if (sound->note->midi < 0 || sound->onset >= excerpt->to || sound->onset + sound->duration < excerpt->from || sound->onset < excerpt->from)
            continue;
        double x = x_of(excerpt, sound->onset), end = x_of(excerpt, sound->onset + sound->duration) - 1.5;
        char left[NUMBER_TEXT], y[NUMBER_TEXT], width[NUMBER_TEXT];
        buffer_printf(&path, "M%s %sh%s", number_text(x, 1, left), number_text(y_of(strip, top, sound->note->midi) + semitone / 2, 1, y),
                      number_text(end - x > 1.5 ? end - x : 1.5, 1, width));
    }
    if (path.length) {
        html_open_class(excerpt->web->html, "path", "heads");
        html_put(excerpt->web->html, "d", path.text);
        html_close_void(excerpt->web->html);
    }
    excerpt->web->html->failed = excerpt->web->html->failed || path.failed;
    buffer_free(&path);
}

/* The C's as thin lines with their names, to read the pitch by. */
static void draw_pitches(const Excerpt *excerpt, const Strip *strip, double top, double right)
{
    char name[16];
    for (int midi = (strip->low + 11) / 12 * 12; midi <= strip->high; midi += 12) {
        double y = y_of(strip, top, midi) + semitone / 2;
        html_line(excerpt->web->html, "octave", excerpt->left, y, right, y);
        snprintf(name, sizeof name, "C%d", midi / 12 - 1);
        html_label(excerpt->web->html, "octave-name", excerpt->left - 4, y + 3, name);
    }
}

static void draw_strip(const Excerpt *excerpt, const Strip *strip, double top)
{
    Html *html = excerpt->web->html;
    double right = x_of(excerpt, excerpt->to);
    html_box(html, "ground-of-notes", excerpt->left, top, right - excerpt->left, strip_height(strip));
    draw_pitches(excerpt, strip, top, right);
    draw_entries(excerpt, strip, top);
    draw_notes(excerpt, strip, top);
    char name[WORDS_TEXT];
    html_label(html, "strip-name", 4, top + 12, words_body(web_speaker(excerpt->web).language, &strip->group->about, name));
}

static double line_height(const Excerpt *excerpt)
{
    double height = TOP;
    for (size_t i = 0; i < excerpt->strip_count; i++)
        height += strip_height(&excerpt->strips[i]) + GAP;
    return height;
}

static void draw_bars(const Excerpt *excerpt, double bottom)
{
    Html *html = excerpt->web->html;
    const Movement *movement = excerpt->web->movement;
    for (size_t bar = excerpt->first_bar; bar < excerpt->end_bar; bar++) {
        double x = x_of(excerpt, movement->bars[bar].onset);
        html_line(html, "bar-line", x, NUMBERS + 2, x, bottom);
        html_label(html, "bar-number", x + 2, NUMBERS, movement->bars[bar].number);
        Ticks beat = movement->bars[bar].beat;
        for (Ticks at = beat; beat > 0 && at < movement->bars[bar].length; at += beat) {
            double on = x_of(excerpt, movement->bars[bar].onset + at);
            html_line(html, "beat-line", on, TOP, on, bottom);
        }
    }
    html_line(html, "bar-line", x_of(excerpt, excerpt->to), NUMBERS + 2, x_of(excerpt, excerpt->to), bottom);
}

static void draw_line(Excerpt *excerpt)
{
    Html *html = excerpt->web->html;
    const Bar *bars = excerpt->web->movement->bars;
    double height = line_height(excerpt), top = TOP;
    Buffer label;
    buffer_init(&label);
    SAY(&label, web_speaker(excerpt->web).language, PHRASE_WEB_PITCH_BARS, slot_text("from", bars[excerpt->first_bar].number),
        slot_text("to", bars[excerpt->end_bar - 1].number));
    html_open_drawing(html, "pitch", WIDTH, height, label.length ? label.text : "");
    html->failed = html->failed || label.failed;
    buffer_free(&label);
    draw_bars(excerpt, height - GAP);
    for (size_t i = 0; i < excerpt->strip_count; i++) {
        draw_strip(excerpt, &excerpt->strips[i], top);
        top += strip_height(&excerpt->strips[i]) + GAP;
    }
    html_close(html);
    html_line_end(html);
}

static size_t bars_a_line(size_t bars)
{
    if (bars <= BARS_A_LINE)
        return bars < 3 ? 3 : bars; /* a single bar would stretch its notes over the whole line */
    size_t lines = (bars + BARS_A_LINE - 1) / BARS_A_LINE;
    return (bars + lines - 1) / lines;
}

static void set_line(Excerpt *excerpt, size_t first, size_t each, size_t end)
{
    const Bar *bars = excerpt->web->movement->bars;
    excerpt->first_bar = first;
    excerpt->end_bar = first + each < end ? first + each : end;
    excerpt->from = bars[first].onset;
    excerpt->to = bars[excerpt->end_bar - 1].onset + bars[excerpt->end_bar - 1].length;
    /* Lines with fewer bars are shorter: the same time has the same length all through. */
    Ticks length = excerpt->to - excerpt->from;
    double share = (double)(excerpt->end_bar - first) / (double)each;
    excerpt->per_tick = length > 0 ? (WIDTH - excerpt->left - RIGHT) * share / (double)length : 0;
}

static double names_width(const Web *web)
{
    size_t longest = 5; /* 'Winds' */
    for (size_t i = 0; i < web->map->group_count; i++) {
        const char *name = web->map->groups[i].about.name;
        size_t columns = utf8_columns(name, strlen(name));
        longest = columns > longest ? columns : longest;
    }
    return 14 + 6.6 * (double)(longest > 40 ? 40 : longest); /* letters of 11 units are about 6.6 wide */
}

void web_strip(const Web *web, const spz_passage *passage)
{
    Excerpt excerpt = {.web = web, .passage = passage, .left = names_width(web) + 20};
    const Movement *movement = web->movement;
    size_t bars = passage->last - passage->first + 1, each = bars_a_line(bars), end = passage->last + 1;
    size_t shown = bars < each * LINES_MOST ? bars : each * LINES_MOST;
    if (end > movement->bar_count || passage->last < passage->first)
        return;
    Ticks to = movement->bars[passage->first + shown - 1].onset + movement->bars[passage->first + shown - 1].length;
    begin_strips(&excerpt, movement->bars[passage->first].onset, to);
    if (excerpt.strip_count == 0)
        return;
    html_open_class(web->html, "div", "scroll strips");
    html_put(web->html, "tabindex", "0");
    html_put(web->html, "role", "region");
    html_put(web->html, "aria-label", phrase_text(web_speaker(web).language, PHRASE_WEB_PITCH));
    for (size_t first = passage->first; first < passage->first + shown; first += each) {
        set_line(&excerpt, first, each, passage->first + shown);
        draw_line(&excerpt);
    }
    html_close(web->html);
    if (shown < bars) {
        html_open_class(web->html, "p", "small");
        WEB_SAY(web->html, web_speaker(web).language, PHRASE_WEB_FIRST_BARS, slot_number("n", (long)shown), slot_number("of", (long)bars));
        html_close(web->html);
    }
}
