#include "advice/parts_advice.h"
#include "advice/page_turns.h"
#include "sections/names/division_marks.h"
#include "model/durations.h"
#include "support/text/ascii.h"
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

typedef struct Advisor {
    AdviceList *list;
    const SectionMap *map;
    const spz_findings *findings;
    const spz_settings *settings;
    const spz_ranked *seating; /* NULL: nothing judged */
    int orchestras;
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

/* Groups that have no part of their own. */
static spz_players shared_parts(const SectionMap *map)
{
    spz_players shared = 0;
    for (size_t group = 0; group < map->group_count && group < 63; group++)
        shared |= map->groups[group].shares_bass ? (spz_players)1 << group : 0;
    return shared;
}

/* At which end of the stage the group sits: -1 left, 1 right, 0 neither. Of two orchestras each has one end, and its own first section sits there. */
static int end_of_stage(const Advisor *advisor, size_t group)
{
    const spz_order *order = &advisor->seating->order;
    const spz_group *about = &advisor->map->groups[group].about;
    bool first = about->section == order->sections[0], last = about->section == order->sections[order->count - 1];
    if (advisor->orchestras > 1)
        return first && about->orchestra == 1 ? -1 : first && about->orchestra == 2 ? 1 : 0;
    return first == last ? 0 : first ? -1 : 1;
}

/* Whether the group sits at one end of the stage and all of `players` at the other. */
static bool across(const Advisor *advisor, size_t group, spz_players players)
{
    int own = advisor->seating && !advisor->map->chamber_music ? end_of_stage(advisor, group) : 0;
    bool all = own != 0 && players && !(players & SPZ_WIND_PLAYERS);
    for (size_t other = 0; all && other < advisor->map->group_count && other < 63; other++)
        all = !(players >> other & 1) || end_of_stage(advisor, other) == -own;
    return all;
}

static size_t bar_at(const Movement *movement, Ticks when)
{
    int bar = movement_bar_at(movement, when);
    return bar < 0 ? 0 : (size_t)bar;
}

static size_t last_bar(const Movement *movement, const Advice *advice)
{
    return bar_at(movement, advice->to > advice->from ? advice->to - 1 : advice->from);
}

static void add(Advisor *advisor, Advice advice)
{
    const Movement *movement = advisor->map->movement;
    advice.bar = bar_at(movement, advice.from);
    advice.last_bar = last_bar(movement, &advice);
    if (!array_push(&advisor->list->items, advice))
        advisor->status = SPZ_NO_MEMORY;
}

static bool takes_part(const spz_entry *entry, size_t group)
{
    return group < 63 && (entry->players >> group & 1);
}

/* The link in whose entries the group is counted: its own, or that of those whom it doubles; link_count for none. */
static size_t link_of(const spz_passage *passage, size_t group)
{
    for (size_t link = 0; link < passage->link_count && group < 63; link++)
        if (passage->links[link].players >> group & 1)
            return link;
    return passage->link_count;
}

/* Whether the entry is one of the group's: in its own link; where it has none there, those that it takes part in; else those of the players whom it doubles. */
static bool is_own_entry(const spz_passage *passage, size_t index, size_t group, size_t link)
{
    const spz_entry *entry = &passage->entries[index];
    bool alone = false, any = false;
    for (size_t i = 0; i < passage->entry_count; i++) {
        bool part = takes_part(&passage->entries[i], group);
        any = any || part;
        alone = alone || (part && passage->entries[i].link == link);
    }
    return alone ? takes_part(entry, group) && entry->link == link : any ? takes_part(entry, group) : entry->link == link;
}

/* The group's entries: from the first to the last, and who is in all of them; `*link` is theirs. False: it has none. */
static bool own_entries(const SectionMap *map, const spz_passage *passage, Advice *advice, size_t *link)
{
    bool found = false;
    *link = link_of(passage, advice->group);
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!is_own_entry(passage, i, advice->group, *link))
            continue;
        advice->from = found && advice->from < entry->onset ? advice->from : entry->onset;
        advice->to = found && advice->to > entry->end ? advice->to : entry->end;
        advice->with = found ? advice->with & entry->players : entry->players;
        if (!found && *link >= passage->link_count)
            *link = entry->link;
        found = true;
    }
    advice->with &= ~((spz_players)1 << advice->group) & ~shared_parts(map);
    return found && *link < passage->link_count;
}

/* Who has the gesture before and after the link: the nearest that begin earlier and later. Those that begin with it neither lead nor follow it. */
static void neighbours(const spz_passage *passage, size_t link, Advice *advice)
{
    spz_players own = advice->with | passage->links[link].players | (spz_players)1 << advice->group;
    Ticks when = passage->links[link].enters;
    for (size_t i = link; i-- > 0 && !advice->before;)
        advice->before = passage->links[i].enters < when ? passage->links[i].players & ~own : 0;
    for (size_t i = link + 1; i < passage->link_count && !advice->after; i++)
        advice->after = passage->links[i].enters > when ? passage->links[i].players & ~own : 0;
}

static void advise_player(Advisor *advisor, const spz_passage *passage, size_t group)
{
    Advice advice = {.group = group, .passage = passage};
    size_t link = 0;
    if (!own_entries(advisor->map, passage, &advice, &link))
        return;
    neighbours(passage, link, &advice);
    bool shared = passage->kind == SPZ_HOCKET || passage->kind == SPZ_SPLIT_LINE || (link == 0 ? !advice.after : !advice.before);
    advice.kind = shared ? ADVICE_SHARE : link == 0 ? ADVICE_LEAD : ADVICE_ANSWER;
    spz_players own = advice.with | (spz_players)1 << group | shared_parts(advisor->map);
    advice.across = passage->link_count == 2 && across(advisor, group, passage->links[1 - link].players & ~own);
    add(advisor, advice);
}

static void advise_antiphony(Advisor *advisor, const spz_passage *passage)
{
    for (size_t group = 0; passage->link_count > 1 && group < advisor->map->group_count; group++)
        if (!advisor->map->groups[group].shares_bass) /* basses that read the cellos' part find it there */
            advise_player(advisor, passage, group);
}

static void advise_coupling(Advisor *advisor, const spz_passage *passage)
{
    for (int side = 0; side < 2; side++) {
        size_t own = passage->sides[side].group, other = passage->sides[1 - side].group;
        if (own >= advisor->map->group_count || other >= advisor->map->group_count)
            continue;
        spz_players with = passage->sides[1 - side].players;
        add(advisor, (Advice){.kind = ADVICE_WITH, .group = own, .passage = passage, .from = passage->onset, .to = passage->end,
                              .with = with, .across = across(advisor, own, with)});
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
    bool joined = passage->sides[0].section == SPZ_VIOLINS && !plays_several(&advisor->map->groups[group], passage->onset, passage->end);
    Ticks again = next_sound(&advisor->map->groups[group], passage->end);
    if (again < 0 || divides_between(advisor, group, again, again + 1, false) || score_says(advisor, group, last->onset, again, false))
        return;
    add(advisor, (Advice){.kind = ADVICE_UNISON, .group = group, .passage = passage, .from = again, .to = again, .joined = joined});
}

/* Who reads which line, kept by the list; NULL where there are fewer players than lines. */
static const spz_allotment *share_out(Advisor *advisor, const spz_passage *passage)
{
    spz_allotment *allotment = NULL;
    spz_status made = spz_allotment_of(passage, advisor->settings, &allotment);
    if (made == SPZ_NO_MEMORY || (allotment && !array_push(&advisor->list->allotments, allotment))) {
        spz_allotment_free(allotment);
        advisor->status = SPZ_NO_MEMORY;
        return NULL;
    }
    return allotment;
}

static void advise_divided(Advisor *advisor, const spz_passage *passage, size_t group)
{
    const Bar *first = &advisor->map->movement->bars[passage->first];
    spz_shortage shortage = {0};
    if (passage->sides[0].section == SPZ_VIOLINS && divides_between(advisor, group, passage->onset, passage->end, true))
        return; /* its own lines are in its part */
    if (!spz_division_short(passage, advisor->settings, &shortage))
        shortage.needs = 0;
    add(advisor, (Advice){.kind = ADVICE_DIVIDE, .shortage = shortage, .group = group, .passage = passage, .from = passage->onset, .to = passage->end,
                          .said = score_says(advisor, group, first->onset, passage->onset, true), .allotment = share_out(advisor, passage)});
    advise_unison(advisor, passage, group);
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
    return one->passage < two->passage ? -1 : one->passage > two->passage;
}

/* Whether two say the same in the same place. */
static bool same_advice(const Advice *a, const Advice *b)
{
    bool same = a->group == b->group && a->from == b->from && a->kind == b->kind && a->before == b->before && a->after == b->after &&
                a->with == b->with && a->across == b->across;
    if (a->kind == ADVICE_UNISON)
        return same;
    return same && a->to == b->to && a->passage->kind == b->passage->kind && a->passage->turns == b->passage->turns &&
           a->passage->sides[0].section == b->passage->sides[0].section;
}

/* Whether the advice only says with whom the group moves where another already says that they lead or answer together, all the while. */
static bool said_already(const AdviceList *list, const Advice *advice)
{
    bool said = false;
    for (size_t i = 0; i < list->items.count && advice->kind == ADVICE_WITH && !said; i++) {
        const Advice *other = &list->items.at[i];
        said = other->kind != ADVICE_WITH && other->group == advice->group && other->with && (other->with & advice->with) == advice->with &&
               other->from <= advice->from && advice->to <= other->to;
    }
    return said;
}

static void drop_repeated(AdviceList *list)
{
    size_t kept = 0;
    for (size_t i = 0; i < list->items.count; i++)
        if ((!kept || !same_advice(&list->items.at[kept - 1], &list->items.at[i])) && !said_already(list, &list->items.at[i]))
            list->items.at[kept++] = list->items.at[i];
    list->items.count = kept;
}

spz_status advice_find(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                       AdviceList *list)
{
    memset(list, 0, sizeof *list);
    Advisor advisor = {list, reading->sections, reading->findings, settings, seating_of(reading->verdict, options->arrangement),
                       spz_verdict_orchestras(reading->verdict), SPZ_OK};
    if (options->arrangement && !advisor.seating && reading->verdict && spz_verdict_count(reading->verdict))
        return SPZ_BAD_ARGUMENT;
    for (size_t i = 0; i < spz_findings_count(reading->findings) && !advisor.status; i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        bool wanted = !options->kinds || (options->kinds & 1u << passage->kind);
        if (wanted && passage->ruling.kind != SPZ_VETOED && passage->strength >= options->strength)
            advise(&advisor, passage);
    }
    if (list->items.count)
        qsort(list->items.at, list->items.count, sizeof *list->items.at, in_order);
    drop_repeated(list);
    if (!advisor.status && !page_turns_find(list, reading->sections))
        advisor.status = SPZ_NO_MEMORY;
    return advisor.status;
}

void advice_free(AdviceList *list)
{
    for (size_t i = 0; i < list->allotments.count; i++)
        spz_allotment_free(list->allotments.at[i]);
    array_free(&list->allotments);
    array_free(&list->turns);
    array_free(&list->items);
}

AdvicePass advice_pass(const Movement *movement, size_t bar)
{
    AdvicePass pass = {0};
    if (bar >= movement->bar_count || movement->played_broken)
        return pass;
    pass.endings = movement->bars[bar].ending & 0x3F;
    pass.times = pass.endings ? 0 : movement_times_played(movement, bar);
    pass.times = pass.times > 1 ? pass.times : 0;
    return pass;
}
