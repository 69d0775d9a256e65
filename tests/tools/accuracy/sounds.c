/* sounds - what the names of parts were taken for, beside the sound id that the file gives the part (MusicXML 4.0, W3C Community Group: sounds.xml).
 * Only parts that were named by their names count: the ids are then a second witness. Prints Markdown. */
#include "model/movement.h"
#include "spezzato/spezzato.h"
#include <stdio.h>
#include <string.h>

typedef struct Tally { int parts, silent, compared, agree, strings, strings_agree; } Tally;

/* The first word of an id is its family in the standard; 'strings' says the section with its second. */
static bool agrees(const char *sound, const spz_line *line)
{
    static const struct { const char *id; spz_family family; spz_section sections[3]; } heads[] = {
        {"strings.violin", SPZ_FAMILY_STRINGS, {SPZ_VN1, SPZ_VN2, SPZ_VN3}}, {"strings.viola", SPZ_FAMILY_STRINGS, {SPZ_VA}},
        {"strings.cello", SPZ_FAMILY_STRINGS, {SPZ_VC}},                     {"strings.contrabass", SPZ_FAMILY_STRINGS, {SPZ_DB}},
        {"strings.viol.violone", SPZ_FAMILY_STRINGS, {SPZ_DB}},              {"strings.group", SPZ_FAMILY_STRINGS, {0}}, /* says no instrument */
        {"wind.", SPZ_FAMILY_WOODWIND, {0}},      {"brass.", SPZ_FAMILY_BRASS, {0}},           {"drum.", SPZ_FAMILY_PERCUSSION, {0}},
        {"metal.", SPZ_FAMILY_PERCUSSION, {0}},   {"wood.", SPZ_FAMILY_PERCUSSION, {0}},       {"pitched-percussion.", SPZ_FAMILY_PERCUSSION, {0}},
        {"rattle.", SPZ_FAMILY_PERCUSSION, {0}},  {"effect.", SPZ_FAMILY_PERCUSSION, {0}},     {"keyboard.", SPZ_FAMILY_KEYBOARD, {0}},
        {"pluck.", SPZ_FAMILY_PLUCKED, {0}},      {"voice.", SPZ_FAMILY_VOICES, {0}},
    };
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++) {
        if (strncmp(sound, heads[i].id, strlen(heads[i].id)) != 0)
            continue;
        bool section = heads[i].sections[0] == SPZ_NO_SECTION;
        for (int s = 0; s < 3; s++)
            section = section || (heads[i].sections[s] && heads[i].sections[s] == line->section);
        return section && line->family == heads[i].family;
    }
    return false;
}

/* Was it told by its name? */
static bool by_name(const spz_line *line)
{
    for (size_t i = 0; i < line->clue_count; i++)
        if (line->clues[i].kind == SPZ_CLUE_NAME)
            return true;
    return false;
}

static void count_line(const Movement *m, const spz_line *line, Tally *tally, const char *file)
{
    const char *sound = m->parts[line->part].sound;
    tally->parts++;
    if (!*sound || line->left_out || !by_name(line)) {
        tally->silent++;
        return;
    }
    bool strings = !strncmp(sound, "strings.", 8), right = agrees(sound, line);
    tally->compared++;
    tally->agree += right;
    tally->strings += strings;
    tally->strings_agree += strings && right;
    if (!right)
        printf("- %s: '%s' was taken for %s%s%s; its id is %s.\n", file, m->parts[line->part].name, spz_family_name(line->family),
               line->section ? ", " : "", spz_section_name(line->section), sound);
}

static int look_at(const char *path, Tally *tally)
{
    spz_reading *reading = NULL;
    const char *slash = strrchr(path, '/');
    if (spz_reading_make(path, NULL, 0, SPZ_TO_SECTIONS, NULL, &reading) != SPZ_OK)
        return 2;
    for (size_t i = 0; i < spz_reading_count(reading); i++) {
        spz_movement_reading movement = spz_reading_at(reading, i);
        for (size_t l = 0; l < spz_sections_lines(movement.sections); l++)
            count_line(movement.movement, spz_sections_line(movement.sections, l), tally, slash ? slash + 1 : path);
    }
    spz_reading_free(reading);
    return 0;
}

int main(int argc, char **argv)
{
    Tally tally = {0};
    for (int i = 1; i < argc; i++)
        if (look_at(argv[i], &tally))
            return 2;
    printf("%s%d parts in %d scores; %d have no sound id, no name that says what they are, or are a guide below the score. Of the other %d, %d agree with their id (%d of %d string parts "
           "in family and instrument, the others in family).\n", tally.agree < tally.compared ? "\n" : "", tally.parts, argc - 1, tally.silent,
           tally.compared, tally.agree, tally.strings_agree, tally.strings);
    return 0;
}
