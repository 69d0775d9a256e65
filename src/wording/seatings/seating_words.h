/* seating_words.h - a verdict in words: what is recommended, how surely, why, and what another seating would weaken. */
#ifndef WORDING_SEATING_WORDS_H
#define WORDING_SEATING_WORDS_H
#include "spezzato/stage.h"
#include "wording/phrase.h"

/* An arrangement in the reader's language; the user's own by its own name. A view that lives as long as `name`. */
const char *words_arrangement(spz_language language, const char *name);
const char *words_term(spz_language language, spz_term_kind term);
const char *words_confidence(spz_language language, spz_confidence confidence); /* 'Firm' */
const char *words_section_short(spz_language language, spz_section section); /* 'Vn I'; "" for none */
/* 'Vn I, Vc, Va, Vn II' */
void say_order(Buffer *out, spz_language language, spz_order order);
/* '66-71, 102' in a phrase with {bars} and their count {n}: 'bars 66-71, 102'. Nothing where it rests on no bars. */
void say_with_bars(Buffer *out, spz_language language, Phrase phrase, const spz_basis *basis);
/* One sentence: the recommendation, or why there is none. */
void say_statement(Buffer *out, spz_language language, spz_statement statement);
/* 'From house left to house right: Vn I, Vc, Va, Vn II.' */
void say_best_order(Buffer *out, spz_language language, const spz_verdict *verdict);
/* 'Firm: the score decides this, and it would take much to overturn it.' */
void say_sure(Buffer *out, spz_language language, const spz_verdict *verdict);
/* How far it is ahead of the other placing of the violins, and what would turn it. */
/* The verdict both ways where the year of composition is not known, or without it where it changes something; else nothing. */
void say_year(Buffer *out, spz_language language, const spz_verdict *verdict);
void say_margin(Buffer *out, spz_language language, const spz_verdict *verdict);
/* 'turns if ensemble weighs 1.8 times as much'; nothing when no weight turns it. */
void say_turning(Buffer *out, spz_language language, spz_turning turning);
/* The figures behind a term of that arrangement, in one clause. */
/* `verdict` NULL: of sections. */
void say_because(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_ranked *ranked, const spz_term *term);
/* The clause of the term with that index, in the first arrangement that it touches. */
void say_first_because(Buffer *out, spz_language language, const spz_verdict *verdict, size_t index);
/* The phrase that says which width {wide} or depth {deep} would be enough; 0: none is. */
Phrase words_enough_stage(const double needs[2]);
/* One reason in a line, without figures: 'First and second violins answer each other'. */
void say_ground(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason);
/* One reason as a sentence without its bars, and with them. */
void say_reason(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason);
void say_reason_and_place(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason);
/* 'exchange Vn I/Vn II 66-71, 102; violins in three 20-24'; nothing for no losses. */
void say_losses(Buffer *out, spz_language language, const spz_loss *losses, size_t count);
/* Past the last loss of the movement whose losses begin there. */
size_t losses_end(const spz_ranked *ranked, size_t from);
/* The same for a place in the ranking; of a work movement by movement. */
void say_ranked_losses(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_ranked *ranked);
/* What the best arrangement of the other placing of the violins would weaken, as a sentence; nothing where there is none. */
void say_instead(Buffer *out, spz_language language, const spz_verdict *verdict);
/* A movement of a work: its title, and its place among the others where that is needed to tell them apart. */
void say_movement(Buffer *out, spz_language language, const spz_verdict *work, size_t movement);
#endif
