/* The plan of a season as JSON. Fields once written stay; docs/season.md lists them. */
#include "writing/json.h"
#include "pages/data/seating_forms.h"
#include "pages/growing_report.h"
#include "pages/season_forms.h"
#include "support/path.h"
#include "wording/phrase.h"
#include "wording/season_words.h"
#include "wording/seating_words.h"

/* The text under way as a value; null where there is none. */
static void put_said(Json *json, const char *key, Buffer *said)
{
    json_put_text(json, key, said->length ? said->text : NULL);
    json->out->failed = json->out->failed || buffer_failed(said);
    buffer_free(said);
}

static void put_moves(Json *json, const spz_changeover *change)
{
    json_key(json, "moves");
    json_array(json);
    for (size_t i = 0; i < change->move_count; i++) {
        json_row(json);
        json_put_text(json, "section", spz_section_name(change->moves[i].section));
        json_put_integer(json, "players", change->moves[i].players);
        json_put_text(json, "from", spz_stage_place_name(change->moves[i].from));
        json_put_text(json, "to", spz_stage_place_name(change->moves[i].to));
        json_end(json);
    }
    json_end(json);
}

static void put_change(Json *json, const spz_changeover *change)
{
    json_object(json);
    json_put_text(json, "where", spz_gap_name(change->gap));
    json_put_text(json, "after", change->after);
    json_put_text(json, "before", change->before);
    json_put_integer(json, "before_movement", (long long)change->movement + 1);
    json_put_text(json, "from", change->from);
    json_put_text(json, "to", change->to);
    json_put_number(json, "minutes", change->minutes, 1);
    json_put_number(json, "price", change->price, 2);
    json_put_integer(json, "chairs", change->chairs);
    json_put_integer(json, "stands", change->stands);
    put_moves(json, change);
    json_put_flag(json, "two_orchestras_before", change->two_before);
    json_put_flag(json, "two_orchestras_after", change->two_after);
    json_put_flag(json, "not_allowed", change->not_allowed);
    Buffer remark;
    buffer_init(&remark);
    say_change_remark(&remark, SPZ_ENGLISH, change);
    json_put_text(json, "remark", remark.length ? remark.text : "");
    json->out->failed = json->out->failed || buffer_failed(&remark);
    buffer_free(&remark);
    json_end(json);
}

static void put_movement(Json *json, const spz_planned_movement *movement)
{
    json_object(json);
    json_put_text(json, "file", path_name(movement->file));
    json_put_integer(json, "movement", (long long)movement->number);
    json_put_text(json, "title", season_movement_title(movement));
    json_put_integer(json, "bars", (long long)movement->bars);
    json_put_flag(json, "judged", movement->judged);
    Buffer words;
    buffer_init(&words);
    say_statement(&words, SPZ_ENGLISH, movement->statement);
    put_said(json, "statement", &words);
    json_put_text(json, "confidence", spz_confidence_name(movement->statement.confidence));
    json_put_text(json, "best", movement->best);
    json_put_text(json, "seating", movement->seating);
    json_put_number(json, "points_given_up", movement->points, 2);
    buffer_init(&words);
    data_losses(&words, movement->losses, movement->loss_count);
    json_put_text(json, "weakened", words.length ? words.text : "");
    json->out->failed = json->out->failed || buffer_failed(&words);
    buffer_free(&words);
    json_put_losses(json, "losses", movement->losses, movement->loss_count, false);
    json_put_flag(json, "violins_in_three", movement->thirds);
    json_end(json);
}

static void put_work(Json *json, const spz_planned_work *work)
{
    json_object(json);
    json_put_text(json, "title", work->title);
    json_put_integer(json, "line", work->line);
    json_key(json, "composed");
    if (work->year)
        json_integer(json, work->year);
    else
        json_text(json, NULL);
    json_put_text(json, "seating", work->seating);
    Buffer order;
    buffer_init(&order);
    say_order(&order, SPZ_ENGLISH, work->order);
    put_said(json, "order", &order);
    json_put_flag(json, "two_orchestras", work->two_orchestras);
    json_put_text(json, "fixed", work->fixed);
    json_put_flag(json, "interval_after", work->interval_after);
    json_put_text(json, "note", work->note);
    Buffer problem;
    buffer_init(&problem);
    say_work_problem(&problem, SPZ_ENGLISH, work);
    put_said(json, "problem", &problem);
    json_put_integer(json, "scores_missing", (long long)work->scores_missing);
    json_put_number(json, "points_given_up", work->points, 2);
    json_key(json, "movements");
    json_array(json);
    for (size_t i = 0; i < work->movement_count; i++)
        put_movement(json, &work->movements[i]);
    json_end(json);
    json_end(json);
}

static void put_other_change(Json *json, const spz_other_change *change)
{
    json_row(json);
    json_put_text(json, "where", spz_gap_name(change->gap));
    json_put_text(json, "after", change->after);
    json_put_text(json, "before", change->before);
    json_put_integer(json, "before_movement", (long long)change->movement + 1);
    json_put_text(json, "to", change->to);
    json_put_number(json, "minutes", change->minutes, 1);
    json_put_number(json, "price", change->price, 2);
    json_put_flag(json, "allowed", change->allowed);
    json_end(json);
}

static void put_other(Json *json, const char *key, const spz_other_plan *other)
{
    json_key(json, key);
    if (!other->possible) {
        json_text(json, NULL);
        return;
    }
    json_object(json);
    Buffer words;
    buffer_init(&words);
    say_other_plan(&words, SPZ_ENGLISH, other);
    put_said(json, "words", &words);
    json_put_integer(json, "changes", other->changes);
    json_put_number(json, "points_given_up", other->points, 2);
    json_put_number(json, "price", other->price, 2);
    json_put_text(json, "seating", other->seating);
    json_key(json, "list");
    json_array(json);
    for (size_t i = 0; i < other->list_count; i++)
        put_other_change(json, &other->list[i]);
    json_end(json);
    json_key(json, "order");
    json_list(json);
    for (size_t i = 0; i < other->order_count; i++)
        json_text(json, other->order[i]);
    json_end(json);
    json_end(json);
}

static void put_changes(Json *json, const spz_planned_concert *concert)
{
    json_key(json, "set_up");
    if (concert->setup)
        put_change(json, concert->setup);
    else
        json_text(json, NULL);
    json_key(json, "changes");
    json_array(json);
    for (size_t i = 0; i < concert->change_count; i++)
        put_change(json, &concert->changes[i]);
    json_end(json);
}

static void put_plan(Json *json, const spz_planned_concert *concert)
{
    json_key(json, "works");
    json_array(json);
    for (size_t i = 0; i < concert->work_count; i++)
        put_work(json, &concert->works[i]);
    json_end(json);
    put_changes(json, concert);
    json_put_number(json, "points_given_up", concert->points, 2);
    json_put_number(json, "price", concert->price, 2);
    json_put_number(json, "minutes", concert->minutes, 1);
    put_other(json, "without_change", &concert->unchanged);
    put_other(json, "one_more_change", &concert->one_more);
    put_other(json, "two_more_changes", &concert->two_more);
    put_other(json, "other_order", &concert->other_order);
}

static void put_concert(Json *json, const spz_planned_concert *concert)
{
    Buffer date, problem;
    buffer_init(&date);
    buffer_init(&problem);
    say_iso_date(&date, concert);
    say_concert_problem(&problem, SPZ_ENGLISH, concert);
    json_object(json);
    json_put_text(json, "concert", concert->name);
    put_said(json, "date", &date);
    json_put_text(json, "hall", concert->hall);
    json_put_text(json, "hall_settings", path_name(concert->hall_settings));
    put_said(json, "problem", &problem);
    put_plan(json, concert);
    json_end(json);
}

static void put_totals(Json *json, const spz_season_totals *totals)
{
    json_key(json, "totals");
    json_object(json);
    json_put_integer(json, "concerts", (long long)totals->concerts);
    json_put_integer(json, "planned", (long long)totals->planned);
    json_put_integer(json, "works", (long long)totals->works);
    json_put_integer(json, "movements", (long long)totals->movements);
    json_put_integer(json, "bars", (long long)totals->bars);
    json_put_integer(json, "changes", totals->changes);
    json_put_integer(json, "chairs", totals->chairs);
    json_put_integer(json, "stands", totals->stands);
    json_put_number(json, "minutes", totals->minutes, 1);
    json_put_number(json, "points_given_up", totals->points, 2);
    json_put_number(json, "price", totals->price, 2);
    json_put_number(json, "points_given_up_without_change", totals->unchanged_points, 2);
    json_put_integer(json, "problems", (long long)totals->problems);
    json_end(json);
}

void season_json(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    Json json;
    spz_season_totals totals = spz_season_total(season);
    (void)look;
    json_begin(&json, out);
    json_object(&json);
    json_key(&json, "concerts");
    json_array(&json);
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_concert(&json, spz_season_concert(season, i));
    json_end(&json);
    put_totals(&json, &totals);
    json_put_text(&json, "cautions", report_cautions(SPZ_ENGLISH));
    json_end(&json);
    json_finish(&json);
}
