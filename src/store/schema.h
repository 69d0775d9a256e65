/* schema.h - what a library looks like inside, edition by edition: each script leads from the one before it. docs/scores.md explains the tables to
 * people who know SQL. */
#ifndef STORE_SCHEMA_H
#define STORE_SCHEMA_H

enum { STORE_MARK = 0x73707a6c }; /* 'spzl', SQLite's application_id */

/* Files beside this one (Makefile: FILE.sql becomes text_FILE_sql). */
extern const char text_schema_1_sql[], text_schema_2_sql[], text_schema_3_sql[];

static const char *const schema_steps[] = {text_schema_1_sql, text_schema_2_sql, text_schema_3_sql};
enum { SCHEMA_VERSION = sizeof schema_steps / sizeof *schema_steps };
#endif
