#include "editing/excerpt.h"
#include "editing/excerpt_slurs.h"
#include "editing/bytes/mark_encoding.h"
#include "editing/bytes/mark_file.h"
#include "editing/bytes/mark_xml.h"
#include "writing/markup.h"
#include "support/text/utf8.h"
#include "support/memory.h"
#include <stdlib.h>
#include <stdint.h>
#include <string.h>

enum { DEPTH_FRAME = 2, DEPTH_BAR = 3, DEPTH_ITEM = 4, DEPTH_SIGN = 5, NUMBERS = 8 };

/* The children of <attributes> in the order that MusicXML 4.0 asks for. */
static const char *const sign_names[] = {"divisions", "key", "time", "staves", "clef", "staff-details", "transpose"};
enum { SIGN_KINDS = sizeof sign_names / sizeof sign_names[0] };

typedef struct Cutter {
    ExcerptSource *source;
    XmlScan scan;
    int depth;
    bool timewise, in_attributes;
    long part;
    size_t bar;
    SignText sign;
    bool in_sign, failed;
} Cutter;

static bool known(const Cutter *cutter)
{
    return cutter->part >= 0 && cutter->bar < cutter->source->movement->bar_count;
}

static BarText *bar_text(const Cutter *cutter)
{
    return &cutter->source->bars[(size_t)cutter->part * cutter->source->movement->bar_count + cutter->bar];
}

/* Parts hold bars, or bars hold parts. */
static void open_frame(Cutter *cutter, const XmlPiece *piece)
{
    char id[256];
    if (xml_is(piece, "part")) {
        cutter->part = movement_part_of(cutter->source->movement, xml_attribute(&cutter->scan, piece, "id", id, sizeof id));
        if (!cutter->timewise)
            cutter->bar = SIZE_MAX;
    } else if (xml_is(piece, "measure"))
        cutter->bar++;
    if (cutter->depth == DEPTH_BAR && known(cutter))
        *bar_text(cutter) = (BarText){piece->end, piece->end};
}

static void open_sign(Cutter *cutter, const XmlPiece *piece)
{
    char number[16];
    for (int kind = 0; kind < SIGN_KINDS; kind++) {
        if (!xml_is(piece, sign_names[kind]))
            continue;
        const char *given = xml_attribute(&cutter->scan, piece, "number", number, sizeof number);
        int value = given ? atoi(given) : 0;
        cutter->sign = (SignText){(size_t)cutter->part, cutter->bar, piece->begin, piece->end, kind, value > 0 && value < NUMBERS ? value : 0};
        cutter->in_sign = true;
    }
}

static void open_element(Cutter *cutter, const XmlPiece *piece)
{
    cutter->depth++;
    if (cutter->depth == 1)
        cutter->timewise = xml_is(piece, "score-timewise");
    else if (cutter->depth == DEPTH_FRAME || cutter->depth == DEPTH_BAR)
        open_frame(cutter, piece);
    else if (cutter->depth == DEPTH_ITEM)
        cutter->in_attributes = xml_is(piece, "attributes");
    else if (cutter->depth == DEPTH_SIGN && cutter->in_attributes && known(cutter))
        open_sign(cutter, piece);
}

static void close_element(Cutter *cutter, const XmlPiece *piece)
{
    if (cutter->depth == DEPTH_SIGN && cutter->in_sign) {
        cutter->sign.end = piece->end;
        cutter->in_sign = false;
        cutter->failed = cutter->failed || !array_push(&cutter->source->signs, cutter->sign);
    } else if (cutter->depth == DEPTH_BAR && known(cutter) && piece->kind == XML_END)
        bar_text(cutter)->end = piece->begin;
    cutter->depth--;
}

static spz_status index_text(ExcerptSource *source)
{
    Cutter cutter = {.source = source, .scan = {source->text.text, source->text.length, 0}, .part = -1, .bar = SIZE_MAX};
    XmlPiece piece;
    size_t most = 0;
    do {
        piece = xml_next(&cutter.scan);
        if (piece.kind == XML_START || piece.kind == XML_EMPTY)
            open_element(&cutter, &piece);
        if (piece.kind == XML_END || piece.kind == XML_EMPTY)
            close_element(&cutter, &piece);
        if (cutter.bar != SIZE_MAX && cutter.bar > most)
            most = cutter.bar;
    } while (piece.kind != XML_FINISHED && piece.kind != XML_BROKEN && !cutter.failed);
    if (cutter.failed)
        return SPZ_NO_MEMORY;
    /* Another number of bars: the text holds several movements, or has changed since it was read. */
    return piece.kind == XML_FINISHED && most + 1 == source->movement->bar_count ? SPZ_OK : SPZ_BAD_MUSIC;
}

static spz_status take_text(ExcerptSource *source, const ScoreFile *file)
{
    Buffer bytes = {0};
    const char *name = source->movement->file;
    size_t prefix = strlen(file->path);
    bool member = file->compressed && strncmp(name, file->path, prefix) == 0 && name[prefix] == ':';
    spz_status status = file->compressed && !member ? SPZ_BAD_ARGUMENT : score_file_text(file, member ? name + prefix + 1 : NULL, &bytes);
    if (!status)
        encoding_open(encoding_of(bytes.text, bytes.length), bytes.text, bytes.length, &source->text);
    buffer_free(&bytes);
    if (!status && buffer_failed(&source->text))
        status = SPZ_NO_MEMORY;
    return !status && (!source->text.text || !utf8_is_valid(source->text.text, source->text.length)) ? SPZ_NOT_XML : status;
}

static bool index_lines(ExcerptSource *source)
{
    const char *text = source->text.text;
    for (const char *end = text; (end = memchr(end, '\n', source->text.length - (size_t)(end - text))) != NULL; end++)
        if (!array_push(&source->lines, (size_t)(end - text)))
            return false;
    return true;
}

spz_status excerpt_open(ExcerptSource *source, const char *path, const Movement *movement)
{
    ScoreFile file;
    size_t bars = movement->part_count * movement->bar_count;
    *source = (ExcerptSource){.movement = movement};
    spz_status status = score_file_open(&file, path, NULL);
    if (status)
        return status;
    status = take_text(source, &file);
    score_file_close(&file);
    source->bars = memory_resize(NULL, bars, sizeof *source->bars);
    if (!source->bars)
        status = SPZ_NO_MEMORY;
    else
        memset(source->bars, 0, bars * sizeof *source->bars);
    if (!status)
        status = index_text(source);
    if (!status && !index_lines(source))
        status = SPZ_NO_MEMORY;
    if (status)
        excerpt_close(source);
    return status;
}

void excerpt_close(ExcerptSource *source)
{
    buffer_free(&source->text);
    memory_free(source->bars);
    array_free(&source->signs);
    array_free(&source->lines);
    *source = (ExcerptSource){.movement = source->movement};
}

/* What is in force when the bar begins. */
static void add_signs(const ExcerptSource *source, size_t part, size_t first, Markup *html)
{
    const SignText *last[SIGN_KINDS][NUMBERS] = {{NULL}};
    for (size_t i = 0; i < source->signs.count; i++) {
        const SignText *sign = &source->signs.at[i];
        if (sign->part == part && sign->bar < first)
            last[sign->kind][sign->number] = sign;
    }
    markup_open(html, "attributes");
    for (int kind = 0; kind < SIGN_KINDS; kind++)
        for (int number = 0; number < NUMBERS; number++)
            if (last[kind][number])
                markup_raw_piece(html, source->text.text + last[kind][number]->begin, last[kind][number]->end - last[kind][number]->begin);
    markup_close(html);
}

static uint32_t line_of(const ExcerptSource *source, size_t offset)
{
    size_t low = 0, high = source->lines.count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (source->lines.at[middle] < offset)
            low = middle + 1;
        else
            high = middle;
    }
    return (uint32_t)low + 1;
}

/* The colour of the note whose start tag lies there; NULL where it has one of its own, or none is asked for. */
static const char *colour_of(const ExcerptSource *source, size_t part, const char *tag, const char *tag_end)
{
    static const char own[] = " color=";
    for (const char *at = tag; at + sizeof own - 1 < tag_end; at++)
        if (memcmp(at, own, sizeof own - 1) == 0)
            return NULL;
    return source->colour(source->context, part, line_of(source, (size_t)(tag_end - source->text.text)));
}

/* The bar with the colours put into the start tags of its notes. */
static void add_coloured(const ExcerptSource *source, size_t part, const char *text, const char *end, Markup *html)
{
    static const char note[] = "note";
    const char *from = text;
    for (const char *at = text; (at = memchr(at, '<', (size_t)(end - at))) != NULL && at + sizeof note + 1 < end; at++) {
        const char *name_end = at + sizeof note, *tag_end = memchr(at, '>', (size_t)(end - at));
        if (memcmp(at + 1, note, sizeof note - 1) != 0 || !strchr(" >\t\r\n", *name_end) || !tag_end)
            continue;
        const char *colour = colour_of(source, part, at, tag_end);
        if (!colour)
            continue;
        markup_raw_piece(html, from, (size_t)(name_end - from));
        markup_raw(html, " color=\"");
        markup_raw(html, colour);
        markup_raw(html, "\"");
        from = name_end;
    }
    markup_raw_piece(html, from, (size_t)(end - from));
}

static void add_bar(const ExcerptSource *source, size_t part, size_t bar, size_t first, Markup *html)
{
    const BarText *text = &source->bars[part * source->movement->bar_count + bar];
    markup_open(html, "measure");
    markup_put(html, "number", source->movement->bars[bar].number);
    if (bar == first)
        add_signs(source, part, first, html);
    if (source->colour)
        add_coloured(source, part, source->text.text + text->begin, source->text.text + text->end, html);
    else
        markup_raw_piece(html, source->text.text + text->begin, text->end - text->begin);
    markup_close_line(html);
}

static void add_part_list(const ExcerptPart *parts, size_t count, Markup *html)
{
    markup_open(html, "part-list");
    for (size_t i = 0; i < count; i++) {
        markup_open(html, "score-part");
        markup_put_format(html, "id", "P%zu", i + 1);
        markup_element(html, "part-name", NULL, parts[i].name);
        markup_close(html);
    }
    markup_close_line(html);
}

/* The bars, and whatever slur leads out of them taken away. */
static void add_bars(const ExcerptSource *source, size_t part, size_t first, size_t last, Markup *html)
{
    Markup within;
    Buffer bars = {0};
    markup_begin(&within, &bars);
    for (size_t bar = first; bar <= last; bar++)
        add_bar(source, part, bar, first, &within);
    markup_end(&within);
    excerpt_add_whole_slurs(&bars, html->out);
    buffer_let_go(html, &bars);
}

void excerpt_cut(const ExcerptSource *source, const ExcerptPart *parts, size_t count, size_t first, size_t last, Buffer *out)
{
    Markup html;
    markup_begin(&html, out);
    markup_xml_head(&html);
    markup_open(&html, "score-partwise");
    markup_put(&html, "version", "4.0");
    markup_line_end(&html);
    add_part_list(parts, count, &html);
    for (size_t i = 0; i < count; i++) {
        markup_open(&html, "part");
        markup_put_format(&html, "id", "P%zu", i + 1);
        markup_line_end(&html);
        add_bars(source, parts[i].part, first, last, &html);
        markup_close_line(&html);
    }
    markup_close_line(&html);
    markup_end(&html);
}
