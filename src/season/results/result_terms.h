/* result_terms.h - under which terms a score is judged: the edition of the program, the settings that bear on a verdict, the year. */
#ifndef SEASON_RESULTS_RESULT_TERMS_H
#define SEASON_RESULTS_RESULT_TERMS_H
#include "support/sha256.h"
#include "spezzato/settings.h"

const char *terms_edition(void); /* of the program: changes with every source that bears on a verdict */
/* [concert] is left out: it bears on the plan, not on the verdicts. So is the language of the documents. */
void terms_of_settings(const spz_settings *settings, char name[SHA256_TEXT]);
/* The terms of one score: the same bytes under another name may have other printed numbers and rulings, by `[bars NAME]` and `[passages NAME]`.
 * `settings_name` is that of the settings; year 0: as the score says. */
void terms_of_score(const char *settings_name, const spz_settings *settings, const char *path, int year, char name[SHA256_TEXT]);
#endif
