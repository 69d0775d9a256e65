/* xml_famine.h - libxml2's memory for tests: one request, counted down to, is refused; those before and after it are not. */
#ifndef TESTS_XML_FAMINE_H
#define TESTS_XML_FAMINE_H
#include <stdbool.h>
#include <stddef.h>

/* xmlCreateIOParserCtxt of libxml2 2.9.14 loses its input where memory ends in the middle: three blocks, and no more may be lost. */
enum { XML_FAMINE_LOST_MOST = 3 };

void xml_famine_begin(void); /* from now on every block is remembered, and libxml2 prints nothing */
void xml_famine_refuse(long request); /* the how manieth from now, from 1 */
bool xml_famine_came(void);  /* whether it came; no further one is refused */
size_t xml_famine_lost(void); /* how many blocks were not given back; they are now */
void xml_famine_end(void);
#endif
