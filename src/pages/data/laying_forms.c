/* The laying table as comma-separated values: a row for every place. docs/output.md lists the columns from the table below. */
#include "pages/data/fields.h"
#include "pages/laying_forms.h"
#include "writing/document.h"
#include <math.h>
#include <stdio.h>

static const Field of_laid[] = {
    {"what", IN_CSV, "podium, piano, soloist, desk (of strings), player (of others), aisle (between two sections)"},
    {"who", IN_CSV, "section or instrument; of an aisle the two sections"},
    {"orchestra", IN_CSV, "1 or 2 where there are two; else empty"},
    {"number", IN_CSV, "of the desk in its section, of the player in the instrument"},
    {"players", IN_CSV, "who sit there"},
    {"x", IN_CSV, "metres from the middle of the podium toward house right"},
    {"y", IN_CSV, "metres away from the audience"},
    {"height", IN_CSV, "metres above the stage floor"},
    {"radius", IN_CSV, "metres from the middle of the podium"},
    {"angle", IN_CSV, "degrees from straight away from the audience, toward house right positive"},
    {"seat", IN_CSV, "chair or stool; empty where there is neither"},
    {"outside_x", IN_CSV, "of the outside seat, nearer the audience"},
    {"outside_y", IN_CSV, "the same"},
    {"inside_x", IN_CSV, "of the inside seat"},
    {"inside_y", IN_CSV, "the same"},
    {"stand_x", IN_CSV, "of the stand's middle"},
    {"stand_y", IN_CSV, "the same"},
    {"chairs", IN_CSV, "how many"},
    {"stools", IN_CSV, "how many"},
    {"stands", IN_CSV, "how many"},
    {"lights", IN_CSV, "how many"},
    {"end_x", IN_CSV, "of an aisle, which begins at x and y by the front desks: its end behind the last row; else empty"},
    {"end_y", IN_CSV, "the same"},
    {"clear", IN_CSV, "of an aisle: metres between the chairs at its two sides where it is narrowest; else empty"},
};
const FieldTable laid_fields = FIELD_TABLE("laid", of_laid);
const Columns laying_columns = {"laying", IN_CSV, {&laid_fields}};

static void give_spot(Facts *facts, const char *x, const char *y, const spz_spot *spot, bool there)
{
    if (there) {
        fact_number(facts, x, spot->x, 2);
        fact_number(facts, y, spot->y, 2);
    } else {
        fact_nothing(facts, x);
        fact_nothing(facts, y);
    }
}

static const char *who_of(const spz_laid *laid)
{
    if (laid->kind == SPZ_LAID_PLAYER)
        return spz_instrument_name(laid->instrument);
    return laid->kind == SPZ_LAID_DESK || laid->kind == SPZ_LAID_SOLOIST ? spz_section_name(laid->section) : "";
}

static void give_laid(FactsOut *out, const spz_laid *laid)
{
    Facts facts = facts_of(out, &laid_fields);
    int seats = laid->chairs + laid->stools;
    fact_text(&facts, "what", spz_laid_name(laid->kind));
    fact_text(&facts, "who", who_of(laid));
    fact_some(&facts, "orchestra", laid->orchestra > 0, laid->orchestra);
    fact_some(&facts, "number", laid->number > 0, laid->number);
    fact_integer(&facts, "players", laid->players);
    fact_number(&facts, "x", laid->x, 2);
    fact_number(&facts, "y", laid->y, 2);
    fact_number(&facts, "height", laid->z, 2);
    fact_number(&facts, "radius", laid->radius, 2);
    fact_number(&facts, "angle", laid->angle, 1);
    fact_text(&facts, "seat", laid->chairs ? "chair" : laid->stools ? "stool" : "");
    give_spot(&facts, "outside_x", "outside_y", &laid->seats[0], seats > 0);
    give_spot(&facts, "inside_x", "inside_y", &laid->seats[1], seats > 1);
    give_spot(&facts, "stand_x", "stand_y", &laid->stand, laid->stands > 0);
    fact_integer(&facts, "chairs", laid->chairs);
    fact_integer(&facts, "stools", laid->stools);
    fact_integer(&facts, "stands", laid->stands);
    fact_integer(&facts, "lights", laid->lights);
    fact_nothing(&facts, "end_x");
    fact_nothing(&facts, "end_y");
    fact_nothing(&facts, "clear");
    facts_done(&facts);
    facts_end_row(out);
}

static void give_way(FactsOut *out, const spz_way *way)
{
    static const char *const of_places[] = {"seat", "outside_x", "outside_y", "inside_x", "inside_y", "stand_x", "stand_y", "chairs", "stools", "stands", "lights"};
    Facts facts = facts_of(out, &laid_fields);
    char who[32];
    snprintf(who, sizeof who, "%s / %s", spz_section_name(way->pair[0]), spz_section_name(way->pair[1]));
    fact_text(&facts, "what", "aisle");
    fact_text(&facts, "who", who);
    fact_nothing(&facts, "orchestra");
    fact_nothing(&facts, "number");
    fact_nothing(&facts, "players");
    fact_number(&facts, "x", way->front.x, 2);
    fact_number(&facts, "y", way->front.y, 2);
    fact_nothing(&facts, "height");
    fact_number(&facts, "radius", hypot(way->front.x, way->front.y), 2);
    fact_number(&facts, "angle", atan2(way->front.x, way->front.y) * 180 / acos(-1), 1);
    for (size_t i = 0; i < sizeof of_places / sizeof *of_places; i++)
        fact_nothing(&facts, of_places[i]);
    fact_number(&facts, "end_x", way->back.x, 2);
    fact_number(&facts, "end_y", way->back.y, 2);
    fact_number(&facts, "clear", way->clear, 2);
    facts_done(&facts);
    facts_end_row(out);
}

spz_status laying_csv(const spz_laying *laying, spz_document **out)
{
    FactsOut facts;
    Buffer text;
    spz_way way;
    buffer_init(&text);
    facts_begin(&facts, &text);
    facts_columns(&facts, &laying_columns);
    for (size_t i = 0; i < spz_laying_count(laying); i++)
        give_laid(&facts, spz_laying_at(laying, i));
    for (size_t i = 0; spz_laying_way(laying, i, &way); i++)
        give_way(&facts, &way);
    facts_finish(&facts);
    return document_take(&text, out);
}
