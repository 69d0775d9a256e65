/* Parts to lines: one for the part, or one for each staff or voice that holds another section or another line of a section. */
#include "sections/understanding.h"
#include "support/memory.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct LineMaker {
    Understanding *all;
    SectionMap *map;
    ARRAY(spz_line) lines;
    ARRAY(bool) shared;
    ARRAY(int) wishes; /* line numbers that the parts' own numbers suggest */
    bool out_of_memory;
} LineMaker;

/* The clues of the line, which are its part's, and one more. */
static void add_clue(LineMaker *maker, spz_line *line, spz_clue_kind kind)
{
    spz_clue *clues = arena_take(maker->all->arena, line->clue_count + 1, sizeof *clues);
    maker->out_of_memory |= !clues;
    if (!clues)
        return;
    if (line->clue_count)
        memcpy(clues, line->clues, line->clue_count * sizeof *clues);
    clues[line->clue_count++] = (spz_clue){.kind = kind};
    line->clues = clues;
}

static spz_line whole_part(LineMaker *maker, size_t index)
{
    const PartReading *part = &maker->all->parts[index];
    spz_line line = { .part = index, .family = part->name.family, .orchestra = part->name.orchestra, .several = part->name.plural, .role = part->role, .desk = part->desk,
                      .number = part->number, .division = part->division, .left_out = part->left_out };
    spz_clue *clues = arena_take(maker->all->arena, part->clue_count + 1, sizeof *clues);
    maker->out_of_memory |= !clues;
    if (clues)
        memcpy(clues, part->clues, part->clue_count * sizeof *clues);
    line.clues = clues;
    line.clue_count = clues ? part->clue_count : 0;
    if (part->left_out)
        return line;
    line.section = section_of(part->name.instrument, part->name.ordinal);
    if (part->name.instrument == INSTRUMENT_VIOLIN && part->name.ordinal2)
        line.also = section_of(INSTRUMENT_VIOLIN, part->name.ordinal2);
    else if (part->name.also != part->name.instrument)
        line.also = section_of(part->name.also, part->name.ordinal);
    return line;
}

/* `wish`: the number it would have among the lines of its section. */
static void push_line(LineMaker *maker, spz_line line, int wish, bool on_shared_staff)
{
    maker->out_of_memory |= !array_push(&maker->lines, line) || !array_push(&maker->shared, on_shared_staff) ||
                            !array_push(&maker->wishes, wish);
}

static void push(LineMaker *maker, spz_line line)
{
    push_line(maker, line, maker->all->parts[line.part].wish, false);
}

/* Average pitch of a voice, to tell the upper from the lower. */
static double height(const Part *part, size_t voice)
{
    double sum = 0, count = 0;
    for (size_t i = 0; i < part->note_count; i++)
        if (part->notes[i].voice == voice && part->notes[i].midi >= 0) {
            sum += part->notes[i].midi;
            count++;
        }
    return count > 0 ? sum / count : 0;
}

/* Does this voice read the second of two sections on one staff? Two voices are told by height, more by their number: even
 * voices have their stems down (MusicXML: voices as numbered by the file). */
static bool reads_second(const Part *part, size_t voice)
{
    if (part->voice_count == 2)
        return height(part, voice) < height(part, 1 - voice);
    return strtol(part->voices[voice], NULL, 10) % 2 == 0;
}

static void two_on_staves(LineMaker *maker, spz_line line, int staves)
{
    spz_section second = line.also;
    line.also = SPZ_NO_SECTION;
    for (int staff = 1; staff <= staves; staff++) {
        spz_line own = line;
        int half = (staves + 1) / 2;
        own.staff = staff;
        own.section = staff > half ? second : line.section;
        add_clue(maker, &own, staff > half ? SPZ_CLUE_LOWER_STAFF : SPZ_CLUE_UPPER_STAFF);
        push_line(maker, own, staff > half ? staff - half : staff, false);
    }
}

static void two_in_voices(LineMaker *maker, spz_line line, const Part *part)
{
    spz_section second = line.also;
    line.also = SPZ_NO_SECTION;
    for (size_t voice = 0; voice < part->voice_count; voice++) {
        spz_line own = line;
        own.voice = part->voices[voice];
        own.section = reads_second(part, voice) ? second : line.section;
        add_clue(maker, &own, own.section == second ? SPZ_CLUE_LOWER_VOICE : SPZ_CLUE_UPPER_VOICE);
        push_line(maker, own, 0, true);
    }
}

static void divided_on_staves(LineMaker *maker, spz_line line, int staves)
{
    for (int staff = 1; staff <= staves; staff++) {
        line.staff = staff;
        line.division = 0;
        push_line(maker, line, staff, false);
    }
}

/* 'Strings' on four or five staves is the score order. */
static void strings_on_staves(LineMaker *maker, spz_line line, int staves)
{
    static const spz_section order[] = { SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB };
    if (staves != 4 && staves != 5) {
        understanding_doubt(maker->all, line.part, SPZ_FAULT_STRINGS_UNTOLD);
        push(maker, line);
        return;
    }
    for (int staff = 1; staff <= staves; staff++) {
        line.staff = staff;
        line.section = order[staff - 1];
        line.also = staves == 4 && staff == 4 ? SPZ_DB : SPZ_NO_SECTION;
        push(maker, line);
    }
}

static void guessed_lines(LineMaker *maker, size_t index)
{
    const Part *part = &maker->all->movement->parts[index];
    spz_line line = whole_part(maker, index);
    if (line.family == SPZ_FAMILY_UNKNOWN && part->note_count && !maker->all->parts[index].corrected)
        understanding_doubt(maker->all, index, SPZ_FAULT_PART_UNTOLD);
    if (line.left_out)
        push(maker, line);
    else if (maker->all->parts[index].name.instrument == INSTRUMENT_STRINGS)
        strings_on_staves(maker, line, part->staves);
    else if (line.also && part->staves > 1)
        two_on_staves(maker, line, part->staves);
    else if (line.also && part->voice_count > 1)
        two_in_voices(maker, line, part);
    else if (line.section && part->staves > 1 && !line.also)
        divided_on_staves(maker, line, part->staves);
    else
        push(maker, line);
}

/* The user's word for one staff or voice. */
static void correct_line(LineMaker *maker, spz_line *line, const Correction *by)
{
    const NameReading *says = &by->says;
    line->section = by->not_strings ? SPZ_NO_SECTION : section_of(says->instrument, says->ordinal ? says->ordinal : 1);
    line->also = says->ordinal2 ? section_of(INSTRUMENT_VIOLIN, says->ordinal2) : section_of(says->also, 1);
    if (says->family != SPZ_FAMILY_UNKNOWN || line->family == SPZ_FAMILY_STRINGS)
        line->family = by->left_out ? line->family : says->family;
    line->role = says->continuo ? SPZ_CONTINUO : says->solo ? SPZ_SOLO : says->desk ? SPZ_DESK : SPZ_TUTTI;
    line->orchestra = says->orchestra ? says->orchestra : line->orchestra;
    line->division = says->division;
    line->number = by->number;
    line->desk = by->desk;
    line->left_out = by->left_out;
    line->clue_count = 0;
    add_clue(maker, line, SPZ_CLUE_SETTINGS);
}

static bool fits(const Correction *by, const spz_line *line)
{
    bool staff = !by->staff || by->staff == line->staff;
    bool voice = !by->voice || (line->voice && strcmp(by->voice, line->voice) == 0);
    return by->part == line->part && staff && voice;
}

static const Correction *best_correction(const Understanding *all, const spz_line *line)
{
    const Correction *best = NULL;
    for (size_t i = 0; i < all->corrections.count; i++) {
        const Correction *one = &all->corrections.at[i];
        bool partial = one->staff || one->voice;
        if (partial && fits(one, line) && (!best || (one->voice && !best->voice) || !best->staff))
            best = one;
    }
    return best;
}

/* A part of which the user has named staves or voices: a line for each, guessed where nothing was said. */
static void corrected_lines(LineMaker *maker, size_t index, bool by_voice)
{
    const Part *part = &maker->all->movement->parts[index];
    size_t voices = by_voice ? part->voice_count : 1;
    for (int staff = 1; staff <= part->staves; staff++)
        for (size_t voice = 0; voice < voices; voice++) {
            spz_line line = whole_part(maker, index);
            line.staff = part->staves > 1 ? staff : 0;
            line.voice = by_voice ? part->voices[voice] : NULL;
            spz_line probe = line;
            probe.staff = staff;
            const Correction *by = best_correction(maker->all, &probe);
            if (by)
                correct_line(maker, &line, by);
            push(maker, line);
        }
}

static void part_lines(LineMaker *maker, size_t index)
{
    bool partial = false, by_voice = false;
    for (size_t i = 0; i < maker->all->corrections.count; i++) {
        const Correction *one = &maker->all->corrections.at[i];
        partial |= one->part == index && (one->staff || one->voice);
        by_voice |= one->part == index && one->voice;
    }
    if (partial)
        corrected_lines(maker, index, by_voice);
    else
        guessed_lines(maker, index);
}

/* The name that fits this part alone in a settings file. */
static const char *part_key(const Understanding *all, size_t index, char *text, size_t size)
{
    const char *name = all->movement->parts[index].name, *own = all->parts[index].folded;
    bool usable = own[0] && strlen(name) < 60 && !strpbrk(name, "=:;[]#\n\r");
    for (size_t i = 0; i < all->movement->part_count && usable; i++)
        usable = i == index || strcmp(own, all->parts[i].folded) != 0;
    if (usable)
        snprintf(text, size, "%s", name);
    else
        snprintf(text, size, "part %zu", index + 1);
    return text;
}

/* ' 1. Pult', as the name has it; 'desk 1' where that says no number. A comma would end the entry. */
static void put_desk(const char *desk, char *text, size_t size)
{
    NameReading says;
    name_read(desk ? desk : "", &says);
    snprintf(text, size, " %s", says.desk_numbered ? desk : "desk 1");
    for (char *comma = strchr(text, ','); comma; comma = strchr(comma, ','))
        *comma = ' ';
}

/* The entry that says what this line is; a shared staff is one entry for the part. */
static const char *advice_for(const Understanding *all, const spz_line *line)
{
    char key[80], text[320];
    int used = snprintf(text, sizeof text, "[sections]\n%s = ", part_key(all, line->part, key, sizeof key));
    size_t at = (size_t)used;
    if (line->left_out)
        at += (size_t)snprintf(text + at, sizeof text - at, "not played");
    else if (!line->section && line->family == SPZ_FAMILY_STRINGS)
        at += (size_t)snprintf(text + at, sizeof text - at, "other strings");
    else if (!line->section)
        at += (size_t)snprintf(text + at, sizeof text - at, "%s", line->family ? spz_family_name(line->family) : "not strings");
    else
        at += (size_t)snprintf(text + at, sizeof text - at, "%s", spz_section_name(line->section));
    if (line->also)
        at += (size_t)snprintf(text + at, sizeof text - at, " and %s", spz_section_name(line->also));
    if (line->staff)
        at += (size_t)snprintf(text + at, sizeof text - at, " staff %d", line->staff);
    if (line->voice)
        at += (size_t)snprintf(text + at, sizeof text - at, " voice %.20s", line->voice);
    if (line->orchestra)
        at += (size_t)snprintf(text + at, sizeof text - at, " orchestra %d", line->orchestra);
    if (line->number)
        at += (size_t)snprintf(text + at, sizeof text - at, " number %d", line->number);
    if (line->division)
        at += (size_t)snprintf(text + at, sizeof text - at, " line %d", line->division);
    if (line->role == SPZ_DESK)
        put_desk(line->desk, text + at, sizeof text - at);
    else if (line->role != SPZ_TUTTI)
        snprintf(text + at, sizeof text - at, " %s", line->role == SPZ_SOLO ? "solo" : "continuo");
    return arena_string(all->arena, text);
}

static bool same_line(const spz_line *a, const spz_line *b)
{
    return a->section && !a->voice && !b->voice && a->section == b->section && !a->also && !b->also && a->orchestra == b->orchestra && a->number == b->number &&
           a->role == SPZ_TUTTI && b->role == SPZ_TUTTI && !a->left_out && !b->left_out;
}

/* Lines of one kind are numbered: what names say stays ('I.2'), the others take the number of their part or the next free one.
 * Where two say the same, all are counted from the top. Each kind is looked at once (`counted`): lines x kinds. */
enum { LINE_NUMBERS = 64 };

typedef struct Kind { /* the lines that are the same but for their number */
    LineMaker *maker;
    const spz_line *like;
    size_t first, count;
    bool taken[LINE_NUMBERS];
    bool doubled;
} Kind;

static void see_kind(Kind *kind, bool *counted)
{
    const spz_line *lines = kind->maker->lines.at;
    for (size_t i = kind->first; i < kind->maker->lines.count; i++) {
        if (!same_line(&lines[i], kind->like))
            continue;
        int division = lines[i].division;
        kind->doubled |= division >= LINE_NUMBERS || (division && kind->taken[division]);
        kind->taken[division < LINE_NUMBERS ? division : 0] = true;
        counted[i] = true;
        kind->count++;
    }
    kind->doubled |= kind->count >= LINE_NUMBERS;
}

static int free_number(Kind *kind, int wish)
{
    int number = wish > 0 && wish < LINE_NUMBERS && !kind->taken[wish] ? wish : 1;
    while (number < LINE_NUMBERS - 1 && kind->taken[number])
        number++;
    kind->taken[number] = true;
    return number;
}

static void number_kind(LineMaker *maker, size_t first, bool *counted)
{
    spz_line *lines = maker->lines.at;
    spz_line like = lines[first];
    Kind kind = { .maker = maker, .like = &like, .first = first };
    int next = 0;
    see_kind(&kind, counted);
    for (size_t i = first; i < maker->lines.count && kind.count > 1; i++) {
        if (!same_line(&lines[i], &like))
            continue;
        if (kind.doubled)
            lines[i].division = ++next;
        else if (lines[i].division == 0)
            lines[i].division = free_number(&kind, maker->wishes.at[i]);
    }
}

static spz_status count_all_lines(LineMaker *maker)
{
    bool *counted = memory_get(maker->lines.count + 1);
    if (!counted)
        return SPZ_NO_MEMORY;
    memset(counted, 0, maker->lines.count + 1);
    for (size_t i = 0; i < maker->lines.count; i++)
        if (!counted[i])
            number_kind(maker, i, counted);
    memory_free(counted);
    return SPZ_OK;
}

static spz_status keep(LineMaker *maker)
{
    SectionMap *map = maker->map;
    map->lines = arena_take(&map->arena, maker->lines.count ? maker->lines.count : 1, sizeof *map->lines);
    map->advice = arena_take(&map->arena, maker->lines.count ? maker->lines.count : 1, sizeof *map->advice);
    map->on_shared_staff = arena_take(&map->arena, maker->lines.count ? maker->lines.count : 1, sizeof *map->on_shared_staff);
    if (!map->lines || !map->advice || !map->on_shared_staff)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < maker->lines.count; i++) {
        map->lines[i] = maker->lines.at[i];
        map->on_shared_staff[i] = maker->shared.at[i];
        spz_line shown = map->on_shared_staff[i] ? whole_part(maker, map->lines[i].part) : map->lines[i];
        map->advice[i] = advice_for(maker->all, &shown);
        if (!map->advice[i])
            return SPZ_NO_MEMORY;
    }
    map->line_count = maker->lines.count;
    return map->line_count > UINT16_MAX ? SPZ_OVER_LIMIT : SPZ_OK;
}

spz_status lines_make(Understanding *all, SectionMap *map)
{
    LineMaker maker = { .all = all, .map = map };
    for (size_t i = 0; i < all->movement->part_count; i++)
        part_lines(&maker, i);
    spz_status status = maker.out_of_memory || all->out_of_memory ? SPZ_NO_MEMORY : count_all_lines(&maker);
    if (status == SPZ_OK)
        status = keep(&maker);
    array_free(&maker.lines);
    array_free(&maker.shared);
    array_free(&maker.wishes);
    return status;
}
