#include "advice/page_turns.h"

static const double turn_seconds = 2; /* that a player rests who turns without haste: common practice */
static const double usual_rate = 120; /* crotchets a minute where no tempo is told, as elsewhere */

static const Part *part_of(const SectionMap *map, size_t group)
{
    const Group *body = &map->groups[group];
    return body->line_count ? &map->movement->parts[map->lines[body->lines[0]].part] : NULL;
}

/* Breaks before a bar that isn't the first. */
static size_t first_break(const Part *part)
{
    return part->page_count && part->pages[0].bar == 0 ? 1 : 0;
}

static bool breaks_alike(const Part *one, const Part *two)
{
    size_t a = first_break(one), b = first_break(two);
    if (one->page_count - a != two->page_count - b)
        return false;
    for (; a < one->page_count; a++, b++)
        if (one->pages[a].bar != two->pages[b].bar)
            return false;
    return true;
}

static bool has_breaks(const Part *part)
{
    return part->page_count > first_break(part);
}

static bool holds_one_body(const SectionMap *map)
{
    for (size_t i = 0; i < map->line_count; i++)
        if (map->lines[i].section == SPZ_NO_SECTION && !map->lines[i].left_out)
            return false;
    return map->group_count == 1;
}

PagesOf pages_of(const SectionMap *map, size_t group)
{
    const Movement *movement = map->movement;
    const Part *own = part_of(map, group), *first = NULL;
    bool differ = false;
    for (size_t i = 0; i < movement->part_count; i++) {
        const Part *part = &movement->parts[i];
        if (!has_breaks(part))
            continue;
        differ = differ || (first && !breaks_alike(first, part));
        first = first ? first : part;
    }
    if (!first)
        return PAGES_UNTOLD;
    return own && has_breaks(own) && (differ || holds_one_body(map)) ? PAGES_OF_PART : PAGES_OF_SCORE;
}

static uint32_t bit_of(int line)
{
    return line > 0 ? 1u << line : 0;
}

/* Bit n: nobody but inside players of the section reads line n. Who sits alone at a desk turns for themselves; another section has another part. */
static uint32_t lines_of_inside_alone(const spz_allotment *allotment, spz_section section)
{
    uint32_t playing = 0, turning = 0;
    for (size_t i = 0; i < spz_allotment_desks(allotment); i++) {
        const spz_desk *desk = spz_allotment_desk(allotment, i);
        bool alone = desk->inside == SPZ_SEAT_EMPTY, own = desk->section == section;
        *(own && alone ? &turning : &playing) |= bit_of(desk->outside);
        *(own ? &turning : &playing) |= bit_of(desk->inside);
    }
    return turning & ~playing;
}

/* Seconds of silence around the moment: from the end of what sounds before it to what begins at it or later. */
static double silence_around(const SectionMap *map, const Group *group, Ticks when)
{
    const Movement *movement = map->movement;
    Ticks from = 0, to = movement->length;
    for (size_t i = 0; i < group->sound_count; i++) {
        Ticks onset = group->sounds[i].onset, end = onset + group->sounds[i].duration;
        if (onset < when)
            from = end > from ? end : from;
        else if (onset < to)
            to = onset;
    }
    double rate = movement_tempo_at(movement, when);
    return from >= to ? 0 : (double)(to - from) / (double)movement->per_crotchet * 60 / (rate > 0 ? rate : usual_rate);
}

/* The number of the page that ends where page `index` of the part begins; 0 where no number is told before it. */
static int number_before(const Part *part, size_t index)
{
    int number = 0;
    for (size_t i = 0; i < index; i++)
        number = part->pages[i].number ? part->pages[i].number : number ? number + 1 : 0;
    return number ? number : part->pages[index].number > 1 ? part->pages[index].number - 1 : 0;
}

static bool add_turns(AdviceList *list, const SectionMap *map, Advice *advice, const Part *part)
{
    advice->first_turn = list->turns.count;
    for (size_t i = first_break(part); i < part->page_count; i++) {
        size_t bar = (size_t)part->pages[i].bar;
        Ticks when = bar < map->movement->bar_count ? map->movement->bars[bar].onset : 0;
        int before = number_before(part, i);
        if (when <= advice->from || when >= advice->to || (before && before % 2 == 0))
            continue;
        if (silence_around(map, &map->groups[advice->group], when) >= turn_seconds)
            continue;
        if (!array_push(&list->turns, ((PageTurn){bar, before > 0})))
            return false;
    }
    advice->turn_count = list->turns.count - advice->first_turn;
    return true;
}

bool page_turns_find(AdviceList *list, const SectionMap *map)
{
    for (size_t i = 0; i < list->items.count; i++) {
        Advice *advice = &list->items.at[i];
        if (advice->kind != ADVICE_DIVIDE || !advice->allotment)
            continue;
        advice->lines_at_risk = lines_of_inside_alone(advice->allotment, map->groups[advice->group].about.section);
        if (advice->lines_at_risk && pages_of(map, advice->group) == PAGES_OF_PART && !add_turns(list, map, advice, part_of(map, advice->group)))
            return false;
    }
    return true;
}
