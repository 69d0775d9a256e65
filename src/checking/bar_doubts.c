/* bar_doubts.c - bars that hold more or less than their time signature asks for, and parts that end before others.
 *
 * A bar that is short in all parts alike is how a score writes upbeats and split bars: it is a doubt only where its neighbours don't make up
 * for it. An empty bar in a part is taken for one of silence, which some programs write without a rest. */
#include "checking/checks.h"

/* Do all parts that have the bar, and something in it, fill it alike? */
static bool alike(const Movement *m, size_t bar)
{
    for (size_t p = 0; p < m->part_count; p++)
        if ((int)bar < m->parts[p].written_bars && m->parts[p].filled[bar] != 0 && m->parts[p].filled[bar] != m->bars[bar].length)
            return false;
    return true;
}

static bool is_short(const Movement *m, size_t bar)
{
    return m->bars[bar].nominal > 0 && m->bars[bar].length < m->bars[bar].nominal;
}

/* The short bars that make a whole one with this: the next in the file, the one that a repeat leads to, the first with the last. */
static bool made_up_for(const Movement *m, size_t bar)
{
    Ticks whole = m->bars[bar].nominal, length = m->bars[bar].length;
    if (bar == 0 || m->bars[bar].implicit)
        return true; /* an upbeat, or a bar that says of itself that it isn't whole */
    if (bar + 1 < m->bar_count && is_short(m, bar + 1) && length + m->bars[bar + 1].length == whole)
        return true;
    if (is_short(m, bar - 1) && length + m->bars[bar - 1].length == whole)
        return true;
    if (bar + 1 == m->bar_count || m->bars[bar].repeat_end || m->bars[bar].ending_stop || m->bars[bar].final || m->bars[bar].fine)
        for (size_t other = 0; other < m->bar_count; other++) {
            const Bar *upbeat = &m->bars[other];
            bool entrance = other == 0 || upbeat->repeat_start || upbeat->implicit || m->bars[other - 1].repeat_end;
            if (entrance && is_short(m, other) && upbeat->length + length == whole)
                return true;
        }
    return false;
}

static void check_common_length(spz_doubts *doubts, const Movement *m, size_t bar)
{
    const Bar *at = &m->bars[bar];
    if (at->nominal == 0 || at->length == at->nominal || !alike(m, bar) || (at->length < at->nominal && made_up_for(m, bar)))
        return;
    doubts_add(doubts, m, (DoubtPlace){.part = -1, .bar = (int)bar, .line = at->line},
               (spz_doubt){.fault = SPZ_FAULT_BAR_OF_ALL, .holds = fraction_of(at->length, m->per_crotchet),
                           .asks = fraction_of(at->nominal, m->per_crotchet)});
}

/* What a part should hold in a bar: what all others do, where those agree on another length than the signature's. */
static Ticks wanted(const Movement *m, const Part *part, size_t bar)
{
    Ticks asked = part->asked[bar] > 0 ? part->asked[bar] : m->bars[bar].nominal;
    return asked > 0 && m->bars[bar].length == asked ? asked : m->bars[bar].length;
}

/* A row of bars in which the part holds the same wrong amount is one doubt. */
static void check_part_bars(spz_doubts *doubts, const Movement *m, int part)
{
    const Part *p = &m->parts[part];
    for (int bar = 0; bar < p->written_bars; bar++) {
        Ticks holds = p->filled[bar], asks = wanted(m, p, (size_t)bar);
        if (holds == 0 || holds == asks || alike(m, (size_t)bar))
            continue;
        int last = bar;
        while (last + 1 < p->written_bars && p->filled[last + 1] == holds && wanted(m, p, (size_t)last + 1) == asks)
            last++;
        doubts_add(doubts, m, (DoubtPlace){part, bar, last, m->bars[bar].line},
                   (spz_doubt){.fault = SPZ_FAULT_BAR_OF_PART, .holds = fraction_of(holds, m->per_crotchet), .asks = fraction_of(asks, m->per_crotchet)});
        bar = last;
    }
}

void check_bars(spz_doubts *doubts, const Movement *movement)
{
    for (size_t bar = 0; bar < movement->bar_count; bar++)
        check_common_length(doubts, movement, bar);
    for (size_t part = 0; part < movement->part_count; part++)
        check_part_bars(doubts, movement, (int)part);
}

void check_part_lengths(spz_doubts *doubts, const Movement *movement)
{
    for (size_t p = 0; p < movement->part_count; p++) {
        const Part *part = &movement->parts[p];
        if (part->written_bars == 0 || (size_t)part->written_bars == movement->bar_count)
            continue;
        doubts_add(doubts, movement, (DoubtPlace){.part = (int)p, .bar = part->written_bars - 1},
                   (spz_doubt){.fault = SPZ_FAULT_PART_ENDS, .count = part->written_bars, .of = (long)movement->bar_count});
    }
}

void check_order(spz_doubts *doubts, const Movement *movement)
{
    bool *reached = arena_take(&doubts->arena, movement->bar_count, sizeof *reached);
    if (!reached) {
        doubts->no_memory = true;
        return;
    }
    for (size_t i = 0; i < movement->played_count; i++)
        reached[movement->played[i]] = true;
    for (int bar = 0; bar < (int)movement->bar_count; bar++) {
        if (reached[bar])
            continue;
        int last = bar;
        while (last + 1 < (int)movement->bar_count && !reached[last + 1])
            last++;
        doubts_add(doubts, movement, (DoubtPlace){-1, bar, last, movement->bars[bar].line}, (spz_doubt){.fault = SPZ_FAULT_NEVER_PLAYED});
        bar = last;
    }
}

void check_tempo(spz_doubts *doubts, const Movement *movement)
{
    DoubtPlace place = {.part = -1, .bar = -1};
    if (movement->tempo_count == 0)
        doubts_add(doubts, movement, place, (spz_doubt){.fault = SPZ_FAULT_NO_TEMPO});
    else if (movement->tempos[0].onset > 0) {
        place.bar = movement_bar_at(movement, movement->tempos[0].onset);
        doubts_add(doubts, movement, place, (spz_doubt){.fault = SPZ_FAULT_LATE_TEMPO});
    }
}
