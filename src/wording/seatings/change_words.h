/* change_words.h - changes of seating in the words of those who carry the chairs. Each appends to `out`. */
#ifndef WORDING_CHANGE_WORDS_H
#define WORDING_CHANGE_WORDS_H
#include "spezzato/season.h"
#include "support/buffer.h"

void say_points(Buffer *out, spz_language language, double points);   /* '1 point', '12.4 points', 'less than 0.1 points' */
void say_minutes(Buffer *out, spz_language language, double minutes); /* '4.5 minutes' */
/* 'Before the concert', 'At the interval, between 'A' and 'B'', 'Before movement 2 of 'A''. */
void say_change_place(Buffer *out, spz_language language, const spz_changeover *change);
/* 'from violins together, cellos outside to the same for two orchestras'. */
void say_change(Buffer *out, spz_language language, const spz_changeover *change);
/* 'Vn II (12 players) from inner left to outer right; ...', or how one orchestra becomes two. */
void say_moves(Buffer *out, spz_language language, const spz_changeover *change);
/* 'Second violins (12 players): from inner left to outer right'. */
void say_move(Buffer *out, spz_language language, const spz_section_move *move);
/* How one orchestra becomes two or two become one; nothing in other changes. */
void say_orchestras(Buffer *out, spz_language language, const spz_changeover *change);
/* '26 chairs and 13 stands'; and the same 'to be carried, of 25 desks'. */
void say_load(Buffer *out, spz_language language, const spz_changeover *change);
void say_load_of(Buffer *out, spz_language language, const spz_changeover *change);
/* What is to be doubted about it, and what becomes of the violins; nothing where there is nothing to say. */
void say_change_remark(Buffer *out, spz_language language, const spz_changeover *change);
/* All of it as one paragraph. */
void say_whole_change(Buffer *out, spz_language language, const spz_changeover *change);
/* One desk: its name, what becomes of it, 'Vn II 3: moves, from -2.10 / 3.40 (Va 2) to 0.50 / 4.20; 2 chairs, 1 stand'. */
void say_desk_move(Buffer *out, spz_language language, const spz_desk_move *move);
void say_moved_desk(Buffer *out, spz_language language, const spz_desk_move *move);
void say_moved_from(Buffer *out, spz_language language, const spz_desk_move *move);
void say_moved_to(Buffer *out, spz_language language, const spz_desk_move *move);
const char *words_desk_fate(spz_language language, const spz_desk_move *move);
/* What goes on, off or elsewhere before that work besides the desks: soloist, piano, podium; nothing where all stays. */
void say_pieces(Buffer *out, spz_language language, const spz_planned_concert *concert, size_t work);
/* What all these add up to. */
void say_desk_sums(Buffer *out, spz_language language, const spz_changeover *change);
#endif
