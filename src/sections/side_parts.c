/* Parts that carry a section's name without being the section: a line for one player that only its marks call 'Solo', and a
 * guide or arrangement that stands below the whole score. */
#include "sections/understanding.h"
#include <math.h>
#include <string.h>

/* A solo line plays less than this share of what the other parts of its section play. */
static const double solo_share = 0.34;
/* A guide repeats what others play: at least this share of its notes sounds elsewhere at the same time and pitch. */
static const double guide_share = 0.6;

static bool is_sibling(const PartReading *a, const PartReading *b)
{
    return a != b && part_is_tutti(a) && part_is_tutti(b) && a->name.instrument == b->name.instrument &&
           a->name.ordinal == b->name.ordinal && same_orchestra(a, b);
}

/* What the words above a part say: how often 'solo', and whether it is ever called the whole section or divided. */
static void read_marks(const Part *part, size_t *solos, bool *section)
{
    *solos = 0;
    *section = false;
    for (size_t i = 0; i < part->direction_count; i++) {
        NameReading says;
        char folded[80];
        if (part->directions[i].kind != DIRECTION_WORDS || !part->directions[i].text)
            continue;
        name_fold(part->directions[i].text, folded, sizeof folded);
        name_read(folded, &says);
        *solos += says.solo;
        *section |= says.tutti || strncmp(folded, "div", 3) == 0 || strncmp(folded, "unis", 4) == 0 || strncmp(folded, "get", 3) == 0;
    }
}

static void settle_solo_line(Understanding *all, size_t index)
{
    PartReading *part = &all->parts[index];
    size_t solos, others = 0, own = all->movement->parts[index].note_count;
    bool section;
    for (size_t i = 0; i < all->movement->part_count; i++)
        if (is_sibling(part, &all->parts[i]))
            others += all->movement->parts[i].note_count;
    if (!others || (double)own > solo_share * (double)others)
        return;
    read_marks(&all->movement->parts[index], &solos, &section);
    if (!solos || section)
        return;
    part->role = SPZ_SOLO;
    part_clue(part, SPZ_CLUE_SOLO_MARKS);
}

static size_t first_violin(const Understanding *all)
{
    size_t i = 0;
    while (i < all->movement->part_count && !part_is(&all->parts[i], INSTRUMENT_VIOLIN))
        i++;
    return i;
}

/* A cello or viola above the violins, while its section has its place below them, is the soloist of a concerto. */
static bool settle_soloist_above(Understanding *all, size_t index, size_t violins)
{
    PartReading *part = &all->parts[index];
    bool below = false;
    if (index >= violins || part->name.orchestra || part->name.ordinal)
        return false;
    for (size_t i = violins; i < all->movement->part_count; i++)
        below |= is_sibling(part, &all->parts[i]);
    if (!below)
        return false;
    part->role = SPZ_SOLO;
    part_clue(part, SPZ_CLUE_ABOVE_VIOLINS);
    return true;
}

/* A guide is told from a sample of its notes, and at most so many notes of one moment are looked at: a score made to hinder can't. */
enum { SAMPLE = 500, CHORD_LIMIT = 64 };

static bool sounds_in(const Part *part, const Note *note)
{
    size_t first = FIRST_FROM(part->notes, part->note_count, note->onset);
    for (size_t i = first; i < part->note_count && i < first + CHORD_LIMIT && part->notes[i].onset == note->onset; i++)
        if (part->notes[i].midi == note->midi)
            return true;
    return false;
}

static bool sounds_elsewhere(const Movement *movement, size_t index, const Note *note)
{
    for (size_t p = 0; p < movement->part_count; p++)
        if (p != index && sounds_in(&movement->parts[p], note))
            return true;
    return false;
}

static double shared_with_others(const Movement *movement, size_t index)
{
    const Part *part = &movement->parts[index];
    size_t shared = 0, seen = 0, step = part->note_count / SAMPLE + 1;
    for (size_t i = 0; i < part->note_count; i += step, seen++)
        shared += sounds_elsewhere(movement, index, &part->notes[i]);
    return seen ? (double)shared / (double)seen : 0;
}

/* Do numbered firsts, seconds and the lower strings all stand above part `index`? */
static bool below_full_strings(const Understanding *all, size_t index)
{
    bool firsts = false, seconds = false, low = false;
    for (size_t i = 0; i < index; i++) {
        const PartReading *part = &all->parts[i];
        firsts |= part_is(part, INSTRUMENT_VIOLIN) && part->name.ordinal == 1;
        seconds |= part_is(part, INSTRUMENT_VIOLIN) && (part->name.ordinal == 2 || part->name.ordinal2 == 2);
        low |= part_is(part, INSTRUMENT_CELLO) || part_is(part, INSTRUMENT_BASS);
    }
    return firsts && seconds && low;
}

static void settle_guide(Understanding *all, size_t index)
{
    PartReading *part = &all->parts[index];
    double shared = shared_with_others(all->movement, index);
    bool guide = shared >= guide_share;
    part->left_out = guide;
    part->role = guide ? part->role : SPZ_SOLO;
    part->name.ordinal = 1;
    part_clue(part, SPZ_CLUE_BELOW_STRINGS);
    if (guide)
        part_add_clue(part, (spz_clue){SPZ_CLUE_SHARED_NOTES, NULL, (int)rint(shared * 100)});
    understanding_doubt(all, index, guide ? SPZ_FAULT_GUIDE : SPZ_FAULT_SOLOIST_BELOW);
}

void understanding_settle(Understanding *all)
{
    size_t violins = first_violin(all);
    for (size_t i = 0; i < all->movement->part_count; i++) {
        const PartReading *part = &all->parts[i];
        if (part->corrected || !part_is_tutti(part) || !instrument_has_section(part->name.instrument))
            continue;
        if (part->name.instrument == INSTRUMENT_VIOLIN && !part->name.ordinal && !part->name.orchestra && below_full_strings(all, i))
            settle_guide(all, i);
        else if (!settle_soloist_above(all, i, violins))
            settle_solo_line(all, i);
    }
}
