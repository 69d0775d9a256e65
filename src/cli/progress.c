#include "cli/progress.h"
#include <stdio.h>
#include <unistd.h>

static const double between = 0.2; /* seconds from one line to the next */

static double seconds_since(const struct timespec *then)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)(now.tv_sec - then->tv_sec) + (double)(now.tv_nsec - then->tv_nsec) / 1e9;
}

void progress_begin(Progress *progress)
{
    *progress = (Progress){.terminal = isatty(STDERR_FILENO) == 1};
    clock_gettime(CLOCK_MONOTONIC, &progress->begun);
    progress->last = progress->begun;
}

enum { PROGRESS_TEXT = 120 };

/* '12 of 21 scores, 830 bars a second, 0:41 left' after so many seconds. Time left goes by the bytes still to be read and the rate of those
 * that really were read: what is kept costs next to nothing. */
static void progress_words(const spz_progress *state, double seconds, char text[PROGRESS_TEXT])
{
    unsigned long long read = state->bytes_done - state->bytes_kept, left = state->bytes - state->bytes_done;
    int used = snprintf(text, PROGRESS_TEXT, "%zu of %zu scores", state->files_done, state->files);
    if (state->files_kept)
        used += snprintf(text + used, (size_t)(PROGRESS_TEXT - used), " (%zu known)", state->files_kept);
    if (read == 0 || !(seconds > 0))
        return;
    double remaining = seconds * (double)left / (double)read;
    unsigned long long whole = (unsigned long long)(remaining + 0.5);
    used += snprintf(text + used, (size_t)(PROGRESS_TEXT - used), ", %llu bars a second", (unsigned long long)((double)state->bars / seconds + 0.5));
    if (whole < 360000)
        snprintf(text + used, (size_t)(PROGRESS_TEXT - used), ", %llu:%02llu left", whole / 60, whole % 60);
}

void progress_show(void *context, const spz_progress *state)
{
    Progress *progress = context;
    char text[PROGRESS_TEXT];
    bool last = state->files_done == state->files;
    if (!progress->terminal || (!last && seconds_since(&progress->last) < between))
        return;
    clock_gettime(CLOCK_MONOTONIC, &progress->last);
    progress_words(state, seconds_since(&progress->begun), text);
    fprintf(stderr, "\r%-76.76s", text);
    fflush(stderr);
    progress->shown = true;
}

void progress_end(Progress *progress)
{
    if (progress->shown)
        fprintf(stderr, "\r%76s\r", "");
}
