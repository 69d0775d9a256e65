/* Names that mean one thing among strings and another among voices or beside other parts. */
#include "sections/understanding.h"

/* Strings or voices next to part `index`, looking in steps of `step`; what is itself open is passed over. */
static spz_family neighbour(const Understanding *all, size_t index, long step)
{
    for (long i = (long)index + step; i >= 0 && i < (long)all->movement->part_count; i += step) {
        const NameReading *name = &all->parts[i].name;
        if (instrument_is_either(name->instrument))
            continue;
        bool tells = name->family == SPZ_FAMILY_STRINGS || name->family == SPZ_FAMILY_VOICES;
        return tells ? name->family : SPZ_FAMILY_UNKNOWN;
    }
    return SPZ_FAMILY_UNKNOWN;
}

static Instrument string_meaning(Instrument either)
{
    return either == INSTRUMENT_EITHER_BASS ? INSTRUMENT_BASS_LINE : either == INSTRUMENT_EITHER_VIOLA ? INSTRUMENT_VIOLA : INSTRUMENT_VIOLIN;
}

static void settle_either(Understanding *all, size_t index)
{
    PartReading *part = &all->parts[index];
    spz_family family = neighbour(all, index, -1);
    if (family == SPZ_FAMILY_UNKNOWN)
        family = neighbour(all, index, 1);
    if (family == SPZ_FAMILY_VOICES) {
        part->name.instrument = INSTRUMENT_OTHER;
        part_clue(part, SPZ_CLUE_AMONG_VOICES);
    } else {
        part->name.instrument = string_meaning(part->name.instrument);
        part_clue(part, family == SPZ_FAMILY_STRINGS ? SPZ_CLUE_AMONG_STRINGS : SPZ_CLUE_NO_VOICES);
        family = SPZ_FAMILY_STRINGS;
    }
    part->name.family = family;
}

/* Does another part of the same orchestra hold this instrument? */
static bool elsewhere(const Understanding *all, size_t index, Instrument instrument)
{
    for (size_t i = 0; i < all->movement->part_count; i++)
        if (i != index && part_is(&all->parts[i], instrument) && same_orchestra(&all->parts[i], &all->parts[index]))
            return true;
    return false;
}

static void settle_bass_line(Understanding *all, size_t index)
{
    PartReading *part = &all->parts[index];
    bool cellos = elsewhere(all, index, INSTRUMENT_CELLO), basses = elsewhere(all, index, INSTRUMENT_BASS);
    if (part->name.instrument == INSTRUMENT_CONTINUO && (cellos || basses || elsewhere(all, index, INSTRUMENT_BASS_LINE))) {
        part->name.instrument = INSTRUMENT_OTHER;
        part->name.family = SPZ_FAMILY_KEYBOARD;
        part->role = SPZ_CONTINUO;
        part_clue(part, SPZ_CLUE_BASS_LINE_APART);
    } else if (cellos) {
        part->name.instrument = INSTRUMENT_BASS;
        part_clue(part, SPZ_CLUE_CELLOS_APART);
    } else { /* of 'Bassi I' and 'Bassi II' the upper one is the cellos' */
        basses |= part->name.instrument == INSTRUMENT_BASS_LINE && elsewhere(all, index, INSTRUMENT_BASS_LINE);
        part->name.instrument = INSTRUMENT_CELLO;
        part->name.also = basses ? INSTRUMENT_NONE : INSTRUMENT_BASS;
        part_clue(part, basses ? SPZ_CLUE_BASSES_APART : SPZ_CLUE_NO_BASS_LINE);
    }
}

void context_settle(Understanding *all)
{
    for (size_t i = 0; i < all->movement->part_count; i++)
        if (instrument_is_either(all->parts[i].name.instrument))
            settle_either(all, i);
}

void context_settle_bass_lines(Understanding *all)
{
    for (int pass = 0; pass < 2; pass++) /* bass lines before continuo, which gives way to them */
        for (size_t i = 0; i < all->movement->part_count; i++)
            if (all->parts[i].name.instrument == (pass ? INSTRUMENT_CONTINUO : INSTRUMENT_BASS_LINE))
                settle_bass_line(all, i);
}
