#include "editing/bytes/mark_zip.h"
#include "support/memory.h"
#include <string.h>
#include <zlib.h>

enum { VERSION = 20, FLAG_UTF8 = 0x800, DATE_1980_01_01 = 0x21 };

static void put2(Buffer *out, uint32_t value)
{
    char bytes[2] = {(char)(value & 0xFF), (char)(value >> 8 & 0xFF)};
    buffer_add(out, bytes, 2);
}

static void put4(Buffer *out, uint32_t value)
{
    put2(out, value & 0xFFFF);
    put2(out, value >> 16);
}

static bool is_ascii(const ZipMember *member)
{
    for (size_t i = 0; i < member->name_length; i++)
        if ((unsigned char)member->name[i] > 126)
            return false;
    return true;
}

/* What the local header and the directory have in common. */
static void put_about(Buffer *out, const ZipMember *member)
{
    put2(out, VERSION);
    put2(out, is_ascii(member) ? 0 : FLAG_UTF8);
    put2(out, member->method);
    put4(out, member->date ? member->date : (uint32_t)DATE_1980_01_01 << 16);
    put4(out, member->checksum);
    put4(out, member->packed);
    put4(out, member->unpacked);
    put2(out, (uint32_t)member->name_length);
    put2(out, 0); /* no extra field */
}

void zip_begin(Zip *zip, Buffer *out)
{
    memset(zip, 0, sizeof *zip);
    zip->out = out;
}

void zip_packed(Zip *zip, ZipMember member, const void *packed)
{
    if (zip->out->length > UINT32_MAX / 2 || member.name_length > UINT16_MAX || zip->members.count >= UINT16_MAX) {
        zip->failed = true;
        return;
    }
    member.offset = (uint32_t)zip->out->length;
    put4(zip->out, 0x04034B50);
    put_about(zip->out, &member);
    buffer_add(zip->out, member.name, member.name_length);
    buffer_add(zip->out, packed, member.packed);
    zip->failed = zip->failed || !array_push(&zip->members, member);
}

static ZipMember about(const char *name, size_t name_length, const char *bytes, size_t length)
{
    uint32_t checksum = (uint32_t)crc32(crc32(0, NULL, 0), (const Bytef *)bytes, (uInt)length);
    return (ZipMember){name, name_length, checksum, (uint32_t)length, (uint32_t)length, 0, 0, 0};
}

void zip_stored(Zip *zip, const char *name, size_t name_length, const char *bytes, size_t length)
{
    if (length > UINT32_MAX / 2)
        zip->failed = true;
    else
        zip_packed(zip, about(name, name_length, bytes, length), bytes);
}

/* Bytes packed into `out`, which has room for deflateBound; 0 on failure. */
static size_t deflate_all(z_stream *stream, const char *bytes, size_t length, char *out, size_t room)
{
    stream->next_in = (z_const Bytef *)bytes;
    stream->avail_in = (uInt)length;
    stream->next_out = (Bytef *)out;
    stream->avail_out = (uInt)room;
    return deflate(stream, Z_FINISH) == Z_STREAM_END ? room - stream->avail_out : 0;
}

void zip_deflated(Zip *zip, const char *name, size_t name_length, const char *bytes, size_t length)
{
    z_stream stream;
    memset(&stream, 0, sizeof stream);
    if (length > UINT32_MAX / 2 || deflateInit2(&stream, Z_DEFAULT_COMPRESSION, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY) != Z_OK) {
        zip->failed = true;
        return;
    }
    size_t room = deflateBound(&stream, (uLong)length);
    char *packed = memory_get(room);
    size_t size = packed ? deflate_all(&stream, bytes, length, packed, room) : 0;
    ZipMember member = about(name, name_length, bytes, length);
    member.packed = (uint32_t)size;
    member.method = Z_DEFLATED;
    if (size == 0)
        zip->failed = true;
    else
        zip_packed(zip, member, packed);
    memory_free(packed);
    deflateEnd(&stream);
}

static void put_entry(Buffer *out, const ZipMember *member)
{
    put4(out, 0x02014B50);
    put2(out, VERSION);
    put_about(out, member);
    put2(out, 0); /* no comment */
    put2(out, 0); /* disk */
    put2(out, 0);
    put4(out, 0);
    put4(out, member->offset);
    buffer_add(out, member->name, member->name_length);
}

bool zip_end(Zip *zip)
{
    size_t start = zip->out->length;
    for (size_t i = 0; i < zip->members.count; i++)
        put_entry(zip->out, &zip->members.at[i]);
    put4(zip->out, 0x06054B50);
    put4(zip->out, 0);
    put2(zip->out, (uint32_t)zip->members.count);
    put2(zip->out, (uint32_t)zip->members.count);
    put4(zip->out, (uint32_t)(zip->out->length - 12 - start));
    put4(zip->out, (uint32_t)start);
    put2(zip->out, 0);
    array_free(&zip->members);
    return !zip->failed && start <= UINT32_MAX / 2 && !buffer_failed(zip->out);
}
