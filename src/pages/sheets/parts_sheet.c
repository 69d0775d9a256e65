#include "pages/sheets/parts_sheet.h"
#include "advice/page_turns.h"
#include "analysis/passages/passage_facts.h"
#include "wording/seatings/seating_words.h"
#include <string.h>

static void bar_name(const PartsPage *page, size_t bar, char text[WORDS_TEXT])
{
    words_bar(page->speaker.language, page->movement->bars[bar].number, bar, text);
}

void parts_row(const PartsPage *page, const Advice *advice, PartsRow *row)
{
    row->advice = advice;
    bar_name(page, advice->bar, row->bar);
    row->until[0] = '\0';
    if (advice->kind != ADVICE_UNISON)
        bar_name(page, advice->last_bar, row->until);
    words_beat(beat_of(page->movement, advice->from), row->beat);
    movement_rehearsal_text(page->movement, (int)advice->bar, row->letter);
    buffer_init(&row->pass);
    buffer_init(&row->words);
    buffer_init(&row->detail);
    advice_pass_words(page->speaker.language, advice_pass(page->movement, advice->bar), &row->pass);
    advice_words(&page->speaker, advice, &row->words);
    advice_detail(&page->speaker, advice, &row->detail);
    buffer_init(&row->warning);
    buffer_init(&row->question);
    advice_shortage(&page->speaker, advice, &row->warning);
    advice_question(&page->speaker, page->advice, advice, &row->question);
}

bool parts_row_failed(const PartsRow *row)
{
    return buffer_failed(&row->pass) || buffer_failed(&row->words) || buffer_failed(&row->detail) || buffer_failed(&row->warning) || buffer_failed(&row->question);
}

void parts_row_free(PartsRow *row)
{
    buffer_free(&row->pass);
    buffer_free(&row->words);
    buffer_free(&row->detail);
    buffer_free(&row->warning);
    buffer_free(&row->question);
}

void parts_names(Buffer *out, const PartsPage *page, size_t group)
{
    const Group *body = &page->map->groups[group];
    size_t shown = 0;
    for (size_t i = 0; i < body->line_count; i++) {
        size_t part = page->map->lines[body->lines[i]].part;
        bool again = false;
        for (size_t k = 0; k < i; k++)
            again = again || page->map->lines[body->lines[k]].part == part;
        if (!again)
            buffer_printf(out, "%s%s", shown++ ? ", " : "", page->movement->parts[part].name);
    }
}

static bool same_section(const spz_group *a, const spz_group *b)
{
    return a->section == b->section && a->orchestra == b->orchestra && !a->solo && !b->solo;
}

int parts_players(const PartsPage *page, size_t group)
{
    const spz_group *about = &page->map->groups[group].about;
    int players = spz_orchestra_players(page->settings, about->section, about->orchestra), parts = 0, before = 0;
    for (size_t i = 0; i < page->map->group_count && about->number; i++)
        if (same_section(about, &page->map->groups[i].about)) {
            parts++;
            before += i < group;
        }
    return about->solo ? 0 : parts > 1 ? (players + parts - 1 - before) / parts : players; /* the first parts have the player over */
}

/* The advice to divide at or after `*at`; NULL when there is none. */
static const Advice *next_division(const PartsPage *page, size_t *at)
{
    while (*at < page->advice->items.count && page->advice->items.at[*at].kind != ADVICE_DIVIDE)
        ++*at;
    return *at < page->advice->items.count ? &page->advice->items.at[(*at)++] : NULL;
}

PagesOf parts_pages(const PartsPage *page)
{
    PagesOf pages = PAGES_UNTOLD;
    const Advice *advice;
    for (size_t at = 0; (advice = next_division(page, &at)) != NULL;) {
        PagesOf own = pages_of(page->map, advice->group);
        pages = own > pages ? own : pages;
    }
    return pages;
}

/* Whether a page that is turned could silence a line at all. */
static bool lines_at_risk(const PartsPage *page)
{
    const Advice *advice;
    bool risk = false;
    for (size_t at = 0; (advice = next_division(page, &at)) != NULL;)
        risk = risk || advice->lines_at_risk;
    return risk;
}

static bool short_alike(const Advice *a, const Advice *b)
{
    return a->kind == ADVICE_DIVIDE && b->kind == ADVICE_DIVIDE && a->group == b->group && a->passage->turns == b->passage->turns && a->shortage.needs == b->shortage.needs;
}

/* The first of its kind: the others are told with it. */
static bool opens_shortage(const PartsPage *page, const Advice *advice)
{
    for (const Advice *other = page->advice->items.at; other < advice; other++)
        if (short_alike(other, advice))
            return false;
    return advice->shortage.needs > 0;
}

static void say_short(const PartsPage *page, const Advice *advice, Buffer *out)
{
    Buffer words = {0}, bars = {0};
    char bar[WORDS_TEXT];
    long count = 0;
    advice_shortage(&page->speaker, advice, &words);
    for (const Advice *other = advice; other < page->advice->items.at + page->advice->items.count; other++)
        if (short_alike(other, advice)) {
            words_bar(page->speaker.language, page->movement->bars[other->bar].number, other->bar, bar);
            buffer_printf(&bars, "%s%s", count++ ? ", " : "", bar);
        }
    SAY(out, page->speaker.language, PHRASE_PARTS_SHORT, slot_text("what", buffer_text(&words)), slot_number("n", count), slot_text("bars", buffer_text(&bars)));
    buffers_let_go(out, &words, &bars);
}

bool parts_preface(const PartsPage *page, size_t index, bool *warning, Buffer *out)
{
    static const Phrase pages[] = {[PAGES_UNTOLD] = PHRASE_PARTS_PAGES_UNTOLD, [PAGES_OF_SCORE] = PHRASE_PARTS_PAGES_SCORE, [PAGES_OF_PART] = PHRASE_PARTS_PAGES_PART};
    size_t at = 0;
    const Advice *advice = next_division(page, &at);
    *warning = index > 1;
    buffer_clear(out);
    if (!advice)
        return false;
    if (index == 0)
        words_sharing_habits(page->speaker.language, page->settings, out);
    else if (index == 1)
        buffer_puts(out, phrase_text(page->speaker.language, parts_pages(page) || lines_at_risk(page) ? pages[parts_pages(page)] : PHRASE_PARTS_PAGES_NONE));
    for (size_t found = 1; index > 1 && advice; advice = next_division(page, &at)) {
        if (opens_shortage(page, advice) && ++found == index) {
            say_short(page, advice, out);
            return true;
        }
    }
    return index <= 1;
}

void parts_range(const PartsPage *page, size_t group, size_t *first, size_t *end)
{
    size_t at = 0;
    while (at < page->advice->items.count && page->advice->items.at[at].group < group)
        at++;
    *first = at;
    while (at < page->advice->items.count && page->advice->items.at[at].group == group)
        at++;
    *end = at;
}

void parts_remark(Buffer *out, const PartsPage *page, const PartsRow *row)
{
    bool until = row->until[0] && strcmp(row->until, row->bar) != 0, detail = row->detail.length;
    buffer_clear(out);
    if (until || detail)
        SAY(out, page->speaker.language, !detail ? PHRASE_PARTS_UNTIL : until ? PHRASE_PARTS_UNTIL_AND : PHRASE_PARTS_DETAIL,
            slot_text("bar", row->until), slot_text("detail", buffer_text(&row->detail)));
}

void parts_untouched(const PartsPage *page, Buffer *out)
{
    spz_group untouched[16];
    size_t count = 0;
    for (size_t group = 0; group < page->map->group_count && count < sizeof untouched / sizeof *untouched; group++) {
        size_t first, end;
        parts_range(page, group, &first, &end);
        if (first == end && !page->map->groups[group].shares_bass)
            untouched[count++] = page->map->groups[group].about;
    }
    for (size_t i = 0; i < count; i++) {
        char name[WORDS_TEXT];
        buffer_printf(out, "%s%s", i ? ", " : "", words_body(page->speaker.language, &untouched[i], name));
    }
}

void parts_about(const PartsPage *page, Buffer *out)
{
    SAY(out, page->speaker.language, *page->arrangement ? PHRASE_PARTS_ABOUT_SEATING : PHRASE_PARTS_ABOUT, slot_text("seating", words_arrangement(page->speaker.language, page->arrangement)));
}

static const PartsForm *const forms[SHEET_FORMATS] = {[SPZ_AS_TEXT] = &parts_text, [SPZ_AS_HTML] = &parts_html, [SPZ_AS_JSON] = &parts_json, [SPZ_AS_CSV] = &parts_csv};

typedef struct Under { /* a sheet under way */
    const PartsForm *form;
    const spz_settings *settings;
    const spz_sheet_options *options;
} Under;

static spz_status add_movement(SheetOut *sheet, const spz_reading *of, size_t movement, void *context)
{
    const Under *under = context;
    spz_movement_reading reading = spz_reading_at(of, movement);
    AdviceList advice;
    spz_status status = advice_find(&reading, under->settings, under->options, &advice);
    spz_language language = under->form->data ? SPZ_ENGLISH : sheet->language;
    PartsPage page = {reading.movement, reading.sections, &advice, movement_score_name(reading.movement), sheet_title(reading.movement),
                      advice_arrangement(&reading, under->options), {language, reading.sections}, sheet->number, under->settings};
    if (!status)
        under->form->movement(sheet, &page);
    advice_free(&advice);
    return status;
}

spz_status spz_sheet_parts(const spz_reading *const *readings, size_t count, const spz_settings *settings,
                           const spz_sheet_options *options, spz_format format, spz_document **out)
{
    const spz_sheet_options usual = SPZ_SHEET_USUAL;
    Under under = {(unsigned)format < SHEET_FORMATS ? forms[format] : NULL, settings, options ? options : &usual};
    SheetRun run = {under.form ? under.form->begin : NULL, under.form ? under.form->end : NULL, add_movement, &under, under.options->language};
    return sheet_write(&run, readings, count, out);
}
