/* company.h - how many parts of the score play in each bar: what a passage has to be heard through. */
#ifndef ANALYSIS_COMPANY_H
#define ANALYSIS_COMPANY_H
#include "sections/section_map.h"

typedef struct Company {
    uint16_t *parts; /* a bar: string groups and other parts that begin a note in it */
    size_t bar_count;
} Company;

spz_status company_of(const SectionMap *map, Arena *arena, Company *out);

/* Share of the parts that play in the bars first..last that `own` of them make up, 0..1. */
double company_share(const Company *company, size_t first, size_t last, double own);
#endif
