#include "support/tables/composed.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { BARS_MOST = 4000 };

static double strength_named(const char *word)
{
    return !strcmp(word, "striking") ? 0.9 : !strcmp(word, "clear") ? 0.65 : !strcmp(word, "marginal") ? 0.3 : 0;
}

/* Cuts the next field off at its comma. */
static char *field(char **rest)
{
    char *start = *rest, *comma = strchr(start, ',');
    if (comma)
        *comma = '\0';
    *rest = comma ? comma + 1 : start + strlen(start);
    return start;
}

/* file,kind,caller,responder,first_bar,last_bar,strength,note; only the note may hold commas. */
static bool read_row(char *line, Composed *row)
{
    *row = (Composed){.kind = SPZ_EXCHANGE};
    char *rest = line;
    snprintf(row->file, sizeof row->file, "%s", field(&rest));
    bool known = spz_kind_from_name(field(&rest), &row->kind);
    row->caller = spz_section_from_name(field(&rest));
    row->responder = spz_section_from_name(field(&rest));
    row->first = atoi(field(&rest));
    row->last = atoi(field(&rest));
    row->strength = strength_named(field(&rest));
    return known && row->caller != SPZ_NO_SECTION && row->first > 0 && row->last >= row->first && row->last < BARS_MOST && row->strength > 0;
}

int composed_read(const char *path, Composed *rows, int most)
{
    char line[1024];
    int count = 0;
    bool heads = true, good = true;
    FILE *file = fopen(path, "r");
    if (!file)
        return -1;
    while (good && fgets(line, sizeof line, file)) {
        if (!heads)
            good = count < most && read_row(line, &rows[count++]);
        heads = false;
    }
    fclose(file);
    return good ? count : -1;
}

static int family(spz_kind kind)
{
    return spz_kind_is_antiphony(kind) ? 0 : kind == SPZ_COUPLING ? 1 : 2;
}

static bool same_section(spz_section a, spz_section b)
{
    bool violins_a = a == SPZ_VN1 || a == SPZ_VN2 || a == SPZ_VN3, violins_b = b == SPZ_VN1 || b == SPZ_VN2 || b == SPZ_VN3;
    return a == b || (a == SPZ_VIOLINS && violins_b) || (b == SPZ_VIOLINS && violins_a);
}

/* A section of one orchestra and a section of the other. */
static bool from_orchestra_to_orchestra(const spz_passage *p, const spz_sections *sections)
{
    size_t groups = spz_sections_groups(sections);
    if (p->sides[0].group >= groups || p->sides[1].group >= groups)
        return p->sides[0].section == p->sides[1].section;
    return spz_sections_group(sections, p->sides[0].group)->orchestra != spz_sections_group(sections, p->sides[1].group)->orchestra;
}

static bool same_pair(const Composed *row, const spz_passage *p, const spz_sections *sections)
{
    if (row->caller == SPZ_STRINGS && row->responder == SPZ_STRINGS)
        return from_orchestra_to_orchestra(p, sections);
    return (same_section(row->caller, p->sides[0].section) && same_section(row->responder, p->sides[1].section)) ||
           (same_section(row->caller, p->sides[1].section) && same_section(row->responder, p->sides[0].section));
}

static void compare(Composed *row, const spz_findings *findings, const spz_sections *sections)
{
    static unsigned char found[BARS_MOST]; /* 1: by the family, 2: by the kind */
    memset(found, 0, sizeof found);
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *p = spz_findings_at(findings, i);
        if (family(p->kind) != family(row->kind) || !same_pair(row, p, sections))
            continue;
        int first = atoi(p->first_bar), last = atoi(p->last_bar);
        for (int bar = first > row->first ? first : row->first; bar <= last && bar <= row->last; bar++) {
            found[bar] |= (unsigned char)(p->kind == row->kind ? 3 : 1);
            if (p->strength > row->best)
                row->best = p->strength;
        }
    }
    for (int bar = row->first; bar <= row->last; bar++) {
        row->bars_found += found[bar] & 1;
        row->bars_as_named += found[bar] >> 1;
    }
}

spz_status composed_try(const char *folder, Composed *rows, int count)
{
    spz_status status = SPZ_OK;
    for (int start = 0, end; start < count && status == SPZ_OK; start = end) {
        char path[512];
        spz_reading *reading = NULL;
        for (end = start; end < count && !strcmp(rows[end].file, rows[start].file);)
            end++;
        snprintf(path, sizeof path, "%.400s/%s", folder, rows[start].file);
        status = spz_reading_make(path, NULL, 0, SPZ_TO_PASSAGES, NULL, &reading);
        for (int i = start; i < end && status == SPZ_OK; i++)
            compare(&rows[i], spz_reading_at(reading, 0).findings, spz_reading_at(reading, 0).sections);
        spz_reading_free(reading);
    }
    return status;
}

bool composed_met(const Composed *row)
{
    return 2 * row->bars_found >= row->last - row->first + 1;
}

bool composed_named(const Composed *row)
{
    return 2 * row->bars_as_named >= row->last - row->first + 1;
}

bool composed_apart(const Composed *row)
{
    return row->caller == SPZ_STRINGS || row->responder == SPZ_WINDS;
}
