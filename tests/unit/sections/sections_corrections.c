/* What the user's [sections] change. */
#include "settings/store.h"
#include "support/scores/parts.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static TestMovement room;

static const PartSketch parts[] = { { .name = "Flute" }, { .name = "Violins", .abbreviation = "Vlns", .staves = 2 }, { .name = "Violin" },
                                    { .name = "Viola", .voices = "12" }, { .name = "Violin" }, { .name = "Cello" }, { .name = "Low part" } };

typedef struct Said {
    char text[600];
    long line;
    int errors, notes, doubts;
} Said;

static void listen(void *context, const spz_message *message)
{
    Said *said = context;
    if (message->severity == SPZ_ERROR) {
        snprintf(said->text, sizeof said->text, "%s", message->text);
        said->line = message->line;
        said->errors++;
    }
    said->notes += message->severity == SPZ_NOTE;
    said->doubts += message->severity == SPZ_DOUBT && strstr(message->text, "passed over");
}

static spz_settings *with_entries(const char *const (*entries)[2], size_t count)
{
    spz_settings *settings;
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    for (size_t i = 0; i < count; i++) {
        SettingEntry entry = { "sections", entries[i][0], entries[i][1], "house.ini", (long)i + 10 };
        CU_ASSERT_EQUAL_FATAL(settings_add_entry(settings, &entry), SPZ_OK);
    }
    return settings;
}

#define ENTRIES(...) (const char *const[][2]){ __VA_ARGS__ }, sizeof((const char *const[][2]){ __VA_ARGS__ }) / sizeof(const char *const[2])

static void expect(const char *means, const char *const (*entries)[2], size_t count)
{
    spz_settings *settings = with_entries(entries, count);
    const char *got = lines_in_words(test_movement(&room, parts, COUNT(parts)), settings);
    if (strcmp(got, means) != 0)
        printf("\n    %s = %s gives\n      %s\n    not\n      %s", entries[0][0], entries[0][1], got, means);
    CU_ASSERT_STRING_EQUAL(got, means);
    spz_settings_free(settings);
}

static void a_part_becomes_what_the_user_says(void)
{
    expect("woodwind; Vn I staff 1 line 1; Vn I staff 2 line 2; Vn II line 1; Va; Vn II line 2; Vc; Db",
           ENTRIES({ "Low part", "Db" }, { "violins", "Vn I" }, { "Violin", "second violins" }));
    expect("woodwind; not known; Vn I; Va; Vn II; Vc; Db solo", ENTRIES({ "LOW  PART", "Db solo" }, { "Vlns", "not strings" }));
    expect("brass; strings left out; Vn I; Va; Vn II; Vc; keyboard continuo",
           ENTRIES({ "Flute", "brass" }, { "Violins", "not played" }, { "Low part", "continuo" }));
}

static void staves_and_voices_can_be_named_one_by_one(void)
{
    expect("woodwind; Vn III staff 1; Vn II staff 2 line 1; Vn I; Va; Vn II line 2; Vc; not known",
           ENTRIES({ "Violins", "Vn III staff 1" }, { "Violins", "Vn II staff 2" }, { "part 3", "Vn I" }, { "part 5", "Vn II" }));
    expect("woodwind; Vn III staff 1; Vn II staff 2 line 1; Vn I; Va; Vn II line 2; Vc; not known",
           ENTRIES({ "Violins", "Vn III staff 1, Vn II staff 2" }, { "part 3", "Vn I" }, { "part 5", "Vn II" }));
    expect("woodwind; strings left out; Vn I; Va voice 1 number 1; Vc voice 2; Vn II; Vc; not known",
           ENTRIES({ "Viola", "Va voice 1 number 1, Vc voice 2" }, { "Violins", "not played" }));
}

static void orchestras_numbers_and_desks_can_be_given(void)
{
    expect("woodwind; not known; Vn I orchestra 1; Va number 2; Vn I orchestra 2; Vc; Vn I desk",
           ENTRIES({ "Violins", "not strings" }, { "part 3", "Vn I orchestra 1" }, { "part 5", "Vn I orchestra 2" }, { "Viola", "Va number 2" },
                   { "Low part", "Vn I desk 1" }));
    expect("woodwind; not known; Vn I; Va; Vn II; Vc+Db; not known", ENTRIES({ "Violins", "not strings" }, { "Cello", "Vc and Db" }));
}

static Said complaint(const char *key, const char *value)
{
    Said said = { "", 0, 0, 0, 0 };
    spz_sink sink = { listen, &said };
    spz_sections *map = NULL;
    spz_settings *settings = with_entries((const char *const[][2]){ { key, value } }, 1);
    spz_status status = spz_sections_find(test_movement(&room, parts, COUNT(parts)), settings, &sink, &map);
    CU_ASSERT_EQUAL(status, said.errors ? SPZ_BAD_SETTINGS : SPZ_OK);
    CU_ASSERT_EQUAL(map == NULL, said.errors > 0);
    spz_sections_free(map);
    spz_settings_free(settings);
    return said;
}

static void an_entry_that_names_no_section_is_reported_with_its_line(void)
{
    Said said = complaint("Viola", "Vb");
    CU_ASSERT_EQUAL(said.errors, 1);
    CU_ASSERT_EQUAL(said.line, 10);
    CU_ASSERT_PTR_NOT_NULL(strstr(said.text, "Viola = Vb"));
    CU_ASSERT_EQUAL(complaint("Viola", "Va staff x").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va,,").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va nonsense").errors, 1);
    CU_ASSERT_EQUAL(complaint("No such part", "Vb").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Vn 9").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Vc and").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va orchestra 7").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va orchestra 2").errors, 0);
}

static void an_entry_that_says_two_things_of_the_same_notes_is_refused(void)
{
    Said said = complaint("Viola", "Va, Vc");
    CU_ASSERT_EQUAL(said.errors, 1);
    CU_ASSERT_PTR_NOT_NULL(strstr(said.text, "the same notes"));
    CU_ASSERT_EQUAL(complaint("Viola", "Va voice 1, Vc voice 1").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va voice 1, Vc voice 2").errors, 0);
    CU_ASSERT_EQUAL(complaint("Viola", "Va, Vc voice 2").errors, 0);
    CU_ASSERT_EQUAL(complaint("Violins", "Va staff 1, Vc staff 2").errors, 0);
}

static void a_desk_has_a_number_and_a_section(void)
{
    CU_ASSERT_EQUAL(complaint("Viola", "Vn I desk").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va desk").errors, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Vn I desk 1").errors, 0);
    CU_ASSERT_EQUAL(complaint("Viola", "Va 1. Pult").errors, 0);
}

static void an_entry_for_a_part_of_another_score_is_only_noted(void)
{
    Said said = complaint("Bass flute", "woodwind");
    CU_ASSERT_EQUAL(said.errors, 0);
    CU_ASSERT_EQUAL(said.notes, 1);
}

static void a_staff_that_the_part_does_not_have_is_passed_over_with_a_doubt(void)
{
    Said said = complaint("Viola", "Va staff 3");
    CU_ASSERT_EQUAL(said.errors, 0);
    CU_ASSERT_EQUAL(said.doubts, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va voice 7").doubts, 1);
    CU_ASSERT_EQUAL(complaint("Viola", "Va voice 2").doubts, 0);
}

/* What is advised for each line, written into the settings, changes nothing: it says what was understood. */
static void check_advice(const PartSketch *sketches, size_t count)
{
    spz_sections *map, *again;
    spz_settings *settings;
    const Movement *movement = test_movement(&room, sketches, count);
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(movement, NULL, NULL, &map), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    for (size_t i = 0; i < map->line_count; i++) {
        char advice[400];
        snprintf(advice, sizeof advice, "%s", spz_sections_advice(map, i));
        char *key = strchr(advice, '\n'), *value = key ? strstr(key, " = ") : NULL;
        CU_ASSERT_PTR_NOT_NULL_FATAL(value);
        *value = '\0';
        SettingEntry entry = { "sections", key + 1, value + 3, NULL, 0 };
        CU_ASSERT_EQUAL(settings_add_entry(settings, &entry), SPZ_OK);
    }
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(movement, settings, NULL, &again), SPZ_OK);
    char before[2000];
    snprintf(before, sizeof before, "%s", map_lines_in_words(map));
    const char *after = map_lines_in_words(again);
    if (strcmp(before, after) != 0)
        printf("\n    advice turns\n      %s\n    into\n      %s", before, after);
    CU_ASSERT_STRING_EQUAL(before, after);
    spz_sections_free(map);
    spz_sections_free(again);
    spz_settings_free(settings);
}

static void following_the_advice_for_every_line_changes_nothing(void)
{
    static const PartSketch usual[] = { { .name = "Oboe" }, { .name = "Violin I" }, { .name = "Violin II" }, { .name = "Viola" }, { .name = "Vc. e B." } };
    static const PartSketch three[] = { { .name = "Violin" }, { .name = "Violin" }, { .name = "Violin" }, { .name = "Viola 1" }, { .name = "Viola 2" }, { .name = "Viola 3" } };
    static const PartSketch choirs[] = { { .name = "Violin I" }, { .name = "Violin II" }, { .name = "Viola" }, { .name = "Cello" }, { .name = "Violin I" }, { .name = "Violin II" }, { .name = "Viola" }, { .name = "Cello" } };
    static const PartSketch lines[] = { { .name = "Violin solo" }, { .name = "Violin I.1" }, { .name = "Violin I.2" }, { .name = "Violin II", .staves = 2 }, { .name = "Viola 1. Pult" }, { .name = "Viola" }, { .name = "Piano reduction" } };
    check_advice(usual, COUNT(usual));
    check_advice(three, COUNT(three));
    check_advice(choirs, COUNT(choirs));
    check_advice(lines, COUNT(lines));
    static const PartSketch shared[] = { { .name = "Violini", .voices = "12" }, { .name = "Viola" }, { .name = "Vc. e B.", .voices = "12" } };
    check_advice(shared, COUNT(shared));
    check_advice(parts, COUNT(parts));
}

void suite_sections_corrections(void);
void suite_sections_corrections(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_part_becomes_what_the_user_says),
        STATEMENT(staves_and_voices_can_be_named_one_by_one),
        STATEMENT(orchestras_numbers_and_desks_can_be_given),
        STATEMENT(an_entry_that_names_no_section_is_reported_with_its_line),
        STATEMENT(an_entry_that_says_two_things_of_the_same_notes_is_refused),
        STATEMENT(a_desk_has_a_number_and_a_section),
        STATEMENT(an_entry_for_a_part_of_another_score_is_only_noted),
        STATEMENT(a_staff_that_the_part_does_not_have_is_passed_over_with_a_doubt),
        STATEMENT(following_the_advice_for_every_line_changes_nothing),
    };
    suite_of("corrections of sections", statements, COUNT(statements));
}
