#include "wording/seasons/evening_words.h"
#include "wording/papers/notes_words.h"
#include "wording/seatings/seating_words.h"
#include <string.h>

static size_t evening_lost_bars(const spz_other_plan *plan)
{
    size_t bars = 0;
    for (size_t i = 0; i < plan->movement_count; i++)
        bars += plan->movements[i].lost_bars;
    return bars;
}

/* Bars and seconds that all movements of the plan give up. */
static double evening_lost_seconds(const spz_other_plan *plan)
{
    double seconds = 0;
    for (size_t i = 0; i < plan->movement_count; i++)
        seconds += plan->movements[i].lost_seconds;
    return seconds;
}

bool chamber_alone(const spz_planned_concert *concert)
{
    for (size_t i = 0; i < concert->work_count; i++)
        if (!concert->works[i].chamber)
            return false;
    return concert->work_count > 0;
}

void say_one_seating(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    const spz_other_plan *plan = &concert->unchanged;
    Buffer points = {0};
    if (chamber_alone(concert)) {
        buffer_puts(out, phrase_text(language, PHRASE_EVENING_ONE_CHAMBER));
        return;
    }
    say_points(&points, language, plan->points);
    SAY(out, language, !plan->possible ? PHRASE_EVENING_ONE_IMPOSSIBLE : plan->points > 0 ? PHRASE_EVENING_ONE : PHRASE_EVENING_ONE_NOTHING,
        slot_text("seating", plan->seating ? words_arrangement(language, plan->seating) : ""), slot_text("points", points.text));
    buffer_let_go(out, &points);
}

void say_given_up_by(Buffer *out, spz_language language, const spz_planned_movement *movement)
{
    Buffer what = {0};
    say_given_up_there(&what, language, movement);
    if (what.length)
        SAY(out, language, PHRASE_EVENING_GIVEN_UP_BY, slot_text("title", season_movement_title(movement)), slot_text("what", what.text));
    buffer_let_go(out, &what);
}

void say_given_up_there(Buffer *out, spz_language language, const spz_planned_movement *movement)
{
    Buffer points, time, whole, losses;
    if (!(movement->points > 0))
        return;
    buffer_init(&points);
    buffer_init(&time);
    buffer_init(&whole);
    buffer_init(&losses);
    say_points(&points, language, movement->points);
    say_clock(&time, language, movement->lost_seconds);
    say_clock(&whole, language, movement->seconds);
    say_losses(&losses, language, movement->losses, movement->loss_count);
    SAY(out, language, movement->lost_bars ? PHRASE_EVENING_GIVEN_UP : PHRASE_EVENING_GIVEN_UP_POINTS, slot_text("points", points.text),
        slot_number("n", (long)movement->lost_bars), slot_text("time", time.text), slot_text("whole", whole.text),
        slot_text("losses", losses.text));
    buffers_let_go(out, &points, &time, &whole, &losses);
}

static bool has_interval(const spz_planned_concert *concert)
{
    bool has = false;
    for (size_t i = 0; i < concert->work_count; i++)
        has = has || concert->works[i].interval_after;
    return has;
}

bool interval_is_planned(const spz_planned_concert *concert)
{
    const spz_changeover *change = concert->changes, *asked = concert->at_interval.change;
    return asked && concert->change_count == 1 && change->gap == SPZ_AT_INTERVAL && change->from && asked->from && !strcmp(change->from, asked->from) && !strcmp(change->to, asked->to);
}

static Phrase phrase_of_gain(bool planned, bool bars)
{
    if (planned)
        return bars ? PHRASE_EVENING_INTERVAL_PLANNED : PHRASE_EVENING_INTERVAL_PLANNED_POINTS;
    return bars ? PHRASE_EVENING_INTERVAL : PHRASE_EVENING_INTERVAL_POINTS;
}

static void say_gain(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    const spz_other_plan *one = &concert->unchanged, *two = &concert->at_interval;
    size_t before = evening_lost_bars(one), after = evening_lost_bars(two);
    Buffer points = {0}, time = {0}, load = {0}, minutes = {0};
    say_points(&points, language, one->points - two->points);
    say_clock(&time, language, evening_lost_seconds(one) - evening_lost_seconds(two));
    say_load(&load, language, two->change);
    say_minutes(&minutes, language, two->change->minutes);
    SAY(out, language, phrase_of_gain(interval_is_planned(concert), before > after), slot_text("from", two->change->from ? words_arrangement(language, two->change->from) : ""),
        slot_text("to", words_arrangement(language, two->change->to)),
        slot_text("points", points.text), slot_number("n", (long)(before > after ? before - after : 0)), slot_text("time", time.text), slot_text("load", load.text),
        slot_text("minutes", minutes.text));
    if (two->change->not_allowed || two->change->longest > 0) {
        buffer_putc(out, ' ');
        buffer_puts(out, phrase_text(language, PHRASE_EVENING_INTERVAL_NOT_ALLOWED));
    }
    buffers_let_go(out, &points, &time, &load, &minutes);
}

void say_interval_gain(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    if (!has_interval(concert) || !concert->unchanged.possible || chamber_alone(concert))
        return;
    if (concert->at_interval.possible && concert->at_interval.change && concert->at_interval.points < concert->unchanged.points)
        say_gain(out, language, concert);
    else
        buffer_puts(out, phrase_text(language, PHRASE_EVENING_INTERVAL_NOTHING));
}

/* The desks from `first` on that follow one another in their section and all stay, or are all carried; where they end. */
static size_t run_end(const spz_changeover *change, size_t first)
{
    const spz_desk_move *desks = change->desk_moves;
    size_t end = first + 1;
    while (end < (size_t)change->desks && desks[end].section == desks[first].section && desks[end].orchestra == desks[first].orchestra &&
           desks[end].stays == desks[first].stays && desks[end].number == desks[end - 1].number + 1)
        end++;
    return end;
}

/* 'Vn I 1-7, Va 1': the desks of the new layout that stay, or those that are carried; nothing for none. */
static void say_desks(Buffer *out, spz_language language, const spz_changeover *change, bool stay)
{
    bool any = false;
    const spz_desk_move *named = NULL;
    for (size_t i = 0, end; i < (size_t)change->desks; i = end) {
        const spz_desk_move *desk = &change->desk_moves[i];
        end = run_end(change, i);
        if (desk->stays != stay)
            continue;
        spz_group who = {.section = desk->section, .orchestra = desk->orchestra};
        Slot slot = slot_players("who", &who, 1);
        buffer_puts(out, any ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        if (!named || named->section != desk->section || named->orchestra != desk->orchestra)
            say_template(out, language, "{who.short} ", &slot, 1);
        named = desk;
        any = true;
        buffer_printf(out, end - i > 1 ? "%d-%d" : "%d", desk->number, desk->number + (int)(end - i) - 1);
    }
}

void say_desks_of(Buffer *out, spz_language language, const spz_changeover *change)
{
    for (int stay = 1; stay >= 0; stay--) {
        Buffer desks = {0};
        say_desks(&desks, language, change, stay != 0);
        if (desks.length) {
            buffer_puts(out, out->length ? " " : "");
            SAY(out, language, stay ? PHRASE_EVENING_DESKS_STAY : PHRASE_EVENING_DESKS_CARRIED, slot_text("desks", desks.text));
        }
        buffer_let_go(out, &desks);
    }
}
