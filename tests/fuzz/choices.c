#include "fuzz/choices.h"
#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

size_t choose(Choices *choices, size_t limit)
{
    size_t number = 0;
    for (int i = limit > 256 ? 2 : 1; i > 0 && choices->left; i--, choices->at++, choices->left--)
        number = number << 8 | *choices->at;
    return limit ? number % limit : 0;
}

const char *choose_text(Choices *choices, const char *const *texts)
{
    size_t count = 0;
    while (texts[count])
        count++;
    return texts[choose(choices, count)];
}

_Noreturn void fuzz_broken(const char *file, int line, const char *what)
{
    fprintf(stderr, "%s:%d: ERROR: doesn't hold: %s\n", file, line, what);
    abort();
}

char *file_bytes(const char *path, size_t *size)
{
    FILE *file = fopen(path, "rb");
    if (!file || fseek(file, 0, SEEK_END))
        abort();
    long length = ftell(file);
    rewind(file);
    char *bytes = malloc((size_t)length + 1);
    if (!bytes || length < 0 || fread(bytes, 1, (size_t)length, file) != (size_t)length || fclose(file))
        abort();
    bytes[length] = '\0';
    *size = (size_t)length;
    return bytes;
}

void file_save(const char *path, const void *bytes, size_t size)
{
    FILE *file = fopen(path, "wb");
    if (!file || (size && fwrite(bytes, size, 1, file) != 1) || fclose(file))
        abort();
}

const char *fuzz_place(void)
{
    const char *folder = getenv("SPEZZATO_FUZZ_PLACE");
    return folder ? folder : ".";
}

size_t fuzz_scores(char (*paths)[FUZZ_PATH], size_t most)
{
    char pattern[FUZZ_PATH];
    glob_t found;
    snprintf(pattern, sizeof pattern, "%s/*.musicxml", fuzz_place());
    if (glob(pattern, 0, NULL, &found) || found.gl_pathc == 0) {
        fprintf(stderr, "no scores in %s: `make fuzz` lays some there\n", fuzz_place());
        abort();
    }
    size_t count = found.gl_pathc < most ? found.gl_pathc : most;
    for (size_t i = 0; i < count; i++)
        snprintf(paths[i], FUZZ_PATH, "%s", found.gl_pathv[i]);
    globfree(&found);
    return count;
}
