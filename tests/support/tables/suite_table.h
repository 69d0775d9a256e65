/* suite_table.h - what each file of the unofficial MusicXML test suite (shared folder, suite/; MIT licence) asks for by its own description, and
 * whether the reader meets it. */
#ifndef TESTS_SUITE_TABLE_H
#define TESTS_SUITE_TABLE_H
#include "model/movement.h"

typedef struct SuiteCase {
    const char *file;
    size_t parts, bars, sounds; /* sounds: of all parts, tied notes joined */
    const char *length;         /* crotchets */
    int doubts;                 /* sentences to the user */
    const char *asked;          /* in words */
    const char *plays, *order;  /* of the first part; NULL: not compared */
    bool (*meets)(const Movement *movement); /* NULL: nothing more to ask */
} SuiteCase;

size_t suite_case_count(void);
const SuiteCase *suite_case_at(size_t index);

typedef struct SuiteOutcome {
    spz_status status;
    size_t parts, bars, sounds;
    char length[48];
    int doubts;
    char said[512];    /* the last doubt or error */
    bool as_asked;
} SuiteOutcome;

/* Reads `path` and holds it against the case. */
void suite_case_try(const SuiteCase *suite_case, const char *path, SuiteOutcome *outcome);
#endif
