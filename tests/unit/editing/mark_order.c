/* Which advice is written into the marked score: half of a dialogue never, what only overlaps always. */
#include "editing/mark_order.h"
#include "support/memory.h"
#include "support/suite.h"

static const spz_passage striking = {.kind = SPZ_EXCHANGE, .strength = 0.9}, clear = {.kind = SPZ_EXCHANGE, .strength = 0.6},
                         also_clear = {.kind = SPZ_EXCHANGE, .strength = 0.6}, parallel = {.kind = SPZ_COUPLING, .strength = 0.6};

static Advice role(AdviceKind kind, size_t group, const spz_passage *passage, Ticks from, Ticks to)
{
    return (Advice){.kind = kind, .group = group, .passage = passage, .from = from, .to = to};
}

static Signing *ordered(Advice *items, size_t count)
{
    AdviceList list = {.items = {.at = items, .count = count}};
    Signing *signs = mark_order(&list);
    CU_ASSERT_PTR_NOT_NULL_FATAL(signs);
    return signs;
}

static void of_two_that_overlap_one_has_the_bracket_and_both_their_words(void)
{
    Advice items[] = {role(ADVICE_LEAD, 0, &clear, 0, 100), role(ADVICE_LEAD, 0, &also_clear, 80, 120)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[0].dropped && signs[0].signed_to == 100);
    CU_ASSERT(!signs[1].dropped && signs[1].signed_to == 80); /* words alone */
    memory_free(signs);
}

static void what_begins_before_a_longer_one_is_signed_as_far_as_that(void)
{
    Advice items[] = {role(ADVICE_LEAD, 0, &clear, 0, 60), role(ADVICE_LEAD, 0, &also_clear, 40, 140)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[0].dropped && signs[0].signed_to == 40);
    CU_ASSERT(!signs[1].dropped && signs[1].signed_to == 140);
    memory_free(signs);
}

static void a_dialogue_nested_on_both_sides_is_dropped_on_both(void)
{
    Advice items[] = {role(ADVICE_LEAD, 0, &clear, 0, 100), role(ADVICE_LEAD, 0, &also_clear, 20, 60), role(ADVICE_ANSWER, 1, &clear, 10, 100),
                      role(ADVICE_ANSWER, 1, &also_clear, 30, 70)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[0].dropped && signs[1].dropped && !signs[2].dropped && signs[3].dropped);
    memory_free(signs);
}

static void a_dialogue_nested_on_one_side_keeps_both(void)
{
    Advice items[] = {role(ADVICE_LEAD, 0, &clear, 0, 100), role(ADVICE_LEAD, 0, &also_clear, 20, 60), role(ADVICE_ANSWER, 1, &also_clear, 30, 70)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[1].dropped && signs[1].signed_to == 20);
    CU_ASSERT(!signs[2].dropped && signs[2].signed_to == 70);
    memory_free(signs);
}

static void a_striking_one_is_never_dropped_for_a_clear_one(void)
{
    Advice items[] = {role(ADVICE_LEAD, 0, &clear, 0, 100), role(ADVICE_LEAD, 0, &striking, 20, 60)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[1].dropped && signs[1].signed_to == 20);
    memory_free(signs);
}

static void parallel_motion_gives_way_to_a_dialogue(void)
{
    Advice items[] = {role(ADVICE_WITH, 0, &parallel, 0, 200), role(ADVICE_LEAD, 0, &clear, 50, 80), role(ADVICE_DIVIDE, 0, &parallel, 50, 80)};
    Signing *signs = ordered(items, COUNT(items));
    CU_ASSERT(!signs[0].dropped && signs[0].signed_to == 50);
    CU_ASSERT(!signs[1].dropped && signs[1].signed_to == 80);
    CU_ASSERT(!signs[2].dropped && signs[2].signed_to == 50); /* a division has no sign and takes nobody's */
    memory_free(signs);
}

void suite_mark_order(void)
{
    static const struct Statement statements[] = {
        STATEMENT(of_two_that_overlap_one_has_the_bracket_and_both_their_words),
        STATEMENT(what_begins_before_a_longer_one_is_signed_as_far_as_that),
        STATEMENT(a_dialogue_nested_on_both_sides_is_dropped_on_both),
        STATEMENT(a_dialogue_nested_on_one_side_keeps_both),
        STATEMENT(a_striking_one_is_never_dropped_for_a_clear_one),
        STATEMENT(parallel_motion_gives_way_to_a_dialogue),
    };
    suite_of("marks: which advice is written", statements, COUNT(statements));
}
