/* What a sentence may claim of a dialogue: who has the gesture, as the notes show it, in order of their first answer; and who leads, where one of the two
 * does. An answer is told only where it sounds like what was told before it, and where it is heard as one: not where the players whom it answers play the
 * same notes along with it. */
#include "citations/citation_facts.h"
#include "citations/tune.h"
#include "sections/section_map.h"
#include <stdint.h>

static const struct {
    double alike;   /* from here on an answer is like its call (tune_alike) */
    double alike_fragment; /* likewise in a hocket, whose turns are single notes */
    double more;    /* times as many notes must show a later beginning */
    double doubled; /* share of the answer's notes from which on its caller plays them too */
    double same;    /* share of the notes that two have in the same intervals, from which on they have the same (tune_same) */
} rule = {.alike = 0.7, .alike_fragment = 0.5, .more = 3, .doubled = 0.9, .same = 0.8};
/* Notes that show that two have the same, and how many different ones of them; fewer happen by chance (common practice, no source). */
enum { THEME_NOTES = 8, SAME_NOTES = 4, SWAPPED_NOTES = 3, SWAPPED_PITCHES = 3 };

static const Group *leader_of(const SectionMap *map, const spz_entry *entry)
{
    const Group *group = map && entry->leader < map->group_count ? &map->groups[entry->leader] : NULL;
    return group && group->sound_count ? group : NULL;
}

/* What was done to a call, as tune_alike asks. */
typedef struct Manner {
    int stretch, mirror;
} Manner;

/* Notes in which the one is the other again in that manner, whole or as far as the shorter of them goes; 0 where it is not. */
static size_t notes_met(const Tune *call, const Group *calling, const Tune *answer, const Group *answering, Manner manner, double least)
{
    Ticks called = call->count ? call->notes[0].onset : 0, answered = answer->count ? answer->notes[0].onset : 0;
    size_t notes = tune_alike(call, answering, answered, manner.stretch, manner.mirror) >= least ? call->count : 0;
    return answer->count > notes && tune_alike(answer, calling, called, -manner.stretch, manner.mirror) >= least ? answer->count : notes;
}

/* Is the answer heard as one, or do those whom it answers play it too, or its beginning? */
static bool is_heard(const Tune *answer, const Group *calling, bool behind)
{
    Tune beginning = *answer;
    beginning.count = beginning.count < 2 ? beginning.count : 2;
    return tune_doubled(answer, calling) < rule.doubled && !(behind && tune_doubled(&beginning, calling) >= 1);
}

/* Notes that show that the one answers the other, as it is or as it was changed; 0: nothing does. What no stave shows (of winds) is taken for what the
 * passage says. */
static size_t notes_alike(const SectionMap *map, spz_kind kind, const spz_entry *call, const spz_entry *answer)
{
    const Group *calling = leader_of(map, call), *answering = leader_of(map, answer);
    double least = kind == SPZ_HOCKET ? rule.alike_fragment : rule.alike;
    Tune one, two;
    if (!calling || !answering)
        return 1;
    tune_take(calling, call->onset, call->end, &one);
    tune_take(answering, answer->onset, answer->end, &two);
    size_t plain = notes_met(&one, calling, &two, answering, (Manner){0, 1}, least);
    size_t changed = notes_met(&one, calling, &two, answering, (Manner){answer->change.stretch, answer->change.inverted ? -1 : 1}, least);
    return is_heard(&two, calling, answer->onset >= call->end) ? (plain < changed ? changed : plain) : 0;
}

static spz_players lead(const spz_entry *entry)
{
    return entry->leader < 63 ? (spz_players)1 << entry->leader : entry->players;
}

/* Notes in which the entry is like one of those told; 0: it is like none. */
static size_t notes_like_told(const SectionMap *map, const Citation *citation, const spz_entry *entry)
{
    size_t most = 0;
    for (size_t i = 0; i < citation->told_count; i++) {
        const spz_entry *told = &citation->passage->entries[citation->told_entry[i]];
        bool other = told->onset < entry->onset && !(told->players & lead(entry));
        size_t notes = other ? notes_alike(map, citation->passage->kind, told, entry) : 0;
        most = notes > most ? notes : most;
    }
    return most;
}

/* A link in which both sides of the passage stand tells nothing of who is told. */
static bool is_mixed(const spz_passage *passage, size_t link)
{
    return link < passage->link_count && (passage->links[link].players & passage->sides[0].players & ~passage->sides[1].players) &&
           (passage->links[link].players & passage->sides[1].players & ~passage->sides[0].players);
}

static bool is_told(const Citation *citation, const spz_entry *entry)
{
    const spz_passage *passage = citation->passage;
    for (size_t i = 0; i < citation->told_count; i++)
        if ((citation->told[i].players & lead(entry)) || (passage->entries[citation->told_entry[i]].link == entry->link && !is_mixed(passage, entry->link)))
            return true;
    return false;
}

static void tell(Citation *citation, size_t index)
{
    const spz_entry *entry = &citation->passage->entries[index];
    if (citation->told_count < TOLD_MOST) {
        citation->told[citation->told_count] = (spz_link){entry->players, entry->onset, entry->bar};
        citation->told_entry[citation->told_count++] = index;
    }
}

/* The first, then everybody's first answer to one of those before. Returns the notes that show it. */
static size_t tell_from(const SectionMap *map, Citation *citation, size_t first)
{
    const spz_passage *passage = citation->passage;
    size_t shown = 0;
    citation->told_count = 0;
    tell(citation, first);
    for (size_t i = first + 1; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        size_t notes = entry->answer && !is_told(citation, entry) ? notes_like_told(map, citation, entry) : 0;
        if (notes)
            tell(citation, i);
        shown += notes;
    }
    return shown;
}

static size_t answers_of(const SectionMap *map, const Citation *citation, size_t told)
{
    const spz_passage *passage = citation->passage;
    size_t count = 0;
    for (size_t i = citation->told_entry[told]; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        count += entry->answer && (citation->told[told].players & lead(entry)) && notes_like_told(map, citation, entry);
    }
    return count;
}

/* A body of players that answers but once, where another answers again and again, is passing. Entries of a fugue come once each. */
static void leave_out_passing(const SectionMap *map, Citation *citation)
{
    size_t answers[TOLD_MOST] = {0}, most = 0, kept = 1;
    if (citation->passage->kind == SPZ_IMITATION || citation->told_count < 3)
        return;
    for (size_t i = 1; i < citation->told_count; i++) {
        answers[i] = answers_of(map, citation, i);
        most = answers[i] > most ? answers[i] : most;
    }
    for (size_t i = 1; i < citation->told_count; i++) {
        if (most > 1 && answers[i] < 2)
            continue;
        citation->told[kept] = citation->told[i];
        citation->told_entry[kept++] = citation->told_entry[i];
    }
    citation->told_count = kept;
}

/* Are the two told whom the passage names, one against the other? */
static bool tells_the_sides(const Citation *citation)
{
    const spz_side *sides = citation->passage->sides;
    for (size_t i = 0; i < citation->told_count; i++)
        for (size_t k = 0; k < citation->told_count; k++) {
            spz_players one = citation->told[i].players, two = citation->told[k].players;
            if (i != k && (one & sides[0].players) && (two & sides[1].players) && !(one & two))
                return true;
        }
    return !sides[0].players || !sides[1].players;
}

static bool is_of_both(const spz_passage *passage, const spz_entry *entry)
{
    return (entry->players & passage->sides[0].players) && (entry->players & passage->sides[1].players);
}

/* Tells from there on; 0 where that is not what the passage is about. Where all begin together nobody begins. */
static size_t tell_well(const SectionMap *map, Citation *citation, size_t first)
{
    if (is_of_both(citation->passage, &citation->passage->entries[first]))
        return 0;
    size_t shown = tell_from(map, citation, first);
    leave_out_passing(map, citation);
    return citation->told_count > 1 && tells_the_sides(citation) ? shown : 0;
}

/* From the first entry that is answered; but where its answer is itself a theme, answered in many times as many notes, that theme is what is passed on.
 * False where nothing is answered. */
static bool tell_entries(const SectionMap *map, Citation *citation)
{
    size_t first = 0, shown = 0;
    while (first < citation->passage->entry_count && !(shown = tell_well(map, citation, first)))
        first++;
    if (!shown) {
        citation->told_count = 0;
        return false;
    }
    size_t theme = tell_well(map, citation, citation->told_entry[1]);
    if (theme < THEME_NOTES || (double)theme < rule.more * (double)shown)
        tell_well(map, citation, first);
    return true;
}

/* Where single notes fly to and fro many times nobody follows who of several came second: the two sides are told. */
static void tell_sides(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    size_t told[2] = {SIZE_MAX, SIZE_MAX};
    for (size_t i = passage->entry_count; i-- > 0;)
        for (int side = 0; side < 2; side++)
            if (lead(&passage->entries[i]) & passage->sides[side].players & ~passage->sides[1 - side].players)
                told[side] = i;
    if (told[0] == SIZE_MAX || told[1] == SIZE_MAX)
        return;
    int first = told[1] < told[0];
    citation->told_count = 0;
    for (int i = 0; i < 2; i++) {
        tell(citation, told[first ^ i]);
        citation->told[i].players = passage->sides[first ^ i].players;
    }
}

static void tell_links(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    for (citation->told_count = 0; citation->told_count < passage->link_count && citation->told_count < TOLD_MOST; citation->told_count++) {
        citation->told[citation->told_count] = passage->links[citation->told_count];
        citation->told_entry[citation->told_count] = SIZE_MAX;
    }
}

/* The shortest way from an entry of the one to the next entry of the other: from a call to an answer, or back; negative where there is none. */
static spz_ticks shortest(const spz_passage *passage, bool to_answer)
{
    spz_ticks best = -1;
    for (size_t i = 1; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i], *before = entry - 1;
        spz_ticks way = entry->onset - before->onset;
        if (entry->answer == to_answer && before->answer != to_answer && way > 0 && (best < 0 || way < best))
            best = way;
    }
    return best;
}

/* Has another body of strings the first call already, as far before it as its answer comes after it, or up to twice as far? Then who begins depends on
 * where one begins to listen. */
static bool was_heard_before(const SectionMap *map, const spz_entry *call, spz_ticks lag)
{
    const Group *calling = leader_of(map, call);
    Tune tune;
    if (!calling)
        return false;
    tune_take(calling, call->onset, call->end < call->onset + lag ? call->end : call->onset + lag, &tune);
    tune.count = tune.count < THEME_NOTES ? tune.count : THEME_NOTES; /* how it begins */
    for (size_t g = 0; g < map->group_count && tune.count >= SAME_NOTES; g++) {
        const Group *group = &map->groups[g];
        if (call->players >> g & 1)
            continue;
        for (size_t at = group_sound_at(group, call->onset - 2 * lag); at < group->sound_count && group->sounds[at].onset < call->onset; at++)
            if (tune_same(&tune, group, group->sounds[at].onset) > rule.same)
                return true;
    }
    return false;
}

static bool has_pitches(const Tune *tune, size_t least)
{
    size_t different = 0;
    for (size_t i = 0; i < tune->count; i++) {
        size_t k = 0;
        while (k < i && tune->notes[k].place != tune->notes[i].place)
            k++;
        different += k == i;
    }
    return different >= least;
}

/* Has the caller under the answer what the answerer had under the call? */
static bool is_swapped(const SectionMap *map, const spz_entry *call, const spz_entry *answer)
{
    const Group *calling = leader_of(map, call), *answering = leader_of(map, answer);
    Tune under;
    if (!calling || !answering || call->end > answer->onset)
        return false;
    tune_take(answering, call->onset, call->end, &under);
    return under.count >= SWAPPED_NOTES && has_pitches(&under, SWAPPED_PITCHES) &&
           tune_same(&under, calling, under.notes[0].onset + answer->onset - call->onset) >= rule.same;
}

/* Two who go to and fro: the first of them to be heard leads where the passage names it first, nobody had it before, and the way to the other is the
 * shorter one; where it goes evenly, as long as who began is still remembered (common practice, no source). */
enum { REMEMBERED = 8 };

static bool is_led(const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    bool named_first = !passage->sides[0].players || (citation->told[0].players & passage->sides[0].players);
    spz_ticks there = shortest(passage, true), back = shortest(passage, false);
    bool evenly = there >= 0 && back >= 0 && there >= back && (there > back || passage->entry_count >= REMEMBERED);
    return citation->told_count != 2 || (named_first && !evenly && !citation->swapped && !citation->heard_before);
}

static void look_around(const SectionMap *map, Citation *citation)
{
    const spz_entry *first = &citation->passage->entries[citation->told_entry[0]], *second = &citation->passage->entries[citation->told_entry[1]];
    citation->heard_before = was_heard_before(map, first, second->onset - first->onset);
    citation->swapped = citation->told_count == 2 && is_swapped(map, first, second);
}

void citation_tell(const spz_sections *map, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    if (!spz_kind_is_antiphony(passage->kind))
        return;
    bool entries = passage->kind != SPZ_SPLIT_LINE && passage->link_count > 1, told = entries && tell_entries(map, citation);
    bool leads = passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_IMITATION;
    citation->borne_out = told || !entries;
    if (told && passage->kind == SPZ_HOCKET && citation->told_count > 2 && passage->entry_count > 2 * citation->told_count)
        tell_sides(citation);
    if (told)
        look_around(map, citation);
    else
        tell_links(citation);
    citation->led = leads ? is_led(citation) : citation->told_count > 2;
}

size_t citation_named_first(const Citation *citation)
{
    spz_players one = citation->told[0].players, two = citation->told[1].players;
    return !citation->led && citation->told_count == 2 && one && two && (two & -two) < (one & -one);
}
