/* season_plan.h - a season while it is being planned: first drafts (which scores, which hall), then plans. */
#ifndef SEASON_PLANNING_SEASON_PLAN_H
#define SEASON_PLANNING_SEASON_PLAN_H
#include "season/planning/changeover.h"
#include "season/results/score_jobs.h"
#include "season/planning/work_orders.h"
#include "season/table/season_table.h"

typedef struct WorkDraft {
    const TableWork *row;
    size_t *jobs;        /* its scores, in order */
    size_t job_count;
    size_t missing;      /* scores named that aren't there */
} WorkDraft;

typedef struct ConcertDraft {
    const TableConcert *row;
    const Hall *hall;
    WorkDraft *works;    /* as many as the row has */
} ConcertDraft;

struct spz_season {
    Arena arena;
    SeasonTable table;
    Halls halls;
    Jobs jobs;
    Store *results;         /* NULL: none */
    Store *shelf;           /* for works by name; NULL: none, or not asked for yet */
    bool named;             /* of the options */
    const char *library;    /* of the options */
    spz_settings *defaults; /* where the caller gave none */
    ConcertDraft *drafts;   /* as many as the table has concerts, by date */
    ARRAY(spz_planned_concert) concerts;
};

/* From the table to drafts and jobs; what is wrong with a row is told with its line. */
spz_status season_draft(spz_season *season, const spz_sink *sink);
/* Everything but plans: settings, table, drafts, lines, and the scores read. */
spz_status season_prepare(const char *path, const spz_season_options *options, const spz_sink *sink, spz_season *season);
/* Plans one concert whose scores are read. */
spz_status season_plan_concert(spz_season *season, const ConcertDraft *draft, const spz_sink *sink, spz_planned_concert *out);
/* What the reader said about the scores, each once, in the order of the drafts. */
void season_tell(spz_season *season, const spz_sink *sink);
/* The lines of all scores read. */
void season_write_lines(const spz_season *season, Buffer *out);
void season_release(spz_season *season);
#endif
