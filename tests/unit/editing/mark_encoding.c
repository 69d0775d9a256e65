/* Files in every usual encoding come back byte for byte. */
#include "editing/bytes/mark_encoding.h"
#include "support/suite.h"
#include <string.h>

static bool comes_back(Encoding encoding, const char *bytes, size_t length, const char *text)
{
    Buffer open, closed;
    buffer_init(&open);
    buffer_init(&closed);
    encoding_open(encoding, bytes, length, &open);
    bool right = !text || (open.length == strlen(text) && memcmp(open.text, text, open.length) == 0);
    encoding_close(encoding, open.text, open.length, &closed);
    right = right && closed.length == length && memcmp(closed.text, bytes, length) == 0;
    buffer_free(&open);
    buffer_free(&closed);
    return right;
}

static void utf8_is_left_alone(void)
{
    static const char text[] = "<?xml version='1.0'?><a>B\xc3\xa4sse</a>";
    CU_ASSERT_EQUAL(encoding_of(text, strlen(text)), ENCODING_ASCII_LIKE);
    CU_ASSERT_TRUE(comes_back(ENCODING_ASCII_LIKE, text, strlen(text), text));
}

static void one_byte_encodings_are_left_alone(void)
{
    static const char text[] = "<?xml version=\"1.0\" encoding='iso-8859-1'?><a>B\xe4sse</a>";
    CU_ASSERT_EQUAL(encoding_of(text, strlen(text)), ENCODING_ASCII_LIKE);
    CU_ASSERT_TRUE(comes_back(ENCODING_ASCII_LIKE, text, strlen(text), text));
}

static void utf16_is_opened_and_closed_again(void)
{
    /* 'aä€' and the G clef U+1D11E; Unicode Standard, table 3-5, for the pair */
    static const char little[] = "\xff\xfe<\0a\0\xe4\0\xac\x20\x34\xd8\x1e\xdd";
    static const char big[] = "\xfe\xff\0<\0a\0\xe4\x20\xac\xd8\x34\xdd\x1e";
    static const char text[] = "\xef\xbb\xbf<a\xc3\xa4\xe2\x82\xac\xf0\x9d\x84\x9e";
    CU_ASSERT_EQUAL(encoding_of(little, 14), ENCODING_UTF16_LITTLE);
    CU_ASSERT_EQUAL(encoding_of(big, 14), ENCODING_UTF16_BIG);
    CU_ASSERT_TRUE(comes_back(ENCODING_UTF16_LITTLE, little, 14, text));
    CU_ASSERT_TRUE(comes_back(ENCODING_UTF16_BIG, big, 14, text));
    CU_ASSERT_EQUAL(encoding_of("<\0?\0", 4), ENCODING_UTF16_LITTLE);
    CU_ASSERT_EQUAL(encoding_of("\0<\0?", 4), ENCODING_UTF16_BIG);
}

static void half_a_pair_comes_back_as_it_was(void)
{
    CU_ASSERT_TRUE(comes_back(ENCODING_UTF16_LITTLE, "\x34\xd8\x41\0\x1e\xdd", 6, NULL));
}

static void encodings_that_dont_write_ascii_are_known(void)
{
    static const char jis[] = "<?xml version='1.0' encoding='ISO-2022-JP'?><a/>";
    CU_ASSERT_EQUAL(encoding_of("\xff\xfe\0\0<\0\0\0", 8), ENCODING_OTHER); /* UTF-32 */
    CU_ASSERT_EQUAL(encoding_of("\0\0\xfe\xff\0\0\0<", 8), ENCODING_OTHER);
    CU_ASSERT_EQUAL(encoding_of(jis, strlen(jis)), ENCODING_OTHER);
    CU_ASSERT_EQUAL(encoding_of("\xff\xfe<\0a", 5), ENCODING_OTHER); /* half a character at the end */
}

void suite_mark_encoding(void)
{
    static const struct Statement statements[] = {
        STATEMENT(utf8_is_left_alone),
        STATEMENT(one_byte_encodings_are_left_alone),
        STATEMENT(utf16_is_opened_and_closed_again),
        STATEMENT(half_a_pair_comes_back_as_it_was),
        STATEMENT(encodings_that_dont_write_ascii_are_known),
    };
    suite_of("marks: encodings", statements, COUNT(statements));
}
