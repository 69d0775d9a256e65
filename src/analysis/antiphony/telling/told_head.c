#include "analysis/antiphony/telling/told_head.h"

/* Chosen on published entries of the main melody (tests/tools/fit_boundaries.py); any of 0.5 to 2 and of 1 to 2.5 gains. */
static const struct {
    float weak;  /* strength of a boundary from which a group of notes begins there */
    float stronger; /* by how much a beginning before it must be stronger */
    int reach;   /* notes before */
} rule = {.weak = 1.5f, .stronger = 1.0f, .reach = 2};

/* Nobody's earlier entry begins there or later, and its player is in none; the first entry of a passage stays in its bar, with which the passage begins. */
static bool is_free(const StatementList *list, size_t index, const NoteEvent *head)
{
    const NoteEvent *first = list->at[index].first;
    if (head->sound->line != first->sound->line || (index == 0 && head->bar != first->bar))
        return false;
    for (size_t i = 0; i < index; i++) {
        const Statement *before = &list->at[i];
        bool own = before->melody == list->at[index].melody;
        if (before->first->onset >= head->onset || (own && before->last >= head))
            return false;
    }
    return true;
}

const NoteEvent *told_head(const Texture *texture, const StatementList *list, size_t index)
{
    const Statement *statement = &list->at[index];
    const NoteEvent *first = statement->first, *begin = texture->melodies[statement->melody].events;
    if (first->boundary >= rule.weak)
        return first;
    for (const NoteEvent *head = first; head-- > begin && first - head <= rule.reach;)
        if (head->boundary >= first->boundary + rule.stronger && is_free(list, index, head))
            return head;
    return first;
}
