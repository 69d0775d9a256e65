/* document.h - a finished document: the text of a buffer, taken over. */
#ifndef WRITING_DOCUMENT_H
#define WRITING_DOCUMENT_H
#include "spezzato/report.h"
#include "support/buffer.h"

/* Takes the text out of `buffer`, which is empty afterwards. SPZ_NO_MEMORY also where an append had failed. */
spz_status document_take(Buffer *buffer, spz_document **out);
#endif
