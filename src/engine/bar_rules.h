/* bar_rules.h - [bars] of the settings: how the printed edition numbers the bars. `[bars NAME]` is for the score file of that name alone. */
#ifndef ENGINE_BAR_RULES_H
#define ENGINE_BAR_RULES_H
#include "model/movement.h"
#include "spezzato/settings.h"

/* Renumbers every movement of the score. SPZ_BAD_SETTINGS after one SPZ_ERROR; SPZ_NO_MEMORY. */
spz_status bar_rules_apply(spz_score *score, const spz_settings *settings, const spz_sink *sink);
#endif
