/* How long the music lasts by its tempo marks. */
#include "model/durations.h"

static const double usual_tempo = 120; /* crotchets a minute, where the score has no tempo mark at all; what MIDI files mean by none */

double movement_rate_at(const Movement *movement, Ticks when)
{
    double rate = movement_tempo_at(movement, when);
    if (rate <= 0 && movement->tempo_count)
        rate = movement->tempos[0].rate; /* before the first mark */
    return rate > 0 ? rate : usual_tempo;
}

double movement_seconds(const Movement *movement, Ticks from, Ticks to)
{
    double seconds = 0;
    size_t next = FIRST_FROM(movement->tempos, movement->tempo_count, from + 1);
    while (from < to) {
        Ticks until = next < movement->tempo_count && movement->tempos[next].onset < to ? movement->tempos[next].onset : to;
        double crotchets = (double)(until - from) / (double)movement->per_crotchet;
        seconds += crotchets * 60 / movement_rate_at(movement, from);
        from = until;
        next++;
    }
    return seconds;
}

double movement_bar_seconds(const Movement *movement, size_t bar)
{
    Ticks onset = movement->bars[bar].onset;
    return movement_seconds(movement, onset, onset + movement->bars[bar].length);
}

double movement_played_seconds(const Movement *movement)
{
    double seconds = 0;
    for (size_t i = 0; i < movement->played_count; i++)
        seconds += movement_bar_seconds(movement, (size_t)movement->played[i]);
    return seconds;
}

size_t movement_times_played(const Movement *movement, size_t bar)
{
    size_t times = 0;
    for (size_t i = 0; i < movement->played_count; i++)
        times += (size_t)movement->played[i] == bar;
    return times;
}
