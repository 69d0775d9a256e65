/* What the evidence does to the recommendation. */
#include "support/scores/evening.h"
#include "support/suite.h"
#include <string.h>

static Evening evening;

static spz_verdict *with_exchanges(size_t count, double strength, const spz_settings *settings)
{
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, count, strength);
    return evening_judge(&evening, settings, 0);
}

static void done(spz_verdict *verdict)
{
    spz_verdict_free(verdict);
    evening_end(&evening);
}

static void no_evidence_leaves_the_seating_open(void)
{
    evening_begin(&evening, 100);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 4);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    for (size_t i = 0; i < 4; i++)
        CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(verdict, i)->score, 50, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_margin(verdict), 0, 1e-12);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_turning(verdict).factor, 0, 0);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 0)->name,
                           "violins together, cellos outside"); /* the usual one settles ties */
    done(verdict);
}

static void several_striking_exchanges_of_the_violins_are_firm_for_opposed(void)
{
    spz_verdict *verdict = with_exchanges(6, 0.85, NULL);
    CU_ASSERT(spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_FIRM);
    CU_ASSERT(order_is(spz_verdict_ranked(verdict, 0)->order, "Vn I, Vc, Va, Vn II"));
    CU_ASSERT(spz_verdict_margin(verdict) > 0.15 && spz_verdict_margin(verdict) <= 1);
    done(verdict);
}

static void a_handful_of_marginal_exchanges_is_never_firm(void)
{
    spz_verdict *verdict = with_exchanges(6, 0.4, NULL);
    CU_ASSERT(spz_verdict_confidence(verdict) != SPZ_FIRM);
    done(verdict);
}

static void more_exchanges_never_lower_the_opposed_score(void)
{
    double before = 0, other = 100;
    for (size_t count = 0; count <= 24; count++) {
        spz_verdict *verdict = with_exchanges(count, 0.3 + 0.6 * (double)(count % 5) / 5, NULL);
        done(verdict);
        verdict = with_exchanges(count, 0.7, NULL);
        CU_ASSERT(best_opposed(verdict) >= before - 1e-12);
        CU_ASSERT(best_together(verdict) <= other + 1e-12);
        before = best_opposed(verdict);
        other = best_together(verdict);
        done(verdict);
    }
}

static void a_stronger_exchange_never_weighs_less(void)
{
    double before = 0;
    for (int tenth = 0; tenth <= 10; tenth++) {
        spz_verdict *verdict = with_exchanges(1, tenth / 10.0, NULL);
        CU_ASSERT(best_opposed(verdict) >= before - 1e-12);
        before = best_opposed(verdict);
        done(verdict);
    }
}

static void more_coupling_of_the_violins_never_raises_the_opposed_score(void)
{
    double before = 101;
    for (size_t bars = 0; bars <= 200; bars += 20) {
        evening_begin(&evening, 200);
        evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 4, 0.7);
        if (bars) {
            spz_passage *p = evening_passage(&evening, SPZ_COUPLING, SPZ_VN1, SPZ_VN2, 1, bars, 0.8);
            p->tightness = 0.8;
            p->shortest = 0.12;
        }
        spz_verdict *verdict = evening_judge(&evening, NULL, 0);
        CU_ASSERT(best_opposed(verdict) <= before + 1e-12);
        before = best_opposed(verdict);
        done(verdict);
    }
}

static void fast_tight_unison_throughout_seats_the_violins_together(void)
{
    evening_begin(&evening, 120);
    evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.9, 0.9, 0.09);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(!spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT(spz_verdict_confidence(verdict) != SPZ_OPEN);
    done(verdict);
}

static void the_faster_the_unison_the_more_it_asks_to_sit_together(void)
{
    double before = 0;
    for (int step = 8; step >= 1; step--) {
        evening_begin(&evening, 120);
        evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.8, 0.7, 0.025 * step);
        spz_verdict *verdict = evening_judge(&evening, NULL, 0);
        CU_ASSERT(best_together(verdict) >= before - 1e-12);
        before = best_together(verdict);
        done(verdict);
    }
}

static void all_violins_in_three_sit_together(void)
{
    evening_begin(&evening, 120);
    for (size_t i = 0; i < 3; i++)
        evening_passage(&evening, SPZ_DIV3, SPZ_VIOLINS, SPZ_NO_SECTION, 20 * i + 5, 20 * i + 12, 0.9)->fully_voiced = true;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(!spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_FIRM);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->kind, SPZ_REASON_THREE);
    CU_ASSERT(!spz_verdict_reason(verdict, 0)->third_part);
    CU_ASSERT(bars_are(&spz_verdict_reason(verdict, 0)->basis, "5-12, 25-32, 45-52"));
    const spz_loss *loss = loss_of(verdict_of(verdict, "violins opposed, cellos inside left"), SPZ_DIV3, SPZ_VIOLINS, SPZ_NO_SECTION);
    CU_ASSERT_PTR_NOT_NULL_FATAL(loss);
    CU_ASSERT(bars_are(&loss->basis, "5-12, 25-32, 45-52"));
    CU_ASSERT_EQUAL(loss->basis.passage_count, 3);
    done(verdict);
}

static void one_section_in_three_says_nothing_about_where_it_sits(void)
{
    evening_begin(&evening, 120);
    evening_passage(&evening, SPZ_DIV3, SPZ_VN1, SPZ_NO_SECTION, 5, 12, 0.9)->fully_voiced = true;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    done(verdict);
}

static void violins_in_four_two_lines_in_each_section_are_told_but_do_not_count(void)
{
    evening_begin(&evening, 120);
    spz_passage *p = evening_passage(&evening, SPZ_DIV3, SPZ_VIOLINS, SPZ_NO_SECTION, 5, 12, 0.9);
    p->fully_voiced = true;
    p->turns = 4;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_margin(verdict), 0, 1e-12);
    CU_ASSERT_EQUAL_FATAL(spz_verdict_reasons(verdict), 1);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->kind, SPZ_REMARK_IN_FOUR);
    CU_ASSERT(bars_are(&spz_verdict_reason(verdict, 0)->basis, "5-12"));
    CU_ASSERT_EQUAL(verdict_of(verdict, "violins opposed, cellos inside left")->loss_count, 0);
    done(verdict);
}

static void exchanges_with_the_winds_are_told_but_do_not_count(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_STRINGS, SPZ_WINDS, 8, 0.95);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_margin(verdict), 0, 1e-12);
    CU_ASSERT_EQUAL_FATAL(spz_verdict_reasons(verdict), 1);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->kind, SPZ_REMARK_WINDS);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->basis.passage_count, 8);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_reason(verdict, 0)->points, 0, 0);
    done(verdict);
}

static void first_violins_and_cellos_in_dialogue_pull_the_cellos_outside(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VC, 6, 0.9);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 0)->name, "violins together, cellos outside");
    CU_ASSERT(verdict_of(verdict, "violins opposed, violas inside left")->score >
              verdict_of(verdict, "violins opposed, cellos inside left")->score);
    done(verdict);
}

static void violas_and_cellos_in_dialogue_move_the_lower_strings_but_less_than_violins_would(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_VC, 6, 0.9);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    double spread = spz_verdict_ranked(verdict, 0)->points - spz_verdict_ranked(verdict, 3)->points;
    CU_ASSERT(spread > 0.05);
    done(verdict);
    verdict = with_exchanges(6, 0.9, NULL);
    CU_ASSERT(spread < spz_verdict_ranked(verdict, 0)->points - spz_verdict_ranked(verdict, 3)->points);
    done(verdict);
}

static void all_violins_against_the_lower_strings_ask_mildly_for_violins_together(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VIOLINS, SPZ_STRINGS, 6, 0.9);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(!spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT(spz_verdict_confidence(verdict) != SPZ_FIRM);
    done(verdict);
}

static void a_section_that_answers_all_violins_is_at_no_other_place(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN2, SPZ_VIOLINS, 6, 0.9);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VC, SPZ_STRINGS, 6, 0.9);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    CU_ASSERT_DOUBLE_EQUAL(spz_verdict_ranked(verdict, 0)->points, 0, 1e-12);
    done(verdict);
}

static void imitation_weighs_less_than_an_exchange(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_IMITATION, SPZ_VN1, SPZ_VN2, 2, 0.8);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    double imitation = best_opposed(verdict);
    done(verdict);
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 2, 0.8);
    verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(imitation > 50 && imitation < best_opposed(verdict));
    done(verdict);
}

static void what_is_buried_under_a_tutti_counts_less(void)
{
    evening_begin(&evening, 120);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 2, 0.8);
    for (size_t i = 0; i < 2; i++)
        evening.findings.passages.at[i].foreground = 0.1;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    double buried = best_opposed(verdict);
    done(verdict);
    verdict = with_exchanges(2, 0.8, NULL);
    CU_ASSERT(buried < best_opposed(verdict));
    done(verdict);
}

/* Exchanges in bars 3-4, 11-12 and so on, a second a crotchet, bars 1 to 20 played twice. */
static void what_is_given_up_is_counted_in_bars_and_seconds(void)
{
    static Tempo tempo = {0, 60, true};
    int32_t played[120];
    for (int i = 0; i < 120; i++)
        played[i] = i < 20 ? i : i - 20;
    evening_begin(&evening, 100);
    evening.movement.tempos = &tempo;
    evening.movement.tempo_count = 1;
    evening.movement.played = played;
    evening.movement.played_count = 120;
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 3, 4, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 19, 22, 0.9);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VN1, SPZ_VN2, 21, 23, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 50, 51, 0.4); /* marginal: no loss */
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    const spz_ranked *best = spz_verdict_ranked(verdict, 0), *other = verdict_of(verdict, "violins together, cellos outside");
    CU_ASSERT_TRUE(best->opposed);
    CU_ASSERT_EQUAL(best->lost_bars, 0);
    CU_ASSERT_DOUBLE_EQUAL(best->lost_seconds, 0, 0);
    CU_ASSERT_EQUAL(other->lost_bars, 2 + 5); /* 3-4, 19-23 */
    CU_ASSERT_DOUBLE_EQUAL(other->lost_seconds, 4 * (2 * 2 + 2 * 2 + 3), 1e-9);
    spz_verdict_free(verdict);
    evening_end(&evening);
}

static bool same_view(const spz_statement *one, const spz_statement *other)
{
    return one->confidence == other->confidence && one->by_year == other->by_year && !strcmp(one->arrangement, other->arrangement) &&
           fabs(one->margin - other->margin) < 1e-12;
}

/* From nothing heard to a movement full of it. */
static void what_a_verdict_says_of_other_years_is_what_judging_in_them_gives(void)
{
    for (size_t exchanges = 0; exchanges <= 8; exchanges++) {
        evening_begin(&evening, 200);
        evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, exchanges, 0.7);
        spz_verdict *silent = evening_judge(&evening, NULL, 0), *late = evening_judge(&evening, NULL, 1890);
        spz_verdict *earlier = evening_judge(&evening, NULL, SPZ_EARLIER_YEAR), *later = evening_judge(&evening, NULL, SPZ_LATER_YEAR);
        spz_statement each[] = {spz_verdict_statement(silent), spz_verdict_statement(earlier), spz_verdict_statement(later)};
        spz_by_year by = spz_verdict_by_year(late);
        CU_ASSERT_EQUAL(by.year, 1890);
        CU_ASSERT_EQUAL(spz_verdict_by_year(silent).year, 0);
        CU_ASSERT_TRUE(same_view(&by.silent, &each[0]) && same_view(&by.earlier, &each[1]) && same_view(&by.later, &each[2]));
        spz_verdict_free(silent);
        spz_verdict_free(late);
        spz_verdict_free(earlier);
        spz_verdict_free(later);
        evening_end(&evening);
    }
}

/* However the score stands, and however much the year may weigh. */
static void no_year_makes_firm_what_is_not_firm_without_it(void)
{
    size_t lifted = 0;
    for (double strength = 0.5; strength < 1; strength += 0.05)
        for (size_t exchanges = 1; exchanges <= 6; exchanges++)
            for (int weight = 6; weight <= 60; weight *= 3) {
                char house[64];
                snprintf(house, sizeof house, "[weights]\nera = %d\n", weight);
                spz_settings *settings = evening_settings(house);
                evening_begin(&evening, 200);
                evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, exchanges, strength);
                spz_verdict *silent = evening_judge(&evening, settings, 0), *dated = evening_judge(&evening, settings, 1780);
                CU_ASSERT_TRUE(spz_verdict_confidence(dated) < SPZ_FIRM || spz_verdict_confidence(silent) == SPZ_FIRM);
                lifted += spz_verdict_margin(dated) >= 0.15 && spz_verdict_confidence(silent) < SPZ_FIRM;
                spz_verdict_free(silent);
                spz_verdict_free(dated);
                evening_end(&evening);
                spz_settings_free(settings);
            }
    CU_ASSERT_TRUE(lifted > 10); /* the year has carried the margin over the line often enough for this to mean something */
}

static void where_the_score_is_silent_it_is_the_year_that_speaks(void)
{
    evening_begin(&evening, 100);
    spz_verdict *silent = evening_judge(&evening, NULL, 0), *early = evening_judge(&evening, NULL, 1780);
    CU_ASSERT_FALSE(spz_verdict_statement(silent).by_year);
    CU_ASSERT_TRUE(spz_verdict_statement(early).by_year);
    CU_ASSERT_EQUAL(spz_verdict_confidence(early), SPZ_LEANING);
    spz_verdict_free(silent);
    spz_verdict_free(early);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 6, 0.9);
    early = evening_judge(&evening, NULL, 1780);
    CU_ASSERT_FALSE(spz_verdict_statement(early).by_year);
    spz_verdict_free(early);
    evening_end(&evening);
}

static void the_year_alone_never_gives_more_than_a_leaning(void)
{
    static const int years[] = {1600, 1720, 1780, 1850, 1900, 1929, 1931, 1960, 2020};
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    for (size_t i = 0; i < COUNT(years); i++)
        for (int heavy = 0; heavy < 2; heavy++) {
            CU_ASSERT_EQUAL(spz_settings_set(settings, "weights.era", heavy ? "100" : "6", NULL), SPZ_OK);
            evening_begin(&evening, 120);
            spz_verdict *verdict = evening_judge(&evening, settings, years[i]);
            CU_ASSERT(spz_verdict_confidence(verdict) != SPZ_FIRM);
            if (years[i] < 1900)
                CU_ASSERT(spz_verdict_ranked(verdict, 0)->opposed && spz_verdict_confidence(verdict) == SPZ_LEANING);
            done(verdict);
        }
    spz_settings_free(settings);
}

static void a_blurred_hall_shifts_toward_together(void)
{
    static const char *const sounds[] = {"dry", "clear", "blurred"};
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    double before = 1000;
    for (size_t i = 0; i < COUNT(sounds); i++) {
        CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, "hall.sound", sounds[i], NULL), SPZ_OK);
        evening_begin(&evening, 200);
        evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 5, 0.8);
        evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.7, 0.6, 0.15);
        spz_verdict *verdict = evening_judge(&evening, settings, 0);
        double ahead = best_opposed(verdict) - best_together(verdict);
        CU_ASSERT(ahead < before);
        before = ahead;
        done(verdict);
    }
    spz_settings_free(settings);
}

static void a_long_movement_with_the_same_few_exchanges_is_no_firmer(void)
{
    spz_verdict *verdict = with_exchanges(4, 0.7, NULL);
    double before = spz_verdict_margin(verdict);
    done(verdict);
    evening_begin(&evening, 600);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 4, 0.7);
    verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(spz_verdict_margin(verdict) < before);
    done(verdict);
}

static void the_turning_weight_turns_the_verdict(void)
{
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 4, 0.8);
    evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.8, 0.7, 0.12);
    spz_settings *settings = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    spz_verdict *verdict = evening_judge(&evening, settings, 0);
    double factor = spz_verdict_turning(verdict).factor, usual = spz_settings_number(settings, "weights.ensemble");
    char weight[32];
    CU_ASSERT(spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT_EQUAL_FATAL(spz_verdict_turning(verdict).term, SPZ_TERM_ENSEMBLE);
    CU_ASSERT_FATAL(factor > 1);
    spz_verdict_free(verdict);
    for (int side = -1; side <= 1; side += 2) {
        snprintf(weight, sizeof weight, "%.3f", usual * (factor + 0.001 * side));
        CU_ASSERT_EQUAL_FATAL(spz_settings_set(settings, "weights.ensemble", weight, NULL), SPZ_OK);
        verdict = evening_judge(&evening, settings, 0);
        CU_ASSERT_EQUAL(spz_verdict_ranked(verdict, 0)->opposed, side < 0);
        spz_verdict_free(verdict);
    }
    spz_settings_free(settings);
    evening_end(&evening);
}

static void terms_add_up_to_the_score(void)
{
    evening_begin(&evening, 200);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 3, 0.8);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VA, SPZ_VC, 3, 0.8);
    evening_couple(&evening, SPZ_VN1, SPZ_VN2, 0.6, 0.5, 0.2);
    spz_verdict *verdict = evening_judge(&evening, NULL, 1800);
    for (size_t i = 0; i < 4; i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        double sum = 0;
        for (size_t t = 0; t < ranked->term_count; t++)
            sum += ranked->terms[t].points;
        CU_ASSERT_DOUBLE_EQUAL(sum, ranked->points, 1e-9);
        CU_ASSERT_EQUAL(ranked->term_count, spz_verdict_ranked(verdict, 0)->term_count);
        CU_ASSERT(ranked->score > 0 && ranked->score < 100);
        CU_ASSERT_DOUBLE_EQUAL(ranked->lost, spz_verdict_ranked(verdict, 0)->points - ranked->points, 1e-9);
    }
    done(verdict);
}

static void reasons_name_the_bars_they_rest_on(void)
{
    evening_begin(&evening, 200);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 66, 71, 0.9);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VN1, SPZ_VN2, 70, 74, 0.8);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 102, 102, 0.8);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    const spz_reason *reason = spz_verdict_reason(verdict, 0);
    CU_ASSERT_EQUAL(reason->kind, SPZ_REASON_ANTIPHONY);
    CU_ASSERT(reason->sections[0] == SPZ_VN1 && reason->sections[1] == SPZ_VN2);
    CU_ASSERT(bars_are(&reason->basis, "66-74, 102"));
    CU_ASSERT_EQUAL_FATAL(reason->basis.passage_count, 3);
    CU_ASSERT_EQUAL(reason->basis.passages[0].passage, 0); /* the weightiest first */
    CU_ASSERT_EQUAL(reason->weightiest.bar_count, 0);      /* of three none needs naming by itself */
    CU_ASSERT(reason->here > reason->there);
    CU_ASSERT_STRING_EQUAL(reason->other, spz_verdict_ranked(verdict, 2)->name);
    const spz_ranked *together = verdict_of(verdict, "violins together, cellos outside");
    CU_ASSERT_EQUAL(together->loss_count, 2);
    CU_ASSERT(bars_are(&loss_of(together, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2)->basis, "66-71, 102"));
    CU_ASSERT(bars_are(&loss_of(together, SPZ_HOCKET, SPZ_VN1, SPZ_VN2)->basis, "70-74"));
    CU_ASSERT_EQUAL(loss_of(together, SPZ_HOCKET, SPZ_VN1, SPZ_VN2)->basis.passages[0].passage, 1);
    CU_ASSERT_EQUAL(spz_verdict_ranked(verdict, 0)->loss_count, 0);
    done(verdict);
}

static void where_the_lower_strings_may_sit_either_way_it_is_said(void)
{
    spz_verdict *verdict = with_exchanges(6, 0.85, NULL);
    const spz_reason *remark = reason_of(verdict, SPZ_REMARK_NEIGHBOUR);
    CU_ASSERT_PTR_NOT_NULL_FATAL(remark);
    CU_ASSERT_STRING_EQUAL(remark->other, "violins opposed, violas inside left");
    CU_ASSERT_DOUBLE_EQUAL(remark->lost, 0, 0.05);
    done(verdict);
}

static void a_score_without_strings_is_not_judged(void)
{
    evening_begin(&evening, 20);
    evening.map.group_count = 0;
    spz_verdict *verdict = evening_judge(&evening, NULL, 1800);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 0);
    CU_ASSERT_PTR_NULL(spz_verdict_ranked(verdict, 0));
    CU_ASSERT_EQUAL(spz_verdict_statement(verdict).outcome, SPZ_WITHOUT_STRINGS);
    CU_ASSERT_PTR_NULL(spz_verdict_statement(verdict).arrangement);
    done(verdict);
}

static void a_score_with_one_violin_section_is_not_judged(void)
{
    evening_begin(&evening, 20);
    evening.groups[1].about.section = SPZ_VA;
    spz_verdict *verdict = evening_judge(&evening, NULL, 1800);
    CU_ASSERT_EQUAL(spz_verdict_count(verdict), 0);
    CU_ASSERT_EQUAL(spz_verdict_statement(verdict).outcome, SPZ_WITHOUT_VIOLINS);
    done(verdict);
}

static void two_orchestras_face_each_other_and_are_judged_within(void)
{
    static const spz_section five[] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};
    evening_begin(&evening, 120);
    for (size_t i = 0; i < 5; i++)
        evening.groups[i].about.orchestra = 1;
    for (size_t i = 0; i < 5; i++)
        evening_group(&evening, five[i], 2, false);
    for (size_t i = 0; i < 6; i++) {
        spz_passage *p = evening_passage(&evening, SPZ_EXCHANGE, SPZ_STRINGS, SPZ_STRINGS, 10 * i + 1, 10 * i + 4, 0.95);
        p->sides[0].group = 0;
        p->sides[1].group = 5;
    }
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    spz_section pair[2];
    CU_ASSERT_EQUAL(spz_verdict_orchestras(verdict), 2);
    CU_ASSERT(spz_verdict_pair(verdict, 0, pair) && pair[0] == SPZ_VN1 && pair[1] == SPZ_VN1);
    CU_ASSERT_EQUAL_FATAL(spz_verdict_reasons(verdict), 2);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 0)->kind, SPZ_REMARK_TWO_ORCHESTRAS);
    CU_ASSERT_EQUAL(spz_verdict_reason(verdict, 1)->kind, SPZ_REMARK_BETWEEN_ORCHESTRAS);
    CU_ASSERT(bars_are(&spz_verdict_reason(verdict, 1)->basis, "1-4, 11-14, 21-24, 31-34, 41-44, 51-54"));
    spz_verdict_free(verdict);
    evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 6, 0.9);
    verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(spz_verdict_ranked(verdict, 0)->opposed);
    done(verdict);
}

static void a_third_violin_part_is_seated_and_speaks_for_together(void)
{
    evening_begin(&evening, 120);
    evening_group(&evening, SPZ_VN3, 0, false);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT(spz_verdict_thirds(verdict));
    CU_ASSERT(!spz_verdict_ranked(verdict, 0)->opposed);
    CU_ASSERT(order_is(spz_verdict_ranked(verdict, 0)->order, "Vn I, Vn II, Vn III, Va, Vc"));
    CU_ASSERT(order_is(verdict_of(verdict, "violins opposed, cellos inside left")->order, "Vn I, Vc, Va, Vn III, Vn II"));
    done(verdict);
}

static void a_soloist_stands_before_the_sections_and_moves_none(void)
{
    evening_begin(&evening, 120);
    size_t solo = evening_group(&evening, SPZ_VN1, 0, true);
    for (size_t i = 0; i < 6; i++)
        evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 10 * i + 1, 10 * i + 4, 0.95)->sides[0].group = solo;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    CU_ASSERT_EQUAL(spz_verdict_confidence(verdict), SPZ_OPEN);
    done(verdict);
}

static void over_a_continuo_the_bass_is_wanted_in_the_middle(void)
{
    evening_begin(&evening, 120);
    evening.line = (spz_line){.role = SPZ_CONTINUO};
    evening.map.line_count = 1;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    const spz_order *best = &spz_verdict_ranked(verdict, 0)->order;
    CU_ASSERT_NOT_EQUAL(best->sections[best->count - 1], SPZ_VC);
    CU_ASSERT_EQUAL(reason_of(verdict, SPZ_REASON_BASS)->bass, SPZ_BASS_CONTINUO);
    CU_ASSERT(reason_of(verdict, SPZ_REASON_BASS)->here > reason_of(verdict, SPZ_REASON_BASS)->there);
    CU_ASSERT_STRING_EQUAL(spz_verdict_ranked(verdict, 3)->name, "violins together, cellos outside");
    CU_ASSERT(spz_verdict_confidence(verdict) != SPZ_FIRM);
    done(verdict);
}

static void one_written_bass_speaks_less_than_a_continuo_and_more_than_basses_that_follow(void)
{
    double points[3]; /* of the best arrangement before the worst */
    for (int grade = 0; grade < 3; grade++) {
        evening_begin(&evening, 120);
        if (grade == 0) {
            spz_pairing pairing = {.groups = {3, 4}, .together = 0.95, .octaves = 1, .shared_bars = 100};
            CU_ASSERT_FATAL(array_push(&evening.findings.pairings, pairing));
        }
        evening.groups[4].shares_bass = grade == 1;
        evening.line.role = SPZ_CONTINUO;
        evening.map.line_count = grade == 2;
        spz_verdict *verdict = evening_judge(&evening, NULL, 0);
        points[grade] = spz_verdict_ranked(verdict, 0)->points - spz_verdict_ranked(verdict, 3)->points;
        done(verdict);
    }
    CU_ASSERT(points[0] > 0 && points[0] < points[1] && points[1] < points[2]);
}

static void melody_in_the_seconds_is_found_and_named(void)
{
    static GroupSound sounds[40];
    static Note notes[40];
    evening_begin(&evening, 40);
    for (size_t i = 0; i < 40; i++) { /* bars 11 to 20 in crotchets up and down, the firsts silent */
        notes[i] = (Note){.midi = (int16_t)(67 + (int)(i % 5))};
        sounds[i] = (GroupSound){.onset = (Ticks)(160 + 4 * i), .duration = 4, .note = &notes[i]};
    }
    evening.groups[1].sounds = sounds;
    evening.groups[1].sound_count = 40;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    const spz_ranked *ranked = spz_verdict_ranked(verdict, 0);
    CU_ASSERT_PTR_NOT_NULL(term_of(ranked, SPZ_TERM_TURNED));
    CU_ASSERT_DOUBLE_EQUAL(term_of(ranked, SPZ_TERM_MELODY)->evidence, 0.25, 1e-9); /* ten bars of forty */
    CU_ASSERT_PTR_NOT_NULL_FATAL(reason_of(verdict, SPZ_REASON_MELODY));
    CU_ASSERT(bars_are(&reason_of(verdict, SPZ_REASON_MELODY)->basis, "11-20"));
    done(verdict);
}

/* Whether 'melody in the seconds' is found when they play `seconds` as crotchets in every bar, under `first` held by the firsts for four
 * bars at a time (0: they are silent). */
static bool seconds_have_the_melody(const int seconds[4], int first)
{
    static GroupSound sounds[40], held[3];
    static Note notes[40], note;
    evening_begin(&evening, 12);
    for (size_t i = 0; i < 40; i++) {
        notes[i] = (Note){.midi = (int16_t)seconds[i % 4]};
        sounds[i] = (GroupSound){.onset = (Ticks)(4 * i), .duration = 4, .note = &notes[i]};
    }
    note = (Note){.midi = (int16_t)first};
    for (size_t i = 0; i < 3; i++)
        held[i] = (GroupSound){.onset = (Ticks)(64 * i), .duration = 64, .note = &note};
    evening.groups[0].sounds = held;
    evening.groups[0].sound_count = first ? 3 : 0;
    evening.groups[1].sounds = sounds;
    evening.groups[1].sound_count = 40;
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    bool found = term_of(spz_verdict_ranked(verdict, 0), SPZ_TERM_MELODY) != NULL;
    done(verdict);
    return found;
}

static void figures_of_the_seconds_under_a_held_line_of_the_firsts_are_no_melody(void)
{
    static const int scale[] = {67, 69, 71, 72}, rocking[] = {60, 67, 60, 67};
    CU_ASSERT(seconds_have_the_melody(scale, 0));
    CU_ASSERT(seconds_have_the_melody(scale, 60)); /* a drone below */
    CU_ASSERT_FALSE(seconds_have_the_melody(scale, 79));
    CU_ASSERT_FALSE(seconds_have_the_melody(rocking, 0));
}

static const struct Statement statements[] = {
    STATEMENT(no_evidence_leaves_the_seating_open),
    STATEMENT(several_striking_exchanges_of_the_violins_are_firm_for_opposed),
    STATEMENT(a_handful_of_marginal_exchanges_is_never_firm),
    STATEMENT(more_exchanges_never_lower_the_opposed_score),
    STATEMENT(a_stronger_exchange_never_weighs_less),
    STATEMENT(more_coupling_of_the_violins_never_raises_the_opposed_score),
    STATEMENT(fast_tight_unison_throughout_seats_the_violins_together),
    STATEMENT(the_faster_the_unison_the_more_it_asks_to_sit_together),
    STATEMENT(all_violins_in_three_sit_together),
    STATEMENT(one_section_in_three_says_nothing_about_where_it_sits),
    STATEMENT(violins_in_four_two_lines_in_each_section_are_told_but_do_not_count),
    STATEMENT(exchanges_with_the_winds_are_told_but_do_not_count),
    STATEMENT(first_violins_and_cellos_in_dialogue_pull_the_cellos_outside),
    STATEMENT(violas_and_cellos_in_dialogue_move_the_lower_strings_but_less_than_violins_would),
    STATEMENT(all_violins_against_the_lower_strings_ask_mildly_for_violins_together),
    STATEMENT(a_section_that_answers_all_violins_is_at_no_other_place),
    STATEMENT(imitation_weighs_less_than_an_exchange),
    STATEMENT(what_is_buried_under_a_tutti_counts_less),
    STATEMENT(the_year_alone_never_gives_more_than_a_leaning),
    STATEMENT(what_is_given_up_is_counted_in_bars_and_seconds),
    STATEMENT(what_a_verdict_says_of_other_years_is_what_judging_in_them_gives),
    STATEMENT(no_year_makes_firm_what_is_not_firm_without_it),
    STATEMENT(where_the_score_is_silent_it_is_the_year_that_speaks),
    STATEMENT(a_blurred_hall_shifts_toward_together),
    STATEMENT(a_long_movement_with_the_same_few_exchanges_is_no_firmer),
    STATEMENT(the_turning_weight_turns_the_verdict),
    STATEMENT(terms_add_up_to_the_score),
    STATEMENT(reasons_name_the_bars_they_rest_on),
    STATEMENT(where_the_lower_strings_may_sit_either_way_it_is_said),
    STATEMENT(a_score_without_strings_is_not_judged),
    STATEMENT(a_score_with_one_violin_section_is_not_judged),
    STATEMENT(two_orchestras_face_each_other_and_are_judged_within),
    STATEMENT(a_third_violin_part_is_seated_and_speaks_for_together),
    STATEMENT(a_soloist_stands_before_the_sections_and_moves_none),
    STATEMENT(over_a_continuo_the_bass_is_wanted_in_the_middle),
    STATEMENT(one_written_bass_speaks_less_than_a_continuo_and_more_than_basses_that_follow),
    STATEMENT(melody_in_the_seconds_is_found_and_named),
    STATEMENT(figures_of_the_seconds_under_a_held_line_of_the_firsts_are_no_melody),
};

void suite_seating_judgement(void)
{
    suite_of("seating: judgement", statements, COUNT(statements));
}
