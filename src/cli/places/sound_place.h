/* sound_place.h - the library of sound that was built or installed with this program; NULL where it was built without. */
#ifndef CLI_SOUND_PLACE_H
#define CLI_SOUND_PLACE_H
const char *sound_place(void);
#endif
