/* assemble.c - the drafts become movements: bars get their lengths and places, times count from the start, everything moves into the score's
 * arena. */
#include "model/playing_order.h"
#include "reader/playing_marks.h"
#include "reader/reader.h"
#include "reader/sorting.h"
#include "reader/stretches.h"
#include "support/numbers.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The one part that holds more than the signature says, where all others that play agree with it (and the part has no signature of its own);
 * -1 where there is none such. */
static int overfull_part(const Reader *reader, size_t bar)
{
    Ticks asked = reader->bars.at[bar].nominal;
    int found = -1, others = 0;
    for (size_t i = 0; i < reader->parts.count; i++) {
        const PartDraft *part = &reader->parts.at[i];
        Ticks holds = bar < part->filled.count ? part->filled.at[bar] : 0;
        if (holds > asked && found < 0 && part->measures.at[bar] != holds)
            found = (int)i;
        else if (holds != 0 && holds != asked)
            return -1;
        others += holds == asked;
    }
    return others ? found : -1;
}

/* A part that holds too much must not move everything behind it. */
static void settle_length(Reader *reader, size_t index)
{
    Bar *bar = &reader->bars.at[index];
    if (bar->length == 0) /* nothing written in any part: as long as its signature asks for */
        bar->length = bar->nominal;
    int overfull = bar->nominal > 0 && bar->length > bar->nominal ? overfull_part(reader, index) : -1;
    if (overfull < 0)
        return;
    bar->length = bar->nominal;
    reader->shortened = true;
    reader->place.part = overfull;
    reader->place.bar = (int)index;
    reader_doubt(reader, SPZ_FAULT_BAR_OVERFULL, NULL);
    reader->place.part = reader->place.bar = -1;
}

static bool place_bars(Reader *reader, const Stretch *stretch)
{
    Ticks onset = 0;
    for (size_t i = stretch->first; i < stretch->end; i++) {
        Bar *bar = &reader->bars.at[i];
        settle_length(reader, i);
        bar->onset = onset;
        onset += bar->length;
        if (onset > limit_length) {
            reader_fail(reader, SPZ_OVER_LIMIT, "the movement is too long to be counted exactly");
            return false;
        }
    }
    return true;
}

/* The last bar of the ending that begins at `first`. One that has no end of its own is over at a double bar, and before the next forward sign
 * or ending, at the latest; one that has may run over a double bar. */
static size_t ending_end(const Reader *reader, size_t first)
{
    size_t count = reader->bars.count, limit = count;
    for (size_t i = first; i < count; i++) {
        const Bar *bar = &reader->bars.at[i];
        if (i > first && (bar->ending_start || bar->repeat_start))
            return limit < count ? limit : i - 1;
        if (bar->ending_stop)
            return i;
        if (bar->repeat_end || bar->final)
            return limit < count ? limit : i;
        if (bar->double_bar && limit == count)
            limit = i;
    }
    return limit < count ? limit : count - 1;
}

static void settle_jumps(Bar *bar)
{
    bool said = bar->da_capo || bar->dal_segno;
    bar->dal_segno = bar->dal_segno || (!said && bar->dal_segno_words);
    bar->da_capo = bar->da_capo || (!said && !bar->dal_segno && bar->da_capo_words);
}

/* Signs that belong to the next bar, and the endings between their first and last bars. */
static void complete_repeats(Reader *reader)
{
    for (size_t i = 0; i < reader->bars.count; i++) {
        Bar *bar = &reader->bars.at[i];
        if (bar->repeat_start_next && i + 1 < reader->bars.count)
            bar[1].repeat_start = true;
        bar->repeat_start_next = false;
        settle_jumps(bar);
    }
    for (size_t i = 0; i < reader->bars.count; i++)
        if (reader->bars.at[i].ending_start)
            for (size_t last = ending_end(reader, i), k = i; k <= last; k++)
                reader->bars.at[k].ending = reader->bars.at[i].ending;
}

static void *keep_array(Reader *reader, const void *from, size_t count, size_t size)
{
    void *copy = arena_take(&reader->score->arena, count ? count : 1, size);
    if (!copy)
        reader_no_memory(reader);
    else if (count)
        memcpy(copy, from, count * size);
    return copy;
}

/* Leaves out what stands behind the end of its bar, and cuts what reaches over it; gives the new end. */
static size_t cut_notes(const Reader *reader, NoteList *notes, size_t first, size_t end)
{
    size_t kept = first;
    for (size_t i = first; i < end; i++) {
        Note note = notes->at[i];
        Ticks length = reader->bars.at[note.bar].length;
        if (note.onset > length || (note.onset == length && note.duration > 0))
            continue;
        if (note.onset + note.duration > length)
            note.duration = length - note.onset;
        notes->at[kept++] = note;
    }
    return kept;
}

/* The notes of the stretch (a part's notes come bar by bar), counted from its start. */
static void assemble_notes(Reader *reader, PartDraft *draft, const Stretch *stretch, Part *part)
{
    size_t first = draft->notes_taken, end = first;
    while (end < draft->notes.count && (size_t)draft->notes.at[end].bar < stretch->end)
        end++;
    draft->notes_taken = end;
    if (reader->shortened)
        end = cut_notes(reader, &draft->notes, first, end);
    part->note_count = end - first;
    part->notes = keep_array(reader, part->note_count ? draft->notes.at + first : NULL, part->note_count, sizeof *part->notes);
    for (size_t i = 0; part->notes && i < part->note_count; i++) {
        part->notes[i].onset += reader->bars.at[part->notes[i].bar].onset;
        part->notes[i].bar -= (int32_t)stretch->first;
    }
    if (part->notes && !sort_notes(part->notes, part->note_count))
        reader_no_memory(reader);
}

static void assemble_marks(Reader *reader, PartDraft *draft, const Stretch *stretch, Part *part)
{
    size_t first = draft->marks_taken, end = first;
    while (end < draft->marks.count && (size_t)draft->marks.at[end].bar < stretch->end)
        end++;
    draft->marks_taken = end;
    part->direction_count = end - first;
    part->directions = keep_array(reader, part->direction_count ? draft->marks.at + first : NULL, part->direction_count, sizeof *part->directions);
    for (size_t i = 0; part->directions && i < part->direction_count; i++) {
        const Bar *bar = &reader->bars.at[part->directions[i].bar];
        if (reader->shortened && part->directions[i].onset > bar->length)
            part->directions[i].onset = bar->length;
        part->directions[i].onset += bar->onset;
        part->directions[i].bar -= (int32_t)stretch->first;
    }
    if (part->directions && !sort_marks(part->directions, part->direction_count))
        reader_no_memory(reader);
}

static void assemble_pages(Reader *reader, PartDraft *draft, const Stretch *stretch, Part *part)
{
    size_t first = draft->pages_taken, end = first;
    while (end < draft->pages.count && (size_t)draft->pages.at[end].bar < stretch->end)
        end++;
    draft->pages_taken = end;
    part->page_count = end - first;
    PartPage *pages = keep_array(reader, part->page_count ? draft->pages.at + first : NULL, part->page_count, sizeof *pages);
    for (size_t i = 0; pages && i < part->page_count; i++)
        pages[i].bar -= (int32_t)stretch->first;
    part->pages = pages;
}

static void assemble_part(Reader *reader, PartDraft *draft, const Stretch *stretch, Part *part)
{
    size_t last = draft->filled.count < stretch->end ? draft->filled.count : stretch->end;
    size_t bars = last > stretch->first ? last - stretch->first : 0;
    *part = draft->about;
    part->voices = keep_array(reader, draft->voices.at, draft->voices.count, sizeof *draft->voices.at);
    part->voice_count = draft->voices.count;
    part->filled = keep_array(reader, bars ? draft->filled.at + stretch->first : NULL, bars, sizeof *draft->filled.at);
    part->asked = keep_array(reader, bars ? draft->measures.at + stretch->first : NULL, bars, sizeof *draft->measures.at);
    part->written_bars = (int)bars;
    assemble_pages(reader, draft, stretch, part);
    assemble_notes(reader, draft, stretch, part);
    if (reader->status == SPZ_OK)
        assemble_marks(reader, draft, stretch, part);
    if (stretch->end == reader->bars.count) { /* the last stretch: the drafts are not needed any more */
        array_free(&draft->notes);
        array_free(&draft->marks);
    }
    if (reader->status == SPZ_OK)
        playing_marks_apply(part);
}

static const char *first_page_title(const Reader *reader)
{
    for (size_t i = 0; i < reader->titles.on_pages.count; i++)
        if (reader->titles.on_pages.at[i].page == 1)
            return reader->titles.on_pages.at[i].text;
    return "";
}

/* 'III' for 3, as movements are numbered in print; from 40 on in figures. */
static const char *roman(int number, char text[16])
{
    static const char *const tens[] = {"", "X", "XX", "XXX"}, *const ones[] = {"", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX"};
    if (number < 40)
        snprintf(text, 16, "%s%s", tens[number / 10], ones[number % 10]);
    else
        snprintf(text, 16, "%d", number);
    return text;
}

/* The movement's number: what the head of the file says, from which the movements of one file count on; "" where nothing says one. */
static const char *movement_number(const Reader *reader, int ordinal, char text[16])
{
    const char *said = reader->titles.number ? reader->titles.number : "";
    int64_t first = ordinal > 0;
    if (*said && !number_whole(said, &first)) { /* 'II', 'II.', 'Finale' */
        size_t length = strlen(said);
        snprintf(text, 16, "%.*s", (int)(said[length - 1] == '.' ? length - 1 : length), said);
        return length < 15 ? text : "";
    }
    first += ordinal > 1 ? ordinal - 1 : 0;
    return first >= 1 && first < 1000 ? roman((int)first, text) : "";
}

/* Whether the title begins with a number of its own: '2. Andante', 'II Andante'. */
static bool is_numbered(const char *title)
{
    size_t digits = strspn(title, "0123456789"), letters = strspn(title, "IVX");
    size_t end = digits ? digits : letters;
    return end > 0 && (title[end] == '\0' || strchr(". ):-", title[end]));
}

/* 'Work: II. Movement'. `ordinal` counts the movements of a file that holds several, from 1; 0 where it holds one. */
static const char *full_title(Reader *reader, const Stretch *stretch, int ordinal)
{
    const Titles *titles = &reader->titles;
    char number[16];
    const char *work = titles->work ? titles->work : "", *which = movement_number(reader, ordinal, number);
    const char *movement = stretch->title ? stretch->title : ordinal <= 1 && titles->movement ? titles->movement : "";
    Arena *arena = &reader->score->arena;
    if (!*work && titles->movement && ordinal > 1)
        work = titles->movement;
    if (!*work && (!*movement || ordinal > 1))
        work = first_page_title(reader);
    if (strcmp(work, movement) == 0)
        movement = "";
    if (is_numbered(movement))
        which = "";
    const char *own = *which && (*work || ordinal > 0) ? arena_format(arena, "%s%s%s", which, *movement ? ". " : "", movement) : movement;
    if (!own || !*work)
        return own;
    return *own ? arena_format(arena, "%s: %s", work, own) : work;
}

typedef struct OrderedTempo {
    Tempo tempo;
    size_t order;
} OrderedTempo;

static int by_onset(const void *a, const void *b)
{
    const OrderedTempo *left = a, *right = b;
    if (left->tempo.onset != right->tempo.onset)
        return left->tempo.onset < right->tempo.onset ? -1 : 1;
    if (left->tempo.printed != right->tempo.printed)
        return left->tempo.printed ? -1 : 1;
    return left->order < right->order ? -1 : left->order > right->order;
}

/* All tempo marks of all parts. Of several at one moment what the players read goes before a number for playing back alone, then the first in
 * the order of parts counts. */
static void collect_tempos(Reader *reader, Movement *movement)
{
    ARRAY(OrderedTempo) found = {NULL, 0, 0};
    for (size_t p = 0; p < movement->part_count; p++)
        for (size_t i = 0; i < movement->parts[p].direction_count; i++) {
            const Direction *mark = &movement->parts[p].directions[i];
            OrderedTempo tempo = {{mark->onset, mark->rate, mark->value == TEMPO_PRINTED}, found.count};
            if (mark->kind == DIRECTION_TEMPO && !array_push(&found, tempo))
                reader_no_memory(reader);
        }
    if (found.count > 1)
        qsort(found.at, found.count, sizeof *found.at, by_onset);
    movement->tempos = arena_take(&reader->score->arena, found.count ? found.count : 1, sizeof *movement->tempos);
    if (!movement->tempos)
        reader_no_memory(reader);
    for (size_t i = 0; movement->tempos && i < found.count; i++)
        if (i == 0 || found.at[i - 1].tempo.onset != found.at[i].tempo.onset)
            movement->tempos[movement->tempo_count++] = found.at[i].tempo;
    array_free(&found);
}

static void assemble_parts(Reader *reader, const Stretch *stretch, Movement *movement)
{
    movement->part_count = reader->parts.count;
    movement->parts = arena_take(&reader->score->arena, reader->parts.count, sizeof *movement->parts);
    if (!movement->parts)
        reader_no_memory(reader);
    for (size_t i = 0; i < reader->parts.count && reader->status == SPZ_OK; i++) {
        reader->place.part = (int)i;
        assemble_part(reader, &reader->parts.at[i], stretch, &movement->parts[i]);
    }
    reader->place.part = -1;
}

static void assemble_movement(Reader *reader, const Stretch *stretch, int ordinal, Movement *movement)
{
    const Titles *titles = &reader->titles;
    movement->file = reader->file;
    movement->number = ordinal ? (size_t)ordinal : 1;
    movement->first_in_file = stretch->first;
    movement->work = titles->work ? titles->work : "";
    movement->composer = titles->composer ? titles->composer : "";
    movement->year = titles->year;
    movement->per_crotchet = reader->per_crotchet;
    movement->title = full_title(reader, stretch, ordinal);
    if (!movement->title)
        reader_no_memory(reader);
    if (reader->status != SPZ_OK || !place_bars(reader, stretch))
        return;
    assemble_parts(reader, stretch, movement);
    if (reader->status != SPZ_OK)
        return;
    movement->bar_count = stretch->end - stretch->first;
    movement->bars = keep_array(reader, reader->bars.at + stretch->first, movement->bar_count, sizeof *movement->bars);
    const Bar *last = &reader->bars.at[stretch->end - 1];
    movement->length = last->onset + last->length;
    collect_tempos(reader, movement);
    if (reader->status == SPZ_OK && playing_order_find(movement, &reader->score->arena) != SPZ_OK)
        reader_no_memory(reader);
    if (movement->played_broken)
        reader_doubt(reader, SPZ_FAULT_REPEATS_CONTRADICT, NULL);
}

static Movement *room_for_movements(Reader *reader, size_t count)
{
    Score *score = reader->score;
    Movement *all = arena_take(&score->arena, score->movement_count + count, sizeof *all);
    if (!all) {
        reader_no_memory(reader);
        return NULL;
    }
    if (score->movement_count)
        memcpy(all, score->movements, score->movement_count * sizeof *all);
    score->movements = all;
    return all + score->movement_count;
}

static void name_missing_parts(Reader *reader)
{
    for (size_t i = 0; i < reader->parts.count; i++)
        if (!reader->parts.at[i].begun || reader->parts.at[i].filled.count == 0)
            reader_doubt(reader, SPZ_FAULT_PART_WITHOUT_MUSIC, reader->parts.at[i].about.name);
}

spz_status assemble(Reader *reader)
{
    StretchList stretches = {NULL, 0, 0};
    if (reader->parts.count == 0 || reader->bars.count == 0)
        reader_fail(reader, SPZ_EMPTY, "the score has no bars");
    if (reader->status != SPZ_OK)
        return reader->status;
    name_missing_parts(reader);
    complete_repeats(reader);
    if (!stretches_find(reader, &stretches))
        reader_no_memory(reader);
    Movement *movements = reader->status == SPZ_OK ? room_for_movements(reader, stretches.count) : NULL;
    for (size_t i = 0; movements && i < stretches.count && reader->status == SPZ_OK; i++)
        assemble_movement(reader, &stretches.at[i], stretches.count > 1 ? (int)i + 1 : 0, &movements[i]);
    if (reader->status == SPZ_OK)
        reader->score->movement_count += stretches.count;
    array_free(&stretches);
    return reader->status;
}
