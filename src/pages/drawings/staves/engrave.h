/* engrave.h - excerpts in MusicXML as engraved notes, by the program in the folder engraver/ of pages/web (its package.json names what does it). The
 * program is started directly, never through a shell; each engraving is kept in a cache under the digest of what it was made from. */
#ifndef PAGES_DRAWINGS_ENGRAVE_H
#define PAGES_DRAWINGS_ENGRAVE_H
#include "spezzato/status.h"
#include "support/buffer.h"
#include <stdbool.h>

/* Fills drawings[i] (SVG) for every excerpt that has a text; a drawing stays empty where the excerpt can't be engraved. `folder` holds engrave.mjs;
 * `cache` is a folder or NULL. Only SPZ_NO_MEMORY is an error: without engraver there are no drawings. */
spz_status engrave_all(const char *folder, const char *cache, const Buffer *excerpts, Buffer *drawings, size_t count);
#endif
