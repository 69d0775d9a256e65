/* notes_words.h - what the programme-note writer cites, in the reader's language. Names, bars and order of entry are those of the passages'
 * links and entries. */
#ifndef WORDING_NOTES_WORDS_H
#define WORDING_NOTES_WORDS_H
#include "citations/citation_facts.h"
#include "wording/phrase.h"

/* 'Bars 66–71, 3 bars after letter B, at 2:15'. */
void say_citation_place(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);
/* What to listen for. */
void say_citation(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);

/* Below the sentence, where more entries follow than it tells: a line for each, 'bar 5, beat 3: second violins, a fourth lower'. The interval is that
 * from the first of them. */
size_t citation_list_lines(const Citation *citation);
void say_entry(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation, size_t line);

/* notes_overview.c: the movement as a whole; who wrote it, when; how the times were found. */
void say_overview(Buffer *out, spz_language language, const MovementNotes *notes);
void say_origin(Buffer *out, spz_language language, const MovementNotes *notes);
void say_times(Buffer *out, spz_language language, const MovementNotes *notes);

/* For the audience: who plays, in few words and without bars; when it first sounds, '2:15' or 'a third of the way through'; how the times were found. */
void say_for_listeners(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);
void say_moment_alone(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);
void say_timing(Buffer *out, spz_language language, const MovementNotes *notes);

/* 'E-flat major'; fifths from -7 to 7. */
const char *key_words(spz_language language, int fifths, bool minor);
/* '2:15', '1:02:15'. */
void say_clock(Buffer *out, spz_language language, double seconds);
/* 'about 7 minutes'. */
void say_about(Buffer *out, spz_language language, double seconds);
/* 'a third of the way through'. */
Phrase share_phrase(double share);
/* As printed; a bar without a number by its place in the file. */
void say_bar(Buffer *out, spz_language language, const MovementNotes *notes, size_t bar);
/* ', at 2:15', ', a third of the way through': the first time that it sounds; nothing where it never does. */
void say_when(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation);
bool times_are_known(const Overview *overview);
#endif
