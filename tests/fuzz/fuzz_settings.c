/* Any bytes as a settings file. */
#include "spezzato/settings.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char path[1024];
    const char *folder = getenv("TMPDIR");
    snprintf(path, sizeof path, "%s/spezzato-fuzz-%ld.ini", folder ? folder : "/tmp", (long)getpid());
    FILE *file = fopen(path, "wb");
    spz_settings *settings = NULL;
    if (!file)
        abort();
    fwrite(data, 1, size, file);
    fclose(file);
    if (spz_settings_new(&settings) != SPZ_OK)
        abort();
    spz_settings_read(settings, path, NULL);
    spz_settings_free(settings);
    unlink(path);
    return 0;
}
