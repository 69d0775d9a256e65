#include "analysis/passages/coupling.h"
#include "analysis/melody/playing_parts.h"
#include "analysis/melody/melody.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    double shared, alike;    /* of a bar's attacks, both groups have; of these, in one kind of interval */
    int least_attacks;       /* fewer in a bar is a chord, not a movement */
    int gap;                 /* bars between two coupled stretches that still make one passage */
    size_t least_bars;       /* shorter stretches are left to the pairing's shares */
    double fastest, slowest; /* seconds: shortest shared note at which speed counts fully, and not at all */
    double base, tight, exposed, long_lasting; /* strength: weights of tightness, foreground and length, each 0..1 */
    double full_length;      /* crotchets from which length counts fully */
    double least_strength;   /* stretches below it are left to the shares */
    size_t most_listed;      /* and so are all but the strongest of a pair */
    double usual_tempo;      /* crotchets a minute where the score gives none */
    double parallel;         /* exactness of thirds and sixths against unison and octaves */
    double fast;             /* seconds: shorter notes are said to be so many a second */
    double softly, full;     /* softness from which it is told as soft; up to which as loud */
    double borne;            /* of the attacks shared, and of these in one kind of interval: what a conductor may hold to be together */
} rules = {
    .shared = 0.8,          /* lets an upbeat or ornament of one section pass */
    .alike = 0.75,          /* a line in thirds touches other intervals at cadences */
    .least_attacks = 2,
    .gap = 1,
    .least_bars = 2,
    .fastest = 0.1,         /* asynchrony of 20 to 50 ms is normal (Rasch 1979): half of such a note is lost */
    .slowest = 0.6,         /* a tenth of such a note: nobody hears it */
    .base = 0.1, .tight = 0.6, .exposed = 0.3, .long_lasting = 0.15,
    .full_length = 32,      /* eight bars of four */
    .least_strength = 0.4, .most_listed = 8, /* what a conductor would mark, not every bar in octaves */
    .usual_tempo = 100,
    .parallel = 0.7,        /* a chord tolerates what a unison does not */
    .fast = 0.5, .softly = 0.85, .full = 0.35,
    .borne = 0.5,           /* more together than not */
};

/* How much softness bares the ensemble; by ear, common practice. */
static const double softness[] = {
    [DYNAMIC_NONE] = 0.6, [DYNAMIC_PPPP] = 1, [DYNAMIC_PPP] = 1, [DYNAMIC_PP] = 1,   [DYNAMIC_P] = 0.9,   [DYNAMIC_MP] = 0.75,
    [DYNAMIC_MF] = 0.6,   [DYNAMIC_F] = 0.45, [DYNAMIC_FF] = 0.3, [DYNAMIC_FFF] = 0.25, [DYNAMIC_FFFF] = 0.25,
};

enum Interval { UNISON, OCTAVES, THIRDS, SIXTHS, OTHER, INTERVAL_COUNT };

static enum Interval interval_between(int a, int b)
{
    static const enum Interval by_class[12] = {
        OCTAVES, OTHER, OTHER, THIRDS, THIRDS, OTHER, OTHER, OTHER, SIXTHS, SIXTHS, OTHER, OTHER,
    };
    int distance = a > b ? a - b : b - a;
    return distance ? by_class[distance % 12] : UNISON;
}

/* What two groups do together in one bar, or in a stretch of bars. */
typedef struct Together {
    size_t attacks[2], shared, kinds[INTERVAL_COUNT];
} Together;

/* Running state of one pair. */
typedef struct Pair {
    Findings *findings;
    const PlayingParts *company;
    const Melody *melodies[2];
    size_t at[2];          /* next note of each melody */
    size_t both_bars, coupled_bars;
    Together total, stretch;
    size_t first, last, length; /* bars of the stretch; length 0: none */
    size_t first_event;     /* of melodies[0] in the stretch */
    ARRAY(spz_passage) worth; /* a mark */
} Pair;

static size_t most_alike(const Together *bar)
{
    size_t lines = bar->kinds[UNISON] > bar->kinds[OCTAVES] ? bar->kinds[UNISON] : bar->kinds[OCTAVES];
    size_t chords = bar->kinds[THIRDS] + bar->kinds[SIXTHS];
    return lines > chords ? lines : chords;
}

static bool is_coupled(const Together *bar)
{
    size_t all = bar->attacks[0] + bar->attacks[1] - bar->shared;
    return all >= (size_t)rules.least_attacks && (double)bar->shared >= rules.shared * (double)all &&
           (double)most_alike(bar) >= rules.alike * (double)bar->shared;
}

static void add_up(Together *sum, const Together *bar)
{
    for (int i = 0; i < 2; i++)
        sum->attacks[i] += bar->attacks[i];
    sum->shared += bar->shared;
    for (int i = 0; i < INTERVAL_COUNT; i++)
        sum->kinds[i] += bar->kinds[i];
}

/* Merges the notes of both melodies that begin before `end`. */
static Together together_until(Pair *pair, Ticks end)
{
    Together bar = { .shared = 0 };
    const Melody *a = pair->melodies[0], *b = pair->melodies[1];
    size_t i = pair->at[0], j = pair->at[1];
    for (;;) {
        bool more_a = i < a->count && a->events[i].onset < end, more_b = j < b->count && b->events[j].onset < end;
        if (!more_a && !more_b)
            break;
        bool meets = more_a && more_b && a->events[i].onset == b->events[j].onset;
        if (meets) {
            bar.shared++;
            bar.kinds[interval_between(a->events[i].midi, b->events[j].midi)]++;
        }
        bool takes_a = meets || (more_a && (!more_b || a->events[i].onset < b->events[j].onset));
        bool takes_b = meets || !takes_a;
        bar.attacks[0] += takes_a;
        bar.attacks[1] += takes_b;
        i += takes_a;
        j += takes_b;
    }
    pair->at[0] = i;
    pair->at[1] = j;
    return bar;
}

/* The shortest note value that makes up at least a tenth of the stretch: one quick ornament doesn't set the pace. */
static Ticks shortest_shared(const Pair *pair, size_t first, size_t past)
{
    Ticks shortest = 0;
    for (int round = 0; round < 4; round++) {
        Ticks next = 0;
        size_t near = 0;
        for (size_t i = first; i + 1 < past; i++) {
            Ticks step = pair->melodies[0]->events[i + 1].onset - pair->melodies[0]->events[i].onset;
            if (step > shortest && (!next || step < next)) {
                next = step;
                near = 0;
            }
            near += step == next;
        }
        if (!next)
            break;
        shortest = next;
        if (near * 10 >= past - first)
            break;
    }
    return shortest;
}

/* The shortest value of which two in a row are shared: what has to be kept together; the shortest of all where none runs. */
static Ticks shortest_running(const Pair *pair, size_t first, size_t past, Ticks of_all)
{
    const NoteEvent *events = pair->melodies[0]->events;
    Ticks shortest = 0;
    for (size_t i = first; i + 2 < past; i++) {
        Ticks step = events[i + 1].onset - events[i].onset;
        if (step == events[i + 2].onset - events[i + 1].onset && step >= of_all && (!shortest || step < shortest))
            shortest = step;
    }
    return shortest ? shortest : of_all;
}

static double seconds_of(const Movement *movement, Ticks when, Ticks value)
{
    double tempo = movement_tempo_at(movement, when);
    return (double)value / (double)movement->per_crotchet * 60 / (tempo > 0 ? tempo : rules.usual_tempo);
}

static double speed_of(double seconds)
{
    if (seconds <= 0)
        return 0;
    double speed = log(rules.slowest / seconds) / log(rules.slowest / rules.fastest);
    return speed < 0 ? 0 : speed > 1 ? 1 : speed;
}

static double softness_of(const Pair *pair, size_t first, size_t past)
{
    double sum = 0;
    for (size_t i = first; i < past; i++) {
        int dynamic = pair->melodies[0]->events[i].dynamic;
        sum += softness[dynamic <= DYNAMIC_FFFF ? dynamic : DYNAMIC_NONE];
    }
    return past > first ? sum / (double)(past - first) : 0;
}

static double exactness_of(const Together *stretch)
{
    size_t all = stretch->attacks[0] + stretch->attacks[1] - stretch->shared;
    double parallel = (double)(stretch->kinds[THIRDS] + stretch->kinds[SIXTHS]);
    double alike = (double)(stretch->kinds[UNISON] + stretch->kinds[OCTAVES]) + rules.parallel * parallel;
    return all ? alike / (double)all : 0;
}

/* In thirds and sixths, where each makes more than a fifth of both (set by hand). */
enum { BOTH = 5 };

static spz_parallel parallel_of(const Together *stretch)
{
    static const spz_parallel of_kind[] = {[UNISON] = SPZ_UNISON, [OCTAVES] = SPZ_OCTAVES, [THIRDS] = SPZ_THIRDS, [SIXTHS] = SPZ_SIXTHS};
    size_t chords = stretch->kinds[THIRDS] + stretch->kinds[SIXTHS];
    bool parallel = stretch->kinds[UNISON] + stretch->kinds[OCTAVES] < chords;
    if (parallel && stretch->kinds[THIRDS] * BOTH > chords && stretch->kinds[SIXTHS] * BOTH > chords)
        return SPZ_THIRDS_AND_SIXTHS;
    int most = 0;
    for (int i = 1; i < OTHER; i++)
        most = stretch->kinds[i] > stretch->kinds[most] ? i : most;
    return of_kind[most];
}

static spz_unity unity_of(const Pair *pair, double shortest, double soft)
{
    return (spz_unity){.parallel = parallel_of(&pair->stretch), .notes_a_second = shortest > 0 && shortest < rules.fast ? 1 / shortest : 0,
                       .loudness = soft >= rules.softly ? SPZ_SOFTLY : soft <= rules.full ? SPZ_FULL_STRENGTH : SPZ_LOUDNESS_PLAIN};
}

static double strength_of(const spz_passage *passage, double crotchets)
{
    return fmin(0.95, rules.base + rules.tight * passage->tightness + rules.exposed * fmin(1, 2 * passage->foreground) +
                          rules.long_lasting * fmin(1, crotchets / rules.full_length));
}

static spz_passage passage_of_stretch(const Pair *pair, size_t past_event)
{
    const Movement *movement = pair->findings->map->movement;
    const Bar *first = &movement->bars[pair->first], *last = &movement->bars[pair->last];
    spz_passage passage = { .kind = SPZ_COUPLING, .onset = first->onset, .end = last->onset + last->length, .turns = 2 };
    for (int i = 0; i < 2; i++)
        passage.sides[i] = side_of_group(pair->findings->map, pair->melodies[i]->group_index);
    double soft = softness_of(pair, pair->first_event, past_event);
    Ticks shortest = shortest_shared(pair, pair->first_event, past_event), running = shortest_running(pair, pair->first_event, past_event, shortest);
    passage.shortest = seconds_of(movement, passage.onset, shortest);
    passage.tightness = speed_of(passage.shortest) * soft * exactness_of(&pair->stretch);
    passage.foreground = playing_parts_share(pair->company, pair->first, pair->last, 2);
    passage.strength = strength_of(&passage, (double)(passage.end - passage.onset) / (double)movement->per_crotchet);
    passage.told.unity = unity_of(pair, seconds_of(movement, passage.onset, running), soft);
    return passage;
}

/* The stretch is over: keep it if it is worth a mark. */
static spz_status close_stretch(Pair *pair, size_t past_event)
{
    size_t length = pair->length;
    pair->length = 0;
    if (length < rules.least_bars)
        return SPZ_OK;
    spz_passage passage = passage_of_stretch(pair, past_event);
    if (passage.strength < rules.least_strength)
        return SPZ_OK;
    return array_push(&pair->worth, passage) ? SPZ_OK : SPZ_NO_MEMORY;
}

static int strongest_first(const void *left, const void *right)
{
    const spz_passage *a = left, *b = right;
    if (a->strength > b->strength || a->strength < b->strength)
        return a->strength > b->strength ? -1 : 1;
    return a->onset < b->onset ? -1 : a->onset > b->onset;
}

static spz_status report_strongest(Pair *pair)
{
    spz_status status = SPZ_OK;
    if (pair->worth.count)
        qsort(pair->worth.at, pair->worth.count, sizeof *pair->worth.at, strongest_first);
    for (size_t i = 0; i < pair->worth.count && i < rules.most_listed && !status; i++)
        status = findings_add(pair->findings, &pair->worth.at[i]);
    return status;
}

static spz_status take_bar(Pair *pair, size_t index, const Together *bar, size_t first_event, bool listed)
{
    if (!bar->attacks[0] || !bar->attacks[1])
        return SPZ_OK;
    pair->both_bars++;
    add_up(&pair->total, bar);
    if (!is_coupled(bar))
        return SPZ_OK;
    pair->coupled_bars++;
    if (!listed)
        return SPZ_OK;
    if (pair->length && index > pair->last + 1 + (size_t)rules.gap) {
        const Bar *after = &pair->findings->map->movement->bars[pair->last + 1];
        spz_status status = close_stretch(pair, melody_at(pair->melodies[0], after->onset));
        if (status)
            return status;
    }
    if (!pair->length) {
        memset(&pair->stretch, 0, sizeof pair->stretch);
        pair->first = index;
        pair->first_event = first_event;
    }
    add_up(&pair->stretch, bar);
    pair->last = index;
    pair->length++;
    return SPZ_OK;
}

static double share(size_t part, size_t whole)
{
    return whole ? (double)part / (double)whole : 0;
}

static spz_status keep_pairing(const Pair *pair)
{
    const Together *total = &pair->total;
    spz_pairing pairing = {
        .groups = { pair->melodies[0]->group_index, pair->melodies[1]->group_index },
        .together = share(pair->coupled_bars, pair->both_bars),
        .unison = share(total->kinds[UNISON], total->shared),
        .octaves = share(total->kinds[OCTAVES], total->shared),
        .thirds = share(total->kinds[THIRDS], total->shared),
        .sixths = share(total->kinds[SIXTHS], total->shared),
        .shared_bars = pair->both_bars,
    };
    return array_push(&pair->findings->pairings, pairing) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* Passages are listed for the two violin sections only: everyone else's seat is settled by other things, and cellos and basses
 * move together all day. */
static bool is_listed(const Melody *a, const Melody *b)
{
    return a->group->about.section == SPZ_VN1 && b->group->about.section == SPZ_VN2;
}

static spz_status couple(Findings *findings, const PlayingParts *company, const Melody *a, const Melody *b)
{
    const Movement *movement = findings->map->movement;
    Pair pair = { .findings = findings, .company = company, .melodies = { a, b } };
    bool listed = is_listed(a, b);
    spz_status status = SPZ_OK;
    for (size_t i = 0; i < movement->bar_count && !status; i++) {
        size_t first_event = pair.at[0];
        Together bar = together_until(&pair, movement->bars[i].onset + movement->bars[i].length);
        status = take_bar(&pair, i, &bar, first_event, listed);
    }
    if (!status && pair.length) {
        bool more = pair.last + 1 < movement->bar_count;
        status = close_stretch(&pair, more ? melody_at(a, movement->bars[pair.last + 1].onset) : a->count);
    }
    if (!status)
        status = report_strongest(&pair);
    if (!status)
        status = keep_pairing(&pair);
    array_free(&pair.worth);
    return status;
}

static bool is_worth_pairing(const Group *group)
{
    return !group->about.solo && !group->shares_bass && group->sound_count;
}

spz_status detect_coupling(Findings *findings, const spz_settings *settings)
{
    (void)settings;
    const SectionMap *map = findings->map;
    Arena work;
    PlayingParts company;
    arena_init(&work);
    const Melody *melodies = findings_melodies(findings);
    spz_status status = melodies ? playing_parts_of(map, &work, &company) : SPZ_NO_MEMORY;
    for (size_t i = 0; i < map->group_count && !status; i++)
        for (size_t j = i + 1; j < map->group_count && !status; j++)
            if (is_worth_pairing(&map->groups[i]) && is_worth_pairing(&map->groups[j]) &&
                map->groups[i].about.orchestra == map->groups[j].about.orchestra)
                status = couple(findings, &company, &melodies[i], &melodies[j]);
    arena_release(&work);
    return status;
}

static bool is_borne(const Together *stretch)
{
    size_t all = stretch->attacks[0] + stretch->attacks[1] - stretch->shared;
    return stretch->shared > 0 && (double)stretch->shared >= rules.borne * (double)all && (double)most_alike(stretch) >= rules.borne * (double)stretch->shared;
}

spz_status coupling_raise(Findings *findings, const size_t groups[2], size_t first, size_t last, bool *made)
{
    const SectionMap *map = findings->map;
    const Bar *bars = map->movement->bars;
    Arena work;
    PlayingParts company;
    arena_init(&work);
    *made = false;
    const Melody *melodies = findings_melodies(findings);
    spz_status status = melodies ? playing_parts_of(map, &work, &company) : SPZ_NO_MEMORY;
    if (!status) {
        Pair pair = {.findings = findings, .company = &company, .melodies = {&melodies[groups[0]], &melodies[groups[1]]}, .first = first, .last = last, .length = last - first + 1};
        for (int i = 0; i < 2; i++)
            pair.at[i] = melody_at(pair.melodies[i], bars[first].onset);
        pair.first_event = pair.at[0];
        pair.stretch = together_until(&pair, bars[last].onset + bars[last].length);
        *made = is_borne(&pair.stretch);
        spz_passage passage = passage_of_stretch(&pair, pair.at[0]);
        status = *made ? findings_add(findings, &passage) : SPZ_OK;
    }
    arena_release(&work);
    return status;
}
