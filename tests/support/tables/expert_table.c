#include "support/tables/expert_table.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 8, BARS_MOST = 4000 };

/* Double basses under cellos are part of one voice, which is named after the cellos. Parts of a section count as the section. */
static SectionSet sections_named(const char *name, size_t length, spz_section *voice)
{
    static const struct { const char *name; spz_section section; SectionSet more; } names[] = {
        { "Vn1", SPZ_VN1, 0 }, { "Vn2", SPZ_VN2, 0 }, { "Vn3", SPZ_VN3, 0 }, { "Vns", SPZ_VIOLINS, 0 }, { "Va", SPZ_VA, 0 },
        { "Va1", SPZ_VA, 0 }, { "Va2", SPZ_VA, 0 }, { "Va3", SPZ_VA, 0 }, { "Vas", SPZ_VA, 0 }, { "Vc", SPZ_VC, 0 },
        { "Vc1", SPZ_VC, 0 }, { "Vc2", SPZ_VC, 0 }, { "Vc3", SPZ_VC, 0 }, { "Vcs", SPZ_VC, 0 }, { "VcCb", SPZ_VC, 1u << SPZ_DB },
        { "Cb", SPZ_DB, 0 },
    };
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        if (strlen(names[i].name) == length && !strncmp(names[i].name, name, length)) {
            *voice = names[i].section;
            return 1u << names[i].section | names[i].more;
        }
    *voice = SPZ_NO_SECTION;
    return 0;
}

static void add_link(Marked *row, SectionSet sections)
{
    if (sections && row->link_count < LINKS_MOST)
        row->links[row->link_count++] = sections;
}

/* 'Vn1>Vn2>Va+VcCb': a link of winds or soloists alone is left out. */
static void read_links(const char *text, Marked *row)
{
    SectionSet link = 0;
    spz_section voice;
    for (;; text++) {
        size_t length = strcspn(text, "+>");
        link |= sections_named(text, length, &voice);
        text += length;
        if (*text != '+') {
            add_link(row, link);
            link = 0;
        }
        if (!*text)
            return;
    }
}

/* Cuts a line at its tabs, in place. How many fields there are. */
static int cut(char *line, char **fields)
{
    int count = 0;
    line[strcspn(line, "\r\n")] = '\0';
    for (char *at = line; at && count < COLUMNS; count++) {
        fields[count] = at;
        at = strchr(at, '\t');
        if (at)
            *at++ = '\0';
    }
    return count;
}

bool marked_row_read(const char *line, Marked *row)
{
    char text[1024], *field[COLUMNS];
    snprintf(text, sizeof text, "%s", line);
    if (cut(text, field) < COLUMNS)
        return false;
    const char *responder = field[2][0] && strcmp(field[2], "-") ? field[2] : field[1];
    *row = (Marked){ .division = !strncmp(field[0], "div", 3), .first = atoi(field[3]), .last = atoi(field[4]), .strength = atoi(field[5]) };
    SectionSet sides[2] = { sections_named(field[1], strlen(field[1]), &row->named[0]), sections_named(responder, strlen(responder), &row->named[1]) };
    if (strchr(field[6], '>'))
        read_links(field[6], row);
    else
        for (int i = 0; i < 2; i++)
            add_link(row, sides[i]);
    return row->first >= 0 && row->last >= row->first && row->last < BARS_MOST && row->strength >= 1 && row->strength <= 3;
}

bool marked_table_read(const char *path, MarkedTable *table)
{
    char line[1024];
    FILE *file = fopen(path, "r");
    bool good = file && fgets(line, sizeof line, file) && !strncmp(line, "kind\tcaller\tresponder\tstart\tend\tstrength\tlinks\tnote", 51);
    table->count = 0;
    while (good && fgets(line, sizeof line, file))
        good = table->count < PASSAGES_MOST && marked_row_read(line, &table->at[table->count++]);
    if (file)
        fclose(file);
    return good;
}

/* The digits of a printed number: 12a is bar 12. */
static int bar(const char *label)
{
    return atoi(label + strcspn(label, "0123456789"));
}

bool listed_of(const spz_findings *findings, ListedTable *listed)
{
    listed->count = 0;
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *p = spz_findings_at(findings, i);
        spz_section one = p->sides[0].section, other = p->sides[1].section ? p->sides[1].section : one;
        bool division = p->kind == SPZ_DIV2 || p->kind == SPZ_DIV3;
        if ((!division && !spz_kind_is_antiphony(p->kind)) || one > SPZ_VIOLINS || other > SPZ_VIOLINS)
            continue;
        if (listed->count == PASSAGES_MOST)
            return false;
        listed->at[listed->count++] = (Listed){ division, { one, other }, bar(p->first_bar), bar(p->last_bar), p->strength >= 0.5 };
    }
    return true;
}

void listed_of_marked(const MarkedTable *table, ListedTable *listed)
{
    listed->count = 0;
    for (int i = 0; i < table->count; i++) {
        const Marked *row = &table->at[i];
        if (row->named[0] && row->named[1])
            listed->at[listed->count++] =
                (Listed){ row->division, { row->named[0], row->named[1] }, row->first, row->last, row->division || row->strength >= 2 };
    }
}

/* A section, and what it may also be called: all violins stand for the firsts or the seconds, and either for all. */
static SectionSet voices(spz_section section)
{
    SectionSet set = 1u << section;
    if (section == SPZ_VIOLINS)
        set |= 1u << SPZ_VN1 | 1u << SPZ_VN2;
    if (section == SPZ_VN1 || section == SPZ_VN2)
        set |= 1u << SPZ_VIOLINS;
    return set;
}

/* One of them is a link, the other is another link. */
static bool are_two_links(const Marked *row, SectionSet one, SectionSet other)
{
    for (int i = 0; i < row->link_count; i++)
        for (int j = 0; j < row->link_count; j++)
            if (i != j && (row->links[i] & one) && (row->links[j] & other))
                return true;
    return false;
}

static bool same_pair(const Marked *row, const Listed *passage)
{
    return row->division == passage->division && are_two_links(row, voices(passage->pair[0]), voices(passage->pair[1]));
}

static bool is_met(const Marked *row, const ListedTable *listed)
{
    int covered = 0;
    for (int at = row->first; at <= row->last; at++)
        for (int i = 0; i < listed->count; i++) {
            const Listed *p = &listed->at[i];
            if (at >= p->first && at <= p->last && (p->clear || row->division) && same_pair(row, p)) {
                covered++;
                break;
            }
        }
    return 2 * covered >= row->last - row->first + 1;
}

static int common_bars(const Marked *row, const Listed *passage)
{
    int first = row->first > passage->first ? row->first : passage->first, last = row->last < passage->last ? row->last : passage->last;
    return last >= first ? last - first + 1 : 0;
}

static bool is_right(const MarkedTable *table, const Listed *passage)
{
    int covered = 0;
    for (int at = passage->first; at <= passage->last; at++)
        for (int i = 0; i < table->count; i++) {
            const Marked *row = &table->at[i];
            if (at >= row->first && at <= row->last && same_pair(row, passage)) {
                covered++;
                break;
            }
        }
    return 2 * covered >= passage->last - passage->first + 1;
}

/* By the row of its pair that has most of its bars, the first of equals. */
static bool is_named_so(const MarkedTable *table, const Listed *passage)
{
    const Marked *most = NULL;
    for (int i = 0; i < table->count; i++)
        if (same_pair(&table->at[i], passage) && (!most || common_bars(&table->at[i], passage) > common_bars(most, passage)))
            most = &table->at[i];
    const spz_section *pair = passage->pair;
    return most && ((most->named[0] == pair[0] && most->named[1] == pair[1]) || (most->named[0] == pair[1] && most->named[1] == pair[0]));
}

/* First against second violins: bars in which a clear passage of theirs is marked, listed, both. */
static void add_violin_bars(const MarkedTable *table, const ListedTable *listed, Agreement *sum)
{
    static bool marked[BARS_MOST], found[BARS_MOST];
    memset(marked, 0, sizeof marked);
    memset(found, 0, sizeof found);
    for (int i = 0; i < table->count; i++) {
        const Marked *row = &table->at[i];
        if (!row->division && row->strength >= 2 && are_two_links(row, 1u << SPZ_VN1, 1u << SPZ_VN2))
            memset(marked + row->first, 1, (size_t)(row->last - row->first + 1));
    }
    for (int i = 0; i < listed->count; i++) {
        const Listed *p = &listed->at[i];
        if (!p->division && p->clear && p->pair[0] != p->pair[1] && p->pair[0] <= SPZ_VN2 && p->pair[1] <= SPZ_VN2)
            for (int at = p->first; at <= p->last && at < BARS_MOST; at++)
                found[at] = true;
    }
    for (int at = 0; at < BARS_MOST; at++) {
        sum->marked_bars += marked[at];
        sum->listed_bars += found[at];
        sum->common_bars += marked[at] && found[at];
    }
}

void agreement_add(const MarkedTable *table, const ListedTable *listed, bool divisions, Agreement *sum)
{
    for (int i = 0; i < table->count; i++) {
        const Marked *row = &table->at[i];
        if (row->division != divisions || row->link_count < 2 || (!divisions && row->strength < 2))
            continue;
        bool met = is_met(row, listed);
        sum->wanted++;
        sum->met += met;
        sum->striking += row->strength == 3;
        sum->struck += row->strength == 3 && met;
    }
    for (int i = 0; i < listed->count; i++) {
        const Listed *p = &listed->at[i];
        if (p->division != divisions || !p->clear)
            continue;
        bool right = is_right(table, p);
        sum->listed++;
        sum->right += right;
        sum->named += right && is_named_so(table, p);
    }
    if (!divisions)
        add_violin_bars(table, listed, sum);
}
