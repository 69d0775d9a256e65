#include "advice/bowings.h"
#include "advice/bowing_moments.h"
#include "support/memory.h"
#include <stdlib.h>
#include <string.h>

enum { LEAST_SHARED = 3 };

typedef struct Committee { /* at work on one movement */
    BowingList *list;
    const SectionMap *map;
    BowingMoments *moments; /* of each group */
    bool failed;
} Committee;

const char *bowing_sign_name(BowingSign sign)
{
    static const char *const names[BOWING_SIGN_COUNT] = {"slur", "staccato", "tenuto", "accent", "up-bow", "down-bow", "pizzicato", "tremolo"};
    return (unsigned)sign < BOWING_SIGN_COUNT ? names[sign] : "";
}

/* Two moments at the same distance from the beginning of their strands. */
typedef struct Pair {
    const BowingMoment *one, *two;
} Pair;

/* Walks both strands; `at` holds where it stands, from their first moments. False at the end. */
static bool next_pair(const Committee *committee, const BowingStrand *one, const BowingStrand *two, size_t at[2], Pair *pair)
{
    const BowingMoments *a = &committee->moments[one->group], *b = &committee->moments[two->group];
    while (at[0] < a->count && at[1] < b->count && a->at[at[0]].onset < one->to && b->at[at[1]].onset < two->to) {
        Ticks first = a->at[at[0]].onset - one->from, second = b->at[at[1]].onset - two->from;
        if (first == second) {
            *pair = (Pair){&a->at[at[0]++], &b->at[at[1]++]};
            return true;
        }
        at[first < second ? 0 : 1]++;
    }
    return false;
}

static void begin_walk(const Committee *committee, const BowingStrand *one, const BowingStrand *two, size_t at[2])
{
    at[0] = bowing_moment_at(&committee->moments[one->group], one->from);
    at[1] = bowing_moment_at(&committee->moments[two->group], two->from);
}

static size_t shared_moments(const Committee *committee, const BowingStrand *one, const BowingStrand *two)
{
    size_t at[2], count = 0;
    Pair pair;
    begin_walk(committee, one, two, at);
    while (next_pair(committee, one, two, at, &pair))
        count++;
    return count;
}

static void add_mark(Committee *committee, bool other, Ticks from, Ticks to)
{
    if (!array_push(&committee->list->marks, ((BowingMark){other, from, to})))
        committee->failed = true;
}

static size_t bar_of(const Committee *committee, Ticks when)
{
    int bar = movement_bar_at(committee->map->movement, when);
    return bar < 0 ? 0 : (size_t)bar;
}

/* The slurs of a strand that touch the bar, from note to note. */
static void add_slurs(Committee *committee, const BowingStrand *strand, size_t bar, bool other)
{
    const BowingMoments *moments = &committee->moments[strand->group];
    const Bar *within = &committee->map->movement->bars[bar];
    size_t i = bowing_moment_at(moments, strand->from);
    while (i < moments->count && moments->at[i].onset < strand->to) {
        size_t end = i;
        while (end + 1 < moments->count && moments->at[end + 1].onset < strand->to && moments->at[end].signs & 1u << BOWING_SLUR)
            end++;
        if (end > i && moments->at[i].onset < within->onset + within->length && moments->at[end].onset >= within->onset)
            add_mark(committee, other, moments->at[i].onset, moments->at[end].onset);
        i = end + 1;
    }
}

/* What the pairs of one bar say of one sign. */
typedef struct BarOfPairs {
    const BowingStrand *one, *two;
    const Pair *pairs;
    size_t count;
    size_t bars[2];
} BarOfPairs;

static bool differs(const Pair *pair, BowingSign sign)
{
    return (pair->one->signs ^ pair->two->signs) >> sign & 1;
}

static void add_signs(Committee *committee, const BarOfPairs *bar, BowingSign sign)
{
    for (int other = 0; other < 2; other++)
        for (size_t i = 0; i < bar->count; i++) {
            const BowingMoment *moment = other ? bar->pairs[i].two : bar->pairs[i].one;
            if (differs(&bar->pairs[i], sign) && moment->signs >> sign & 1)
                add_mark(committee, other, moment->onset, moment->onset);
        }
}

static void compare_bar(Committee *committee, const BarOfPairs *bar, size_t strand)
{
    for (int sign = 0; sign < BOWING_SIGN_COUNT; sign++) {
        BowingDifference difference = {(BowingSign)sign, strand, {bar->bars[0], bar->bars[1]}, committee->list->marks.count, 0};
        bool any = false;
        for (size_t i = 0; i < bar->count && !any; i++)
            any = differs(&bar->pairs[i], (BowingSign)sign);
        if (!any)
            continue;
        if (sign == BOWING_SLUR) {
            add_slurs(committee, bar->one, bar->bars[0], false);
            add_slurs(committee, bar->two, bar->bars[1], true);
        } else
            add_signs(committee, bar, (BowingSign)sign);
        difference.count = committee->list->marks.count - difference.first;
        if (!array_push(&committee->list->differences, difference))
            committee->failed = true;
    }
}

/* Of a slur that leads to what the two don't share nothing is said: it is struck from the copies in `kept`. */
static Pair within_gesture(const Pair *pair, const Pair *next, BowingMoment kept[2])
{
    kept[0] = *pair->one;
    kept[1] = *pair->two;
    if (!next || pair->one + 1 != next->one || pair->two + 1 != next->two)
        for (int i = 0; i < 2; i++)
            kept[i].signs &= ~(1u << BOWING_SLUR);
    return (Pair){&kept[0], &kept[1]};
}

enum { PAIRS_MOST = 256 /* moments of a bar */ };

static void compare_strand(Committee *committee, const BowingMeeting *meeting, size_t strand)
{
    const BowingStrand *one = &meeting->strands[0], *two = &meeting->strands[strand];
    BowingMoment kept[PAIRS_MOST][2];
    Pair pairs[PAIRS_MOST], pair, next;
    BarOfPairs bar = {one, two, pairs, 0, {SIZE_MAX, SIZE_MAX}};
    size_t at[2];
    begin_walk(committee, one, two, at);
    bool more = next_pair(committee, one, two, at, &next);
    while (more && !committee->failed) {
        pair = next;
        more = next_pair(committee, one, two, at, &next);
        size_t first = bar_of(committee, pair.one->onset);
        if (bar.count && (first != bar.bars[0] || bar.count == PAIRS_MOST)) {
            compare_bar(committee, &bar, strand);
            bar.count = 0;
        }
        if (!bar.count) {
            bar.bars[0] = first;
            bar.bars[1] = bar_of(committee, pair.two->onset);
        }
        pairs[bar.count] = within_gesture(&pair, more ? &next : NULL, kept[bar.count]);
        bar.count++;
    }
    if (bar.count)
        compare_bar(committee, &bar, strand);
}

static int by_bar(const void *a, const void *b)
{
    const BowingDifference *one = a, *two = b;
    if (one->bars[0] != two->bars[0])
        return one->bars[0] < two->bars[0] ? -1 : 1;
    if (one->strand != two->strand)
        return one->strand < two->strand ? -1 : 1;
    if (one->sign != two->sign)
        return one->sign < two->sign ? -1 : 1;
    return one->first < two->first ? -1 : one->first > two->first;
}

/* At the same time one may go on in shorter notes; one after the other the rhythm has to be the same but for a note or so. */
static bool shares_enough(const Committee *committee, const BowingMeeting *meeting, const BowingStrand *strand)
{
    size_t first = meeting->strands[0].compared, own = shared_moments(committee, strand, strand);
    if (strand->compared < LEAST_SHARED)
        return false;
    return meeting->in_turn ? 4 * strand->compared >= 3 * (first > own ? first : own) : 2 * strand->compared >= first;
}

/* Keeps what shares enough with the first strand; a meeting of one is none. */
static void add_meeting(Committee *committee, BowingMeeting meeting)
{
    size_t kept = 1;
    if (meeting.strand_count < 2)
        return;
    meeting.strands[0].compared = shared_moments(committee, &meeting.strands[0], &meeting.strands[0]);
    for (size_t i = 1; i < meeting.strand_count; i++) {
        BowingStrand strand = meeting.strands[i];
        strand.compared = shared_moments(committee, &meeting.strands[0], &strand);
        if (shares_enough(committee, &meeting, &strand))
            meeting.strands[kept++] = strand;
    }
    meeting.strand_count = kept;
    meeting.first = committee->list->differences.count;
    for (size_t i = 1; i < kept && !committee->failed; i++)
        compare_strand(committee, &meeting, i);
    meeting.count = committee->list->differences.count - meeting.first;
    if (meeting.count)
        qsort(committee->list->differences.at + meeting.first, meeting.count, sizeof(BowingDifference), by_bar);
    if (kept > 1 && !array_push(&committee->list->meetings, meeting))
        committee->failed = true;
}

/* The group as a strand, unless it is there already or only reads along. */
static void add_strand(const Committee *committee, BowingMeeting *meeting, size_t group, Ticks from, Ticks to)
{
    for (size_t i = 0; i < meeting->strand_count; i++)
        if (meeting->strands[i].group == group)
            return;
    if (meeting->strand_count < STRANDS_MOST && !committee->map->groups[group].shares_bass)
        meeting->strands[meeting->strand_count++] = (BowingStrand){group, from, to, 0};
}

static void add_players(const Committee *committee, BowingMeeting *meeting, spz_players players, Ticks from, Ticks to)
{
    for (size_t group = 0; group < committee->map->group_count && group < 63; group++)
        if (players >> group & 1)
            add_strand(committee, meeting, group, from, to);
}

static void add_entry(const Committee *committee, BowingMeeting *meeting, const spz_entry *entry)
{
    if (entry->leader < committee->map->group_count)
        add_strand(committee, meeting, entry->leader, entry->onset, entry->end);
    add_players(committee, meeting, entry->players, entry->onset, entry->end);
}

/* A call and the answers that follow it, those in other note values left out. */
static void meet_in_turn(Committee *committee, const spz_passage *passage, size_t place)
{
    BowingMeeting meeting = {.passage = passage, .place = place, .in_turn = true};
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!entry->answer && meeting.strand_count) {
            add_meeting(committee, meeting);
            meeting.strand_count = 0;
        }
        if (entry->change.stretch == 0 && (!entry->answer || meeting.strand_count))
            add_entry(committee, &meeting, entry);
    }
    add_meeting(committee, meeting);
}

static void meet(Committee *committee, const spz_passage *passage, size_t place)
{
    BowingMeeting meeting = {.passage = passage, .place = place};
    if (passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_IMITATION)
        meet_in_turn(committee, passage, place);
    else if (passage->kind == SPZ_COUPLING) {
        for (int side = 0; side < 2; side++)
            add_players(committee, &meeting, passage->sides[side].players, passage->onset, passage->end);
        add_meeting(committee, meeting);
    }
}

static bool read_moments(Committee *committee)
{
    size_t count = committee->map->group_count;
    committee->moments = memory_resize(NULL, count + 1, sizeof *committee->moments);
    if (committee->moments)
        memset(committee->moments, 0, (count + 1) * sizeof *committee->moments);
    for (size_t i = 0; i < count && committee->moments; i++)
        if (!bowing_moments(&committee->map->groups[i], &committee->moments[i]))
            return false;
    return committee->moments != NULL;
}

spz_status bowings_find(const spz_movement_reading *reading, const spz_sheet_options *options, BowingList *list)
{
    Committee committee = {.list = list, .map = reading->sections};
    memset(list, 0, sizeof *list);
    committee.failed = !read_moments(&committee);
    for (size_t i = 0; i < spz_findings_count(reading->findings) && !committee.failed; i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        bool wanted = !options->kinds || (options->kinds & 1u << passage->kind);
        if (wanted && passage->ruling.kind != SPZ_VETOED && passage->strength >= options->strength)
            meet(&committee, passage, i);
    }
    for (size_t i = 0; i < reading->sections->group_count && committee.moments; i++)
        memory_free(committee.moments[i].at);
    memory_free(committee.moments);
    return committee.failed ? SPZ_NO_MEMORY : SPZ_OK;
}

void bowings_free(BowingList *list)
{
    array_free(&list->meetings);
    array_free(&list->differences);
    array_free(&list->marks);
}
