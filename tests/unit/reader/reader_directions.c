/* Dynamics, words, tempo, letters, and what is in force at a note. */
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static const Note *note_at(const Movement *m, size_t index)
{
    CU_ASSERT_TRUE_FATAL(index < m->parts[0].note_count);
    return &m->parts[0].notes[index];
}

static void a_dynamic_stays_in_force_until_the_next(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") DYNAMICS(pp) NOTE(C, 4, 1, "")) BAR(2, NOTE(C, 4, 1, "") DYNAMICS(ff) NOTE(C, 4, 1, ""))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_NONE);
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_PP);
    CU_ASSERT_EQUAL(note_at(m, 2)->dynamic, DYNAMIC_PP);
    CU_ASSERT_EQUAL(note_at(m, 3)->dynamic, DYNAMIC_FF);
}

static void a_forte_piano_leaves_piano_and_an_accent_leaves_all_as_it_was(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) DYNAMICS(fp) NOTE(C, 4, 1, "") DYNAMICS(mf) DYNAMICS(sfz) NOTE(C, 4, 1, ""))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_P);
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_MF);
    CU_ASSERT_STRING_EQUAL(m->parts[0].directions[2].text, "sfz");
}

static void a_dynamic_in_words_is_found(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<direction><direction-type><dynamics><other-dynamics>sempre pp</other-dynamics></dynamics></direction-type></direction>" NOTE(C, 4, 1, ""))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_PP);
    CU_ASSERT_STRING_EQUAL(m->parts[0].directions[0].text, "sempre pp");
}

static void a_dynamic_written_to_a_note_counts_from_that_note(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") NOTE(D, 4, 1, "<notations><dynamics><f/></dynamics></notations>"))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_NONE);
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_F);
}

static void a_dynamic_counts_for_its_staff_and_one_without_a_staff_for_all(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, "<attributes><divisions>1</divisions><staves>2</staves></attributes>" DYNAMICS(p)
        "<direction><direction-type><dynamics><f/></dynamics></direction-type><staff>2</staff></direction>" NOTE(C, 5, 1, "<staff>1</staff>") BACKUP(1) NOTE(C, 3, 1, "<staff>2</staff>"))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_P);
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_F);
}

static void a_dynamic_written_after_a_second_voice_counts_by_its_time(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 5, 1, "") NOTE(D, 5, 1, "") BACKUP(1) DYNAMICS(f) NOTE(C, 4, 1, "<voice>2</voice>"))));
    CU_ASSERT_EQUAL(note_at(m, 0)->dynamic, DYNAMIC_NONE);
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_F);
}

static void an_offset_moves_a_direction_in_time(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(2) "<direction><direction-type><dynamics><f/></dynamics></direction-type><offset>3</offset></direction>" NOTE(C, 4, 2, "") NOTE(D, 4, 2, "") NOTE(E, 4, 2, ""))));
    CU_ASSERT_EQUAL(note_at(m, 1)->dynamic, DYNAMIC_NONE);
    CU_ASSERT_EQUAL(note_at(m, 2)->dynamic, DYNAMIC_F);
    CU_ASSERT_EQUAL(m->parts[0].directions[0].onset * 2, 3 * m->per_crotchet);
}

static unsigned playing_after(const char *words)
{
    char xml[1024];
    snprintf(xml, sizeof xml, PIECE(BAR(1, DIVISIONS(1) "%s" NOTE(C, 4, 1, ""))), words);
    return movement_of(xml)->parts[0].notes[0].flags & (NOTE_PIZZICATO | NOTE_MUTED);
}

static void pizzicato_and_mutes_are_read_from_the_words_of_five_languages(void)
{
    CU_ASSERT_EQUAL(playing_after(WORDS("pizz.")), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("pizzicato, div.")), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("pizz.") WORDS("arco")), 0);
    CU_ASSERT_EQUAL(playing_after(WORDS("gezupft") WORDS("gestrichen")), 0);
    CU_ASSERT_EQUAL(playing_after(WORDS("gezupft")), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("pinc\xc3\xa9")), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("pizz.") WORDS("sul tasto")), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("pizz.") WORDS("mit Bogen")), 0);
    CU_ASSERT_EQUAL(playing_after(WORDS("con sord.")), NOTE_MUTED);
    CU_ASSERT_EQUAL(playing_after(WORDS("mit D\xc3\xa4mpfer")), NOTE_MUTED);
    CU_ASSERT_EQUAL(playing_after(WORDS("avec sourdines")), NOTE_MUTED);
    CU_ASSERT_EQUAL(playing_after(WORDS("con sord.") WORDS("senza sord.")), 0);
    CU_ASSERT_EQUAL(playing_after(WORDS("avec sourdines") WORDS("sans sourdines")), 0);
    CU_ASSERT_EQUAL(playing_after(WORDS("con sord. e pizz.")), NOTE_MUTED | NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after("<sound pizzicato=\"yes\"/>"), NOTE_PIZZICATO);
    CU_ASSERT_EQUAL(playing_after(WORDS("dolce")), 0);
}

static void a_single_note_may_be_plucked(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<note pizzicato=\"yes\">" PITCH(C, 4) LASTING(1) "</note>" NOTE(C, 4, 1, ""))));
    CU_ASSERT_TRUE(note_at(m, 0)->flags & NOTE_PIZZICATO);
    CU_ASSERT_FALSE(note_at(m, 1)->flags & NOTE_PIZZICATO);
}

static double tempo_of(const char *direction)
{
    char xml[2048];
    snprintf(xml, sizeof xml, PIECE(BAR(1, DIVISIONS(1) "%s" NOTE(C, 4, 1, ""))), direction);
    return movement_tempo_at(movement_of(xml), 0);
}

#define METRONOME(content) "<direction><direction-type><metronome>" content "</metronome></direction-type></direction>"

static void tempo_is_given_in_crotchets_a_minute(void)
{
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>quarter</beat-unit><per-minute>96</per-minute>")), 96, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>half</beat-unit><per-minute>60</per-minute>")), 120, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>")), 90, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>quarter</beat-unit><beat-unit-dot/><beat-unit-dot/><per-minute>40</per-minute>")), 70, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>eighth</beat-unit><per-minute>ca. 120-132</per-minute>")), 60, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of("<sound tempo=\"72.5\"/>"), 72.5, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(""), 0, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of("<sound tempo=\"0\"/>"), 0, 1e-9);
}

static void an_equation_of_note_values_carries_the_tempo_over(void)
{
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>quarter</beat-unit><per-minute>80</per-minute>")
                                    METRONOME("<beat-unit>quarter</beat-unit><beat-unit>half</beat-unit>")), 80, 1e-9); /* both stand at the start: the first counts */
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) METRONOME("<beat-unit>quarter</beat-unit><per-minute>80</per-minute>") NOTE(C, 4, 1, "")
                                              METRONOME("<beat-unit>quarter</beat-unit><beat-unit>half</beat-unit>") NOTE(C, 4, 1, ""))));
    CU_ASSERT_DOUBLE_EQUAL(movement_tempo_at(m, m->per_crotchet), 160, 1e-9); /* the old crotchet is the new minim */
}

static void the_words_beside_a_tempo_name_it(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<direction><direction-type><words>Adagio</words></direction-type><sound tempo=\"60\"/></direction>" NOTE(C, 4, 1, ""))));
    CU_ASSERT_EQUAL_FATAL(m->parts[0].direction_count, 2);
    CU_ASSERT_EQUAL(m->parts[0].directions[1].kind, DIRECTION_TEMPO);
    CU_ASSERT_STRING_EQUAL(m->parts[0].directions[1].text, "Adagio");
    CU_ASSERT_EQUAL(m->parts[0].directions[0].kind, DIRECTION_WORDS);
}

static void a_tempo_that_stands_in_words_alone_is_read(void)
{
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(WORDS("Allegro (\xe2\x99\xa9 = 126)")), 126, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(WORDS("(\xe2\x99\xaa.=80)")), 60, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(WORDS("[\xf0\x9d\x85\x9e = 66]")), 132, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(WORDS("\xe2\x99\xa9 and more")), 0, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of("<direction><direction-type><metronome parentheses=\"yes\"><beat-unit>quarter</beat-unit><per-minute>(96)</per-minute></metronome></direction-type></direction>"), 96, 1e-9);
    static const char *const back[] = {"(Tempo I)", "Tempo primo", "[TEMPO I\xc2\xb0]"}, *const other[] = {"Tempo II", "a tempo", "Tempo giusto"};
    for (int way = 0; way < 6; way++) {
        char xml[2048], words[256];
        snprintf(words, sizeof words, WORDS("%s"), way < 3 ? back[way] : other[way - 3]);
        snprintf(xml, sizeof xml, PIECE(BAR(1, DIVISIONS(1) METRONOME("<beat-unit>quarter</beat-unit><per-minute>80</per-minute>") NOTE(C, 4, 1, "")
                                            METRONOME("<beat-unit>quarter</beat-unit><per-minute>120</per-minute>") NOTE(C, 4, 1, "") "%s" NOTE(C, 4, 1, ""))), words);
        const Movement *m = movement_of(xml);
        CU_ASSERT_DOUBLE_EQUAL(movement_tempo_at(m, 2 * m->per_crotchet), way < 3 ? 80 : 120, 1e-9);
    }
}

static void a_metronome_mark_goes_before_a_number_for_playing_back_at_the_same_moment(void)
{
    CU_ASSERT_DOUBLE_EQUAL(tempo_of("<direction><direction-type><words>Andante</words></direction-type><sound tempo=\"114\"/></direction>"
        METRONOME("<beat-unit>quarter</beat-unit><per-minute>80</per-minute>")), 80, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of(METRONOME("<beat-unit>quarter</beat-unit><per-minute>80</per-minute>") "<sound tempo=\"114\"/>"), 80, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(tempo_of("<sound tempo=\"60\"/><sound tempo=\"90\"/>"), 60, 1e-9);
}

static void the_tempo_of_any_part_counts_and_the_last_one_before_the_moment(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, BAR(1, DIVISIONS(1) "<sound tempo=\"60\"/>" NOTE(C, 4, 4, "")))
        PART(P2, BAR(1, DIVISIONS(1) "<sound tempo=\"60\"/>" NOTE(C, 4, 2, "") "<sound tempo=\"90\"/>" NOTE(C, 4, 2, "")))));
    CU_ASSERT_EQUAL(m->tempo_count, 2);
    CU_ASSERT_DOUBLE_EQUAL(movement_tempo_at(m, 2 * m->per_crotchet - 1), 60, 1e-9);
    CU_ASSERT_DOUBLE_EQUAL(movement_tempo_at(m, 2 * m->per_crotchet), 90, 1e-9);
}

#define LETTER(letter) "<direction><direction-type><rehearsal>" letter "</rehearsal></direction-type></direction>"

static void bars_are_named_by_the_letter_before_them(void)
{
    const Movement *m = movement_of(SCORE(LISTED(P1, "Violin I") LISTED(P2, "Viola"), PART(P1, BAR(1, DIVISIONS(1) LETTER("A") REST(1)) BAR(2, REST(1)) BAR(3, REST(1)) BAR(4, REST(1)))
        PART(P2, BAR(1, DIVISIONS(1) REST(1)) BAR(2, REST(1)) BAR(3, LETTER("B") REST(1)) BAR(4, REST(1)))));
    char text[REHEARSAL_TEXT];
    CU_ASSERT_STRING_EQUAL(movement_rehearsal_text(m, 0, text), "A");
    CU_ASSERT_STRING_EQUAL(movement_rehearsal_text(m, 1, text), "A+1");
    CU_ASSERT_STRING_EQUAL(movement_rehearsal_text(m, 2, text), "B");
    CU_ASSERT_STRING_EQUAL(movement_rehearsal_text(m, 3, text), "B+1");
    CU_ASSERT_STRING_EQUAL(movement_rehearsal_text(movement_of(PIECE(BAR(1, REST(1)))), 0, text), "");
}

static void wedges_and_signs_are_marks(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<direction><direction-type><wedge type=\"diminuendo\"/></direction-type></direction>" NOTE(C, 4, 1, "")
        "<direction><direction-type><wedge type=\"stop\"/></direction-type></direction>"
        "<direction><direction-type><segno/></direction-type></direction>")));
    CU_ASSERT_EQUAL_FATAL(m->parts[0].direction_count, 3);
    CU_ASSERT_EQUAL(m->parts[0].directions[0].value, -1);
    CU_ASSERT_EQUAL(m->parts[0].directions[1].value, 0);
    CU_ASSERT_STRING_EQUAL(m->parts[0].directions[2].text, "segno");
    CU_ASSERT_TRUE(m->bars[0].segno);
}

static void words_keep_their_spelling_and_lose_their_line_breaks(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) WORDS("  getheilt \n  &amp; ged\xc3\xa4mpft ") NOTE(C, 4, 1, ""))));
    CU_ASSERT_STRING_EQUAL(m->parts[0].directions[0].text, "getheilt & ged\xc3\xa4mpft");
}

static const struct Statement statements[] = {
    STATEMENT(a_dynamic_stays_in_force_until_the_next),
    STATEMENT(a_forte_piano_leaves_piano_and_an_accent_leaves_all_as_it_was),
    STATEMENT(a_dynamic_in_words_is_found),
    STATEMENT(a_dynamic_written_to_a_note_counts_from_that_note),
    STATEMENT(a_dynamic_counts_for_its_staff_and_one_without_a_staff_for_all),
    STATEMENT(a_dynamic_written_after_a_second_voice_counts_by_its_time),
    STATEMENT(an_offset_moves_a_direction_in_time),
    STATEMENT(pizzicato_and_mutes_are_read_from_the_words_of_five_languages),
    STATEMENT(a_single_note_may_be_plucked),
    STATEMENT(tempo_is_given_in_crotchets_a_minute),
    STATEMENT(an_equation_of_note_values_carries_the_tempo_over),
    STATEMENT(the_words_beside_a_tempo_name_it),
    STATEMENT(a_tempo_that_stands_in_words_alone_is_read),
    STATEMENT(a_metronome_mark_goes_before_a_number_for_playing_back_at_the_same_moment),
    STATEMENT(the_tempo_of_any_part_counts_and_the_last_one_before_the_moment),
    STATEMENT(bars_are_named_by_the_letter_before_them),
    STATEMENT(wedges_and_signs_are_marks),
    STATEMENT(words_keep_their_spelling_and_lose_their_line_breaks),
};

void suite_reader_directions(void)
{
    suite_of("reader: directions", statements, COUNT(statements));
}
