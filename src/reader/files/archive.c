/* archive.c - reads the central directory (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16), then members one by one. Archives over
 * several disks, of more than 4 GB or with passwords are refused: no score is one. Every offset is checked against the size. */
#include "reader/files/archive.h"
#include "support/memory.h"
#include <string.h>

enum { END_SIZE = 22, ENTRY_SIZE = 46, LOCAL_SIZE = 30, COMMENT_MOST = 65535 };

static uint32_t number2(const unsigned char *at)
{
    return (uint32_t)at[0] | (uint32_t)at[1] << 8;
}

static uint32_t number4(const unsigned char *at)
{
    return number2(at) | number2(at + 2) << 16;
}

bool archive_looks_like(const void *bytes, size_t size)
{
    const unsigned char *at = bytes;
    return size >= 4 && at[0] == 'P' && at[1] == 'K' && ((at[2] == 3 && at[3] == 4) || (at[2] == 5 && at[3] == 6));
}

static const unsigned char *find_end(const Archive *archive)
{
    if (archive->size < END_SIZE)
        return NULL;
    size_t lowest = archive->size > END_SIZE + COMMENT_MOST ? archive->size - END_SIZE - COMMENT_MOST : 0;
    for (size_t at = archive->size - END_SIZE + 1; at-- > lowest;)
        if (memcmp(archive->bytes + at, "PK\5\6", 4) == 0)
            return archive->bytes + at;
    return NULL;
}

/* Reads the entry at `at`; bytes it takes, 0 when it is broken. */
static size_t read_entry(const Archive *archive, size_t at, ArchiveMember *member)
{
    const unsigned char *entry = archive->bytes + at;
    if (archive->size - at < ENTRY_SIZE || memcmp(entry, "PK\1\2", 4) != 0)
        return 0;
    size_t length = ENTRY_SIZE + number2(entry + 28) + number2(entry + 30) + number2(entry + 32);
    if (length > archive->size - at)
        return 0;
    member->encrypted = (number2(entry + 8) & 1) != 0;
    member->method = (int)number2(entry + 10);
    member->date = number4(entry + 12);
    member->checksum = number4(entry + 16);
    member->packed = number4(entry + 20);
    member->unpacked = number4(entry + 24);
    member->name = (const char *)entry + ENTRY_SIZE;
    member->name_length = number2(entry + 28);
    member->offset = number4(entry + 42);
    return length;
}

static spz_status fail(Archive *archive, spz_status status, const char *fault)
{
    archive->fault = fault;
    archive_close(archive);
    return status;
}

spz_status archive_open(Archive *archive, const void *bytes, size_t size)
{
    *archive = (Archive){bytes, size, NULL, 0, NULL};
    const unsigned char *end = find_end(archive);
    if (!end)
        return fail(archive, SPZ_BAD_ARCHIVE, "the compressed file is cut off: its end is missing");
    size_t count = number2(end + 10), at = number4(end + 16);
    if (number2(end + 4) != 0 || number2(end + 8) != count || at > size)
        return fail(archive, SPZ_BAD_ARCHIVE, "the directory of the compressed file is damaged");
    if (count > LIMIT_ARCHIVE_ENTRIES)
        return fail(archive, SPZ_OVER_LIMIT, "the compressed file holds more files than any score");
    archive->members = memory_resize(NULL, count ? count : 1, sizeof *archive->members);
    if (!archive->members)
        return SPZ_NO_MEMORY;
    for (; archive->count < count; archive->count++) {
        size_t length = read_entry(archive, at, &archive->members[archive->count]);
        if (length == 0)
            return fail(archive, SPZ_BAD_ARCHIVE, "the directory of the compressed file is damaged");
        at += length;
    }
    return SPZ_OK;
}

void archive_close(Archive *archive)
{
    memory_free(archive->members);
    archive->members = NULL;
    archive->count = 0;
}

const ArchiveMember *archive_find(const Archive *archive, const char *name)
{
    size_t length = strlen(name);
    for (size_t i = 0; i < archive->count; i++)
        if (archive->members[i].name_length == length && memcmp(archive->members[i].name, name, length) == 0)
            return &archive->members[i];
    return NULL;
}

static spz_status stop(ArchiveStream *stream, spz_status status, const char *fault)
{
    stream->status = status;
    stream->fault = fault;
    return status;
}

/* Where the packed bytes of a member begin; NULL when its header is damaged. */
static const unsigned char *packed_bytes(const Archive *archive, const ArchiveMember *member)
{
    if (member->offset > archive->size || archive->size - member->offset < LOCAL_SIZE)
        return NULL;
    const unsigned char *local = archive->bytes + member->offset;
    size_t start = member->offset + LOCAL_SIZE + number2(local + 26) + number2(local + 28);
    if (memcmp(local, "PK\3\4", 4) != 0 || start > archive->size || archive->size - start < member->packed)
        return NULL;
    return archive->bytes + start;
}

spz_status archive_stream_open(ArchiveStream *stream, const Archive *archive, const ArchiveMember *member)
{
    memset(stream, 0, sizeof *stream);
    stream->member = member;
    stream->data = packed_bytes(archive, member);
    if (member->encrypted)
        return stop(stream, SPZ_BAD_ARCHIVE, "the compressed file is locked with a password");
    if (!stream->data)
        return stop(stream, SPZ_BAD_ARCHIVE, "the compressed file is damaged or cut off");
    if (member->method != 0 && member->method != Z_DEFLATED)
        return stop(stream, SPZ_BAD_ARCHIVE, "the score is packed in a way that compressed MusicXML does not use");
    if (member->method == 0)
        return member->packed == member->unpacked ? SPZ_OK : stop(stream, SPZ_BAD_ARCHIVE, "the compressed file is damaged");
    stream->zlib.next_in = (z_const Bytef *)stream->data;
    stream->zlib.avail_in = member->packed;
    stream->inflating = inflateInit2(&stream->zlib, -MAX_WBITS) == Z_OK;
    return stream->inflating ? SPZ_OK : stop(stream, SPZ_NO_MEMORY, "there is no memory left");
}

static int inflate_some(ArchiveStream *stream, char *buffer, int length)
{
    stream->zlib.next_out = (Bytef *)buffer;
    stream->zlib.avail_out = (uInt)length;
    int code = inflate(&stream->zlib, Z_NO_FLUSH);
    size_t got = (size_t)length - stream->zlib.avail_out;
    if (code == Z_STREAM_END)
        stream->ended = true;
    else if (code == Z_MEM_ERROR)
        stop(stream, SPZ_NO_MEMORY, "there is no memory left");
    else if (code != Z_OK || (got == 0 && length > 0))
        stop(stream, SPZ_BAD_ARCHIVE, "the compressed file is damaged or cut off");
    return stream->status == SPZ_OK ? (int)got : -1;
}

static int copy_some(ArchiveStream *stream, char *buffer, int length)
{
    size_t left = stream->member->packed - stream->position;
    size_t got = left < (size_t)length ? left : (size_t)length;
    memcpy(buffer, stream->data + stream->position, got);
    stream->position += got;
    stream->ended = stream->position == stream->member->packed;
    return (int)got;
}

/* A few packed bytes that unpack without end are no score. */
static bool within_limits(ArchiveStream *stream)
{
    if (stream->given > stream->member->unpacked)
        stop(stream, SPZ_BAD_ARCHIVE, "the compressed file holds more than its directory says");
    else if (stream->given > limit_bytes)
        stop(stream, SPZ_OVER_LIMIT, "the compressed file unpacks to more than any score holds");
    else if (stream->given > LIMIT_RATIO_FROM && stream->given / LIMIT_ARCHIVE_RATIO > stream->member->packed)
        stop(stream, SPZ_OVER_LIMIT, "the compressed file unpacks to hundreds of times its size, as no score does");
    return stream->status == SPZ_OK;
}

int archive_stream_read(void *context, char *buffer, int length)
{
    ArchiveStream *stream = context;
    if (stream->status != SPZ_OK)
        return -1;
    if (stream->ended || length <= 0)
        return 0;
    int got = stream->inflating ? inflate_some(stream, buffer, length) : copy_some(stream, buffer, length);
    if (got < 0)
        return -1;
    stream->given += (size_t)got;
    stream->checksum = (uint32_t)crc32(stream->checksum, (const Bytef *)buffer, (uInt)got);
    if (!within_limits(stream))
        return -1;
    if (stream->ended && (stream->checksum != stream->member->checksum || stream->given != stream->member->unpacked)) {
        stop(stream, SPZ_BAD_ARCHIVE, "the compressed file is damaged: its contents don't match their checksum");
        return -1;
    }
    return got;
}

void archive_stream_close(ArchiveStream *stream)
{
    if (stream->inflating)
        inflateEnd(&stream->zlib);
    stream->inflating = false;
}

spz_status archive_text(const Archive *archive, const char *name, size_t most, Buffer *text)
{
    char piece[8192];
    ArchiveStream stream;
    int got = 1;
    const ArchiveMember *member = archive_find(archive, name);
    if (!member)
        return SPZ_BAD_ARCHIVE;
    if (archive_stream_open(&stream, archive, member) == SPZ_OK)
        while (got > 0 && !buffer_failed(text) && text->length <= most) {
            got = archive_stream_read(&stream, piece, sizeof piece);
            buffer_add(text, piece, got > 0 ? (size_t)got : 0);
        }
    archive_stream_close(&stream);
    return stream.status ? stream.status : buffer_failed(text) ? SPZ_NO_MEMORY : text->length > most ? SPZ_OVER_LIMIT : SPZ_OK;
}
