/* range_doubts.c - notes that an instrument does not have. The limits are wide: what a good orchestral player can be asked for, not what is
 * comfortable. Strings are bounded below by their lowest open string; above only harmonics go beyond. */
#include "checking/checks.h"
#include <string.h>

static const char adler[] = "Adler, The Study of Orchestration (3rd ed. 2002), ranges of the instruments; from memory";
static const char tuning[] = "lowest open string; upper limit after Adler, The Study of Orchestration (3rd ed. 2002), from memory";

/* Sounding MIDI pitches. Sound ids of MusicXML 4.0 (sounds.xml), the more exact ones first. */
static const spz_range ranges[] = {
    {"strings.violin", "violin", 55, 107, tuning},
    {"strings.viola", "viola", 48, 96, tuning},
    {"strings.cello", "cello", 36, 91, tuning},
    {"strings.contrabass", "double bass", 23, 72, "low B of a five-string bass; upper limit after Adler, The Study of Orchestration (3rd ed. 2002), from memory"},
    {"wind.flutes.flute.piccolo", "piccolo", 74, 108, adler},
    {"wind.flutes.flute.alto", "alto flute", 55, 91, adler},
    {"wind.flutes.flute", "flute", 59, 98, adler},
    {"wind.reed.oboe", "oboe", 58, 93, adler},
    {"wind.reed.english-horn", "English horn", 52, 84, adler},
    {"wind.reed.clarinet.bass", "bass clarinet", 34, 83, adler},
    {"wind.reed.clarinet.eflat", "clarinet in E flat", 55, 98, adler},
    {"wind.reed.clarinet", "clarinet", 49, 96, adler},
    {"wind.reed.contrabassoon", "contrabassoon", 21, 60, adler},
    {"wind.reed.bassoon", "bassoon", 33, 77, adler},
    {"brass.french-horn", "horn", 29, 79, adler},
    {"brass.trumpet", "trumpet", 50, 88, adler},
    {"brass.trombone.bass", "bass trombone", 28, 72, adler},
    {"brass.trombone", "trombone", 28, 77, adler},
    {"brass.tuba", "tuba", 24, 67, adler},
    {"pluck.harp", "harp", 23, 104, adler},
};

size_t spz_range_count(void)
{
    return sizeof ranges / sizeof *ranges;
}

const spz_range *spz_range_at(size_t index)
{
    return index < spz_range_count() ? &ranges[index] : NULL;
}

static const spz_range *range_of_section(spz_section section)
{
    switch (section) {
    case SPZ_VN1:
    case SPZ_VN2:
    case SPZ_VN3:
        return &ranges[0];
    case SPZ_VA:
        return &ranges[1];
    case SPZ_VC:
        return &ranges[2];
    case SPZ_DB:
        return &ranges[3];
    default:
        return NULL;
    }
}

/* The id itself or one that goes on behind a point: 'wind.flutes.flute' is no 'wind.flutes.fl'. */
static bool is_of(const char *sound, const char *kind)
{
    size_t length = strlen(kind);
    return strncmp(sound, kind, length) == 0 && (sound[length] == '\0' || sound[length] == '.');
}

static const spz_range *range_of_sound(const char *sound)
{
    for (size_t i = 4; i < spz_range_count(); i++)
        if (is_of(sound, ranges[i].sound))
            return &ranges[i];
    return NULL;
}

static const spz_range *range_of_line(const Movement *m, const spz_line *line)
{
    const spz_range *range = range_of_section(line->section);
    return range || line->family == SPZ_FAMILY_STRINGS ? range : range_of_sound(m->parts[line->part].sound);
}

static bool belongs(const Part *part, const spz_line *line, const Note *note)
{
    return (line->staff == 0 || note->staff == line->staff) && (!line->voice || strcmp(part->voices[note->voice], line->voice) == 0);
}

/* A passage below or above the range is one doubt, at its first note. */
static void check_line(spz_doubts *doubts, const Movement *m, const spz_line *line, const spz_range *range)
{
    const Part *part = &m->parts[line->part];
    long outside = 0;
    const Note *first = NULL;
    int lowest = range->lowest;
    if (line->section == SPZ_VC && line->also == SPZ_DB) /* one staff for both: the basses sound an octave lower where it says so */
        lowest = ranges[3].lowest;
    for (size_t i = 0; i < part->note_count; i++) {
        const Note *note = &part->notes[i];
        bool above = note->midi > range->highest && !(note->flags & NOTE_HARMONIC);
        if (note->midi < 0 || !stream_hears(note) || !belongs(part, line, note) || (note->midi >= lowest && !above))
            continue;
        first = first ? first : note;
        outside++;
    }
    if (!first)
        return;
    doubts_add(doubts, m, (DoubtPlace){.part = (int)line->part, .bar = first->bar, .line = (long)first->line},
               (spz_doubt){.fault = SPZ_FAULT_OUT_OF_RANGE, .pitch = pitch_of(first), .range = (size_t)(range - ranges), .count = outside});
}

void check_ranges(spz_doubts *doubts, const SectionMap *map)
{
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_range *range = range_of_line(map->movement, &map->lines[i]);
        if (range)
            check_line(doubts, map->movement, &map->lines[i], range);
    }
}
