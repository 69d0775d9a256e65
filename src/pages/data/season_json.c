/* The plan of a season as JSON. Fields once written stay; docs/season.md lists them from the tables below. */
#include "pages/data/changeover_forms.h"
#include "pages/data/fields.h"
#include "pages/data/seating_forms.h"
#include "pages/season_forms.h"
#include "support/path.h"
#include "wording/seasons/season_words.h"
#include "wording/seatings/seating_words.h"
#include <math.h>

static const Field of_concert[] = {
    {"concert", IN_JSON, "its name"},
    {"date", IN_JSON, "'2027-05-31'; null"},
    {"time", IN_JSON, "at which it begins, '19:30'; null"},
    {"rehearsals", IN_JSON, "'2027-05-29 10:00', each"},
    {"hall", IN_JSON, "as the table has it"},
    {"hall_settings", IN_JSON, "the hall's settings file, its name"},
    {"problem", IN_JSON, "why it was not planned; null"},
    {"usual_not_used", IN_JSON, "why the hall does without the house's usual seating: no such arrangement, forbidden, too large for the stage; null"},
    {"conflict", IN_JSON, "the two fixed seatings that can't both be had (below); null"},
    {"programme", IN_JSON, "titles of all its works, also where it was not planned"},
    {"lasts", IN_JSON, "minutes: works by their tempo marks, interval, changes, three for each work; null where the length of a work is not known"},
    {"works", IN_JSON, "in playing order (below)"},
    {"set_up", IN_JSON, "the change before the concert; null"},
    {"repeats", IN_JSON, "whether the concert before it in this hall had the same programme in the same seatings: it is set up once"},
    {"changes", IN_JSON, "all others (below)"},
    {"points_given_up", IN_JSON, "against the best seating of each movement"},
    {"price", IN_JSON, "what the plan costs by the settings"},
    {"minutes", IN_JSON, "of all changes"},
    {"without_change", IN_JSON, "the best plan without a change (below); null"},
    {"change_at_interval", IN_JSON, "the best plan with one change, at the interval, whatever that costs; null where there is none or it gains nothing"},
    {"one_more_change", IN_JSON, "the best plan with one more; null"},
    {"two_more_changes", IN_JSON, "the best plan with two more; null"},
    {"other_order", IN_JSON, "the best plan in another order of works; null"},
};
const FieldTable concert_fields = FIELD_TABLE("concert", of_concert);

static const Field of_work[] = {
    {"title", IN_JSON, "as the table has it"},
    {"line", IN_JSON, "of the table"},
    {"composed", IN_JSON, "year; null"},
    {"seating", IN_JSON, "the arrangement it is played in"},
    {"order", IN_JSON, "from house left to house right, in words; null"},
    {"two_orchestras", IN_JSON, "whether it has two"},
    {"chamber_music", IN_JSON, "whether it is played one player a part, on chairs of its own, which no change counts"},
    {"fixed", IN_JSON, "the arrangement that the table asks for; null"},
    {"interval_after", IN_JSON, "whether an interval follows"},
    {"soloist", IN_JSON, "as the table has it; x for a mere yes"},
    {"piano", IN_JSON, "the same"},
    {"podium", IN_JSON, "the same; \"\" for its usual place"},
    {"note", IN_JSON, "as the table has it"},
    {"problem", IN_JSON, "what stands in its way; null"},
    {"scores_missing", IN_JSON, "how many of its scores could not be read"},
    {"points_given_up", IN_JSON, "against the best seating of each movement"},
    {"movements", IN_JSON, "in playing order (below)"},
};
const FieldTable work_fields = FIELD_TABLE("work", of_work);

static const Field of_movement[] = {
    {"file", IN_JSON, "the score's file name"},
    {"movement", IN_JSON, "place in its file, from 1"},
    {"title", IN_JSON, "the movement's"},
    {"bars", IN_JSON, "number of bars"},
    {"judged", IN_JSON, "whether anything could be judged"},
    {"statement", IN_JSON, "what the score asks for, in one sentence"},
    {"confidence", IN_JSON, "firm, leaning, open"},
    {"year_judged", IN_JSON, "of composition, by the table or the score; null"},
    {"best", IN_JSON, "the arrangement that suits it best; null"},
    {"seating", IN_JSON, "the one it is played in"},
    {"points_given_up", IN_JSON, "between the two"},
    {"weakened", IN_JSON, "what that weakens, as one text"},
    {"losses", IN_JSON, "the same as facts, as in `seating`"},
    {"lost_bars", IN_JSON, "in which something is weakened that its best seating doesn't weaken"},
    {"lost_seconds", IN_JSON, "how long these sound by the tempo marks, repeats counted"},
    {"seconds", IN_JSON, "that the movement lasts, likewise"},
    {"violins_in_three", IN_JSON, "whether it has three violin parts"},
};
const FieldTable planned_fields = FIELD_TABLE("planned", of_movement);

static const Field of_other[] = {
    {"words", IN_JSON, "the plan in English"},
    {"changes", IN_JSON, "how many"},
    {"points_given_up", IN_JSON, "as of the concert"},
    {"price", IN_JSON, "as of the concert"},
    {"seating", IN_JSON, "one for the whole concert; null"},
    {"list", IN_JSON, "its changes (below)"},
    {"order", IN_JSON, "titles"},
    {"movements", IN_JSON, "without a change, and with one at the interval: what each movement gets and gives up, in playing order, as of a movement; else empty"},
    {"change", IN_JSON, "the one at the interval, as of a change; null"},
};
const FieldTable other_fields = FIELD_TABLE("other", of_other);

static const Field of_other_change[] = {
    {"where", IN_JSON, "at which moment"},
    {"after", IN_JSON, "title of the work before it; null"},
    {"before", IN_JSON, "title of the work after it"},
    {"before_movement", IN_JSON, "which of its movements, from 1"},
    {"to", IN_JSON, "arrangement"},
    {"minutes", IN_JSON, "that it takes"},
    {"price", IN_JSON, "by the settings"},
    {"allowed", IN_JSON, "whether the house allows it there"},
};
const FieldTable other_change_fields = FIELD_TABLE("other change", of_other_change);

static const Field of_total[] = {
    {"concerts", IN_JSON, "in the table"},
    {"planned", IN_JSON, "of these"},
    {"works", IN_JSON, "planned"},
    {"movements", IN_JSON, "read"},
    {"bars", IN_JSON, "read"},
    {"changes", IN_JSON, "of the season"},
    {"chairs", IN_JSON, "carried"},
    {"stands", IN_JSON, "carried"},
    {"minutes", IN_JSON, "of all changes"},
    {"points_given_up", IN_JSON, "by all movements"},
    {"price", IN_JSON, "of all plans"},
    {"points_given_up_without_change", IN_JSON, "had no concert a change"},
    {"problems", IN_JSON, "how many"},
};
const FieldTable total_fields = FIELD_TABLE("total", of_total);

static const Field of_note[] = {
    {"line", IN_JSON, "of the table"},
    {"fault", IN_JSON, "what is wrong, for programs; include/spezzato/status.h lists the names, with a hyphen for each _"},
    {"name", IN_JSON, "what stands there; null"},
    {"cause", IN_JSON, "the same as a sentence"},
};
const FieldTable season_note_fields = FIELD_TABLE("season note", of_note);

static const Field of_conflict[] = {
    {"line", IN_JSON, "of the first of the two rows; null where it is the house's usual seating"},
    {"work", IN_JSON, "its title; null"},
    {"fixed", IN_JSON, "its fixed seating; null"},
    {"other_line", IN_JSON, "of the second"},
    {"other_work", IN_JSON, "its title"},
    {"other_fixed", IN_JSON, "its fixed seating"},
    {"where", IN_JSON, "the best moment for a change between them"},
    {"minutes", IN_JSON, "that the change takes at least"},
    {"allowed", IN_JSON, "whether the house allows a change there"},
    {"longest", IN_JSON, "minutes that it gives there; null where it allows none"},
};
const FieldTable conflict_fields = FIELD_TABLE("conflict", of_conflict);

static void give_conflict(Facts *concert, const spz_conflict *conflict)
{
    if (!conflict) {
        fact_nothing(concert, "conflict");
        return;
    }
    fact_object(concert, "conflict");
    Facts facts = facts_object(concert->out, &conflict_fields);
    fact_some(&facts, "line", conflict->line > 0, conflict->line);
    fact_text(&facts, "work", conflict->work);
    fact_text(&facts, "fixed", conflict->fixed);
    fact_integer(&facts, "other_line", conflict->other_line);
    fact_text(&facts, "other_work", conflict->other_work);
    fact_text(&facts, "other_fixed", conflict->other_fixed);
    fact_text(&facts, "where", spz_gap_name(conflict->gap));
    fact_number(&facts, "minutes", conflict->minutes, 1);
    fact_flag(&facts, "allowed", conflict->allowed);
    fact_number(&facts, "longest", conflict->allowed ? conflict->longest : NAN, 1);
    facts_close(&facts);
}

/* What could not be used of the table, or the doubts. */
static void give_notes(FactsOut *out, const char *key, const spz_season *season, bool doubts)
{
    json_put_array(&out->json, key);
    for (size_t i = 0; i < spz_season_notes(season); i++) {
        const spz_table_note *note = spz_season_note(season, i);
        if (note->doubt != doubts)
            continue;
        Facts facts = facts_line(out, &season_note_fields);
        fact_integer(&facts, "line", note->line);
        fact_text(&facts, "fault", spz_fault_name(note->fault));
        fact_text(&facts, "name", *note->name ? note->name : NULL);
        say_table_note(&out->words, SPZ_ENGLISH, note);
        fact_said(&facts, "cause", NULL);
        facts_close(&facts);
    }
    json_end(&out->json);
}

static void give_planned(FactsOut *out, const spz_planned_movement *movement)
{
    Facts facts = facts_object(out, &planned_fields);
    fact_text(&facts, "file", path_name(movement->file));
    fact_integer(&facts, "movement", (long long)movement->number);
    fact_text(&facts, "title", season_movement_title(movement));
    fact_integer(&facts, "bars", (long long)movement->bars);
    fact_flag(&facts, "judged", movement->judged);
    say_statement(&out->words, SPZ_ENGLISH, movement->statement);
    fact_said(&facts, "statement", NULL);
    fact_text(&facts, "confidence", spz_confidence_name(movement->statement.confidence));
    fact_some(&facts, "year_judged", movement->year != 0, movement->year);
    fact_text(&facts, "best", movement->best);
    fact_text(&facts, "seating", movement->seating);
    fact_number(&facts, "points_given_up", movement->points, 2);
    data_losses(&out->words, movement->losses, movement->loss_count);
    fact_said(&facts, "weakened", "");
    give_losses(&facts, "losses", movement->losses, movement->loss_count, false);
    fact_integer(&facts, "lost_bars", (long long)movement->lost_bars);
    fact_number(&facts, "lost_seconds", movement->lost_seconds, 1);
    fact_number(&facts, "seconds", movement->seconds, 1);
    fact_flag(&facts, "violins_in_three", movement->thirds);
    facts_close(&facts);
}

static void give_work(FactsOut *out, const spz_planned_work *work)
{
    Facts facts = facts_object(out, &work_fields);
    fact_text(&facts, "title", work->title);
    fact_integer(&facts, "line", work->line);
    fact_some(&facts, "composed", work->year != 0, work->year);
    fact_text(&facts, "seating", work->seating);
    say_order(&out->words, SPZ_ENGLISH, work->order);
    fact_said(&facts, "order", NULL);
    fact_flag(&facts, "two_orchestras", work->two_orchestras);
    fact_flag(&facts, "chamber_music", work->chamber);
    fact_text(&facts, "fixed", work->fixed);
    fact_flag(&facts, "interval_after", work->interval_after);
    fact_text(&facts, "soloist", work->soloist);
    fact_text(&facts, "piano", work->piano);
    fact_text(&facts, "podium", work->podium);
    fact_text(&facts, "note", work->note);
    say_work_problem(&out->words, SPZ_ENGLISH, work);
    fact_said(&facts, "problem", NULL);
    fact_integer(&facts, "scores_missing", (long long)work->scores_missing);
    fact_number(&facts, "points_given_up", work->points, 2);
    fact_array(&facts, "movements");
    for (size_t i = 0; i < work->movement_count; i++)
        give_planned(out, &work->movements[i]);
    facts_end_list(&facts);
    facts_close(&facts);
}

static void give_other_change(FactsOut *out, const spz_other_change *change)
{
    Facts facts = facts_line(out, &other_change_fields);
    fact_text(&facts, "where", spz_gap_name(change->gap));
    fact_text(&facts, "after", change->after);
    fact_text(&facts, "before", change->before);
    fact_integer(&facts, "before_movement", (long long)change->movement + 1);
    fact_text(&facts, "to", change->to);
    fact_number(&facts, "minutes", change->minutes, 1);
    fact_number(&facts, "price", change->price, 2);
    fact_flag(&facts, "allowed", change->allowed);
    facts_close(&facts);
}

static void give_other_plan(FactsOut *out, const spz_other_plan *other)
{
    Facts facts = facts_object(out, &other_fields);
    say_other_plan(&out->words, SPZ_ENGLISH, other);
    fact_said(&facts, "words", NULL);
    fact_integer(&facts, "changes", other->changes);
    fact_number(&facts, "points_given_up", other->points, 2);
    fact_number(&facts, "price", other->price, 2);
    fact_text(&facts, "seating", other->seating);
    fact_array(&facts, "list");
    for (size_t i = 0; i < other->list_count; i++)
        give_other_change(out, &other->list[i]);
    facts_end_list(&facts);
    fact_list(&facts, "order");
    for (size_t i = 0; i < other->order_count; i++)
        json_text(&out->json, other->order[i]);
    facts_end_list(&facts);
    fact_array(&facts, "movements");
    for (size_t i = 0; i < other->movement_count; i++)
        give_planned(out, &other->movements[i]);
    facts_end_list(&facts);
    if (!other->change)
        fact_nothing(&facts, "change");
    else if (fact_object(&facts, "change"))
        give_change(out, other->change);
    facts_close(&facts);
}

static void give_other(Facts *concert, const char *name, const spz_other_plan *other)
{
    if (!other->possible)
        fact_nothing(concert, name);
    else if (fact_object(concert, name))
        give_other_plan(concert->out, other);
}

static void give_changes(Facts *facts, const spz_planned_concert *concert)
{
    if (!concert->setup)
        fact_nothing(facts, "set_up");
    else if (fact_object(facts, "set_up"))
        give_change(facts->out, concert->setup);
    fact_flag(facts, "repeats", concert->repeats);
    fact_array(facts, "changes");
    for (size_t i = 0; i < concert->change_count; i++)
        give_change(facts->out, &concert->changes[i]);
    facts_end_list(facts);
}

static void give_plan(Facts *facts, const spz_planned_concert *concert)
{
    fact_array(facts, "works");
    for (size_t i = 0; i < concert->work_count; i++)
        give_work(facts->out, &concert->works[i]);
    facts_end_list(facts);
    give_changes(facts, concert);
    fact_number(facts, "points_given_up", concert->points, 2);
    fact_number(facts, "price", concert->price, 2);
    fact_number(facts, "minutes", concert->minutes, 1);
    give_other(facts, "without_change", &concert->unchanged);
    give_other(facts, "change_at_interval", &concert->at_interval);
    give_other(facts, "one_more_change", &concert->one_more);
    give_other(facts, "two_more_changes", &concert->two_more);
    give_other(facts, "other_order", &concert->other_order);
}

static void give_rehearsals(Facts *facts, const spz_planned_concert *concert)
{
    Buffer *words = &facts->out->words;
    fact_list(facts, "rehearsals");
    for (size_t i = 0; i < concert->rehearsal_count; i++) {
        const spz_moment *when = &concert->rehearsals[i];
        buffer_printf(words, "%04d-%02d-%02d", when->year, when->month, when->day);
        if (when->time >= 0)
            buffer_printf(words, " %02d:%02d", when->time / 60, when->time % 60);
        json_text(&facts->out->json, buffer_text(words));
        buffer_clear(words);
    }
    facts_end_list(facts);
}

static void give_programme(Facts *facts, const spz_planned_concert *concert)
{
    fact_list(facts, "programme");
    for (size_t i = 0; i < concert->programme_count; i++)
        json_text(&facts->out->json, concert->programme[i]);
    facts_end_list(facts);
}

static void give_concert(FactsOut *out, const spz_planned_concert *concert)
{
    Facts facts = facts_object(out, &concert_fields);
    fact_text(&facts, "concert", concert->name);
    say_iso_date(&out->words, concert);
    fact_said(&facts, "date", NULL);
    if (concert->time >= 0)
        buffer_printf(&out->words, "%02d:%02d", concert->time / 60, concert->time % 60);
    fact_said(&facts, "time", NULL);
    give_rehearsals(&facts, concert);
    fact_text(&facts, "hall", concert->hall);
    fact_text(&facts, "hall_settings", path_name(concert->hall_settings));
    say_concert_problem(&out->words, SPZ_ENGLISH, concert);
    fact_said(&facts, "problem", NULL);
    fact_text(&facts, "usual_not_used", concert->usual_absence ? spz_usual_absence_name(concert->usual_absence) : NULL);
    give_conflict(&facts, concert->conflict);
    give_programme(&facts, concert);
    fact_number(&facts, "lasts", concert->lasts > 0 ? concert->lasts : NAN, 0);
    give_plan(&facts, concert);
    facts_close(&facts);
}

static void give_totals(FactsOut *out, const spz_season_totals *totals)
{
    Facts facts = facts_object(out, &total_fields);
    fact_integer(&facts, "concerts", (long long)totals->concerts);
    fact_integer(&facts, "planned", (long long)totals->planned);
    fact_integer(&facts, "works", (long long)totals->works);
    fact_integer(&facts, "movements", (long long)totals->movements);
    fact_integer(&facts, "bars", (long long)totals->bars);
    fact_integer(&facts, "changes", totals->changes);
    fact_integer(&facts, "chairs", totals->chairs);
    fact_integer(&facts, "stands", totals->stands);
    fact_number(&facts, "minutes", totals->minutes, 1);
    fact_number(&facts, "points_given_up", totals->points, 2);
    fact_number(&facts, "price", totals->price, 2);
    fact_number(&facts, "points_given_up_without_change", totals->unchanged_points, 2);
    fact_integer(&facts, "problems", (long long)totals->problems);
    facts_close(&facts);
}

void season_json(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    FactsOut facts;
    spz_season_totals totals = spz_season_total(season);
    (void)look;
    facts_begin(&facts, out);
    json_object(&facts.json);
    json_put_array(&facts.json, "concerts");
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        give_concert(&facts, spz_season_concert(season, i));
    json_end(&facts.json);
    json_key(&facts.json, "totals");
    give_totals(&facts, &totals);
    give_notes(&facts, "not_used", season, false);
    give_notes(&facts, "doubts", season, true);
    json_put_text(&facts.json, "cautions", report_cautions(SPZ_ENGLISH));
    json_end(&facts.json);
    facts_finish(&facts);
}
