/* Fills the lists of fields and columns in a page of docs/ from the program's own tables:

       fields < docs/output.md > new

   What stands between <!-- fields: NAME --> or <!-- columns: NAME --> and <!-- end --> is written anew; the rest stays. Status 1 where a name is none. */
#include "pages/data/fields.h"
#include "pages/season_forms.h"
#include "pages/sheets/notes/notes_sheet.h"
#include "pages/sheets/bowings/bowings_sheet.h"
#include "pages/sheets/parts_sheet.h"
#include "pages/sheets/rehearsal_sheet.h"
#include <stdio.h>
#include <string.h>

enum { LINE = 4096 };

static const FieldTable *const tables[] = {
    &movement_fields, &summary_fields, &passage_fields, &link_fields,    &entry_fields,         &line_fields,    &clue_fields,   &verdict_fields, &year_fields, &ranked_fields,
    &term_fields,     &loss_fields,    &reason_fields,  &sound_fields,         &doubt_fields,   &setting_fields, &concert_fields, &work_fields,
    &planned_fields,  &change_fields,  &move_fields,      &desk_fields,    &other_fields,         &other_change_fields, &total_fields,  &setting_entry_fields, &noted_movement_fields, &citation_fields, &heard_fields, &bowings_movement_fields, &gesture_fields, &gesture_section_fields, &bowing_difference_fields, &parts_movement_fields, &advice_fields, &event_fields, &calendar_fields,
    &laid_fields, &season_note_fields, &conflict_fields,
    &rehearsal_movement_fields, &call_fields, &rehearsal_item_fields,
    &shelf_fields, &shelf_work_fields, &shelf_movement_fields, &shelf_passage_fields,
};

static const Columns *const columns[] = {
    &movements_columns, &sections_columns, &passages_columns, &seating_columns, &streams_columns, &named_streams_columns, &doubts_columns, &settings_columns, &notes_columns, &parts_columns, &bowings_columns, &season_columns, &calendar_columns, &rehearsal_columns, &shelf_columns, &laying_columns,
};

static const char *forms_text(unsigned forms)
{
    unsigned csv = forms & (IN_CSV | IN_SUMMARY);
    return forms & IN_JSON ? csv ? "JSON, CSV" : "JSON" : "CSV";
}

static bool write_fields(const char *name)
{
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        if (strcmp(tables[i]->name, name) != 0)
            continue;
        puts("| field | in | meaning |\n|---|---|---|");
        for (size_t f = 0; f < tables[i]->count; f++) {
            const Field *field = &tables[i]->fields[f];
            printf("| `%s` | %s | %s%s |\n", field->name, forms_text(field->forms), field->meaning,
                   field->forms & SOMETIMES ? "; only where there is one" : "");
        }
        return true;
    }
    return false;
}

static void write_record(const FieldTable *record, unsigned form, const char **between)
{
    for (size_t f = 0; f < record->count; f++) {
        if (!(record->fields[f].forms & form))
            continue;
        printf("%s%s", *between, record->fields[f].name);
        *between = ", ";
    }
}

static bool write_columns(const char *name)
{
    for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
        const char *between = "CSV: ";
        if (strcmp(columns[i]->name, name) != 0)
            continue;
        for (size_t r = 0; r < RECORDS_MOST && columns[i]->records[r]; r++)
            write_record(columns[i]->records[r], columns[i]->form, &between);
        puts(".");
        return true;
    }
    return false;
}

/* What the mark asks for; true where it is no mark. */
static bool write_asked(const char *line, bool *filled)
{
    char what[16], name[64];
    if (sscanf(line, "<!-- %15[a-z]: %63[a-z ]-->", what, name) != 2)
        return true;
    *filled = true;
    name[strcspn(name, "\n")] = '\0';
    while (*name && name[strlen(name) - 1] == ' ')
        name[strlen(name) - 1] = '\0';
    if (strcmp(what, "fields") == 0 ? write_fields(name) : write_columns(name))
        return true;
    fprintf(stderr, "there is no list of %s called '%s'\n", what, name);
    return false;
}

int main(void)
{
    char line[LINE];
    bool filled = false, right = true;
    while (fgets(line, sizeof line, stdin)) {
        if (strncmp(line, "<!-- end -->", 12) == 0)
            filled = false;
        if (filled)
            continue;
        fputs(line, stdout);
        right = write_asked(line, &filled) && right;
    }
    return right && !filled ? 0 : 1;
}
