/* Which passages to cite: each choice takes the passage that is worth most beside those already chosen. */
#include "citations/accompaniment.h"
#include "citations/citation_facts.h"
#include <stdlib.h>
#include <string.h>

/* How much a listener without a score hears of each kind, against an exchange; common practice, no source. */
static const double audible[SPZ_KIND_COUNT] = {
    [SPZ_EXCHANGE] = 1.0, [SPZ_HOCKET] = 1.0, [SPZ_SPLIT_LINE] = 0.9, [SPZ_IMITATION] = 0.85,
    [SPZ_DIV2] = 0.4,     [SPZ_DIV3] = 0.6,   [SPZ_COUPLING] = 0.35,
};
/* The note is about where the strings sit: an exchange with the winds, who sit in one place, is worth this share, and among the few it is
 * cited only where the side changes three times or more, so that it is a game of the two and no mere change of colour. Of a soloist's likewise. */
static const double with_winds = 0.5, with_soloist = 0.7;
enum { TURNS_WITH_WINDS = 4 };
/* What is left of a passage's worth for each one already chosen that it resembles; `overlapping` where all of it overlaps. */
static const double same_kind = 0.92, same_sections = 0.92, overlapping = 0.3;
/* Themes before figures: what a gesture of one note is worth, and from how many notes on it is a theme. Striking before clear. All of
 * these are common practice, no source. */
static const double least_figure = 0.85, merely_clear = 0.7, opening = 1.1;
enum { THEME_NOTES = 8 };
/* What is worth less than this share of the best of its kind isn't cited, however much room there is: few and right. */
static const double least_worth = 0.4;
/* A passage at the back of the texture is worth this share of one at its front. */
static const double least_foreground = 0.8;

static double worth_as_theme(const spz_passage *passage)
{
    if (passage->kind != SPZ_EXCHANGE && passage->kind != SPZ_IMITATION)
        return 1;
    int notes = passage->told.gesture.notes;
    return notes >= THEME_NOTES ? 1 : least_figure + (1 - least_figure) * notes / THEME_NOTES;
}

static bool has_winds(const spz_passage *passage)
{
    bool winds = false;
    for (size_t i = 0; i < passage->link_count; i++)
        winds = winds || (passage->links[i].players & SPZ_WIND_PLAYERS);
    return winds || passage->sides[0].section == SPZ_WINDS || passage->sides[1].section == SPZ_WINDS;
}

/* An accompaniment is never among the few: somebody else's tune goes on all the time, in several note values; or, where the dialogue isn't sure, some tune
 * lies above it. Read off the settled tables (docs/method-notes.md, 2). */
static const double whole_tune = 0.95, tune_above = 0.5;
enum { TUNE_VALUES = 3 };

static bool accompanies(const spz_sections *sections, const Citation *citation, bool is_sure)
{
    const spz_passage *passage = citation->passage;
    spz_players told = 0;
    for (size_t i = 0; i < citation->told_count; i++)
        told |= citation->told[i].players;
    spz_ticks end = citation->heard_count ? passage->entries[citation->heard[citation->heard_count - 1].entry].end : passage->end;
    OtherTune others = tune_of_others(sections, told, passage->onset, end);
    return (others.most >= whole_tune && others.values >= TUNE_VALUES) || (!is_sure && others.above >= tune_above);
}

/* How far a passage can be trusted to be what a reader of the score would cite; the few are of the best of these that there is. */
typedef enum Trust { NOT_FOR_FEW, GAME_WITH_WINDS, LIKELY, SURE } Trust;

/* Of the dialogues of less strength than this a quarter is none to the readers of the settled tables, of the others one in twenty
 * (docs/accuracy.md). */
static const double sure = 0.9;

/* A soloist sits among his own section: no dialogue from one place of the stage to another. */
static bool is_own_soloist(const spz_passage *passage)
{
    const spz_side *sides = passage->sides;
    return passage->link_count == 2 && sides[0].section == sides[1].section && sides[0].orchestra == sides[1].orchestra;
}

static Trust trust_of(const spz_sections *sections, const spz_passage *passage)
{
    if (!spz_kind_is_antiphony(passage->kind) || passage->kind == SPZ_SPLIT_LINE)
        return SURE;
    if (has_winds(passage))
        return passage->turns >= TURNS_WITH_WINDS ? GAME_WITH_WINDS : NOT_FOR_FEW;
    Citation citation = {.passage = passage};
    citation_tell(sections, &citation);
    if (is_own_soloist(passage) || !citation.borne_out)
        return NOT_FOR_FEW;
    bool begun_elsewhere = citation.heard_before && citation.told_count > 2;
    bool is_sure = passage->strength >= sure && !begun_elsewhere;
    return accompanies(sections, &citation, is_sure) ? NOT_FOR_FEW : is_sure ? SURE : LIKELY;
}

static double worth_of_players(const spz_sections *sections, const spz_passage *passage)
{
    double worth = has_winds(passage) ? with_winds : 1;
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].leader < spz_sections_groups(sections) && spz_sections_group(sections, passage->entries[i].leader)->solo)
            return worth * with_soloist;
    return worth;
}

static double worth_alone(const spz_sections *sections, const spz_passage *passage)
{
    double front = spz_kind_is_antiphony(passage->kind) ? least_foreground + (1 - least_foreground) * passage->foreground : 1;
    double weight = spz_weight_of(passage->strength) == SPZ_STRIKING ? 1 : merely_clear;
    return passage->strength * passage->strength * audible[passage->kind] * front * weight * worth_as_theme(passage) *
           worth_of_players(sections, passage) * (passage->first == 0 ? opening : 1);
}

/* How much of the shorter of two passages the other covers, 0..1. */
static double overlap(const spz_passage *a, const spz_passage *b)
{
    spz_ticks from = a->onset > b->onset ? a->onset : b->onset, to = a->end < b->end ? a->end : b->end;
    spz_ticks shorter = a->end - a->onset < b->end - b->onset ? a->end - a->onset : b->end - b->onset;
    return to > from && shorter > 0 ? (double)(to - from) / (double)shorter : 0;
}

static bool same_who(const spz_passage *a, const spz_passage *b)
{
    return a->sides[0].section == b->sides[0].section && a->sides[1].section == b->sides[1].section;
}

/* The same with one that is picked, and with what will be told as its return. */
static double overlap_told(const spz_sections *sections, const spz_findings *findings, const spz_passage *passage, const spz_passage *other)
{
    double most = overlap(passage, other);
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *later = spz_findings_at(findings, i);
        double shared = overlap(passage, later);
        most = shared > most && passages_twins(sections, other, later) ? shared : most;
    }
    return most;
}

static double worth_beside(const spz_sections *sections, const spz_findings *findings, const PlaceInFindings *picked, const spz_passage *passage)
{
    double worth = worth_alone(sections, passage);
    for (size_t i = 0; i < picked->count; i++) {
        const spz_passage *other = spz_findings_at(findings, picked->at[i]);
        if (other == passage)
            return -1;
        worth *= other->kind == passage->kind ? same_kind : 1;
        worth *= same_who(other, passage) ? same_sections : 1;
        worth *= 1 - (1 - overlapping) * overlap_told(sections, findings, passage, other);
    }
    return worth;
}

static int in_order(const void *a, const void *b)
{
    size_t one = *(const size_t *)a, two = *(const size_t *)b;
    return one < two ? -1 : one > two;
}

/* Nobody cites a bar that is never played, nor what was heard before: that is told as its return. */
static bool is_to_cite(const spz_movement *movement, const spz_sections *sections, const spz_findings *findings, size_t place, double strength)
{
    const spz_passage *passage = spz_findings_at(findings, place);
    if (passage->ruling.kind == SPZ_VETOED || passage_is_of_one_stave(sections, passage) || passage->strength < strength || spz_movement_sounding(movement, passage->first, passage->onset, 0, 0) < 0)
        return false;
    for (size_t i = 0; i < place; i++) {
        const spz_passage *earlier = spz_findings_at(findings, i);
        if (earlier->strength >= strength && passages_twins(sections, earlier, passage))
            return false;
    }
    return true;
}

/* The best one left; the count of the findings when none is. Of equals, the earlier. */
static size_t best_left(const spz_sections *sections, const spz_findings *findings, const PlaceInFindings *worthy, const PlaceInFindings *picked)
{
    size_t best = spz_findings_count(findings);
    double most = 0;
    for (size_t i = 0; i < worthy->count; i++) {
        const spz_passage *passage = spz_findings_at(findings, worthy->at[i]);
        double worth = worth_beside(sections, findings, picked, passage);
        if (worth > most && worth > least_worth * audible[passage->kind]) {
            most = worth;
            best = worthy->at[i];
        }
    }
    return best;
}

static spz_status pick_best(const spz_sections *sections, const spz_findings *findings, const PlaceInFindings *worthy, size_t most, PlaceInFindings *picked)
{
    while (picked->count < most) {
        size_t best = best_left(sections, findings, worthy, picked);
        if (best == spz_findings_count(findings))
            break;
        if (!array_push(picked, best))
            return SPZ_NO_MEMORY;
    }
    if (picked->count)
        qsort(picked->at, picked->count, sizeof *picked->at, in_order); /* the findings are in order of bars */
    return SPZ_OK;
}

/* What comes again is as sure as the surest of its returns. */
static Trust trust_with_returns(const spz_sections *sections, const spz_findings *findings, size_t place)
{
    const spz_passage *passage = spz_findings_at(findings, place);
    Trust trust = trust_of(sections, passage);
    for (size_t i = place + 1; i < spz_findings_count(findings) && trust < SURE; i++) {
        const spz_passage *later = spz_findings_at(findings, i);
        Trust again = passages_twins(sections, passage, later) ? trust_of(sections, later) : trust;
        trust = again > trust ? again : trust;
    }
    return trust;
}

/* The best trust that a dialogue of the movement has. */
static Trust best_trust(const spz_movement_reading *reading, double strength)
{
    Trust best = NOT_FOR_FEW;
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++) {
        const spz_passage *passage = spz_findings_at(reading->findings, i);
        bool dialogue = spz_kind_is_antiphony(passage->kind) && passage->kind != SPZ_SPLIT_LINE;
        if (!dialogue || !is_to_cite(reading->movement, reading->sections, reading->findings, i, strength))
            continue;
        Trust trust = trust_with_returns(reading->sections, reading->findings, i);
        best = trust > best ? trust : best;
    }
    return best > NOT_FOR_FEW ? best : LIKELY;
}

static spz_status find_worthy(const spz_movement_reading *reading, double strength, bool few, PlaceInFindings *worthy)
{
    const spz_findings *findings = reading->findings;
    Trust least = few ? best_trust(reading, strength) : NOT_FOR_FEW;
    for (size_t i = 0; i < spz_findings_count(findings); i++)
        if (is_to_cite(reading->movement, reading->sections, findings, i, strength) && trust_with_returns(reading->sections, findings, i) >= least && !array_push(worthy, i))
            return SPZ_NO_MEMORY;
    return SPZ_OK;
}

spz_status notes_pick(const spz_movement_reading *reading, double strength, size_t most, PlaceInFindings *picked)
{
    PlaceInFindings worthy = {0};
    spz_status status = find_worthy(reading, strength, most > 0, most ? &worthy : picked);
    if (!status && most)
        status = pick_best(reading->sections, reading->findings, &worthy, most, picked);
    array_free(&worthy);
    return status;
}
