/* Markup: well formed whatever a score holds, and a failure that can't be hidden. */
#include "writing/markup.h"
#include "support/memory.h"
#include "support/suite.h"
#include <stdlib.h>
#include <string.h>

typedef void (*Writes)(Markup *html);

/* What is written, or NULL where it failed; to be freed. */
static char *written(Writes writes)
{
    Buffer out;
    Markup html;
    buffer_init(&out);
    markup_begin(&html, &out);
    writes(&html);
    markup_end(&html);
    char *text = out.failed ? NULL : strdup(out.text ? out.text : "");
    buffer_free(&out);
    return text;
}

static void writes_text(Writes writes, const char *expected)
{
    char *text = written(writes);
    CU_ASSERT_PTR_NOT_NULL_FATAL(text);
    CU_ASSERT_STRING_EQUAL(text, expected);
    free(text);
}

static void fails(Writes writes)
{
    char *text = written(writes);
    CU_ASSERT_PTR_NULL(text);
    free(text);
}

static void a_page(Markup *html)
{
    markup_open_class(html, "p", "small");
    markup_put_number(html, "data-strength", 0.5, 2);
    markup_words(html, "Bars ");
    markup_format(html, "%d-%d", 7, 9);
    markup_open(html, "br");
    markup_close_void(html);
    markup_element(html, "b", NULL, "");
    markup_close(html);
}

static void every_element_is_closed(void)
{
    writes_text(a_page, "<p class=\"small\" data-strength=\"0.5\">Bars 7-9<br/><b></b></p>");
}

static void signs(Markup *html)
{
    markup_open(html, "p");
    markup_put(html, "title", "\"<&>'");
    markup_words(html, "</p><script>\"&amp;");
    markup_close(html);
}

static void a_title_can_not_leave_its_element(void)
{
    writes_text(signs, "<p title=\"&quot;&lt;&amp;&gt;'\">&lt;/p&gt;&lt;script&gt;&quot;&amp;amp;</p>");
}

/* Bidirectional controls of Unicode Standard Annex 9: the embeddings and overrides U+202A to U+202E, the isolates U+2066 to U+2069, the marks U+200E,
 * U+200F and U+061C; a byte that is no UTF-8, a zero width joiner that may stay, controls, and U+FFFE, which is no character of XML. */
static void odd_characters(Markup *html)
{
    markup_open(html, "p");
    markup_put(html, "title", "a\xe2\x80\xaa\xe2\x80\xab\xe2\x80\xac\xe2\x80\xad\xe2\x80\xae" "b\xe2\x81\xa6\xe2\x81\xa7\xe2\x81\xa8\xe2\x81\xa9\nc");
    markup_words(html, "\xe2\x80\x8e\xe2\x80\x8f\xd8\x9c" "d\xff" "e\x01\x7f\xc2\x9b" "f\xef\xbf\xbe" "g\xc2\x85h");
    markup_close(html);
}

static void nothing_turns_the_direction_of_writing(void)
{
    writes_text(odd_characters, "<p title=\"ab c\">d\xef\xbf\xbd" "ef\xef\xbf\xbdg h</p>");
}

static void accents(Markup *html)
{
    html->ascii = true;
    markup_element(html, "words", NULL, "B\xc3\xa4sse \xf0\x9d\x84\x9e");
}

static void a_file_of_any_encoding_gets_ascii(void)
{
    writes_text(accents, "<words>B&#228;sse &#119070;</words>");
}

static void left_open(Markup *html)
{
    markup_open(html, "p");
    markup_open(html, "b");
    markup_close(html);
}

static void closed_twice(Markup *html)
{
    markup_element(html, "p", NULL, "x");
    markup_close(html);
}

static void attribute_too_late(Markup *html)
{
    markup_open(html, "p");
    markup_words(html, "x");
    markup_put(html, "class", "small");
    markup_close(html);
}

static void void_with_words(Markup *html)
{
    markup_open(html, "br");
    markup_words(html, "x");
    markup_close_void(html);
}

static void too_deep(Markup *html)
{
    for (int i = 0; i <= MARKUP_DEEPEST; i++)
        markup_open(html, "i");
    for (int i = 0; i <= MARKUP_DEEPEST; i++)
        markup_close(html);
}

static void what_is_not_well_formed_never_appears(void)
{
    fails(left_open);
    fails(closed_twice);
    fails(attribute_too_late);
    fails(void_with_words);
    fails(too_deep);
}

/* Every request for memory that fails shows in the buffer: never another page. */
static void a_page_without_memory_is_none(void)
{
    char *whole = written(a_page), *text = NULL;
    CU_ASSERT_PTR_NOT_NULL_FATAL(whole);
    long request = 0;
    for (; !text && request < 100; request++) {
        memory_starve_after(request + 1);
        text = written(a_page);
        memory_starve_after(0);
    }
    CU_ASSERT_TRUE(request > 1);
    CU_ASSERT_PTR_NOT_NULL_FATAL(text);
    CU_ASSERT_STRING_EQUAL(text, whole);
    free(text);
    free(whole);
}

static void address_is(const char *bytes, const char *expected)
{
    Buffer out;
    buffer_init(&out);
    markup_data_address(&out, "text/plain", bytes, strlen(bytes));
    CU_ASSERT_STRING_EQUAL(out.text, expected);
    buffer_free(&out);
}

static void a_data_address_is_in_base64(void) /* RFC 4648, section 10 */
{
    address_is("", "data:text/plain;base64,");
    address_is("f", "data:text/plain;base64,Zg==");
    address_is("fo", "data:text/plain;base64,Zm8=");
    address_is("foo", "data:text/plain;base64,Zm9v");
    address_is("foobar", "data:text/plain;base64,Zm9vYmFy");
}

static void page_of(Markup *html)
{
    PageHead head = {.language = "de", .title = "Der <Plan>", .style = "p { margin: 0; }\n", .script = "alert(1);\n"};
    markup_page_begin(html, &head);
    markup_page_end(html, &head);
}

/* The digest by `printf '\nalert(1);\n' | openssl dgst -sha256 -binary | base64`. */
static void a_page_runs_no_script_but_its_own(void)
{
    char *page = written(page_of);
    CU_ASSERT_PTR_NOT_NULL_FATAL(page);
    CU_ASSERT_PTR_NOT_NULL(strstr(page, "<html lang=\"de\"><head><meta charset=\"utf-8\"/>"));
    CU_ASSERT_PTR_NOT_NULL(strstr(page, "content=\"default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'sha256-L+t9q3v5LeakHkwTJJlqwHiLsxVtqG4eOt8NDvhN6eg='\""));
    CU_ASSERT_PTR_NOT_NULL(strstr(page, "<title>Der &lt;Plan&gt;</title><style>\np { margin: 0; }\n</style>"));
    CU_ASSERT_PTR_NOT_NULL(strstr(page, "<script>\nalert(1);\n</script></body></html>\n"));
    free(page);
}

void suite_markup(void);
void suite_markup(void)
{
    static const struct Statement statements[] = {
        STATEMENT(every_element_is_closed),
        STATEMENT(a_title_can_not_leave_its_element),
        STATEMENT(nothing_turns_the_direction_of_writing),
        STATEMENT(a_file_of_any_encoding_gets_ascii),
        STATEMENT(what_is_not_well_formed_never_appears),
        STATEMENT(a_page_without_memory_is_none),
        STATEMENT(a_data_address_is_in_base64),
        STATEMENT(a_page_runs_no_script_but_its_own),
    };
    suite_of("markup", statements, COUNT(statements));
}
