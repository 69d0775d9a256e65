/* changeover_forms.h - a change of seating as JSON, wherever a season tells one. */
#ifndef PAGES_DATA_CHANGEOVER_FORMS_H
#define PAGES_DATA_CHANGEOVER_FORMS_H
#include "spezzato/season.h"
#include "writing/facts.h"

/* Writes it as one object; a key for it stands already, or an array is open. */
void give_change(FactsOut *out, const spz_changeover *change);
#endif
