#include "support/plain_locale.h"
#include <pthread.h>

static locale_t plain;
static pthread_once_t made = PTHREAD_ONCE_INIT;

/* Lives as long as the process. */
static void make(void)
{
    plain = newlocale(LC_ALL_MASK, "C", (locale_t)0);
}

locale_t plain_locale_enter(void)
{
    pthread_once(&made, make);
    return plain ? uselocale(plain) : (locale_t)0;
}

void plain_locale_leave(locale_t before)
{
    if (before)
        uselocale(before);
}
