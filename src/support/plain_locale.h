/* plain_locale.h - the "C" locale of the standard library (C11, 7.11.1.1), for calls whose result must not hang on the host's language. */
#ifndef SUPPORT_PLAIN_LOCALE_H
#define SUPPORT_PLAIN_LOCALE_H
#include <locale.h>

/* Takes the calling thread into the plain locale and back; other threads and setlocale's choice are untouched (POSIX.1-2008, uselocale). */
locale_t plain_locale_enter(void);
void plain_locale_leave(locale_t before);
#endif
