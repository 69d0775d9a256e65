/* print_picture.h - a drawing for print: SVG to PDF or EPS, by rsvg-convert (librsvg), which is run as a program. */
#ifndef PAGES_SHEETS_PRINT_PICTURE_H
#define PAGES_SHEETS_PRINT_PICTURE_H
#include "spezzato/sheets.h"
#include "support/buffer.h"

/* The picture becomes what is asked for. SPZ_BAD_ARGUMENT where that can't be made. */
spz_status print_picture(spz_picture form, Buffer *picture);
#endif
