/* Writes a completed score as MusicXML 4.0 (score-partwise) with libxml2's writer. */
#include "notation_writer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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
