#define _XOPEN_SOURCE 700 /* realpath */
/* A document in memory, and the one way by which it becomes a file: written under a name of its own in the same folder, flushed to
 * the disk, renamed. Whoever looks under the name asked for sees the old file or the whole new one. */
#include "writing/document.h"
#include "support/memory.h"
#include "support/message.h"
#include "support/path.h"
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

struct spz_document {
    char *text;
    size_t length;
};

spz_status document_take(Buffer *buffer, spz_document **out)
{
    spz_document *document = NULL;
    *out = NULL;
    buffer_add(buffer, "", 0); /* an empty document has its zero byte too */
    if (!buffer_failed(buffer) && !buffer_in_doubt(buffer))
        document = memory_get(sizeof *document);
    if (!document) {
        buffer_free(buffer);
        return SPZ_NO_MEMORY;
    }
    *document = (spz_document){buffer->text, buffer->length};
    buffer_init(buffer);
    *out = document;
    return SPZ_OK;
}

const char *spz_document_text(const spz_document *document, size_t *length)
{
    if (length)
        *length = document->length;
    return document->text;
}

void spz_document_free(spz_document *document)
{
    if (!document)
        return;
    memory_free(document->text);
    memory_free(document);
}

static spz_status complain(const spz_sink *sink, const char *path, int cause)
{
    spz_message place = {.severity = SPZ_ERROR, .file = path};
    message_send(sink, &place, "it can't be written: %s", message_cause(cause));
    return cause == ENOMEM ? SPZ_NO_MEMORY : SPZ_CANNOT_WRITE;
}

/* 0, or the cause as in errno. */
static int write_whole(int file, const char *text, size_t length)
{
    while (length > 0) {
        ssize_t done = write(file, text, length);
        if (done < 0 && errno == EINTR)
            continue;
        if (done < 0)
            return errno;
        text += done;
        length -= (size_t)done;
    }
    return 0;
}

/* Pipes, devices: nothing to rename onto. */
static int write_straight(const spz_document *document, const char *path)
{
    int file = open(path, O_WRONLY | O_NOCTTY);
    if (file < 0)
        return errno;
    int cause = write_whole(file, document->text, document->length);
    if (close(file) != 0 && !cause)
        cause = errno;
    return cause;
}

/* FNV-1a: tells the names of one run apart. */
static uint32_t digest(const char *text)
{
    uint32_t sum = 2166136261u;
    for (; *text; text++)
        sum = (sum ^ (unsigned char)*text) * 16777619u;
    return sum;
}

/* A name in the folder of `path` that no other run, and no other file of this run, uses at this moment; NULL when out of memory. */
static char *name_beside(const char *path)
{
    size_t folder = (size_t)(path_name(path) - path);
    size_t size = folder + 64;
    char *name = memory_get(size);
    if (name)
        snprintf(name, size, "%.*s.spezzato-%jd-%08x", (int)folder, path, (intmax_t)getpid(), (unsigned)digest(path));
    return name;
}

/* Files that runs which were killed while they wrote `path` have left beside it: of its digest, by a process that is no more. */
static void sweep(const char *path, const char *own)
{
    char folder[4096], left[4400];
    unsigned long sum;
    intmax_t process;
    char rest;
    int length = (int)(path_name(path) - path);
    if ((size_t)length >= sizeof folder)
        return;
    snprintf(folder, sizeof folder, "%.*s", length, path);
    DIR *entries = opendir(length ? folder : ".");
    for (struct dirent *entry; entries && (entry = readdir(entries)) != NULL;) {
        if (sscanf(entry->d_name, ".spezzato-%jd-%8lx%c", &process, &sum, &rest) != 2 || sum != digest(path) || process <= 0)
            continue;
        snprintf(left, sizeof left, "%s%s", folder, entry->d_name);
        if (strcmp(left, own) != 0 && kill((pid_t)process, 0) != 0 && errno == ESRCH)
            unlink(left);
    }
    if (entries)
        closedir(entries);
}

static int finish_file(int file, const spz_document *document, const struct stat *old)
{
    int cause = write_whole(file, document->text, document->length);
    if (!cause && old && fchmod(file, old->st_mode & 07777) != 0)
        cause = errno;
    if (!cause && fsync(file) != 0 && errno != EINVAL && errno != EROFS) /* some file systems have no fsync */
        cause = errno;
    if (close(file) != 0 && !cause)
        cause = errno;
    return cause;
}

static int write_and_rename(const spz_document *document, const char *path, const struct stat *old)
{
    char *name = name_beside(path);
    if (!name)
        return ENOMEM;
    int cause = 0;
    int file = open(name, O_WRONLY | O_CREAT | O_EXCL, 0666);
    if (file < 0 && errno == EEXIST) { /* left by a run that was killed and had our number */
        unlink(name);
        file = open(name, O_WRONLY | O_CREAT | O_EXCL, 0666);
    }
    if (file < 0)
        cause = errno;
    else {
        cause = finish_file(file, document, old);
        if (!cause && rename(name, path) != 0)
            cause = errno;
        if (cause)
            unlink(name);
    }
    sweep(path, name);
    memory_free(name);
    return cause;
}

static int save_file(const spz_document *document, const char *path)
{
    struct stat old;
    if (stat(path, &old) != 0)
        return errno == ENOENT ? write_and_rename(document, path, NULL) : errno;
    if (S_ISDIR(old.st_mode))
        return EISDIR;
    if (!S_ISREG(old.st_mode))
        return write_straight(document, path);
    if (access(path, W_OK) != 0)
        return errno;
    char *real = realpath(path, NULL); /* the file behind a link is replaced, the link stays */
    if (!real)
        return errno;
    int cause = write_and_rename(document, real, &old);
    free(real);
    return cause;
}

spz_status spz_document_save(const spz_document *document, const char *path, const spz_sink *sink)
{
    bool standard = !path || strcmp(path, "-") == 0;
    int cause = standard ? write_whole(STDOUT_FILENO, document->text, document->length) : save_file(document, path);
    return cause ? complain(sink, standard ? "standard output" : path, cause) : SPZ_OK;
}
