/* Halls of a season: where their settings are found, and which seatings they hold. */
#include "season/results/halls.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

typedef struct House {
    spz_settings *settings;
    Halls halls;
} House;

static void open_house(House *house)
{
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&house->settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(halls_begin(&house->halls, "corpus/season.csv", house->settings), SPZ_OK);
}

static void close_house(House *house)
{
    halls_free(&house->halls);
    spz_settings_free(house->settings);
}

static const Hall *find(House *house, const char *name)
{
    const Hall *hall = NULL;
    CU_ASSERT_EQUAL_FATAL(halls_find(&house->halls, name, NULL, &hall), SPZ_OK);
    return hall;
}

static int bits(uint32_t meant)
{
    int count = 0;
    for (; meant; meant >>= 1)
        count += (int)(meant & 1u);
    return count;
}

static void a_hall_is_found_by_the_name_in_the_table(void)
{
    House house;
    open_house(&house);
    const Hall *barn = find(&house, "Tithe Barn, Vellgate");
    CU_ASSERT_STRING_EQUAL(barn->file, "corpus/halls/tithe-barn-vellgate.ini");
    CU_ASSERT_STRING_EQUAL(spz_settings_text(barn->settings, "hall.sound"), "blurred");
    CU_ASSERT_EQUAL(barn->problem, SPZ_CONCERT_PLANNED);
    CU_ASSERT_TRUE(barn->seatings >= 2);
    CU_ASSERT_TRUE(barn->usual >= 0);
    CU_ASSERT_PTR_EQUAL(find(&house, "Tithe Barn, Vellgate"), barn); /* read once */
    CU_ASSERT_STRING_EQUAL(spz_settings_text(house.settings, "hall.sound"), "clear"); /* the house's own are as they were */
    close_house(&house);
}

static void a_hall_without_settings_has_those_of_the_house(void)
{
    House house;
    open_house(&house);
    const Hall *unknown = find(&house, "Nowhere in particular");
    CU_ASSERT_STRING_EQUAL(unknown->file, "");
    CU_ASSERT_STRING_EQUAL(spz_settings_text(unknown->settings, "hall.name"), "Nowhere in particular");
    CU_ASSERT_EQUAL(unknown->seatings, 4);
    close_house(&house);
}

static void the_name_of_a_hall_never_leads_out_of_its_folder(void)
{
    static const char *const names[] = {"../season", "../../corpus/halls/tithe-barn-vellgate", "/etc/passwd", "..", ".", "/", "\\..\\x"};
    House house;
    open_house(&house);
    for (size_t i = 0; i < COUNT(names); i++)
        CU_ASSERT_STRING_EQUAL(find(&house, names[i])->file, "");
    close_house(&house);
}

static void a_fixed_seating_may_be_named_in_full_or_by_words_of_it(void)
{
    House house;
    open_house(&house);
    const Hall *hall = find(&house, "");
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins opposed")), 2);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins together")), 2);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "Violins  Together,\tCellos outside")), 1);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins togeth")), 2);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "togeth violas")), 0);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins together, violas outside")), 1);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins")), 0);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violins together, tubas outside")), 0);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "cellos outside")), 1);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "violons face à face, altos au centre à gauche")), 1);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "Violinen gegenüber")), 2);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, "opposed, cellos, violas")), 0);
    CU_ASSERT_EQUAL(bits(hall_meant(hall, " , ")), 0);
    close_house(&house);
}

static void what_the_house_forbids_or_the_stage_does_not_hold_is_left_out(void)
{
    House house;
    open_house(&house);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "house.forbidden", "violins together, violas outside | violins opposed, cellos inside left", NULL), SPZ_OK);
    const Hall *strict = find(&house, "strict");
    CU_ASSERT_EQUAL(strict->seatings, 2);
    CU_ASSERT_EQUAL(hall_meant(strict, "violins together, violas outside"), 0);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "stage.width", "6", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "stage.depth", "4", NULL), SPZ_OK);
    const Hall *tiny = find(&house, "tiny");
    CU_ASSERT_EQUAL(tiny->seatings, 0);
    CU_ASSERT_EQUAL(tiny->problem, SPZ_HALL_TOO_SMALL);
    close_house(&house);
}

static void a_house_that_forbids_every_seating_has_none(void)
{
    House house;
    open_house(&house);
    CU_ASSERT_EQUAL(spz_settings_set(house.settings, "house.forbidden", "violins together, violas outside | violins together, cellos outside | "
                                     "violins opposed, cellos inside left | violins opposed, violas inside left", NULL), SPZ_OK);
    CU_ASSERT_EQUAL(find(&house, "none")->problem, SPZ_HALL_FORBIDS_ALL);
    close_house(&house);
}

static void put(House *house, const char *name, const char *value)
{
    CU_ASSERT_EQUAL_FATAL(spz_settings_set(house->settings, name, value, NULL), SPZ_OK);
}

static void a_hall_without_the_usual_seating_says_why_and_what_would_let_it_in(void)
{
    House house;
    double width = 0, depth = 0;
    open_house(&house);
    CU_ASSERT_EQUAL(find(&house, "large")->usual_absence, SPZ_USUAL_THERE);
    put(&house, "house.usual", "violins opposed, cellos inside left");
    put(&house, "stage.width", "8.4");
    const Hall *narrow = find(&house, "narrow");
    CU_ASSERT(narrow->seatings > 0 && narrow->usual < 0);
    CU_ASSERT_EQUAL(narrow->usual_absence, SPZ_USUAL_TOO_LARGE);
    CU_ASSERT_EQUAL(spz_stage_least(narrow->settings, narrow->usual_name, &width, &depth), SPZ_OK);
    CU_ASSERT(width > 8.4 && depth > 11);
    CU_ASSERT_DOUBLE_EQUAL(narrow->usual_needs[0], width, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(narrow->usual_needs[1], depth, 1e-9);
    put(&house, "house.forbidden", "violins opposed, cellos inside left");
    CU_ASSERT_EQUAL(find(&house, "strict")->usual_absence, SPZ_USUAL_FORBIDDEN);
    put(&house, "house.usual", "in a ring");
    CU_ASSERT_EQUAL(find(&house, "odd")->usual_absence, SPZ_USUAL_UNKNOWN);
    close_house(&house);
}

static const struct Statement statements[] = {
    STATEMENT(a_hall_is_found_by_the_name_in_the_table),
    STATEMENT(a_hall_without_settings_has_those_of_the_house),
    STATEMENT(the_name_of_a_hall_never_leads_out_of_its_folder),
    STATEMENT(a_fixed_seating_may_be_named_in_full_or_by_words_of_it),
    STATEMENT(what_the_house_forbids_or_the_stage_does_not_hold_is_left_out),
    STATEMENT(a_house_that_forbids_every_seating_has_none),
    STATEMENT(a_hall_without_the_usual_seating_says_why_and_what_would_let_it_in),
};

void suite_season_halls(void)
{
    suite_of("halls of a season", statements, COUNT(statements));
}
