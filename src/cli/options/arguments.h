/* arguments.h - the words of the command line, told apart into options and operands. Options may stand anywhere; '--' ends them. */
#ifndef CLI_ARGUMENTS_H
#define CLI_ARGUMENTS_H
#include "spezzato/spezzato.h"
#include <stdbool.h>
#include <stddef.h>

typedef struct Option {
    const char *name;  /* without the dashes */
    char letter;       /* short form, or 0 */
    const char *value; /* what stands behind it, in capitals; NULL for a switch */
    const char *help;  /* one line */
} Option;

typedef struct Given {
    const Option *option;
    const char *value; /* NULL for a switch */
} Given;

typedef struct Arguments {
    const char *command;   /* its name */
    Given *given;          /* in the order of the command line */
    const char **operands;
    size_t given_count, operand_count;
    char **found;          /* scores of folders that were named; its own */
    size_t found_count;
} Arguments;

/* Takes the words behind the command's name apart; where --output names a form (plan.csv) and --format is not given, it counts as given. false after
 * one line about what is wrong. The caller frees. `*help` is set where
 * --help was among them; nothing else matters then. */
bool arguments_read(Arguments *arguments, const char *command, const Option *const *options, int count, char **words, bool *help);
/* Each folder among the operands becomes the scores that lie in it, by name (.musicxml, .mxl, .xml); hidden files are left alone. false after one
 * line about what is wrong. */
bool arguments_open_folders(Arguments *arguments);
void arguments_free(Arguments *arguments);

bool arguments_have(const Arguments *arguments, const Option *option);
/* The last value given; `otherwise` when there is none. */
const char *arguments_value(const Arguments *arguments, const Option *option, const char *otherwise);
/* The `index`th value given, from 0; NULL past the end. */
const char *arguments_each(const Arguments *arguments, const Option *option, size_t index);

/* Options that several commands share. */
extern const Option option_format, option_output, option_settings, option_set, option_year, option_all, option_brief, option_work, option_kind, option_strength,
    option_width, option_verbose, option_language;

/* Each reads one of them; false after one line about what is wrong. */
bool arguments_format(const Arguments *arguments, spz_format usual, spz_format *format);
bool arguments_year(const Arguments *arguments, int *year);         /* 0 when not given */
bool arguments_kinds(const Arguments *arguments, unsigned *kinds);  /* as in spz_report_options */
bool arguments_strength(const Arguments *arguments, double *strength);
bool arguments_whole(const Arguments *arguments, const Option *option, int least, int most, int *number); /* unchanged when not given */
/* --language, else the setting `house.language`, else English. */
bool arguments_language(const Arguments *arguments, const spz_settings *settings, spz_language *language);
/* The whole name of the seating that `option` asks for, with `one` false of all that its words mean, '|' between; NULL in `*name` where it is not
 * given. `room` holds it. EXIT_OK or EXIT_USAGE. */
enum { SEATING_NAME_MOST = 1024 };
int arguments_seating(const Arguments *arguments, const Option *option, const spz_settings *settings, bool one, char room[SEATING_NAME_MOST], const char **name);
/* All defaults, then --settings files and --set values in their order. `*settings` is the caller's. EXIT_OK, EXIT_USAGE or EXIT_INPUT. */
int arguments_settings(const Arguments *arguments, spz_settings **settings);
#endif
