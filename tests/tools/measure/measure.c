/* measure - runs two commands turn by turn and prints what each took: medians of processor time (user and system) and of time on the
 * clock, in milliseconds, and the largest memory of any run, in kilobytes.
 *
 *     measure RUNS COMMAND... --against COMMAND...
 *
 * prints 'CPU WALL KB CPU WALL KB'. Their output goes nowhere. Turn by turn, so that whatever else the machine does meets both. Exit
 * status 1 when a command can't be run or fails. Without --against, the first three figures only. */
#define _DEFAULT_SOURCE
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { RUNS_MOST = 101 };

typedef struct Side {
    char **command;
    double cpu[RUNS_MOST], wall[RUNS_MOST];
    long kilobytes;
} Side;

static double now_ms(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static double cpu_ms(const struct rusage *usage)
{
    return (double)(usage->ru_utime.tv_sec + usage->ru_stime.tv_sec) * 1e3 + (double)(usage->ru_utime.tv_usec + usage->ru_stime.tv_usec) / 1e3;
}

static void become(char **command)
{
    int nowhere = open("/dev/null", O_WRONLY);
    if (nowhere >= 0) {
        dup2(nowhere, STDOUT_FILENO);
        dup2(nowhere, STDERR_FILENO);
    }
    execvp(command[0], command);
    _exit(127);
}

static int run_once(Side *side, int run)
{
    struct rusage usage;
    int status = 0;
    double begin = now_ms();
    pid_t child = fork();
    if (child == 0)
        become(side->command);
    if (child < 0 || wait4(child, &status, 0, &usage) != child)
        return 0;
    side->wall[run] = now_ms() - begin;
    side->cpu[run] = cpu_ms(&usage);
    if (usage.ru_maxrss > side->kilobytes)
        side->kilobytes = usage.ru_maxrss;
    return WIFEXITED(status) && (WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == 3); /* 3: doubts found by `check` */
}

static int by_size(const void *a, const void *b)
{
    double one = *(const double *)a, two = *(const double *)b;
    return one < two ? -1 : one > two;
}

static double median(double *values, int count)
{
    qsort(values, (size_t)count, sizeof *values, by_size);
    return values[count / 2];
}

int main(int count, char **words)
{
    static Side sides[2];
    int runs = count > 2 ? atoi(words[1]) : 0, used = 1;
    if (runs < 1 || runs > RUNS_MOST) {
        fprintf(stderr, "usage: measure RUNS COMMAND... [--against COMMAND...]\n");
        return 1;
    }
    sides[0].command = words + 2;
    for (int i = 2; i < count; i++)
        if (strcmp(words[i], "--against") == 0) {
            words[i] = NULL;
            sides[used++].command = words + i + 1;
            break;
        }
    for (int run = 0; run < runs; run++)
        for (int side = 0; side < used; side++)
            if (!run_once(&sides[side], run)) {
                fprintf(stderr, "measure: %s failed\n", sides[side].command[0]);
                return 1;
            }
    for (int side = 0; side < used; side++)
        printf("%s%.1f %.1f %ld", side ? " " : "", median(sides[side].cpu, runs), median(sides[side].wall, runs), sides[side].kilobytes);
    putchar('\n');
    return 0;
}
