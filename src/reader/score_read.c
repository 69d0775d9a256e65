/* score_read.c - a file or a piece of memory becomes a score: told apart by its first bytes, plain XML streamed, archives unpacked as
 * they are read, so that the XML never lies in memory as a whole. */
#include "reader/files/archive.h"
#include "reader/files/container.h"
#include "reader/files/foreign_files.h"
#include "reader/files/linked_files.h"
#include "reader/reader.h"
#include "support/buffer.h"
#include "support/message.h"
#include "support/numbers.h"
#include <errno.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static const Ticks first_per_crotchet = 10080; /* 2^5 * 3^2 * 5 * 7: a 128th, and the usual tuplets of it */

/* What is read from: `ahead` holds the first bytes, taken to see what the file is. */
typedef struct FileSource {
    FILE *file;
    char ahead[FOREIGN_LOOK];
    int ahead_count, ahead_given;
    bool failed;
    char buffer[32 * 1024]; /* a score has millions of bytes: few, large reads */
} FileSource;

typedef struct MemorySource {
    const char *at;
    size_t left;
} MemorySource;

typedef struct Job {
    Score *score;
    const spz_sink *sink;
    const char *name;
} Job;

static int read_file(void *context, char *buffer, int length)
{
    FileSource *source = context;
    int got = 0;
    while (source->ahead_given < source->ahead_count && got < length)
        buffer[got++] = source->ahead[source->ahead_given++];
    if (got < length)
        got += (int)fread(buffer + got, 1, (size_t)(length - got), source->file);
    source->failed = ferror(source->file) != 0;
    return source->failed ? -1 : got;
}

static int read_memory(void *context, char *buffer, int length)
{
    MemorySource *source = context;
    size_t got = source->left < (size_t)length ? source->left : (size_t)length;
    memcpy(buffer, source->at, got);
    source->at += got;
    source->left -= got;
    return (int)got;
}

static spz_status complain(const Job *job, spz_status status, const char *format, ...) __attribute__((format(printf, 3, 4)));
static spz_status complain(const Job *job, spz_status status, const char *format, ...)
{
    char text[400];
    va_list list;
    spz_message place = {.severity = SPZ_ERROR, .file = job->name};
    va_start(list, format);
    number_format(text, sizeof text, format, list);
    va_end(list);
    message_send(job->sink, &place, "%s", text);
    return status;
}

static spz_status no_memory(const Job *job)
{
    return complain(job, SPZ_NO_MEMORY, "%s", spz_status_text(SPZ_NO_MEMORY));
}

static void release_reader(Reader *reader)
{
    for (size_t i = 0; i < reader->parts.count; i++) {
        PartDraft *part = &reader->parts.at[i];
        array_free(&part->notes);
        array_free(&part->marks);
        array_free(&part->voices);
        array_free(&part->filled);
        array_free(&part->measures);
        array_free(&part->pages);
    }
    array_free(&reader->parts);
    array_free(&reader->bars);
    array_free(&reader->pages);
    array_free(&reader->titles.on_pages);
    memory_free(reader);
}

static Reader *new_reader(const Job *job, const char *file)
{
    Reader *reader = memory_zeroed(1, sizeof *reader);
    if (!reader)
        return NULL;
    reader->score = job->score;
    reader->sink = job->sink;
    reader->file = file;
    reader->per_crotchet = first_per_crotchet;
    reader->place.part = reader->place.bar = -1;
    reader->place.page = 1;
    return reader;
}

/* Reads one XML stream and adds its movements, or the links it holds, which become the caller's. */
static spz_status read_stream(const Job *job, const char *file, ReadBytes read, void *context, OpusLinks *links)
{
    Reader *reader = new_reader(job, file);
    if (!reader)
        return no_memory(job);
    spz_status status = sax_read(reader, read, context);
    if (status == SPZ_OK && reader->opus.seen)
        *links = reader->opus;
    else {
        if (status == SPZ_OK)
            status = assemble(reader);
        array_free(&reader->opus.names);
    }
    release_reader(reader);
    return status;
}

static spz_status read_plain(const Job *job, ReadBytes read, void *context)
{
    OpusLinks links = {{NULL, 0, 0}, false};
    spz_status status = read_stream(job, job->name, read, context, &links);
    if (status == SPZ_OK && links.seen)
        status = complain(job, SPZ_NOT_MUSICXML, "this names other files with scores; name the scores themselves");
    array_free(&links.names);
    return status;
}

static const char nothing_there[] = "the compressed file says that its score is '%.200s', but holds no such file";

/* The first member that may be a score, by its name. */
static const ArchiveMember *likely_score(const Archive *archive)
{
    for (size_t i = 0; i < archive->count; i++) {
        const ArchiveMember *member = &archive->members[i];
        bool about = member->name_length >= 9 && memcmp(member->name, "META-INF/", 9) == 0;
        if (!about && member->name_length > 4 && memcmp(member->name + member->name_length - 3, "xml", 3) == 0)
            return member;
    }
    return NULL;
}

/* Of the score that the archive itself names. */
static spz_status complain_missing(const Job *job, const Archive *archive, const char *path)
{
    const ArchiveMember *likely = likely_score(archive);
    if (!likely)
        return complain(job, SPZ_BAD_ARCHIVE, nothing_there, path);
    return complain(job, SPZ_BAD_ARCHIVE, "the compressed file says that its score is '%.200s', but holds no such file; '%.*s' in it may be meant: unpack that and give it by itself", path,
                    (int)(likely->name_length < 200 ? likely->name_length : 200), likely->name);
}

static spz_status read_member(const Job *job, const Archive *archive, const char *path, OpusLinks *links)
{
    const ArchiveMember *member = archive_find(archive, path);
    ArchiveStream stream;
    if (!member)
        return complain(job, SPZ_BAD_ARCHIVE, nothing_there, path);
    const char *file = arena_format(&job->score->arena, "%s:%s", job->name, path);
    if (!file)
        return no_memory(job);
    spz_status status = archive_stream_open(&stream, archive, member);
    if (status == SPZ_OK)
        status = read_stream(job, file, archive_stream_read, &stream, links);
    if (stream.status != SPZ_OK)
        status = complain(job, stream.status, "%s", stream.fault);
    archive_stream_close(&stream);
    return status;
}

/* The file that a collection means: counted from its own folder, else by the very name. */
static const char *linked_file(const Archive *archive, const char *from, const char *link, char path[CONTAINER_PATH])
{
    return link_path(from, link, path, CONTAINER_PATH) && archive_find(archive, path) ? path : link;
}

/* What a collection may still read, however its links run. */
typedef struct Allowance {
    int depth, scores;
} Allowance;

static spz_status read_links(const Job *job, const Archive *archive, const char *from, const OpusLinks *links, Allowance *left);

static spz_status read_link(const Job *job, const Archive *archive, const char *file, Allowance *left)
{
    OpusLinks deeper = {{NULL, 0, 0}, false};
    if (left->scores-- == 0)
        return complain(job, SPZ_OVER_LIMIT, "the collection names more than %d scores", LIMIT_LINKS);
    spz_status status = read_member(job, archive, file, &deeper);
    if (status == SPZ_OK && deeper.seen)
        status = read_links(job, archive, file, &deeper, left);
    array_free(&deeper.names);
    return status;
}

/* All scores that the collection `from` links, in its order, and those of the collections that it links. */
static spz_status read_links(const Job *job, const Archive *archive, const char *from, const OpusLinks *links, Allowance *left)
{
    spz_status status = SPZ_OK;
    if (left->depth-- == 0)
        return complain(job, SPZ_OVER_LIMIT, "the collections in it name one another more than %d deep", LIMIT_LINK_DEPTH);
    for (size_t i = 0; i < links->names.count && status == SPZ_OK; i++) {
        char path[CONTAINER_PATH];
        status = read_link(job, archive, linked_file(archive, from, links->names.at[i], path), left);
    }
    left->depth++;
    return status;
}

static spz_status read_archive(const Job *job, const void *bytes, size_t size)
{
    Archive archive;
    OpusLinks links = {{NULL, 0, 0}, false};
    char path[CONTAINER_PATH];
    Allowance left = {LIMIT_LINK_DEPTH, LIMIT_LINKS};
    const char *fault = NULL;
    spz_status status = archive_open(&archive, bytes, size);
    if (status != SPZ_OK)
        return complain(job, status, "%s", archive.fault ? archive.fault : spz_status_text(status));
    status = container_find_score(&archive, path, &fault);
    if (status != SPZ_OK)
        complain(job, status, "%s", status == SPZ_BAD_ARCHIVE ? fault : spz_status_text(status));
    else
        status = archive_find(&archive, path) ? read_member(job, &archive, path, &links) : complain_missing(job, &archive, path);
    if (status == SPZ_OK && links.seen)
        status = read_links(job, &archive, path, &links, &left);
    if (status == SPZ_OK && job->score->movement_count == 0)
        status = complain(job, SPZ_EMPTY, "the collection names no score");
    array_free(&links.names);
    archive_close(&archive);
    return status;
}

/* libxml2 wants to be set up once, by one thread alone, before several use it. */
static pthread_once_t parser_set_up = PTHREAD_ONCE_INIT;

static spz_status new_score(Job *job, const char *name)
{
    pthread_once(&parser_set_up, xmlInitParser);
    Score *score = memory_zeroed(1, sizeof *score);
    if (score) {
        arena_init(&score->arena);
        score->file = arena_string(&score->arena, name ? name : "");
    }
    if (!score || !score->file) {
        memory_free(score);
        return no_memory(job);
    }
    job->score = score;
    job->name = score->file;
    return SPZ_OK;
}

/* The movements of all texts of a file are counted together. */
static spz_status hand_over(Job *job, spz_status status, spz_score **out)
{
    for (size_t i = 0; status == SPZ_OK && i < job->score->movement_count; i++) {
        job->score->movements[i].score = job->score->file;
        job->score->movements[i].number = i + 1;
    }
    if (status == SPZ_OK)
        *out = job->score;
    else
        spz_score_free(job->score);
    return status;
}

/* NULL where it may be XML; else it has been said what it seems to be. */
static const char *refuse_foreign(const Job *job, const void *bytes, size_t count, spz_status *status)
{
    const char *sentence = foreign_file(bytes, count, status);
    if (sentence)
        complain(job, *status, "%s", sentence);
    return sentence;
}

spz_status spz_score_read_memory(const void *data, size_t size, const char *name, const spz_sink *sink, spz_score **out)
{
    Job job = {NULL, sink, name};
    *out = NULL;
    spz_status status = new_score(&job, name);
    if (status != SPZ_OK)
        return status;
    MemorySource source = {data, size};
    if (size == 0)
        status = complain(&job, SPZ_EMPTY, "the file is empty");
    else if (archive_looks_like(data, size))
        status = read_archive(&job, data, size);
    else if (!refuse_foreign(&job, data, size, &status))
        status = read_plain(&job, read_memory, &source);
    return hand_over(&job, status, out);
}

/* The whole packed file, which is small beside the score it holds. */
static spz_status read_archive_file(const Job *job, FileSource *source)
{
    enum { PIECE = 1 << 16 };
    Buffer bytes = {0};
    char piece[PIECE];
    spz_status status = SPZ_OK;
    for (int more; status == SPZ_OK && (more = read_file(source, piece, PIECE)) > 0;) {
        buffer_add(&bytes, piece, (size_t)more);
        if (bytes.length > limit_archive_bytes)
            status = complain(job, SPZ_OVER_LIMIT, "the compressed file is larger than any score");
        else if (buffer_failed(&bytes))
            status = no_memory(job);
    }
    if (status == SPZ_OK)
        status = source->failed ? complain(job, SPZ_CANNOT_READ, "the file can't be read to its end") : read_archive(job, bytes.text, bytes.length);
    buffer_free(&bytes);
    return status;
}

static spz_status read_open_file(const Job *job, FileSource *source)
{
    source->ahead_count = (int)fread(source->ahead, 1, sizeof source->ahead, source->file);
    if (ferror(source->file))
        return complain(job, SPZ_CANNOT_READ, "the file can't be read: %s", message_cause(errno));
    if (source->ahead_count == 0)
        return complain(job, SPZ_EMPTY, "the file is empty");
    if (archive_looks_like(source->ahead, (size_t)source->ahead_count))
        return read_archive_file(job, source);
    spz_status status;
    if (refuse_foreign(job, source->ahead, (size_t)source->ahead_count, &status))
        return status;
    status = read_plain(job, read_file, source);
    return source->failed ? complain(job, SPZ_CANNOT_READ, "the file can't be read to its end") : status;
}

spz_status spz_score_read(const char *path, const spz_sink *sink, spz_score **out)
{
    bool piped = strcmp(path, "-") == 0;
    Job job = {NULL, sink, piped ? "standard input" : path};
    FileSource source;
    *out = NULL;
    memset(&source, 0, offsetof(FileSource, buffer));
    source.file = piped ? stdin : fopen(path, "rb");
    if (!source.file)
        return complain(&job, SPZ_CANNOT_OPEN, "the file can't be opened: %s", message_cause(errno));
    if (!piped) /* its buffer has to live on */
        setvbuf(source.file, source.buffer, _IOFBF, sizeof source.buffer);
    spz_status status = new_score(&job, job.name);
    if (status == SPZ_OK)
        status = hand_over(&job, read_open_file(&job, &source), out);
    if (!piped)
        fclose(source.file);
    return status;
}
