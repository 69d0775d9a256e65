/* Where the pieces of a movement are cut, and what stands in each; strip_marks.c draws the passages. */
#include "pages/drawings/strip_piece.h"
#include "support/text/ascii.h"
#include "support/memory.h"
#include "support/text/utf8.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PIECE_BARS = 36, PIECE_ROW_BARS = 130, SYSTEM_BARS = 64, PIECES_MOST = 64 };
static const double letters_line = 25, label_line = 13, foot = 20, lane_gap = 3, lanes_most = 158; /* pixels */
static const double wide = 1180, narrow = 300, between = 580; /* pixels that the bars have on a wide and on a narrow page, and at the least between them */
static const double letter_size = 8, number_letter = 7, names_wide = 60;

double strip_x(const StripPiece *piece, Ticks when)
{
    const Movement *movement = piece->view->movement;
    int bar = movement_bar_at(movement, when);
    if (bar < 0)
        return 0;
    const Bar *at = &movement->bars[bar];
    double part = at->length > 0 ? (double)(when - at->onset) / (double)at->length : 0;
    double x = ((double)bar + fmin(part, 1) - (double)piece->first) / (double)(piece->end - piece->first);
    return fmin(fmax(x, 0), 1);
}

bool strip_room(const StripPiece *piece, StripRoom *room, double bars, double width, bool *tight)
{
    double pixel = bars * piece->pixels, tight_pixel = bars * piece->tight;
    if (pixel < room->free_from)
        return false;
    room->free_from = pixel + width;
    *tight = tight_pixel < room->tight_from;
    if (!*tight)
        room->tight_from = tight_pixel + width;
    return true;
}

static void add_lane(StripLanes *lanes, spz_players players, spz_section section, double height, const char *name)
{
    if (lanes->count == STRIP_LANES)
        return;
    StripLane *lane = &lanes->lanes[lanes->count++];
    *lane = (StripLane){.players = players, .class = view_class(section), .height = height};
    snprintf(lane->name, sizeof lane->name, "%s", name);
}

static void place_lanes(StripLanes *lanes, double top, double most)
{
    double sum = 0, gap = lanes->count > 8 ? lane_gap / 2 : lane_gap;
    most = lanes->count > 8 ? 0.85 * most : most;
    for (size_t i = 0; i < lanes->count; i++)
        sum += lanes->lanes[i].height;
    double scale = sum > most ? fmax(most / sum, 0.42) : 1;
    for (size_t i = 0; i < lanes->count; i++) {
        lanes->lanes[i].top = top;
        lanes->lanes[i].height *= scale;
        top += lanes->lanes[i].height + gap;
    }
    lanes->dense = scale < 0.75;
    lanes->bottom = top - gap;
}

static bool any_winds(const ScoreView *view)
{
    for (size_t i = 0; i < spz_findings_count(view->findings); i++)
        if (view_players(spz_findings_at(view->findings, i)) & SPZ_WIND_PLAYERS)
            return true;
    return false;
}

static void all_lanes(const ScoreView *view, StripLanes *lanes)
{
    char name[WORDS_TEXT];
    *lanes = (StripLanes){.notes = true};
    if (any_winds(view))
        add_lane(lanes, SPZ_WIND_PLAYERS, SPZ_WINDS, 22, view_name(view, NULL, name));
    for (size_t i = 0; i < view->map->group_count && i < 63; i++) {
        const Group *group = &view->map->groups[i];
        double height = section_is_violin(group->about.section) ? 32 : group->about.section == SPZ_DB ? 16 : 22;
        add_lane(lanes, (spz_players)1 << i, group->about.section, height, view_name(view, group, name));
        lanes->lanes[lanes->count - 1].group = group;
    }
}

/* First violins, second violins, all others. */
static void three_rows(const ScoreView *view, StripLanes *lanes, double height)
{
    spz_players firsts = 0, seconds = 0, others = SPZ_WIND_PLAYERS;
    *lanes = (StripLanes){.rows = true};
    for (size_t i = 0; i < view->map->group_count && i < 63; i++) {
        spz_section section = view->map->groups[i].about.section;
        *(section == SPZ_VN1 ? &firsts : section == SPZ_VN2 || section == SPZ_VN3 ? &seconds : &others) |= (spz_players)1 << i;
    }
    char name[WORDS_TEXT];
    add_lane(lanes, firsts, SPZ_VN1, height, words_body(view->language, &(spz_group){.section = SPZ_VN1}, name));
    add_lane(lanes, seconds, SPZ_VN2, height, words_body(view->language, &(spz_group){.section = SPZ_VN2}, name));
    add_lane(lanes, others, SPZ_NO_SECTION, height, phrase_text(view->language, PHRASE_STRIP_OTHERS));
}

/* The letter nearest to where an even cut would fall; that place where none is near. */
static size_t cut_near(const Movement *movement, double ideal, double within)
{
    size_t best = (size_t)lround(ideal);
    double least = within;
    for (size_t bar = 1; bar < movement->bar_count; bar++) {
        const char *letter = movement->bars[bar].rehearsal;
        if (letter && *letter && fabs((double)bar - ideal) < least) {
            least = fabs((double)bar - ideal);
            best = bar;
        }
    }
    return best;
}

/* Where the pieces begin, and the end of the last. */
static size_t cut(const ScoreView *view, size_t most, size_t starts[PIECES_MOST + 1])
{
    size_t bars = view->movement->bar_count, count = (bars + most - 1) / most, made = 1;
    count = count > PIECES_MOST ? PIECES_MOST : count;
    double each = (double)bars / (double)count;
    starts[0] = 0;
    for (size_t i = 1; i < count; i++) {
        size_t at = cut_near(view->movement, each * (double)i, each / 4);
        if (at > starts[made - 1] && at < bars)
            starts[made++] = at;
    }
    starts[made] = bars;
    return made;
}

static double names_width(const StripLanes *lanes)
{
    size_t longest = 0;
    for (size_t i = 0; i < lanes->count; i++) {
        size_t columns = utf8_columns(lanes->lanes[i].name, strlen(lanes->lanes[i].name));
        longest = columns > longest ? columns : longest;
    }
    double width = 12 + (lanes->dense ? 7.2 : 9) * (double)longest;
    return fmin(fmax(width, names_wide), 150);
}

static void draw_names(const StripPiece *piece, double width, double height)
{
    Markup *html = piece->view->html;
    markup_open(html, "svg");
    markup_put(html, "class", piece->lanes->dense ? "names dense" : "names");
    markup_put_number(html, "width", width, 0);
    markup_put_number(html, "height", height, 0);
    markup_put(html, "aria-hidden", "true");
    for (size_t i = 0; i < piece->lanes->count; i++) {
        const StripLane *lane = &piece->lanes->lanes[i];
        markup_label(html, lane->class, width - 8, lane->top + lane->height / 2 + 4.5, lane->name);
    }
    markup_close(html);
}

static int bar_step(const StripPiece *piece)
{
    static const int steps[] = {5, 10, 20, 50, 100};
    size_t i = 0;
    while (i < 4 && steps[i] * piece->pixels < 34)
        i++;
    return steps[i];
}

void strip_label(Markup *html, const char *class, double x, double shift, double y, const char *text)
{
    markup_open_class(html, "text", class);
    draw_percent(html, "x", x);
    markup_put_number(html, "dx", shift, 0);
    markup_put_number(html, "y", y, 0);
    markup_words(html, text);
    markup_close(html);
}

/* A number that would run out of the piece is left out, so that all stand on the same side of their bar. */
static void draw_number(const StripPiece *piece, size_t bar, double x, int step)
{
    const char *number = piece->view->movement->bars[bar].number;
    double width = 6 + number_letter * (double)strlen(number);
    if ((double)(piece->end - bar) * piece->pixels >= width)
        strip_label(piece->view->html, step * piece->tight >= width ? "number" : "number tight", x, 2, piece->lanes->bottom + 15, number);
}

static void draw_bars(const StripPiece *piece)
{
    Markup *html = piece->view->html;
    const StripLanes *lanes = piece->lanes;
    int step = bar_step(piece);
    for (size_t bar = piece->first + 1; bar < piece->end; bar++) {
        const char *number = piece->view->movement->bars[bar].number;
        bool counted = ascii_is_digit(*number) && atoi(number) % step == 0;
        double x = (double)(bar - piece->first) / (double)(piece->end - piece->first);
        if (!counted && piece->pixels < 7)
            continue;
        draw_across(html, counted ? "tick five" : "tick", x, x, lanes->lanes[0].top, lanes->bottom + (counted ? 4 : 0));
        if (counted)
            draw_number(piece, bar, x, step);
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

/* What tempo words stand in the bar, in the first part that has any. */
static const char *tempo_of_bar(const Movement *movement, size_t bar, char words[64])
{
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 0; i < movement->parts[part].direction_count; i++) {
            const Direction *mark = &movement->parts[part].directions[i];
            if (mark->kind == DIRECTION_TEMPO && mark->text && mark->bar == (int32_t)bar && *tempo_words(mark->text, words))
                return words;
        }
    return "";
}

static double letter_width(const char *letter)
{
    return 10 + letter_size * (double)(strlen(letter) < 12 ? strlen(letter) : 12);
}

static void draw_letter(const StripPiece *piece, double x, const char *letter, const char *number, bool tight)
{
    Markup *html = piece->view->html;
    double width = letter_width(letter);
    draw_across(html, "letter-line", x, x, 10 + piece->letters_down, piece->lanes->bottom);
    markup_open(html, "svg");
    if (tight)
        markup_put(html, "class", "tight");
    draw_percent(html, "x", x);
    markup_put_number(html, "y", 1 + piece->letters_down, 0);
    markup_put(html, "width", "90");
    markup_put(html, "height", "22");
    markup_put(html, "overflow", "visible");
    markup_box(html, "letter-box", 0.75, 0.75, width, 18);
    markup_label(html, "letter", 0.75 + width / 2, 15, letter);
    markup_label(html, "number", width + 5, 15, number);
    markup_close(html);
}

/* Whether the letter found room, and which it took. */
static bool put_letter(const StripPiece *piece, size_t bar, StripRoom *room, double *taken, bool draw)
{
    bool tight;
    const Bar *at = &piece->view->movement->bars[bar];
    double bars = (double)(bar - piece->first);
    *taken = 0;
    if (!at->rehearsal || !*at->rehearsal)
        return true;
    *taken = letter_width(at->rehearsal) + 14 + letter_size * (double)strlen(at->number);
    if (!strip_room(piece, room, bars, *taken, &tight)) {
        *taken = 0;
        return false;
    }
    if (draw)
        draw_letter(piece, bars / (double)(piece->end - piece->first), at->rehearsal, at->number, tight);
    return true;
}

/* The same for tempo words, `taken` pixels behind the bar; what would run out of the piece has no room anywhere. */
static bool put_tempo(const StripPiece *piece, size_t bar, StripRoom *room, double taken, bool draw)
{
    char words[64];
    bool tight;
    double bars = (double)(bar - piece->first), end = piece->pixels * (double)(piece->end - piece->first);
    const char *tempo = tempo_of_bar(piece->view->movement, bar, words);
    double width = 16 + letter_size * 1.1 * (double)utf8_columns(tempo, strlen(tempo));
    if (!*tempo || (bar != piece->first && bars * piece->pixels + taken + width >= end))
        return true;
    if (!strip_room(piece, room, bars + taken / piece->pixels, width, &tight))
        return false;
    if (draw)
        strip_label(piece->view->html, tight ? "tempo tight" : "tempo", bars / (double)(piece->end - piece->first), taken > 0 ? taken + 2 : 0, 16, tempo);
    return true;
}

/* Rehearsal letters and tempo words, on one line where that has room for all of them, else the words on a line above. Whether all found room. */
static bool put_heads(const StripPiece *piece, bool draw)
{
    StripRoom room = {0, 0}, above = {0, 0};
    bool all = true, apart = piece->letters_down > 0;
    for (size_t bar = piece->first; bar < piece->end; bar++) {
        double taken;
        all = put_letter(piece, bar, &room, &taken, draw) && all;
        all = put_tempo(piece, bar, apart ? &above : &room, apart ? 0 : taken, draw) && all;
    }
    return all;
}

static void draw_lanes(const StripPiece *piece)
{
    for (size_t i = 0; i < piece->lanes->count; i++) {
        const StripLane *lane = &piece->lanes->lanes[i];
        markup_open_class(piece->view->html, "rect", "lane");
        markup_put(piece->view->html, "x", "0");
        markup_put_number(piece->view->html, "y", lane->top, 1);
        markup_put(piece->view->html, "width", "100%");
        markup_put_number(piece->view->html, "height", lane->height, 1);
        markup_close_void(piece->view->html);
    }
}

static void draw_piece(StripPiece *piece, bool lead, double names, size_t longest)
{
    Markup *html = piece->view->html;
    double height = piece->lanes->bottom + foot;
    const Bar *bars = piece->view->movement->bars;
    markup_open_class(html, "div", lead ? "system lead" : "system");
    markup_put_format(html, "style", "--n:%zu;--longest:%zu;--names:%dpx", piece->end - piece->first, longest, (int)names);
    draw_names(piece, names, height);
    markup_open(html, "svg");
    markup_put(html, "class", piece->lanes->rows ? "bars-drawn thumb" : "bars-drawn");
    markup_put_number(html, "height", height, 0);
    markup_put(html, "role", "group");
    Buffer label = {0};
    SAY(&label, piece->view->language, PHRASE_WEB_MAP_BARS, slot_text("from", bars[piece->first].number), slot_text("to", bars[piece->end - 1].number));
    markup_put(html, "aria-label", buffer_text(&label));
    buffer_let_go(html, &label);
    draw_lanes(piece);
    draw_bars(piece);
    put_heads(piece, true);
    if (piece->lanes->notes)
        strip_notes(piece);
    strip_marks(piece);
    markup_close(html);
    markup_close_line(html);
}

/* Over the lanes: letters and tempo words, and as many lines of bars as any of the pieces needs. */
static double head_of(StripPiece *piece, const size_t *starts, size_t count)
{
    int most = 1;
    bool room = true;
    for (size_t i = 0; i < count; i++) {
        piece->first = starts[i];
        piece->end = starts[i + 1];
        int lines = strip_place_labels(piece);
        most = lines > most ? lines : most;
        room = put_heads(piece, false) && room;
    }
    piece->letters_down = room ? 0 : letters_line;
    return letters_line + piece->letters_down + label_line * most + 4;
}

/* Pieces side by side where there is room, else one under the other. */
static void draw_row(StripPiece *piece, StripLanes *lanes, const size_t *starts, size_t count)
{
    Markup *html = piece->view->html;
    size_t longest = 1;
    for (size_t i = 0; i < count; i++)
        longest = starts[i + 1] - starts[i] > longest ? starts[i + 1] - starts[i] : longest;
    double beside = wide / (double)(starts[count] - starts[0]), under = narrow / (double)longest;
    piece->pixels = fmin(beside, under);
    piece->tight = between / (double)(starts[count] - starts[0]);
    StripPiece closest = *piece; /* bars are written so that they have room on every page */
    closest.pixels = fmin(piece->pixels, piece->tight);
    piece->letters_down = closest.letters_down = 0;
    place_lanes(lanes, head_of(&closest, starts, count), lanes_most);
    piece->letters_down = closest.letters_down;
    markup_open_class(html, "div", "strip");
    for (size_t i = 0; i < count; i++) {
        piece->first = starts[i];
        piece->end = closest.end = starts[i + 1];
        closest.first = starts[i];
        strip_place_labels(&closest);
        draw_piece(piece, i == 0, names_width(piece->lanes), longest);
    }
    markup_close(html);
}

typedef struct Shown {
    size_t *passages, count;
    StripLabel *labels;
} Shown;

/* What is to be drawn: by strength and kind where `all` is asked for, else what is clear, and what the verdict cites. */
static Shown choose(const ScoreView *view, bool all)
{
    size_t most = spz_findings_count(view->findings);
    Shown shown = {.passages = memory_resize(NULL, most + 1, sizeof *shown.passages), .labels = memory_resize(NULL, most + 1, sizeof *shown.labels)};
    bool room = shown.passages && shown.labels;
    for (size_t i = 0; room && i < most; i++) {
        const spz_passage *passage = spz_findings_at(view->findings, i);
        bool clear = view_strength(passage) > 0 && passage->kind != SPZ_COUPLING;
        if (view_shows(view, i) && (all || clear || (view_cites(view, i) && passage->kind != SPZ_COUPLING)))
            shown.passages[shown.count++] = i;
    }
    view->html->failed = view->html->failed || !room;
    return shown;
}

static void release(Shown *shown)
{
    memory_free(shown->passages);
    memory_free(shown->labels);
}

void strip_whole(const ScoreView *view, const size_t *named, size_t named_count)
{
    size_t starts[PIECES_MOST + 1];
    StripLanes lanes;
    bool rows = view->movement->bar_count > STRIP_LANES_MOST;
    if (view->movement->bar_count == 0)
        return;
    Shown shown = choose(view, !rows);
    if (rows)
        three_rows(view, &lanes, 26);
    else
        all_lanes(view, &lanes);
    StripPiece piece = {.view = view, .lanes = &lanes, .shown = shown.passages, .labels = shown.labels, .shown_count = shown.count, .named = named, .named_count = named_count, .all_named = !rows};
    draw_row(&piece, &lanes, starts, cut(view, rows ? PIECE_ROW_BARS : PIECE_BARS, starts));
    release(&shown);
}

void strip_systems(const ScoreView *view)
{
    size_t starts[PIECES_MOST + 1];
    StripLanes lanes;
    if (view->movement->bar_count == 0)
        return;
    Shown shown = choose(view, true);
    size_t pieces = cut(view, SYSTEM_BARS / 2, starts);
    StripPiece piece = {.view = view, .lanes = &lanes, .shown = shown.passages, .labels = shown.labels, .shown_count = shown.count, .all_named = true};
    for (size_t i = 0; i < pieces; i += 2) {
        all_lanes(view, &lanes);
        draw_row(&piece, &lanes, starts + i, pieces - i < 2 ? 1 : 2);
    }
    release(&shown);
}

void strip_thumb(const ScoreView *view, const char *label, bool lost)
{
    StripLanes lanes;
    Markup *html = view->html;
    Shown shown = choose(view, false);
    three_rows(view, &lanes, 8);
    place_lanes(&lanes, 0, 3 * 8);
    StripPiece piece = {.view = view, .lanes = &lanes, .shown = shown.passages, .shown_count = shown.count, .end = view->movement->bar_count, .thumb = true, .kept = !lost};
    markup_open_class(html, "svg", "thumb");
    markup_put_number(html, "height", lanes.bottom + 5, 0);
    markup_put(html, "role", "img");
    markup_put(html, "aria-label", label);
    draw_lanes(&piece);
    if (piece.end > 0)
        strip_marks(&piece);
    markup_close(html);
    release(&shown);
}
