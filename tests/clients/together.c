/* together SCORE: eight threads read and judge the same score at the same time, from the library's very first call on; each must come to the
 * same verdict, and all may look at one score at once.
 *
 *     cc together.c -pthread $(pkg-config --cflags --libs spezzato) -o together */
#include <pthread.h>
#include <spezzato/spezzato.h>
#include <stdio.h>
#include <string.h>

enum { THREADS = 8 };

static const char *path;
static const spz_reading *shared;

typedef struct Outcome {
    size_t notes, passages;
    double points;
} Outcome;

static Outcome outcome_of(const spz_reading *reading)
{
    Outcome outcome = {0, 0, 0};
    spz_movement_reading first = spz_reading_at(reading, 0);
    for (size_t part = 0; part < spz_movement_parts(first.movement); part++) {
        spz_notes *notes;
        if (spz_notes_make(first.movement, part, SPZ_NOTES_PLAYED, &notes) == SPZ_OK)
            outcome.notes += spz_notes_count(notes);
        spz_notes_free(notes);
    }
    outcome.passages = spz_findings_count(first.findings);
    if (spz_verdict_ranked(first.verdict, 0))
        outcome.points = spz_verdict_ranked(first.verdict, 0)->points;
    return outcome;
}

static void *read_alone(void *out)
{
    spz_reading *reading;
    if (spz_reading_make(path, NULL, 0, SPZ_TO_SEATING, NULL, &reading) == SPZ_OK)
        *(Outcome *)out = outcome_of(reading);
    spz_reading_free(reading);
    return NULL;
}

static void *look(void *out)
{
    *(Outcome *)out = outcome_of(shared);
    return NULL;
}

/* The outcome that all agree on; one of no notes where they don't. */
static Outcome all(void *(*work)(void *))
{
    pthread_t threads[THREADS];
    Outcome outcomes[THREADS] = {{0, 0, 0}}, none = {0, 0, 0};
    int started = 0;
    while (started < THREADS && pthread_create(&threads[started], NULL, work, &outcomes[started]) == 0)
        started++;
    for (int i = 0; i < started; i++)
        pthread_join(threads[i], NULL);
    for (int i = 0; i < THREADS; i++)
        if (outcomes[i].notes != outcomes[0].notes || outcomes[i].passages != outcomes[0].passages || outcomes[i].points != outcomes[0].points)
            return none;
    return outcomes[0];
}

int main(int count, char **words)
{
    spz_reading *reading;
    if (count != 2)
        return 2;
    path = words[1];
    Outcome alone = all(read_alone);
    if (spz_reading_make(path, NULL, 0, SPZ_TO_SEATING, NULL, &reading) != SPZ_OK)
        return 2;
    shared = reading;
    Outcome at_once = all(look);
    spz_reading_free(reading);
    printf("%zu notes, %zu passages\n", alone.notes, alone.passages);
    return alone.notes == 0 || alone.notes != at_once.notes || alone.passages != at_once.passages || alone.points != at_once.points;
}
