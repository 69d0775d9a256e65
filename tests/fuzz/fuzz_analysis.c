/* Any bytes as a score, taken the whole way: sections, passages, seating. */
#include "spezzato/seating.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static unsigned long runs, judged;

static void tell(void)
{
    fprintf(stderr, "analysis: %lu runs, %lu with a verdict\n", runs, judged);
}

static void judge(const spz_movement *movement, const spz_settings *settings)
{
    spz_sections *sections = NULL;
    spz_findings *findings = NULL;
    spz_verdict *verdict = NULL;
    if (spz_sections_find(movement, settings, NULL, &sections) == SPZ_OK && spz_passages_find(sections, settings, NULL, &findings) == SPZ_OK)
        spz_seating_judge(findings, settings, 0, NULL, &verdict);
    judged += verdict && spz_verdict_count(verdict) > 0;
    spz_verdict_free(verdict);
    spz_findings_free(findings);
    spz_sections_free(sections);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static spz_settings *settings;
    spz_score *score = NULL;
    if (!settings && (spz_settings_new(&settings) != SPZ_OK || atexit(tell)))
        abort();
    runs++;
    spz_score_read_memory(data, size, "fuzz", NULL, &score);
    for (size_t i = 0; score && i < spz_score_movement_count(score); i++)
        judge(spz_score_movement(score, i), settings);
    spz_score_free(score);
    return 0;
}
