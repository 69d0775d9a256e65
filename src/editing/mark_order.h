/* mark_order.h - which of a part's advice is written into the marked score, and over which of it a line is drawn: no two lines lie over each other. */
#ifndef EDITING_MARK_ORDER_H
#define EDITING_MARK_ORDER_H
#include "advice/parts_advice.h"

typedef struct Signing {
    bool dropped;   /* it lies wholly within another, on every side of its passage: the sheet alone has it */
    Ticks signed_to; /* where its bracket or its dashes end; its beginning: words alone */
} Signing;

/* One for each item of the list, in its order; to release with memory_free. NULL: no memory.
 *
 * An antiphony is signed before a coupling, the longer before the shorter, the stronger before the weaker. Another that begins before one that is signed has its sign
 * as far as that one's; one that begins under a sign has words alone. What a part is told while a passage that goes before it lasts is nested in that, if the other's
 * weight is no less: it is dropped where every side of its passage is nested so, as half of a dialogue would be none. Divisions stay: they are no brackets. */
Signing *mark_order(const AdviceList *list);
#endif
