#include "support/numbers.h"
#include "pages/sheets/parts_sheet.h"

static const char *const kinds[] = {
    [ADVICE_UNISON] = "unison", [ADVICE_DIVIDE] = "divide", [ADVICE_LEAD] = "lead",
    [ADVICE_ANSWER] = "answer", [ADVICE_SHARE] = "share",   [ADVICE_WITH] = "with",
};

static const Field of_advice[] = {
    {"file", IN_CSV, "the score's file name"},
    {"title", IN_CSV, "'Work: movement'"},
    {"section", IN_CSV, "the body of players that it is written for"},
    {"part_names", IN_CSV, "the parts of the score that they read from"},
    {"bar", IN_CSV, "as printed"},
    {"bar_index", IN_CSV, "the bar's place in the file, from 0"},
    {"beat", IN_CSV, "of the bar"},
    {"letter", IN_CSV, "rehearsal letter and bars after it"},
    {"time", IN_CSV, "which time through, where that matters"},
    {"until_bar", IN_CSV, "where it ends, as printed"},
    {"kind", IN_CSV, "lead, answer, with, divide, share, unison"},
    {"write", IN_CSV, "what to write into the part"},
    {"detail", IN_CSV, "who, and how the lines are shared"},
    {"passage", IN_CSV, "kind of the passage behind it"},
    {"strength", IN_CSV, "of that passage"},
    {"seating", IN_CSV, "the arrangement that it is written for"},
};
const FieldTable advice_fields = FIELD_TABLE("advice", of_advice);
const Columns parts_columns = {"parts", IN_CSV, {&advice_fields}};

static void csv_begin_sheet(SheetOut *sheet)
{
    facts_columns(&sheet->facts, &parts_columns);
}

static void give_advice(FactsOut *out, const PartsPage *page, const Advice *advice, const char *names)
{
    PartsRow cells;
    Facts facts = facts_of(out, &advice_fields);
    parts_row(page, advice, &cells);
    fact_text(&facts, "file", page->file);
    fact_text(&facts, "title", page->title);
    fact_text(&facts, "section", page->map->groups[advice->group].about.name);
    fact_text(&facts, "part_names", names);
    fact_text(&facts, "bar", page->movement->bars[advice->bar].number);
    fact_integer(&facts, "bar_index", (long long)advice->bar);
    fact_text(&facts, "beat", cells.beat);
    fact_text(&facts, "letter", cells.letter);
    fact_text(&facts, "time", parts_text_of(&cells.pass));
    fact_text(&facts, "until_bar", advice->kind == ADVICE_UNISON ? "" : page->movement->bars[advice->last_bar].number);
    fact_text(&facts, "kind", kinds[advice->kind]);
    fact_text(&facts, "write", parts_text_of(&cells.words));
    fact_text(&facts, "detail", parts_text_of(&cells.detail));
    fact_text(&facts, "passage", spz_kind_name(advice->passage->kind));
    fact_number(&facts, "strength", shown_strength(advice->passage->strength), 2);
    fact_text(&facts, "seating", page->arrangement);
    facts_done(&facts);
    facts_end_row(out);
    out->row.out->failed = out->row.out->failed || buffer_failed(&cells.words) || buffer_failed(&cells.detail) || buffer_failed(&cells.pass);
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
        give_advice(&sheet->facts, page, advice, names.text ? names.text : "");
    }
    sheet->text.failed = sheet->text.failed || buffer_failed(&names);
    buffer_free(&names);
}

static void csv_end_sheet(SheetOut *sheet)
{
    (void)sheet;
}

const PartsForm parts_csv = {csv_begin_sheet, csv_movement, csv_end_sheet};
