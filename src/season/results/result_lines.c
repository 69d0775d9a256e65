#include "season/results/result_lines.h"
#include "season/results/json_reader.h"
#include <math.h>
#include <string.h>

#define LINE_KIND "movement of a season"
enum { POINTS_MOST = 1000000, MOVEMENTS_MOST = 10000 };

static void put_text(Buffer *out, const char *key, const char *text)
{
    buffer_printf(out, ", \"%s\": ", key);
    buffer_json(out, text);
}

static void put_message(Buffer *out, const ResultMessage *message)
{
    buffer_printf(out, "{\"severity\": %d, \"line\": %ld", (int)message->severity, message->line);
    put_text(out, "part", message->part);
    put_text(out, "bar", message->bar);
    put_text(out, "text", message->text);
    buffer_putc(out, '}');
}

/* With the first line of a file. */
static void put_messages(Buffer *out, const ScoreResult *digest)
{
    if (digest->messages.count == 0)
        return;
    buffer_puts(out, ", \"messages\": [");
    for (size_t i = 0; i < digest->messages.count; i++) {
        buffer_puts(out, i ? ", " : "");
        put_message(out, &digest->messages.at[i]);
    }
    buffer_printf(out, "], \"messages_left_out\": %zu", digest->messages_left_out);
}

/* Hundredths as points, exactly: -7 is -0.07. */
static void put_points(Buffer *out, Hundredths points)
{
    Hundredths size = points < 0 ? -points : points;
    buffer_printf(out, ", \"points\": %s%lld.%02lld", points < 0 ? "-" : "", (long long)(size / 100), (long long)(size % 100));
}

static void put_flag(Buffer *out, const char *key, bool yes)
{
    buffer_printf(out, ", \"%s\": %s", key, yes ? "true" : "false");
}

static void put_movement(Buffer *out, const MovementResult *movement)
{
    put_text(out, "title", movement->title);
    buffer_printf(out, ", \"bars\": %zu, \"confidence\": %d", movement->bars, (int)movement->confidence);
    put_flag(out, "strings", movement->strings);
    put_flag(out, "thirds", movement->thirds);
    put_flag(out, "two_orchestras", movement->two_orchestras);
    put_text(out, "statement", movement->statement);
    buffer_puts(out, ", \"seatings\": [");
    for (size_t i = 0; i < movement->seat_count; i++) {
        buffer_puts(out, i ? ", {\"name\": " : "{\"name\": ");
        buffer_json(out, movement->seats[i].name);
        put_points(out, movement->seats[i].points);
        put_text(out, "losses", movement->seats[i].losses);
        buffer_putc(out, '}');
    }
    buffer_putc(out, ']');
}

static void put_head(Buffer *out, const LineHead *head, size_t number, size_t of)
{
    buffer_puts(out, "{\"kind\": \"" LINE_KIND "\"");
    put_text(out, "file", head->file);
    put_text(out, "content", head->content);
    put_text(out, "terms", head->terms);
    buffer_printf(out, ", \"movement\": %zu, \"movements\": %zu", number, of);
}

void lines_write(Buffer *out, const LineHead *head, const ScoreResult *digest)
{
    if (digest->movements.count == 0) {
        put_head(out, head, 0, 0);
        buffer_printf(out, ", \"status\": %d", (int)digest->status);
        put_messages(out, digest);
        buffer_puts(out, "}\n");
    }
    for (size_t i = 0; i < digest->movements.count; i++) {
        put_head(out, head, i + 1, digest->movements.count);
        put_movement(out, &digest->movements.at[i]);
        if (i == 0)
            put_messages(out, digest);
        buffer_puts(out, "}\n");
    }
}

static bool take_sum(const JsonValue *line, const char *key, char sum[SHA256_TEXT])
{
    const char *text = json_member_text(line, key);
    size_t length = text ? strlen(text) : SHA256_TEXT;
    if (length != SHA256_TEXT - 1 && length != 0)
        return false;
    memcpy(sum, text, length + 1);
    return true;
}

static bool take_whole(const JsonValue *line, const char *key, double most, size_t *out)
{
    double number;
    if (!json_member_number(line, key, 0, most, &number))
        return false;
    *out = (size_t)number;
    return true;
}

static bool take_seat(const JsonValue *value, SeatingResult *seat)
{
    double points;
    seat->name = json_member_text(value, "name");
    seat->losses = json_member_text(value, "losses");
    if (!seat->name || !seat->losses || !json_member_number(value, "points", -POINTS_MOST, POINTS_MOST, &points))
        return false;
    seat->points = llround(points * 100);
    return true;
}

static bool take_seats(const JsonValue *line, Arena *arena, MovementResult *movement)
{
    const JsonValue *list = json_member(line, "seatings", JSON_LIST);
    movement->seats = arena_take(arena, CONCERT_SEATINGS, sizeof *movement->seats);
    if (!list || !movement->seats)
        return false;
    for (const JsonValue *value = list->first; value; value = value->next) {
        if (movement->seat_count == CONCERT_SEATINGS || !take_seat(value, &movement->seats[movement->seat_count]))
            return false;
        movement->seat_count++;
    }
    return true;
}

static bool take_movement(const JsonValue *line, Arena *arena, MovementResult *movement)
{
    size_t confidence;
    movement->title = json_member_text(line, "title");
    movement->statement = json_member_text(line, "statement");
    movement->strings = json_member_flag(line, "strings");
    movement->thirds = json_member_flag(line, "thirds");
    movement->two_orchestras = json_member_flag(line, "two_orchestras");
    if (!movement->title || !movement->statement || !take_whole(line, "bars", 1e9, &movement->bars) ||
        !take_whole(line, "confidence", SPZ_FIRM, &confidence))
        return false;
    movement->confidence = (spz_confidence)confidence;
    return take_seats(line, arena, movement);
}

static bool take_message(const JsonValue *value, ResultMessage *message)
{
    size_t severity, line;
    if (!take_whole(value, "severity", SPZ_ERROR, &severity) || !take_whole(value, "line", 2e9, &line))
        return false;
    *message = (ResultMessage){(spz_severity)severity, (long)line, json_member_text(value, "part"), json_member_text(value, "bar"),
                               json_member_text(value, "text")};
    return message->text != NULL;
}

static bool take_messages(const JsonValue *line, LineRead *out)
{
    const JsonValue *list = json_member(line, "messages", JSON_LIST);
    for (const JsonValue *value = list ? list->first : NULL; value; value = value->next) {
        ResultMessage message;
        if (!take_message(value, &message) || !array_push(&out->messages, message))
            return false;
    }
    return !list || take_whole(line, "messages_left_out", 1e9, &out->messages_left_out);
}

static bool take_line(const JsonValue *line, Arena *arena, LineRead *out)
{
    const char *kind = json_member_text(line, "kind");
    size_t status = SPZ_OK;
    out->head.file = json_member_text(line, "file");
    if (!kind || strcmp(kind, LINE_KIND) != 0 || !out->head.file || !take_sum(line, "content", out->head.content) ||
        !take_sum(line, "terms", out->head.terms) || !take_whole(line, "movement", MOVEMENTS_MOST, &out->number) ||
        !take_whole(line, "movements", MOVEMENTS_MOST, &out->of) || !take_messages(line, out))
        return false;
    if (out->of == 0) {
        bool good = out->number == 0 && take_whole(line, "status", SPZ_STATUS_COUNT - 1, &status) && status != SPZ_OK;
        out->status = (spz_status)status;
        return good;
    }
    return out->number >= 1 && out->number <= out->of && take_movement(line, arena, &out->movement);
}

bool line_read(const char *text, size_t length, Arena *arena, LineRead *out)
{
    *out = (LineRead){.status = SPZ_OK};
    const JsonValue *line = json_read(text, length, arena);
    if (line && line->kind == JSON_OBJECT && take_line(line, arena, out))
        return true;
    array_free(&out->messages);
    return false;
}

static bool add_line(ScoreResult *digest, LineRead *line, const LineHead *expected)
{
    bool fits = strcmp(line->head.terms, expected->terms) == 0 && strcmp(line->head.content, expected->content) == 0 &&
                line->number == (line->of ? digest->movements.count + 1 : 0);
    digest->status = line->status;
    for (size_t i = 0; fits && i < line->messages.count; i++)
        fits = array_push(&digest->messages, line->messages.at[i]);
    digest->messages_left_out += line->messages_left_out;
    array_free(&line->messages);
    return fits && (line->of == 0 || array_push(&digest->movements, line->movement));
}

bool lines_read_digest(const char *text, size_t length, const LineHead *expected, ScoreResult *digest)
{
    size_t count = 0, of = 0;
    while (length) {
        const char *end = memchr(text, '\n', length);
        LineRead line;
        if (!end || !line_read(text, (size_t)(end - text), &digest->arena, &line) || !add_line(digest, &line, expected))
            return false;
        count++;
        of = line.of;
        length -= (size_t)(end + 1 - text);
        text = end + 1;
    }
    return count > 0 && count == (of ? of : 1);
}
