/* Any bytes as the table of a season, planned with the scores of the folder SPEZZATO_FUZZ_PLACE, and told in every form. */
#include "spezzato/season.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static char place[512], known[512]; /* the table; what is known of the scores, so that they need not be read each time */

static void prepare(void)
{
    const char *folder = getenv("SPEZZATO_FUZZ_PLACE");
    char first[512];
    spz_document *lines = NULL;
    spz_season_options options = {0};
    snprintf(place, sizeof place, "%s/table-%ld.csv", folder ? folder : ".", (long)getpid());
    snprintf(known, sizeof known, "%s/known-%ld.ndjson", folder ? folder : ".", (long)getpid());
    snprintf(first, sizeof first, "%s/season.csv", folder ? folder : ".");
    if (spz_season_lines(first, &options, NULL, &lines) != SPZ_OK || spz_document_save(lines, known, NULL) != SPZ_OK)
        abort();
    spz_document_free(lines);
}

static void tell_all(const spz_season *season)
{
    for (int format = SPZ_AS_TEXT; format <= SPZ_AS_HTML; format++) {
        spz_season_look look = {.width = 96, .language = (spz_language)(format % SPZ_LANGUAGE_COUNT)};
        spz_document *document = NULL;
        if (spz_report_season(season, (spz_format)format, &look, &document) != SPZ_OK)
            abort();
        spz_document_free(document);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    spz_season *season = NULL;
    if (!*place)
        prepare();
    const char *const lines[] = {known};
    spz_season_options options = {.lines = lines, .line_files = 1};
    FILE *file = fopen(place, "wb");
    if (!file || (size && fwrite(data, size, 1, file) != 1) || fclose(file))
        abort();
    if (spz_season_plan(place, &options, NULL, &season) == SPZ_OK)
        tell_all(season);
    spz_season_free(season);
    return 0;
}
