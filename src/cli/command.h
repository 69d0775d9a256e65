/* command.h - what a command is. A new one is a file command_NAME.c that defines `const Command command_NAME`, and a line in
 * commands.h; nothing else. */
#ifndef CLI_COMMAND_H
#define CLI_COMMAND_H
#include "cli/options/arguments.h"

/* Exit statuses; fixed, documented in docs/spezzato.1. */
enum { EXIT_OK = 0, EXIT_USAGE = 1, EXIT_INPUT = 2, EXIT_DOUBTS = 3 };

typedef struct Command {
    const char *name;
    const char *purpose;              /* one line */
    const char *operands;             /* as in the line of usage: 'SCORE...', "" for none */
    const char *help;                 /* what stands between the line of usage and the options; ends with a line end */
    const Option *const *options;     /* ended with NULL */
    int (*run)(const Arguments *arguments); /* exit status */
} Command;

const Command *command_at(size_t index);         /* in the order of `spezzato --help`; NULL past the last */
const Command *command_named(const char *name); /* NULL when there is none */
void command_help(const Command *command);      /* prints `spezzato NAME --help` */
void commands_help(void);                       /* prints `spezzato --help` */
#endif
