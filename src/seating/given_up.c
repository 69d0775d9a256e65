#include "seating/given_up.h"
#include "model/durations.h"

static bool covers(const spz_loss *loss, size_t bar)
{
    bool found = loss->throughout;
    for (size_t i = 0; i < loss->basis.bar_count && !found; i++)
        found = loss->basis.bars[i].first <= bar && bar <= loss->basis.bars[i].last;
    return found;
}

static bool same_matter(const spz_loss *one, const spz_loss *other)
{
    return one->kind == other->kind && one->sides[0] == other->sides[0] && one->sides[1] == other->sides[1];
}

/* Whether the best arrangement weakens the same there. */
static bool weakened_anyway(const spz_ranked *best, const spz_loss *loss, size_t bar)
{
    for (size_t i = 0; i < best->loss_count; i++)
        if (same_matter(&best->losses[i], loss) && covers(&best->losses[i], bar))
            return true;
    return false;
}

static bool given_up(const spz_ranked *best, const spz_ranked *ranked, size_t bar)
{
    for (size_t i = 0; i < ranked->loss_count; i++)
        if (covers(&ranked->losses[i], bar) && !weakened_anyway(best, &ranked->losses[i], bar))
            return true;
    return false;
}

void given_up_measure(const Movement *movement, const spz_ranked *best, spz_ranked *ranked)
{
    ranked->lost_bars = 0;
    ranked->lost_seconds = 0;
    for (size_t bar = 0; best != ranked && bar < movement->bar_count; bar++)
        if (given_up(best, ranked, bar)) {
            ranked->lost_bars++;
            ranked->lost_seconds += (double)movement_times_played(movement, bar) * movement_bar_seconds(movement, bar);
        }
}
