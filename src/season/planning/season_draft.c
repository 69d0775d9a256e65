/* From the rows of the table to what has to be read: the hall of each concert, the scores of each work. */
#include "season/planning/season_plan.h"
#include "season/table/score_cells.h"
#include <stdlib.h>
#include <string.h>

static int by_date(const void *a, const void *b)
{
    const ConcertDraft *left = a, *right = b;
    int order = date_compare(left->row->date, right->row->date);
    return order ? order : left->row->line < right->row->line ? -1 : left->row->line > right->row->line;
}

static spz_status add_jobs(spz_season *season, const Hall *hall, const FileList *files, WorkDraft *work)
{
    spz_status status = SPZ_OK;
    work->jobs = arena_take(&season->arena, files->count + 1, sizeof *work->jobs);
    if (!work->jobs)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i < files->count; i++) {
        status = jobs_add(&season->jobs, files->at[i], season->halls.folder, hall, work->row->year, &work->jobs[i]);
        work->job_count = i + 1;
    }
    return status;
}

static spz_status draft_work(spz_season *season, const Hall *hall, const TableWork *row, const spz_sink *sink, WorkDraft *work)
{
    FileList files = {NULL, 0, 0};
    ScoreSearch search = {&season->table, row->line, sink, 0};
    work->row = row;
    spz_status status = scores_find(&search, row->scores, season->halls.folder, &season->arena, &files);
    if (status == SPZ_OK && files.count == 0 && search.missing == 0) {
        table_tell(&season->table, sink, &(spz_table_note){.line = row->line, .fault = SPZ_FAULT_WORK_WITHOUT_SCORE, .name = row->title});
        search.missing++;
    }
    work->missing = search.missing;
    if (status == SPZ_OK && !hall->problem)
        status = add_jobs(season, hall, &files, work);
    array_free(&files);
    return status;
}

/* Once for each hall, at the first row that names it. */
static void tell_unknown(spz_season *season, const TableConcert *row, const Hall *hall, const spz_sink *sink)
{
    if (*hall->name && !*hall->file)
        table_tell(&season->table, sink, &(spz_table_note){.line = row->hall_line, .fault = SPZ_FAULT_HALL_WITHOUT_SETTINGS, .name = hall->name, .doubt = true});
}

static spz_status draft_concert(spz_season *season, const TableConcert *row, const spz_sink *sink, ConcertDraft *draft)
{
    draft->row = row;
    size_t halls = season->halls.list.count;
    draft->works = arena_take(&season->arena, row->works.count + 1, sizeof *draft->works);
    spz_status status = draft->works ? halls_find(&season->halls, row->hall, sink, &draft->hall) : SPZ_NO_MEMORY;
    if (status == SPZ_OK && season->halls.list.count > halls)
        tell_unknown(season, row, draft->hall, sink);
    for (size_t i = 0; status == SPZ_OK && i < row->works.count; i++)
        status = draft_work(season, draft->hall, &row->works.at[i], sink, &draft->works[i]);
    return status;
}

spz_status season_draft(spz_season *season, const spz_sink *sink)
{
    spz_status status = SPZ_OK;
    size_t count = season->table.concerts.count;
    season->drafts = arena_take(&season->arena, count + 1, sizeof *season->drafts);
    if (!season->drafts)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; status == SPZ_OK && i < count; i++)
        status = draft_concert(season, &season->table.concerts.at[i], sink, &season->drafts[i]);
    if (status == SPZ_OK && count)
        qsort(season->drafts, count, sizeof *season->drafts, by_date);
    return status;
}
