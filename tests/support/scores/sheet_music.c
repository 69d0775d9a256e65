#include "support/scores/sheet_music.h"
#include "support/notation/notation.h"
#include <CUnit/CUnit.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static void complain(void *context, const spz_message *m)
{
    (void)context;
    if (m->severity == SPZ_ERROR)
        fprintf(stderr, "\n  %s line %ld: %s\n", m->file ? m->file : "", m->line, m->text);
}

SheetMusic sheet_music_of_bytes(const char *bytes, size_t length)
{
    SheetMusic music = {.length = length};
    const char *top = getenv("TMPDIR");
    snprintf(music.path, sizeof music.path, "%s/spezzato-sheet-XXXXXX", top && strlen(top) < 120 ? top : "/tmp");
    int file = mkstemp(music.path);
    CU_ASSERT_FATAL(file >= 0);
    FILE *out = fdopen(file, "wb");
    CU_ASSERT_PTR_NOT_NULL_FATAL(out);
    CU_ASSERT_EQUAL_FATAL(fwrite(bytes, 1, length, out), length);
    CU_ASSERT_EQUAL_FATAL(fclose(out), 0);
    music.xml = malloc(length + 1);
    CU_ASSERT_PTR_NOT_NULL_FATAL(music.xml);
    memcpy(music.xml, bytes, length);
    music.xml[length] = '\0';
    return music;
}

SheetMusic sheet_music(const char *notation)
{
    char error[300] = "";
    size_t length = 0;
    spz_sink sink = {complain, NULL};
    char *xml = notation_to_musicxml(notation, &length, error, sizeof error);
    if (!xml)
        fprintf(stderr, "\n  notation: %s\n", error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    SheetMusic music = sheet_music_of_bytes(xml, length);
    free(xml);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(music.path, NULL, 0, SPZ_TO_SEATING, &sink, &music.reading), SPZ_OK);
    return music;
}

void sheet_music_end(SheetMusic *music)
{
    spz_reading_free(music->reading);
    free(music->xml);
    unlink(music->path);
    memset(music, 0, sizeof *music);
}

spz_movement_reading first_movement(const SheetMusic *music)
{
    return spz_reading_at(music->reading, 0);
}

char *text_of(spz_document *document, size_t *length)
{
    size_t size = 0;
    CU_ASSERT_PTR_NOT_NULL_FATAL(document);
    const char *text = spz_document_text(document, &size);
    char *copy = malloc(size + 1);
    CU_ASSERT_PTR_NOT_NULL_FATAL(copy);
    memcpy(copy, text, size + 1);
    spz_document_free(document);
    if (length)
        *length = size;
    return copy;
}

int count_of(const char *text, const char *what)
{
    int count = 0;
    for (const char *at = strstr(text, what); at; at = strstr(at + 1, what))
        count++;
    return count;
}
