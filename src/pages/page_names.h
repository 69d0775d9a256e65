/* page_names.h - which page is whose. */
#ifndef PAGES_PAGE_NAMES_H
#define PAGES_PAGE_NAMES_H
#include "spezzato/report.h"

/* Of `names` where the score is among them, else as spz_report_page_name has it (in `out`). `names` may be NULL. */
const char *page_name_of(const spz_page_names *names, const char *path, char *out, size_t size);
#endif
