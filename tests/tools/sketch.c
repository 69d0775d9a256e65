/* sketch IN.txt OUT.musicxml|OUT.mxl: makes a score from its notation, plain or compressed by the file's ending. */
#include "support/notation/notation.h"

#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <zlib.h>

enum { MOST_TEXT = 16 << 20, ZIP_ENTRIES = 3 };

/* One file of the archive: what it holds and where it lies. */
struct entry {
    const char *name;
    const char *content;
    size_t size;
    unsigned char *packed; /* NULL: stored as it is */
    size_t packed_size, offset;
    uint32_t crc;
};

static char *read_file(const char *path)
{
    char *text = NULL;
    FILE *file = fopen(path, "rb");
    if (!file)
        return NULL;
    text = malloc(MOST_TEXT + 1);
    if (text) {
        size_t size = fread(text, 1, MOST_TEXT, file);
        text[size] = '\0';
        if (ferror(file) || !feof(file)) {
            free(text);
            text = NULL;
            errno = EFBIG;
        }
    }
    fclose(file);
    return text;
}

static void put(FILE *file, uint32_t value, int bytes)
{
    for (int i = 0; i < bytes; i++)
        fputc((int)(value >> (8 * i) & 0xff), file);
}

/* Fields that a local header and the directory share; the date is fixed so that the same score gives the same bytes. */
static void put_common(FILE *file, const struct entry *entry)
{
    enum { FIRST_OF_JANUARY_1980 = 0x21 };
    put(file, 20, 2);
    put(file, 0, 2);
    put(file, entry->packed ? 8 : 0, 2);
    put(file, 0, 2);
    put(file, FIRST_OF_JANUARY_1980, 2);
    put(file, entry->crc, 4);
    put(file, (uint32_t)entry->packed_size, 4);
    put(file, (uint32_t)entry->size, 4);
    put(file, (uint32_t)strlen(entry->name), 2);
    put(file, 0, 2);
}

static int pack(struct entry *entry)
{
    z_stream stream = {0};
    uLong bound = compressBound((uLong)entry->size);
    entry->crc = (uint32_t)crc32(0, (const Bytef *)entry->content, (uInt)entry->size);
    entry->packed_size = entry->size;
    if (strcmp(entry->name, "mimetype") == 0)
        return 1;
    entry->packed = malloc(bound);
    if (!entry->packed || deflateInit2(&stream, 9, Z_DEFLATED, -15, 9, Z_DEFAULT_STRATEGY) != Z_OK)
        return 0;
    stream.next_in = (Bytef *)(uintptr_t)entry->content;
    stream.avail_in = (uInt)entry->size;
    stream.next_out = entry->packed;
    stream.avail_out = (uInt)bound;
    int done = deflate(&stream, Z_FINISH) == Z_STREAM_END;
    entry->packed_size = stream.total_out;
    deflateEnd(&stream);
    return done;
}

static void write_entry(FILE *file, struct entry *entry)
{
    entry->offset = (size_t)ftell(file);
    put(file, 0x04034b50, 4);
    put_common(file, entry);
    fputs(entry->name, file);
    fwrite(entry->packed ? (const void *)entry->packed : entry->content, 1, entry->packed_size, file);
}

static void write_directory(FILE *file, const struct entry *entries)
{
    long start = ftell(file);
    for (int i = 0; i < ZIP_ENTRIES; i++) {
        put(file, 0x02014b50, 4);
        put(file, 20, 2);
        put_common(file, &entries[i]);
        put(file, 0, 2); /* comment */
        put(file, 0, 2); /* disk */
        put(file, 0, 2); /* attributes */
        put(file, 0, 4);
        put(file, (uint32_t)entries[i].offset, 4);
        fputs(entries[i].name, file);
    }
    long end = ftell(file);
    put(file, 0x06054b50, 4);
    put(file, 0, 4);
    put(file, ZIP_ENTRIES, 2);
    put(file, ZIP_ENTRIES, 2);
    put(file, (uint32_t)(end - start), 4);
    put(file, (uint32_t)start, 4);
    put(file, 0, 2);
}

/* A compressed score: mimetype first and uncompressed, then the container that names the root file. */
static int write_compressed(FILE *file, const char *xml, size_t length)
{
    static const char container[] = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<container>\n  <rootfiles>\n"
                                    "    <rootfile full-path=\"score.musicxml\" media-type=\"application/vnd.recordare.musicxml+xml\"/>\n"
                                    "  </rootfiles>\n</container>\n";
    static const char type[] = "application/vnd.recordare.musicxml";
    struct entry entries[ZIP_ENTRIES] = {{.name = "mimetype", .content = type, .size = sizeof type - 1},
                                         {.name = "META-INF/container.xml", .content = container, .size = sizeof container - 1},
                                         {.name = "score.musicxml", .content = xml, .size = length}};
    int done = 1;
    for (int i = 0; i < ZIP_ENTRIES; i++)
        done = done && pack(&entries[i]);
    for (int i = 0; done && i < ZIP_ENTRIES; i++)
        write_entry(file, &entries[i]);
    if (done)
        write_directory(file, entries);
    for (int i = 0; i < ZIP_ENTRIES; i++)
        free(entries[i].packed);
    return done;
}

static int ends_with(const char *text, const char *end)
{
    size_t a = strlen(text), b = strlen(end);
    return a >= b && strcmp(text + a - b, end) == 0;
}

static int write_score(const char *path, const char *xml, size_t length)
{
    FILE *file = fopen(path, "wb");
    if (!file)
        return 0;
    int done = ends_with(path, ".mxl") ? write_compressed(file, xml, length) : fwrite(xml, 1, length, file) == length;
    done = !ferror(file) && done;
    done = fclose(file) == 0 && done;
    if (!done)
        remove(path);
    return done;
}

int main(int argc, char **argv)
{
    char error[300];
    size_t length = 0;
    int status = 2;
    if (argc != 3) {
        fprintf(stderr, "usage: sketch IN.txt OUT.musicxml|OUT.mxl\n");
        return 1;
    }
    char *text = read_file(argv[1]);
    char *xml = text ? notation_to_musicxml(text, &length, error, sizeof error) : NULL;
    if (!text)
        fprintf(stderr, "%s: %s\n", argv[1], strerror(errno));
    else if (!xml)
        fprintf(stderr, "%s: %s\n", argv[1], error);
    else if (!write_score(argv[2], xml, length))
        fprintf(stderr, "%s: %s\n", argv[2], strerror(errno));
    else
        status = 0;
    free(xml);
    free(text);
    return status;
}
