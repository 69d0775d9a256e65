/* shelf.h - an answer: works with their movements and passages, all in one arena. */
#ifndef LIBRARY_SHELF_H
#define LIBRARY_SHELF_H
#include "library/inside.h"
#include "support/arena.h"
#include "support/array.h"
#include "support/buffer.h"

typedef struct ShelfWork {
    long long id;
    spz_shelf_work about;
    ARRAY(spz_shelf_movement) movements;
    ARRAY(long long) ids; /* of the movements */
} ShelfWork;

struct spz_shelf {
    Arena arena;
    const char *question;
    spz_shelf_kind kind;
    ARRAY(ShelfWork) works;
    size_t total; /* works that answer; at least those that are here */
};

spz_shelf *shelf_new(spz_shelf_kind kind, const char *question); /* NULL: no memory */
/* Adds a movement to the last work, or to a new one where it is of another. `row` has the columns of SHELF_COLUMNS. False: no memory. */
#define SHELF_COLUMNS \
    "m.work, w.composer, w.name, m.id, m.title, m.number, m.bars, m.year, m.seconds, m.confidence, m.arrangement, " \
    "(SELECT min(path) FROM file WHERE file.score = m.score) AS place"
bool shelf_take(spz_shelf *shelf, const Query *row);
/* Puts the movements of each work in order of place. */
void shelf_order(spz_shelf *shelf);
/* What is known of each work as a whole: all its movements, found or not. Within a transaction. */
spz_status shelf_complete(spz_shelf *shelf, Store *store);
/* Ends it: movements and question can be looked at. */
void shelf_close(spz_shelf *shelf);
#endif
