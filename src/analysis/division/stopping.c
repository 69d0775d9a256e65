/* Search over the strings, highest note on the highest string first: at most 5! placings, in practice a handful, because two
 * notes in order of pitch lie on strings in the same order but for unisons and the rare crossing, which is tried too. */
#include "analysis/division/stopping.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* String lengths are those of full-size instruments (common practice: 328, 370, 690 and 1060 mm). `frame` is the widest stretch
 * asked of an orchestral player; set so that what the orchestration books allow comes out as allowed:
 *   violin  octaves between two stopped strings from the first position on (73 mm, and 78 a semitone lower; Forsyth 1914, Piston
 *           1955 and Adler, from memory); ninths and tenths low on the strings are soloists' matter (87 mm and more)
 *   viola   the same intervals on the longer string: 83 and 88 mm
 *   cello   first to fourth finger extended: a major third in first position, 127 mm (sevenths across two strings); octaves only
 *           where the thumb can take the lower note, from about the fourth position up (Piston, Adler, from memory)
 *   bass    first to fourth finger a whole tone, 109 mm in half position; wider only higher up or with an open string
 * `highest`: semitones above the open string that orchestral parts reach, on the top string and on the others. */
static const struct {
    const char *name;
    double length, frame;
    int strings, open[STRINGS_MOST];
    int highest_top, highest_other;
} instruments[INSTRUMENT_COUNT] = {
    [INSTRUMENT_VIOLIN] = { "violin", 328, 78, 4, { 76, 69, 62, 55, 0 }, 31, 24 },
    [INSTRUMENT_VIOLA] = { "viola", 370, 88, 4, { 69, 62, 55, 48, 0 }, 28, 22 },
    [INSTRUMENT_CELLO] = { "cello", 690, 130, 4, { 57, 50, 43, 36, 0 }, 31, 24 },
    [INSTRUMENT_BASS_FOUR] = { "four-string bass", 1060, 110, 4, { 43, 38, 33, 28, 0 }, 24, 19 },
    [INSTRUMENT_BASS_FIVE] = { "five-string bass", 1060, 110, 5, { 43, 38, 33, 28, 23 }, 24, 19 },
};

enum { FINGERS = 4, BOWED_AT_ONCE = 3 };

/* Players would rather stretch than climb: a semitone up the string costs as much as this share of the widest stretch. */
static const double climbing = 0.05;

/* Natural harmonics: interval over the open string, and where the string is touched for it (semitones above the nut). */
static const struct { int sounds, touched[3]; } harmonics_table[] = {
    { 12, { 12, 12, 12 } }, { 19, { 7, 19, 19 } }, { 24, { 5, 24, 24 } }, { 28, { 4, 9, 16 } },
};

typedef struct Placing {
    int string[CHORD_MOST], stop[CHORD_MOST]; /* string from 0, the highest */
    bool touched[CHORD_MOST];
} Placing;

typedef struct Search {
    Instrument instrument;
    const int *midi;
    const bool *harmonics;
    int count;
    bool found;
    Placing now, best;
    double best_cost, best_frame;
    int best_low;
} Search;

static double place_on_string(Instrument instrument, int stop)
{
    return instruments[instrument].length * (1 - pow(2, -stop / 12.0));
}

/* Strings used must lie side by side. */
static bool strings_adjacent(const Search *search)
{
    int low = STRINGS_MOST, high = -1;
    for (int i = 0; i < search->count; i++) {
        low = search->now.string[i] < low ? search->now.string[i] : low;
        high = search->now.string[i] > high ? search->now.string[i] : high;
    }
    return high - low == search->count - 1;
}

/* A finger per stop; one finger may lie across neighbouring strings at the same stop. */
static int fingers_needed(const Search *search)
{
    int fingers = 0;
    for (int i = 0; i < search->count; i++) {
        if (!search->now.stop[i])
            continue;
        bool lies_across = false;
        for (int j = 0; j < i; j++)
            lies_across |= search->now.stop[j] == search->now.stop[i] && abs(search->now.string[j] - search->now.string[i]) == 1;
        fingers += !lies_across;
    }
    return fingers;
}

static void judge_placing(Search *search)
{
    int low = 0, high = 0;
    for (int i = 0; i < search->count; i++) {
        int stop = search->now.stop[i];
        if (stop && (!low || stop < low))
            low = stop;
        high = stop > high ? stop : high;
    }
    double frame = place_on_string(search->instrument, high) - place_on_string(search->instrument, low);
    if (frame > instruments[search->instrument].frame || fingers_needed(search) > FINGERS || !strings_adjacent(search))
        return;
    double cost = frame / instruments[search->instrument].frame + climbing * low;
    if (search->found && cost >= search->best_cost)
        return;
    search->found = true;
    search->best = search->now;
    search->best_cost = cost;
    search->best_frame = frame;
    search->best_low = low;
}

static void place_note(Search *search, int index, unsigned taken);

static void try_stop(Search *search, int index, unsigned taken, int string, int stop, bool touched)
{
    int most = string ? instruments[search->instrument].highest_other : instruments[search->instrument].highest_top;
    if (stop < 0 || stop > most)
        return;
    search->now.string[index] = string;
    search->now.stop[index] = stop;
    search->now.touched[index] = touched;
    place_note(search, index + 1, taken | 1u << string);
}

static void try_harmonics(Search *search, int index, unsigned taken, int string, int interval)
{
    for (size_t i = 0; i < sizeof harmonics_table / sizeof *harmonics_table; i++)
        if (harmonics_table[i].sounds == interval)
            for (int j = 0; j < 3; j++)
                if (!j || harmonics_table[i].touched[j] != harmonics_table[i].touched[j - 1])
                    try_stop(search, index, taken, string, harmonics_table[i].touched[j], true);
}

static void place_note(Search *search, int index, unsigned taken)
{
    if (index == search->count) {
        judge_placing(search);
        return;
    }
    for (int string = 0; string < instruments[search->instrument].strings; string++) {
        if (taken & 1u << string)
            continue;
        int interval = search->midi[index] - instruments[search->instrument].open[string];
        if (search->harmonics && search->harmonics[index])
            try_harmonics(search, index, taken, string, interval);
        else
            try_stop(search, index, taken, string, interval, false);
    }
}

/* How many strings can be made to sound in this manner: held chords and tremolos keep to two (the bow can't stay on three); three
 * are struck at once; four are broken. Plucked chords are spread by the thumb from three notes on. */
static Stopping verdict_for(int count, Manner manner)
{
    switch (manner) {
    case MANNER_TREMOLO: return count <= 2 ? STOPPED_AT_ONCE : STOPPED_NEVER;
    case MANNER_HELD: return count <= 2 ? STOPPED_AT_ONCE : STOPPED_BROKEN;
    case MANNER_PLUCKED: return count <= 2 ? STOPPED_AT_ONCE : STOPPED_BROKEN;
    case MANNER_STRUCK: break;
    }
    return count <= BOWED_AT_ONCE ? STOPPED_AT_ONCE : STOPPED_BROKEN;
}

/* Position by the lowest stop, counting diatonic steps: the first finger stands a tone (or semitone) above the nut in the
 * first. */
static int position_of(int low)
{
    static const int positions[] = { 0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 7, 8 };
    return low < 13 ? positions[low] : 8 + (low - 12) / 2;
}

static void describe(const Search *search, Stopping verdict, Fingering *out)
{
    memset(out, 0, sizeof *out);
    out->verdict = verdict;
    if (!search->found)
        return;
    out->count = search->count;
    for (int i = 0; i < search->count; i++) {
        out->string[i] = search->best.string[i] + 1;
        out->stop[i] = search->best.stop[i];
        out->harmonic[i] = search->best.touched[i];
    }
    out->position = position_of(search->best_low);
    out->frame = search->best_frame;
}

Stopping stopping_find(Instrument instrument, const int *midi, const bool *harmonics, int count, Manner manner, Fingering *out)
{
    Search search = { .instrument = instrument, .midi = midi, .harmonics = harmonics, .count = count };
    Stopping verdict = STOPPED_NEVER;
    if (count > 0 && count <= instruments[instrument].strings) {
        place_note(&search, 0, 0);
        if (search.found)
            verdict = verdict_for(count, manner);
    }
    if (out)
        describe(&search, verdict, out);
    return verdict;
}

const char *instrument_name(Instrument instrument)
{
    return instruments[instrument].name;
}
