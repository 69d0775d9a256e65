#include "engine/crew.h"
#include <pthread.h>
#include <time.h>

enum { TICK = 100 /* milliseconds between two looks */ };

typedef struct Run {
    const Crew *crew;
    size_t next, done;
    spz_status status;
    bool stop;
    int active; /* threads still at work */
    pthread_mutex_t lock;
    pthread_cond_t moved;
} Run;

static void look(Run *run)
{
    const Crew *crew = run->crew;
    if (crew->look)
        crew->look(crew->context);
    if (crew->stop && crew->stop(crew->context))
        run->stop = true;
}

/* Takes tasks until there are none; the lock is held but while one is done. `alone`: on the calling thread. */
static void work_off(Run *run, bool alone)
{
    const Crew *crew = run->crew;
    while (!run->stop && run->status == SPZ_OK && run->next < crew->count) {
        size_t task = run->next++;
        pthread_mutex_unlock(&run->lock);
        spz_status status = crew->work(crew->context, task);
        pthread_mutex_lock(&run->lock);
        if (status == SPZ_OK) {
            crew->done(crew->context, task);
            run->done++;
        } else
            run->status = status;
        if (alone)
            look(run);
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

static void run_threads(Run *run, int threads)
{
    pthread_t started[CREW_MOST];
    int count = 0;
    pthread_mutex_lock(&run->lock);
    while (count < threads && pthread_create(&started[count], NULL, worker, run) == 0) {
        count++;
        run->active++;
    }
    if (count == 0) /* no thread to be had: alone, then */
        work_off(run, true);
    while (run->active > 0) {
        wait_a_tick(run);
        look(run);
    }
    pthread_mutex_unlock(&run->lock);
    for (int i = 0; i < count; i++)
        pthread_join(started[i], NULL);
}

spz_status crew_run(const Crew *crew)
{
    Run run = {.crew = crew, .lock = PTHREAD_MUTEX_INITIALIZER, .moved = PTHREAD_COND_INITIALIZER};
    int threads = crew->hands < CREW_MOST ? crew->hands : CREW_MOST;
    if (crew->count == 0)
        return SPZ_OK;
    if (threads > 1 && (size_t)threads > crew->count)
        threads = (int)crew->count;
    if (crew->stop && crew->stop(crew->context))
        run.stop = true;
    if (threads > 1)
        run_threads(&run, threads);
    else {
        pthread_mutex_lock(&run.lock);
        work_off(&run, true);
        pthread_mutex_unlock(&run.lock);
    }
    pthread_cond_destroy(&run.moved);
    pthread_mutex_destroy(&run.lock);
    return run.status == SPZ_OK && run.done < crew->count ? SPZ_INTERRUPTED : run.status;
}
