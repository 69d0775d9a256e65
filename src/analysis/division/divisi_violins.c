#include "analysis/division/divisi_violins.h"
#include "analysis/division/divisi_texture.h"
#include <math.h>

static const struct {
    size_t least_bars;   /* as for one section */
    double one_rhythm;   /* share of the attacks that both sections have, from which they are one body in three */
    double doubled;      /* share of these at which the undivided section doubles a line of the other: above, it is no third */
    size_t least_shared; /* fewer shared attacks are a chord, not three lines */
    double own;          /* share of a third part's notes that neither firsts nor seconds have, from which a bar is its own */
    size_t passing;      /* a soloist steps out of the section where the section has more than this many times the notes: no concertino */
    size_t gap;          /* bars in which it may rest in between */
} rules = { .least_bars = 2, .one_rhythm = 0.8, .doubled = 0.5, .least_shared = 4, .own = 0.5, .passing = 3, .gap = 2 };

/* All tutti violins that sit with `group`'s players, as one side. */
static spz_side all_violins(const SectionMap *map, const Group *group)
{
    spz_side side = {.section = SPZ_VIOLINS, .group = SIZE_MAX, .orchestra = group->about.orchestra};
    for (size_t g = 0; g < map->group_count; g++) {
        const spz_group *about = &map->groups[g].about;
        if (section_is_violin(about->section) && !about->solo && about->orchestra == group->about.orchestra)
            side.players |= players_of_group(g);
    }
    return side;
}

static spz_status report(Findings *findings, const Group *firsts, const Stretch *stretch, spz_division division, bool voiced)
{
    const Movement *movement = findings->map->movement;
    const Bar *first = &movement->bars[stretch->first], *last = &movement->bars[stretch->last];
    spz_passage passage = {
        .kind = SPZ_DIV3, .sides = { all_violins(findings->map, firsts), no_side },
        .onset = first->onset, .end = last->onset + last->length, .strength = stretch->strength, .turns = division.lines,
        .foreground = stretch->foreground, .fully_voiced = voiced, .told.division = division,
    };
    return findings_add(findings, &passage);
}

typedef struct Range { size_t first, last; } Range; /* bars */
typedef ARRAY(Range) RangeList;

static bool keep_rest(const Divided *divided, size_t first, size_t past, const PlayingParts *company, StretchList *out)
{
    if (first + rules.least_bars > past)
        return true;
    Stretch rest = divisi_stretch_within(divided->bars, first, past - 1, company);
    return rest.divided < rules.least_bars || array_push(out, rest);
}

/* Takes the ranges (in order) out of the stretches; what is left on either side stays if it is still long enough. */
static spz_status cut_out(Divided *divided, const RangeList *ranges, const PlayingParts *company)
{
    StretchList left = { NULL, 0, 0 };
    bool enough = true;
    size_t next = 0;
    for (size_t i = 0; i < divided->stretches.count && enough; i++) {
        Stretch stretch = divided->stretches.at[i];
        size_t first = stretch.first;
        while (next < ranges->count && ranges->at[next].last < stretch.first)
            next++;
        size_t at = next;
        if (at == ranges->count || ranges->at[at].first > stretch.last) {
            enough = array_push(&left, stretch);
            continue;
        }
        for (; at < ranges->count && ranges->at[at].first <= stretch.last && enough; at++) {
            enough = keep_rest(divided, first, ranges->at[at].first, company, &left);
            first = ranges->at[at].last + 1;
        }
        enough = enough && keep_rest(divided, first, stretch.last + 1, company, &left);
    }
    StretchList before = divided->stretches;
    divided->stretches = left;
    array_free(&before);
    return enough ? SPZ_OK : SPZ_NO_MEMORY;
}

/* The stretch as one of all violins: more lines, and twice the share of what is heard. */
static Stretch all_together(const Stretch *stretch, int lines)
{
    Stretch both = *stretch;
    both.lines = lines;
    both.foreground = fmin(1, 2 * both.foreground);
    both.strength = divisi_strength(&both);
    return both;
}

static spz_status report_both(Findings *findings, const PlayingParts *company, Divided *violins[2], Range range)
{
    Stretch parts[2];
    for (int i = 0; i < 2; i++)
        parts[i] = divisi_stretch_of(violins[i]->bars, range.first, range.last, company);
    int lines = parts[0].lines + parts[1].lines;
    Stretch both = all_together(&parts[parts[1].strength > parts[0].strength], lines);
    bool voiced = parts[0].independence >= 0.5 && parts[1].independence >= 0.5;
    spz_division division = {.lines = lines, .ground = divisi_told(&both).ground, .violins = SPZ_BOTH_DIVIDED,
                             .writing = {divisi_writing_told(&parts[0]), divisi_writing_told(&parts[1])}};
    return report(findings, violins[0]->group, &both, division, voiced);
}

/* Where both sections are in two for long enough at the same time; sections in three stand for themselves. */
static spz_status both_divided(Findings *findings, const PlayingParts *company, Divided *violins[2], RangeList *ranges)
{
    const StretchList *a = &violins[0]->stretches, *b = &violins[1]->stretches;
    spz_status status = SPZ_OK;
    for (size_t i = 0, j = 0; i < a->count && j < b->count && !status;) {
        const Stretch *one = &a->at[i], *other = &b->at[j];
        Range range = { .first = one->first > other->first ? one->first : other->first,
                        .last = one->last < other->last ? one->last : other->last };
        if (range.last + 1 >= range.first + rules.least_bars && one->lines == 2 && other->lines == 2) {
            status = report_both(findings, company, violins, range);
            if (!status && !array_push(ranges, range))
                status = SPZ_NO_MEMORY;
        }
        if (one->last < other->last)
            i++;
        else
            j++;
    }
    return status;
}

static bool sounds_pitch_class(const Group *group, size_t from, size_t past, int midi)
{
    for (size_t i = from; i < past; i++)
        if (group->sounds[i].note->midi >= 0 && (group->sounds[i].note->midi - midi) % 12 == 0)
            return true;
    return false;
}

static size_t past_moment(const Group *group, size_t from)
{
    size_t i = from;
    while (i < group->sound_count && group->sounds[i].onset == group->sounds[from].onset)
        i++;
    return i;
}

static Ticks onset_of(const Group *group, size_t index, Ticks at_most)
{
    return index < group->sound_count && group->sounds[index].onset < at_most ? group->sounds[index].onset : at_most;
}

/* One body in three: the same rhythm, and the undivided section is not just a doubling. */
static bool is_equal_third(const Group *divided, const Group *other, Ticks from, Ticks to)
{
    size_t i = group_sound_at(divided, from), j = group_sound_at(other, from), shared = 0, all = 0, doubled = 0;
    for (;;) {
        Ticks a = onset_of(divided, i, to), b = onset_of(other, j, to);
        if (a >= to && b >= to)
            break;
        size_t past_a = a <= b ? past_moment(divided, i) : i;
        size_t past_b = b <= a ? past_moment(other, j) : j;
        all++;
        if (a == b) {
            shared++;
            doubled += sounds_pitch_class(divided, i, past_a, other->sounds[j].note->midi);
        }
        i = past_a;
        j = past_b;
    }
    return shared >= rules.least_shared && (double)shared >= rules.one_rhythm * (double)all &&
           (double)doubled < rules.doubled * (double)shared;
}

static spz_status report_thirds(Findings *findings, const Stretch *divided, const Divided *other, bool first_divided)
{
    Stretch three = all_together(divided, 3);
    spz_division division = {.lines = 3, .ground = divisi_told(divided).ground, .violins = first_divided ? SPZ_FIRSTS_DIVIDED : SPZ_SECONDS_DIVIDED};
    division.writing[!first_divided] = divisi_writing_told(divided);
    return report(findings, other->group, &three, division, divided->independence >= 0.5);
}

/* Two staves each, both sections divided a bar before, 'div. a 5' over one of them: each section is divided for itself, and where one of them
 * plays in one line for a moment that makes no three bodies. */
static bool each_for_itself(const Stretch *stretch, const Divided *other)
{
    if (stretch->sum.said > 2)
        return true;
    for (size_t i = stretch->first > rules.least_bars ? stretch->first - rules.least_bars : 0; i <= stretch->last; i++) {
        const BarWriting *bar = &other->bars[i];
        if (bar->said || bar->mark_begins || divisi_lines_in_bar(bar) > 1 || bar->evidence[EVIDENCE_MARK] || bar->evidence[EVIDENCE_PARTS])
            return true;
    }
    return false;
}

static spz_status look_for_thirds(Findings *findings, Divided *divided, const Divided *other, bool first_divided)
{
    const Movement *movement = findings->map->movement;
    spz_status status = SPZ_OK;
    size_t kept = 0;
    for (size_t i = 0; i < divided->stretches.count && !status; i++) {
        Stretch stretch = divided->stretches.at[i];
        const Bar *first = &movement->bars[stretch.first], *last = &movement->bars[stretch.last];
        if (stretch.lines != 2 || each_for_itself(&stretch, other) ||
            !is_equal_third(divided->group, other->group, first->onset, last->onset + last->length))
            divided->stretches.at[kept++] = stretch;
        else
            status = report_thirds(findings, &stretch, other, first_divided);
    }
    divided->stretches.count = kept;
    return status;
}

spz_status divisi_of_both_violins(Findings *findings, const PlayingParts *company, Divided *first, Divided *second)
{
    Divided *violins[2] = { first, second };
    RangeList ranges = { NULL, 0, 0 };
    spz_status status = both_divided(findings, company, violins, &ranges);
    for (int i = 0; i < 2 && !status; i++)
        status = cut_out(violins[i], &ranges, company);
    if (!status)
        status = look_for_thirds(findings, first, second, true);
    if (!status)
        status = look_for_thirds(findings, second, first, false);
    array_free(&ranges);
    return status;
}

/* A note that another section has at the same moment, at the pitch or in octaves, is no line of its own. */
static bool is_doubled_by(const Group *group, const GroupSound *sound)
{
    size_t from = group_sound_at(group, sound->onset);
    if (from == group->sound_count || group->sounds[from].onset != sound->onset)
        return false;
    return sounds_pitch_class(group, from, past_moment(group, from), sound->note->midi);
}

/* The violins of one orchestra, where there are three parts. */
typedef struct Violins { const Divided *first, *second, *third; } Violins;

/* Whether the third part has notes of its own in a bar; a note held from the bar `before` counts as that one did. */
static bool plays_its_own(const SectionMap *map, const Violins *violins, size_t bar, bool before)
{
    const Bar *place = &map->movement->bars[bar];
    const Group *third = violins->third->group;
    size_t own = 0, all = 0;
    for (size_t i = group_sound_at(third, place->onset); i < third->sound_count; i++) {
        const GroupSound *sound = &third->sounds[i];
        if (sound->onset >= place->onset + place->length)
            break;
        all++;
        own += !is_doubled_by(violins->first->group, sound) && !is_doubled_by(violins->second->group, sound);
    }
    return all ? (double)own >= rules.own * (double)all : before && violins->third->bars[bar].heard;
}

static bool laid_out_in_threes(const SectionMap *map)
{
    for (size_t i = 0; i < map->group_count; i++)
        if (map->groups[i].about.number >= 3)
            return true;
    return false;
}

/* What plays beside firsts and seconds: a third part, or a soloist who steps out of them. */
typedef struct Beside {
    spz_violins_divided as;
    double least, most; /* strength */
    bool both;          /* only while firsts and seconds play */
} Beside;
static const Beside third_part = {SPZ_THIRD_PART, 0.6, 1, false};  /* it plays for as long as any division: the composer wants three bodies */
static const Beside solo_above = {SPZ_SOLO_ABOVE, 0.2, 0.4, true}; /* one player, who sits in front wherever the violins sit */

static spz_status report_third(Findings *findings, const PlayingParts *company, const Divided *third, const Beside *beside, Range range)
{
    if (range.last + 1 < range.first + rules.least_bars)
        return SPZ_OK;
    Stretch stretch = divisi_stretch_of(third->bars, range.first, range.last, company);
    stretch.independence = 1; /* a line of its own */
    stretch = all_together(&stretch, 3);
    stretch.strength = fmin(beside->most, fmax(stretch.strength, beside->least));
    spz_division division = {.lines = 3, .ground = SPZ_BY_PARTS, .violins = beside->as};
    return report(findings, third->group, &stretch, division, true);
}

static spz_status stretches_of_its_own(Findings *findings, const PlayingParts *company, const Violins *violins, const Beside *beside)
{
    size_t bars = findings->map->movement->bar_count;
    Range range = {0, 0};
    bool open = false, own = false;
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < bars && !status; i++) {
        bool beside_both = violins->first->bars[i].heard && violins->second->bars[i].heard;
        own = plays_its_own(findings->map, violins, i, own) && (beside_both || !beside->both);
        if (open && i > range.last + rules.gap + 1) {
            status = report_third(findings, company, violins->third, beside, range);
            open = false;
        }
        if (!own)
            continue;
        range = (Range){open ? range.first : i, i};
        open = true;
    }
    return status || !open ? status : report_third(findings, company, violins->third, beside, range);
}

spz_status divisi_of_third_violins(Findings *findings, const PlayingParts *company, const Divided *first, const Divided *second,
                                   const Divided *third)
{
    const Violins violins = { first, second, third };
    return laid_out_in_threes(findings->map) ? SPZ_OK : stretches_of_its_own(findings, company, &violins, &third_part);
}

static bool steps_out(const Group *solo, const Group *firsts)
{
    return solo->sound_count * rules.passing < firsts->sound_count;
}

spz_status divisi_of_solo_violin(Findings *findings, const PlayingParts *company, const Divided *first, const Divided *second, Divided *solo)
{
    const Violins violins = { first, second, solo };
    if (!steps_out(solo->group, first->group))
        return SPZ_OK;
    spz_status status = divisi_writing_of(findings->map, solo->group, &solo->bars);
    return status ? status : stretches_of_its_own(findings, company, &violins, &solo_above);
}
