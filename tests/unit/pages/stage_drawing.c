/* The drawn plan: to scale, whole, and the same in letters. */
#include "pages/drawings/label_space.h"
#include "spezzato/report.h"
#include "support/memory.h"
#include "support/suite.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static spz_document *drawn_in(const spz_plan *plan, spz_format format, spz_language language)
{
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_report_stage(plan, NULL, 0, format, language, &document), SPZ_OK);
    return document;
}

static spz_document *drawn(const spz_plan *plan, spz_format format)
{
    return drawn_in(plan, format, SPZ_ENGLISH);
}

static spz_plan *plan_of(const char *name)
{
    spz_plan *plan = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_stage_plan(NULL, name, false, NULL, &plan), SPZ_OK);
    return plan;
}

/* The number of attribute `name` at or after `from`. */
static double number_after(const char *from, const char *name)
{
    char wanted[32];
    snprintf(wanted, sizeof wanted, " %s=\"", name);
    const char *found = strstr(from, wanted);
    CU_ASSERT_PTR_NOT_NULL_FATAL(found);
    return strtod(found + strlen(wanted), NULL);
}

/* Length of one metre: the scale bar's long line covers five. */
static double metre_of(const char *svg)
{
    double longest = 0;
    for (const char *bar = svg; (bar = strstr(bar, "<line class=\"bar\"")) != NULL; bar++)
        longest = fmax(longest, number_after(bar, "x2") - number_after(bar, "x1"));
    return longest / 5;
}

static void chairs_stand_where_the_plan_says_in_the_scale_of_the_bar(void)
{
    spz_plan *plan = plan_of("violins opposed, cellos inside left");
    spz_document *document = drawn(plan, SPZ_AS_SVG);
    const char *svg = spz_document_text(document, NULL), *podium = strstr(svg, "<rect class=\"podium\"");
    double metre = metre_of(svg);
    CU_ASSERT_FATAL(metre > 20 && podium != NULL);
    double x0 = number_after(podium, "x") + number_after(podium, "width") / 2,
           y0 = number_after(podium, "y") + number_after(podium, "height") / 2;
    const char *chair = svg;
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        double x = 0, y = 0;
        for (int player = 0; player < desk->players; player++) {
            chair = strstr(chair + 1, "<circle class=\"seat\"");
            CU_ASSERT_PTR_NOT_NULL_FATAL(chair);
            x += (number_after(chair, "cx") - x0) / metre / desk->players;
            y += (y0 - number_after(chair, "cy")) / metre / desk->players;
        }
        CU_ASSERT_DOUBLE_EQUAL(x, desk->x, 0.02);
        CU_ASSERT_DOUBLE_EQUAL(y, desk->y, 0.02);
    }
    CU_ASSERT_PTR_NULL(strstr(chair + 1, "<circle class=\"seat\""));
    spz_document_free(document);
    spz_plan_free(plan);
}

static void house_left_is_at_the_left_and_the_audience_below(void)
{
    spz_plan *plan = plan_of("violins opposed, cellos inside left");
    spz_document *document = drawn(plan, SPZ_AS_SVG);
    const char *svg = spz_document_text(document, NULL), *edge = strstr(svg, "<line class=\"edge\"");
    CU_ASSERT_PTR_NOT_NULL_FATAL(edge);
    for (const char *chair = svg; (chair = strstr(chair, "<circle class=\"seat\"")) != NULL; chair++)
        CU_ASSERT(number_after(chair, "cy") < number_after(edge, "y1"));
    double first = 0, second = 0;
    for (const char *name = svg; (name = strstr(name, "<text class=\"section\"")) != NULL; name++) {
        const char *word = strchr(name, '>') + 1;
        if (strncmp(word, "Vn I<", 5) == 0)
            first = number_after(name, "x");
        if (strncmp(word, "Vn II<", 6) == 0)
            second = number_after(name, "x");
    }
    CU_ASSERT(first > 0 && second > first);
    spz_document_free(document);
    spz_plan_free(plan);
}

enum { CHAIRS_MOST = 200, WORDS_MOST = 60 };

/* Boxes of the chairs, and of the words on the stage by their own estimate, in the order of the drawing. */
static size_t chairs_of(const char *svg, Box boxes[CHAIRS_MOST])
{
    size_t count = 0;
    for (const char *at = svg; (at = strstr(at, "<circle class=\"seat\"")) != NULL && count < CHAIRS_MOST; at++) {
        double r = number_after(at, "r") * 1.4142; /* the square within the circle: its corners are free */
        boxes[count++] = box_around(number_after(at, "cx"), number_after(at, "cy"), r, r);
    }
    return count;
}

static size_t words_of(const char *svg, const char *class, double size, Box *boxes, size_t count)
{
    char wanted[40], word[40];
    snprintf(wanted, sizeof wanted, "<text class=\"%s", class);
    for (const char *at = svg; (at = strstr(at, wanted)) != NULL && count < WORDS_MOST; at++) {
        CU_ASSERT_EQUAL_FATAL(sscanf(strchr(at, '>') + 1, "%39[^<]", word), 1);
        boxes[count++] = box_of_words(word, number_after(at, "x"), number_after(at, "y"), size, true);
    }
    return count;
}

static bool meet(Box a, Box b)
{
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

static void names_and_distances_cover_no_chair_and_not_each_other(void)
{
    static const char *const names[] = {"violins opposed, cellos inside left", "violins opposed, violas inside left",
                                        "violins together, cellos outside", "violins together, violas outside"};
    static const int players[][5] = {{14, 12, 10, 8, 6}, {6, 5, 3, 3, 1}, {18, 16, 14, 12, 9}, {10, 8, 6, 5, 3}};
    static const char *const keys[] = {"players.first violins", "players.second violins", "players.violas", "players.cellos",
                                       "players.basses"};
    for (size_t size = 0; size < COUNT(players); size++) {
        spz_settings *settings = NULL;
        CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
        CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.width", "22", NULL), SPZ_OK);
        CU_ASSERT_EQUAL(spz_settings_set(settings, "stage.depth", "14", NULL), SPZ_OK);
        for (size_t i = 0; i < 5; i++) {
            char value[8];
            snprintf(value, sizeof value, "%d", players[size][i]);
            CU_ASSERT_EQUAL(spz_settings_set(settings, keys[i], value, NULL), SPZ_OK);
        }
        for (size_t a = 0; a < COUNT(names); a++) {
            static const spz_section pairs[][2] = {{SPZ_VN1, SPZ_VN2}, {SPZ_VN1, SPZ_VC}};
            spz_plan *plan = NULL;
            spz_document *document = NULL;
            Box chairs[CHAIRS_MOST], names_there[WORDS_MOST];
            CU_ASSERT_EQUAL_FATAL(spz_stage_plan(settings, names[a], false, NULL, &plan), SPZ_OK);
            CU_ASSERT_EQUAL_FATAL(spz_report_stage(plan, pairs, 2, SPZ_AS_SVG, (spz_language)(a % SPZ_LANGUAGE_COUNT), &document), SPZ_OK);
            const char *svg = spz_document_text(document, NULL);
            size_t chair_count = chairs_of(svg, chairs), count = words_of(svg, "section", 14, names_there, 0);
            CU_ASSERT_EQUAL(count, 5);
            count = words_of(svg, "told", 12, names_there, count);
            CU_ASSERT_EQUAL(count, 7);
            for (size_t i = 0; i < count; i++) {
                for (size_t c = 0; c < chair_count; c++)
                    CU_ASSERT(!meet(names_there[i], chairs[c]));
                for (size_t j = 0; j < i; j++)
                    CU_ASSERT(!meet(names_there[i], names_there[j]));
            }
            spz_document_free(document);
            spz_plan_free(plan);
        }
        spz_settings_free(settings);
    }
}

static void the_plan_in_letters_names_every_desk(void)
{
    static const struct {
        spz_section section;
        const char *name;
    } names[] = {{SPZ_VN1, "I"}, {SPZ_VN2, "II"}, {SPZ_VA, "Va"}, {SPZ_VC, "Vc"}, {SPZ_DB, "Db"}};
    spz_plan *plan = plan_of("violins together, violas outside");
    spz_document *document = drawn(plan, SPZ_AS_TEXT);
    const char *text = spz_document_text(document, NULL);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        char wanted[32];
        for (size_t n = 0; n < COUNT(names); n++)
            if (names[n].section == spz_plan_desk(plan, i)->section)
                snprintf(wanted, sizeof wanted, " %s.%d", names[n].name, spz_plan_desk(plan, i)->number);
        CU_ASSERT_PTR_NOT_NULL(strstr(text, wanted));
    }
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "podium"));
    for (const char *line = text; *line; line += strcspn(line, "\n") + 1)
        CU_ASSERT(strcspn(line, "\n") <= 92);
    spz_document_free(document);
    spz_plan_free(plan);
}

static void both_carry_the_cautions_in_every_language(void)
{
    static const char *const begins[SPZ_LANGUAGE_COUNT] = {"A seating is a musical proposal", "Eine Aufstellung ist ein musikalischer Vorschlag",
                                                           "Une disposition est une proposition musicale"};
    spz_plan *plan = plan_of("");
    for (int language = 0; language < SPZ_LANGUAGE_COUNT; language++) {
        spz_document *text = drawn_in(plan, SPZ_AS_TEXT, (spz_language)language), *svg = drawn_in(plan, SPZ_AS_SVG, (spz_language)language);
        CU_ASSERT_PTR_NOT_NULL(strstr(spz_document_text(text, NULL), begins[language]));
        CU_ASSERT_PTR_NOT_NULL(strstr(spz_document_text(svg, NULL), begins[language]));
        spz_document_free(text);
        spz_document_free(svg);
    }
    spz_plan_free(plan);
}

static void other_forms_are_refused(void)
{
    spz_plan *plan = plan_of(NULL);
    spz_document *document = NULL;
    CU_ASSERT_EQUAL(spz_report_stage(plan, NULL, 0, SPZ_AS_CSV, SPZ_ENGLISH, &document), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(document);
    spz_plan_free(plan);
}

static void a_drawing_without_memory_says_so(void)
{
    static const spz_format forms[] = {SPZ_AS_TEXT, SPZ_AS_SVG};
    spz_plan *plan = plan_of("");
    for (size_t f = 0; f < COUNT(forms); f++) {
        spz_document *document = NULL;
        spz_status status = SPZ_NO_MEMORY;
        long requests = 0;
        while (status == SPZ_NO_MEMORY && requests < 2000) {
            memory_starve_after(++requests);
            status = spz_report_stage(plan, NULL, 0, forms[f], SPZ_GERMAN, &document);
            memory_starve_after(0);
            CU_ASSERT_FATAL((status == SPZ_OK) == (document != NULL));
        }
        CU_ASSERT_EQUAL(status, SPZ_OK);
        CU_ASSERT(requests > 2);
        spz_document_free(document);
    }
    spz_plan_free(plan);
}

static const struct Statement statements[] = {
    STATEMENT(chairs_stand_where_the_plan_says_in_the_scale_of_the_bar),
    STATEMENT(house_left_is_at_the_left_and_the_audience_below),
    STATEMENT(names_and_distances_cover_no_chair_and_not_each_other),
    STATEMENT(the_plan_in_letters_names_every_desk),
    STATEMENT(both_carry_the_cautions_in_every_language),
    STATEMENT(other_forms_are_refused),
    STATEMENT(a_drawing_without_memory_says_so),
};

void suite_stage_drawing(void)
{
    suite_of("stage: drawing", statements, COUNT(statements));
}
