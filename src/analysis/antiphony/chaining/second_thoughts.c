/* Found by reading, beside the score, what the features judged wrongly; limits and weights were tried on the same tables, not fitted. Half or
 * twice as much of those that were varied (joined, interrupted, bare rhythm) moves F1 by 0.005 at most (docs/method.md, section 5). */
#include "analysis/antiphony/chaining/second_thoughts.h"

/* In log odds. */
static const double weight_of[SPZ_THOUGHT_COUNT] = {
    [SPZ_THOUGHT_JOINED] = -3, [SPZ_THOUGHT_AFTERBEATS] = -4, [SPZ_THOUGHT_MURMUR] = -2, [SPZ_THOUGHT_INTERRUPTED] = -2,
    [SPZ_THOUGHT_WINDS_LEAD] = -2, [SPZ_THOUGHT_BARE_RHYTHM] = 1,
};

double second_thoughts_weight(unsigned thoughts)
{
    double sum = 0;
    for (int t = 0; t < SPZ_THOUGHT_COUNT; t++)
        sum += thoughts >> t & 1 ? weight_of[t] : 0;
    return sum;
}

static bool joined(const Evidence *evidence)
{
    const double most = 0.6;
    return evidence->called_by_both >= most || evidence->answered_by_both >= most;
}

/* Back on the pitch of two notes before, with another between. */
static bool rocks(const Melody *melody, uint32_t event)
{
    const NoteEvent *now = &melody->events[event];
    return event >= 2 && now[-1].midi != now->midi && now[-2].midi == now->midi;
}

static double rocking(const Melody *melody, uint32_t first, uint32_t last)
{
    unsigned found = 0;
    for (uint32_t i = first; i <= last; i++)
        found += rocks(melody, i);
    return (double)found / (last - first + 1);
}

static double different_pitches(const Melody *melody, uint32_t first, uint32_t last)
{
    uint64_t seen[2] = {0};
    for (uint32_t i = first; i <= last; i++)
        if (melody->events[i].midi >= 0 && melody->events[i].midi < 128)
            seen[melody->events[i].midi / 64] |= (uint64_t)1 << melody->events[i].midi % 64;
    return (double)(__builtin_popcountll(seen[0]) + __builtin_popcountll(seen[1])) / (last - first + 1);
}

static bool murmurs(const Texture *texture, const Match *match, const Evidence *evidence)
{
    const double rocking_most = 0.7, pitches_few = 0.34;
    const Melody *caller = &texture->melodies[match->caller], *responder = &texture->melodies[match->responder];
    return match->statements == 1 && evidence->at[F_RESTED] == 0 &&
           different_pitches(caller, match->call_first, match->call_last) <= pitches_few &&
           rocking(caller, match->call_first, match->call_last) >= rocking_most &&
           rocking(responder, match->answer_first, match->answer_last) >= rocking_most;
}

static bool only_winds_move(const Texture *texture, size_t cell)
{
    unsigned moves = 0;
    for (size_t t = 0; t < texture->melody_count; t++)
        moves += texture->cells[t * texture->cell_count + cell].moves;
    return texture->wind_top[cell] >= 0 && moves == 0;
}

/* Another thought has come between: a bar in all between call and answer in which winds begin notes and no string moves. */
static bool interrupted(const Texture *texture, const Match *match)
{
    Ticks answer = match->onset + match->lag, bar = texture_bar_length(texture, &texture->melodies[match->caller].events[match->call_first]);
    if (match->statements > 2 || match->call_end + bar > answer)
        return false;
    size_t cells = 0;
    for (size_t c = texture_cell_at(texture, match->call_end); c <= texture_cell_at(texture, answer - 1); c++)
        cells += only_winds_move(texture, c);
    return (Ticks)cells * texture->cell >= bar;
}

static bool afterbeats(const Evidence *evidence)
{
    return evidence->at[F_STILL] >= 0.4 && evidence->at[F_RHYTHM] < 0.1 && evidence->at[F_CALL_WINDS] + evidence->at[F_ANSWER_WINDS] >= 0.8;
}

static int direction(int from, int to)
{
    return (to > from) - (to < from);
}

static bool is_wind(const SectionMap *map, const GroupSound *sound)
{
    spz_family family = section_map_family(map, sound->part);
    return family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_BRASS;
}

/* Whether a wind, above, strikes both notes of a step with this one and moves the same way. */
static bool wind_has_step(const SectionMap *map, const NoteEvent *from, const NoteEvent *to)
{
    for (size_t i = FIRST_FROM(map->others, map->other_count, to->onset); i < map->other_count && map->others[i].onset == to->onset; i++) {
        const GroupSound *now = &map->others[i];
        if (now->note->midi <= to->midi || now->duration <= 0 || !is_wind(map, now))
            continue;
        for (size_t j = FIRST_FROM(map->others, map->other_count, from->onset); j < map->other_count && map->others[j].onset == from->onset; j++) {
            const GroupSound *before = &map->others[j];
            if (before->part == now->part && before->duration > 0 &&
                direction(before->note->midi, now->note->midi) == event_direction(from, to))
                return true;
        }
    }
    return false;
}

static double steps_with_winds(const Texture *texture, size_t melody, uint32_t first, uint32_t last)
{
    const NoteEvent *events = texture->melodies[melody].events;
    unsigned with = 0;
    for (uint32_t i = first + 1; i <= last; i++)
        with += wind_has_step(texture->map, &events[i - 1], &events[i]);
    return last > first ? (double)with / (last - first) : 0;
}

static bool winds_lead(const Texture *texture, const Match *match)
{
    const double led = 0.6, alone = 0.2;
    return steps_with_winds(texture, match->caller, match->call_first, match->call_last) >= led &&
           steps_with_winds(texture, match->responder, match->answer_first, match->answer_last) <= alone;
}

static bool bare_rhythm(const Match *match, const Evidence *evidence)
{
    return evidence->at[F_RESTED] >= 0.9 && evidence->at[F_MARKED] >= 0.7 && evidence->at[F_VALUES] >= 1 && evidence->at[F_SAME] >= 0.65 &&
           match->alike < 0.6 * match->matched;
}

unsigned second_thoughts(const Texture *texture, const Match *match, const Evidence *evidence)
{
    return (unsigned)joined(evidence) << SPZ_THOUGHT_JOINED | (unsigned)afterbeats(evidence) << SPZ_THOUGHT_AFTERBEATS |
           (unsigned)murmurs(texture, match, evidence) << SPZ_THOUGHT_MURMUR | (unsigned)interrupted(texture, match) << SPZ_THOUGHT_INTERRUPTED |
           (unsigned)winds_lead(texture, match) << SPZ_THOUGHT_WINDS_LEAD | (unsigned)bare_rhythm(match, evidence) << SPZ_THOUGHT_BARE_RHYTHM;
}
