#include "engine/steps.h"

spz_status steps_take(const spz_movement *movement, const StepsWanted *wanted, const spz_sink *sink, Steps *steps)
{
    *steps = (Steps){NULL, NULL, NULL};
    spz_status status = spz_sections_find(movement, wanted->settings, sink, &steps->sections);
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
