#include "citations/likeness.h"
#include "analysis/melody/tune.h"
#include "sections/section_map.h"

static const struct {
    double alike;   /* from here on an answer is like its call (tune_alike) */
    double alike_fragment; /* likewise in a hocket, whose turns are single notes */
    double doubled; /* share of the answer's notes from which on its caller plays them too */
    double beginning; /* likewise of a beginning, which goes the same ways all along: a tonal answer changes a step or two */
    double interval; /* share of the notes that must stand at one interval from those of the call */
} rule = {.alike = 0.7, .alike_fragment = 0.5, .doubled = 0.9, .beginning = 0.6, .interval = 0.6};
/* Notes that show that two have the same; fewer happen by chance (common practice, no source). */
enum { SAME_NOTES = 4 };

static const Group *leader_of(const SectionMap *map, const spz_entry *entry)
{
    const Group *group = map && entry->leader < map->group_count ? &map->groups[entry->leader] : NULL;
    return group && group->sound_count ? group : NULL;
}

/* What was done to a call, as tune_alike asks. */
typedef struct Manner {
    int stretch, mirror;
} Manner;

/* Notes in which the one is the other again in that manner, whole or as far as the shorter of them goes; 0 where it is not. */
static size_t notes_met(const Tune *call, const Group *calling, const Tune *answer, const Group *answering, Manner manner, double least)
{
    Ticks called = call->count ? call->notes[0].onset : 0, answered = answer->count ? answer->notes[0].onset : 0;
    Tune beginning = *call;
    beginning.count = beginning.count < THEME_NOTES ? beginning.count : THEME_NOTES;
    if (call->count > THEME_NOTES && tune_alike(&beginning, answering, answered, manner.stretch, manner.mirror) < rule.beginning)
        return 0; /* it comes later, if at all */
    size_t notes = tune_alike(call, answering, answered, manner.stretch, manner.mirror) >= least ? call->count : 0;
    return answer->count > notes && tune_alike(answer, calling, called, -manner.stretch, manner.mirror) >= least ? answer->count : notes;
}

/* In imitation the beginning tells: the answer has it, though it goes its own way later. Its notes, 0 where it has not. */
static size_t beginning_met(const Tune *call, const Group *answering, const Tune *answer)
{
    Tune beginning = *call;
    beginning.count = beginning.count < THEME_NOTES ? beginning.count : THEME_NOTES;
    bool long_enough = beginning.count >= THEME_NOTES && answer->count >= THEME_NOTES;
    Ticks there = answer->notes[0].onset;
    return long_enough && tune_alike(&beginning, answering, there, 0, 1) >= tune_same_least && tune_same(&beginning, answering, there) >= rule.beginning ? beginning.count : 0;
}

/* Is the answer heard as one, or do those whom it answers play it too, or its beginning? */
static bool is_heard(const Tune *answer, const Group *calling, bool behind)
{
    Tune beginning = *answer;
    beginning.count = beginning.count < 2 ? beginning.count : 2;
    return tune_doubled(answer, calling) < rule.doubled && !(behind && tune_doubled(&beginning, calling) >= 1);
}

size_t notes_alike(const SectionMap *map, spz_kind kind, const spz_entry *call, const spz_entry *answer)
{
    const Group *calling = leader_of(map, call), *answering = leader_of(map, answer);
    double least = kind == SPZ_HOCKET ? rule.alike_fragment : rule.alike;
    Tune one, two;
    if (!calling || !answering)
        return 1;
    tune_take(calling, call->onset, call->end, &one);
    tune_take(answering, answer->onset, answer->end, &two);
    size_t plain = notes_met(&one, calling, &two, answering, (Manner){0, 1}, least);
    size_t changed = notes_met(&one, calling, &two, answering, (Manner){answer->change.stretch, answer->change.inverted ? -1 : 1}, least);
    if (kind == SPZ_IMITATION && !plain && !changed)
        plain = beginning_met(&one, answering, &two);
    bool heard = calling == answering || is_heard(&two, calling, answer->onset >= call->end);
    return heard ? (plain < changed ? changed : plain) : 0;
}

bool was_heard_before(const SectionMap *map, const spz_entry *call, spz_ticks lag)
{
    const Group *calling = leader_of(map, call);
    Tune tune;
    if (!calling)
        return false;
    tune_take(calling, call->onset, call->end < call->onset + lag ? call->end : call->onset + lag, &tune);
    tune.count = tune.count < THEME_NOTES ? tune.count : THEME_NOTES; /* how it begins */
    for (size_t g = 0; g < map->group_count && tune.count >= SAME_NOTES; g++) {
        const Group *group = &map->groups[g];
        if (call->players >> g & 1)
            continue;
        for (size_t at = group_sound_at(group, call->onset - 2 * lag); at < group->sound_count && group->sounds[at].onset < call->onset; at++)
            if (tune_same(&tune, group, group->sounds[at].onset) > tune_same_least)
                return true;
    }
    return false;
}

bool same_again(const SectionMap *map, const spz_entry *first, const spz_entry *later)
{
    const Group *one = leader_of(map, first), *two = leader_of(map, later);
    Tune tune, again;
    if (!one || one != two)
        return false;
    tune_take(one, first->onset, first->end, &tune);
    tune_take(one, later->onset, later->end, &again);
    return tune.count >= SAME_NOTES && again.count >= SAME_NOTES && (tune_same(&tune, one, later->onset) >= tune_same_least || tune_same(&again, one, first->onset) >= tune_same_least);
}

bool places_are_swapped(const SectionMap *map, const spz_entry *call, const spz_entry *answer)
{
    const Group *calling = leader_of(map, call), *answering = leader_of(map, answer);
    return calling && answering && tunes_swapped(calling, call->onset, call->end, answering, answer->onset);
}

bool interval_between(const SectionMap *map, const spz_entry *call, const spz_entry *answer, spz_change *change)
{
    const Group *calling = leader_of(map, call), *answering = leader_of(map, answer);
    Tune one;
    *change = (spz_change){0};
    if (!calling || !answering || answer->change.inverted || answer->change.stretch)
        return false;
    tune_take(calling, call->onset, call->end, &one);
    return tune_interval(&one, answering, answer->onset, &change->semitones, &change->steps) >= rule.interval;
}
