/* division_marks.h - what the words over a string staff say about who plays: divided, in how many, one player a note or two, by desks,
 * half of them, solo, the others, all again. English, German, French, Italian and Spanish, with the usual short forms and old
 * spellings. */
#ifndef SECTIONS_NAMES_DIVISION_MARKS_H
#define SECTIONS_NAMES_DIVISION_MARKS_H
#include <stdbool.h>

typedef struct DivisionWords {
    bool divided;      /* div., divisi, geteilt, divisés, in 3 */
    bool unison;       /* unis., zus., non div. said after a division ends it too */
    bool double_stops; /* non div., nicht geteilt, double stops: one player takes both notes */
    bool by_desk;      /* pultweise, by desks, par pupitres */
    bool half;         /* half, die Hälfte, la moitié, la metà, la mitad */
    bool solo;         /* solo, soli, a player or desk named */
    bool others;       /* gli altri, die übrigen, les autres */
    bool all;          /* tutti, alle, tous, all */
    int lines;         /* in how many, where that is said; else 0 */
    int desks;         /* desks named ('2 pupitres', '1. Pult' is one), else 0 */
    int players;       /* players named ('soli 2', '2 Soli'), else 0 */
} DivisionWords;

/* Reads one text of the score; false when it says nothing of the kind. */
bool division_words_read(const char *text, DivisionWords *out);

/* What holds after the words, given what held before: who plays and in how many lines. */
typedef struct DivisionState {
    bool divided, double_stops, by_desk, half, solo;
    int lines;    /* as said, 0 where the mark doesn't say */
    int soloists; /* players named, with solo */
} DivisionState;
DivisionState division_state_after(DivisionState before, const DivisionWords *words);
#endif
