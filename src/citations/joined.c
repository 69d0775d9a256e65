/* A fugato or a cascade that the list of passages tells in pieces, each after the two who are named there, is one citation: its pieces overlap, and each goes
 * on with what another has begun. */
#include "citations/citation_facts.h"
#include "citations/likeness.h"
#include <stdlib.h>

/* In a fugato each body of players enters but a few times; what is handed about all the time is a texture (set by hand). */
enum { ENTRIES_EACH = 3 };
static const double surely = 0.6; /* what is hardly clear is no piece of another (set by hand) */

static bool is_piece(const spz_passage *passage, double strength)
{
    bool kind = passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_IMITATION, winds = false;
    for (size_t i = 0; i < passage->link_count; i++)
        winds = winds || (passage->links[i].players & SPZ_WIND_PLAYERS);
    return kind && !winds && passage->link_count > 1 && passage->entry_count > 1 && passage->strength >= strength && passage->strength >= surely && passage->ruling.kind != SPZ_VETOED;
}

static Citation told_of(const spz_sections *sections, const spz_passage *passage)
{
    Citation citation = {.passage = passage};
    citation_tell(sections, &citation);
    return citation;
}

/* Does what the later one tells first answer something that the earlier one tells, while that still goes on? */
static bool goes_on_with(const spz_sections *sections, const spz_passage *one, const spz_passage *two)
{
    const spz_passage *earlier = one->onset <= two->onset ? one : two, *later = earlier == one ? two : one;
    if (later->onset >= earlier->end)
        return false;
    Citation before = told_of(sections, earlier), after = told_of(sections, later);
    if (!before.borne_out || !after.borne_out)
        return false;
    const spz_entry *first = &later->entries[after.told_entry[0]];
    for (size_t i = 0; i < before.told_count; i++) {
        const spz_entry *told = &earlier->entries[before.told_entry[i]];
        bool same = told->leader == first->leader && told->onset == first->onset;
        if (same || (told->onset < first->onset && told->leader != first->leader && notes_alike(sections, earlier->kind, told, first) >= THEME_NOTES))
            return true;
    }
    return false;
}

static bool is_among(const Joined *joined, size_t place)
{
    for (size_t i = 0; i < joined->count; i++)
        if (joined->places[i] == place)
            return true;
    return false;
}

static void gather(const spz_movement_reading *reading, size_t place, double strength, Joined *joined)
{
    const spz_findings *findings = reading->findings;
    joined->places[0] = place;
    joined->count = 1;
    for (size_t i = 0; i < joined->count; i++)
        for (size_t k = 0; k < spz_findings_count(findings) && joined->count < JOINED_MOST; k++)
            if (!is_among(joined, k) && is_piece(spz_findings_at(findings, k), strength) &&
                goes_on_with(reading->sections, spz_findings_at(findings, joined->places[i]), spz_findings_at(findings, k)))
                joined->places[joined->count++] = k;
}

static int by_time(const void *a, const void *b)
{
    const spz_entry *one = a, *two = b;
    if (one->onset != two->onset)
        return one->onset < two->onset ? -1 : 1;
    return one->leader < two->leader ? -1 : one->leader > two->leader;
}

static void add_link(spz_link *links, size_t *count, const spz_link *link)
{
    for (size_t i = 0; i < *count; i++)
        if (links[i].players == link->players)
            return;
    links[(*count)++] = *link;
}

/* All entries of all pieces, each once; whoever comes in after the first answers. */
static bool put_together(const spz_findings *findings, const Joined *joined, Arena *arena, spz_passage *whole)
{
    size_t entries = 0, links = 0, kept = 0;
    for (size_t i = 0; i < joined->count; i++) {
        entries += spz_findings_at(findings, joined->places[i])->entry_count;
        links += spz_findings_at(findings, joined->places[i])->link_count;
    }
    spz_entry *all = arena_take(arena, entries, sizeof *all);
    spz_link *who = arena_take(arena, links, sizeof *who);
    if (!all || !who)
        return false;
    for (size_t i = entries = links = 0; i < joined->count; i++) {
        const spz_passage *piece = spz_findings_at(findings, joined->places[i]);
        for (size_t k = 0; k < piece->entry_count; k++) {
            all[entries] = piece->entries[k];
            all[entries].answer = piece->entries[k].answer || piece->onset > whole->onset;
            if (piece->entries[k].link < piece->link_count)
                add_link(who, &links, &piece->links[piece->entries[k].link]);
            all[entries].link = SIZE_MAX - entries; /* each for itself: in a fugato everybody enters */
            entries++;
        }
    }
    qsort(all, entries, sizeof *all, by_time);
    for (size_t i = 0; i < entries; i++) {
        spz_entry *same = kept ? &all[kept - 1] : NULL;
        while (same && same > all && same->onset == all[i].onset && !(same->players & all[i].players))
            same--;
        if (same && same->onset == all[i].onset && (same->players & all[i].players))
            same->players |= all[i].players; /* one piece may have them in other company */
        else
            all[kept++] = all[i];
    }
    all[0].answer = false;
    whole->entries = all;
    whole->entry_count = kept;
    whole->links = who;
    whole->link_count = links;
    return true;
}

/* The earliest of them, as long and as strong as all together; it is named after nobody. */
static void stretch(const spz_findings *findings, const Joined *joined, spz_passage *whole)
{
    for (size_t i = 0; i < joined->count; i++)
        if (spz_findings_at(findings, joined->places[i])->onset < whole->onset)
            *whole = *spz_findings_at(findings, joined->places[i]);
    for (size_t i = 0; i < joined->count; i++) {
        const spz_passage *piece = spz_findings_at(findings, joined->places[i]);
        whole->strength = piece->strength > whole->strength ? piece->strength : whole->strength;
        whole->kind = piece->kind == SPZ_IMITATION ? SPZ_IMITATION : whole->kind;
        if (piece->end > whole->end) {
            whole->end = piece->end;
            whole->last = piece->last;
            whole->last_bar = piece->last_bar;
        }
    }
    whole->sides[0] = whole->sides[1] = (spz_side){.section = SPZ_NO_SECTION, .group = SIZE_MAX};
}

spz_status citation_join(const spz_movement_reading *reading, size_t place, double strength, Arena *arena, Joined *joined)
{
    const spz_findings *findings = reading->findings;
    const spz_passage *picked = spz_findings_at(findings, place);
    *joined = (Joined){.passage = picked, .places = {place}, .count = 1};
    if (!is_piece(picked, strength))
        return SPZ_OK;
    gather(reading, place, strength, joined);
    spz_passage *whole = joined->count > 1 ? arena_take(arena, 1, sizeof *whole) : NULL;
    if (joined->count < 2)
        return SPZ_OK;
    if (!whole)
        return SPZ_NO_MEMORY;
    *whole = *picked;
    stretch(findings, joined, whole);
    if (!put_together(findings, joined, arena, whole))
        return SPZ_NO_MEMORY;
    Citation told = told_of(reading->sections, whole);
    bool more = told.borne_out && told.told_count > 2 && told.heard_all <= ENTRIES_EACH * told.told_count;
    for (size_t i = 0; i < joined->count; i++)
        more = more && told.told_count > told_of(reading->sections, spz_findings_at(findings, joined->places[i])).told_count;
    joined->passage = more ? whole : picked;
    joined->count = more ? joined->count : 1;
    return SPZ_OK;
}
