/* output.h - where results go. */
#ifndef CLI_OUTPUT_H
#define CLI_OUTPUT_H
#include "spezzato/spezzato.h"
#include <stdbool.h>

/* Writes the document to `path` (NULL: the terminal). An interrupt in between waits until the file is whole. Exit status. */
int output_save(const spz_document *document, const char *path);
/* Whether the two names mean the same existing file. */
bool output_is(const char *path, const char *input);
/* Ends the program's standard output; false, after one line, when what was printed didn't get through. */
bool output_finish(void);
#endif
