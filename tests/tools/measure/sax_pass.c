/* sax_pass - one bare pass of libxml2's SAX interface over XML files: everything is parsed, nothing is looked at. What a reader of these files cannot do without,
 * and so what the program's time is held against.
 *
 *     sax_pass FILE...
 *
 * The handlers are there but empty; blanks go where other text goes, which spares libxml2 a search. Exit status 1 when a file can't be opened or isn't well-formed. */
#include <libxml/parser.h>
#include <stdio.h>

static void open_element(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri, int namespaces, const xmlChar **declared, int attributes,
                         int defaulted, const xmlChar **values)
{
    (void)context, (void)name, (void)prefix, (void)uri, (void)namespaces, (void)declared, (void)attributes, (void)defaulted, (void)values;
}

static void close_element(void *context, const xmlChar *name, const xmlChar *prefix, const xmlChar *uri)
{
    (void)context, (void)name, (void)prefix, (void)uri;
}

static void characters(void *context, const xmlChar *text, int length)
{
    (void)context, (void)text, (void)length;
}

static int take_bytes(void *file, char *bytes, int length)
{
    return (int)fread(bytes, 1, (size_t)length, file);
}

static int pass(const char *path)
{
    xmlSAXHandler sax = {.initialized = XML_SAX2_MAGIC, .startElementNs = open_element, .endElementNs = close_element, .characters = characters, .ignorableWhitespace = characters};
    FILE *file = fopen(path, "rb");
    xmlParserCtxtPtr parser = file ? xmlCreateIOParserCtxt(&sax, NULL, take_bytes, NULL, file, XML_CHAR_ENCODING_NONE) : NULL;
    int fine = 0;
    if (parser) {
        xmlCtxtUseOptions(parser, XML_PARSE_NONET);
        fine = xmlParseDocument(parser) == 0 && parser->wellFormed;
        xmlFreeDoc(parser->myDoc);
        xmlFreeParserCtxt(parser);
    }
    if (file)
        fclose(file);
    return fine;
}

int main(int count, char **arguments)
{
    for (int i = 1; i < count; i++)
        if (!pass(arguments[i])) {
            fprintf(stderr, "sax_pass: %s: not to be read\n", arguments[i]);
            return 1;
        }
    return 0;
}
