/* spezzato - from a score file to a seating that can be defended with bar numbers. The command line is a face of the library. */
#include "cli/command.h"
#include "cli/messages.h"
#include "cli/options/option_rules.h"
#include "cli/output.h"
#include "spezzato/version.h"
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

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
        else if (strncmp(command->operands, "SCORE...", 8) == 0 && !arguments_open_folders(&arguments))
            status = EXIT_INPUT;
        else if (options_have_effect(&arguments))
            status = command->run(&arguments);
        status = help ? EXIT_OK : status;
    }
    arguments_free(&arguments);
    return status;
}

/* A word that is neither a command nor a file, nor looks like one. */
static bool is_misspelt(const char *word)
{
    return word[0] != '-' && !strpbrk(word, "./") && access(word, F_OK) != 0;
}

static int complain_word(const char *word)
{
    spz_guess guess = {.word = word};
    for (size_t i = 0; command_at(i); i++)
        spz_guess_look(&guess, command_at(i)->name);
    if (guess.meant)
        complain_usage(NULL, "'%s' is neither a command nor a file; is '%s' meant?", word, guess.meant);
    else
        complain_usage(NULL, "'%s' is neither a command nor a file", word);
    return EXIT_USAGE;
}

/* `help`, `help COMMAND`. */
static int help_with(const char *name)
{
    const Command *command = name ? command_named(name) : NULL;
    if (name && !command)
        return complain_word(name);
    if (command)
        command_help(command);
    else
        commands_help();
    return EXIT_OK;
}

static bool is_one_of(const char *word, const char *first, const char *second, const char *third)
{
    return strcmp(word, first) == 0 || strcmp(word, second) == 0 || strcmp(word, third) == 0;
}

int main(int count, char **words)
{
    int status = EXIT_OK;
    signal(SIGXFSZ, SIG_IGN); /* a file that may not grow further is a failed write like any other */
    const Command *command = count > 1 ? command_named(words[1]) : NULL;
    if (count < 2) {
        complain_usage(NULL, "which score?");
        status = EXIT_USAGE;
    } else if (is_one_of(words[1], "--version", "-V", "version"))
        tell_version();
    else if (is_one_of(words[1], "--help", "-h", "help"))
        status = help_with(words[2]);
    else if (command)
        status = run_command(command, count - 2, words + 2);
    else if (is_misspelt(words[1]))
        status = complain_word(words[1]);
    else
        status = run_command(command_named("page"), count - 1, words + 1);
    return output_finish() || status ? status : EXIT_INPUT;
}
