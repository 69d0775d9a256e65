#include "editing/parts_advice.h"
#include "analysis/division/division_marks.h"
#include "wording/parts_words.h"
#include "wording/passage_words.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct Advisor {
    AdviceList *list;
    const SectionMap *map;
    const spz_findings *findings;
    const spz_settings *settings;
    const spz_ranked *seating; /* NULL: nothing judged */
    spz_status status;
} Advisor;

static const spz_ranked *seating_of(const spz_verdict *verdict, const char *name)
{
    for (size_t i = 0; verdict && i < spz_verdict_count(verdict); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        if (!name || strcmp(ranked->name, name) == 0)
            return ranked;
    }
    return NULL;
}

const char *advice_arrangement(const spz_movement_reading *reading, const spz_sheet_options *options)
{
    const spz_ranked *seating = seating_of(reading->verdict, options->arrangement);
    return seating ? seating->name : "";
}

/* Whether `name` stands at that end of 'Vn I, Vc, Va, Vn II'. */
static bool at_end(const char *order, const char *name, bool right)
{
    size_t length = strlen(name), all = strlen(order);
    if (all < length)
        return false;
    const char *at = right ? order + all - length : order;
    bool clear = right ? at == order || at[-1] == ' ' : at[length] == ',' || at[length] == '\0';
    return clear && memcmp(at, name, length) == 0;
}

static bool across(const Advisor *advisor, size_t a, size_t b)
{
    if (!advisor->seating || a >= advisor->map->group_count || b >= advisor->map->group_count)
        return false;
    const char *one = spz_section_name(advisor->map->groups[a].about.section);
    const char *two = spz_section_name(advisor->map->groups[b].about.section);
    const char *order = advisor->seating->order;
    return strcmp(one, two) != 0 && ((at_end(order, one, false) && at_end(order, two, true)) ||
                                     (at_end(order, two, false) && at_end(order, one, true)));
}

static size_t bar_at(const Movement *movement, Ticks when)
{
    int bar = movement_bar_at(movement, when);
    return bar < 0 ? 0 : (size_t)bar;
}

static void add(Advisor *advisor, Advice advice)
{
    const Movement *movement = advisor->map->movement;
    if (!advice.words || !advice.detail || advice.group >= advisor->map->group_count) {
        if (advice.group < advisor->map->group_count)
            advisor->status = SPZ_NO_MEMORY;
        return;
    }
    advice.bar = bar_at(movement, advice.from);
    advice.last_bar = bar_at(movement, advice.to > advice.from ? advice.to - 1 : advice.from);
    if (!array_push(&advisor->list->items, advice))
        advisor->status = SPZ_NO_MEMORY;
}

static void span_of(const spz_passage *passage, size_t group, Ticks *from, Ticks *to)
{
    bool found = false;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (entry->leader != group)
            continue;
        *from = !found || entry->onset < *from ? entry->onset : *from;
        *to = !found || entry->end > *to ? entry->end : *to;
        found = true;
    }
}

static void advise_antiphony(Advisor *advisor, const spz_passage *passage)
{
    Arena *arena = &advisor->list->arena;
    ChainOrder chain = parts_chain(passage);
    bool shared = passage->kind == SPZ_HOCKET || passage->kind == SPZ_SPLIT_LINE;
    for (size_t i = 0; i < chain.count && chain.count > 1; i++) {
        size_t group = chain.groups[i];
        if (group >= advisor->map->group_count)
            continue;
        bool far = chain.count == 2 && across(advisor, chain.groups[0], chain.groups[1]);
        Advice advice = {.kind = shared ? ADVICE_SHARE : i == 0 ? ADVICE_LEAD : ADVICE_ANSWER, .group = group, .passage = passage,
                         .from = passage->onset, .to = passage->end,
                         .words = parts_chain_words(arena, advisor->map, passage, &chain, i, far),
                         .detail = parts_entries(arena, advisor->map, passage, group)};
        span_of(passage, group, &advice.from, &advice.to);
        add(advisor, advice);
    }
}

/* The passage in a sentence, in the list's arena. */
static const char *told(Advisor *advisor, const spz_passage *passage)
{
    Speaker speaker = {SPZ_ENGLISH, advisor->map};
    Buffer words;
    buffer_init(&words);
    words_told(&speaker, passage, &words);
    const char *kept = buffer_failed(&words) ? NULL : arena_string(&advisor->list->arena, words.text);
    buffer_free(&words);
    return kept;
}

static void advise_coupling(Advisor *advisor, const spz_passage *passage)
{
    Arena *arena = &advisor->list->arena;
    for (int side = 0; side < 2; side++) {
        size_t own = passage->sides[side].group, other = passage->sides[1 - side].group;
        if (own >= advisor->map->group_count || other >= advisor->map->group_count)
            continue;
        const char *far = across(advisor, own, other) ? " across the stage" : "";
        add(advisor, (Advice){.kind = ADVICE_WITH, .group = own, .passage = passage, .from = passage->onset, .to = passage->end,
                              .words = arena_format(arena, "with %s%s", advisor->map->groups[other].about.name, far), .detail = told(advisor, passage)});
    }
}

/* Whether the score itself says between two moments that the group divides, or is one again. */
static bool score_says(const Advisor *advisor, size_t group, Ticks from, Ticks to, bool divided)
{
    const Group *body = &advisor->map->groups[group];
    for (size_t i = 0; i < body->line_count; i++) {
        const spz_line *line = &advisor->map->lines[body->lines[i]];
        const Part *part = &advisor->map->movement->parts[line->part];
        for (size_t m = 0; m < part->direction_count; m++) {
            const Direction *mark = &part->directions[m];
            DivisionWords words;
            if (mark->kind != DIRECTION_WORDS || mark->onset < from || mark->onset > to || !mark->text)
                continue;
            if (line->staff && mark->staff && mark->staff != line->staff)
                continue;
            if (division_words_read(mark->text, &words) && (divided ? words.divided : words.unison || words.all))
                return true;
        }
    }
    return false;
}

/* First sound of the group at or after `when`; -1 when it plays no more. */
static Ticks next_sound(const Group *group, Ticks when)
{
    for (size_t i = 0; i < group->sound_count; i++)
        if (group->sounds[i].onset >= when)
            return group->sounds[i].onset;
    return -1;
}

static bool divides(const spz_passage *passage, const SectionMap *map, size_t group)
{
    if (passage->kind != SPZ_DIV2 && passage->kind != SPZ_DIV3)
        return false;
    if (passage->sides[0].group != SIZE_MAX)
        return passage->sides[0].group == group;
    const spz_group *about = &map->groups[group].about;

    return !about->solo && (passage->sides[0].section == SPZ_VIOLINS ? section_is_violin(about->section) : passage->sides[0].section == about->section);
}

/* Whether the group divides anywhere between two moments; `alone`: by itself, not only as one of all violins. */
static bool divides_between(const Advisor *advisor, size_t group, Ticks from, Ticks to, bool alone)
{
    for (size_t i = 0; i < spz_findings_count(advisor->findings); i++) {
        const spz_passage *passage = spz_findings_at(advisor->findings, i);
        bool counts = divides(passage, advisor->map, group) && !(alone && passage->sides[0].section == SPZ_VIOLINS);
        if (counts && passage->onset < to && from < passage->end)
            return true;
    }
    return false;
}

/* Whether the group itself plays several notes at once most of the time; a section that is one line of all violins doesn't. */
static bool plays_several(const Group *group, Ticks from, Ticks to)
{
    size_t moments = 0, several = 0;
    for (size_t i = 0; i < group->sound_count && group->sounds[i].onset < to; i++) {
        const GroupSound *now = &group->sounds[i];
        if (now->onset < from || (i > 0 && now[-1].onset == now->onset))
            continue;
        moments++;
        several += i + 1 < group->sound_count && now[1].onset == now->onset && now[1].note->midi != now->note->midi;
    }
    return 2 * several >= moments && moments > 0;
}

static void advise_unison(Advisor *advisor, const spz_passage *passage, size_t group)
{
    const Bar *last = &advisor->map->movement->bars[passage->last];
    if (passage->sides[0].section == SPZ_VIOLINS && !plays_several(&advisor->map->groups[group], passage->onset, passage->end))
        return;
    Ticks again = next_sound(&advisor->map->groups[group], passage->end);
    if (again < 0 || divides_between(advisor, group, again, again + 1, false) || score_says(advisor, group, last->onset, again, false))
        return;
    add(advisor, (Advice){.kind = ADVICE_UNISON, .group = group, .passage = passage, .from = again, .to = again, .words = "unis.", .detail = ""});
}

/* What each line of the division gets to read: for scores that give each line a staff of its own. */
static void name_line_desks(Advisor *advisor, const spz_allotment *allotment, Advice *advice)
{
    Arena *arena = &advisor->list->arena;
    int lines = allotment ? spz_allotment_lines(allotment) : 0;
    if (lines == 0)
        return;
    advice->line_desks = arena_take(arena, (size_t)lines, sizeof *advice->line_desks);
    for (int line = 1; advice->line_desks && line <= lines; line++) {
        const char *desks = parts_line_desks(arena, allotment, advisor->map->groups[advice->group].about.section, line);
        advice->line_desks[line - 1] = desks ? desks : "";
        if (!desks)
            advisor->status = SPZ_NO_MEMORY;
    }
    advice->line_count = advice->line_desks ? lines : 0;
    if (!advice->line_desks)
        advisor->status = SPZ_NO_MEMORY;
}

static void advise_divided(Advisor *advisor, const spz_passage *passage, size_t group)
{
    Arena *arena = &advisor->list->arena;
    const Movement *movement = advisor->map->movement;
    spz_allotment *allotment = NULL;
    if (passage->sides[0].section == SPZ_VIOLINS && divides_between(advisor, group, passage->onset, passage->end, true))
        return; /* its own lines are in its part */
    spz_status made = spz_allotment_of(passage, advisor->settings, &allotment); /* fewer players than lines: no desks to name */
    if (made == SPZ_NO_MEMORY)
        advisor->status = made;
    const Bar *first = &movement->bars[passage->first];
    bool said = score_says(advisor, group, first->onset, passage->onset, true);
    Advice advice = {.kind = ADVICE_DIVIDE, .group = group, .passage = passage, .from = passage->onset, .to = passage->end,
                     .words = parts_division(arena, passage, allotment, said),
                     .detail = parts_desks(arena, allotment, advisor->map->groups[group].about.section)};
    if (passage->sides[0].section != SPZ_VIOLINS)
        name_line_desks(advisor, allotment, &advice);
    add(advisor, advice);
    advise_unison(advisor, passage, group);
    spz_allotment_free(allotment);
}

static void advise(Advisor *advisor, const spz_passage *passage)
{
    if (spz_kind_is_antiphony(passage->kind))
        advise_antiphony(advisor, passage);
    else if (passage->kind == SPZ_COUPLING)
        advise_coupling(advisor, passage);
    else
        for (size_t group = 0; group < advisor->map->group_count; group++)
            if (divides(passage, advisor->map, group))
                advise_divided(advisor, passage, group);
}

static int in_order(const void *a, const void *b)
{
    const Advice *one = a, *two = b;
    if (one->group != two->group)
        return one->group < two->group ? -1 : 1;
    if (one->from != two->from)
        return one->from < two->from ? -1 : 1;
    if (one->kind != two->kind)
        return one->kind < two->kind ? -1 : 1;
    if (one->to != two->to)
        return one->to < two->to ? -1 : 1;
    return strcmp(one->words, two->words);
}

/* The same words at the same moment are written once. */
static void drop_repeated(AdviceList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->items.count; i++) {
        const Advice *now = &list->items.at[i], *last = kept ? &list->items.at[kept - 1] : NULL;
        if (last && last->group == now->group && last->from == now->from && strcmp(last->words, now->words) == 0)
            continue;
        list->items.at[kept++] = *now;
    }
    list->items.count = kept;
}

spz_status advice_find(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                       AdviceList *list)
{
    memset(list, 0, sizeof *list);
    arena_init(&list->arena);
    Advisor advisor = {list, reading->sections, reading->findings, settings, seating_of(reading->verdict, options->arrangement), SPZ_OK};
    if (options->arrangement && !advisor.seating && reading->verdict && spz_verdict_count(reading->verdict))
        return SPZ_BAD_ARGUMENT;
    for (size_t i = 0; i < spz_findings_count(reading->findings) && !advisor.status; i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        bool wanted = !options->kinds || (options->kinds & 1u << passage->kind);
        if (wanted && passage->strength >= options->strength)
            advise(&advisor, passage);
    }
    if (list->items.count)
        qsort(list->items.at, list->items.count, sizeof *list->items.at, in_order);
    drop_repeated(list);
    return advisor.status;
}

void advice_free(AdviceList *list)
{
    array_free(&list->items);
    arena_release(&list->arena);
}

static const char *ordinal(int number)
{
    static const char *const words[] = {"first", "second", "third", "fourth", "fifth", "sixth"};
    return number >= 1 && number <= 6 ? words[number - 1] : "later";
}

static char *endings_text(uint32_t endings, char text[PASS_TEXT])
{
    size_t length = 0;
    for (int n = 1; n <= 6 && length < PASS_TEXT; n++)
        if (endings & UINT32_C(1) << (n - 1))
            length += (size_t)snprintf(text + length, PASS_TEXT - length, "%s%s", length ? ", " : "", ordinal(n));
    if (length < PASS_TEXT)
        snprintf(text + length, PASS_TEXT - length, " time");
    return text;
}

char *advice_pass(const Movement *movement, size_t bar, char text[PASS_TEXT])
{
    size_t times = 0;
    text[0] = '\0';
    if (bar >= movement->bar_count || movement->played_broken)
        return text;
    if (movement->bars[bar].ending & 0x3F)
        return endings_text(movement->bars[bar].ending, text);
    for (size_t i = 0; i < movement->played_count; i++)
        times += (size_t)movement->played[i] == bar;
    if (times == 2)
        snprintf(text, PASS_TEXT, "both times");
    else if (times > 2)
        snprintf(text, PASS_TEXT, "all %zu times", times);
    return text;
}
