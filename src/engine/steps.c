#include "engine/steps.h"
#include "analysis/passages/rulings.h"
#include "support/array.h"

/* What else is wrong in the settings, so that all of it can be mended at once. */
static void tell_rulings(const spz_movement *movement, const spz_settings *settings, const spz_sink *sink)
{
    Rulings rulings;
    rulings_read(movement, settings, sink, &rulings);
    array_free(&rulings);
}

void steps_tell_settings(const spz_movement *movement, const spz_settings *settings, const spz_sink *sink)
{
    spz_sections *sections = NULL;
    spz_status status = spz_sections_find(movement, settings, sink, &sections);
    spz_sections_free(sections);
    if (status != SPZ_NO_MEMORY)
        tell_rulings(movement, settings, sink);
}

spz_status steps_take(const spz_movement *movement, const StepsWanted *wanted, const spz_sink *sink, Steps *steps)
{
    *steps = (Steps){NULL, NULL, NULL};
    spz_status status = spz_sections_find(movement, wanted->settings, sink, &steps->sections);
    if (status == SPZ_BAD_SETTINGS)
        tell_rulings(movement, wanted->settings, sink);
    if (!status && wanted->depth >= SPZ_TO_PASSAGES)
        status = spz_passages_find(steps->sections, wanted->settings, sink, &steps->findings);
    if (!status && wanted->depth >= SPZ_TO_SEATING)
        status = spz_seating_judge(steps->findings, wanted->settings, wanted->year ? wanted->year : spz_movement_year(movement), sink, &steps->verdict);
    return status;
}

void steps_free(Steps *steps)
{
    spz_verdict_free(steps->verdict);
    spz_findings_free(steps->findings);
    spz_sections_free(steps->sections);
}
