/* container.h - META-INF/container.xml of a compressed score: which member is the score. */
#ifndef READER_CONTAINER_H
#define READER_CONTAINER_H
#include "reader/files/archive.h"

/* The first rootfile that is MusicXML (or has no media type). SPZ_OK with `path` set, SPZ_BAD_ARCHIVE with `fault` set, SPZ_NO_MEMORY. */
enum { CONTAINER_PATH = 1024 };
spz_status container_find_score(const Archive *archive, char path[CONTAINER_PATH], const char **fault);
#endif
