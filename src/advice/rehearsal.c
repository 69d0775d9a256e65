#include "advice/rehearsal.h"
#include "advice/parts_advice.h"
#include "analysis/passages/findings.h"
#include "model/durations.h"
#include "spezzato/stage.h"
#include <stdlib.h>
#include <string.h>

/* How exposed a passage is of which only its strength is known (divided sections): between back and front of the texture. */
static const double usual_exposure = 0.5;

const char *listen_name(ListenFor listen)
{
    static const char *const names[LISTEN_COUNT] = {"match", "one line", "entries", "balance", "together"};
    return (unsigned)listen < LISTEN_COUNT ? names[listen] : "";
}

const char *listen_from_name(ListenFrom from)
{
    static const char *const names[FROM_COUNT] = {"hall", "podium", "last desks"};
    return (unsigned)from < FROM_COUNT ? names[from] : "";
}

static ListenFor listen_for(spz_kind kind)
{
    switch (kind) {
    case SPZ_EXCHANGE: return LISTEN_MATCH;
    case SPZ_HOCKET:
    case SPZ_SPLIT_LINE: return LISTEN_ONE_LINE;
    case SPZ_IMITATION: return LISTEN_ENTRIES;
    case SPZ_COUPLING: return LISTEN_TOGETHER;
    default: return LISTEN_BALANCE;
    }
}

/* What is said across the stage is heard in the hall; lines of one section at the podium; what parts first when it parts, at the last desks. */
static ListenFrom listen_from(ListenFor listen, bool singles)
{
    if (singles)
        return FROM_HALL;
    return listen == LISTEN_BALANCE ? FROM_PODIUM : listen == LISTEN_TOGETHER ? FROM_LAST_DESKS : FROM_HALL;
}

static spz_players players_called(const spz_passage *passage)
{
    spz_players all = passage->sides[0].players | passage->sides[1].players;
    for (size_t i = 0; i < passage->link_count; i++)
        all |= passage->links[i].players;
    return all;
}

static double exposure_of(const spz_passage *passage)
{
    double open = passage->kind == SPZ_COUPLING ? passage->tightness : passage->foreground;
    return passage->strength * (open > 0 ? open : usual_exposure);
}

static void place_on_stage(const spz_plan *plan, RehearsalItem *item)
{
    spz_separation heard;
    spz_distance way;
    spz_section one = item->passage->sides[0].section, two = item->passage->sides[1].section;
    if (!plan || !spz_plan_separation(plan, one, two, SPZ_MIDDLE_SEATS, &heard) || !spz_plan_distance(plan, one, two, &way))
        return;
    item->placed = true;
    item->degrees = heard.angle;
    item->widths = heard.widths;
    item->delay = way.delay / 1000;
}

static RehearsalItem item_of(const Movement *movement, const spz_findings *findings, size_t place, const spz_plan *plan)
{
    const spz_passage *p = spz_findings_at(findings, place);
    const Bar *last = &movement->bars[p->last];
    RehearsalItem item = {.passage = p, .place = place, .called = players_called(p), .exposure = exposure_of(p), .listen = listen_for(p->kind)};
    item.seconds = movement_seconds(movement, movement->bars[p->first].onset, last->onset + last->length);
    item.rate = movement_rate_at(movement, movement->bars[p->first].onset);
    item.times = movement_times_played(movement, p->first);
    item.from = listen_from(item.listen, findings->map->chamber_music);
    if (!findings->map->chamber_music || item.listen != LISTEN_TOGETHER) /* who sit side by side hear each other at once */
        place_on_stage(plan, &item);
    return item;
}

static double weight_of(const RehearsalItem *item)
{
    return item->seconds * item->exposure;
}

static int by_call_and_weight(const void *a, const void *b)
{
    const RehearsalItem *one = a, *two = b;
    double first = weight_of(one), second = weight_of(two);
    if (one->called != two->called)
        return one->called < two->called ? -1 : 1;
    if (first < second || first > second)
        return first > second ? -1 : 1;
    return one->place < two->place ? -1 : one->place > two->place;
}

/* Each bar once, however many passages of the call stand in it. */
static double seconds_of(const Movement *movement, const RehearsalItem *items, size_t count)
{
    double seconds = 0;
    for (size_t bar = 0; bar < movement->bar_count; bar++) {
        bool played = false;
        for (size_t i = 0; i < count && !played; i++)
            played = items[i].passage->first <= bar && bar <= items[i].passage->last;
        seconds += played ? movement_bar_seconds(movement, bar) : 0;
    }
    return seconds;
}

static spz_status make_calls(const Movement *movement, RehearsalPlan *out)
{
    for (size_t i = 0; i < out->items.count;) {
        RehearsalCall call = {.called = out->items.at[i].called, .first = i};
        while (i < out->items.count && out->items.at[i].called == call.called)
            i++;
        call.count = i - call.first;
        call.seconds = seconds_of(movement, &out->items.at[call.first], call.count);
        if (!array_push(&out->calls, call))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

static double call_weight(const RehearsalPlan *rehearsal, const RehearsalCall *call)
{
    double weight = 0;
    for (size_t i = 0; i < call->count; i++)
        weight += weight_of(&rehearsal->items.at[call->first + i]);
    return weight;
}

/* By weight; of equals the one that calls the higher sections. */
static void sort_calls(RehearsalPlan *rehearsal)
{
    for (size_t i = 1; i < rehearsal->calls.count; i++) {
        RehearsalCall call = rehearsal->calls.at[i];
        size_t at = i;
        for (; at > 0 && call_weight(rehearsal, &rehearsal->calls.at[at - 1]) < call_weight(rehearsal, &call); at--)
            rehearsal->calls.at[at] = rehearsal->calls.at[at - 1];
        rehearsal->calls.at[at] = call;
    }
}

/* NULL where nothing was judged, or the players don't fit on the stage. */
static spz_plan *plan_of(const spz_movement_reading *reading, const spz_settings *settings, const char *seating)
{
    spz_plan *plan = NULL;
    if (*seating)
        spz_verdict_plan(reading->verdict, settings, seating, NULL, &plan);
    return plan;
}

static bool is_wanted(const spz_sheet_options *options, const spz_passage *passage)
{
    return passage->ruling.kind != SPZ_VETOED && passage->strength >= options->strength && (!options->kinds || (options->kinds & 1u << passage->kind));
}

spz_status rehearsal_plan(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options, RehearsalPlan *out)
{
    const Movement *movement = reading->movement;
    spz_status status = SPZ_OK;
    memset(out, 0, sizeof *out);
    out->seating = advice_arrangement(reading, options);
    out->tempo_given = movement->tempo_count > 0;
    if (options->arrangement && !*out->seating && reading->verdict && spz_verdict_count(reading->verdict))
        return SPZ_BAD_ARGUMENT;
    spz_plan *plan = plan_of(reading, settings, out->seating);
    for (size_t i = 0; i < spz_findings_count(reading->findings) && !status; i++)
        if (is_wanted(options, spz_findings_at(reading->findings, i)) &&
            !array_push(&out->items, item_of(movement, reading->findings, i, plan)))
            status = SPZ_NO_MEMORY;
    spz_plan_free(plan);
    if (!status && out->items.count)
        qsort(out->items.at, out->items.count, sizeof *out->items.at, by_call_and_weight);
    if (!status)
        status = make_calls(movement, out);
    if (!status)
        sort_calls(out);
    return status;
}

void rehearsal_free(RehearsalPlan *rehearsal)
{
    array_free(&rehearsal->items);
    array_free(&rehearsal->calls);
}
