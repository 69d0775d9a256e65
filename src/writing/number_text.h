/* number_text.h - numbers as the reports write them: always with a point, whatever the user's language. */
#ifndef WRITING_NUMBER_TEXT_H
#define WRITING_NUMBER_TEXT_H

enum { NUMBER_TEXT = 48 };
char *number_text(double value, int decimals, char text[NUMBER_TEXT]); /* "" where the value is not finite or beyond 1e15 */
char *number_text_short(double value, int decimals, char text[NUMBER_TEXT]); /* '12' for 12.00 */

/* A strength cut, not rounded, to two decimals: what is shown never belongs to a higher word than the strength itself. */
double shown_strength(double strength);
#endif
