/* The library of scores: any order of adding, asking, forgetting, checking, opening anew and changing the scores on the disk, held against a plain
 * list of what should be in it; and any damage to its file, of bytes and of values, each ending in a status. */
#include "fuzz/choices.h"
#include "spezzato/library.h"
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { SHELF = 6, CONTENTS_MOST = 8, STEPS_MOST = 40, NOTHING = -1 };

static char contents[CONTENTS_MOST][FUZZ_PATH], folder[FUZZ_PATH], store[FUZZ_PATH + 16];
static char *content_bytes[CONTENTS_MOST];
static size_t content_sizes[CONTENTS_MOST], content_count;

typedef struct Run {
    Choices choices;
    spz_library *library;
    bool whole;          /* its file has not been damaged */
    bool sure;           /* which files it should know is certain */
    int on_disk[SHELF];  /* number of the content, or NOTHING */
    int known[SHELF];    /* as they were heard */
} Run;

static void path_of(size_t place, char out[FUZZ_PATH + 16])
{
    snprintf(out, FUZZ_PATH + 16, "%s/shelf/score-%zu.musicxml", folder, place);
}

static void clear_away(void)
{
    static const char *const ends[] = {"", "-journal", "-wal", "-shm", NULL};
    char path[2 * FUZZ_PATH];
    for (size_t i = 0; ends[i]; i++) {
        snprintf(path, sizeof path, "%s%s", store, ends[i]);
        unlink(path);
    }
    for (size_t i = 0; i < SHELF; i++) {
        path_of(i, path);
        unlink(path);
    }
}

static void leave(void)
{
    char path[2 * FUZZ_PATH];
    clear_away();
    snprintf(path, sizeof path, "%s/shelf", folder);
    rmdir(path);
    rmdir(folder);
}

/* The scores of the place, and one file that is none. */
static void prepare(void)
{
    char path[2 * FUZZ_PATH];
    content_count = fuzz_scores(contents, CONTENTS_MOST - 1);
    for (size_t i = 0; i < content_count; i++)
        content_bytes[i] = file_bytes(contents[i], &content_sizes[i]);
    content_bytes[content_count] = "<score-partwise><part-list>";
    content_sizes[content_count] = strlen(content_bytes[content_count]);
    content_count++;
    snprintf(folder, sizeof folder, "%.480s/library-%ld", fuzz_place(), (long)getpid());
    snprintf(store, sizeof store, "%s/library", folder);
    snprintf(path, sizeof path, "%s/shelf", folder);
    must(mkdir(folder, 0700) == 0 && mkdir(path, 0700) == 0 && atexit(leave) == 0);
}

static void put(Run *run, size_t place)
{
    char path[FUZZ_PATH + 16];
    size_t content = choose(&run->choices, content_count + 1);
    path_of(place, path);
    if (content == content_count) {
        unlink(path);
        run->on_disk[place] = NOTHING;
        return;
    }
    file_save(path, content_bytes[content], content_sizes[content]);
    run->on_disk[place] = (int)content;
}

static void open_again(Run *run)
{
    size_t before_size = 0, after_size;
    spz_library_free(run->library);
    run->library = NULL;
    bool there = access(store, F_OK) == 0;
    char *before = there ? file_bytes(store, &before_size) : NULL;
    spz_library_use use = run->whole && !there ? SPZ_LIBRARY_CHANGE : choose(&run->choices, 4) ? SPZ_LIBRARY_CHANGE : SPZ_LIBRARY_ASK;
    spz_status status = spz_library_open(store, use, NULL, &run->library);
    must(status == SPZ_OK || !run->whole);
    if (status != SPZ_OK && there) { /* what can't be opened is left as it is */
        char *after = file_bytes(store, &after_size);
        must(after_size == before_size && memcmp(before, after, after_size) == 0);
        free(after);
    }
    if (status == SPZ_OK && use == SPZ_LIBRARY_ASK) {
        spz_library_free(run->library);
        run->library = NULL;
        status = spz_library_open(store, SPZ_LIBRARY_CHANGE, NULL, &run->library);
        must(status == SPZ_OK || !run->whole);
    }
    free(before);
}

/* One file, the folder, or a file that isn't there. */
static void add(Run *run)
{
    char path[FUZZ_PATH + 16];
    size_t which = choose(&run->choices, SHELF + 2);
    spz_adding how = {.jobs = 1 + (int)choose(&run->choices, 2), .year = choose(&run->choices, 2) ? 0 : 1750};
    spz_added added;
    path_of(which, path);
    if (which >= SHELF)
        snprintf(path, sizeof path, "%s/shelf", folder);
    const char *const places[] = {path};
    spz_status status = spz_library_add(run->library, places, 1, &how, NULL, &added);
    must(status == SPZ_OK || !run->whole);
    for (size_t i = 0; i < SHELF; i++)
        if ((which >= SHELF || which == i) && run->on_disk[i] != NOTHING)
            run->known[i] = run->on_disk[i];
}

static void forget(Run *run)
{
    static const char *const names[] = {"Canon for a Narrow Hall", "Bench", "Round", "nothing of that name", "", NULL};
    char path[FUZZ_PATH + 16];
    size_t which = choose(&run->choices, SHELF + 2), forgotten = 0, expected = 0;
    path_of(which, path);
    if (which == SHELF)
        snprintf(path, sizeof path, "%s/shelf", folder);
    bool by_name = which > SHELF;
    spz_status status = spz_library_forget(run->library, by_name ? choose_text(&run->choices, names) : path, &forgotten);
    must(status == SPZ_OK || !run->whole);
    if (by_name) {
        run->sure = run->sure && forgotten == 0;
        return;
    }
    for (size_t i = 0; i < SHELF; i++)
        if (which == SHELF || which == i) {
            expected += run->known[i] != NOTHING;
            run->known[i] = NOTHING;
        }
    must(!run->whole || !run->sure || forgotten == expected);
    run->sure = run->sure || which == SHELF;
}

static void tell(Run *run, spz_status status, spz_shelf *shelf)
{
    spz_season_look look = {.width = 60 + (int)choose(&run->choices, 60), .language = (spz_language)choose(&run->choices, SPZ_LANGUAGE_COUNT)};
    must(status == SPZ_OK || !run->whole || status == SPZ_BAD_ARGUMENT || status == SPZ_EMPTY); /* no such work; nothing at that bar to be alike */
    for (int format = SPZ_AS_TEXT; status == SPZ_OK && format <= SPZ_AS_HTML; format++) {
        spz_document *document = NULL;
        must(spz_report_shelf(shelf, (spz_format)format, &look, &document) == SPZ_OK);
        spz_document_free(document);
    }
    spz_shelf_free(shelf);
}

static spz_conditions any_conditions(Choices *choices)
{
    static const char *const texts[] = {NULL, "a", "B", "\xC3\xA9", "%", "_", "'", "", NULL};
    static const char *const seatings[] = {"violins opposed", "violins together, cellos outside", "x", "", NULL};
    unsigned said = (unsigned)choose(choices, 65536);
    spz_conditions c = {0};
    if (said & 1)
        c.composer = texts[choose(choices, 8)];
    if (said & 2)
        c.title = texts[choose(choices, 8)];
    if (said & 4)
        c.from = (int)choose(choices, 2100), c.before = (int)choose(choices, 2100);
    if (said & 8)
        c.shortest = (double)choose(choices, 60), c.longest = (double)choose(choices, 60);
    for (int i = 0; said & 16 && i < SPZ_SHELF_SECTIONS; i++)
        c.players[i] = (int)choose(choices, 20);
    c.too_large = said & 32;
    c.two_orchestras = said & 64;
    c.thirds = said & 128;
    if (said & 256)
        c.seating = choose_text(choices, seatings);
    c.kinds = said & 512 ? (unsigned)choose(choices, 65536) : 0;
    c.strength = said & 1024 ? (double)choose(choices, 256) / 255 : 0;
    c.between[0] = said & 2048 ? (spz_section)choose(choices, SPZ_SECTION_COUNT) : SPZ_NO_SECTION;
    c.between[1] = said & 4096 ? (spz_section)choose(choices, SPZ_SECTION_COUNT) : SPZ_NO_SECTION;
    c.led = said & 8192;
    c.interval = said & 16384 ? (spz_interval)choose(choices, SPZ_INTERVAL_COUNT) : SPZ_ANY_INTERVAL;
    return c;
}

static void ask(Run *run)
{
    static const char *const works[] = {"Canon for a Narrow Hall", "Concerto for Two Landings", "Bench", "e", "", "none", NULL};
    static const char *const seatings[] = {"violins opposed", "violins together, cellos outside", "violins", "none such", NULL};
    static const char *const bars[] = {"1", "2", "3", "X1", "", NULL};
    Choices *choices = &run->choices;
    spz_shelf *shelf = NULL;
    spz_conditions conditions = any_conditions(choices);
    const char *work = choose_text(choices, works);
    size_t most = choose(choices, 4);
    spz_evening evening = {choose(choices, 2) ? choose_text(choices, seatings) : NULL, NULL};
    if (!evening.seating)
        evening.with = work;
    spz_status status;
    switch (choose(choices, 5)) {
    case 0: status = spz_library_find(run->library, &conditions, most, &shelf); break;
    case 1: status = spz_library_show(run->library, work, most, &shelf); break;
    case 2: status = spz_library_fits(run->library, &evening, &conditions, most, &shelf); break;
    case 3: status = spz_library_partners(run->library, work, &conditions, most, &shelf); break;
    default: status = spz_library_alike(run->library, work, choose_text(choices, bars), 0, most, &shelf);
    }
    tell(run, status, shelf);
}

/* The library, held against the list. */
static void check(Run *run)
{
    spz_library_state state;
    spz_conditions all = {0};
    spz_shelf *shelf = NULL;
    size_t files = 0, missing = 0, changed = 0;
    spz_status status = spz_library_check(run->library, NULL, NULL, &state);
    must(status == SPZ_OK || !run->whole);
    for (size_t i = 0; i < SHELF; i++) {
        files += run->known[i] != NOTHING;
        missing += run->known[i] != NOTHING && run->on_disk[i] == NOTHING;
        changed += run->known[i] != NOTHING && run->on_disk[i] != NOTHING && run->on_disk[i] != run->known[i];
    }
    if (run->whole)
        must(state.faults == 0 && state.outdated == 0);
    if (run->whole && run->sure)
        must(state.files == files && state.missing == missing && state.changed == changed);
    status = spz_library_find(run->library, &all, 2, &shelf);
    must(!run->whole || (status == SPZ_OK && spz_shelf_count(shelf) == state.works));
    spz_shelf_free(shelf);
}

/* Bytes written over, cut off or put behind. */
static void damage_bytes(Run *run)
{
    size_t size, times = 1 + choose(&run->choices, 8);
    char *bytes = file_bytes(store, &size);
    for (size_t i = 0; size && i < times; i++) {
        size_t page = choose(&run->choices, size / 4096 + 1), at = page * 4096 + choose(&run->choices, 4096);
        if (at < size)
            bytes[at] = (char)choose(&run->choices, 256);
    }
    if (size && choose(&run->choices, 8) == 1)
        size = choose(&run->choices, 65536) % size;
    file_save(store, bytes, size);
    free(bytes);
}

/* Values that we never write, in a file that is sound as a database. */
static void damage_values(Run *run)
{
    static const char *const columns[] = {
        "file SET path", "file SET content", "file SET terms", "file SET bytes", "file SET changed", "file SET problem", "file SET score", "work SET composer", "work SET name",
        "movement SET number", "movement SET title", "movement SET year", "movement SET bars", "movement SET seconds", "movement SET orchestras", "movement SET thirds",
        "movement SET confidence", "movement SET outcome", "movement SET arrangement", "movement SET work", "movement SET score", "need SET section", "need SET players",
        "passage SET kind", "passage SET first_side", "passage SET second_side", "passage SET first_bar", "passage SET letter", "passage SET strength", "passage SET turns",
        "passage SET semitones", "passage SET steps", "passage SET number", "seat SET arrangement", "seat SET points", "seat SET lost", "seat SET weakens", "seat SET place",
        "seat SET movement", "term SET kind", "term SET points", "part SET section", "entry SET players", "result SET line", NULL};
    static const char *const values[] = {"NULL", "''", "-1", "0", "9223372036854775807", "-9223372036854775808", "1e308", "-1e999", "x'00ff80'", "'\xE2\x80\xAE=1+1'", "'Vn I'", "'exchange'",
                                         "'violins opposed, cellos inside left'", "zeroblob(70000)", "replace(hex(zeroblob(3000)), '0', 'x')", "random()", "rowid", NULL};
    static const char *const schema[] = {"PRAGMA user_version=1", "PRAGMA user_version=99", "PRAGMA user_version=0", "PRAGMA application_id=0", "DROP TABLE result", "DROP TABLE term", "DROP TABLE movement",
                                         "DELETE FROM score", "DELETE FROM work", "DELETE FROM movement WHERE number = 1", "DROP VIEW movements", "CREATE TABLE more (x)", "PRAGMA encoding", NULL};
    char sql[512];
    sqlite3 *base = NULL;
    if (sqlite3_open_v2(store, &base, SQLITE_OPEN_READWRITE, NULL) == SQLITE_OK) {
        sqlite3_exec(base, "PRAGMA foreign_keys=OFF; PRAGMA ignore_check_constraints=ON; PRAGMA synchronous=OFF", NULL, NULL, NULL);
        const char *column = choose_text(&run->choices, columns), *value = choose_text(&run->choices, values);
        if (choose(&run->choices, 6) == 1)
            snprintf(sql, sizeof sql, "%s", choose_text(&run->choices, schema));
        else
            snprintf(sql, sizeof sql, "UPDATE OR IGNORE %s = %s%s", column, value, choose(&run->choices, 2) ? "" : " WHERE random() > 0");
        sqlite3_exec(base, sql, NULL, NULL, NULL);
    }
    sqlite3_close(base);
}

static void damage(Run *run, void (*how)(Run *run))
{
    spz_library_free(run->library);
    run->library = NULL;
    run->whole = false;
    how(run);
    open_again(run);
}

static void step(Run *run)
{
    switch (choose(&run->choices, 12)) {
    case 0:
    case 1: put(run, choose(&run->choices, SHELF)); break;
    case 2:
    case 3: add(run); break;
    case 4:
    case 5:
    case 6: ask(run); break;
    case 7: forget(run); break;
    case 8: check(run); break;
    case 9: open_again(run); break;
    case 10: damage(run, damage_bytes); break;
    default: damage(run, damage_values);
    }
}

/* Each run begins with a library that has some scores in it, or with none. */
static void begin(Run *run)
{
    static char *filled;
    static size_t filled_size;
    char path[FUZZ_PATH + 16];
    bool empty = choose(&run->choices, 4) == 1;
    clear_away();
    for (size_t i = 0; i + 1 < SHELF && (!empty || !filled); i++) {
        path_of(i, path);
        run->on_disk[i] = run->known[i] = (int)(i % content_count);
        file_save(path, content_bytes[i % content_count], content_sizes[i % content_count]);
    }
    if (filled && !empty)
        file_save(store, filled, filled_size);
    must(spz_library_open(store, SPZ_LIBRARY_CHANGE, NULL, &run->library) == SPZ_OK);
    if (filled)
        return;
    snprintf(path, sizeof path, "%s/shelf", folder);
    const char *const places[] = {path};
    spz_added added;
    must(spz_library_add(run->library, places, 1, NULL, NULL, &added) == SPZ_OK && added.heard > 0);
    spz_library_free(run->library);
    filled = file_bytes(store, &filled_size);
    must(spz_library_open(store, SPZ_LIBRARY_CHANGE, NULL, &run->library) == SPZ_OK);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    Run run = {.choices = {data, size}, .whole = true, .sure = true};
    if (!*folder)
        prepare();
    for (size_t i = 0; i < SHELF; i++)
        run.on_disk[i] = run.known[i] = NOTHING;
    begin(&run);
    for (size_t i = 0; run.library && run.choices.left && i < STEPS_MOST; i++)
        step(&run);
    if (run.library)
        check(&run);
    spz_library_free(run.library);
    return 0;
}
