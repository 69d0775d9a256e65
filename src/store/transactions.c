#include "store/transactions.h"
#include "store/opening.h"
#include "support/message.h"
#include <string.h>

static spz_status store_status(int code)
{
    switch (code & 0xff) {
    case SQLITE_NOMEM: return SPZ_NO_MEMORY;
    case SQLITE_FULL:
    case SQLITE_READONLY:
    case SQLITE_PERM:
    case SQLITE_TOOBIG:
    case SQLITE_CONSTRAINT:
    case SQLITE_IOERR: return SPZ_CANNOT_WRITE;
    case SQLITE_CANTOPEN: return SPZ_CANNOT_OPEN;
    default: return SPZ_CANNOT_READ;
    }
}

static const char *words_of(int code)
{
    switch (code & 0xff) {
    case SQLITE_FULL: return "there is no room left on the disk; what was kept before is whole";
    case SQLITE_READONLY: return "it can't be written; what is in it stays as it is";
    case SQLITE_PERM:
    case SQLITE_CANTOPEN: return "the system doesn't let it be opened";
    case SQLITE_IOERR: return "the disk can't be read or written; what was kept before is whole";
    case SQLITE_NOTADB: return "it is no library; it is left as it is";
    case SQLITE_CORRUPT: return "it is damaged; it is left as it is. Move it away and add the scores again";
    case SQLITE_BUSY:
    case SQLITE_LOCKED: return "another program holds it and doesn't let go";
    default: return "it can't be used";
    }
}

spz_status store_fail(Store *store, int code)
{
    spz_status status = store_status(code);
    if (!store->failure)
        store->failure = status;
    if (status != SPZ_NO_MEMORY && !store->trouble)
        store->trouble = words_of(code);
    return status;
}

void store_tell(Store *store, spz_severity severity, const spz_sink *sink)
{
    spz_message place = {.severity = severity, .file = store->path};
    if (store->trouble && !store->told)
        message_send(sink, &place, "%s", store->trouble);
    store->told = store->trouble != NULL;
}

spz_status store_begin(Store *store, bool writes)
{
    pthread_mutex_lock(&store->lock);
    store->failure = SPZ_OK;
    int code = sqlite3_exec(store->base, writes ? "BEGIN IMMEDIATE" : "BEGIN", NULL, NULL, NULL);
    if (code == SQLITE_OK)
        return SPZ_OK;
    spz_status status = store_fail(store, code);
    pthread_mutex_unlock(&store->lock);
    return status;
}

spz_status store_end(Store *store, spz_status status)
{
    if (status == SPZ_OK)
        status = store->failure;
    int code = status == SPZ_OK ? sqlite3_exec(store->base, "COMMIT", NULL, NULL, NULL) : SQLITE_OK;
    if (code != SQLITE_OK)
        status = store_fail(store, code);
    if (status != SPZ_OK && !sqlite3_get_autocommit(store->base))
        sqlite3_exec(store->base, "ROLLBACK", NULL, NULL, NULL);
    pthread_mutex_unlock(&store->lock);
    return status;
}

/* Statements stay prepared; their texts are literals, so that the address tells them apart, or else the text. */
static sqlite3_stmt *prepared(Store *store, const char *sql)
{
    for (size_t i = 0; i < store->statements.count; i++)
        if (store->statements.at[i].sql == sql)
            return store->statements.at[i].statement;
    Prepared made = {sql, NULL};
    int code = sqlite3_prepare_v3(store->base, sql, -1, SQLITE_PREPARE_PERSISTENT, &made.statement, NULL);
    if (code != SQLITE_OK)
        store_fail(store, code);
    else if (!array_push(&store->statements, made)) {
        sqlite3_finalize(made.statement);
        store_fail(store, SQLITE_NOMEM);
        return NULL;
    }
    return made.statement;
}

Query query_begin(Store *store, const char *sql)
{
    return (Query){store, store->failure ? NULL : prepared(store, sql), 0, false};
}

Query query_once(Store *store, const char *sql)
{
    sqlite3_stmt *statement = NULL;
    int code = store->failure ? SQLITE_OK : sqlite3_prepare_v2(store->base, sql, -1, &statement, NULL);
    if (code != SQLITE_OK)
        store_fail(store, code);
    return (Query){store, statement, 0, true};
}

void store_forget(Store *store, const char *sql)
{
    for (size_t i = 0; i < store->statements.count; i++)
        if (store->statements.at[i].sql == sql) {
            sqlite3_finalize(store->statements.at[i].statement);
            store->statements.at[i] = store->statements.at[--store->statements.count];
            return;
        }
}

static void note(Query *query, int code)
{
    if (code != SQLITE_OK)
        store_fail(query->store, code);
}

void query_text(Query *query, const char *text)
{
    if (query->statement)
        note(query, text ? sqlite3_bind_text(query->statement, ++query->bound, text, -1, SQLITE_TRANSIENT) : sqlite3_bind_null(query->statement, ++query->bound));
}

void query_piece(Query *query, const char *text, size_t length)
{
    if (query->statement)
        note(query, sqlite3_bind_text64(query->statement, ++query->bound, text, length, SQLITE_TRANSIENT, SQLITE_UTF8));
}

void query_integer(Query *query, long long value)
{
    if (query->statement)
        note(query, sqlite3_bind_int64(query->statement, ++query->bound, value));
}

void query_some(Query *query, bool there, long long value)
{
    if (there)
        query_integer(query, value);
    else
        query_text(query, NULL);
}

void query_number(Query *query, double value)
{
    if (query->statement)
        note(query, sqlite3_bind_double(query->statement, ++query->bound, value));
}

bool query_row(Query *query)
{
    if (!query->statement || query->store->failure)
        return false;
    int code = sqlite3_step(query->statement);
    if (code != SQLITE_ROW && code != SQLITE_DONE)
        store_fail(query->store, code);
    return code == SQLITE_ROW;
}

const char *query_get_text(const Query *query, int column)
{
    const unsigned char *text = sqlite3_column_text(query->statement, column);
    return text ? (const char *)text : "";
}

long long query_get_integer(const Query *query, int column)
{
    return sqlite3_column_int64(query->statement, column);
}

double query_get_number(const Query *query, int column)
{
    return sqlite3_column_double(query->statement, column);
}

bool query_is_null(const Query *query, int column)
{
    return sqlite3_column_type(query->statement, column) == SQLITE_NULL;
}

spz_status query_end(Query *query)
{
    if (query->once)
        sqlite3_finalize(query->statement);
    else if (query->statement) {
        sqlite3_reset(query->statement);
        sqlite3_clear_bindings(query->statement);
    }
    query->statement = NULL;
    return query->store->failure;
}

spz_status query_run(Query *query)
{
    query_row(query);
    return query_end(query);
}

long long store_last(const Store *store)
{
    return sqlite3_last_insert_rowid(store->base);
}

spz_status store_check(Store *store, const spz_sink *sink, long *faults)
{
    spz_message place = {.severity = SPZ_ERROR, .file = store->path};
    Query query = query_begin(store, "PRAGMA integrity_check");
    *faults = 0;
    while (query_row(&query))
        if (strcmp(query_get_text(&query, 0), "ok") != 0) {
            message_send(sink, &place, "damaged: %s", query_get_text(&query, 0));
            ++*faults;
        }
    query_end(&query);
    query = query_begin(store, "SELECT \"table\", count(*) FROM pragma_foreign_key_check GROUP BY 1");
    while (query_row(&query)) {
        message_send(sink, &place, "damaged: %lld rows of '%s' belong to nothing", query_get_integer(&query, 1), query_get_text(&query, 0));
        ++*faults;
    }
    return query_end(&query);
}
