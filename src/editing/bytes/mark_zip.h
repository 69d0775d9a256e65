/* mark_zip.h - writes a zip archive into memory (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16; DEFLATE by zlib). Members
 * made anew have the first date that the format can hold, so that the same contents give the same bytes. */
#ifndef EDITING_BYTES_MARK_ZIP_H
#define EDITING_BYTES_MARK_ZIP_H
#include "support/array.h"
#include "support/buffer.h"
#include <stdint.h>

typedef struct ZipMember {
    const char *name;  /* view of the caller's */
    size_t name_length;
    uint32_t checksum, packed, unpacked, offset;
    uint16_t method;   /* 0 stored, 8 deflated */
    uint32_t date;     /* as in ArchiveMember; 0: the first day that the format can hold */
} ZipMember;

typedef struct Zip {
    Buffer *out;
    ARRAY(ZipMember) members;
    bool failed; /* out of memory, or too large for the format */
} Zip;

void zip_begin(Zip *zip, Buffer *out);
/* Names have to live until zip_end. */
void zip_stored(Zip *zip, const char *name, size_t name_length, const char *bytes, size_t length);
void zip_deflated(Zip *zip, const char *name, size_t name_length, const char *bytes, size_t length);
/* A member taken over as it is packed already: name, method, checksum and sizes are filled by the caller. */
void zip_packed(Zip *zip, ZipMember member, const void *packed);
bool zip_end(Zip *zip); /* releases; false where something failed */
#endif
