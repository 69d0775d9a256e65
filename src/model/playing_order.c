/* playing_order.c - follows the repeat signs the way players do. The rule in words is in docs/formats.md, "Playing order".
 *
 * A walk over the bars with a pass counter for the repeated section it is in. Each jump (da capo, dal segno) is taken once, and after it
 * repeats are not played again and the last ending is taken, so the walk ends; signs that contradict each other can still multiply
 * (sections inside sections), hence a limit, beyond which the bars are taken as written. */
#include "model/jump_signs.h"
#include "model/playing_order.h"
#include "support/array.h"
#include <string.h>

enum { PLAYED_LIMIT_FACTOR = 40 };

typedef struct Section { /* a repeated section that is open */
    size_t start;
    int pass;
} Section;

typedef struct Walk {
    const Movement *movement;
    JumpSigns signs;
    ARRAY(int32_t) played;
    ARRAY(uint8_t) passes; /* of each bar in played */
    uint8_t *last_pass;    /* by bar: the pass in which it was played last; 0 before */
    ARRAY(Section) outer; /* sections around the present one */
    Section now;
    bool *jumped;         /* by bar: its jump has been taken */
    int32_t *open;        /* by bar: below 0 where a backward sign from there on closes a section that began before; see note_open */
    bool after_jump;
    size_t jumped_from;
    size_t first_fine;    /* bar_count when there is none */
    bool no_memory;
} Walk;

/* All passes that the endings standing next to each other at `bar` (from its own on) are for. */
static uint32_t passes_from(const Walk *walk, size_t bar)
{
    const Movement *m = walk->movement;
    enum { MOST = 64 }; /* endings of a row: more than there are passes */
    uint32_t passes = 0;
    size_t at = bar;
    for (int i = 0; i < MOST && at < m->bar_count && m->bars[at].ending; at = jump_signs_after_ending(&walk->signs, at), i++)
        passes |= m->bars[at].ending;
    return passes;
}

static int highest_pass(uint32_t passes)
{
    int highest = 0;
    for (; passes; passes >>= 1)
        highest++;
    return highest;
}

/* Is the section that ends with this backward sign played once more? */
static bool goes_back(const Walk *walk, size_t bar)
{
    const Bar *at = &walk->movement->bars[bar];
    if (!at->repeat_end || (walk->after_jump && !at->repeat_after_jump))
        return false;
    int times = at->repeat_times;
    if (at->ending) {
        int named = highest_pass(passes_from(walk, bar));
        times = named > times ? named : times;
    }
    return walk->now.pass < times;
}

/* Is the ending at `bar` left out in this pass? After a jump only the last one of a row is played, unless its repeats count then too. */
static bool skips(const Walk *walk, size_t bar)
{
    const Movement *m = walk->movement;
    uint32_t ending = m->bars[bar].ending;
    if (ending == 0)
        return false;
    if (walk->after_jump && !walk->signs.counts_after_jump[bar])
        return passes_from(walk, jump_signs_after_ending(&walk->signs, bar)) != 0;
    return walk->now.pass <= 32 && !(ending & (UINT32_C(1) << (walk->now.pass - 1)));
}

static void enter_section(Walk *walk, size_t bar)
{
    if (bar != walk->now.start && !array_push(&walk->outer, walk->now))
        walk->no_memory = true;
    walk->now = (Section){bar, bar == walk->now.start ? walk->now.pass : 1};
}

/* The section is over: back to the one around it when that one began with a forward sign and its backward sign is still to come; otherwise
 * the next backward sign leads back to here. */
static void leave_section(Walk *walk, size_t next)
{
    const Movement *m = walk->movement;
    bool closes = next < m->bar_count && walk->open[next] < 0;
    if (closes && walk->outer.count && m->bars[walk->outer.at[walk->outer.count - 1].start].repeat_start) {
        walk->now = walk->outer.at[--walk->outer.count];
        return;
    }
    walk->outer.count = 0;
    walk->now = (Section){next, 1};
}

static size_t start_over(Walk *walk, size_t bar, size_t to)
{
    walk->jumped[bar] = true;
    walk->jumped_from = bar;
    walk->after_jump = true;
    walk->outer.count = 0;
    walk->now = (Section){to, 1};
    return to;
}

/* A barline that ends a piece: a final one; with a repeat sign, which many editions print so behind every part, only before the trio. */
static bool ends_a_piece(const Movement *m, size_t bar)
{
    const Bar *at = &m->bars[bar];
    return at->final && (!at->repeat_end || (bar + 1 < m->bar_count && m->bars[bar + 1].trio));
}

/* After a jump: at a 'fine'; where none stands before the jump and no coda is to come, at a final barline before it ('Menuetto D.C.' behind the
 * trio). */
static bool ends_here(const Walk *walk, size_t bar)
{
    const Movement *m = walk->movement;
    if (m->bars[bar].fine)
        return true;
    return bar < walk->jumped_from && walk->first_fine > walk->jumped_from && ends_a_piece(m, bar) && (int64_t)bar > walk->signs.last_leaving /* no coda is to come */;
}

/* Which bar follows `bar`; bar_count ends the walk. */
static size_t next_bar(Walk *walk, size_t bar)
{
    const Movement *m = walk->movement;
    const Bar *at = &m->bars[bar];
    if (goes_back(walk, bar)) {
        walk->now.pass++;
        return walk->now.start;
    }
    if (walk->after_jump && ends_here(walk, bar))
        return m->bar_count;
    if (walk->after_jump && jump_signs_leaves(&walk->signs, bar))
        return jump_signs_coda(&walk->signs, bar);
    if (at->da_capo && !walk->jumped[bar])
        return start_over(walk, bar, 0);
    if (at->dal_segno && !walk->jumped[bar])
        return start_over(walk, bar, jump_signs_segno(&walk->signs, bar));
    bool last_ending = at->ending && !movement_ending_goes_on(m, bar) && (bar + 1 >= m->bar_count || m->bars[bar + 1].ending == 0);
    if (at->repeat_end || last_ending)
        leave_section(walk, bar + 1);
    return bar + 1;
}

/* The pass of a bar that is played now. After a jump it is the last one before it, as with the endings, unless its repeats count again. */
static uint8_t pass_of(const Walk *walk, size_t bar)
{
    int now = walk->now.pass < UINT8_MAX ? walk->now.pass : UINT8_MAX, before = walk->last_pass[bar];
    return (uint8_t)(walk->after_jump && now == 1 && before > 0 ? before : now);
}

static void play_bar(Walk *walk, size_t bar)
{
    uint8_t pass = pass_of(walk, bar);
    if (!array_push(&walk->played, (int32_t)bar) || !array_push(&walk->passes, pass))
        walk->no_memory = true;
    walk->last_pass[bar] = pass;
}

/* false when the signs multiply beyond reason. */
static bool walk_bars(Walk *walk)
{
    const Movement *m = walk->movement;
    size_t limit = m->bar_count * PLAYED_LIMIT_FACTOR;
    size_t bar = 0, steps = 0;
    while (bar < m->bar_count && !walk->no_memory) {
        if (++steps > limit)
            return false;
        if (m->bars[bar].repeat_start)
            enter_section(walk, bar);
        if (skips(walk, bar)) {
            bar = jump_signs_after_ending(&walk->signs, bar);
            if (walk->now.pass > 1 && bar < m->bar_count && m->bars[bar].ending == 0) /* the row of endings is behind us, and with it the section */
                leave_section(walk, bar);
            continue;
        }
        play_bar(walk, bar);
        bar = next_bar(walk, bar);
    }
    return true;
}

static void as_written(Walk *walk)
{
    walk->played.count = walk->passes.count = 0;
    for (size_t bar = 0; bar < walk->movement->bar_count && !walk->no_memory; bar++)
        if (!array_push(&walk->played, (int32_t)bar) || !array_push(&walk->passes, 0))
            walk->no_memory = true;
}

/* The fewest sections that are open behind any backward sign from a bar on, counted from there. */
static void note_open(Walk *walk)
{
    const Movement *m = walk->movement;
    int32_t behind = 0; /* nothing comes: nothing is closed */
    for (size_t at = m->bar_count; at-- > 0;) {
        int32_t after = m->bars[at].repeat_start - m->bars[at].repeat_end, least = after + behind;
        if (m->bars[at].repeat_end && after < least)
            least = after;
        walk->open[at] = behind = least;
    }
}

static bool walk_begin(Walk *walk, const Movement *movement)
{
    memset(walk, 0, sizeof *walk);
    walk->movement = movement;
    walk->now = (Section){0, 1};
    while (walk->first_fine < movement->bar_count && !movement->bars[walk->first_fine].fine)
        walk->first_fine++;
    walk->jumped = memory_get(movement->bar_count * sizeof *walk->jumped);
    walk->last_pass = memory_get(movement->bar_count * sizeof *walk->last_pass);
    walk->open = memory_get(movement->bar_count * sizeof *walk->open);
    if (!jump_signs_find(movement, &walk->signs) || !walk->jumped || !walk->last_pass || !walk->open)
        return false;
    note_open(walk);
    memset(walk->jumped, 0, movement->bar_count * sizeof *walk->jumped);
    memset(walk->last_pass, 0, movement->bar_count * sizeof *walk->last_pass);
    return true;
}

static void walk_end(Walk *walk)
{
    jump_signs_free(&walk->signs);
    array_free(&walk->played);
    array_free(&walk->passes);
    array_free(&walk->outer);
    memory_free(walk->jumped);
    memory_free(walk->open);
    memory_free(walk->last_pass);
}

static bool keep_order(const Walk *walk, Movement *movement, Arena *arena)
{
    size_t count = walk->played.count, room = count ? count : 1;
    int32_t *played = arena_take(arena, room, sizeof *played);
    uint8_t *passes = arena_take(arena, room, sizeof *passes);
    if (!played || !passes)
        return false;
    if (count) {
        memcpy(played, walk->played.at, count * sizeof *played);
        memcpy(passes, walk->passes.at, count * sizeof *passes);
    }
    movement->played = played;
    movement->played_pass = passes;
    movement->played_count = count;
    return true;
}

spz_status playing_order_find(Movement *movement, Arena *arena)
{
    Walk walk;
    walk.no_memory = !walk_begin(&walk, movement);
    movement->played_broken = !walk.no_memory && !walk_bars(&walk);
    if (movement->played_broken)
        as_written(&walk);
    bool kept = !walk.no_memory && keep_order(&walk, movement, arena);
    walk_end(&walk);
    return kept ? SPZ_OK : SPZ_NO_MEMORY;
}
