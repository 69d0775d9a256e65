/* rehearsal.h - a score in notation played through the whole line of analysis, and questions to ask about what was heard. */
#ifndef TESTS_REHEARSAL_H
#define TESTS_REHEARSAL_H
#include "spezzato/spezzato.h"
#include <stdbool.h>

typedef struct Rehearsal {
    spz_score *score;
    spz_sections *sections;
    spz_findings *findings;
} Rehearsal;

/* Fails the test in hand, and gives an empty rehearsal, when the notation or the analysis goes wrong. */
Rehearsal rehearse(const char *notation);
void rehearsal_end(Rehearsal *rehearsal);

/* The strongest passage of that kind between the two (either may call); NULL when none was found. */
const spz_passage *heard(const Rehearsal *rehearsal, spz_kind kind, const char *caller, const char *responder);
/* The strongest antiphonal passage of any kind between the two. */
const spz_passage *antiphony(const Rehearsal *rehearsal, const char *caller, const char *responder);
/* The passage in one English sentence; and its links, "" where there are fewer than three. Views until the next call. */
const char *told(const Rehearsal *rehearsal, const spz_passage *passage);
const char *order_of_entry(const Rehearsal *rehearsal, const spz_passage *passage);
bool lies_in(const spz_passage *passage, const char *first_bar, const char *last_bar);
#endif
