/* terms.h - under which terms a score is judged: the edition of the program, the settings that bear on a verdict, the year. */
#ifndef SEASON_TERMS_H
#define SEASON_TERMS_H
#include "season/sha256.h"
#include "spezzato/settings.h"

/* Names the code that reads, hears and judges; differs whenever any of it does. */
const char *terms_edition(void);
/* [concert] is left out: it bears on the plan, not on the verdicts. */
void terms_name(const spz_settings *settings, int year, char name[SHA256_TEXT]);
#endif
