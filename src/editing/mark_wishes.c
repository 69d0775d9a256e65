#include "editing/mark_wishes.h"
#include "support/memory.h"
#include "wording/desk_words.h"
#include <stdlib.h>
#include <string.h>

enum { NUMBERS = 16 }; /* MusicXML 4.0, number-level: 1 to 16 */

/* What is wanted for one line of the score. */
typedef struct Wanted {
    const Advice *advice;
    const spz_line *line;
    const char *words;
} Wanted;

typedef struct MarkCollector {
    const SectionMap *map;
    const Speaker *speaker;
    Wishes *wishes;
    ARRAY(Wanted) wanted;
    uint32_t *used;                  /* by part: numbers of the score's own */
    Ticks busy[NUMBERS + 1];         /* of the part at hand: until when a number is taken */
    spz_status status;
} MarkCollector;

static bool line_sounds(const Group *group, size_t line, Ticks from, Ticks to)
{
    for (size_t i = 0; i < group->sound_count && group->sounds[i].onset < to; i++)
        if (group->sounds[i].line == line && group->sounds[i].onset >= from)
            return true;
    return false;
}

/* Lines of the division that are staves of their own and play while the advice holds. */
static int staves_of_division(const SectionMap *map, const Advice *advice)
{
    const Group *group = &map->groups[advice->group];
    int count = 0;
    for (size_t i = 0; i < group->line_count; i++)
        count += map->lines[group->lines[i]].division > 0 && line_sounds(group, group->lines[i], advice->from, advice->to);
    return count;
}

/* What to write over one line of a division that is a staff of its own: its desks, where it is plain which of the lines it is. */
static bool put_line_desks(const MarkCollector *collector, const Advice *advice, size_t line, Buffer *out)
{
    const Group *group = &collector->map->groups[advice->group];
    int number = collector->map->lines[line].division, lines = advice->allotment ? spz_allotment_lines(advice->allotment) : 0;
    bool whole = advice->passage->sides[0].section != SPZ_VIOLINS;
    if (!whole || number > lines || staves_of_division(collector->map, advice) != lines)
        return false;
    words_line_desks(collector->speaker->language, advice->allotment, group->about.section, number, out);
    return out->length > 0;
}

/* What to write over one line; false for nothing. A staff that holds one line of a division needs no 'div.'. */
static bool put_words_for_line(const MarkCollector *collector, const Advice *advice, size_t line, Buffer *out)
{
    const Group *group = &collector->map->groups[advice->group];
    bool division = advice->kind == ADVICE_DIVIDE || advice->kind == ADVICE_UNISON;
    Ticks to = advice->to > advice->from ? advice->to : advice->from + 1;
    if (!line_sounds(group, line, advice->from, to))
        return false;
    if (division && collector->map->lines[line].division != 0 && group->line_count > 1)
        return put_line_desks(collector, advice, line, out);
    advice_words(collector->speaker, advice, out);
    return true;
}

static void collect_line(MarkCollector *collector, const Advice *advice, size_t line)
{
    Buffer words;
    buffer_init(&words);
    if (put_words_for_line(collector, advice, line, &words)) {
        const char *kept = buffer_failed(&words) ? NULL : arena_string(&collector->wishes->arena, words.text);
        Wanted wanted = {advice, &collector->map->lines[line], kept};
        if (!kept || !array_push(&collector->wanted, wanted))
            collector->status = SPZ_NO_MEMORY;
    }
    buffer_free(&words);
}

static void collect(MarkCollector *collector, const AdviceList *list)
{
    for (size_t i = 0; i < list->items.count; i++) {
        const Group *group = &collector->map->groups[list->items.at[i].group];
        for (size_t k = 0; k < group->line_count; k++)
            collect_line(collector, &list->items.at[i], group->lines[k]);
    }
}

static int by_part_and_time(const void *a, const void *b)
{
    const Wanted *one = a, *two = b;
    if (one->line->part != two->line->part)
        return one->line->part < two->line->part ? -1 : 1;
    if (one->advice->from != two->advice->from)
        return one->advice->from < two->advice->from ? -1 : 1;
    if (one->line->staff != two->line->staff)
        return one->line->staff < two->line->staff ? -1 : 1;
    return one->advice < two->advice ? -1 : one->advice > two->advice;
}

/* Cellos and basses on one line, or two lines of a staff, get the same words once. */
static bool is_repeated(const MarkCollector *collector, size_t index)
{
    const Wanted *now = &collector->wanted.at[index];
    for (size_t i = index; i-- > 0;) {
        const Wanted *before = &collector->wanted.at[i];
        if (before->line->part != now->line->part || before->advice->from != now->advice->from)
            return false;
        if (before->line->staff == now->line->staff && strcmp(before->words, now->words) == 0)
            return true;
    }
    return false;
}

static WishSign sign_of(const Advice *advice)
{
    if (advice->to <= advice->from || advice->kind == ADVICE_DIVIDE || advice->kind == ADVICE_UNISON)
        return WISH_WORDS;
    return advice->kind == ADVICE_WITH ? WISH_DASHES : WISH_BRACKET;
}

/* The lowest number that neither the score nor a mark still open uses; 0 when all are taken. */
static int free_number(const MarkCollector *collector, const Wanted *wanted)
{
    for (int number = 1; number <= NUMBERS; number++)
        if (!(collector->used[wanted->line->part] & UINT32_C(1) << number) && collector->busy[number] < wanted->advice->from)
            return number;
    return 0;
}

static void wish(MarkCollector *collector, Wish item, Ticks when, size_t bar)
{
    item.bar = bar;
    item.at = when - collector->map->movement->bars[bar].onset;
    if (!array_push(&collector->wishes->list, item))
        collector->status = SPZ_NO_MEMORY;
}

/* Words and sign are directions of their own: programs that show only one sign of a direction then show both. */
static void wish_for(MarkCollector *collector, const Wanted *wanted)
{
    const Advice *advice = wanted->advice;
    WishSign sign = sign_of(advice);
    int number = sign == WISH_WORDS ? 0 : free_number(collector, wanted);
    Wish words = {.part = wanted->line->part, .staff = wanted->line->staff, .voice = wanted->line->voice, .words = wanted->words};
    wish(collector, words, advice->from, advice->bar);
    if (!number)
        return;
    collector->busy[number] = advice->to;
    Wish span = words;
    span.words = NULL;
    span.sign = sign;
    span.number = number;
    wish(collector, span, advice->from, advice->bar);
    span.stop = true;
    wish(collector, span, advice->to, advice->last_bar);
}

static void free_numbers(MarkCollector *collector)
{
    for (int number = 0; number <= NUMBERS; number++)
        collector->busy[number] = -1;
}

spz_status wishes_find(const Speaker *speaker, const AdviceList *advice, const Buffer *text, Wishes *wishes)
{
    const SectionMap *map = speaker->sections;
    MarkCollector collector = {.map = map, .speaker = speaker, .wishes = wishes};
    *wishes = (Wishes){.list = {0}};
    arena_init(&wishes->arena);
    size_t parts = map->movement->part_count;
    collector.used = memory_resize(NULL, parts + 1, sizeof *collector.used);
    collector.status = collector.used ? mark_lines_used(text, map->movement, collector.used) : SPZ_NO_MEMORY;
    collect(&collector, advice);
    if (collector.wanted.count)
        qsort(collector.wanted.at, collector.wanted.count, sizeof *collector.wanted.at, by_part_and_time);
    for (size_t i = 0; i < collector.wanted.count && !collector.status; i++) {
        if (i == 0 || collector.wanted.at[i].line->part != collector.wanted.at[i - 1].line->part)
            free_numbers(&collector);
        if (!is_repeated(&collector, i))
            wish_for(&collector, &collector.wanted.at[i]);
    }
    array_free(&collector.wanted);
    memory_free(collector.used);
    return collector.status;
}

void wishes_free(Wishes *wishes)
{
    array_free(&wishes->list);
    arena_release(&wishes->arena);
}
