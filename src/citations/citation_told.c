/* What a sentence may claim of a dialogue: whoever answers, in order of their first answer; and who leads, where one of the two does. */
#include "citations/citation_facts.h"
#include <stdint.h>

/* A body of players that answers but once, where another answers again and again, is passing. Entries of a fugue come once each. */
static bool is_passing(const spz_passage *passage, size_t answers, size_t most)
{
    return passage->kind != SPZ_IMITATION && most > 1 && answers < 2;
}

static size_t answers_of(const spz_passage *passage, size_t link)
{
    size_t count = 0;
    for (size_t i = 0; i < passage->entry_count; i++)
        count += passage->entries[i].answer && passage->entries[i].link == link;
    return count;
}

static size_t most_answers(const spz_passage *passage)
{
    size_t most = 0;
    for (size_t link = 0; link < passage->link_count; link++) {
        size_t answers = answers_of(passage, link);
        most = answers > most ? answers : most;
    }
    return most;
}

static void tell(Citation *citation, const spz_entry *entry, size_t index)
{
    if (citation->told_count < TOLD_MOST) {
        citation->told[citation->told_count] = (spz_link){entry->players, entry->onset, entry->bar};
        citation->told_entry[citation->told_count++] = index;
    }
}

static void tell_entries(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    size_t most = most_answers(passage);
    uint64_t told = 0; /* links */
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        bool known = entry->link < 64 && entry->link < passage->link_count, news = known && !(told >> entry->link & 1);
        if (i == 0 || (entry->answer && news && !is_passing(passage, answers_of(passage, entry->link), most)))
            tell(citation, entry, i);
        else
            continue;
        told |= known ? (uint64_t)1 << entry->link : 0;
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

/* Two who go to and fro: the first of them to be heard leads where the way to the other is the shorter one; where it goes evenly, as long as who began
 * is still remembered (common practice, no source). */
enum { REMEMBERED = 8 };

static bool is_led(const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    spz_ticks there = shortest(passage, true), back = shortest(passage, false);
    return citation->told_count != 2 || there < 0 || back < 0 || there < back || (there == back && passage->entry_count < REMEMBERED);
}

void citation_tell(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    if (!spz_kind_is_antiphony(passage->kind))
        return;
    if (passage->kind != SPZ_SPLIT_LINE && passage->link_count > 1)
        tell_entries(citation);
    if (citation->told_count < 2)
        tell_links(citation);
    citation->led = passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_IMITATION ? is_led(citation) : citation->told_count > 2;
}

size_t citation_named_first(const Citation *citation)
{
    spz_players one = citation->told[0].players, two = citation->told[1].players;
    return !citation->led && citation->told_count == 2 && one && two && (two & -two) < (one & -one);
}
