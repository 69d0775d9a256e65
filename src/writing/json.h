/* json.h - the one door for JSON (RFC 8259). What goes through it is well formed: commas, indents and escapes are looked after here, text that is no
 * UTF-8 is mended, control characters are written as escapes, and a document that is left open is none (json_finish). */
#ifndef WRITING_JSON_H
#define WRITING_JSON_H
#include "support/buffer.h"

enum { JSON_DEEPEST = 16 };

typedef struct Json {
    Buffer *out;
    int depth;
    bool filled[JSON_DEEPEST]; /* something stands in the object or array already */
    bool on_line[JSON_DEEPEST]; /* it is written on one line */
    char close[JSON_DEEPEST];
    bool after_key;
} Json;

void json_begin(Json *json, Buffer *out);
void json_finish(Json *json);       /* marks `out` as failed where an object or array is still open */
void json_object(Json *json);
void json_row(Json *json);          /* an object on one line */
void json_array(Json *json);
void json_list(Json *json);         /* an array on one line */
void json_end(Json *json);          /* closes the innermost object or array */
void json_key(Json *json, const char *key);
void json_text(Json *json, const char *text); /* NULL gives null */
void json_integer(Json *json, long long value);
void json_number(Json *json, double value, int decimals); /* null where the value is not finite */
void json_flag(Json *json, bool value);

/* Key and value in one. */
void json_put_text(Json *json, const char *key, const char *text);
void json_put_integer(Json *json, const char *key, long long value);
void json_put_number(Json *json, const char *key, double value, int decimals);
void json_put_flag(Json *json, const char *key, bool value);
void json_put_array(Json *json, const char *key);
#endif
