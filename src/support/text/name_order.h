/* name_order.h - the order in which people expect names: parts of digits by their value, letters without capitals, bytes at last. */
#ifndef SUPPORT_NAME_ORDER_H
#define SUPPORT_NAME_ORDER_H

int names_compare(const char *a, const char *b);
#endif
