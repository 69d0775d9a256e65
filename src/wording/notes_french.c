/* Before ':' and ';' stands a no-break space, as French typography asks (Imprimerie nationale, Lexique des règles typographiques; from memory). */
#include "wording/notes_language.h"
#include <stdio.h>
#include <string.h>

#define COLON "\xC2\xA0:"

static const char *const numbers[] = {"aucun", "un", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix", "onze", "douze"};
static const char *const ordinals[] = {"", "premiers ", "deuxièmes ", "troisièmes ", "quatrièmes ", "cinquièmes ", "sixièmes "};
static const char *const orchestras[] = {"", "premier", "second", "troisième", "quatrième", "cinquième", "sixième"};
static const char *const intervals[INTERVAL_NAMES] = {
    "sur les mêmes notes", "un degré", "une tierce", "une quarte", "une quinte", "une sixte", "une septième", "une octave",
    "une dixième", "une douzième", "deux octaves"};
static const char *const nouns[SPZ_SECTION_COUNT] = {
    [SPZ_VN1] = "premiers violons", [SPZ_VN2] = "seconds violons", [SPZ_VN3] = "troisièmes violons", [SPZ_VA] = "altos",
    [SPZ_VC] = "violoncelles",      [SPZ_DB] = "contrebasses",     [SPZ_VIOLINS] = "violons",        [SPZ_STRINGS] = "cordes",
    [SPZ_WINDS] = "vents",
};

static const char *number_word(size_t number, char text[24])
{
    if (number < sizeof numbers / sizeof numbers[0])
        return numbers[number];
    snprintf(text, 24, "%zu", number);
    return text;
}

/* After 'les', 'des' or 'aux': 'deuxièmes altos', 'solistes des premiers violons', 'altos du second orchestre'. */
static char *name(const Body *body, char text[BODY_TEXT])
{
    const char *word = (unsigned)body->section < SPZ_SECTION_COUNT ? nouns[body->section] : NULL;
    const char *order = body->number >= 1 && body->number <= 6 ? ordinals[body->number] : "";
    if (body->number == 1 && body->section == SPZ_DB)
        order = "premières ";
    snprintf(text, BODY_TEXT, "%s%s%s", body->solo ? "solistes des " : "", order, word ? word : "");
    size_t length = strlen(text);
    if (body->orchestra >= 1 && body->orchestra <= 6)
        snprintf(text + length, BODY_TEXT - length, " du %s orchestre", orchestras[body->orchestra]);
    return text;
}

static void interval_words(Buffer *out, const Citation *citation)
{
    IntervalName interval = citation->interval == INTERVAL_MIXED ? INTERVAL_NAMELESS : interval_name(citation->interval);
    if (interval == INTERVAL_SAME)
        buffer_printf(out, ", %s", intervals[interval]);
    else if (interval != INTERVAL_NAMELESS)
        buffer_printf(out, ", %s plus %s", intervals[interval], citation->interval > 0 ? "haut" : "bas");
}

static void entries_words(Buffer *out, const Citation *citation)
{
    char text[24];
    if (citation->passage->turns >= 4)
        buffer_printf(out, ", %s entrées en tout", number_word((size_t)citation->passage->turns, text));
}

static void dialogue(Buffer *out, const Citation *citation, const char *a, const char *b)
{
    static const char *const exchanges[] = {
        "Les %s appellent, les %s répondent", "Une question des %s, une réponse des %s", "Ce que proposent les %s, les %s le reprennent"};
    static const char *const imitations[] = {
        "Les %s jouent encore quand les %s entrent avec la même idée", "Sur les talons des %s, les %s suivent avec la même idée"};
    static const char *const hockets[] = {"Les notes volent des %s aux %s, et retour", "Les %s et les %s se partagent une figure, note à note"};
    size_t variant = citation->variant;
    switch (citation->passage->kind) {
    case SPZ_HOCKET:
        buffer_printf(out, variant % 2 ? hockets[1] : hockets[0], a, b);
        break;
    case SPZ_SPLIT_LINE:
        buffer_printf(out, variant % 2 ? "Encore une mélodie partagée" COLON " ses notes viennent tour à tour des %s et des %s"
                                       : "Une seule mélodie, dont les notes viennent tour à tour des %s et des %s" COLON
                                         " aucun des deux pupitres ne joue seul ce que l'on entend", a, b);
        break;
    case SPZ_IMITATION:
        buffer_printf(out, variant % 2 ? imitations[1] : imitations[0], a, b);
        interval_words(out, citation);
        entries_words(out, citation);
        break;
    default:
        buffer_printf(out, variant % 3 == 0 ? exchanges[0] : variant % 3 == 1 ? exchanges[1] : exchanges[2], a, b);
        interval_words(out, citation);
        entries_words(out, citation);
    }
}

/* A chain of more than two: all of them, or the first and the last. */
static void journey(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    size_t last = citation->body_count - 1;
    bool named = citation->body_count <= BODIES_NAMED;
    if (named && citation->variant % 2) {
        buffer_printf(out, "De pupitre en pupitre" COLON " une idée qui naît chez les %s", name(&citation->bodies[0], text));
        for (size_t i = 1; i <= last; i++)
            buffer_printf(out, i < last ? ", passe chez les %s" : " et finit chez les %s", name(&citation->bodies[i], text));
        return;
    }
    if (named)
        buffer_puts(out, "Une idée voyage des ");
    else
        buffer_printf(out, "Une idée fait le tour de %s pupitres, des ", number_word(citation->body_count, number));
    buffer_puts(out, name(&citation->bodies[0], text));
    buffer_printf(out, " aux %s", name(&citation->bodies[last], text));
    for (size_t i = 1; i < last && named; i++)
        buffer_printf(out, "%s les %s", i == 1 ? ", en passant par" : " et", name(&citation->bodies[i], text));
}

static void divided(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    int lines = citation->passage->turns;
    const char *count = number_word(lines > 0 ? (size_t)lines : 2, number);
    const char *all = citation->bodies[0].section == SPZ_VIOLINS ? "Tous les " : "Les ";
    buffer_printf(out, citation->variant % 2 ? "%s%s sonnent à %s voix" : "%s%s se divisent en %s voix", all, name(&citation->bodies[0], text), count);
    if (lines > 2)
        buffer_puts(out, citation->passage->fully_voiced ? ", chacune avec sa propre ligne" : " qui forment à elles seules l'accord entier");
}

static void coupled(Buffer *out, const Citation *citation, const char *a, const char *b)
{
    buffer_printf(out, citation->variant % 2 ? "Une seule voix pour deux pupitres" COLON " les %s et les %s dans le même rythme"
                                             : "Les %s et les %s avancent comme une seule voix", a, b);
    if (citation->quick)
        buffer_puts(out, ", en notes rapides");
}

static void sentence(Buffer *out, const Citation *citation)
{
    char a[BODY_TEXT] = "", b[BODY_TEXT] = "";
    spz_kind kind = citation->passage->kind;
    if (citation->body_count > 0)
        name(&citation->bodies[0], a);
    if (citation->body_count > 1)
        name(&citation->bodies[1], b);
    if (spz_kind_is_antiphony(kind) && citation->body_count > 2)
        journey(out, citation);
    else if (spz_kind_is_antiphony(kind))
        dialogue(out, citation, a, b);
    else if (kind == SPZ_COUPLING)
        coupled(out, citation, a, b);
    else
        divided(out, citation);
    buffer_putc(out, '.');
}

static void place(Buffer *out, const Citation *citation)
{
    char clock[CLOCK_TEXT];
    buffer_puts(out, citation->passage->first == citation->passage->last ? "Mesure " : "Mesures ");
    put_bars(out, citation);
    if (citation->letter[0]) {
        const char *what = letter_is_number(citation) ? "chiffre" : "lettre";
        if (citation->after)
            buffer_printf(out, ", %d %s après %s %s %s", citation->after, citation->after == 1 ? "mesure" : "mesures",
                          letter_is_number(citation) ? "le" : "la", what, citation->letter);
        else
            buffer_printf(out, ", %s %s", what, citation->letter);
    }
    for (size_t i = 0; i < citation->time_count; i++)
        buffer_printf(out, "%s %s", i == 0 ? ", à" : i == 1 ? " puis de nouveau à" : ",", clock_text(citation->times[i], clock));
}

/* 'un passage', 'cinq passages'. */
static void passages(Buffer *out, size_t count)
{
    char text[24];
    buffer_printf(out, "%s %s", number_word(count, text), count == 1 ? "passage" : "passages");
}

static void dialogues(Buffer *out, const Overview *overview)
{
    char text[24], a[BODY_TEXT], b[BODY_TEXT], clock[CLOCK_TEXT];
    buffer_puts(out, "Les pupitres se répondent dans ");
    passages(out, overview->dialogues);
    if (overview->striking == overview->dialogues)
        buffer_puts(out, overview->dialogues == 1 ? ", et de façon frappante" : ", chaque fois de façon frappante");
    else if (overview->striking)
        buffer_printf(out, ", de façon frappante dans %s", number_word(overview->striking, text));
    buffer_puts(out, ".");
    if (overview->dialogues > 1 && overview->pair_count > 1) {
        name(&overview->pair[0], a);
        name(&overview->pair[1], b);
        if (overview->pair_count == overview->dialogues)
            buffer_printf(out, " Tous reviennent aux %s et aux %s.", a, b);
        else
            buffer_printf(out, " Aux %s et aux %s en reviennent %s.", a, b, number_word(overview->pair_count, text));
    }
    if (overview->strongest) {
        buffer_printf(out, overview->dialogues == 1 ? " Il commence à la mesure %s" : " Celui qu'il ne faut pas manquer commence à la mesure %s",
                      overview->strongest->bar_from);
        if (overview->strongest->time_count)
            buffer_printf(out, ", à %s", clock_text(overview->strongest->times[0], clock));
        buffer_puts(out, ".");
    }
}

static void divisions(Buffer *out, const Overview *overview)
{
    char text[24];
    buffer_puts(out, " Dans ");
    passages(out, overview->divided);
    buffer_puts(out, " un pupitre se divise");
    if (overview->threefold && overview->threefold == overview->divided)
        buffer_puts(out, overview->divided == 1 ? " en trois voix ou plus" : ", chaque fois en trois voix ou plus");
    else if (overview->threefold)
        buffer_printf(out, ", dont %s en trois voix ou plus", number_word(overview->threefold, text));
    buffer_puts(out, ".");
}

static void paragraph(Buffer *out, const Overview *overview)
{
    static const char *const seatings[] = {
        [SEATING_NONE] = "",
        [SEATING_OPEN] = " La place des violons, la partition la laisse ouverte.",
        [SEATING_OPPOSED] = " La partition plaide pour des premiers et des seconds violons face à face, afin que question et réponse viennent de gauche et de droite.",
        [SEATING_TOGETHER] = " La partition plaide pour que tous les violons soient assis ensemble.",
    };
    if (!overview->strings) {
        buffer_puts(out, "Aucun pupitre de cordes ne joue dans ce mouvement.");
        return;
    }
    if (overview->dialogues)
        dialogues(out, overview);
    else
        buffer_puts(out, "Dans ce mouvement, aucun pupitre ne répond clairement à un autre.");
    if (overview->divided)
        divisions(out, overview);
    if (overview->coupled) {
        buffer_puts(out, " Dans ");
        passages(out, overview->coupled);
        buffer_puts(out, " deux pupitres avancent comme une seule voix.");
    }
    buffer_puts(out, seatings[overview->seating]);
}

static void times(Buffer *out, const Overview *overview)
{
    char clock[CLOCK_TEXT];
    if (overview->duration <= 0)
        buffer_puts(out, "La partition n'a pas d'indication de tempo, d'où l'absence de minutages\xC2\xA0; donnez la durée du mouvement et ils viendront.");
    else if (overview->stretched)
        buffer_printf(out, "Les minutages partent de la première note d'une exécution de %s%s.", clock_text(overview->duration, clock),
                      overview->repeats ? ", avec toutes les reprises" : "");
    else
        buffer_printf(out, "Les minutages partent de la première note et suivent les tempos de la partition, selon lesquels le mouvement dure %s%s.",
                      clock_text(overview->duration, clock), overview->repeats ? " avec toutes les reprises" : "");
}

const NotesLanguage notes_french = {"fr", "À écouter", "Aucun passage de ce mouvement ne se détache assez pour être cité.", place, sentence, paragraph, times};
