#include "season/results/result_lines.h"
#include "season/results/loss_lines.h"
#include "writing/json.h"
#include <math.h>
#include <string.h>

#define LINE_KIND "movement of a season"
enum { POINTS_MOST = 1000000, MOVEMENTS_MOST = 10000 };

static void put_message(Json *json, const ResultMessage *message)
{
    json_row(json);
    json_put_integer(json, "severity", (int)message->severity);
    json_put_integer(json, "line", message->line);
    json_put_text(json, "part", message->part);
    json_put_text(json, "bar", message->bar);
    json_put_text(json, "fault", message->fault ? spz_fault_name(message->fault) : NULL);
    json_put_text(json, "name", message->name);
    json_put_text(json, "other", message->other);
    json_put_integer(json, "count", message->count);
    json_put_text(json, "text", message->text);
    json_end(json);
}

/* With the first line of a file. */
static void put_messages(Json *json, const ScoreResult *result)
{
    if (result->messages.count == 0)
        return;
    json_key(json, "messages");
    json_list(json);
    for (size_t i = 0; i < result->messages.count; i++)
        put_message(json, &result->messages.at[i]);
    json_end(json);
    json_put_integer(json, "messages_left_out", (long long)result->messages_left_out);
}

static void put_seat(Json *json, const SeatingResult *seat)
{
    json_row(json);
    json_put_text(json, "name", seat->name);
    json_put_number(json, "points", (double)seat->points / 100, 2); /* hundredths: exact as printed */
    json_put_integer(json, "lost_bars", (long long)seat->lost_bars);
    json_put_integer(json, "lost_tenths", seat->lost_tenths);
    losses_write(json, seat->losses, seat->loss_count);
    json_end(json);
}

static void put_statement(Json *json, const spz_statement *statement)
{
    json_put_integer(json, "outcome", (int)statement->outcome);
    json_put_integer(json, "confidence", (int)statement->confidence);
    json_put_number(json, "margin", statement->margin, 9);
    json_put_text(json, "arrangement", statement->arrangement);
    json_put_flag(json, "by_year", statement->by_year);
}

static void put_movement(Json *json, const MovementResult *movement)
{
    json_put_text(json, "title", movement->title);
    json_put_integer(json, "bars", (long long)movement->bars);
    json_put_integer(json, "year", movement->year);
    json_put_integer(json, "tenths", movement->tenths);
    json_put_flag(json, "strings", movement->strings);
    json_put_flag(json, "thirds", movement->thirds);
    json_put_flag(json, "two_orchestras", movement->two_orchestras);
    json_put_flag(json, "chamber", movement->chamber);
    put_statement(json, &movement->statement);
    json_key(json, "seatings");
    json_list(json);
    for (size_t i = 0; i < movement->seat_count; i++)
        put_seat(json, &movement->seats[i]);
    json_end(json);
}

static void put_head(Json *json, const LineHead *head, size_t number, size_t of)
{
    json_row(json);
    json_put_text(json, "kind", LINE_KIND);
    json_put_text(json, "file", head->file);
    json_put_text(json, "content", head->content);
    json_put_text(json, "terms", head->terms);
    json_put_integer(json, "movement", (long long)number);
    json_put_integer(json, "movements", (long long)of);
}

void lines_write(Buffer *out, const LineHead *head, const ScoreResult *result)
{
    Json json;
    json_begin(&json, out);
    if (result->movements.count == 0) {
        put_head(&json, head, 0, 0);
        json_put_integer(&json, "status", (int)result->status);
        put_messages(&json, result);
        json_end(&json);
    }
    for (size_t i = 0; i < result->movements.count; i++) {
        put_head(&json, head, i + 1, result->movements.count);
        put_movement(&json, &result->movements.at[i]);
        if (i == 0)
            put_messages(&json, result);
        json_end(&json);
    }
    json_finish(&json);
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

static bool take_seat(const JsonValue *value, Arena *arena, SeatingResult *seat)
{
    double points;
    size_t tenths;
    seat->name = json_member_text(value, "name");
    if (!seat->name || !losses_read(value, arena, &seat->losses, &seat->loss_count) ||
        !json_member_number(value, "points", -POINTS_MOST, POINTS_MOST, &points) || !take_whole(value, "lost_bars", 1e9, &seat->lost_bars) ||
        !take_whole(value, "lost_tenths", 1e12, &tenths))
        return false;
    seat->lost_tenths = (long)tenths;
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
        if (movement->seat_count == CONCERT_SEATINGS || !take_seat(value, arena, &movement->seats[movement->seat_count]))
            return false;
        movement->seat_count++;
    }
    return true;
}

static bool take_statement(const JsonValue *line, spz_statement *statement)
{
    size_t outcome, confidence;
    if (!take_whole(line, "outcome", SPZ_OUTCOME_COUNT - 1, &outcome) || !take_whole(line, "confidence", SPZ_FIRM, &confidence) ||
        !json_member_number(line, "margin", 0, 1, &statement->margin))
        return false;
    statement->outcome = (spz_outcome)outcome;
    statement->confidence = (spz_confidence)confidence;
    statement->arrangement = json_member_text(line, "arrangement");
    statement->by_year = json_member_flag(line, "by_year");
    return statement->arrangement || outcome != SPZ_JUDGED;
}

static bool take_movement(const JsonValue *line, Arena *arena, MovementResult *movement)
{
    size_t tenths = 0, year = 0;
    movement->title = json_member_text(line, "title");
    movement->strings = json_member_flag(line, "strings");
    movement->thirds = json_member_flag(line, "thirds");
    movement->two_orchestras = json_member_flag(line, "two_orchestras");
    movement->chamber = json_member_flag(line, "chamber");
    bool timed = take_whole(line, "tenths", 1e12, &tenths) && take_whole(line, "year", 9999, &year);
    movement->year = (int)year;
    movement->tenths = (long)tenths;
    return movement->title && timed && take_whole(line, "bars", 1e9, &movement->bars) && take_statement(line, &movement->statement) &&
           take_seats(line, arena, movement);
}

static spz_fault fault_of_name(const char *name)
{
    int fault = SPZ_NO_FAULT + 1;
    while (name && fault < SPZ_FAULT_COUNT && strcmp(spz_fault_name((spz_fault)fault), name) != 0)
        fault++;
    return name && fault < SPZ_FAULT_COUNT ? (spz_fault)fault : SPZ_NO_FAULT;
}

static bool take_message(const JsonValue *value, ResultMessage *message)
{
    size_t severity, line, count;
    if (!take_whole(value, "severity", SPZ_ERROR, &severity) || !take_whole(value, "line", 2e9, &line) || !take_whole(value, "count", 2e9, &count))
        return false;
    *message = (ResultMessage){.severity = (spz_severity)severity, .line = (long)line, .part = json_member_text(value, "part"),
                               .bar = json_member_text(value, "bar"), .fault = fault_of_name(json_member_text(value, "fault")),
                               .name = json_member_text(value, "name"), .other = json_member_text(value, "other"), .count = (long)count,
                               .text = json_member_text(value, "text")};
    return message->fault || message->text;
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

static bool add_line(ScoreResult *result, LineRead *line, const LineHead *expected)
{
    bool fits = strcmp(line->head.terms, expected->terms) == 0 && strcmp(line->head.content, expected->content) == 0 &&
                line->number == (line->of ? result->movements.count + 1 : 0);
    result->status = line->status;
    for (size_t i = 0; fits && i < line->messages.count; i++)
        fits = array_push(&result->messages, line->messages.at[i]);
    result->messages_left_out += line->messages_left_out;
    array_free(&line->messages);
    return fits && (line->of == 0 || array_push(&result->movements, line->movement));
}

bool lines_read_result(const char *text, size_t length, const LineHead *expected, ScoreResult *result)
{
    size_t count = 0, of = 0;
    while (length) {
        const char *end = memchr(text, '\n', length);
        LineRead line;
        if (!end || !line_read(text, (size_t)(end - text), &result->arena, &line) || !add_line(result, &line, expected))
            return false;
        count++;
        of = line.of;
        length -= (size_t)(end + 1 - text);
        text = end + 1;
    }
    return count > 0 && count == (of ? of : 1);
}
