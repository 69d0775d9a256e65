/* The citations as data: who, where, when, how strong, and the sentence in the language asked for. Names are those of the passages' JSON. */
#include "pages/sheets/notes_sheet.h"
#include "model/movement.h"
#include "support/numbers.h"
#include "wording/passage_words.h"

enum { BODIES_MOST = 16 };

static void json_start(SheetOut *sheet)
{
    json_object(&sheet->json);
    json_put_text(&sheet->json, "language", spz_language_code(sheet->language));
    json_key(&sheet->json, "movements");
    json_array(&sheet->json);
}

static void json_stop(SheetOut *sheet)
{
    json_end(&sheet->json);
    json_end(&sheet->json);
    json_finish(&sheet->json);
}

static void put_names(Json *json, const char *key, const MovementNotes *notes, spz_players players)
{
    spz_group bodies[BODIES_MOST];
    size_t count = spz_players_named(notes->sections, players, bodies, BODIES_MOST);
    char name[WORDS_TEXT];
    if (key)
        json_key(json, key);
    json_list(json);
    for (size_t i = 0; i < count; i++)
        json_text(json, words_body(SPZ_ENGLISH, &bodies[i], name));
    json_end(json);
}

static void put_links(Json *json, const MovementNotes *notes, const Citation *citation)
{
    json_key(json, "links");
    json_array(json);
    for (size_t i = 0; i < citation->told_count; i++)
        put_names(json, NULL, notes, citation->told[i].players);
    json_end(json);
}

/* The bodies of players of a side, first link or second; a divided section has no answer. */
static void put_who(Json *json, const char *key, const MovementNotes *notes, const Citation *citation, size_t link)
{
    const spz_side *side = &citation->passage->sides[link];
    spz_players players = citation->told_count > 1 ? citation->told[link].players : side->section != SPZ_NO_SECTION ? side->players : 0;
    put_names(json, key, notes, players);
}

static void put_times(Json *json, const MovementNotes *notes, const Citation *citation)
{
    bool timed = notes->overview.duration > 0;
    json_key(json, "seconds");
    json_list(json);
    for (size_t i = 0; i < citation->time_count && timed; i++)
        json_number(json, citation->times[i].seconds, 2);
    json_end(json);
    json_key(json, "share");
    json_list(json);
    for (size_t i = 0; i < citation->time_count; i++)
        json_number(json, citation->times[i].share, 4);
    json_end(json);
}

static void put_returns(Json *json, const Citation *citation)
{
    json_key(json, "returns");
    json_list(json);
    for (size_t i = 0; i < citation->return_count; i++)
        json_text(json, citation->returns[i]->first_bar);
    json_end(json);
}

static void put_interval(Json *json, const Citation *citation)
{
    json_key(json, "interval");
    if (citation->alike)
        json_integer(json, citation->change.semitones);
    else
        json_text(json, NULL);
}

static void put_context(Json *json, const Citation *citation)
{
    json_put_text(json, "tempo", citation->tempo);
    json_put_flag(json, "trio", citation->trio);
    json_put_text(json, "dynamic", spz_dynamic_name(citation->loudness));
    json_put_text(json, "answer_dynamic", spz_dynamic_name(citation->answer_loudness));
    json_key(json, "winds");
    json_list(json);
    for (size_t i = 0; i < citation->wind_count; i++)
        json_text(json, citation->winds[i]);
    json_end(json);
}

/* Who plays a split line whole elsewhere, and from which bar on. */
static void put_whole(Json *json, const MovementNotes *notes, const Citation *citation)
{
    bool there = citation->whole_group < spz_sections_groups(notes->sections);
    char name[WORDS_TEXT];
    json_put_text(json, "whole_bar", there ? spz_movement_bar_number(notes->movement, citation->whole_bar) : NULL);
    json_put_text(json, "whole_by", there ? words_body(SPZ_ENGLISH, spz_sections_group(notes->sections, citation->whole_group), name) : NULL);
}

static void put_citation(SheetOut *sheet, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    Json *json = &sheet->json;
    char rehearsal[REHEARSAL_TEXT];
    json_object(json);
    json_put_text(json, "kind", spz_kind_name(passage->kind));
    json_put_text(json, "first_bar", passage->first_bar);
    json_put_text(json, "last_bar", passage->last_bar);
    json_put_integer(json, "first_index", (long long)passage->first);
    json_put_integer(json, "last_index", (long long)passage->last);
    json_put_text(json, "upbeat_to", citation->upbeat_to != passage->first ? spz_movement_bar_number(notes->movement, citation->upbeat_to) : NULL);
    json_put_text(json, "rehearsal", movement_rehearsal_text(notes->movement, (int)passage->first, rehearsal));
    put_times(json, notes, citation);
    json_put_number(json, "strength", shown_strength(passage->strength), 2);
    json_put_text(json, "strength_word", spz_weight_name(spz_weight_of(passage->strength)));
    put_links(json, notes, citation);
    put_who(json, "calls", notes, citation, 0);
    put_who(json, "answers", notes, citation, 1);
    json_put_flag(json, "led", citation->led);
    put_interval(json, citation);
    put_returns(json, citation);
    put_whole(json, notes, citation);
    put_context(json, citation);
    json_put_text(json, "place", said_of_one(sheet, say_citation_place, notes, citation));
    json_put_text(json, "text", said_of_one(sheet, say_citation, notes, citation));
    json_end(json);
}

static void json_movement(SheetOut *sheet, const MovementNotes *notes)
{
    Json *json = &sheet->json;
    json_object(json);
    json_put_text(json, "file", notes->file);
    json_put_text(json, "title", notes->title);
    json_put_text(json, "composer", spz_movement_composer(notes->movement));
    json_put_integer(json, "year", spz_movement_year(notes->movement));
    json_put_text(json, "key", notes->has_key ? phrase_text(SPZ_ENGLISH, (Phrase)((notes->minor ? PHRASE_KEY_MINOR_1 : PHRASE_KEY_MAJOR_1) + notes->fifths + 7)) : "");
    json_key(json, "seconds");
    json_number(json, notes->overview.duration, 2);
    json_put_text(json, "text", said_of_all(sheet, say_overview, notes));
    json_key(json, "citations");
    json_array(json);
    for (size_t i = 0; i < notes->citations.count; i++)
        put_citation(sheet, notes, &notes->citations.at[i]);
    json_end(json);
    json_end(json);
}

const NotesForm notes_json = {json_start, json_movement, json_stop};
