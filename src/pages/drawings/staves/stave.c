#include "pages/drawings/staves/stave.h"
#include "pages/drawings/staves/stave_layout.h"
#include "pages/drawings/staves/stave_signs.h"
#include "pages/drawings/staves/stave_glyphs.h"
#include "support/text/utf8.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const StaveLook stave_short = {440, 2, false}, stave_full = {760, STAVES_MOST, false};

static const double head_half = 2.3, name_letter = 7.4; /* units */

static void draw_staff(const Line *line, size_t s)
{
    char name[WORDS_TEXT];
    Markup *html = line->view->html;
    const Stave *stave = &line->staves[s];
    Buffer *path = &line->strokes->lines;
    for (int i = 0; i < 5; i++)
        glyph_trace(path, "M# #H#", (const double[]){line->left, line->tops[s] + STAVE_SPACE * i, line->look.width - 1}, 3);
    glyph_traced(html, "staff", path);
    for (size_t bar = 0; bar <= line->end - line->first; bar++)
        glyph_trace(path, "M# #v#", (const double[]){line->bars[bar], line->tops[s], 4 * STAVE_SPACE}, 3);
    glyph_traced(html, "bar", path);
    markup_label(html, "staff-name", line->left - 6, line->tops[s] + 12.5, view_name(line->view, stave->group, name));
    markup_open_class(html, "g", "clef");
    glyph_clef(html, stave->clef, line->left + 4, line->tops[s]);
    markup_close(html);
}

/* Places of the sharps and flats of a key over the lowest line in the treble clef; other clefs put them where their letters are. */
static void draw_key(const Line *line, size_t s)
{
    static const int sharps[] = {38, 35, 39, 36, 33, 37, 34}, flats[] = {34, 37, 33, 36, 32, 35, 31}, shift[] = {0, -8 + 1, 0, -14};
    const Stave *stave = &line->staves[s];
    int fifths = line->view->movement->bars[line->first].fifths, count = abs(fifths);
    markup_open_class(line->view->html, "g", "clef");
    for (int i = 0; i < count && i < 7; i++) {
        int place = (fifths > 0 ? sharps[i] : flats[i]) + shift[stave->clef];
        while (place > stave->bottom + 9)
            place -= 7;
        while (place < stave->bottom - 1)
            place += 7;
        glyph_accidental(line->view->html, fifths > 0 ? 1 : -1, line->left + 19 + 4.6 * i, stave_y(line, s, place));
    }
    markup_close(line->view->html);
}

static int key_alter(int fifths, int step)
{
    static const int sharp_order[] = {3, 0, 4, 1, 5, 2, 6}, flat_order[] = {6, 2, 5, 1, 4, 0, 3};
    for (int i = 0; i < abs(fifths) && i < 7; i++)
        if ((fifths > 0 ? sharp_order : flat_order)[i] == step)
            return fifths > 0 ? 1 : -1;
    return 0;
}

/* What has been altered so far in the bar at hand. */
typedef struct Altered {
    size_t bar;
    signed char alter[80];
} Altered;

static bool needs_sign(const Line *line, Altered *altered, const StaveChord *chord, int note, int *alter)
{
    spz_pitch pitch = pitch_written_of(chord->notes[note]);
    int place = chord->places[note];
    if (altered->bar != chord->bar) {
        altered->bar = chord->bar;
        for (int i = 0; i < 80; i++)
            altered->alter[i] = (signed char)key_alter(line->view->movement->bars[chord->bar].fifths, i % 7);
    }
    *alter = pitch.alter < -2 ? -2 : pitch.alter > 2 ? 2 : pitch.alter;
    if (place < 0 || place >= 80 || chord->went_on || altered->alter[place] == *alter)
        return false;
    altered->alter[place] = (signed char)*alter;
    return true;
}

static void draw_ledgers(const Line *line, size_t s, double x, int place)
{
    int bottom = line->staves[s].bottom;
    for (int at = bottom - 2; at >= place; at -= 2)
        glyph_trace(&line->strokes->lines, "M# #h8", (const double[]){x - 4, stave_y(line, s, at)}, 2);
    for (int at = bottom + 10; at <= place; at += 2)
        glyph_trace(&line->strokes->lines, "M# #h8", (const double[]){x - 4, stave_y(line, s, at)}, 2);
}

static void draw_heads(const Line *line, size_t s, const StaveChord *chord, Altered *altered)
{
    Markup *html = line->view->html;
    double x = stave_x(line, chord);
    for (int n = 0; n < chord->count; n++) {
        int alter;
        double y = stave_y(line, s, chord->places[n]);
        draw_ledgers(line, s, x, chord->places[n]);
        if (chord->value.type < 2)
            glyph_head(html, chord->value.type, x, y);
        else
            glyph_full_head(&line->strokes->heads, x, y);
        if (needs_sign(line, altered, chord, n, &alter))
            glyph_accidental(html, alter, x - 5.4, y);
        for (int dot = 0; dot < chord->value.dots; dot++)
            glyph_dot(html, x + 4.6 + 2.6 * dot, y - (chord->places[n] % 2 == line->staves[s].bottom % 2 ? HALF_SPACE : 0));
        if (chord->notes[n]->flags & NOTE_STACCATO && n == 0)
            glyph_dot(html, x, chord->places[0] < line->staves[s].bottom + 4 ? y + 4.5 : y - 4.5);
        if (chord->went_on || chord->goes_on) {
            double from = chord->went_on ? x - 9 : x + 2, to = chord->went_on ? x - 2 : fmin(x + 9, line->look.width - 1);
            glyph_path(html, "pen", 0.8, "M# #Q# # # #", (const double[]){from, y + 2.6, (from + to) / 2, y + 5, to, y + 2.6}, 6);
        }
    }
}

static double outer_y(const Line *line, size_t s, const StaveChord *chord, bool up)
{
    return stave_y(line, s, up ? chord->places[0] : chord->places[chord->count - 1]);
}

static double inner_y(const Line *line, size_t s, const StaveChord *chord, bool up)
{
    return stave_y(line, s, up ? chord->places[chord->count - 1] : chord->places[0]);
}

/* Beams and flags are lines too; a tremolo has three. */
static int strokes_of(const StaveChord *chord)
{
    uint32_t flags = 0;
    for (int n = 0; n < chord->count; n++) /* files put them on any note of a chord */
        flags |= chord->notes[n]->flags;
    int lines = flags & NOTE_IN_QUAVERS ? 1 : flags & NOTE_IN_SEMIQUAVERS ? 2 : 3, own = chord->value.type > 2 ? chord->value.type - 2 : 0;
    return !(flags & NOTE_TREMOLO) ? 0 : lines > own ? lines - own : 1;
}

static void draw_stem(const Line *line, size_t s, const StaveChord *chord, bool up, double end)
{
    double x = stave_x(line, chord) + (up ? head_half : -head_half);
    glyph_trace(&line->strokes->lines, "M# #V#", (const double[]){x, inner_y(line, s, chord, up) + (up ? -0.6 : 0.6), end}, 3);
    for (int stroke = 0; stroke < strokes_of(chord); stroke++)
        glyph_path(line->view->html, "pen", 1.2, "M# #l5 -2", (const double[]){x - 2.5, (end + outer_y(line, s, chord, up)) / 2 + 1 + 2.4 * stroke * (up ? 1 : -1)}, 2);
}

static void draw_alone(const Line *line, size_t s, size_t at)
{
    const StaveChord *chord = &line->staves[s].chords.at[at];
    if (chord->value.type == 0)
        return;
    bool up = stave_stem_up(&line->staves[s], at, at + 1);
    double end = outer_y(line, s, chord, up) + (up ? -STEM : STEM);
    draw_stem(line, s, chord, up, end);
    if (chord->value.type > 2)
        glyph_flags(line->view->html, chord->value.type - 2, stave_x(line, chord) + (up ? head_half : -head_half), end, up);
}

static void draw_beam_piece(const Line *line, double x1, double y1, double x2, double y2, bool up)
{
    double thick = up ? 1.9 : -1.9;
    glyph_path(line->view->html, NULL, 0, "M# #L# #V#L# #z", (const double[]){x1, y1, x2, y2, y2 + thick, x1, y1 + thick}, 7);
}

static void draw_beams(const Line *line, size_t s, size_t first, size_t end)
{
    const StaveChord *chords = line->staves[s].chords.at;
    bool up = stave_stem_up(&line->staves[s], first, end);
    double shift = up ? head_half : -head_half, x1 = stave_x(line, &chords[first]) + shift, x2 = stave_x(line, &chords[end - 1]) + shift;
    double y1 = outer_y(line, s, &chords[first], up), y2 = outer_y(line, s, &chords[end - 1], up), tilt = fmin(fmax((y2 - y1) / 2, -5), 5), level = 0;
    y1 = (y1 + y2 - tilt) / 2;
    for (size_t i = first; i < end; i++) { /* every stem keeps its length */
        double at = y1 + tilt * (stave_x(line, &chords[i]) + shift - x1) / fmax(x2 - x1, 1), over = outer_y(line, s, &chords[i], up) - at;
        level = up ? fmin(level, over) : fmax(level, over);
    }
    y1 += level + (up ? -STEM + 2 : STEM - 2);
    for (size_t i = first; i < end; i++) {
        double x = stave_x(line, &chords[i]) + shift, y = y1 + tilt * (x - x1) / fmax(x2 - x1, 1);
        draw_stem(line, s, &chords[i], up, y);
        for (int b = 1; b <= chords[i].value.type - 2; b++) {
            double off = (up ? 3.2 : -3.2) * (b - 1);
            bool next = i + 1 < end && chords[i + 1].value.type - 2 >= b, before = i > first && chords[i - 1].value.type - 2 >= b;
            double to = next ? stave_x(line, &chords[i + 1]) + shift : before ? x : i + 1 < end ? x + 4 : x - 4;
            if (to != x)
                draw_beam_piece(line, x, y + off, to, y1 + tilt * (to - x1) / fmax(x2 - x1, 1) + off, up);
        }
    }
    if (chords[first].value.triplet)
        markup_label(line->view->html, "triplet", (x1 + x2) / 2 - 2, y1 + tilt / 2 + (up ? -2 : 10), "3");
}

static void open_notes(const Line *line, size_t s, const StaveChord *chord)
{
    const Stave *stave = &line->staves[s];
    bool coloured = chord->entry && chord->count;
    markup_open_class(line->view->html, "g", !coloured ? "plain" : view_class(stave->group ? stave->group->about.section : SPZ_WINDS));
}

static void draw_stave_notes(const Line *line, size_t s)
{
    const Stave *stave = &line->staves[s];
    Markup *html = line->view->html;
    Altered altered = {.bar = SIZE_MAX};
    for (size_t i = 0; i < stave->chords.count;) {
        const StaveChord *chord = &stave->chords.at[i];
        size_t end = i + 1;
        while (chord->beam && end < stave->chords.count && stave->chords.at[end].beam == chord->beam)
            end++;
        open_notes(line, s, chord);
        if (chord->count == 0) {
            bool whole = chord->value.type == 0 && chord->onset == 0;
            double middle = (line->bars[chord->bar - line->first] + line->bars[chord->bar - line->first + 1]) / 2;
            glyph_rest(html, chord->value.type, whole ? (chord->bar == line->first ? fmax(middle, stave_x(line, chord)) : middle) : stave_x(line, chord), line->tops[s]);
        } else {
            for (size_t k = i; k < end; k++)
                draw_heads(line, s, &stave->chords.at[k], &altered);
            if (end > i + 1)
                draw_beams(line, s, i, end);
            else
                draw_alone(line, s, i);
        }
        glyph_traced(html, "line", &line->strokes->lines);
        glyph_traced(html, "heads", &line->strokes->heads);
        markup_close(html);
        i = end;
    }
}

static double x_at(const Line *line, Ticks when)
{
    const Movement *movement = line->view->movement;
    for (size_t i = 0; i < line->moment_count; i++)
        if (movement->bars[line->moments[i].bar].onset + line->moments[i].onset >= when)
            return line->moments[i].x - 3;
    return line->look.width - 4;
}

static const char *loudness(const Stave *stave, Ticks when)
{
    static const char *const names[] = {"", "pppp", "ppp", "pp", "p", "mp", "mf", "f", "ff", "fff", "ffff"};
    for (size_t i = 0; i < stave->sound_count; i++)
        if (stave->sounds[i].onset >= when)
            return stave->sounds[i].note->dynamic < sizeof names / sizeof *names ? names[stave->sounds[i].note->dynamic] : "";
    return "";
}

static bool is_drawn(const Line *line, const spz_entry *entry)
{
    for (size_t s = 0; s < line->count; s++)
        if (stave_has_entry(&line->staves[s], entry))
            return true;
    return false;
}

/* An answer is marked where its call can be seen: in a group that has a stave, or in one of those who call together with others. */
static bool call_is_drawn(const Line *line, size_t entry)
{
    const spz_entry *entries = line->passage->entries;
    bool called = false;
    if (!view_answers(line->passage, &entries[entry]))
        return true;
    for (size_t i = entry; i-- > 0 && !(called && view_answers(line->passage, &entries[i]));) {
        if (is_drawn(line, &entries[i]))
            return true;
        called = called || !view_answers(line->passage, &entries[i]);
    }
    return false;
}

/* Brackets over calls and answers, how loud under their beginning. */
static void draw_entries(const Line *line, size_t s)
{
    const Stave *stave = &line->staves[s];
    const Bar *bars = line->view->movement->bars;
    Markup *html = line->view->html;
    Ticks from = bars[line->first].onset, to = bars[line->end - 1].onset + bars[line->end - 1].length;
    const char *said = "";
    for (size_t i = 0; spz_kind_is_antiphony(line->passage->kind) && i < line->passage->entry_count; i++) {
        const spz_entry *entry = &line->passage->entries[i];
        if (!stave_has_entry(stave, entry) || entry->onset >= to || entry->end <= from || !call_is_drawn(line, i))
            continue;
        double x1 = x_at(line, entry->onset < from ? from : entry->onset), x2 = fmax(x_at(line, entry->end) - 2, x1 + 4), y = line->tops[s] - line->highest[s] - 4;
        markup_open_class(html, "g", view_class(stave->group ? stave->group->about.section : SPZ_WINDS));
        glyph_path(html, "pen", 1.2, "M# #H#v3", (const double[]){x1, y, x2}, 3);
        if (entry->onset >= from)
            markup_box(html, view_answers(line->passage, entry) ? "hollow" : "solid", x1, y - 3.5, 7, 7);
        const char *loud = entry->onset >= from ? loudness(stave, entry->onset) : "";
        if (*loud && strcmp(loud, said) != 0)
            markup_label(html, "loud", x1 + 2, line->tops[s] + 4 * STAVE_SPACE + line->lowest[s] + 8, loud);
        said = *loud ? loud : said;
        markup_close(html);
    }
}

static void draw_numbers(const Line *line)
{
    double free_from = 0;
    for (size_t bar = line->first; bar < line->end; bar++) {
        double x = line->bars[bar - line->first];
        const char *number = line->view->movement->bars[bar].number;
        if (x < free_from)
            continue;
        markup_label(line->view->html, "number", x, 10, number);
        free_from = x + 8 + 7 * (double)strlen(number);
    }
}

static void put_label(const Line *line)
{
    char bars[WORDS_TEXT], who[WORDS_TEXT];
    Speaker speaker = {line->view->language, line->view->map};
    Markup *html = line->view->html;
    Buffer label;
    buffer_init(&label);
    SAY(&label, speaker.language, PHRASE_WEB_NOTES_ALT, slot_text("bars", words_bars(speaker.language, line->passage, bars)), slot_text("who", words_who(&speaker, line->passage, who)));
    markup_put(html, "role", "img");
    markup_put(html, "aria-label", buffer_text(&label));
    html->failed = html->failed || label.failed;
    buffer_free(&label);
}

static double signature_width(const Line *line)
{
    return 20 + 4.6 * abs(line->view->movement->bars[line->first].fifths);
}

static double names_width(const Line *line)
{
    char name[WORDS_TEXT];
    size_t longest = 3;
    for (size_t s = 0; s < line->count; s++) {
        view_name(line->view, line->staves[s].group, name);
        size_t columns = utf8_columns(name, strlen(name));
        longest = columns > longest ? columns : longest;
    }
    return 10 + name_letter * (double)longest;
}

static void draw(Line *line)
{
    Markup *html = line->view->html;
    stave_place(line, signature_width(line));
    markup_open_drawing(html, line->look.width > stave_short.width ? "notes wide" : "notes", line->look.width, line->height, NULL);
    markup_put_number(html, "width", line->look.width, 0);
    put_label(line);
    draw_numbers(line);
    for (size_t s = 0; s < line->count; s++) {
        draw_staff(line, s);
        draw_key(line, s);
        draw_stave_notes(line, s);
        if (line->look.signs)
            stave_signs(line, s);
        draw_entries(line, s);
    }
    markup_close(html);
    markup_line_end(html);
}

size_t stave_line(const ScoreView *view, const spz_passage *passage, size_t first, StaveLook look)
{
    Strokes strokes = {0};
    Line line = {.view = view, .passage = passage, .look = look, .first = first, .strokes = &strokes};
    if (passage->last >= view->movement->bar_count || first > passage->last)
        return first;
    line.count = staves_of(view, passage, line.staves, look.staves_most < STAVES_MOST ? look.staves_most : STAVES_MOST);
    line.left = names_width(&line);
    bool good = line.count > 0 && stave_choose_bars(&line);
    if (good)
        draw(&line);
    view->html->failed = view->html->failed || (line.count > 0 && !good);
    staves_free(line.staves, line.count);
    buffers_let_go(view->html, &strokes.lines, &strokes.heads);
    return good ? line.end : first;
}
