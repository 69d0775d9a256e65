/* The walk follows the clock of each bar as the reader does: notes move it on, chord notes and grace notes don't, backup and forward
 * shift it. Elements are told apart by name and depth: <score-partwise><part><measure><note>, or the same with part and measure
 * changed over. */
#include "editing/bytes/mark_walk.h"
#include "support/numbers.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { DEPTH_BAR = 3, DEPTH_ITEM = 4, DEPTH_DETAIL = 5, DEPTH_SIGN = 6, DEPTH_MOST = 200 };

typedef enum Item { ITEM_OTHER, ITEM_NOTE, ITEM_BACKUP, ITEM_FORWARD, ITEM_DIRECTION, ITEM_ATTRIBUTES } Item;

typedef struct Walk {
    XmlScan scan;
    const Movement *movement;
    const WalkListener *listener;
    double *divisions;  /* by part */
    PlaceList places;
    int depth;
    bool timewise;
    long part;          /* -1: none that the reader knows */
    size_t bar;
    bool in_bar;
    Ticks clock;
    /* the item that is open */
    Item item;
    Place place;
    bool chord, grace;
    double duration;
    /* the text of the detail that is open */
    char text[PART_NAME_MOST];
    size_t text_length;
    spz_status status;
} Walk;

static void open_bar(Walk *walk)
{
    walk->in_bar = true;
    walk->places.count = 0;
    walk->clock = 0;
}

static void add_place(Walk *walk, Place place)
{
    if (walk->listener->bar && !array_push(&walk->places, place))
        walk->status = SPZ_NO_MEMORY;
}

/* `end` is where the closing tag begins. */
static void close_bar(Walk *walk, size_t end)
{
    if (!walk->in_bar)
        return;
    walk->in_bar = false;
    if (walk->part < 0 || !walk->listener->bar)
        return;
    add_place(walk, (Place){end, walk->clock, walk->divisions[walk->part], 0, "", false});
    if (walk->status == SPZ_OK && !walk->listener->bar(walk->listener->context, (size_t)walk->part, walk->bar, &walk->places))
        walk->status = SPZ_NO_MEMORY;
}

static void open_frame(Walk *walk, const XmlPiece *piece)
{
    char id[256];
    if (walk->depth == 1)
        walk->timewise = xml_is(piece, "score-timewise");
    else if (xml_is(piece, "part")) {
        walk->part = movement_part_of(walk->movement, xml_attribute(&walk->scan, piece, "id", id, sizeof id));
        if (walk->depth == 2)
            walk->bar = SIZE_MAX;
    } else if (xml_is(piece, "measure"))
        walk->bar++;
    if (walk->depth == DEPTH_BAR && xml_is(piece, walk->timewise ? "part" : "measure"))
        open_bar(walk);
}

static Item item_named(const XmlPiece *piece)
{
    static const struct { const char *name; Item item; } items[] = {
        {"note", ITEM_NOTE}, {"backup", ITEM_BACKUP}, {"forward", ITEM_FORWARD}, {"direction", ITEM_DIRECTION}, {"attributes", ITEM_ATTRIBUTES}};
    for (size_t i = 0; i < sizeof items / sizeof items[0]; i++)
        if (xml_is(piece, items[i].name))
            return items[i].item;
    return ITEM_OTHER;
}

static void open_item(Walk *walk, const XmlPiece *piece)
{
    walk->item = item_named(piece);
    walk->chord = walk->grace = false;
    walk->duration = 0;
    walk->place = (Place){piece->begin, walk->clock, walk->part < 0 ? 0 : walk->divisions[walk->part], 1, "", true};
}

static void open_detail(Walk *walk, const XmlPiece *piece)
{
    walk->text_length = 0;
    if (walk->item == ITEM_NOTE) {
        walk->chord = walk->chord || xml_is(piece, "chord");
        walk->grace = walk->grace || xml_is(piece, "grace");
    }
}

static void open_sign(Walk *walk, const XmlPiece *piece)
{
    char number[16];
    if (walk->item != ITEM_DIRECTION || !walk->listener->line || walk->part < 0)
        return;
    if (xml_is(piece, "bracket") || xml_is(piece, "dashes")) {
        const char *given = xml_attribute(&walk->scan, piece, "number", number, sizeof number);
        walk->listener->line(walk->listener->context, (size_t)walk->part, given ? atoi(given) : 1);
    }
}

static void open_element(Walk *walk, const XmlPiece *piece)
{
    walk->depth++;
    if (walk->depth <= DEPTH_BAR)
        open_frame(walk, piece);
    else if (walk->in_bar && walk->depth == DEPTH_ITEM)
        open_item(walk, piece);
    else if (walk->in_bar && walk->depth == DEPTH_DETAIL)
        open_detail(walk, piece);
    else if (walk->in_bar && walk->depth == DEPTH_SIGN)
        open_sign(walk, piece);
}

static double number_within(const char *text)
{
    const char *end;
    return number_read(text + strspn(text, " \t\r\n"), &end);
}

static void close_detail(Walk *walk, const XmlPiece *piece)
{
    walk->text[walk->text_length] = '\0';
    if (xml_is(piece, "divisions") && walk->item == ITEM_ATTRIBUTES && walk->part >= 0)
        walk->divisions[walk->part] = number_within(walk->text);
    else if (xml_is(piece, "duration"))
        walk->duration = number_within(walk->text);
    else if (xml_is(piece, "staff"))
        walk->place.staff = atoi(walk->text);
    else if (xml_is(piece, "voice")) {
        char *word = walk->text + strspn(walk->text, " \t\r\n");
        word[strcspn(word, " \t\r\n")] = '\0';
        memcpy(walk->place.voice, word, strlen(word) + 1);
    }
}

/* Every written duration is a whole number of ticks (movement.h), and small enough for a double to be exact about it. */
static Ticks item_ticks(const Walk *walk)
{
    double divisions = walk->part < 0 ? 0 : walk->divisions[walk->part];
    double ticks = divisions > 0 ? walk->duration * (double)walk->movement->per_crotchet / divisions : 0;
    return ticks > 0 && ticks < 9e15 ? (Ticks)llround(ticks) : 0;
}

static void close_item(Walk *walk)
{
    Ticks ticks = item_ticks(walk);
    if (walk->item == ITEM_NOTE) {
        if (!walk->chord)
            add_place(walk, walk->place);
        if (!walk->chord && !walk->grace)
            walk->clock += ticks;
    } else if (walk->item == ITEM_FORWARD)
        walk->clock += ticks;
    else if (walk->item == ITEM_BACKUP)
        walk->clock = walk->clock > ticks ? walk->clock - ticks : 0;
}

static void close_element(Walk *walk, const XmlPiece *piece)
{
    if (walk->in_bar && walk->depth == DEPTH_DETAIL)
        close_detail(walk, piece);
    else if (walk->in_bar && walk->depth == DEPTH_ITEM)
        close_item(walk);
    else if (walk->depth == DEPTH_BAR)
        close_bar(walk, piece->begin);
    if (--walk->depth < 0)
        walk->status = SPZ_NOT_XML;
}

static void keep_text(Walk *walk, const XmlPiece *piece)
{
    size_t room = sizeof walk->text - 1 - walk->text_length;
    size_t length = piece->inside_length < room ? piece->inside_length : room;
    if (walk->depth != DEPTH_DETAIL || !walk->in_bar)
        return;
    memcpy(walk->text + walk->text_length, piece->inside, length);
    walk->text_length += length;
}

static void take_piece(Walk *walk, const XmlPiece *piece)
{
    bool opens = piece->kind == XML_START || piece->kind == XML_EMPTY;
    if (piece->kind == XML_BROKEN || walk->depth > DEPTH_MOST)
        walk->status = SPZ_NOT_XML;
    if (opens)
        open_element(walk, piece);
    if (piece->kind == XML_EMPTY && walk->depth == DEPTH_BAR)
        walk->in_bar = false; /* <measure/>: there is no place in it */
    if (piece->kind == XML_EMPTY || piece->kind == XML_END)
        close_element(walk, piece);
    if (piece->kind == XML_TEXT)
        keep_text(walk, piece);
}

spz_status mark_walk(const char *text, size_t length, const Movement *movement, const WalkListener *listener)
{
    Walk walk = {.scan = {text, length, 0}, .movement = movement, .listener = listener, .part = -1, .bar = SIZE_MAX};
    XmlPiece piece;
    walk.divisions = memory_resize(NULL, movement->part_count + 1, sizeof *walk.divisions);
    if (!walk.divisions)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i <= movement->part_count; i++)
        walk.divisions[i] = 1; /* as the reader takes durations before any <divisions> */
    do {
        piece = xml_next(&walk.scan);
        take_piece(&walk, &piece);
    } while (piece.kind != XML_FINISHED && walk.status == SPZ_OK);
    if (walk.status == SPZ_OK && walk.depth != 0)
        walk.status = SPZ_NOT_XML;
    array_free(&walk.places);
    memory_free(walk.divisions);
    return walk.status;
}
