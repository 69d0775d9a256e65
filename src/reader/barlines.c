/* barlines.c - repeats, endings, final barlines. */
#include "reader/reader.h"
#include <string.h>

void read_barline_start(Reader *reader)
{
    char text[64];
    Bar *bar = reader_bar(reader);
    reader->barline = BARLINE_RIGHT;
    if (reader_attribute_is(reader, ATTRIBUTE_LOCATION, "left"))
        reader->barline = BARLINE_LEFT;
    else if (reader_attribute_is(reader, ATTRIBUTE_LOCATION, "middle"))
        reader->barline = BARLINE_MIDDLE;
    if (!bar)
        return;
    if (reader_attribute(reader, ATTRIBUTE_SEGNO, text, sizeof text)) {
        bar->segno = true;
        bar->segno_name = bar->segno_name ? bar->segno_name : reader_keep(reader, text);
    }
    if (reader_attribute(reader, ATTRIBUTE_CODA, text, sizeof text)) {
        bar->coda = true;
        bar->coda_name = bar->coda_name ? bar->coda_name : reader_keep(reader, text);
    }
}

void read_bar_style_end(Reader *reader)
{
    Bar *bar = reader_bar(reader);
    if (bar && reader->barline == BARLINE_RIGHT && strcmp(reader_text(reader), "light-heavy") == 0)
        bar->final = true;
    else if (bar && reader->barline == BARLINE_RIGHT && strcmp(reader_text(reader), "light-light") == 0)
        bar->double_bar = true;
}

uint32_t passes_in(const char *text)
{
    uint32_t bits = 0;
    int last = 0;
    while (*text) {
        int number = 0;
        bool range = false;
        for (; *text && !(*text >= '0' && *text <= '9'); text++)
            range |= *text == '-';
        for (; *text >= '0' && *text <= '9'; text++)
            number = number < 100 ? number * 10 + (*text - '0') : number;
        if (number < 1 || number > 32)
            continue;
        for (int n = range && last ? last : number; n <= number; n++)
            bits |= UINT32_C(1) << (n - 1);
        last = number;
    }
    return bits;
}

void read_ending_start(Reader *reader)
{
    char number[64] = "";
    Bar *bar = reader_bar(reader);
    if (!bar || reader_parent(reader) != ELEMENT_BARLINE)
        return;
    reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number);
    uint32_t bits = passes_in(number);
    if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "start")) {
        bar->ending_start = true;
        bar->ending |= bits;
    } else {
        bar->ending_stop = true; /* of an ending that began here or before; an end without a beginning is none */
    }
}

/* A forward sign at the end of a bar is meant for the next; a backward sign at its start for the one before. */
void read_repeat_start(Reader *reader)
{
    char times[16];
    int64_t count = 2;
    Bar *bar = reader_bar(reader);
    if (!bar || reader_parent(reader) != ELEMENT_BARLINE)
        return;
    if (reader_attribute_is(reader, ATTRIBUTE_DIRECTION, "forward")) {
        if (reader->barline == BARLINE_RIGHT && reader->place.furthest > 0)
            bar->repeat_start_next = true;
        else
            bar->repeat_start = true;
        return;
    }
    if (reader->barline == BARLINE_LEFT && reader->place.bar == 0) {
        reader_doubt(reader, SPZ_FAULT_REPEAT_AT_FIRST_BAR, NULL);
        return;
    }
    if (reader->barline == BARLINE_MIDDLE)
        reader_doubt(reader, SPZ_FAULT_REPEAT_INSIDE_BAR, NULL);
    if (reader->barline == BARLINE_LEFT)
        bar--;
    bar->repeat_end = true;
    bar->repeat_after_jump |= reader_attribute_is(reader, ATTRIBUTE_AFTER_JUMP, "yes");
    if (reader_attribute(reader, ATTRIBUTE_TIMES, times, sizeof times) && number_whole(times, &count) && count >= 1 && count <= 100)
        bar->repeat_times = (uint8_t)count;
}
