/* A library's answers as data. */
#include "pages/data/fields.h"
#include "pages/shelf_forms.h"
#include "support/numbers.h"
#include <string.h>

static const Field of_shelf[] = {
    {"works_found", IN_JSON, "works that answer, listed or not (`--first`)"},
};
const FieldTable shelf_fields = FIELD_TABLE("shelf", of_shelf);

static const Field of_work[] = {
    {"composer", IN_BOTH, "as the score has it; \"\""},
    {"work", IN_BOTH, "its name"},
    {"composed", IN_BOTH, "year, the earliest of its movements; null, empty"},
    {"work_seconds", IN_BOTH, "that it lasts by its tempo marks, movements without any left out"},
    {"lengths_unknown", IN_BOTH, "how many movements these are"},
    {"orchestras", IN_BOTH, "1 or 2"},
    {"violins_in_three", IN_BOTH, "whether some movement has them"},
    {"needs_vn1", IN_BOTH, "first violins, at least; 0: none"},
    {"needs_vn2", IN_BOTH, "second violins"},
    {"needs_va", IN_BOTH, "violas"},
    {"needs_vc", IN_BOTH, "cellos"},
    {"needs_db", IN_BOTH, "basses"},
    {"seating", IN_BOTH, "`fits` and `partners`: the arrangement in question; \"\""},
    {"work_points_given_up", IN_BOTH, "in it, by all its movements"},
    {"partner_points_given_up", IN_BOTH, "`partners`: in it, by the work that was asked about"},
};
const FieldTable shelf_work_fields = FIELD_TABLE("shelf work", of_work);

static const Field of_movement[] = {
    {"file", IN_BOTH, "where the score lies"},
    {"movement", IN_BOTH, "place in its file, from 1"},
    {"title", IN_BOTH, "the movement's"},
    {"movement_composed", IN_BOTH, "year; null, empty"},
    {"bars", IN_BOTH, "number of bars"},
    {"seconds", IN_BOTH, "that it lasts by its tempo marks; null, empty"},
    {"arrangement", IN_BOTH, "recommended; \"\""},
    {"confidence", IN_BOTH, "firm, leaning, open"},
    {"points_given_up", IN_BOTH, "in the seating in question"},
    {"weakened", IN_BOTH, "what that weakens: kind, sections, bars, ';' between; \"\""},
    {"passages_found", IN_BOTH, "how many meet what was asked"},
    {"passages", IN_CSV, "the strongest of them, as one text"},
};
const FieldTable shelf_movement_fields = FIELD_TABLE("shelf movement", of_movement);

static const Field of_passage[] = {
    {"kind", IN_JSON, "as in `passages`"},
    {"caller", IN_JSON, "section"},
    {"responder", IN_JSON, "section; \"\""},
    {"first_bar", IN_JSON, "as printed, a text"},
    {"last_bar", IN_JSON, "as printed, a text"},
    {"letter", IN_JSON, "rehearsal letter at or before it; \"\""},
    {"strength", IN_JSON, "0 to 1, cut to two decimals"},
    {"turns", IN_JSON, "how often the word passes, or lines"},
    {"interval", IN_JSON, "from call to answer, whatever the octave: unison, second .. octave; \"\""},
};
const FieldTable shelf_passage_fields = FIELD_TABLE("shelf passage", of_passage);
const Columns shelf_columns = {"library", IN_CSV, {&shelf_work_fields, &shelf_movement_fields}};

static void give_work(FactsOut *out, const spz_shelf_work *work)
{
    Facts facts = facts_of(out, &shelf_work_fields);
    fact_text(&facts, "composer", work->composer);
    fact_text(&facts, "work", work->name);
    fact_some(&facts, "composed", work->year != 0, work->year);
    fact_number(&facts, "work_seconds", work->seconds, 1);
    fact_integer(&facts, "lengths_unknown", (long long)work->lengths_unknown);
    fact_integer(&facts, "orchestras", work->orchestras);
    fact_flag(&facts, "violins_in_three", work->thirds);
    for (int i = 0; i < SPZ_SHELF_SECTIONS; i++)
        fact_integer(&facts, of_work[7 + i].name, work->needs[i]);
    fact_text(&facts, "seating", work->seating);
    fact_number(&facts, "work_points_given_up", work->points, 2);
    fact_number(&facts, "partner_points_given_up", work->partner, 2);
    facts_done(&facts);
}

static void gather_passages(Buffer *words, const spz_shelf_movement *movement)
{
    for (size_t i = 0; i < movement->passage_count; i++) {
        const spz_shelf_passage *p = &movement->passages[i];
        buffer_printf(words, "%s%s %s%s%s %s", i ? "; " : "", spz_kind_name(p->kind), p->sides[0], *p->sides[1] ? " " : "", p->sides[1], p->first_bar);
        if (strcmp(p->first_bar, p->last_bar) != 0)
            buffer_printf(words, "-%s", p->last_bar);
    }
}

static void give_movement(FactsOut *out, const spz_shelf_movement *movement)
{
    Facts facts = facts_of(out, &shelf_movement_fields);
    fact_text(&facts, "file", movement->file);
    fact_integer(&facts, "movement", (long long)movement->number);
    fact_text(&facts, "title", movement->title);
    fact_some(&facts, "movement_composed", movement->year != 0, movement->year);
    fact_integer(&facts, "bars", (long long)movement->bars);
    if (movement->seconds > 0)
        fact_number(&facts, "seconds", movement->seconds, 1);
    else
        fact_nothing(&facts, "seconds");
    fact_text(&facts, "arrangement", movement->arrangement);
    fact_text(&facts, "confidence", movement->confidence);
    fact_number(&facts, "points_given_up", movement->points, 2);
    fact_text(&facts, "weakened", movement->weakens);
    fact_integer(&facts, "passages_found", (long long)movement->found);
    gather_passages(&out->words, movement);
    fact_said(&facts, "passages", "");
    facts_done(&facts);
}

static void give_passage(FactsOut *out, const spz_shelf_passage *passage)
{
    Facts facts = facts_line(out, &shelf_passage_fields);
    fact_text(&facts, "kind", spz_kind_name(passage->kind));
    fact_text(&facts, "caller", passage->sides[0]);
    fact_text(&facts, "responder", passage->sides[1]);
    fact_text(&facts, "first_bar", passage->first_bar);
    fact_text(&facts, "last_bar", passage->last_bar);
    fact_text(&facts, "letter", passage->letter);
    fact_number(&facts, "strength", shown_strength(passage->strength), 2);
    fact_integer(&facts, "turns", passage->turns);
    fact_text(&facts, "interval", spz_interval_name(passage->interval));
    facts_close(&facts);
}

static void json_movement(FactsOut *facts, const spz_shelf_movement *movement)
{
    json_object(&facts->json);
    give_movement(facts, movement);
    json_put_array(&facts->json, "passages");
    for (size_t i = 0; i < movement->passage_count; i++)
        give_passage(facts, &movement->passages[i]);
    json_end(&facts->json);
    json_end(&facts->json);
}

void shelf_json(const spz_shelf *shelf, const spz_season_look *look, Buffer *out)
{
    FactsOut facts;
    (void)look;
    facts_begin(&facts, out);
    Facts answer = facts_object(&facts, &shelf_fields);
    fact_integer(&answer, "works_found", (long long)spz_shelf_total(shelf));
    facts_done(&answer);
    json_put_array(&facts.json, "works");
    for (size_t i = 0; i < spz_shelf_count(shelf); i++) {
        const spz_shelf_work *work = spz_shelf_at(shelf, i);
        json_object(&facts.json);
        give_work(&facts, work);
        json_put_array(&facts.json, "movements");
        for (size_t m = 0; m < work->movement_count; m++)
            json_movement(&facts, &work->movements[m]);
        json_end(&facts.json);
        json_end(&facts.json);
    }
    json_end(&facts.json);
    json_end(&facts.json);
    facts_finish(&facts);
}

void shelf_csv(const spz_shelf *shelf, const spz_season_look *look, Buffer *out)
{
    FactsOut facts;
    (void)look;
    facts_begin(&facts, out);
    facts_columns(&facts, &shelf_columns);
    for (size_t i = 0; i < spz_shelf_count(shelf); i++) {
        const spz_shelf_work *work = spz_shelf_at(shelf, i);
        for (size_t m = 0; m < work->movement_count; m++) {
            give_work(&facts, work);
            give_movement(&facts, &work->movements[m]);
            facts_end_row(&facts);
        }
    }
    facts_finish(&facts);
}
