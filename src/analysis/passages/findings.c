#include "analysis/passages/findings.h"
#include <stdlib.h>
#include <string.h>

const char *spz_kind_name(spz_kind kind)
{
    static const char *const names[SPZ_KIND_COUNT] = {
        [SPZ_EXCHANGE] = "exchange", [SPZ_HOCKET] = "hocket", [SPZ_SPLIT_LINE] = "split-line", [SPZ_IMITATION] = "imitation",
        [SPZ_DIV2] = "div2",         [SPZ_DIV3] = "div3",     [SPZ_COUPLING] = "coupling",
    };
    return (unsigned)kind < SPZ_KIND_COUNT ? names[kind] : "";
}

bool spz_kind_from_name(const char *name, spz_kind *out)
{
    for (int kind = 0; name && kind < SPZ_KIND_COUNT; kind++)
        if (!strcmp(name, spz_kind_name((spz_kind)kind))) {
            *out = (spz_kind)kind;
            return true;
        }
    return false;
}

bool spz_kind_is_antiphony(spz_kind kind)
{
    return kind == SPZ_EXCHANGE || kind == SPZ_HOCKET || kind == SPZ_SPLIT_LINE || kind == SPZ_IMITATION;
}

const char *spz_strength_word(double strength)
{
    return strength < 0.5 ? "marginal" : strength < 0.8 ? "clear" : "striking";
}

/* The bar in which something that ends at `end` is still heard. */
static int last_bar_heard(const Movement *movement, Ticks onset, Ticks end)
{
    return movement_bar_at(movement, end > onset ? end - 1 : onset);
}

static size_t bar_index(int bar)
{
    return bar < 0 ? 0 : (size_t)bar;
}

static bool own_text(Arena *arena, const char **text)
{
    *text = arena_string(arena, *text ? *text : "");
    return *text != NULL;
}

static bool own_entries(Findings *findings, spz_passage *passage)
{
    if (!passage->entry_count) {
        passage->entries = NULL;
        return true;
    }
    spz_entry *entries = arena_take(&findings->arena, passage->entry_count, sizeof *entries);
    if (!entries)
        return false;
    memcpy(entries, passage->entries, passage->entry_count * sizeof *entries);
    for (size_t i = 0; i < passage->entry_count; i++)
        if (!own_text(&findings->arena, &entries[i].beat) || !own_text(&findings->arena, &entries[i].first) ||
            !own_text(&findings->arena, &entries[i].last))
            return false;
    passage->entries = entries;
    return true;
}

spz_status findings_add(Findings *findings, const spz_passage *passage)
{
    const Movement *movement = findings->map->movement;
    spz_passage own = *passage;
    char rehearsal[REHEARSAL_TEXT];
    if (!movement->bar_count)
        return SPZ_BAD_ARGUMENT;
    own.first = bar_index(movement_bar_at(movement, own.onset));
    own.last = bar_index(last_bar_heard(movement, own.onset, own.end));
    own.first_bar = movement->bars[own.first].number;
    own.last_bar = movement->bars[own.last].number;
    own.rehearsal = arena_string(&findings->arena, movement_rehearsal_text(movement, (int)own.first, rehearsal));
    if (!own.rehearsal || !own_text(&findings->arena, &own.reason) || !own_text(&findings->arena, &own.chain) ||
        !own_entries(findings, &own) || !array_push(&findings->passages, own))
        return SPZ_NO_MEMORY;
    return SPZ_OK;
}

const Melody *findings_melodies(Findings *findings)
{
    if (!findings->melodies)
        findings->melodies = melodies_of(findings->map, &findings->arena);
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
        if (a->sections[i] != b->sections[i])
            return a->sections[i] < b->sections[i] ? -1 : 1;
    for (int i = 0; i < 2; i++)
        if (a->groups[i] != b->groups[i])
            return a->groups[i] < b->groups[i] ? -1 : 1;
    if (a->onset != b->onset)
        return a->onset < b->onset ? -1 : 1;
    return a->end != b->end ? (a->end < b->end ? -1 : 1) : 0;
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
