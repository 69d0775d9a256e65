/* assemble.c - the drafts become the movement: bars get their lengths and places, times count from the start, everything moves into the
 * score's arena. */
#include "reader/playing_marks.h"
#include "reader/reader.h"
#include "reader/sorting.h"
#include "model/playing_order.h"
#include <stdlib.h>
#include <string.h>

static bool place_bars(Reader *reader)
{
    Ticks onset = 0;
    for (size_t i = 0; i < reader->bars.count; i++) {
        Bar *bar = &reader->bars.at[i];
        if (bar->length == 0) /* nothing written in any part: as long as its signature asks for */
            bar->length = bar->nominal;
        bar->onset = onset;
        onset += bar->length;
        if (onset > limit_length) {
            reader_fail(reader, SPZ_OVER_LIMIT, "the movement is too long to be counted exactly");
            return false;
        }
    }
    return true;
}

/* Signs that belong to the next bar, and the endings between their first and last bars. */
static void complete_repeats(Reader *reader)
{
    uint32_t ending = 0;
    for (size_t i = 0; i < reader->bars.count; i++) {
        Bar *bar = &reader->bars.at[i];
        if (bar->repeat_start_next && i + 1 < reader->bars.count)
            bar[1].repeat_start = true;
        bar->repeat_start_next = false;
        if (bar->ending_start)
            ending = bar->ending;
        else if (ending)
            bar->ending = ending;
        if (bar->ending_stop || bar->repeat_end || bar->final)
            ending = 0;
    }
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

static void place_part(const Reader *reader, PartDraft *draft)
{
    for (size_t i = 0; i < draft->notes.count; i++)
        draft->notes.at[i].onset += reader->bars.at[draft->notes.at[i].bar].onset;
    for (size_t i = 0; i < draft->marks.count; i++)
        draft->marks.at[i].onset += reader->bars.at[draft->marks.at[i].bar].onset;
}

static void assemble_part(Reader *reader, PartDraft *draft, Part *part)
{
    place_part(reader, draft);
    if (!sort_notes(draft->notes.at, draft->notes.count) || !sort_marks(draft->marks.at, draft->marks.count)) {
        reader_no_memory(reader);
        return;
    }
    *part = draft->about;
    part->voices = keep_array(reader, draft->voices.at, draft->voices.count, sizeof *draft->voices.at);
    part->voice_count = draft->voices.count;
    part->notes = keep_array(reader, draft->notes.at, draft->notes.count, sizeof *draft->notes.at);
    part->note_count = draft->notes.count;
    array_free(&draft->notes);
    part->marks = keep_array(reader, draft->marks.at, draft->marks.count, sizeof *draft->marks.at);
    part->mark_count = draft->marks.count;
    array_free(&draft->marks);
    part->filled = keep_array(reader, draft->filled.at, draft->filled.count, sizeof *draft->filled.at);
    part->asked = keep_array(reader, draft->measures.at, draft->measures.count, sizeof *draft->measures.at);
    part->written_bars = (int)draft->filled.count;
    if (reader->status == SPZ_OK)
        playing_marks_apply(part);
}

static const char *full_title(Reader *reader)
{
    Titles *titles = &reader->titles;
    const char *work = titles->work ? titles->work : "", *movement = titles->movement ? titles->movement : "";
    const char *number = titles->number ? titles->number : "";
    Arena *arena = &reader->score->arena;
    if (!*work && !*movement)
        work = titles->credit ? titles->credit : "";
    if (strcmp(work, movement) == 0)
        movement = "";
    if (*work && *movement)
        return arena_format(arena, "%s: %s", work, movement);
    if ((*work || *movement) && *number)
        return arena_format(arena, "%s: movement %s", *work ? work : movement, number);
    return *work ? work : movement;
}

static int by_onset(const void *a, const void *b)
{
    const Tempo *left = a, *right = b;
    return left->onset < right->onset ? -1 : left->onset > right->onset;
}

/* All tempo marks of all parts; of several at one moment the first part's counts. */
static void collect_tempos(Reader *reader, Movement *movement)
{
    ARRAY(Tempo) tempos = {NULL, 0, 0};
    for (size_t p = 0; p < movement->part_count; p++)
        for (size_t i = 0; i < movement->parts[p].mark_count; i++) {
            const Mark *mark = &movement->parts[p].marks[i];
            bool known = false;
            if (mark->kind != MARK_TEMPO)
                continue;
            for (size_t t = tempos.count; p > 0 && t > 0 && !known && tempos.count < 1000; t--)
                known = tempos.at[t - 1].onset == mark->onset;
            Tempo tempo = {mark->onset, mark->rate};
            if (!known && !array_push(&tempos, tempo))
                reader_no_memory(reader);
        }
    if (tempos.count > 1)
        qsort(tempos.at, tempos.count, sizeof *tempos.at, by_onset);
    movement->tempos = keep_array(reader, tempos.at, tempos.count, sizeof *tempos.at);
    movement->tempo_count = tempos.count;
    array_free(&tempos);
}

static void assemble_parts(Reader *reader, Movement *movement)
{
    movement->part_count = reader->parts.count;
    movement->parts = arena_take(&reader->score->arena, reader->parts.count, sizeof *movement->parts);
    if (!movement->parts)
        reader_no_memory(reader);
    for (size_t i = 0; i < reader->parts.count && reader->status == SPZ_OK; i++) {
        PartDraft *draft = &reader->parts.at[i];
        reader->place.part = (int)i;
        if (!draft->begun)
            reader_doubt(reader, "the list of parts names '%.80s', but the file has no music for it", draft->about.name);
        assemble_part(reader, draft, &movement->parts[i]);
    }
    reader->place.part = -1;
}

static void assemble_movement(Reader *reader, Movement *movement)
{
    const Titles *titles = &reader->titles;
    movement->file = reader->file;
    movement->work = titles->work ? titles->work : "";
    movement->composer = titles->composer ? titles->composer : "";
    movement->year = titles->year;
    movement->per_crotchet = reader->per_crotchet;
    movement->title = full_title(reader);
    if (!movement->title)
        reader_no_memory(reader);
    assemble_parts(reader, movement);
    if (reader->status != SPZ_OK)
        return;
    movement->bars = keep_array(reader, reader->bars.at, reader->bars.count, sizeof *reader->bars.at);
    movement->bar_count = reader->bars.count;
    const Bar *last = &reader->bars.at[reader->bars.count - 1];
    movement->length = last->onset + last->length;
    collect_tempos(reader, movement);
    if (reader->status == SPZ_OK && playing_order_find(movement, &reader->score->arena) != SPZ_OK)
        reader_no_memory(reader);
    if (movement->played_broken)
        reader_doubt(reader, "the repeat signs contradict each other; the bars are taken as written");
}

spz_status assemble(Reader *reader)
{
    if (reader->parts.count == 0 || reader->bars.count == 0)
        reader_fail(reader, SPZ_EMPTY, "the score has no bars");
    if (reader->status != SPZ_OK || !place_bars(reader))
        return reader->status;
    complete_repeats(reader);
    Movement movement;
    memset(&movement, 0, sizeof movement);
    assemble_movement(reader, &movement);
    Score *score = reader->score;
    if (reader->status == SPZ_OK) {
        Movement *all = arena_take(&score->arena, score->movement_count + 1, sizeof *all);
        if (!all)
            reader_no_memory(reader);
        else {
            if (score->movement_count)
                memcpy(all, score->movements, score->movement_count * sizeof *all);
            all[score->movement_count++] = movement;
            score->movements = all;
        }
    }
    return reader->status;
}
