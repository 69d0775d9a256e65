#include "analysis/passages/findings.h"
#include "analysis/melody/boundaries.h"
#include <stdlib.h>
#include <string.h>

/* The bar in which something that ends at `end` is still heard. */
static int last_bar_heard(const Movement *movement, Ticks onset, Ticks end)
{
    return movement_bar_at(movement, end > onset ? end - 1 : onset);
}

static size_t bar_index(int bar)
{
    return bar < 0 ? 0 : (size_t)bar;
}

/* A copy of `count` items in the arena of the findings; NULL for none. False when out of memory. */
static bool own_items(Findings *findings, const void **items, size_t count, size_t size)
{
    void *own = count ? arena_take(&findings->arena, count, size) : NULL;
    if (count && own)
        memcpy(own, *items, count * size);
    *items = own;
    return !count || own;
}

spz_status findings_add(Findings *findings, const spz_passage *passage)
{
    const Movement *movement = findings->map->movement;
    spz_passage own = *passage;
    if (!movement->bar_count)
        return SPZ_BAD_ARGUMENT;
    own.first = bar_index(movement_bar_at(movement, own.onset));
    own.last = bar_index(last_bar_heard(movement, own.onset, own.end));
    own.first_bar = movement->bars[own.first].number;
    own.last_bar = movement->bars[own.last].number;
    own.letter = movement_letter_at(movement, (int)own.first, &own.after_letter);
    bool good = own_items(findings, (const void **)&own.entries, own.entry_count, sizeof *own.entries) &&
                own_items(findings, (const void **)&own.links, own.link_count, sizeof *own.links) && array_push(&findings->passages, own);
    return good ? SPZ_OK : SPZ_NO_MEMORY;
}

const Melody *findings_melodies(Findings *findings)
{
    if (!findings->melodies) {
        Melody *melodies = melodies_of(findings->map, &findings->arena);
        boundaries_mark_all(findings->map, melodies);
        findings->melodies = melodies;
    }
    return findings->melodies;
}

static int by_place(const void *left, const void *right)
{
    const spz_passage *a = left, *b = right;
    if (a->first != b->first)
        return a->first < b->first ? -1 : 1;
    if (a->kind != b->kind)
        return a->kind < b->kind ? -1 : 1;
    for (int i = 0; i < 2; i++)
        if (a->sides[i].section != b->sides[i].section)
            return a->sides[i].section < b->sides[i].section ? -1 : 1;
    for (int i = 0; i < 2; i++)
        if (a->sides[i].group != b->sides[i].group)
            return a->sides[i].group < b->sides[i].group ? -1 : 1;
    if (a->onset != b->onset)
        return a->onset < b->onset ? -1 : 1;
    if (a->end != b->end)
        return a->end < b->end ? -1 : 1;
    return a->strength > b->strength ? -1 : a->strength < b->strength;
}

void findings_sort(Findings *findings)
{
    if (findings->passages.count)
        qsort(findings->passages.at, findings->passages.count, sizeof *findings->passages.at, by_place);
}

void spz_findings_free(spz_findings *findings)
{
    if (!findings)
        return;
    array_free(&findings->passages);
    array_free(&findings->pairings);
    arena_release(&findings->arena);
    memory_free(findings);
}

bool spz_findings_chamber_music(const spz_findings *findings)
{
    return findings->map->chamber_music;
}

size_t spz_findings_count(const spz_findings *findings)
{
    return findings->passages.count;
}

const spz_passage *spz_findings_at(const spz_findings *findings, size_t index)
{
    return index < findings->passages.count ? &findings->passages.at[index] : NULL;
}

size_t spz_findings_pairings(const spz_findings *findings)
{
    return findings->pairings.count;
}

const spz_pairing *spz_findings_pairing(const spz_findings *findings, size_t index)
{
    return index < findings->pairings.count ? &findings->pairings.at[index] : NULL;
}
