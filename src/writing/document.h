/* document.h - a finished document: the text of a buffer, taken over. */
#ifndef WRITING_DOCUMENT_H
#define WRITING_DOCUMENT_H
#include "spezzato/report.h"
#include "support/buffer.h"

/* Takes the text out of `buffer`, which is empty and free afterwards: a whole document, or none. SPZ_NO_MEMORY also where an append had failed, or where the
 * thread was refused memory for anything else since the buffer was begun (buffer_in_doubt): a sentence may be missing then. */
spz_status document_take(Buffer *buffer, spz_document **out);
#endif
