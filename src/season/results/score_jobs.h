/* score_jobs.h - scores to be read, several at a time. Each is read under its own terms and gives a result; what the result is does not
 * depend on how many are read at a time, nor on what the store already holds. */
#ifndef SEASON_RESULTS_SCORE_JOBS_H
#define SEASON_RESULTS_SCORE_JOBS_H
#include "season/results/halls.h"
#include "support/text/text_index.h"
#include "season/results/result_store.h"

typedef struct Job {
    const char *path;             /* as the table leads to it */
    LineHead head;                /* the file from the table's folder, so that it may lie elsewhere on another computer; terms; the
                                     content when it was read */
    const spz_settings *settings;
    int year;
    unsigned long long bytes;     /* of the file, as its folder says */
    ScoreResult *result;               /* NULL until done */
    bool kept;                    /* came from the store */
    bool skip;                    /* not of this share */
} Job;

typedef struct Jobs { /* zeroed: none */
    Arena arena;
    ARRAY(Job) list;
    Index names; /* 'FILE terms' */
} Jobs;

/* The job's place; the same score under the same terms is one job. `folder` is the table's, with its slash. SPZ_NO_MEMORY. */
spz_status jobs_add(Jobs *jobs, const char *path, const char *folder, const Hall *hall, int year, size_t *place);
/* Reads all that are not to be skipped; `store` NULL: all of them anew. SPZ_INTERRUPTED: some have no result. SPZ_NO_MEMORY. */
spz_status jobs_run(Jobs *jobs, const spz_season_options *options, Store *store);
void jobs_free(Jobs *jobs);
#endif
