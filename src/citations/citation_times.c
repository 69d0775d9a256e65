/* When a moment of the score sounds: the bars in playing order, each as long as the tempo marks make it. */
#include "model/durations.h"
#include "spezzato/sheets.h"
#include "support/text/ascii.h"
#include "support/numbers.h"
#include <stdlib.h>
#include <string.h>

double spz_movement_duration(const spz_movement *movement)
{
    return movement_played_seconds(movement);
}

double spz_movement_sounding(const spz_movement *movement, size_t bar, spz_ticks when, size_t pass, double lasts)
{
    double all = 0, found = -1;
    for (size_t i = 0; i < movement->played_count; i++) {
        if ((size_t)movement->played[i] == bar && found < 0 && pass-- == 0)
            found = all + movement_seconds(movement, movement->bars[bar].onset, when);
        all += movement_bar_seconds(movement, (size_t)movement->played[i]);
    }
    if (found < 0 || lasts <= 0 || all <= 0)
        return found;
    return found / all * lasts;
}

/* '7.10' is how many write seven minutes ten: one or two figures, a point, two figures below sixty. */
static bool is_minutes_and_point(const char *text)
{
    size_t minutes = strspn(text, "0123456789");
    const char *rest = text + minutes;
    return (minutes == 1 || minutes == 2) && rest[0] == '.' && rest[1] >= '0' && rest[1] < '6' && ascii_is_digit(rest[2]) && !rest[3];
}

double spz_seconds_from_text(const char *text)
{
    double total = 0;
    if (is_minutes_and_point(text))
        return (double)strtol(text, NULL, 10) * 60 + (double)strtol(strchr(text, '.') + 1, NULL, 10);
    for (int fields = 0; fields < 3; fields++) {
        const char *end = text;
        double value = *text >= '0' && *text <= '9' ? number_read(text, &end) : 0;
        if (end == text || (fields > 0 && value >= 60) || value > 1e6 || (*end && *end != ':'))
            return -1;
        total = total * 60 + value;
        if (!*end)
            return total;
        text = end + 1;
    }
    return -1;
}
