#include "support/tables/note_table.h"
#include "model/stream.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 128, LINE = 16384, FIRST_PART = 4 };
enum { SILENT = -1 };
static const long long slack = 2; /* ten-thousandths by which a rounded moment may lie before the true one */

/* A sound as the table knows it: ten-thousandths of a crotchet. It adds and compares in binary floating point, in which 616.2 + 0.2 lies beyond
 * 616.4; the doubles below do the same. */
typedef struct Entry {
    long long onset, duration;
    int midi;
} Entry;

typedef ARRAY(Entry) EntryList;

typedef struct Column {
    const char *name;     /* of its part; NULL when it is no part of the file */
    SoundList sounds;
    size_t next_sound;    /* all before it are over */
    EntryList entries[2]; /* with the longer and with the shorter note of each unison */
    size_t next_entry[2];
    bool unpitched;
} Column;

typedef struct Table {
    const Movement *movement;
    NoteTableResult *result;
    Column columns[COLUMNS];
    int column_count;
    size_t at;           /* index into movement->played */
    long long ahead;     /* by how much the table's clock is ahead */
    long long last;      /* the moment before */
} Table;

static int split(char *line, char *fields[], int most)
{
    int count = 0;
    while (count < most) {
        bool quoted = *line == '"';
        fields[count++] = line += quoted;
        while (*line && (quoted ? *line != '"' : *line != ',' && *line != '\n' && *line != '\r'))
            line++;
        if (quoted && *line)
            *line++ = '\0';
        bool more = *line == ',';
        *line = '\0';
        if (!more)
            break;
        line++;
    }
    return count;
}

/* `E-4` -> 63; a rest is SILENT. */
static int midi_of(const char *text)
{
    static const int semitones[7] = {9, 11, 0, 2, 4, 5, 7};
    if (text[0] < 'A' || text[0] > 'G')
        return SILENT;
    int midi = semitones[*text++ - 'A'];
    for (; *text == '#' || *text == '-'; text++)
        midi += *text == '#' ? 1 : -1;
    return midi + 12 * (atoi(text) + 1);
}

/* `306.1667` -> 3061667. */
static long long moment_of(const char *text)
{
    long long value = 0, unit = 10000;
    for (; *text >= '0' && *text <= '9'; text++)
        value = value * 10 + (*text - '0');
    value *= unit;
    if (*text == '.')
        for (text++; *text >= '0' && *text <= '9' && unit > 1; text++)
            value += (*text - '0') * (unit /= 10);
    return value;
}

static long long rounded(Ticks ticks, Ticks per_crotchet)
{
    return (long long)((ticks * 20000 + per_crotchet) / (2 * per_crotchet));
}

static void add_place(char *text, size_t size, const char *bar)
{
    size_t used = strlen(text), length = strlen(bar);
    size_t last = used > length ? used - length : 0;
    if (used && strcmp(text + last, bar) == 0 && (last == 0 || text[last - 1] == ' '))
        return;
    if (used + length + 3 < size)
        snprintf(text + used, size - used, "%s%s", used ? ", " : "", bar);
}

static double end_of(const Entry *entry, long long ahead)
{
    return (double)(entry->onset + ahead) / 10000 + (double)entry->duration / 10000;
}

/* Does a column stand for the part? By place, or, where parts share names, by name: such parts stand in one column. */
static bool stands_for(const Movement *movement, int parts_in_table, int column, const char *name, size_t part)
{
    if ((size_t)parts_in_table == movement->part_count)
        return (size_t)column == part;
    return strcmp(movement->parts[part].name, name) == 0;
}

static int earlier(const void *a, const void *b)
{
    const Sound *left = a, *right = b;
    if (left->onset != right->onset)
        return left->onset < right->onset ? -1 : 1;
    return left->note->midi - right->note->midi;
}

/* Adds all notes of the part in playing order, ties not joined, cue notes too. */
static bool add_written(const Movement *movement, const Part *part, SoundList *list)
{
    Ticks now = 0;
    size_t from = 0;
    for (size_t i = 0; i < movement->played_count; i++) {
        const Bar *bar = &movement->bars[movement->played[i]];
        while (from > 0 && part->notes[from - 1].bar >= movement->played[i])
            from--;
        for (; from < part->note_count && part->notes[from].bar <= movement->played[i]; from++) {
            const Note *note = &part->notes[from];
            Sound sound = {.onset = note->onset - bar->onset + now, .duration = note->duration, .note = note};
            bool in_table = note->bar == movement->played[i] && !(note->flags & NOTE_SLASH);
            if (in_table && !array_push(list, sound))
                return false;
        }
        now += bar->length;
    }
    return true;
}

/* The notes as the table enters them: at each new note the highest pitch, if the entry before is over. Of a unison in two voices it holds one or
 * the other: `longer` tells which. */
static void fill_entries(const SoundList *notes, Ticks per_crotchet, bool longer, EntryList *entries)
{
    for (size_t i = 0; i < notes->count;) {
        Ticks onset = notes->at[i].onset, lasts = 0;
        int highest = SILENT;
        for (; i < notes->count && notes->at[i].onset == onset; i++) {
            const Sound *sound = &notes->at[i];
            if (sound->duration == 0 || sound->note->midi < highest)
                continue;
            bool other = sound->note->midi > highest;
            lasts = other || (sound->duration > lasts) == longer ? sound->duration : lasts;
            highest = sound->note->midi;
        }
        long long start = rounded(onset, per_crotchet);
        if (lasts == 0 || (entries->count && end_of(&entries->at[entries->count - 1], 0) > (double)start / 10000))
            continue;
        Entry entry = {start, rounded(lasts, per_crotchet), highest};
        if (!array_push(entries, entry))
            return;
    }
}

static bool open_column(Table *table, Column *column, int parts_in_table, int index, const char *name)
{
    const Movement *movement = table->movement;
    SoundList written = {NULL, 0, 0};
    bool done = true;
    for (size_t p = 0; p < movement->part_count && done; p++) {
        if (!stands_for(movement, parts_in_table, index, name, p))
            continue;
        const Part *part = &movement->parts[p];
        column->name = part->name;
        column->unpitched = part->note_count > 0 && (part->notes[0].flags & NOTE_UNPITCHED) != 0;
        done = stream_of_part_played(movement, p, &column->sounds) == SPZ_OK && add_written(movement, part, &written);
        table->result->parts_compared++;
    }
    if (column->sounds.count)
        qsort(column->sounds.at, column->sounds.count, sizeof *column->sounds.at, earlier);
    if (written.count)
        qsort(written.at, written.count, sizeof *written.at, earlier);
    fill_entries(&written, movement->per_crotchet, true, &column->entries[0]);
    fill_entries(&written, movement->per_crotchet, false, &column->entries[1]);
    array_free(&written);
    if (!column->name)
        add_place(table->result->strangers, sizeof table->result->strangers, name);
    return done;
}

static bool open_columns(Table *table, char *fields[], int count)
{
    bool done = true;
    for (int i = FIRST_PART; i < count && done; i++)
        done = open_column(table, &table->columns[table->column_count++], count - FIRST_PART, i - FIRST_PART, fields[i]);
    return done;
}

static void close_columns(Table *table)
{
    for (int i = 0; i < table->column_count; i++) {
        array_free(&table->columns[i].sounds);
        array_free(&table->columns[i].entries[0]);
        array_free(&table->columns[i].entries[1]);
    }
}

/* Highest pitch that sounds in the score at `moment` of the true clock. */
static int heard(const Table *table, Column *column, long long moment)
{
    Ticks per = table->movement->per_crotchet, now = (moment + slack) * per;
    int highest = SILENT;
    while (column->next_sound < column->sounds.count) {
        const Sound *first = &column->sounds.at[column->next_sound];
        if ((first->onset + first->duration) * 10000 > now)
            break;
        column->next_sound++;
    }
    for (size_t i = column->next_sound; i < column->sounds.count; i++) {
        const Sound *sound = &column->sounds.at[i];
        if (sound->onset * 10000 > now)
            break;
        if ((sound->onset + sound->duration) * 10000 > now && sound->note->midi > highest)
            highest = sound->note->midi;
    }
    return highest;
}

static int entered(Column *column, int variant, long long moment, long long ahead)
{
    const EntryList *entries = &column->entries[variant];
    size_t *next = &column->next_entry[variant];
    while (*next < entries->count && end_of(&entries->at[*next], ahead) <= (double)(moment + ahead) / 10000)
        ++*next;
    return *next == entries->count || entries->at[*next].onset > moment ? SILENT : entries->at[*next].midi;
}

/* Has the column's part no note at all in the bar that is compared? */
static bool rests_all_bar(const Table *table, const Column *column)
{
    Ticks start = 0;
    for (size_t i = 0; i < table->at; i++)
        start += table->movement->bars[table->movement->played[i]].length;
    Ticks end = start + table->movement->bars[table->movement->played[table->at]].length;
    for (size_t i = 0; i < column->sounds.count; i++)
        if (column->sounds.at[i].onset < end && column->sounds.at[i].onset + column->sounds.at[i].duration > start)
            return false;
    return true;
}

static const char *bar_number(const Table *table, size_t at)
{
    return at < table->movement->played_count ? table->movement->bars[table->movement->played[at]].number : "";
}

/* The last moment before a general pause lasts to the end of its bar. */
static long long length_of_last(const Table *table)
{
    Ticks end = 0;
    for (size_t i = 0; i <= table->at && i < table->movement->played_count; i++)
        end += table->movement->bars[table->movement->played[i]].length;
    return rounded(end, table->movement->per_crotchet) - table->last;
}

/* Follows the table through the bars; a bar that it leaves out is a general pause. */
static void follow_bar(Table *table, const char *number)
{
    if (strcmp(bar_number(table, table->at), number) == 0)
        return;
    if (strcmp(bar_number(table, table->at + 1), number) == 0) {
        table->at++;
        return;
    }
    for (size_t ahead = 2; ahead < 6; ahead++)
        if (strcmp(bar_number(table, table->at + ahead), number) == 0) {
            add_place(table->result->pause_bars, NOTE_TABLE_TEXT, bar_number(table, table->at + 1));
            table->result->pauses++;
            table->ahead += length_of_last(table);
            table->at += ahead;
            return;
        }
}

/* Is the difference one of the table's habits? `before` is what the table says of the part above. */
static bool explained(Table *table, Column *column, const char *bar, int said, const char *before, long long moment)
{
    NoteTableResult *result = table->result;
    bool missed = said == entered(column, 0, moment, table->ahead) || said == entered(column, 1, moment, table->ahead);
    if (missed) {
        result->missed++;
        add_place(result->missed_bars, NOTE_TABLE_TEXT, bar);
    } else if (said != SILENT && midi_of(before) == said && rests_all_bar(table, column)) {
        result->doubled++;
        add_place(result->doubled_bars, NOTE_TABLE_TEXT, bar);
        return true;
    }
    return missed;
}

/* What the file holds at a moment that nothing explains: where the note stands and how long it lasts. */
static void tell_unexplained(Table *table, const Column *column, char *fields[], int field, int ours)
{
    char held[160] = "the score is silent", onset[TICKS_TEXT], end[TICKS_TEXT];
    Ticks per = table->movement->per_crotchet, now = (moment_of(fields[0]) - table->ahead + slack) * per;
    for (size_t i = 0; ours != SILENT && i < column->sounds.count; i++) {
        const Sound *sound = &column->sounds.at[i];
        if (sound->note->midi == ours && sound->onset * 10000 <= now && (sound->onset + sound->duration) * 10000 > now)
            snprintf(held, sizeof held, "in the file a note (MIDI pitch %d, line %u) sounds from %s to %s", ours, sound->note->line,
                     ticks_text(sound->onset, per, onset), ticks_text(sound->onset + sound->duration, per, end));
    }
    snprintf(table->result->first_unexplained, sizeof table->result->first_unexplained,
             "%.60s, bar %.20s, %.20s crotchets from the start: the table says '%.10s'; %s", column->name, fields[2], fields[0], fields[field], held);
}

static bool compare_cell(Table *table, Column *column, char *fields[], int field, long long moment)
{
    NoteTableResult *result = table->result;
    if (!column->name)
        return true;
    if (column->unpitched) {
        result->unpitched++;
        return true;
    }
    int said = midi_of(fields[field]), ours = heard(table, column, moment);
    result->compared++;
    result->agreeing += said == ours;
    if (said == ours)
        return true;
    if (!explained(table, column, fields[2], said, fields[field - 1], moment) && result->unexplained++ == 0)
        tell_unexplained(table, column, fields, field, ours);
    return false;
}

static void compare_line(Table *table, char *line)
{
    char *fields[COLUMNS];
    bool all = true;
    int count = split(line, fields, COLUMNS);
    if (count < FIRST_PART + table->column_count)
        return;
    follow_bar(table, fields[2]);
    long long moment = moment_of(fields[0]) - table->ahead;
    for (int i = 0; i < table->column_count; i++)
        all &= compare_cell(table, &table->columns[i], fields, FIRST_PART + i, moment);
    table->last = moment;
    table->result->moments++;
    table->result->moments_agreeing += all;
}

bool note_table_compare(const char *path, const Movement *movement, NoteTableResult *result)
{
    static char line[LINE];
    char *fields[COLUMNS];
    Table *table = calloc(1, sizeof *table);
    FILE *file = fopen(path, "r");
    memset(result, 0, sizeof *result);
    bool done = table && file && fgets(line, sizeof line, file);
    if (done) {
        table->movement = movement;
        table->result = result;
        done = open_columns(table, fields, split(line, fields, COLUMNS));
        result->parts = (int)movement->part_count;
        while (done && fgets(line, sizeof line, file))
            compare_line(table, line);
        close_columns(table);
    }
    if (file)
        fclose(file);
    free(table);
    return done;
}
