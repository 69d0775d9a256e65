/* The librarian's advice as directions in the score file: each text of the file is taken out, freed of earlier marks, read, marked and put back. */
#include "writing/document.h"
#include "editing/bytes/mark_encoding.h"
#include "editing/bytes/mark_file.h"
#include "editing/mark_insert.h"
#include "editing/mark_wishes.h"
#include "spezzato/sheets.h"
#include "support/memory.h"
#include "support/message.h"
#include <string.h>

typedef struct Job {
    const spz_settings *settings;
    const spz_sheet_options *options;
    const spz_sink *sink;
    bool marking;  /* false: marks are only taken out */
    size_t marks;
} Job;

static spz_status complain(const Job *job, const char *file, spz_status status, const char *cause)
{
    spz_message place = {.severity = SPZ_ERROR, .file = file};
    message_send(job->sink, &place, "%s", cause ? cause : spz_status_text(status));
    return status;
}

/* The wishes of one movement put into the text that holds it; `*marked` counts the directions that the text has. */
static spz_status mark_movement(Job *job, const spz_movement_reading *reading, size_t *marked, Buffer *text)
{
    AdviceList advice;
    Wishes wishes = {0};
    Buffer after = {0};
    Speaker speaker = {job->options->language, reading->sections};
    spz_status status = advice_find(reading, job->settings, job->options, &advice);
    if (!status)
        status = wishes_find(&speaker, &advice, text, &wishes);
    if (!status)
        status = mark_insert(text, reading->movement, wishes.list.at, wishes.list.count, *marked, &after);
    if (!status) {
        buffer_free(text);
        *text = after;
        *marked += wishes.list.count;
    } else
        buffer_free(&after);
    wishes_free(&wishes);
    advice_free(&advice);
    return status;
}

static spz_status mark_movements(Job *job, const char *name, const spz_reading *reading, Buffer *text)
{
    spz_status status = SPZ_OK;
    size_t marked = 0;
    for (size_t i = 0; i < spz_reading_count(reading) && !status; i++) {
        spz_movement_reading movement = spz_reading_at(reading, i);
        status = mark_movement(job, &movement, &marked, text);
    }
    job->marks += status ? 0 : marked;
    return status ? complain(job, name, status, status == SPZ_BAD_ARGUMENT ? "the house forbids the seating asked for" : NULL) : SPZ_OK;
}

/* Reads the text, which is freed of marks, and marks every movement of it. */
static spz_status mark_plain(Job *job, Encoding encoding, const char *name, Buffer *text)
{
    Buffer bytes; /* as a file holds them */
    spz_score *score = NULL;
    spz_reading *reading = NULL;
    buffer_init(&bytes);
    encoding_close(encoding, text->text, text->length, &bytes);
    spz_status status = buffer_failed(&bytes) ? complain(job, name, SPZ_NO_MEMORY, NULL)
                                              : spz_score_read_memory(bytes.text, bytes.length, name, job->sink, &score);
    buffer_free(&bytes);
    if (!status)
        status = spz_reading_of_score(score, job->settings, job->options->year, SPZ_TO_SEATING, job->sink, &reading);
    if (!status)
        status = mark_movements(job, name, reading, text);
    spz_reading_free(reading);
    return status;
}

/* `bytes` becomes the new text. */
static spz_status change_text(Job *job, const char *name, Buffer *bytes)
{
    Buffer text, plain;
    Encoding encoding = encoding_of(bytes->text, bytes->length);
    size_t taken = 0;
    if (encoding == ENCODING_OTHER)
        return complain(job, name, SPZ_NOT_XML, "nothing can be added in the encoding of this file; save it as UTF-8");
    buffer_init(&text);
    buffer_init(&plain);
    encoding_open(encoding, bytes->text, bytes->length, &text);
    spz_status status = buffer_failed(&text) ? SPZ_NO_MEMORY : mark_strip(&text, &plain, &taken);
    if (status)
        complain(job, name, status, NULL);
    else if (job->marking)
        status = mark_plain(job, encoding, name, &plain);
    else
        job->marks += taken;
    if (!status) {
        buffer_clear(bytes);
        encoding_close(encoding, buffer_text(&plain), plain.length, bytes);
        status = buffer_failed(bytes) ? complain(job, name, SPZ_NO_MEMORY, NULL) : SPZ_OK;
    }
    buffer_free(&plain);
    buffer_free(&text);
    return status;
}

static void free_texts(NewText *texts, size_t count)
{
    for (size_t i = 0; texts && i < count; i++)
        buffer_free(&texts[i].text);
    memory_free(texts);
}

static bool is_among(const NewText *texts, size_t count, const char *name)
{
    for (size_t i = 0; i < count; i++)
        if (!name || strcmp(texts[i].name, name) == 0)
            return true;
    return false;
}

/* Whether one text holds the whole score: it then goes by the score's name, which house rules know. */
static bool is_sole_text(const spz_score *score)
{
    const char *first = spz_movement_file(spz_score_movement(score, 0));
    size_t same = 0;
    while (same < spz_score_movement_count(score) && strcmp(spz_movement_file(spz_score_movement(score, same)), first) == 0)
        same++;
    return same == spz_score_movement_count(score);
}

/* Every text of the file that `score` was read from, changed; a text may hold several movements, and a collection may name one twice.
 * `*count`: texts. */
static spz_status change_texts(Job *job, const ScoreFile *file, const spz_score *score, NewText *texts, size_t *count)
{
    spz_status status = SPZ_OK;
    size_t movements = spz_score_movement_count(score), prefix = strlen(file->path) + 1;
    *count = 0;
    for (size_t i = 0; i < movements && !status; i++) {
        const char *name = spz_movement_file(spz_score_movement(score, i)); /* 'archive:member' */
        const char *member = file->compressed ? name + prefix : NULL;
        if (is_among(texts, *count, member))
            continue;
        NewText *text = &texts[(*count)++];
        text->name = member;
        status = score_file_text(file, text->name, &text->text);
        if (status)
            complain(job, name, status, NULL);
        else
            status = change_text(job, is_sole_text(score) ? file->path : name, &text->text);
    }
    return status;
}

static spz_status write_file(const Job *job, const ScoreFile *file, NewText *texts, size_t count, bool compressed, spz_document **out)
{
    Buffer whole;
    buffer_init(&whole);
    spz_status status = score_file_write(file, texts, count, compressed, &whole);
    if (!status)
        status = document_take(&whole, out);
    if (status)
        complain(job, file->path, status,
                 status == SPZ_BAD_ARGUMENT ? "it is a collection of several score files, which go into a compressed file only (a name that ends in .mxl)" : NULL);
    buffer_free(&whole);
    return status;
}

static spz_status change_file(Job *job, const char *path, bool compressed, spz_document **out)
{
    ScoreFile file;
    spz_score *score = NULL;
    spz_status status = score_file_open(&file, path, job->sink);
    if (status)
        return status;
    status = spz_score_read_memory(file.bytes.text, file.bytes.length, file.path, NULL, &score);
    if (status) /* once more, aloud: a good file is read again in pieces and would say its doubts twice */
        status = spz_score_read_memory(file.bytes.text, file.bytes.length, file.path, job->sink, &score);
    size_t count = score ? spz_score_movement_count(score) : 0;
    NewText *texts = count ? memory_resize(NULL, count, sizeof *texts) : NULL;
    if (texts)
        memset(texts, 0, count * sizeof *texts);
    if (!status && !texts)
        status = complain(job, path, SPZ_NO_MEMORY, NULL);
    size_t text_count = 0;
    if (!status)
        status = change_texts(job, &file, score, texts, &text_count);
    if (!status)
        status = write_file(job, &file, texts, text_count, compressed, out);
    free_texts(texts, text_count);
    spz_score_free(score);
    score_file_close(&file);
    return status;
}

spz_status spz_score_mark(const char *path, const spz_settings *settings, const spz_sheet_options *options, bool compressed,
                          const spz_sink *sink, spz_document **out, size_t *marks)
{
    spz_sheet_options usual = SPZ_SHEET_USUAL;
    spz_settings *defaults = NULL;
    *out = NULL;
    spz_status status = settings ? SPZ_OK : spz_settings_new(&defaults);
    Job job = {settings ? settings : defaults, options ? options : &usual, sink, true, 0};
    if (status)
        complain(&job, path, status, NULL);
    else
        status = change_file(&job, path, compressed, out);
    spz_settings_free(defaults);
    if (marks)
        *marks = job.marks;
    return status;
}

spz_status spz_score_unmark(const char *path, bool compressed, const spz_sink *sink, spz_document **out, size_t *marks)
{
    Job job = {NULL, NULL, sink, false, 0};
    *out = NULL;
    spz_status status = change_file(&job, path, compressed, out);
    if (marks)
        *marks = job.marks;
    return status;
}
