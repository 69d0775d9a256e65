/* advice_order.h - one mark a passage and part: what a part is told at one time is told once. */
#ifndef ADVICE_ADVICE_ORDER_H
#define ADVICE_ADVICE_ORDER_H
#include "advice/parts_advice.h"

/* Of passages that overlap for the same players only one keeps its mark: an antiphony before a coupling, the longer before the shorter, the stronger before the
 * weaker. Of another that begins inside it nothing is left; one that began before it ends where it begins. Divisions stay: they are no brackets. The
 * list is by group and moment, before and after. */
bool advice_settle(AdviceList *list); /* false: no memory */
#endif
