/* linked_files.h - links of a collection (MusicXML opus) to the files beside it in the archive. */
#ifndef READER_LINKED_FILES_H
#define READER_LINKED_FILES_H
#include <stdbool.h>
#include <stddef.h>

/* The path in the archive that `link`, written in the file `from`, leads to: counted from the folder of `from` (from the top when it begins
 * with '/'), with '.', '..' and %-escapes resolved (RFC 3986, 2.1 and 5.2). false when it leads out of the archive or is too long. */
bool link_path(const char *from, const char *link, char *path, size_t size);
#endif
