/* program.h - another program, found by the folders of PATH and started directly, never through a shell. */
#ifndef SUPPORT_PROGRAM_H
#define SUPPORT_PROGRAM_H
#include <stdbool.h>
#include <stdio.h>

enum { PROGRAM_PATH = 4096 };

/* False where there is none. A folder of PATH that is not named from the root would be looked for in the working folder, where a stranger's files may
 * lie; it is passed over. */
bool program_find(const char *name, char out[PROGRAM_PATH]);
/* Runs words[0] with these words (NULL at the end), what it reads from `in`, what it says into `out`; its complaints are dropped. One that takes longer
 * than two minutes is ended. False where it failed. */
bool program_run(char *const words[], FILE *in, FILE *out);
#endif
