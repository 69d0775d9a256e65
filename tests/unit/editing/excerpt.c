/* A few bars cut out of a score are a score of their own, with the same notes in the same clef, key and time. */
#include "editing/excerpt.h"
#include "editing/excerpt_slurs.h"
#include "spezzato/score.h"
#include "support/notation/notation.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const char music[] = "title: A <cut>\ntime: 3/4  key: -3\n"
                            "Violin I:  c5:q d5 e5 | f5 g5 a5 | {key 2} {time 2/4} f#5 c#5 | d5:e e5 f#5 g5 | a5:h |]\n"
                            "Violin II: R | c5:q d5 e5 | d5 e5 | f#5:h | d5:h |]\n"
                            "Viola:     c4:h. | c4:h. | {clef treble} d5:h | a4:h | f#4:h |]\n"
                            "Cello:     c3:h. | g2:h. | d3:h | a2:h | d3:h |]\n";
static char path[64];

static spz_score *read_music(void)
{
    char fault[200] = "";
    size_t length = 0;
    spz_score *score = NULL;
    char *xml = notation_to_musicxml(music, &length, fault, sizeof fault);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    snprintf(path, sizeof path, "/tmp/spezzato-excerpt-XXXXXX");
    int file = mkstemp(path);
    CU_ASSERT_FATAL(file >= 0);
    CU_ASSERT_EQUAL_FATAL(write(file, xml, length), (ssize_t)length);
    close(file);
    free(xml);
    CU_ASSERT_EQUAL_FATAL(spz_score_read(path, NULL, &score), SPZ_OK);
    return score;
}

/* The notes of a part within bars, as 'midi@place/length' in the score's own ticks brought to 960 a crotchet. */
static void add_notes(const Movement *movement, size_t part, size_t first, size_t last, Buffer *out)
{
    const Part *from = &movement->parts[part];
    for (size_t i = 0; i < from->note_count; i++) {
        const Note *note = &from->notes[i];
        if (note->bar >= (int)first && note->bar <= (int)last)
            buffer_printf(out, " %d@%ld/%ld", note->midi, (long)((note->onset - movement->bars[first].onset) * 960 / movement->per_crotchet),
                          (long)(note->duration * 960 / movement->per_crotchet));
    }
}

static void cut_and_compare(const ExcerptPart *parts, size_t count, size_t first, size_t last)
{
    spz_score *score = read_music(), *cut = NULL;
    const Movement *whole = spz_score_movement(score, 0);
    ExcerptSource source;
    Buffer excerpt, before, after;
    buffer_init(&excerpt);
    CU_ASSERT_EQUAL_FATAL(excerpt_open(&source, path, whole), SPZ_OK);
    excerpt_cut(&source, parts, count, first, last, &excerpt);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(excerpt.text, excerpt.length, "excerpt", NULL, &cut), SPZ_OK);
    const Movement *piece = spz_score_movement(cut, 0);
    CU_ASSERT_EQUAL(piece->part_count, count);
    CU_ASSERT_EQUAL(piece->bar_count, last - first + 1);
    for (size_t i = 0; i < count; i++) {
        buffer_init(&before);
        buffer_init(&after);
        add_notes(whole, parts[i].part, first, last, &before);
        add_notes(piece, i, 0, last - first, &after);
        CU_ASSERT_STRING_EQUAL(after.text ? after.text : "", before.text ? before.text : "");
        CU_ASSERT_STRING_EQUAL(piece->parts[i].name, parts[i].name);
        buffer_free(&before);
        buffer_free(&after);
    }
    for (size_t bar = 0; bar < piece->bar_count; bar++) {
        CU_ASSERT_STRING_EQUAL(piece->bars[bar].number, whole->bars[first + bar].number);
        CU_ASSERT_EQUAL(piece->bars[bar].fifths, whole->bars[first + bar].fifths);
        CU_ASSERT_EQUAL(piece->bars[bar].nominal * whole->per_crotchet, whole->bars[first + bar].nominal * piece->per_crotchet);
    }
    buffer_free(&excerpt);
    excerpt_close(&source);
    spz_score_free(cut);
    spz_score_free(score);
    unlink(path);
}

static void bars_in_the_middle_keep_key_time_and_notes(void)
{
    static const ExcerptPart parts[] = {{0, "Vn I"}, {1, "Vn II"}};
    cut_and_compare(parts, 2, 1, 1);
    cut_and_compare(parts, 2, 1, 3);
    cut_and_compare(parts, 2, 3, 4);
}

static void a_piece_may_begin_with_the_change_itself(void)
{
    static const ExcerptPart parts[] = {{0, "Vn I"}, {2, "Va & more"}, {3, "Vc"}};
    cut_and_compare(parts, 3, 2, 4);
    cut_and_compare(parts, 3, 0, 4);
}

static void the_clef_in_force_goes_before_the_first_bar(void)
{
    static const ExcerptPart parts[] = {{2, "Va"}};
    spz_score *score = read_music();
    ExcerptSource source;
    Buffer excerpt;
    buffer_init(&excerpt);
    CU_ASSERT_EQUAL_FATAL(excerpt_open(&source, path, spz_score_movement(score, 0)), SPZ_OK);
    excerpt_cut(&source, parts, 1, 3, 3, &excerpt);
    CU_ASSERT(strstr(excerpt.text, "<sign>G</sign>") != NULL);
    CU_ASSERT(strstr(excerpt.text, "<sign>C</sign>") == NULL);
    buffer_free(&excerpt);
    excerpt_close(&source);
    spz_score_free(score);
    unlink(path);
}

static const char *blue_from_line(const void *context, size_t part, uint32_t line)
{
    const uint32_t *from = context;
    return part == 1 && line >= *from ? "#184f7e" : NULL;
}

/* Every note of the second bar of the seconds: the colours stand in the start tags, and the notes are the same. */
static void notes_are_cut_with_the_colours_that_are_asked_for(void)
{
    static const ExcerptPart parts[] = {{0, "Vn I"}, {1, "Vn II"}};
    spz_score *score = read_music(), *cut = NULL;
    const Movement *whole = spz_score_movement(score, 0);
    ExcerptSource source;
    Buffer excerpt;
    uint32_t from = 0;
    int coloured = 0;
    buffer_init(&excerpt);
    for (size_t i = whole->parts[1].note_count; i-- > 0;)
        from = whole->parts[1].notes[i].bar == 2 ? whole->parts[1].notes[i].line : from;
    CU_ASSERT_EQUAL_FATAL(excerpt_open(&source, path, whole), SPZ_OK);
    source.colour = blue_from_line;
    source.context = &from;
    excerpt_cut(&source, parts, 2, 1, 2, &excerpt);
    for (const char *at = excerpt.text; (at = strstr(at, "<note color=\"#184f7e\"")) != NULL; at++)
        coloured++;
    CU_ASSERT_EQUAL(coloured, 2);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(excerpt.text, excerpt.length, "excerpt", NULL, &cut), SPZ_OK);
    CU_ASSERT_EQUAL(spz_score_movement(cut, 0)->parts[1].note_count, 5);
    spz_score_free(cut);
    buffer_free(&excerpt);
    excerpt_close(&source);
    spz_score_free(score);
    unlink(path);
}

static void only_slurs_with_both_ends_in_the_bars_are_kept(void)
{
    static const struct { const char *bars, *kept; } cases[] = {
        {"<a/><slur type=\"start\"/><b/><slur type=\"stop\"/>", "<a/><slur type=\"start\"/><b/><slur type=\"stop\"/>"},
        {"<slur type=\"stop\"/><a/><slur type=\"start\"/><slur type=\"stop\"/>", "<a/><slur type=\"start\"/><slur type=\"stop\"/>"},
        {"<slur number=\"2\" type=\"start\"></slur><b/><slur number=\"1\" type=\"stop\"/>", "<b/>"},
        {"<slur type=\"continue\"/><slurs/>", "<slur type=\"continue\"/><slurs/>"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        Buffer bars, kept;
        buffer_init(&bars);
        buffer_init(&kept);
        buffer_puts(&bars, cases[i].bars);
        excerpt_add_whole_slurs(&bars, &kept);
        CU_ASSERT_STRING_EQUAL(kept.text, cases[i].kept);
        buffer_free(&bars);
        buffer_free(&kept);
    }
}

static void a_file_that_has_gone_or_changed_gives_no_piece(void)
{
    spz_score *score = read_music();
    ExcerptSource source;
    FILE *file = fopen(path, "w");
    CU_ASSERT_FATAL(file != NULL);
    fputs("<score-partwise><part-list/><part id=\"P1\"><measure number=\"1\"/></part></score-partwise>", file);
    fclose(file);
    CU_ASSERT_NOT_EQUAL(excerpt_open(&source, path, spz_score_movement(score, 0)), SPZ_OK);
    unlink(path);
    CU_ASSERT_NOT_EQUAL(excerpt_open(&source, path, spz_score_movement(score, 0)), SPZ_OK);
    spz_score_free(score);
}

void suite_excerpt(void)
{
    static const struct Statement statements[] = {
        STATEMENT(bars_in_the_middle_keep_key_time_and_notes),
        STATEMENT(a_piece_may_begin_with_the_change_itself),
        STATEMENT(the_clef_in_force_goes_before_the_first_bar),
    STATEMENT(notes_are_cut_with_the_colours_that_are_asked_for),
        STATEMENT(only_slurs_with_both_ends_in_the_bars_are_kept),
        STATEMENT(a_file_that_has_gone_or_changed_gives_no_piece),
    };
    suite_of("report: excerpts", statements, COUNT(statements));
}
