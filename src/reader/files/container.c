#include "reader/files/container.h"
#include "support/memory.h"
#include <libxml/parser.h>
#include <string.h>

enum { CONTAINER_BYTES = 64 * 1024 };

typedef struct Found {
    char path[CONTAINER_PATH];
    bool any, refused;
    xmlParserCtxtPtr parser;
} Found;

static bool attribute(const xmlChar **attributes, int count, const char *name, char *text, size_t size)
{
    for (int i = 0; i < count; i++, attributes += 5)
        if (strcmp((const char *)attributes[0], name) == 0 && (size_t)(attributes[4] - attributes[3]) < size) {
            size_t length = (size_t)(attributes[4] - attributes[3]);
            memcpy(text, attributes[3], length);
            text[length] = '\0';
            return true;
        }
    return false;
}

static void on_start(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri, int namespace_count,
                     const xmlChar **namespaces, int attribute_count, int defaulted, const xmlChar **attributes)
{
    Found *found = context;
    char media[128] = "";
    (void)prefix, (void)uri, (void)namespace_count, (void)namespaces, (void)defaulted;
    if (found->any || strcmp((const char *)name, "rootfile") != 0)
        return;
    attribute(attributes, attribute_count, "media-type", media, sizeof media);
    bool score = media[0] == '\0' || strstr(media, "musicxml") || strstr(media, "xml");
    found->any = score && attribute(attributes, attribute_count, "full-path", found->path, sizeof found->path) && found->path[0];
}

static void on_entity(void *context, const xmlChar *name, int type, const xmlChar *public_id, const xmlChar *system_id, xmlChar *content)
{
    Found *found = context;
    (void)name, (void)type, (void)public_id, (void)system_id, (void)content;
    found->refused = true;
    xmlStopParser(found->parser);
}

static void on_error(void *context, const char *format, ...)
{
    (void)context, (void)format; /* the outcome says enough */
}

static spz_status parse(const char *bytes, int length, Found *found)
{
    xmlSAXHandler sax;
    memset(&sax, 0, sizeof sax);
    sax.initialized = XML_SAX2_MAGIC;
    sax.startElementNs = on_start;
    sax.entityDecl = on_entity;
    sax.error = on_error;
    sax.warning = on_error;
    found->parser = xmlCreatePushParserCtxt(&sax, found, NULL, 0, NULL);
    if (!found->parser)
        return SPZ_NO_MEMORY;
    xmlCtxtUseOptions(found->parser, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    xmlParseChunk(found->parser, bytes, length, 1);
    xmlFreeDoc(found->parser->myDoc);
    xmlFreeParserCtxt(found->parser);
    return SPZ_OK;
}

static int read_all(const Archive *archive, const ArchiveMember *member, char *bytes, const char **fault)
{
    ArchiveStream stream;
    int total = 0, got = 1;
    if (archive_stream_open(&stream, archive, member) == SPZ_OK)
        while (got > 0 && total < CONTAINER_BYTES) {
            got = archive_stream_read(&stream, bytes + total, CONTAINER_BYTES - total);
            total += got > 0 ? got : 0;
        }
    archive_stream_close(&stream);
    *fault = stream.fault;
    return stream.status == SPZ_OK ? total : -1;
}

spz_status container_find_score(const Archive *archive, char path[CONTAINER_PATH], const char **fault)
{
    const ArchiveMember *member = archive_find(archive, "META-INF/container.xml");
    *fault = "the compressed file has no META-INF/container.xml, so it is no compressed score";
    if (!member)
        return SPZ_BAD_ARCHIVE;
    char *bytes = memory_get(CONTAINER_BYTES);
    Found *found = memory_get(sizeof *found);
    spz_status status = bytes && found ? SPZ_OK : SPZ_NO_MEMORY;
    int length = status == SPZ_OK ? read_all(archive, member, bytes, fault) : -1;
    if (status == SPZ_OK && length < 0)
        status = SPZ_BAD_ARCHIVE;
    if (status == SPZ_OK) {
        memset(found, 0, sizeof *found);
        status = parse(bytes, length, found);
    }
    if (status == SPZ_OK && !found->any) {
        *fault = found->refused ? "META-INF/container.xml defines text substitutions (XML entities), which are refused"
                                : "META-INF/container.xml names no score";
        status = SPZ_BAD_ARCHIVE;
    }
    if (status == SPZ_OK)
        memcpy(path, found->path, CONTAINER_PATH);
    memory_free(found);
    memory_free(bytes);
    return status;
}
