#include "season/results/result_cache.h"
#include "support/memory.h"
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define CACHE_MARK "spezzato cache 1" /* raise the number when the layout of the file changes */
enum { MARK_LINE = 128, PATH_MOST = 4096, ENTRY_MOST = 16 << 20 };

/* FOLDER/ab/cdef...: a folder for each first byte keeps folders short when a library of scores is in it. */
static bool entry_path(const char *folder, const LineHead *head, char path[PATH_MOST], size_t *folder_length)
{
    Sha256 sum;
    char name[SHA256_TEXT];
    sha256_begin(&sum);
    sha256_add_text(&sum, head->content);
    sha256_add_text(&sum, head->terms);
    sha256_end(&sum, name);
    *folder_length = strlen(folder) + 3;
    int length = snprintf(path, PATH_MOST, "%s/%.2s/%s", folder, name, name + 2);
    return length > 0 && length < PATH_MOST - 64;
}

static void mark_line(const char *text, size_t length, char line[MARK_LINE])
{
    Sha256 sum;
    char name[SHA256_TEXT];
    sha256_begin(&sum);
    sha256_add(&sum, text, length);
    sha256_end(&sum, name);
    snprintf(line, MARK_LINE, CACHE_MARK " %zu %s\n", length, name);
}

static bool read_whole(const char *path, Buffer *out)
{
    char piece[16384];
    size_t taken;
    FILE *file = fopen(path, "rb");
    if (!file)
        return false;
    while ((taken = fread(piece, 1, sizeof piece, file)) > 0 && out->length <= ENTRY_MOST)
        buffer_add(out, piece, taken);
    bool good = !ferror(file) && feof(file) && !buffer_failed(out) && out->text;
    fclose(file);
    return good;
}

/* Where the lines begin, when the first line tells the truth about them; NULL otherwise. */
static const char *check_mark(const Buffer *entry)
{
    const char *end = memchr(entry->text, '\n', entry->length);
    char line[MARK_LINE];
    if (!end)
        return NULL;
    size_t mark = (size_t)(end + 1 - entry->text);
    mark_line(end + 1, entry->length - mark, line);
    return strlen(line) == mark && memcmp(line, entry->text, mark) == 0 ? end + 1 : NULL;
}

ScoreResult *cache_find(const char *folder, const LineHead *head)
{
    char path[PATH_MOST];
    size_t folder_length;
    Buffer entry;
    buffer_init(&entry);
    ScoreResult *result = entry_path(folder, head, path, &folder_length) && read_whole(path, &entry) ? score_result_new() : NULL;
    const char *lines = result ? check_mark(&entry) : NULL;
    if (result && (!lines || !lines_read_result(lines, entry.length - (size_t)(lines - entry.text), head, result))) {
        score_result_free(result);
        result = NULL;
    }
    buffer_free(&entry);
    return result;
}

/* Makes every folder on the way that isn't there; what can't be made shows when the file is opened. */
static void make_folders(char *path, size_t length)
{
    for (size_t i = 1; i <= length; i++)
        if (path[i] == '/') {
            path[i] = '\0';
            mkdir(path, 0700);
            path[i] = '/';
        }
}

static bool write_all(int file, const char *text, size_t length)
{
    while (length) {
        ssize_t done = write(file, text, length);
        if (done < 0 && errno == EINTR)
            continue;
        if (done <= 0)
            return false;
        text += done;
        length -= (size_t)done;
    }
    return true;
}

/* No fsync: after a loss of power the entry may be torn, which its first line shows. */
static bool write_entry(const char *path, const char *mark, const Buffer *lines)
{
    char beside[PATH_MOST + 16];
    snprintf(beside, sizeof beside, "%s.XXXXXX", path);
    int file = mkstemp(beside);
    if (file < 0)
        return false;
    bool good = write_all(file, mark, strlen(mark)) && write_all(file, lines->text, lines->length);
    good = close(file) == 0 && good;
    if (good && rename(beside, path) == 0)
        return true;
    unlink(beside);
    return false;
}

bool cache_keep(const char *folder, const LineHead *head, const ScoreResult *result)
{
    char path[PATH_MOST], mark[MARK_LINE];
    size_t folder_length;
    Buffer lines;
    LineHead nameless = *head;
    nameless.file = ""; /* the same score may lie elsewhere tomorrow */
    if (!entry_path(folder, head, path, &folder_length))
        return false;
    buffer_init(&lines);
    lines_write(&lines, &nameless, result);
    bool good = !buffer_failed(&lines);
    if (good) {
        make_folders(path, folder_length);
        mark_line(lines.text, lines.length, mark);
        good = write_entry(path, mark, &lines);
    }
    buffer_free(&lines);
    return good;
}
