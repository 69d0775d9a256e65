/* The passages on a strip: blocks for calls and answers, lines for divided and coupled sections, frames for what would be lost. */
#include "pages/drawings/strip_piece.h"
#include "support/numbers.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

static const double least_block = 0.0012; /* share of the piece */

/* Pitch within its lane: the range of the lane's group from top to bottom. */
typedef struct Range {
    int low, high;
} Range;

static Range range_of(const Group *group)
{
    Range range = {127, 0};
    for (size_t i = 0; i < group->sound_count; i++) {
        int midi = group->sounds[i].note->midi;
        if (midi < 0)
            continue;
        range.low = midi < range.low ? midi : range.low;
        range.high = midi > range.high ? midi : range.high;
    }
    if (range.high - range.low < 6)
        range.high = range.low + 6;
    return range;
}

static void add_notes(const StripPiece *piece, const StripLane *lane, Ticks from, Ticks to, Buffer *path)
{
    const Group *group = lane->group;
    Range range = range_of(group);
    double bars = (double)(piece->end - piece->first);
    for (size_t i = group_sound_at(group, from); i < group->sound_count && group->sounds[i].onset < to; i++) {
        const GroupSound *sound = &group->sounds[i];
        if (sound->note->midi < 0 || sound->duration <= 0)
            continue;
        Ticks end = sound->onset + sound->duration < to ? sound->onset + sound->duration : to;
        double x = strip_x(piece, sound->onset) * bars, wide = strip_x(piece, end) * bars - x - 0.04;
        double y = lane->top + 4 + (lane->height - 8) * (double)(range.high - sound->note->midi) / (double)(range.high - range.low);
        char n[3][NUMBER_TEXT];
        buffer_printf(path, "M%s %sh%s", number_text_short(x, 2, n[0]), number_text_short(y, 1, n[1]), number_text_short(fmax(wide, 0.05), 2, n[2]));
    }
}

static void open_ink(const StripPiece *piece)
{
    Markup *html = piece->view->html;
    markup_open_class(html, "svg", "ink");
    markup_put(html, "width", "100%");
    markup_put_number(html, "height", piece->lanes->bottom, 0);
    markup_put_format(html, "viewBox", "0 0 %zu %d", piece->end - piece->first, (int)lround(piece->lanes->bottom));
    markup_put(html, "preserveAspectRatio", "none");
    markup_put(html, "aria-hidden", "true");
}

static void put_path(Markup *html, const char *class, Buffer *path)
{
    if (path->length) {
        markup_open_class(html, "path", class);
        markup_put(html, "d", path->text);
        markup_close_void(html);
    }
    html->failed = html->failed || buffer_failed(path);
    buffer_clear(path);
}

void strip_notes(const StripPiece *piece)
{
    const Bar *bars = piece->view->movement->bars;
    Ticks from = bars[piece->first].onset, to = bars[piece->end - 1].onset + bars[piece->end - 1].length;
    Buffer path = {0};
    open_ink(piece);
    for (size_t i = 0; i < piece->lanes->count; i++)
        if (piece->lanes->lanes[i].group)
            add_notes(piece, &piece->lanes->lanes[i], from, to, &path);
    put_path(piece->view->html, "quiet", &path);
    markup_close(piece->view->html);
    buffer_free(&path);
}

static bool in_piece(const StripPiece *piece, const spz_passage *passage)
{
    return passage->first < piece->end && passage->last >= piece->first;
}

static bool entry_in_piece(const StripPiece *piece, const spz_entry *entry)
{
    const Bar *bars = piece->view->movement->bars;
    return entry->onset < bars[piece->end - 1].onset + bars[piece->end - 1].length && entry->end > bars[piece->first].onset;
}

/* An entry in each lane whose players have it. */
static bool lane_has(const StripLane *lane, spz_players players)
{
    return (lane->players & players) != 0;
}

static void block(const StripPiece *piece, const StripLane *lane, bool answer, double from, double to)
{
    Markup *html = piece->view->html;
    markup_open(html, "rect");
    markup_put_format(html, "class", "%s %s", answer ? "answer" : "call", lane->class);
    draw_percent(html, "x", from);
    markup_put_number(html, "y", lane->top + (piece->thumb ? 1 : 1.5), 1);
    draw_percent(html, "width", fmax(to - from, least_block));
    markup_put_number(html, "height", lane->height - (piece->thumb ? 2 : 3), 1);
    markup_close_void(html);
}

static const StripLane *lane_of(const StripPiece *piece, const spz_entry *entry)
{
    for (size_t i = 0; i < piece->lanes->count; i++)
        if (lane_has(&piece->lanes->lanes[i], entry->leader < 63 ? (spz_players)1 << entry->leader : entry->players & SPZ_WIND_PLAYERS))
            return &piece->lanes->lanes[i];
    for (size_t i = 0; i < piece->lanes->count; i++)
        if (lane_has(&piece->lanes->lanes[i], entry->players))
            return &piece->lanes->lanes[i];
    return NULL;
}

/* A thin line from the end of the call to the answer's beginning. */
static void tie(const StripPiece *piece, const spz_entry *call, const spz_entry *answer)
{
    const StripLane *from = lane_of(piece, call), *to = lane_of(piece, answer);
    if (!from || !to || from == to)
        return;
    bool down = to->top > from->top;
    Ticks leaves = call->end < answer->onset ? call->end : answer->onset;
    draw_across(piece->view->html, "tie", strip_x(piece, leaves), strip_x(piece, answer->onset), down ? from->top + from->height : from->top, down ? to->top : to->top + to->height);
}

/* A side that is told as all the strings is framed over all their lanes; filled are those who have the notes. */
static void frame_side(const StripPiece *piece, const spz_passage *passage, const spz_entry *entry)
{
    Markup *html = piece->view->html;
    double top = HUGE_VAL, bottom = 0, from = strip_x(piece, entry->onset), to = strip_x(piece, entry->end);
    bool strings = passage->sides[0].section == SPZ_STRINGS || passage->sides[1].section == SPZ_STRINGS;
    if (!strings || piece->lanes->rows || entry->players & SPZ_WIND_PLAYERS)
        return;
    for (size_t k = 0; k < piece->lanes->count; k++) {
        const StripLane *lane = &piece->lanes->lanes[k];
        if (lane->group && !lane->group->about.solo) {
            top = fmin(top, lane->top);
            bottom = fmax(bottom, lane->top + lane->height);
        }
    }
    markup_open_class(html, "rect", "side-frame");
    draw_percent(html, "x", from);
    draw_percent(html, "width", fmax(to - from, least_block));
    markup_put_number(html, "y", top, 1);
    markup_put_number(html, "height", fmax(bottom - top, 0), 1);
    markup_close_void(html);
}

static void entries(const StripPiece *piece, const spz_passage *passage)
{
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!entry_in_piece(piece, entry))
            continue;
        bool answer = view_answers(passage, entry);
        frame_side(piece, passage, entry);
        if (answer && i > 0 && !piece->lanes->rows && entry_in_piece(piece, &passage->entries[i - 1]))
            tie(piece, &passage->entries[i - 1], entry);
        for (size_t k = 0; k < piece->lanes->count; k++)
            if (lane_has(&piece->lanes->lanes[k], entry->players))
                block(piece, &piece->lanes->lanes[k], answer, strip_x(piece, entry->onset), strip_x(piece, entry->end));
    }
}

/* The notes of the entries once more, on their blocks. */
static void notes_on_blocks(const StripPiece *piece, const spz_passage *passage)
{
    Buffer path = {0};
    open_ink(piece);
    for (size_t k = 0; k < piece->lanes->count; k++)
        for (int answer = 0; answer < 2; answer++) {
            const StripLane *lane = &piece->lanes->lanes[k];
            for (size_t i = 0; lane->group && i < passage->entry_count; i++) {
                const spz_entry *entry = &passage->entries[i];
                if (lane_has(lane, entry->players) && view_answers(passage, entry) == (answer == 1) && entry_in_piece(piece, entry))
                    add_notes(piece, lane, entry->onset, entry->end, &path);
            }
            char class[24] = "on";
            if (answer) {
                strcpy(class, "of ");
                strncat(class, lane->class, 8);
            }
            put_path(piece->view->html, class, &path);
        }
    markup_close(piece->view->html);
    buffer_free(&path);
}

static void level(const StripPiece *piece, const char *kind, const StripLane *lane, double y, const spz_passage *passage)
{
    char class[32];
    double from = strip_x(piece, passage->onset);
    snprintf(class, sizeof class, "%s %s", kind, lane->class);
    draw_across(piece->view->html, class, from, fmax(strip_x(piece, passage->end), from + least_block), y, y);
}

/* As many lines as the section divides into, three at most; a dotted line under those who move together. */
static void bands(const StripPiece *piece, const spz_passage *passage)
{
    bool coupled = passage->kind == SPZ_COUPLING;
    for (size_t k = 0; k < piece->lanes->count; k++) {
        const StripLane *lane = &piece->lanes->lanes[k];
        if (!lane_has(lane, view_players(passage)))
            continue;
        int lines = coupled ? 1 : passage->kind == SPZ_DIV2 ? 2 : 3;
        for (int i = 0; i < lines; i++)
            level(piece, coupled ? "coupled" : "divided", lane, coupled ? lane->top + lane->height - 2 : lane->top + lane->height * (i + 1) / (lines + 1), passage);
    }
}

/* Round all lanes of the passage; in a list of movements a line under them. */
static void lost(const StripPiece *piece, const spz_passage *passage)
{
    Markup *html = piece->view->html;
    double top = HUGE_VAL, bottom = 0, from = strip_x(piece, passage->onset), to = strip_x(piece, passage->end);
    for (size_t k = 0; k < piece->lanes->count; k++)
        if (lane_has(&piece->lanes->lanes[k], view_players(passage))) {
            top = fmin(top, piece->lanes->lanes[k].top);
            bottom = fmax(bottom, piece->lanes->lanes[k].top + piece->lanes->lanes[k].height);
        }
    if (bottom <= 0)
        return;
    if (piece->thumb) {
        draw_across(html, "lost-line", from, to, piece->lanes->bottom + 3, piece->lanes->bottom + 3);
        return;
    }
    markup_open_class(html, "rect", "lost-frame");
    draw_percent(html, "x", from);
    draw_percent(html, "width", to - from);
    markup_put_number(html, "y", top - 2, 1);
    markup_put_number(html, "height", bottom - top + 4, 1);
    markup_close_void(html);
}

/* Which arrangements lose it, by their places; the one that is shown beside the recommended one is 'lost' from the start. */
static void put_class(const StripPiece *piece, const spz_passage *passage, size_t index)
{
    const spz_verdict *verdict = piece->view->verdict;
    Markup *html = piece->view->html;
    size_t other = view_other(verdict);
    bool gone = other > 0 && view_loses(verdict, other, index);
    markup_put_format(html, "class", "%s k-%s s%d%s", piece->thumb ? "passage-drawn" : "mark", spz_kind_name(passage->kind), view_strength(passage), gone ? " lost" : "");
    Buffer places = {0};
    for (size_t place = 0; place < spz_verdict_count(verdict); place++)
        if (!piece->thumb && view_loses(verdict, place, index))
            buffer_printf(&places, "%s%zu", places.length ? " " : "", place);
    if (places.length)
        markup_put(html, "data-lost", places.text);
    buffer_let_go(html, &places);
}

static void name_mark(const StripPiece *piece, const spz_passage *passage)
{
    char bars[WORDS_TEXT], kind[WORDS_TEXT], who[WORDS_TEXT];
    Speaker speaker = {piece->view->language, piece->view->map};
    Markup *html = piece->view->html;
    Buffer words = {0};
    SAY(&words, speaker.language, PHRASE_WEB_MARK, slot_text("bars", words_bars(speaker.language, passage, bars)), slot_text("kind", words_kind(speaker.language, passage, kind)),
        slot_text("who", words_who(&speaker, passage, who)), slot_text("weight", words_weight(speaker.language, passage->strength)));
    markup_element(html, "title", NULL, buffer_text(&words));
    buffer_let_go(html, &words);
}

static void open_mark(const StripPiece *piece, const spz_passage *passage, size_t index)
{
    Markup *html = piece->view->html;
    markup_open(html, piece->thumb ? "g" : "a");
    put_class(piece, passage, index);
    if (piece->thumb)
        return;
    markup_put_format(html, "href", "#m%zu-p%zu", piece->view->number, index + 1);
    if (passage->first < piece->first || !(piece->all_named || strip_names(piece, index))) /* the keyboard stops at each once */
        markup_put(html, "tabindex", "-1");
    name_mark(piece, passage);
}

static void draw_mark(const StripPiece *piece, size_t shown)
{
    size_t index = piece->shown[shown];
    const spz_passage *passage = spz_findings_at(piece->view->findings, index);
    open_mark(piece, passage, index);
    if (!piece->kept)
        lost(piece, passage);
    if (!spz_kind_is_antiphony(passage->kind))
        bands(piece, passage);
    else {
        entries(piece, passage);
        if (piece->lanes->notes)
            notes_on_blocks(piece, passage);
    }
    if (!piece->thumb)
        strip_draw_label(piece, shown);
    markup_close_line(piece->view->html);
}

/* Lines lie below blocks. */
void strip_marks(const StripPiece *piece)
{
    for (int antiphony = 0; antiphony < 2; antiphony++)
        for (size_t i = 0; i < piece->shown_count; i++) {
            const spz_passage *passage = spz_findings_at(piece->view->findings, piece->shown[i]);
            if (in_piece(piece, passage) && spz_kind_is_antiphony(passage->kind) == (antiphony == 1))
                draw_mark(piece, i);
        }
}
