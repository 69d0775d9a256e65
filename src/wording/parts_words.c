#include "wording/parts_words.h"
#include "support/buffer.h"
#include <stdint.h>
#include <stdio.h>
#include <string.h>

ChainOrder parts_chain(const spz_passage *passage)
{
    ChainOrder chain = {{0}, 0};
    for (size_t i = 0; i < passage->entry_count; i++) { /* entries are in order of onset */
        size_t group = passage->entries[i].leader, k = 0;
        while (k < chain.count && chain.groups[k] != group)
            k++;
        if (k == chain.count && chain.count < CHAIN_MOST)
            chain.groups[chain.count++] = group;
    }
    return chain;
}

const char *parts_body(const SectionMap *map, const spz_passage *passage, size_t group)
{
    (void)passage;
    return group < map->group_count ? map->groups[group].about.name : "winds";
}

static bool is_plural(const char *body)
{
    return strcmp(body, "winds") == 0;
}

const char *parts_chain_words(Arena *arena, const SectionMap *map, const spz_passage *passage, const ChainOrder *chain, size_t place,
                              bool across)
{
    const char *far = across ? " across the stage" : "";
    const char *before = place > 0 ? parts_body(map, passage, chain->groups[place - 1]) : "";
    const char *after = place + 1 < chain->count ? parts_body(map, passage, chain->groups[place + 1]) : "";
    bool follows = passage->kind == SPZ_IMITATION;
    if (passage->kind == SPZ_HOCKET && chain->count == 2)
        return arena_format(arena, "alternate with %s%s", *before ? before : after, far);
    if (passage->kind == SPZ_SPLIT_LINE)
        return arena_format(arena, "one line with %s%s", *before ? before : after, far);
    if (!*before)
        return arena_format(arena, "lead, %s %s%s%s", after, follows ? "follow" : "answer", is_plural(after) ? "" : "s", far);
    if (!*after)
        return arena_format(arena, "%s %s%s", follows ? "follow" : "answer", before, far);
    return arena_format(arena, "after %s, before %s", before, after);
}

/* Whether the group enters in more than one bar. */
static bool enters_often(const spz_passage *passage, size_t group)
{
    size_t first = SIZE_MAX;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (entry->leader == group && first != SIZE_MAX && entry->bar != first)
            return true;
        if (entry->leader == group)
            first = entry->bar;
    }
    return false;
}

static void put_run(Buffer *out, const Movement *movement, size_t first, size_t last, bool begun)
{
    const char *from = movement->bars[first].number, *to = movement->bars[last].number;
    buffer_printf(out, "%s%s", begun ? ", " : "", *from ? from : "(no number)");
    if (last > first)
        buffer_printf(out, "%s%s", last > first + 1 ? "-" : ", ", *to ? to : "(no number)");
}

/* Printed numbers of the bars in which the group enters, each once; from three in a row on with a dash. */
static void list_bars(Buffer *out, const SectionMap *map, const spz_passage *passage, size_t group)
{
    enum { RUNS_MOST = 12 };
    size_t first = SIZE_MAX, last = SIZE_MAX, runs = 0;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (entry->leader != group || entry->bar == last)
            continue;
        if (first != SIZE_MAX && entry->bar != last + 1) {
            put_run(out, map->movement, first, last, runs++ > 0);
            first = entry->bar;
        } else if (first == SIZE_MAX)
            first = entry->bar;
        last = entry->bar;
        if (runs == RUNS_MOST) {
            buffer_puts(out, " and later");
            return;
        }
    }
    if (first != SIZE_MAX)
        put_run(out, map->movement, first, last, runs > 0);
}

static const char *keep(Arena *arena, Buffer *text)
{
    const char *kept = buffer_failed(text) ? NULL : arena_string(arena, text->text ? text->text : "");
    buffer_free(text);
    return kept;
}

const char *parts_entries(Arena *arena, const SectionMap *map, const spz_passage *passage, size_t group)
{
    Buffer text;
    ChainOrder chain = parts_chain(passage);
    buffer_init(&text);
    if (passage->kind == SPZ_SPLIT_LINE) /* every note is an entry */
        return keep(arena, &text);
    buffer_puts(&text, enters_often(passage, group) ? "enters in bars " : "enters in bar ");
    list_bars(&text, map, passage, group);
    for (size_t i = 0; i < chain.count; i++)
        if (chain.groups[i] != group) {
            const char *body = parts_body(map, passage, chain.groups[i]);
            buffer_printf(&text, "; %s in ", body);
            list_bars(&text, map, passage, chain.groups[i]);
        }
    return keep(arena, &text);
}

const char *parts_division(Arena *arena, const spz_passage *passage, const spz_allotment *allotment, bool said)
{
    const char *sharing = allotment ? spz_sharing_words(spz_allotment_sharing(allotment)) : "";
    char lines[32] = "div.";
    if (passage->turns > 2)
        snprintf(lines, sizeof lines, "div. a %d", passage->turns);
    if (passage->sides[0].section == SPZ_VIOLINS)
        return arena_format(arena, "all violins in %d%s%s", passage->turns, *sharing ? ", " : "", sharing);
    if (said)
        return arena_string(arena, *sharing ? sharing : "div.");
    return arena_format(arena, "%s%s%s", lines, *sharing ? ", " : "", sharing);
}

enum { SIDE_BOTH, SIDE_OUTSIDE, SIDE_INSIDE, SIDES };

static int side_of(const spz_desk *desk, int line)
{
    bool outside = desk->outside == line, inside = desk->inside == line;
    if (outside && (inside || desk->inside == SPZ_SEAT_EMPTY))
        return SIDE_BOTH;
    return outside ? SIDE_OUTSIDE : inside ? SIDE_INSIDE : SIDES;
}

/* '1, 4, 7' or '1-6' where they follow each other; returns how many. */
static int list_desks(Buffer *out, const spz_allotment *allotment, spz_section section, int line, int side)
{
    int count = 0, first = 0, last = -1;
    for (size_t i = 0; i <= spz_allotment_desks(allotment); i++) {
        const spz_desk *desk = spz_allotment_desk(allotment, i);
        if (desk && (desk->section != section || side_of(desk, line) != side))
            continue;
        if (desk && count && desk->number == last + 1) {
            last = desk->number;
            count++;
            continue;
        }
        if (count && last > first)
            buffer_printf(out, last > first + 1 ? "-%d" : ", %d", last);
        if (!desk)
            break;
        buffer_printf(out, "%s%d", count ? ", " : "", desk->number);
        first = last = desk->number;
        count++;
    }
    return count;
}

static void list_side(Buffer *out, const spz_allotment *allotment, spz_section section, int line, int side, bool *any)
{
    static const char *const one[SIDES] = {"desk ", "outside player of desk ", "inside player of desk "};
    static const char *const many[SIDES] = {"desks ", "outside players of desks ", "inside players of desks "};
    Buffer desks;
    buffer_init(&desks);
    int count = list_desks(&desks, allotment, section, line, side);
    if (count)
        buffer_printf(out, "%s%s%s", *any ? ", " : "", count == 1 ? one[side] : many[side], desks.text ? desks.text : "");
    *any = *any || count > 0;
    out->failed = out->failed || buffer_failed(&desks);
    buffer_free(&desks);
}

const char *parts_line_desks(Arena *arena, const spz_allotment *allotment, spz_section section, int line)
{
    Buffer text;
    bool any = false;
    buffer_init(&text);
    for (int side = 0; side < SIDES; side++)
        list_side(&text, allotment, section, line, side, &any);
    return keep(arena, &text);
}

const char *parts_desks(Arena *arena, const spz_allotment *allotment, spz_section section)
{
    Buffer text;
    bool begun = false;
    buffer_init(&text);
    int lines = allotment ? spz_allotment_lines(allotment) : 0;
    for (int line = 1; line <= lines; line++) {
        const char *desks = parts_line_desks(arena, allotment, section, line);
        text.failed = text.failed || !desks;
        if (!desks || !*desks) /* nobody of this section: the line is the other one's */
            continue;
        buffer_printf(&text, "%sline %d%s: %s", begun ? "; " : "", line, line == 1 ? " (top)" : "", desks);
        begun = true;
    }
    return keep(arena, &text);
}
