/* Writes a completed score as MusicXML 4.0 (score-partwise) with libxml2's writer. */
#include "notation_beams.h"
#include "notation_score.h"

#include <libxml/xmlwriter.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *const value_names[] = {"breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th"};

/* Accidentals in force in a bar of one staff, by step and octave. */
struct accidentals {
    int alter[7][10];
};

struct writer {
    xmlTextWriterPtr xml;
    struct score *score;
    long ticks_per_division;
    bool failed;
    const struct part *part;
    int bar, staff;
    struct accidentals accidentals;
    const struct event *tied[MOST_STAVES][MOST_VOICES]; /* the event whose tie is open, with its octave shift */
    int tied_shift[MOST_STAVES][MOST_VOICES];
};

static void open_element(struct writer *w, const char *name)
{
    w->failed |= xmlTextWriterStartElement(w->xml, BAD_CAST name) < 0;
}

static void close_element(struct writer *w)
{
    w->failed |= xmlTextWriterEndElement(w->xml) < 0;
}

static void attribute(struct writer *w, const char *name, const char *value)
{
    w->failed |= xmlTextWriterWriteAttribute(w->xml, BAD_CAST name, BAD_CAST value) < 0;
}

static void number_attribute(struct writer *w, const char *name, long value)
{
    char text[24];
    snprintf(text, sizeof text, "%ld", value);
    attribute(w, name, text);
}

static void leaf(struct writer *w, const char *name, const char *text)
{
    w->failed |= xmlTextWriterWriteElement(w->xml, BAD_CAST name, BAD_CAST text) < 0;
}

static void number_leaf(struct writer *w, const char *name, long value)
{
    char text[24];
    snprintf(text, sizeof text, "%ld", value);
    leaf(w, name, text);
}

static void empty(struct writer *w, const char *name)
{
    open_element(w, name);
    close_element(w);
}

static void empty_with(struct writer *w, const char *name, const char *attribute_name, const char *value)
{
    open_element(w, name);
    if (value)
        attribute(w, attribute_name, value);
    close_element(w);
}

static long greatest_common(long a, long b)
{
    while (b) {
        long rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

static long staff_ticks(const struct score *score, const struct staff *staff, long common)
{
    for (int b = 0; b < staff->count; b++) {
        common = greatest_common(score_bar_ticks(score, b), common);
        for (int v = 0; v < staff->bars[b].voice_count; v++)
            for (int e = 0; e < staff->bars[b].voices[v].count; e++)
                if (staff->bars[b].voices[v].events[e]->kind != WHOLE_REST)
                    common = greatest_common(staff->bars[b].voices[v].events[e]->ticks, common);
    }
    return common;
}

/* The coarsest division of the crotchet that holds every note of the score. */
static long common_ticks(const struct score *score)
{
    long common = CROTCHET;
    for (int p = 0; p < score->part_count; p++)
        for (int s = 0; s < score->parts[p].staff_count; s++)
            common = staff_ticks(score, &score->parts[p].staves[s], common);
    return common;
}

static void write_identification(struct writer *w)
{
    const struct score *score = w->score;
    if (score->work) {
        open_element(w, "work");
        leaf(w, "work-title", score->work);
        close_element(w);
    }
    if (score->movement)
        leaf(w, "movement-number", score->movement);
    if (score->title)
        leaf(w, "movement-title", score->title);
    if (!score->composer && !score->composed)
        return;
    open_element(w, "identification");
    if (score->composer) {
        open_element(w, "creator");
        attribute(w, "type", "composer");
        w->failed |= xmlTextWriterWriteString(w->xml, BAD_CAST score->composer) < 0;
        close_element(w);
    }
    if (score->composed) {
        open_element(w, "miscellaneous");
        open_element(w, "miscellaneous-field");
        attribute(w, "name", "composed");
        w->failed |= xmlTextWriterWriteString(w->xml, BAD_CAST score->composed) < 0;
        close_element(w);
        close_element(w);
    }
    close_element(w);
}

static void write_group_edge(struct writer *w, const char *type, int number, const char *name)
{
    open_element(w, "part-group");
    attribute(w, "type", type);
    number_attribute(w, "number", number);
    if (name) {
        leaf(w, "group-name", name);
        leaf(w, "group-symbol", "bracket");
    }
    close_element(w);
}

static void write_score_part(struct writer *w, const struct part *part, int number)
{
    char id[32];
    snprintf(id, sizeof id, "P%d", number);
    open_element(w, "score-part");
    attribute(w, "id", id);
    leaf(w, "part-name", part->name);
    if (part->short_name)
        leaf(w, "part-abbreviation", part->short_name);
    if (part->sound) {
        snprintf(id, sizeof id, "P%d-I1", number);
        open_element(w, "score-instrument");
        attribute(w, "id", id);
        leaf(w, "instrument-name", part->name);
        leaf(w, "instrument-sound", part->sound);
        close_element(w);
    }
    close_element(w);
}

static void write_part_list(struct writer *w)
{
    const char *group = NULL;
    int number = 0;
    open_element(w, "part-list");
    for (int p = 0; p < w->score->part_count; p++) {
        const struct part *part = &w->score->parts[p];
        if (part->group != group) {
            if (group)
                write_group_edge(w, "stop", number, NULL);
            if (part->group)
                write_group_edge(w, "start", ++number, part->group);
            group = part->group;
        }
        write_score_part(w, part, p + 1);
    }
    if (group)
        write_group_edge(w, "stop", number, NULL);
    close_element(w);
}

/* The key as this part reads it: a transposing instrument's written key differs from the sounding one by fifths. */
static int written_key(const struct part *part, int key)
{
    int shift = ((-part->transpose * 7) % 12 + 12) % 12;
    if (part->no_key)
        return 0;
    if (shift > 6)
        shift -= 12;
    key += shift;
    return key > 7 ? key - 12 : key < -7 ? key + 12 : key;
}

static int key_at(const struct writer *w)
{
    int key = 0;
    for (int i = 0; i <= w->bar; i++)
        if (w->score->frames[i].has_key)
            key = w->score->frames[i].key;
    return written_key(w->part, key);
}

static void write_transpose(struct writer *w)
{
    static const int diatonic[12] = {0, -1, -1, -2, -2, -3, -4, -4, -5, -5, -6, -6};
    int down = -w->part->transpose, octaves = down / 12;
    open_element(w, "transpose");
    if (down >= 0) {
        number_leaf(w, "diatonic", diatonic[down % 12]);
        number_leaf(w, "chromatic", -(down % 12));
    } else {
        number_leaf(w, "diatonic", -diatonic[-down % 12]);
        number_leaf(w, "chromatic", -down % 12);
    }
    if (octaves)
        number_leaf(w, "octave-change", -octaves);
    close_element(w);
}

static void write_clef(struct writer *w, const char *name, int staff)
{
    static const char *const clefs[][3] = {{"treble", "G", "2"}, {"alto", "C", "3"}, {"tenor", "C", "4"}, {"bass", "F", "4"}, {"soprano", "C", "1"}};
    size_t found = 0;
    for (size_t i = 0; i < sizeof clefs / sizeof clefs[0]; i++)
        if (strcmp(name, clefs[i][0]) == 0)
            found = i;
    open_element(w, "clef");
    if (w->part->staff_count > 1)
        number_attribute(w, "number", staff + 1);
    leaf(w, "sign", clefs[found][1]);
    leaf(w, "line", clefs[found][2]);
    close_element(w);
}

static void write_key_and_time(struct writer *w, const struct frame *frame, bool first)
{
    int beats, unit;
    score_time_at(w->score, w->bar, &beats, &unit);
    if (frame->has_key || first) {
        open_element(w, "key");
        number_leaf(w, "fifths", key_at(w));
        leaf(w, "mode", frame->minor ? "minor" : "major");
        close_element(w);
    }
    if (frame->unit || first) {
        open_element(w, "time");
        number_leaf(w, "beats", beats);
        number_leaf(w, "beat-type", unit);
        close_element(w);
    }
}

static void write_attributes(struct writer *w)
{
    const struct frame *frame = &w->score->frames[w->bar];
    bool first = w->bar == 0;
    if (!first && !frame->unit && !frame->has_key)
        return;
    open_element(w, "attributes");
    if (first)
        number_leaf(w, "divisions", CROTCHET / w->ticks_per_division);
    write_key_and_time(w, frame, first);
    if (first) {
        if (w->part->staff_count > 1)
            number_leaf(w, "staves", w->part->staff_count);
        for (int s = 0; s < w->part->staff_count; s++)
            write_clef(w, w->part->clefs[s], s);
        if (w->part->transpose)
            write_transpose(w);
    }
    close_element(w);
}

static void write_metronome(struct writer *w, const struct direction *d)
{
    char text[32];
    snprintf(text, sizeof text, "%g", d->per_minute);
    open_element(w, "direction-type");
    open_element(w, "metronome");
    leaf(w, "beat-unit", value_names[d->beat_value]);
    for (int i = 0; i < d->beat_dots; i++)
        empty(w, "beat-unit-dot");
    leaf(w, "per-minute", text);
    close_element(w);
    close_element(w);
}

static void write_direction_type(struct writer *w, const struct direction *d)
{
    static const char *const elements[] = {[WORDS] = "words", [REHEARSAL] = "rehearsal", [TEMPO] = "words", [JUMP] = "words"};
    bool sign = d->kind == JUMP && (strcmp(d->text, "segno") == 0 || strcmp(d->text, "coda") == 0);
    if (d->kind == TEMPO && !*d->text)
        return;
    open_element(w, "direction-type");
    if (d->kind == DYNAMICS) {
        open_element(w, "dynamics");
        empty(w, d->text);
        close_element(w);
    } else if (d->kind == HAIRPIN) {
        empty_with(w, "wedge", "type", d->text);
    } else if (sign) {
        empty(w, d->text);
    } else {
        leaf(w, elements[d->kind], d->text);
    }
    close_element(w);
}

static void write_tempo_sound(struct writer *w, const struct direction *d)
{
    double crotchets = d->per_minute * (double)((long)CROTCHET * 8 >> d->beat_value) / CROTCHET;
    char text[32];
    for (int i = 0, half = 2; i < d->beat_dots; i++, half *= 2)
        crotchets += d->per_minute * (double)((long)CROTCHET * 8 >> d->beat_value) / CROTCHET / half;
    snprintf(text, sizeof text, "%g", crotchets);
    empty_with(w, "sound", "tempo", text);
}

/* What a playback needs to know: tempo, plucked or bowed, and the jumps. */
static void write_sound(struct writer *w, const struct direction *d)
{
    static const char *const jumps[][3] = {{"segno", "segno", "segno"}, {"coda", "coda", "coda"}, {"to coda", "tocoda", "coda"},
                                           {"fine", "fine", "yes"},     {"d.c.", "dacapo", "yes"}, {"d.s.", "dalsegno", "segno"}};
    if (d->kind == TEMPO && d->per_minute > 0)
        write_tempo_sound(w, d);
    if (d->kind == WORDS && strncmp(d->text, "pizz", 4) == 0)
        empty_with(w, "sound", "pizzicato", "yes");
    if (d->kind == WORDS && strncmp(d->text, "arco", 4) == 0)
        empty_with(w, "sound", "pizzicato", "no");
    for (size_t i = 0; d->kind == JUMP && i < sizeof jumps / sizeof jumps[0]; i++)
        if (strcmp(d->text, jumps[i][0]) == 0)
            empty_with(w, "sound", jumps[i][1], jumps[i][2]);
}

static void write_direction(struct writer *w, const struct direction *d)
{
    if (d->kind == CLEF) {
        open_element(w, "attributes");
        write_clef(w, d->text, w->staff);
        close_element(w);
        return;
    }
    if (d->kind == PAGE) {
        open_element(w, "print");
        attribute(w, "new-page", "yes");
        if (*d->text)
            attribute(w, "page-number", d->text);
        close_element(w);
        return;
    }
    open_element(w, "direction");
    attribute(w, "placement", d->kind == DYNAMICS || d->kind == HAIRPIN ? "below" : "above");
    write_direction_type(w, d);
    if (d->kind == TEMPO && d->per_minute > 0)
        write_metronome(w, d);
    if (w->part->staff_count > 1)
        number_leaf(w, "staff", w->staff + 1);
    write_sound(w, d);
    close_element(w);
}

static void write_directions(struct writer *w, const struct direction *list, const struct bar *bar)
{
    for (; list; list = list->next)
        if (!bar || !(bar->without_directions || (bar->without_words && (list->kind == WORDS || list->kind == CLEF || list->kind == PAGE))))
            write_direction(w, list);
}

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

static void reset_accidentals(struct writer *w)
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

static void write_voice(struct writer *w, const struct bar *bar, int number)
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

static void write_backup(struct writer *w)
{
    open_element(w, "backup");
    number_leaf(w, "duration", score_bar_ticks(w->score, w->bar) / w->ticks_per_division);
    close_element(w);
}

static void write_staves(struct writer *w)
{
    for (int s = 0; s < w->part->staff_count; s++) {
        const struct bar *bar = &w->part->staves[s].bars[w->bar];
        w->staff = s;
        reset_accidentals(w);
        for (int v = 0; v < bar->voice_count; v++) {
            if (s || v)
                write_backup(w);
            if (v == 0)
                write_directions(w, bar->lead, NULL);
            write_voice(w, bar, v);
        }
    }
}

static void write_left_barline(struct writer *w, const struct frame *frame)
{
    if (!frame->repeat_start && !frame->ending)
        return;
    open_element(w, "barline");
    attribute(w, "location", "left");
    if (frame->repeat_start)
        leaf(w, "bar-style", "heavy-light");
    if (frame->ending) {
        open_element(w, "ending");
        attribute(w, "number", frame->ending);
        attribute(w, "type", "start");
        close_element(w);
    }
    if (frame->repeat_start)
        empty_with(w, "repeat", "direction", "forward");
    close_element(w);
}

static const char *open_ending(const struct score *score, int bar)
{
    while (bar > 0 && !score->frames[bar].ending)
        bar--;
    return score->frames[bar].ending ? score->frames[bar].ending : "1";
}

static void write_right_barline(struct writer *w, const struct frame *frame, bool last)
{
    const char *style = frame->repeat_end || last ? "light-heavy" : frame->barline;
    if (!style && !frame->ending_stop)
        return;
    open_element(w, "barline");
    attribute(w, "location", "right");
    if (style)
        leaf(w, "bar-style", style);
    if (frame->ending_stop) {
        open_element(w, "ending");
        attribute(w, "number", open_ending(w->score, w->bar));
        attribute(w, "type", frame->repeat_end ? "stop" : "discontinue");
        close_element(w);
    }
    if (frame->repeat_end) {
        open_element(w, "repeat");
        attribute(w, "direction", "backward");
        if (frame->repeat_times)
            number_attribute(w, "times", frame->repeat_times);
        close_element(w);
    }
    close_element(w);
}

static void write_measure(struct writer *w, bool first_part)
{
    char label[32];
    const struct frame *frame = &w->score->frames[w->bar];
    open_element(w, "measure");
    attribute(w, "number", score_bar_label(w->score, w->bar, label, sizeof label));
    if (frame->implicit)
        attribute(w, "implicit", "yes");
    write_left_barline(w, frame);
    write_attributes(w);
    w->staff = 0;
    if (first_part)
        write_directions(w, frame->directions, NULL);
    write_staves(w);
    write_right_barline(w, frame, w->bar + 1 == w->score->frame_count);
    close_element(w);
}

static void write_part(struct writer *w, int index)
{
    char id[16];
    snprintf(id, sizeof id, "P%d", index + 1);
    w->part = &w->score->parts[index];
    memset(w->tied, 0, sizeof w->tied);
    open_element(w, "part");
    attribute(w, "id", id);
    for (w->bar = 0; w->bar < w->score->frame_count; w->bar++)
        write_measure(w, index == 0);
    close_element(w);
}

static void write_document(struct writer *w)
{
    xmlTextWriterSetIndent(w->xml, 1);
    w->failed |= xmlTextWriterStartDocument(w->xml, NULL, "UTF-8", NULL) < 0;
    open_element(w, "score-partwise");
    attribute(w, "version", "4.0");
    write_identification(w);
    write_part_list(w);
    for (int p = 0; p < w->score->part_count; p++)
        write_part(w, p);
    close_element(w);
    w->failed |= xmlTextWriterEndDocument(w->xml) < 0;
}

char *score_write(struct score *score, size_t *length)
{
    struct writer w = {.score = score, .ticks_per_division = common_ticks(score)};
    char *text = NULL;
    xmlBufferPtr buffer = xmlBufferCreate();
    w.xml = buffer ? xmlNewTextWriterMemory(buffer, 0) : NULL;
    if (w.xml) {
        write_document(&w);
        w.failed |= xmlTextWriterFlush(w.xml) < 0;
        xmlFreeTextWriter(w.xml);
    }
    size_t size = buffer ? (size_t)xmlBufferLength(buffer) : 0;
    if (w.xml && !w.failed)
        text = malloc(size + 1);
    if (text) {
        memcpy(text, xmlBufferContent(buffer), size);
        text[size] = '\0';
        if (length)
            *length = size;
    } else {
        score_fail(score, 0, "out of memory");
    }
    xmlBufferFree(buffer);
    return text;
}
