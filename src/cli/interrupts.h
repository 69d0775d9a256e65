/* interrupts.h - a first interrupt ends a run after the scores at hand, whose results are kept; a second one at once. */
#ifndef CLI_INTERRUPTS_H
#define CLI_INTERRUPTS_H
#include <stdbool.h>

void interrupts_hear(void);
void interrupts_leave(void);
bool interrupts_came(void *context); /* `stop` of long runs; the context is not used */
#endif
