#include "citations/citation_facts.h"
#include "model/bar_numbers.h"
#include <string.h>

static const double clear = 0.5, striking = 0.8; /* the scale of passages.h */

/* Where neither of two leads: what is called and answered but once does not go to and fro. */
static Shape of_equals(const Citation *citation)
{
    return citation->heard_all == 2 ? SHAPE_ONCE : SHAPE_TO_AND_FRO;
}

static Shape shape_of(const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    bool many = citation->told_count > 2;
    if (citation->swapped && passage->kind != SPZ_HOCKET)
        return SHAPE_SWAP;
    switch (passage->kind) {
    case SPZ_EXCHANGE: return many ? SHAPE_CHAIN : citation->led ? SHAPE_EXCHANGE : of_equals(citation);
    case SPZ_IMITATION: return many ? SHAPE_STRETTO : citation->led ? SHAPE_IMITATION : of_equals(citation);
    case SPZ_HOCKET: return many ? SHAPE_CHAIN : SHAPE_HOCKET;
    case SPZ_SPLIT_LINE: return SHAPE_SPLIT_LINE;
    case SPZ_COUPLING: return SHAPE_COUPLING;
    default:
        if (passage->told.division.violins != SPZ_ONE_SECTION)
            return SHAPE_VIOLINS;
        return passage->told.division.soloists > 1 ? SHAPE_SOLOISTS : SHAPE_DIVIDED;
    }
}

static int semitones(spz_pitch from, spz_pitch to)
{
    return from.midi < 0 || to.midi < 0 ? 0 : to.midi - from.midi;
}

/* The call nearest before an answer. */
static const spz_entry *call_of(const spz_passage *passage, size_t answer)
{
    for (size_t i = answer; i-- > 0;)
        if (!passage->entries[i].answer)
            return &passage->entries[i];
    return NULL;
}

/* Is the interval that of the whole gesture, not of its upbeat alone? What is turned upside down can't be told so. */
static bool holds_throughout(const spz_passage *passage, size_t answer)
{
    const spz_entry *entry = &passage->entries[answer], *call = call_of(passage, answer);
    int first = call ? semitones(call->first, entry->first) : 0, last = call ? semitones(call->last, entry->last) : 0;
    return call && !entry->change.inverted && first == entry->change.semitones && first - last <= 1 && last - first <= 1;
}

static void find_change(Citation *citation)
{
    const spz_passage *passage = citation->passage;
    bool any = false;
    citation->alike = true;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_change *change = &passage->entries[i].change;
        if (!passage->entries[i].answer)
            continue;
        bool same = !any || (change->semitones == citation->change.semitones && change->steps == citation->change.steps &&
                             change->stretch == citation->change.stretch);
        citation->alike = citation->alike && same && holds_throughout(passage, i);
        citation->change = any ? citation->change : *change;
        any = true;
    }
    bool either_way = !citation->change.semitones && !citation->change.steps; /* the same whoever leads */
    citation->alike = citation->alike && any && (citation->led || either_way);
}

/* A gesture that begins in the last half of its bar and goes on into the next begins on an upbeat. */
static size_t upbeat_to(const spz_movement *movement, size_t first, spz_ticks onset, spz_ticks end)
{
    spz_bar bar = spz_movement_bar(movement, first);
    if (first + 1 >= spz_movement_bars(movement) || bar.length <= 0)
        return first;
    bool late = onset > bar.onset + bar.length / 2 || (!bar.counted && bar.length < bar.nominal);
    return late && end > bar.onset + bar.length ? first + 1 : first;
}

size_t citation_upbeat_to(const spz_movement *movement, const spz_entry *entry)
{
    return upbeat_to(movement, entry->bar, entry->onset, entry->end);
}

static size_t last_bar_of(const spz_movement *movement, const spz_entry *entry)
{
    return spz_movement_bar_at(movement, entry->end > 0 ? entry->end - 1 : 0);
}

static bool is_listed(const Citation *citation, size_t entry)
{
    for (size_t i = 0; i < citation->heard_count; i++)
        if (citation->heard[i].entry == entry)
            return true;
    return false;
}

/* It ends where nobody enters for more than an empty bar, once all have been told; where several have the idea, nobody with it: what comes then is another
 * story. */
static void end_citation(const spz_movement *movement, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    size_t i = 0, kept = 0, told = citation->told_count ? citation->told_entry[citation->told_count - 1] : SIZE_MAX;
    citation->last = passage->last;
    if (!citation->heard_count || citation->heard_all > citation->heard_count)
        return;
    size_t last = passage->first;
    for (; i < citation->entries && (i <= told || passage->entries[i].bar <= last + 2); i++) {
        if (citation->told_count > 2 && !is_listed(citation, i))
            continue;
        size_t end = last_bar_of(movement, &passage->entries[i]);
        last = end > last ? end : last;
    }
    while (kept < citation->heard_count && citation->heard[kept].entry < i)
        kept++;
    citation->heard_count = citation->heard_all = kept;
    citation->last = i < passage->entry_count && last < passage->last ? last : passage->last;
}

static void find_times(const spz_movement *movement, const TimeLine *line, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    for (size_t pass = 0; pass < TIMES_MOST; pass++) {
        double marked = spz_movement_sounding(movement, passage->first, passage->onset, pass, 0);
        if (marked < 0)
            return;
        double seconds = time_line_at(line, marked), end = time_line_end(line);
        citation->times[citation->time_count++] = (Sounding){seconds, end > 0 ? seconds / end : 0};
    }
}

static bool is_twin_of_piece(const spz_sections *sections, const spz_findings *findings, const Joined *joined, const spz_passage *later)
{
    bool twin = false;
    for (size_t i = 0; i < joined->count; i++)
        twin = twin || passages_twins(sections, spz_findings_at(findings, joined->places[i]), later);
    return twin;
}

/* Of several pieces that come again together the first alone is told. */
static void find_returns(const spz_sections *sections, const spz_findings *findings, double strength, Citation *citation)
{
    size_t bars = citation->passage->last - citation->passage->first;
    for (size_t i = 0; i < spz_findings_count(findings) && citation->return_count < RETURNS_MOST; i++) {
        const spz_passage *later = spz_findings_at(findings, i), *before = citation->return_count ? citation->returns[citation->return_count - 1] : citation->passage;
        bool apart = citation->joined.count < 2 || later->first > before->first + bars;
        if (later->strength >= strength && apart && is_twin_of_piece(sections, findings, &citation->joined, later))
            citation->returns[citation->return_count++] = later;
    }
}

/* Contrast. Of an exchange or an imitation each entry is the idea itself: twice in a row in one hand, it is no line that was shared out. */
static bool is_shared_out(const spz_sections *sections, const spz_passage *passage, Contrast *whole)
{
    return (passage->kind == SPZ_HOCKET || passage->kind == SPZ_SPLIT_LINE) && contrast_of(sections, passage, whole);
}

static Citation citation_of(const spz_movement_reading *reading, const Joined *joined, double strength, const TimeLine *line, NotesRun *run)
{
    Citation citation = {.passage = joined->passage, .joined = *joined};
    citation_tell(reading->sections, &citation);
    citation.shape = shape_of(&citation);
    citation.variant = run->told[citation.shape]++;
    end_citation(reading->movement, &citation);
    const spz_passage *passage = citation.passage;
    bool entries = passage->entry_count && passage->first < passage->last;
    citation.upbeat_to = entries ? upbeat_to(reading->movement, passage->first, passage->onset, passage->entries[0].end) : passage->first;
    find_change(&citation);
    citation.shared_out = is_shared_out(reading->sections, citation.passage, &citation.whole);
    citation_surround(reading->movement, reading->sections, &citation);
    find_times(reading->movement, line, &citation);
    find_returns(reading->sections, reading->findings, strength, &citation);
    return citation;
}

static bool same_body(const spz_group *a, const spz_group *b)
{
    return a->section == b->section && a->number == b->number && a->orchestra == b->orchestra && a->solo == b->solo;
}

/* The two who lead and answer, as bodies of players. */
typedef struct Pair {
    spz_group bodies[2];
} Pair;

static Pair pair_of(const spz_sections *sections, const spz_passage *passage)
{
    return (Pair){{spz_side_named(sections, &passage->sides[0]), spz_side_named(sections, &passage->sides[1])}};
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

static void find_pair(const spz_sections *sections, const spz_findings *findings, Overview *overview)
{
    size_t count = spz_findings_count(findings);
    for (size_t i = 0; i < count; i++) {
        size_t like = 0;
        if (!is_dialogue(spz_findings_at(findings, i)))
            continue;
        Pair one = pair_of(sections, spz_findings_at(findings, i));
        for (size_t k = 0; k < count; k++) {
            const spz_passage *passage = spz_findings_at(findings, k);
            Pair two = pair_of(sections, passage);
            like += is_dialogue(passage) && same_pair(&one, &two);
        }
        if (like > overview->pair_count) {
            overview->pair_count = like;
            overview->pair[0] = one.bodies[0];
            overview->pair[1] = one.bodies[1];
        }
    }
}

static void count_kinds(const spz_sections *sections, const spz_findings *findings, Overview *overview)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (passage->strength < clear || passage_is_of_one_stave(sections, passage))
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

/* Told once a work, and again where it changes. */
static SeatingWord seating_told(const spz_movement_reading *reading, NotesRun *run)
{
    SeatingWord seating = seating_word(reading->verdict);
    const char *work = reading->movement->work;
    bool told = run->movements > 0 && *work && run->work && !strcmp(work, run->work) && seating == run->seating;
    run->work = work;
    run->seating = seating;
    return told ? SEATING_NONE : seating;
}

static void look_over(const spz_movement_reading *reading, NotesRun *run, MovementNotes *notes)
{
    Overview *overview = &notes->overview;
    count_kinds(reading->sections, reading->findings, overview);
    find_pair(reading->sections, reading->findings, overview);
    overview->strings = spz_sections_groups(reading->sections) > 0;
    overview->upbeat_counted = upbeat_is_counted(notes->movement);
    overview->halves = halves_counted(notes->movement, 0);
    overview->seating = seating_told(reading, run);
    bool reckoned = !overview->given && !overview->tapped;
    overview->timed_alike = run->movements > 0 && reckoned && run->reckoned && run->marked == overview->marked && run->printed == overview->printed;
    run->marked = overview->marked;
    run->printed = overview->printed;
    run->reckoned = reckoned;
    overview->repeats = notes->movement->played_count > notes->movement->bar_count;
    for (size_t i = 0; i < notes->citations.count; i++) {
        const Citation *citation = &notes->citations.at[i];
        bool dialogue = spz_kind_is_antiphony(citation->passage->kind);
        if (dialogue && (!overview->strongest || citation->passage->strength > overview->strongest->passage->strength))
            overview->strongest = citation;
    }
}

static spz_status set_times(const spz_note_options *options, MovementNotes *notes, TimeLine *line)
{
    Overview *overview = &notes->overview;
    double lasts = options->lasts && notes->number < options->lasts_count ? options->lasts[notes->number] : 0;
    spz_status status = time_line_make(notes->movement, lasts, options->anchors, options->anchor_count, line);
    overview->marked = notes->movement->tempo_count > 0;
    for (size_t i = 0; i < notes->movement->tempo_count; i++)
        overview->printed = overview->printed || notes->movement->tempos[i].printed;
    overview->given = lasts > 0;
    overview->tapped = options->anchor_count > 0;
    overview->duration = !status && (lasts > 0 || overview->tapped || overview->marked) ? time_line_end(line) : 0;
    return status;
}

static bool is_cited(const MovementNotes *notes, size_t place)
{
    for (size_t i = 0; i < notes->citations.count; i++) {
        const Joined *joined = &notes->citations.at[i].joined;
        for (size_t k = 0; k < joined->count; k++)
            if (joined->places[k] == place)
                return true;
    }
    return false;
}

/* What begins anew behind a long break is a citation of its own, where there is room for one more: the passage from there on. NULL when out of memory. */
static const spz_passage *rest_of(const spz_movement *movement, const Citation *citation, Arena *arena)
{
    size_t from = citation->entries, count = citation->passage->entry_count - from;
    spz_passage *rest = arena_take(arena, 1, sizeof *rest);
    spz_entry *entries = arena_take(arena, count, sizeof *entries);
    if (!rest || !entries)
        return NULL;
    memcpy(entries, citation->passage->entries + from, count * sizeof *entries);
    entries[0].answer = false;
    *rest = *citation->passage;
    rest->entries = entries;
    rest->entry_count = count;
    rest->first = entries[0].bar;
    rest->onset = entries[0].onset;
    rest->first_bar = spz_movement_bar_number(movement, rest->first);
    rest->letter = movement_letter_at(movement, (int)rest->first, &rest->after_letter);
    return rest;
}

static spz_status cite_rest(const spz_movement_reading *reading, size_t index, NotesRun *run, MovementNotes *notes)
{
    const Citation *before = &notes->citations.at[index];
    Joined joined = before->joined;
    if (before->entries + 1 >= before->passage->entry_count)
        return SPZ_OK;
    joined.passage = rest_of(reading->movement, before, &notes->arena);
    joined.rest = true;
    if (!joined.passage)
        return SPZ_NO_MEMORY;
    Citation told = {.passage = joined.passage};
    citation_tell(reading->sections, &told);
    if (!told.borne_out || told.told_count < 2)
        return SPZ_OK;
    return array_push(&notes->citations, citation_of(reading, &joined, 2, &notes->line, run)) ? SPZ_OK : SPZ_NO_MEMORY; /* no passage is its return */
}

static spz_status cite(const spz_movement_reading *reading, size_t place, const spz_note_options *options, NotesRun *run, MovementNotes *notes)
{
    Joined joined;
    if (is_cited(notes, place))
        return SPZ_OK;
    spz_status status = citation_join(reading, place, options->strength, &notes->arena, &joined);
    if (!status && !array_push(&notes->citations, citation_of(reading, &joined, options->strength, &notes->line, run)))
        status = SPZ_NO_MEMORY;
    return status;
}

/* The rest of a passage may stand behind the beginning of the next. */
static void put_in_order(MovementNotes *notes)
{
    Citation *at = notes->citations.at;
    for (size_t i = 1; i < notes->citations.count; i++)
        for (size_t k = i; k > 0 && at[k].passage->onset < at[k - 1].passage->onset && (at[k].joined.rest || at[k - 1].joined.rest); k--) {
            Citation later = at[k - 1];
            at[k - 1] = at[k];
            at[k] = later;
        }
}

spz_status notes_of(const spz_movement_reading *reading, const spz_note_options *options, NotesRun *run, MovementNotes *notes)
{
    PlaceInFindings picked = {0};
    memset(notes, 0, sizeof *notes);
    arena_init(&notes->arena);
    notes->movement = reading->movement;
    notes->sections = reading->sections;
    notes->number = run->movements;
    notes->year = reading->verdict ? spz_verdict_by_year(reading->verdict).year : reading->movement->year;
    notes->file = movement_score_name(reading->movement);
    movement_heading(reading->movement, notes->title);
    notes->has_key = movement_key(reading->movement, &notes->fifths, &notes->minor);
    spz_status status = set_times(options, notes, &notes->line);
    if (!status)
        status = notes_pick(reading, options->strength, options->citations, &picked);
    for (size_t i = 0; i < picked.count && !status; i++)
        status = cite(reading, picked.at[i], options, run, notes);
    for (size_t i = 0, whole = notes->citations.count; i < whole && !status && (!options->citations || notes->citations.count < options->citations); i++)
        status = cite_rest(reading, i, run, notes);
    array_free(&picked);
    put_in_order(notes);
    if (!status)
        look_over(reading, run, notes);
    run->movements++;
    return status;
}

void notes_free(MovementNotes *notes)
{
    array_free(&notes->citations);
    arena_release(&notes->arena);
}
