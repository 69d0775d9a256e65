#include "cli/interrupts.h"
#include <signal.h>
#include <stddef.h>

static volatile sig_atomic_t interrupted;

static void note_interrupt(int number)
{
    interrupted = 1;
    signal(number, SIG_DFL);
}

/* What the caller has ignored stays ignored, as in a run that outlives its terminal. */
static void answer_with(void (*answer)(int))
{
    static const int numbers[] = {SIGINT, SIGTERM};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
        if (signal(numbers[i], answer) == SIG_IGN)
            signal(numbers[i], SIG_IGN);
}

void interrupts_hear(void)
{
    answer_with(note_interrupt);
}

void interrupts_leave(void)
{
    answer_with(SIG_DFL);
}

bool interrupts_came(void *context)
{
    (void)context;
    return interrupted != 0;
}
