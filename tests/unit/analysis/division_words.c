/* Words over a string staff. The list is that of common practice in the five languages (Gould, Behind Bars, 2011, on divisi, from memory). */
#include "sections/names/division_marks.h"
#include "support/suite.h"

struct Said { const char *text; int lines; };

static void check_divided(const struct Said *said, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        DivisionWords words;
        bool any = division_words_read(said[i].text, &words);
        CU_ASSERT(any && words.divided && !words.double_stops && !words.unison);
        CU_ASSERT_EQUAL(words.lines, said[i].lines);
        if (!any || !words.divided || words.lines != said[i].lines)
            printf("\n    '%s'", said[i].text);
    }
}

static void a_section_divides_in_five_languages(void)
{
    static const struct Said said[] = {
        { "div.", 0 },           { "Div", 0 },          { "divisi", 0 },     { "(div.)", 0 },          { "div. pizz.", 0 },
        { "divided", 0 },        { "geteilt", 0 },      { "getheilt", 0 },   { "get.", 0 },            { "divis\xC3\xA9s", 0 },
        { "divise\xCC\x81s", 0 },{ "divididos", 0 },    { "alle geteilt", 0 }, { "Tous div.", 0 },
    };
    check_divided(said, COUNT(said));
}

static void the_number_of_lines_is_understood(void)
{
    static const struct Said said[] = {
        { "div. a 2", 2 },          { "div. a 3", 3 },       { "in 3", 3 },          { "\xC3\xA0 3", 3 },      { "a3", 3 },
        { "3fach geteilt", 3 },     { "dreifach", 3 },       { "vierfach get.", 4 }, { "Div. en 2", 2 },       { "tous div. en 2", 2 },
        { "div. in due", 2 },       { "divisi a tre", 3 },   { "divided in three", 3 }, { "in 4 Partien", 4 }, { "div. in 3 parti", 3 },
        { "div. 3", 3 },            { "zu dreien geteilt", 3 }, { "divis\xC3\xA9s en 3 groupes", 3 }, { "in drei Gruppen geteilt", 3 },
    };
    check_divided(said, COUNT(said));
}

static void a_2_alone_is_left_to_the_writing(void)
{
    DivisionWords words;
    CU_ASSERT_FALSE(division_words_read("a 2", &words));
    CU_ASSERT_FALSE(words.divided);
}

static void words_of_character_say_nothing_of_desks(void)
{
    static const char *const said[] = {"Leggiero e grazioso", "leggierissimo", "leggero"};
    for (size_t i = 0; i < COUNT(said); i++) {
        DivisionWords words;
        CU_ASSERT_FALSE(division_words_read(said[i], &words));
    }
}

static void desks_divide_or_play_alone(void)
{
    static const struct Said said[] = { { "pultweise", 0 }, { "by desks", 0 }, { "par pupitres", 0 }, { "div. by desks", 0 }, { "pultweise geteilt", 0 } };
    check_divided(said, COUNT(said));
    static const struct { const char *text; int desks, players; } alone[] = {
        { "1. Pult", 1, 0 },       { "nur 1. Pult", 1, 0 },       { "1st desk only", 1, 0 }, { "2 Pulte", 2, 0 }, { "desks 1-2", 2, 0 }, { "2\xC3\xA8me pupitre", 1, 0 },
        { "soli 2", 0, 2 },        { "2 Soli", 0, 2 },        { "Solo", 0, 0 },    { "2 players", 0, 2 },
    };
    for (size_t i = 0; i < COUNT(alone); i++) {
        DivisionWords words;
        CU_ASSERT_TRUE(division_words_read(alone[i].text, &words));
        CU_ASSERT_TRUE(words.solo);
        CU_ASSERT_FALSE(words.divided);
        CU_ASSERT_EQUAL(words.desks, alone[i].desks);
        CU_ASSERT_EQUAL(words.players, alone[i].players);
    }
}

static void together_again_ends_a_division(void)
{
    static const char *const texts[] = { "unis.", "unisono", "zus.", "zusammen", "uniti", "tutti", "tous", "alle", "gli altri", "les autres",
                                          "unite", "tutte unite", "le altre", "\xC3\xA0 l'unisson", "\xC3\xA0 l\xE2\x80\x99unisson", "nicht mehr geteilt", "non pi\xC3\xB9 div.",
                                          "ne plus divis\xC3\xA9s", "r\xC3\xA9unis", "die \xC3\x9C\x62rigen", "le reste" };
    for (size_t i = 0; i < COUNT(texts); i++) {
        DivisionWords words;
        CU_ASSERT_TRUE(division_words_read(texts[i], &words));
        DivisionState after = division_state_after((DivisionState){ .divided = true, .lines = 3, .half = true }, &words);
        CU_ASSERT_FALSE(after.divided);
        CU_ASSERT_FALSE(after.half);
        CU_ASSERT_EQUAL(after.lines, 0);
    }
}

static void non_div_means_double_stops(void)
{
    static const char *const texts[] = {
        "non div.", "non divisi", "nicht geteilt", "not divided", "pas divis\xC3\xA9s", "ungeteilt", "double stops", "Doppelgriffe",
        "doppie corde", "doubles cordes", "dobles cuerdas",
    };
    for (size_t i = 0; i < COUNT(texts); i++) {
        DivisionWords words;
        CU_ASSERT_TRUE(division_words_read(texts[i], &words));
        CU_ASSERT_TRUE(words.double_stops);
        CU_ASSERT_FALSE(words.divided);
        CU_ASSERT_TRUE(division_state_after((DivisionState){ .divided = true }, &words).double_stops);
    }
}

/* Only the word right before counts: a mute that is missing divides nobody, and keeps nobody from dividing. */
static void a_word_that_denies_something_else_leaves_the_division(void)
{
    static const struct Said said[] = {{"sans sourdines, div.", 0}, {"non legato, div. a 3", 3}, {"nicht eilen. geteilt", 0}, {"senza sord. divisi", 0}, {"pi\xC3\xB9 forte, div.", 0}};
    check_divided(said, COUNT(said));
}

static void half_of_the_section_is_no_division_by_itself(void)
{
    static const char *const texts[] = { "half", "die H\xC3\xA4lfte", "la moiti\xC3\xA9", "la met\xC3\xA0", "la mitad" };
    for (size_t i = 0; i < COUNT(texts); i++) {
        DivisionWords words;
        CU_ASSERT_TRUE(division_words_read(texts[i], &words));
        CU_ASSERT_TRUE(words.half);
        CU_ASSERT_FALSE(words.divided);
    }
}

static void other_words_say_nothing_about_players(void)
{
    static const char *const texts[] = {
        "dim.", "a tempo", "pizz.", "cresc.", "dolce", "con sordini", "sul G", "all'ottava", "all\xE2\x80\x99ottava", "sul tasto", "pi\xC3\xB9 mosso", "nicht mehr so schnell", "espressivo", "", "e legato", "3", "divin", "6",
    };
    DivisionWords words;
    for (size_t i = 0; i < COUNT(texts); i++)
        CU_ASSERT_FALSE(division_words_read(texts[i], &words));
    CU_ASSERT_FALSE(division_words_read(NULL, &words));
}

static const struct Statement statements[] = {
    STATEMENT(a_section_divides_in_five_languages),
    STATEMENT(the_number_of_lines_is_understood),
    STATEMENT(a_2_alone_is_left_to_the_writing),
    STATEMENT(words_of_character_say_nothing_of_desks), STATEMENT(desks_divide_or_play_alone),
    STATEMENT(together_again_ends_a_division),
    STATEMENT(non_div_means_double_stops), STATEMENT(a_word_that_denies_something_else_leaves_the_division),
    STATEMENT(half_of_the_section_is_no_division_by_itself),
    STATEMENT(other_words_say_nothing_about_players),
};
void suite_division_words(void) { suite_of("marks", statements, COUNT(statements)); }
