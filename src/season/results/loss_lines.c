#include "season/results/loss_lines.h"
#include <string.h>

enum { BARS_MOST = 1000000000 };

static bool keep_bars(Arena *arena, spz_basis *basis)
{
    spz_bars *bars = arena_take(arena, basis->bar_count + 1, sizeof *bars);
    bool kept = bars != NULL;
    for (size_t i = 0; kept && i < basis->bar_count; i++) {
        bars[i] = basis->bars[i];
        bars[i].first_bar = arena_string(arena, basis->bars[i].first_bar);
        bars[i].last_bar = arena_string(arena, basis->bars[i].last_bar);
        kept = bars[i].first_bar && bars[i].last_bar;
    }
    *basis = (spz_basis){.bars = bars, .bar_count = basis->bar_count};
    return kept;
}

const spz_loss *losses_keep(Arena *arena, const spz_loss *losses, size_t count)
{
    spz_loss *kept = arena_take(arena, count + 1, sizeof *kept);
    for (size_t i = 0; kept && i < count; i++) {
        kept[i] = losses[i];
        if (!keep_bars(arena, &kept[i].basis))
            return NULL;
    }
    return kept;
}

static void write_loss(Json *json, const spz_loss *loss)
{
    json_row(json);
    json_put_text(json, "kind", spz_kind_name(loss->kind));
    json_key(json, "sides");
    json_list(json);
    for (int side = 0; side < 2; side++)
        json_text(json, spz_section_name(loss->sides[side]));
    json_end(json);
    json_put_flag(json, "throughout", loss->throughout);
    json_key(json, "bars");
    json_list(json);
    for (size_t i = 0; i < loss->basis.bar_count; i++) {
        const spz_bars *bars = &loss->basis.bars[i];
        json_row(json);
        json_put_integer(json, "first", (long long)bars->first);
        json_put_integer(json, "last", (long long)bars->last);
        json_put_text(json, "from", bars->first_bar);
        json_put_text(json, "to", bars->last_bar);
        json_end(json);
    }
    json_end(json);
    json_end(json);
}

void losses_write(Json *json, const spz_loss *losses, size_t count)
{
    json_key(json, "losses");
    json_list(json);
    for (size_t i = 0; i < count; i++)
        write_loss(json, &losses[i]);
    json_end(json);
}

/* Room for the members of a list, so that each finds its place. NULL: no such list, or no memory. */
static void *room_for(const JsonValue *object, const char *key, Arena *arena, size_t size, const JsonValue **first)
{
    const JsonValue *list = json_member(object, key, JSON_LIST);
    size_t count = 1;
    for (const JsonValue *value = list ? list->first : NULL; value; value = value->next)
        count++;
    *first = list ? list->first : NULL;
    return list ? arena_take(arena, count, size) : NULL;
}

static bool read_bars(const JsonValue *value, Arena *arena, spz_basis *basis)
{
    const JsonValue *one;
    spz_bars *bars = room_for(value, "bars", arena, sizeof *bars, &one);
    double first, last;
    *basis = (spz_basis){.bars = bars};
    for (; bars && one; one = one->next) {
        spz_bars *at = &bars[basis->bar_count++];
        if (!json_member_number(one, "first", 0, BARS_MOST, &first) || !json_member_number(one, "last", first, BARS_MOST, &last))
            return false;
        *at = (spz_bars){(size_t)first, (size_t)last, json_member_text(one, "from"), json_member_text(one, "to")};
        if (!at->first_bar || !at->last_bar)
            return false;
    }
    return bars != NULL;
}

static bool read_sides(const JsonValue *value, spz_section sides[2])
{
    const JsonValue *list = json_member(value, "sides", JSON_LIST), *one = list ? list->first : NULL, *two = one ? one->next : NULL;
    if (!two || two->next || one->kind != JSON_TEXT || two->kind != JSON_TEXT)
        return false;
    sides[0] = spz_section_from_name(one->text);
    sides[1] = spz_section_from_name(two->text);
    return sides[0] != SPZ_NO_SECTION && (sides[1] != SPZ_NO_SECTION || !*two->text);
}

static bool read_loss(const JsonValue *value, Arena *arena, spz_loss *loss)
{
    const char *kind = json_member_text(value, "kind");
    *loss = (spz_loss){.throughout = json_member_flag(value, "throughout")};
    return kind && spz_kind_from_name(kind, &loss->kind) && read_sides(value, loss->sides) && read_bars(value, arena, &loss->basis);
}

bool losses_read(const JsonValue *object, Arena *arena, const spz_loss **losses, size_t *count)
{
    const JsonValue *value;
    spz_loss *read = room_for(object, "losses", arena, sizeof *read, &value);
    *losses = read;
    *count = 0;
    for (; read && value; value = value->next)
        if (!read_loss(value, arena, &read[(*count)++]))
            return false;
    return read != NULL;
}
