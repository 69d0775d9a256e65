#include "sections/chamber_music.h"
#include "sections/names/division_marks.h"

/* Common practice: violins, violas, cellos. */
static const struct {
    size_t violins, violas, cellos;
} combinations[] = {
    {1, 1, 0}, {1, 0, 1}, {1, 1, 1}, {2, 1, 0}, {2, 0, 1}, {2, 1, 1}, {2, 2, 1}, {2, 1, 2}, {2, 2, 2}, {4, 2, 2},
};

static bool speaks_of_sections(const Part *part)
{
    for (size_t i = 0; i < part->direction_count; i++) {
        DivisionWords words;
        if (part->directions[i].kind == DIRECTION_WORDS && part->directions[i].text &&
            division_words_read(part->directions[i].text, &words) &&
            (words.divided || words.by_desk || words.half || words.others || words.desks || words.players > 1))
            return true;
    }
    return false;
}

static bool is_one_players(const SectionMap *map, const spz_line *line)
{
    return line->role == SPZ_TUTTI && !line->several && !line->division && !line->orchestra && line->also == SPZ_NO_SECTION && !line->staff &&
           !line->voice && !speaks_of_sections(&map->movement->parts[line->part]);
}

bool chamber_music(const SectionMap *map)
{
    size_t violins = 0, violas = 0, cellos = 0, others = 0;
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        if (line->left_out)
            continue;
        if (line->section == SPZ_NO_SECTION) {
            others++;
            continue;
        }
        if (!is_one_players(map, line))
            return false;
        violins += section_is_violin(line->section);
        violas += line->section == SPZ_VA;
        cellos += line->section == SPZ_VC;
        if (line->section == SPZ_DB)
            return false;
    }
    for (size_t i = 0; i < sizeof combinations / sizeof *combinations; i++)
        if (violins == combinations[i].violins && violas == combinations[i].violas && cellos == combinations[i].cellos)
            return others <= 1;
    return false;
}
