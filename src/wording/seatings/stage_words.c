#include "wording/seatings/stage_words.h"
#include <math.h>

_Static_assert(PHRASE_LISTENER_RIGHT - PHRASE_LISTENER_FRONT == SPZ_RIGHT_SEATS - SPZ_FRONT_SEATS, "places in their order");
_Static_assert(PHRASE_STAGE_MARK_DB - PHRASE_STAGE_MARK_VN1 == SPZ_DB - SPZ_VN1, "sections in score order");

const char *words_listener(spz_language language, size_t place)
{
    return place < SPZ_LISTENER_COUNT ? phrase_text(language, (Phrase)(PHRASE_LISTENER_FRONT + place)) : "";
}

const char *words_desk_mark(spz_language language, spz_section section)
{
    return section >= SPZ_VN1 && section <= SPZ_DB ? phrase_text(language, (Phrase)(PHRASE_STAGE_MARK_VN1 + (section - SPZ_VN1))) : "";
}

/* Lengths that a phrase names, each '18 m' or '12.3 m'. */
typedef struct Lengths {
    Buffer words[5];
    int count;
} Lengths;

static Slot length_slot(Lengths *lengths, spz_language language, const char *name, double metres)
{
    Buffer *words = &lengths->words[lengths->count++];
    SAY(words, language, PHRASE_STAGE_METRES, slot_decimal("n", metres, fabs(metres - round(metres)) < 0.05 ? 0 : 1));
    return slot_text(name, words->text);
}

static void free_lengths(Lengths *lengths, Buffer *out)
{
    for (int i = 0; i < lengths->count; i++) {
        buffer_let_go(out, &lengths->words[i]);
    }
}

void say_stage_size(Buffer *out, spz_language language, const spz_plan *plan)
{
    Lengths lengths = {0};
    double highest = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++)
        highest = fmax(highest, spz_plan_desk(plan, i)->z);
    const Slot slots[] = {slot_text("hall", spz_plan_hall(plan)),
                          length_slot(&lengths, language, "wide", spz_plan_stage_width(plan)),
                          length_slot(&lengths, language, "deep", spz_plan_stage_depth(plan)),
                          length_slot(&lengths, language, "takes", spz_plan_used_width(plan)),
                          length_slot(&lengths, language, "by", spz_plan_used_depth(plan)),
                          length_slot(&lengths, language, "height", highest),
                          slot_phrase("risers", highest > 0 ? PHRASE_STAGE_RISERS : PHRASE_STAGE_FLAT)};
    say(out, language, *spz_plan_hall(plan) ? PHRASE_STAGE_SIZE_HALL : PHRASE_STAGE_SIZE, slots, sizeof slots / sizeof *slots);
    free_lengths(&lengths, out);
}

static Slot exact_length_slot(Lengths *lengths, spz_language language, const char *name, double metres)
{
    Buffer *words = &lengths->words[lengths->count++];
    SAY(words, language, PHRASE_STAGE_METRES, slot_decimal("n", metres, 2));
    return slot_text(name, words->text);
}

void say_stage_room(Buffer *out, spz_language language, const spz_plan *plan)
{
    Lengths lengths = {0};
    SAY(out, language, PHRASE_STAGE_LEAST, exact_length_slot(&lengths, language, "wide", spz_plan_least_width(plan)),
        exact_length_slot(&lengths, language, "deep", spz_plan_least_depth(plan)));
    if (spz_plan_is_cut(plan))
        buffer_printf(out, " %s", phrase_text(language, PHRASE_STAGE_CUT));
    if (spz_plan_basses_moved(plan))
        buffer_printf(out, " %s", phrase_text(language, PHRASE_STAGE_BASSES_MOVED));
    free_lengths(&lengths, out);
}

static Slot way_slot(Lengths *ways, spz_language language, const char *name, double metres, double delay)
{
    Buffer *words = &ways->words[ways->count++];
    SAY(words, language, PHRASE_STAGE_WAY, slot_decimal("metres", metres, 1), slot_decimal("delay", delay, 0));
    return slot_text(name, words->text);
}

void say_stage_distance(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2])
{
    spz_distance way;
    bool singles = spz_plan_players(plan, pair[0]) == 1 && spz_plan_players(plan, pair[1]) == 1;
    spz_group a = {.section = pair[0], .single = singles}, b = {.section = pair[1], .single = singles};
    Lengths ways = {0};
    if (!spz_plan_distance(plan, pair[0], pair[1], &way))
        return;
    SAY(out, language, singles ? PHRASE_STAGE_DISTANCE_PLAYERS : PHRASE_STAGE_DISTANCE, slot_players("a", &a, 1), slot_players("b", &b, 1),
        slot_phrase("between", pair[0] == pair[1]             ? PHRASE_STAGE_ACROSS
                               : spz_plan_is_double(plan) ? PHRASE_STAGE_BETWEEN_DOUBLE
                                                          : PHRASE_STAGE_BETWEEN),
        way_slot(&ways, language, "front", way.front, way.front_delay), way_slot(&ways, language, "centre", way.centre, way.centre_delay),
        way_slot(&ways, language, "back", way.back, way.back_delay));
    free_lengths(&ways, out);
}

void say_stage_way(Buffer *out, spz_language language, const spz_distance *way)
{
    SAY(out, language, PHRASE_STAGE_WAY_DRAWN, slot_decimal("metres", way->centre, 1), slot_decimal("delay", way->centre_delay, 0));
}

void say_stage_hearing(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2])
{
    spz_separation hearing;
    double told_apart = 0;
    Buffer places = {0};
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        if (!spz_plan_separation(plan, pair[0], pair[1], place, &hearing))
            break;
        buffer_puts(&places, place ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        SAY(&places, language, PHRASE_STAGE_HEARING_PLACE, slot_text("place", words_listener(language, place)),
            slot_decimal("degrees", hearing.angle, 0));
        if (hearing.widths > 0)
            told_apart = hearing.angle / hearing.widths;
    }
    if (places.length)
        SAY(out, language, PHRASE_STAGE_HEARING, slot_text("places", places.text), slot_decimal("least", told_apart, 0));
    buffer_let_go(out, &places);
}

void say_stage_heard(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2], size_t place)
{
    spz_separation hearing;
    if (spz_plan_separation(plan, pair[0], pair[1], place, &hearing))
        SAY(out, language, PHRASE_STAGE_HEARD, slot_decimal("degrees", hearing.angle, 0), slot_decimal("microseconds", hearing.ear_delay, 0),
            slot_decimal("widths", hearing.widths, 1));
}

void say_stage_pair(Buffer *out, spz_language language, const spz_section pair[2])
{
    spz_group a = {.section = pair[0]}, b = {.section = pair[1]};
    SAY(out, language, pair[0] == pair[1] ? PHRASE_STAGE_HEARD_ACROSS : PHRASE_STAGE_HEARD_PAIR, slot_players("a", &a, 1), slot_players("b", &b, 1));
}

void say_stage_players(Buffer *out, spz_language language, const spz_plan *plan)
{
    Buffer players = {0};
    for (spz_section section = SPZ_VN1; section <= SPZ_DB; section++) {
        int count = spz_plan_players(plan, section);
        spz_group who = {.section = section, .single = count == 1};
        if (!count)
            continue;
        buffer_puts(&players, players.length ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        SAY(&players, language, PHRASE_STAGE_COUNT, slot_players("who", &who, 1), slot_number("n", count));
    }
    SAY(out, language, spz_plan_is_double(plan) ? PHRASE_STAGE_PLAYERS_DOUBLE : PHRASE_STAGE_PLAYERS, slot_text("players", players.text));
    buffer_let_go(out, &players);
}
