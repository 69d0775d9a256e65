/* The librarian's advice as directions in the score file: each text of the file is taken out, freed of earlier marks, read, marked and put back. */
#include "writing/document.h"
#include "editing/mark_encoding.h"
#include "editing/mark_file.h"
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

/* The text of one movement with its wishes fulfilled. */
static spz_status mark_reading(Job *job, const Buffer *plain, const spz_movement_reading *reading, Buffer *marked)
{
    AdviceList advice;
    Wishes wishes = {0};
    Speaker speaker = {job->options->language, reading->sections};
    spz_status status = advice_find(reading, job->settings, job->options, &advice);
    if (!status)
        status = wishes_find(&speaker, &advice, plain, &wishes);
    if (!status)
        status = mark_insert(plain, reading->movement, wishes.list.at, wishes.list.count, marked);
    job->marks += status ? 0 : wishes.list.count;
    wishes_free(&wishes);
    advice_free(&advice);
    return status;
}

/* Judges the movement of a text that is freed of marks, and marks it. */
static spz_status mark_movement(Job *job, const Buffer *plain, const char *name, const spz_movement *movement, Buffer *marked)
{
    spz_sections *sections = NULL;
    spz_findings *findings = NULL;
    spz_verdict *verdict = NULL;
    int year = job->options->year ? job->options->year : spz_movement_year(movement);
    spz_status status = spz_sections_find(movement, job->settings, job->sink, &sections);
    if (!status)
        status = spz_passages_find(sections, job->settings, job->sink, &findings);
    if (!status)
        status = spz_seating_judge(findings, job->settings, year, job->sink, &verdict);
    if (!status) {
        spz_movement_reading reading = {movement, sections, findings, verdict};
        status = mark_reading(job, plain, &reading, marked);
        if (status)
            complain(job, name, status, status == SPZ_BAD_ARGUMENT ? "there is no seating of the name asked for" : NULL);
    }
    spz_verdict_free(verdict);
    spz_findings_free(findings);
    spz_sections_free(sections);
    return status;
}

static spz_status mark_plain(Job *job, Encoding encoding, const Buffer *plain, const char *name, Buffer *marked)
{
    Buffer bytes; /* as a file holds them */
    spz_score *score = NULL;
    buffer_init(&bytes);
    encoding_close(encoding, plain->text, plain->length, &bytes);
    spz_status status = buffer_failed(&bytes) ? complain(job, name, SPZ_NO_MEMORY, NULL)
                                              : spz_score_read_memory(bytes.text, bytes.length, name, job->sink, &score);
    buffer_free(&bytes);
    if (!status)
        status = mark_movement(job, plain, name, spz_score_movement(score, 0), marked);
    spz_score_free(score);
    return status;
}

/* `bytes` becomes the new text. */
static spz_status change_text(Job *job, const char *name, Buffer *bytes)
{
    Buffer text, plain, marked;
    Encoding encoding = encoding_of(bytes->text, bytes->length);
    size_t taken = 0;
    if (encoding == ENCODING_OTHER)
        return complain(job, name, SPZ_NOT_XML, "nothing can be added in the encoding of this file; save it as UTF-8");
    buffer_init(&text);
    buffer_init(&plain);
    buffer_init(&marked);
    encoding_open(encoding, bytes->text, bytes->length, &text);
    spz_status status = buffer_failed(&text) ? SPZ_NO_MEMORY : mark_strip(&text, &plain, &taken);
    if (status)
        complain(job, name, status, NULL);
    else if (job->marking)
        status = mark_plain(job, encoding, &plain, name, &marked);
    else
        job->marks += taken;
    const Buffer *result = job->marking ? &marked : &plain;
    if (!status) {
        buffer_clear(bytes);
        encoding_close(encoding, result->text ? result->text : "", result->length, bytes);
        status = buffer_failed(bytes) ? complain(job, name, SPZ_NO_MEMORY, NULL) : SPZ_OK;
    }
    buffer_free(&marked);
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

/* Every text of the file that `score` was read from, changed. */
static spz_status change_texts(Job *job, const ScoreFile *file, const spz_score *score, NewText *texts)
{
    spz_status status = SPZ_OK;
    size_t count = spz_score_movement_count(score), prefix = strlen(file->path) + 1;
    for (size_t i = 0; i < count && !status; i++) {
        const char *name = spz_movement_file(spz_score_movement(score, i)); /* 'archive:member' */
        texts[i].name = file->compressed ? name + prefix : NULL;
        status = score_file_text(file, texts[i].name, &texts[i].text);
        if (status)
            complain(job, name, status, NULL);
        else
            status = change_text(job, name, &texts[i].text);
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
                 status == SPZ_BAD_ARGUMENT ? "it holds several scores, which go into a compressed file only (a name that ends in .mxl)" : NULL);
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
    status = spz_score_read_memory(file.bytes.text, file.bytes.length, path, NULL, &score);
    if (status) /* once more, aloud: a good file is read again in pieces and would say its doubts twice */
        status = spz_score_read_memory(file.bytes.text, file.bytes.length, path, job->sink, &score);
    size_t count = score ? spz_score_movement_count(score) : 0;
    NewText *texts = count ? memory_resize(NULL, count, sizeof *texts) : NULL;
    if (texts)
        memset(texts, 0, count * sizeof *texts);
    if (!status && !texts)
        status = complain(job, path, SPZ_NO_MEMORY, NULL);
    if (!status)
        status = change_texts(job, &file, score, texts);
    if (!status)
        status = write_file(job, &file, texts, count, compressed, out);
    free_texts(texts, count);
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
