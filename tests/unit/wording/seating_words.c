/* A verdict and a stage in words, in each language. */
#include "support/scores/evening.h"
#include "support/suite.h"
#include "wording/seatings/seating_words.h"
#include "wording/seatings/stage_words.h"
#include <stdio.h>
#include <string.h>

static Evening evening;
static char said[600];

static const char *taken(Buffer *out)
{
    snprintf(said, sizeof said, "%s", out->text ? out->text : "");
    CU_ASSERT(!buffer_failed(out));
    buffer_free(out);
    return said;
}

static const char *statement(spz_language language, spz_statement statement)
{
    Buffer out;
    buffer_init(&out);
    say_statement(&out, language, statement);
    return taken(&out);
}

static void a_statement_recommends_leans_or_leaves_open(void)
{
    const spz_statement firm = {SPZ_JUDGED, SPZ_FIRM, 0.34, "violins opposed, cellos inside left", false};
    const spz_statement open = {SPZ_JUDGED, SPZ_OPEN, 0, "violins together, violas outside", false}, own = {SPZ_JUDGED, SPZ_FIRM, 0.2, "as in the old hall", false};
    const spz_statement nothing = {.outcome = SPZ_WITHOUT_STRINGS};
    CU_ASSERT_STRING_EQUAL(statement(SPZ_ENGLISH, firm), "Seat the violins opposed, cellos inside left: the evidence is firm (margin 0.34).");
    CU_ASSERT_STRING_EQUAL(statement(SPZ_GERMAN, firm), "Zu empfehlen ist „Violinen gegenüber, Violoncelli innen links“: Das Urteil ist sicher (Vorsprung 0,34).");
    CU_ASSERT_STRING_EQUAL(statement(SPZ_FRENCH, open), "La partition laisse la disposition ouverte (marge 0,00)\u00A0: «\u00A0violons côte à côte, altos à l'extérieur\u00A0» convient aussi bien qu'une autre.");
    CU_ASSERT_STRING_EQUAL(statement(SPZ_ENGLISH, own), "Seat them as 'as in the old hall': the evidence is firm (margin 0.20).");
    CU_ASSERT_STRING_EQUAL(statement(SPZ_GERMAN, nothing), "In dieser Partitur wurden keine Streichergruppen gefunden, über eine Aufstellung ist also nicht zu urteilen.");
}

static const char *turning(spz_language language, double factor)
{
    Buffer out;
    buffer_init(&out);
    say_turning(&out, language, (spz_turning){SPZ_TERM_ENSEMBLE, factor});
    return taken(&out);
}

static void what_would_turn_a_verdict_is_told_as_what_one_would_have_to_hold(void)
{
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 1.84), "turns only if you hold ensemble to be worth 1.8 times what is reckoned here");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 1.04), "turns only if you hold ensemble to be worth 1.04 times what is reckoned here");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 0.998), "turns at the slightest change, such as in the weight of ensemble");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 0.9), "turns if you hold ensemble to be worth a little less than is reckoned here");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 0.18), "turns only if you hold ensemble to be worth a sixth of what is reckoned here");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_ENGLISH, 0.1), "turns only if you hold ensemble to be worth a small part of what is reckoned here");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_GERMAN, 0.55), "kippt nur, wenn Ihnen „Zusammenspiel“ die Hälfte dessen wert ist, was hier gerechnet ist");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_FRENCH, 1.84), "ne basculerait que si, pour vous, «\u00A0jeu d'ensemble\u00A0» valait 1,8 fois ce qui est compté ici");
    CU_ASSERT_STRING_EQUAL(turning(SPZ_FRENCH, 0), "");
}

static const char *because(spz_language language, bool opposed, spz_term term)
{
    const spz_ranked ranked = {.opposed = opposed};
    Buffer out;
    buffer_init(&out);
    say_because(&out, language, NULL, &ranked, &term);
    return taken(&out);
}

static void a_term_tells_its_figures(void)
{
    const spz_term violins = {.kind = SPZ_TERM_VIOLINS, .evidence = 0.894, .degrees = 26.3, .widths = 2.71};
    const spz_term ensemble = {.kind = SPZ_TERM_ENSEMBLE, .sections = {SPZ_VA, SPZ_VC}, .delay = 0.0213, .strain = 0.58};
    const spz_term turned = {.kind = SPZ_TERM_TURNED, .evidence = 0.05, .openness = -0.8}, three = {.kind = SPZ_TERM_THREE, .evidence = 1};
    const spz_term nobody = {.kind = SPZ_TERM_OTHERS}, mean = {.kind = SPZ_TERM_ERA, .of_movements = true};
    CU_ASSERT_STRING_EQUAL(because(SPZ_ENGLISH, true, violins), "evidence 89 of 100, heard 26 degrees apart, 2.7 times what can be told apart");
    CU_ASSERT_STRING_EQUAL(because(SPZ_GERMAN, true, ensemble), "vor allem zwischen den Bratschen und den Violoncelli: 21 ms Schallweg, das 0,6-Fache des Zulässigen");
    CU_ASSERT_STRING_EQUAL(because(SPZ_FRENCH, true, ensemble), "surtout entre les altos et les violoncelles\u00A0: 21 ms d'écart, 0,6 fois ce qui est admis");
    CU_ASSERT_STRING_EQUAL(because(SPZ_ENGLISH, true, turned), "melody in the seconds in 5 of 100 bars, instruments away from the audience");
    CU_ASSERT_STRING_EQUAL(because(SPZ_ENGLISH, false, three), "evidence 100 of 100, three equal parts are shared out by desk");
    CU_ASSERT_STRING_EQUAL(because(SPZ_GERMAN, true, mean), "Mittel der Sätze");
    CU_ASSERT_STRING_EQUAL(because(SPZ_ENGLISH, true, nobody), "");
}

static const char *reason(spz_language language, const spz_verdict *verdict, const spz_reason *reason)
{
    Buffer out;
    buffer_init(&out);
    say_reason_and_place(&out, language, verdict, reason);
    return taken(&out);
}

static void a_reason_counts_its_passages_and_names_their_bars(void)
{
    evening_begin(&evening, 200);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 66, 71, 0.9);
    evening_passage(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, 102, 102, 0.6);
    evening_passage(&evening, SPZ_HOCKET, SPZ_VN1, SPZ_VN2, 70, 74, 0.8);
    spz_verdict *verdict = evening_judge(&evening, NULL, 0);
    const spz_reason *first = spz_verdict_reason(verdict, 0);
    CU_ASSERT_STRING_EQUAL(reason(SPZ_ENGLISH, verdict, first), "First and second violins answer each other: 2 exchanges, 1 hocket (2 striking, 1 clear); from the middle seats "
                                                                "they are heard 26 degrees apart, against 10 with 'violins together, cellos outside' (bars 66-74, 102)");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_GERMAN, verdict, first), "Erste und zweite Violinen antworten einander: 2 Dialoge, 1 Hoquetus (2 auffallend, 1 deutlich); von der Saalmitte aus "
                                                               "klingen sie 26 Grad auseinander, bei „Violinen nebeneinander, Violoncelli außen“ 10 (Takt 66-74, 102)");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_FRENCH, verdict, first), "Les premiers et les seconds violons se répondent\u00A0: 2 dialogues, 1 hoquet (2 frappants, 1 net)\u00A0; du milieu de la salle "
                                                               "on les entend à 26 degrés d'écart, contre 10 avec «\u00A0violons côte à côte, violoncelles à l'extérieur\u00A0» (mesures 66-74, 102)");
    spz_verdict_free(verdict);
    evening_end(&evening);
}

static void what_speaks_against_it_says_so(void)
{
    const spz_reason era = {.kind = SPZ_REASON_ERA, .points = -3, .year = 1950, .opposed = false}, house = {.kind = SPZ_REASON_HOUSE, .points = 3};
    const spz_bars bar = {11, 11, "12", "12"};
    const spz_reason melody = {.kind = SPZ_REASON_MELODY, .points = -1, .basis = {.bars = &bar, .bar_count = 1}};
    CU_ASSERT_STRING_EQUAL(reason(SPZ_ENGLISH, NULL, &era), "Against it: composed in 1950, when violins sat side by side as a rule; a year never proves a seating");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_GERMAN, NULL, &melody), "Dagegen: Die zweiten Violinen haben die Melodie, die sich hier weniger von den ersten abhebt (Takt 12)");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_FRENCH, NULL, &house), "La maison la préfère");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_ENGLISH, NULL, &melody), "Against it: the second violins have the melody, which is heard less apart from the firsts (bar 12)");
}

static const char *losses(spz_language language, const spz_loss *list, size_t count)
{
    Buffer out;
    buffer_init(&out);
    say_losses(&out, language, list, count);
    return taken(&out);
}

static void losses_are_told_by_kind_sections_and_bars(void)
{
    const spz_bars bars[] = {{65, 70, "66", "71"}, {101, 101, "102", "102"}, {11, 11, "", ""}};
    const spz_loss list[] = {{.kind = SPZ_EXCHANGE, .sides = {SPZ_VA, SPZ_VC}, .basis = {.bars = bars, .bar_count = 2}},
                             {.kind = SPZ_DIV3, .sides = {SPZ_VIOLINS, SPZ_NO_SECTION}, .basis = {.bars = bars + 2, .bar_count = 1}},
                             {.kind = SPZ_DIV3, .sides = {SPZ_VIOLINS, SPZ_NO_SECTION}, .throughout = true}};
    CU_ASSERT_STRING_EQUAL(losses(SPZ_ENGLISH, list, 3), "exchange Va/Vc 66-71, 102; violins in three (12. in the file); three violin parts throughout");
    CU_ASSERT_STRING_EQUAL(losses(SPZ_GERMAN, list, 1), "Dialog Va/Vc 66-71, 102");
    CU_ASSERT_STRING_EQUAL(losses(SPZ_FRENCH, list + 1, 2), "violons en trois (12e du fichier)\u00A0; trois parties de violons d'un bout à l'autre");
}

static void movements_of_a_work_that_share_a_title_are_told_apart(void)
{
    const char *const titles[] = {"Adagio", "Adagio", ""};
    spz_verdict *movements[3], *work = NULL;
    for (size_t i = 0; i < 3; i++) {
        evening_begin(&evening, 60);
        evening.movement.title = (char *)titles[i];
        evening_passages(&evening, SPZ_EXCHANGE, SPZ_VN1, SPZ_VN2, i ? 0 : 6, 0.9);
        movements[i] = evening_judge(&evening, NULL, 0);
        evening_end(&evening);
    }
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge_work((const spz_verdict *const *)movements, 3, NULL, NULL, &work), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(reason(SPZ_ENGLISH, work, spz_verdict_reason(work, 0)), "Adagio (score 1 of 3): by itself firm for violins opposed, cellos inside left; it loses nothing");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_GERMAN, work, spz_verdict_reason(work, 1)), "Adagio (Partitur 2 von 3): lässt es offen; er verliert nichts");
    CU_ASSERT_STRING_EQUAL(reason(SPZ_FRENCH, work, spz_verdict_reason(work, 2)), "3e mouvement\u00A0: pris seul, il ne tranche pas\u00A0; il ne perd rien");
    for (size_t i = 0; i < 3; i++)
        spz_verdict_free(movements[i]);
    spz_verdict_free(work);
}

typedef void Sayer(Buffer *out, spz_language language, const spz_plan *plan);

static const char *of_plan(Sayer *sayer, spz_language language, const spz_plan *plan)
{
    Buffer out;
    buffer_init(&out);
    sayer(&out, language, plan);
    return taken(&out);
}

static const char *of_pair(void (*sayer)(Buffer *, spz_language, const spz_plan *, const spz_section *), spz_language language, const spz_plan *plan,
                           spz_section a, spz_section b)
{
    const spz_section pair[2] = {a, b};
    Buffer out;
    buffer_init(&out);
    sayer(&out, language, plan, pair);
    return taken(&out);
}

static void a_stage_tells_its_size_players_and_distances(void)
{
    spz_plan *plan = NULL, *two = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(NULL, "violins opposed, cellos inside left", false, NULL, &plan), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan_double(NULL, "violins opposed, cellos inside left", false, NULL, &two), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(of_plan(say_stage_size, SPZ_ENGLISH, plan), "stage 18 m wide, 11 m deep for the strings, which take 12.4 m by 9.4 m");
    CU_ASSERT_STRING_EQUAL(of_plan(say_stage_players, SPZ_GERMAN, plan), "erste Violinen 14, zweite Violinen 12, Bratschen 10, Violoncelli 8, Kontrabässe 6");
    CU_ASSERT_STRING_EQUAL(of_pair(say_stage_distance, SPZ_FRENCH, plan, SPZ_VN1, SPZ_VC),
                           "des premiers violons aux violoncelles\u00A0: premiers pupitres 1,9\u00A0m (6\u00A0ms), centres 3,6\u00A0m (10\u00A0ms), derniers rangs 4,4\u00A0m (13\u00A0ms)");
    CU_ASSERT_STRING_EQUAL(of_pair(say_stage_hearing, SPZ_ENGLISH, plan, SPZ_VN1, SPZ_VC),
                           "degrees between them as heard in the hall: front 22, middle 10, back 5, left side 7, right side 10; under 11 they sound from one place");
    CU_ASSERT_STRING_EQUAL(of_pair(say_stage_distance, SPZ_ENGLISH, plan, SPZ_VN1, SPZ_WINDS), "");
    CU_ASSERT_PTR_NOT_NULL(strstr(of_pair(say_stage_distance, SPZ_GERMAN, two, SPZ_VN1, SPZ_VN1), "von den ersten Violinen des ersten zu den ersten Violinen des zweiten Orchesters: "));
    CU_ASSERT_PTR_NOT_NULL(strstr(of_plan(say_stage_players, SPZ_FRENCH, two), "deux orchestres, le premier côté jardin, en tout premiers violons 14"));
    spz_plan_free(plan);
    spz_plan_free(two);
}

/* Of two orchestras one section answers its like: which is which is said. */
static void a_section_that_faces_its_like_is_told_by_its_orchestra(void)
{
    static const struct { spz_language language; const char *told; } cases[] = {
        {SPZ_ENGLISH, "Vn I (orchestra 1)/Vn I (orchestra 2)"}, {SPZ_GERMAN, "I (Orchester 1)/Vl."}};
    spz_loss loss = {.kind = SPZ_EXCHANGE, .sides = {SPZ_VN1, SPZ_VN1}};
    for (size_t i = 0; i < COUNT(cases); i++) {
        Buffer out = {0};
        say_losses(&out, cases[i].language, &loss, 1);
        CU_ASSERT_PTR_NOT_NULL(strstr(out.text, cases[i].told));
        buffer_free(&out);
    }
}

static const struct Statement statements[] = {
    STATEMENT(a_section_that_faces_its_like_is_told_by_its_orchestra),
    STATEMENT(a_statement_recommends_leans_or_leaves_open),
    STATEMENT(what_would_turn_a_verdict_is_told_as_what_one_would_have_to_hold),
    STATEMENT(a_term_tells_its_figures),
    STATEMENT(a_reason_counts_its_passages_and_names_their_bars),
    STATEMENT(what_speaks_against_it_says_so),
    STATEMENT(losses_are_told_by_kind_sections_and_bars),
    STATEMENT(movements_of_a_work_that_share_a_title_are_told_apart),
    STATEMENT(a_stage_tells_its_size_players_and_distances),
};
void suite_seating_words(void) { suite_of("seating words", statements, COUNT(statements)); }
