#include "seating/verdict/given_up.h"
#include "model/durations.h"

/* The bars of a loss stand in order and apart. */
static bool covers(const spz_loss *loss, size_t bar)
{
    size_t low = 0, high = loss->basis.bar_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (loss->basis.bars[middle].last < bar)
            low = middle + 1;
        else
            high = middle;
    }
    return loss->throughout || (low < loss->basis.bar_count && loss->basis.bars[low].first <= bar);
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
        ranked->lost_bars += given_up(best, ranked, bar);
    for (size_t i = 0; ranked->lost_bars && i < movement->played_count; i++)
        if (given_up(best, ranked, (size_t)movement->played[i]))
            ranked->lost_seconds += movement_bar_seconds(movement, (size_t)movement->played[i]);
}
