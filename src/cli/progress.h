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
/* '12 of 21 scores, 830 bars a second, 0:41 left' after so many seconds. */
enum { PROGRESS_TEXT = 120 };
void progress_words(const spz_progress *state, double seconds, char text[PROGRESS_TEXT]);
#endif
