/* option_rules.h - which option has an effect with what else was asked for: one table for all commands. */
#ifndef CLI_OPTION_RULES_H
#define CLI_OPTION_RULES_H
#include "cli/options/arguments.h"

/* False after one line about an option that would do nothing. What harms nobody (the language of data) is told and let pass. */
bool options_have_effect(const Arguments *arguments);
#endif
