#include "season/table/spreadsheets/sheet_xml.h"
#include <libxml/xmlerror.h>
#include <libxml/xmlreader.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>

void sheet_xml_open(SheetXml *xml, const Buffer *text)
{
    int options = XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NOCDATA;
    bool readable = text->length && text->length < INT_MAX;
    buffer_init(&xml->value);
    xmlResetLastError(); /* of this thread: whether memory was short shows there alone */
    xml->reader = readable ? xmlReaderForMemory(text->text, (int)text->length, NULL, NULL, options) : NULL;
    xml->status = xml->reader ? SPZ_OK : readable ? SPZ_NO_MEMORY : SPZ_NOT_XML;
}

SheetPiece sheet_xml_next(SheetXml *xml)
{
    while (xml->status == SPZ_OK) {
        int more = xmlTextReaderRead(xml->reader);
        if (more < 0)
            xml->status = xmlGetLastError() ? SPZ_NOT_XML : SPZ_NO_MEMORY; /* what is wrong with a text is always told */
        if (more <= 0)
            break;
        switch (xmlTextReaderNodeType(xml->reader)) {
        case XML_READER_TYPE_ELEMENT: return SHEET_XML_START;
        case XML_READER_TYPE_END_ELEMENT: return SHEET_XML_END;
        case XML_READER_TYPE_TEXT:
        case XML_READER_TYPE_CDATA:
        case XML_READER_TYPE_WHITESPACE:
        case XML_READER_TYPE_SIGNIFICANT_WHITESPACE: return SHEET_XML_TEXT;
        case XML_READER_TYPE_DOCUMENT_TYPE: xml->status = SPZ_NOT_XML; break; /* no spreadsheet has one; it could hold anything */
        default: break;
        }
    }
    return SHEET_XML_OVER;
}

bool sheet_xml_is(SheetXml *xml, const char *name)
{
    const xmlChar *here = xmlTextReaderConstLocalName(xml->reader);
    if (!here)
        xml->status = SPZ_NO_MEMORY; /* every piece has a name, which is looked up */
    const char *colon = here ? strrchr((const char *)here, ':') : NULL; /* of a prefix that nothing explains: it is part of the name then */
    return here && strcmp(colon ? colon + 1 : (const char *)here, name) == 0;
}

bool sheet_xml_empty(const SheetXml *xml)
{
    return xmlTextReaderIsEmptyElement(xml->reader) == 1;
}

const char *sheet_xml_text(const SheetXml *xml)
{
    const xmlChar *text = xmlTextReaderConstValue(xml->reader);
    return text ? (const char *)text : "";
}

const char *sheet_xml_attribute(SheetXml *xml, const char *name)
{
    const char *found = NULL;
    buffer_clear(&xml->value);
    int more = 1;
    while (!found && (more = xmlTextReaderMoveToNextAttribute(xml->reader)) == 1)
        if (sheet_xml_is(xml, name)) {
            buffer_puts(&xml->value, sheet_xml_text(xml));
            found = buffer_failed(&xml->value) ? NULL : buffer_text(&xml->value);
        }
    if (more < 0)
        xml->status = SPZ_NO_MEMORY;
    xmlTextReaderMoveToElement(xml->reader);
    return found;
}

long sheet_xml_number(SheetXml *xml, const char *name, long usual)
{
    const char *text = sheet_xml_attribute(xml, name);
    return text && strspn(text, "0123456789") == strlen(text) && *text && strlen(text) < 10 ? strtol(text, NULL, 10) : usual;
}

void sheet_xml_skip(SheetXml *xml)
{
    int depth = sheet_xml_empty(xml) ? 0 : 1;
    while (depth > 0) {
        SheetPiece piece = sheet_xml_next(xml);
        if (piece == SHEET_XML_OVER)
            return;
        if (piece == SHEET_XML_START && !sheet_xml_empty(xml))
            depth++;
        if (piece == SHEET_XML_END)
            depth--;
    }
}

spz_status sheet_xml_status(const SheetXml *xml)
{
    const xmlError *last = xmlGetLastError();
    return buffer_failed(&xml->value) || (last && last->code == XML_ERR_NO_MEMORY) ? SPZ_NO_MEMORY : xml->status;
}

void sheet_xml_close(SheetXml *xml)
{
    if (xml->reader)
        xmlFreeTextReader(xml->reader);
    xml->reader = NULL;
    buffer_free(&xml->value);
}
