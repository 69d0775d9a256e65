/* mark_file.h - a score file as a whole, plain or compressed: its texts can be taken out one by one, and the file put together again with
 * other texts in their place. */
#ifndef EDITING_BYTES_MARK_FILE_H
#define EDITING_BYTES_MARK_FILE_H
#include "reader/files/archive.h"
#include "spezzato/status.h"
#include "support/buffer.h"

typedef struct ScoreFile {
    const char *path; /* view of the caller's */
    Buffer bytes;
    Archive archive;  /* of a compressed score */
    bool compressed;
} ScoreFile;

/* One text of the file that is to be replaced. */
typedef struct NewText {
    const char *name; /* of the member; NULL for a plain file */
    Buffer text;
} NewText;

spz_status score_file_open(ScoreFile *file, const char *path, const spz_sink *sink);
void score_file_close(ScoreFile *file);
/* Bytes of the text: of a plain file as a whole (`name` NULL), or of a member. */
spz_status score_file_text(const ScoreFile *file, const char *name, Buffer *text);
/* The whole file with its new texts: as an archive, or as one plain text (there must be just one then: SPZ_BAD_ARGUMENT). All other
 * members stay packed as they are. */
spz_status score_file_write(const ScoreFile *file, NewText *texts, size_t count, bool compressed, Buffer *out);
#endif
