#include "library/conditions.h"
#include <string.h>

static const char *const interval_names[SPZ_INTERVAL_COUNT] = {"", "unison", "second", "third", "fourth", "fifth", "sixth", "seventh", "octave"};

const char *spz_interval_name(spz_interval interval)
{
    return (int)interval >= 0 && interval < SPZ_INTERVAL_COUNT ? interval_names[interval] : "";
}

bool spz_interval_from_name(const char *name, spz_interval *out)
{
    for (int i = SPZ_AT_UNISON; i < SPZ_INTERVAL_COUNT; i++)
        if (strcmp(name, interval_names[i]) == 0) {
            *out = (spz_interval)i;
            return true;
        }
    return false;
}

void where_free(Where *where)
{
    buffer_free(&where->sql);
}

static void add(Where *where, const char *sql, Value value)
{
    buffer_puts(&where->sql, sql);
    if (where->count < VALUES_MOST)
        where->values[where->count++] = value;
    else
        where->sql.failed = true;
}

static void add_text(Where *where, const char *sql, const char *text)
{
    add(where, sql, (Value){.text = text});
}

static void add_number(Where *where, const char *sql, double number)
{
    add(where, sql, (Value){.number = number});
}

bool conditions_of_passages(const spz_conditions *conditions)
{
    return conditions->kinds || conditions->strength > 0 || conditions->between[0] || conditions->between[1] || conditions->interval;
}

static void add_sides(Where *where, const spz_conditions *conditions)
{
    const char *one = conditions->between[0] ? spz_section_name(conditions->between[0]) : NULL;
    const char *two = conditions->between[1] ? spz_section_name(conditions->between[1]) : NULL;
    if (one && two && conditions->led) {
        add_text(where, " AND p.first_side = ?", one);
        add_text(where, " AND p.second_side = ?", two);
    } else if (one && two) {
        add_text(where, " AND (p.first_side, p.second_side) IN (VALUES (?", one);
        add_text(where, ", ?", two);
        add_text(where, "), (?", two);
        add_text(where, ", ?))", one);
    } else if (one && conditions->led)
        add_text(where, " AND p.first_side = ?", one);
    else if (one) {
        add_text(where, " AND (p.first_side = ?", one);
        add_text(where, " OR p.second_side = ?)", one);
    }
}

/* An octave is any number of them but none; every other interval counts whatever the octaves between. */
static void add_interval(Where *where, spz_interval interval)
{
    if (interval == SPZ_AT_UNISON)
        buffer_puts(&where->sql, " AND p.semitones = 0");
    else if (interval == SPZ_AT_OCTAVE)
        buffer_puts(&where->sql, " AND p.steps % 7 = 0 AND p.steps <> 0");
    else if (interval != SPZ_ANY_INTERVAL)
        add_number(where, " AND abs(p.steps) % 7 = ?", interval - SPZ_AT_UNISON);
}

void where_passages(Where *where, const spz_conditions *conditions, bool of_all)
{
    /* Of all movements every kind is named where sides are asked for, so that the index can be used, which has the kinds first. */
    unsigned kinds = conditions->kinds || !conditions->between[0] || !of_all ? conditions->kinds : (1u << SPZ_KIND_COUNT) - 1;
    const char *between = "?";
    if (kinds)
        buffer_puts(&where->sql, " AND p.kind IN ("); /* none of them, where they are kinds that we don't know */
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++)
        if (kinds >> kind & 1u) {
            add_text(where, between, spz_kind_name((spz_kind)kind));
            between = ", ?";
        }
    if (kinds)
        buffer_puts(&where->sql, ")");
    add_sides(where, conditions);
    if (conditions->strength > 0)
        add_number(where, " AND p.strength >= ?", conditions->strength);
    add_interval(where, conditions->interval);
}

static void add_lengths(Where *where, const spz_conditions *conditions)
{
    if (!(conditions->shortest > 0) && !(conditions->longest > 0))
        return;
    buffer_puts(&where->sql, " AND m.work IN (SELECT work FROM movement GROUP BY work HAVING count(seconds) = count(*)");
    if (conditions->shortest > 0)
        add_number(where, " AND sum(seconds) >= 60 * ?", conditions->shortest);
    if (conditions->longest > 0)
        add_number(where, " AND sum(seconds) <= 60 * ?", conditions->longest);
    buffer_puts(&where->sql, ")");
}

static void add_players(Where *where, const spz_conditions *conditions)
{
    static const spz_section sections[SPZ_SHELF_SECTIONS] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};
    bool begun = false;
    for (int i = 0; i < SPZ_SHELF_SECTIONS; i++) {
        if (conditions->players[i] <= 0)
            continue;
        if (!begun)
            buffer_printf(&where->sql, " AND m.work %s (SELECT x.work FROM need n JOIN movement x ON x.id = n.movement WHERE ", conditions->too_large ? "IN" : "NOT IN");
        add_text(where, begun ? " OR (n.section = ?" : "(n.section = ?", spz_section_name(sections[i]));
        add_number(where, " AND n.players > ?)", conditions->players[i]);
        begun = true;
    }
    if (begun)
        buffer_puts(&where->sql, ")");
}

void where_movements(Where *where, const spz_conditions *conditions)
{
    if (conditions->composer)
        add_text(where, " AND instr(lower(w.composer), lower(?)) > 0", conditions->composer);
    if (conditions->title)
        add_text(where, " AND instr(lower(w.name || ' ' || m.title), lower(?)) > 0", conditions->title);
    if (conditions->from)
        add_number(where, " AND m.year >= ?", conditions->from);
    if (conditions->before)
        add_number(where, " AND m.year < ?", conditions->before);
    if (conditions->two_orchestras)
        buffer_puts(&where->sql, " AND m.work IN (SELECT work FROM movement WHERE orchestras > 1)");
    if (conditions->thirds)
        buffer_puts(&where->sql, " AND m.work IN (SELECT work FROM movement WHERE thirds)");
    if (conditions->seating)
        add_text(where, " AND m.arrangement <> '' AND instr('|' || ? || '|', '|' || m.arrangement || '|')", conditions->seating);
    add_lengths(where, conditions);
    add_players(where, conditions);
}

void where_bind(const Where *where, Query *query)
{
    for (int i = 0; i < where->count; i++) {
        if (where->values[i].text)
            query_text(query, where->values[i].text);
        else
            query_number(query, where->values[i].number);
    }
}
