#include "support/scores/archive_text.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <zlib.h>

static void put(ArchiveText *archive, const void *bytes, size_t size)
{
    if (archive->size + size > archive->capacity) {
        archive->capacity = (archive->size + size) * 2;
        archive->bytes = realloc(archive->bytes, archive->capacity);
        if (!archive->bytes)
            abort();
    }
    memcpy(archive->bytes + archive->size, bytes, size);
    archive->size += size;
}

static void put_number(ArchiveText *archive, unsigned long number, int bytes)
{
    for (int i = 0; i < bytes; i++, number >>= 8) {
        unsigned char byte = (unsigned char)(number & 255);
        put(archive, &byte, 1);
    }
}

static size_t deflate_text(const void *text, size_t length, unsigned char **out)
{
    z_stream stream;
    memset(&stream, 0, sizeof stream);
    size_t room = length + length / 100 + 1024;
    *out = malloc(room);
    if (!*out || deflateInit2(&stream, 9, Z_DEFLATED, -MAX_WBITS, 9, Z_DEFAULT_STRATEGY) != Z_OK)
        abort();
    stream.next_in = (z_const Bytef *)text;
    stream.avail_in = (uInt)length;
    stream.next_out = *out;
    stream.avail_out = (uInt)room;
    if (deflate(&stream, Z_FINISH) != Z_STREAM_END)
        abort();
    deflateEnd(&stream);
    return stream.total_out;
}

/* The fields that the local header and the directory share. */
static void put_fields(ArchiveText *archive, int index)
{
    put_number(archive, 20, 2);
    put_number(archive, 0, 2);
    put_number(archive, (unsigned long)archive->members[index].method, 2);
    put_number(archive, 0, 4);
    put_number(archive, archive->members[index].checksum, 4);
    put_number(archive, archive->members[index].packed, 4);
    put_number(archive, archive->members[index].unpacked, 4);
    put_number(archive, strlen(archive->members[index].name), 2);
    put_number(archive, 0, 2);
}

void archive_text_add(ArchiveText *archive, const char *name, const void *text, size_t length, bool deflated)
{
    int index = archive->count++;
    unsigned char *packed = NULL;
    snprintf(archive->members[index].name, sizeof archive->members[index].name, "%s", name);
    archive->members[index].offset = archive->size;
    archive->members[index].unpacked = length;
    archive->members[index].packed = deflated ? deflate_text(text, length, &packed) : length;
    archive->members[index].checksum = crc32(0, text, (uInt)length);
    archive->members[index].method = deflated ? 8 : 0;
    put(archive, "PK\3\4", 4);
    put_fields(archive, index);
    put(archive, name, strlen(name));
    put(archive, deflated ? packed : text, archive->members[index].packed);
    free(packed);
}

void archive_text_add_string(ArchiveText *archive, const char *name, const char *text)
{
    archive_text_add(archive, name, text, strlen(text), true);
}

void archive_text_close(ArchiveText *archive)
{
    size_t start = archive->size;
    for (int i = 0; i < archive->count; i++) {
        put(archive, "PK\1\2", 4);
        put_number(archive, 20, 2);
        put_fields(archive, i);
        put_number(archive, 0, 2);
        put_number(archive, 0, 2);
        put_number(archive, 0, 2);
        put_number(archive, 0, 4);
        put_number(archive, archive->members[i].offset, 4);
        put(archive, archive->members[i].name, strlen(archive->members[i].name));
    }
    size_t size = archive->size - start;
    put(archive, "PK\5\6", 4);
    put_number(archive, 0, 4);
    put_number(archive, (unsigned long)archive->count, 2);
    put_number(archive, (unsigned long)archive->count, 2);
    put_number(archive, size, 4);
    put_number(archive, start, 4);
    put_number(archive, 0, 2);
}

void archive_text_free(ArchiveText *archive)
{
    free(archive->bytes);
    memset(archive, 0, sizeof *archive);
}
