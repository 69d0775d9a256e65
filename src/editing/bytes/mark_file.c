#include "editing/bytes/mark_file.h"
#include "editing/bytes/mark_zip.h"
#include "writing/markup.h"
#include "support/memory.h"
#include "support/message.h"
#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

static const char media_type[] = "application/vnd.recordare.musicxml"; /* MusicXML 4.0, compressed files */
static const char score_type[] = "application/vnd.recordare.musicxml+xml";
static const char mimetype_name[] = "mimetype";
static const char container_name[] = "META-INF/container.xml";
static const char score_name[] = "score.musicxml";

static spz_status complain(const ScoreFile *file, const spz_sink *sink, spz_status status, const char *cause)
{
    spz_message place = {.severity = SPZ_ERROR, .file = file->path};
    message_send(sink, &place, "%s", cause);
    return status;
}

static spz_status read_all(ScoreFile *file, FILE *from, const spz_sink *sink)
{
    enum { PIECE = 1 << 16 };
    char *piece = memory_get(PIECE);
    size_t got = piece ? 1 : 0;
    while (got > 0 && file->bytes.length <= limit_bytes && !buffer_failed(&file->bytes)) {
        got = fread(piece, 1, PIECE, from);
        buffer_add(&file->bytes, piece, got);
    }
    bool starved = !piece || buffer_failed(&file->bytes);
    memory_free(piece);
    if (starved)
        return complain(file, sink, SPZ_NO_MEMORY, spz_status_text(SPZ_NO_MEMORY));
    if (ferror(from))
        return complain(file, sink, SPZ_CANNOT_READ, "the file can't be read to its end");
    if (file->bytes.length > limit_bytes)
        return complain(file, sink, SPZ_OVER_LIMIT, "the file is larger than any score");
    return file->bytes.length ? SPZ_OK : complain(file, sink, SPZ_EMPTY, "the file is empty");
}

static spz_status open_archive(ScoreFile *file, const spz_sink *sink)
{
    file->compressed = archive_looks_like(file->bytes.text, file->bytes.length);
    if (!file->compressed)
        return SPZ_OK;
    spz_status status = archive_open(&file->archive, file->bytes.text, file->bytes.length);
    return status ? complain(file, sink, status, file->archive.fault ? file->archive.fault : spz_status_text(status)) : SPZ_OK;
}

spz_status score_file_open(ScoreFile *file, const char *path, const spz_sink *sink)
{
    memset(file, 0, sizeof *file);
    bool piped = strcmp(path, "-") == 0;
    file->path = piped ? "standard input" : path;
    FILE *from = piped ? stdin : fopen(path, "rb");
    if (!from) {
        char cause[160];
        snprintf(cause, sizeof cause, "the file can't be opened: %s", message_cause(errno));
        return complain(file, sink, SPZ_CANNOT_OPEN, cause);
    }
    spz_status status = read_all(file, from, sink);
    fclose(from);
    if (!status)
        status = open_archive(file, sink);
    if (status)
        score_file_close(file);
    return status;
}

void score_file_close(ScoreFile *file)
{
    archive_close(&file->archive);
    buffer_free(&file->bytes);
}

spz_status score_file_text(const ScoreFile *file, const char *name, Buffer *text)
{
    if (file->compressed)
        return archive_text(&file->archive, name, SIZE_MAX, text);
    buffer_add(text, file->bytes.text, file->bytes.length);
    return buffer_failed(text) ? SPZ_NO_MEMORY : SPZ_OK;
}

static const NewText *new_text_of(const NewText *texts, size_t count, const ArchiveMember *member)
{
    for (size_t i = 0; i < count; i++)
        if (strlen(texts[i].name) == member->name_length && memcmp(texts[i].name, member->name, member->name_length) == 0)
            return &texts[i];
    return NULL;
}

static spz_status copy_member(Zip *zip, const ScoreFile *file, const ArchiveMember *member)
{
    ArchiveStream stream;
    spz_status status = archive_stream_open(&stream, &file->archive, member);
    if (!status)
        zip_packed(zip, (ZipMember){member->name, member->name_length, member->checksum, member->packed, member->unpacked, 0, (uint16_t)member->method,
                                     member->date},
                   stream.data);
    archive_stream_close(&stream);
    return status;
}

static spz_status rewrite_archive(const ScoreFile *file, const NewText *texts, size_t count, Zip *zip)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < file->archive.count && !status; i++) {
        const ArchiveMember *member = &file->archive.members[i];
        const NewText *text = new_text_of(texts, count, member);
        if (text)
            zip_deflated(zip, member->name, member->name_length, text->text.text, text->text.length);
        else
            status = copy_member(zip, file, member);
    }
    return status;
}

/* The table of contents of a compressed score: the score, and nothing else. */
static void add_container(Zip *zip)
{
    Markup html;
    Buffer text = {0};
    markup_begin(&html, &text);
    markup_xml_head(&html);
    markup_open(&html, "container");
    markup_open(&html, "rootfiles");
    markup_open(&html, "rootfile");
    markup_put(&html, "full-path", score_name);
    markup_put(&html, "media-type", score_type);
    markup_close_void(&html);
    markup_close(&html);
    markup_close_line(&html);
    markup_end(&html);
    zip->failed = zip->failed || buffer_failed(&text);
    zip_deflated(zip, container_name, strlen(container_name), buffer_text(&text), text.length);
    buffer_free(&text);
}

spz_status score_file_write(const ScoreFile *file, NewText *texts, size_t count, bool compressed, Buffer *out)
{
    spz_status status = SPZ_OK;
    Zip zip;
    if (!compressed) {
        if (count != 1)
            return SPZ_BAD_ARGUMENT;
        buffer_add(out, texts[0].text.text, texts[0].text.length);
        return buffer_failed(out) ? SPZ_NO_MEMORY : SPZ_OK;
    }
    zip_begin(&zip, out);
    if (file->compressed) /* with a media type where it had one */
        status = rewrite_archive(file, texts, count, &zip);
    else {
        zip_stored(&zip, mimetype_name, strlen(mimetype_name), media_type, strlen(media_type));
        add_container(&zip);
        zip_deflated(&zip, score_name, strlen(score_name), texts[0].text.text, texts[0].text.length);
    }
    return zip_end(&zip) || status ? status : SPZ_NO_MEMORY;
}
