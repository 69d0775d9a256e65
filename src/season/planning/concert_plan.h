/* concert_plan.h - one concert between its draft and its plan. */
#ifndef SEASON_PLANNING_CONCERT_PLAN_H
#define SEASON_PLANNING_CONCERT_PLAN_H
#include "season/planning/season_plan.h"

typedef struct PlanStep { /* where a step of the task comes from */
    size_t work, movement;        /* place in the work; 0 for a work without movements */
    const Job *job;               /* NULL for a work without movements */
    const MovementResult *result; /* likewise */
    size_t number;                /* in its file, from 1 */
    bool two_orchestras;          /* some movement of its work asks for two, which then sit so throughout */
    bool chamber;                 /* its work is played one player a part, on chairs of its own: whatever the sections sit in, it has its `own` seating */
    int own;                      /* of the hall's */
} PlanStep;

typedef struct ConcertPlan {
    spz_season *season;
    const ConcertDraft *draft;
    const Hall *hall;
    ChangeRules rules;
    ConcertTask task;
    ConcertStep *steps;
    PlanStep *sources;  /* one a step */
    WorkSteps *works;
    int *seatings;      /* chosen, one a step */
    ConcertChoice choice;
    bool possible;
    bool repeats; /* the stage stands as an earlier performance of the same programme left it */
} ConcertPlan;

enum { PLAN_WORKS_MOST = 200 };

/* Steps, losses and prices. What is wrong with a row is told and counted. */
spz_status plan_set_task(ConcertPlan *plan, const spz_sink *sink);
/* The movement in that seating; NULL where it was not judged there. */
const SeatingResult *plan_seat(const MovementResult *movement, const char *name);
/* A movement, and the change before a step from seating `before`, in this row of seatings. */
void plan_tell_movement(const ConcertPlan *plan, const int *seatings, size_t step, spz_planned_movement *out);
spz_status plan_tell_change(const ConcertPlan *plan, const int *seatings, size_t step, int before, spz_changeover *out);
/* The plans that were not taken. */
spz_status plan_alternatives(ConcertPlan *plan, spz_planned_concert *out);
/* Layout before the step, and in it. */
const spz_plan *plan_layout_before(const ConcertPlan *plan, const int *seatings, size_t step);
const spz_plan *plan_layout(const ConcertPlan *plan, const int *seatings, size_t step);
/* Seating before the step: of the step before it, or the house's usual one; -1 for an empty stage. */
int plan_seating_before(const ConcertPlan *plan, const int *seatings, size_t step);
#endif
