/* A marked score: what the librarian's sheet says stands in it, everything else as it was, and all of it can be taken out again. */
#include "editing/bytes/mark_encoding.h"
#include "editing/bytes/mark_zip.h"
#include "reader/files/archive.h"
#include "model/stream.h"
#include "support/memory.h"
#include "support/scores/sheet_music.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char dialogue[] =
    "title: Calls\ntime: 4/4  tempo: q=96\n"
    "Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w\n"
    "Violin II:   R*3 | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
    "Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4\n"
    "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n";

static char *mark(const char *path, bool compressed, size_t *length, size_t *marks)
{
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_score_mark(path, NULL, NULL, compressed, NULL, &document, marks), SPZ_OK);
    return text_of(document, length);
}

static char *unmark(const char *path, size_t *length, size_t *marks)
{
    spz_document *document = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_score_unmark(path, false, NULL, &document, marks), SPZ_OK);
    return text_of(document, length);
}

static void leader_and_answerer_are_told_of_each_other(void)
{
    size_t length, marks;
    SheetMusic music = sheet_music(dialogue);
    char *text = mark(music.path, false, &length, &marks);
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "lead, Vn II answers"));
    CU_ASSERT_PTR_NOT_NULL(strstr(text, "answer Vn I"));
    CU_ASSERT_EQUAL(count_of(text, "<bracket type=\"start\""), count_of(text, "<bracket type=\"stop\""));
    CU_ASSERT_EQUAL(count_of(text, " id=\"spezzato-mark-"), (int)marks);
    CU_ASSERT_TRUE(marks >= 4);
    free(text);
    sheet_music_end(&music);
}

static void marks_taken_out_give_the_score_as_it_was(void)
{
    size_t length, marks, taken, back_length;
    SheetMusic music = sheet_music(dialogue);
    char *text = mark(music.path, false, &length, &marks);
    SheetMusic marked = sheet_music_of_bytes(text, length);
    char *back = unmark(marked.path, &back_length, &taken);
    CU_ASSERT_EQUAL(taken, marks);
    CU_ASSERT_EQUAL_FATAL(back_length, music.length);
    CU_ASSERT_TRUE(memcmp(back, music.xml, back_length) == 0);
    free(back);
    free(text);
    sheet_music_end(&marked);
    sheet_music_end(&music);
}

static void marking_twice_is_marking_once(void)
{
    size_t first, second;
    SheetMusic music = sheet_music(dialogue);
    char *once = mark(music.path, false, &first, NULL);
    SheetMusic marked = sheet_music_of_bytes(once, first);
    char *twice = mark(marked.path, false, &second, NULL);
    CU_ASSERT_EQUAL_FATAL(first, second);
    CU_ASSERT_TRUE(memcmp(once, twice, first) == 0);
    free(once);
    free(twice);
    sheet_music_end(&marked);
    sheet_music_end(&music);
}

/* The score with every part's bars once more behind its final barline, numbered from the beginning again: two movements in one text. */
static char *twice_over(const char *xml)
{
    Buffer text;
    buffer_init(&text);
    for (const char *part = strstr(xml, "<part id"), *end; part; part = strstr(end, "<part id")) {
        const char *body = strchr(part, '>') + 1;
        end = strstr(body, "</part>");
        buffer_add(&text, xml, (size_t)(end - xml));
        buffer_add(&text, body, (size_t)(end - body));
        xml = end;
    }
    buffer_puts(&text, xml);
    return text.text;
}

static void every_movement_of_one_text_is_marked_and_freed_of_marks(void)
{
    size_t length, marks, taken, one;
    SheetMusic single = sheet_music(dialogue);
    char *both = twice_over(single.xml);
    SheetMusic music = sheet_music_of_bytes(both, strlen(both));
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(music.path, NULL, 0, SPZ_TO_SEATING, NULL, &music.reading), SPZ_OK);
    CU_ASSERT_EQUAL(spz_reading_count(music.reading), 2);
    free(mark(single.path, false, &length, &one));
    char *text = mark(music.path, false, &length, &marks);
    CU_ASSERT_EQUAL(marks, 2 * one);
    CU_ASSERT_EQUAL(count_of(text, "lead, Vn II answers"), 2);
    CU_ASSERT_EQUAL(count_of(text, " id=\"spezzato-mark-1\""), 1); /* an id stands once in a file */
    SheetMusic marked = sheet_music_of_bytes(text, length);
    char *back = unmark(marked.path, &length, &taken);
    CU_ASSERT_EQUAL(taken, marks);
    CU_ASSERT_TRUE(length == strlen(both) && memcmp(back, both, length) == 0);
    free(back);
    free(text);
    free(both);
    sheet_music_end(&marked);
    sheet_music_end(&music);
    sheet_music_end(&single);
}

static void a_compressed_score_holds_the_same_marks(void)
{
    size_t plain_length, packed_length, back_length, taken;
    SheetMusic music = sheet_music(dialogue);
    char *plain = mark(music.path, false, &plain_length, NULL), *packed = mark(music.path, true, &packed_length, NULL);
    SheetMusic archive = sheet_music_of_bytes(packed, packed_length);
    CU_ASSERT_TRUE(memcmp(packed, "PK\3\4", 4) == 0);
    CU_ASSERT_EQUAL(spz_reading_make(archive.path, NULL, 0, SPZ_TO_SEATING, NULL, &archive.reading), SPZ_OK);
    char *back = unmark(archive.path, &back_length, &taken);
    CU_ASSERT_EQUAL(taken, (size_t)count_of(plain, "spezzato-mark-"));
    CU_ASSERT_TRUE(back_length == music.length && memcmp(back, music.xml, back_length) == 0);
    free(back);
    free(plain);
    free(packed);
    sheet_music_end(&archive);
    sheet_music_end(&music);
}

static void utf16_stays_utf16(void)
{
    size_t length, marks, taken, back_length;
    Buffer wide;
    SheetMusic music = sheet_music(dialogue);
    const char *encoding = strstr(music.xml, "UTF-8");
    CU_ASSERT_PTR_NOT_NULL_FATAL(encoding);
    buffer_init(&wide);
    encoding_close(ENCODING_UTF16_LITTLE, "\xef\xbb\xbf", 3, &wide);
    encoding_close(ENCODING_UTF16_LITTLE, music.xml, (size_t)(encoding - music.xml), &wide);
    encoding_close(ENCODING_UTF16_LITTLE, "UTF-16", 6, &wide);
    encoding_close(ENCODING_UTF16_LITTLE, encoding + 5, strlen(encoding + 5), &wide);
    SheetMusic in_utf16 = sheet_music_of_bytes(wide.text, wide.length);
    char *text = mark(in_utf16.path, false, &length, &marks);
    CU_ASSERT_TRUE(marks >= 4);
    CU_ASSERT_TRUE(memcmp(text, "\xff\xfe<\0", 4) == 0);
    SheetMusic marked = sheet_music_of_bytes(text, length);
    char *back = unmark(marked.path, &back_length, &taken);
    CU_ASSERT_EQUAL(taken, marks);
    CU_ASSERT_TRUE(back_length == wide.length && memcmp(back, wide.text, back_length) == 0);
    free(back);
    free(text);
    buffer_free(&wide);
    sheet_music_end(&marked);
    sheet_music_end(&in_utf16);
    sheet_music_end(&music);
}

static void a_score_that_divides_needs_no_second_div(void)
{
    size_t length;
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I:  c5:w | c5 | c5 | c5 | c5 | c5 | c5 | c5\n"
                                   "Violin II: c5:w | c5 | c5 | c5 | c5 | c5 | c5 | c5\n"
                                   "Viola:     \"div.\" c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4"
                                   " | \"unis.\" c4:w | d4 | e4 | f4\n");
    char *text = mark(music.path, false, &length, NULL);
    CU_ASSERT_EQUAL(count_of(text, ">div."), 1);
    CU_ASSERT_EQUAL(count_of(text, ">unis.<"), 1);
    CU_ASSERT_EQUAL(count_of(text, ">outside and inside<"), 1);
    free(text);
    sheet_music_end(&music);
}

static void add_text(Zip *zip, const char *name, const char *text)
{
    zip_deflated(zip, name, strlen(name), text, strlen(text));
}

static const uint32_t cover_date = 0x5D5C6A20; /* some afternoon of 2026 */

/* Two scores, one of them named once more, and a picture in one file. */
static void write_collection(Buffer *out, const char *score)
{
    Zip zip;
    zip_begin(&zip, out);
    add_text(&zip, "META-INF/container.xml", "<container><rootfiles><rootfile full-path=\"all.xml\"/></rootfiles></container>");
    add_text(&zip, "all.xml", "<opus xmlns:xlink=\"http://www.w3.org/1999/xlink\"><score xlink:href=\"one.xml\"/><score xlink:href=\"two.xml\"/>"
                                "<score xlink:href=\"one.xml\"/></opus>");
    add_text(&zip, "one.xml", score);
    zip_packed(&zip, (ZipMember){.name = "cover.png", .name_length = 9, .checksum = 0x8BB98613, .packed = 4, .unpacked = 4, .date = cover_date},
               "\0\1\2\3");
    add_text(&zip, "two.xml", score);
    CU_ASSERT_TRUE_FATAL(zip_end(&zip));
}

static void every_score_of_a_collection_is_marked(void)
{
    size_t length, marks, one;
    Buffer collection;
    spz_document *document = NULL;
    Archive archive;
    SheetMusic music = sheet_music(dialogue);
    buffer_init(&collection);
    write_collection(&collection, music.xml);
    SheetMusic both = sheet_music_of_bytes(collection.text, collection.length);
    free(mark(music.path, false, &length, &one));
    char *bytes = mark(both.path, true, &length, &marks);
    CU_ASSERT_EQUAL(marks, 2 * one);
    CU_ASSERT_EQUAL_FATAL(archive_open(&archive, bytes, length), SPZ_OK);
    const ArchiveMember *cover = archive_find(&archive, "cover.png"), *score = archive_find(&archive, "two.xml");
    CU_ASSERT_TRUE(cover && cover->unpacked == 4 && cover->method == 0 && cover->date == cover_date && cover->checksum == 0x8BB98613);
    CU_ASSERT_PTR_NULL(archive_find(&archive, "mimetype")); /* it had none */
    CU_ASSERT_TRUE(archive.count == 5 && memcmp(archive.members[3].name, "cover.png", 9) == 0);
    CU_ASSERT_TRUE(score && score->unpacked > music.length);
    archive_close(&archive);
    CU_ASSERT_EQUAL(spz_score_mark(both.path, NULL, NULL, false, NULL, &document, NULL), SPZ_BAD_ARGUMENT); /* one plain file can't hold two */
    free(bytes);
    buffer_free(&collection);
    sheet_music_end(&both);
    sheet_music_end(&music);
}

static void an_unknown_seating_is_said_to_be_unknown(void)
{
    spz_sheet_options options = SPZ_SHEET_USUAL;
    spz_document *document = NULL;
    SheetMusic music = sheet_music(dialogue);
    options.arrangement = "all in a heap";
    CU_ASSERT_EQUAL(spz_score_mark(music.path, NULL, &options, false, NULL, &document, NULL), SPZ_BAD_ARGUMENT);
    CU_ASSERT_PTR_NULL(document);
    sheet_music_end(&music);
}

static void when_memory_ends_nothing_is_half_done(void)
{
    SheetMusic music = sheet_music(dialogue);
    spz_status status = SPZ_NO_MEMORY;
    long requests = 0;
    while (status == SPZ_NO_MEMORY && requests < 100000) {
        spz_document *document = NULL;
        memory_starve_after(++requests);
        status = spz_score_mark(music.path, NULL, NULL, true, NULL, &document, NULL);
        memory_starve_after(0);
        if (status == SPZ_NO_MEMORY)
            CU_ASSERT_PTR_NULL(document);
        spz_document_free(document);
    }
    CU_ASSERT_EQUAL(status, SPZ_OK);
    CU_ASSERT_TRUE(requests > 10);
    sheet_music_end(&music);
}

/* A call and its answer inside a longer one, and parallel motion around both: each part gets one bracket at a time, and no two texts at one place. */
static void a_part_has_one_mark_at_a_time(void)
{
    size_t length;
    SheetMusic music = sheet_music("title: Calls\ntime: 4/4  tempo: q=96\n"
        "Violin I:    g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w\n"
        "Violin II:   R | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | g5:e( a5 b5 c6) g5:q r | R | c5:w\n"
        "Viola:       e4:e( f4 g4 a4) e4:q r | e4:e( f4 g4 a4) e4:q r | c4:e( d4 e4 f4) c4:q r | c4:e( d4 e4 f4) c4:q r | e4:e( f4 g4 a4) e4:q r | e4:e( f4 g4 a4) e4:q r"
        " | c4:e( d4 e4 f4) c4:q r | c4:w\n"
        "Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3\n");
    spz_sheet_options all = SPZ_SHEET_USUAL;
    spz_document *document = NULL;
    all.strength = 0;
    CU_ASSERT_EQUAL_FATAL(spz_score_mark(music.path, NULL, &all, false, NULL, &document, NULL), SPZ_OK);
    char *text = text_of(document, &length);
    int most = 0, starts = 0;
    for (char *part = strstr(text, "<part "), *end; part; part = strstr(end, "<part ")) {
        int open = 0;
        end = strstr(part, "</part>");
        for (char *at = part; (at = strstr(at, " type=\"st")) != NULL && at < end; at += 9) {
            bool line = strncmp(at - 8, "<bracket", 8) == 0 || strncmp(at - 7, "<dashes", 7) == 0;
            starts += line && strncmp(at, " type=\"start", 12) == 0;
            open += !line ? 0 : strncmp(at, " type=\"start", 12) == 0 ? 1 : -1;
            most = open > most ? open : most;
        }
        CU_ASSERT_EQUAL(open, 0);
    }
    CU_ASSERT_TRUE(starts >= 2);
    CU_ASSERT_EQUAL(most, 1);
    free(text);
    sheet_music_end(&music);
}

static void where_a_division_ends_score_and_sheet_say_it(void)
{
    size_t length;
    SheetMusic music = sheet_music("time: 4/4  tempo: q=96\n"
                                   "Violin I:  c5:w | c5 | c5 | c5 | c5 | c5\nViolin II: c5:w | c5 | c5 | c5 | c5 | c5\n"
                                   "Viola: \"div.\" c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4 | c4:h d4 // e4:q f4 g4 a4"
                                   " | c4:w | d4\n");
    spz_sheet_options all = SPZ_SHEET_USUAL;
    spz_document *document = NULL;
    spz_reading *reading = NULL;
    all.strength = 0;
    CU_ASSERT_EQUAL_FATAL(spz_score_mark(music.path, NULL, &all, false, NULL, &document, NULL), SPZ_OK);
    char *text = text_of(document, &length);
    CU_ASSERT_EQUAL(count_of(text, ">unis.<"), 1);
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(music.path, NULL, 0, SPZ_TO_SEATING, NULL, &reading), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_sheet_parts((const spz_reading *const *)&reading, 1, NULL, &all, SPZ_AS_CSV, &document), SPZ_OK);
    char *sheet = text_of(document, &length);
    CU_ASSERT_EQUAL(count_of(sheet, ",unis.,"), 1);
    free(sheet);
    free(text);
    spz_reading_free(reading);
    sheet_music_end(&music);
}

void suite_mark_score(void)
{
    static const struct Statement statements[] = {
        STATEMENT(leader_and_answerer_are_told_of_each_other),
        STATEMENT(marks_taken_out_give_the_score_as_it_was),
        STATEMENT(marking_twice_is_marking_once),
        STATEMENT(every_movement_of_one_text_is_marked_and_freed_of_marks),
        STATEMENT(a_compressed_score_holds_the_same_marks),
        STATEMENT(utf16_stays_utf16),
        STATEMENT(a_score_that_divides_needs_no_second_div),
        STATEMENT(a_part_has_one_mark_at_a_time),
    STATEMENT(where_a_division_ends_score_and_sheet_say_it),
    STATEMENT(every_score_of_a_collection_is_marked),
        STATEMENT(an_unknown_seating_is_said_to_be_unknown),
        STATEMENT(when_memory_ends_nothing_is_half_done),
    };
    suite_of("marks: a whole score", statements, COUNT(statements));
}
