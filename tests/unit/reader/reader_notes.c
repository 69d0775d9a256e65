/* Pitch and time of notes, as MusicXML 4.0 (W3C Community Group) defines them. */
#include "support/scores/score_text.h"
#include "support/suite.h"

#define SOUNDS(bars, expected) CU_ASSERT_STRING_EQUAL(sounds_text(movement_of(PIECE(bars)), 0), expected)

static void a_note_lasts_its_duration_in_divisions(void)
{
    SOUNDS(BAR(1, DIVISIONS(4) NOTE(C, 4, 4, "") NOTE(D, 4, 2, "") NOTE(E, 4, 1, "")), "C4@0+1 D4@1+1/2 E4@3/2+1/4");
}

static void divisions_may_change_in_the_middle_of_a_part(void)
{
    SOUNDS(BAR(1, DIVISIONS(2) NOTE(C, 4, 2, "") DIVISIONS(6) NOTE(D, 4, 2, "") NOTE(E, 4, 4, "")) BAR(2, NOTE(F, 4, 6, "")),
           "C4@0+1 D4@1+1/3 E4@4/3+2/3 F4@2+1");
}

static void an_elevenlet_after_a_thirteenlet_is_exact(void)
{
    SOUNDS(BAR(1, DIVISIONS(13) NOTE(C, 4, 1, "") NOTE(D, 4, 12, "") DIVISIONS(11) NOTE(E, 4, 1, "") NOTE(F, 4, 10, "")),
           "C4@0+1/13 D4@1/13+12/13 E4@1+1/11 F4@12/11+10/11");
}

static void a_decimal_duration_is_taken_exactly(void)
{
    SOUNDS(BAR(1, DIVISIONS(2) NOTE(C, 4, 1.5, "") NOTE(D, 4, 0.3, "")), "C4@0+3/4 D4@3/4+3/20");
}

static void chord_notes_start_with_the_note_before_them(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") CHORD(E, 4, 1, "") CHORD(G, 4, 1, "") NOTE(D, 4, 1, "")),
           "C4@0+1 E4@0+1 G4@0+1 D4@1+1");
}

static void words_between_chord_notes_do_not_part_the_chord(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") WORDS("dolce") CHORD(E, 4, 1, "") NOTE(D, 4, 1, "")), "C4@0+1 E4@0+1 D4@1+1");
}

static void a_chord_note_with_no_note_before_it_stands_alone_and_is_reported(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) CHORD(C, 4, 1, "") NOTE(D, 4, 1, "")), "C4@0+1 D4@1+1");
    CU_ASSERT_STRING_EQUAL(last_message(), "a chord note has no note before it");
}

static void backup_and_forward_place_a_second_voice(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 5, 4, "<voice>1</voice>") BACKUP(4) FORWARD(1) NOTE(E, 4, 2, "<voice>2</voice>")),
           "C5@0+4 E4@1+2");
}

static void a_backup_behind_the_start_of_the_bar_is_reported_and_stops_there(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 5, 2, "") BACKUP(3) NOTE(E, 4, 2, "<voice>2</voice>")), "C5@0+2 E4@0+2");
    CU_ASSERT_STRING_EQUAL(last_message(), "a step back goes behind the start of the bar; it ends at the start");
}

static void tied_notes_sound_once_over_bars(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 4, TIE_FROM)) BAR(2, NOTE(C, 4, 4, TIE_TO TIE_FROM)) BAR(3, NOTE(C, 4, 1, TIE_TO)), "C4@0+9");
}

static void a_drawn_tie_without_a_sounding_one_counts(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 2, "<notations><tied type=\"start\"/></notations>")
               NOTE(C, 4, 2, "<notations><tied type=\"stop\"/></notations>")), "C4@0+4");
}

static void a_tie_may_go_from_voice_to_voice(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 2, TIE_FROM "<voice>1</voice>") NOTE(C, 4, 2, TIE_TO "<voice>2</voice>")), "C4@0+4");
}

static void two_voices_in_unison_each_keep_their_own_tie(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, TIE_FROM "<voice>1</voice>") NOTE(C, 4, 3, TIE_TO "<voice>1</voice>")
               BACKUP(4) NOTE(C, 4, 1, TIE_FROM "<voice>2</voice>") NOTE(C, 4, 1, TIE_TO "<voice>2</voice>")),
           "C4@0+4 C4@0+2");
}

static void a_tie_that_finds_no_partner_ends_with_its_note(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, TIE_FROM) NOTE(D, 4, 1, "") NOTE(C, 4, 1, TIE_TO)), "C4@0+1 D4@1+1 C4@2+1");
}

static void slurs_are_no_ties(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "<notations><slur type=\"start\"/></notations>")
               NOTE(C, 4, 1, "<notations><slur type=\"stop\"/></notations>")), "C4@0+1 C4@1+1");
}

static void grace_notes_take_no_time_and_keep_their_order(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") GRACE(D, 4, "") GRACE(E, 4, "") NOTE(F, 4, 1, ""))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+1 D4@1+0 E4@1+0 F4@1+1");
    CU_ASSERT_TRUE(m->parts[0].notes[1].flags & NOTE_GRACE);
    CU_ASSERT_FALSE(m->parts[0].notes[1].flags & NOTE_GRACE_AFTER);
}

static void grace_notes_at_the_end_of_a_bar_belong_to_the_note_before(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 2, "") GRACE(B, 3, "") GRACE(C, 4, "")) BAR(2, NOTE(D, 4, 2, ""))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+2 B3@2+0 C4@2+0 D4@2+2");
    for (int i = 1; i <= 2; i++) {
        CU_ASSERT_TRUE(m->parts[0].notes[i].flags & NOTE_GRACE_AFTER);
        CU_ASSERT_EQUAL(m->parts[0].notes[i].bar, 0);
    }
}

static void a_grace_note_that_takes_its_time_from_the_note_before_is_an_after_grace(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "") "<note><grace steal-time-previous=\"20\"/>" PITCH(D, 4) "</note>" NOTE(E, 4, 1, ""))));
    CU_ASSERT_TRUE(m->parts[0].notes[1].flags & NOTE_GRACE_AFTER);
}

static void cue_notes_are_not_heard_but_take_their_time(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) "<note><cue/>" PITCH(C, 5) LASTING(2) "</note>" NOTE(D, 4, 2, "")), "D4@2+2");
}

static void slash_heads_stand_for_music_that_is_not_written(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(B, 4, 1, "<notehead>slash</notehead>") NOTE(D, 4, 1, "")), "D4@1+1");
}

static void unpitched_notes_are_heard_without_a_pitch(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<note><unpitched><display-step>E</display-step><display-octave>4</display-octave></unpitched>" LASTING(1) "</note>")));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "unpitched@0+1");
    CU_ASSERT_EQUAL(m->parts[0].notes[0].midi, -1);
}

static void a_pitched_rest_is_a_rest(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) "<note><rest><display-step>E</display-step><display-octave>4</display-octave></rest>" LASTING(1) "</note>" NOTE(D, 4, 1, "")),
           "D4@1+1");
}

/* Transposition: what must be added to the written pitch. */
#define TRANSPOSE(content) "<attributes><divisions>1</divisions><transpose>" content "</transpose></attributes>"

static void a_clarinet_in_b_flat_sounds_a_tone_lower(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<diatonic>-1</diatonic><chromatic>-2</chromatic>") NOTE(C, 5, 1, "") NOTE(D, 5, 1, "") NOTE(E, 5, 1, "")), "Bb4@0+1 C5@1+1 D5@2+1");
}

static void a_bass_with_an_octave_change_sounds_an_octave_lower(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<diatonic>0</diatonic><chromatic>0</chromatic><octave-change>-1</octave-change>") NOTE(E, 2, 1, "")), "E1@0+1");
}

static void octaves_are_added_to_the_interval(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<diatonic>-1</diatonic><chromatic>-2</chromatic><octave-change>-1</octave-change>") NOTE(C, 4, 1, "")), "Bb2@0+1");
}

static void steps_that_are_left_out_follow_from_the_semitones(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<chromatic>-7</chromatic>") NOTE(C, 5, 1, "") NOTE(B, 4, 1, "")), "F4@0+1 E4@1+1");
}

static void a_doubling_moves_no_note_and_is_kept_with_the_part(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, TRANSPOSE("<chromatic>0</chromatic><double/>") NOTE(C, 3, 1, ""))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C3@0+1");
    CU_ASSERT_EQUAL(m->parts[0].doubled, -1);
}

static void each_staff_may_have_its_own_transposition(void)
{
    SOUNDS(BAR(1, "<attributes><divisions>1</divisions><staves>2</staves><transpose number=\"2\"><chromatic>-12</chromatic></transpose></attributes>"
               NOTE(C, 5, 1, "<staff>1</staff>") BACKUP(1) NOTE(C, 5, 1, "<staff>2</staff>")), "C5@0+1 C4@0+1");
}

static void a_transposition_may_change_in_the_part(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<diatonic>2</diatonic><chromatic>3</chromatic>") NOTE(C, 4, 1, "")) BAR(2, TRANSPOSE("<diatonic>-1</diatonic><chromatic>-2</chromatic>") NOTE(C, 4, 1, "")),
           "Eb4@0+1 Bb3@1+1");
}

static void a_transposition_that_changes_inside_a_bar_counts_from_there_in_every_voice(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<attributes><transpose><chromatic>-2</chromatic></transpose></attributes>" NOTE(C, 5, 2, "<voice>1</voice>")
        "<attributes><transpose><chromatic>-3</chromatic></transpose></attributes>" NOTE(C, 5, 2, "<voice>1</voice>") BACKUP(4) NOTE(D, 4, 2, "<voice>2</voice>") NOTE(D, 4, 2, "<voice>2</voice>"))
        BAR(2, NOTE(C, 5, 4, "<voice>1</voice>"))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "Bb4@0+2 C4@0+2 A4@2+2 B3@2+2 A4@4+4");
}

static void a_score_in_concert_pitch_keeps_octave_transpositions_and_ignores_those_for_parts(void)
{
    const char *xml = "<score-partwise><defaults><concert-score/></defaults><part-list>" LISTED(P1, "Bass") "</part-list>"
        PART(P1, BAR(1, "<attributes><divisions>1</divisions><transpose><chromatic>0</chromatic><octave-change>-1</octave-change></transpose>"
        "<for-part><part-transpose><diatonic>-1</diatonic><chromatic>-2</chromatic></part-transpose></for-part></attributes>" NOTE(C, 3, 1, "")))
        "</score-partwise>";
    CU_ASSERT_STRING_EQUAL(sounds_text(movement_of(xml), 0), "C2@0+1");
}

static void the_octave_of_a_clef_and_an_octave_line_change_no_pitch(void)
{
    SOUNDS(BAR(1, "<attributes><divisions>1</divisions><clef><sign>G</sign><line>2</line><clef-octave-change>-1</clef-octave-change></clef></attributes>"
               "<direction><direction-type><octave-shift type=\"down\" size=\"8\"/></direction-type></direction>" NOTE(C, 4, 1, "")), "C4@0+1");
}

static void a_spelling_beyond_double_sharps_is_respelled(void)
{
    SOUNDS(BAR(1, TRANSPOSE("<diatonic>0</diatonic><chromatic>2</chromatic>") "<note>" PITCH_ALTERED(F, 1, 4) LASTING(1) "</note>"), "G#4@0+1");
}

/* A figure is the same figure in whatever key: the ear counts its steps as they are written, also where a name would need three sharps. */
static void steps_are_counted_as_written_however_a_note_is_named(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, TRANSPOSE("<diatonic>0</diatonic><chromatic>2</chromatic>") "<note>" PITCH_ALTERED(F, 1, 4) LASTING(1) "</note><note>" PITCH_ALTERED(G, 0, 4) LASTING(1) "</note>")));
    const Note *notes = m->parts[0].notes;
    char text[PITCH_TEXT];
    CU_ASSERT_EQUAL(notes[1].step - notes[0].step, 1);
    CU_ASSERT_EQUAL(notes[0].alter, 3);
    CU_ASSERT_STRING_EQUAL(note_pitch_text(&notes[0], text), "G#4");
    CU_ASSERT_STRING_EQUAL(note_pitch_text(&notes[1], text), "G##4");
}

static void quarter_tones_are_rounded_and_the_rest_is_kept(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<note>" PITCH_ALTERED(C, 0.5, 4) LASTING(1) "</note><note>" PITCH_ALTERED(C, -1.5, 4) LASTING(1) "</note>")));
    CU_ASSERT_EQUAL(m->parts[0].notes[0].midi, 61);
    CU_ASSERT_EQUAL(m->parts[0].notes[0].cents, -50);
    CU_ASSERT_EQUAL(m->parts[0].notes[1].midi, 59);
    CU_ASSERT_EQUAL(m->parts[0].notes[1].cents, -50);
}

static void b_sharp_keeps_the_octave_of_its_name(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) "<note>" PITCH_ALTERED(B, 1, 3) LASTING(1) "</note><note>" PITCH_ALTERED(C, -1, 4) LASTING(1) "</note>")));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "B#3@0+1 Cb4@1+1");
    CU_ASSERT_EQUAL(m->parts[0].notes[0].midi, 60);
    CU_ASSERT_EQUAL(m->parts[0].notes[1].midi, 59);
}

static void a_tremolo_between_two_notes_gives_each_half_the_time(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 2, "<notations><ornaments><tremolo type=\"start\">3</tremolo></ornaments></notations>")
        NOTE(E, 4, 2, "<notations><ornaments><tremolo type=\"stop\">3</tremolo></ornaments></notations>") NOTE(G, 4, 1, "<notations><ornaments><tremolo>2</tremolo></ornaments></notations>"))));
    CU_ASSERT_STRING_EQUAL(sounds_text(m, 0), "C4@0+2 E4@2+2 G4@4+1");
    CU_ASSERT_EQUAL(m->parts[0].notes[0].flags & (NOTE_TREMOLO | NOTE_TREMOLO_PAIR), NOTE_TREMOLO_PAIR);
    CU_ASSERT_EQUAL(m->parts[0].notes[1].flags & (NOTE_TREMOLO | NOTE_TREMOLO_PAIR), NOTE_TREMOLO_PAIR);
    CU_ASSERT_EQUAL(m->parts[0].notes[2].flags & (NOTE_TREMOLO | NOTE_TREMOLO_PAIR), NOTE_TREMOLO);
}

/* MusicXML 4.0, complexType tremolo: the beams of the note are not included in the number of marks. */
static void strokes_and_flags_together_tell_what_is_counted(void)
{
    static const struct { const char *type, *tremolo; uint32_t counted; bool trembles; } cases[] = {
        {"quarter", "<tremolo>1</tremolo>", NOTE_IN_QUAVERS, false},       {"quarter", "<tremolo type='single'>2</tremolo>", NOTE_IN_SEMIQUAVERS, false},
        {"eighth", "<tremolo>1</tremolo>", NOTE_IN_SEMIQUAVERS, false},    {"half", "<tremolo>3</tremolo>", 0, true},
        {"eighth", "<tremolo>2</tremolo>", 0, true},                       {"16th", "<tremolo>1</tremolo>", 0, true},
        {"half", "<tremolo type='start'>2</tremolo>", NOTE_IN_SEMIQUAVERS, false}, {"half", "<tremolo type='start'>3</tremolo>", 0, true},
        {"half", "<tremolo type='unmeasured'>0</tremolo>", 0, true},       {"half", "<tremolo type='unmeasured'/>", 0, true},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char bar[1024];
        snprintf(bar, sizeof bar, PIECE(BAR(1, DIVISIONS(1) "<note>" PITCH(C, 4) LASTING(2) "<type>%s</type><notations><ornaments>%s</ornaments></notations></note>")),
                 cases[i].type, cases[i].tremolo);
        uint32_t flags = movement_of(bar)->parts[0].notes[0].flags;
        CU_ASSERT_EQUAL(flags & (NOTE_IN_QUAVERS | NOTE_IN_SEMIQUAVERS), cases[i].counted);
        CU_ASSERT_EQUAL(trembles(flags), cases[i].trembles);
    }
}

static void articulations_come_together_from_all_notations(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, DIVISIONS(1) NOTE(C, 4, 1, "<notations><articulations><staccato/></articulations></notations><notations><articulations><accent/></articulations><fermata/></notations>"))));
    CU_ASSERT_EQUAL(m->parts[0].notes[0].flags, NOTE_STACCATO | NOTE_ACCENT | NOTE_FERMATA);
}

static void notes_are_sorted_by_time_then_staff_then_voice(void)
{
    SOUNDS(BAR(1, DIVISIONS(1) NOTE(C, 3, 2, "<voice>2</voice><staff>2</staff>") NOTE(D, 3, 2, "<voice>2</voice><staff>2</staff>") BACKUP(4)
               NOTE(G, 4, 1, "<voice>1</voice><staff>1</staff>") NOTE(A, 4, 3, "<voice>1</voice><staff>1</staff>")),
           "G4@0+1 C3@0+2 A4@1+3 D3@2+2");
}

static void every_note_knows_its_line_in_the_file(void)
{
    const Movement *m = movement_of(PIECE(BAR(1, "\n" DIVISIONS(1) "\n" NOTE(C, 4, 1, "") "\n\n" NOTE(D, 4, 1, ""))));
    CU_ASSERT_EQUAL(m->parts[0].notes[0].line, 3);
    CU_ASSERT_EQUAL(m->parts[0].notes[1].line, 5);
}

static const struct Statement statements[] = {
    STATEMENT(a_note_lasts_its_duration_in_divisions),
    STATEMENT(divisions_may_change_in_the_middle_of_a_part),
    STATEMENT(an_elevenlet_after_a_thirteenlet_is_exact),
    STATEMENT(a_decimal_duration_is_taken_exactly),
    STATEMENT(chord_notes_start_with_the_note_before_them),
    STATEMENT(words_between_chord_notes_do_not_part_the_chord),
    STATEMENT(a_chord_note_with_no_note_before_it_stands_alone_and_is_reported),
    STATEMENT(backup_and_forward_place_a_second_voice),
    STATEMENT(a_backup_behind_the_start_of_the_bar_is_reported_and_stops_there),
    STATEMENT(tied_notes_sound_once_over_bars),
    STATEMENT(a_drawn_tie_without_a_sounding_one_counts),
    STATEMENT(a_tie_may_go_from_voice_to_voice),
    STATEMENT(two_voices_in_unison_each_keep_their_own_tie),
    STATEMENT(a_tie_that_finds_no_partner_ends_with_its_note),
    STATEMENT(slurs_are_no_ties),
    STATEMENT(grace_notes_take_no_time_and_keep_their_order),
    STATEMENT(grace_notes_at_the_end_of_a_bar_belong_to_the_note_before),
    STATEMENT(a_grace_note_that_takes_its_time_from_the_note_before_is_an_after_grace),
    STATEMENT(cue_notes_are_not_heard_but_take_their_time),
    STATEMENT(slash_heads_stand_for_music_that_is_not_written),
    STATEMENT(unpitched_notes_are_heard_without_a_pitch),
    STATEMENT(a_pitched_rest_is_a_rest),
    STATEMENT(a_clarinet_in_b_flat_sounds_a_tone_lower),
    STATEMENT(a_bass_with_an_octave_change_sounds_an_octave_lower),
    STATEMENT(octaves_are_added_to_the_interval),
    STATEMENT(steps_that_are_left_out_follow_from_the_semitones),
    STATEMENT(a_doubling_moves_no_note_and_is_kept_with_the_part),
    STATEMENT(each_staff_may_have_its_own_transposition),
    STATEMENT(a_transposition_may_change_in_the_part),
    STATEMENT(a_transposition_that_changes_inside_a_bar_counts_from_there_in_every_voice),
    STATEMENT(a_score_in_concert_pitch_keeps_octave_transpositions_and_ignores_those_for_parts),
    STATEMENT(the_octave_of_a_clef_and_an_octave_line_change_no_pitch),
    STATEMENT(a_spelling_beyond_double_sharps_is_respelled),
    STATEMENT(steps_are_counted_as_written_however_a_note_is_named),
    STATEMENT(quarter_tones_are_rounded_and_the_rest_is_kept),
    STATEMENT(b_sharp_keeps_the_octave_of_its_name),
    STATEMENT(a_tremolo_between_two_notes_gives_each_half_the_time), STATEMENT(strokes_and_flags_together_tell_what_is_counted),
    STATEMENT(articulations_come_together_from_all_notations),
    STATEMENT(notes_are_sorted_by_time_then_staff_then_voice),
    STATEMENT(every_note_knows_its_line_in_the_file),
};

void suite_reader_notes(void)
{
    suite_of("reader: notes", statements, COUNT(statements));
}
