#include "seating/evidence/seating_evidence.h"
#include "seating/evidence/seconds.h"
#include <math.h>

const EvidenceFigures evidence_figures = {
    .strength_power = 2.5,
    .foreground_floor = 0.2,
    .turn_gain = 0.1,
    .turn_limit = 6,
    .antiphony_full = 2.5,
    .coupling_full = 0.25,
    .three_full = 1,
    .three_long = 32,
    .melody_full = 0.1,
    .chord_share = 0.5,
    .usual_bars = 200,
    .era_middle = 1930, /* common practice, no source */
    .era_slope = 40,
    .bass_free = 0.6,
    .bass_shared = 0.7,
    .bass_heirs = 0.4,
};

double evidence_saturation(double sum, double full)
{
    return 1 - exp(-sum / full);
}

double evidence_pair_share(PairKind kind, const Rules *rules)
{
    switch (kind) {
    case PAIR_VIOLINS: return rules->weights.violins;
    case PAIR_VIOLAS_CELLOS: return rules->weights.violas_cellos;
    case PAIR_VIOLINS_LOWER: return rules->weights.violins_lower;
    case PAIR_OTHERS: break;
    }
    return rules->weights.others;
}

double evidence_era(int year)
{
    return year > 0 ? tanh((evidence_figures.era_middle - year) / evidence_figures.era_slope) : 0;
}

static bool is_lower(spz_section s)
{
    return s == SPZ_VA || s == SPZ_VC || s == SPZ_DB || s == SPZ_STRINGS;
}

static PairKind kind_of(spz_section a, spz_section b)
{
    if (section_is_violin(a) && section_is_violin(b))
        return PAIR_VIOLINS;
    if (a == SPZ_VA && b == SPZ_VC)
        return PAIR_VIOLAS_CELLOS;
    return a == SPZ_VIOLINS || b == SPZ_VIOLINS ? PAIR_VIOLINS_LOWER : PAIR_OTHERS;
}

static PairEvidence *pair_for(SeatingEvidence *evidence, spz_section a, spz_section b)
{
    if (a > b) {
        spz_section swap = a;
        a = b;
        b = swap;
    }
    for (size_t i = 0; i < evidence->pairs.count; i++)
        if (evidence->pairs.at[i].a == a && evidence->pairs.at[i].b == b)
            return &evidence->pairs.at[i];
    PairEvidence fresh = {.a = a, .b = b, .kind = kind_of(a, b)};
    return array_push(&evidence->pairs, fresh) ? &evidence->pairs.at[evidence->pairs.count - 1] : NULL;
}

static double antiphony_weight(const spz_passage *p, const Rules *rules, double bars)
{
    const EvidenceFigures *f = &evidence_figures;
    int turns = p->turns < f->turn_limit ? p->turns : f->turn_limit;
    double weight = pow(p->strength, f->strength_power);
    weight *= f->foreground_floor + (1 - f->foreground_floor) * p->foreground;
    weight *= 1 + f->turn_gain * (turns > 2 ? turns - 2 : 0);
    weight *= p->kind == SPZ_IMITATION ? rules->weights.imitation : 1;
    return weight / sqrt(fmax(1, bars / f->usual_bars));
}

/* The share of the movement that it covers, times how much hangs on it. */
static double coupling_weight(const spz_passage *p, double bars)
{
    double covered = (double)(p->last - p->first + 1) / fmax(bars, 1);
    return covered * p->strength * p->tightness * (0.5 + 0.5 * p->foreground);
}

/* By how long it is heard: a moment in three must not decide about a movement. */
static double three_weight(const SeatingEvidence *evidence, const spz_passage *p)
{
    double crotchets = (double)(p->end - p->onset) / (double)evidence->movement->per_crotchet;
    double weight = pow(p->strength, evidence_figures.strength_power) * fmin(1, crotchets / evidence_figures.three_long);
    return p->fully_voiced ? weight : weight * evidence_figures.chord_share;
}

static const spz_group *group_of(const SeatingEvidence *evidence, const spz_passage *p, int side)
{
    const SectionMap *map = evidence->findings->map;
    return p->sides[side].group < map->group_count ? &map->groups[p->sides[side].group].about : NULL;
}

static bool between_orchestras(const SeatingEvidence *evidence, const spz_passage *p)
{
    const spz_group *one = group_of(evidence, p, 0), *two = group_of(evidence, p, 1);
    if (!evidence->two_orchestras)
        return false;
    if (one && two)
        return one->orchestra != two->orchestra;
    return p->sides[0].section == p->sides[1].section;
}

static bool has_soloist(const SeatingEvidence *evidence, const spz_passage *p)
{
    const spz_group *one = group_of(evidence, p, 0), *two = group_of(evidence, p, 1);
    return (one && one->solo) || (two && two->solo);
}

/* Two places that can be apart: a section and the set it belongs to are not. */
static bool is_between_seats(const spz_passage *p)
{
    spz_section a = p->sides[0].section, b = p->sides[1].section;
    bool a_violin = section_is_violin(a) || a == SPZ_VIOLINS, b_violin = section_is_violin(b) || b == SPZ_VIOLINS;
    if (a == b || !(a_violin || is_lower(a)) || !(b_violin || is_lower(b)))
        return false;
    bool same_family = a_violin == b_violin,
         any_set = a == SPZ_VIOLINS || b == SPZ_VIOLINS || a == SPZ_STRINGS || b == SPZ_STRINGS;
    return !(same_family && any_set);
}

static bool push(ItemList *list, const spz_passage *passage, double weight)
{
    Item item = {passage, weight};
    return array_push(list, item);
}

static bool add_between(SeatingEvidence *evidence, const Rules *rules, const spz_passage *p, double bars)
{
    if (has_soloist(evidence, p))
        return push(&evidence->solos, p, 0);
    if (between_orchestras(evidence, p))
        return p->kind == SPZ_COUPLING || push(&evidence->orchestras, p, antiphony_weight(p, rules, bars));
    if (p->sides[0].section == SPZ_WINDS || p->sides[1].section == SPZ_WINDS)
        return p->kind == SPZ_COUPLING || push(&evidence->winds, p, 0);
    if (!is_between_seats(p))
        return true;
    PairEvidence *pair = pair_for(evidence, p->sides[0].section, p->sides[1].section);
    if (!pair)
        return false;
    bool coupling = p->kind == SPZ_COUPLING;
    double weight = coupling ? coupling_weight(p, bars) : antiphony_weight(p, rules, bars);
    *(coupling ? &pair->coupling_sum : &pair->antiphony_sum) += weight;
    return push(coupling ? &pair->coupling : &pair->antiphony, p, weight);
}

static bool add_passage(SeatingEvidence *evidence, const Rules *rules, const spz_passage *p)
{
    double bars = (double)evidence->movement->bar_count;
    if (p->ruling.kind == SPZ_VETOED)
        return push(&evidence->vetoed, p, p->ruling.heard);
    if (p->ruling.kind == SPZ_WEIGHTED && !push(&evidence->weighted, p, p->strength))
        return false;
    if (p->kind == SPZ_DIV2)
        return true;
    if (p->kind != SPZ_DIV3)
        return add_between(evidence, rules, p, bars);
    if (p->sides[0].section != SPZ_VIOLINS) /* one section in three divides by desk wherever it sits */
        return true;
    if (p->told.division.violins == SPZ_SOLO_ABOVE) /* one player, who stands in front wherever the violins sit */
        return true;
    if (p->turns % 2 == 0) /* two lines in each section: they divide outside and inside wherever they sit */
        return push(&evidence->fours, p, 0);
    double weight = three_weight(evidence, p);
    evidence->three_sum += weight;
    return push(&evidence->thirds, p, weight);
}

static void note_groups(SeatingEvidence *evidence)
{
    const SectionMap *map = evidence->findings->map;
    for (size_t i = 0; i < map->group_count; i++) {
        evidence->has_thirds = evidence->has_thirds || (map->groups[i].about.section == SPZ_VN3 && !map->groups[i].about.solo);
        evidence->two_orchestras = evidence->two_orchestras || map->groups[i].about.orchestra > 1;
    }
    if (evidence->has_thirds) /* a part of their own presupposes three equal groups from first bar to last */
        evidence->three_sum += 2 * evidence_figures.three_full;
}

/* Largest share of their bars in which cellos and basses play one line, of all groups. */
static double bass_together(const SeatingEvidence *evidence)
{
    const SectionMap *map = evidence->findings->map;
    double together = 0;
    for (size_t i = 0; i < evidence->findings->pairings.count; i++) {
        const spz_pairing *pairing = &evidence->findings->pairings.at[i];
        if (pairing->groups[0] >= map->group_count || pairing->groups[1] >= map->group_count)
            continue;
        spz_section a = map->groups[pairing->groups[0]].about.section, b = map->groups[pairing->groups[1]].about.section;
        if ((a == SPZ_VC && b == SPZ_DB) || (a == SPZ_DB && b == SPZ_VC))
            together = fmax(together, pairing->together);
    }
    return together;
}

/* A continuo speaks for itself; one written line for cellos and basses says nearly as much; its heirs are cellos and basses that
 * hardly ever part. */
static void note_bass(SeatingEvidence *evidence)
{
    const SectionMap *map = evidence->findings->map;
    const EvidenceFigures *f = &evidence_figures;
    for (size_t i = 0; i < map->line_count; i++)
        evidence->continuo = evidence->continuo || map->lines[i].role == SPZ_CONTINUO;
    for (size_t i = 0; i < map->group_count; i++)
        evidence->bass_shared = evidence->bass_shared || (map->groups[i].about.section == SPZ_DB && map->groups[i].shares_bass);
    if (evidence->continuo)
        evidence->bass = 1;
    else if (evidence->bass_shared)
        evidence->bass = f->bass_shared;
    else
        evidence->bass = f->bass_heirs * fmax(0, bass_together(evidence) - f->bass_free) / (1 - f->bass_free);
}

spz_status evidence_gather(const Findings *findings, const Rules *rules, int year, SeatingEvidence *out)
{
    *out = (SeatingEvidence){.findings = findings, .movement = findings->map->movement, .year = year};
    note_groups(out);
    note_bass(out);
    for (size_t i = 0; i < findings->passages.count; i++)
        if (!add_passage(out, rules, &findings->passages.at[i]))
            return SPZ_NO_MEMORY;
    return seconds_find_melody(findings->map, &out->melody, &out->melody_share);
}

void evidence_release(SeatingEvidence *evidence)
{
    for (size_t i = 0; i < evidence->pairs.count; i++) {
        array_free(&evidence->pairs.at[i].antiphony);
        array_free(&evidence->pairs.at[i].coupling);
    }
    array_free(&evidence->pairs);
    array_free(&evidence->thirds);
    array_free(&evidence->fours);
    array_free(&evidence->orchestras);
    array_free(&evidence->vetoed);
    array_free(&evidence->weighted);
    array_free(&evidence->winds);
    array_free(&evidence->solos);
    array_free(&evidence->melody);
}
