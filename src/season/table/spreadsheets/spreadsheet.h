/* spreadsheet.h - a sheet of a spreadsheet file as the text of a table: OpenDocument (.ods; OASIS OpenDocument 1.3 part 3) and Office Open XML (.xlsx; ECMA-376
 * part 1). Both are zip archives of XML. */
#ifndef SEASON_TABLE_SPREADSHEET_H
#define SEASON_TABLE_SPREADSHEET_H
#include "spezzato/status.h"
#include "support/buffer.h"
#include <stdbool.h>

bool spreadsheet_is(const char *bytes, size_t length);
/* The sheet of that name (NULL: the first) as comma-separated values, each in quotation marks; row n of the sheet is line n. Dates and times as ISO 8601
 * writes them. SPZ_BAD_ARCHIVE, SPZ_OVER_LIMIT, SPZ_BAD_SETTINGS (no spreadsheet, or no such sheet), SPZ_NO_MEMORY; `fault` then gets the cause. */
spz_status spreadsheet_text(const char *bytes, size_t length, const char *sheet, Buffer *csv, Buffer *fault);
#endif
