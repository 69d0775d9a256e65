/* evidence_table.c - prints every match of a score with its features, one a line, for fitting and checking the weights of evidence.c
 * against tables of passages (see docs/method.md). */
#include "analysis/antiphony/chaining/evidence.h"
#include "analysis/antiphony/chaining/sides.h"
#include "tools/each_movement.h"
#include <stdio.h>

static void print_match(const Texture *texture, const Match *match, const Evidence *evidence)
{
    const Movement *m = texture->map->movement;
    Side sides[2];
    sides_of(texture->map, match, evidence, sides);
    printf("%s\t%s\t%s\t%s", spz_section_name(sides[0].section), spz_section_name(sides[1].section),
           m->bars[movement_bar_at(m, match->onset)].number, m->bars[movement_bar_at(m, match->end - 1)].number);
    printf("\t%s\t%s\t%d\t%d\t%g\t%u\t%u\t%u\t%d", texture->map->groups[match->caller].about.name,
           texture->map->groups[match->responder].about.name, movement_bar_at(m, match->onset),
           movement_bar_at(m, match->end - 1), (double)match->lag / (double)m->per_crotchet, match->matched,
           match->unmatched, match->statements, match->transposition);
    for (int f = 0; f < FEATURE_COUNT; f++)
        printf("\t%.3f", evidence->at[f]);
    printf("\t%.3f\n", evidence->chance);
}

static int print_movement(const SectionMap *map)
{
    Arena arena;
    arena_init(&arena);
    MatchList matches = {0};
    Texture texture;
    RhythmIndex *rhythms = NULL;
    Melody *melodies = melodies_of(map, &arena);
    int failed = !melodies || texture_make(map, melodies, &arena, &texture) || rhythm_index_make(melodies, map->group_count, &rhythms) ||
                 matches_find(map->movement, melodies, map->group_count, &matches);
    for (size_t i = 0; !failed && i < matches.count; i++) {
        Evidence evidence;
        evidence_weigh(&texture, rhythms, &matches.at[i], 0, &evidence);
        print_match(&texture, &matches.at[i], &evidence);
    }
    rhythm_index_free(rhythms);
    array_free(&matches);
    arena_release(&arena);
    return failed;
}

int main(int count, char **arguments)
{
    if (count != 2)
        return 2;
    printf("caller\tresponder\tstart\tend\tcgroup\trgroup\tfirst\tlast\tlag\tmatched\tunmatched\tstatements\ttransposition");
    for (int f = 0; f < FEATURE_COUNT; f++)
        printf("\t%s", feature_name((enum Feature)f));
    printf("\tstrength\n");
    return each_movement(arguments[1], print_movement);
}
