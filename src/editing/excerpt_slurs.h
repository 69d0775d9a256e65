/* excerpt_slurs.h - slurs that begin or end outside the bars of an excerpt. */
#ifndef EDITING_EXCERPT_SLURS_H
#define EDITING_EXCERPT_SLURS_H
#include "support/buffer.h"

/* Adds the bars of one part to `out`, every byte but the slurs of which only one end stands in them: joined to the next slur of the same
 * number they would be drawn across what isn't slurred. */
void excerpt_add_whole_slurs(const Buffer *bars, Buffer *out);
#endif
