/* Checked against the outside: the sound ids of MusicXML 4.0 (sounds.xml, W3C Community Group), and the open orchestral scores of the
 * shared folder (Gotham and others; see SOURCES.md there). */
#include "sections/names/sound_ids.h"
#include "sections/understanding.h"
#include "support/scores/parts.h"
#include "support/suite.h"
#include <libxml/parser.h>
#include <stdio.h>
#include <string.h>

struct Expected {
    const char *prefix; /* of the id */
    spz_family family;
    Instrument instrument;
};

/* The most particular prefix that fits counts. Bowed instruments that no orchestra seats as a section belong to none. */
static const struct Expected expected[] = {
    { "brass.", SPZ_FAMILY_BRASS, INSTRUMENT_OTHER },
    { "drum.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
    { "effect.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
    { "keyboard.", SPZ_FAMILY_KEYBOARD, INSTRUMENT_OTHER },
    { "metal.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
    { "pitched-percussion.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
    { "pluck.", SPZ_FAMILY_PLUCKED, INSTRUMENT_OTHER },
    { "rattle.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
    { "strings.", SPZ_FAMILY_STRINGS, INSTRUMENT_OTHER_STRING },
    { "strings.violin", SPZ_FAMILY_STRINGS, INSTRUMENT_VIOLIN },
    { "strings.violono.piccolo", SPZ_FAMILY_STRINGS, INSTRUMENT_VIOLIN },
    { "strings.fiddle", SPZ_FAMILY_STRINGS, INSTRUMENT_VIOLIN },
    { "strings.fiddle.hardanger", SPZ_FAMILY_STRINGS, INSTRUMENT_OTHER_STRING },
    { "strings.viola", SPZ_FAMILY_STRINGS, INSTRUMENT_VIOLA },
    { "strings.viola-damore", SPZ_FAMILY_STRINGS, INSTRUMENT_OTHER_STRING },
    { "strings.violotta", SPZ_FAMILY_STRINGS, INSTRUMENT_OTHER_STRING },
    { "strings.cello", SPZ_FAMILY_STRINGS, INSTRUMENT_CELLO },
    { "strings.contrabass", SPZ_FAMILY_STRINGS, INSTRUMENT_BASS },
    { "strings.octobass", SPZ_FAMILY_STRINGS, INSTRUMENT_BASS },
    { "strings.viol.violone", SPZ_FAMILY_STRINGS, INSTRUMENT_BASS },
    { "strings.group", SPZ_FAMILY_STRINGS, INSTRUMENT_STRINGS },
    { "synth.", SPZ_FAMILY_UNKNOWN, INSTRUMENT_NONE }, /* no instrument of an orchestra */
    { "voice.", SPZ_FAMILY_VOICES, INSTRUMENT_OTHER },
    { "wind.", SPZ_FAMILY_WOODWIND, INSTRUMENT_OTHER },
    { "wood.", SPZ_FAMILY_PERCUSSION, INSTRUMENT_OTHER },
};

static const struct Expected *find_expected(const char *id)
{
    const struct Expected *best = NULL;
    for (size_t i = 0; i < COUNT(expected); i++) {
        size_t length = strlen(expected[i].prefix);
        if (strncmp(id, expected[i].prefix, length) == 0 && (!best || length > strlen(best->prefix)))
            best = &expected[i];
    }
    return best;
}

static void check_id(const char *id)
{
    const struct Expected *should = find_expected(id);
    SoundReading is = sound_id_read(id);
    CU_ASSERT_PTR_NOT_NULL_FATAL(should);
    if (is.family != should->family || is.instrument != should->instrument)
        printf("\n    the sound id %s is read as family %s", id, spz_family_name(is.family));
    CU_ASSERT_EQUAL(is.family, should->family);
    CU_ASSERT_EQUAL(is.instrument, should->instrument);
}

static void every_sound_id_of_the_standard_has_its_family_and_section(void)
{
    const char *path = shared_file("schema/sounds.xml");
    if (!path)
        return;
    size_t count = 0, strings = 0;
    xmlDocPtr document = xmlReadFile(path, NULL, XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING);
    CU_ASSERT_PTR_NOT_NULL_FATAL(document);
    for (xmlNodePtr node = xmlDocGetRootElement(document)->children; node; node = node->next) {
        xmlChar *id = node->type == XML_ELEMENT_NODE ? xmlGetProp(node, (const xmlChar *)"id") : NULL;
        if (!id)
            continue;
        check_id((const char *)id);
        strings += strncmp((const char *)id, "strings.", 8) == 0;
        count++;
        xmlFree(id);
    }
    xmlFreeDoc(document);
    CU_ASSERT_TRUE(count > 800);  /* the standard lists 894 */
    CU_ASSERT_TRUE(strings > 50);
}

static void ids_outside_the_standard_go_by_their_first_word(void)
{
    CU_ASSERT_EQUAL(sound_id_read("wind.reed.of-tomorrow").family, SPZ_FAMILY_WOODWIND);
    CU_ASSERT_EQUAL(sound_id_read("strings.violin.electric").instrument, INSTRUMENT_VIOLIN);
    CU_ASSERT_EQUAL(sound_id_read("windmill").family, SPZ_FAMILY_UNKNOWN);
    CU_ASSERT_EQUAL(sound_id_read("").instrument, INSTRUMENT_NONE);
}

/* General MIDI Level 1 sound set, MIDI Association: from memory. */
static void general_midi_programs_have_their_families(void)
{
    static const struct { int program; Instrument instrument; spz_family family; } programs[] = {
        { 41, INSTRUMENT_VIOLIN, SPZ_FAMILY_STRINGS }, { 42, INSTRUMENT_VIOLA, SPZ_FAMILY_STRINGS }, { 43, INSTRUMENT_CELLO, SPZ_FAMILY_STRINGS },
        { 44, INSTRUMENT_BASS, SPZ_FAMILY_STRINGS }, { 49, INSTRUMENT_STRINGS, SPZ_FAMILY_STRINGS }, { 47, INSTRUMENT_OTHER, SPZ_FAMILY_PLUCKED },
        { 48, INSTRUMENT_OTHER, SPZ_FAMILY_PERCUSSION }, { 57, INSTRUMENT_OTHER, SPZ_FAMILY_BRASS }, { 61, INSTRUMENT_OTHER, SPZ_FAMILY_BRASS },
        { 69, INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND }, { 74, INSTRUMENT_OTHER, SPZ_FAMILY_WOODWIND }, { 53, INSTRUMENT_OTHER, SPZ_FAMILY_VOICES },
        { 7, INSTRUMENT_OTHER, SPZ_FAMILY_KEYBOARD }, { 20, INSTRUMENT_OTHER, SPZ_FAMILY_KEYBOARD }, { 1, INSTRUMENT_NONE, SPZ_FAMILY_UNKNOWN },
        { 0, INSTRUMENT_NONE, SPZ_FAMILY_UNKNOWN }, { 129, INSTRUMENT_NONE, SPZ_FAMILY_UNKNOWN },
    };
    for (size_t i = 0; i < COUNT(programs); i++) {
        CU_ASSERT_EQUAL(midi_program_read(programs[i].program).instrument, programs[i].instrument);
        CU_ASSERT_EQUAL(midi_program_read(programs[i].program).family, programs[i].family);
    }
}

/* Read off the scores by eye, part by part. */
#define USUAL "Vn I; Vn II; Va; Vc; Db"
static const struct { const char *score, *groups; } scores[] = {
    { "Bach_BWV.1048_1", "Vn I; Vn II; Vn III; Va 1; Va 2; Va 3; Vc 1; Vc 2; Vc 3; Db" },
    { "Bach_BWV.1048_3", "Vn I; Vn II; Vn III; Va 1; Va 2; Va 3; Vc 1; Vc 2; Vc 3; Db" },
    { "Bach_BWV.1049_1", "Vn I (solo); " USUAL }, { "Bach_BWV.1049_3", "Vn I (solo); " USUAL },
    { "Beach_Op.32_1", USUAL }, { "Beach_Op.32_2", USUAL }, { "Beach_Op.32_3", "Vn I (solo); " USUAL }, { "Beach_Op.32_4", USUAL },
    { "Boulanger_Dun_matin_de_printemps", "Vn I (solo); Vn I; Vn II (solo); Vn II; Va (solo); Va; Vc (solo); Vc; Db" },
    { "Brahms_Op.68_1", USUAL }, { "Brahms_Op.68_2", "Vn I (solo); " USUAL }, { "Brahms_Op.68_3", USUAL }, { "Brahms_Op.68_4", USUAL },
    { "Brahms_Op.73_1", USUAL }, { "Brahms_Op.73_2", USUAL }, { "Brahms_Op.73_3", USUAL }, { "Brahms_Op.73_4", USUAL },
    { "Brahms_Op.98_1", USUAL }, { "Brahms_Op.98_2", USUAL }, { "Bruckner_WAB.105_2", USUAL }, { "Schubert_D.485_1", USUAL },
};

static bool open_score(const char *name, spz_score **score, spz_sections **map)
{
    char file[100];
    snprintf(file, sizeof file, "scores/%s.mxl", name);
    const char *path = shared_file(file);
    if (!path)
        return false;
    CU_ASSERT_EQUAL_FATAL(spz_score_read(path, NULL, score), SPZ_OK);
    CU_ASSERT_EQUAL_FATAL(spz_sections_find(spz_score_movement(*score, 0), NULL, NULL, map), SPZ_OK);
    return true;
}

static void every_open_score_has_its_sections_found(void)
{
    for (size_t i = 0; i < COUNT(scores); i++) {
        spz_score *score;
        spz_sections *map;
        if (!open_score(scores[i].score, &score, &map))
            return;
        CU_ASSERT_STRING_EQUAL(map_groups_in_words(map), scores[i].groups);
        for (size_t k = 0; k < map->line_count; k++)
            CU_ASSERT_NOT_EQUAL(map->lines[k].family, SPZ_FAMILY_UNKNOWN);
        spz_sections_free(map);
        spz_score_free(score);
    }
}

/* The scores also state sound ids, which play no part where a name is plain: names and ids must agree, for every part. */
static void check_against_ids(const SectionMap *map)
{
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        SoundReading sound = sound_id_read(map->movement->parts[line->part].sound);
        if (sound.instrument == INSTRUMENT_NONE || line->left_out)
            continue;
        CU_ASSERT_EQUAL(line->family, sound.family);
        if (instrument_has_section(sound.instrument) && sound.instrument != INSTRUMENT_VIOLIN)
            CU_ASSERT_EQUAL(line->section, section_of(sound.instrument, 0));
        if (sound.instrument == INSTRUMENT_VIOLIN)
            CU_ASSERT_TRUE(line->section >= SPZ_VN1 && line->section <= SPZ_VN3);
    }
}

static void names_and_sound_ids_of_the_open_scores_agree(void)
{
    for (size_t i = 0; i < COUNT(scores); i++) {
        spz_score *score;
        spz_sections *map;
        if (!open_score(scores[i].score, &score, &map))
            return;
        check_against_ids(map);
        spz_sections_free(map);
        spz_score_free(score);
    }
}

void suite_sections_sounds(void);
void suite_sections_sounds(void)
{
    static const struct Statement statements[] = {
        STATEMENT(every_sound_id_of_the_standard_has_its_family_and_section),
        STATEMENT(ids_outside_the_standard_go_by_their_first_word),
        STATEMENT(general_midi_programs_have_their_families),
        STATEMENT(every_open_score_has_its_sections_found),
        STATEMENT(names_and_sound_ids_of_the_open_scores_agree),
    };
    suite_of("sections against sound ids and open scores", statements, COUNT(statements));
}
