/* What the stage crew lays out: who is asked for, where everything stands, and the sums. */
#include "spezzato/laying.h"
#include "support/scores/evening.h"
#include "support/memory.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The forces of a score with these parts before the strings, each with one bar of music. */
static spz_forces forces_of(const char *parts)
{
    spz_forces forces = {{0}, {0}};
    char music[2000] = "time: 2/4\n", error[300] = "";
    size_t length = 0;
    spz_score *score = NULL;
    spz_sections *map = NULL;
    strcat(music, parts);
    strcat(music, "Violin I: c5 d5\nViolin II: e5 b4\nViola: a4 a4\nVioloncello: c3 c3\n");
    char *xml = notation_to_musicxml(music, &length, error, sizeof error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(xml, length, "test.xml", NULL, &score), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(spz_score_movement(score, 0), NULL, NULL, &map), SPZ_OK);
    spz_forces_add(&forces, map);
    spz_sections_free(map);
    spz_score_free(score);
    free(xml);
    return forces;
}

static void players_are_counted_from_names_in_every_language(void)
{
    static const struct {
        const char *parts;
        spz_instrument instrument;
        int players;
    } cases[] = {
        {"2 Oboes: c5 d5\n", SPZ_OBOES, 2},          {"Oboe I: c5 d5\nOboe II: c5 d5\n", SPZ_OBOES, 2},
        {"Corni I, II in D: c4 d4\n", SPZ_HORNS, 2}, {"Horns 1-4 in F: c4 d4\n", SPZ_HORNS, 4},
        {"Cors en Fa: c4 d4\n", SPZ_HORNS, 2},       {"3. Horn in F: c4 d4\n", SPZ_HORNS, 1},
        {"Flauti: c5 d5\n", SPZ_FLUTES, 2},          {"1. Flöte: c5 d5\nPiccolo: c6 d6\n", SPZ_FLUTES, 2},
        {"English Horn: c4 d4\n", SPZ_OBOES, 1},     {"Klarinetten in B: c5 d5\n", SPZ_CLARINETS, 2},
        {"Fagotto: c3 d3\n", SPZ_BASSOONS, 1},       {"Contrabassoon: c2 d2\n", SPZ_BASSOONS, 1},
        {"Trombe in C: c5 d5\n", SPZ_TRUMPETS, 2},   {"Posaunen: c3 d3\n", SPZ_TROMBONES, 2},
        {"Tuba: c2 d2\n", SPZ_LOW_BRASS, 1},         {"Pauken: c3 c3\n", SPZ_TIMPANI, 1},
        {"Triangle: c5 c5\n", SPZ_PERCUSSION, 1},    {"Harp: c4 d4\n", SPZ_PLUCKED, 1},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        spz_forces forces = forces_of(cases[i].parts);
        int all = 0;
        for (int k = 0; k < SPZ_INSTRUMENT_COUNT; k++)
            all += forces.players[k];
        if (forces.players[cases[i].instrument] != cases[i].players || all != cases[i].players)
            printf("\n    %s", cases[i].parts);
        CU_ASSERT_EQUAL(forces.players[cases[i].instrument], cases[i].players);
        CU_ASSERT_EQUAL(all, cases[i].players);
    }
}

static void players_are_counted_from_notes_that_begin_together(void)
{
    CU_ASSERT_EQUAL(forces_of("Oboe: c5+e5 d5\n").players[SPZ_OBOES], 2);
    CU_ASSERT_EQUAL(forces_of("Horn in F: c4+e4+g4 d4\n").players[SPZ_HORNS], 3);
    CU_ASSERT_EQUAL(forces_of("Flute: c5 d5 // a4 b4\n").players[SPZ_FLUTES], 2);
    CU_ASSERT_EQUAL(forces_of("Oboe: `c5 e5 d5\n").players[SPZ_OBOES], 1); /* a grace note is no second player */
    CU_ASSERT_EQUAL(forces_of("Oboe 1: c5+e5 d5\n").players[SPZ_OBOES], 1);
    CU_ASSERT_EQUAL(forces_of("Harp: c4+e4+g4 d4\n").players[SPZ_PLUCKED], 1);
}

static void of_several_movements_the_most_counts(void)
{
    spz_forces one = forces_of("Oboe I: c5 d5\nOboe II: c5 d5\n"), two = forces_of("");
    CU_ASSERT_EQUAL(two.players[SPZ_OBOES], 0);
    CU_ASSERT_EQUAL(one.players[SPZ_OBOES], 2);
    CU_ASSERT_EQUAL(forces_of("Solo Violin: c5 d5\n").soloists[SPZ_VN1], 1);
}

typedef struct Laid {
    spz_settings *settings;
    spz_plan *plan;
    spz_laying *laying;
} Laid;

static Laid lay(const char *settings, const spz_forces *forces)
{
    Laid laid = {evening_settings(settings), NULL, NULL};
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(laid.settings, "violins opposed, cellos inside left", false, NULL, &laid.plan), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_laying_make(laid.plan, forces, laid.settings, &laid.laying), SPZ_OK);
    return laid;
}

static void clear(Laid *laid)
{
    spz_laying_free(laid->laying);
    spz_plan_free(laid->plan);
    spz_settings_free(laid->settings);
}

static const spz_forces full = {{2, 2, 2, 2, 0, 4, 2, 3, 1, 1, 2, 1, 0}, {0}};

static void every_desk_has_its_chairs_its_stand_and_its_light(void)
{
    Laid laid = lay("", NULL);
    size_t desks = 0;
    for (size_t i = 0; i < spz_laying_count(laid.laying); i++) {
        const spz_laid *at = spz_laying_at(laid.laying, i);
        if (at->kind != SPZ_LAID_DESK)
            continue;
        const spz_stage_desk *desk = spz_plan_desk(laid.plan, desks++);
        CU_ASSERT(at->x == desk->x && at->y == desk->y && at->section == desk->section && at->number == desk->number);
        CU_ASSERT_EQUAL(at->chairs, desk->section == SPZ_DB ? 0 : desk->players);
        CU_ASSERT_EQUAL(at->stools, desk->section == SPZ_DB ? desk->players : 0);
        CU_ASSERT(at->stands == 1 && at->lights == 1);
        CU_ASSERT_DOUBLE_EQUAL(at->radius * sin(at->angle * 3.14159265358979 / 180), at->x, 1e-9);
        CU_ASSERT_DOUBLE_EQUAL(at->radius * cos(at->angle * 3.14159265358979 / 180), at->y, 1e-9);
        if (at->players == 2) {
            CU_ASSERT_DOUBLE_EQUAL((at->seats[0].x + at->seats[1].x) / 2, at->x, 1e-9);
            CU_ASSERT_DOUBLE_EQUAL(hypot(at->seats[0].x - at->seats[1].x, at->seats[0].y - at->seats[1].y),
                                   spz_plan_desk_width(laid.plan, at->section) / 2, 1e-9);
            CU_ASSERT(at->seats[0].y <= at->seats[1].y + 1e-9); /* outside: nearer the audience */
        }
        CU_ASSERT(hypot(at->stand.x, at->stand.y) < at->radius);
    }
    CU_ASSERT_EQUAL(desks, spz_plan_desks(laid.plan));
    clear(&laid);
}

static void four_players_sit_without_a_podium(void)
{
    Laid laid = {NULL, NULL, NULL};
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan_single(NULL, "violins opposed, cellos inside left", NULL, &laid.plan), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&laid.settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_laying_make(laid.plan, NULL, laid.settings, &laid.laying), SPZ_OK);
    CU_ASSERT(spz_plan_is_single(laid.plan));
    CU_ASSERT_EQUAL(spz_laying_count(laid.laying), 4);
    for (size_t i = 0; i < spz_laying_count(laid.laying); i++)
        CU_ASSERT(spz_laying_at(laid.laying, i)->kind == SPZ_LAID_DESK && spz_laying_at(laid.laying, i)->players == 1);
    clear(&laid);
    laid = lay("", NULL);
    CU_ASSERT(!spz_plan_is_single(laid.plan) && spz_laying_at(laid.laying, 0)->kind == SPZ_LAID_PODIUM);
    clear(&laid);
}

/* 14-12-10-8-6 strings: 44 on chairs, 6 on stools, 25 desks, and the conductor's stand. */
static void sums_are_those_of_the_places(void)
{
    Laid strings = lay("", NULL), all = lay("", &full);
    spz_laid_sums a = spz_laying_sums(strings.laying), b = spz_laying_sums(all.laying);
    CU_ASSERT(a.players == 50 && a.chairs == 44 && a.stools == 6 && a.stands == 26 && a.lights == 26);
    CU_ASSERT(b.players == 50 + 22 && b.chairs == 44 + 21 && b.stools == 7 && b.stands == 26 + 22 && b.lights == b.stands);
    clear(&strings);
    clear(&all);
}

static void winds_sit_behind_the_strings_in_rows_and_nobody_on_another(void)
{
    Laid laid = lay("[stage]\nriser = 0.2\n", &full);
    double behind = spz_plan_used_depth(laid.plan) - spz_plan_front(laid.plan), half = spz_plan_stage_width(laid.plan) / 2, timpani = 0, flutes = 0;
    for (size_t i = 0; i < spz_laying_count(laid.laying); i++) {
        const spz_laid *at = spz_laying_at(laid.laying, i);
        if (at->kind != SPZ_LAID_PLAYER)
            continue;
        CU_ASSERT(at->y > behind && fabs(at->x) < half && at->z > 0);
        timpani = at->instrument == SPZ_TIMPANI ? at->y : timpani;
        flutes = at->instrument == SPZ_FLUTES ? at->y : flutes;
        for (size_t j = 0; j < i; j++) {
            const spz_laid *other = spz_laying_at(laid.laying, j);
            CU_ASSERT(other->kind == SPZ_LAID_PODIUM || hypot(at->x - other->x, at->y - other->y) > 0.85);
        }
    }
    CU_ASSERT(timpani > flutes && flutes > 0);
    CU_ASSERT(spz_laying_depth(laid.laying) > timpani + spz_plan_front(laid.plan));
    clear(&laid);
}

static void risers_lie_under_the_rows_that_they_lift(void)
{
    Laid flat = lay("", &full), raised = lay("[stage]\nriser = 0.2\n", &full);
    CU_ASSERT_EQUAL(spz_laying_risers(flat.laying), 0);
    CU_ASSERT(spz_laying_risers(raised.laying) >= 4);
    for (size_t i = 0; i < spz_laying_count(raised.laying); i++) {
        const spz_laid *at = spz_laying_at(raised.laying, i);
        int under = 0;
        for (size_t r = 0; r < spz_laying_risers(raised.laying); r++) {
            const spz_riser *riser = spz_laying_riser(raised.laying, r);
            bool on = riser->straight ? at->kind == SPZ_LAID_PLAYER && at->y > riser->front && at->y < riser->back && at->x > riser->from && at->x < riser->to
                                      : at->kind == SPZ_LAID_DESK && at->radius > riser->front && at->radius < riser->back && at->angle > riser->from &&
                                            at->angle < riser->to;
            under += on;
            if (on)
                CU_ASSERT_DOUBLE_EQUAL(at->z, riser->height, 1e-9);
        }
        CU_ASSERT_EQUAL(under, at->z > 0);
    }
    clear(&flat);
    clear(&raised);
}

static void a_solo_piano_moves_the_podium_back_and_stands_before_it(void)
{
    Laid laid = lay("[stage]\npiano = solo\nsoloists = 1\ndepth = 13\n", NULL);
    bool piano = false, soloist = false;
    CU_ASSERT(spz_plan_front(laid.plan) >= 2.9);
    for (size_t i = 0; i < spz_laying_count(laid.laying); i++) {
        const spz_laid *at = spz_laying_at(laid.laying, i);
        if (at->kind == SPZ_LAID_PIANO) {
            piano = true;
            CU_ASSERT(at->y - 0.79 >= -spz_plan_front(laid.plan) && at->y + 0.79 <= -0.5 && at->stools == 1);
        }
        soloist = soloist || at->kind == SPZ_LAID_SOLOIST;
    }
    CU_ASSERT(piano && soloist);
    clear(&laid);
}

static void the_ways_between_sections_are_measured_between_chairs(void)
{
    Laid near = lay("[stage]\nspread = 1\n", NULL), wide = lay("[stage]\nspread = 1.5\nwidth = 30\ndepth = 20\n", NULL);
    spz_way narrow, clear_way;
    size_t ways = 0;
    for (; spz_laying_way(near.laying, ways, &narrow); ways++) {
        CU_ASSERT(spz_laying_way(wide.laying, ways, &clear_way));
        CU_ASSERT(clear_way.clear > narrow.clear && narrow.clear > -0.1);
    }
    CU_ASSERT_EQUAL(ways, 3);
    clear(&near);
    clear(&wide);
}

static size_t count_of(const char *text, const char *what)
{
    size_t count = 0;
    for (const char *at = text; (at = strstr(at, what)) != NULL; at++)
        count++;
    return count;
}

static void table_drawing_and_page_show_every_place(void)
{
    Laid laid = lay("[stage]\nriser = 0.2\n", &full);
    spz_document *csv = NULL, *svg = NULL, *html = NULL, *none = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_report_laying(laid.laying, NULL, 0, SPZ_AS_CSV, SPZ_GERMAN, &csv), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_report_laying(laid.laying, NULL, 0, SPZ_AS_SVG, SPZ_GERMAN, &svg), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_report_laying(laid.laying, NULL, 0, SPZ_AS_HTML, SPZ_GERMAN, &html), SPZ_OK);
    CU_ASSERT_EQUAL(spz_report_laying(laid.laying, NULL, 0, SPZ_AS_JSON, SPZ_GERMAN, &none), SPZ_BAD_ARGUMENT);
    CU_ASSERT_EQUAL(count_of(spz_document_text(csv, NULL), "\naisle,"), 3);
    CU_ASSERT_EQUAL(count_of(spz_document_text(csv, NULL), "\n") - 3, spz_laying_count(laid.laying) + 1);
    CU_ASSERT_EQUAL(count_of(spz_document_text(svg, NULL), "class=\"seat\""), 72);
    CU_ASSERT_EQUAL(count_of(spz_document_text(svg, NULL), "class=\"riser\""), spz_laying_risers(laid.laying));
    CU_ASSERT(count_of(spz_document_text(svg, NULL), "class=\"grid\"") > 20);
    CU_ASSERT_EQUAL(count_of(spz_document_text(html, NULL), "<tr"), spz_laying_count(laid.laying) + 1);
    CU_ASSERT_PTR_NOT_NULL(strstr(spz_document_text(html, NULL), "72 Spieler; zu stellen: 65 Stühle, 7 Hocker, 48 Pulte, 48 Lampen."));
    CU_ASSERT_PTR_NOT_NULL(strstr(spz_document_text(html, NULL), "Eine Aufstellung ist ein musikalischer Vorschlag"));
    spz_document_free(csv);
    spz_document_free(svg);
    spz_document_free(html);
    clear(&laid);
}

static void a_laying_without_memory_says_so(void)
{
    Laid laid = lay("", &full);
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && requests < 3000) {
        spz_laying *again = NULL;
        spz_document *page = NULL;
        memory_starve_after(++requests);
        status = spz_laying_make(laid.plan, &full, laid.settings, &again);
        if (status == SPZ_OK)
            status = spz_report_laying(again, NULL, 0, SPZ_AS_HTML, SPZ_ENGLISH, &page);
        memory_starve_after(0);
        CU_ASSERT_FATAL((status == SPZ_OK) == (page != NULL));
        spz_document_free(page);
        spz_laying_free(again);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT(requests > 5);
    clear(&laid);
}

static const struct Statement statements[] = {
    STATEMENT(players_are_counted_from_names_in_every_language),
    STATEMENT(players_are_counted_from_notes_that_begin_together),
    STATEMENT(of_several_movements_the_most_counts),
    STATEMENT(every_desk_has_its_chairs_its_stand_and_its_light),
    STATEMENT(four_players_sit_without_a_podium),
    STATEMENT(sums_are_those_of_the_places),
    STATEMENT(winds_sit_behind_the_strings_in_rows_and_nobody_on_another),
    STATEMENT(risers_lie_under_the_rows_that_they_lift),
    STATEMENT(a_solo_piano_moves_the_podium_back_and_stands_before_it),
    STATEMENT(the_ways_between_sections_are_measured_between_chairs),
    STATEMENT(table_drawing_and_page_show_every_place),
    STATEMENT(a_laying_without_memory_says_so),
};

void suite_laying(void)
{
    suite_of("stage: laying table", statements, COUNT(statements));
}
