#include "seating/evidence/comparison.h"
#include "seating/stage/seating_names.h"
#include "support/message.h"
#include <math.h>

/* An error at the line that says it. */
static spz_message place_of_rule(const spz_settings *settings, const char *name)
{
    spz_message place = {.severity = SPZ_ERROR};
    place.file = spz_settings_place(settings, name, &place.line);
    return place;
}

/* What a list of the house's rules means; false, told to the sink, where one of its names means nothing. */
static bool read_list(const spz_settings *settings, const ArrangementList *list, const char *key, const char *what, const spz_sink *sink, uint32_t *meant)
{
    const char *text = spz_settings_text(settings, key);
    spz_message place = place_of_rule(settings, key);
    place.text = what;
    *meant = arrangements_meant(list, text);
    if (*text && !*meant)
        arrangements_refuse(list, text, &place, sink);
    return !*text || *meant;
}

static spz_status read_names(const spz_settings *settings, Comparison *out, const spz_sink *sink)
{
    uint32_t forbidden;
    size_t allowed = 0;
    spz_message place = place_of_rule(settings, "house.usual");
    place.text = "[house] usual: ";
    const Arrangement *usual = arrangements_choose(&out->list, out->rules.usual, &place, sink);
    if (!usual || !read_list(settings, &out->list, "house.preferred", "[house] preferred: ", sink, &out->preferred) || !read_list(settings, &out->list, "house.forbidden", "[house] forbidden: ", sink, &forbidden))
        return SPZ_BAD_SETTINGS;
    out->usual = (size_t)(usual - out->list.at);
    for (size_t i = 0; i < out->list.count; i++) {
        out->allowed[i] = !(forbidden & 1u << i);
        allowed += out->allowed[i];
    }
    if (allowed)
        return SPZ_OK;
    place = place_of_rule(settings, "house.forbidden");
    message_send(sink, &place, "[house] forbids every arrangement");
    return SPZ_BAD_SETTINGS;
}

spz_status comparison_set(const spz_settings *settings, bool thirds, bool two_orchestras, bool singles, const spz_sink *sink, Arena *arena,
                          Comparison *out)
{
    *out = (Comparison){0};
    rules_read(settings, &out->rules);
    out->rules.two_orchestras = two_orchestras;
    if (thirds)
        rules_split_violins(&out->rules);
    else
        out->rules.players[SPZ_VN3] = 0;
    if (singles)
        rules_seat_singles(&out->rules);
    spz_status status = arrangements_list(settings, sink, arena, &out->list);
    if (status != SPZ_OK)
        return status;
    out->layouts = arena_take(arena, out->list.count, sizeof *out->layouts);
    out->seen = arena_take(arena, out->list.count, sizeof *out->seen);
    if (!out->layouts || !out->seen)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < out->list.count; i++) {
        if (thirds)
            arrangement_add_thirds(&out->list.at[i]);
        layout_make(&out->list.at[i], &out->rules, &out->layouts[i]);
    }
    return read_names(settings, out, sink);
}

PairView comparison_pair(const Comparison *comparison, size_t arrangement, spz_section a, spz_section b)
{
    SeenPair *seen = &comparison->seen[arrangement][a][b];
    if (!seen->known)
        *seen = (SeenPair){true, geometry_pair(&comparison->layouts[arrangement], &comparison->rules, a, b)};
    return seen->view;
}

PairView comparison_usual_pair(const Comparison *comparison, spz_section a, spz_section b)
{
    PairView usual = {0};
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++) {
        PairView view = comparison_pair(comparison, i, a, b);
        usual.widths += view.widths / STANDARD_ARRANGEMENTS;
        usual.angle += view.angle / STANDARD_ARRANGEMENTS;
        usual.delay += view.delay / STANDARD_ARRANGEMENTS;
    }
    return usual;
}

/* Of the four standard arrangements. */
static double widest_usual(const Comparison *comparison, spz_section a, spz_section b)
{
    double widest = 0;
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++)
        widest = fmax(widest, comparison_pair(comparison, i, a, b).widths);
    return widest;
}

double comparison_felt_widths(const Comparison *comparison, size_t arrangement, spz_section a, spz_section b)
{
    double widths = comparison_pair(comparison, arrangement, a, b).widths;
    if (arrangement < STANDARD_ARRANGEMENTS)
        return widths;
    return fmin(widths, fmax(widest_usual(comparison, a, b), widest_usual(comparison, SPZ_VN1, SPZ_VN2)));
}

double comparison_usual_centrality(const Comparison *comparison)
{
    double usual = 0;
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++)
        usual += geometry_bass_centrality(&comparison->layouts[i]) / STANDARD_ARRANGEMENTS;
    return usual;
}

double comparison_usual_openness(const Comparison *comparison, spz_section section)
{
    double usual = 0;
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++)
        usual += geometry_openness(&comparison->layouts[i], section) / STANDARD_ARRANGEMENTS;
    return usual;
}
