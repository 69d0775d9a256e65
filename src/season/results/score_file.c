#include "season/results/score_file.h"
#include "support/memory.h"
#include <stdio.h>
#include <sys/stat.h>

#define SCORE_BYTES_MOST (512ull << 20) /* as the reader's own limit on plain scores */

static spz_status read_open(FILE *file, char **data, size_t *size)
{
    struct stat about;
    if (fstat(fileno(file), &about) != 0 || !S_ISREG(about.st_mode))
        return SPZ_CANNOT_READ;
    if ((unsigned long long)about.st_size > SCORE_BYTES_MOST)
        return SPZ_OVER_LIMIT;
    *data = memory_get((size_t)about.st_size + 1);
    if (!*data)
        return SPZ_NO_MEMORY;
    *size = fread(*data, 1, (size_t)about.st_size, file);
    return ferror(file) ? SPZ_CANNOT_READ : SPZ_OK;
}

spz_status score_file_read(const char *path, char **data, size_t *size)
{
    *data = NULL;
    *size = 0;
    FILE *file = fopen(path, "rb");
    if (!file)
        return SPZ_CANNOT_OPEN;
    spz_status status = read_open(file, data, size);
    fclose(file);
    return status;
}
