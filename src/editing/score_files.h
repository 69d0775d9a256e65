/* score_files.h - questions that several reports ask of verdicts. */
#ifndef EDITING_SCORE_FILES_H
#define EDITING_SCORE_FILES_H
#include "spezzato/reading.h"

/* True when every movement was read as far as its verdict. */
bool judged_all(const spz_reading *const *readings, size_t count);
#endif
