#include "pages/drawings/stage_facts.h"
#include "writing/number_text.h"
#include <math.h>

static void put_number(Buffer *text, double value, int decimals)
{
    char number[NUMBER_TEXT];
    buffer_puts(text, number_text(value, decimals, number));
}

static void put_metres(Buffer *text, double metres)
{
    put_number(text, metres, fabs(metres - round(metres)) < 0.05 ? 0 : 1);
    buffer_puts(text, " m");
}

void stage_facts_size(const spz_plan *plan, Buffer *text)
{
    if (spz_plan_hall(plan)[0])
        buffer_printf(text, "%s: ", spz_plan_hall(plan));
    buffer_puts(text, "stage ");
    put_metres(text, spz_plan_stage_width(plan));
    buffer_puts(text, " wide, ");
    put_metres(text, spz_plan_stage_depth(plan));
    buffer_puts(text, " deep for the strings, which take ");
    put_metres(text, spz_plan_used_width(plan));
    buffer_puts(text, " by ");
    put_metres(text, spz_plan_used_depth(plan));
    double highest = 0;
    for (size_t i = 0; i < spz_plan_desks(plan); i++)
        highest = fmax(highest, spz_plan_desk(plan, i)->z);
    if (highest > 0) {
        buffer_puts(text, "; the rows from the third on are raised, up to ");
        put_metres(text, highest);
    }
}

static void put_way(Buffer *text, const char *between, double metres, double delay)
{
    buffer_puts(text, between);
    put_number(text, metres, 1);
    buffer_puts(text, " m (");
    put_number(text, delay, 0);
    buffer_puts(text, " ms)");
}

void stage_facts_distance(const spz_plan *plan, const spz_section pair[2], Buffer *text)
{
    spz_distance way;
    if (!spz_plan_distance(plan, pair[0], pair[1], &way))
        return;
    if (pair[0] == pair[1])
        buffer_printf(text, "%s of the first to %s of the second orchestra: ", spz_section_words(pair[0]),
                      spz_section_words(pair[1]));
    else
        buffer_printf(text, "%s to %s%s: ", spz_section_words(pair[0]), spz_section_words(pair[1]),
                      spz_plan_is_double(plan) ? " of one orchestra" : "");
    put_way(text, "front desks ", way.front, way.front_delay);
    put_way(text, ", centres ", way.centre, way.centre_delay);
    put_way(text, ", last rows ", way.back, way.back_delay);
}

void stage_facts_hearing(const spz_plan *plan, const spz_section pair[2], Buffer *text)
{
    spz_separation hearing;
    double told_apart = 0;
    for (size_t place = 0; place < spz_plan_places(plan); place++) {
        if (!spz_plan_separation(plan, pair[0], pair[1], place, &hearing))
            return;
        buffer_printf(text, place ? ", %s " : "degrees between them as heard in the hall: %s ", hearing.place);
        put_number(text, hearing.angle, 0);
        if (hearing.widths > 0)
            told_apart = hearing.angle / hearing.widths;
    }
    buffer_puts(text, "; under ");
    put_number(text, told_apart, 0);
    buffer_puts(text, " they sound from one place");
}

bool stage_facts_heard(const spz_plan *plan, const spz_section pair[2], size_t place, const char **name, Buffer *text)
{
    spz_separation hearing;
    if (!spz_plan_separation(plan, pair[0], pair[1], place, &hearing))
        return false;
    *name = hearing.place;
    put_number(text, hearing.angle, 0);
    buffer_puts(text, " deg, ");
    put_number(text, hearing.ear_delay, 0);
    buffer_puts(text, " us, ");
    put_number(text, hearing.widths, 1);
    return true;
}

void stage_facts_players(const spz_plan *plan, Buffer *text)
{
    bool any = false;
    if (spz_plan_is_double(plan))
        buffer_puts(text, "two orchestras, the first at house left, in all ");
    for (spz_section section = SPZ_VN1; section <= SPZ_DB; section++)
        if (spz_plan_players(plan, section)) {
            buffer_printf(text, "%s%s %d", any ? ", " : "", spz_section_words(section), spz_plan_players(plan, section));
            any = true;
        }
}
