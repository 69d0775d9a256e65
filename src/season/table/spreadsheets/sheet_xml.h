/* sheet_xml.h - the XML of a spreadsheet's member, element by element (libxml2's reader). Names are without their prefixes. */
#ifndef SEASON_TABLE_SHEET_XML_H
#define SEASON_TABLE_SHEET_XML_H
#include "support/buffer.h"
#include <stdbool.h>

typedef struct SheetXml {
    void *reader; /* libxml2's */
    Buffer value; /* of the attribute last asked for */
    bool failed;
} SheetXml;

typedef enum SheetPiece { SHEET_XML_START, SHEET_XML_END, SHEET_XML_TEXT, SHEET_XML_OVER } SheetPiece;

void sheet_xml_open(SheetXml *xml, const Buffer *text);
/* The next piece; an empty element gives its start alone, sheet_xml_empty tells it. SHEET_XML_OVER at the end, and where it is not well formed (`failed`). */
SheetPiece sheet_xml_next(SheetXml *xml);
bool sheet_xml_is(const SheetXml *xml, const char *name);
bool sheet_xml_empty(const SheetXml *xml);
const char *sheet_xml_text(const SheetXml *xml);
/* Of the element at hand; NULL where it has none. Lives until the next question. */
const char *sheet_xml_attribute(SheetXml *xml, const char *name);
long sheet_xml_number(SheetXml *xml, const char *name, long usual);
/* Passes over all that is within the element that was just opened. */
void sheet_xml_skip(SheetXml *xml);
void sheet_xml_close(SheetXml *xml);
#endif
