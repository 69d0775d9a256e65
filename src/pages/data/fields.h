/* fields.h - the tables of fields and the columns of all reports: what docs/ list. Each stands in the file that gives its records. */
#ifndef PAGES_DATA_FIELDS_H
#define PAGES_DATA_FIELDS_H
#include "writing/facts.h"

extern const FieldTable movement_fields, summary_fields;
extern const FieldTable passage_fields, link_fields, entry_fields;
extern const FieldTable line_fields, clue_fields;
extern const FieldTable verdict_fields, year_fields, ranked_fields, term_fields, loss_fields, reason_fields;
extern const FieldTable sound_fields, source_fields;
extern const FieldTable doubt_fields;
extern const FieldTable laid_fields;
extern const FieldTable setting_fields, setting_entry_fields;
extern const FieldTable concert_fields, work_fields, planned_fields, change_fields, move_fields, desk_fields, other_fields, other_change_fields, total_fields,
    season_note_fields, conflict_fields;
extern const FieldTable event_fields;
extern const FieldTable shelf_fields, shelf_work_fields, shelf_movement_fields, shelf_passage_fields;

extern const Columns movements_columns, sections_columns, passages_columns, seating_columns, streams_columns, named_streams_columns,
    doubts_columns, settings_columns, shelf_columns, laying_columns, season_columns;
#endif
