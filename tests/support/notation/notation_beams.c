#include "notation_beams.h"

enum { VALUE_CROTCHET = 3 };

static int beam_count(const struct event *event)
{
    if (event->kind != NOTE || event->grace || event->pair_tremolo)
        return 0;
    return event->value > VALUE_CROTCHET ? event->value - VALUE_CROTCHET : 0;
}

static const char *beam_state(bool left, bool right, bool first)
{
    if (left && right)
        return "continue";
    if (left)
        return "end";
    if (right)
        return "begin";
    return first ? "forward hook" : "backward hook";
}

/* Events from..to-1 hang on one primary beam; grace notes between them are passed over. */
static void beam_group(const struct voice *voice, int from, int to, struct beams *beams)
{
    int last = -1;
    for (int e = from; e < to; e++) {
        int count = beam_count(voice->events[e]), next = e + 1;
        if (!count)
            continue;
        while (next < to && voice->events[next]->grace)
            next++;
        for (int level = 0; level < count && level < MOST_BEAMS; level++) {
            bool left = last >= 0 && beam_count(voice->events[last]) > level;
            bool right = next < to && beam_count(voice->events[next]) > level;
            beams[e].states[level] = beam_state(left, right, last < 0);
        }
        last = e;
    }
}

/* A single note keeps its flags. */
static void close_group(const struct voice *voice, int from, int to, struct beams *beams)
{
    int notes = 0;
    for (int e = from; e < to; e++)
        notes += beam_count(voice->events[e]) > 0;
    if (notes > 1)
        beam_group(voice, from, to, beams);
}

static long beat_ticks(int beats, int unit)
{
    long tick = (long)CROTCHET * 4 / unit;
    if (unit >= 8 && beats % 3 == 0)
        return tick * 3;
    return tick < CROTCHET ? CROTCHET : tick > CROTCHET ? CROTCHET : tick;
}

void find_beams(const struct voice *voice, int beats, int unit, struct beams *beams)
{
    long at = 0, beat = beat_ticks(beats, unit);
    int from = 0;
    for (int e = 0; e < voice->count; e++) {
        const struct event *event = voice->events[e];
        bool breaks = !event->grace && beam_count(event) == 0;
        if (!event->grace && (breaks || at % beat == 0)) {
            close_group(voice, from, e, beams);
            from = breaks ? e + 1 : e;
        }
        at += event->ticks;
    }
    close_group(voice, from, voice->count, beams);
}
