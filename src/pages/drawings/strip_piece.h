/* strip_piece.h - one piece of a strip while it is drawn: what strip.c and strip_marks.c share. */
#ifndef PAGES_DRAWINGS_STRIP_PIECE_H
#define PAGES_DRAWINGS_STRIP_PIECE_H
#include "pages/drawings/strip.h"
#include "wording/passage_words.h"

enum { STRIP_LANES = 40, STRIP_LABEL_LINES = 4 };

typedef struct StripLane {
    spz_players players;
    const Group *group; /* NULL for winds and for rows of several groups */
    const char *class;
    double top, height; /* pixels */
    char name[WORDS_TEXT];
} StripLane;

typedef struct StripLanes {
    StripLane lanes[STRIP_LANES];
    size_t count;
    double bottom;
    bool notes, rows, dense; /* with a hairline for each note; three rows; so many lanes that they are low */
} StripLanes;

/* Where the bars of a passage are written over the lanes. */
typedef struct StripLabel {
    int line;       /* 0 next to the lanes; -1: not written in this piece */
    bool brief;     /* the first bar alone */
    double shift;   /* pixels from the passage's beginning */
} StripLabel;

typedef struct StripPiece {
    const ScoreView *view;
    const StripLanes *lanes;
    size_t first, end;   /* bars */
    double pixels;       /* that a bar has on a wide or a narrow page, the less of them; between the two it has `tight` */
    double tight;
    const size_t *shown; /* passages, by their place in the findings */
    StripLabel *labels;  /* one for each of them */
    size_t shown_count;
    const size_t *named; /* whose bars are written first, and which the keyboard reaches where `all_named` is not set */
    size_t named_count;
    bool all_named, thumb;
    double letters_down; /* pixels: rehearsal letters stand that far below the tempo words, which have a line of their own then */
    bool kept; /* nothing is marked as lost */
} StripPiece;

/* From where on words have room, in pixels: on a wide or narrow page, and between the two. */
typedef struct StripRoom {
    double free_from, tight_from;
} StripRoom;
/* Takes `width` pixels at `bars` bars from the beginning of the piece; false where they are taken. `*tight`: they have room but on a page between
 * wide and narrow: to be hidden there. */
bool strip_room(const StripPiece *piece, StripRoom *room, double bars, double width, bool *tight);

/* Share of the piece's width. */
double strip_x(const StripPiece *piece, Ticks when);
/* A text that begins `shift` pixels behind x. */
void strip_label(Markup *html, const char *class, double x, double shift, double y, const char *text);
/* strip_labels.c: finds a place for the bars of every passage that the piece names, on as many lines as it takes: none is left out, none runs into
 * another. The number of lines. */
int strip_place_labels(const StripPiece *piece);
/* Whether it is one of those `named`. */
bool strip_names(const StripPiece *piece, size_t passage);
void strip_draw_label(const StripPiece *piece, size_t shown);
/* strip_marks.c: all notes as hairlines at their pitch; the passages. */
void strip_notes(const StripPiece *piece);
void strip_marks(const StripPiece *piece);
#endif
