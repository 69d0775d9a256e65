#include "cli/output.h"
#include "cli/command.h"
#include "cli/messages.h"
#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

/* The file is written within a moment; a signal that comes meanwhile is answered right after, so that no half-written file and no
 * temporary one is left. Before and after, signals end the program as usual: nothing is on the disk then. */
static void hold_signals(sigset_t *before)
{
    static const int held[] = {SIGINT, SIGTERM, SIGHUP, SIGQUIT};
    sigset_t set;
    sigemptyset(&set);
    for (size_t i = 0; i < sizeof held / sizeof held[0]; i++)
        sigaddset(&set, held[i]);
    sigprocmask(SIG_BLOCK, &set, before);
}

int output_save(const spz_document *document, const char *path)
{
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    sigset_t before;
    if (path)
        hold_signals(&before);
    spz_status status = spz_document_save(document, path, &sink);
    if (path)
        sigprocmask(SIG_SETMASK, &before, NULL);
    return status ? EXIT_INPUT : EXIT_OK;
}

bool output_is(const char *path, const char *input)
{
    struct stat a, b;
    return stat(path, &a) == 0 && stat(input, &b) == 0 && S_ISREG(a.st_mode) && a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

bool output_finish(void)
{
    if (fflush(stdout) == 0 && !ferror(stdout) && fclose(stdout) == 0)
        return true;
    fprintf(stderr, "spezzato: standard output: it can't be written: %s\n", strerror(errno));
    return false;
}
