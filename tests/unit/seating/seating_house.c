/* House rules, the user's own arrangements, one seating for a work, and memory that runs out. */
#include "support/scores/evening.h"
#include "support/memory.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

static Evening evening;
static char last_words[512];

static void hear(void *context, const spz_message *message)
{
    (void)context;
    snprintf(last_words, sizeof last_words, "%s", message->text);
}
static const spz_sink sink = {hear, NULL};

static spz_verdict *judge(const char *house, size_t exchanges)
{
    spz_settings *settings = evening_settings(house);
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, exchanges, 0.85);
    spz_verdict *verdict = evening_judge(&evening, settings, 0);
    spz_settings_free(settings); /* the verdict holds no view of them */
    evening_end(&evening);
    return verdict;
}

static void refuse(const char *house, const char *words)
{
    spz_settings *settings = evening_settings(house);
    spz_verdict *verdict = NULL;
    last_words[0] = '\0';
    evening_begin(&evening, 20);
    CU_ASSERT_EQUAL(spz_seating_judge(&evening.findings, settings, 0, &sink, &verdict), SPZ_BAD_SETTINGS);
    CU_ASSERT_PTR_NULL(verdict);
    CU_ASSERT_PTR_NOT_NULL(strstr(last_words, words));
    evening_end(&evening);
    spz_settings_free(settings);
}

static void what_the_house_forbids_is_not_ranked(void)
{
    spz_verdict *verdict = judge("[house]\nforbidden = violins opposed, cellos inside left | violins together, violas outside\n",
                                 6);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 2);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 0)->name, "violins opposed, violas inside left");
    CU_ASSERT_PTR_NULL(verdict_of(verdict, "violins together, violas outside"));
    spz_verdict_free(verdict);
}

static void where_only_one_placing_is_allowed_the_margin_is_to_the_next_best(void)
{
    spz_verdict *verdict = judge(
        "[house]\nforbidden = violins opposed, cellos inside left | violins opposed, violas inside left\n", 6);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 2);
    CU_ASSERT(!spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_margin(verdict),
                           (spz_verdict_ranked(verdict, 0)->score - spz_verdict_ranked(verdict, 1)->score) / 100, 1e-12);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_turning(verdict).factor, 0, 0);
    spz_verdict_free(verdict);
}

static void what_the_house_prefers_gains_but_proves_nothing(void)
{
    spz_verdict *verdict = judge("[house]\npreferred = violins together, violas outside\n[weights]\nhouse = 60\n", 0);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 0)->name, "violins together, violas outside");
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_LEANING);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->kind, SPZ_REASON_HOUSE);
    CU_ASSERT(spz_verdict_reason(verdict, 0)->points > 0);
    CU_ASSERT(term_of(spz_verdict_ranked(verdict, 0), SPZ_TERM_HOUSE)->preferred && !term_of(spz_verdict_ranked(verdict, 1), SPZ_TERM_HOUSE)->preferred);
    spz_verdict_free(verdict);
}

static void the_usual_seating_settles_ties_only(void)
{
    spz_verdict *verdict = judge("[house]\nusual = violins opposed, violas inside left\n", 0);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 0)->name, "violins opposed, violas inside left");
    spz_verdict_free(verdict);
    verdict = judge("[house]\nusual = violins together, violas outside\n", 6);
    CU_ASSERT(spz_verdict_ranked(verdict, 0)->opposed);
    spz_verdict_free(verdict);
}

static void weights_of_nothing_leave_the_seating_open(void)
{
    spz_verdict *verdict = judge("[weights]\nantiphony = 0\nensemble = 0\n", 6);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(verdict, 0)->score, 50, 1e-9);
    spz_verdict_free(verdict);
}

static void a_mirrored_arrangement_scores_as_its_original(void)
{
    static const char house[] =
        "[arrangement mirrored]\norder = Vn II, Va, Vc, Vn I\n[arrangement mirrored together]\norder = Vc, Va, Vn II, Vn I\n";
    spz_settings *settings = evening_settings(house);
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 3, 0.8);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VC, 3, 0.8);
    evening_passages(&evening, SPZ_IMITATION, SPZ_VA, SPZ_VC, 3, 0.8);
    evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.7, 0.8, 0.12);
    evening.line.role = SPZ_CONTINUO;
    evening.map.line_count = 1;
    spz_verdict *verdict = evening_judge(&evening, settings, 1780);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 6);
    CU_ASSERT_DOUBLE_EQUAL(verdict_of(verdict, "mirrored")->score,
                           verdict_of(verdict, "violins opposed, cellos inside left")->score, 1e-6);
    CU_ASSERT_DOUBLE_EQUAL(verdict_of(verdict, "mirrored together")->score,
                           verdict_of(verdict, "violins together, cellos outside")->score, 1e-6);
    CU_ASSERT(verdict_of(verdict, "mirrored")->opposed && !verdict_of(verdict, "mirrored together")->opposed);
    CU_ASSERT_EQUAL(spz_arrangement_standard("mirrored"), SPZ_OWN_ARRANGEMENT);
    CU_ASSERT_EQUAL(spz_arrangement_standard("violins together, cellos outside"), SPZ_TOGETHER_CELLOS_OUTSIDE);
    CU_ASSERT(order_is(verdict_of(verdict, "mirrored")->order, "Vn II, Va, Vc, Vn I"));
    CU_ASSERT(order_is(verdict_of(verdict, "mirrored together")->order, "Vc, Va, Vn II, Vn I"));
    spz_verdict_free(verdict);
    evening_end(&evening);
    spz_settings_free(settings);
}

static void a_further_arrangement_changes_no_score_of_the_others(void)
{
    spz_verdict *four = judge("", 5), *five = judge("[arrangement wide]\norder = Vn I, Db, Vc, Va, Vn II\n", 5);
    CU_ASSERT_EQUAL(spz_verdict_count(five), 5);
    for (size_t i = 0; i < 4; i++) {
        const spz_ranked *ranked = spz_verdict_ranked(four, i);
        CU_ASSERT_DOUBLE_EQUAL(verdict_of(five, ranked->name)->score, ranked->score, 1e-12);
    }
    spz_verdict_free(four);
    spz_verdict_free(five);
}

static void house_rules_that_cannot_be_followed_are_named(void)
{
    refuse("[house]\nforbidden = violins upstairs\n", "[house] forbidden: there is no seating 'violins upstairs'; there are 'violins opposed, cellos inside left'");
    refuse("[house]\npreferred = violins\n", "[house] preferred: there is no seating 'violins'");
    refuse("[house]\nusual = cellos\n", "[house] usual: 'cellos' may be several seatings: 'violins opposed, cellos inside left'; 'violins together, cellos outside'");
    refuse("[house]\nforbidden = violins opposed, cellos inside left|violins opposed, violas inside left|violins together, "
           "cellos outside|"
           "violins together, violas outside\n",
           "forbids every arrangement");
    refuse("[arrangement none]\nbasses = along the back\n", "[arrangement none]: it has no order");
    refuse("[arrangement half]\norder = Vn I, Va\n", "must name Vn I and Vn II");
    refuse("[arrangement twice]\norder = Vn I, Vn II, Va, Vc, Va\n", "names a section twice");
    refuse("[arrangement horns]\norder = Vn I, Vn II, Va, Hn\n", "must hold sections");
    refuse("[arrangement odd]\norder = Vn I, Vn II, Va, Vc\nbasses = on the roof\n", "basses may stand");
    refuse("[arrangement key]\norder = Vn I, Vn II, Va, Vc\nbass = behind cellos\n", "may hold 'order' and 'basses' only");
    refuse("[arrangement violins together, violas outside]\norder = Vn I, Vn II, Va, Vc\n", "taken already");
}

static void an_order_of_the_house_gains_nothing_by_a_wider_arc_than_the_standard_ones(void)
{
    spz_verdict *verdict = judge("[arrangement wide]\norder = Vn I, Db, Vc, Va, Vn II\n", 5);
    double standard = fmax(verdict_of(verdict, "violins opposed, cellos inside left")->points,
                           verdict_of(verdict, "violins opposed, violas inside left")->points);
    CU_ASSERT(standard > 5);
    CU_ASSERT_DOUBLE_EQUAL(verdict_of(verdict, "wide")->points, standard, 1e-9);
    spz_verdict_free(verdict);
}

static spz_verdict *movement_of(size_t exchanges, bool unison, const char *title)
{
    evening_begin(&evening, 200);
    evening.movement.title = title;
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, exchanges, 0.85);
    if (unison)
        evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.9, 0.9, 0.1);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    evening_end(&evening);
    return verdict;
}

static void a_work_takes_the_seating_of_its_weightiest_evidence(void)
{
    spz_verdict *movements[3] = {movement_of(10, false, "Dialogue"), movement_of(0, true, "Unison"),
                                 movement_of(0, false, "Song")};
    spz_verdict *work = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge_work((const spz_verdict *const *)movements, 3, NULL, NULL, &work), SPZ_OK);
    CU_ASSERT(spz_verdict_ranked(work, 0)->opposed);
    CU_ASSERT(spz_verdict_margin(work) < spz_verdict_margin(movements[0]));
    double voices = 0, mean = 0; /* of the recommended seating; a voice is the distance between best and worst */
    for (size_t i = 0; i < 3; i++) {
        double voice = spz_verdict_ranked(movements[i], 0)->points - spz_verdict_ranked(movements[i], 3)->points;
        voices += voice;
        mean += voice * verdict_of(movements[i], spz_verdict_ranked(work, 0)->name)->points;
    }
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(work, 0)->points, mean / voices, 1e-9);
    CU_ASSERT_EQUAL(spz_verdict_reasons(work), 3);
    CU_ASSERT_STRING_EQUAL(spz_verdict_movement_title(work, spz_verdict_reason(work, 0)->movement), "Dialogue");
    for (size_t i = 0; i < 3; i++) {
        const spz_reason *reason = spz_verdict_reason(work, i);
        spz_statement own = spz_verdict_statement(movements[reason->movement]);
        CU_ASSERT_EQUAL(reason->kind, SPZ_REASON_MOVEMENT);
        CU_ASSERT_EQUAL(reason->alone.confidence, own.confidence);
        CU_ASSERT_STRING_EQUAL(reason->alone.arrangement, own.arrangement);
        CU_ASSERT((reason->lost > 0.05) == (reason->movement == 1)); /* the unison gives up its wish; the song has none */
    }
    CU_ASSERT_EQUAL(spz_verdict_movements(work), 3);
    CU_ASSERT_EQUAL(spz_verdict_movements(movements[0]), 0);
    const spz_loss *loss = loss_of(verdict_of(work, "violins together, cellos outside"), SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2);
    CU_ASSERT_PTR_NOT_NULL_FATAL(loss);
    CU_ASSERT_EQUAL(loss->movement, 0);
    CU_ASSERT_STRING_EQUAL(loss->basis.bars[0].first_bar, "3");
    for (size_t i = 0; i < 3; i++)
        spz_verdict_free(movements[i]);
    spz_verdict_free(work);
}

static void a_work_of_one_movement_sits_as_that_movement(void)
{
    spz_verdict *movement = movement_of(5, false, "Only"), *work = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge_work((const spz_verdict *const *)&movement, 1, NULL, NULL, &work), SPZ_OK);
    for (size_t i = 0; i < 4; i++)
        CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(work, i)->score, spz_verdict_ranked(movement, i)->score, 1e-9);
    CU_ASSERT_EQUAL(spz_verdict_confidence(work), spz_verdict_confidence(movement));
    spz_verdict_free(movement);
    spz_verdict_free(work);
}

static void movements_that_cannot_be_judged_have_no_vote(void)
{
    evening_begin(&evening, 20);
    evening.map.group_count = 0;
    spz_verdict *none = evening_judge(&evening, NULL, 0), *some = movement_of(6, false, "Dialogue"), *work = NULL;
    const spz_verdict *pair[2] = {none, some};
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge_work(pair, 2, NULL, NULL, &work), SPZ_OK);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_margin(work), spz_verdict_margin(some), 1e-9);
    spz_verdict_free(work);
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge_work(pair, 1, NULL, NULL, &work), SPZ_OK);
    CU_ASSERT_EQUAL(spz_verdict_count(work), 0);
    CU_ASSERT_EQUAL(spz_verdict_statement(work).outcome, SPZ_WITHOUT_STRINGS);
    spz_verdict_free(work);
    spz_verdict_free(none);
    spz_verdict_free(some);
    evening_end(&evening);
}

static void movements_judged_by_other_rules_are_not_mixed(void)
{
    spz_verdict *four = judge("", 3), *five = judge("[arrangement wide]\norder = Vn I, Db, Vc, Va, Vn II\n", 3), *work = NULL;
    const spz_verdict *pair[2] = {four, five};
    CU_ASSERT_EQUAL(spz_seating_judge_work(pair, 2, NULL, NULL, &work), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(work);
    spz_verdict_free(four);
    spz_verdict_free(five);
}

/* A number between the bounds of the setting; now and then a bound itself. */
static void set_at_random(spz_settings *settings, const spz_setting *row, unsigned *seed)
{
    char name[80], value[32];
    *seed = *seed * 1664525u + 1013904223u;
    double share = (*seed >> 8) % 1001 / 1000.0;
    share = share < 0.05 ? 0 : share > 0.95 ? 1 : share;
    snprintf(name, sizeof name, "%s.%s", row->section, row->key);
    double number = row->least + share * (row->most - row->least);
    snprintf(value, sizeof value, "%.4f", strcmp(row->unit, "players") == 0 ? floor(number) : number);
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, name, value, NULL), SPZ_OK);
}

static void whatever_the_house_sets_the_scores_are_sound(void)
{
    static const char *const sections[] = {"players", "stage", "hall", "weights"};
    unsigned seed = 1931;
    for (int trial = 0; trial < 150; trial++) {
        spz_settings *settings = NULL;
        CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
        for (size_t i = 0; i < spz_setting_count(); i++)
            for (size_t k = 0; k < COUNT(sections); k++)
                if (spz_setting_at(i)->kind == SPZ_NUMBER && strcmp(spz_setting_at(i)->section, sections[k]) == 0)
                    set_at_random(settings, spz_setting_at(i), &seed);
        evening_begin(&evening, 200);
        evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, (size_t)trial % 7, 0.8);
        evening_passages(&evening, SPZ_IMITATION, SPZ_VIOLINS, SPZ_VC, 4, 0.6);
        evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.7, 0.8, 0.12);
        spz_verdict *verdict = evening_judge(&evening, settings, 1500 + 4 * trial);
        CU_ASSERT_EQUAL(spz_verdict_count(verdict), 4);
        for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
            const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
            CU_ASSERT(isfinite(ranked->score) && ranked->score >= 0 && ranked->score <= 100 && ranked->lost >= -1e-9);
            CU_ASSERT(i == 0 || spz_verdict_ranked(verdict, i - 1)->points >= ranked->points - 1e-9);
        }
        CU_ASSERT(spz_verdict_margin(verdict) >= 0 && spz_verdict_margin(verdict) <= 1);
        spz_verdict_free(verdict);
        evening_end(&evening);
        spz_settings_free(settings);
    }
}

static void a_judgement_without_memory_says_so_and_leaves_nothing(void)
{
    spz_verdict *verdict = NULL, *work = NULL;
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 5, 0.85);
    evening_passages(&evening, SPZ_IMITATION, SPZ_VA, SPZ_VC, 5, 0.85);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_STRINGS, SPZ_WINDS, 2, 0.85);
    evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.7, 0.8, 0.12);
    while (status == SPZ_NO_MEMORY && requests < 2000) {
        memory_starve_after(++requests);
        status = spz_seating_judge(&evening.findings, NULL, 1800, NULL, &verdict);
        memory_starve_after(0);
        CU_ASSERT_FATAL((status == SPZ_OK) == (verdict != NULL));
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT(requests > 10);
    status = SPZ_NO_MEMORY;
    for (requests = 0; status == SPZ_NO_MEMORY && requests < 2000;) {
        memory_starve_after(++requests);
        status = spz_seating_judge_work((const spz_verdict *const *)&verdict, 1, NULL, NULL, &work);
        memory_starve_after(0);
        CU_ASSERT_FATAL((status == SPZ_OK) == (work != NULL));
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT(requests > 2);
    spz_verdict_free(work);
    spz_verdict_free(verdict);
    evening_end(&evening);
}

static const struct Statement statements[] = {
    STATEMENT(what_the_house_forbids_is_not_ranked),
    STATEMENT(where_only_one_placing_is_allowed_the_margin_is_to_the_next_best),
    STATEMENT(what_the_house_prefers_gains_but_proves_nothing),
    STATEMENT(the_usual_seating_settles_ties_only),
    STATEMENT(weights_of_nothing_leave_the_seating_open),
    STATEMENT(a_mirrored_arrangement_scores_as_its_original),
    STATEMENT(a_further_arrangement_changes_no_score_of_the_others),
    STATEMENT(house_rules_that_cannot_be_followed_are_named),
    STATEMENT(an_order_of_the_house_gains_nothing_by_a_wider_arc_than_the_standard_ones),
    STATEMENT(a_work_takes_the_seating_of_its_weightiest_evidence),
    STATEMENT(a_work_of_one_movement_sits_as_that_movement),
    STATEMENT(movements_that_cannot_be_judged_have_no_vote),
    STATEMENT(movements_judged_by_other_rules_are_not_mixed),
    STATEMENT(whatever_the_house_sets_the_scores_are_sound),
    STATEMENT(a_judgement_without_memory_says_so_and_leaves_nothing),
};

void suite_seating_house(void)
{
    suite_of("seating: the house, a work", statements, COUNT(statements));
}
