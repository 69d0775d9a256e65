#include "season/results/stored_lines.h"
#include "support/message.h"
#include "support/utf8.h"
#include <errno.h>
#include <stdio.h>
#include <string.h>

static const char *key_of(const LineHead *head, Arena *arena)
{
    return arena_format(arena, "%s\n%s", head->file, head->terms);
}

/* Begins a score anew: first seen, or written once more with another content. */
static bool reset(StoredScore *kept, const LineRead *line, Arena *arena)
{
    array_free(&kept->messages);
    *kept = (StoredScore){.head = line->head, .of = line->of, .status = line->status};
    kept->movements = arena_take(arena, line->of + 1, sizeof *kept->movements);
    kept->seen = arena_take(arena, line->of + 1, sizeof *kept->seen);
    return kept->movements && kept->seen;
}

static StoredScore *find_or_add(KeptLines *lines, const LineRead *line)
{
    const char *key = key_of(&line->head, &lines->arena);
    long long place = key ? index_find(&lines->by_file, key) : INDEX_NOWHERE;
    if (!key || (place < 0 && (!array_reserve(&lines->list) || !index_add(&lines->by_file, key, lines->list.count))))
        return NULL;
    if (place < 0) {
        lines->list.at[lines->list.count] = (StoredScore){0};
        place = (long long)lines->list.count++;
        return reset(&lines->list.at[place], line, &lines->arena) ? &lines->list.at[place] : NULL;
    }
    StoredScore *kept = &lines->list.at[place];
    bool same = strcmp(kept->head.content, line->head.content) == 0 && kept->of == line->of;
    return same || reset(kept, line, &lines->arena) ? kept : NULL;
}

static spz_status add_line(KeptLines *lines, LineRead *line)
{
    StoredScore *kept = find_or_add(lines, line);
    if (!kept)
        return SPZ_NO_MEMORY;
    size_t place = line->number ? line->number - 1 : 0;
    if (kept->seen[place]) /* the same line twice */
        return SPZ_OK;
    kept->seen[place] = true;
    kept->movements[place] = line->movement;
    kept->count += line->of != 0;
    kept->messages_left_out += line->messages_left_out;
    for (size_t i = 0; i < line->messages.count; i++)
        if (!array_push(&kept->messages, line->messages.at[i]))
            return SPZ_NO_MEMORY;
    return SPZ_OK;
}

static spz_status take_text(KeptLines *lines, const char *path, const Buffer *text, const spz_sink *sink)
{
    spz_status status = SPZ_OK;
    const char *at = text->text, *end = text->text + text->length;
    for (long number = 1; status == SPZ_OK && at < end; number++) {
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        size_t length = stop ? (size_t)(stop - at) : (size_t)(end - at);
        LineRead line;
        spz_message place = {.severity = SPZ_DOUBT, .file = path, .line = number};
        if (line_read(at, length, &lines->arena, &line)) {
            status = add_line(lines, &line);
            array_free(&line.messages);
        } else if (length)
            message_send(sink, &place, "this line is damaged or of another kind; its score is read anew");
        at += length + (stop != NULL);
    }
    return status;
}

static spz_status load(FILE *file, Buffer *text)
{
    char piece[65536];
    size_t taken;
    while ((taken = fread(piece, 1, sizeof piece, file)) > 0)
        buffer_add(text, piece, taken);
    return buffer_failed(text) ? SPZ_NO_MEMORY : ferror(file) ? SPZ_CANNOT_READ : SPZ_OK;
}

spz_status stored_lines_read(KeptLines *lines, const char *path, const spz_sink *sink)
{
    bool standard = strcmp(path, "-") == 0;
    FILE *file = standard ? stdin : fopen(path, "rb");
    spz_message place = {.severity = SPZ_ERROR, .file = standard ? "standard input" : path};
    if (!file) {
        message_send(sink, &place, "the lines can't be opened: %s", message_cause(errno));
        return SPZ_CANNOT_OPEN;
    }
    Buffer text;
    buffer_init(&text);
    spz_status status = load(file, &text);
    if (status == SPZ_OK && text.length)
        status = take_text(lines, place.file, &text, sink);
    else if (status == SPZ_CANNOT_READ)
        message_send(sink, &place, "the lines can't be read to their end: %s", message_cause(errno));
    buffer_free(&text);
    if (!standard)
        fclose(file);
    return status;
}

const StoredScore *stored_lines_find(const KeptLines *lines, const LineHead *head)
{
    char key[8192], name[4096];
    int length = snprintf(key, sizeof key, "%s\n%s", utf8_mend(head->file, name, sizeof name), head->terms); /* lines are UTF-8 throughout */
    long long place = length > 0 && (size_t)length < sizeof key ? index_find(&lines->by_file, key) : INDEX_NOWHERE;
    if (place < 0)
        return NULL;
    const StoredScore *kept = &lines->list.at[place];
    return kept->count == kept->of && strcmp(kept->head.content, head->content) == 0 ? kept : NULL;
}

ScoreResult *stored_result(const StoredScore *kept)
{
    ScoreResult *result = score_result_new();
    bool whole = result != NULL;
    if (!result)
        return NULL;
    result->status = kept->status;
    result->messages_left_out = kept->messages_left_out;
    for (size_t i = 0; whole && i < kept->of; i++)
        whole = array_push(&result->movements, kept->movements[i]);
    for (size_t i = 0; whole && i < kept->messages.count; i++)
        whole = array_push(&result->messages, kept->messages.at[i]);
    if (whole)
        return result;
    score_result_free(result);
    return NULL;
}

void stored_lines_free(KeptLines *lines)
{
    for (size_t i = 0; i < lines->list.count; i++)
        array_free(&lines->list.at[i].messages);
    array_free(&lines->list);
    index_free(&lines->by_file);
    arena_release(&lines->arena);
}
