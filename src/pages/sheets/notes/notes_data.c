/* The citations as data: who, where, when, how strong, and the sentence in the language asked for. Names are those of the passages' JSON. */
#include "pages/sheets/notes/notes_sheet.h"
#include "model/movement.h"
#include "support/numbers.h"
#include "support/ticks.h"
#include "wording/passage_words.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { BODIES_MOST = 16 };

static const Field of_movement[] = {
    {"file", IN_BOTH, "the score's file name without its folder"},
    {"title", IN_BOTH, "'Work: II. movement'; the file name where the score gives no title"},
    {"composer", IN_JSON, "as the score says; \"\""},
    {"year", IN_JSON, "of composition, as the score says; null"},
    {"year_judged", IN_JSON, "the year that counts and is printed: the score's, or the one given; null"},
    {"key", IN_JSON, "`D minor`, where the signature and the last bass note agree on one; \"\""},
    {"seconds", IN_JSON, "how long it lasts; 0 where no length is known"},
    {"text", IN_JSON, "the paragraph, in the language asked for"},
};
const FieldTable noted_movement_fields = FIELD_TABLE("noted movement", of_movement);

static const Field of_citation[] = {
    {"kind", IN_BOTH, "as in `passages`"},
    {"first_bar", IN_BOTH, "as printed, a text"},
    {"last_bar", IN_BOTH, "as printed, a text; before the passage's last where nobody enters for more than a bar once all have been told"},
    {"first_index", IN_BOTH, "the bar's place in the file, from 0"},
    {"last_index", IN_JSON, "the same of the last bar"},
    {"upbeat_to", IN_JSON, "the bar to which it begins as an upbeat; null"},
    {"rehearsal", IN_JSON, "letter and bars after it, 'B+3'; \"\""},
    {"letter", IN_CSV, "the same"},
    {"onset", IN_CSV, "crotchets from the start"},
    {"seconds", IN_BOTH, "when it begins: in JSON each time that it is heard, in CSV the first; empty where no length is known"},
    {"again", IN_CSV, "the other times, blanks between"},
    {"share", IN_JSON, "the same as shares of the movement, 0 to 1"},
    {"duration", IN_CSV, "of the movement, in seconds"},
    {"strength", IN_BOTH, "as in `passages`"},
    {"strength_word", IN_JSON, "that word"},
    {"pieces", IN_JSON, "where several passages are told as one, or the rest of one behind a long break: their places in the list of `passages`, from 0; else empty"},
    {"links", IN_JSON, "those who are told, in order of entry, each the list of those who play it together: the first, then all who answer, as they first do; who answers "
                       "nobody, or but once in passing, stands in `passages` alone"},
    {"calls", IN_JSON, "who is heard first"},
    {"answers", IN_JSON, "who answers first"},
    {"led", IN_JSON, "whether the first of them leads; false where two go to and fro and either might"},
    {"interval", IN_JSON, "semitones from call to answer, where they are the same throughout; null"},
    {"swapped", IN_JSON, "whether the two change places, each with what the other has just played"},
    {"entries", IN_JSON, "every entry of what is told, in order of time (below); empty where the passage alone tells it"},
    {"returns", IN_JSON, "first bars of the passages in which it comes again"},
    {"whole_bar", IN_JSON, "of a hocket or a split line: where what is shared out, or its beginning, stands elsewhere in one hand, the first bar; null"},
    {"whole_last_bar", IN_JSON, "the last; null"},
    {"whole_by", IN_JSON, "who has it there; null"},
    {"tempo", IN_JSON, "the words for the tempo that holds there; \"\""},
    {"key", IN_JSON, "`C major`, where another signature holds than at the beginning and the bass at its ends agrees on a key; \"\""},
    {"trio", IN_JSON, "whether it stands in a trio"},
    {"dynamic", IN_JSON, "loudness of the first call, where a sign holds there that nothing has changed since: `pp`, `f`; \"\""},
    {"answer_dynamic", IN_JSON, "the same of the first answer"},
    {"winds", IN_JSON, "names of the one or two wind parts that begin, where winds take part"},
    {"place", IN_JSON, "bars, letter and time as a reader is told them"},
    {"text", IN_JSON, "what to listen for"},
    {"sentence", IN_CSV, "the same"},
};
const FieldTable citation_fields = FIELD_TABLE("citation", of_citation);

static const Field of_heard[] = {
    {"bar", IN_JSON, "as printed, a text"},
    {"beat", IN_JSON, "in that bar, from 1: `5/2` is the second half of the second beat"},
    {"sections", IN_JSON, "who has it there together"},
    {"first", IN_JSON, "its first note: `C#5`"},
    {"answer", IN_JSON, "whether it answers"},
    {"interval", IN_JSON, "semitones from the notes of the first entry to most of its own; null for the first, and where they go different ways"},
    {"steps", IN_JSON, "the same in steps of the staff: a third is 2; null"},
};
const FieldTable heard_fields = FIELD_TABLE("heard entry", of_heard);
const Columns notes_columns = {"notes", IN_CSV, {&noted_movement_fields, &citation_fields}};

static void json_start(SheetOut *sheet)
{
    Json *json = &sheet->facts.json;
    json_object(json);
    json_put_text(json, "language", spz_language_code(sheet->language));
    json_put_array(json, "movements");
}

static void list_names(Json *json, const MovementNotes *notes, spz_players players)
{
    spz_group bodies[BODIES_MOST];
    size_t count = spz_players_named(notes->sections, players, bodies, BODIES_MOST);
    char name[WORDS_TEXT];
    for (size_t i = 0; i < count; i++)
        json_text(json, words_body(SPZ_ENGLISH, &bodies[i], name));
}

static void give_pieces(Facts *facts, const Citation *citation)
{
    const Joined *joined = &citation->joined;
    if (!fact_list(facts, "pieces"))
        return;
    for (size_t i = 0; i < joined->count && (joined->count > 1 || joined->rest); i++)
        json_integer(&facts->out->json, (long long)joined->places[i]);
    facts_end_list(facts);
}

static void give_links(Facts *facts, const MovementNotes *notes, const Citation *citation)
{
    Json *json = &facts->out->json;
    if (!fact_array(facts, "links"))
        return;
    for (size_t i = 0; i < citation->told_count; i++) {
        json_list(json);
        list_names(json, notes, citation->told[i].players);
        json_end(json);
    }
    facts_end_list(facts);
}

/* The bodies of players of a side, first link or second; a divided section has no answer. */
static void give_who(Facts *facts, const char *name, const MovementNotes *notes, const Citation *citation, size_t link)
{
    const spz_side *side = &citation->passage->sides[link];
    spz_players players = citation->told_count > 1 ? citation->told[link].players : side->section != SPZ_NO_SECTION ? side->players : 0;
    if (!fact_list(facts, name))
        return;
    list_names(&facts->out->json, notes, players);
    facts_end_list(facts);
}

/* Seconds are said only where the score's tempo marks or the user give them. */
static void give_again(Facts *facts, const Citation *citation, size_t count)
{
    char number[NUMBER_TEXT];
    for (size_t i = 1; i < count; i++)
        buffer_printf(&facts->out->words, "%s%s", i > 1 ? " " : "", number_text(citation->times[i].seconds, 2, number));
    fact_said(facts, "again", NULL);
}

static void give_times(Facts *facts, const MovementNotes *notes, const Citation *citation)
{
    Json *json = &facts->out->json;
    size_t timed = notes->overview.duration > 0 ? citation->time_count : 0;
    if (facts->out->form == IN_CSV)
        fact_number(facts, "seconds", timed ? citation->times[0].seconds : (double)NAN, 2);
    else if (fact_list(facts, "seconds")) {
        for (size_t i = 0; i < timed; i++)
            json_number(json, citation->times[i].seconds, 2);
        facts_end_list(facts);
    }
    give_again(facts, citation, timed);
    if (fact_list(facts, "share")) {
        for (size_t i = 0; i < citation->time_count; i++)
            json_number(json, citation->times[i].share, 4);
        facts_end_list(facts);
    }
    fact_number(facts, "duration", notes->overview.duration > 0 ? notes->overview.duration : (double)NAN, 2);
}

static void give_heard(FactsOut *out, const MovementNotes *notes, const Citation *citation, const Heard *heard)
{
    const spz_entry *entry = &citation->passage->entries[heard->entry];
    char beat[TICKS_TEXT], pitch[SPZ_PITCH_TEXT];
    Facts facts = facts_line(out, &heard_fields);
    fact_text(&facts, "bar", spz_movement_bar_number(notes->movement, entry->bar));
    fact_text(&facts, "beat", ticks_text(entry->beat.over, entry->beat.under, beat));
    if (fact_list(&facts, "sections")) {
        list_names(&out->json, notes, heard->players);
        facts_end_list(&facts);
    }
    fact_text(&facts, "first", spz_pitch_text(entry->first, pitch));
    fact_flag(&facts, "answer", entry->answer);
    fact_some(&facts, "interval", heard->at_interval, heard->change.semitones);
    fact_some(&facts, "steps", heard->at_interval, heard->change.steps);
    facts_close(&facts);
}

static void give_entries(Facts *facts, const MovementNotes *notes, const Citation *citation)
{
    if (!fact_array(facts, "entries"))
        return;
    for (size_t i = 0; i < citation->heard_count; i++)
        give_heard(facts->out, notes, citation, &citation->heard[i]);
    facts_end_list(facts);
}

static void give_returns(Facts *facts, const Citation *citation)
{
    if (!fact_list(facts, "returns"))
        return;
    for (size_t i = 0; i < citation->return_count; i++)
        json_text(&facts->out->json, citation->returns[i]->first_bar);
    facts_end_list(facts);
}

static void give_context(Facts *facts, const Citation *citation)
{
    fact_text(facts, "tempo", citation->tempo);
    fact_text(facts, "key", citation->has_key ? key_words(SPZ_ENGLISH, citation->fifths, citation->minor) : "");
    fact_flag(facts, "trio", citation->trio);
    fact_text(facts, "dynamic", spz_dynamic_name(citation->loudness));
    fact_text(facts, "answer_dynamic", spz_dynamic_name(citation->answer_loudness));
    if (!fact_list(facts, "winds"))
        return;
    for (size_t i = 0; i < citation->wind_count; i++)
        json_text(&facts->out->json, citation->winds[i]);
    facts_end_list(facts);
}

/* Who has the line whole elsewhere, and where. */
static void give_whole(Facts *facts, const MovementNotes *notes, const Citation *citation)
{
    const Contrast *whole = &citation->whole;
    bool there = citation->shared_out;
    char name[WORDS_TEXT];
    fact_text(facts, "whole_bar", there ? spz_movement_bar_number(notes->movement, whole->first) : NULL);
    fact_text(facts, "whole_last_bar", there ? spz_movement_bar_number(notes->movement, whole->last) : NULL);
    fact_text(facts, "whole_by", there ? words_body(SPZ_ENGLISH, spz_sections_group(notes->sections, whole->group), name) : NULL);
}

static void give_place(Facts *facts, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    char rehearsal[REHEARSAL_TEXT], onset[TICKS_TEXT];
    movement_rehearsal_text(notes->movement, (int)passage->first, rehearsal);
    fact_text(facts, "kind", spz_kind_name(passage->kind));
    fact_text(facts, "first_bar", passage->first_bar);
    fact_text(facts, "last_bar", spz_movement_bar_number(notes->movement, citation->last));
    fact_integer(facts, "first_index", (long long)passage->first);
    fact_integer(facts, "last_index", (long long)citation->last);
    fact_text(facts, "upbeat_to", citation->upbeat_to != passage->first ? spz_movement_bar_number(notes->movement, citation->upbeat_to) : NULL);
    fact_text(facts, "rehearsal", rehearsal);
    fact_text(facts, "letter", rehearsal);
    fact_text(facts, "onset", ticks_text(passage->onset, notes->movement->per_crotchet, onset));
}

static void give_citation(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    Facts facts = facts_of(&sheet->facts, &citation_fields);
    give_place(&facts, notes, citation);
    give_times(&facts, notes, citation);
    fact_number(&facts, "strength", shown_strength(passage->strength), 2);
    fact_text(&facts, "strength_word", spz_weight_name(spz_weight_of(passage->strength)));
    give_pieces(&facts, citation);
    give_links(&facts, notes, citation);
    give_who(&facts, "calls", notes, citation, 0);
    give_who(&facts, "answers", notes, citation, 1);
    fact_flag(&facts, "led", citation->led);
    fact_some(&facts, "interval", citation->alike, citation->change.semitones);
    fact_flag(&facts, "swapped", citation->swapped);
    give_entries(&facts, notes, citation);
    give_returns(&facts, citation);
    give_whole(&facts, notes, citation);
    give_context(&facts, citation);
    fact_text(&facts, "place", said_of_one(sheet, say_citation_place, notes, citation));
    const char *sentence = said_of_one(sheet, say_citation, notes, citation);
    fact_text(&facts, "text", sentence);
    fact_text(&facts, "sentence", sentence);
    facts_done(&facts);
}

static void give_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Facts facts = facts_of(&sheet->facts, &noted_movement_fields);
    fact_text(&facts, "file", notes->file);
    fact_text(&facts, "title", *spz_movement_title(notes->movement) ? notes->title : notes->file);
    fact_text(&facts, "composer", spz_movement_composer(notes->movement));
    fact_some(&facts, "year", spz_movement_year(notes->movement) != 0, spz_movement_year(notes->movement));
    fact_some(&facts, "year_judged", notes->year != 0, notes->year);
    fact_text(&facts, "key", notes->has_key ? key_words(SPZ_ENGLISH, notes->fifths, notes->minor) : "");
    fact_number(&facts, "seconds", notes->overview.duration, 2);
    if (sheet->facts.form == IN_JSON)
        fact_text(&facts, "text", said_of_all(sheet, say_overview, notes));
    facts_done(&facts);
}

static void json_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Json *json = &sheet->facts.json;
    json_object(json);
    give_movement(sheet, notes);
    json_put_array(json, "citations");
    for (size_t i = 0; i < notes->citations.count; i++) {
        json_object(json);
        give_citation(sheet, notes, &notes->citations.at[i]);
        json_end(json);
    }
    json_end(json);
    json_end(json);
}

static void csv_start(SheetOut *sheet)
{
    facts_columns(&sheet->facts, &notes_columns);
}

static void csv_movement(SheetOut *sheet, const MovementNotes *notes)
{
    for (size_t i = 0; i < notes->citations.count; i++) {
        give_movement(sheet, notes);
        give_citation(sheet, notes, &notes->citations.at[i]);
        facts_end_row(&sheet->facts);
    }
}

const NotesForm notes_json = {json_start, json_movement, sheet_json_end};
const NotesForm notes_csv = {csv_start, csv_movement, sheet_nothing};
