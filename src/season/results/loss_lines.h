/* loss_lines.h - what a seating weakens, kept with a score's results: kinds, sections and bars; not the passages one by one. */
#ifndef SEASON_RESULTS_LOSS_LINES_H
#define SEASON_RESULTS_LOSS_LINES_H
#include "season/results/json_reader.h"
#include "spezzato/seating.h"
#include "writing/json.h"

/* A copy in the arena. NULL: no memory. */
const spz_loss *losses_keep(Arena *arena, const spz_loss *losses, size_t count);
/* As the member 'losses' of the object under way. */
void losses_write(Json *json, const spz_loss *losses, size_t count);
/* The member 'losses' of the object; false where it is missing or damaged. Texts stay where the JSON has them. */
bool losses_read(const JsonValue *object, Arena *arena, const spz_loss **losses, size_t *count);
#endif
