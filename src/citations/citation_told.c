/* What a sentence may claim of a dialogue: who has the gesture, as the notes show it, in order of their first answer; and who leads, where one of the two
 * does. An answer is told only where it sounds like what was told before it, and where it is heard as one: not where the players whom it answers play the
 * same notes along with it. */
#include "citations/citation_facts.h"
#include "citations/likeness.h"
#include "sections/section_map.h"
#include <stdint.h>

static const double much_more = 3; /* times as many notes must show a later beginning (set by hand) */

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

/* An answer in so many times fewer notes than another is a scrap of what goes round (set by hand). */
enum { LITTLE = 3 };

/* What one round of telling shows: notes of all answers, and of the longest. */
typedef struct Shown {
    size_t notes, most;
} Shown;

/* The first, then everybody's first answer to one of those before, but for scraps of `most` notes. */
static Shown tell_round(const SectionMap *map, Citation *citation, size_t first, size_t most)
{
    const spz_passage *passage = citation->passage;
    Shown shown = {0, 0};
    citation->told_count = 0;
    tell(citation, first);
    for (size_t i = first + 1; i < citation->entries; i++) {
        const spz_entry *entry = &passage->entries[i];
        size_t notes = is_told(citation, entry) ? 0 : notes_like_told(map, citation, entry);
        bool next = passage->kind == SPZ_IMITATION && citation->told_count == 1 && notes >= THEME_NOTES; /* the first to have a fugue's subject next */
        if ((!entry->answer && !next) || !notes || LITTLE * notes < most)
            continue;
        tell(citation, i);
        shown.notes += notes;
        shown.most = notes > shown.most ? notes : shown.most;
    }
    return shown;
}

/* Returns the notes that show it. */
static size_t tell_from(const SectionMap *map, Citation *citation, size_t first)
{
    return tell_round(map, citation, first, tell_round(map, citation, first, 0).most).notes;
}

static size_t answers_of(const SectionMap *map, const Citation *citation, size_t told)
{
    const spz_passage *passage = citation->passage;
    spz_players own = citation->told[told].players;
    size_t count = 0;
    for (size_t i = 0; i < told; i++)
        own &= ~citation->told[i].players;
    for (size_t i = citation->told_entry[told]; i < citation->entries; i++) {
        const spz_entry *entry = &passage->entries[i];
        bool answers = entry->answer || i == citation->told_entry[told];
        count += answers && (own & lead(entry)) && notes_like_told(map, citation, entry);
    }
    return count;
}

/* A body of players that answers but once, where another answers again and again, is passing; and one that answers seldom, where another does many times as
 * often, unless nobody else of its side is told. Entries of a fugue come once each. */
enum { SELDOM = 4, SELDOM_IN_IMITATION = 6 }; /* set by hand */

/* Is it the only one told of a side that the passage names? */
static bool speaks_alone(const Citation *citation, size_t told)
{
    const spz_side *sides = citation->passage->sides;
    bool alone[2];
    for (int side = 0; side < 2; side++) {
        alone[side] = lead(&citation->passage->entries[citation->told_entry[told]]) & sides[side].players;
        for (size_t i = 0; i < citation->told_count; i++)
            alone[side] = alone[side] && (i == told || !(lead(&citation->passage->entries[citation->told_entry[i]]) & sides[side].players));
    }
    return alone[0] || alone[1];
}

static bool is_passing(const spz_passage *passage, size_t answers, size_t most, bool alone)
{
    bool cascade = passage->sides[0].section == SPZ_NO_SECTION && !passage->sides[0].players; /* put together of several: it is named after nobody */
    bool imitation = passage->kind == SPZ_IMITATION || cascade, seldom = (imitation ? SELDOM_IN_IMITATION : SELDOM) * answers <= most;
    return !alone && (seldom || (!imitation && most > 2 && answers < 2));
}

static void leave_out_passing(const SectionMap *map, Citation *citation)
{
    size_t answers[TOLD_MOST] = {0}, most = 0, kept = 1;
    for (size_t i = 1; i < citation->told_count; i++) {
        answers[i] = answers_of(map, citation, i);
        most = answers[i] > most ? answers[i] : most;
    }
    for (size_t i = 1; i < citation->told_count; i++) {
        if (is_passing(citation->passage, answers[i], most, speaks_alone(citation, i)))
            continue;
        citation->told[kept] = citation->told[i];
        citation->told_entry[kept++] = citation->told_entry[i];
    }
    citation->told_count = citation->told_count ? kept : 0;
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

/* Whoever has been told is not told again among those who come in. */
static void tell_once(Citation *citation)
{
    spz_players before = 0;
    for (size_t i = 0; i < citation->told_count; i++) {
        spz_players fresh = citation->told[i].players & ~before;
        citation->told[i].players = fresh ? fresh : citation->told[i].players;
        before |= fresh;
    }
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
    tell_once(citation);
    return citation->told_count > 1 && tells_the_sides(citation) ? shown : 0;
}

/* From the first entry that is answered; but where its answer is itself a theme, answered in many times as many notes, that theme is what is passed on.
 * False where nothing is answered. */
static bool tell_entries(const SectionMap *map, Citation *citation)
{
    size_t first = 0, shown = 0;
    while (first < citation->entries && !(shown = tell_well(map, citation, first)))
        first++;
    if (!shown) {
        citation->told_count = 0;
        return false;
    }
    size_t theme = tell_well(map, citation, citation->told_entry[1]);
    if (theme < THEME_NOTES || (double)theme < much_more * (double)shown)
        tell_well(map, citation, first);
    return true;
}

/* Where single notes fly to and fro many times nobody follows who of several came second: the two sides are told, with all
 * who enter on each. */
static void tell_sides(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    size_t told[2] = {SIZE_MAX, SIZE_MAX};
    spz_players enter[2] = {0};
    for (size_t i = citation->entries; i-- > 0;)
        for (int side = 0; side < 2; side++)
            if (lead(&passage->entries[i]) & passage->sides[side].players & ~passage->sides[1 - side].players) {
                enter[side] |= passage->entries[i].players & passage->sides[side].players & ~passage->sides[1 - side].players;
                told[side] = i;
            }
    if (told[0] == SIZE_MAX || told[1] == SIZE_MAX)
        return;
    int first = told[1] < told[0];
    citation->told_count = 0;
    for (int i = 0; i < 2; i++) {
        tell(citation, told[first ^ i]);
        citation->told[i].players = enter[first ^ i];
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
static spz_ticks shortest(const Citation *citation, bool to_answer)
{
    spz_ticks best = -1;
    for (size_t i = 1; i < citation->entries; i++) {
        const spz_entry *entry = &citation->passage->entries[i], *before = entry - 1;
        spz_ticks way = entry->onset - before->onset;
        if (entry->answer == to_answer && before->answer != to_answer && way > 0 && (best < 0 || way < best))
            best = way;
    }
    return best;
}

/* Two who go to and fro: the first of them to be heard leads where the passage names it first, nobody had it before, and the way to the other is the
 * shorter one; where it goes evenly, as long as who began is still remembered (common practice, no source). */
enum { REMEMBERED = 8 };

static bool is_led(const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    bool named_first = !passage->sides[0].players || (citation->told[0].players & passage->sides[0].players);
    spz_ticks there = shortest(citation, true), back = shortest(citation, false);
    bool evenly = there >= 0 && back >= 0 && there >= back && (there > back || citation->entries >= REMEMBERED);
    return citation->told_count != 2 || (named_first && !evenly && !citation->swapped && !citation->heard_before);
}

static void look_around(const SectionMap *map, Citation *citation)
{
    const spz_entry *first = &citation->passage->entries[citation->told_entry[0]], *second = &citation->passage->entries[citation->told_entry[1]];
    citation->heard_before = was_heard_before(map, first, second->onset - first->onset);
    citation->swapped = citation->told_count == 2 && places_are_swapped(map, first, second);
}

/* Of two: does one of them call, and the other answer, in whatever they have come to? */
static bool is_answered(const SectionMap *map, const Citation *citation, const spz_entry *entry)
{
    const spz_passage *passage = citation->passage;
    bool found = false;
    for (size_t i = 0; i < citation->entries && !found; i++) {
        const spz_entry *other = &passage->entries[i], *call = entry->answer ? other : entry, *answer = entry->answer ? entry : other;
        found = call->onset < answer->onset && answer->answer && is_told(citation, other) && !(call->players & lead(answer)) &&
                notes_alike(map, passage->kind, call, answer);
    }
    return found && is_told(citation, entry);
}

/* Has the entry what one of those told has? */
static bool is_of_story(const SectionMap *map, const Citation *citation, const spz_entry *entry)
{
    const spz_passage *passage = citation->passage;
    for (size_t i = 0; i < citation->told_count; i++) {
        const spz_entry *told = &passage->entries[citation->told_entry[i]];
        if (told == entry || (told->onset < entry->onset && notes_alike(map, passage->kind, told, entry)))
            return true;
    }
    return citation->told_count == 2 && passage->kind != SPZ_IMITATION && is_answered(map, citation, entry);
}

/* Who is still playing an entry does not enter. */
static bool goes_on(const Citation *citation, const spz_entry *entry)
{
    for (size_t i = 0; i < citation->heard_count; i++) {
        const spz_entry *heard = &citation->passage->entries[citation->heard[i].entry];
        if (heard->leader == entry->leader && heard->onset < entry->onset && entry->onset < heard->end)
            return true;
    }
    return false;
}

static bool joins(const Citation *citation, const Heard *news)
{
    const Heard *last = citation->heard_count ? &citation->heard[citation->heard_count - 1] : NULL;
    const spz_entry *entries = citation->passage->entries;
    return last && entries[last->entry].onset == entries[news->entry].onset && last->at_interval == news->at_interval &&
           last->change.steps == news->change.steps && last->change.semitones == news->change.semitones;
}

/* The interval is that of the upper lines: of an entry that another than the uppermost of its players leads it is not told. */
static bool upper_leads(const spz_entry *entry)
{
    return entry->leader >= 63 || (entry->players & -entry->players) == (spz_players)1 << entry->leader;
}

/* Every entry of what is told, from the first on, whoever has it; those that begin together in one way are one. */
static void list_entries(const SectionMap *map, Citation *citation)
{
    const spz_entry *entries = citation->passage->entries, *first = &entries[citation->told_entry[0]];
    citation->counted = citation->told_entry[0] == 0;
    for (size_t i = citation->told_entry[0]; i < citation->entries; i++) {
        Heard news = {.entry = i, .players = entries[i].players};
        bool ours = is_of_story(map, citation, &entries[i]) && !goes_on(citation, &entries[i]);
        citation->counted = citation->counted && (ours || !is_told(citation, &entries[i]));
        if (!ours)
            continue;
        news.at_interval = i != citation->told_entry[0] && upper_leads(first) && upper_leads(&entries[i]) && interval_between(map, first, &entries[i], &news.change);
        bool joined = joins(citation, &news);
        if (joined)
            citation->heard[citation->heard_count - 1].players |= news.players;
        else if (citation->heard_count < HEARD_MOST)
            citation->heard[citation->heard_count++] = news;
        citation->heard_all += !joined;
    }
}

/* What begins anew after a break of more than two bars, and more than twice as long as any before it between two entries, is another story: the entry with
 * which it begins, or the number of entries. Set by hand; docs/method-notes.md says what it changed. */
enum { LONG_BREAK = 2, MUCH_LONGER = 2 };

static size_t breaks_off(const Citation *citation)
{
    const spz_entry *entries = citation->passage->entries;
    spz_ticks longest = 0;
    for (size_t i = 1; i < citation->heard_count; i++) {
        const spz_entry *entry = &entries[citation->heard[i].entry], *before = &entries[citation->heard[i - 1].entry];
        spz_ticks way = entry->onset - before->onset;
        if (longest > 0 && way > MUCH_LONGER * longest && entry->bar - before->bar > LONG_BREAK)
            return citation->heard[i].entry;
        longest = way > longest ? way : longest;
    }
    return citation->entries;
}

/* Tells the entries up to citation->entries; false where the staves don't bear it out. */
static bool tell_story(const SectionMap *map, Citation *citation)
{
    citation->heard_count = citation->heard_all = 0;
    if (!tell_entries(map, citation))
        return false;
    if (citation->passage->kind == SPZ_HOCKET && citation->entries > 2 * citation->told_count)
        tell_sides(citation);
    look_around(map, citation);
    list_entries(map, citation);
    return true;
}

void citation_tell(const spz_sections *map, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    citation->entries = passage->entry_count;
    if (!spz_kind_is_antiphony(passage->kind))
        return;
    bool entries = passage->kind != SPZ_SPLIT_LINE && passage->link_count > 1, told = entries && tell_story(map, citation);
    bool leads = passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_IMITATION;
    while (told && breaks_off(citation) < citation->entries) {
        citation->entries = breaks_off(citation);
        told = tell_story(map, citation);
    }
    citation->borne_out = told || !entries;
    if (!told)
        tell_links(citation);
    citation->led = leads ? is_led(citation) : citation->told_count > 2;
}

size_t citation_named_first(const Citation *citation)
{
    spz_players one = citation->told[0].players, two = citation->told[1].players;
    bool in_order = citation->led || (citation->heard_all == 2 && !citation->swapped);
    return !in_order && citation->told_count == 2 && one && two && (two & -two) < (one & -one);
}
