/* A change of seating in a season's JSON: its moves, section by section, and its desks. */
#include "pages/data/changeover_forms.h"
#include "pages/data/fields.h"
#include "wording/seasons/season_words.h"

static const Field of_change[] = {
    {"where", IN_JSON, "at which moment of the concert"},
    {"after", IN_JSON, "title of the work before it; null"},
    {"before", IN_JSON, "title of the work after it"},
    {"before_movement", IN_JSON, "which of its movements, from 1"},
    {"from", IN_JSON, "arrangement"},
    {"to", IN_JSON, "arrangement"},
    {"minutes", IN_JSON, "that it takes"},
    {"price", IN_JSON, "by the settings"},
    {"chairs", IN_JSON, "to be carried"},
    {"stands", IN_JSON, "to be carried"},
    {"moves", IN_JSON, "section by section (below)"},
    {"desks", IN_JSON, "of the new layout, by name: which stay (below)"},
    {"struck", IN_JSON, "what goes to the store, the same fields: desks of the old layout, or a chair too many of one that stays or moves"},
    {"two_orchestras_before", IN_JSON, "whether two sit there before"},
    {"two_orchestras_after", IN_JSON, "whether two sit there after"},
    {"not_allowed", IN_JSON, "the house allows no change there, but the works ask for it"},
    {"remark", IN_JSON, "in words; \"\""},
};
const FieldTable change_fields = FIELD_TABLE("change", of_change);

static const Field of_move[] = {
    {"section", IN_JSON, "who moves"},
    {"players", IN_JSON, "how many"},
    {"from", IN_JSON, "place on the stage"},
    {"to", IN_JSON, "place on the stage"},
};
const FieldTable move_fields = FIELD_TABLE("move", of_move);

static const Field of_desk[] = {
    {"section", IN_JSON, "who sits there afterwards"},
    {"orchestra", IN_JSON, "1, 2; 0 where there is one"},
    {"desk", IN_JSON, "its number in the section, the front desk is 1"},
    {"players", IN_JSON, "2, or 1"},
    {"stays", IN_JSON, "whether a stand stood there before"},
    {"fate", IN_JSON, "stays, moved, carried on (from the store), struck (to the store)"},
    {"from_section", IN_JSON, "of the desk that stood at the old place; \"\" for none"},
    {"from_desk", IN_JSON, "its number; 0"},
    {"from_x", IN_JSON, "the old place, metres from the middle of the podium toward house right; null where it comes from the store"},
    {"from_y", IN_JSON, "away from the audience; null"},
    {"x", IN_JSON, "the new place; null where it goes to the store"},
    {"y", IN_JSON, "the same"},
    {"chairs", IN_JSON, "to be carried for it"},
    {"stands", IN_JSON, "to be carried for it"},
};
const FieldTable desk_fields = FIELD_TABLE("desk", of_desk);

static void give_moves(Facts *change_facts, const spz_changeover *change)
{
    fact_array(change_facts, "moves");
    for (size_t i = 0; i < change->move_count; i++) {
        Facts facts = facts_line(change_facts->out, &move_fields);
        fact_text(&facts, "section", spz_section_name(change->moves[i].section));
        fact_integer(&facts, "players", change->moves[i].players);
        fact_text(&facts, "from", spz_stage_place_name(change->moves[i].from));
        fact_text(&facts, "to", spz_stage_place_name(change->moves[i].to));
        facts_close(&facts);
    }
    facts_end_list(change_facts);
}

static void give_place(Facts *facts, const char *x, const char *y, bool there, double at_x, double at_y)
{
    if (there) {
        fact_number(facts, x, at_x, 2);
        fact_number(facts, y, at_y, 2);
    } else {
        fact_nothing(facts, x);
        fact_nothing(facts, y);
    }
}

static void give_desk(FactsOut *out, const spz_desk_move *desk)
{
    Facts facts = facts_line(out, &desk_fields);
    fact_text(&facts, "section", spz_section_name(desk->section));
    fact_integer(&facts, "orchestra", desk->orchestra);
    fact_integer(&facts, "desk", desk->number);
    fact_integer(&facts, "players", desk->players);
    fact_flag(&facts, "stays", desk->stays);
    fact_text(&facts, "fate", spz_desk_fate_name(desk->fate));
    fact_text(&facts, "from_section", spz_section_name(desk->from_section));
    fact_integer(&facts, "from_desk", desk->from_number);
    give_place(&facts, "from_x", "from_y", desk->fate != SPZ_DESK_CARRIED_ON, desk->from_x, desk->from_y);
    give_place(&facts, "x", "y", desk->fate != SPZ_DESK_STRUCK, desk->x, desk->y);
    fact_integer(&facts, "chairs", desk->chairs);
    fact_integer(&facts, "stands", desk->stands);
    facts_close(&facts);
}

static void give_desks(Facts *change_facts, const spz_changeover *change)
{
    fact_array(change_facts, "desks");
    for (int i = 0; i < change->desks; i++)
        give_desk(change_facts->out, &change->desk_moves[i]);
    facts_end_list(change_facts);
    fact_array(change_facts, "struck");
    for (size_t i = 0; i < change->struck_count; i++)
        give_desk(change_facts->out, &change->struck[i]);
    facts_end_list(change_facts);
}

void give_change(FactsOut *out, const spz_changeover *change)
{
    Facts facts = facts_object(out, &change_fields);
    fact_text(&facts, "where", spz_gap_name(change->gap));
    fact_text(&facts, "after", change->after);
    fact_text(&facts, "before", change->before);
    fact_integer(&facts, "before_movement", (long long)change->movement + 1);
    fact_text(&facts, "from", change->from);
    fact_text(&facts, "to", change->to);
    fact_number(&facts, "minutes", change->minutes, 1);
    fact_number(&facts, "price", change->price, 2);
    fact_integer(&facts, "chairs", change->chairs);
    fact_integer(&facts, "stands", change->stands);
    give_moves(&facts, change);
    give_desks(&facts, change);
    fact_flag(&facts, "two_orchestras_before", change->two_before);
    fact_flag(&facts, "two_orchestras_after", change->two_after);
    fact_flag(&facts, "not_allowed", change->not_allowed);
    say_change_remark(&out->words, SPZ_ENGLISH, change);
    fact_said(&facts, "remark", "");
    facts_close(&facts);
}
