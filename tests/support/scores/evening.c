#include "support/scores/evening.h"
#include "support/suite.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

void evening_begin(Evening *evening, size_t bars)
{
    static const spz_section five[] = {SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC, SPZ_DB};
    memset(evening, 0, sizeof *evening);
    CU_ASSERT_FATAL(bars <= EVENING_BARS);
    Movement *m = &evening->movement;
    m->file = m->work = m->composer = "";
    m->title = "Evening";
    m->bars = evening->bars;
    m->bar_count = bars;
    m->per_crotchet = 4;
    m->length = (Ticks)bars * 16;
    for (size_t i = 0; i < bars; i++) {
        snprintf(evening->numbers[i], sizeof evening->numbers[i], "%zu", i + 1);
        evening->bars[i] = (Bar){.number = evening->numbers[i], .onset = (Ticks)i * 16, .length = 16, .nominal = 16, .beat = 4};
    }
    evening->map.movement = m;
    evening->map.groups = evening->groups;
    evening->map.lines = &evening->line;
    arena_init(&evening->findings.arena);
    evening->findings.map = &evening->map;
    for (size_t i = 0; i < COUNT(five); i++)
        evening_group(evening, five[i], 0, false);
}

void evening_end(Evening *evening)
{
    array_free(&evening->findings.passages);
    array_free(&evening->findings.pairings);
    arena_release(&evening->findings.arena);
}

size_t evening_group(Evening *evening, spz_section section, int orchestra, bool solo)
{
    size_t index = evening->map.group_count;
    CU_ASSERT_FATAL(index < EVENING_GROUPS);
    evening->groups[index].about = (spz_group){
        .section = section, .orchestra = orchestra, .solo = solo, .name = spz_section_name(section)};
    evening->map.group_count++;
    return index;
}

static size_t group_of(const Evening *evening, spz_section section)
{
    for (size_t i = 0; i < evening->map.group_count; i++)
        if (evening->groups[i].about.section == section && !evening->groups[i].about.solo)
            return i;
    return SIZE_MAX;
}

spz_passage *evening_passage(Evening *evening, spz_kind kind, spz_section a, spz_section b, size_t first, size_t last,
                             double strength)
{
    spz_passage p = {.kind = kind,
                     .sides = {{.section = a, .group = group_of(evening, a)}, {.section = b, .group = group_of(evening, b)}},
                     .first = first - 1,
                     .last = last - 1,
                     .onset = (Ticks)(first - 1) * 16,
                     .end = (Ticks)last * 16,
                     .strength = strength,
                     .turns = kind == SPZ_DIV3 ? 3 : 2, /* of all violins: three lines */
                     .foreground = 1,
                     .letter = ""};
    for (int side = 0; side < 2; side++)
        p.sides[side].players = p.sides[side].group < SIZE_MAX ? players_of_group(p.sides[side].group) : 0;
    CU_ASSERT_FATAL(last >= first && last <= evening->movement.bar_count);
    p.first_bar = evening->bars[p.first].number;
    p.last_bar = evening->bars[p.last].number;
    CU_ASSERT_FATAL(array_push(&evening->findings.passages, p));
    return &evening->findings.passages.at[evening->findings.passages.count - 1];
}

void evening_passages(Evening *evening, spz_kind kind, spz_section a, spz_section b, size_t count, double strength)
{
    for (size_t i = 0; i < count; i++)
        evening_passage(evening, kind, a, b, 8 * i + 3, 8 * i + 4, strength);
}

void evening_couple(Evening *evening, spz_section a, spz_section b, double strength, double tightness, double shortest)
{
    spz_passage *p = evening_passage(evening, SPZ_COUPLING, a, b, 1, evening->movement.bar_count, strength);
    p->tightness = tightness;
    p->shortest = shortest;
}

spz_settings *evening_settings(const char *text)
{
    char path[] = "/tmp/spezzato-house-XXXXXX";
    spz_settings *settings = NULL;
    int file = mkstemp(path);
    CU_ASSERT_FATAL(file >= 0);
    CU_ASSERT_EQUAL_FATAL(write(file, text, strlen(text)), (ssize_t)strlen(text));
    close(file);
    CU_ASSERT_EQUAL_FATAL(spz_settings_new(&settings), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_settings_read(settings, path, NULL), SPZ_OK);
    unlink(path);
    return settings;
}

spz_verdict *evening_judge(const Evening *evening, const spz_settings *settings, int year)
{
    spz_verdict *verdict = NULL;
    CU_ASSERT_EQUAL_FATAL(spz_seating_judge(&evening->findings, settings, year, NULL, &verdict), SPZ_OK);
    return verdict;
}

const spz_ranked *verdict_of(const spz_verdict *verdict, const char *name)
{
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        if (strcmp(spz_verdict_ranked(verdict, i)->name, name) == 0)
            return spz_verdict_ranked(verdict, i);
    return NULL;
}

bool order_is(spz_order order, const char *names)
{
    char text[120] = "";
    for (int i = 0; i < order.count; i++)
        snprintf(text + strlen(text), sizeof text - strlen(text), "%s%s", i ? ", " : "", spz_section_name(order.sections[i]));
    return strcmp(text, names) == 0;
}

bool bars_are(const spz_basis *basis, const char *bars)
{
    char text[400] = "";
    for (size_t i = 0; i < basis->bar_count; i++) {
        const spz_bars *b = &basis->bars[i];
        snprintf(text + strlen(text), sizeof text - strlen(text), "%s%s%s%s", i ? ", " : "", b->first_bar, b->last > b->first ? "-" : "",
                 b->last > b->first ? b->last_bar : "");
    }
    return strcmp(text, bars) == 0;
}

const spz_loss *loss_of(const spz_ranked *ranked, spz_kind kind, spz_section a, spz_section b)
{
    for (size_t i = 0; i < ranked->loss_count; i++) {
        const spz_loss *loss = &ranked->losses[i];
        if (loss->kind == kind && loss->sides[0] == a && loss->sides[1] == b && !loss->throughout)
            return loss;
    }
    return NULL;
}

const spz_reason *reason_of(const spz_verdict *verdict, spz_reason_kind kind)
{
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++)
        if (spz_verdict_reason(verdict, i)->kind == kind)
            return spz_verdict_reason(verdict, i);
    return NULL;
}

const spz_term *term_of(const spz_ranked *ranked, spz_term_kind kind)
{
    for (size_t i = 0; i < ranked->term_count; i++)
        if (ranked->terms[i].kind == kind)
            return &ranked->terms[i];
    return NULL;
}

static double best_of(const spz_verdict *verdict, bool opposed)
{
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        if (spz_verdict_ranked(verdict, i)->opposed == opposed)
            return spz_verdict_ranked(verdict, i)->score;
    return -1;
}

double best_opposed(const spz_verdict *verdict)
{
    return best_of(verdict, true);
}

double best_together(const spz_verdict *verdict)
{
    return best_of(verdict, false);
}
