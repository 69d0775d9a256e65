/* The public face of a season. */
#include "season/planning/season_plan.h"
#include "support/memory.h"
#include "support/path.h"
#include "support/message.h"
#include <stdint.h>
#include <string.h>

const char *spz_gap_name(spz_gap gap)
{
    static const char *const names[SPZ_GAP_COUNT] = {"before the concert", "at the interval", "between works", "between movements"};
    return (int)gap >= 0 && gap < SPZ_GAP_COUNT ? names[gap] : "";
}

const char *spz_stage_place_name(spz_stage_place place)
{
    static const char *const names[SPZ_PLACE_COUNT] = {"outer left", "left", "inner left", "middle left", "middle", "middle right",
                                                       "inner right", "right", "outer right", "back left", "back middle", "back right"};
    return (int)place >= 0 && place < SPZ_PLACE_COUNT ? names[place] : "";
}

const char *spz_usual_absence_name(spz_usual_absence absence)
{
    static const char *const names[SPZ_USUAL_ABSENCE_COUNT] = {"", "no such arrangement", "forbidden", "too large for the stage"};
    return (int)absence >= 0 && absence < SPZ_USUAL_ABSENCE_COUNT ? names[absence] : "";
}

/* A library that can't be used keeps nobody from planning: that is a doubt. */
static void doubt(void *context, const spz_message *message)
{
    spz_message doubtful = *message;
    doubtful.severity = SPZ_DOUBT;
    message_send(context, &doubtful, "%s", message->text);
}

/* Where no file can be made, as for a user without a home, nothing is kept, without a word; what is there and can't be used is told. */
static spz_status open_results(spz_season *season, const spz_season_options *options, const spz_sink *sink)
{
    const spz_sink doubts = {doubt, (void *)(uintptr_t)sink};
    spz_status status = SPZ_OK;
    if (options->library && !options->anew)
        status = store_open(options->library, STORE_WRITE, NULL, &season->results);
    if (status == SPZ_CANNOT_READ || status == SPZ_CANNOT_WRITE)
        status = store_open(options->library, STORE_WRITE, &doubts, &season->results);
    if (status == SPZ_NO_MEMORY || season->results || options->line_files == 0)
        return status == SPZ_NO_MEMORY ? status : SPZ_OK;
    return store_open(NULL, STORE_PASSING, sink, &season->results);
}

static spz_status read_lines(spz_season *season, const spz_season_options *options, const spz_sink *sink)
{
    spz_status status = SPZ_OK;
    for (size_t i = 0; status == SPZ_OK && i < options->line_files; i++)
        status = results_read_lines(season->results, options->lines[i], sink);
    return status;
}

/* The jobs of one share: every so-manieth, so that each share has scores of all sizes. */
static void keep_share(spz_season *season, const spz_season_options *options)
{
    for (size_t i = 0; options->shares > 0 && i < season->jobs.list.count; i++)
        season->jobs.list.at[i].skip = i % (size_t)options->shares != (size_t)options->share - 1;
}

spz_status season_prepare(const char *path, const spz_season_options *options, const spz_sink *sink, spz_season *season)
{
    spz_status status = SPZ_OK;
    memset(season, 0, sizeof *season);
    arena_init(&season->arena);
    arena_init(&season->halls.arena);
    arena_init(&season->jobs.arena);
    arena_init(&season->table.arena);
    if (options->jobs < 0 || options->shares < 0 || (options->shares > 0 && (options->share < 1 || options->share > options->shares)))
        return SPZ_BAD_ARGUMENT;
    if (!options->settings)
        status = spz_settings_new(&season->defaults);
    if (status == SPZ_OK)
        status = halls_begin(&season->halls, path, options->settings ? options->settings : season->defaults);
    if (status == SPZ_OK)
        status = table_read(path, &(TableOptions){(DateOrder)options->dates, options->sheet}, sink, &season->table);
    season->library = options->library;
    season->named = options->named;
    if (status == SPZ_OK)
        status = season_draft(season, sink);
    if (status == SPZ_OK)
        status = open_results(season, options, sink);
    if (status == SPZ_OK)
        status = read_lines(season, options, sink);
    keep_share(season, options);
    if (status == SPZ_OK)
        status = jobs_run(&season->jobs, options, season->results);
    if (season->results)
        store_tell(season->results, SPZ_DOUBT, sink);
    return status;
}

void season_release(spz_season *season)
{
    array_free(&season->concerts);
    jobs_free(&season->jobs);
    store_close(season->results);
    store_close(season->shelf);
    halls_free(&season->halls);
    table_free(&season->table);
    spz_settings_free(season->defaults);
    arena_release(&season->arena);
}

static bool is_told(const spz_season *season, const bool *told, size_t job)
{
    return told[job] || season->jobs.list.at[job].skip;
}

void season_tell(spz_season *season, const spz_sink *sink)
{
    bool *told = arena_take(&season->arena, season->jobs.list.count + 1, sizeof *told);
    for (size_t c = 0; told && c < season->table.concerts.count; c++)
        for (size_t w = 0; w < season->drafts[c].row->works.count; w++) {
            const WorkDraft *work = &season->drafts[c].works[w];
            for (size_t i = 0; i < work->job_count; i++) {
                const Job *job = &season->jobs.list.at[work->jobs[i]];
                if (is_told(season, told, work->jobs[i]))
                    continue;
                told[work->jobs[i]] = true;
                score_result_tell(job->result, job->path, &(spz_message){.file = season->table.path, .line = work->row->line}, sink);
                if (job->result->status != SPZ_OK) /* the reader has said why */
                    table_tell(&season->table, NULL, &(spz_table_note){.line = work->row->line, .fault = SPZ_FAULT_SCORE_UNREADABLE, .name = path_name(job->path),
                                                                      .other = spz_status_text(job->result->status), .count = job->result->status});
            }
        }
}

void season_write_lines(const spz_season *season, Buffer *out)
{
    for (size_t i = 0; i < season->jobs.list.count; i++) {
        const Job *job = &season->jobs.list.at[i];
        if (!job->skip)
            lines_write(out, &job->head, job->result);
    }
}

static spz_status plan_all(spz_season *season, const spz_sink *sink)
{
    spz_status status = SPZ_OK;
    season_tell(season, sink);
    for (size_t i = 0; status == SPZ_OK && i < season->table.concerts.count; i++) {
        spz_planned_concert concert;
        status = season_plan_concert(season, &season->drafts[i], sink, &concert);
        if (status == SPZ_OK && !array_push(&season->concerts, concert))
            status = SPZ_NO_MEMORY;
    }
    return status;
}

spz_status spz_season_plan(const char *path, const spz_season_options *options, const spz_sink *sink, spz_season **out)
{
    static const spz_season_options usual = {.jobs = 1};
    *out = NULL;
    spz_season *season = memory_get(sizeof *season);
    if (!season)
        return SPZ_NO_MEMORY;
    spz_season_options all = options ? *options : usual;
    all.share = all.shares = 0;
    spz_status status = season_prepare(path, &all, sink, season);
    if (status == SPZ_OK)
        status = plan_all(season, sink);
    table_sort_notes(&season->table);
    if (status == SPZ_OK && season->table.starved)
        status = SPZ_NO_MEMORY;
    if (status == SPZ_OK)
        *out = season;
    else
        spz_season_free(season);
    return status;
}

void spz_season_free(spz_season *season)
{
    if (!season)
        return;
    season_release(season);
    memory_free(season);
}

size_t spz_season_concerts(const spz_season *season)
{
    return season->concerts.count;
}

const spz_planned_concert *spz_season_concert(const spz_season *season, size_t index)
{
    return index < season->concerts.count ? &season->concerts.at[index] : NULL;
}

size_t spz_season_notes(const spz_season *season)
{
    return season->table.notes.count;
}

const spz_table_note *spz_season_note(const spz_season *season, size_t index)
{
    return index < season->table.notes.count ? &season->table.notes.at[index] : NULL;
}

static void add_concert(spz_season_totals *totals, const spz_planned_concert *concert)
{
    totals->planned += !concert->problem;
    totals->works += concert->work_count;
    for (size_t w = 0; w < concert->work_count; w++) {
        totals->movements += concert->works[w].movement_count;
        for (size_t m = 0; m < concert->works[w].movement_count; m++)
            totals->bars += concert->works[w].movements[m].bars;
    }
    totals->changes += (int)concert->change_count;
    for (size_t i = 0; i < concert->change_count; i++) {
        totals->chairs += concert->changes[i].chairs;
        totals->stands += concert->changes[i].stands;
    }
    totals->minutes += concert->minutes;
    totals->points += concert->points;
    totals->price += concert->price;
    totals->bound += !concert->problem && !concert->unchanged.possible;
    totals->unchanged_points += concert->unchanged.possible ? concert->unchanged.points : concert->points;
}

spz_season_totals spz_season_total(const spz_season *season)
{
    spz_season_totals totals = {.concerts = season->concerts.count, .problems = season->table.faults};
    for (size_t i = 0; i < season->concerts.count; i++)
        add_concert(&totals, &season->concerts.at[i]);
    return totals;
}
