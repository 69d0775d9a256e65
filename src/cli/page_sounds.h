/* page_sounds.h - the sounds that lie beside a conductor's page: its decisive passages in two seatings, from four seats. */
#ifndef CLI_PAGE_SOUNDS_H
#define CLI_PAGE_SOUNDS_H
#include "spezzato/spezzato.h"

enum { PAGE_SOUNDS_MOST = 96, PAGE_SOUND_NAME = 320 };
typedef struct PageSounds {
    spz_page_sound at[PAGE_SOUNDS_MOST];
    char files[PAGE_SOUNDS_MOST][PAGE_SOUND_NAME];
    size_t count;
} PageSounds;

/* Makes and writes them into `folder` for the page of that name; what can't be heard is left out after one line. Exit status. */
int page_sounds_make(const spz_reading *reading, const spz_report_options *options, const char *folder, const char *page, PageSounds *out);
#endif
