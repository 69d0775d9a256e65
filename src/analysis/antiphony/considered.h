/* considered.h - the public explanation (include/spezzato/explain.h) is made from a AntiphonySearch: what detect_antiphony saw, nothing else.
 *
 * The fate of a match is read off what the search left behind: taken or not, in a chain that stayed or not. What stood in its way is the strongest
 * match taken beside it, or the passage that tells most of its bars. What sets a match off from the clear passages of its
 * movement is the difference of their log odds, summed over features that mean the same to a musician. */
#ifndef ANALYSIS_ANTIPHONY_CONSIDERED_H
#define ANALYSIS_ANTIPHONY_CONSIDERED_H
#include "spezzato/explain.h"
#endif
