#include "cli/places/sound_place.h"
#include <stddef.h>

/* Fixed when building (Makefile): what lies there is run, so it is never one that happens to lie in the working folder. */
const char *sound_place(void)
{
#ifdef SPEZZATO_SOUND_PLACE
    return SPEZZATO_SOUND_PLACE;
#else
    return NULL;
#endif
}
