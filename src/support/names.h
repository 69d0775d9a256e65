/* names.h - the order in which people expect names: parts of digits by their value, letters without capitals, bytes at last. */
#ifndef SUPPORT_NAMES_H
#define SUPPORT_NAMES_H

int names_compare(const char *a, const char *b);
#endif
