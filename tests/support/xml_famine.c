#include "support/xml_famine.h"
#include <libxml/xmlerror.h>
#include <libxml/xmlmemory.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCKS_MOST = 4096 };
static long refused_request;
static void *blocks[BLOCKS_MOST]; /* what is not given back is remembered */
static struct {
    xmlFreeFunc give_back;
    xmlMallocFunc get;
    xmlReallocFunc resize;
    xmlStrdupFunc copy;
} before;

/* Where the block is remembered; NULL: the first place that is free. */
static void **place_of(const void *block)
{
    size_t i = 0;
    while (i < BLOCKS_MOST - 1 && blocks[i] != block)
        i++;
    return &blocks[i];
}

static void *remember(void *block)
{
    return *place_of(NULL) = block;
}

static bool is_refused(void)
{
    return refused_request > 0 && --refused_request == 0;
}

static void *get(size_t size)
{
    return is_refused() ? NULL : remember(malloc(size));
}

static void *resize(void *block, size_t size)
{
    if (is_refused())
        return NULL;
    void **place = place_of(block);
    return *place = realloc(block, size);
}

static char *copy(const char *text)
{
    return is_refused() ? NULL : remember(strdup(text));
}

static void give_back(void *block)
{
    if (block)
        *place_of(block) = NULL;
    free(block);
}

static void say_nothing(void *context, const char *message, ...)
{
    (void)context, (void)message;
}

void xml_famine_begin(void)
{
    xmlMemGet(&before.give_back, &before.get, &before.resize, &before.copy);
    xmlMemSetup(give_back, get, resize, copy);
    xmlSetGenericErrorFunc(NULL, say_nothing);
}

void xml_famine_refuse(long request)
{
    refused_request = request;
}

bool xml_famine_came(void)
{
    bool came = refused_request == 0;
    refused_request = 0;
    return came;
}

size_t xml_famine_lost(void)
{
    size_t lost = 0;
    xmlResetLastError(); /* what it remembers is not lost */
    for (size_t i = 0; i < BLOCKS_MOST; i++) {
        lost += blocks[i] != NULL;
        free(blocks[i]);
        blocks[i] = NULL;
    }
    return lost;
}

void xml_famine_end(void)
{
    xmlSetGenericErrorFunc(NULL, NULL);
    xmlMemSetup(before.give_back, before.get, before.resize, before.copy);
}
