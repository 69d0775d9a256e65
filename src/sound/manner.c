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

static Hairpin hairpin_at(const Movement *movement, const GroupSound *sound, Ticks when)
{
    const Part *part = &movement->parts[sound->part];
    Hairpin found = {0};
    bool closed = false;
    for (size_t i = 0; i < part->direction_count; i++) {
        const Direction *sign = &part->directions[i];
        if (!concerns(sign, sound->note))
            continue;
        if (sign->onset > when && !found.way)
            break;
        if (sign->kind == DIRECTION_WEDGE && sign->onset <= when)
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

/* Where the hairpin has led by then, from `rung` at its beginning. */
static double led_to(const Hairpin *hairpin, double rung, Ticks when)
{
    if (!hairpin->way || hairpin->to <= hairpin->from)
        return rung;
    double end = hairpin->end > 0 && (hairpin->end - rung) * hairpin->way > 0 ? hairpin->end : rung + 1.5 * hairpin->way;
    return rung + (end - rung) * (double)(when - hairpin->from) / (double)(hairpin->to - hairpin->from);
}

/* What marks on the note itself add. */
static double own_marks(const Note *note)
{
    return (note->flags & NOTE_ACCENT ? 1 : 0) - (note->flags & NOTE_MUTED ? 1 : 0);
}

static double written_rung(const Note *note)
{
    return note->dynamic ? note->dynamic : DYNAMIC_MF;
}

double manner_rung(const Manners *manners, const GroupSound *sound)
{
    Hairpin hairpin = hairpin_at(manners->movement, sound, sound->onset);
    return led_to(&hairpin, written_rung(sound->note), sound->onset) + own_marks(sound->note);
}

/* The last moment lies just within the note. A hairpin that begins within it begins where the one before has led. */
bool manner_swell(const Manners *manners, const GroupSound *sound, double *rungs, size_t count)
{
    bool changes = false;
    double base = written_rung(sound->note), marks = own_marks(sound->note);
    Ticks begun = -1;
    for (size_t i = 0; i < count; i++) {
        Ticks when = sound->onset + (sound->duration * (Ticks)i) / (Ticks)(count - 1) - (i == count - 1);
        Hairpin hairpin = hairpin_at(manners->movement, sound, when);
        if (hairpin.way && hairpin.from != begun && hairpin.from > sound->onset && i > 0)
            base = rungs[i - 1] - marks;
        begun = hairpin.way ? hairpin.from : begun;
        rungs[i] = hairpin.way ? led_to(&hairpin, base, when) + marks : i > 0 ? rungs[i - 1] : base + marks;
        changes = changes || fabs(rungs[i] - rungs[0]) > 0.1;
    }
    return changes;
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

/* What quavers don't fill is a triplet: a crotchet of three in the time of two still has two of them. */
int manner_repeats(const GroupSound *sound, Ticks duration, Ticks per_crotchet)
{
    double each = (double)per_crotchet / (sound->note->flags & NOTE_IN_QUAVERS ? 2 : 4);
    if (!(sound->note->flags & (NOTE_IN_QUAVERS | NOTE_IN_SEMIQUAVERS)) || sound->duration <= 0)
        return 1;
    double whole = (double)sound->duration / each;
    if (fabs(whole - round(whole)) > 1e-6)
        whole = round(whole * 3 / 2);
    return (int)fmax(1, fmin(200, round(whole * (double)duration / (double)sound->duration)));
}

uint8_t manner_program(const Note *note, uint8_t usual)
{
    if (note->flags & NOTE_PIZZICATO)
        return PROGRAM_PIZZICATO_STRINGS;
    return trembles(note->flags) ? PROGRAM_TREMOLO_STRINGS : usual;
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
