#include "analysis/divisi_stretch.h"
#include <math.h>
#include <string.h>

static const struct {
    double thick;          /* share of a bar's sound with two or more pitches, from which it is written in lines */
    double lines;          /* of that, share with three (four) pitches, from which it is in three (four) */
    double firm;           /* share of the thick time under firm evidence, from which the bar is divided for certain */
    size_t rests, single;  /* bars of rest, or in one line, that a stretch reaches across */
    size_t least_bars;     /* divided bars: shorter ones aren't listed (the readers' rule: two bars or more) */
    double least_divided;  /* share of its bars that must be divided: the rest are chords around them */
} rules = {
    .thick = 0.4, .lines = 0.5, .firm = 0.5, .rests = 2, .single = 1, .least_bars = 2, .least_divided = 0.25,
};

/* Strength: what a listener makes of it; each term 0..1 before its weight. Reasons in docs/method-divisi.md. */
static const struct { double base, independence, lines, length, foreground, certain; } weight = {
    .base = 0.16, .independence = 0.3, .lines = 0.16, .length = 0.12, .foreground = 0.25, .certain = 0.1,
};

typedef enum BarKind { BAR_SILENT, BAR_SINGLE, BAR_CHORDS, BAR_VOICES, BAR_FIRM } BarKind;

int lines_in_bar(const BarWriting *bar)
{
    if (!bar->heard)
        return 0;
    if ((double)bar->at_least[2] < rules.thick * (double)bar->heard)
        return bar->in_turn ? 2 : 1;
    int lines = 2;
    while (lines < 4 && (double)bar->at_least[lines + 1] >= rules.lines * (double)bar->at_least[2])
        lines++;
    return lines;
}

static BarKind kind_of(const BarWriting *bar)
{
    int lines = lines_in_bar(bar);
    if (lines < 2)
        return lines ? BAR_SINGLE : BAR_SILENT;
    if (bar->in_turn)
        return BAR_FIRM;
    Ticks firm = bar->evidence[EVIDENCE_MARK] + bar->evidence[EVIDENCE_PARTS] + bar->evidence[EVIDENCE_HAND];
    if ((double)firm >= rules.firm * (double)bar->at_least[2])
        return BAR_FIRM;
    if ((double)(firm + bar->evidence[EVIDENCE_VOICES]) >= rules.firm * (double)bar->at_least[2])
        return BAR_VOICES;
    return BAR_CHORDS;
}

static void add_counts(BarWriting *sum, const BarWriting *bar)
{
    sum->heard += bar->heard;
    for (int n = 0; n < 5; n++)
        sum->at_least[n] += bar->at_least[n];
    for (int e = 0; e < EVIDENCE_COUNT; e++)
        sum->evidence[e] += bar->evidence[e];
    sum->attacks = (uint16_t)(sum->attacks + bar->attacks);
    sum->thick = (uint16_t)(sum->thick + bar->thick);
    sum->apart = (uint16_t)(sum->apart + bar->apart);
    sum->upper = (uint16_t)(sum->upper + bar->upper);
    sum->lower = (uint16_t)(sum->lower + bar->lower);
    sum->thirds = (uint16_t)(sum->thirds + bar->thirds);
    sum->sixths = (uint16_t)(sum->sixths + bar->sixths);
    sum->octaves = (uint16_t)(sum->octaves + bar->octaves);
    sum->fifths = (uint16_t)(sum->fifths + bar->fifths);
    sum->tremolo = (uint16_t)(sum->tremolo + bar->tremolo);
    sum->plucked = (uint16_t)(sum->plucked + bar->plucked);
    if (bar->in_turn && lines_in_bar(bar) == 2 && (double)bar->at_least[2] < rules.thick * (double)bar->heard) {
        sum->thick = (uint16_t)(sum->thick + bar->attacks); /* they move apart throughout */
        sum->apart = (uint16_t)(sum->apart + bar->attacks);
    }
}

static void add_bar(BarWriting *sum, const BarWriting *bar)
{
    add_counts(sum, bar);
    sum->said = bar->said > sum->said ? bar->said : sum->said;
    sum->by_desk |= bar->by_desk;
    sum->half |= bar->half;
    sum->solo |= bar->solo;
    sum->mark_begins |= bar->mark_begins;
    if (bar->heard) {
        sum->top = bar->top > sum->top ? bar->top : sum->top;
        sum->bottom = !sum->bottom || bar->bottom < sum->bottom ? bar->bottom : sum->bottom;
    }
}

/* Voices that begin apart go their own ways for certain; note against note they do so as far as the intervals change. */
static double independence_of(const BarWriting *sum)
{
    if (!sum->thick)
        return 0;
    double apart = fmin(1, 2.0 * sum->apart / sum->thick);
    double alike = (double)(sum->thirds + sum->sixths + sum->octaves) / sum->thick;
    return fmax(apart, 0.5 * (1 - alike));
}

static double certainty_of(const BarWriting *sum)
{
    static const double sure[EVIDENCE_COUNT] = {
        [EVIDENCE_MARK] = 1, [EVIDENCE_PARTS] = 1, [EVIDENCE_HAND] = 0.8, [EVIDENCE_VOICES] = 0.4, [EVIDENCE_CHORDS] = 0,
    };
    double certain = 0;
    for (int e = 0; e < EVIDENCE_COUNT; e++)
        certain += sure[e] * (double)sum->evidence[e];
    return sum->at_least[2] ? certain / (double)sum->at_least[2] : 0;
}

Stretch stretch_of(const BarWriting *bars, size_t first, size_t last, const Company *company)
{
    Stretch stretch = { .first = first, .last = last };
    int bars_in[5] = { 0 };
    for (size_t i = first; i <= last; i++) {
        BarKind kind = kind_of(&bars[i]);
        add_bar(&stretch.sum, &bars[i]);
        stretch.divided += kind >= BAR_VOICES;
        stretch.firm += kind == BAR_FIRM;
        bars_in[lines_in_bar(&bars[i])]++;
    }
    int most = bars_in[2] + bars_in[3] + bars_in[4];
    stretch.lines = 2 * bars_in[4] >= most && bars_in[4] ? 4 : 2 * (bars_in[3] + bars_in[4]) >= most && bars_in[3] + bars_in[4] ? 3 : 2;
    stretch.independence = independence_of(&stretch.sum);
    stretch.foreground = company_share(company, first, last, 1);
    stretch.strength = weight.base + weight.independence * stretch.independence + weight.lines * (stretch.lines > 2) +
                       weight.length * fmin(1, (double)(last - first + 1) / 8) + weight.foreground * fmin(1, 2 * stretch.foreground) +
                       weight.certain * certainty_of(&stretch.sum);
    stretch.strength = fmin(0.95, stretch.strength);
    return stretch;
}

/* The bars from `first` on that belong together; returns the last of them. */
static size_t reach(const BarWriting *bars, size_t bar_count, size_t first)
{
    size_t last = first, silent = 0, single = 0;
    for (size_t i = first + 1; i < bar_count; i++) {
        BarKind kind = kind_of(&bars[i]);
        silent += kind == BAR_SILENT;
        single += kind == BAR_SINGLE;
        if (silent > rules.rests || single > rules.single || bars[i].mark_ends)
            break;
        if (kind < BAR_CHORDS)
            continue;
        last = i;
        silent = single = 0;
    }
    return last;
}

/* Chords that one player can stop don't begin or end a stretch by themselves unless they lead straight into divided bars. */
static void trim(const BarWriting *bars, size_t *first, size_t *last)
{
    while (*first < *last && kind_of(&bars[*first]) < BAR_VOICES)
        ++*first;
    while (*last > *first && kind_of(&bars[*last]) < BAR_VOICES)
        --*last;
}

/* Where the section goes from two lines to three, or back, for long enough, a new stretch begins: returns the last bar before that. */
static size_t same_division(const BarWriting *bars, size_t first, size_t last)
{
    size_t since = first; /* first bar of the newest run of other lines */
    bool many = lines_in_bar(&bars[first]) > 2;
    size_t run = 0;
    for (size_t i = first; i <= last; i++) {
        int lines = lines_in_bar(&bars[i]);
        if (lines < 2 || (lines > 2) == many) {
            run = lines < 2 ? run : 0;
            continue;
        }
        since = run ? since : i;
        run++;
        if (run >= rules.least_bars && since - first >= rules.least_bars)
            return since - 1;
        if (run >= rules.least_bars && since - first < rules.least_bars)
            many = !many; /* the first bars were too few to stand for themselves */
    }
    return last;
}

spz_status stretches_find(const BarWriting *bars, size_t bar_count, const Company *company, StretchList *out)
{
    for (size_t i = 0; i < bar_count; i++) {
        if (kind_of(&bars[i]) < BAR_CHORDS)
            continue;
        size_t first = i, last = same_division(bars, i, reach(bars, bar_count, i));
        i = last;
        trim(bars, &first, &last);
        Stretch stretch = stretch_of(bars, first, last, company);
        if (stretch.divided >= rules.least_bars && (double)stretch.divided >= rules.least_divided * (double)(last - first + 1) &&
            !array_push(out, stretch))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}
