/* sax.c - libxml2's streaming parser, fed by a reading function, turned into calls of the rules.
 *
 * Speed: names are interned in the parser's own dictionary, so that an element is known by its pointer; what no rule asks for is passed
 * over by a counter. Safety: no network, no external or internal entity, no document type is loaded. */
#include "model/own_marks.h"
#include "reader/reader.h"
#include "reader/files/source_text.h"
#include "support/message.h"
#include "support/text/utf8.h"
#include <libxml/SAX2.h>
#include <libxml/dict.h>
#include <libxml/parserInternals.h>
#include <libxml/xmlerror.h>
#include <stdio.h>
#include <string.h>

enum { TABLE_BITS = 10, TABLE_SIZE = 1 << TABLE_BITS };

/* What names are, by the parser's own pointers to them: those of attributes from the start, those of elements once they have been met. (All at once they
 * would make the parser's dictionary change to a slower way of finding names.) */
typedef struct NameTable {
    const xmlChar *keys[TABLE_SIZE];
    unsigned char elements[TABLE_SIZE];
    unsigned used;
    const xmlChar *attributes[ATTRIBUTE_COUNT];
} NameTable;

/* The stream under the parser, watched: size limit, the system's read errors, the end. */
typedef struct Feed {
    Reader *reader;
    ReadBytes read;
    void *context;
    size_t total, piece; /* bytes; since the last '>' */
    SourceText source;
} Feed;

const xmlChar *name_table_attribute(const NameTable *table, AttributeName name)
{
    return table->attributes[name];
}

static unsigned slot_of(const xmlChar *name)
{
    return (unsigned)(((uint64_t)(uintptr_t)name * UINT64_C(0x9E3779B97F4A7C15)) >> (64 - TABLE_BITS));
}

static bool fill_table(NameTable *table, xmlDictPtr dict)
{
    static const char *const attributes[ATTRIBUTE_COUNT] = {
#define X(id, name) [ATTRIBUTE_##id] = name,
        ATTRIBUTE_NAMES(X)
#undef X
    };
    for (int i = 0; i < ATTRIBUTE_COUNT; i++)
        if (!(table->attributes[i] = xmlDictLookup(dict, BAD_CAST attributes[i], -1)))
            return false;
    return true;
}

/* A name that the table doesn't hold yet, for which `slot` is free. Half of the table stays free, so that a search soon ends. */
__attribute__((cold, noinline)) static Element new_element(NameTable *table, const xmlChar *name, unsigned slot)
{
    static const char *const elements[ELEMENT_COUNT] = {
#define X(id, name) [ELEMENT_##id] = name,
        ELEMENT_NAMES(X)
#undef X
    };
    int element = ELEMENT_COUNT - 1;
    while (element > ELEMENT_OTHER && strcmp((const char *)name, elements[element]) != 0)
        element--;
    if (table->used < TABLE_SIZE / 2) {
        table->used++;
        table->keys[slot] = name;
        table->elements[slot] = (unsigned char)element;
    }
    return (Element)element;
}

static Element element_of(NameTable *table, const xmlChar *name)
{
    unsigned slot = slot_of(name);
    for (; table->keys[slot]; slot = (slot + 1) % TABLE_SIZE)
        if (table->keys[slot] == name)
            return (Element)table->elements[slot];
    return new_element(table, name, slot);
}

static void open_element(Reader *reader, Element element)
{
    reader->open[reader->depth++] = (unsigned char)element;
    reader->gathering = rules[element].text;
    reader->text_length = 0;
    if (rules[element].start)
        rules[element].start(reader);
}

/* How much of the file is left, once its last byte has been read; SIZE_MAX before. */
static size_t bytes_left(const Reader *reader)
{
    const xmlParserInput *input = reader->parser->input;
    if (!reader->source_ended)
        return SIZE_MAX;
    return input ? (size_t)(input->end - input->cur) : 0;
}

static void check_root(Reader *reader, Element element, const xmlChar *name)
{
    reader->root_seen = true;
    if (element != ELEMENT_SCORE_PARTWISE && element != ELEMENT_SCORE_TIMEWISE && element != ELEMENT_OPUS)
        reader_fail(reader, SPZ_NOT_MUSICXML, "this is XML, but no MusicXML score: it begins with <%.60s>", (const char *)name);
}

static bool is_own_mark(Reader *reader)
{
    char id[sizeof OWN_MARK_ID];
    return reader_attribute(reader, ATTRIBUTE_ID, id, sizeof id) && strcmp(id, OWN_MARK_ID) == 0; /* cut to that length */
}

static void on_start(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri, int namespace_count,
                     const xmlChar **namespaces, int attribute_count, int defaulted, const xmlChar **attributes)
{
    Reader *reader = context;
    (void)prefix, (void)uri, (void)namespace_count, (void)namespaces, (void)defaulted;
    if (reader->depth + reader->skipped >= LIMIT_DEPTH) {
        reader_fail(reader, SPZ_OVER_LIMIT, "more than %d elements stand inside one another", LIMIT_DEPTH);
        return;
    }
    if (reader->skipped) {
        reader->skipped++;
        return;
    }
    if (reader->status != SPZ_OK || (reader->source_ended && bytes_left(reader) == 0)) /* half a name is no name */
        return;
    Element element = element_of(reader->table, name);
    if (!reader->root_seen)
        check_root(reader, element, name);
    if (reader->status != SPZ_OK)
        return;
    reader->attributes = attributes;
    reader->attribute_count = attribute_count;
    if (reader->depth && reader->open[reader->depth - 1] == ELEMENT_DYNAMICS) {
        dynamic_sign(reader, (const char *)name);
        open_element(reader, ELEMENT_DYNAMIC_SIGN);
    } else if (element == ELEMENT_OTHER || (element == ELEMENT_DIRECTION && is_own_mark(reader))) {
        reader->skipped = 1;
        if (xmlDictSize(reader->parser->dict) > LIMIT_NAMES)
            reader_fail(reader, SPZ_OVER_LIMIT, "the file has more than %d different names of elements", LIMIT_NAMES);
    } else {
        open_element(reader, element);
    }
    reader->attribute_count = 0;
}

static void on_end(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri)
{
    Reader *reader = context;
    (void)name, (void)prefix, (void)uri;
    if (reader->skipped) {
        reader->skipped--;
        return;
    }
    if (reader->status != SPZ_OK || reader->depth == 0)
        return;
    const Rule *rule = &rules[reader->open[reader->depth - 1]];
    if (rule->end) {
        reader->text[reader->text_length] = '\0';
        rule->end(reader);
    }
    reader->gathering = false;
    reader->text_length = 0;
    reader->depth--;
    reader->ended = reader->depth == 0;
}

/* Told once a text: when its room is full nothing more is told. */
static void cut_text(Reader *reader, size_t room)
{
    char beginning[24];
    if (room == 0)
        return;
    reader->text[reader->text_length] = '\0';
    reader_doubt(reader, SPZ_FAULT_TEXT_CUT, utf8_mend(reader->text, beginning, sizeof beginning));
}

static void on_text(void *context, const xmlChar *text, int length)
{
    Reader *reader = context;
    if (!reader->gathering || reader->skipped || length <= 0)
        return;
    size_t room = LIMIT_TEXT - reader->text_length, bytes = (size_t)length;
    if (bytes > room) {
        cut_text(reader, room);
        while (room && (text[room] & 0xC0) == 0x80) /* never within a letter */
            room--;
        bytes = room;
    }
    memcpy(reader->text + reader->text_length, text, bytes);
    reader->text_length += bytes;
}

static void refuse_entity(Reader *reader)
{
    reader_fail(reader, SPZ_OVER_LIMIT, "the file defines or uses text substitutions (XML entities); no score needs them, and they are refused");
}

static void on_entity(void *context, const xmlChar *name, int type, const xmlChar *public_id, const xmlChar *system_id,
                      xmlChar *content)
{
    (void)name, (void)type, (void)public_id, (void)system_id, (void)content;
    refuse_entity(context);
}

static void on_reference(void *context, const xmlChar *name)
{
    (void)name;
    refuse_entity(context);
}

static void on_document_type(void *context, const xmlChar *name, const xmlChar *public_id, const xmlChar *system_id)
{
    (void)context, (void)name, (void)public_id, (void)system_id; /* named, never loaded */
}

/* What is wrong with the XML, for a reader of music. */
static const char *fault_of_xml(int code)
{
    switch (code) {
    case XML_ERR_TAG_NAME_MISMATCH:
        return "an element is closed here that is not the one that is open";
    case XML_ERR_INVALID_CHAR:
    case XML_ERR_INVALID_CHARREF:
    case XML_ERR_INVALID_DEC_CHARREF:
    case XML_ERR_INVALID_HEX_CHARREF:
        return "a character stands here that no text may hold";
    case XML_ERR_INVALID_ENCODING:
    case XML_ERR_UNSUPPORTED_ENCODING:
    case XML_ERR_UNKNOWN_ENCODING:
        return "the file says that it is in an encoding that is not known, or is not in it";
    case XML_ERR_ATTRIBUTE_NOT_STARTED:
    case XML_ERR_ATTRIBUTE_NOT_FINISHED:
    case XML_ERR_ATTRIBUTE_WITHOUT_VALUE:
    case XML_ERR_ATTRIBUTE_REDEFINED:
    case XML_ERR_LT_IN_ATTRIBUTE:
        return "an attribute is broken here";
    case XML_ERR_DOCUMENT_END:
        return "something stands behind the end of the score";
    default:
        return "the file is damaged here";
    }
}

#if LIBXML_VERSION >= 21200
typedef const xmlError *ParseError;
#else
typedef xmlErrorPtr ParseError;
#endif

static void on_error(void *context, ParseError error)
{
    Reader *reader = context;
    if (reader->status != SPZ_OK)
        return;
    if (error->code == XML_ERR_NO_MEMORY)
        reader_no_memory(reader);
    else if (error->code == XML_WAR_UNDECLARED_ENTITY || error->code == XML_ERR_UNDECLARED_ENTITY)
        refuse_entity(reader);
    else if (error->level == XML_ERR_FATAL &&
             (bytes_left(reader) < 4 || error->code == XML_ERR_TAG_NOT_FINISHED || error->code == XML_ERR_DOCUMENT_EMPTY))
        reader_fail(reader, SPZ_NOT_XML, error->code == XML_ERR_DOCUMENT_EMPTY ? "there is no XML in this file" : "the file breaks off here, before its end");
    else if (error->level == XML_ERR_FATAL)
        reader_fail(reader, SPZ_NOT_XML, "this is no well-formed XML: %s", fault_of_xml(error->code));
}

/* More of the file, as it is; bytes read. */
static size_t take_bytes(Feed *feed, char *buffer, size_t room)
{
    int got = feed->reader->status == SPZ_OK ? feed->read(feed->context, buffer, (int)room) : 0;
    if (got < 0)
        feed->reader->status = SPZ_CANNOT_READ; /* the owner of the source knows what went wrong and says it */
    if (got <= 0)
        feed->reader->source_ended = true;
    else
        feed->total += (size_t)got;
    return got < 0 ? 0 : (size_t)got;
}

/* The parser takes a time that grows with the square of an element's attributes, so their number must not grow with the file. */
static void measure_piece(Feed *feed, const char *buffer, size_t count)
{
    size_t behind = 0;
    while (behind < count && buffer[count - 1 - behind] != '>')
        behind++;
    feed->piece = behind < count ? behind : feed->piece + count;
    if (feed->piece > LIMIT_PIECE)
        reader_fail(feed->reader, SPZ_OVER_LIMIT, "more than %d bytes stand in one piece, as an element's head or a text", LIMIT_PIECE);
}

static int feed_bytes(void *context, char *buffer, int length)
{
    Feed *feed = context;
    size_t ready = 0, held;
    feed->reader->feeding = true;
    while (ready == 0 && !feed->reader->source_ended) { /* a piece may be all blanks, or too short for its letter */
        held = source_text_begin(&feed->source, buffer);
        size_t got = take_bytes(feed, buffer + held, (size_t)length - held);
        ready = source_text_pass(&feed->source, buffer, held + got, feed->reader->source_ended);
    }
    measure_piece(feed, buffer, ready);
    if (feed->total > limit_bytes)
        reader_fail(feed->reader, SPZ_OVER_LIMIT, "the file holds more than %zu million bytes of XML", limit_bytes >> 20);
    feed->reader->feeding = false;
    return feed->reader->status == SPZ_OK ? (int)ready : 0;
}

static xmlSAXHandler handlers(void)
{
    xmlSAXHandler sax;
    memset(&sax, 0, sizeof sax);
    sax.initialized = XML_SAX2_MAGIC;
    sax.startElementNs = on_start;
    sax.endElementNs = on_end;
    sax.characters = on_text;
    sax.ignorableWhitespace = on_text; /* the same pointer: spares libxml2 a search for blanks */
    sax.cdataBlock = on_text;
    sax.entityDecl = on_entity;
    sax.reference = on_reference;
    sax.internalSubset = on_document_type;
    sax.serror = on_error;
    return sax;
}

static spz_status finish(Reader *reader)
{
    if (reader->status == SPZ_OK && !reader->root_seen)
        reader_fail(reader, SPZ_NOT_XML, "there is no XML in this file");
    if (reader->status == SPZ_OK && (!reader->ended || !reader->parser->wellFormed))
        reader_fail(reader, SPZ_NOT_XML, "the file breaks off here, before its end");
    return reader->status;
}

static void tell_mended(const Reader *reader)
{
    spz_message message = {.severity = SPZ_DOUBT, .file = reader->file, .fault = SPZ_FAULT_NO_UTF8};
    message_fault(reader->sink, &message);
}

spz_status sax_read(Reader *reader, ReadBytes read, void *context)
{
    xmlSAXHandler sax = handlers();
    NameTable *table = memory_get(sizeof *table);
    Feed feed = {.reader = reader, .read = read, .context = context};
    reader->parser = NULL;
    if (table) {
        memset(table, 0, sizeof *table);
        reader->parser = xmlCreateIOParserCtxt(&sax, reader, feed_bytes, NULL, &feed, XML_CHAR_ENCODING_NONE);
    }
    if (!reader->parser || !fill_table(table, reader->parser->dict)) {
        reader_no_memory(reader);
    } else {
        reader->table = table;
        xmlCtxtUseOptions(reader->parser, XML_PARSE_NONET);
        xmlParseDocument(reader->parser);
        if (feed.source.mended)
            tell_mended(reader);
        finish(reader);
    }
    if (reader->parser) {
        xmlFreeDoc(reader->parser->myDoc); /* libxml2 makes one for the entities of a document type, even where they are refused */
        xmlFreeParserCtxt(reader->parser);
    }
    reader->parser = NULL;
    reader->table = NULL;
    memory_free(table);
    return reader->status;
}
