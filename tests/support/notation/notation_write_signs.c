/* Writes what stands beside the notes: keys, times, clefs, words, dynamics, tempo. */
#include "notation_writer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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

int key_at(const struct writer *w)
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

void write_attributes(struct writer *w)
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

void write_directions(struct writer *w, const struct direction *list, const struct bar *bar)
{
    for (; list; list = list->next)
        if (!bar || !(bar->without_directions || (bar->without_words && (list->kind == WORDS || list->kind == CLEF || list->kind == PAGE))))
            write_direction(w, list);
}
