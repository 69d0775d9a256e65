/* report.h - findings and verdicts as pages, tables and data. Nothing is computed here. */
#ifndef SPEZZATO_REPORT_H
#define SPEZZATO_REPORT_H

#include "spezzato/reading.h"

typedef enum spz_format { SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML, SPZ_AS_SVG, SPZ_AS_MARKDOWN } spz_format;

/* A finished document in memory; `text` is UTF-8, ended with a zero byte. */
typedef struct spz_document spz_document;
SPZ_API const char *spz_document_text(const spz_document *document, size_t *length);
SPZ_API void spz_document_free(spz_document *document);
/* Writes the whole document under `path`, or not at all (written beside it, flushed, then renamed); NULL or "-" is standard
 * output. SPZ_CANNOT_WRITE. */
SPZ_API spz_status spz_document_save(const spz_document *document, const char *path, const spz_sink *sink);

/* All take readings in the order to be shown. SPZ_BAD_ARGUMENT for a format that the report doesn't have. */
SPZ_API spz_status spz_report_movements(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_sections(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_streams(const spz_reading *const *readings, size_t count, bool played, spz_format format,
                                      spz_document **out);
SPZ_API spz_status spz_report_passages(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_seating(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);

#endif
