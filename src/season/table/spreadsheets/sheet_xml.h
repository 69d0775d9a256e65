/* sheet_xml.h - the XML of a spreadsheet's member, element by element (libxml2's reader). Names are without their prefixes. */
#ifndef SEASON_TABLE_SHEET_XML_H
#define SEASON_TABLE_SHEET_XML_H
#include "spezzato/status.h"
#include "support/buffer.h"
#include <stdbool.h>

typedef struct SheetXml {
    void *reader; /* libxml2's */
    Buffer value; /* of the attribute last asked for */
    spz_status status; /* SPZ_NOT_XML, SPZ_NO_MEMORY: nothing more comes, and what came may lack something */
} SheetXml;

typedef enum SheetPiece { SHEET_XML_START, SHEET_XML_END, SHEET_XML_TEXT, SHEET_XML_OVER } SheetPiece;

void sheet_xml_open(SheetXml *xml, const Buffer *text);
/* The next piece; an empty element gives its start alone, sheet_xml_empty tells it. SHEET_XML_OVER at the end, and where it is not well formed (`status`). */
SheetPiece sheet_xml_next(SheetXml *xml);
bool sheet_xml_is(SheetXml *xml, const char *name);
bool sheet_xml_empty(const SheetXml *xml);
const char *sheet_xml_text(const SheetXml *xml);
/* Of the element at hand; NULL where it has none. Lives until the next question. */
const char *sheet_xml_attribute(SheetXml *xml, const char *name);
long sheet_xml_number(SheetXml *xml, const char *name, long usual);
/* Passes over all that is within the element that was just opened. */
void sheet_xml_skip(SheetXml *xml);
/* How it went so far; to be asked before it is closed. */
spz_status sheet_xml_status(const SheetXml *xml);
void sheet_xml_close(SheetXml *xml);
#endif
