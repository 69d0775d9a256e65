/* movement_forms.h - what the data of every report say of a movement, and how they begin and end. */
#ifndef PAGES_DATA_MOVEMENT_FORMS_H
#define PAGES_DATA_MOVEMENT_FORMS_H
#include "pages/data/fields.h"
#include "pages/growing_report.h"

/* The movement's own fields, into the object or row that is open. */
void give_movement(FactsOut *out, const ShownMovement *shown);
/* The same cells of a row that stands for all movements. */
void give_all_movements(FactsOut *out, const char *title);
/* `groups`: the bodies of players found. */
void give_groups(FactsOut *out, const spz_sections *sections);
/* Those passages that the user asked for, as `passages`. */
void give_passages(spz_report *report, const ShownMovement *shown);

void data_begin(spz_report *report);
void data_end(spz_report *report);
void data_end_with_cautions(spz_report *report);
void rows_end(spz_report *report);
#endif
