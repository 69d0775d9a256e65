#include "analysis/melody/tune.h"

const double tune_same_least = 0.8;
/* Notes under a call that make a line of their own, and how many different ones of them; fewer happen by chance (common practice, no source). */
enum { SWAPPED_NOTES = 3, SWAPPED_PITCHES = 3, SWAPPED_WAYS = 5 }; /* ways: of broken chords over another harmony, all of which go the same ways */

static TuneNote note_of(const GroupSound *sound)
{
    return (TuneNote){sound->onset, sound->note->midi, 7 * sound->note->octave + sound->note->step};
}

/* The upper note of the next moment at or behind sound `at`; returns the sound behind it, or SIZE_MAX. */
static size_t next_note(const Group *group, size_t at, TuneNote *out)
{
    while (at < group->sound_count && (group->sounds[at].note->midi < 0 || group->sounds[at].duration <= 0))
        at++;
    if (at >= group->sound_count)
        return SIZE_MAX;
    *out = note_of(&group->sounds[at]);
    while (at < group->sound_count && group->sounds[at].onset == out->onset)
        at++;
    return at;
}

void tune_take(const Group *group, Ticks from, Ticks to, Tune *out)
{
    TuneNote note;
    out->count = 0;
    for (size_t at = group_sound_at(group, from); (at = next_note(group, at, &note)) != SIZE_MAX && note.onset < to && out->count < TUNE_MOST;)
        out->notes[out->count++] = note;
}

double tune_doubled(const Tune *tune, const Group *group)
{
    size_t shared = 0;
    for (size_t i = 0; i < tune->count; i++) {
        bool here = false;
        for (size_t at = group_sound_at(group, tune->notes[i].onset); at < group->sound_count && group->sounds[at].onset == tune->notes[i].onset; at++)
            here = here || (group->sounds[at].note->midi >= 0 && (group->sounds[at].note->midi - tune->notes[i].midi) % 12 == 0);
        shared += here;
    }
    return tune->count ? (double)shared / (double)tune->count : 0;
}

static Ticks placed(const Tune *tune, size_t i, int stretch)
{
    Ticks since = tune->notes[i].onset - tune->notes[0].onset;
    return stretch > 0 ? 2 * since : stretch < 0 ? since / 2 : since;
}

static int way(int from, int to)
{
    return (to > from) - (to < from);
}

/* Notes of the tune that are there; `steps`: by the same interval, else in the same direction. */
static double held_against(const Tune *tune, const Group *group, Ticks when, int stretch, int mirror, bool steps)
{
    Tune there;
    size_t met = 0, at = 0;
    const TuneNote *last = NULL, *last_there = NULL;
    if (!tune->count)
        return 0;
    tune_take(group, when, when + placed(tune, tune->count - 1, stretch) + 1, &there);
    for (size_t i = 0; i < tune->count; i++) {
        while (at < there.count && there.notes[at].onset < when + placed(tune, i, stretch))
            at++;
        if (at >= there.count || there.notes[at].onset != when + placed(tune, i, stretch))
            continue;
        const TuneNote *one = &tune->notes[i], *two = &there.notes[at];
        int course = last ? mirror * (one->place - last->place) : 0, course_there = last ? two->place - last_there->place : 0;
        met += !last || (steps ? course == course_there : way(0, course) == way(0, course_there));
        last = one;
        last_there = two;
    }
    return 2.0 * (double)met / (double)(tune->count + there.count);
}

double tune_alike(const Tune *tune, const Group *group, Ticks when, int stretch, int mirror)
{
    return held_against(tune, group, when, stretch, mirror, false);
}

double tune_same(const Tune *tune, const Group *group, Ticks when)
{
    return held_against(tune, group, when, 0, 1, true);
}

double tune_interval(const Tune *tune, const Group *group, Ticks when, int *semitones, int *steps)
{
    Tune there;
    int up[TUNE_MOST], by[TUNE_MOST];
    size_t met = 0, most = 0;
    if (!tune->count)
        return 0;
    tune_take(group, when, when + placed(tune, tune->count - 1, 0) + 1, &there);
    for (size_t i = 0, at = 0; i < tune->count; i++) {
        while (at < there.count && there.notes[at].onset < when + placed(tune, i, 0))
            at++;
        if (at < there.count && there.notes[at].onset == when + placed(tune, i, 0)) {
            up[met] = there.notes[at].midi - tune->notes[i].midi;
            by[met++] = there.notes[at].place - tune->notes[i].place;
        }
    }
    for (size_t i = 0; i < met; i++) {
        size_t same = 0;
        for (size_t k = 0; k < met; k++)
            same += by[k] == by[i];
        if (same > most) {
            most = same;
            *semitones = up[i];
            *steps = by[i];
        }
    }
    return met ? (double)most / (double)met : 0;
}

static bool has_pitches(const Tune *tune, size_t least)
{
    size_t different = 0;
    for (size_t i = 0; i < tune->count; i++) {
        size_t k = 0;
        while (k < i && tune->notes[k].place != tune->notes[i].place)
            k++;
        different += k == i;
    }
    return different >= least;
}

bool tunes_swapped(const Group *calling, Ticks call, Ticks call_end, const Group *answering, Ticks answer)
{
    Tune under;
    tune_take(answering, call, call_end < answer ? call_end : answer, &under);
    if (under.count < SWAPPED_NOTES || !has_pitches(&under, SWAPPED_PITCHES) || tune_alike(&under, calling, under.notes[0].onset, 0, 1) >= tune_same_least)
        return false; /* nothing of its own: it goes along with the call */
    Ticks there = under.notes[0].onset + answer - call;
    return tune_same(&under, calling, there) >= tune_same_least || (under.count >= SWAPPED_WAYS && tune_alike(&under, calling, there, 0, 1) >= 1);
}
