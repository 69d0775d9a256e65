/* foreign_files.h - files that hold music in another way, or none: known by their first bytes, so that their owner is told what to do. */
#ifndef READER_FOREIGN_FILES_H
#define READER_FOREIGN_FILES_H
#include "spezzato/status.h"
#include <stddef.h>

enum { FOREIGN_LOOK = 64 }; /* bytes that are enough to tell */

/* What the file seems to be and what to do, as a sentence; NULL where it may be XML. The first bytes: PDF (ISO 32000), Standard MIDI File (MIDI
 * Association), PNG (ISO 15948), JPEG (ISO 10918), GIF, TIFF, WAV (RIFF), MP3 with tags, gzip (RFC 1952). `*status` is SPZ_NOT_MUSICXML or SPZ_NOT_XML. */
const char *foreign_file(const void *bytes, size_t count, spz_status *status);
#endif
