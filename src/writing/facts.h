/* facts.h - facts as tables of fields. One table says of a kind of record which fields it has, in which forms they stand and what they mean; JSON, CSV and
 * the lists in docs/ are made from it. Whoever has a record gives its fields in the table's order, each by its name; what a form does not show is
 * passed over. A name out of order, and a field left out that is not marked so, fail the report: no form can tell less than its table. */
#ifndef WRITING_FACTS_H
#define WRITING_FACTS_H
#include "writing/csv_text.h"
#include "writing/json.h"

enum { /* where a field stands */
    IN_JSON = 1,
    IN_CSV = 2,
    IN_BOTH = IN_JSON | IN_CSV,
    IN_SUMMARY = 4,  /* a second CSV of the same record: a row for all of it */
    SOMETIMES = 8,   /* left out of JSON where the record has none */
};

typedef struct Field {
    const char *name;
    unsigned forms;
    const char *meaning; /* for docs/, in Markdown */
} Field;

typedef struct FieldTable {
    const char *name; /* as docs/ ask for it */
    const Field *fields;
    size_t count;
} FieldTable;
#define FIELD_TABLE(title, list) {title, list, sizeof(list) / sizeof *(list)}

enum { RECORDS_MOST = 4 };

typedef struct Columns { /* a table of comma-separated values: its records side by side in each row */
    const char *name;
    unsigned form;
    const FieldTable *records[RECORDS_MOST]; /* as many as there are */
} Columns;

typedef struct FactsOut { /* one document under way */
    Json json;
    CsvRow row;
    unsigned form;
    Buffer words; /* a text being put together */
} FactsOut;

typedef struct Facts { /* one record under way */
    FactsOut *out;
    const FieldTable *table;
    size_t next; /* field of the table */
} Facts;

void facts_begin(FactsOut *facts, Buffer *out); /* JSON, until facts_columns */
/* From now on rows of this table; its heads are written. */
void facts_columns(FactsOut *facts, const Columns *columns);
void facts_end_row(FactsOut *facts);
void facts_finish(FactsOut *facts); /* what is left open fails; frees the text */

/* The fields of an object that is open, or a row's next cells. */
Facts facts_of(FactsOut *out, const FieldTable *table);
Facts facts_object(FactsOut *out, const FieldTable *table); /* opens the object */
Facts facts_line(FactsOut *out, const FieldTable *table);   /* the same on one line */
void facts_done(Facts *facts);                              /* all fields given; opens or closes nothing */
void facts_close(Facts *facts);                             /* the same, and closes the object */

void fact_text(Facts *facts, const char *name, const char *text); /* NULL: null, an empty cell */
void fact_integer(Facts *facts, const char *name, long long value);
void fact_number(Facts *facts, const char *name, double value, int decimals); /* null, empty where not finite */
void fact_flag(Facts *facts, const char *name, bool value);                   /* 0 and 1 in a cell */
void fact_nothing(Facts *facts, const char *name);
void fact_some(Facts *facts, const char *name, bool there, long long value); /* an integer, or nothing */
/* What was put into out->words, which is emptied; NULL for `without` gives nothing where it is empty. */
void fact_said(Facts *facts, const char *name, const char *without);
/* Opens an array: its items go to the JSON, facts_end_list closes it. False where the form has no such field. */
bool fact_array(Facts *facts, const char *name);
bool fact_list(Facts *facts, const char *name); /* on one line */
bool fact_object(Facts *facts, const char *name); /* the key of an object that the caller opens */
void facts_end_list(Facts *facts);
#endif
