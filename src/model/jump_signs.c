#include "model/jump_signs.h"
#include "support/memory.h"
#include <stdlib.h>
#include <string.h>

static int by_label(const void *a, const void *b)
{
    const LabelledSign *one = a, *other = b;
    int order = strcmp(one->label, other->label);
    return order ? order : (one->bar > other->bar) - (one->bar < other->bar);
}

static void look_back(JumpSigns *signs)
{
    const Movement *m = signs->movement;
    int32_t none = (int32_t)m->bar_count, segno = none, coda = none;
    for (size_t at = m->bar_count; at-- > 0;) {
        const Bar *bar = &m->bars[at];
        signs->segno_after[at] = segno;
        signs->coda_after[at] = coda;
        signs->ending_end[at] = bar->ending && movement_ending_goes_on(m, at) ? signs->ending_end[at + 1] : (int32_t)at + 1;
        if ((bar->to_coda || bar->coda) && coda < none && signs->last_leaving < 0)
            signs->last_leaving = (int32_t)at;
        segno = bar->segno ? (int32_t)at : segno;
        coda = bar->coda ? (int32_t)at : coda;
    }
}

static void look_on(JumpSigns *signs)
{
    const Movement *m = signs->movement;
    int32_t segno = (int32_t)m->bar_count;
    for (size_t at = 0; at < m->bar_count; at++) {
        const Bar *bar = &m->bars[at];
        segno = bar->segno ? (int32_t)at : segno;
        signs->segno_before[at] = segno;
        if (bar->segno && bar->segno_name)
            signs->segnos[signs->segno_count++] = (LabelledSign){bar->segno_name, (int32_t)at};
        if (bar->coda && bar->coda_name)
            signs->codas[signs->coda_count++] = (LabelledSign){bar->coda_name, (int32_t)at};
    }
    qsort(signs->segnos, signs->segno_count, sizeof *signs->segnos, by_label);
    qsort(signs->codas, signs->coda_count, sizeof *signs->codas, by_label);
}

/* Endings that stand next to each other are one row. */
static void look_at_rows(JumpSigns *signs)
{
    const Movement *m = signs->movement;
    for (size_t first = 0, end; first < m->bar_count; first = end) {
        bool counts = false;
        for (end = first; end < m->bar_count && m->bars[end].ending; end++)
            counts = counts || (m->bars[end].repeat_end && m->bars[end].repeat_after_jump);
        for (size_t at = first; at < end; at++)
            signs->counts_after_jump[at] = counts;
        end += end == first;
    }
}

bool jump_signs_find(const Movement *movement, JumpSigns *out)
{
    size_t bars = movement->bar_count + 1;
    *out = (JumpSigns){.movement = movement, .last_leaving = -1};
    out->segno_before = memory_zeroed(bars, sizeof *out->segno_before);
    out->segno_after = memory_zeroed(bars, sizeof *out->segno_after);
    out->coda_after = memory_zeroed(bars, sizeof *out->coda_after);
    out->ending_end = memory_zeroed(bars, sizeof *out->ending_end);
    out->counts_after_jump = memory_zeroed(bars, sizeof *out->counts_after_jump);
    out->segnos = memory_zeroed(bars, sizeof *out->segnos);
    out->codas = memory_zeroed(bars, sizeof *out->codas);
    if (!out->segno_before || !out->segno_after || !out->coda_after || !out->ending_end || !out->counts_after_jump || !out->segnos || !out->codas)
        return false;
    look_back(out);
    look_on(out);
    look_at_rows(out);
    return true;
}

void jump_signs_free(JumpSigns *signs)
{
    memory_free(signs->segno_before);
    memory_free(signs->segno_after);
    memory_free(signs->coda_after);
    memory_free(signs->ending_end);
    memory_free(signs->counts_after_jump);
    memory_free(signs->segnos);
    memory_free(signs->codas);
}

/* The first of that label behind `bar`, where `before` is NULL; the last up to it goes to `before`. bar_count: none. */
static size_t labelled(const JumpSigns *signs, const LabelledSign *all, size_t count, const char *label, size_t bar, size_t *before)
{
    size_t low = 0, high = count, none = signs->movement->bar_count;
    const LabelledSign wanted = {label, (int32_t)bar};
    while (low < high) { /* `low`: the first behind (label, bar) */
        size_t middle = (low + high) / 2;
        if (by_label(&all[middle], &wanted) <= 0)
            low = middle + 1;
        else
            high = middle;
    }
    if (before)
        *before = low > 0 && strcmp(all[low - 1].label, label) == 0 ? (size_t)all[low - 1].bar : none;
    return low < count && strcmp(all[low].label, label) == 0 ? (size_t)all[low].bar : none;
}

size_t jump_signs_segno(const JumpSigns *signs, size_t bar)
{
    size_t none = signs->movement->bar_count, before = none, behind = none;
    const char *label = signs->movement->bars[bar].dal_segno_name;
    if (label)
        behind = labelled(signs, signs->segnos, signs->segno_count, label, bar, &before);
    if (before == none && behind == none) {
        before = (size_t)signs->segno_before[bar];
        behind = (size_t)signs->segno_after[bar];
    }
    return before < none ? before : behind < none ? behind : 0;
}

size_t jump_signs_coda(const JumpSigns *signs, size_t bar)
{
    const char *label = signs->movement->bars[bar].to_coda_name;
    size_t coda = label ? labelled(signs, signs->codas, signs->coda_count, label, bar, NULL) : signs->movement->bar_count;
    return coda < signs->movement->bar_count ? coda : (size_t)signs->coda_after[bar];
}

bool jump_signs_leaves(const JumpSigns *signs, size_t bar)
{
    const Bar *at = &signs->movement->bars[bar];
    return (at->to_coda || at->coda) && (size_t)signs->coda_after[bar] < signs->movement->bar_count;
}

size_t jump_signs_after_ending(const JumpSigns *signs, size_t bar)
{
    return (size_t)signs->ending_end[bar];
}
