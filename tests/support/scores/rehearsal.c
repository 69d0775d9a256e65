#include "support/scores/rehearsal.h"
#include "support/notation/notation.h"
#include "wording/passage_words.h"
#include <CUnit/CUnit.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void complain(void *context, const spz_message *m)
{
    (void)context;
    if (m->severity == SPZ_ERROR)
        fprintf(stderr, "\n  %s line %ld: %s\n", m->file ? m->file : "", m->line, m->text);
}

Rehearsal rehearse(const char *notation)
{
    Rehearsal r = {0};
    char error[300] = "";
    size_t length = 0;
    spz_sink sink = {complain, NULL};
    char *xml = notation_to_musicxml(notation, &length, error, sizeof error);
    if (!xml)
        fprintf(stderr, "\n  notation: %s\n", error);
    CU_ASSERT_PTR_NOT_NULL_FATAL(xml);
    CU_ASSERT_EQUAL_FATAL(spz_score_read_memory(xml, length, "rehearsal", &sink, &r.score), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(spz_score_movement(r.score, 0), NULL, &sink, &r.sections), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_passages_find(r.sections, NULL, &sink, &r.findings), SPZ_OK);
    free(xml);
    return r;
}

void rehearsal_end(Rehearsal *r)
{
    spz_findings_free(r->findings);
    spz_sections_free(r->sections);
    spz_score_free(r->score);
    *r = (Rehearsal){0};
}

static bool between(const spz_passage *p, const char *a, const char *b)
{
    const char *c = spz_section_name(p->sides[0].section), *d = spz_section_name(p->sides[1].section);
    return (!strcmp(a, c) && !strcmp(b, d)) || (!strcmp(a, d) && !strcmp(b, c));
}

static const spz_passage *strongest(const Rehearsal *r, int kind, const char *a, const char *b)
{
    const spz_passage *best = NULL;
    for (size_t i = 0; i < spz_findings_count(r->findings); i++) {
        const spz_passage *p = spz_findings_at(r->findings, i);
        bool fits = kind < 0 ? spz_kind_is_antiphony(p->kind) : (int)p->kind == kind;
        if (fits && between(p, a, b) && (!best || p->strength > best->strength))
            best = p;
    }
    return best;
}

const spz_passage *heard(const Rehearsal *r, spz_kind kind, const char *caller, const char *responder)
{
    return strongest(r, (int)kind, caller, responder);
}

const spz_passage *antiphony(const Rehearsal *r, const char *caller, const char *responder)
{
    return strongest(r, -1, caller, responder);
}

static const char *kept(Buffer *words)
{
    static char text[600];
    snprintf(text, sizeof text, "%s", words->text ? words->text : "");
    buffer_free(words);
    return text;
}

const char *told(const Rehearsal *r, const spz_passage *passage)
{
    Speaker speaker = {SPZ_ENGLISH, r->sections};
    Buffer words;
    buffer_init(&words);
    words_told(&speaker, passage, &words);
    return kept(&words);
}

const char *order_of_entry(const Rehearsal *r, const spz_passage *passage)
{
    Speaker speaker = {SPZ_ENGLISH, r->sections};
    Buffer words;
    buffer_init(&words);
    words_links(&speaker, passage, &words);
    return kept(&words);
}

bool lies_in(const spz_passage *passage, const char *first_bar, const char *last_bar)
{
    bool yes = passage && !strcmp(passage->first_bar, first_bar) && !strcmp(passage->last_bar, last_bar);
    if (passage && !yes)
        fprintf(stderr, "\n  heard at %s-%s, not %s-%s\n", passage->first_bar, passage->last_bar, first_bar, last_bar);
    return yes;
}
