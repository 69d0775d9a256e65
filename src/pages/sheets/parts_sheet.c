#include "pages/sheets/parts_sheet.h"
#include "analysis/passages/passage_facts.h"
#include "writing/document.h"
#include "editing/score_files.h"
#include "support/path.h"
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
}

void parts_row_free(PartsRow *row)
{
    buffer_free(&row->pass);
    buffer_free(&row->words);
    buffer_free(&row->detail);
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

int parts_players(const PartsPage *page, size_t group)
{
    const spz_group *about = &page->map->groups[group].about;
    return about->solo ? 0 : spz_section_players(page->settings, about->section);
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
            slot_text("bar", row->until), slot_text("detail", parts_text_of(&row->detail)));
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

static spz_status add_movement(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                               const PartsForm *form, size_t number, SheetOut *sheet)
{
    AdviceList advice;
    spz_status status = advice_find(reading, settings, options, &advice);
    const char *title = spz_movement_title(reading->movement);
    PartsPage page = {reading->movement, reading->sections, &advice, path_name(spz_movement_file(reading->movement)), NULL,
                      advice_arrangement(reading, options), {form == &parts_csv ? SPZ_ENGLISH : options->language, reading->sections}, number, settings};
    page.title = *title ? title : page.file;
    if (!status)
        form->movement(sheet, &page);
    advice_free(&advice);
    return status;
}

static const PartsForm *form_of(spz_format format)
{
    return format == SPZ_AS_TEXT ? &parts_text : format == SPZ_AS_CSV ? &parts_csv : format == SPZ_AS_HTML ? &parts_html : NULL;
}

spz_status spz_sheet_parts(const spz_reading *const *readings, size_t count, const spz_settings *settings,
                           const spz_sheet_options *options, spz_format format, spz_document **out)
{
    spz_sheet_options usual = SPZ_SHEET_USUAL;
    const PartsForm *form = form_of(format);
    SheetOut sheet;
    size_t number = 0;
    spz_status status = SPZ_OK;
    *out = NULL;
    if (!form || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    sheet_begin(&sheet, options ? options->language : usual.language);
    form->begin(&sheet);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = add_movement(&reading, settings, options ? options : &usual, form, number++, &sheet);
        }
    form->end(&sheet);
    if (!status)
        status = document_take(&sheet.text, out);
    buffer_free(&sheet.text);
    return status;
}
