/* Compressed scores (MusicXML 4.0, "Compressed .mxl files") and collections of scores (MusicXML opus). */
#include "support/scores/archive_text.h"
#include "support/memory.h"
#include "support/scores/score_text.h"
#include "support/suite.h"
#include <stdlib.h>
#include <string.h>

#define MUSIC(title, step) "<score-partwise><movement-title>" title "</movement-title><part-list>" LISTED(P1, "Viola") "</part-list>" PART(P1, BAR(1, DIVISIONS(1) NOTE(step, 4, 4, ""))) "</score-partwise>"

static spz_score *score_in(ArchiveText *archive)
{
    archive_text_close(archive);
    spz_score *score = score_of_bytes(archive->bytes, archive->size);
    archive_text_free(archive);
    return score;
}

static void reads_one_movement(ArchiveText *archive, const char *title)
{
    spz_score *score = score_in(archive);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_STRING_EQUAL(spz_movement_title(spz_score_movement(score, 0)), title);
    spz_score_free(score);
}

static void a_compressed_score_is_known_by_its_content(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    reads_one_movement(&archive, "Aria");
}

static void the_entry_that_states_the_media_type_may_stand_first(void)
{
    ArchiveText archive = {0};
    archive_text_add(&archive, "mimetype", "application/vnd.recordare.musicxml", 34, false);
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    reads_one_movement(&archive, "Aria");
}

static void a_score_stored_without_packing_is_read(void)
{
    ArchiveText archive = {0};
    const char *music = MUSIC("Aria", C);
    archive_text_add(&archive, "META-INF/container.xml", CONTAINER("a.xml"), strlen(CONTAINER("a.xml")), false);
    archive_text_add(&archive, "a.xml", music, strlen(music), false);
    reads_one_movement(&archive, "Aria");
}

static void the_container_says_which_file_is_the_score(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "a.xml", MUSIC("Wrong", C));
    archive_text_add_string(&archive, "META-INF/container.xml", "<container><rootfiles><rootfile full-path=\"a.pdf\" media-type=\"application/pdf\"/>"
        "<rootfile full-path=\"deep/b.musicxml\" media-type=\"application/vnd.recordare.musicxml+xml\"/></rootfiles></container>");
    archive_text_add_string(&archive, "deep/b.musicxml", MUSIC("Right", C));
    reads_one_movement(&archive, "Right");
}

static void a_collection_is_read_movement_by_movement(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("opus.xml"));
    archive_text_add_string(&archive, "opus.xml", "<opus xmlns:xlink=\"http://www.w3.org/1999/xlink\"><title>Suite</title><score xlink:href=\"one.xml\"/><score xlink:href=\"two.xml\"/></opus>");
    archive_text_add_string(&archive, "two.xml", MUSIC("Second", D));
    archive_text_add_string(&archive, "one.xml", MUSIC("First", C));
    spz_score *score = score_in(&archive);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_EQUAL_FATAL(spz_score_movement_count(score), 2);
    CU_ASSERT_STRING_EQUAL(spz_movement_title(spz_score_movement(score, 0)), "First");
    CU_ASSERT_STRING_EQUAL(spz_movement_title(spz_score_movement(score, 1)), "Second");
    CU_ASSERT_STRING_EQUAL(spz_movement_file(spz_score_movement(score, 1)), "test.musicxml:two.xml");
    spz_score_free(score);
}

static void is_refused(ArchiveText *archive, spz_status status, const char *message)
{
    CU_ASSERT_PTR_NULL(score_in(archive));
    CU_ASSERT_EQUAL(last_status(), status);
    CU_ASSERT_STRING_EQUAL(last_message(), message);
    CU_ASSERT_EQUAL(message_count(), 1);
}

static void reads_both_movements(ArchiveText *archive)
{
    spz_score *score = score_in(archive);
    CU_ASSERT_PTR_NOT_NULL_FATAL(score);
    CU_ASSERT_EQUAL_FATAL(spz_score_movement_count(score), 2);
    CU_ASSERT_STRING_EQUAL(spz_movement_title(spz_score_movement(score, 0)), "First");
    CU_ASSERT_STRING_EQUAL(spz_movement_title(spz_score_movement(score, 1)), "Second");
    spz_score_free(score);
}

static void a_link_counts_from_the_folder_of_its_collection(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("suite/opus.xml"));
    archive_text_add_string(&archive, "suite/opus.xml", "<opus xmlns:xlink=\"x\"><score xlink:href=\"./mvt%201.xml\"/><score xlink:href=\"../two.xml\"/></opus>");
    archive_text_add_string(&archive, "suite/mvt 1.xml", MUSIC("First", C));
    archive_text_add_string(&archive, "two.xml", MUSIC("Second", D));
    reads_both_movements(&archive);
}

static void a_link_that_leads_out_of_the_archive_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("opus.xml"));
    archive_text_add_string(&archive, "opus.xml", "<opus xmlns:xlink=\"x\"><score xlink:href=\"../one.xml\"/></opus>");
    archive_text_add_string(&archive, "one.xml", MUSIC("First", C));
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file says that its score is '../one.xml', but holds no such file");
}

static void a_collection_may_hold_and_name_collections(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("opus.xml"));
    archive_text_add_string(&archive, "opus.xml", "<opus xmlns:xlink=\"x\"><opus><title>Part</title><score xlink:href=\"one.xml\"/></opus><opus-link xlink:href=\"rest.xml\"/></opus>");
    archive_text_add_string(&archive, "rest.xml", "<opus xmlns:xlink=\"x\"><score xlink:href=\"two.xml\"/></opus>");
    archive_text_add_string(&archive, "one.xml", MUSIC("First", C));
    archive_text_add_string(&archive, "two.xml", MUSIC("Second", D));
    reads_both_movements(&archive);
}

static void a_collection_that_names_a_missing_score_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("opus.xml"));
    archive_text_add_string(&archive, "opus.xml", "<opus xmlns:xlink=\"x\"><score xlink:href=\"one.xml\"/></opus>");
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file says that its score is 'one.xml', but holds no such file");
}

static void an_archive_that_names_another_file_is_told_which_it_holds(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("wrong.xml"));
    archive_text_add_string(&archive, "score.xml", MUSIC("First", C));
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file says that its score is 'wrong.xml', but holds no such file; 'score.xml' in it may be meant: unpack that and give it by itself");
}

static void a_collection_that_names_itself_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("opus.xml"));
    archive_text_add_string(&archive, "opus.xml", "<opus xmlns:xlink=\"x\"><opus-link xlink:href=\"opus.xml\"/></opus>");
    is_refused(&archive, SPZ_OVER_LIMIT, "the collections in it name one another more than 8 deep");
}

static void an_archive_without_a_container_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file has no META-INF/container.xml, so it is no compressed score");
}

static void a_container_that_names_no_score_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", "<container><rootfiles/></container>");
    is_refused(&archive, SPZ_BAD_ARCHIVE, "META-INF/container.xml names no score");
}

static void a_container_with_entities_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", "<!DOCTYPE container [<!ENTITY e \"a.xml\">]>" CONTAINER("&e;"));
    is_refused(&archive, SPZ_BAD_ARCHIVE, "META-INF/container.xml defines text substitutions (XML entities), which are refused");
}

static void a_damaged_byte_is_noticed(void)
{
    ArchiveText archive = {0};
    const char *music = MUSIC("Aria", C);
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add(&archive, "a.xml", music, strlen(music), false);
    archive.bytes[archive.size - strlen(music) + (size_t)(strstr(music, "Aria") - music)] = 'O';
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file is damaged: its contents don't match their checksum");
}

static void an_archive_cut_off_anywhere_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    archive_text_close(&archive);
    for (size_t size = 4; size < archive.size; size++) {
        CU_ASSERT_PTR_NULL(score_of_bytes(archive.bytes, size));
        CU_ASSERT_EQUAL(message_count(), 1);
    }
    archive_text_free(&archive);
}

static void any_single_wrong_byte_ends_in_a_status(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    archive_text_close(&archive);
    for (size_t i = 0; i < archive.size; i++)
        for (int bit = 0; bit < 8; bit++) {
            archive.bytes[i] = (unsigned char)(archive.bytes[i] ^ (1 << bit));
            spz_score_free(score_of_bytes(archive.bytes, archive.size));
            archive.bytes[i] = (unsigned char)(archive.bytes[i] ^ (1 << bit));
        }
    archive_text_free(&archive);
}

/* Ten million bytes of empty elements pack to some ten thousand. */
static void a_zip_bomb_is_refused(void)
{
    ArchiveText archive = {0};
    size_t size = 10000000;
    char *empty = malloc(size);
    CU_ASSERT_PTR_NOT_NULL_FATAL(empty);
    for (size_t i = 0; i + 4 <= size; i += 4)
        memcpy(empty + i, "<x/>", 4);
    memcpy(empty, "<score-partwise>", 16);
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add(&archive, "a.xml", empty, size, true);
    free(empty);
    is_refused(&archive, SPZ_OVER_LIMIT, "the compressed file unpacks to hundreds of times its size, as no score does");
}

static void a_member_larger_than_its_directory_says_is_refused(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    archive.members[1].unpacked = 20;
    is_refused(&archive, SPZ_BAD_ARCHIVE, "the compressed file holds more than its directory says");
}

static void no_memory_at_any_point_is_a_status(void)
{
    ArchiveText archive = {0};
    archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
    archive_text_add_string(&archive, "a.xml", MUSIC("Aria", C));
    archive_text_close(&archive);
    spz_score *score = NULL;
    for (long n = 1; !score && n < 1000; n++) {
        memory_starve_after(n);
        score = score_of_bytes(archive.bytes, archive.size);
        memory_starve_after(0);
        CU_ASSERT_TRUE(score || last_status() == SPZ_NO_MEMORY);
    }
    CU_ASSERT_PTR_NOT_NULL(score);
    spz_score_free(score);
    archive_text_free(&archive);
}

static const struct Statement statements[] = {
    STATEMENT(a_compressed_score_is_known_by_its_content),
    STATEMENT(the_entry_that_states_the_media_type_may_stand_first),
    STATEMENT(a_score_stored_without_packing_is_read),
    STATEMENT(the_container_says_which_file_is_the_score),
    STATEMENT(a_collection_is_read_movement_by_movement),
    STATEMENT(a_link_counts_from_the_folder_of_its_collection),
    STATEMENT(a_link_that_leads_out_of_the_archive_is_refused),
    STATEMENT(a_collection_may_hold_and_name_collections),
    STATEMENT(a_collection_that_names_a_missing_score_is_refused),
    STATEMENT(an_archive_that_names_another_file_is_told_which_it_holds),
    STATEMENT(a_collection_that_names_itself_is_refused),
    STATEMENT(an_archive_without_a_container_is_refused),
    STATEMENT(a_container_that_names_no_score_is_refused),
    STATEMENT(a_container_with_entities_is_refused),
    STATEMENT(a_damaged_byte_is_noticed),
    STATEMENT(an_archive_cut_off_anywhere_is_refused),
    STATEMENT(any_single_wrong_byte_ends_in_a_status),
    STATEMENT(a_zip_bomb_is_refused),
    STATEMENT(a_member_larger_than_its_directory_says_is_refused),
    STATEMENT(no_memory_at_any_point_is_a_status),
};

void suite_reader_archive(void)
{
    suite_of("reader: compressed scores", statements, COUNT(statements));
}
