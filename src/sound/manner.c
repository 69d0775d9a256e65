#include "sound/manner.h"
#include "sound/cast.h"
#include <math.h>

const double manner_grace_seconds = 0.085;

/* Shares of the written length (common practice). */
static const struct Shares {
    double plain, staccato, bound; /* seconds that a bound note overlaps the next */
    double rings;                  /* seconds: a plucked string, whatever its note */
} shares = {0.92, 0.5, 0.03, 0.6};

void manners_open(Manners *manners, const Movement *movement)
{
    manners->movement = movement;
}

static bool concerns(const Direction *direction, const Note *note)
{
    return !direction->staff || direction->staff == note->staff;
}

/* The hairpin over a moment: which way, and from where to where. */
typedef struct Hairpin {
    int way;
    Ticks from, to;
    double end; /* rung; 0: nothing is written there */
} Hairpin;

static Hairpin hairpin_at(const Movement *movement, const GroupSound *sound)
{
    const Part *part = &movement->parts[sound->part];
    Hairpin found = {0};
    bool closed = false;
    for (size_t i = 0; i < part->direction_count; i++) {
        const Direction *sign = &part->directions[i];
        if (!concerns(sign, sound->note))
            continue;
        if (sign->onset > sound->onset && !found.way)
            break;
        if (sign->kind == DIRECTION_WEDGE && sign->onset <= sound->onset)
            found = (Hairpin){.way = sign->value, .from = sign->onset};
        else if (sign->kind == DIRECTION_WEDGE && !closed) {
            closed = true;
            found.to = sign->onset;
        }
        if (sign->kind == DIRECTION_DYNAMIC && closed && sign->onset >= found.to && sign->onset <= found.to + movement->per_crotchet && found.end == 0)
            found.end = sign->value;
        if (closed && sign->onset > found.to + movement->per_crotchet)
            break;
    }
    if (!closed)
        found.way = 0;
    return found;
}

double manner_rung(const Manners *manners, const GroupSound *sound)
{
    double rung = sound->note->dynamic ? sound->note->dynamic : DYNAMIC_MF;
    Hairpin hairpin = hairpin_at(manners->movement, sound);
    if (hairpin.way && hairpin.to > hairpin.from) {
        double end = hairpin.end > 0 && (hairpin.end - rung) * hairpin.way > 0 ? hairpin.end : rung + 1.5 * hairpin.way;
        rung += (end - rung) * (double)(sound->onset - hairpin.from) / (double)(hairpin.to - hairpin.from);
    }
    return rung + (sound->note->flags & NOTE_ACCENT ? 1 : 0) - (sound->note->flags & NOTE_MUTED ? 1 : 0);
}

double manner_length(const Note *note, double written, bool slurred, uint8_t program)
{
    if (note->flags & NOTE_GRACE)
        return written;
    if (program == PROGRAM_PIZZICATO_STRINGS)
        return fmax(written, shares.rings);
    if (note->flags & NOTE_STACCATO)
        return written * shares.staccato;
    return slurred ? written + shares.bound : written * shares.plain;
}

uint8_t manner_program(const Note *note, uint8_t usual)
{
    if (note->flags & NOTE_PIZZICATO)
        return PROGRAM_PIZZICATO_STRINGS;
    return note->flags & (NOTE_TREMOLO | NOTE_TREMOLO_PAIR) ? PROGRAM_TREMOLO_STRINGS : usual;
}

double manner_grace_early(const GroupSound *sounds, size_t count, size_t index)
{
    const GroupSound *own = &sounds[index];
    size_t behind = 0;
    if (!(own->note->flags & NOTE_GRACE))
        return 0;
    for (size_t i = index; i < count && sounds[i].onset == own->onset; i++)
        behind += sounds[i].part == own->part && sounds[i].note->voice == own->note->voice && sounds[i].note->flags & NOTE_GRACE;
    return fmin(0.35, (double)behind * manner_grace_seconds);
}

double manner_upper_neighbour(const Movement *movement, const Note *note)
{
    static const int semitones[7] = {0, 2, 4, 5, 7, 9, 11};
    static const int sharps[7] = {1, 3, 5, 0, 2, 4, 6}; /* place of C, D .. among F C G D A E B */
    int step = (note->step + 1) % 7, octave = note->octave + (note->step == 6), fifths = movement->bars[note->bar].fifths;
    int alter = fifths > sharps[step] ? 1 : -fifths > 6 - sharps[step] ? -1 : 0;
    int key = 12 * (octave + 1) + semitones[step] + alter;
    return key > note->midi ? key : note->midi + 2;
}
