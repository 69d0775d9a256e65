/* library_conditions.h - what the words of `spezzato library find` ask for. */
#ifndef CLI_LIBRARY_CONDITIONS_H
#define CLI_LIBRARY_CONDITIONS_H
#include "cli/options/arguments.h"
#include "spezzato/library.h"

extern const Option option_between, option_composer, option_titled, option_from, option_before, option_players, option_too_large, option_lasts, option_at,
    option_two_orchestras, option_thirds, option_recommended;

/* False after one line about what is wrong. Texts are views of the arguments. */
bool library_conditions(const Arguments *arguments, const spz_settings *settings, spz_conditions *out);
#endif
