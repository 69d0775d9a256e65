/* Completes a score that has been read (copied bars, rests of a whole bar, endings) and checks bar lengths and ties. */
#include "notation_score.h"

#include <stdio.h>
#include <string.h>

void score_time_at(const struct score *score, int index, int *beats, int *unit)
{
    *beats = *unit = 4;
    for (int i = 0; i <= index && i < score->frame_count; i++)
        if (score->frames[i].unit) {
            *beats = score->frames[i].beats;
            *unit = score->frames[i].unit;
        }
}

long score_bar_ticks(const struct score *score, int index)
{
    int beats, unit;
    if (score->frames[index].length)
        return score->frames[index].length;
    score_time_at(score, index, &beats, &unit);
    return (long)CROTCHET * 4 * beats / unit;
}

static bool fail_at(struct score *score, const struct part *part, int index, int line, const char *text)
{
    char label[32];
    score_bar_label(score, index, label, sizeof label);
    return score_fail(score, line, "%s, bar %s: %s", part->name, label, text);
}

static bool resolve(struct score *score, struct part *part, int staff, int index);

static bool resolve_from(struct score *score, struct part *from, int staff, int index, struct bar *bar)
{
    if (!resolve(score, from, staff, index))
        return false;
    const struct bar *source = &from->staves[staff].bars[index];
    memcpy(bar->voices, source->voices, sizeof bar->voices);
    bar->voice_count = source->voice_count;
    bar->octave_shift = source->octave_shift + bar->with_octave;
    return true;
}

/* Gives a bar that stands for another ('%', '{col ...}') that bar's notes. */
static bool resolve(struct score *score, struct part *part, int staff, int index)
{
    struct bar *bar = &part->staves[staff].bars[index];
    if (bar->resolving)
        return fail_at(score, part, index, bar->line, "two parts are written as doubling each other");
    bool done = true;
    bar->resolving = true;
    if (bar->same_again) {
        bar->without_directions = true;
        done = resolve_from(score, part, staff, index - 1, bar);
        bar->same_again = !done;
    } else if (bar->with_part) {
        struct part *from = score_part(score, bar->with_part, strlen(bar->with_part), false);
        bar->without_words = true;
        done = from && index < from->staves[0].count ? resolve_from(score, from, 0, index, bar)
                                                     : fail_at(score, part, index, bar->line, "the part to double is not there");
        bar->with_part = NULL;
    }
    bar->resolving = false;
    return done;
}

static void whole_rests(const struct score *score, struct bar *bar, int index)
{
    for (int v = 0; v < bar->voice_count; v++)
        for (int e = 0; e < bar->voices[v].count; e++)
            if (bar->voices[v].events[e]->kind == WHOLE_REST)
                bar->voices[v].events[e]->ticks = score_bar_ticks(score, index);
}

/* 'five', '3 1/2' */
static void count_in_words(long ticks, long beat, char *text, size_t size)
{
    static const char *const words[] = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"};
    long whole = ticks / beat, over = ticks % beat, a = over, b = beat;
    while (a) {
        long rest = b % a;
        b = a;
        a = rest;
    }
    if (over && whole)
        snprintf(text, size, "%ld %ld/%ld", whole, over / b, beat / b);
    else if (over)
        snprintf(text, size, "%ld/%ld", over / b, beat / b);
    else if (whole < 13)
        snprintf(text, size, "%s", words[whole]);
    else
        snprintf(text, size, "%ld", whole);
}

static bool check_length(struct score *score, const struct part *part, const struct bar *bar, int index)
{
    int beats, unit;
    char text[200], count[64];
    score_time_at(score, index, &beats, &unit);
    for (int v = 0; v < bar->voice_count; v++) {
        long ticks = 0;
        for (int e = 0; e < bar->voices[v].count; e++)
            ticks += bar->voices[v].events[e]->ticks;
        if (ticks == score_bar_ticks(score, index))
            continue;
        count_in_words(ticks, (long)CROTCHET * 4 / unit, count, sizeof count);
        snprintf(text, sizeof text, "%s beat%s in a %s%d/%d bar%s", count, strcmp(count, "one") ? "s" : "",
                 score->frames[index].length ? "shortened " : "", beats, unit, v ? " (in a further voice)" : "");
        return fail_at(score, part, index, bar->line, text);
    }
    return true;
}

static bool same_pitches(const struct event *event, int shift, const struct event *next, int next_shift)
{
    for (int i = 0; i < event->pitch_count; i++) {
        bool found = false;
        for (int k = 0; k < next->pitch_count; k++)
            found |= event->pitches[i].step == next->pitches[k].step && event->pitches[i].alter == next->pitches[k].alter &&
                     event->pitches[i].octave + shift == next->pitches[k].octave + next_shift;
        if (!found)
            return false;
    }
    return true;
}

/* A tie must reach the same notes in the same voice; next is NULL when the voice ends. */
static bool tie_arrives(const struct event *tied, int shift, const struct event *next, int next_shift)
{
    return next && next->kind == NOTE && same_pitches(tied, shift, next, next_shift);
}

static bool check_ties(struct score *score, const struct part *part, const struct staff *staff, int voice)
{
    const struct event *tied = NULL;
    int shift = 0, at = 0;
    for (int b = 0; b < staff->count; b++) {
        const struct bar *bar = &staff->bars[b];
        for (int e = 0; voice < bar->voice_count && e < bar->voices[voice].count; e++) {
            const struct event *event = bar->voices[voice].events[e];
            if (tied && !tie_arrives(tied, shift, event, bar->octave_shift))
                return fail_at(score, part, at, tied->line, "a tie does not reach the same note");
            tied = event->tie ? event : NULL;
            shift = bar->octave_shift;
            at = b;
        }
    }
    return !tied || fail_at(score, part, at, tied->line, "a tie does not reach the same note");
}

/* An ending lasts to the next repeat sign, double barline or further ending. */
static void close_endings(struct score *score)
{
    bool open = false;
    for (int i = 0; i < score->frame_count; i++) {
        struct frame *frame = &score->frames[i];
        open |= frame->ending != NULL;
        bool last = i + 1 == score->frame_count || score->frames[i + 1].ending;
        if (open && (frame->repeat_end || frame->barline || last)) {
            frame->ending_stop = true;
            open = false;
        }
    }
}

static bool complete_staff(struct score *score, struct part *part, int number)
{
    struct staff *staff = &part->staves[number];
    for (int b = 0; b < staff->count; b++) {
        if (!resolve(score, part, number, b))
            return false;
        whole_rests(score, &staff->bars[b], b);
        if (!check_length(score, part, &staff->bars[b], b))
            return false;
    }
    for (int v = 0; v < MOST_VOICES; v++)
        if (!check_ties(score, part, staff, v))
            return false;
    return true;
}

bool score_complete(struct score *score)
{
    close_endings(score);
    for (int p = 0; p < score->part_count; p++)
        for (int s = 0; s < score->parts[p].staff_count; s++)
            if (!complete_staff(score, &score->parts[p], s))
                return false;
    return true;
}
