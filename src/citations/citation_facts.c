#include "citations/citation_facts.h"
#include "support/path.h"
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double clear = 0.5, striking = 0.8; /* the scale of passages.h */
static const double quick_note = 0.15; /* seconds; about seven notes a second: faster than one counts along */

static Body body_named(const spz_group *about)
{
    bool numbered = !section_is_violin(about->section);
    return (Body){about->section, numbered ? about->number : 0, about->orchestra, about->solo};
}

static Body body_of_side(const SectionMap *map, const spz_passage *passage, int side)
{
    spz_group about = spz_side_named(map, &passage->sides[side]);
    return body_named(&about);
}

/* The bodies of players of every link, in order of entry. */
static void name_bodies(const SectionMap *map, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    for (size_t i = 0; i < passage->link_count; i++) {
        spz_group named[BODIES_MOST];
        size_t count = spz_players_named(map, passage->links[i].players, named, BODIES_MOST);
        for (size_t k = 0; k < count && citation->body_count < BODIES_MOST; k++)
            citation->bodies[citation->body_count++] = body_named(&named[k]);
    }
    for (int side = 0; side < 2 && !passage->link_count; side++)
        if (passage->sides[side].section != SPZ_NO_SECTION)
            citation->bodies[citation->body_count++] = body_of_side(map, passage, side);
}

static int common_interval(const spz_passage *passage)
{
    int interval = INTERVAL_MIXED;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!entry->answer)
            continue;
        if (interval != INTERVAL_MIXED && entry->change.semitones != interval)
            return INTERVAL_MIXED;
        interval = entry->change.semitones;
    }
    return interval;
}

static void name_place(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    citation->bar_from = passage->first_bar;
    citation->bar_to = passage->last_bar;
    citation->letter = passage->letter;
    citation->after = passage->after_letter;
}

static void find_times(const Movement *movement, double lasts, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    if (lasts <= 0 && movement->tempo_count == 0)
        return;
    for (size_t pass = 0; pass < TIMES_MOST; pass++) {
        double seconds = spz_movement_sounding(movement, passage->first, passage->onset, pass, lasts);
        if (seconds < 0)
            return;
        citation->times[citation->time_count++] = seconds;
    }
}

static spz_status add_citation(const SectionMap *map, const spz_passage *passage, double lasts, MovementNotes *notes)
{
    Citation citation;
    memset(&citation, 0, sizeof citation);
    citation.passage = passage;
    citation.interval = common_interval(passage);
    citation.quick = passage->shortest > 0 && passage->shortest < quick_note;
    name_bodies(map, &citation);
    name_place(&citation);
    find_times(notes->movement, lasts, &citation);
    for (size_t i = 0; i < notes->citations.count; i++) {
        const Citation *before = &notes->citations.at[i];
        citation.variant += before->passage->kind == passage->kind && (before->body_count > 2) == (citation.body_count > 2);
    }
    return array_push(&notes->citations, citation) ? SPZ_OK : SPZ_NO_MEMORY;
}

static bool same_body(const Body *a, const Body *b)
{
    return a->section == b->section && a->number == b->number && a->orchestra == b->orchestra && a->solo == b->solo;
}

/* The two who lead and answer, as bodies of players. */
typedef struct Pair {
    Body bodies[2];
} Pair;

static Pair pair_of(const SectionMap *map, const spz_passage *passage)
{
    return (Pair){{body_of_side(map, passage, 0), body_of_side(map, passage, 1)}};
}

/* Whichever leads. */
static bool same_pair(const Pair *a, const Pair *b)
{
    return (same_body(&a->bodies[0], &b->bodies[0]) && same_body(&a->bodies[1], &b->bodies[1])) ||
           (same_body(&a->bodies[0], &b->bodies[1]) && same_body(&a->bodies[1], &b->bodies[0]));
}

static bool is_dialogue(const spz_passage *passage)
{
    return spz_kind_is_antiphony(passage->kind) && passage->strength >= clear;
}

static void find_pair(const SectionMap *map, const spz_findings *findings, Overview *overview)
{
    size_t count = spz_findings_count(findings);
    for (size_t i = 0; i < count; i++) {
        size_t like = 0;
        if (!is_dialogue(spz_findings_at(findings, i)))
            continue;
        Pair one = pair_of(map, spz_findings_at(findings, i));
        for (size_t k = 0; k < count; k++) {
            const spz_passage *passage = spz_findings_at(findings, k);
            Pair two = pair_of(map, passage);
            like += is_dialogue(passage) && same_pair(&one, &two);
        }
        if (like > overview->pair_count) {
            overview->pair_count = like;
            overview->pair[0] = one.bodies[0];
            overview->pair[1] = one.bodies[1];
        }
    }
}

static void count_kinds(const spz_findings *findings, Overview *overview)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (passage->strength < clear)
            continue;
        if (spz_kind_is_antiphony(passage->kind)) {
            overview->dialogues++;
            overview->striking += passage->strength >= striking;
        } else if (passage->kind == SPZ_COUPLING)
            overview->coupled++;
        else {
            overview->divided++;
            overview->threefold += passage->turns > 2;
        }
    }
}

static SeatingWord seating_word(const spz_verdict *verdict)
{
    if (!verdict || spz_verdict_count(verdict) == 0)
        return SEATING_NONE;
    if (spz_verdict_confidence(verdict) == SPZ_OPEN)
        return SEATING_OPEN;
    return spz_verdict_ranked(verdict, 0)->opposed ? SEATING_OPPOSED : SEATING_TOGETHER;
}

static void look_over(const spz_movement_reading *reading, double lasts, MovementNotes *notes)
{
    Overview *overview = &notes->overview;
    count_kinds(reading->findings, overview);
    find_pair(reading->sections, reading->findings, overview);
    overview->strings = spz_sections_groups(reading->sections) > 0;
    overview->seating = seating_word(reading->verdict);
    overview->stretched = lasts > 0;
    overview->repeats = notes->movement->played_count > notes->movement->bar_count;
    overview->duration = lasts > 0 ? lasts : notes->movement->tempo_count ? spz_movement_duration(notes->movement) : 0;
    for (size_t i = 0; i < notes->citations.count; i++) {
        const Citation *citation = &notes->citations.at[i];
        bool dialogue = spz_kind_is_antiphony(citation->passage->kind);
        if (dialogue && (!overview->strongest || citation->passage->strength > overview->strongest->passage->strength))
            overview->strongest = citation;
    }
}

spz_status notes_of(const spz_movement_reading *reading, const spz_note_options *options, double lasts, MovementNotes *notes)
{
    PlaceInFindings picked = {0};
    memset(notes, 0, sizeof *notes);
    notes->movement = reading->movement;
    notes->file = path_name(spz_movement_file(reading->movement));
    notes->title = spz_movement_title(reading->movement);
    if (!*notes->title)
        notes->title = notes->file;
    spz_status status = notes_pick(reading->findings, options->strength, options->citations, &picked);
    for (size_t i = 0; i < picked.count && !status; i++)
        status = add_citation(reading->sections, spz_findings_at(reading->findings, picked.at[i]), lasts, notes);
    array_free(&picked);
    if (!status)
        look_over(reading, lasts, notes);
    return status;
}

void notes_free(MovementNotes *notes)
{
    array_free(&notes->citations);
}
