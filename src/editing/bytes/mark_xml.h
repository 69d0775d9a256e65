/* mark_xml.h - a walk over the bytes of an XML file that says where each piece begins and ends, so that something can be put between
 * two pieces and every other byte stays as it was. It checks no more than it needs: the file has been read as a score before.
 * Works on UTF-8 and on every encoding that writes ASCII as ASCII. */
#ifndef EDITING_BYTES_MARK_XML_H
#define EDITING_BYTES_MARK_XML_H
#include <stdbool.h>
#include <stddef.h>

typedef enum XmlKind {
    XML_START, /* <note ...> */
    XML_EMPTY, /* <chord/> */
    XML_END,   /* </note> */
    XML_TEXT,  /* character data, references not resolved; CDATA without its fences */
    XML_OTHER, /* comment, processing instruction, DOCTYPE */
    XML_FINISHED,
    XML_BROKEN /* cut off */
} XmlKind;

typedef struct XmlScan {
    const char *text;
    size_t length, at;
} XmlScan;

typedef struct XmlPiece {
    XmlKind kind;
    size_t begin, end;  /* of the whole piece: text[begin] is its '<' */
    const char *inside; /* name of an element; what a text says */
    size_t inside_length;
} XmlPiece;

XmlPiece xml_next(XmlScan *scan);
bool xml_is(const XmlPiece *piece, const char *name); /* an element of that name */

/* Value of an attribute with the five named and all ASCII numbered references resolved, cut at size; NULL when absent. */
const char *xml_attribute(const XmlScan *scan, const XmlPiece *piece, const char *name, char *out, size_t size);
#endif
