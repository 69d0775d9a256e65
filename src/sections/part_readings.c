#include "sections/understanding.h"
#include "sections/names/sound_ids.h"
#include "support/message.h"
#include <stdio.h>
#include <string.h>

/* A copy in the arena; remembers when memory runs out. */
static const char *understanding_keep(Understanding *all, const char *text)
{
    const char *kept = arena_string(all->arena, text);
    all->out_of_memory |= !kept;
    return kept ? kept : "";
}

void understanding_send(const Understanding *all, size_t part, spz_message doubt)
{
    char number[PART_PLACE_TEXT];
    doubt.severity = SPZ_DOUBT;
    doubt.file = all->movement->file;
    doubt.part = movement_part_name(all->movement, part, number);
    message_fault(all->sink, &doubt);
}

void understanding_doubt(const Understanding *all, size_t part, spz_fault fault)
{
    understanding_send(all, part, (spz_message){.fault = fault});
}

static void insert_clue(PartReading *part, size_t place, spz_clue clue)
{
    if (part->clue_count == CLUES_MOST)
        return;
    memmove(&part->clues[place + 1], &part->clues[place], (part->clue_count - place) * sizeof clue);
    part->clues[place] = clue;
    part->clue_count++;
}

void part_own_clue(PartReading *part, spz_clue clue)
{
    insert_clue(part, part->own_clues++, clue);
}

void part_add_clue(PartReading *part, spz_clue clue)
{
    insert_clue(part, part->clue_count, clue);
}

void part_clue(PartReading *part, spz_clue_kind kind)
{
    part_add_clue(part, (spz_clue){.kind = kind});
}

bool part_is_tutti(const PartReading *part)
{
    return part->role != SPZ_SOLO && !part->left_out;
}

bool part_is(const PartReading *part, Instrument instrument)
{
    return part_is_tutti(part) && (part->name.instrument == instrument || part->name.also == instrument);
}

bool same_orchestra(const PartReading *a, const PartReading *b)
{
    return a->name.orchestra == b->name.orchestra || !a->name.orchestra || !b->name.orchestra;
}

spz_section section_of(Instrument instrument, int ordinal)
{
    switch (instrument) {
    case INSTRUMENT_VIOLIN: return ordinal >= 3 ? SPZ_VN3 : ordinal == 2 ? SPZ_VN2 : SPZ_VN1;
    case INSTRUMENT_VIOLA: return SPZ_VA;
    case INSTRUMENT_CELLO: return SPZ_VC;
    case INSTRUMENT_BASS: return SPZ_DB;
    default: return SPZ_NO_SECTION;
    }
}

/* Fills what `to` leaves open from a second name of the same part; true when that told something new. */
static bool supplement(NameReading *to, const NameReading *from)
{
    if (to->instrument != from->instrument)
        return false;
    NameReading before = *to;
    /* 'Vn. I 1' for the first orchestra repeats its number. */
    bool of_orchestra = to->orchestra && (from->division == to->orchestra || from->ordinal == to->orchestra);
    if (!to->ordinal && !of_orchestra) {
        to->ordinal = from->ordinal;
        to->ordinal2 = from->ordinal2;
    }
    if (!to->division && !of_orchestra)
        to->division = from->division;
    if (!to->orchestra)
        to->orchestra = from->orchestra;
    to->solo |= from->solo;
    to->concertino |= from->concertino;
    to->tutti |= from->tutti;
    to->rest |= from->rest;
    to->special |= from->special;
    return to->ordinal != before.ordinal || to->division != before.division || to->orchestra != before.orchestra ||
           to->solo != before.solo || to->concertino != before.concertino || to->tutti != before.tutti;
}

/* The instrument from another source; numbers of the name itself stay. */
static void adopt(NameReading *to, const NameReading *from)
{
    NameReading own = *to;
    *to = *from;
    if (own.ordinal) {
        to->ordinal = own.ordinal;
        to->ordinal2 = own.ordinal2;
    }
    to->division = own.division ? own.division : from->division;
    to->orchestra = own.orchestra ? own.orchestra : from->orchestra;
    to->solo |= own.solo;
    to->concertino |= own.concertino;
    to->tutti |= own.tutti;
    to->desk = own.desk;
    to->desk_start = own.desk_start;
    to->desk_end = own.desk_end;
    to->reduction |= own.reduction;
}

/* `source`: SPZ_CLUE_ABBREVIATION or SPZ_CLUE_INSTRUMENT. */
static void take_name(PartReading *reading, const char *text, spz_clue_kind source)
{
    NameReading found;
    bool settled = reading->name.instrument == INSTRUMENT_OTHER && reading->name.family != SPZ_FAMILY_VOICES;
    if (!text[0] || settled)
        return;
    name_read(text, &found);
    if (reading->name.instrument != INSTRUMENT_NONE) {
        if (supplement(&reading->name, &found))
            part_add_clue(reading, (spz_clue){source == SPZ_CLUE_INSTRUMENT ? SPZ_CLUE_INSTRUMENT_TOO : SPZ_CLUE_ABBREVIATION_TOO, text, 0});
    } else if (found.instrument != INSTRUMENT_NONE) {
        adopt(&reading->name, &found);
        part_own_clue(reading, (spz_clue){source, text, 0});
    }
}

static void take_sound(PartReading *reading, SoundReading sound, spz_clue clue)
{
    NameReading *name = &reading->name;
    bool open = name->instrument == INSTRUMENT_NONE || instrument_is_either(name->instrument) || name->instrument == INSTRUMENT_STRINGS;
    if (!open || sound.instrument == INSTRUMENT_NONE)
        return;
    if (name->instrument == INSTRUMENT_STRINGS && !instrument_has_section(sound.instrument))
        return;
    if (name->instrument == INSTRUMENT_EITHER_BASS && sound.instrument == INSTRUMENT_STRINGS)
        return;
    name->instrument = sound.instrument;
    name->family = sound.family;
    part_own_clue(reading, clue);
}

/* Names of the part groups, innermost first. */
static void take_groups(Understanding *all, PartReading *reading, const char *groups)
{
    char names[512];
    snprintf(names, sizeof names, "%s", groups);
    for (char *bar; names[0];) {
        bar = strrchr(names, '|');
        char *text = bar ? bar + 1 : names;
        NameReading found;
        name_read(text, &found);
        if (reading->name.instrument == INSTRUMENT_NONE && found.instrument != INSTRUMENT_NONE && found.instrument != INSTRUMENT_STRINGS) {
            adopt(&reading->name, &found);
            part_own_clue(reading, (spz_clue){SPZ_CLUE_GROUP, understanding_keep(all, text), 0});
        }
        if (!reading->name.orchestra)
            reading->name.orchestra = found.orchestra;
        reading->name.concertino |= found.concertino || (found.solo && found.instrument == INSTRUMENT_NONE);
        reading->name.tutti |= found.tutti;
        if (!bar)
            break;
        *bar = '\0';
    }
}

static void read_codes(PartReading *reading, const Part *part)
{
    if (part->sound[0])
        take_sound(reading, sound_id_read(part->sound), (spz_clue){SPZ_CLUE_SOUND, part->sound, 0});
    if (part->midi_program)
        take_sound(reading, midi_program_read(part->midi_program), (spz_clue){SPZ_CLUE_MIDI_PROGRAM, NULL, part->midi_program});
}

static void settle_role(PartReading *reading, const Part *part)
{
    const NameReading *name = &reading->name;
    bool keyboard = name->family == SPZ_FAMILY_KEYBOARD || name->family == SPZ_FAMILY_PLUCKED;
    bool strings = name->family == SPZ_FAMILY_STRINGS;
    reading->division = instrument_has_section(name->instrument) || instrument_is_either(name->instrument) ? name->division : 0;
    reading->left_out = name->reduction;
    if (name->continuo && (keyboard || name->instrument == INSTRUMENT_CONTINUO))
        reading->role = SPZ_CONTINUO;
    else if (name->desk)
        reading->role = SPZ_DESK;
    else if (!name->rest && (name->solo || name->concertino || name->special || (strings && part->ensemble == 1)) && !(name->tutti && !name->solo))
        reading->role = SPZ_SOLO;
    else if (name->instrument == INSTRUMENT_OTHER_STRING)
        reading->role = SPZ_SOLO;
}

static void read_part(Understanding *all, size_t index)
{
    const Part *part = &all->movement->parts[index];
    PartReading *reading = &all->parts[index];
    char folded[160];
    name_fold(part->name, folded, sizeof folded);
    reading->folded = understanding_keep(all, folded);
    name_read(part->name, &reading->name);
    if (reading->name.instrument != INSTRUMENT_NONE)
        part_own_clue(reading, (spz_clue){SPZ_CLUE_NAME, part->name, 0});
    if (reading->name.desk)
        reading->desk = arena_text(all->arena, part->name + reading->name.desk_start, reading->name.desk_end - reading->name.desk_start);
    take_name(reading, part->abbreviation, SPZ_CLUE_ABBREVIATION);
    take_groups(all, reading, part->groups);
    bool nameless = reading->name.instrument == INSTRUMENT_NONE;
    take_name(reading, part->instrument, SPZ_CLUE_INSTRUMENT);
    if (nameless || instrument_is_either(reading->name.instrument) || reading->name.instrument == INSTRUMENT_STRINGS)
        read_codes(reading, part);
    settle_role(reading, part);
}

void parts_read(Understanding *all)
{
    for (size_t i = 0; i < all->movement->part_count; i++)
        read_part(all, i);
}
