#include "analysis/melody/texture.h"

static void add_events(Texture *texture, size_t index)
{
    const Melody *melody = &texture->melodies[index];
    TextureCell *row = &texture->cells[index];
    size_t step = texture->melody_count;
    for (size_t c = 0; c < texture->cell_count; c++)
        row[c * step].top = -1;
    for (size_t i = 0; i < melody->count; i++) {
        const NoteEvent *event = &melody->events[i];
        size_t first = texture_cell_at(texture, event->onset), last = texture_cell_at(texture, event->end - 1);
        TextureCell *begins = &row[first * step];
        if (begins->onsets < UINT8_MAX)
            begins->onsets++;
        if (!(event->flags & (EVENT_REPEATED | EVENT_TREMOLO)) && begins->moves < UINT8_MAX)
            begins->moves++;
        for (size_t c = first; c <= last; c++)
            if (event->midi > row[c * step].top)
                row[c * step].top = event->midi;
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

/* What moves in a cell outside melody and company: the most notes that one has, and the highest pitch, -1 for none. */
typedef struct Others {
    unsigned most;
    int16_t top;
} Others;

static Others others_in(const Texture *texture, const TextureCell *cells, size_t melody, uint64_t company)
{
    Others others = {0, -1};
    for (size_t t = 0; t < texture->melody_count; t++) {
        if (cells[t].moves == 0 || t == melody || in_set(company, t))
            continue;
        if (cells[t].moves > others.most)
            others.most = cells[t].moves;
        if (cells[t].top > others.top)
            others.top = cells[t].top;
    }
    return others;
}

Foreground texture_foreground(const Texture *texture, size_t melody, uint64_t company, Ticks from, Ticks to)
{
    unsigned own = 0, busiest = 0, above = 0, on_top = 0, wind_above = 0;
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1);
    for (size_t c = first; c <= last; c++) {
        const TextureCell *cells = &texture->cells[c * texture->melody_count], *mine = &cells[melody];
        Others others = others_in(texture, cells, melody, company);
        own += mine->moves;
        busiest += others.most;
        above += mine->top >= others.top;
        on_top += mine->top >= 0 && mine->top >= others.top && mine->top >= texture->wind_top[c];
        wind_above += texture->wind_top[c] > mine->top;
    }
    double activity = own + busiest > 0 ? (double)own / (own + busiest) : 0, cells = (double)(last - first + 1);
    return (Foreground){.prominence = 0.7 * activity + 0.3 * above / cells, .on_top = on_top / cells, .wind_above = wind_above / cells};
}

double texture_busy_beside(const Texture *texture, uint64_t sides, Ticks from, Ticks to)
{
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1), begun = 0;
    for (size_t t = 0; t < texture->melody_count; t++)
        for (size_t c = first; c <= last && !in_set(sides, t); c++)
            begun += texture->cells[c * texture->melody_count + t].onsets;
    return (double)begun / (double)(last - first + 1);
}

double texture_wind_fullness(const Texture *texture, Ticks from, Ticks to)
{
    double sum = 0;
    size_t first = texture_cell_at(texture, from), last = texture_cell_at(texture, to - 1);
    for (size_t c = first; c <= last; c++)
        sum += texture->winds[c];
    return texture->winds_most ? sum / (double)(last - first + 1) / texture->winds_most : 0;
}

Ticks texture_bar_length(const Texture *texture, const NoteEvent *event)
{
    const Movement *m = texture->map->movement;
    Ticks nominal = m->bars[event->bar].nominal;
    return nominal > 0 ? nominal : 4 * m->per_crotchet;
}
