#include "editing/mark_wishes.h"
#include "editing/mark_order.h"
#include "support/memory.h"
#include "support/text/utf8.h"
#include "wording/papers/desk_words.h"
#include <stdlib.h>
#include <string.h>

enum { NUMBERS = 16 }; /* MusicXML 4.0, number-level: 1 to 16 */

/* What is wanted for one line of the score. */
typedef struct Wanted {
    const Advice *advice;
    const spz_line *line;
    const char *words;
    Ticks signed_to; /* where its bracket or its dashes end; its beginning: words alone */
} Wanted;

/* A text that stands over a part already: where it ends, by estimate, and how high it stands. */
typedef struct Standing {
    int staff, level;
    double end;
} Standing;

enum { LEVELS = 4 /* of texts over each other */, LEVEL_TENTHS = 15 /* MusicXML 4.0, tenths: a line and a half of the staff */ };

typedef struct MarkCollector {
    const SectionMap *map;
    const Speaker *speaker;
    Wishes *wishes;
    ARRAY(Wanted) wanted;
    uint32_t *used;                  /* by part: numbers of the score's own */
    Ticks busy[NUMBERS + 1];         /* of the part at hand: until when a number is taken */
    ARRAY(Standing) standing;        /* texts of the part at hand */
    double *bar_begins;              /* in tenths from the movement's beginning, by estimate */
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
    Ticks to = advice->to > advice->from ? advice->to : advice->from + 1;
    if (!line_sounds(group, line, advice->from, to))
        return false;
    if (advice->kind == ADVICE_DIVIDE && collector->map->lines[line].division != 0 && group->line_count > 1)
        return put_line_desks(collector, advice, line, out);
    advice_words(collector->speaker, advice, out);
    return true;
}

static void collect_line(MarkCollector *collector, const Advice *advice, Ticks signed_to, size_t line)
{
    Buffer words = {0};
    if (put_words_for_line(collector, advice, line, &words)) {
        const char *kept = buffer_failed(&words) ? NULL : arena_string(&collector->wishes->arena, words.text);
        Wanted wanted = {advice, &collector->map->lines[line], kept, signed_to};
        if (!kept || !array_push(&collector->wanted, wanted))
            collector->status = SPZ_NO_MEMORY;
    }
    buffer_free(&words);
}

static void collect(MarkCollector *collector, const AdviceList *list)
{
    Signing *signs = mark_order(list);
    for (size_t i = 0; signs && i < list->items.count; i++) {
        const Group *group = &collector->map->groups[list->items.at[i].group];
        for (size_t k = 0; k < group->line_count && !signs[i].dropped; k++)
            collect_line(collector, &list->items.at[i], signs[i].signed_to, group->lines[k]);
    }
    if (!signs)
        collector->status = SPZ_NO_MEMORY;
    memory_free(signs);
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

/* Whether `wanted` goes into the same text as the one before it: the same moment, part and staff. */
static bool is_same_place(const Wanted *a, const Wanted *b)
{
    return a->line->part == b->line->part && a->line->staff == b->line->staff && a->advice->from == b->advice->from;
}

/* What all of `count` wishes for one place say, each once (cellos and basses on one line, or two lines of a staff, want the same). NULL: no memory. */
static const char *joined_words(MarkCollector *collector, const Wanted *wanted, size_t count)
{
    Buffer text = {0};
    for (size_t i = 0; i < count; i++) {
        bool again = false;
        for (size_t k = 0; k < i && !again; k++)
            again = strcmp(wanted[k].words, wanted[i].words) == 0;
        if (!again)
            buffer_printf(&text, "%s%s", i ? "; " : "", wanted[i].words);
    }
    const char *kept = buffer_failed(&text) ? NULL : arena_string(&collector->wishes->arena, buffer_text(&text));
    buffer_free(&text);
    return kept;
}

static WishSign sign_of(const Wanted *wanted)
{
    if (wanted->signed_to <= wanted->advice->from)
        return WISH_WORDS;
    return wanted->advice->kind == ADVICE_WITH ? WISH_DASHES : WISH_BRACKET;
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

/* How wide bars and letters come out, in tenths of a staff space: a bar with its margin and something for each note of the fullest part, a letter of italics in
 * 12 points (common practice of engraving; only used to tell which texts would meet). */
enum { BAR_MARGIN = 60, NOTE_WIDTH = 22, LETTER_WIDTH = 9 };

static bool measure_bars(MarkCollector *collector)
{
    const Movement *movement = collector->map->movement;
    size_t *notes = memory_resize(NULL, movement->bar_count + 1, sizeof *notes);
    collector->bar_begins = memory_resize(NULL, movement->bar_count + 1, sizeof *collector->bar_begins);
    for (size_t bar = 0; notes && collector->bar_begins && bar <= movement->bar_count; bar++)
        collector->bar_begins[bar] = 0;
    for (size_t part = 0; notes && collector->bar_begins && part < movement->part_count; part++) {
        memset(notes, 0, (movement->bar_count + 1) * sizeof *notes);
        for (size_t i = 0; i < movement->parts[part].note_count; i++)
            notes[movement->parts[part].notes[i].bar] += !(movement->parts[part].notes[i].flags & NOTE_CHORD);
        for (size_t bar = 0; bar < movement->bar_count; bar++) {
            double width = BAR_MARGIN + (double)notes[bar] * NOTE_WIDTH;
            collector->bar_begins[bar + 1] = width > collector->bar_begins[bar + 1] ? width : collector->bar_begins[bar + 1];
        }
    }
    for (size_t bar = 0; notes && collector->bar_begins && bar < movement->bar_count; bar++)
        collector->bar_begins[bar + 1] += collector->bar_begins[bar];
    memory_free(notes);
    return notes && collector->bar_begins;
}

static double place_of(const MarkCollector *collector, const Advice *advice)
{
    const Bar *bar = &collector->map->movement->bars[advice->bar];
    double begin = collector->bar_begins[advice->bar], width = collector->bar_begins[advice->bar + 1] - begin;
    return begin + (bar->length > 0 ? width * (double)(advice->from - bar->onset) / (double)bar->length : 0);
}

/* The lowest height from `least` on at which the text meets no other of its staff; the highest where there is none. */
static int free_level(MarkCollector *collector, const Wanted *wanted, const char *words, int least)
{
    double begin = place_of(collector, wanted->advice);
    uint32_t taken = 0;
    for (size_t i = 0; i < collector->standing.count; i++)
        if (collector->standing.at[i].staff == wanted->line->staff && collector->standing.at[i].end > begin)
            taken |= UINT32_C(1) << collector->standing.at[i].level;
    int level = least;
    while (level < LEVELS && (taken >> level & 1))
        level++;
    Standing standing = {wanted->line->staff, level, begin + (double)utf8_columns(words, strlen(words)) * LETTER_WIDTH};
    if (!array_push(&collector->standing, standing))
        collector->status = SPZ_NO_MEMORY;
    return level;
}

static void wish_for_span(MarkCollector *collector, const Wanted *wanted, WishSign sign, int number)
{
    const Advice *advice = wanted->advice;
    Wish span = {.part = wanted->line->part, .staff = wanted->line->staff, .voice = wanted->line->voice, .sign = sign, .number = number};
    collector->busy[number] = wanted->signed_to;
    wish(collector, span, advice->from, advice->bar);
    span.stop = true;
    int last = movement_bar_at(collector->map->movement, wanted->signed_to - 1);
    wish(collector, span, wanted->signed_to, last < 0 ? advice->last_bar : (size_t)last);
}

static bool is_under_sign(const MarkCollector *collector, Ticks when)
{
    for (int number = 1; number <= NUMBERS; number++)
        if (collector->busy[number] > when)
            return true;
    return false;
}

/* The wishes for one place: one text, above the bracket or the dashes that begin there or lie there, and one sign at most. Words and sign are directions of their own:
 * programs that show only one sign of a direction then show both. */
static void wish_for(MarkCollector *collector, const Wanted *wanted, size_t count)
{
    const char *text = joined_words(collector, wanted, count);
    const Wanted *spanned = NULL;
    for (size_t i = 0; i < count && !spanned; i++)
        spanned = sign_of(&wanted[i]) == WISH_WORDS ? NULL : &wanted[i];
    bool under = is_under_sign(collector, wanted->advice->from);
    int number = spanned && !under ? free_number(collector, spanned) : 0;
    if (!text) {
        collector->status = SPZ_NO_MEMORY;
        return;
    }
    int level = free_level(collector, wanted, text, under || number ? 1 : 0);
    Wish words = {.part = wanted->line->part, .staff = wanted->line->staff, .voice = wanted->line->voice, .words = text, .raised = level * LEVEL_TENTHS};
    wish(collector, words, wanted->advice->from, wanted->advice->bar);
    if (number)
        wish_for_span(collector, spanned, sign_of(spanned), number);
}

static void free_numbers(MarkCollector *collector)
{
    for (int number = 0; number <= NUMBERS; number++)
        collector->busy[number] = -1;
    collector->standing.count = 0;
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
    if (!collector.status && !measure_bars(&collector))
        collector.status = SPZ_NO_MEMORY;
    for (size_t i = 0, end; i < collector.wanted.count && !collector.status; i = end) {
        if (i == 0 || collector.wanted.at[i].line->part != collector.wanted.at[i - 1].line->part)
            free_numbers(&collector);
        for (end = i + 1; end < collector.wanted.count && is_same_place(&collector.wanted.at[i], &collector.wanted.at[end]);)
            end++;
        wish_for(&collector, &collector.wanted.at[i], end - i);
    }
    memory_free(collector.bar_begins);
    array_free(&collector.standing);
    array_free(&collector.wanted);
    memory_free(collector.used);
    return collector.status;
}

void wishes_free(Wishes *wishes)
{
    array_free(&wishes->list);
    arena_release(&wishes->arena);
}
