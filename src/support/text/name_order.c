#include "support/text/name_order.h"
#include "support/text/ascii.h"
#include <string.h>

int names_compare(const char *a, const char *b)
{
    const char *left = a, *right = b;
    while (*left && *right) {
        if (ascii_is_digit((unsigned char)*left) && ascii_is_digit((unsigned char)*right)) {
            left += strspn(left, "0");
            right += strspn(right, "0");
            size_t digits = strspn(left, "0123456789"), others = strspn(right, "0123456789");
            int order = digits != others ? (digits < others ? -1 : 1) : strncmp(left, right, digits);
            if (order)
                return order;
            left += digits;
            right += others;
            continue;
        }
        int order = ascii_lower((unsigned char)*left) - ascii_lower((unsigned char)*right);
        if (order)
            return order;
        left++;
        right++;
    }
    return *left ? 1 : *right ? -1 : strcmp(a, b);
}
