#include "season/results/result_store.h"
#include "support/message.h"
#include <errno.h>
#include <stdio.h>
#include <string.h>

ScoreResult *results_find(Store *store, const LineHead *head)
{
    Buffer lines = {0};
    long long count = 0, of = 0;
    if (store_begin(store, false) != SPZ_OK)
        return NULL;
    Query query = query_begin(store, "SELECT line, movements FROM result WHERE content = ? AND terms = ? ORDER BY movement");
    query_text(&query, head->content);
    query_text(&query, head->terms);
    for (; query_row(&query); count++) {
        buffer_puts(&lines, query_get_text(&query, 0));
        buffer_puts(&lines, "\n");
        of = query_get_integer(&query, 1);
    }
    query_end(&query);
    bool whole = store_end(store, SPZ_OK) == SPZ_OK && count > 0 && count == (of ? of : 1) && !buffer_failed(&lines);
    ScoreResult *result = whole ? score_result_new() : NULL;
    if (result && !lines_read_result(lines.text, lines.length, head, result)) {
        score_result_free(result);
        result = NULL;
    }
    buffer_free(&lines);
    return result;
}

static void clear(Store *store, const char *content, const char *terms, size_t other_than)
{
    Query query = query_begin(store, "DELETE FROM result WHERE content = ? AND terms = ? AND movements <> ?");
    query_text(&query, content);
    query_text(&query, terms);
    query_integer(&query, (long long)other_than);
    query_run(&query);
}

/* `line` without its end. */
static void put(Store *store, const LineHead *head, size_t number, size_t of, const char *line, size_t length)
{
    Query query = query_begin(store, "INSERT OR REPLACE INTO result VALUES (?, ?, ?, ?, ?)");
    query_text(&query, head->content);
    query_text(&query, head->terms);
    query_integer(&query, (long long)number);
    query_integer(&query, (long long)of);
    query_piece(&query, line, length);
    query_run(&query);
}

void results_keep(Store *store, const LineHead *head, const ScoreResult *result)
{
    Buffer lines = {0};
    LineHead nameless = *head;
    size_t of = result->movements.count, number = of ? 1 : 0;
    nameless.file = ""; /* the same score may lie elsewhere tomorrow */
    lines_write(&lines, &nameless, result);
    if (!buffer_failed(&lines) && store_begin(store, true) == SPZ_OK) {
        clear(store, head->content, head->terms, of);
        for (const char *at = lines.text, *end; (end = strchr(at, '\n')) != NULL; at = end + 1)
            put(store, head, number++, of, at, (size_t)(end - at));
        store_end(store, SPZ_OK);
    }
    buffer_free(&lines);
}

/* One line of a file. False where it is damaged or of another kind. */
static bool take_line(Store *store, const char *text, size_t length)
{
    LineRead line;
    Arena arena;
    arena_init(&arena);
    bool good = line_read(text, length, &arena, &line);
    if (good && *line.head.content) { /* else its file could not even be opened there */
        clear(store, line.head.content, line.head.terms, line.of);
        put(store, &line.head, line.number, line.of, text, length);
    }
    if (good)
        array_free(&line.messages);
    arena_release(&arena);
    return good;
}

static spz_status take_text(Store *store, const char *name, FILE *file, const spz_sink *sink)
{
    Buffer line = {0};
    bool more = true;
    for (long number = 1; more && !buffer_failed(&line); number++) {
        int letter;
        buffer_clear(&line);
        while ((letter = fgetc(file)) != EOF && letter != '\n')
            buffer_putc(&line, (char)letter);
        more = letter != EOF;
        spz_message place = {.severity = SPZ_DOUBT, .file = name, .line = number};
        if (line.length && !buffer_failed(&line) && !take_line(store, line.text, line.length))
            message_send(sink, &place, "this line is damaged or of another kind; its score is read anew");
    }
    spz_status status = buffer_failed(&line) ? SPZ_NO_MEMORY : ferror(file) ? SPZ_CANNOT_READ : SPZ_OK;
    buffer_free(&line);
    return status;
}

spz_status results_read_lines(Store *store, const char *path, const spz_sink *sink)
{
    bool standard = strcmp(path, "-") == 0;
    FILE *file = standard ? stdin : fopen(path, "rb");
    spz_message place = {.severity = SPZ_ERROR, .file = standard ? "standard input" : path};
    if (!file) {
        message_send(sink, &place, "the lines can't be opened: %s", message_cause(errno));
        return SPZ_CANNOT_OPEN;
    }
    spz_status status = store_begin(store, true);
    if (status == SPZ_OK) {
        errno = 0;
        spz_status taken = take_text(store, place.file, file, sink);
        if (taken == SPZ_CANNOT_READ)
            message_send(sink, &place, "the lines can't be read to their end: %s", message_cause(errno));
        status = store_end(store, taken);
    }
    if (!standard)
        fclose(file);
    return status;
}
