#include "seating/evidence/comparison.h"
#include "support/message.h"
#include <math.h>
#include <string.h>

/* An error at the line that says it. */
static spz_message place_of_rule(const spz_settings *settings, const char *name)
{
    spz_message place = {.severity = SPZ_ERROR};
    place.file = spz_settings_place(settings, name, &place.line);
    return place;
}

static spz_status check_names(const spz_settings *settings, const Comparison *comparison, const spz_sink *sink)
{
    const char *lists[] = {comparison->rules.preferred, comparison->rules.forbidden, comparison->rules.usual};
    static const char *const keys[] = {"house.preferred", "house.forbidden", "house.usual"};
    spz_message place;
    size_t allowed = 0;
    for (size_t i = 0; i < comparison->list.count; i++)
        allowed += comparison->allowed[i];
    for (size_t k = 0; k < 3; k++) {
        size_t wanted = lists[k][0] != '\0', found = 0;
        for (const char *c = lists[k]; *c; c++)
            wanted += *c == '|';
        for (size_t i = 0; i < comparison->list.count; i++)
            found += rules_name_in(lists[k], comparison->list.at[i].name);
        if (found != wanted) {
            place = place_of_rule(settings, keys[k]);
            message_send(sink, &place, "[house] %s names an arrangement that there isn't: '%s'", keys[k] + strlen("house."), lists[k]);
            return SPZ_BAD_SETTINGS;
        }
    }
    if (allowed == 0) {
        place = place_of_rule(settings, "house.forbidden");
        message_send(sink, &place, "[house] forbids every arrangement");
        return SPZ_BAD_SETTINGS;
    }
    return SPZ_OK;
}

spz_status comparison_set(const spz_settings *settings, bool thirds, bool two_orchestras, const spz_sink *sink, Arena *arena,
                          Comparison *out)
{
    *out = (Comparison){0};
    rules_read(settings, &out->rules);
    out->rules.two_orchestras = two_orchestras;
    if (thirds)
        rules_split_violins(&out->rules);
    else
        out->rules.players[SPZ_VN3] = 0;
    spz_status status = arrangements_list(settings, sink, arena, &out->list);
    if (status != SPZ_OK)
        return status;
    out->layouts = arena_take(arena, out->list.count, sizeof *out->layouts);
    if (!out->layouts)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < out->list.count; i++) {
        if (thirds)
            arrangement_add_thirds(&out->list.at[i]);
        layout_make(&out->list.at[i], &out->rules, &out->layouts[i]);
        out->allowed[i] = !rules_name_in(out->rules.forbidden, out->list.at[i].name);
    }
    return check_names(settings, out, sink);
}

PairView comparison_usual_pair(const Comparison *comparison, spz_section a, spz_section b)
{
    PairView usual = {0};
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++) {
        PairView view = geometry_pair(&comparison->layouts[i], &comparison->rules, a, b);
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
        widest = fmax(widest, geometry_pair(&comparison->layouts[i], &comparison->rules, a, b).widths);
    return widest;
}

double comparison_felt_widths(const Comparison *comparison, size_t arrangement, spz_section a, spz_section b)
{
    double widths = geometry_pair(&comparison->layouts[arrangement], &comparison->rules, a, b).widths;
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
