#include "pages/sheets/parts_sheet.h"
#include "analysis/passages/passage_facts.h"
#include "writing/document.h"
#include "editing/score_files.h"
#include "support/path.h"
#include <ctype.h>
#include <stdio.h>
#include <string.h>

static void bar_name(const Movement *movement, size_t bar, char *text, size_t size)
{
    const char *number = movement->bars[bar].number;
    if (number && *number)
        snprintf(text, size, "%.80s", number);
    else
        snprintf(text, size, "(%zu. in the file)", bar + 1);
}

void parts_row(const PartsPage *page, const Advice *advice, PartsRow *row)
{
    row->advice = advice;
    bar_name(page->movement, advice->bar, row->bar, sizeof row->bar);
    row->until[0] = '\0';
    if (advice->kind != ADVICE_UNISON)
        bar_name(page->movement, advice->last_bar, row->until, sizeof row->until);
    words_beat(beat_of(page->movement, advice->from), row->beat);
    movement_rehearsal_text(page->movement, (int)advice->bar, row->letter);
    advice_pass(page->movement, advice->bar, row->pass);
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

void parts_remark(Buffer *out, const PartsRow *row)
{
    const char *detail = row->advice->detail;
    bool until = row->until[0] && strcmp(row->until, row->bar) != 0;
    buffer_clear(out);
    if (until)
        buffer_printf(out, "Until bar %s.", row->until);
    if (*detail)
        buffer_printf(out, "%s%c%s.", until ? " " : "", toupper((unsigned char)*detail), detail + 1);
}

static spz_status add_movement(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options,
                               const PartsForm *form, size_t number, Buffer *out)
{
    AdviceList advice;
    spz_status status = advice_find(reading, settings, options, &advice);
    const char *title = spz_movement_title(reading->movement);
    PartsPage page = {reading->movement, reading->sections, &advice, path_name(spz_movement_file(reading->movement)), NULL,
                      advice_arrangement(reading, options), number};
    page.title = *title ? title : page.file;
    if (!status)
        form->movement(out, &page);
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
    Buffer text;
    size_t number = 0;
    spz_status status = SPZ_OK;
    *out = NULL;
    if (!form || !judged_all(readings, count))
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    form->begin(&text);
    for (size_t i = 0; i < count && !status; i++)
        for (size_t m = 0; m < spz_reading_count(readings[i]) && !status; m++) {
            spz_movement_reading reading = spz_reading_at(readings[i], m);
            status = add_movement(&reading, settings, options ? options : &usual, form, number++, &text);
        }
    form->end(&text);
    if (!status)
        status = document_take(&text, out);
    buffer_free(&text);
    return status;
}
