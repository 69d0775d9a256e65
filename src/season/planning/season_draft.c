/* From the rows of the table to what has to be read: the hall of each concert, the scores of each work. */
#include "library/shelf_files.h"
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

/* 'library', 'library: NAME'; an empty cell where the caller wants all works by their names. NULL: the cell names files. */
static const char *name_on_shelf(const spz_season *season, const TableWork *row)
{
    const char *rest;
    if (!*row->scores)
        return season->named ? row->title : NULL;
    if (!cell_begins(row->scores, "library", &rest))
        return NULL;
    rest += strspn(rest, " ");
    if (*rest == ':')
        rest += 1 + strspn(rest + 1, " ");
    else if (*rest)
        return NULL;
    return *rest ? rest : row->title;
}

static spz_status take_from_shelf(spz_season *season, ScoreSearch *search, const char *name, FileList *files)
{
    ShelfFiles found = {.works = 0};
    spz_status status = SPZ_OK;
    if (!season->shelf && season->library)
        status = store_open(season->library, STORE_READ, search->sink, &season->shelf);
    if (status == SPZ_OK && season->shelf)
        status = shelf_files(season->shelf, name, search->sink, &season->arena, &found);
    for (size_t i = 0; status == SPZ_OK && i < found.paths.count; i++)
        if (!array_push(files, found.paths.at[i]))
            status = SPZ_NO_MEMORY;
    if (found.works != 1) {
        table_tell(&season->table, search->sink, &(spz_table_note){.line = search->line, .fault = found.works ? SPZ_FAULT_SEVERAL_ON_SHELF : SPZ_FAULT_NOT_ON_SHELF,
                                                                   .name = name, .other = found.names, .count = (long)found.works});
        search->missing++;
    }
    array_free(&found.paths);
    return status == SPZ_NO_MEMORY ? status : SPZ_OK;
}

static spz_status draft_work(spz_season *season, const Hall *hall, const TableWork *row, const spz_sink *sink, WorkDraft *work)
{
    FileList files = {NULL, 0, 0};
    ScoreSearch search = {&season->table, row->line, sink, 0};
    work->row = row;
    const char *name = name_on_shelf(season, row);
    spz_status status = name ? take_from_shelf(season, &search, name, &files)
                             : scores_find(&search, row->scores, season->halls.folder, &season->arena, &files);
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
