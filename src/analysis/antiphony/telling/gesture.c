#include "analysis/antiphony/telling/gesture.h"

/* Set by hand, on the movements whose entries were counted (docs/method.md, section 7). */
static const struct { /* how like a gesture something is */
    double exact, same, still, contrary; /* worth of a step by the same interval, another in its direction, one where only one moves, one the other way */
    double turned;  /* what is left of all where it is upside down */
    double held;    /* what is left of the first step's where that note is held longer in one of them */
    double foreign; /* how much a note counts that is not the gesture's */
    double alike, alike_even; /* from which it is the gesture; that of a row of equal notes */
    double earlier, later;    /* what is left where a statement begins a note or two beside it: it is told from its first note */
    int beside;
    size_t head, head_even;   /* notes of a head before a rest that are the gesture by themselves, where they are as like as a row must be */
} like = {.exact = 1, .same = 0.85, .still = 0.4, .contrary = 0.1, .turned = 0.85, .held = 0.8, .foreign = 0.7, .alike = 0.65, .alike_even = 0.85,
          .earlier = 0.95, .later = 0.8, .beside = 2, .head = 2, .head_even = 4};

static const struct { /* how much of a passage a gesture tells */
    size_t least, most;       /* notes by which one is known */
    double known, known_even; /* steps by which it is, in different values and in a row of equal notes; */
    double confirmed;         /* what each step more confirms */
    double by_chance;         /* what a statement counts beside its match's chance */
    double own, clearest;     /* how many times as much those of the pair that names the passage count, and those of its clearest match; */
    double goes_on;           /* and what those count with which a player only goes on */
    double opens;             /* how many times as much it tells with which the passage begins */
    double spread;            /* share of it that hangs on how far it reaches through the passage */
    double led_mostly;        /* share of the statements into which a long note leads, from which it belongs to the gesture, */
    int led;                  /* held for as many beats at most */
} tells = {.least = 3, .most = 12, .known = 3, .known_even = 8, .confirmed = 0.12, .by_chance = 0.5, .own = 1.25, .clearest = 1.5, .goes_on = 0.3,
           .opens = 1.3, .spread = 0.5, .led_mostly = 0.75, .led = 4};

static const struct { /* what is an entry though no match found it: after a rest, after a long note, elsewhere */
    size_t rested, fresh, midway;     /* notes at least */
    double alike_fresh, alike_midway; /* likeness at least */
} found_from = {.rested = 4, .fresh = 5, .midway = 8, .alike_fresh = 0.75, .alike_midway = 0.97};

static const struct { /* who has it a turn before the first call that a match found */
    size_t rested, notes;  /* notes at least, after a rest and elsewhere */
    double fresh, midway;  /* likeness at least, after a rest or a long note and elsewhere; that to what its player has later */
    int bars, turns;       /* a turn is so long at most; how many of them are followed back */
} before = {.rested = 3, .notes = 4, .fresh = 0.85, .midway = 0.95, .bars = 2, .turns = 4};

static double step_worth(const NoteEvent *const of[2], const NoteEvent *const here[2], bool turned)
{
    int sign = turned ? -1 : 1, a = event_direction(of[0], of[1]), b = sign * event_direction(here[0], here[1]);
    if (a != b)
        return a && b ? like.contrary : like.still;
    return event_steps(of[0], of[1]) == sign * event_steps(here[0], here[1]) ? like.exact : like.same;
}

/* A first note may be held longer in one than in the other, where it is the longer of two in both: what follows tells. */
static double first_worth(const NoteEvent *of, const NoteEvent *here, bool turned)
{
    Ticks a = of[1].onset - of->onset, b = here[1].onset - here->onset;
    bool long_in_both = (of[1].flags & here[1].flags & EVENT_AFTER_LONG) && !((of[1].flags | here[1].flags) & EVENT_AFTER_REST);
    double worth = step_worth((const NoteEvent *const[]){of, of + 1}, (const NoteEvent *const[]){here, here + 1}, turned);
    return a == b ? worth : long_in_both ? like.held * worth : 0;
}

static const double hair = 1e-9; /* of rounding: all steps in its direction are just what a row must have */

/* How far a melody has the gesture from `place` on: 0 not at all or less than `least` .. 1 in its rhythm and all its steps. */
static double gesture_likeness(const Gesture *gesture, const Melody *melody, const NoteEvent *place, bool turned, double least)
{
    const NoteEvent *end = melody->events + melody->count, *here = place + 2, *met[2] = {gesture->first + 1, place + 1};
    double steps = (double)gesture->notes - 1;
    if (place + 1 >= end)
        return 0;
    double worth = first_worth(gesture->first, place, turned);
    for (size_t i = 2; i < gesture->notes; i++) {
        if (worth + (double)(gesture->notes - i) * like.exact < least * steps - hair)
            return 0;
        const NoteEvent *of = gesture->first + i;
        Ticks due = place[1].onset + of->onset - gesture->first[1].onset;
        for (; here < end && here->onset < due; here++)
            steps += like.foreign;
        if (here == end || here->onset > due)
            continue;
        worth += step_worth((const NoteEvent *const[]){met[0], of}, (const NoteEvent *const[]){met[1], here}, turned);
        met[0] = of;
        met[1] = here++;
    }
    return worth / steps;
}

static bool is_even(const NoteEvent *first, size_t notes)
{
    for (size_t i = 1; i + 1 < notes; i++)
        if (first[i + 1].onset - first[i].onset != first[1].onset - first[0].onset)
            return false;
    return true;
}

/* A row of equal notes is known by its contour, unless both begin out of silence. */
static double least_likeness(const Gesture *gesture, const NoteEvent *place)
{
    return gesture->even && !(gesture->first->flags & place->flags & EVENT_AFTER_REST) ? like.alike_even : like.alike;
}

/* Notes from there to the next rest, at most as many as the gesture has. */
static size_t notes_to_rest(const Gesture *gesture, const Melody *melody, const NoteEvent *place)
{
    size_t notes = 1;
    while (notes < gesture->notes && place + notes < melody->events + melody->count && !(place[notes].flags & EVENT_AFTER_REST))
        notes++;
    return notes;
}

static double likeness_here(const Gesture *gesture, const Statement *statement, const Melody *melody, const NoteEvent *place, double least)
{
    double likeness = gesture_likeness(gesture, melody, place, false, least), other = 0;
    if (gesture->turned || statement->turned)
        other = like.turned * gesture_likeness(gesture, melody, place, true, least);
    return other > likeness ? other : likeness;
}

/* What the statement is like the gesture, upside down too where either was found so; 0 where it is not like it. */
static double likeness_of(const Texture *texture, const Gesture *gesture, const Statement *statement, const NoteEvent *place)
{
    const Melody *melody = &texture->melodies[statement->melody];
    if (place < melody->events || place >= melody->events + melody->count || place->onset < gesture->from)
        return 0;
    double least = least_likeness(gesture, place), likeness = likeness_here(gesture, statement, melody, place, least);
    if (likeness >= least)
        return likeness;
    Gesture head = *gesture; /* of what is broken off by a rest the head will do */
    head.notes = notes_to_rest(gesture, melody, place);
    bool broken_off = gesture->heads && head.notes < gesture->notes && head.notes >= (is_even(head.first, head.notes + 1) ? like.head_even : like.head);
    likeness = broken_off ? likeness_here(&head, statement, melody, place, like.alike_even) : 0;
    return likeness >= like.alike_even ? likeness : 0;
}

static Ticks beat_at(const Texture *texture, const NoteEvent *event)
{
    const Movement *m = texture->map->movement;
    return m->bars[event->bar].beat > 0 ? m->bars[event->bar].beat : m->per_crotchet;
}

static bool in_beat(const Texture *texture, const NoteEvent *a, const NoteEvent *b)
{
    const Bar *bars = texture->map->movement->bars;
    return (a->onset - bars[a->bar].onset) % beat_at(texture, a) == (b->onset - bars[b->bar].onset) % beat_at(texture, b);
}

/* Beside where a statement was found it begins only with the first steps of the gesture as they are; a row of equal notes begins at the same place of the beat. */
static bool may_begin(const Texture *texture, const Gesture *gesture, const Statement *statement, const NoteEvent *place)
{
    const NoteEvent *of = gesture->first;
    const Melody *melody = &texture->melodies[statement->melody];
    if (place < melody->events || place + 2 >= melody->events + melody->count)
        return place == statement->first;
    for (int i = 0; i < 2 && place != statement->first; i++)
        if (of[i + 1].onset - of[i].onset != place[i + 1].onset - place[i].onset || event_direction(&of[i], &of[i + 1]) != event_direction(&place[i], &place[i + 1]))
            return false;
    return !gesture->even || (of->flags & place->flags & EVENT_AFTER_REST) || in_beat(texture, of, place);
}

/* Where a statement has the gesture: its place, where it begins or a note or two beside, and how like it is there; NULL: nowhere. */
typedef struct Instance {
    const NoteEvent *place;
    double likeness;
    bool headless; /* without the first note, or with another in its stead: it begins with the second */
} Instance;

static void try_place(const Texture *texture, const Gesture *gesture, const Statement *statement, int beside, Instance *best)
{
    const NoteEvent *place = statement->first + beside;
    double left = beside > 0 ? like.later : beside < 0 ? like.earlier : 1;
    if (best->likeness >= left || !may_begin(texture, gesture, statement, place))
        return;
    double likeness = likeness_of(texture, gesture, statement, place) * left;
    if (likeness > best->likeness)
        *best = (Instance){place, likeness, false};
}

static Instance whole_instance(const Texture *texture, const Gesture *gesture, const Statement *statement)
{
    Instance best = {NULL, 0, false};
    for (int beside = -like.beside; beside <= like.beside; beside++)
        try_place(texture, gesture, statement, beside, &best);
    return best;
}

static Instance instance_of(const Texture *texture, const Gesture *gesture, const Statement *statement)
{
    Instance best = whole_instance(texture, gesture, statement);
    Gesture rest = *gesture;
    if (best.place || gesture->notes <= tells.least)
        return best;
    rest.first++;
    rest.notes--;
    rest.even = is_even(rest.first, rest.notes);
    best = whole_instance(texture, &rest, statement);
    best.headless = true;
    return best;
}

/* How much a gesture tells that is just like the statement. */
static double weight_of(const Gesture *gesture, const Statement *statement)
{
    return (tells.by_chance + statement->chance) * (statement->own ? tells.own : 1) * (statement->goes_on ? tells.goes_on : 1) *
           (statement->own && statement->chance >= gesture->clearest ? tells.clearest : 1);
}

/* How much of all statements a gesture tells, by how clear they are. Its first notes make it known, the others only confirm it. 0 where it is not more than
 * `least`, as soon as the statements left can't make it so. */
static double told_by(const Texture *texture, const StatementList *statements, const Gesture *gesture, double least)
{
    double sum = 0, steps = (double)gesture->notes - 1, left = 0;
    const Statement *first = NULL, *last = NULL, *all = statements->at;
    bool passes = false;
    double known = gesture->even && !(gesture->first->flags & EVENT_AFTER_REST) ? tells.known_even : tells.known;
    double confirmed = (steps < known ? steps / known : 1) + tells.confirmed * steps;
    for (size_t i = 0; i < statements->count; i++)
        left += weight_of(gesture, &all[i]);
    for (size_t i = 0; i < statements->count; i++) {
        const Statement *statement = &all[i];
        if (tells.opens * (sum + left) * confirmed < least * (1 - hair))
            return 0;
        left -= weight_of(gesture, statement);
        Instance instance = whole_instance(texture, gesture, statement);
        if (!instance.place)
            continue;
        first = first ? first : statement;
        last = statement;
        passes = passes || (statement->melody != first->melody && statement->first->onset > first->first->onset);
        sum += weight_of(gesture, statement) * instance.likeness;
    }
    double opens = first && first->first->onset == statements->at[0].first->onset ? tells.opens : 1;
    if (!passes)
        return 0;
    double spread = (double)(last->first->onset - first->first->onset) / (double)(all[statements->count - 1].first->onset - all[0].first->onset);
    return (1 - tells.spread + tells.spread * spread) * opens * sum * confirmed;
}

/* A long note on the beat that leads into what begins off it. */
static bool may_lead(const Texture *texture, const NoteEvent *place)
{
    return (place->flags & EVENT_AFTER_LONG) && !(place->flags & (EVENT_AFTER_REST | EVENT_ON_BEAT)) && (place[-1].flags & EVENT_ON_BEAT) &&
           place->onset - place[-1].onset <= tells.led * beat_at(texture, place);
}

/* Does it lead there as it does in the gesture, by the same step? */
static bool is_led(const Texture *texture, const Gesture *gesture, const NoteEvent *place, bool turned)
{
    return gesture->led && may_lead(texture, place) && first_worth(gesture->led - 1, place - 1, turned) >= like.held * like.same;
}

/* A gesture begins with the long note with which any of its statements was found to begin, where most of the others have it too. */
static void find_lead(const Texture *texture, const StatementList *statements, Gesture *gesture)
{
    size_t led = 0, all = 0;
    bool found = false;
    for (size_t i = 0; i < statements->count; i++) {
        const Statement *statement = &statements->at[i];
        const NoteEvent *place = instance_of(texture, gesture, statement).place;
        if (!place)
            continue;
        if (!all++ && may_lead(texture, place))
            gesture->led = place; /* as at the first */
        led += is_led(texture, gesture, place, statement->turned && gesture->turned);
        found = found || statement->first < place;
    }
    if (!found || (double)led < tells.led_mostly * (double)all)
        gesture->led = NULL;
}

Gesture gesture_of(const Texture *texture, const StatementList *statements)
{
    Gesture best = {.first = NULL};
    double clearest = 0;
    for (size_t i = 0; i < statements->count; i++)
        clearest = statements->at[i].own && statements->at[i].chance > clearest ? statements->at[i].chance : clearest;
    for (size_t i = 0; i < statements->count; i++) {
        const Statement *statement = &statements->at[i];
        size_t notes = (size_t)(statement->last - statement->first) + 1;
        for (size_t n = tells.least; n <= notes && n <= tells.most && !statement->stretched && !statement->goes_on; n++) {
            Gesture gesture = {.clearest = clearest, .first = statement->first, .notes = n, .turned = statement->turned, .even = is_even(statement->first, n)};
            gesture.told = told_by(texture, statements, &gesture, best.told);
            best = gesture.told > best.told ? gesture : best;
        }
    }
    if (best.first)
        find_lead(texture, statements, &best);
    best.heads = true;
    return best;
}

static bool begin_with(const Texture *texture, const Gesture *gesture, Statement *statement)
{
    Instance instance = instance_of(texture, gesture, statement);
    const NoteEvent *place = instance.place;
    if (!place)
        return statement->stretched;
    statement->first = is_led(texture, gesture, place, statement->turned && gesture->turned) ? place - 1 : place;
    statement->second = place + !instance.headless;
    statement->last = statement->last < place ? place : statement->last;
    return true;
}

/* Who comes in with a statement, in another shape, is its company at most. */
static void join_company(StatementList *list, size_t kept, const Statement *dropped)
{
    for (size_t i = 0; i < kept; i++)
        if (list->at[i].first->onset == dropped->first->onset && list->at[i].answer == dropped->answer)
            list->at[i].with |= dropped->with;
}

/* What begins within the first steps of another of the same players is no entry of its own. */
static void leave_out_doubles(StatementList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->count; i++) {
        const Statement *now = &list->at[i];
        bool within = false;
        for (size_t k = 0; k < list->count && !within; k++) {
            const Statement *other = &list->at[k];
            bool company = (other->with >> now->melody & 1) && other->last - other->first >= 2 && now->first->onset < other->first[2].onset;
            bool own = other->melody == now->melody && now->first - other->first <= 2;
            within = (own || company) && other->first->onset < now->first->onset;
        }
        if (!within)
            list->at[kept++] = *now;
    }
    list->count = kept;
}

void gesture_keep(const Texture *texture, const Gesture *gesture, StatementList *statements)
{
    StatementList *list = statements;
    size_t kept = 0;
    for (size_t i = 0; i < list->count && gesture->first; i++) {
        Statement now = list->at[i];
        if (begin_with(texture, gesture, &now)) {
            list->at[i] = list->at[kept];
            list->at[kept++] = now;
        }
    }
    for (size_t i = kept; i < list->count && gesture->first; i++)
        join_company(list, kept, &list->at[i]);
    list->count = gesture->first ? kept : list->count;
}

/* Does a player begin the gesture there, for all to hear: out of silence, if only its head; after a long note, if it is no mere turn; a long one exactly, at the
 * same place of the beat? */
static bool begins_at(const Texture *texture, const Gesture *gesture, const Melody *melody, const NoteEvent *place)
{
    Gesture head = *gesture;
    bool rested = (place->flags & gesture->first->flags & EVENT_AFTER_REST) != 0, fresh = event_is_fresh(place) && event_is_fresh(gesture->first);
    head.notes = rested ? notes_to_rest(gesture, melody, place) : gesture->notes;
    bool known = head.notes >= (rested ? found_from.rested : fresh ? found_from.fresh : found_from.midway);
    double least = fresh ? found_from.alike_fresh : found_from.alike_midway;
    return known && (fresh || in_beat(texture, gesture->first, place)) && gesture_likeness(&head, melody, place, false, least) >= least;
}

/* Nobody else's entry begins there, and the player is in none of their own, nor goes straight on from it. */
static bool is_free(const StatementList *list, size_t count, size_t melody, const NoteEvent *first, const NoteEvent *last)
{
    for (size_t i = 0; i < list->count; i++) {
        const Statement *other = &list->at[i];
        bool same = other->melody == melody, goes_on = same && !event_is_fresh(first) && first == other->last + 1;
        if (goes_on || (same ? other->first <= last && first <= other->last : i < count && other->first->onset == first->onset))
            return false;
    }
    return true;
}

/* Who begins is told as a match found it, unless one who answers had begun out of silence, a bar before at most. */
static bool may_precede(const Texture *texture, const StatementList *list, size_t count, const Statement *found, Ticks first)
{
    bool leads = false;
    for (size_t i = 0; i < count; i++)
        leads = leads || (list->at[i].melody == found->melody && list->at[i].first->onset > first);
    return leads && (found->first->flags & EVENT_AFTER_REST) && first - found->first->onset <= texture->map->movement->bars[found->first->bar].nominal;
}

static Ticks first_onset(const StatementList *list, size_t count)
{
    Ticks first = INT64_MAX;
    for (size_t i = 0; i < count; i++)
        first = list->at[i].first->onset < first ? list->at[i].first->onset : first;
    return first;
}

/* Who only comes along with others. */
static bool is_company(const StatementList *list, size_t count, size_t melody)
{
    bool along = false, leads = false;
    for (size_t i = 0; i < count; i++) {
        along = along || (list->at[i].with >> melody & 1);
        leads = leads || list->at[i].melody == melody;
    }
    return along && !leads;
}

static bool find_in(const Texture *texture, const Gesture *gesture, size_t melody, Ticks to, size_t known, StatementList *list)
{
    const Melody *line = &texture->melodies[melody];
    const NoteEvent *end = line->events + line->count, *place = line->events + melody_at(line, gesture->from);
    Ticks first = first_onset(list, known);
    for (; place < end && place->onset < to; place++) {
        const NoteEvent *last = place + notes_to_rest(gesture, line, place) - 1;
        if (last->onset >= to || !is_free(list, known, melody, place, last) || !begins_at(texture, gesture, line, place))
            continue;
        Statement found = {.melody = melody, .with = (uint64_t)1 << melody, .first = place, .last = last, .own = true, .found = true, .pair = SIZE_MAX - list->count};
        if (is_company(list, known, melody) || (place->onset < first && !may_precede(texture, list, known, &found, first)))
            continue;
        if (!array_push(list, found))
            return false;
    }
    return true;
}

static const Statement *first_of(const StatementList *list, const Statement *call)
{
    const Statement *first = NULL;
    for (size_t i = 0; i < list->count; i++) {
        const Statement *now = &list->at[i];
        bool other = !call || (now->first->onset > call->first->onset && now->melody != call->melody && !(call->with >> now->melody & 1) &&
                                 !(now->with >> call->melody & 1));
        first = other && (!first || now->first->onset < first->first->onset) ? now : first;
    }
    return first;
}

/* The first statement of that player, NULL: he has none. */
static const Statement *own_of(const StatementList *list, size_t melody)
{
    const Statement *own = NULL;
    for (size_t i = 0; i < list->count; i++)
        if (list->at[i].melody == melody && (!own || list->at[i].first->onset < own->first->onset))
            own = &list->at[i];
    return own;
}

/* How far the melody has the gesture there, or what its player has of it later, with its last note; 0: not enough. */
static double has_before(const Texture *texture, const Gesture *gesture, const Statement *own, const Melody *line, const NoteEvent *place, size_t *notes)
{
    Gesture head = *gesture;
    bool rested = (place->flags & gesture->first->flags & EVENT_AFTER_REST) != 0;
    double least = event_is_fresh(place) ? before.fresh : before.midway, likeness = 0;
    *notes = head.notes = rested ? notes_to_rest(gesture, line, place) : gesture->notes;
    if (head.notes >= (rested ? before.rested : before.notes))
        likeness = gesture_likeness(&head, line, place, false, least);
    if (likeness < least && own && (gesture->notes < 4 || own->last - own->first >= 3)) {
        head = (Gesture){.first = own->first, .notes = (size_t)(own->last - own->first) + 1};
        head.notes = head.notes > gesture->notes ? gesture->notes : head.notes;
        *notes = head.notes;
        likeness = head.notes >= 3 && (!is_even(head.first, head.notes) || in_beat(texture, head.first, place)) ? gesture_likeness(&head, line, place, false, before.midway) : 0;
        return likeness >= before.midway ? likeness : 0;
    }
    return likeness >= least ? likeness : 0;
}

/* Whoever of others has the gesture a turn before the first call, as far before it as its answer comes after; false: nobody. */
static bool turn_before(const Texture *texture, const Gesture *gesture, const StatementList *list, Statement *found)
{
    const Statement *call = first_of(list, NULL), *answer = call ? first_of(list, call) : NULL;
    const Bar *bars = texture->map->movement->bars;
    double best = 0;
    if (!answer)
        return false;
    Ticks lag = answer->first->onset - call->first->onset, when = call->first->onset - lag;
    for (size_t m = 0; when >= 0 && m < texture->melody_count && m < 63; m++) {
        const Melody *line = &texture->melodies[m];
        const NoteEvent *place = melody_note_at(line, when);
        const Statement *own = own_of(list, m);
        size_t notes;
        if (!place || bars[place->bar].implicit || m == call->melody || (call->with >> m & 1) || lag > before.bars * bars[place->bar].nominal)
            continue;
        double likeness = has_before(texture, gesture, own, line, place, &notes);
        if (likeness <= best)
            continue;
        best = likeness;
        *found = (Statement){.melody = m, .with = own ? own->with : (uint64_t)1 << m, .first = place, .last = place + notes - 1, .own = true, .found = true,
                             .pair = SIZE_MAX - list->count};
    }
    return best > 0;
}

bool gesture_find(const Texture *texture, const Gesture *gesture, Ticks to, StatementList *statements)
{
    bool ok = true;
    Statement found;
    for (int i = 0; ok && gesture->first && i < before.turns && turn_before(texture, gesture, statements, &found); i++) {
        if (i > 1 && own_of(statements, found.melody))
            break; /* others may tell of an exchange before this one */
        ok = array_push(statements, found);
    }
    size_t known = statements->count;
    for (size_t m = 0; ok && gesture->first && m < texture->melody_count && m < 63; m++)
        ok = find_in(texture, gesture, m, to, known, statements);
    if (gesture->notes > 2)
        leave_out_doubles(statements);
    return ok;
}
