/* What could not be used of a table, or is doubtful in it. */
#include "season/table/season_table.h"
#include "support/message.h"
#include <stdlib.h>
#include <string.h>

void table_tell(SeasonTable *table, const spz_sink *sink, const spz_table_note *note)
{
    spz_table_note kept = *note;
    spz_message message = {.severity = note->doubt ? SPZ_DOUBT : SPZ_ERROR, .file = table->path, .line = note->line, .fault = note->fault,
                           .name = note->name, .other = note->other, .count = note->count};
    message_fault(sink, &message);
    kept.name = arena_string(&table->arena, note->name ? note->name : "");
    kept.other = arena_string(&table->arena, note->other ? note->other : "");
    if (!kept.name || !kept.other || !array_push(&table->notes, kept))
        table->starved = true;
    table->faults += !note->doubt;
}

/* By line; the fault and what it names settle equals, so that the order is the same everywhere. */
static int by_line(const void *a, const void *b)
{
    const spz_table_note *left = a, *right = b;
    if (left->line != right->line)
        return left->line < right->line ? -1 : 1;
    return left->fault != right->fault ? (left->fault < right->fault ? -1 : 1) : strcmp(left->name, right->name);
}

void table_sort_notes(SeasonTable *table)
{
    if (table->notes.count)
        qsort(table->notes.at, table->notes.count, sizeof *table->notes.at, by_line);
}
