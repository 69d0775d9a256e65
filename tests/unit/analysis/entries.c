/* Where the calls and answers of a passage begin and end, and who has them, stated in music. */
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <spezzato/reading.h>

#define QUARTET \
    "time: 4/4  key: 0  tempo: q=96\n" \
    "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"

static spz_players players(const Rehearsal *r, const char *names)
{
    spz_players set = 0;
    for (size_t g = 0; g < spz_sections_groups(r->sections); g++)
        if (strstr(names, spz_sections_group(r->sections, g)->name))
            set |= (spz_players)1 << g;
    return set;
}

static const spz_passage *passage_of(Rehearsal *r, const char *caller, const char *responder)
{
    const spz_passage *passage = antiphony(r, caller, responder);
    CU_ASSERT_PTR_NOT_NULL_FATAL(passage);
    return passage;
}

static void stands_at(const spz_entry *entry, size_t bar, int64_t beat)
{
    CU_ASSERT_EQUAL(entry->bar, bar);
    CU_ASSERT_EQUAL(entry->beat.over, beat);
    CU_ASSERT_EQUAL(entry->beat.under, 1);
}

static void a_gesture_begins_with_its_long_first_note_though_no_rest_precedes(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | d5:q b4 c5 a4 | g5:q. e5:e f5:e g5 a5:q | R | g4:q a4 b4 c5 | c5:w\n"
                           "Violin II:   R*2 | e4:h d4 | g4:q. e4:e f4:e g4 a4:q | R | c4:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_TRUE_FATAL(p->entry_count >= 2);
    stands_at(&p->entries[0], 2, 1);
    stands_at(&p->entries[1], 3, 1);
    CU_ASSERT_TRUE(p->onset <= p->entries[0].onset);
    rehearsal_end(&r);
}

static void turns_are_told_one_by_one_though_the_caller_holds_a_note_under_each_answer(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | c5:q. e5:e g5:q c6 | a5:h a4:h | d5:q. f5:e a5:q d6 | b5:h b4:h | e5:q. g5:e b5:q e6 | c6:h c5:h | c5:w\n"
                           "Violin II:   R*8\n"
                           "Viola:       c4:w~ | c4~ | c4 | d4~ | d4 | e4~ | e4 | e4\n"
                           "Violoncello: R | c3:h r:h | c3:q. e3:e g3:q c4 | a3:h a2:h | d3:q. f3:e a3:q d4 | b3:h b2:h | e3:q. g3:e b3:q e4 | c3:w\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vc");
    CU_ASSERT_EQUAL_FATAL(p->entry_count, 6);
    for (size_t i = 0; i < 6; i++) {
        stands_at(&p->entries[i], i + 1, 1);
        CU_ASSERT_EQUAL(p->entries[i].players, players(&r, i % 2 ? "Vc" : "Vn I"));
    }
    rehearsal_end(&r);
}

/* The firsts ask twice before each answer: six entries, four turns. */
static void the_word_passes_only_where_another_has_it(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | c5:e( d5 e5 f5) g5:q r | c5:e( d5 e5 f5) g5:q r | R | R | d5:e( e5 f5 g5) a5:q r | d5:e( e5 f5 g5) a5:q r | R | R | c6:w\n"
                           "Violin II:   R | R | R | c5:e( d5 e5 f5) g5:q r | R | R | R | d5:e( e5 f5 g5) a5:q r | R | e5:w\n"
                           "Viola:       c4:w~ | c4~ | c4~ | c4~ | c4 | d4~ | d4~ | d4~ | d4 | e4\n"
                           "Violoncello: c3:w~ | c3~ | c3~ | c3~ | c3 | d3~ | d3~ | d3~ | d3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_EQUAL(p->entry_count, 6);
    CU_ASSERT_EQUAL(p->turns, 4);
    rehearsal_end(&r);
}

static void who_repeats_a_note_under_a_gesture_does_not_have_it(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | c6:w\n"
                           "Violin II:   R*6\n"
                           "Viola:       R | R | d4:q. d4:e d4:q d4 | R | e4:q. e4:e e4:q e4 | c4:w\n"
                           "Violoncello: R | R | <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | c3:w\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vc");
    for (size_t i = 0; i < p->entry_count; i++)
        CU_ASSERT_EQUAL(p->entries[i].players & players(&r, "Va"), 0);
    rehearsal_end(&r);
}

static void who_strikes_a_held_note_again_has_it_all_the_same(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | <f> g5:h a5:q b5 | R | a5:h b5:q c6 | R | c6:w\n"
                           "Violin II:   R | <f> g4:e g4 g4 g4 a4 a4 b4 b4 | R | a4:e a4 a4 a4 b4 b4 c5 c5 | R | c5:w\n"
                           "Viola:       d4:w | d4 | d4 | e4 | e4 | c4\n"
                           "Violoncello: R | R | <f> g2:h a2:q b2 | R | a2:h b2:q c3 | c3:w\n");
    const spz_passage *p = passage_of(&r, "Violins", "Vc");
    CU_ASSERT_EQUAL(p->entries[0].players, (spz_players)3);
    rehearsal_end(&r);
}

static void sections_that_enter_together_are_one_entry_and_one_link(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | <f> g5:q. a5:e b5:q d6 | R | a5:q. b5:e c6:q e6 | R | c6:w\n"
                           "Violin II:   R | <f> g4:q. a4:e b4:q d5 | R | a4:q. b4:e c5:q e5 | R | c5:w\n"
                           "Viola:       R | d4:w | d4 | e4 | e4 | g4\n"
                           "Violoncello: R | R | <f> g2:q. a2:e b2:q d3 | R | a2:q. b2:e c3:q e3 | c3:w\n");
    const spz_passage *p = antiphony(&r, "Violins", "Vc");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL_FATAL(p->link_count, 2);
    CU_ASSERT_EQUAL(p->links[0].players, (spz_players)3);
    CU_ASSERT_EQUAL(p->links[1].players, players(&r, "Vc"));
    CU_ASSERT_EQUAL_FATAL(p->entry_count, 4);
    for (size_t i = 0; i < 4; i++) {
        CU_ASSERT_EQUAL(p->entries[i].players, p->links[i % 2].players);
        CU_ASSERT_EQUAL(p->entries[i].link, i % 2);
        CU_ASSERT_EQUAL(p->entries[i].answer, i % 2 == 1);
        CU_ASSERT_EQUAL(p->entries[i].bar, i + 1);
        CU_ASSERT_TRUE(p->entries[i].beat.over == 1 && p->entries[i].beat.under == 1);
    }
    CU_ASSERT_EQUAL(p->entries[1].change.semitones, -36); /* from the firsts, three octaves down to the cellos */
    rehearsal_end(&r);
}

static void a_held_note_above_a_call_does_not_call(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    d6:w | e6:w | d6 | e6 | d6 | c6\n"
                           "Violin II:   R*6\n"
                           "Viola:       R | g4:e( a4 b4 c5) g4:q r | R | a4:e( b4 c5 d5) a4:q r | R | e4:w\n"
                           "Violoncello: R | R | g3:e( a3 b3 c4) g3:q r | R | a3:e( b3 c4 d4) a3:q r | c3:w\n");
    const spz_passage *p = antiphony(&r, "Va", "Vc");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    for (size_t i = 0; i < p->entry_count; i++)
        CU_ASSERT_EQUAL(p->entries[i].players & players(&r, "Vn I"), 0);
    rehearsal_end(&r);
}

static void whoever_leads_for_the_first_time_is_a_link_of_their_own(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*5 | g5:e( a5 b5 c6) g5:q e5 | R | c5:w\n"
                           "Violin II:   R*4 | g4:e( a4 b4 c5) g4:q e4 | R*2 | c4:w\n"
                           "Viola:       R*3 | g3:e( a3 b3 c4) g3:q e3 | R*3 | c4:w\n"
                           "Violoncello: R*2 | g2:e( a2 b2 c3) g2:q e2 | R*2 | g2:e( a2 b2 c3) g2:q e2 | R | c3:w\n");
    const spz_passage *p = NULL;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++)
        if (!p || spz_findings_at(r.findings, i)->link_count > p->link_count)
            p = spz_findings_at(r.findings, i);
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL_FATAL(p->link_count, 4);
    CU_ASSERT_EQUAL(p->links[0].players, players(&r, "Vc"));
    CU_ASSERT_EQUAL(p->links[1].players, players(&r, "Va"));
    CU_ASSERT_EQUAL(p->links[2].players, (spz_players)2); /* the second violins alone */
    CU_ASSERT_EQUAL(p->links[3].players, players(&r, "Vn I")); /* the cellos play along, but had it before */
    rehearsal_end(&r);
}

static void a_call_held_under_its_answer_is_listed(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | g5:e( a5 b5 c6) d6:h~ | d6:w~ | d6:q r:h. | c5:w\n"
                           "Violin II:   R*2 | R | g5:e( a5 b5 c6) d6:h | R | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *p = antiphony(&r, "Vn I", "Vn II");
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_EQUAL_FATAL(p->entry_count, 2);
    CU_ASSERT_EQUAL(p->entries[0].players, players(&r, "Vn I"));
    CU_ASSERT_FALSE(p->entries[0].answer);
    CU_ASSERT_TRUE(p->entries[0].end <= p->end);
    rehearsal_end(&r);
}

static void a_side_is_measured_by_those_after_whom_it_is_named(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R*2 | bb4:q. d5:e f5:q a5 | bb5 c#6 d6 e6 | f6:w | R | R*2 | c5:w\n"
                           "Violin II:   R*8 | e4:w\n"
                           "Viola:       R*4 | bb3:q. d4:e f4:q a4 | bb4 c#5 d5 e5 | R*2 | c4:w\n"
                           "Violoncello: R*4 | bb2:q. d3:e f3:q a3 | bb3 c#4 d4 e4 | R*2 | c3:w\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vc");
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "two octaves lower"));
    CU_ASSERT_EQUAL_FATAL(p->entry_count, 2);
    CU_ASSERT_EQUAL(p->entries[1].change.semitones, -24);
    CU_ASSERT_EQUAL(p->entries[1].first.midi, 46);
    CU_ASSERT_EQUAL(p->entries[1].players, players(&r, "Va Vc"));
    rehearsal_end(&r);
}

static void a_figure_is_called_once_though_the_answer_repeats_it(void)
{
    Rehearsal r = rehearse("time: 2/2  key: -1  tempo: h=90\n"
                           "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin I:    R*2 | r:q d6:h bb5:e g5 | f5:q r e5 r | f5:q' f5' gb5:e f5 gb5 ab5 | f5:q' f5' gb5:e f5 gb5 ab5 | f5:q f5 a5 a5 | bb5 bb5 b5 b5 | c6:w\n"
                           "Violin II:   R*2 | r:q d5:h bb4:e g4 | f4:q r e4 r | f4:q' f4' gb4:e f4 gb4 ab4 | f4:q' f4' gb4:e f4 gb4 ab4 | f4:q f4 a4 a4 | bb4 bb4 b4 b4 | c5:w\n"
                           "Viola:       R*2 | d4:h r | a3:q a3 bb3:e a3 bb3 c4 | ab3:h eb4 | f4 eb4 | f4:w | f4:h ab4 | a4:w\n"
                           "Violoncello: R*2 | bb3:h r | c4:q c4 c3 c3 | db3:h c3 | db3 c3 | db3:w | db3 | c3\n");
    const spz_passage *p = passage_of(&r, "Va", "Violins");
    size_t calls = 0;
    for (size_t i = 0; i < p->entry_count; i++)
        calls += !p->entries[i].answer;
    CU_ASSERT_EQUAL(calls, 1);
    rehearsal_end(&r);
}

/* Is a call of the first side of the sentence among the entries, and behind it an answer of the second? */
static bool tells_what_is_listed(const spz_passage *p)
{
    bool called = false, answered = false;
    for (size_t i = 0; i < p->entry_count; i++) {
        answered = answered || (called && (p->entries[i].players & p->told.gesture.sides[1].players));
        called = called || (p->entries[i].players & p->told.gesture.sides[0].players);
    }
    return answered;
}

static void the_sentence_tells_a_call_and_an_answer_that_are_listed(void)
{
    static const char *const files[] = {"quartets/Andree_quartet_A_2.mxl", "scores/Brahms_Op.68_2.mxl"};
    for (size_t f = 0; f < COUNT(files); f++) {
        spz_reading *reading = NULL;
        const char *path = shared_file(files[f]);
        if (!path)
            return;
        CU_ASSERT_EQUAL_FATAL(spz_reading_make(path, NULL, 0, SPZ_TO_PASSAGES, NULL, &reading), SPZ_OK);
        const spz_findings *findings = spz_reading_at(reading, 0).findings;
        for (size_t i = 0; i < spz_findings_count(findings); i++) {
            const spz_passage *p = spz_findings_at(findings, i);
            if (p->strength >= 0.5 && spz_kind_is_antiphony(p->kind) && p->kind != SPZ_SPLIT_LINE)
                CU_ASSERT_TRUE(tells_what_is_listed(p));
        }
        spz_reading_free(reading);
    }
}

/* Of whom each entry is, in the order of the list: "Vc 5.1 Va 7.1". */
static const char *listed(const Rehearsal *r, const spz_passage *p)
{
    static char text[400];
    text[0] = 0;
    for (size_t i = 0; i < p->entry_count; i++) {
        const spz_entry *e = &p->entries[i];
        char item[64];
        snprintf(item, sizeof item, "%s%s %zu.%g", i ? " " : "", spz_sections_group(r->sections, e->leader)->name, e->bar, (double)e->beat.over / (double)e->beat.under);
        strncat(text, item, sizeof text - strlen(text) - 1);
    }
    return text;
}

static void a_subject_enters_where_it_begins_and_not_where_its_accompaniment_does(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    r:h <mf> g5:q. a5:e | bb5:q a5:e g5 f#5:q d5 | g5:h r:e d5 r d5 | r c5 r c5 r d5 r d5 | r:e d5 r c5 r bb4 r bb4 | r a4 r a4 r bb4 r bb4 | g4:w\n"
                           "Violin II:   R*2 | r:e bb4 r bb4 r bb4 r bb4 | r a4 r a4 r bb4 r bb4 | r:e bb4 r a4 r g4 r g4 | r f#4 r f#4 r g4 r g4 | d4:w\n"
                           "Viola:       R*2 | r:h <mf> g4:q. a4:e | bb4:q a4:e g4 f#4:q d4 | g4:h r | R | bb3:w\n"
                           "Violoncello: R*2 | g3:h r | R | r:h <mf> g3:q. a3:e | bb3:q a3:e g3 f#3:q d3 | g3:w\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Va");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 0.3 Va 2.3 Vc 4.3");
    rehearsal_end(&r);
}

static void a_chain_is_told_from_its_figure_and_not_from_two_notes_before_it(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | f5:w | e5:h. d5:q | c5:w | R*2 | r:q a4 a5 g5 | g5:h f5 | e5:w | R | c5:w\n"
                           "Violin II:   R | a4:h. g4:q | f4:w | a4:h. g4:q | f4:q r:h. | r:q g4 g5 f5 | f5:h e5 | d5:w | R*2 | g4:w\n"
                           "Viola:       R | c4:w~ | c4 | c4~ | c4:q r:h. | R*2 | r:q e4 e5 d5 | d5:h c5 | R | e4:w\n"
                           "Violoncello: R | f2:w~ | f2 | f2~ | f2:q d3 d4 c4 | c4:h b3 | a3:w | g3:h r | R*2 | c3:w\n");
    const spz_passage *p = NULL;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++)
        if (spz_findings_at(r.findings, i)->strength >= 0.5)
            p = !p || spz_findings_at(r.findings, i)->entry_count > p->entry_count ? spz_findings_at(r.findings, i) : p;
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vc 4.2 Vn II 5.2 Vn I 6.2 Va 7.2");
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "second violin's six-note figure, answered a bar later by the first violin a second higher"));
    CU_ASSERT_STRING_EQUAL(order_of_entry(&r, p), "Vc - Vn II - Vn I - Va");
    rehearsal_end(&r);
}

static void a_running_line_is_not_called_again_from_its_middle(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    r:e d5:s c5 d5:e g5:s f5 g5 a5 b5 c6 d6 c6 b5 a5 | g5:q r r:h | r:e e5:s d5 e5:e a5:s g5 a5 b5 c6 d6 e6 d6 c6 b5 | a5:q r r:h | c5:w\n"
                           "Violin II:   R*4 | c5:w\n"
                           "Viola:       R | r:e d4:s c4 d4:e g4:s f4 g4 a4 b4 c5 d5 c5 b4 a4 | g4:q r r:h | r:e e4:s d4 e4:e a4:s g4 a4 b4 c5 d5 e5 d5 c5 b4 | g4:w\n"
                           "Violoncello: c3:w~ | c3~ | c3~ | c3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Va");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 0.1.5 Va 1.1.5 Vn I 2.1.5 Va 3.1.5");
    rehearsal_end(&r);
}

static void who_takes_the_gesture_up_between_call_and_answer_is_listed(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | r:q g5:e a5 b5:q. c6:e | d6:h b5 | R*3 | c5:w\n"
                           "Violin II:   R*3 | r:q d4:e e4 f#4:q. g4:e | a4:h f#4 | R | c4:w\n"
                           "Viola:       R*2 | r:q g3:e a3 b3:q. c4:e | d4:h b3 | R*2 | g3:w\n"
                           "Violoncello: R*4 | r:q g2:e a2 b2:q. c3:e | d3:h b2 | c3:w\n");
    const spz_passage *p = NULL;
    for (size_t i = 0; i < spz_findings_count(r.findings); i++)
        p = !p || spz_findings_at(r.findings, i)->entry_count > p->entry_count ? spz_findings_at(r.findings, i) : p;
    CU_ASSERT_PTR_NOT_NULL_FATAL(p);
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 1.2 Va 2.2 Vn II 3.2 Vc 4.2");
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "answered two bars later by the second violin more than an octave lower"));
    CU_ASSERT_STRING_EQUAL(order_of_entry(&r, p), "Vn I - Va - Vn II - Vc");
    rehearsal_end(&r);
}

static void a_note_held_into_the_gesture_begins_it_each_time_however_long_it_is_held(void)
{
    Rehearsal r = rehearse("time: 2/4  key: 0  tempo: q=100\n"
                           "part: Violin I\npart: Violin II\npart: Viola\npart: Violoncello; clef bass\n"
                           "Violin I:    R*2 | r:q <f> a5:q~ | a5:e b5:e a5 e5 | R | b5:h~ | b5:e c6:e b5 f5 | R | c5:h\n"
                           "Violin II:   R*8 | c4:h\n"
                           "Viola:       c4:h~ | c4~ | c4~ | c4~ | c4~ | c4~ | c4~ | c4~ | c4\n"
                           "Violoncello: R | r:q <f> c4:q~ | c4:e d4:e c4 f3 | R | d4:h~ | d4:e e4:e d4 g3 | R*2 | c3:h\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vc");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vc 1.2 Vn I 2.2 Vc 4.1 Vn I 5.1");
    rehearsal_end(&r);
}

static void a_dialogue_that_goes_on_with_another_figure_lists_both(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | c6:q a5:e f#5 c#5:q r | R | b5:q f#5:e d5 b4:q r | R | b5:q g#5:e e5 d5:q r | R | c5:e d5 e5 f5 e5:q r | R | c5:w\n"
                           "Violin II:   R*2 | c6:q a5:e f#5 c#5:q r | R | b5:q f#5:e d5 b4:q r | R | b5:q g#5:e e5 d5:q r | R | c5:e d5 e5 f5 e5:q r | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 1.1 Vn II 2.1 Vn I 3.1 Vn II 4.1 Vn I 5.1 Vn II 6.1 Vn I 7.1 Vn II 8.1");
    rehearsal_end(&r);
}

/* Call and answer share what comes after their first notes, which are of another length and bound to it by slurs. */
static void an_entry_with_a_head_of_its_own_begins_with_that(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | a5:q( g5:e f5 e5 d5) c5:q | r:h. a5:q | R | b5:q( a5:e g5 f5 e5) d5:q | R*2 | c5:w\n"
                           "Violin II:   R | R | r:e b4:e( g5:e f5 e5 d5) c5:q | R*2 | r:e c5:e( a5:e g5 f5 e5) d5:q | R | c5:w\n"
                           "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
                           "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 1.1 Vn II 2.1.5 Vn I 4.1 Vn II 5.1.5");
    rehearsal_end(&r);
}

static bool parts_are_exchanged(const char *music)
{
    Rehearsal r = rehearse(music);
    const spz_passage *p = passage_of(&r, "Vn I", "Va");
    bool exchanged = p->told.gesture.swapped;
    CU_ASSERT_EQUAL(strstr(told(&r, p), "; the two exchange parts: each takes over what the other had") != NULL, exchanged);
    rehearsal_end(&r);
    return exchanged;
}

static void who_take_over_what_the_other_had_exchange_their_parts(void)
{
    CU_ASSERT_TRUE(parts_are_exchanged(QUARTET "Violin I:    R | c6:q. d6:e e6:q g6 | f6:q e6 d6:h | g4:h e4:h | f4:h. d4:q | c5:w\n"
                                               "Violin II:   R*6\n"
                                               "Viola:       R | g4:h e4:h | f4:h. d4:q | c5:q. d5:e e5:q g5 | f5:q e5 d5:h | c4:w\n"
                                               "Violoncello: R*6\n"));
    CU_ASSERT_FALSE(parts_are_exchanged(QUARTET "Violin I:    R | c6:q. d6:e e6:q g6 | f6:q e6 d6:h | e4:w | d4:w | c5:w\n" /* a new ground under the answer */
                                                "Violin II:   R*6\n"
                                                "Viola:       R | g4:h e4:h | f4:h. d4:q | c5:q. d5:e e5:q g5 | f5:q e5 d5:h | c4:w\n"
                                                "Violoncello: R*6\n"));
    CU_ASSERT_FALSE(parts_are_exchanged(QUARTET "Violin I:    R | c6:q. d6:e e6:q g6 | f6:q e6 d6:h | R | R | c5:w\n" /* the other was silent */
                                                "Violin II:   R*6\n"
                                                "Viola:       R | R | R | c5:q. d5:e e5:q g5 | f5:q e5 d5:h | c4:w\n"
                                                "Violoncello: R*6\n"));
}

/* The firsts are busy under the seconds' first turn, and rest under all that follow. */
static void who_answers_may_have_begun_a_turn_before(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | e5:e f5 g5 a5 b5 c6 d6 b5 | c6:q r r:e c6:e( d6 b5) | g5:q r r:h | R | r:h r:e d6:e( e6 c6) | a5:q r r:h | R | c6:w\n"
                           "Violin II:   R | r:h r:e b4:e( c5 a4) | g4:q r r:h | r:h r:e c5:e( d5 b4) | g4:q r r:h | R | r:h r:e d5:e( e5 c5) | a4:q r r:h | e5:w\n"
                           "Viola:       c4:w~ | c4~ | c4~ | c4~ | c4 | d4~ | d4~ | d4 | g4\n"
                           "Violoncello: c3:w~ | c3~ | c3~ | c3~ | c3 | d3~ | d3~ | d3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn II 1.3.5 Vn I 2.3.5 Vn II 3.3.5 Vn I 5.3.5 Vn II 6.3.5");
    CU_ASSERT_PTR_NOT_NULL(strstr(told(&r, p), "second violin's four-note figure, answered a bar later by the first violin"));
    rehearsal_end(&r);
}

/* The violas run along in semiquavers of their own under the seconds' scales. */
static void who_runs_another_way_does_not_have_the_run(void)
{
    Rehearsal r = rehearse(QUARTET
                           "Violin I:    R | c5:s d5 e5 f5 g5 a5 b5 c6 d6:q r | R | d5:s e5 f#5 g5 a5 b5 c#6 d6 e6:q r | R | e5:s f#5 g#5 a5 b5 c#6 d#6 e6 f6:q r | R | c6:w\n"
                           "Violin II:   R*2 | c4:s d4 e4 f4 g4 a4 b4 c5 d5:q r | R | d4:s e4 f#4 g4 a4 b4 c#5 d5 e5:q r | R | e4:s f#4 g#4 a4 b4 c#5 d#5 e5 f5:q r | c5:w\n"
                           "Viola:       R*2 | g4:s e4 c4 e4 g4 f4 d4 e4 f4:q r | R | a4:s f#4 d4 f#4 a4 g4 e4 f#4 g4:q r | R | b4:s g#4 e4 g#4 b4 a4 f#4 g#4 a4:q r | e4:w\n"
                           "Violoncello: c3:w~ | c3~ | c3 | d3~ | d3 | e3~ | e3 | c3\n");
    const spz_passage *p = passage_of(&r, "Vn I", "Vn II");
    CU_ASSERT_STRING_EQUAL(listed(&r, p), "Vn I 1.1 Vn II 2.1 Vn I 3.1 Vn II 4.1 Vn I 5.1 Vn II 6.1");
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(who_runs_another_way_does_not_have_the_run),
    STATEMENT(who_answers_may_have_begun_a_turn_before),
    STATEMENT(a_gesture_begins_with_its_long_first_note_though_no_rest_precedes),
    STATEMENT(turns_are_told_one_by_one_though_the_caller_holds_a_note_under_each_answer),
    STATEMENT(the_word_passes_only_where_another_has_it),
    STATEMENT(who_repeats_a_note_under_a_gesture_does_not_have_it),
    STATEMENT(sections_that_enter_together_are_one_entry_and_one_link),
    STATEMENT(a_held_note_above_a_call_does_not_call),
    STATEMENT(whoever_leads_for_the_first_time_is_a_link_of_their_own),
    STATEMENT(a_call_held_under_its_answer_is_listed),
    STATEMENT(a_figure_is_called_once_though_the_answer_repeats_it),
    STATEMENT(the_sentence_tells_a_call_and_an_answer_that_are_listed),
    STATEMENT(a_side_is_measured_by_those_after_whom_it_is_named),
    STATEMENT(who_strikes_a_held_note_again_has_it_all_the_same),
    STATEMENT(a_subject_enters_where_it_begins_and_not_where_its_accompaniment_does),
    STATEMENT(a_chain_is_told_from_its_figure_and_not_from_two_notes_before_it),
    STATEMENT(a_running_line_is_not_called_again_from_its_middle),
    STATEMENT(who_takes_the_gesture_up_between_call_and_answer_is_listed),
    STATEMENT(a_note_held_into_the_gesture_begins_it_each_time_however_long_it_is_held),
    STATEMENT(a_dialogue_that_goes_on_with_another_figure_lists_both),
    STATEMENT(an_entry_with_a_head_of_its_own_begins_with_that),
    STATEMENT(who_take_over_what_the_other_had_exchange_their_parts),
};

void suite_entries(void);
void suite_entries(void)
{
    suite_of("entries", statements, COUNT(statements));
}
