#include "seating/verdict/losses.h"
#include "seating/evidence/basis.h"
#include "seating/evidence/seating_terms.h"
#include <math.h>
#include <string.h>

static const double much_narrower = 0.75; /* a passage is lost where it is heard at less than this share of its best width */

typedef struct LossSearch {
    const Comparison *comparison;
    const SeatingEvidence *evidence;
    size_t arrangement;
    Arena *arena;
    ARRAY(spz_loss) found;
} LossSearch;

static double widest(const Comparison *comparison, const PairEvidence *pair)
{
    double best = 0;
    for (size_t i = 0; i < comparison->list.count; i++)
        if (comparison->allowed[i])
            best = fmax(best, comparison_felt_widths(comparison, i, pair->a, pair->b));
    return best;
}

static double shortest_delay(const Comparison *comparison, const PairEvidence *pair)
{
    double least = HUGE_VAL;
    for (size_t i = 0; i < comparison->list.count; i++)
        if (comparison->allowed[i])
            least = fmin(least, comparison_pair(comparison, i, pair->a, pair->b).delay);
    return least;
}

/* Clear passages of the kind; coupling counts where its delay is over the tolerance here. */
static bool gather(const LossSearch *search, const ItemList *items, spz_kind kind, double delay, ItemList *out)
{
    bool good = true;
    for (size_t i = 0; i < items->count && good; i++) {
        const spz_passage *p = items->at[i].passage;
        if (p->kind == kind && spz_weight_of(p->strength) >= SPZ_CLEAR &&
            (kind != SPZ_COUPLING || terms_strain(search->comparison, delay, p->shortest) > 1))
            good = array_push(out, items->at[i]);
    }
    return good;
}

static bool add_loss(LossSearch *search, const ItemList *items, spz_loss loss, double delay)
{
    ItemList chosen = {0};
    bool good = gather(search, items, loss.kind, delay, &chosen);
    if (good && chosen.count)
        good = basis_of_items(search->arena, search->evidence, &chosen, &loss.basis) && array_push(&search->found, loss);
    array_free(&chosen);
    return good;
}

static bool pair_losses(LossSearch *search, const PairEvidence *pair)
{
    const Comparison *comparison = search->comparison;
    PairView view = comparison_pair(comparison, search->arrangement, pair->a, pair->b);
    spz_loss loss = {.sides = {pair->a, pair->b}};
    bool good = true;
    if (evidence_pair_share(pair->kind, &comparison->rules) <= 0)
        return true;
    if (view.widths < much_narrower * widest(comparison, pair))
        for (loss.kind = 0; loss.kind < SPZ_KIND_COUNT && good; loss.kind++)
            if (spz_kind_is_antiphony(loss.kind))
                good = add_loss(search, &pair->antiphony, loss, 0);
    loss.kind = SPZ_COUPLING;
    if (good && view.delay * much_narrower > shortest_delay(comparison, pair))
        good = add_loss(search, &pair->coupling, loss, view.delay);
    return good;
}

static bool violins_in_three(LossSearch *search)
{
    spz_loss loss = {.kind = SPZ_DIV3, .sides = {SPZ_VIOLINS, SPZ_NO_SECTION}};
    if (!search->comparison->list.at[search->arrangement].opposed)
        return true;
    if (!add_loss(search, &search->evidence->thirds, loss, 0))
        return false;
    loss.throughout = true;
    return !search->evidence->has_thirds || array_push(&search->found, loss);
}

spz_status losses_find(const Comparison *comparison, const SeatingEvidence *evidence, size_t arrangement, Arena *arena,
                       const spz_loss **out, size_t *count)
{
    LossSearch search = {.comparison = comparison, .evidence = evidence, .arrangement = arrangement, .arena = arena};
    bool good = true;
    for (size_t i = 0; i < evidence->pairs.count && good; i++)
        good = pair_losses(&search, &evidence->pairs.at[i]);
    good = good && violins_in_three(&search);
    spz_loss *kept = good ? arena_take(arena, search.found.count + 1, sizeof *kept) : NULL;
    if (kept && search.found.count)
        memcpy(kept, search.found.at, search.found.count * sizeof *kept);
    *out = kept;
    *count = kept ? search.found.count : 0;
    array_free(&search.found);
    return kept ? SPZ_OK : SPZ_NO_MEMORY;
}

bool losses_copy(Arena *arena, const spz_loss *from, size_t count, size_t movement, spz_loss *out)
{
    bool good = true;
    for (size_t i = 0; i < count && good; i++) {
        out[i] = from[i];
        out[i].movement = movement;
        good = basis_copy(arena, &from[i].basis, &out[i].basis);
    }
    return good;
}
