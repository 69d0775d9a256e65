/* The walk over the bytes of a file: what a tag is, and what only looks like one. */
#include "editing/bytes/mark_xml.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

/* The pieces in short: '<a' start, '</a' end, '<a/' empty, 'T' text with what it says, '#' others, '!' cut off. */
static const char *pieces(const char *text)
{
    static char out[400];
    static const char *const before[] = {"<", "<", "</", "T:", "#"};
    XmlScan scan = {text, strlen(text), 0};
    out[0] = '\0';
    for (;;) {
        XmlPiece piece = xml_next(&scan);
        size_t length = strlen(out);
        if (piece.kind == XML_FINISHED)
            return out;
        if (piece.kind == XML_BROKEN)
            return strcat(out, "!");
        snprintf(out + length, sizeof out - length, "%s%.*s%s ", before[piece.kind], (int)piece.inside_length,
                 piece.inside ? piece.inside : "", piece.kind == XML_EMPTY ? "/" : "");
    }
}

static void elements_and_text_are_told_apart(void)
{
    CU_ASSERT_STRING_EQUAL(pieces("<note id='n'><chord/>5</note >"), "<note <chord/ T:5 </note ");
}

static void a_tag_may_hold_the_sign_that_ends_it(void)
{
    CU_ASSERT_STRING_EQUAL(pieces("<words text=\"a > b\" other='\"/>'>x</words>"), "<words T:x </words ");
}

static void comments_and_instructions_hold_no_elements(void)
{
    CU_ASSERT_STRING_EQUAL(pieces("<?xml version=\"1.0\"?><!-- <note> --><a/><?x <b> ?>"), "# # <a/ # ");
}

static void fenced_text_is_text(void)
{
    CU_ASSERT_STRING_EQUAL(pieces("<a><![CDATA[<b> ]] >]]></a>"), "<a T:<b> ]] > </a ");
}

static void a_doctype_ends_behind_its_own_declarations(void)
{
    CU_ASSERT_STRING_EQUAL(pieces("<!DOCTYPE a PUBLIC \">\" 'x' [<!-- ]> ' --> <?p ]> ?> <!ELEMENT a (b)> ]><a/>"), "# <a/ ");
}

static void what_is_cut_off_is_said_to_be(void)
{
    static const char *const cut[] = {"<a", "<a b='", "<!-- a", "<![CDATA[ a ]]", "<!DOCTYPE a [", "<?xml ", "<", "</a"};
    for (size_t i = 0; i < COUNT(cut); i++) {
        XmlScan scan = {cut[i], strlen(cut[i]), 0};
        CU_ASSERT_EQUAL(xml_next(&scan).kind, XML_BROKEN);
    }
}

static const char *value(const char *tag, const char *name)
{
    static char out[32];
    XmlScan scan = {tag, strlen(tag), 0};
    XmlPiece piece = xml_next(&scan);
    return xml_attribute(&scan, &piece, name, out, sizeof out);
}

static void attributes_are_found_by_their_whole_names(void)
{
    CU_ASSERT_STRING_EQUAL(value("<part xid='1' id = \"P1\" id2='3'/>", "id"), "P1");
    CU_ASSERT_PTR_NULL(value("<part xid='1' ident='2'>", "id"));
    CU_ASSERT_STRING_EQUAL(value("<part id=''>", "id"), "");
}

static void references_in_attributes_are_resolved(void)
{
    CU_ASSERT_STRING_EQUAL(value("<part id='a&amp;b&lt;&#65;&#x42;'>", "id"), "a&b<AB");
    CU_ASSERT_STRING_EQUAL(value("<part id='&unknown;'>", "id"), "&unknown;");
}

void suite_mark_xml(void)
{
    static const struct Statement statements[] = {
        STATEMENT(elements_and_text_are_told_apart),
        STATEMENT(a_tag_may_hold_the_sign_that_ends_it),
        STATEMENT(comments_and_instructions_hold_no_elements),
        STATEMENT(fenced_text_is_text),
        STATEMENT(a_doctype_ends_behind_its_own_declarations),
        STATEMENT(what_is_cut_off_is_said_to_be),
        STATEMENT(attributes_are_found_by_their_whole_names),
        STATEMENT(references_in_attributes_are_resolved),
    };
    suite_of("marks: bytes of a file", statements, COUNT(statements));
}
