#include "cli/commands.h"
#include "cli/command.h"
#include <stdio.h>
#include <string.h>

#define DECLARE(name) extern const Command command_##name;
#define LIST(name) &command_##name,
COMMANDS(DECLARE)

static const Command *const commands[] = {COMMANDS(LIST)};
enum { COMMAND_COUNT = sizeof commands / sizeof commands[0] };

const Command *command_at(size_t index)
{
    return index < COMMAND_COUNT ? commands[index] : NULL;
}

const Command *command_named(const char *name)
{
    for (size_t i = 0; i < COMMAND_COUNT; i++)
        if (strcmp(commands[i]->name, name) == 0)
            return commands[i];
    return NULL;
}

static void print_option(const Option *option)
{
    char left[64];
    const char *between = option->value ? " " : "";
    const char *value = option->value ? option->value : "";
    if (option->letter)
        snprintf(left, sizeof left, "-%c, --%s%s%s", option->letter, option->name, between, value);
    else
        snprintf(left, sizeof left, "    --%s%s%s", option->name, between, value);
    printf("  %-26s  %s\n", left, option->help);
}

static const char statuses[] =
    "\nExit status: 0 done, 1 a mistake in the command, 2 a file could not be read or written\n"
    "(the other files are done all the same), 3 doubts found by a check.\n";

void command_help(const Command *command)
{
    bool page = command == commands[0];
    printf("Usage: spezzato %s%s[options]%s%s\n\n%s\n", page ? "" : command->name, page ? "" : " ", *command->operands ? " " : "",
           command->operands, command->help);
    puts("Options:");
    for (const Option *const *option = command->options; *option; option++)
        print_option(*option);
    puts("      --help                  this text");
    fputs(statuses, stdout);
}

void commands_help(void)
{
    puts("spezzato tells from an orchestral score where the string sections should sit, and why, with bar numbers.\n\n"
         "Usage: spezzato [options] SCORE...           the page of each movement\n"
         "       spezzato COMMAND [options] ...        one of the commands below\n\n"
         "A SCORE is a MusicXML file, plain (.musicxml, .xml) or compressed (.mxl); a folder stands for the scores in it,\n- for a score from standard input.\n\nCommands:");
    for (size_t i = 0; i < COMMAND_COUNT; i++)
        printf("  %-10s %s\n", commands[i]->name, commands[i]->purpose);
    puts("\n`spezzato COMMAND --help` or `spezzato help COMMAND` explains a command and its options; `spezzato --version` tells the\nversion. An option may be shortened as long as only one begins so.");
    fputs(statuses, stdout);
}
