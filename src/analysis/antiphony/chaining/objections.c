/* The limits were found by reading, beside the score, what the features before these judged wrongly; what each weighs is fitted as theirs is. */
#include "analysis/antiphony/chaining/objections.h"

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

static bool bare_rhythm(const Match *match, const Evidence *evidence)
{
    return evidence->at[F_RESTED] >= 0.9 && evidence->at[F_MARKED] >= 0.7 && evidence->at[F_VALUES] >= 1 && evidence->at[F_SAME] >= 0.65 &&
           match->alike < 0.6 * match->matched;
}

void objections(const Texture *texture, const Match *match, Evidence *evidence)
{
    const double all = 0.8, most = 0.6;
    uint64_t had_call = evidence->with[0].parallel | evidence->with[0].unison;
    evidence->at[F_PLAYED_TOO] = evidence->played_by_responder >= all;
    evidence->at[F_MOSTLY_PLAYED] = evidence->played_by_responder >= most && match->statements == 1 && !match->overlapping;
    evidence->at[F_HAD_CALL] = match->statements <= 2 && (evidence->with[1].unison & had_call);
    evidence->at[F_AFTERBEATS] = afterbeats(evidence);
    evidence->at[F_MURMUR] = murmurs(texture, match, evidence);
    evidence->at[F_INTERRUPTED] = interrupted(texture, match);
    evidence->at[F_BARE_RHYTHM] = bare_rhythm(match, evidence);
}
