/* Which violins are first and second, and whether several parts of one lower section are of equal standing or lines of one divided
 * section (section_lines.c then counts those). */
#include "sections/understanding.h"
#include "support/memory.h"
#include <string.h>

typedef struct Siblings { /* parts of one instrument in one orchestra, in score order */
    PartReading **at;
    size_t count;
} Siblings;

/* In how many parts of the score each violin number occurs, for one orchestra. */
static size_t gather(Understanding *all, Instrument instrument, int orchestra, PartReading **room)
{
    size_t count = 0;
    for (size_t i = 0; i < all->movement->part_count; i++) {
        PartReading *part = &all->parts[i];
        if (part_is_tutti(part) && part->name.instrument == instrument && part->name.orchestra == orchestra)
            room[count++] = part;
    }
    return count;
}

static bool has_ordinal(const Siblings *siblings, int ordinal)
{
    for (size_t i = 0; i < siblings->count; i++)
        if (siblings->at[i]->name.ordinal == ordinal || siblings->at[i]->name.ordinal2 == ordinal)
            return true;
    return false;
}

static size_t unnumbered(const Siblings *siblings)
{
    size_t count = 0;
    for (size_t i = 0; i < siblings->count; i++)
        count += siblings->at[i]->name.ordinal == 0;
    return count;
}

static int staves_of(const Understanding *all, const PartReading *part)
{
    return all->movement->parts[part - all->parts].staves;
}

/* Share of the bars in which a part plays that hold a second voice. */
static double share_of_two_voices(const Part *part)
{
    size_t bars = 0, both = 0;
    for (size_t i = 0; i < part->note_count;) {
        int bar = part->notes[i].bar;
        bool second = false;
        size_t first = i;
        for (; i < part->note_count && part->notes[i].bar == bar; i++)
            second |= part->notes[i].voice != part->notes[first].voice;
        bars++;
        both += second;
    }
    return bars ? (double)both / (double)bars : 0;
}

/* Two sections that share a staff go two ways most of the time; a section that divides does so for a while. */
static const double least_two_ways = 0.5;

/* One violin part without a number: two staves are firsts and seconds, and so are two voices that go through most of the part; a
 * plural on one line throughout is both in unison; one line that splits for a while is one section that divides. */
static void settle_lone_violins(Understanding *all, PartReading *part)
{
    bool two_staves = staves_of(all, part) == 2 && !part->corrected;
    part->name.ordinal = 1;
    if (!two_staves && !part->name.plural)
        return;
    double two_ways = share_of_two_voices(&all->movement->parts[part - all->parts]);
    if (!two_staves && two_ways > 0 && two_ways < least_two_ways && !part->corrected) {
        part_clue(part, SPZ_CLUE_ONE_LINE);
        return;
    }
    part->name.ordinal2 = 2;
    part_clue(part, two_staves ? SPZ_CLUE_TWO_STAVES : SPZ_CLUE_PLURAL);
}

static void number_in_order(Understanding *all, const Siblings *violins)
{
    for (size_t i = 0; i < violins->count; i++) {
        violins->at[i]->name.ordinal = (int)(i < 3 ? i + 1 : 3);
        part_clue(violins->at[i], (spz_clue_kind)(SPZ_CLUE_FIRST_OF_VIOLINS + (i < 3 ? i : 2)));
    }
    if (violins->count > 3)
        understanding_send(all, (size_t)(violins->at[3] - all->parts),
                           (spz_message){.fault = SPZ_FAULT_VIOLINS_UNNUMBERED, .count = (long)violins->count});
}

/* A violin part without a number beside numbered ones. */
static void settle_among_numbered(const Siblings *violins, size_t index)
{
    PartReading *part = violins->at[index];
    int before = index ? violins->at[index - 1]->name.ordinal : 0;
    int after = index + 1 < violins->count ? violins->at[index + 1]->name.ordinal : 0;
    if (before == 0 && after == 2 && !has_ordinal(violins, 1)) {
        part->name.ordinal = 1;
        part_clue(part, SPZ_CLUE_BEFORE_SECONDS);
    } else if (before == 1 && !has_ordinal(violins, 2)) {
        part->name.ordinal = 2;
        part_clue(part, SPZ_CLUE_AFTER_FIRSTS);
    } else if (before == 0) {
        part->name.ordinal = 1;
        part->role = SPZ_SOLO;
        part_clue(part, SPZ_CLUE_BEFORE_NUMBERED);
    } else {
        part->name.ordinal = before;
        part_clue(part, SPZ_CLUE_ANOTHER_LINE);
    }
}

static void number_violins(Understanding *all, const Siblings *violins)
{
    size_t open = unnumbered(violins);
    if (open == 1 && violins->count == 1)
        settle_lone_violins(all, violins->at[0]);
    else if (open == violins->count)
        number_in_order(all, violins);
    else
        for (size_t i = 0; i < violins->count; i++)
            if (violins->at[i]->name.ordinal == 0)
                settle_among_numbered(violins, i);
}

/* Numbered 1, 2, 3 ... without a gap or repetition, no line letters. */
static bool numbered_through(const Siblings *parts)
{
    for (size_t i = 0; i < parts->count; i++)
        if (parts->at[i]->name.ordinal != (int)i + 1 || parts->at[i]->division || parts->at[i]->role == SPZ_DESK)
            return false;
    return parts->count > 1;
}

/* Marks the bars in which the part has notes; returns how many these are. */
static size_t mark_bars(const Part *part, unsigned char *bars, size_t bar_count)
{
    size_t count = 0;
    int32_t last = -1;
    for (size_t i = 0; i < part->note_count; i++) {
        int32_t bar = part->notes[i].bar;
        if (bar == last || bar < 0 || (size_t)bar >= bar_count)
            continue;
        bars[bar] = 1;
        last = bar;
        count++;
    }
    return count;
}

/* Parts in their own right play in most of the bars in which any of them plays; the second staff of a divided section rests
 * where the section isn't divided. */
static bool all_play_throughout(const Understanding *all, const Siblings *parts, unsigned char *bars)
{
    static const double throughout = 0.6;
    size_t bar_count = all->movement->bar_count, least = bar_count, any = 0;
    memset(bars, 0, bar_count);
    for (size_t i = 0; i < parts->count; i++) {
        size_t own = mark_bars(&all->movement->parts[parts->at[i] - all->parts], bars, bar_count);
        least = own < least ? own : least;
    }
    for (size_t i = 0; i < bar_count; i++)
        any += bars[i];
    return (double)least >= throughout * (double)any;
}

/* Sections whose parts are numbered through in one orchestra. Two parts of one section alone are the two halves of a section
 * written on two staves (common practice of the 19th century); three, or the same in another section too, are parts in their own right
 * when all of them play throughout. */
static void settle_lower(Understanding *all, int orchestra, PartReading **room, unsigned char *bars)
{
    static const Instrument lower[] = { INSTRUMENT_VIOLA, INSTRUMENT_CELLO, INSTRUMENT_BASS };
    size_t numbered = 0;
    for (int i = 0; i < 3; i++) {
        Siblings parts = { room, gather(all, lower[i], orchestra, room) };
        numbered += numbered_through(&parts);
    }
    for (int i = 0; i < 3; i++) {
        Siblings parts = { room, gather(all, lower[i], orchestra, room) };
        bool equal = numbered_through(&parts) && (parts.count > 2 || numbered > 1) && all_play_throughout(all, &parts, bars);
        for (size_t k = 0; k < parts.count && equal; k++)
            parts.at[k]->number = parts.at[k]->corrected ? parts.at[k]->number : parts.at[k]->name.ordinal;
        for (size_t k = 0; k < parts.count && !equal; k++)
            parts.at[k]->wish = parts.at[k]->name.ordinal;
    }
}

/* Soloists without a number are counted in score order; a lone one stands before the firsts. */
static void settle_solos(Understanding *all)
{
    for (size_t i = 0; i < all->movement->part_count; i++) {
        PartReading *part = &all->parts[i];
        if (part->role == SPZ_SOLO && part->name.instrument == INSTRUMENT_VIOLIN && part->name.ordinal == 0)
            part->name.ordinal = 1;
        if (part->name.instrument == INSTRUMENT_VIOLIN && part->name.ordinal > 3)
            understanding_doubt(all, i, SPZ_FAULT_VIOLINS_TOO_MANY);
    }
}

spz_status numbering_settle(Understanding *all)
{
    PartReading **room = memory_get(all->movement->part_count * sizeof *room);
    unsigned char *bars = memory_get(all->movement->bar_count);
    for (int orchestra = 0; room && bars && orchestra <= all->orchestras; orchestra++) {
        Siblings violins = { room, gather(all, INSTRUMENT_VIOLIN, orchestra, room) };
        if (violins.count)
            number_violins(all, &violins);
        settle_lower(all, orchestra, room, bars);
    }
    settle_solos(all);
    spz_status status = room && bars ? SPZ_OK : SPZ_NO_MEMORY;
    memory_free(room);
    memory_free(bars);
    return status;
}
