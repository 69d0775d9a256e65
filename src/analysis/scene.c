#include "analysis/scene.h"

static void add_tones(Scene *scene, size_t index)
{
    const Tune *tune = &scene->tunes[index];
    SceneCell *row = &scene->cells[index * scene->cell_count];
    for (size_t c = 0; c < scene->cell_count; c++)
        row[c].top = -1;
    for (size_t i = 0; i < tune->count; i++) {
        const Tone *tone = &tune->tones[i];
        size_t first = scene_cell_at(scene, tone->onset), last = scene_cell_at(scene, tone->end - 1);
        if (row[first].onsets < UINT8_MAX)
            row[first].onsets++;
        if (!(tone->flags & (TONE_REPEATED | TONE_TREMOLO)) && row[first].moves < UINT8_MAX)
            row[first].moves++;
        for (size_t c = first; c <= last; c++)
            if (tone->midi > row[c].top)
                row[c].top = tone->midi;
    }
}

static void add_winds(Scene *scene)
{
    const SectionMap *map = scene->map;
    for (size_t i = 0; i < map->other_count; i++) {
        const GroupSound *sound = &map->others[i];
        if (sound->duration <= 0)
            continue;
        size_t first = scene_cell_at(scene, sound->onset), last = scene_cell_at(scene, sound->onset + sound->duration - 1);
        for (size_t c = first; c <= last; c++)
            if (scene->winds[c] < UINT16_MAX)
                scene->winds[c]++;
    }
    for (size_t c = 0; c < scene->cell_count; c++)
        if (scene->winds[c] > scene->winds_most)
            scene->winds_most = scene->winds[c];
}

spz_status scene_make(const SectionMap *map, const Tune *tunes, Arena *arena, Scene *out)
{
    const Movement *movement = map->movement;
    Ticks cell = movement->per_crotchet / 2 > 0 ? movement->per_crotchet / 2 : 1;
    *out = (Scene){.map = map, .tunes = tunes, .tune_count = map->group_count, .cell = cell,
                   .cell_count = (size_t)(movement->length / cell) + 1};
    out->cells = arena_take(arena, out->tune_count * out->cell_count, sizeof *out->cells);
    out->winds = arena_take(arena, out->cell_count, sizeof *out->winds);
    if (!out->cells || !out->winds)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < out->tune_count; i++)
        add_tones(out, i);
    add_winds(out);
    return SPZ_OK;
}

static bool in_set(uint64_t tunes, size_t tune)
{
    return tune < 64 && (tunes >> tune & 1);
}

double scene_prominence(const Scene *scene, size_t tune, uint64_t company, Ticks from, Ticks to)
{
    double own = 0, busiest = 0, on_top = 0, cells = 0;
    size_t first = scene_cell_at(scene, from), last = scene_cell_at(scene, to - 1);
    for (size_t c = first; c <= last; c++) {
        const SceneCell *mine = &scene->cells[tune * scene->cell_count + c];
        unsigned most = 0;
        int16_t top = -1;
        for (size_t t = 0; t < scene->tune_count; t++) {
            const SceneCell *other = &scene->cells[t * scene->cell_count + c];
            if (t == tune || in_set(company, t))
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

double scene_busy_beside(const Scene *scene, uint64_t sides, Ticks from, Ticks to)
{
    double sum = 0;
    size_t first = scene_cell_at(scene, from), last = scene_cell_at(scene, to - 1);
    for (size_t t = 0; t < scene->tune_count; t++) {
        if (in_set(sides, t))
            continue;
        for (size_t c = first; c <= last; c++)
            sum += scene->cells[t * scene->cell_count + c].onsets;
    }
    return sum / (double)(last - first + 1);
}

double scene_wind_fullness(const Scene *scene, Ticks from, Ticks to)
{
    double sum = 0;
    size_t first = scene_cell_at(scene, from), last = scene_cell_at(scene, to - 1);
    for (size_t c = first; c <= last; c++)
        sum += scene->winds[c];
    return scene->winds_most ? sum / (double)(last - first + 1) / scene->winds_most : 0;
}
