/* titles.c - the head of the score: titles, composer, year, and the links of a collection of scores. */
#include "reader/reader.h"
#include "support/text/ascii.h"
#include <stdio.h>
#include <string.h>

void read_root_start(Reader *reader)
{
    if (reader->depth > 1 && reader->opus.seen && reader_parent(reader) == ELEMENT_OPUS) /* part of a collection */
        return;
    if (reader->depth != 1)
        reader_fail(reader, SPZ_NOT_MUSICXML, "a whole score stands inside another element");
    reader->timewise = reader->open[0] == ELEMENT_SCORE_TIMEWISE;
    reader->opus.seen = reader->open[0] == ELEMENT_OPUS;
}

void read_opus_link_start(Reader *reader)
{
    char href[LIMIT_TEXT];
    if (!reader->opus.seen || !reader_attribute(reader, ATTRIBUTE_HREF, href, sizeof href))
        return;
    const char *name = reader_keep(reader, href);
    if (reader->opus.names.count >= LIMIT_LINKS)
        reader_fail(reader, SPZ_OVER_LIMIT, "the collection names more than %d scores", LIMIT_LINKS);
    else if (name && !array_push(&reader->opus.names, name))
        reader_no_memory(reader);
}

void read_work_title_end(Reader *reader)
{
    reader->titles.work = reader_keep(reader, reader_text(reader));
}

void read_movement_number_end(Reader *reader)
{
    reader->titles.number = reader_keep(reader, reader_text(reader));
}

void read_movement_title_end(Reader *reader)
{
    reader->titles.movement = reader_keep(reader, reader_text(reader));
}

void read_creator_start(Reader *reader)
{
    reader->creator_type[0] = '\0';
    reader_attribute(reader, ATTRIBUTE_TYPE, reader->creator_type, sizeof reader->creator_type);
}

void read_creator_end(Reader *reader)
{
    if (strcmp(reader->creator_type, "composer") == 0 && !reader->titles.composer)
        reader->titles.composer = reader_keep(reader, reader_text(reader));
}

void read_field_start(Reader *reader)
{
    char *name = reader->field_name;
    name[0] = '\0';
    reader_attribute(reader, ATTRIBUTE_NAME, name, sizeof reader->field_name);
    for (; *name; name++)
        *name = (char)ascii_lower((unsigned char)*name);
}

/* The last plausible year of a text: '1874-76' was composed by 1876, but '1874' is what can be read with certainty. */
static int year_in(const char *text)
{
    for (const char *at = text; *at; at++) {
        bool begins = at == text || !ascii_is_digit((unsigned char)at[-1]);
        int digits = 0, year = 0;
        while (begins && ascii_is_digit((unsigned char)at[digits]) && digits < 5)
            year = year * 10 + (at[digits++] - '0');
        if (digits == 4 && year >= 1000 && year <= 2100)
            return year;
    }
    return 0;
}

/* Only fields that speak of the composition: dates of engraving or of the file say nothing about the seating. */
void read_field_end(Reader *reader)
{
    if (strstr(reader->field_name, "compos") && reader->titles.year == 0)
        reader->titles.year = year_in(reader_text(reader));
}

void read_credit_start(Reader *reader)
{
    char page[16];
    int64_t number = 1;
    reader->credit_type[0] = '\0';
    if (!reader_attribute(reader, ATTRIBUTE_PAGE, page, sizeof page) || !number_whole(page, &number) || number < 1 || number > 100000)
        number = 1;
    reader->credit_page = (int)number;
}

void read_credit_type_end(Reader *reader)
{
    snprintf(reader->credit_type, sizeof reader->credit_type, "%s", reader_text(reader));
}

/* Titles that stand on a page: of the first where the head of the file names none, and of the movements inside. */
void read_credit_words_end(Reader *reader)
{
    const char *text = reader_text(reader);
    bool title = strcmp(reader->credit_type, "title") == 0 || (reader->credit_page > 1 && strcmp(reader->credit_type, "subtitle") == 0);
    if (!title || *text == '\0' || reader->titles.on_pages.count >= LIMIT_LINKS)
        return;
    PageTitle on_page = {reader_keep(reader, text), reader->credit_page};
    if (on_page.text && !array_push(&reader->titles.on_pages, on_page))
        reader_no_memory(reader);
}
