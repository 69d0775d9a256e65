/* progress.h - one line on the terminal that says how far the reading of scores is; none when the messages go to a file or a pipe. */
#ifndef CLI_PROGRESS_H
#define CLI_PROGRESS_H
#include "spezzato/season.h"
#include <stdbool.h>
#include <time.h>

typedef struct Progress {
    bool terminal, shown;
    struct timespec begun, last;
} Progress;

void progress_begin(Progress *progress);
void progress_show(void *progress, const spz_progress *state); /* for spz_season_options */
void progress_end(Progress *progress);                         /* clears the line */
#endif
