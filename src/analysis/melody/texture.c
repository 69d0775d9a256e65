#include "analysis/melody/texture.h"

static void add_events(Texture *texture, size_t index)
{
    const Melody *melody = &texture->melodies[index];
    TextureCell *row = &texture->cells[index * texture->cell_count];
    for (size_t c = 0; c < texture->cell_count; c++)
        row[c].top = -1;
    for (size_t i = 0; i < melody->count; i++) {
        const NoteEvent *event = &melody->events[i];
        size_t first = texture_cell_at(texture, event->onset), last = texture_cell_at(texture, event->end - 1);
        if (row[first].onsets < UINT8_MAX)
            row[first].onsets++;
        if (!(event->flags & (EVENT_REPEATED | EVENT_TREMOLO)) && row[first].moves < UINT8_MAX)
            row[first].moves++;
        for (size_t c = first; c <= last; c++)
            if (event->midi > row[c].top)
                row[c].top = event->midi;
    }
}

static bool is_wind(const SectionMap *map, const GroupSound *sound)
{
    spz_family family = section_map_family(map, sound->part);
    return family == SPZ_FAMILY_WOODWIND || family == SPZ_FAMILY_BRASS;
}

static void add_winds(Texture *texture)
{
    const SectionMap *map = texture->map;
    for (size_t c = 0; c < texture->cell_count; c++)
        texture->wind_top[c] = -1;
    for (size_t i = 0; i < map->other_count; i++) {
        const GroupSound *sound = &map->others[i];
        if (sound->duration <= 0)
            continue;
        size_t first = texture_cell_at(texture, sound->onset), last = texture_cell_at(texture, sound->onset + sound->duration - 1);
        for (size_t c = first; c <= last; c++)
            if (texture->winds[c] < UINT16_MAX)
                texture->winds[c]++;
        if (sound->note->midi > texture->wind_top[first] && is_wind(map, sound))
            texture->wind_top[first] = sound->note->midi;
    }
    for (size_t c = 0; c < texture->cell_count; c++)
        if (texture->winds[c] > texture->winds_most)
            texture->winds_most = texture->winds[c];
}

spz_status texture_make(const SectionMap *map, const Melody *melodies, Arena *arena, Texture *out)
{
    const Movement *movement = map->movement;
    Ticks cell = movement->per_crotchet / 2 > 0 ? movement->per_crotchet / 2 : 1;
    *out = (Texture){.map = map, .melodies = melodies, .melody_count = map->group_count, .cell = cell,
                   .cell_count = (size_t)(movement->length / cell) + 1};
    out->cells = arena_take(arena, out->melody_count * out->cell_count, sizeof *out->cells);
    out->winds = arena_take(arena, out->cell_count, sizeof *out->winds);
    out->wind_top = arena_take(arena, out->cell_count, sizeof *out->wind_top);
    if (!out->cells || !out->winds || !out->wind_top)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < out->melody_count; i++)
        add_events(out, i);
    add_winds(out);
    return SPZ_OK;
}

static bool in_set(uint64_t melodies, size_t melody)
{
    return melody < 64 && (melodies >> melody & 1);
}

double texture_prominence(const Texture *texture, size_t melody, uint64_t company, Ticks from, Ticks to)
{
    double own = 0, busiest = 0, on_top = 0, cells = 0;
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1);
    for (size_t c = first; c <= last; c++) {
        const TextureCell *mine = &texture->cells[melody * texture->cell_count + c];
        unsigned most = 0;
        int16_t top = -1;
        for (size_t t = 0; t < texture->melody_count; t++) {
            const TextureCell *other = &texture->cells[t * texture->cell_count + c];
            if (t == melody || in_set(company, t))
                continue;
            if (other->moves > most)
                most = other->moves;
            if (other->moves > 0 && other->top > top)
                top = other->top;
        }
        own += mine->moves;
        busiest += most;
        on_top += mine->top >= top;
        cells += 1;
    }
    double activity = own + busiest > 0 ? own / (own + busiest) : 0;
    return 0.7 * activity + 0.3 * on_top / cells;
}

/* The highest pitch that moves in a cell outside melody and company; -1 for none. */
static int16_t top_of_others(const Texture *texture, size_t melody, uint64_t company, size_t cell)
{
    int16_t top = texture->wind_top[cell];
    for (size_t t = 0; t < texture->melody_count; t++) {
        const TextureCell *other = &texture->cells[t * texture->cell_count + cell];
        if (t != melody && !in_set(company, t) && other->moves > 0 && other->top > top)
            top = other->top;
    }
    return top;
}

double texture_on_top(const Texture *texture, size_t melody, uint64_t company, Ticks from, Ticks to)
{
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1), on_top = 0;
    for (size_t c = first; c <= last; c++) {
        int16_t own = texture->cells[melody * texture->cell_count + c].top;
        on_top += own >= 0 && own >= top_of_others(texture, melody, company, c);
    }
    return (double)on_top / (double)(last - first + 1);
}

double texture_wind_above(const Texture *texture, size_t melody, Ticks from, Ticks to)
{
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1), above = 0;
    for (size_t c = first; c <= last; c++)
        above += texture->wind_top[c] > texture->cells[melody * texture->cell_count + c].top;
    return (double)above / (double)(last - first + 1);
}

double texture_busy_beside(const Texture *texture, uint64_t sides, Ticks from, Ticks to)
{
    double sum = 0;
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1);
    for (size_t t = 0; t < texture->melody_count; t++) {
        if (in_set(sides, t))
            continue;
        for (size_t c = first; c <= last; c++)
            sum += texture->cells[t * texture->cell_count + c].onsets;
    }
    return sum / (double)(last - first + 1);
}

double texture_wind_fullness(const Texture *texture, Ticks from, Ticks to)
{
    double sum = 0;
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1);
    for (size_t c = first; c <= last; c++)
        sum += texture->winds[c];
    return texture->winds_most ? sum / (double)(last - first + 1) / texture->winds_most : 0;
}
