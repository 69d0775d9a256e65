#include "writing/csv_text.h"
#include "support/numbers.h"
#include "pages/sheets/parts_sheet.h"

static const char *const kinds[] = {
    [ADVICE_UNISON] = "unison", [ADVICE_DIVIDE] = "divide", [ADVICE_LEAD] = "lead",
    [ADVICE_ANSWER] = "answer", [ADVICE_SHARE] = "share",   [ADVICE_WITH] = "with",
};

static void csv_begin_sheet(SheetOut *sheet)
{
    csv_header(&sheet->row, "file,title,section,part_names,bar,bar_index,beat,letter,time,until_bar,kind,write,detail,passage,strength,seating");
}

static void csv_advice(CsvRow *row, const PartsPage *page, const Advice *advice, const char *names)
{
    PartsRow cells;
    parts_row(page, advice, &cells);
    csv_text(row, page->file);
    csv_text(row, page->title);
    csv_text(row, page->map->groups[advice->group].about.name);
    csv_text(row, names);
    csv_text(row, page->movement->bars[advice->bar].number);
    csv_integer(row, (long long)advice->bar);
    csv_text(row, cells.beat);
    csv_text(row, cells.letter);
    csv_text(row, parts_text_of(&cells.pass));
    csv_text(row, advice->kind == ADVICE_UNISON ? "" : page->movement->bars[advice->last_bar].number);
    csv_text(row, kinds[advice->kind]);
    csv_text(row, parts_text_of(&cells.words));
    csv_text(row, parts_text_of(&cells.detail));
    csv_text(row, spz_kind_name(advice->passage->kind));
    csv_number(row, shown_strength(advice->passage->strength), 2);
    csv_text(row, page->arrangement);
    csv_end(row);
    row->out->failed = row->out->failed || buffer_failed(&cells.words) || buffer_failed(&cells.detail) || buffer_failed(&cells.pass);
    parts_row_free(&cells);
}

static void csv_movement(SheetOut *sheet, const PartsPage *page)
{
    Buffer names;
    buffer_init(&names);
    for (size_t i = 0; i < page->advice->items.count; i++) {
        const Advice *advice = &page->advice->items.at[i];
        buffer_clear(&names);
        parts_names(&names, page, advice->group);
        csv_advice(&sheet->row, page, advice, names.text ? names.text : "");
    }
    sheet->text.failed = sheet->text.failed || buffer_failed(&names);
    buffer_free(&names);
}

static void csv_end_sheet(SheetOut *sheet)
{
    (void)sheet;
}

const PartsForm parts_csv = {csv_begin_sheet, csv_movement, csv_end_sheet};
