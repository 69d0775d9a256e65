#include "editing/mark_insert.h"
#include "model/own_marks.h"
#include "editing/bytes/mark_walk.h"
#include "writing/markup.h"
#include "support/numbers.h"
#include <stdlib.h>
#include <string.h>


/* A wish with the place that was found for it. */
typedef struct Insertion {
    size_t offset;    /* in the text */
    const Wish *wish;
    size_t order;     /* as it came */
    double shift;     /* divisions from the place to where it belongs */
} Insertion;

typedef struct Insert {
    const Movement *movement;
    const Wish **wishes; /* by part, then bar */
    const Wish *first;   /* as they came */
    size_t count, marked; /* wishes; directions that the text has already */
    ARRAY(Insertion) found;
} Insert;

static int by_bar(const void *a, const void *b)
{
    const Wish *one = *(const Wish *const *)a, *two = *(const Wish *const *)b;
    if (one->part != two->part)
        return one->part < two->part ? -1 : 1;
    if (one->bar != two->bar)
        return one->bar < two->bar ? -1 : 1;
    return one < two ? -1 : one > two;
}

static int by_offset(const void *a, const void *b)
{
    const Insertion *one = a, *two = b;
    if (one->offset != two->offset)
        return one->offset < two->offset ? -1 : 1;
    if (one->wish->stop != two->wish->stop)
        return one->wish->stop ? -1 : 1;
    return one->order < two->order ? -1 : one->order > two->order;
}

/* How well a place suits: right time, right staff, right voice; less well, the last place before it. */
static double fitness(const Place *place, const Wish *wish, Ticks longest)
{
    double fit = 0;
    if (place->at == wish->at)
        fit = 8;
    else if (place->at < wish->at)
        fit = (double)place->at / (double)(longest + 1);
    else
        fit = -(double)place->at;
    if (place->at == wish->at && place->note) {
        fit += place->staff == (wish->staff ? wish->staff : 1) ? 4 : 0;
        fit += !wish->voice || strcmp(place->voice, wish->voice) == 0 ? 2 : 0;
    }
    return fit;
}

static const Place *best_place(const PlaceList *places, const Wish *wish, Ticks longest)
{
    const Place *best = &places->at[0];
    for (size_t i = 1; i < places->count; i++)
        if (fitness(&places->at[i], wish, longest) > fitness(best, wish, longest))
            best = &places->at[i];
    return best;
}

static size_t first_of(const Insert *insert, size_t part, size_t bar)
{
    size_t low = 0, high = insert->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        const Wish *wish = insert->wishes[middle];
        if (wish->part < part || (wish->part == part && wish->bar < bar))
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static bool find_places(void *context, size_t part, size_t bar, const PlaceList *places)
{
    Insert *insert = context;
    Ticks longest = 0;
    if (bar < insert->movement->first_in_file || bar >= insert->movement->first_in_file + insert->movement->bar_count)
        return true;
    bar -= insert->movement->first_in_file;
    for (size_t i = 0; i < places->count; i++)
        longest = places->at[i].at > longest ? places->at[i].at : longest;
    for (size_t i = first_of(insert, part, bar); i < insert->count; i++) {
        const Wish *wish = insert->wishes[i];
        if (wish->part != part || wish->bar != bar)
            break;
        const Place *place = best_place(places, wish, longest);
        double shift = (double)(wish->at - place->at) * place->divisions / (double)insert->movement->per_crotchet;
        if (!array_push(&insert->found, ((Insertion){place->offset, wish, (size_t)(wish - insert->first), shift})))
            return false;
    }
    return true;
}

static void put_sign(Markup *html, const Wish *wish)
{
    if (wish->sign == WISH_WORDS)
        return;
    markup_open(html, "direction-type");
    markup_open(html, wish->sign == WISH_DASHES ? "dashes" : "bracket");
    markup_put(html, "type", wish->stop ? "stop" : "start");
    markup_put_format(html, "number", "%d", wish->number);
    if (wish->sign != WISH_DASHES) {
        markup_put(html, "line-end", "down");
        markup_put(html, "line-type", "solid");
    }
    markup_close_void(html);
    markup_close(html);
}

static void put_said(Markup *html, const char *said, int raised)
{
    markup_open(html, "direction-type");
    markup_open(html, "words");
    markup_put(html, "font-style", "italic");
    if (raised)
        markup_put_format(html, "relative-y", "%d", raised);
    markup_words(html, said);
    markup_close(html);
    markup_close(html);
}

/* Only ASCII is written, so that the file may be in any encoding. */
static void put_direction(Buffer *out, const Insert *insert, const Insertion *insertion, size_t number)
{
    Markup html;
    char shift[NUMBER_TEXT];
    const Wish *wish = insertion->wish;
    markup_begin(&html, out);
    html.ascii = true;
    markup_open(&html, "direction");
    markup_put(&html, "placement", "above");
    markup_put_format(&html, "id", OWN_MARK_ID "%zu", number);
    if (wish->words && *wish->words)
        put_said(&html, wish->words, wish->raised);
    put_sign(&html, wish);
    if (insertion->shift != 0)
        markup_element(&html, "offset", NULL, number_text_short(insertion->shift, 6, shift));
    if (wish->voice)
        markup_element(&html, "voice", NULL, wish->voice);
    if (insert->movement->parts[wish->part].staves > 1) {
        markup_open(&html, "staff");
        markup_format(&html, "%d", wish->staff ? wish->staff : 1);
        markup_close(&html);
    }
    markup_close(&html);
    markup_end(&html);
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

static void splice(const Buffer *text, const Insert *insert, Buffer *out)
{
    size_t done = 0;
    for (size_t i = 0; i < insert->found.count; i++) {
        size_t at = insert->found.at[i].offset, blank = at;
        while (blank > 0 && is_blank(text->text[blank - 1]))
            blank--;
        buffer_add(out, text->text + done, at - done);
        done = at;
        put_direction(out, insert, &insert->found.at[i], insert->marked + i + 1);
        buffer_add(out, text->text + blank, at - blank);
    }
    buffer_add(out, text->text + done, text->length - done);
}

spz_status mark_insert(const Buffer *text, const Movement *movement, Wish *wishes, size_t count, size_t marked, Buffer *out)
{
    Insert insert = {.movement = movement, .first = wishes, .count = count, .marked = marked};
    WalkListener listener = {&insert, find_places, NULL};
    insert.wishes = memory_resize(NULL, count + 1, sizeof *insert.wishes);
    spz_status status = insert.wishes ? SPZ_OK : SPZ_NO_MEMORY;
    for (size_t i = 0; i < count && !status; i++)
        insert.wishes[i] = &wishes[i];
    if (!status) {
        qsort(insert.wishes, count, sizeof *insert.wishes, by_bar);
        status = mark_walk(text->text, text->length, movement, &listener);
    }
    if (!status) {
        if (insert.found.count)
            qsort(insert.found.at, insert.found.count, sizeof *insert.found.at, by_offset);
        splice(text, &insert, out);
        status = buffer_failed(out) ? SPZ_NO_MEMORY : SPZ_OK;
    }
    array_free(&insert.found);
    memory_free(insert.wishes);
    return status;
}

/* Reads on to the end of the direction that `piece` opens; 0 when there is none. */
static size_t end_of_direction(XmlScan *scan, const XmlPiece *opening)
{
    XmlPiece piece = *opening;
    while (piece.kind != XML_FINISHED && piece.kind != XML_BROKEN) {
        if (piece.kind == XML_END && xml_is(&piece, "direction"))
            return piece.end;
        if (piece.kind == XML_EMPTY && piece.begin == opening->begin)
            return piece.end;
        piece = xml_next(scan);
    }
    return 0;
}

static bool is_ours(const XmlScan *scan, const XmlPiece *piece)
{
    char id[64];
    return (piece->kind == XML_START || piece->kind == XML_EMPTY) && xml_is(piece, "direction") &&
           xml_attribute(scan, piece, "id", id, sizeof id) && strncmp(id, OWN_MARK_ID, strlen(OWN_MARK_ID)) == 0;
}

spz_status mark_strip(const Buffer *text, Buffer *out, size_t *taken)
{
    XmlScan scan = {text->text, text->length, 0};
    size_t done = 0;
    XmlPiece piece = xml_next(&scan);
    *taken = 0;
    for (; piece.kind != XML_FINISHED && piece.kind != XML_BROKEN; piece = xml_next(&scan)) {
        if (!is_ours(&scan, &piece))
            continue;
        size_t end = end_of_direction(&scan, &piece);
        if (end == 0)
            return SPZ_NOT_XML;
        buffer_add(out, text->text + done, piece.begin - done);
        while (end < text->length && is_blank(text->text[end]))
            end++;
        done = scan.at = end;
        ++*taken;
    }
    if (piece.kind == XML_BROKEN)
        return SPZ_NOT_XML;
    buffer_add(out, text->text + done, text->length - done);
    return buffer_failed(out) ? SPZ_NO_MEMORY : SPZ_OK;
}

static void note_line(void *context, size_t part, int number)
{
    uint32_t *used = context;
    if (number >= 0 && number < 32)
        used[part] |= UINT32_C(1) << number;
}

spz_status mark_lines_used(const Buffer *text, const Movement *movement, uint32_t *used)
{
    WalkListener listener = {used, NULL, note_line};
    for (size_t i = 0; i < movement->part_count; i++)
        used[i] = 0;
    return mark_walk(text->text, text->length, movement, &listener);
}
