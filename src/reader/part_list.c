/* part_list.c - the list of parts at the head of the score: names, brackets, instruments. */
#include "reader/reader.h"
#include <stdio.h>
#include <string.h>

void read_part_group_start(Reader *reader)
{
    char number[sizeof reader->groups[0].number] = "1";
    reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number);
    if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop")) {
        for (int i = reader->group_count - 1; i >= 0; i--)
            if (strcmp(reader->groups[i].number, number) == 0) {
                /* brackets may overlap: the one meant is taken out from between the others */
                memmove(&reader->groups[i], &reader->groups[i + 1], (size_t)(reader->group_count - i - 1) * sizeof reader->groups[0]);
                reader->group_count--;
                return;
            }
        reader_doubt(reader, SPZ_FAULT_BRACKET_NOT_OPENED, NULL);
        return;
    }
    if (reader->group_count == LIMIT_GROUP_DEPTH) {
        reader_fail(reader, SPZ_OVER_LIMIT, "more than %d brackets stand over one part", LIMIT_GROUP_DEPTH);
        return;
    }
    GroupDraft *group = &reader->groups[reader->group_count++];
    strcpy(group->number, number);
    group->name = "";
    group->drawn = 0;
}

/* Only what is drawn groups parts for the eye: a bracket for a family, a brace or a square within it for a pair. */
void read_group_symbol_end(Reader *reader)
{
    const char *symbol = reader_text(reader);
    if (reader_parent(reader) == ELEMENT_PART_GROUP && reader->group_count && *symbol && strcmp(symbol, "none") != 0)
        reader->groups[reader->group_count - 1].drawn = ++reader->drawn_groups;
}

void read_group_name_end(Reader *reader)
{
    if (reader_parent(reader) == ELEMENT_PART_GROUP && reader->group_count)
        reader->groups[reader->group_count - 1].name = reader_keep(reader, reader_text(reader));
}

static const char *names_of_groups(Reader *reader)
{
    char text[1024] = "";
    size_t used = 0;
    for (int i = 0; i < reader->group_count && used < sizeof text; i++) {
        const char *name = reader->groups[i].name;
        if (name && *name)
            used += (size_t)snprintf(text + used, sizeof text - used, "%s%s", used ? "|" : "", name);
    }
    return reader_keep(reader, text);
}

/* The outermost bracket over the part and the innermost. */
static void note_brackets(const Reader *reader, Part *part)
{
    for (int i = 0; i < reader->group_count; i++)
        if (reader->groups[i].drawn) {
            part->bracket = part->bracket ? part->bracket : reader->groups[i].drawn;
            part->inner_bracket = reader->groups[i].drawn;
        }
}

static int part_by_id(const Reader *reader, const char *id)
{
    for (size_t i = 0; i < reader->parts.count; i++)
        if (strcmp(reader->parts.at[i].about.id, id) == 0)
            return (int)i;
    return -1;
}

/* Adds an empty part; -1 (and failed) when there are too many or no memory. */
static int add_part(Reader *reader, const char *id, bool listed)
{
    PartDraft draft;
    memset(&draft, 0, sizeof draft);
    Part *about = &draft.about;
    about->name = about->abbreviation = about->groups = about->instrument = about->sound = "";
    about->staves = 1;
    draft.listed = listed;
    draft.beat = reader->per_crotchet;
    about->id = reader_keep(reader, id);
    if (reader->parts.count >= LIMIT_PARTS)
        reader_fail(reader, SPZ_OVER_LIMIT, "the score has more than %d parts", LIMIT_PARTS);
    else if (about->id && !array_push(&reader->parts, draft))
        reader_no_memory(reader);
    return reader->status == SPZ_OK ? (int)reader->parts.count - 1 : -1;
}

static PartDraft *listed_part(Reader *reader)
{
    if (!reader_inside(reader, ELEMENT_SCORE_PART) || reader->parts.count == 0)
        return NULL;
    return &reader->parts.at[reader->parts.count - 1];
}

void read_score_part_start(Reader *reader)
{
    char id[256] = "";
    reader_attribute(reader, ATTRIBUTE_ID, id, sizeof id);
    if (reader_parent(reader) != ELEMENT_PART_LIST)
        reader_fail(reader, SPZ_NOT_MUSICXML, "a part is declared outside the list of parts");
    else if (part_by_id(reader, id) >= 0)
        reader_doubt(reader, SPZ_FAULT_PART_LISTED_TWICE, id);
    int part = add_part(reader, id, true);
    const char *groups = part >= 0 ? names_of_groups(reader) : NULL;
    if (groups)
        reader->parts.at[part].about.groups = groups;
    if (part >= 0)
        note_brackets(reader, &reader->parts.at[part].about);
}

void read_score_part_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft && draft->about.name[0] == '\0' && draft->about.instrument[0] != '\0')
        draft->about.name = draft->about.instrument;
}

static void keep_first(Reader *reader, const char **field)
{
    const char *text = reader_text(reader);
    if (**field == '\0' && *text) {
        const char *kept = reader_keep(reader, text);
        *field = kept ? kept : "";
    }
}

void read_part_name_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft && reader_parent(reader) == ELEMENT_SCORE_PART)
        keep_first(reader, &draft->about.name);
}

void read_display_text_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft && reader_parent(reader) == ELEMENT_PART_NAME_DISPLAY)
        keep_first(reader, &draft->about.name);
}

void read_part_abbreviation_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft && reader_parent(reader) == ELEMENT_SCORE_PART)
        keep_first(reader, &draft->about.abbreviation);
}

void read_instrument_name_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft)
        keep_first(reader, &draft->about.instrument);
}

void read_instrument_sound_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft)
        keep_first(reader, &draft->about.sound);
}

void read_solo_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    if (draft)
        draft->about.ensemble = 1;
}

/* <ensemble> may name the number of players or stay empty. */
void read_ensemble_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    int64_t players = 2;
    if (!draft)
        return;
    number_whole(reader_text(reader), &players);
    draft->about.ensemble = players > 1 && players < 1000 ? (int)players : 2;
}

void read_midi_program_end(Reader *reader)
{
    PartDraft *draft = listed_part(reader);
    int64_t program = 0;
    if (draft && draft->about.midi_program == 0 && number_whole(reader_text(reader), &program) && program >= 1 && program <= 128)
        draft->about.midi_program = (int)program;
}

/* <part>: of score-partwise, holding its bars; of score-timewise, inside a bar. */
static int part_of_element(Reader *reader)
{
    char id[256] = "";
    if (!reader_attribute(reader, ATTRIBUTE_ID, id, sizeof id)) {
        reader_fail(reader, SPZ_NOT_MUSICXML, "a part has no id");
        return -1;
    }
    int part = part_by_id(reader, id);
    if (part >= 0)
        return part;
    reader_doubt(reader, SPZ_FAULT_PART_NOT_LISTED, id);
    part = add_part(reader, id, false);
    if (part >= 0)
        reader->parts.at[part].about.name = reader->parts.at[part].about.id;
    return part;
}

void read_part_start(Reader *reader)
{
    Element wanted = reader->timewise ? ELEMENT_MEASURE : ELEMENT_SCORE_TIMEWISE;
    if (!reader->timewise)
        wanted = ELEMENT_SCORE_PARTWISE;
    if (reader_parent(reader) != wanted || reader->opus.seen) {
        reader_fail(reader, SPZ_NOT_MUSICXML, "a part stands where none can be");
        return;
    }
    int part = part_of_element(reader);
    if (part < 0)
        return;
    if (!reader->timewise && reader->parts.at[part].begun) {
        reader_fail(reader, SPZ_NOT_MUSICXML, "the part '%.60s' stands in the file twice", reader->parts.at[part].about.id);
        return;
    }
    reader->parts.at[part].begun = true;
    reader->place.part = part;
    reader->place.bar = -1;
    if (reader->timewise)
        bar_open(reader);
}

void read_part_end(Reader *reader)
{
    if (reader->timewise)
        bar_close(reader);
    reader->place.part = -1;
    reader->place.bar = -1;
}
