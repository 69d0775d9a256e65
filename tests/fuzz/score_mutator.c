#include "fuzz/score_mutator.h"
#include <libxml/parser.h>
#include <libxml/tree.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

enum { NODES_MOST = 20000 };

typedef struct Score {
    xmlDocPtr doc;
    unsigned seed;
    xmlNodePtr notes[NODES_MOST], bars[NODES_MOST], parts[64], leaves[NODES_MOST];
    size_t note_count, bar_count, part_count, leaf_count;
} Score;

/* Any number below `limit`, which may be 0. */
static size_t any(Score *score, size_t limit)
{
    score->seed = score->seed * 1664525u + 1013904223u;
    return limit ? (score->seed >> 8) % limit : 0;
}

static bool named(const xmlNode *node, const char *name)
{
    return node->type == XML_ELEMENT_NODE && strcmp((const char *)node->name, name) == 0;
}

static void note_down(Score *score, xmlNodePtr node)
{
    bool leaf = node->children && !node->children->next && node->children->type == XML_TEXT_NODE;
    if (named(node, "note") && score->note_count < NODES_MOST)
        score->notes[score->note_count++] = node;
    if (named(node, "measure") && score->bar_count < NODES_MOST)
        score->bars[score->bar_count++] = node;
    if (named(node, "part") && score->part_count < 64)
        score->parts[score->part_count++] = node;
    if (leaf && score->leaf_count < NODES_MOST)
        score->leaves[score->leaf_count++] = node;
}

static void look_around(Score *score)
{
    score->note_count = score->bar_count = score->part_count = score->leaf_count = 0;
    xmlNodePtr root = xmlDocGetRootElement(score->doc), node = root;
    while (node) {
        if (node->type == XML_ELEMENT_NODE)
            note_down(score, node);
        if (node->children && node->type == XML_ELEMENT_NODE) {
            node = node->children;
            continue;
        }
        while (node && node != root && !node->next)
            node = node->parent;
        node = !node || node == root ? NULL : node->next;
    }
}

static xmlNodePtr child(xmlNodePtr parent, const char *name)
{
    for (xmlNodePtr node = parent->children; node; node = node->next)
        if (named(node, name))
            return node;
    return NULL;
}

static void drop(xmlNodePtr node)
{
    xmlUnlinkNode(node);
    xmlFreeNode(node);
}

/* The bar at this place of a part. */
static xmlNodePtr bar_of(xmlNodePtr part, size_t place)
{
    for (xmlNodePtr node = part->children; node; node = node->next)
        if (named(node, "measure") && place-- == 0)
            return node;
    return NULL;
}

static size_t bars_in(xmlNodePtr part)
{
    size_t count = 0;
    while (bar_of(part, count))
        count++;
    return count;
}

/* The notes of `from`, in place of those of `to`; what is no note stays. */
static void give_notes(xmlNodePtr from, xmlNodePtr to)
{
    if (from == to)
        return;
    for (xmlNodePtr node = to->children, next; node; node = next) {
        next = node->next;
        if (named(node, "note") || named(node, "backup") || named(node, "forward"))
            drop(node);
    }
    for (xmlNodePtr node = from->children; node; node = node->next)
        if (named(node, "note") || named(node, "backup") || named(node, "forward"))
            xmlAddChild(to, xmlCopyNode(node, 1));
}

/* A stretch of one part played by another, so many bars later: what a canon or an exchange is made of. */
static void answer(Score *score)
{
    if (score->part_count == 0)
        return;
    xmlNodePtr caller = score->parts[any(score, score->part_count)], responder = score->parts[any(score, score->part_count)];
    size_t bars = bars_in(caller), at = any(score, bars), lag = any(score, 4), length = 1 + any(score, 4);
    for (size_t i = 0; i < length; i++) {
        xmlNodePtr from = bar_of(caller, at + i), to = bar_of(responder, at + i + lag);
        if (from && to)
            give_notes(from, to);
    }
}

static void silence(Score *score)
{
    if (score->bar_count == 0)
        return;
    xmlNodePtr bar = score->bars[any(score, score->bar_count)];
    for (xmlNodePtr node = bar->children; node; node = node->next) {
        xmlNodePtr pitch = named(node, "note") ? child(node, "pitch") : NULL;
        if (!pitch)
            continue;
        xmlNodePtr rest = xmlNewNode(NULL, BAD_CAST "rest");
        xmlReplaceNode(pitch, rest);
        xmlFreeNode(pitch);
    }
}

static void copy_note(Score *score)
{
    if (score->note_count < 2)
        return;
    xmlNodePtr from = score->notes[any(score, score->note_count)], to = score->notes[any(score, score->note_count)];
    xmlAddNextSibling(to, xmlCopyNode(from, 1));
    if (any(score, 2) && from != to)
        drop(from);
}

static void drop_note(Score *score)
{
    if (score->note_count > 1)
        drop(score->notes[any(score, score->note_count)]);
}

static void set_child(xmlNodePtr parent, const char *name, const char *text)
{
    xmlNodePtr node = child(parent, name);
    if (node)
        xmlNodeSetContent(node, BAD_CAST text);
}

static void change_pitch(Score *score)
{
    static const char *const steps[] = {"A", "B", "C", "D", "E", "F", "G"};
    static const char *const octaves[] = {"2", "3", "4", "5", "6", "0", "9"};
    xmlNodePtr pitch = score->note_count ? child(score->notes[any(score, score->note_count)], "pitch") : NULL;
    if (!pitch)
        return;
    set_child(pitch, "step", steps[any(score, 7)]);
    if (any(score, 3) == 0)
        set_child(pitch, "octave", octaves[any(score, 7)]);
}

static void change_length(Score *score)
{
    char text[16];
    if (score->note_count == 0)
        return;
    snprintf(text, sizeof text, "%zu", any(score, 12) * (any(score, 9) == 0 ? 1000 : 1));
    set_child(score->notes[any(score, score->note_count)], "duration", text);
}

/* A bar twice, or gone, in every part. */
static void stretch(Score *score)
{
    size_t place = score->part_count ? any(score, bars_in(score->parts[0])) : 0;
    bool twice = any(score, 2) != 0;
    for (size_t i = 0; i < score->part_count; i++) {
        xmlNodePtr bar = bar_of(score->parts[i], place);
        if (bar && twice)
            xmlAddNextSibling(bar, xmlCopyNode(bar, 1));
        else if (bar)
            drop(bar);
    }
}

static void put_words(Score *score)
{
    static const char *const words[] = {"div.", "div. a 3", "unis.", "tutti", "solo", "pizz.", "arco", "a 2", "1. Pult", "Da Capo al Fine", "D.S. al Coda", "con sord.", "div. en 4", "geteilt"};
    if (score->note_count == 0)
        return;
    xmlNodePtr direction = xmlNewNode(NULL, BAD_CAST "direction"), type = xmlNewChild(direction, NULL, BAD_CAST "direction-type", NULL);
    xmlNewTextChild(type, NULL, BAD_CAST "words", BAD_CAST words[any(score, sizeof words / sizeof *words)]);
    xmlAddPrevSibling(score->notes[any(score, score->note_count)], direction);
}

static void put_barline(Score *score)
{
    if (score->bar_count == 0)
        return;
    bool forward = any(score, 2) != 0;
    xmlNodePtr bar = score->bars[any(score, score->bar_count)], line = xmlNewNode(NULL, BAD_CAST "barline");
    xmlNewProp(line, BAD_CAST "location", BAD_CAST(forward ? "left" : "right"));
    if (any(score, 3) == 0) {
        xmlNodePtr ending = xmlNewChild(line, NULL, BAD_CAST "ending", NULL);
        xmlNewProp(ending, BAD_CAST "number", BAD_CAST(any(score, 2) ? "1" : "2"));
        xmlNewProp(ending, BAD_CAST "type", BAD_CAST(forward ? "start" : "stop"));
    }
    xmlNodePtr repeat = xmlNewChild(line, NULL, BAD_CAST "repeat", NULL);
    xmlNewProp(repeat, BAD_CAST "direction", BAD_CAST(forward ? "forward" : "backward"));
    if (forward && bar->children)
        xmlAddPrevSibling(bar->children, line);
    else
        xmlAddChild(bar, line);
}

/* One text takes another's place where both stand in elements of the same name. */
static void swap_texts(Score *score)
{
    if (score->leaf_count == 0)
        return;
    xmlNodePtr first = score->leaves[any(score, score->leaf_count)];
    for (int tries = 0; tries < 50; tries++) {
        xmlNodePtr second = score->leaves[any(score, score->leaf_count)];
        if (second == first || xmlStrcmp(first->name, second->name) != 0)
            continue;
        xmlChar *one = xmlNodeGetContent(first), *two = xmlNodeGetContent(second);
        xmlNodeSetContent(first, two);
        xmlNodeSetContent(second, one);
        xmlFree(one);
        xmlFree(two);
        return;
    }
}

static void odd_text(Score *score)
{
    static const char *const odd[] = {"", "0", "-1", "1", "2", "3/4", "999999999", "1e30", "0.5", "nan", "x", "12a", "\xC3\xA9", "Violin I", "Violoncello", "Flute"};
    if (score->leaf_count == 0)
        return;
    xmlNodePtr leaf = score->leaves[any(score, score->leaf_count)];
    xmlChar *text = xmlEncodeEntitiesReentrant(score->doc, BAD_CAST odd[any(score, sizeof odd / sizeof *odd)]);
    xmlNodeSetContent(leaf, text);
    xmlFree(text);
}

static void number_bar(Score *score)
{
    static const char *const numbers[] = {"0", "1", "X1", "12a", "", "7", "100"};
    if (score->bar_count == 0)
        return;
    xmlNodePtr bar = score->bars[any(score, score->bar_count)];
    xmlSetProp(bar, BAD_CAST "number", BAD_CAST numbers[any(score, 7)]);
    if (any(score, 2))
        xmlSetProp(bar, BAD_CAST "implicit", BAD_CAST "yes");
}

/* A whole element copied or moved behind another, whatever it is. */
static void graft(Score *score)
{
    if (score->leaf_count < 2)
        return;
    xmlNodePtr from = score->leaves[any(score, score->leaf_count)], to = score->leaves[any(score, score->leaf_count)];
    if (any(score, 2) && from->parent != to->parent && from->parent->parent && named(from->parent->parent, "note") == named(to->parent->parent ? to->parent->parent : to, "note"))
        from = from->parent;
    xmlAddNextSibling(to, xmlCopyNode(from, 1));
}

static void exchange_parts(Score *score)
{
    if (score->part_count < 2)
        return;
    xmlNodePtr one = score->parts[any(score, score->part_count)], two = score->parts[any(score, score->part_count)];
    xmlChar *id = xmlGetProp(one, BAD_CAST "id"), *other = xmlGetProp(two, BAD_CAST "id");
    if (id && other) {
        xmlSetProp(one, BAD_CAST "id", other);
        xmlSetProp(two, BAD_CAST "id", id);
    }
    xmlFree(id);
    xmlFree(other);
}

static size_t write_back(xmlDocPtr doc, uint8_t *data, size_t most)
{
    xmlChar *text = NULL;
    int length = 0;
    xmlDocDumpMemory(doc, &text, &length);
    size_t size = length > 0 && (size_t)length <= most ? (size_t)length : 0;
    if (size)
        memcpy(data, text, size);
    xmlFree(text);
    return size;
}

size_t score_mutate(uint8_t *data, size_t size, size_t most, unsigned seed)
{
    static void (*const changes[])(Score *) = {answer, answer, answer, silence, copy_note, drop_note, change_pitch, change_pitch, change_length, stretch, put_words, put_barline,
                                               swap_texts, odd_text, number_bar, graft, exchange_parts};
    static Score score;
    score.doc = xmlReadMemory((const char *)data, (int)size, "score", NULL, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NOBLANKS);
    score.seed = seed;
    if (!score.doc)
        return 0;
    for (size_t i = 0, times = 1 + any(&score, 3); i < times; i++) {
        look_around(&score);
        changes[any(&score, sizeof changes / sizeof *changes)](&score);
    }
    size_t written = write_back(score.doc, data, most);
    xmlFreeDoc(score.doc);
    return written;
}
