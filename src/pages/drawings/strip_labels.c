/* The bars of passages over the lanes of a strip: next to the lanes where there is room, else a line higher, else the first bar alone. */
#include "pages/drawings/strip_piece.h"
#include <math.h>
#include <string.h>

static const double lowest = 7, line_height = 13, letter = 7, air = 6; /* pixels: above the lanes, and of the writing */

bool strip_names(const StripPiece *piece, size_t passage)
{
    for (size_t i = 0; i < piece->named_count; i++)
        if (piece->named[i] == passage)
            return true;
    return false;
}

static bool is_written(const StripPiece *piece, size_t index)
{
    const spz_passage *passage = spz_findings_at(piece->view->findings, index);
    bool told = strip_names(piece, index) || (piece->all_named && passage->kind != SPZ_COUPLING && view_strength(passage) > 0);
    return told && passage->first >= piece->first && passage->first < piece->end;
}

static const char *words_of(const StripPiece *piece, size_t index, bool brief, char words[WORDS_TEXT])
{
    const spz_passage *passage = spz_findings_at(piece->view->findings, index);
    if (brief)
        return piece->view->movement->bars[passage->first].number;
    return words_bars(piece->view->language, passage, words);
}

/* The lowest line on which the words have room, none where all are taken. What would run out of the piece is moved back from its end. */
static void put_on_line(const StripPiece *piece, double at, double width, double free_from[STRIP_LABEL_LINES], StripLabel *label)
{
    double end = piece->pixels * (double)(piece->end - piece->first), from = fmax(fmin(at, end - width), 0);
    for (int line = 0; line < STRIP_LABEL_LINES; line++)
        if (from >= free_from[line]) {
            free_from[line] = from + width;
            label->line = line;
            label->shift = from - at + 1;
            return;
        }
}

/* Where even the first bar alone has no room it stands behind what is there, on the line that is free soonest. */
static void put_behind(double at, double width, double free_from[STRIP_LABEL_LINES], StripLabel *label)
{
    int soonest = 0;
    for (int line = 1; line < STRIP_LABEL_LINES; line++)
        soonest = free_from[line] < free_from[soonest] ? line : soonest;
    label->line = soonest;
    label->shift = free_from[soonest] - at + 1;
    free_from[soonest] += width;
}

int strip_place_labels(const StripPiece *piece)
{
    double free_from[STRIP_LABEL_LINES] = {0};
    char words[WORDS_TEXT];
    int lines = 0;
    for (size_t i = 0; i < piece->shown_count; i++) {
        StripLabel *label = &piece->labels[i];
        *label = (StripLabel){.line = -1};
        if (!is_written(piece, piece->shown[i]))
            continue;
        double at = strip_x(piece, spz_findings_at(piece->view->findings, piece->shown[i])->onset) * piece->pixels * (double)(piece->end - piece->first), width = 0;
        for (int brief = 0; brief < 2 && label->line < 0; brief++) {
            label->brief = brief;
            width = air + letter * (double)strlen(words_of(piece, piece->shown[i], brief, words));
            put_on_line(piece, at, width, free_from, label);
        }
        if (label->line < 0)
            put_behind(at, width, free_from, label);
        lines = label->line + 1 > lines ? label->line + 1 : lines;
    }
    return lines;
}

void strip_draw_label(const StripPiece *piece, size_t shown)
{
    const StripLabel *label = &piece->labels[shown];
    const spz_passage *passage = spz_findings_at(piece->view->findings, piece->shown[shown]);
    char words[WORDS_TEXT];
    if (label->line < 0)
        return;
    strip_label(piece->view->html, "range", strip_x(piece, passage->onset), label->shift, piece->lanes->lanes[0].top - lowest - line_height * label->line,
                words_of(piece, piece->shown[shown], label->brief, words));
}
