/* engraver_place.h - the folder of what engraves passages. What lies there is run as a program: so it is the folder that the user names, or the
 * one fixed when this program was installed or built, and never one that happens to lie in the working folder. */
#ifndef CLI_ENGRAVER_PLACE_H
#define CLI_ENGRAVER_PLACE_H

/* `given` is the folder of --engraver, or "none", or NULL: then SPEZZATO_ENGRAVER counts, named from the root, then the fixed one. NULL where
 * nothing can be engraved; unless that was asked for, one line says so. */
const char *engraver_place(const char *given);
#endif
