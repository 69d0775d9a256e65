/* spezzato - from a score file to a seating that can be defended with bar numbers. The command line is a face of the library. */
#include "command.h"
#include "messages.h"
#include "output.h"
#include "spezzato/version.h"
#include <signal.h>
#include <stdio.h>
#include <string.h>

static void tell_version(void)
{
    char libraries[200];
    printf("spezzato %s\nLibraries: %s\nLicence: %s\n", spz_version(), spz_libraries(libraries, sizeof libraries), SPZ_LICENSE);
}

static int run_command(const Command *command, int count, char **words)
{
    Arguments arguments;
    bool help = false;
    int status = EXIT_USAGE;
    if (arguments_read(&arguments, command->name, command->options, count, words, &help)) {
        if (help)
            command_help(command);
        status = help ? EXIT_OK : command->run(&arguments);
    }
    arguments_free(&arguments);
    return status;
}

int main(int count, char **words)
{
    int status = EXIT_OK;
    signal(SIGXFSZ, SIG_IGN); /* a file that may not grow further is a failed write like any other */
    const Command *command = count > 1 ? command_named(words[1]) : NULL;
    if (count < 2) {
        complain_usage(NULL, "which score?");
        status = EXIT_USAGE;
    } else if (strcmp(words[1], "--version") == 0)
        tell_version();
    else if (strcmp(words[1], "--help") == 0)
        commands_help();
    else if (command)
        status = run_command(command, count - 2, words + 2);
    else
        status = run_command(command_named("page"), count - 1, words + 1);
    return output_finish() || status ? status : EXIT_INPUT;
}
