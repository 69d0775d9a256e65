/* Two orchestras: named so, or told by the sections starting over from the violins after the lower strings. A first set without
 * violas is a concertino before its ripieno (the concerto grosso's three: two violins and a cello). */
#include "sections/understanding.h"

typedef struct StringSet {
    size_t first, last; /* parts */
    size_t violins, violas, cellos, basses;
} StringSet;
enum { SET_LIMIT = 4 };

static bool named(const Understanding *all)
{
    bool found = false;
    for (size_t i = 0; i < all->movement->part_count; i++)
        found |= all->parts[i].name.orchestra > 0 && instrument_has_section(all->parts[i].name.instrument);
    return found;
}

static void count_part(StringSet *set, const NameReading *name, size_t index)
{
    set->last = index;
    set->violins += name->instrument != INSTRUMENT_VIOLIN ? 0u : name->ordinal2 ? 2u : 1u;
    set->violas += name->instrument == INSTRUMENT_VIOLA;
    bool line = name->instrument == INSTRUMENT_BASS_LINE || name->instrument == INSTRUMENT_CONTINUO;
    set->cellos += name->instrument == INSTRUMENT_CELLO || line;
    set->basses += name->instrument == INSTRUMENT_BASS || name->also == INSTRUMENT_BASS || line;
}

/* Runs of string parts; a violin after cellos or basses begins a new one unless it is a soloist. Returns how many. */
static size_t cut_sets(const Understanding *all, StringSet sets[SET_LIMIT])
{
    size_t count = 0;
    for (size_t i = 0; i < all->movement->part_count; i++) {
        const PartReading *part = &all->parts[i];
        if (!part_is_tutti(part) || !instrument_has_section(part->name.instrument))
            continue;
        bool low_before = count && (sets[count - 1].cellos || sets[count - 1].basses);
        if (count == 0 || (part->name.instrument == INSTRUMENT_VIOLIN && low_before)) {
            if (count == SET_LIMIT)
                return 0;
            sets[count++] = (StringSet){ .first = i };
        }
        count_part(&sets[count - 1], &part->name, i);
    }
    return count;
}

static bool whole(const StringSet *set)
{
    return set->violins >= 1 && set->violas && (set->cellos || set->basses);
}

static void mark_set(Understanding *all, const StringSet *set, int orchestra, bool solo)
{
    for (size_t i = set->first; i <= set->last; i++) {
        PartReading *part = &all->parts[i];
        if (part->name.family != SPZ_FAMILY_STRINGS || part->corrected)
            continue;
        part->name.orchestra = orchestra;
        if (solo)
            part->role = SPZ_SOLO;
        part_clue(part, solo ? SPZ_CLUE_CONCERTINO : SPZ_CLUE_ORCHESTRAS);
    }
}

static void find_by_order(Understanding *all)
{
    StringSet sets[SET_LIMIT];
    size_t count = cut_sets(all, sets);
    if (count < 2)
        return;
    bool concertino = count == 2 && !sets[0].violas && sets[0].violins && whole(&sets[1]) && sets[0].violins + sets[0].cellos <= 4;
    for (size_t i = 0; i < count && !concertino; i++)
        if (!whole(&sets[i]))
            return;
    if (concertino)
        mark_set(all, &sets[0], 0, true);
    for (size_t i = 0; i < count && !concertino; i++)
        mark_set(all, &sets[i], (int)i + 1, false);
    all->orchestras = concertino ? 0 : (int)count;
    understanding_doubt(all, sets[1].first, concertino ? SPZ_FAULT_RIPIENO : SPZ_FAULT_SECOND_ORCHESTRA);
}

void orchestras_find(Understanding *all)
{
    if (!named(all)) {
        for (size_t i = 0; i < all->movement->part_count; i++)
            all->parts[i].name.orchestra = 0;
        find_by_order(all);
        return;
    }
    for (size_t i = 0; i < all->movement->part_count; i++)
        if (all->parts[i].name.orchestra > all->orchestras)
            all->orchestras = all->parts[i].name.orchestra;
}
