/* The sheet as data. */
#include "advice/page_turns.h"
#include "pages/sheets/parts_sheet.h"
#include "pages/growing_report.h"
#include "support/numbers.h"

static const char *const kinds[] = {
    [ADVICE_UNISON] = "unison", [ADVICE_DIVIDE] = "divide", [ADVICE_LEAD] = "lead",
    [ADVICE_ANSWER] = "answer", [ADVICE_SHARE] = "share",   [ADVICE_WITH] = "with",
};

static const Field of_movement[] = {
    {"file", IN_BOTH, "the score's file name"},
    {"title", IN_BOTH, "'Work: II. movement'"},
    {"seating", IN_JSON, "the arrangement that it is written for; \"\""},
    {"pages", IN_JSON, "whose page breaks the file tells those who divide: part, score; none: it tells none, or nobody divides"},
};
const FieldTable parts_movement_fields = FIELD_TABLE("parts movement", of_movement);

static const Field of_advice[] = {
    {"section", IN_BOTH, "the body of players that it is written for"},
    {"part_names", IN_BOTH, "the parts of the score that they read from"},
    {"bar", IN_BOTH, "as printed, a text"},
    {"bar_index", IN_BOTH, "the bar's place in the file, from 0"},
    {"beat", IN_BOTH, "of the bar, a text"},
    {"letter", IN_BOTH, "rehearsal letter and bars after it"},
    {"time", IN_BOTH, "which time through, where that matters"},
    {"until_bar", IN_BOTH, "where it ends, as printed"},
    {"kind", IN_BOTH, "lead, answer, with, divide, share, unison"},
    {"write", IN_BOTH, "what to write into the part"},
    {"detail", IN_BOTH, "who, and how the lines are shared"},
    {"passage", IN_BOTH, "kind of the passage behind it"},
    {"strength", IN_BOTH, "of that passage"},
    {"seating", IN_CSV, "the arrangement that it is written for"},
    {"sharing", IN_BOTH, "of a division: outside and inside, by desk, by desk and side, in blocks, by player; \"\""},
    {"players_needed", IN_BOTH, "of a division that takes more players than there are: how many; null, empty where they are enough"},
    {"players_there", IN_BOTH, "and how many there are"},
    {"warning", IN_BOTH, "the same as a sentence; \"\""},
    {"pages_of", IN_CSV, "whose page breaks the file tells: part, score, none"},
    {"page_turns", IN_BOTH, "of a division: bars, blanks between, with which a page of the part begins while a line is read by inside players alone; \"\""},
    {"lines_missing", IN_BOTH, "those lines, blanks between, 1 the highest; \"\""},
    {"question", IN_BOTH, "what is open to dispute, a sentence; \"\""},
};
const FieldTable advice_fields = FIELD_TABLE("advice", of_advice);
const Columns parts_columns = {"parts", IN_CSV, {&parts_movement_fields, &advice_fields}};

static const char *pages_name(PagesOf pages)
{
    static const char *const names[] = {[PAGES_UNTOLD] = "none", [PAGES_OF_SCORE] = "score", [PAGES_OF_PART] = "part"};
    return names[pages];
}

static void give_movement(FactsOut *out, const PartsPage *page)
{
    Facts facts = facts_of(out, &parts_movement_fields);
    fact_text(&facts, "file", page->file);
    fact_text(&facts, "title", page->title);
    fact_text(&facts, "seating", page->arrangement);
    fact_text(&facts, "pages", pages_name(parts_pages(page)));
    facts_done(&facts);
}

static void give_place(Facts *facts, const PartsPage *page, const Advice *advice, const PartsRow *cells)
{
    fact_text(facts, "bar", page->movement->bars[advice->bar].number);
    fact_integer(facts, "bar_index", (long long)advice->bar);
    fact_text(facts, "beat", cells->beat);
    fact_text(facts, "letter", cells->letter);
    fact_text(facts, "time", buffer_text(&cells->pass));
    fact_text(facts, "until_bar", advice->kind == ADVICE_UNISON ? "" : page->movement->bars[advice->last_bar].number);
}

static void say_turns(Buffer *out, const PartsPage *page, const Advice *advice)
{
    for (size_t i = 0; i < advice->turn_count; i++)
        buffer_printf(out, "%s%s", i ? " " : "", page->movement->bars[page->advice->turns.at[advice->first_turn + i].bar].number);
}

static void say_missing(Buffer *out, const Advice *advice)
{
    for (int line = 1; line < 32 && advice->turn_count; line++)
        if (advice->lines_at_risk >> line & 1)
            buffer_printf(out, "%s%d", out->length ? " " : "", line);
}

static void give_division(Facts *facts, const PartsPage *page, const Advice *advice, const PartsRow *cells)
{
    Buffer *words = &facts->out->words;
    bool divides = advice->kind == ADVICE_DIVIDE, few = divides && advice->shortage.needs;
    fact_text(facts, "sharing", divides && advice->allotment ? spz_sharing_name(spz_allotment_sharing(advice->allotment)) : "");
    fact_some(facts, "players_needed", few, advice->shortage.needs);
    fact_some(facts, "players_there", few, advice->shortage.has);
    fact_text(facts, "warning", buffer_text(&cells->warning));
    fact_text(facts, "pages_of", pages_name(pages_of(page->map, advice->group)));
    say_turns(words, page, advice);
    fact_said(facts, "page_turns", "");
    say_missing(words, advice);
    fact_said(facts, "lines_missing", "");
    fact_text(facts, "question", buffer_text(&cells->question));
}

static void give_advice(FactsOut *out, const PartsPage *page, const Advice *advice)
{
    PartsRow cells;
    Facts facts = facts_of(out, &advice_fields);
    parts_row(page, advice, &cells);
    fact_text(&facts, "section", page->map->groups[advice->group].about.name);
    parts_names(&out->words, page, advice->group);
    fact_said(&facts, "part_names", "");
    give_place(&facts, page, advice, &cells);
    fact_text(&facts, "kind", kinds[advice->kind]);
    fact_text(&facts, "write", buffer_text(&cells.words));
    fact_text(&facts, "detail", buffer_text(&cells.detail));
    fact_text(&facts, "passage", spz_kind_name(advice->passage->kind));
    fact_number(&facts, "strength", shown_strength(advice->passage->strength), 2);
    fact_text(&facts, "seating", page->arrangement);
    give_division(&facts, page, advice, &cells);
    facts_done(&facts);
    out->words.failed = out->words.failed || parts_row_failed(&cells);
    parts_row_free(&cells);
}

static void csv_begin_sheet(SheetOut *sheet)
{
    facts_columns(&sheet->facts, &parts_columns);
}

static void csv_movement(SheetOut *sheet, const PartsPage *page)
{
    for (size_t i = 0; i < page->advice->items.count; i++) {
        give_movement(&sheet->facts, page);
        give_advice(&sheet->facts, page, &page->advice->items.at[i]);
        facts_end_row(&sheet->facts);
    }
}

static void json_movement(SheetOut *sheet, const PartsPage *page)
{
    Json *json = &sheet->facts.json;
    json_object(json);
    give_movement(&sheet->facts, page);
    json_put_array(json, "advice");
    for (size_t i = 0; i < page->advice->items.count; i++) {
        json_object(json);
        give_advice(&sheet->facts, page, &page->advice->items.at[i]);
        json_end(json);
    }
    json_end(json);
    json_end(json);
}

const PartsForm parts_csv = {csv_begin_sheet, csv_movement, sheet_nothing, true};
const PartsForm parts_json = {sheet_json_begin, json_movement, sheet_json_end_cautioned, true};
