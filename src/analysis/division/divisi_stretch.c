#include "analysis/division/divisi_stretch.h"
#include <math.h>
#include <string.h>

static const struct {
    double thick;          /* share of a bar's sound with two or more pitches, from which it is written in lines */
    double lines;          /* of that, share with three (four) pitches, from which it is in three (four) */
    double firm;           /* share of the thick time under firm evidence, from which the bar is divided for certain */
    size_t rests, single;  /* bars of rest, or in one line, that a stretch reaches across */
    size_t gap;            /* and bars of any kind that aren't divided */
    size_t least_bars;     /* divided bars: shorter ones aren't listed (the readers' rule: two bars or more) */
    uint16_t moving_chords;/* attacks in a bar of chords from which it may begin or end a stretch */
    double least_divided;  /* share of its bars that must be divided: the rest are chords around them */
} rules = {
    .thick = 0.4, .lines = 0.5, .firm = 0.5, .rests = 2, .single = 1, .gap = 4,
    .least_bars = 2, .moving_chords = 3, .least_divided = 0.25,
};

/* Strength: what a listener makes of it; each term 0..1 before its weight. Reasons in docs/method-divisi.md. */
static const struct {
    double base, independence, lines, length, foreground, certain;
    double short_length, long_length; /* crotchets, between which length counts from nothing to all */
    double full_lines;                /* bars from which three lines or more count fully */
    double parallel;                  /* share of its length that counts where the lines only run in parallel */
    size_t brief;                     /* fewer divided bars than this, without firm evidence or with */
    uint16_t few_attacks;             /* fewer attacks than this (a chord, no passage): */
    double unsure;                    /* the strength is multiplied by this */
    double said;                      /* share of the time in two pitches or more that marks or parts vouch for, from which it is certain */
    double own_ways;                  /* share of the attacks that one voice begins alone, from which lines beyond one hand are certain too:
                                         chords are stopped, or broken */
    double marginal;                  /* the most that a stretch without either comes to */
} weight = {
    .base = 0.165, .independence = 0.3, .lines = 0.16, .length = 0.16, .foreground = 0.25, .certain = 0.12,
    .short_length = 4, .long_length = 24, .full_lines = 4, .parallel = 0.5,
    .brief = 3, .few_attacks = 4, .unsure = 0.85,
    .said = 0.25, .own_ways = 0.25, .marginal = 0.49,
};

typedef enum BarKind { BAR_SILENT, BAR_SINGLE, BAR_CHORDS, BAR_VOICES, BAR_FIRM } BarKind;

static bool is_thick(const BarWriting *bar)
{
    return (double)bar->at_least[2] >= rules.thick * (double)bar->heard || (bar->thick && 2 * bar->thick >= bar->attacks);
}

/* 'div.' over two voices or more, and no number: each is a line, and who has two notes in one of them stops both. */
static bool is_marked_in_voices(const BarWriting *bar)
{
    return bar->voices > 1 && bar->said <= bar->voices && (double)bar->evidence[EVIDENCE_MARK] >= rules.firm * (double)bar->at_least[2];
}

int divisi_lines_in_bar(const BarWriting *bar)
{
    if (!bar->heard)
        return 0;
    if (!is_thick(bar))
        return bar->in_turn ? 2 : 1;
    int lines = 2;
    while (lines < 4 && (double)bar->at_least[lines + 1] >= rules.lines * (double)bar->at_least[2])
        lines++;
    return lines > bar->voices && is_marked_in_voices(bar) ? bar->voices : lines;
}

static BarKind kind_of(const BarWriting *bar)
{
    int lines = divisi_lines_in_bar(bar);
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
    sum->alone = (uint16_t)(sum->alone + bar->alone);
    sum->apart = (uint16_t)(sum->apart + bar->apart);
    sum->upper = (uint16_t)(sum->upper + bar->upper);
    sum->lower = (uint16_t)(sum->lower + bar->lower);
    sum->thirds = (uint16_t)(sum->thirds + bar->thirds);
    sum->sixths = (uint16_t)(sum->sixths + bar->sixths);
    sum->octaves = (uint16_t)(sum->octaves + bar->octaves);
    sum->fifths = (uint16_t)(sum->fifths + bar->fifths);
    sum->tremolo = (uint16_t)(sum->tremolo + bar->tremolo);
    sum->plucked = (uint16_t)(sum->plucked + bar->plucked);
}

static void add_bar(BarWriting *sum, const BarWriting *bar)
{
    add_counts(sum, bar);
    sum->said = bar->said > sum->said ? bar->said : sum->said;
    sum->voices = bar->voices > sum->voices ? bar->voices : sum->voices;
    sum->soloists = bar->soloists > sum->soloists ? bar->soloists : sum->soloists;
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
    double apart = sum->attacks ? fmin(1, 2.0 * sum->alone / sum->attacks) : 0;
    double alike = sum->thick ? (double)(sum->thirds + sum->sixths + sum->octaves) / sum->thick : 1;
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

/* Multiple stops are no divisions: either something says so, marks or parts, or one hand can't do what the lines do by themselves. */
static bool is_vouched_for(const Stretch *stretch)
{
    const BarWriting *sum = &stretch->sum;
    double thick = (double)sum->at_least[2], said = (double)(sum->evidence[EVIDENCE_MARK] + sum->evidence[EVIDENCE_PARTS]);
    return stretch->turns > 0 || said >= weight.said * thick || (stretch->firm >= rules.least_bars && sum->alone >= weight.own_ways * sum->attacks);
}

double divisi_strength(const Stretch *stretch)
{
    double length = (stretch->crotchets - weight.short_length) / (weight.long_length - weight.short_length);
    length = fmax(0, fmin(1, length)) * fmin(1, weight.parallel + stretch->independence);
    double lines = stretch->lines > 2 ? fmin(1, (double)(stretch->last - stretch->first + 1) / weight.full_lines) : 0;
    double strength = weight.base + weight.independence * stretch->independence + weight.lines * lines +
                      weight.length * length + weight.foreground * fmin(1, 2 * stretch->foreground) +
                      weight.certain * (stretch->in_company ? 1 : certainty_of(&stretch->sum));
    if (stretch->divided < weight.brief && (!stretch->firm || stretch->sum.attacks < weight.few_attacks))
        strength *= weight.unsure;
    return fmin(is_vouched_for(stretch) ? 0.95 : weight.marginal, strength);
}

/* The number of lines that at least half of the divided bars have; a mark that names fewer, and fewer voices, mean double stops
 * within a line. */
static int most_lines(const int bars_in[5], const BarWriting *sum)
{
    int said = sum->voices > sum->said ? 0 : sum->said;
    int divided = bars_in[2] + bars_in[3] + bars_in[4], lines = 2;
    if (2 * (bars_in[3] + bars_in[4]) >= divided && bars_in[3] + bars_in[4])
        lines = 2 * bars_in[4] >= divided ? 4 : 3;
    return said >= 2 && said < lines ? said : lines;
}

Stretch divisi_stretch_of(const BarWriting *bars, size_t first, size_t last, const PlayingParts *company)
{
    Stretch stretch = { .first = first, .last = last };
    int bars_in[5] = { 0 };
    for (size_t i = first; i <= last; i++) {
        BarKind kind = kind_of(&bars[i]);
        add_bar(&stretch.sum, &bars[i]);
        stretch.divided += kind >= BAR_VOICES;
        stretch.firm += kind == BAR_FIRM;
        stretch.turns += bars[i].in_turn && !is_thick(&bars[i]);
        bars_in[divisi_lines_in_bar(&bars[i])]++;
        stretch.crotchets += bars[i].crotchets;
    }
    stretch.lines = most_lines(bars_in, &stretch.sum);
    stretch.independence = independence_of(&stretch.sum);
    stretch.foreground = playing_parts_share(company, first, last, 1);
    stretch.strength = divisi_strength(&stretch);
    return stretch;
}

/* The bars from `first` on that belong together; returns the last of them. */
static size_t reach(const BarWriting *bars, size_t bar_count, size_t first)
{
    size_t last = first, silent = 0, single = 0;
    for (size_t i = first + 1; i < bar_count; i++) {
        BarKind kind = kind_of(&bars[i]);
        silent += kind == BAR_SILENT;
        single += kind == BAR_SINGLE && bars[i].voices < 2; /* two voices in unison keep the division */
        if (silent > rules.rests || single > rules.single || i > last + rules.gap || bars[i].mark_ends)
            break;
        if (kind < BAR_CHORDS)
            continue;
        last = i;
        silent = single = 0;
    }
    return last;
}

/* Chords in motion throughout a bar go on with a division right beside them; a few chords do not. */
static bool goes_on(const BarWriting *bar)
{
    return kind_of(bar) == BAR_CHORDS && bar->attacks >= rules.moving_chords && bar->thick == bar->attacks;
}

/* From the first divided bar to the last, and the moving chords that lead straight into them and out; none before a 'div.'. */
static void trim(const BarWriting *bars, size_t *first, size_t *last)
{
    size_t from = *first, to = *last;
    while (from < *last && kind_of(&bars[from]) < BAR_VOICES)
        from++;
    while (to > from && kind_of(&bars[to]) < BAR_VOICES)
        to--;
    while (from > *first && !bars[from].mark_begins && goes_on(&bars[from - 1]))
        from--;
    while (to < *last && goes_on(&bars[to + 1]))
        to++;
    *first = from;
    *last = to;
}

Stretch divisi_stretch_within(const BarWriting *bars, size_t first, size_t last, const PlayingParts *company)
{
    trim(bars, &first, &last);
    return divisi_stretch_of(bars, first, last, company);
}

/* Where the section goes from two lines to three, or back, for long enough, a new stretch begins: returns the last bar before
 * that. */
static size_t same_division(const BarWriting *bars, size_t first, size_t last)
{
    size_t since = first; /* first bar of the newest run of other lines */
    bool many = divisi_lines_in_bar(&bars[first]) > 2;
    size_t run = 0;
    for (size_t i = first; i <= last; i++) {
        int lines = divisi_lines_in_bar(&bars[i]);
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

spz_status divisi_stretches_find(const BarWriting *bars, size_t bar_count, const PlayingParts *company, StretchList *out)
{
    for (size_t i = 0; i < bar_count; i++) {
        if (kind_of(&bars[i]) < BAR_CHORDS)
            continue;
        size_t first = i, last = same_division(bars, i, reach(bars, bar_count, i));
        i = last;
        Stretch stretch = divisi_stretch_within(bars, first, last, company);
        size_t length = stretch.last - stretch.first + 1;
        if (stretch.divided >= rules.least_bars && (double)stretch.divided >= rules.least_divided * (double)length &&
            !array_push(out, stretch))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}
