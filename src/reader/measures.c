/* measures.c - bars and what their attributes say: key, staves, transposition, measure-repeat signs. */
#include "reader/reader.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The bar's number as printed: `text` where the number shown differs from the number counted (MusicXML 4.0). */
static const char *printed_number(Reader *reader)
{
    char number[LIMIT_NAME] = "";
    if (!reader_attribute(reader, ATTRIBUTE_TEXT, number, sizeof number) || number[0] == '\0')
        reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number);
    return reader_keep(reader, number);
}

static bool add_bar(Reader *reader)
{
    Bar bar;
    memset(&bar, 0, sizeof bar);
    bar.number = printed_number(reader);
    bar.line = reader_line(reader);
    bar.implicit = reader_attribute_is(reader, ATTRIBUTE_IMPLICIT, "yes");
    bar.repeat_times = 2;
    bar.beat = reader->per_crotchet;
    if (reader->bars.count)
        bar.fifths = reader->bars.at[reader->bars.count - 1].fifths;
    if (reader->bars.count >= LIMIT_BARS)
        reader_fail(reader, SPZ_OVER_LIMIT, "the score has more than %d bars", LIMIT_BARS);
    else if (bar.number && (!array_push(&reader->bars, bar) || !array_push(&reader->pages, reader->place.page)))
        reader_no_memory(reader);
    return reader->status == SPZ_OK;
}

/* The next bar of the open part; in score-timewise the bar that is open. */
void bar_open(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    Place *place = &reader->place;
    size_t index = reader->timewise ? (size_t)place->measure : part->filled.count;
    while (part->filled.count <= index) /* score-timewise: bars in which the part was missing */
        if (++reader->cells > LIMIT_CELLS) {
            reader_fail(reader, SPZ_OVER_LIMIT, "the parts have more than %d bars together", LIMIT_CELLS);
            return;
        } else if (!array_push(&part->filled, 0) || !array_push(&part->measures, part->nominal)) {
            reader_no_memory(reader);
            return;
        }
    if (index >= reader->bars.count && !add_bar(reader))
        return;
    place->bar = (int)index;
    place->position = place->furthest = place->chord_onset = 0;
    place->chord_possible = false;
    place->first_note = part->notes.count;
    reader->change_count = 0;
    Bar *bar = &reader->bars.at[index];
    if (place->made_bar) {
        bar->nominal = part->nominal;
        bar->beat = part->beat;
    }
}

void read_measure_start(Reader *reader)
{
    Element wanted = reader->timewise ? ELEMENT_SCORE_TIMEWISE : ELEMENT_PART;
    if (reader_parent(reader) != wanted || (!reader->timewise && reader->place.part < 0)) {
        reader_fail(reader, SPZ_NOT_MUSICXML, "a bar stands where none can be");
        return;
    }
    if (!reader->timewise) {
        reader->place.made_bar = reader_part(reader)->filled.count >= reader->bars.count;
        bar_open(reader);
        return;
    }
    reader->place.measure = (int)reader->bars.count;
    reader->place.made_bar = true;
    add_bar(reader);
}

static bool of_staff(const Note *note, int staff)
{
    return staff == 0 || note->staff == staff;
}

/* Supplies what a measure-repeat sign over a staff (0: the whole part) stands for, when the file doesn't write it out itself. */
static void copy_repeated(Reader *reader, PartDraft *part, int staff)
{
    int from = reader->place.bar - part->repeat_span[staff];
    for (size_t i = reader->place.first_note; i < part->notes.count; i++)
        if (of_staff(&part->notes.at[i], staff) && !(part->notes.at[i].flags & NOTE_COPIED))
            return;
    if (from < 0) {
        reader_doubt(reader, SPZ_FAULT_REPEAT_BEFORE_START, NULL);
        return;
    }
    size_t first = reader->place.first_note;
    while (first > 0 && part->notes.at[first - 1].bar >= from)
        first--;
    for (size_t i = first; i < reader->place.first_note && part->notes.at[i].bar == from && reader->status == SPZ_OK; i++) {
        Note note = part->notes.at[i];
        if (!of_staff(&note, staff))
            continue;
        note.bar = reader->place.bar;
        note.flags |= NOTE_COPIED;
        if (++reader->note_count > LIMIT_NOTES)
            reader_fail(reader, SPZ_OVER_LIMIT, "the score has more than %d notes", LIMIT_NOTES);
        else if (!array_push(&part->notes, note))
            reader_no_memory(reader);
    }
    if (reader->place.furthest < part->filled.at[from])
        reader->place.furthest = part->filled.at[from];
}

void bar_close(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    Place *place = &reader->place;
    if (!part || place->bar < 0)
        return;
    note_close_graces(reader);
    for (int staff = 0; staff <= part->repeated_staves; staff++)
        if (part->repeat_span[staff] > 0)
            copy_repeated(reader, part, staff);
    if (part->slashes && part->notes.count == place->first_note) {
        reader_doubt(reader, SPZ_FAULT_SLASHES, NULL);
        part->slashes = false;
    }
    part->filled.at[place->bar] = place->furthest;
    Bar *bar = &reader->bars.at[place->bar];
    if (place->furthest > bar->length)
        bar->length = place->furthest;
    if (reader->timewise)
        place->made_bar = false;
    place->bar = -1;
}

void read_measure_end(Reader *reader)
{
    if (!reader->timewise)
        bar_close(reader);
}

/* 0 where the page's number isn't told. */
static int page_number(Reader *reader)
{
    char number[16];
    int64_t page = 0;
    bool told = reader_attribute(reader, ATTRIBUTE_PAGE_NUMBER, number, sizeof number) && number_whole(number, &page) && page > 0 && page < 100000;
    return told ? (int)page : 0;
}

void read_print_start(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    int number = page_number(reader);
    if (!reader_attribute_is(reader, ATTRIBUTE_NEW_PAGE, "yes") && !(number && reader->place.bar == 0)) /* the first page needs no sign */
        return;
    bool again = part && part->pages.count && part->pages.at[part->pages.count - 1].bar == reader->place.bar; /* one page a bar */
    if (part && reader->place.bar >= 0 && !again && !array_push(&part->pages, ((PartPage){reader->place.bar, number})))
        reader_no_memory(reader);
    if (!reader->place.made_bar || reader->pages.count == 0 || !reader_attribute_is(reader, ATTRIBUTE_NEW_PAGE, "yes"))
        return;
    reader->place.page = number ? number : reader->place.page + 1;
    reader->pages.at[reader->pages.count - 1] = reader->place.page;
}

void read_fifths_end(Reader *reader)
{
    Bar *bar = reader_bar(reader);
    int64_t fifths = 0;
    if (bar && reader->place.made_bar && reader_parent(reader) == ELEMENT_KEY && number_whole(reader_text(reader), &fifths) &&
        fifths >= -14 && fifths <= 14)
        bar->fifths = (int16_t)fifths;
}

void read_staves_end(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    int64_t staves = 0;
    if (!part)
        return;
    if (!number_whole(reader_text(reader), &staves) || staves < 1 || staves > LIMIT_STAVES)
        reader_doubt(reader, SPZ_FAULT_STAVES, reader->text);
    else if (staves > part->about.staves)
        part->about.staves = (int)staves;
}

void read_clef_start(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    char staff[8] = "1";
    if (!part)
        return;
    reader_attribute(reader, ATTRIBUTE_NUMBER, staff, sizeof staff);
    part->clef_open = !part->about.clef && strcmp(staff, "1") == 0;
}

void read_clef_sign_end(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    const char *sign = reader_text(reader);
    if (part && part->clef_open && reader_parent(reader) == ELEMENT_CLEF && strlen(sign) == 1 && strchr("GCF", sign[0]))
        part->about.clef = sign[0];
}

void read_clef_line_end(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    int64_t line = 0;
    if (part && part->clef_open && reader_parent(reader) == ELEMENT_CLEF && number_whole(reader_text(reader), &line) && line >= 1 && line <= 5)
        part->about.clef_line = (int)line;
}

void read_transpose_start(Reader *reader)
{
    char number[8];
    int64_t staff = 0;
    reader->transposition = (Transposition){0, 0};
    reader->octave_change = 0;
    reader->diatonic_given = false;
    reader->transpose_staff = 0;
    if (reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number) && number_whole(number, &staff) && staff >= 1 &&
        staff <= LIMIT_STAVES)
        reader->transpose_staff = (int)staff;
}

static int small_number(Reader *reader, int limit)
{
    Decimal decimal;
    const char *text = reader_text(reader);
    if (!number_decimal(text, &decimal) || decimal.digits % decimal.scale != 0 || llabs(decimal.digits / decimal.scale) > limit) {
        reader_doubt(reader, SPZ_FAULT_TRANSPOSITION, text);
        return 0;
    }
    return (int)(decimal.digits / decimal.scale);
}

void read_diatonic_end(Reader *reader)
{
    if (reader_parent(reader) != ELEMENT_TRANSPOSE)
        return;
    reader->transposition.diatonic = small_number(reader, 50);
    reader->diatonic_given = true;
}

void read_chromatic_end(Reader *reader)
{
    if (reader_parent(reader) == ELEMENT_TRANSPOSE)
        reader->transposition.chromatic = small_number(reader, 90);
}

void read_octave_change_end(Reader *reader)
{
    if (reader_parent(reader) == ELEMENT_TRANSPOSE)
        reader->octave_change += small_number(reader, 7);
}

void read_double_start(Reader *reader)
{
    /* A doubling adds players an octave below or above and moves nothing that is written (MusicXML 4.0, element `double`). */
    PartDraft *part = reader_part(reader);
    if (part)
        part->about.doubled = reader_attribute_is(reader, ATTRIBUTE_ABOVE, "yes") ? 1 : -1;
}

/* Steps of the scale that go with so many semitones, where the file leaves them out. */
static int usual_steps(int chromatic)
{
    static const int steps[12] = {0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6};
    return chromatic >= 0 ? chromatic / 12 * 7 + steps[chromatic % 12] : -usual_steps(-chromatic);
}

static void set_transposition(Transposition *of_staves, int staff, Transposition by)
{
    for (int i = 0; i <= LIMIT_STAVES; i++)
        if (staff == 0 || i == staff)
            of_staves[i] = by;
}

/* A voice that is written after a step back must find what was in force at its own time. */
static void remember_change(Reader *reader, const PartDraft *part, Transposition by)
{
    if (reader->place.position == 0) {
        set_transposition(reader->before_changes, reader->transpose_staff, by);
        return;
    }
    if (reader->change_count == CHANGES_IN_BAR)
        reader->change_count = 0;
    if (reader->change_count == 0)
        memcpy(reader->before_changes, part->transposition, sizeof reader->before_changes);
    reader->changes[reader->change_count++] = (TranspositionChange){reader->place.position, reader->transpose_staff, by};
}

Transposition transposition_at(const Reader *reader, const PartDraft *part, Ticks position, int staff)
{
    if (reader->change_count == 0)
        return part->transposition[staff];
    Transposition by = reader->before_changes[staff];
    for (int i = 0; i < reader->change_count; i++)
        if (reader->changes[i].position <= position && (reader->changes[i].staff == 0 || reader->changes[i].staff == staff))
            by = reader->changes[i].to;
    return by;
}

void read_transpose_end(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    Transposition *by = &reader->transposition;
    if (!part)
        return;
    if (!reader->diatonic_given)
        by->diatonic = usual_steps(by->chromatic);
    by->diatonic += 7 * reader->octave_change;
    by->chromatic += 12 * reader->octave_change;
    remember_change(reader, part, *by);
    set_transposition(part->transposition, reader->transpose_staff, *by);
}

/* The staff that a measure style is for; 0 for the whole part. */
void read_measure_style_start(Reader *reader)
{
    char number[8];
    int64_t staff = 0;
    reader->style_staff = 0;
    if (reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number) && number_whole(number, &staff) && staff >= 1 && staff <= LIMIT_STAVES)
        reader->style_staff = (int)staff;
}

/* Slashes over written notes are a way to draw them; over nothing they stand for music that is not there. */
void read_slash_start(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    if (part)
        part->slashes = !reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop");
}

static void set_repeat(Reader *reader, int span)
{
    PartDraft *part = reader_part(reader);
    if (!part)
        return;
    part->repeat_span[reader->style_staff] = span;
    if (reader->style_staff > part->repeated_staves)
        part->repeated_staves = reader->style_staff;
}

void read_measure_repeat_start(Reader *reader)
{
    reader->repeat_begins = !reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop");
    if (!reader->repeat_begins)
        set_repeat(reader, 0);
}

void read_measure_repeat_end(Reader *reader)
{
    int64_t span = 1;
    if (!reader->repeat_begins)
        return;
    if (!number_whole(reader_text(reader), &span) || span < 1 || span > 16) {
        reader_doubt(reader, SPZ_FAULT_REPEAT_COUNT, reader->text);
        span = 1;
    }
    set_repeat(reader, (int)span);
}
