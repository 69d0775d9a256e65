/* hearing_line.h - from where a listener hears each section, in degrees from straight ahead: a dot each on a line. The dots carry their degrees for
 * every seat, so that a script can move them; they stand as from the middle. */
#ifndef PAGES_DRAWINGS_HEARING_LINE_H
#define PAGES_DRAWINGS_HEARING_LINE_H
#include "spezzato/language.h"
#include "spezzato/stage.h"
#include "writing/markup.h"

void hearing_line(Markup *html, spz_language language, const spz_plan *plan);
#endif
