#include "writing/number_text.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

char *number_text(double value, int decimals, char text[NUMBER_TEXT])
{
    text[0] = '\0';
    if (!isfinite(value) || fabs(value) > 1e15)
        return text;
    double unit = pow(10, -decimals);
    if (fabs(value) < unit / 2)
        value = 0; /* no '-0.00' */
    snprintf(text, NUMBER_TEXT, "%.*f", decimals, value);
    for (char *c = text; *c; c++)
        if (*c == ',') /* the host program may have set a language with decimal commas */
            *c = '.';
    return text;
}

char *number_text_short(double value, int decimals, char text[NUMBER_TEXT])
{
    number_text(value, decimals, text);
    size_t length = strchr(text, '.') ? strlen(text) : 0;
    while (length > 0 && text[length - 1] == '0')
        text[--length] = '\0';
    if (length > 0 && text[length - 1] == '.')
        text[length - 1] = '\0';
    return text;
}

double shown_strength(double strength)
{
    return floor(strength * 100 + 1e-9) / 100;
}
