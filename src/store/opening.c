/* Opening a library: is it one, is it of this edition, and if not, what leads there. */
#include "store/opening.h"
#include "store/schema.h"
#include "support/memory.h"
#include "support/text/name_order.h"
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

/* Makes every folder on the way that isn't there; what can't be made shows when the file is opened. */
static void make_folders(char *path)
{
    for (char *slash = strchr(path + (*path != '\0'), '/'); slash; slash = strchr(slash + 1, '/')) {
        *slash = '\0';
        mkdir(path, 0700);
        *slash = '/';
    }
}

/* Whether there is a file that begins as no database of SQLite does (its file format, 1.3: 16 bytes). */
static bool begins_otherwise(const char *path)
{
    char head[16];
    FILE *file = fopen(path, "rb");
    size_t taken = file ? fread(head, 1, sizeof head, file) : 0;
    if (file)
        fclose(file);
    return taken > 0 && (taken < sizeof head || memcmp(head, "SQLite format 3", sizeof head) != 0);
}

static spz_status refuse(Store *store, spz_status status, const char *why)
{
    store->trouble = why;
    return status;
}

static long long pragma(Store *store, const char *sql, int *code)
{
    sqlite3_stmt *statement = NULL;
    long long value = 0;
    *code = sqlite3_prepare_v2(store->base, sql, -1, &statement, NULL);
    if (*code == SQLITE_OK) {
        *code = sqlite3_step(statement);
        value = *code == SQLITE_ROW ? sqlite3_column_int64(statement, 0) : 0;
        *code = *code == SQLITE_ROW || *code == SQLITE_DONE ? SQLITE_OK : *code;
    }
    sqlite3_finalize(statement);
    return value;
}

typedef enum Finding { FOUND_READY, FOUND_OLDER, FOUND_NEWER, FOUND_FOREIGN, FOUND_FAULT } Finding;

static Finding look(Store *store, int *version, int *code)
{
    long long mark = pragma(store, "PRAGMA application_id", code);
    *version = *code ? 0 : (int)pragma(store, "PRAGMA user_version", code);
    long long tables = *code ? 0 : pragma(store, "SELECT count(*) FROM sqlite_schema", code);
    if (*code)
        return FOUND_FAULT;
    if (mark != STORE_MARK)
        return mark || tables || *version ? FOUND_FOREIGN : FOUND_OLDER; /* nothing in it yet */
    return *version < SCHEMA_VERSION ? FOUND_OLDER : *version > SCHEMA_VERSION ? FOUND_NEWER : FOUND_READY;
}

/* Every step from that version on, and the numbers that say so, at once or not at all. */
static int bring_up(Store *store, int version)
{
    char text[64];
    int code = SQLITE_OK;
    for (; version < SCHEMA_VERSION && code == SQLITE_OK; version++)
        code = sqlite3_exec(store->base, schema_steps[version], NULL, NULL, NULL);
    snprintf(text, sizeof text, "PRAGMA application_id=%d; PRAGMA user_version=%d", STORE_MARK, SCHEMA_VERSION);
    return code == SQLITE_OK ? sqlite3_exec(store->base, text, NULL, NULL, NULL) : code;
}

static spz_status use(Store *store, bool writes)
{
    int version, code;
    Finding finding = look(store, &version, &code);
    if (finding == FOUND_OLDER && writes) {
        code = sqlite3_exec(store->base, "BEGIN IMMEDIATE", NULL, NULL, NULL);
        finding = code == SQLITE_OK ? look(store, &version, &code) : FOUND_FAULT; /* another may have been quicker */
        if (finding == FOUND_OLDER)
            code = bring_up(store, version);
        if (code == SQLITE_OK)
            code = sqlite3_exec(store->base, "COMMIT", NULL, NULL, NULL);
        if (finding == FOUND_OLDER)
            finding = code == SQLITE_OK ? FOUND_READY : FOUND_FAULT;
    }
    switch (finding) {
    case FOUND_READY: return SPZ_OK;
    case FOUND_OLDER: return refuse(store, SPZ_CANNOT_WRITE, "it was made by an earlier edition of this program, and can't be brought up to date: it can't be written");
    case FOUND_NEWER: return refuse(store, SPZ_CANNOT_READ, "it was made by a newer edition of this program; it is left as it is");
    case FOUND_FOREIGN: return refuse(store, SPZ_CANNOT_READ, "it belongs to another program; it is left as it is");
    default: return store_fail(store, code);
    }
}

/* ORDER BY ... COLLATE names, in our own questions alone: other programs don't know it. */
static int compare(void *context, int left_length, const void *left, int right_length, const void *right)
{
    char texts[2][1024];
    const void *from[2] = {left, right};
    const int lengths[2] = {left_length, right_length};
    (void)context;
    for (int i = 0; i < 2; i++) {
        size_t length = (size_t)lengths[i] < sizeof texts[i] ? (size_t)lengths[i] : sizeof texts[i] - 1;
        memcpy(texts[i], from[i], length);
        texts[i][length] = '\0';
    }
    return names_compare(texts[0], texts[1]);
}

static int connect_base(Store *store, const char *path, int flags)
{
    sqlite3_close(store->base);
    store->base = NULL;
    int code = sqlite3_open_v2(path, &store->base, flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, NULL);
    if (code == SQLITE_OK)
        code = sqlite3_busy_timeout(store->base, STORE_PATIENCE * 1000);
    if (code == SQLITE_OK)
        code = sqlite3_exec(store->base, "PRAGMA foreign_keys=ON; PRAGMA synchronous=FULL; PRAGMA temp_store=MEMORY; PRAGMA trusted_schema=OFF", NULL, NULL, NULL);
    return code == SQLITE_OK ? sqlite3_create_collation(store->base, "names", SQLITE_UTF8, NULL, compare) : code;
}

static spz_status open_read(Store *store)
{
    struct stat about;
    if (stat(store->path, &about) != 0)
        return refuse(store, SPZ_CANNOT_OPEN, "there is no library here yet; `spezzato library add FOLDER` makes one");
    int version, code = connect_base(store, store->path, SQLITE_OPEN_READONLY);
    bool older = code == SQLITE_OK && look(store, &version, &code) == FOUND_OLDER && version > 0;
    if (older || (code & 0xff) == SQLITE_READONLY) /* to be brought up to date; or something that broke off is to be undone first */
        code = connect_base(store, store->path, SQLITE_OPEN_READWRITE);
    return code == SQLITE_OK ? use(store, older) : store_fail(store, code);
}

static spz_status open_write(Store *store)
{
    make_folders(store->path);
    int code = connect_base(store, store->path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    return code == SQLITE_OK ? use(store, true) : store_fail(store, code);
}

static spz_status open_as(Store *store, StoreUse how)
{
    if (how == STORE_PASSING) {
        int code = connect_base(store, ":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
        return code == SQLITE_OK ? use(store, true) : store_fail(store, code);
    }
    if (begins_otherwise(store->path))
        return refuse(store, SPZ_CANNOT_READ, "it is no library; it is left as it is");
    return how == STORE_READ ? open_read(store) : open_write(store);
}

spz_status store_open(const char *path, StoreUse how, const spz_sink *sink, Store **out)
{
    *out = NULL;
    Store *store = memory_get(sizeof *store);
    char *copy = memory_get(strlen(path ? path : "") + 1);
    if (!store || !copy) {
        memory_free(store);
        memory_free(copy);
        return SPZ_NO_MEMORY;
    }
    *store = (Store){.path = strcpy(copy, path ? path : ""), .lock = PTHREAD_MUTEX_INITIALIZER};
    spz_status status = open_as(store, how);
    if (status == SPZ_OK)
        *out = store;
    else {
        store_tell(store, SPZ_ERROR, sink);
        store_close(store);
    }
    return status;
}

void store_close(Store *store)
{
    if (!store)
        return;
    for (size_t i = 0; i < store->statements.count; i++)
        sqlite3_finalize(store->statements.at[i].statement);
    array_free(&store->statements);
    sqlite3_close(store->base);
    pthread_mutex_destroy(&store->lock);
    memory_free(store->path);
    memory_free(store);
}
