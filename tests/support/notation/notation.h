/* A compact, readable notation for music, turned into MusicXML 4.0 in memory.
 *
 * Tests and the corpus are written in it, so that a test reads like a statement about music. It shares no code with the library
 * under test. All text is UTF-8.
 *
 *     title: A Small Answer
 *     time: 4/4  key: -1  tempo: q=96 Allegro  pickup: 1/4
 *     Violin I:  c5 | d5:q e5 f5 g5 | a5:h r
 *     Violin II: r  | R             | d5:q e5 f5 r
 *
 * LINES
 *   '# ...' at the start of a line is a comment. 'Name: music' gives music to a part; a line without a name goes on with the part of
 *   the line before; later lines of the same part continue it. Every line ends its last bar. 'Name/2: music' is the part's second staff.
 *   Headers (several may stand on one line, two spaces apart):
 *     title: work: movement: composer: composed:      what stands on the title page
 *     time: 3/4   key: -3 minor   tempo: q.=60 Adagio   letter: A   words: Sostenuto      from the bar that comes next
 *     pickup: 1/4             the first bar is an upbeat of that length, printed as bar 0
 *     group: Strings          the parts first named after it stand in one bracket, until the next group: or 'group: end'
 *     part: Horn in F; short Hn.; transpose -7; no key; sound brass.french-horn; clef treble; staves 2
 *                             says more about a part; parts come in the order in which they are first named
 *     bar: 13                 a new block: the next bar must be the printed bar 13. A part that has no line in a block rests in it;
 *                             every other part must fill the block exactly
 *
 * MUSIC (tokens with blanks between)
 *   c4 f#5 bb3 f##4 ebb4 fn5  written pitch, middle C is c4; each note carries its own sharps and flats, whatever the key ('n' prints a natural)
 *   c4+e4+g4                  a chord
 *   r  x  R  R*4              rest; gap without a rest sign; rest of a whole bar; four of them
 *   :w :h :q :e :s :t :z :d   semibreve, minim, crotchet, quaver, semiquaver, 32nd, 64th, breve, with dots (:q.); stands behind a note or alone
 *                             and holds until changed; each line and each voice begins with crotchets
 *   behind a note             ~ tie to the next note   ( slur begins   ) slur ends   ' staccato   ! wedge   > accent   ^ marcato   _ tenuto
 *                             n down-bow   v up-bow   @ fermata   $ trill   =3 tremolo of three strokes   &3 tremolo with the next note   *4 four times
 *   `d5 c5                    grace note
 *   (3 c5:e d5 e5 )           tuplet; (5:4 ...) spells out the ratio
 *   //                        a further voice of the same bar
 *   "div."                    words; "pizz." and "arco" also sound so
 *   <p> <ff> <sfz>            dynamics      < crescendo from here   > diminuendo from here   ! its end
 *   [A]                       rehearsal letter
 *   |  ||  |]                 barline, double, final       |:  :|  :|:  :|*3  repeats (three times)       |1.  :|2.  endings
 *   %  %*3                    the bar before once more (three times more)
 *   {col Violin I}  {col Violin I -1}*4     this bar (these four) with another part, here an octave lower; words are not copied
 *   {time 3/4} {key 2} {tempo q=60 Adagio} {clef alto} {page} {page 4} {segno} {coda} {to coda} {fine} {d.c.} {d.s.}
 *   {bar 12a}                 printed number of this bar; counting goes on from a plain number, other names are not counted
 *   {length 3/4} {implicit}   this bar only: other length; not counted
 */
#ifndef SPEZZATO_TEST_NOTATION_H
#define SPEZZATO_TEST_NOTATION_H

#include <stddef.h>

/* The score as MusicXML, zero-terminated, in memory that the caller frees; NULL when the text is wrong or memory is short, with one
 * line about it ('line 7: Violin II, bar 3: five beats in a 4/4 bar') in error. length (may be NULL) receives the bytes without the zero. */
char *notation_to_musicxml(const char *text, size_t *length, char *error, size_t error_size);

#endif
