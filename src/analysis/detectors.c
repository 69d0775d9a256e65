#include "analysis/detectors.h"
#include "analysis/antiphony/antiphony.h"
#include "analysis/passages/coupling.h"
#include "analysis/passages/rulings.h"
#include "analysis/division/divisi.h"
#include "analysis/antiphony/split_line.h"
#include "analysis/division/shortages.h"
#include "analysis/raised.h"
#include "analysis/antiphony/strings_and_winds.h"

static const Detector detectors[] = {
    { "antiphony", detect_antiphony },
    { "split line", detect_split_line },
    { "strings and winds", detect_winds },
    { "divided sections", detect_divisi },
    { "coupling", detect_coupling },
};

const Detector *detectors_all(size_t *count)
{
    *count = sizeof detectors / sizeof *detectors;
    return detectors;
}

static spz_status run_all(Findings *findings, const spz_settings *settings)
{
    size_t count;
    const Detector *all = detectors_all(&count);
    for (size_t i = 0; i < count; i++) {
        spz_status status = all[i].detect(findings, settings);
        if (status)
            return status;
    }
    return SPZ_OK;
}

/* What the conductor says comes last: it may make passages, and it may unmake them. */
static spz_status hear_conductor(Findings *findings, const spz_settings *settings, const spz_sink *sink)
{
    spz_status status = raised_add(findings, settings, sink);
    findings_sort(findings);
    status = status ? status : rulings_apply(findings, settings, sink);
    if (!status)
        shortages_tell(findings, settings, sink);
    return status;
}

spz_status spz_passages_find(const spz_sections *sections, const spz_settings *settings, const spz_sink *sink,
                             spz_findings **out)
{
    *out = NULL;
    Findings *findings = memory_zeroed(1, sizeof *findings);
    if (!findings)
        return SPZ_NO_MEMORY;
    arena_init(&findings->arena);
    findings->map = sections;
    spz_status status = sections->movement->bar_count ? run_all(findings, settings) : SPZ_OK; /* what they are unsure of comes out weak */
    if (!status)
        status = hear_conductor(findings, settings, sink);
    if (status)
        spz_findings_free(findings);
    else
        *out = findings;
    return status;
}
