#include "analysis/antiphony/telling/statements.h"
#include "analysis/antiphony/telling/gesture.h"
#include <stdlib.h>

static const struct {
    double silence; /* share of the lag for which a caller is silent before it calls anew */
    double another; /* share of what the main gesture tells that another one tells before or behind it */
} rule = {.silence = 0.5, .another = 0.25};

static int by_onset_and_melody(const void *left, const void *right)
{
    const Statement *a = left, *b = right;
    if (a->first->onset != b->first->onset)
        return a->first->onset < b->first->onset ? -1 : 1;
    if (a->melody != b->melody)
        return a->melody < b->melody ? -1 : 1;
    if (a->answer != b->answer)
        return a->answer ? 1 : -1;
    return a->place < b->place ? -1 : a->place > b->place;
}

/* An octave stays one however it is spelt. */
static spz_change change_between(const NoteEvent *call, const NoteEvent *answer, bool inverted, int stretch)
{
    int semitones = answer->midi - call->midi;
    return (spz_change){.semitones = semitones, .steps = semitones % 12 == 0 ? semitones / 12 * 7 : event_steps(call, answer),
                        .inverted = inverted, .stretch = stretch};
}

/* How far the notes of an answer lie from those of its call: the distance of most of them, of equals the first. An upbeat may go its own way. */
enum { DISTANCES = 8 };
typedef struct Distances {
    spz_change change[DISTANCES];
    int times[DISTANCES], count;
} Distances;

static void count_distance(Distances *all, spz_change change)
{
    int at = 0;
    while (at < all->count && all->change[at].steps != change.steps)
        at++;
    if (at == DISTANCES)
        return;
    if (at == all->count) {
        all->change[at] = change;
        all->times[all->count++] = 0;
    }
    all->times[at]++;
}

/* In an answer that is upside down each note lies elsewhere: there the first counts. */
static spz_change usual_distance(const Distances *all)
{
    int best = 0;
    for (int i = 1; i < all->count && !all->change[0].inverted; i++)
        if (all->times[i] > all->times[best])
            best = i;
    return all->change[best];
}

/* What two statements share from their first notes on, one note after the other, as long as they agree. */
typedef struct Agreement {
    Distances distances;
    double sum, best;
    size_t notes;
} Agreement;

static Agreement agree(const Texture *texture, const Statement *call, const Statement *answer, bool inverted)
{
    static const double drop = 1.3, alike = 1, other = 0.35, contrary = -0.35, foreign = -0.9; /* as matches are grown, docs/method.md, section 3 */
    const Melody *calling = &texture->melodies[call->melody], *answering = &texture->melodies[answer->melody];
    const NoteEvent *over = calling->events + calling->count, *end = answering->events + answering->count;
    const NoteEvent *here = answer->first + 1, *met[2] = {call->first, answer->first};
    size_t longest = (size_t)(call->last - call->first > answer->last - answer->first ? call->last - call->first : answer->last - answer->first);
    Agreement found = {.best = 0, .notes = 1};
    Ticks lag = here < end && call->first + 1 < over ? here->onset - call->first[1].onset : 0;
    count_distance(&found.distances, change_between(call->first, answer->first, inverted, 0));
    for (const NoteEvent *event = call->first + 1; event < over && event <= call->first + longest && here < end && found.sum > found.best - drop; event++) {
        for (; here < end && here->onset < event->onset + lag; here++)
            found.sum += foreign;
        bool shared = here < end && here->onset == event->onset + lag;
        int a = event_direction(met[0], event), b = shared ? (inverted ? -1 : 1) * event_direction(met[1], here) : 0;
        found.sum += !shared ? foreign : a == b ? alike : a && b ? contrary : other;
        if (!shared)
            continue;
        count_distance(&found.distances, change_between(event, here, inverted, 0));
        met[0] = event;
        met[1] = here++;
        if (found.sum > found.best) {
            found.best = found.sum;
            found.notes = (size_t)(event - call->first) + 1;
        }
    }
    return found;
}

size_t statements_shared(const Texture *texture, const Statement *call, const Statement *answer, spz_change *change)
{
    Agreement straight = agree(texture, call, answer, false), turned = agree(texture, call, answer, true);
    const Agreement *better = turned.best > straight.best && (call->turned || answer->turned) ? &turned : &straight;
    *change = usual_distance(&better->distances);
    return better->notes;
}

/* The note that `voice` begins with that one of `owner`; NULL where it begins none. */
static const NoteEvent *in_voice(const Texture *texture, size_t voice, size_t owner, const NoteEvent *event)
{
    return voice == owner ? event : melody_note_at(&texture->melodies[voice], event->onset);
}

/* Whether `voice` has the note of `owner` too, and goes to it the same way from the one before. */
static bool has_step(const Texture *texture, size_t voice, size_t owner, const NoteEvent *before, const NoteEvent *note)
{
    const NoteEvent *from = before ? in_voice(texture, voice, owner, before) : NULL, *to = in_voice(texture, voice, owner, note);
    return to && (!before || (from && event_direction(from, to) == event_direction(before, note)));
}

/* A side that was found by its doubling is told by those after whom it is named, where they have the whole line, at whatever distance. */
static void find_voices(StatementWalk *walk, const Candidate *candidate)
{
    const Match *match = walk->match;
    const NoteEvent *notes[2], *before[2] = {NULL, NULL};
    uint32_t call = match->call_first, answer = match->answer_first;
    const size_t principal[2] = {match->caller, match->responder};
    for (int side = 0; side < 2; side++)
        walk->voice[side] = side_voice(walk->texture->map, &candidate->sides[side], principal[side]);
    while (match_next_pair(walk->texture->melodies, match, &call, &answer, &notes[0], &notes[1]))
        for (int side = 0; side < 2; side++) {
            if (!has_step(walk->texture, walk->voice[side], principal[side], before[side], notes[side]))
                walk->voice[side] = principal[side];
            before[side] = notes[side];
        }
}

static bool walk_pair(StatementWalk *walk)
{
    if (!match_next_pair(walk->texture->melodies, walk->match, &walk->call, &walk->answer, &walk->called, &walk->answered))
        walk->called = NULL;
    return walk->called != NULL;
}

StatementWalk statements_begin(const Texture *texture, const Candidate *candidate)
{
    const Match *match = &candidate->match;
    StatementWalk walk = {.texture = texture, .match = match, .call = match->call_first, .answer = match->answer_first};
    find_voices(&walk, candidate);
    walk_pair(&walk);
    return walk;
}

/* Steps by whose rhythm a beginning is known again; how many times as many notes make a turn (set by hand). */
enum { BEGINNING = 3, QUIETER = 2 };

/* Does the caller begin fewer notes while it is answered than while it calls? */
static bool is_quieter(const NoteEvent *first, const NoteEvent *again, Ticks lag)
{
    int calling = 0, answered = 0;
    for (const NoteEvent *event = first; event < again; event++) {
        bool late = (event->onset - first->onset) % (2 * lag) >= lag;
        calling += !late;
        answered += late;
    }
    return QUIETER * answered <= calling;
}

/* Two who take turns come round after twice the lag: does the caller begin there as it began the statement, so that it calls again? */
static bool comes_round(const StatementWalk *walk, const NoteEvent *first)
{
    const Melody *calling = &walk->texture->melodies[walk->match->caller];
    const NoteEvent *again = walk->called, *end = calling->events + calling->count;
    if ((again->onset - first->onset) % (2 * walk->match->lag) || again - first <= BEGINNING || end - again <= BEGINNING)
        return false;
    for (int i = 0; i < BEGINNING; i++)
        if (again[i + 1].onset - again[i].onset != first[i + 1].onset - first[i].onset)
            return false;
    return is_quieter(first, again, walk->match->lag); /* a row of equal notes always looks the same */
}

/* A new statement begins where the answer had time to begin and the one before is over: after a rest, a long note, or other notes; after a silence
 * that leaves the answer as much room as that; or where the turns come round. */
static bool begins_anew(const StatementWalk *walk, const NoteEvent *first, const NoteEvent *last)
{
    Ticks lag = walk->match->lag;
    if (comes_round(walk, first))
        return true;
    bool over = walk->called->onset - last->onset >= lag && (event_is_fresh(walk->called) || walk->called > last + 1);
    return over || ((walk->called->flags & EVENT_AFTER_REST) && (double)(walk->called->onset - walk->called[-1].end) >= rule.silence * (double)lag);
}

bool statements_next(StatementWalk *walk, Statement *call, Statement *answer)
{
    Distances distances = {.count = 0};
    if (!walk->called)
        return false;
    call->first = walk->called;
    answer->first = walk->answered;
    do {
        call->last = walk->called;
        answer->last = walk->answered;
        const NoteEvent *called = in_voice(walk->texture, walk->voice[0], walk->match->caller, walk->called);
        const NoteEvent *answered = in_voice(walk->texture, walk->voice[1], walk->match->responder, walk->answered);
        count_distance(&distances, change_between(called, answered, walk->match->mirror < 0, walk->match->stretch));
    } while (walk_pair(walk) && !begins_anew(walk, call->first, call->last));
    answer->change = usual_distance(&distances);
    return true;
}

Statement statement_told_by(const StatementWalk *walk, int side, Statement found)
{
    size_t owner = side ? walk->match->responder : walk->match->caller;
    found.melody = walk->voice[side];
    found.first = in_voice(walk->texture, found.melody, owner, found.first);
    found.last = in_voice(walk->texture, found.melody, owner, found.last);
    return found;
}

/* The calls of a match and their answers, cut where a new statement begins. */
static bool statements_of(const Texture *texture, const Candidate *candidate, bool own, StatementList *out)
{
    const Match *match = &candidate->match;
    StatementWalk walk = statements_begin(texture, candidate);
    Statement call = {.melody = match->caller, .with = candidate->sides[0].melodies, .own = own, .turned = match->mirror < 0,
                      .stretched = match->stretch != 0, .chance = candidate->evidence.chance};
    Statement answer = call;
    answer.melody = match->responder;
    answer.with = candidate->sides[1].melodies;
    answer.answer = true;
    bool ok = true;
    while (ok && statements_next(&walk, &call, &answer)) {
        call.pair = answer.pair = out->count;
        ok = array_push(out, statement_told_by(&walk, 0, call)) && array_push(out, statement_told_by(&walk, 1, answer));
    }
    return ok;
}

static bool statements_of_candidates(const Texture *texture, const CandidateList *candidates, const uint32_t *which, size_t count, bool own,
                                     StatementList *out)
{
    bool ok = true;
    for (size_t i = 0; ok && i < count; i++)
        ok = statements_of(texture, &candidates->at[which[i]], own, out);
    return ok;
}

/* A call whose last note is held under the answer's end is as good as any. */
static void keep_within(StatementList *list, Ticks onset, Ticks end)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].first->onset >= onset && list->at[i].last->onset < end)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

/* In time order, each melody once at a moment: an answer that is itself answered stays an answer, and the passage's own
 * pair goes before others. */
static void tidy(StatementList *list)
{
    if (!list->count)
        return;
    for (size_t i = 0; i < list->count; i++)
        list->at[i].place = i;
    qsort(list->at, list->count, sizeof *list->at, by_onset_and_melody);
    size_t kept = 1;
    for (size_t i = 1; i < list->count; i++) {
        Statement *last = &list->at[kept - 1];
        const Statement *now = &list->at[i];
        if (now->first->onset == last->first->onset && now->melody == last->melody) {
            if (now->answer && !(last->answer && last->own && !now->own))
                *last = *now;
        } else
            list->at[kept++] = *now;
    }
    list->count = kept;
}

/* Is its player in the middle of an earlier statement, of the passage's own pair where `own`? */
static bool in_the_middle(const StatementList *list, size_t index, bool own)
{
    const Statement *now = &list->at[index];
    for (const Statement *before = now; before-- > list->at;)
        if (before->melody == now->melody && before->first < now->first && now->first <= before->last && (before->own || !own))
            return true;
    return false;
}

static void mark_middles(StatementList *list)
{
    for (size_t i = 0; i < list->count; i++)
        list->at[i].middle = !(list->at[i].first->flags & EVENT_AFTER_REST) && in_the_middle(list, i, false);
}

static bool is_partner_in_the_middle(const StatementList *list, const Statement *one)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].pair == one->pair && list->at[i].answer != one->answer)
            return list->at[i].middle;
    return false;
}

/* Who is in the middle of a statement of the passage's own pair begins no other for others; and where both a caller and its answerer are in the middle of
 * something, neither after a rest, they begin nothing. */
static void leave_out_middles(StatementList *list)
{
    size_t kept = 0;
    mark_middles(list);
    for (size_t i = 0; i < list->count; i++) {
        Statement *now = &list->at[i];
        now->idle = (now->middle && is_partner_in_the_middle(list, now)) || (!now->own && in_the_middle(list, i, true));
    }
    for (size_t i = 0; i < list->count; i++)
        if (!list->at[i].idle)
            list->at[kept++] = list->at[i];
    list->count = kept;
}

static bool goes_on(const StatementList *list, size_t index)
{
    const Statement *now = &list->at[index];
    for (const Statement *before = now; before-- > list->at && !event_is_fresh(now->first);)
        if (before->melody == now->melody && before->first < now->first && now->first <= before->last + 1)
            return true;
    return false;
}

enum { KNOWN = 4 }; /* notes by which a gesture is known while it goes on */

/* The part of a passage in which one gesture is told. */
typedef struct Scene {
    Ticks from, to;
} Scene;

/* From its first note to where its last instance is known. */
static Scene scene_of(const StatementList *list, const Gesture *gesture)
{
    Scene scene = {INT64_MAX, 0};
    for (size_t i = 0; i < list->count; i++) {
        scene.from = list->at[i].first->onset < scene.from ? list->at[i].first->onset : scene.from;
        const NoteEvent *known = list->at[i].first + (gesture->notes < KNOWN ? gesture->notes : KNOWN);
        Ticks to = known < list->at[i].last ? known->end : list->at[i].last->end;
        scene.to = to > scene.to ? to : scene.to;
    }
    return scene;
}

/* A statement is told to where the next scene begins. */
static void end_before(Ticks scene, Statement *statement)
{
    while (statement->last > statement->first && statement->last->onset >= scene)
        statement->last--;
}

/* Appends what begins outside the scenes. */
static bool outside(const StatementList *from, const Scene *scenes, size_t count, StatementList *out)
{
    bool ok = true;
    for (size_t i = 0; ok && i < from->count; i++) {
        Statement statement = from->at[i];
        bool out_of_all = true;
        for (size_t s = 0; s < count; s++) {
            const NoteEvent *known = statement.last - statement.first < KNOWN ? statement.last : statement.first + KNOWN;
            bool before = known->end <= scenes[s].from;
            out_of_all = out_of_all && (before || statement.first->onset >= scenes[s].to);
            if (before)
                end_before(scenes[s].from, &statement);
        }
        ok = !out_of_all || array_push(out, statement);
    }
    return ok;
}

static bool is_tossed(const Statement *statement)
{
    return statement->last - statement->first < 2 && (statement->first->flags & EVENT_AFTER_REST);
}

/* Appends single notes and pairs of notes between rests that fly to and fro: too short to be known as a gesture, they are known by their alternation. */
static bool keep_tossed(const StatementList *list, StatementList *out)
{
    enum { TOSSES = 4 };
    bool ok = true;
    for (size_t i = 0, end; ok && i < list->count; i = end) {
        for (end = i + 1; end < list->count && is_tossed(&list->at[end]) && is_tossed(&list->at[end - 1]) && list->at[end].melody != list->at[end - 1].melody;)
            end++;
        for (size_t k = i; ok && k < end && end - i >= TOSSES; k++)
            ok = array_push(out, list->at[k]);
    }
    return ok;
}

/* Only what begins with a gesture, from its first note on: the one that tells most of the passage and, before or behind it, another that tells about as much. */
static bool keep_gestures(const Texture *texture, const Chain *chain, StatementList *list)
{
    enum { GESTURES = 4 };
    Scene scenes[GESTURES];
    StatementList kept = {0};
    double most = 0;
    bool ok = true;
    for (size_t i = 0; i < list->count; i++)
        list->at[i].goes_on = goes_on(list, i);
    for (size_t count = 0; ok && count < GESTURES; count++) {
        StatementList here = {0};
        ok = outside(list, scenes, count, &here);
        Gesture gesture = gesture_of(texture, &here);
        bool tells = ok && (!count || (gesture.first && gesture.told >= rule.another * most));
        most = count ? most : gesture.told;
        if (tells) {
            gesture.from = texture->map->movement->bars[chain->first].onset;
            gesture_keep(texture, &gesture, &here);
            ok = gesture_find(texture, &gesture, chain->end, &here) && outside(&here, scenes, count, &kept);
            scenes[count] = scene_of(&here, &gesture);
        }
        else
            ok = ok && keep_tossed(&here, &kept);
        array_free(&here);
        if (!tells)
            break;
    }
    array_free(list);
    *list = kept;
    tidy(list);
    return ok;
}

bool statements_of_chain(const Texture *texture, const CandidateList *candidates, const Chain *chain, bool whatever, StatementList *out)
{
    bool ok = statements_of_candidates(texture, candidates, chain->candidates, chain->candidate_count, true, out);
    for (const AbsorbedPair *pair = chain->absorbed; ok && pair; pair = pair->next)
        ok = statements_of_candidates(texture, candidates, pair->candidates, pair->count, false, out);
    keep_within(out, chain->onset, chain->end);
    tidy(out);
    if (!whatever)
        ok = keep_gestures(texture, chain, out) && ok;
    leave_out_middles(out);
    return ok;
}
