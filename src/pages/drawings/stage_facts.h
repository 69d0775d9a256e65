/* stage_facts.h - the sentences that stand under a plan, as drawing and as text. */
#ifndef PAGES_DRAWINGS_STAGE_FACTS_H
#define PAGES_DRAWINGS_STAGE_FACTS_H
#include "spezzato/report.h"
#include "support/buffer.h"

/* 'stage 18 m wide, 11 m deep; the strings take 12.3 m by 9.2 m' */
void stage_facts_size(const spz_plan *plan, Buffer *text);
/* 'first violins to second violins: front desks 4.1 m (12 ms), ...'; nothing where one of them isn't there. */
void stage_facts_distance(const spz_plan *plan, const spz_section pair[2], Buffer *text);
/* 'degrees between them as heard in the hall: front 56, ...' */
void stage_facts_hearing(const spz_plan *plan, const spz_section pair[2], Buffer *text);
/* A place of the audience for a pair: degrees, microseconds between the ears, times what can be told apart. False past the last. */
bool stage_facts_heard(const spz_plan *plan, const spz_section pair[2], size_t place, const char **name, Buffer *text);
/* 'first violins 14, second violins 12, ...' */
void stage_facts_players(const spz_plan *plan, Buffer *text);
#endif
