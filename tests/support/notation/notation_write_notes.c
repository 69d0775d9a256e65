/* Writes notes and rests, with their accidentals, beams, ties and marks. */
#include "notation_beams.h"
#include "notation_writer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *const value_names[] = {"breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th"};

static void write_pitch(struct writer *w, const struct pitch *pitch, int shift)
{
    const char step[2] = {pitch->step, '\0'};
    open_element(w, "pitch");
    leaf(w, "step", step);
    if (pitch->alter)
        number_leaf(w, "alter", pitch->alter);
    number_leaf(w, "octave", pitch->octave + shift);
    close_element(w);
}

/* The accidental sign that a note needs after the key and the notes before it in the bar; NULL for none. */
static const char *accidental(struct writer *w, const struct pitch *pitch, int shift)
{
    static const char *const signs[] = {"flat-flat", "flat", "natural", "sharp", "double-sharp"};
    int *alter = &w->accidentals.alter[pitch->step - 'A'][(pitch->octave + shift + 10) % 10];
    if (*alter == pitch->alter && !pitch->show_natural)
        return NULL;
    *alter = pitch->alter;
    return signs[pitch->alter + 2];
}

void reset_accidentals(struct writer *w)
{
    static const char order[] = "FCGDAEB";
    int key = key_at(w);
    memset(&w->accidentals, 0, sizeof w->accidentals);
    for (int i = 0; i < 7; i++) {
        int alter = key > i ? 1 : key < 0 && 6 - i < -key ? -1 : 0;
        for (int octave = 0; octave < 10; octave++)
            w->accidentals.alter[order[i] - 'A'][octave] = alter;
    }
}

static bool ties_to(const struct event *tied, int tied_shift, const struct pitch *pitch, int shift)
{
    for (int i = 0; tied && i < tied->pitch_count; i++)
        if (tied->pitches[i].step == pitch->step && tied->pitches[i].alter == pitch->alter && tied->pitches[i].octave + tied_shift == pitch->octave + shift)
            return true;
    return false;
}

static void write_marks(struct writer *w, const char *marks)
{
    static const char *const articulations[][2] = {{"'", "staccato"}, {"!", "staccatissimo"}, {">", "accent"}, {"^", "strong-accent"}, {"_", "tenuto"}};
    if (strpbrk(marks, "'!>^_")) {
        open_element(w, "articulations");
        for (size_t i = 0; i < sizeof articulations / sizeof articulations[0]; i++)
            if (strstr(marks, articulations[i][0]))
                empty(w, articulations[i][1]);
        close_element(w);
    }
    if (strpbrk(marks, "nv")) {
        open_element(w, "technical");
        empty(w, strchr(marks, 'v') ? "up-bow" : "down-bow");
        close_element(w);
    }
    if (strchr(marks, '@'))
        empty(w, "fermata");
}

static void write_ornaments(struct writer *w, const struct event *event)
{
    int strokes = event->tremolo ? event->tremolo : event->pair_tremolo;
    bool trill = strchr(event->marks, '$') != NULL;
    if (!strokes && !trill)
        return;
    open_element(w, "ornaments");
    if (trill)
        empty(w, "trill-mark");
    if (strokes) {
        open_element(w, "tremolo");
        attribute(w, "type", event->tremolo ? "single" : event->pair_end ? "stop" : "start");
        w->failed |= xmlTextWriterWriteFormatString(w->xml, "%d", strokes) < 0;
        close_element(w);
    }
    close_element(w);
}

static void write_notations(struct writer *w, const struct event *event, bool first, bool tie_stop, int voice)
{
    bool own = first && (event->slur_start || event->slur_stop || event->tuplet_start || event->tuplet_stop || *event->marks || event->tremolo || event->pair_tremolo);
    if (!own && !event->tie && !tie_stop)
        return;
    open_element(w, "notations");
    if (tie_stop)
        empty_with(w, "tied", "type", "stop");
    if (event->tie)
        empty_with(w, "tied", "type", "start");
    if (own) {
        for (int start = 0; start < 2; start++)
            if (start ? event->slur_start : event->slur_stop) {
                open_element(w, "slur");
                attribute(w, "type", start ? "start" : "stop");
                number_attribute(w, "number", voice + 1);
                close_element(w);
            }
        if (event->tuplet_start)
            empty_with(w, "tuplet", "type", "start");
        if (event->tuplet_stop)
            empty_with(w, "tuplet", "type", "stop");
        write_ornaments(w, event);
        write_marks(w, event->marks);
    }
    close_element(w);
}

static void write_time_modification(struct writer *w, const struct event *event)
{
    int actual = event->actual ? event->actual : 1, normal = event->actual ? event->normal : 1;
    if (event->pair_tremolo)
        actual *= 2;
    if (actual == 1)
        return;
    open_element(w, "time-modification");
    number_leaf(w, "actual-notes", actual);
    number_leaf(w, "normal-notes", normal);
    close_element(w);
}

static void write_beams(struct writer *w, const struct event *event, const struct beams *beams)
{
    if (event->kind != NOTE || event->grace)
        return;
    for (int level = 0; level < MOST_BEAMS && beams->states[level]; level++) {
        open_element(w, "beam");
        number_attribute(w, "number", level + 1);
        w->failed |= xmlTextWriterWriteString(w->xml, BAD_CAST beams->states[level]) < 0;
        close_element(w);
    }
}

struct note_place {
    int voice, voice_count, shift;
    const struct beams *beams;
};

/* What stands behind pitch and duration in a note; sign is its accidental. */
static void write_note_look(struct writer *w, const struct event *event, const struct note_place *place, const char *sign, bool first)
{
    number_leaf(w, "voice", w->staff * MOST_VOICES + place->voice + 1);
    if (event->kind != WHOLE_REST) {
        leaf(w, "type", value_names[event->pair_tremolo && event->value > 0 ? event->value - 1 : event->value]);
        for (int i = 0; i < event->dots; i++)
            empty(w, "dot");
    }
    if (sign)
        leaf(w, "accidental", sign);
    write_time_modification(w, event);
    if (event->kind == NOTE && place->voice_count > 1)
        leaf(w, "stem", place->voice % 2 ? "down" : "up");
    if (w->part->staff_count > 1)
        number_leaf(w, "staff", w->staff + 1);
    if (first)
        write_beams(w, event, place->beams);
}

static void write_duration(struct writer *w, const struct event *event)
{
    long ticks = event->kind == WHOLE_REST ? score_bar_ticks(w->score, w->bar) : event->ticks;
    number_leaf(w, "duration", ticks / w->ticks_per_division);
}

static void write_pitched(struct writer *w, const struct event *event, int index, const struct note_place *place)
{
    const struct pitch *pitch = &event->pitches[index];
    const struct event *tied = w->tied[w->staff][place->voice];
    bool tie_stop = ties_to(tied, w->tied_shift[w->staff][place->voice], pitch, place->shift);
    const char *sign = tie_stop ? NULL : accidental(w, pitch, place->shift);
    open_element(w, "note");
    if (event->grace)
        empty_with(w, "grace", "slash", "yes");
    if (index)
        empty(w, "chord");
    write_pitch(w, pitch, place->shift);
    if (!event->grace)
        write_duration(w, event);
    if (tie_stop)
        empty_with(w, "tie", "type", "stop");
    if (event->tie)
        empty_with(w, "tie", "type", "start");
    write_note_look(w, event, place, sign, index == 0);
    write_notations(w, event, index == 0, tie_stop, place->voice);
    close_element(w);
}

static void write_rest(struct writer *w, const struct event *event, const struct note_place *place)
{
    open_element(w, "note");
    empty_with(w, "rest", "measure", event->kind == WHOLE_REST ? "yes" : NULL);
    write_duration(w, event);
    write_note_look(w, event, place, NULL, true);
    write_notations(w, event, true, false, place->voice);
    close_element(w);
}

static void write_gap(struct writer *w, const struct event *event, const struct note_place *place)
{
    open_element(w, "forward");
    write_duration(w, event);
    number_leaf(w, "voice", w->staff * MOST_VOICES + place->voice + 1);
    if (w->part->staff_count > 1)
        number_leaf(w, "staff", w->staff + 1);
    close_element(w);
}

static void write_event(struct writer *w, const struct event *event, const struct bar *bar, const struct note_place *place)
{
    write_directions(w, event->before, bar);
    if (event->kind == NOTE)
        for (int i = 0; i < event->pitch_count; i++)
            write_pitched(w, event, i, place);
    else if (event->kind == GAP)
        write_gap(w, event, place);
    else
        write_rest(w, event, place);
    w->tied[w->staff][place->voice] = event->tie ? event : NULL;
    w->tied_shift[w->staff][place->voice] = place->shift;
}

void write_voice(struct writer *w, const struct bar *bar, int number)
{
    const struct voice *voice = &bar->voices[number];
    struct note_place place = {number, bar->voice_count, bar->octave_shift, NULL};
    struct beams *beams = score_alloc(w->score, ((size_t)voice->count + 1) * sizeof *beams);
    int beats, unit;
    if (!beams) {
        w->failed = true;
        return;
    }
    score_time_at(w->score, w->bar, &beats, &unit);
    find_beams(voice, beats, unit, beams);
    for (int e = 0; e < voice->count; e++) {
        place.beams = &beams[e];
        write_event(w, voice->events[e], bar, &place);
    }
    write_directions(w, voice->after, bar);
}
