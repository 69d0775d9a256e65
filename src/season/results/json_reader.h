/* json_reader.h - reads one JSON text (RFC 8259) strictly: what is cut off or damaged gives nothing, never half of it. */
#ifndef SEASON_RESULTS_JSON_READER_H
#define SEASON_RESULTS_JSON_READER_H
#include "support/arena.h"
#include <stdbool.h>
#include <stddef.h>

typedef enum JsonKind { JSON_NULL, JSON_FLAG, JSON_NUMBER, JSON_TEXT, JSON_LIST, JSON_OBJECT } JsonKind;

typedef struct JsonValue {
    JsonKind kind;
    const char *key;          /* inside an object, else NULL */
    const char *text;         /* JSON_TEXT, no zero byte within */
    double number;            /* JSON_NUMBER; 1 and 0 for JSON_FLAG */
    struct JsonValue *first, *next; /* members of a list or object, in order */
} JsonValue;

/* NULL where `text` is not exactly one value, or out of memory. Everything lives in the arena. */
const JsonValue *json_read(const char *text, size_t length, Arena *arena);
/* Member of that key and kind; NULL when there is none. */
const JsonValue *json_member(const JsonValue *object, const char *key, JsonKind kind);
/* NULL when the member is missing or no text. */
const char *json_member_text(const JsonValue *object, const char *key);
/* False when it is missing, no number, or outside least..most. */
bool json_member_number(const JsonValue *object, const char *key, double least, double most, double *number);
bool json_member_flag(const JsonValue *object, const char *key); /* false when missing */
#endif
