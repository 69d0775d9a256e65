/* playing_order.h - the order in which the bars sound: repeats, endings, da capo, dal segno, coda, fine. The rule is written in
 * docs/formats.md. Never runs in circles: each jump is taken once, each repeat as often as it says. */
#ifndef MODEL_PLAYING_ORDER_H
#define MODEL_PLAYING_ORDER_H
#include "model/movement.h"

/* Fills movement->played (from `arena`). */
spz_status playing_order_find(Movement *movement, Arena *arena);
#endif
