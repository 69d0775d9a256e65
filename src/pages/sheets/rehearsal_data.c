/* The rehearsal sheet as data. */
#include "pages/sheets/rehearsal_sheet.h"
#include "spezzato/report.h"
#include "support/numbers.h"

static const Field of_movement[] = {
    {"file", IN_BOTH, "the score's file name without its folder"},
    {"title", IN_BOTH, "of the movement"},
    {"seating", IN_BOTH, "the arrangement that is rehearsed for; \"\""},
    {"tempo_given", IN_JSON, "whether the score has tempo marks; else 120 crotchets a minute are counted"},
};
const FieldTable rehearsal_movement_fields = FIELD_TABLE("rehearsal movement", of_movement);

static const Field of_call[] = {
    {"call", IN_CSV, "from 1, in the order in which to call"},
    {"called", IN_BOTH, "who has to be there"},
    {"call_seconds", IN_BOTH, "of the bars of all its passages, each bar once"},
};
const FieldTable call_fields = FIELD_TABLE("call", of_call);

static const Field of_item[] = {
    {"kind", IN_BOTH, "as of a passage"},
    {"first_bar", IN_BOTH, "as printed, a text"},
    {"last_bar", IN_BOTH, "as printed, a text"},
    {"rehearsal", IN_BOTH, "letter and bars after it, 'B+3'; \"\""},
    {"seconds", IN_BOTH, "its bars once through, at the tempo in force"},
    {"tempo", IN_BOTH, "crotchets a minute where it begins"},
    {"times", IN_BOTH, "how often it is played, repeats counted"},
    {"exposure", IN_BOTH, "0 to 1: its strength times how much of what is heard it is; of coupling, how tight it has to be"},
    {"strength", IN_BOTH, "0 to 1, cut to two decimals"},
    {"strength_word", IN_BOTH, "striking, clear, marginal"},
    {"what", IN_BOTH, "one sentence"},
    {"entries", IN_BOTH, "who enters in which bars; \"\""},
    {"listen", IN_BOTH, "for what: match (of answer and call), one line, entries (heard over what goes on), balance (of lines), together"},
    {"from", IN_BOTH, "from where: hall, podium, last desks"},
    {"degrees", IN_BOTH, "between the two sections, from the middle seats; null, empty where they are not two of the stage"},
    {"delay", IN_BOTH, "seconds that sound takes between them; likewise"},
    {"passage", IN_BOTH, "its place in the movement's `passages`, from 0"},
};
const FieldTable rehearsal_item_fields = FIELD_TABLE("rehearsal passage", of_item);
const Columns rehearsal_columns = {"rehearsal", IN_CSV, {&rehearsal_movement_fields, &call_fields, &rehearsal_item_fields}};

static void give_movement(FactsOut *out, const RehearsalPage *page)
{
    Facts facts = facts_of(out, &rehearsal_movement_fields);
    fact_text(&facts, "file", page->file);
    fact_text(&facts, "title", page->title);
    fact_text(&facts, "seating", page->plan->seating);
    fact_flag(&facts, "tempo_given", page->plan->tempo_given);
    facts_done(&facts);
}

static void give_call(FactsOut *out, const RehearsalPage *page, size_t index)
{
    const RehearsalCall *call = &page->plan->calls.at[index];
    char who[WORDS_TEXT];
    Facts facts = facts_of(out, &call_fields);
    fact_integer(&facts, "call", (long long)index + 1);
    fact_text(&facts, "called", words_players(&page->speaker, call->called, who));
    fact_number(&facts, "call_seconds", call->seconds, 1);
    facts_done(&facts);
}

static void give_listening(Facts *facts, const RehearsalItem *item)
{
    fact_text(facts, "listen", listen_name(item->listen));
    fact_text(facts, "from", listen_from_name(item->from));
    if (item->placed) {
        fact_number(facts, "degrees", item->degrees, 1);
        fact_number(facts, "delay", item->delay, 4);
    } else {
        fact_nothing(facts, "degrees");
        fact_nothing(facts, "delay");
    }
}

static void give_item(FactsOut *out, const RehearsalPage *page, const RehearsalItem *item)
{
    const spz_passage *p = item->passage;
    char letter[WORDS_TEXT];
    Facts facts = facts_of(out, &rehearsal_item_fields);
    fact_text(&facts, "kind", spz_kind_name(p->kind));
    fact_text(&facts, "first_bar", p->first_bar);
    fact_text(&facts, "last_bar", p->last_bar);
    fact_text(&facts, "rehearsal", words_letter(p, letter));
    fact_number(&facts, "seconds", item->seconds, 1);
    fact_number(&facts, "tempo", item->rate, 1);
    fact_integer(&facts, "times", (long long)item->times);
    fact_number(&facts, "exposure", item->exposure, 2);
    fact_number(&facts, "strength", shown_strength(p->strength), 2);
    fact_text(&facts, "strength_word", spz_weight_name(spz_weight_of(p->strength)));
    words_told(&page->speaker, p, &out->words);
    fact_said(&facts, "what", "");
    say_entry_bars(&out->words, &page->speaker, p);
    fact_said(&facts, "entries", "");
    give_listening(&facts, item);
    fact_integer(&facts, "passage", (long long)item->place);
    facts_done(&facts);
}

static void json_call(FactsOut *facts, const RehearsalPage *page, size_t index)
{
    const RehearsalCall *call = &page->plan->calls.at[index];
    json_object(&facts->json);
    give_call(facts, page, index);
    json_put_array(&facts->json, "passages");
    for (size_t i = 0; i < call->count; i++) {
        json_object(&facts->json);
        give_item(facts, page, &page->plan->items.at[call->first + i]);
        json_end(&facts->json);
    }
    json_end(&facts->json);
    json_end(&facts->json);
}

static void json_movement(SheetOut *sheet, const RehearsalPage *page)
{
    FactsOut *facts = &sheet->facts;
    json_object(&facts->json);
    give_movement(facts, page);
    json_put_array(&facts->json, "calls");
    for (size_t i = 0; i < page->plan->calls.count; i++)
        json_call(facts, page, i);
    json_end(&facts->json);
    json_end(&facts->json);
}

static void csv_begin_sheet(SheetOut *sheet)
{
    facts_columns(&sheet->facts, &rehearsal_columns);
}

static void csv_movement(SheetOut *sheet, const RehearsalPage *page)
{
    FactsOut *facts = &sheet->facts;
    for (size_t c = 0; c < page->plan->calls.count; c++)
        for (size_t i = 0; i < page->plan->calls.at[c].count; i++) {
            give_movement(facts, page);
            give_call(facts, page, c);
            give_item(facts, page, &page->plan->items.at[page->plan->calls.at[c].first + i]);
            facts_end_row(facts);
        }
}

const RehearsalForm rehearsal_json = {sheet_json_begin, json_movement, sheet_json_end_cautioned, true};
const RehearsalForm rehearsal_csv = {csv_begin_sheet, csv_movement, sheet_nothing, true};
