#define _XOPEN_SOURCE 700
#include "pages/drawings/staves/engrave.h"
#include "spezzato/report.h"
#include "writing/document.h"
#include "support/program.h"
#include "support/sha256.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { PATH_SIZE = 4096, DRAWING_MOST = 8 << 20 };
static const char recipe[] = "spezzato engraving 2"; /* changes when engrave.mjs or its options do */

static bool join_path(char out[PATH_SIZE], const char *folder, const char *name, const char *ending)
{
    int length = snprintf(out, PATH_SIZE, "%s/%s%s", folder, name, ending);
    return length > 0 && length < PATH_SIZE;
}

/* The place of an excerpt's drawing in the cache. */
static bool cache_path(char out[PATH_SIZE], const char *cache, const Buffer *excerpt)
{
    char digest[SHA256_TEXT];
    Sha256 sum;
    if (!cache)
        return false;
    sha256_begin(&sum);
    sha256_add_text(&sum, recipe);
    sha256_add(&sum, excerpt->text, excerpt->length);
    sha256_end(&sum, digest);
    return join_path(out, cache, digest, ".svg");
}

/* A drawing that was not kept whole has no end tag and is made anew. */
static bool whole_drawing(const Buffer *drawing)
{
    static const char tag[] = "</svg>";
    size_t length = drawing->length;
    while (length > 0 && (drawing->text[length - 1] == '\n' || drawing->text[length - 1] == ' '))
        length--;
    return length > sizeof tag && strncmp(drawing->text, "<svg", 4) == 0 && memcmp(drawing->text + length - (sizeof tag - 1), tag, sizeof tag - 1) == 0;
}

static void read_cached(const char *cache, const Buffer *excerpt, Buffer *drawing)
{
    char path[PATH_SIZE], bytes[8192];
    FILE *file = cache_path(path, cache, excerpt) ? fopen(path, "rb") : NULL;
    if (!file)
        return;
    for (size_t got; (got = fread(bytes, 1, sizeof bytes, file)) > 0 && drawing->length < DRAWING_MOST;)
        buffer_add(drawing, bytes, got);
    fclose(file);
    if (!drawing->failed && !whole_drawing(drawing))
        buffer_clear(drawing);
}

static void keep_cached(const char *cache, const Buffer *excerpt, const Buffer *drawing)
{
    char path[PATH_SIZE];
    Buffer copy;
    spz_document *document = NULL;
    if (!cache_path(path, cache, excerpt))
        return;
    buffer_init(&copy);
    buffer_add(&copy, drawing->text, drawing->length);
    if (document_take(&copy, &document) == SPZ_OK)
        spz_document_save(document, path, NULL); /* a cache that can't be written is none */
    buffer_free(&copy);
    spz_document_free(document);
}

static bool start(const char *script, FILE *in, FILE *out)
{
    char node[PROGRAM_PATH], copy[PATH_SIZE];
    char *const words[] = {node, copy, NULL};
    snprintf(copy, sizeof copy, "%s", script);
    return program_find("node", node) && program_run(words, in, out);
}

static bool read_drawing(FILE *out, Buffer *drawing)
{
    unsigned long length = 0;
    char bytes[8192];
    if (fscanf(out, "%lu", &length) != 1 || getc(out) != '\n' || length > DRAWING_MOST)
        return false;
    while (length > 0) {
        size_t got = fread(bytes, 1, length < sizeof bytes ? length : sizeof bytes, out);
        if (got == 0)
            return false;
        buffer_add(drawing, bytes, got);
        length -= got;
    }
    return true;
}

/* All excerpts that are still without a drawing, in one run. Through files, so that neither side can wait for the other. */
static void engrave_missing(const char *script, const char *cache, const Buffer *excerpts, Buffer *drawings, size_t count)
{
    FILE *in = tmpfile(), *out = tmpfile();
    bool good = in && out;
    for (size_t i = 0; i < count && good; i++)
        if (excerpts[i].length && !drawings[i].length)
            good = fprintf(in, "%zu\n", excerpts[i].length) > 0 && fwrite(excerpts[i].text, 1, excerpts[i].length, in) == excerpts[i].length;
    good = good && fflush(in) == 0 && fseek(in, 0, SEEK_SET) == 0 && start(script, in, out) && fseek(out, 0, SEEK_SET) == 0;
    for (size_t i = 0; i < count && good; i++) {
        if (!excerpts[i].length || drawings[i].length)
            continue;
        good = read_drawing(out, &drawings[i]);
        if (!good || !whole_drawing(&drawings[i]))
            buffer_clear(&drawings[i]);
        else
            keep_cached(cache, &excerpts[i], &drawings[i]);
    }
    if (in)
        fclose(in);
    if (out)
        fclose(out);
}

spz_engraver spz_engraver_state(const char *folder)
{
    char path[PATH_SIZE];
    if (!join_path(path, folder, "engrave.mjs", "") || access(path, R_OK) != 0 || !join_path(path, folder, "node_modules", "") || access(path, R_OK) != 0)
        return SPZ_ENGRAVER_ABSENT;
    return program_find("node", path) ? SPZ_ENGRAVER_READY : SPZ_ENGRAVER_WITHOUT_NODE;
}

spz_status engrave_all(const char *folder, const char *cache, const Buffer *excerpts, Buffer *drawings, size_t count)
{
    char script[PATH_SIZE];
    bool missing = false;
    if (!join_path(script, folder, "engrave.mjs", "") || access(script, R_OK) != 0)
        return SPZ_OK;
    for (size_t i = 0; i < count; i++) {
        if (!excerpts[i].length)
            continue;
        read_cached(cache, &excerpts[i], &drawings[i]);
        missing = missing || !drawings[i].length;
    }
    if (missing)
        engrave_missing(script, cache, excerpts, drawings, count);
    for (size_t i = 0; i < count; i++)
        if (drawings[i].failed)
            return SPZ_NO_MEMORY;
    return SPZ_OK;
}
