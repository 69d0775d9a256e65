#include "editing/excerpt_slurs.h"
#include "editing/bytes/mark_xml.h"
#include "support/array.h"
#include <stdlib.h>
#include <string.h>

enum { SLUR_NUMBERS = 17 }; /* MusicXML 4.0, number-level: 1 to 16 */

typedef struct SlurEnd {
    size_t begin, end; /* its element in the text */
    int number;
    bool opens, whole;
} SlurEnd;

typedef struct SlurEnds {
    ARRAY(SlurEnd) all; /* in order of the text */
} SlurEnds;

/* Type 'continue' is neither end. */
static bool slur_end(const XmlScan *scan, const XmlPiece *piece, SlurEnd *slur)
{
    char type[16] = "", number[16] = "1";
    xml_attribute(scan, piece, "type", type, sizeof type);
    xml_attribute(scan, piece, "number", number, sizeof number);
    int level = atoi(number);
    *slur = (SlurEnd){piece->begin, piece->end, level, strcmp(type, "start") == 0, false};
    return level > 0 && level < SLUR_NUMBERS && (slur->opens || strcmp(type, "stop") == 0);
}

static void find_ends(const Buffer *bars, SlurEnds *ends, Buffer *out)
{
    XmlScan scan = {bars->text, bars->length, 0};
    SlurEnd slur;
    for (XmlPiece piece = xml_next(&scan); piece.kind != XML_FINISHED && piece.kind != XML_BROKEN; piece = xml_next(&scan)) {
        if (!xml_is(&piece, "slur") || piece.kind == XML_END || !slur_end(&scan, &piece, &slur))
            continue;
        while (piece.kind != XML_EMPTY && piece.kind != XML_END && piece.kind != XML_FINISHED && piece.kind != XML_BROKEN)
            piece = xml_next(&scan);
        slur.end = piece.end;
        out->failed = out->failed || !array_push(&ends->all, slur);
    }
}

static void pair_ends(SlurEnds *ends)
{
    SlurEnd *open[SLUR_NUMBERS] = {NULL};
    for (size_t i = 0; i < ends->all.count; i++) {
        SlurEnd *slur = &ends->all.at[i];
        if (!slur->opens && open[slur->number])
            slur->whole = open[slur->number]->whole = true;
        open[slur->number] = slur->opens ? slur : NULL;
    }
}

void excerpt_add_whole_slurs(const Buffer *bars, Buffer *out)
{
    SlurEnds ends = {{NULL, 0, 0}};
    size_t done = 0;
    out->failed = out->failed || buffer_failed(bars);
    if (out->failed || !bars->length)
        return;
    find_ends(bars, &ends, out);
    pair_ends(&ends);
    for (size_t i = 0; i < ends.all.count; i++) {
        const SlurEnd *slur = &ends.all.at[i];
        if (slur->whole)
            continue;
        buffer_add(out, bars->text + done, slur->begin - done);
        done = slur->end;
    }
    buffer_add(out, bars->text + done, bars->length - done);
    array_free(&ends.all);
}
