/* changeover.h - what a change of seating takes: the house's rules for it, and what has to be carried from one layout to the other. */
#ifndef SEASON_PLANNING_CHANGEOVER_H
#define SEASON_PLANNING_CHANGEOVER_H
#include "season/planning/concert_choice.h"
#include "season/results/halls.h"

typedef struct ChangeRules { /* settings [concert] */
    bool allowed[SPZ_GAP_COUNT];
    double price[SPZ_GAP_COUNT];   /* points */
    double longest[SPZ_GAP_COUNT]; /* minutes; INFINITY before the concert */
    bool audience_waits[SPZ_GAP_COUNT];
    double minute;                 /* points for each minute that it waits */
    double crew, chair, stand;     /* people; seconds */
    double settling;               /* minutes */
    double near;                   /* metres */
} ChangeRules;

typedef struct Carried {
    int chairs, stands;
    double minutes;
} Carried;

void change_rules_read(const spz_settings *settings, ChangeRules *rules);
/* Chairs and stands of `to` that stand where none stood in `from`. As many desks as possible keep their place: a largest matching
 * between old and new places that are near each other (Kuhn, Naval Research Logistics Quarterly 2 (1955) 83, in its plain form for
 * yes and no). Stools of the basses are no chairs. */
Carried changeover_carried(const spz_plan *from, const spz_plan *to, const ChangeRules *rules);
/* What the change costs in the choice; CONCERT_BANNED where the house doesn't allow it or it takes too long. */
Hundredths changeover_price(const ChangeRules *rules, spz_gap gap, const Carried *carried);
/* All prices between the hall's seatings. */
void changeover_prices(const Hall *hall, const ChangeRules *rules, ConcertTask *task);
/* The sections that sit elsewhere afterwards; room for SPZ_SECTION_COUNT. Returns how many. */
size_t changeover_moves(const spz_plan *from, const spz_plan *to, spz_section_move *moves);
/* For each desk of `from` the desk of `to` that takes its place, -1 for none; room for DESKS_MOST. */
enum { DESKS_MOST = 200 };
void changeover_match(const spz_plan *from, const spz_plan *to, double near, int *kept_by);

/* Every desk of both layouts and what becomes of it. */
typedef struct DeskMoves {
    spz_desk_move *desks;  /* of `to`; room for spz_plan_desks(to) */
    spz_desk_move *struck; /* room for spz_plan_desks(from) */
    size_t struck_count;
    int struck_chairs, struck_stands, store_chairs, store_stands;
} DeskMoves;
void changeover_desks(const spz_plan *from, const spz_plan *to, const ChangeRules *rules, DeskMoves *moves);
#endif
