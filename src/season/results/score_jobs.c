#include "season/results/score_jobs.h"
#include "engine/crew.h"
#include "season/results/result_terms.h"
#include "season/results/score_file.h"
#include "support/memory.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>


typedef struct Run {
    Job **order; /* largest first, so that no long score is left for the end */
    size_t count;
    const spz_season_options *options;
    Store *store; /* NULL: none */
    spz_progress progress;
} Run;

spz_status jobs_add(Jobs *jobs, const char *path, const char *folder, const Hall *hall, int year, size_t *place)
{
    Job job = {.settings = hall->settings, .year = year};
    size_t length = strlen(folder);
    terms_of_score(hall->terms, hall->settings, path, year, job.head.terms);
    job.path = arena_string(&jobs->arena, path);
    const char *key = job.path ? arena_format(&jobs->arena, "%s\n%s", path, job.head.terms) : NULL;
    if (!key)
        return SPZ_NO_MEMORY;
    job.head.file = strncmp(path, folder, length) == 0 ? job.path + length : job.path;
    long long found = index_find(&jobs->names, key);
    if (found >= 0) {
        *place = (size_t)found;
        return SPZ_OK;
    }
    *place = jobs->list.count;
    if (!array_push(&jobs->list, job))
        return SPZ_NO_MEMORY;
    return index_add(&jobs->names, key, *place) ? SPZ_OK : SPZ_NO_MEMORY;
}

void jobs_free(Jobs *jobs)
{
    for (size_t i = 0; i < jobs->list.count; i++)
        score_result_free(jobs->list.at[i].result);
    array_free(&jobs->list);
    index_free(&jobs->names);
    arena_release(&jobs->arena);
}

/* A file that gave no bytes: the result says why. */
static spz_status note_failure(ScoreResult *result, spz_status failure)
{
    ResultMessage message = {.severity = SPZ_ERROR, .text = spz_status_text(failure)};
    result->status = failure;
    return array_push(&result->messages, message) ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status make_result(Job *job, const char *data, size_t size, spz_status read)
{
    job->result = score_result_new();
    if (!job->result)
        return SPZ_NO_MEMORY;
    if (read != SPZ_OK)
        return note_failure(job->result, read);
    return score_result_make(data, size, job->path, job->settings, job->year, job->result);
}

static spz_status do_job(void *context, size_t task)
{
    Run *run = context;
    Job *job = run->order[task];
    char *data;
    size_t size;
    spz_status read = score_file_read(job->path, &data, &size), status = SPZ_OK;
    if (read == SPZ_OK) {
        sha256_of(data, size, job->head.content);
        job->result = run->store ? results_find(run->store, &job->head) : NULL;
    }
    job->kept = job->result != NULL;
    if (read == SPZ_NO_MEMORY)
        status = read;
    else if (!job->kept)
        status = make_result(job, data, size, read);
    memory_free(data);
    if (status == SPZ_OK && !job->kept && read == SPZ_OK && run->store)
        results_keep(run->store, &job->head, job->result);
    return status;
}

static void count_done(void *context, size_t task)
{
    Run *run = context;
    const Job *job = run->order[task];
    run->progress.files_done++;
    run->progress.bytes_done += job->bytes;
    run->progress.files_kept += job->kept;
    run->progress.bytes_kept += job->kept ? job->bytes : 0;
    for (size_t i = 0; !job->kept && i < job->result->movements.count; i++)
        run->progress.bars += job->result->movements.at[i].bars;
}

static void tell_progress(void *context)
{
    const Run *run = context;
    if (run->options->progress)
        run->options->progress(run->options->context, &run->progress);
}

static bool is_stopped(void *context)
{
    const Run *run = context;
    return run->options->stop && run->options->stop(run->options->context);
}

static int larger_first(const void *a, const void *b)
{
    const Job *left = *(Job *const *)a, *right = *(Job *const *)b;
    if (left->bytes != right->bytes)
        return left->bytes > right->bytes ? -1 : 1;
    return left < right ? -1 : left > right;
}

static bool put_in_order(Run *run, Jobs *jobs)
{
    run->order = memory_resize(NULL, jobs->list.count, sizeof *run->order);
    for (size_t i = 0; run->order && i < jobs->list.count; i++) {
        struct stat about;
        Job *job = &jobs->list.at[i];
        if (job->skip)
            continue;
        job->bytes = stat(job->path, &about) == 0 ? (unsigned long long)about.st_size : 0;
        run->progress.bytes += job->bytes;
        run->order[run->count++] = job;
    }
    run->progress.files = run->count;
    if (run->count)
        qsort(run->order, run->count, sizeof *run->order, larger_first);
    return run->order != NULL;
}

spz_status jobs_run(Jobs *jobs, const spz_season_options *options, Store *store)
{
    Run run = {.options = options, .store = store};
    if (jobs->list.count == 0)
        return SPZ_OK;
    if (!put_in_order(&run, jobs))
        return SPZ_NO_MEMORY;
    spz_status status = crew_run(&(Crew){run.count, options->jobs, do_job, count_done, tell_progress, is_stopped, &run});
    memory_free(run.order);
    return status;
}
