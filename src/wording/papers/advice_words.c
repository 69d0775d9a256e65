#include "wording/papers/advice_words.h"
#include "wording/papers/desk_words.h"
#include <stdio.h>

enum { BODIES_MOST = 12, RUNS_MOST = 12 };

typedef struct Bodies {
    spz_group at[BODIES_MOST];
    size_t count;
} Bodies;

static Bodies bodies_of(const Speaker *speaker, spz_players players)
{
    Bodies bodies;
    bodies.count = spz_players_named(speaker->sections, players, bodies.at, BODIES_MOST);
    return bodies;
}

/* Several bodies, and those whose name is a set (violins, strings, winds), are spoken of as many. */
static long grammatical_number(const Bodies *bodies)
{
    return bodies->count == 1 && bodies->at[0].section >= SPZ_VIOLINS ? 2 : (long)bodies->count;
}

static Phrase antiphony_phrase(const Advice *advice)
{
    bool follows = advice->passage->kind == SPZ_IMITATION;
    if (advice->passage->kind == SPZ_SPLIT_LINE)
        return PHRASE_ADVICE_ONE_LINE;
    if (advice->kind == ADVICE_SHARE && (advice->passage->link_count == 2 || !advice->before))
        return PHRASE_ADVICE_ALTERNATE;
    if (!advice->before)
        return follows ? PHRASE_ADVICE_LEAD_FOLLOWED : PHRASE_ADVICE_LEAD;
    if (!advice->after)
        return follows ? PHRASE_ADVICE_FOLLOW : PHRASE_ADVICE_ANSWER;
    return PHRASE_ADVICE_BETWEEN;
}

static void put_antiphony(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    spz_players all = 0;
    for (size_t i = 0; i < advice->passage->link_count; i++)
        all |= advice->passage->links[i].players;
    Bodies before = bodies_of(speaker, advice->before), after = bodies_of(speaker, advice->after);
    Bodies others = bodies_of(speaker, all & ~((spz_players)1 << advice->group) & ~advice->with);
    SAY(out, speaker->language, antiphony_phrase(advice), slot_players("before", before.at, before.count), slot_players("after", after.at, after.count),
        slot_players("others", others.at, others.count), slot_number("m", grammatical_number(&after)));
}

static void put_division(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    Buffer what = {0};
    const char *sharing = advice->allotment ? words_sharing(speaker->language, spz_allotment_sharing(advice->allotment)) : "";
    bool all = advice->passage->sides[0].section == SPZ_VIOLINS, bare = !all && advice->said && *sharing;
    SAY(&what, speaker->language,
        all ? PHRASE_ADVICE_ALL_VIOLINS : advice->passage->turns > 2 && !advice->said ? PHRASE_KIND_DIVIDED : PHRASE_KIND_DIV2,
        slot_number("n", advice->passage->turns));
    if (bare)
        buffer_puts(out, sharing);
    else
        SAY(out, speaker->language, *sharing ? PHRASE_ADVICE_SHARED : PHRASE_ADVICE_PLAIN, slot_text("what", what.text), slot_text("sharing", sharing));
    buffer_let_go(out, &what);
}

/* What is written, without company and place. */
static void put_core(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    Bodies with = bodies_of(speaker, advice->with);
    switch (advice->kind) {
    case ADVICE_UNISON: buffer_puts(out, phrase_text(speaker->language, advice->joined ? PHRASE_ADVICE_TUTTI : PHRASE_ADVICE_UNISON)); break;
    case ADVICE_DIVIDE: put_division(speaker, advice, out); break;
    case ADVICE_WITH: SAY(out, speaker->language, PHRASE_ADVICE_WITH, slot_players("with", with.at, with.count)); break;
    default: put_antiphony(speaker, advice, out);
    }
}

void advice_words(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    Bodies with = bodies_of(speaker, advice->with);
    bool jointly = advice->with && advice->kind != ADVICE_WITH;
    Buffer core = {0}, placed = {0};
    put_core(speaker, advice, &core);
    SAY(&placed, speaker->language, advice->across ? PHRASE_ADVICE_ACROSS : PHRASE_ADVICE_PLAIN, slot_text("what", core.text));
    SAY(out, speaker->language, jointly ? PHRASE_ADVICE_JOINTLY : PHRASE_ADVICE_PLAIN, slot_text("what", placed.text),
        slot_players("with", with.at, with.count));
    buffers_let_go(out, &core, &placed);
}

static void put_run(const Speaker *speaker, size_t first, size_t last, bool begun, Buffer *out)
{
    char from[WORDS_TEXT], to[WORDS_TEXT];
    const Movement *movement = speaker->sections->movement;
    words_bar(speaker->language, movement->bars[first].number, first, from);
    words_bar(speaker->language, movement->bars[last].number, last, to);
    buffer_printf(out, "%s%s", begun ? ", " : "", from);
    if (last > first)
        buffer_printf(out, "%s%s", last > first + 1 ? "-" : ", ", to);
}

/* Printed numbers of the bars in which any of `players` enter, each once; from three in a row on with a dash. Returns how many bars. */
static size_t put_bars(const Speaker *speaker, const spz_passage *passage, spz_players players, Buffer *out)
{
    size_t first = SIZE_MAX, last = SIZE_MAX, runs = 0, bars = 0;
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        if (!(entry->players & players) || entry->bar == last)
            continue;
        if (first != SIZE_MAX && entry->bar != last + 1) {
            put_run(speaker, first, last, runs++ > 0, out);
            first = entry->bar;
        } else if (first == SIZE_MAX)
            first = entry->bar;
        last = entry->bar;
        bars++;
        if (runs == RUNS_MOST) {
            buffer_puts(out, phrase_text(speaker->language, PHRASE_ADVICE_LATER));
            return bars;
        }
    }
    if (first != SIZE_MAX)
        put_run(speaker, first, last, runs > 0, out);
    return bars;
}

/* 'enters in bars 66, 68; Vn II in 67, 69': every other link with its bars. */
static void put_entries(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    const spz_passage *passage = advice->passage;
    spz_players own = (spz_players)1 << advice->group;
    Buffer bars = {0};
    size_t count = put_bars(speaker, passage, own, &bars);
    SAY(out, speaker->language, PHRASE_ADVICE_ENTERS, slot_number("n", (long)count), slot_text("bars", bars.text));
    for (size_t i = 0; i < passage->link_count; i++) {
        Bodies others = bodies_of(speaker, passage->links[i].players & ~own & ~advice->with);
        if (!others.count || (passage->links[i].players & own))
            continue;
        buffer_clear(&bars);
        put_bars(speaker, passage, passage->links[i].players, &bars);
        SAY(out, speaker->language, PHRASE_ADVICE_OTHERS_ENTER, slot_players("others", others.at, others.count), slot_text("bars", bars.text));
    }
    buffer_let_go(out, &bars);
}

void advice_detail(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    if (advice->kind == ADVICE_DIVIDE && advice->allotment)
        words_lines_desks(speaker->language, advice->allotment, speaker->sections->groups[advice->group].about.section, out);
    else if (advice->kind == ADVICE_WITH)
        words_told(speaker, advice->passage, out);
    else if (spz_kind_is_antiphony(advice->passage->kind) && advice->passage->kind != SPZ_SPLIT_LINE && advice->kind != ADVICE_UNISON)
        put_entries(speaker, advice, out); /* in a split line every note is an entry */
}

void advice_pass_words(spz_language language, AdvicePass pass, Buffer *out)
{
    if (!pass.endings) {
        if (pass.times)
            SAY(out, language, pass.times == 2 ? PHRASE_PASS_BOTH : PHRASE_PASS_ALL, slot_number("n", (long)pass.times));
        return;
    }
    Buffer which = {0};
    for (int n = 0; n < 6; n++)
        if (pass.endings >> n & 1) {
            buffer_puts(&which, which.length ? phrase_text(language, PHRASE_LIST_NEXT) : "");
            buffer_puts(&which, phrase_text(language, (Phrase)(PHRASE_PASS_1 + n)));
        }
    SAY(out, language, PHRASE_PASS_TIME, slot_text("which", which.text));
    buffer_let_go(out, &which);
}

_Static_assert(PHRASE_SHARING_PLAYER - PHRASE_SHARING_USUAL == SPZ_SHARING_COUNT - 1, "a phrase for each way to share");

const char *words_sharing(spz_language language, spz_sharing sharing)
{
    return phrase_text(language, (Phrase)(PHRASE_SHARING_USUAL + (unsigned)sharing));
}

void advice_shortage(const Speaker *speaker, const Advice *advice, Buffer *out)
{
    spz_group who = {.section = advice->shortage.section, .orchestra = advice->passage->sides[0].orchestra};
    if (advice->kind == ADVICE_DIVIDE && advice->shortage.needs)
        SAY(out, speaker->language, PHRASE_ADVICE_TOO_FEW, slot_players("who", &who, 1), slot_number("n", advice->passage->turns),
            slot_number("needs", advice->shortage.needs), slot_number("has", advice->shortage.has));
}

/* '2', '2 and 4'; returns how many. */
static int put_lines(spz_language language, uint32_t lines, Buffer *out)
{
    char figures[32][4];
    const char *items[32];
    size_t count = 0;
    for (int line = 1; line < 32; line++)
        if (lines >> line & 1) {
            snprintf(figures[count], sizeof figures[count], "%d", line);
            items[count] = figures[count];
            count++;
        }
    say_list(out, language, items, count);
    return (int)count;
}

void advice_question(const Speaker *speaker, const AdviceList *list, const Advice *advice, Buffer *out)
{
    const Movement *movement = speaker->sections->movement;
    Buffer bars = {0}, lines = {0};
    bool sure = true;
    if (advice->kind != ADVICE_DIVIDE || !advice->turn_count)
        return;
    for (size_t i = 0; i < advice->turn_count; i++) {
        const PageTurn *turn = &list->turns.at[advice->first_turn + i];
        char bar[WORDS_TEXT];
        words_bar(speaker->language, movement->bars[turn->bar].number, turn->bar, bar);
        buffer_printf(&bars, "%s%s", i ? ", " : "", bar);
        sure = sure && turn->sure;
    }
    int count = put_lines(speaker->language, advice->lines_at_risk, &lines);
    SAY(out, speaker->language, sure ? PHRASE_ADVICE_PAGE_TURNS : PHRASE_ADVICE_PAGE_ENDS, slot_number("n", (long)advice->turn_count), slot_text("bars", bars.text),
        slot_number("m", count), slot_text("lines", lines.text));
    buffers_let_go(out, &bars, &lines);
}

/* A section that has a habit of its own for one of the numbers of lines, or one for all. */
static void put_own_habits(spz_language language, const spz_settings *settings, Buffer *out)
{
    for (int section = SPZ_VN1; section <= SPZ_DB; section++) {
        spz_group who = {.section = (spz_section)section};
        spz_sharing in[5];
        for (int lines = 2; lines <= 4; lines++)
            in[lines] = spz_sharing_habit(settings, who.section, lines);
        bool same = in[2] == in[3] && in[3] == in[4];
        for (int lines = 2; lines <= (same ? 2 : 4); lines++)
            if (in[lines] != spz_sharing_habit(settings, SPZ_NO_SECTION, lines) || same)
                SAY(out, language, same ? PHRASE_SHARING_OWN_HABIT_ALWAYS : PHRASE_SHARING_OWN_HABIT, slot_players("who", &who, 1), slot_number("n", lines),
                    slot_text("sharing", words_sharing(language, in[lines])));
    }
}

void words_sharing_habits(spz_language language, const spz_settings *settings, Buffer *out)
{
    const char *const in[] = {words_sharing(language, spz_sharing_habit(settings, SPZ_NO_SECTION, 2)), words_sharing(language, spz_sharing_habit(settings, SPZ_NO_SECTION, 3)),
                              words_sharing(language, spz_sharing_habit(settings, SPZ_NO_SECTION, 4))};
    SAY(out, language, PHRASE_SHARING_HABITS, slot_text("two", in[0]), slot_text("three", in[1]), slot_text("four", in[2]));
    put_own_habits(language, settings, out);
    buffer_puts(out, ".");
}
