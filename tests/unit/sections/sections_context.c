/* What parts are when seen beside each other. Practice of score order and of naming: common practice. */
#include "support/scores/parts.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static TestMovement room;

#define PARTS(...) (const PartSketch[]){ __VA_ARGS__ }, sizeof((const PartSketch[]){ __VA_ARGS__ }) / sizeof(PartSketch)
#define NAMED(text) { .name = text }

static void expect(const char *means, const PartSketch *parts, size_t count)
{
    const char *got = lines_in_words(test_movement(&room, parts, count), NULL);
    if (strcmp(got, means) != 0)
        printf("\n    '%s' ... is understood as\n      %s\n    not\n      %s", parts[0].name ? parts[0].name : "", got, means);
    CU_ASSERT_STRING_EQUAL(got, means);
}

static void two_parts_called_violin_are_first_and_second(void)
{
    expect("Vn I; Vn II; Va; Vc", PARTS(NAMED("Violin"), NAMED("Violin"), NAMED("Viola"), NAMED("Cello")));
    expect("Vn I; Vn II; Vn III; Va", PARTS(NAMED("Violin"), NAMED("Violin"), NAMED("Violin"), NAMED("Viola")));
    expect("Vn I; Vn II; Va", PARTS(NAMED("Violin"), NAMED("Violin II"), NAMED("Viola")));
    expect("Vn I; Vn II; Va", PARTS(NAMED("Violino I"), NAMED("Violino"), NAMED("Viola")));
}

static void violins_on_two_staves_are_firsts_over_seconds(void)
{
    expect("Vn I staff 1; Vn II staff 2; Va", PARTS({ .name = "Violins", .staves = 2 }, NAMED("Viola")));
    expect("Vn I staff 1; Vn II staff 2; Va", PARTS({ .name = "Violini I e II", .staves = 2 }, NAMED("Viola")));
    expect("Vn I+Vn II; Va", PARTS(NAMED("Violini"), NAMED("Viola")));
    expect("Vn I; keyboard", PARTS(NAMED("Violin"), NAMED("Piano")));
    expect("Vn I staff 1 line 1; Vn I staff 2 line 2; Vn II", PARTS({ .name = "Violin I", .staves = 2 }, NAMED("Violin II")));
}

static void cellos_and_basses_may_share_a_part(void)
{
    expect("Vn I; Vn II; Va; Vc+Db", PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Violoncello e Basso")));
    expect("Vn I; Vn II; Va; Vc staff 1; Db staff 2",
           PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), { .name = "Vc. & Kb.", .staves = 2 }));
    expect("Vn I; Vn II; Va; Vc+Db", PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Bassi")));
    expect("Vn I; Vn II; Va; Vc; Db", PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Violoncello"), NAMED("Bassi")));
    expect("Vn I; Vn II; Va; Vc; Db", PARTS(NAMED("Violins I"), NAMED("Violins II"), NAMED("Violas"), NAMED("Cellos"), NAMED("Basses")));
}

static void a_continuo_carries_the_bass_line_where_nobody_else_does(void)
{
    expect("Vn I; Vn II; Va; Vc+Db continuo",
           PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Basso continuo")));
    expect("Vn I; Vn II; Va; Vc; keyboard continuo",
           PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Violoncello"), NAMED("Continuo")));
    expect("Vn I; Vn II; Va; Db; keyboard continuo",
           PARTS(NAMED("Violin 1"), NAMED("Violin 2"), NAMED("Viola"), NAMED("Violone"), NAMED("Cembalo")));
}

static void alto_and_bass_follow_their_neighbours(void)
{
    expect("Vn I; Vn II; Va; Vc; Db",
           PARTS(NAMED("Violons I"), NAMED("Violons II"), NAMED("Alto"), NAMED("Violoncelles"), NAMED("Contrebasses")));
    expect("voices; voices; voices; voices; Vn I; Vn II; Va; Vc; Db",
           PARTS(NAMED("Soprano"), NAMED("Alto"), NAMED("Tenor"), NAMED("Bass"), NAMED("Violin I"), NAMED("Violin II"), NAMED("Viola"),
                 NAMED("Violoncello"), NAMED("Bass")));
    expect("Vn I; Vn II; Va; voices; voices; voices; voices; Vc+Db continuo",
           PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"), NAMED("Canto"), NAMED("Alto"), NAMED("Tenore"), NAMED("Basso"),
                 NAMED("Basso continuo"))); /* the older order: voices above the bass */
    expect("voices; voices; voices; voices", PARTS(NAMED("Soprano"), NAMED("Alto"), NAMED("Tenor"), NAMED("Bass")));
    expect("Vn I; Vn II; Va; Vc+Db", PARTS(NAMED("Violino 1"), NAMED("Violino 2"), NAMED("Alto Viola"), NAMED("Basso")));
}

static void three_violins_are_three_sections_and_three_violas_stand_equal(void)
{
    expect("Vn I; Vn II; Vn III; Va number 1; Va number 2; Va number 3; Vc number 1; Vc number 2; Vc number 3; Db; keyboard continuo",
           PARTS(NAMED("Violin 1"), NAMED("Violin 2"), NAMED("Violin 3"), NAMED("Viola 1"), NAMED("Viola 2"), NAMED("Viola 3"),
                 NAMED("Violoncello 1"), NAMED("Violoncello 2"), NAMED("Violoncello 3"), NAMED("Violone"), NAMED("Harpsichord")));
    expect("Vn I; Vn II; Va; Vc line 1; Vc line 2; Db",
           PARTS(NAMED("Violin 1"), NAMED("Violin 2"), NAMED("Viola"), NAMED("Violoncello 1"), NAMED("Violoncello 2"), NAMED("Contrabass")));
    expect("Vn I; Vn II; Va number 1; Va number 2; Vc number 1; Vc number 2",
           PARTS(NAMED("Violin I"), NAMED("Violin II"), NAMED("Viola I"), NAMED("Viola II"), NAMED("Cello I"), NAMED("Cello II")));
}

static void numbered_parts_that_mostly_rest_are_lines_of_a_divided_section(void)
{
    Note notes[40];
    for (int i = 0; i < 40; i++)
        notes[i] = (Note){ .onset = i, .duration = 1, .midi = 55, .bar = i / 4, .staff = 1 };
    PartSketch parts[] = { NAMED("Violin 1"), NAMED("Violin 2"), { .name = "Viola 1", .notes = notes, .note_count = 40 },
                           { .name = "Viola 2", .notes = notes, .note_count = 40 }, { .name = "Cello 1", .notes = notes, .note_count = 40 },
                           { .name = "Cello 2", .notes = notes, .note_count = 12 } };
    expect("Vn I; Vn II; Va number 1; Va number 2; Vc line 1; Vc line 2", parts, COUNT(parts));
}

static void several_parts_of_one_section_are_its_lines(void)
{
    expect("Vn I line 1; Vn I line 2; Vn II; Va", PARTS(NAMED("Violin I.1"), NAMED("Violin I.2"), NAMED("Violin II"), NAMED("Viola")));
    expect("Vn I line 1; Vn I line 2; Vn I line 3; Vn II; Va",
           PARTS(NAMED("Violin 1"), NAMED("Violin 1 div(2) "), NAMED("Violin 1 div(3)"), NAMED("Violin 2"), NAMED("Viola")));
    expect("Vn I line 1; Vn I line 2; Vn II line 1; Vn II line 2",
           PARTS(NAMED("Violin I"), NAMED("Violin I"), NAMED("Violin II"), NAMED("Violin II")));
    expect("Vn I desk; Vn I; Vn II", PARTS(NAMED("Violine I (1. Pult)"), NAMED("Violine I"), NAMED("Violine II")));
    expect("Vn I; Vn II; Va line 1; Va line 2", PARTS(NAMED("Vn I"), NAMED("Vn II"), NAMED("Va"), NAMED("Va")));
    expect("Vn I; Vn II; Va line 1; Va staff 1 line 2; Va staff 2 line 3",
           PARTS(NAMED("Vn I"), NAMED("Vn II"), NAMED("Va"), { .name = "Va", .staves = 2 }));
}

static void soloists_stand_before_the_section(void)
{
    expect("Vn I solo; woodwind; woodwind; Vn I; Vn II; Va; Vc; Db; keyboard continuo",
           PARTS(NAMED("Principal Violin"), NAMED("Flute 1"), NAMED("Flute 2"), NAMED("Violin 1"), NAMED("Violin 2"), NAMED("Viola"),
                 NAMED("Violoncello"), NAMED("Violone"), NAMED("Continuo")));
    expect("Vn I solo; Vn I; Vn II", PARTS(NAMED("Violin"), NAMED("Violin I"), NAMED("Violin II")));
    expect("Vn I solo; Vn I; Vn II", PARTS(NAMED("Violin 1 solo"), NAMED("Violin 1 tutti"), NAMED("Violin 2")));
    expect("Vn I solo; Vn I; Vn II solo; Vn II",
           PARTS({ .name = "Violin", .abbreviation = "Vln Solo." }, NAMED("Violin 1"), { .name = "Violin", .abbreviation = "Vln. 2 Solo" },
                 NAMED("Violin 2")));
    expect("Vn I solo; Vn I; Vn II", PARTS(NAMED("Violino piccolo"), NAMED("Violino I"), NAMED("Violino II")));
    expect("Vn I; Vn II; Va; Vc solo; Vc", PARTS(NAMED("Violin I"), NAMED("Violin II"), NAMED("Viola"), NAMED("Violoncello solo"), NAMED("Violoncello")));
    expect("percussion; Vc solo; Vn I; Vn II; Va; Vc; Db",
           PARTS(NAMED("Timpani"), NAMED("Violoncello"), NAMED("Violin I"), NAMED("Violin II"), NAMED("Viola"), NAMED("Violoncello"), NAMED("Contrabass")));
}

static void orchestras_are_told_by_name_by_group_and_by_starting_over(void)
{
    expect("Vn I orchestra 1; Vn II orchestra 1; Va orchestra 1; Vn I orchestra 2; Vn II orchestra 2; Va orchestra 2",
           PARTS(NAMED("Violin I (Orchestra 1)"), NAMED("Violin II (Orchestra 1)"), NAMED("Viola (Orchestra 1)"), NAMED("Violin I (Orchestra 2)"),
                 NAMED("Violin II (Orchestra 2)"), NAMED("Viola (Orchestra 2)")));
    expect("Vn I orchestra 1; Vn II orchestra 1; Vc+Db orchestra 1; Vn I orchestra 2; Vn II orchestra 2; Vc+Db orchestra 2",
           PARTS({ .name = "Violino", .groups = "Coro I" }, { .name = "Violino", .groups = "Coro I" }, { .name = "Basso", .groups = "Coro I" },
                 { .name = "Violino", .groups = "Coro II" }, { .name = "Violino", .groups = "Coro II" }, { .name = "Basso", .groups = "Coro II" }));
    expect("Vn I orchestra 1; Vn II orchestra 1; Va orchestra 1; Vc orchestra 1; Db orchestra 1; Vn I orchestra 2; Vn II orchestra 2; Va orchestra 2; "
           "Vc orchestra 2; Db orchestra 2",
           PARTS(NAMED("Violin I"), NAMED("Violin II"), NAMED("Viola"), NAMED("Cello"), NAMED("Bass"), NAMED("Violin I"), NAMED("Violin II"),
                 NAMED("Viola"), NAMED("Cello"), NAMED("Bass")));
}

static void a_number_of_the_orchestra_in_the_abbreviation_is_no_line(void)
{
    expect("Vn I orchestra 1; Va orchestra 1; Vn I orchestra 2; Va orchestra 2",
           PARTS({ .name = "Violin I, first orchestra", .abbreviation = "Vn. I 1" }, { .name = "Viola, first orchestra", .abbreviation = "Va. 1" },
                 { .name = "Violin I, second orchestra", .abbreviation = "Vn. I 2" }, { .name = "Viola, second orchestra", .abbreviation = "Va. 2" }));
}

static void a_concertino_stands_before_its_ripieno(void)
{
    expect("Vn I solo; Vn II solo; Vc solo; Vn I; Vn II; Va; Vc; Db",
           PARTS(NAMED("Violino I"), NAMED("Violino II"), NAMED("Violoncello"), NAMED("Violino I"), NAMED("Violino II"), NAMED("Viola"),
                 NAMED("Violoncello"), NAMED("Contrabbasso")));
    expect("Vn I solo; Vn II solo; Vc solo; Vn I; Vn II; Va; Vc+Db",
           PARTS(NAMED("Violino I concertino"), NAMED("Violino II concertino"), NAMED("Violoncello concertino"), NAMED("Violino I ripieno"),
                 NAMED("Violino II ripieno"), NAMED("Viola"), NAMED("Basso")));
    expect("Vn I solo; Vn II solo; Vc solo; Vn I; Vn II; Va; Vc",
           PARTS({ .name = "Violin I", .groups = "Concertino" }, { .name = "Violin II", .groups = "Concertino" },
                 { .name = "Cello", .groups = "Concertino" }, { .name = "Violin I", .groups = "Ripieno" },
                 { .name = "Violin II", .groups = "Ripieno" }, { .name = "Viola", .groups = "Ripieno" }, { .name = "Cello", .groups = "Ripieno" }));
}

static void nameless_parts_are_told_by_group_sound_or_program(void)
{
    expect("Vn I; Vn II; Va", PARTS({ .name = "I", .groups = "Strings|Violins" }, { .name = "II", .groups = "Strings|Violins" }, NAMED("Viola")));
    expect("Vn I; Vn II; Va; Vc; Db; woodwind",
           PARTS({ .sound = "strings.violin" }, { .sound = "strings.violin" }, { .sound = "strings.viola" }, { .sound = "strings.cello" },
                 { .sound = "strings.contrabass" }, { .sound = "wind.reed.oboe" }));
    expect("Vn I; Vn II; Va; Vc; Db",
           PARTS({ .name = "Staff 1", .midi_program = 41 }, { .name = "Staff 2", .midi_program = 41 }, { .name = "Staff 3", .midi_program = 42 },
                 { .name = "Staff 4", .midi_program = 43 }, { .name = "Staff 5", .midi_program = 44 }));
    expect("voices; Va", PARTS({ .name = "Alto", .sound = "voice.alto" }, { .name = "Alto", .sound = "strings.viola" }));
    expect("Vn I staff 1; Vn II staff 2; Va staff 3; Vc+Db staff 4", PARTS({ .name = "Strings", .staves = 4 }));
    expect("not known; not known", PARTS(NAMED("Staff 1"), NAMED("Staff 2")));
}

static Note treble[] = {{ .duration = 4, .midi = 67, .staff = 1 }}, alto[] = {{ .duration = 4, .midi = 55, .staff = 1 }}, bass[] = {{ .duration = 4, .midi = 41, .staff = 1 }};
#define TREBLE(outer, inner) { .notes = treble, .note_count = 1, .clef = 'G', .clef_line = 2, .bracket = outer, .inner_bracket = inner }
#define ALTO(outer, inner) { .notes = alto, .note_count = 1, .clef = 'C', .clef_line = 3, .bracket = outer, .inner_bracket = inner }
#define BASS(outer, inner) { .notes = bass, .note_count = 1, .clef = 'F', .clef_line = 4, .bracket = outer, .inner_bracket = inner }

static void nameless_parts_in_the_order_of_strings_are_guessed(void)
{
    expect("Vn I; Vn II; Va; Vc; Db", PARTS(TREBLE(0, 0), TREBLE(0, 0), ALTO(0, 0), BASS(0, 0), BASS(0, 0)));
    expect("not known; Vn I; Vn II; Va; Vc", PARTS(TREBLE(0, 0), TREBLE(0, 0), TREBLE(0, 0), ALTO(0, 0), BASS(0, 0)));
    expect("not known; not known; not known; not known", PARTS(TREBLE(0, 0), ALTO(0, 0), ALTO(0, 0), BASS(0, 0)));
}

/* A bracket stands over a family; a brace or square within it over the parts of one instrument. */
static void the_brackets_tell_which_nameless_parts_belong_together(void)
{
    expect("Vn I line 1; Vn I line 2; Vn II line 1; Vn II line 2; Va line 1; Va line 2; Vc; Db",
           PARTS(TREBLE(1, 0), TREBLE(1, 0), TREBLE(1, 0), TREBLE(1, 0), ALTO(1, 0), ALTO(1, 0), BASS(1, 0), BASS(1, 0)));
    expect("Vn I line 1; Vn I line 2; Vn II; Va; Vc", PARTS(TREBLE(1, 2), TREBLE(1, 2), TREBLE(1, 0), ALTO(1, 0), BASS(1, 0)));
    expect("Vn I; Vn II line 1; Vn II line 2; Va; Vc line 1; Vc line 2; Db",
           PARTS(TREBLE(1, 0), TREBLE(1, 2), TREBLE(1, 2), ALTO(1, 0), BASS(1, 3), BASS(1, 3), BASS(1, 0)));
    expect("Vn I; Vn II; Va; Vc line 1; Vc line 2; Db", PARTS(TREBLE(1, 0), TREBLE(1, 0), ALTO(1, 0), BASS(1, 0), BASS(1, 0), BASS(1, 0)));
    expect("Vn I; Vn II; Va; Vc; voices", PARTS(TREBLE(1, 2), TREBLE(1, 2), ALTO(1, 0), BASS(1, 0), NAMED("Chor")));
}

static void no_guess_goes_over_from_one_bracket_into_another(void)
{
    expect("not known; not known; not known; not known", PARTS(TREBLE(1, 0), TREBLE(1, 0), ALTO(2, 0), BASS(2, 0)));
    expect("not known; not known; not known; Vn I; Vn II; Va; Vc",
           PARTS(TREBLE(1, 0), TREBLE(1, 0), BASS(1, 0), TREBLE(2, 0), TREBLE(2, 0), ALTO(2, 0), BASS(2, 0)));
    /* Three parts of one clef without a brace may be three sections or a soloist and two: nobody can tell. The lowest that stand in order are taken all the same. */
    expect("not known; Vn I; Vn II; Va; Vc", PARTS(TREBLE(1, 0), TREBLE(1, 0), TREBLE(1, 0), ALTO(1, 0), BASS(1, 0)));
}

static void winds_and_the_rest_have_families(void)
{
    expect("woodwind; brass; brass; percussion; keyboard; plucked; voices; strings solo; woodwind; brass",
           PARTS(NAMED("Oboe d'amore"), NAMED("Tenor Trombone 1"), NAMED("B basso Horn 1\n[sic, B not Bb]"), NAMED("B, D, E Timpani"), NAMED("Celesta"), NAMED("Harfe"),
                 NAMED("Chor"), NAMED("Viola d'amore"), NAMED("Kontrafagott"), NAMED("Bass Trombone")));
}

static void a_guide_below_the_score_is_left_out(void)
{
    Note notes[20];
    for (int i = 0; i < 20; i++)
        notes[i] = (Note){ .onset = i, .duration = 1, .midi = (int16_t)(60 + i), .bar = i / 4, .staff = 1 };
    PartSketch parts[] = { { .name = "Violin 1", .notes = notes, .note_count = 20 }, NAMED("Violin 2"), NAMED("Viola"), NAMED("Violoncello"),
                           NAMED("Contrabass"), { .name = "Violin", .notes = notes, .note_count = 20 }, NAMED("Piano reduction") };
    expect("Vn I; Vn II; Va; Vc; Db; strings left out; keyboard left out", parts, COUNT(parts));
    Note other[20];
    memcpy(other, notes, sizeof other);
    for (int i = 0; i < 20; i++)
        other[i].midi = (int16_t)(other[i].midi + 13);
    parts[5].notes = other;
    expect("Vn I; Vn II; Va; Vc; Db; Vn I solo; keyboard left out", parts, COUNT(parts));
}

static void a_line_whose_marks_say_solo_is_one_player(void)
{
    Note notes[20];
    for (int i = 0; i < 20; i++)
        notes[i] = (Note){ .onset = i, .duration = 1, .midi = 60, .bar = i / 4, .staff = 1 };
    Direction solo = { .kind = DIRECTION_WORDS, .text = "Solo" }, tutti = { .kind = DIRECTION_WORDS, .text = "Tutti" };
    PartSketch parts[] = { NAMED("Violin 1"), NAMED("Violin 2"), { .name = "Viola", .notes = notes, .note_count = 4, .marks = &solo, .mark_count = 1 },
                           { .name = "Viola", .notes = notes, .note_count = 20 } };
    expect("Vn I; Vn II; Va solo; Va", parts, COUNT(parts));
    parts[2].marks = &tutti;
    expect("Vn I; Vn II; Va line 1; Va line 2", parts, COUNT(parts));
}

static void no_part_and_no_name_are_no_trouble(void)
{
    expect("", NULL, 0);
    expect("not known", PARTS(NAMED("")));
    expect("not known", PARTS(NAMED("\xff\xc3 \xe2\x82")));
    expect("Vn I; Vn II; Vn III line 1; Vn III line 2", PARTS(NAMED("Violin 1"), NAMED("Violin 2"), NAMED("Violin 3"), NAMED("Violin 4")));
}

void suite_sections_context(void);
void suite_sections_context(void)
{
    static const struct Statement statements[] = {
        STATEMENT(two_parts_called_violin_are_first_and_second),
        STATEMENT(violins_on_two_staves_are_firsts_over_seconds),
        STATEMENT(cellos_and_basses_may_share_a_part),
        STATEMENT(a_continuo_carries_the_bass_line_where_nobody_else_does),
        STATEMENT(alto_and_bass_follow_their_neighbours),
        STATEMENT(three_violins_are_three_sections_and_three_violas_stand_equal),
        STATEMENT(numbered_parts_that_mostly_rest_are_lines_of_a_divided_section),
        STATEMENT(several_parts_of_one_section_are_its_lines),
        STATEMENT(soloists_stand_before_the_section),
        STATEMENT(orchestras_are_told_by_name_by_group_and_by_starting_over),
        STATEMENT(a_number_of_the_orchestra_in_the_abbreviation_is_no_line),
        STATEMENT(a_concertino_stands_before_its_ripieno),
        STATEMENT(nameless_parts_are_told_by_group_sound_or_program),
        STATEMENT(nameless_parts_in_the_order_of_strings_are_guessed),
        STATEMENT(the_brackets_tell_which_nameless_parts_belong_together),
        STATEMENT(no_guess_goes_over_from_one_bracket_into_another),
        STATEMENT(winds_and_the_rest_have_families),
        STATEMENT(a_guide_below_the_score_is_left_out),
        STATEMENT(a_line_whose_marks_say_solo_is_one_player),
        STATEMENT(no_part_and_no_name_are_no_trouble),
    };
    suite_of("sections beside each other", statements, COUNT(statements));
}
