#include "analysis/antiphony/split_line.h"
#include "analysis/melody/melody.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static const struct {
    int step;          /* semitones the heard line may move and still be one line */
    int leap;          /* semitones by which the two parts' own steps together pass twice the line's: they are jagged */
    double turn;       /* gain of a step at which the line passes to another part that had to leap for it */
    double stay;       /* loss of a step at which it does not */
    double tear;       /* loss of a leap in the heard line */
    double drop;       /* how far the sum may fall before a run ends */
    double least_gain; /* gain of a run worth reporting: about six notes */
    double least_turning; /* share of steps at which the line must change hands */
    double least_by_step; /* share of steps of a tone or a semitone: crossing arpeggios are no melody */
    double contrast;   /* the parts' mean step over the line's, at least */
    int borne;           /* steps at which the line must change hands for a conductor to hold it to be shared */
    double most_covered; /* share of steps over which another string part may move above the line, before that is heard instead */
} rule = {
    .step = 4, .leap = 3, .turn = 1.0, .stay = -0.7, .tear = -2.0, .drop = 2.1, .least_gain = 4.5, .least_turning = 0.6,
    .least_by_step = 0.55, .contrast = 1.7, .borne = 3, .most_covered = 0.5,
};

enum { MOST_PARTS = 3 };

/* One moment at which any of the parts begins a note. */
typedef struct Moment {
    Ticks when, end;
    const NoteEvent *event[MOST_PARTS]; /* sounding in each part */
    int holder;                   /* which part is on top */
} Moment;

typedef struct Braid { /* parts looked at together */
    const Melody *melodies[MOST_PARTS];
    size_t parts;
    const Melody *all;    /* the whole strings */
    size_t all_count;
    ARRAY(Moment) moments;
} Braid;

static Ticks next_onset(const Braid *braid, const size_t *at)
{
    Ticks when = INT64_MAX;
    for (size_t p = 0; p < braid->parts; p++)
        if (at[p] < braid->melodies[p]->count && braid->melodies[p]->events[at[p]].onset < when)
            when = braid->melodies[p]->events[at[p]].onset;
    return when;
}

static bool all_sound(const Moment *moment, size_t parts)
{
    for (size_t p = 0; p < parts; p++)
        if (!moment->event[p] || moment->event[p]->end <= moment->when)
            return false;
    return true;
}

static int highest(const Moment *moment, size_t parts)
{
    int best = 0;
    for (size_t p = 1; p < parts; p++)
        if (moment->event[p]->midi > moment->event[best]->midi)
            best = (int)p;
    return best;
}

/* All moments; a moment at which not all parts sound is kept with holder -1: it ends a run. */
static bool braid_fill(Braid *braid)
{
    size_t at[MOST_PARTS] = {0};
    Moment now = {0};
    for (Ticks when; (when = next_onset(braid, at)) != INT64_MAX;) {
        now.when = when;
        for (size_t p = 0; p < braid->parts; p++)
            if (at[p] < braid->melodies[p]->count && braid->melodies[p]->events[at[p]].onset == when)
                now.event[p] = &braid->melodies[p]->events[at[p]++];
        now.holder = all_sound(&now, braid->parts) ? highest(&now, braid->parts) : -1;
        now.end = now.holder >= 0 ? now.event[now.holder]->end : when;
        if (!array_push(&braid->moments, now))
            return false;
    }
    return true;
}

typedef struct Run {
    size_t first, last; /* moments */
    double gain;
} Run;

static bool same_event(const Moment *a, const Moment *b)
{
    return a->holder == b->holder && a->event[a->holder] == b->event[b->holder];
}

/* What one step of the heard line is worth. */
static double step_gain(const Moment *before, const Moment *now)
{
    int line = abs(now->event[now->holder]->midi - before->event[before->holder]->midi);
    int own = abs(now->event[now->holder]->midi - before->event[now->holder]->midi);
    int left = abs(now->event[before->holder]->midi - before->event[before->holder]->midi);
    if (line > rule.step)
        return rule.tear;
    if (now->holder == before->holder)
        return line == 0 ? rule.stay / 3 : rule.stay; /* a repeated top note says little */
    bool jagged = own > line && left >= line && own + left >= 2 * line + rule.leap;
    return jagged ? rule.turn : rule.stay / 2;
}

/* Another part begins a new note above the line at this moment. */
static bool covered_at(const Braid *braid, const Moment *moment)
{
    for (size_t i = 0; i < braid->all_count; i++) {
        const Melody *other = &braid->all[i];
        size_t at = melody_at(other, moment->when);
        bool own = false;
        for (size_t p = 0; p < braid->parts; p++)
            own = own || braid->melodies[p] == other;
        if (!own && at < other->count && other->events[at].onset == moment->when && !(other->events[at].flags & EVENT_REPEATED) &&
            other->events[at].midi > moment->event[moment->holder]->midi)
            return true;
    }
    return false;
}

static bool run_holds(const Braid *braid, const Run *run)
{
    double line = 0, parts = 0, turns = 0, steps = 0, by_step = 0, covered = 0;
    for (size_t i = run->first + 1; i <= run->last; i++) {
        const Moment *a = &braid->moments.at[i - 1], *b = &braid->moments.at[i];
        if (same_event(a, b))
            continue;
        int move = abs(b->event[b->holder]->midi - a->event[a->holder]->midi);
        line += move;
        by_step += move == 1 || move == 2;
        for (size_t p = 0; p < braid->parts; p++)
            parts += abs(b->event[p]->midi - a->event[p]->midi) / (double)braid->parts;
        turns += a->holder != b->holder;
        covered += covered_at(braid, b);
        steps += 1;
    }
    return steps >= 5 && covered <= rule.most_covered * steps && by_step >= rule.least_by_step * steps &&
           turns >= rule.least_turning * steps && parts >= rule.contrast * line;
}

/* Grows a run from moment `start`; `*next` is where to look on. */
static Run grow_run(const Braid *braid, size_t start, size_t *next)
{
    Run best = {start, start, 0};
    double sum = 0;
    size_t i = start + 1, last = start;
    for (; i < braid->moments.count && sum > best.gain - rule.drop; i++) {
        const Moment *now = &braid->moments.at[i];
        if (now->holder < 0 || now->when > braid->moments.at[last].end)
            break;
        if (!same_event(&braid->moments.at[last], now))
            sum += step_gain(&braid->moments.at[last], now);
        last = i;
        if (sum > best.gain)
            best = (Run){start, i, sum};
    }
    *next = best.gain >= rule.least_gain ? best.last + 1 : start + 1;
    return best;
}

static spz_section section_at(const Braid *braid, size_t part)
{
    return braid->melodies[part]->group->about.section;
}

static spz_braid braid_told(const Braid *braid, const Run *run)
{
    spz_braid told = {.changes = 0};
    for (size_t p = 0; p < braid->parts; p++)
        told.sections[p] = section_at(braid, p);
    for (size_t i = run->first + 1; i <= run->last; i++)
        told.changes += braid->moments.at[i].holder != braid->moments.at[i - 1].holder;
    return told;
}

static size_t link_of(const spz_passage *passage, spz_players players)
{
    size_t link = 0;
    while (link < passage->link_count && passage->links[link].players != players)
        link++;
    return link;
}

/* Entries: the notes of the heard line, each with the part that has it; links: the parts as they first have one. */
static bool entries_of(Findings *findings, const Braid *braid, const Run *run, spz_passage *passage)
{
    spz_entry *entries = arena_take(&findings->arena, run->last - run->first + 1, sizeof *entries);
    spz_link *links = arena_take(&findings->arena, braid->parts, sizeof *links);
    passage->entries = entries;
    passage->links = links;
    for (size_t i = run->first; entries && links && i <= run->last; i++) {
        const Moment *moment = &braid->moments.at[i];
        if (i > run->first && same_event(&braid->moments.at[i - 1], moment))
            continue;
        const NoteEvent *event = moment->event[moment->holder];
        size_t leader = braid->melodies[moment->holder]->group_index, link = link_of(passage, players_of_group(leader));
        spz_pitch pitch = pitch_of(event->sound->note);
        entries[passage->entry_count++] = (spz_entry){
            .players = players_of_group(leader), .link = link, .onset = event->onset, .end = event->end, .bar = (size_t)event->bar,
            .beat = beat_of(findings->map->movement, event->onset), .first = pitch, .last = pitch, .leader = leader, .answer = link > 0};
        if (link == passage->link_count)
            links[passage->link_count++] = (spz_link){players_of_group(leader), event->onset, (size_t)event->bar};
    }
    return entries && links;
}

static spz_status report_run(Findings *findings, const Braid *braid, const Run *run)
{
    const Movement *m = findings->map->movement;
    const Moment *first = &braid->moments.at[run->first], *last = &braid->moments.at[run->last];
    spz_passage passage = {.kind = SPZ_SPLIT_LINE, .onset = first->when, .end = last->end, .foreground = 0.8};
    double steps = (double)(run->last - run->first);
    passage.strength = fmin(0.95, 0.45 + 0.04 * run->gain);
    for (size_t p = 0; p < 2; p++)
        passage.sides[p] = side_of_group(findings->map, braid->melodies[p]->group_index);
    passage.told.braid = braid_told(braid, run);
    double tempo = movement_tempo_at(m, passage.onset);
    if (tempo > 0)
        passage.shortest = (double)(passage.end - passage.onset) / (double)m->per_crotchet / steps * 60 / tempo;
    if (!entries_of(findings, braid, run, &passage))
        return SPZ_NO_MEMORY;
    passage.turns = (int)passage.entry_count;
    return findings_add(findings, &passage);
}

static spz_status look_at(Findings *findings, Braid *braid, size_t *found)
{
    spz_status status = braid_fill(braid) ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i < braid->moments.count;) {
        if (braid->moments.at[i].holder < 0) {
            i++;
            continue;
        }
        Run run = grow_run(braid, i, &i);
        if (run.gain >= rule.least_gain && run_holds(braid, &run)) {
            status = report_run(findings, braid, &run);
            ++*found;
        }
    }
    array_free(&braid->moments);
    return status;
}

/* Neighbours in the score: the line that two sections share lies in one register. */
spz_status detect_split_line(Findings *findings, const spz_settings *settings)
{
    (void)settings;
    const Melody *melodies = findings_melodies(findings);
    spz_status status = melodies ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i + 1 < findings->map->group_count; i++) {
        size_t found = 0;
        Braid pair = {.melodies = {&melodies[i], &melodies[i + 1]}, .parts = 2, .all = melodies, .all_count = findings->map->group_count};
        status = look_at(findings, &pair, &found);
        if (status == SPZ_OK && found == 0 && i + 2 < findings->map->group_count) {
            Braid three = {.melodies = {&melodies[i], &melodies[i + 1], &melodies[i + 2]}, .parts = 3, .all = melodies,
                           .all_count = findings->map->group_count};
            status = look_at(findings, &three, &found);
        }
    }
    return status;
}

static spz_status raise_best(Findings *findings, Braid *braid, Ticks from, Ticks to, bool *made)
{
    Run best = {0, 0, 0};
    for (size_t i = 0; i < braid->moments.count;) {
        const Moment *moment = &braid->moments.at[i];
        if (moment->holder < 0 || moment->when < from || moment->when >= to) {
            i++;
            continue;
        }
        size_t next;
        Run run = grow_run(braid, i, &next);
        while (run.last > run.first && braid->moments.at[run.last].when >= to)
            run.last--;
        best = run.gain > best.gain ? run : best;
        i = next;
    }
    *made = best.last > best.first && braid_told(braid, &best).changes >= rule.borne;
    return *made ? report_run(findings, braid, &best) : SPZ_OK;
}

spz_status split_line_raise(Findings *findings, const size_t groups[2], size_t first, size_t last, bool *made)
{
    const Bar *bars = findings->map->movement->bars;
    const Melody *melodies = findings_melodies(findings);
    *made = false;
    if (!melodies)
        return SPZ_NO_MEMORY;
    Braid pair = {.melodies = {&melodies[groups[0]], &melodies[groups[1]]}, .parts = 2, .all = melodies, .all_count = findings->map->group_count};
    spz_status status = braid_fill(&pair) ? SPZ_OK : SPZ_NO_MEMORY;
    if (!status)
        status = raise_best(findings, &pair, bars[first].onset, bars[last].onset + bars[last].length, made);
    array_free(&pair.moments);
    return status;
}
