#include "season/results/score_jobs.h"
#include "season/results/result_cache.h"
#include "season/results/result_terms.h"
#include "support/memory.h"
#include <errno.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#define SCORE_BYTES_MOST (512ull << 20) /* as the reader's own limit on plain scores */
enum { JOBS_MOST = 64, TICK = 100 /* milliseconds between two looks at the progress */ };

typedef struct Run {
    Job **order; /* largest first, so that no long score is left for the end */
    size_t count, next;
    const spz_season_options *options;
    const KeptLines *lines;
    spz_progress progress;
    spz_status status;
    bool stop;
    int active;  /* threads still at work */
    pthread_mutex_t lock;
    pthread_cond_t moved;
} Run;

spz_status jobs_add(Jobs *jobs, const char *path, const char *folder, const Hall *hall, int year, size_t *place)
{
    Job job = {.settings = hall->settings, .year = year};
    size_t length = strlen(folder);
    terms_with_year(hall->terms, year, job.head.terms);
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

static spz_status read_open(FILE *file, char **data, size_t *size)
{
    struct stat about;
    if (fstat(fileno(file), &about) != 0 || !S_ISREG(about.st_mode))
        return SPZ_CANNOT_READ;
    if ((unsigned long long)about.st_size > SCORE_BYTES_MOST)
        return SPZ_OVER_LIMIT;
    *data = memory_get((size_t)about.st_size + 1);
    if (!*data)
        return SPZ_NO_MEMORY;
    *size = fread(*data, 1, (size_t)about.st_size, file);
    return ferror(file) ? SPZ_CANNOT_READ : SPZ_OK;
}

static spz_status read_file(const char *path, char **data, size_t *size)
{
    *data = NULL;
    *size = 0;
    FILE *file = fopen(path, "rb");
    if (!file)
        return SPZ_CANNOT_OPEN;
    spz_status status = read_open(file, data, size);
    fclose(file);
    return status;
}

static void name_content(Job *job, const char *data, size_t size)
{
    Sha256 sum;
    sha256_begin(&sum);
    sha256_add(&sum, data, size);
    sha256_end(&sum, job->head.content);
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

/* From the lines, else from the cache. */
static ScoreResult *find_kept(const Run *run, const LineHead *head)
{
    const StoredScore *kept = run->lines ? stored_lines_find(run->lines, head) : NULL;
    if (kept)
        return stored_result(kept);
    return run->options->cache ? cache_find(run->options->cache, head) : NULL;
}

static spz_status do_job(const Run *run, Job *job)
{
    char *data;
    size_t size;
    spz_status read = read_file(job->path, &data, &size), status = SPZ_OK;
    if (read == SPZ_OK) {
        name_content(job, data, size);
        job->result = find_kept(run, &job->head);
    }
    job->kept = job->result != NULL;
    if (read == SPZ_NO_MEMORY)
        status = read;
    else if (!job->kept)
        status = make_result(job, data, size, read);
    memory_free(data);
    if (status == SPZ_OK && !job->kept && read == SPZ_OK && run->options->cache)
        cache_keep(run->options->cache, &job->head, job->result);
    return status;
}

static void count_done(Run *run, const Job *job)
{
    run->progress.files_done++;
    run->progress.bytes_done += job->bytes;
    run->progress.files_kept += job->kept;
    run->progress.bytes_kept += job->kept ? job->bytes : 0;
    for (size_t i = 0; !job->kept && i < job->result->movements.count; i++)
        run->progress.bars += job->result->movements.at[i].bars;
}

/* Takes jobs until there are none; the lock is held but while a score is read. `tell`: between scores, on the calling thread. */
static void work_off(Run *run, bool tell)
{
    while (!run->stop && run->status == SPZ_OK && run->next < run->count) {
        Job *job = run->order[run->next++];
        pthread_mutex_unlock(&run->lock);
        spz_status status = do_job(run, job);
        pthread_mutex_lock(&run->lock);
        if (status == SPZ_OK)
            count_done(run, job);
        else
            run->status = status;
        if (tell && run->options->progress)
            run->options->progress(run->options->context, &run->progress);
        if (tell && run->options->stop)
            run->stop = run->stop || run->options->stop(run->options->context);
    }
}

static void *worker(void *context)
{
    Run *run = context;
    pthread_mutex_lock(&run->lock);
    work_off(run, false);
    run->active--;
    pthread_cond_signal(&run->moved);
    pthread_mutex_unlock(&run->lock);
    return NULL;
}

static void wait_a_tick(Run *run)
{
    struct timespec until;
    clock_gettime(CLOCK_REALTIME, &until);
    until.tv_nsec += TICK * 1000000L;
    until.tv_sec += until.tv_nsec / 1000000000L;
    until.tv_nsec %= 1000000000L;
    pthread_cond_timedwait(&run->moved, &run->lock, &until);
}

/* The calling thread only watches: it tells the progress and asks whether to stop. */
static void watch(Run *run)
{
    while (run->active > 0) {
        wait_a_tick(run);
        if (run->options->progress)
            run->options->progress(run->options->context, &run->progress);
        if (run->options->stop && run->options->stop(run->options->context))
            run->stop = true;
    }
}

static void run_threads(Run *run, int threads)
{
    pthread_t started[JOBS_MOST];
    int count = 0;
    pthread_mutex_lock(&run->lock);
    while (count < threads && pthread_create(&started[count], NULL, worker, run) == 0) {
        count++;
        run->active++;
    }
    if (count == 0) /* no thread to be had: alone, then */
        work_off(run, true);
    watch(run);
    pthread_mutex_unlock(&run->lock);
    for (int i = 0; i < count; i++)
        pthread_join(started[i], NULL);
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

spz_status jobs_run(Jobs *jobs, const spz_season_options *options, const KeptLines *lines)
{
    Run run = {.options = options, .lines = lines, .lock = PTHREAD_MUTEX_INITIALIZER, .moved = PTHREAD_COND_INITIALIZER};
    if (jobs->list.count == 0)
        return SPZ_OK;
    if (!put_in_order(&run, jobs))
        return SPZ_NO_MEMORY;
    int threads = options->jobs < JOBS_MOST ? options->jobs : JOBS_MOST;
    if ((size_t)threads > run.count)
        threads = (int)run.count;
    if (options->stop && options->stop(options->context))
        run.stop = true;
    if (threads > 1)
        run_threads(&run, threads);
    else {
        pthread_mutex_lock(&run.lock);
        work_off(&run, true);
        pthread_mutex_unlock(&run.lock);
    }
    if (run.status == SPZ_OK && run.progress.files_done < run.count)
        run.status = SPZ_INTERRUPTED;
    memory_free(run.order);
    pthread_cond_destroy(&run.moved);
    pthread_mutex_destroy(&run.lock);
    return run.status;
}
