/* One part called 'Violins': one section or two? */
#include "support/scores/rehearsal.h"
#include "support/suite.h"
#include <string.h>

#define LOWER "Altos: c4:w | c4 | c4 | c4\n"

static size_t violin_groups(const Rehearsal *r)
{
    size_t violins = 0;
    for (size_t i = 0; i < spz_sections_groups(r->sections); i++) {
        spz_section section = spz_sections_group(r->sections, i)->section;
        violins += section == SPZ_VN1 || section == SPZ_VN2;
    }
    return violins;
}

static void violins_that_divide_for_a_bar_are_one_section(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=80\n"
                           "Violons: c5 d5 e5 f5 | \"div.\" g5:h e5 // e5:h c5 | \"unis.\" d5:q c5 b4 d5 | c5:w\n" LOWER);
    CU_ASSERT_EQUAL(violin_groups(&r), 1);
    const spz_line *line = spz_sections_line(r.sections, 0);
    CU_ASSERT_EQUAL_FATAL(line->clue_count, 2);
    CU_ASSERT_EQUAL(line->clues[0].kind, SPZ_CLUE_NAME);
    CU_ASSERT_STRING_EQUAL(line->clues[0].text, "Violons");
    CU_ASSERT_EQUAL(line->clues[1].kind, SPZ_CLUE_ONE_LINE);
    rehearsal_end(&r);
}

static void violins_in_two_voices_throughout_are_two_sections(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=80\n"
                           "Violons: c5 d5 e5 f5 // g4 b4 c5 d5 | g5:h e5 // e5:h c5 | d5:q c5 b4 d5 // b4:q a4 g4 b4 | c5:w // g4:w\n" LOWER);
    CU_ASSERT_EQUAL(violin_groups(&r), 2);
    rehearsal_end(&r);
}

static void violins_on_one_line_throughout_play_in_unison(void)
{
    Rehearsal r = rehearse("time: 4/4  tempo: q=80\n"
                           "Violini: c5 d5 e5 f5 | g5:h e5 | d5:q c5 b4 d5 | c5:w\n" LOWER);
    CU_ASSERT_EQUAL(violin_groups(&r), 2);
    rehearsal_end(&r);
}

static const struct Statement statements[] = {
    STATEMENT(violins_that_divide_for_a_bar_are_one_section),
    STATEMENT(violins_in_two_voices_throughout_are_two_sections),
    STATEMENT(violins_on_one_line_throughout_play_in_unison),
};

void suite_sections_violins(void);
void suite_sections_violins(void)
{
    suite_of("one part of violins", statements, COUNT(statements));
}
