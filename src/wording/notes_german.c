#include "wording/notes_language.h"
#include <stdio.h>
#include <string.h>

static const char *const numbers[] = {"keiner", "einer", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun", "zehn", "elf", "zwölf"};
static const char *const ordinals[] = {"", "ersten ", "zweiten ", "dritten ", "vierten ", "fünften ", "sechsten "};
static const char *const intervals[INTERVAL_NAMES] = {
    "auf denselben Tönen", "einen Schritt", "eine Terz", "eine Quarte", "eine Quinte", "eine Sexte", "eine Septime", "eine Oktave",
    "eine Dezime", "eine Duodezime", "zwei Oktaven"};

typedef struct Noun {
    const char *usual, *dative;
} Noun;
static const Noun nouns[SPZ_SECTION_COUNT] = {
    [SPZ_VN1] = {"ersten Violinen", "ersten Violinen"}, [SPZ_VN2] = {"zweiten Violinen", "zweiten Violinen"},
    [SPZ_VN3] = {"dritten Violinen", "dritten Violinen"}, [SPZ_VA] = {"Bratschen", "Bratschen"}, [SPZ_VC] = {"Violoncelli", "Violoncelli"},
    [SPZ_DB] = {"Kontrabässe", "Kontrabässen"}, [SPZ_VIOLINS] = {"Violinen", "Violinen"}, [SPZ_STRINGS] = {"Streicher", "Streichern"},
    [SPZ_WINDS] = {"Bläser", "Bläsern"},
};

static const char *number_word(size_t number, char text[24])
{
    if (number < sizeof numbers / sizeof numbers[0])
        return numbers[number];
    snprintf(text, 24, "%zu", number);
    return text;
}

/* After 'die', 'den' or 'der': 'zweiten Bratschen', 'Solisten der ersten Violinen', 'Bratschen des ersten Orchesters'. */
static char *name(const Body *body, bool dative, char text[BODY_TEXT])
{
    const Noun *noun = &nouns[(unsigned)body->section < SPZ_SECTION_COUNT ? body->section : SPZ_NO_SECTION];
    const char *word = dative && !body->solo ? noun->dative : noun->usual;
    const char *order = body->number >= 1 && body->number <= 6 ? ordinals[body->number] : "";
    snprintf(text, BODY_TEXT, "%s%s%s", body->solo ? "Solisten der " : "", order, word ? word : "");
    size_t length = strlen(text);
    if (body->orchestra >= 1 && body->orchestra <= 6)
        snprintf(text + length, BODY_TEXT - length, " des %sOrchesters", ordinals[body->orchestra]);
    return text;
}

static void interval_words(Buffer *out, const Citation *citation)
{
    IntervalName interval = citation->interval == INTERVAL_MIXED ? INTERVAL_NAMELESS : interval_name(citation->interval);
    if (interval == INTERVAL_SAME)
        buffer_printf(out, ", %s", intervals[interval]);
    else if (interval != INTERVAL_NAMELESS)
        buffer_printf(out, ", %s %s", intervals[interval], citation->interval > 0 ? "höher" : "tiefer");
}

static void entries_words(Buffer *out, const Citation *citation)
{
    char text[24];
    if (citation->passage->turns >= 4)
        buffer_printf(out, ", insgesamt mit %s Einsätzen", number_word((size_t)citation->passage->turns, text));
}

static void exchange(Buffer *out, const Citation *citation, const Body *a, const Body *b)
{
    char one[BODY_TEXT], two[BODY_TEXT];
    static const char *const forms[] = {
        "Die %s rufen, die %s antworten", "Eine Frage der %s, eine Antwort der %s", "Was die %s vorgeben, nehmen die %s auf"};
    size_t variant = citation->variant % 3;
    buffer_printf(out, variant == 0 ? forms[0] : variant == 1 ? forms[1] : forms[2], name(a, false, one), name(b, false, two));
    interval_words(out, citation);
    entries_words(out, citation);
}

static void dialogue(Buffer *out, const Citation *citation, const Body *a, const Body *b)
{
    char one[BODY_TEXT], two[BODY_TEXT];
    bool second = citation->variant % 2 == 1;
    switch (citation->passage->kind) {
    case SPZ_HOCKET:
        if (second)
            buffer_printf(out, "Die %s und die %s teilen sich eine Figur, Ton für Ton", name(a, false, one), name(b, false, two));
        else
            buffer_printf(out, "Einzelne Töne fliegen zwischen den %s und den %s hin und her", name(a, true, one), name(b, true, two));
        break;
    case SPZ_SPLIT_LINE:
        buffer_printf(out, second ? "Noch einmal eine geteilte Melodie: ihre Töne kommen abwechselnd von den %s und den %s"
                                  : "Eine einzige Melodie, deren Töne abwechselnd von den %s und den %s kommen: Keine der beiden Gruppen spielt allein, was man hört",
                      name(a, true, one), name(b, true, two));
        break;
    case SPZ_IMITATION:
        if (second)
            buffer_printf(out, "Den %s dicht auf den Fersen folgen die %s mit demselben Gedanken", name(a, true, one), name(b, false, two));
        else
            buffer_printf(out, "Während die %s noch spielen, setzen die %s mit demselben Gedanken ein", name(a, false, one), name(b, false, two));
        interval_words(out, citation);
        entries_words(out, citation);
        break;
    default:
        exchange(out, citation, a, b);
    }
}

/* A chain of more than two: all of them, or the first and the last. */
static void journey(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    size_t last = citation->body_count - 1;
    bool named = citation->body_count <= BODIES_NAMED;
    if (named && citation->variant % 2) {
        buffer_printf(out, "Von Gruppe zu Gruppe: ein Gedanke, der bei den %s beginnt", name(&citation->bodies[0], true, text));
        for (size_t i = 1; i <= last; i++)
            buffer_printf(out, i < last ? ", zu den %s kommt" : " und bei den %s endet", name(&citation->bodies[i], true, text));
        return;
    }
    if (named)
        buffer_puts(out, "Ein Gedanke wandert von den ");
    else
        buffer_printf(out, "Ein Gedanke macht die Runde durch %s Gruppen, von den ", number_word(citation->body_count, number));
    buffer_puts(out, name(&citation->bodies[0], true, text));
    for (size_t i = 1; i < last && named; i++)
        buffer_printf(out, "%s die %s", i == 1 ? " über" : " und", name(&citation->bodies[i], false, text));
    buffer_printf(out, " zu den %s", name(&citation->bodies[last], true, text));
}

static void divided(Buffer *out, const Citation *citation)
{
    char text[BODY_TEXT], number[24];
    int lines = citation->passage->turns;
    const char *count = number_word(lines > 0 ? (size_t)lines : 2, number);
    const char *all = citation->bodies[0].section == SPZ_VIOLINS ? "Alle " : "Die ";
    buffer_printf(out, citation->variant % 2 ? "%s%s klingen in %s Stimmen" : "%s%s teilen sich in %s Stimmen", all,
                  name(&citation->bodies[0], false, text), count);
    if (lines > 2)
        buffer_puts(out, citation->passage->fully_voiced ? ", jede mit eigener Linie" : " und bilden für sich allein den vollen Akkord");
}

static void coupled(Buffer *out, const Citation *citation, const Body *a, const Body *b)
{
    char one[BODY_TEXT], two[BODY_TEXT];
    buffer_printf(out, citation->variant % 2 ? "Eine Stimme aus zwei Gruppen: die %s und die %s im selben Rhythmus" : "Die %s und die %s gehen wie eine einzige Stimme",
                  name(a, false, one), name(b, false, two));
    if (citation->quick)
        buffer_puts(out, ", in raschen Noten");
}

static void sentence(Buffer *out, const Citation *citation)
{
    spz_kind kind = citation->passage->kind;
    if (spz_kind_is_antiphony(kind) && citation->body_count > 2)
        journey(out, citation);
    else if (spz_kind_is_antiphony(kind))
        dialogue(out, citation, &citation->bodies[0], &citation->bodies[1]);
    else if (kind == SPZ_COUPLING)
        coupled(out, citation, &citation->bodies[0], &citation->bodies[1]);
    else
        divided(out, citation);
    buffer_putc(out, '.');
}

static void place(Buffer *out, const Citation *citation)
{
    char clock[CLOCK_TEXT];
    buffer_puts(out, citation->passage->first == citation->passage->last ? "Takt " : "Takte ");
    put_bars(out, citation);
    if (citation->letter[0]) {
        buffer_puts(out, ", ");
        if (citation->after)
            buffer_printf(out, "%d %s nach ", citation->after, citation->after == 1 ? "Takt" : "Takte");
        buffer_printf(out, "%s %s", letter_is_number(citation) ? "Ziffer" : "Buchstabe", citation->letter);
    }
    for (size_t i = 0; i < citation->time_count; i++)
        buffer_printf(out, "%s %s", i == 0 ? ", bei" : i == 1 ? " und wieder bei" : ",", clock_text(citation->times[i], clock));
}

/* 'in einer Passage', 'in fünf Passagen'. */
static void passages(Buffer *out, size_t count)
{
    char text[24];
    if (count == 1)
        buffer_puts(out, "in einer Passage");
    else
        buffer_printf(out, "in %s Passagen", number_word(count, text));
}

static void dialogues(Buffer *out, const Overview *overview)
{
    char text[24], a[BODY_TEXT], b[BODY_TEXT], clock[CLOCK_TEXT];
    buffer_puts(out, "Die Gruppen antworten einander ");
    passages(out, overview->dialogues);
    if (overview->striking == overview->dialogues)
        buffer_puts(out, overview->dialogues == 1 ? ", und das besonders deutlich" : ", jedes Mal besonders deutlich");
    else if (overview->striking)
        buffer_printf(out, ", davon in %s besonders deutlich", number_word(overview->striking, text));
    buffer_puts(out, ".");
    if (overview->dialogues > 1 && overview->pair_count > 1) {
        bool all = overview->pair_count == overview->dialogues;
        buffer_printf(out, all ? " Sie alle gehören den %s und den %s." : " Den %s und den %s gehören davon ", name(&overview->pair[0], true, a),
                      name(&overview->pair[1], true, b));
        if (!all)
            buffer_printf(out, "%s.", number_word(overview->pair_count, text));
    }
    if (overview->strongest) {
        buffer_printf(out, overview->dialogues == 1 ? " Sie beginnt in Takt %s" : " Die Stelle, die man nicht versäumen sollte, beginnt in Takt %s",
                      overview->strongest->bar_from);
        if (overview->strongest->time_count)
            buffer_printf(out, ", bei %s", clock_text(overview->strongest->times[0], clock));
        buffer_puts(out, ".");
    }
}

/* 'In drei Passagen teilt sich eine Gruppe, ...' */
static void divisions(Buffer *out, const Overview *overview)
{
    char text[24];
    buffer_puts(out, overview->divided == 1 ? " In einer Passage" : " In ");
    if (overview->divided > 1)
        buffer_printf(out, "%s Passagen", number_word(overview->divided, text));
    buffer_puts(out, " teilt sich eine Gruppe");
    if (overview->threefold && overview->threefold == overview->divided)
        buffer_puts(out, overview->divided == 1 ? " in drei oder mehr Stimmen" : ", jedes Mal in drei oder mehr Stimmen");
    else if (overview->threefold)
        buffer_printf(out, ", davon in %s in drei oder mehr Stimmen", number_word(overview->threefold, text));
    buffer_puts(out, ".");
}

static void paragraph(Buffer *out, const Overview *overview)
{
    static const char *const seatings[] = {
        [SEATING_NONE] = "",
        [SEATING_OPEN] = " Wo die Violinen sitzen, lässt die Partitur offen.",
        [SEATING_OPPOSED] = " Die Partitur spricht dafür, erste und zweite Violinen einander gegenüberzusetzen, sodass Frage und Antwort von links und rechts kommen.",
        [SEATING_TOGETHER] = " Die Partitur spricht dafür, alle Violinen beisammen zu setzen.",
    };
    if (!overview->strings) {
        buffer_puts(out, "In diesem Satz spielen keine Streichergruppen.");
        return;
    }
    if (overview->dialogues)
        dialogues(out, overview);
    else
        buffer_puts(out, "In diesem Satz antworten keine zwei Gruppen einander deutlich.");
    if (overview->divided)
        divisions(out, overview);
    if (overview->coupled) {
        char text[24];
        buffer_puts(out, overview->coupled == 1 ? " In einer Passage" : " In ");
        if (overview->coupled > 1)
            buffer_printf(out, "%s Passagen", number_word(overview->coupled, text));
        buffer_puts(out, " gehen zwei Gruppen wie eine einzige Stimme.");
    }
    buffer_puts(out, seatings[overview->seating]);
}

static void times(Buffer *out, const Overview *overview)
{
    char clock[CLOCK_TEXT];
    if (overview->duration <= 0)
        buffer_puts(out, "Die Partitur hat keine Tempoangaben, deshalb stehen hier keine Zeiten; mit der Dauer des Satzes kommen sie hinzu.");
    else if (overview->stretched)
        buffer_printf(out, "Die Zeiten zählen vom ersten Ton einer Aufführung von %s an%s.", clock_text(overview->duration, clock),
                      overview->repeats ? ", mit allen Wiederholungen" : "");
    else
        buffer_printf(out, "Die Zeiten zählen vom ersten Ton an und folgen den Tempoangaben der Partitur; danach dauert der Satz %s%s.",
                      clock_text(overview->duration, clock), overview->repeats ? ", mit allen Wiederholungen" : "");
}

const NotesLanguage notes_german = {"de", "Zum Hinhören", "Keine Passage dieses Satzes tritt so hervor, dass sie zu nennen wäre.", place, sentence,
                                    paragraph, times};
