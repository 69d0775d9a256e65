/* Divided sections against the tables of expert readers (shared/expert, protocol beside them): the rules of score_passages.py there,
 * written again. Skips with one line where the shared folder is not at hand. */
#include "spezzato/spezzato.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS_MOST = 80, BARS_MOST = 2000 };

typedef struct Row { spz_section section; int first, last; bool counts; } Row; /* counts: clear, not marginal */
typedef struct Rows { Row at[ROWS_MOST]; int count; } Rows;
typedef struct Score { int wanted, met, listed, right; } Score;

static spz_section section_named(const char *name)
{
    static const struct { const char *name; spz_section section; } names[] = {
        { "Vn1", SPZ_VN1 }, { "Vn2", SPZ_VN2 }, { "Vns", SPZ_VIOLINS }, { "Va", SPZ_VA }, { "Vc", SPZ_VC }, { "Cb", SPZ_DB },
    };
    for (size_t i = 0; i < COUNT(names); i++)
        if (!strcmp(names[i].name, name))
            return names[i].section;
    return SPZ_NO_SECTION;
}

/* Columns: kind, caller, responder, start, end, strength, note. */
static void read_table(const char *path, Rows *rows)
{
    char line[512], kind[32], caller[32];
    FILE *file = fopen(path, "r");
    CU_ASSERT_PTR_NOT_NULL_FATAL(file);
    while (fgets(line, sizeof line, file) && rows->count < ROWS_MOST) {
        const char *rest = line;
        for (int tabs = 0; *rest && tabs < 3; rest++)
            tabs += *rest == '\t';
        int first, last, strength;
        if (sscanf(line, "%31[^\t]\t%31[^\t]", kind, caller) == 2 && !strncmp(kind, "div", 3) &&
            sscanf(rest, "%d\t%d\t%d", &first, &last, &strength) == 3)
            rows->at[rows->count++] = (Row){ section_named(caller), first, last, strength >= 2 };
    }
    fclose(file);
}

static void read_findings(const char *path, Rows *rows)
{
    spz_reading *reading = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_reading_make(path, NULL, 0, SPZ_TO_PASSAGES, NULL, &reading), SPZ_OK);
    const spz_findings *findings = spz_reading_at(reading, 0).findings;
    for (size_t i = 0; i < spz_findings_count(findings) && rows->count < ROWS_MOST; i++) {
        const spz_passage *p = spz_findings_at(findings, i);
        if (p->kind == SPZ_DIV2 || p->kind == SPZ_DIV3)
            rows->at[rows->count++] = (Row){ p->sides[0].section, atoi(p->first_bar), atoi(p->last_bar), p->strength >= 0.5 };
    }
    spz_reading_free(reading);
}

/* All violins match either section. */
static bool same_section(spz_section a, spz_section b)
{
    return a == b || (a == SPZ_VIOLINS && (b == SPZ_VN1 || b == SPZ_VN2)) || (b == SPZ_VIOLINS && (a == SPZ_VN1 || a == SPZ_VN2));
}

/* At least half of its bars lie in rows of the same section. */
static bool covered(const Row *row, const Rows *others, bool clear_only)
{
    int bars = 0;
    for (int bar = row->first; bar <= row->last && bar < BARS_MOST; bar++)
        for (int i = 0; i < others->count; i++) {
            const Row *other = &others->at[i];
            if ((other->counts || !clear_only) && same_section(row->section, other->section) && bar >= other->first && bar <= other->last) {
                bars++;
                break;
            }
        }
    return 2 * bars >= row->last - row->first + 1;
}

static void score_movement(const char *name, Score *score)
{
    static Rows table, found;
    char path[256];
    table.count = found.count = 0;
    snprintf(path, sizeof path, "expert/%s.tsv", name);
    const char *there = shared_file(path);
    if (!there)
        return;
    read_table(there, &table);
    snprintf(path, sizeof path, "scores/%s.mxl", name);
    there = shared_file(path);
    if (!there)
        return;
    read_findings(there, &found);
    for (int i = 0; i < table.count; i++)
        if (table.at[i].counts) {
            score->wanted++;
            score->met += covered(&table.at[i], &found, true);
        }
    for (int i = 0; i < found.count; i++)
        if (found.at[i].counts) {
            score->listed++;
            score->right += covered(&found.at[i], &table, false);
        }
}

static void divided_sections_are_those_that_expert_readers_mark(void)
{
    static const char *const movements[] = {
        "Bach_BWV.1048_1", "Beach_Op.32_2", "Boulanger_Dun_matin_de_printemps", "Brahms_Op.73_3", "Brahms_Op.98_2", "Schubert_D.485_1",
    };
    Score score = { 0, 0, 0, 0 };
    if (!shared_file("expert/README.md"))
        return;
    for (size_t i = 0; i < COUNT(movements); i++)
        score_movement(movements[i], &score);
    CU_ASSERT_TRUE(score.wanted > 0 && score.met * 100 >= score.wanted * 90);
    CU_ASSERT_TRUE(score.listed > 0 && score.right * 100 >= score.listed * 85);
    if (score.met * 100 < score.wanted * 90 || score.right * 100 < score.listed * 85)
        printf("\n    recall %d of %d, precision %d of %d", score.met, score.wanted, score.right, score.listed);
}

static const struct Statement statements[] = { STATEMENT(divided_sections_are_those_that_expert_readers_mark) };
void suite_divisi_expert(void) { suite_of("divisi against expert tables", statements, COUNT(statements)); }
