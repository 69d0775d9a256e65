/* Archives that are written can be read: the directory and each member, by the reader's own unpacking with its checks. */
#include "editing/bytes/mark_zip.h"
#include "reader/files/archive.h"
#include "support/suite.h"
#include <string.h>

static bool member_is(const Archive *archive, const char *name, const char *text)
{
    char got[4000];
    int length = 0, more;
    ArchiveStream stream;
    const ArchiveMember *member = archive_find(archive, name);
    if (!member || archive_stream_open(&stream, archive, member) != SPZ_OK)
        return false;
    while ((more = archive_stream_read(&stream, got + length, (int)sizeof got - length)) > 0)
        length += more;
    archive_stream_close(&stream);
    return more == 0 && (size_t)length == strlen(text) && memcmp(got, text, (size_t)length) == 0;
}

static const char long_text[] = "la la la la la la la la la la la la la la la la la la la la la la la la la la la la la la la la";

static void write_three(Buffer *out)
{
    Zip zip;
    zip_begin(&zip, out);
    zip_stored(&zip, "mimetype", 8, "application/x", 13);
    zip_deflated(&zip, "a/score.xml", 11, long_text, strlen(long_text));
    zip_deflated(&zip, "B\xc3\xa4sse.xml", 10, "", 0);
    CU_ASSERT_TRUE_FATAL(zip_end(&zip));
}

static void members_come_back_as_they_went_in(void)
{
    Buffer out;
    Archive archive;
    buffer_init(&out);
    write_three(&out);
    CU_ASSERT_EQUAL_FATAL(archive_open(&archive, out.text, out.length), SPZ_OK);
    CU_ASSERT_EQUAL(archive.count, 3);
    CU_ASSERT_TRUE(member_is(&archive, "mimetype", "application/x"));
    CU_ASSERT_TRUE(member_is(&archive, "a/score.xml", long_text));
    CU_ASSERT_TRUE(member_is(&archive, "B\xc3\xa4sse.xml", ""));
    CU_ASSERT_TRUE(archive_find(&archive, "a/score.xml")->packed < strlen(long_text));
    archive_close(&archive);
    buffer_free(&out);
}

static void the_first_member_can_be_read_by_looking_at_the_bytes(void)
{
    Buffer out;
    buffer_init(&out);
    write_three(&out);
    CU_ASSERT_TRUE(memcmp(out.text + 30, "mimetypeapplication/x", 21) == 0); /* stored and without an extra field, as MusicXML 4.0 advises */
    buffer_free(&out);
}

static void the_same_contents_give_the_same_bytes(void)
{
    Buffer one, two;
    buffer_init(&one);
    buffer_init(&two);
    write_three(&one);
    write_three(&two);
    CU_ASSERT_EQUAL_FATAL(one.length, two.length);
    CU_ASSERT_TRUE(memcmp(one.text, two.text, one.length) == 0);
    buffer_free(&one);
    buffer_free(&two);
}

void suite_mark_zip(void)
{
    static const struct Statement statements[] = {
        STATEMENT(members_come_back_as_they_went_in),
        STATEMENT(the_first_member_can_be_read_by_looking_at_the_bytes),
        STATEMENT(the_same_contents_give_the_same_bytes),
    };
    suite_of("marks: archives", statements, COUNT(statements));
}
