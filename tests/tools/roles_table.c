/* roles_table.c - prints what each voice of a score does in each beat, for fitting and checking roles (see docs/method.md): one line a beat and
 * voice that sounds. Lines 'bar INDEX NUMBER ONSET LENGTH' (in crotchets) and 'voice INDEX PART NAME STRING' come first. */
#include "analysis/melody/roles.h"
#include "tools/each_movement.h"
#include <stdio.h>

static void print_heads(const SectionMap *map, const Voices *voices)
{
    const Movement *m = map->movement;
    for (size_t b = 0; b < m->bar_count; b++)
        printf("bar\t%zu\t%s\t%g\t%g\n", b, m->bars[b].number, (double)m->bars[b].onset / (double)m->per_crotchet,
               (double)m->bars[b].length / (double)m->per_crotchet);
    for (size_t v = 0; v < voices->map.group_count; v++) {
        const Group *group = &voices->map.groups[v];
        bool string = v < voices->string_count;
        for (size_t i = 0; i < (string ? group->line_count : 1); i++)
            printf("voice\t%zu\t%d\t%s\t%d\n", v, string ? (int)map->lines[group->lines[i]].part : group->sounds[0].part, group->about.name, string);
    }
}

static void print_beat(const Roles *roles, const RoleSurvey *survey, size_t beat)
{
    float measures[VOICES_MOST][RM_COUNT];
    size_t count = roles->voices.map.group_count;
    role_measures_at(survey, beat, measures);
    for (size_t v = 0; v < count; v++) {
        size_t at = beat * count + v;
        if (measures[v][RM_SOUNDS] <= 0)
            continue;
        printf("beat\t%zu\t%d\t%g\t%zu\t%llx\t%d\t%d\t%.3f", beat, survey->beats.bars[beat],
               (double)survey->beats.onsets[beat] / (double)survey->strings->movement->per_crotchet, v, (unsigned long long)survey->unison[at],
               roles->at[at], roles->leader[beat] == v, (double)roles->chance[at]);
        for (int m = 0; m < RM_COUNT; m++)
            printf("\t%.4g", (double)measures[v][m]);
        putchar('\n');
    }
}

static int print_movement(const SectionMap *map)
{
    Arena arena;
    Roles roles;
    RoleSurvey survey;
    arena_init(&arena);
    size_t last = map->movement->bar_count - 1;
    int failed = roles_of(map, 0, last, &arena, &roles) || role_survey_make(&roles.voices, map, 0, last, &arena, &survey);
    if (!failed) {
        print_heads(map, &roles.voices);
        for (size_t b = 0; b < survey.beats.count; b++)
            print_beat(&roles, &survey, b);
    }
    arena_release(&arena);
    return failed;
}

int main(int count, char **arguments)
{
    if (count != 2)
        return 2;
    printf("names");
    for (int m = 0; m < RM_COUNT; m++)
        printf("\t%s", role_measure_name((enum RoleMeasure)m));
    putchar('\n');
    return each_movement(arguments[1], print_movement);
}
