/* Parts that nothing names. Strings stand in one order at the foot of a score: two parts in the treble clef, one in the alto clef, one or two
 * in the bass clef (common practice; Gould, Behind Bars, 2011, from memory), and none goes below its lowest string (Piston, Orchestration, 1955). The
 * lowest five or four neighbours of the score that look so are taken for them, and that is told as a guess. */
#include "sections/understanding.h"

typedef struct Place { /* what is looked for at one place of the order */
    Instrument instrument;
    int ordinal;
    char clef;
    int line;
    int lowest;       /* open string, MIDI */
    int below;        /* where no clef is given: its lowest note lies below this one */
} Place;
static const Place order[] = {
    { INSTRUMENT_VIOLIN, 1, 'G', 2, 55, 128 }, { INSTRUMENT_VIOLIN, 2, 'G', 2, 55, 128 }, { INSTRUMENT_VIOLA, 0, 'C', 3, 48, 55 },
    { INSTRUMENT_CELLO, 0, 'F', 4, 36, 48 },   { INSTRUMENT_BASS, 0, 'F', 4, 21, 40 }, /* with a fifth string, or tuned down */
};
enum { PLACES = sizeof order / sizeof order[0] };

static int lowest_note(const Part *part)
{
    int lowest = 128;
    for (size_t i = 0; i < part->note_count; i++)
        if (part->notes[i].midi >= 0 && part->notes[i].midi < lowest)
            lowest = part->notes[i].midi;
    return lowest;
}

static bool says_nothing(const PartReading *part)
{
    return part->name.instrument == INSTRUMENT_NONE && part->name.family == SPZ_FAMILY_UNKNOWN && !part->corrected && !part->left_out;
}

static bool fits(const Understanding *all, size_t index, const Place *place)
{
    const PartReading *reading = &all->parts[index];
    const Part *part = &all->movement->parts[index];
    if (!says_nothing(reading))
        return part_is_tutti(reading) && reading->name.instrument == place->instrument && (!reading->name.ordinal || reading->name.ordinal == place->ordinal);
    int lowest = lowest_note(part);
    if (part->staves != 1 || part->note_count == 0 || lowest < place->lowest)
        return false;
    return part->clef ? part->clef == place->clef && (!part->clef_line || part->clef_line == place->line) : lowest < place->below;
}

/* How many parts from `first` on stand in the order of strings: 4, or 5 with basses; 0 when they don't, or when all have names. */
static size_t strings_from(const Understanding *all, size_t first)
{
    size_t count = 0, nameless = 0;
    for (; count < PLACES && first + count < all->movement->part_count && fits(all, first + count, &order[count]); count++)
        nameless += says_nothing(&all->parts[first + count]);
    return count >= PLACES - 1 && nameless ? count : 0;
}

static bool violins_outside(const Understanding *all, size_t first, size_t count)
{
    for (size_t i = 0; i < all->movement->part_count; i++)
        if ((i < first || i >= first + count) && part_is(&all->parts[i], INSTRUMENT_VIOLIN))
            return true;
    return false;
}

static void guess(Understanding *all, size_t index, const Place *place)
{
    PartReading *part = &all->parts[index];
    if (!says_nothing(part))
        return;
    part->name = (NameReading){ .instrument = place->instrument, .family = SPZ_FAMILY_STRINGS, .ordinal = place->ordinal };
    part_own_clue(part, (spz_clue){ .kind = SPZ_CLUE_PLACE });
    understanding_send(all, index, (spz_message){ .fault = SPZ_FAULT_GUESSED, .name = spz_section_name(section_of(place->instrument, place->ordinal)) });
}

void guesses_make(Understanding *all)
{
    for (size_t first = all->movement->part_count; first-- > 0;) {
        size_t count = strings_from(all, first);
        if (!count)
            continue;
        if (!violins_outside(all, first, count))
            for (size_t i = 0; i < count; i++)
                guess(all, first + i, &order[i]);
        return;
    }
}
