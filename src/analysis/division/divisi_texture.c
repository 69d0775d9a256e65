#include "analysis/division/divisi_texture.h"

/* Shares from which a texture is called so. */
static const struct { double apart, still, most; } rules = {
    .apart = 0.3, /* of the thick moments, one voice sounds on while another moves */
    .still = 0.3, /* a voice that moves this much less often than the other is held */
    .most = 0.6,
};

static spz_texture motion_of(const BarWriting *sum)
{
    if (sum->upper < rules.still * sum->lower)
        return SPZ_UPPER_HELD;
    return sum->lower < rules.still * sum->upper ? SPZ_LOWER_HELD : SPZ_INDEPENDENT;
}

/* The interval that most chords of two lines have; SPZ_IN_CHORDS where there is none. */
static spz_texture interval_of(const BarWriting *sum)
{
    double most = rules.most * sum->thick;
    if (sum->thirds >= most)
        return SPZ_IN_THIRDS;
    if (sum->sixths >= most)
        return SPZ_IN_SIXTHS;
    if (sum->octaves >= most)
        return SPZ_IN_OCTAVES;
    if (sum->fifths >= most)
        return SPZ_IN_FIFTHS;
    return sum->thirds + sum->sixths >= most ? SPZ_IN_THIRDS_AND_SIXTHS : SPZ_IN_CHORDS;
}

static spz_manner manner_of(const BarWriting *sum)
{
    return sum->tremolo >= rules.most * sum->thick ? SPZ_TREMOLO : sum->plucked >= rules.most * sum->thick ? SPZ_PIZZICATO : SPZ_PLAIN;
}

spz_writing divisi_writing_told(const Stretch *stretch)
{
    const BarWriting *sum = &stretch->sum;
    bool two = stretch->lines == 2;
    if (2 * stretch->turns > stretch->divided)
        return (spz_writing){SPZ_IN_TURN, SPZ_PLAIN};
    if (sum->apart >= rules.apart * sum->thick)
        return (spz_writing){two ? motion_of(sum) : SPZ_MOVING_APART, SPZ_PLAIN};
    spz_texture interval = two ? interval_of(sum) : SPZ_IN_CHORDS;
    if (interval == SPZ_IN_CHORDS && two && stretch->independence >= rules.apart)
        interval = SPZ_NOTE_AGAINST_NOTE;
    return (spz_writing){interval, manner_of(sum)};
}

static spz_ground ground_of(const BarWriting *sum)
{
    static const spz_ground grounds[EVIDENCE_COUNT] = {[EVIDENCE_MARK] = SPZ_BY_MARK, [EVIDENCE_PARTS] = SPZ_BY_PARTS,
        [EVIDENCE_HAND] = SPZ_BY_HAND, [EVIDENCE_VOICES] = SPZ_BY_VOICES, [EVIDENCE_CHORDS] = SPZ_BY_CHORDS};
    Evidence most = EVIDENCE_MARK;
    for (int e = 1; e < EVIDENCE_COUNT; e++)
        most = sum->evidence[e] > sum->evidence[most] ? (Evidence)e : most;
    return grounds[most];
}

spz_division divisi_told(const Stretch *stretch)
{
    return (spz_division){.lines = stretch->lines, .soloists = stretch->sum.soloists > 1 ? stretch->sum.soloists : 0,
                          .by_desk = stretch->sum.by_desk, .ground = ground_of(&stretch->sum), .violins = SPZ_ONE_SECTION,
                          .writing = {divisi_writing_told(stretch)}};
}
