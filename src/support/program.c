#define _XOPEN_SOURCE 700
#include "support/program.h"
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

extern char **environ;

enum { SECONDS_MOST = 120 };

bool program_find(const char *name, char out[PROGRAM_PATH])
{
    const char *at = getenv("PATH");
    for (size_t length; at && *at; at += length + (at[length] == ':')) {
        length = strcspn(at, ":");
        int written = *at == '/' ? snprintf(out, PROGRAM_PATH, "%.*s/%s", (int)length, at, name) : -1;
        if (written > 0 && written < PROGRAM_PATH && access(out, X_OK) == 0)
            return true;
    }
    return false;
}

/* Waits for the child; one that takes too long is ended. */
static bool wait_for(pid_t child)
{
    static const struct timespec moment = {0, 20 * 1000 * 1000};
    time_t begun = time(NULL);
    int status = 0;
    pid_t done;
    while ((done = waitpid(child, &status, WNOHANG)) == 0 || (done < 0 && errno == EINTR)) {
        if (time(NULL) - begun > SECONDS_MOST) {
            kill(child, SIGKILL);
            while (waitpid(child, &status, 0) < 0 && errno == EINTR)
                continue;
            return false;
        }
        nanosleep(&moment, NULL);
    }
    return done == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

bool program_run(char *const words[], FILE *in, FILE *out)
{
    posix_spawn_file_actions_t actions;
    pid_t child;
    if (posix_spawn_file_actions_init(&actions) != 0)
        return false;
    bool good = posix_spawn_file_actions_adddup2(&actions, fileno(in), STDIN_FILENO) == 0 &&
                posix_spawn_file_actions_adddup2(&actions, fileno(out), STDOUT_FILENO) == 0 &&
                posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0) == 0 &&
                posix_spawn(&child, words[0], &actions, NULL, words, environ) == 0 && wait_for(child);
    posix_spawn_file_actions_destroy(&actions);
    return good;
}
