/* archive.h - a compressed score: the directory of a zip archive that lies in memory, and its members as streams (zlib's inflate). */
#ifndef READER_ARCHIVE_H
#define READER_ARCHIVE_H
#include "reader/files/limits.h"
#include "spezzato/status.h"
#include "support/buffer.h"
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <zlib.h>

typedef struct ArchiveMember {
    const char *name; /* not ended by a zero byte */
    size_t name_length;
    size_t offset;    /* of its local header */
    uint32_t packed, unpacked, checksum;
    uint32_t date;    /* as the archive has it: time in the low half, day in the high one */
    int method;       /* 0 stored, 8 deflated */
    bool encrypted;
} ArchiveMember;

typedef struct Archive {
    const unsigned char *bytes;
    size_t size;
    ArchiveMember *members;
    size_t count;
    const char *fault; /* what is wrong, a sentence; NULL */
} Archive;

bool archive_looks_like(const void *bytes, size_t size);
spz_status archive_open(Archive *archive, const void *bytes, size_t size); /* SPZ_BAD_ARCHIVE, SPZ_OVER_LIMIT (with fault), SPZ_NO_MEMORY */
void archive_close(Archive *archive);
const ArchiveMember *archive_find(const Archive *archive, const char *name);

typedef struct ArchiveStream {
    z_stream zlib;
    const ArchiveMember *member;
    const unsigned char *data;
    size_t given, position;
    uint32_t checksum;
    bool inflating, ended;
    spz_status status; /* why reading stopped early */
    const char *fault;
} ArchiveStream;

spz_status archive_stream_open(ArchiveStream *stream, const Archive *archive, const ArchiveMember *member);
int archive_stream_read(void *stream, char *buffer, int length); /* -1 on a fault */
void archive_stream_close(ArchiveStream *stream);

/* Adds a whole member to `text`. SPZ_BAD_ARCHIVE: none of that name, or it is damaged; SPZ_OVER_LIMIT: `text` would hold more than `most` bytes;
 * SPZ_NO_MEMORY. */
spz_status archive_text(const Archive *archive, const char *name, size_t most, Buffer *text);
#endif
