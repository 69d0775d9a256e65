/* heard.h - what is kept of a score: its movements with their parts, passages, entries, seatings and terms, as rows. */
#ifndef LIBRARY_HEARD_H
#define LIBRARY_HEARD_H
#include "spezzato/reading.h"
#include "store/transactions.h"
#include "support/sha256.h"

typedef struct HeardFile { /* a score's file as it was when it was read */
    const char *path;
    char content[SHA256_TEXT], terms[SHA256_TEXT];
    long long bytes, changed; /* as in the table `file` */
} HeardFile;

/* Where the terms and the content are known already, its number; else 0. Within a transaction, as are the others. */
long long heard_find(Store *store, const char *content, const char *terms);
/* Keeps all of it; returns its number. */
long long heard_keep(Store *store, const HeardFile *file, const spz_reading *reading, int year);
/* Says that the file holds that score, or (`problem`) none; a score that no file holds any more goes, and a work without scores. */
void heard_file(Store *store, const HeardFile *file, long long score, const char *problem);
/* Scores and works that no file leads to. */
void heard_sweep(Store *store);
#endif
