/* The public face of a layout. */
#include "seating/stage/geometry.h"
#include "seating/stage/seating_names.h"
#include "sections/section_map.h"
#include "support/memory.h"
#include "support/message.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

struct spz_plan {
    Arena arena;
    Rules rules;
    Layout layout;
    char *hall;
};

typedef struct Wanted {
    const char *arrangement;
    bool thirds, two_orchestras, singles;
} Wanted;

#define WHOLE_AND_HUNDREDTHS(metres) (int)lround(100 * (metres)) / 100, (int)lround(100 * (metres)) % 100

/* '12-10-8-6-4' in the order of the score. */
static void strength_text(const int *players, char *text, size_t size)
{
    size_t used = 0;
    text[0] = '\0';
    for (int s = SPZ_VN1; s <= SPZ_DB; s++)
        if (players[s] > 0 && used < size)
            used += (size_t)snprintf(text + used, size - used, "%s%d", used ? "-" : "", players[s]);
}

/* What of the stage and the players would have to change, one thing at a time. */
static void tell_ways(const Arrangement *arrangement, const Rules *rules, char *text, size_t size)
{
    int players[SPZ_SECTION_COUNT];
    char fitting[64];
    double wide = layout_least_width(arrangement, rules), deep = layout_least_depth(arrangement, rules);
    size_t used = 0;
    text[0] = '\0';
    if (layout_would_fit(arrangement, rules, players)) {
        strength_text(players, fitting, sizeof fitting);
        used += (size_t)snprintf(text, size, "%s players would fit", fitting);
    }
    if (wide > 0 && used < size)
        used += (size_t)snprintf(text + used, size - used, "%sa stage %d.%02d m wide%s", used ? "; so would " : "", WHOLE_AND_HUNDREDTHS(wide),
                                 used ? "" : " would fit");
    if (deep > 0 && used < size)
        snprintf(text + used, size - used, "%s %d.%02d m deep%s", wide > 0 ? ", or one" : used ? "; so would a stage" : "a stage",
                 WHOLE_AND_HUNDREDTHS(deep), used ? "" : " would fit");
}

static spz_status refuse(const Arrangement *arrangement, const Rules *rules, const Layout *layout, const spz_sink *sink)
{
    char asked[64], ways[200];
    bool basses = layout->players[SPZ_DB] > 0 && !arrangement_has(arrangement, SPZ_DB);
    strength_text(layout->players, asked, sizeof asked);
    tell_ways(arrangement, rules, ways, sizeof ways);
    message_send(sink, &(spz_message){.severity = SPZ_ERROR}, "%s: %s players do not fit on a stage of %.2f m by %.2f m%s; %s", arrangement->name,
                 asked, rules->width, rules->depth, basses ? ", not even with the basses along the back" : "",
                 *ways ? ways : "no fewer would, nor does any larger stage alone");
    return SPZ_BAD_SETTINGS;
}

static spz_status choose(spz_plan *plan, const spz_settings *settings, const char *name, const spz_sink *sink, Arrangement *out)
{
    ArrangementList list;
    spz_status status = arrangements_list(settings, sink, &plan->arena, &list);
    if (status != SPZ_OK)
        return status;
    bool own = name && *name;
    spz_message place = {.severity = SPZ_ERROR};
    place.text = own ? NULL : "[house] usual: ";
    if (!own)
        place.file = spz_settings_place(settings, "house.usual", &place.line);
    const Arrangement *found = arrangements_choose(&list, own ? name : plan->rules.usual, &place, sink);
    if (found)
        *out = *found;
    return found ? SPZ_OK : own ? SPZ_BAD_ARGUMENT : SPZ_BAD_SETTINGS;
}

spz_status spz_stage_least(const spz_settings *settings, const char *arrangement, double *width, double *depth)
{
    spz_plan asked = {0};
    Arrangement found;
    arena_init(&asked.arena);
    rules_read(settings, &asked.rules);
    asked.rules.players[SPZ_VN3] = 0;
    spz_status status = choose(&asked, settings, arrangement, NULL, &found);
    *width = status == SPZ_OK ? layout_least_width(&found, &asked.rules) : 0;
    *depth = status == SPZ_OK ? layout_least_depth(&found, &asked.rules) : 0;
    arena_release(&asked.arena);
    return status;
}

static spz_status fill(spz_plan *plan, const spz_settings *settings, const Wanted *wanted, const spz_sink *sink)
{
    Arrangement arrangement;
    rules_read(settings, &plan->rules);
    spz_status status = choose(plan, settings, wanted->arrangement, sink, &arrangement);
    if (status != SPZ_OK)
        return status;
    plan->rules.two_orchestras = wanted->two_orchestras;
    if (wanted->thirds) {
        rules_split_violins(&plan->rules);
        arrangement_add_thirds(&arrangement);
    } else {
        plan->rules.players[SPZ_VN3] = 0;
    }
    if (wanted->singles)
        rules_seat_singles(&plan->rules);
    layout_make(&arrangement, &plan->rules, &plan->layout);
    if (!plan->layout.fits)
        return refuse(&arrangement, &plan->rules, &plan->layout, sink);
    plan->hall = arena_string(&plan->arena, plan->rules.hall);
    plan->layout.arrangement.name = arena_string(&plan->arena, arrangement.name);
    return plan->hall && plan->layout.arrangement.name ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status make(const spz_settings *settings, const Wanted *wanted, const spz_sink *sink, spz_plan **out)
{
    spz_settings *defaults = NULL;
    spz_plan *plan = memory_get(sizeof *plan);
    spz_status status = plan ? SPZ_OK : SPZ_NO_MEMORY;
    *out = NULL;
    if (plan) {
        memset(plan, 0, sizeof *plan);
        arena_init(&plan->arena);
    }
    if (status == SPZ_OK && !settings)
        status = spz_settings_new(&defaults);
    if (status == SPZ_OK)
        status = fill(plan, settings ? settings : defaults, wanted, sink);
    spz_settings_free(defaults);
    if (status != SPZ_OK) {
        spz_plan_free(plan);
        return status;
    }
    *out = plan;
    return SPZ_OK;
}

spz_status spz_stage_plan(const spz_settings *settings, const char *arrangement, bool thirds, const spz_sink *sink,
                          spz_plan **out)
{
    return make(settings, &(Wanted){arrangement, thirds, false, false}, sink, out);
}

spz_status spz_stage_plan_double(const spz_settings *settings, const char *arrangement, bool thirds, const spz_sink *sink,
                                 spz_plan **out)
{
    return make(settings, &(Wanted){arrangement, thirds, true, false}, sink, out);
}

spz_status spz_stage_plan_single(const spz_settings *settings, const char *arrangement, const spz_sink *sink, spz_plan **out)
{
    return make(settings, &(Wanted){arrangement, false, false, true}, sink, out);
}

void spz_plan_free(spz_plan *plan)
{
    if (!plan)
        return;
    arena_release(&plan->arena);
    memory_free(plan);
}

const char *spz_plan_arrangement(const spz_plan *plan)
{
    return plan->layout.arrangement.name;
}
spz_order spz_plan_order(const spz_plan *plan)
{
    return plan->layout.arrangement.order;
}
const char *spz_plan_hall(const spz_plan *plan)
{
    return plan->hall;
}
size_t spz_plan_desks(const spz_plan *plan)
{
    return plan->layout.desk_count;
}
double spz_plan_stage_width(const spz_plan *plan)
{
    return plan->rules.width;
}
double spz_plan_stage_depth(const spz_plan *plan)
{
    return plan->rules.depth;
}
double spz_plan_front(const spz_plan *plan)
{
    return plan->rules.front;
}
double spz_plan_aisle(const spz_plan *plan)
{
    return plan->rules.aisle;
}
double spz_plan_used_width(const spz_plan *plan)
{
    return plan->layout.used_width;
}
double spz_plan_used_depth(const spz_plan *plan)
{
    return plan->layout.used_depth;
}
bool spz_plan_is_cut(const spz_plan *plan)
{
    return plan->layout.cut;
}
bool spz_plan_basses_moved(const spz_plan *plan)
{
    return plan->layout.basses_moved;
}
double spz_plan_least_width(const spz_plan *plan)
{
    return layout_least_width(&plan->layout.arrangement, &plan->rules);
}
double spz_plan_least_depth(const spz_plan *plan)
{
    return layout_least_depth(&plan->layout.arrangement, &plan->rules);
}
size_t spz_plan_places(const spz_plan *plan)
{
    (void)plan;
    return SPZ_LISTENER_COUNT;
}

const spz_stage_desk *spz_plan_desk(const spz_plan *plan, size_t index)
{
    return index < plan->layout.desk_count ? &plan->layout.desks[index] : NULL;
}

static bool is_seated(spz_section section)
{
    return section > SPZ_NO_SECTION && section < SPZ_WINDS;
}

bool spz_plan_is_single(const spz_plan *plan)
{
    return plan->rules.singles;
}
bool spz_plan_is_double(const spz_plan *plan)
{
    return plan->layout.two_orchestras;
}

static bool is_in(spz_section section, spz_section set)
{
    bool violins = section_is_violin(section);
    return section == set || (set == SPZ_VIOLINS && violins) || (set == SPZ_STRINGS && !violins);
}

int spz_plan_players(const spz_plan *plan, spz_section section)
{
    int players = 0;
    for (size_t i = 0; i < plan->layout.desk_count; i++)
        players += is_in(plan->layout.desks[i].section, section) ? plan->layout.desks[i].players : 0;
    return players;
}

double spz_plan_desk_width(const spz_plan *plan, spz_section section)
{
    return layout_desk_width(&plan->layout, &plan->rules, section);
}

bool spz_plan_distance(const spz_plan *plan, spz_section a, spz_section b, spz_distance *out)
{
    return is_seated(a) && is_seated(b) && geometry_distance(&plan->layout, &plan->rules, a, b, out);
}

bool spz_plan_direction(const spz_plan *plan, spz_section section, int orchestra, size_t place, double *degrees)
{
    if (section < SPZ_VN1 || section > SPZ_DB || place >= SPZ_LISTENER_COUNT || plan->layout.spots[section].weight <= 0)
        return false;
    *degrees = geometry_direction(&plan->layout, &plan->rules, section, orchestra == 2, place);
    return true;
}

bool spz_plan_separation(const spz_plan *plan, spz_section a, spz_section b, size_t place, spz_separation *out)
{
    return is_seated(a) && is_seated(b) && geometry_hearing(&plan->layout, &plan->rules, a, b, place, out);
}
