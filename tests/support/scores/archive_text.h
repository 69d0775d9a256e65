/* archive_text.h - compressed scores for tests, whole and with faults. */
#ifndef TESTS_ARCHIVE_TEXT_H
#define TESTS_ARCHIVE_TEXT_H
#include <stdbool.h>
#include <stddef.h>

typedef struct ArchiveText {
    unsigned char *bytes;
    size_t size, capacity;
    struct {
        char name[64];
        size_t offset, packed, unpacked;
        unsigned long checksum;
        int method;
    } members[16];
    int count;
} ArchiveText;

#define CONTAINER(path) "<container><rootfiles><rootfile full-path=\"" path "\"/></rootfiles></container>"

void archive_text_add(ArchiveText *archive, const char *name, const void *text, size_t length, bool deflated);
void archive_text_add_string(ArchiveText *archive, const char *name, const char *text);
void archive_text_close(ArchiveText *archive); /* writes the directory */
void archive_text_free(ArchiveText *archive);
#endif
