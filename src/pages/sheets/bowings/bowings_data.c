/* The bowing committee's sheet as data. */
#include "pages/sheets/bowings/bowings_sheet.h"

static const Field of_movement[] = {
    {"file", IN_BOTH, "the score's file name"},
    {"title", IN_BOTH, "'Work: II. movement'"},
};
const FieldTable bowings_movement_fields = FIELD_TABLE("bowings movement", of_movement);

static const Field of_gesture[] = {
    {"passage", IN_BOTH, "its place in the movement's `passages`, from 0"},
    {"kind", IN_BOTH, "exchange, imitation, coupling"},
    {"in_turn", IN_BOTH, "whether the sections play it one after the other"},
};
const FieldTable gesture_fields = FIELD_TABLE("gesture", of_gesture);

static const Field of_section[] = {
    {"section", IN_JSON, "the body of players"},
    {"first_bar", IN_JSON, "of the gesture there, as printed"},
    {"last_bar", IN_JSON, "likewise"},
    {"notes_compared", IN_JSON, "moments that it shares with the first section; of the first: its own"},
};
const FieldTable gesture_section_fields = FIELD_TABLE("gesture section", of_section);

static const Field of_difference[] = {
    {"section", IN_BOTH, "the one that the other is held against"},
    {"bar", IN_BOTH, "as printed"},
    {"other", IN_BOTH, "the other section"},
    {"other_bar", IN_BOTH, "its bar: the same where both play at once"},
    {"sign", IN_BOTH, "slur, staccato, tenuto, accent, up-bow, down-bow, pizzicato, tremolo; in CSV \"\" for a section that is bowed alike throughout"},
    {"marks", IN_BOTH, "beats: slurs from note to note ('1-2'), else notes that have the sign and whose counterpart lacks it; \"\""},
    {"other_marks", IN_BOTH, "likewise of the other section, in its own bar"},
};
const FieldTable bowing_difference_fields = FIELD_TABLE("bowing difference", of_difference);
const Columns bowings_columns = {"bowings", IN_CSV, {&bowings_movement_fields, &gesture_fields, &bowing_difference_fields}};

static const Movement *movement_of(const BowingsPage *page)
{
    return page->reading->movement;
}

static const char *bar_number(const BowingsPage *page, Ticks when)
{
    int bar = movement_bar_at(movement_of(page), when);
    return bar < 0 ? "" : movement_of(page)->bars[bar].number;
}

static const char *name_of(const BowingsPage *page, const BowingMeeting *meeting, size_t strand)
{
    return page->speaker.sections->groups[meeting->strands[strand].group].about.name;
}

static void give_movement(FactsOut *out, const BowingsPage *page)
{
    Facts facts = facts_of(out, &bowings_movement_fields);
    fact_text(&facts, "file", page->file);
    fact_text(&facts, "title", page->title);
    facts_done(&facts);
}

static void give_gesture(FactsOut *out, const BowingMeeting *meeting)
{
    Facts facts = facts_of(out, &gesture_fields);
    fact_integer(&facts, "passage", (long long)meeting->place);
    fact_text(&facts, "kind", spz_kind_name(meeting->passage->kind));
    fact_flag(&facts, "in_turn", meeting->in_turn);
    facts_done(&facts);
}

static void give_section(FactsOut *out, const BowingsPage *page, const BowingMeeting *meeting, size_t strand)
{
    const BowingStrand *own = &meeting->strands[strand];
    Facts facts = facts_line(out, &gesture_section_fields);
    fact_text(&facts, "section", name_of(page, meeting, strand));
    fact_text(&facts, "first_bar", bar_number(page, own->from));
    fact_text(&facts, "last_bar", bar_number(page, own->to > own->from ? own->to - 1 : own->from));
    fact_integer(&facts, "notes_compared", (long long)own->compared);
    facts_close(&facts);
}

static void give_marks(Facts *facts, const BowingsPage *page, const BowingDifference *difference)
{
    say_bowing_marks(&facts->out->words, &page->speaker, page->list, difference, false);
    fact_said(facts, "marks", "");
    say_bowing_marks(&facts->out->words, &page->speaker, page->list, difference, true);
    fact_said(facts, "other_marks", "");
}

static void give_difference(FactsOut *out, const BowingsPage *page, const BowingMeeting *meeting, const BowingDifference *difference)
{
    Facts facts = facts_of(out, &bowing_difference_fields);
    fact_text(&facts, "section", name_of(page, meeting, 0));
    fact_text(&facts, "bar", movement_of(page)->bars[difference->bars[0]].number);
    fact_text(&facts, "other", name_of(page, meeting, difference->strand));
    fact_text(&facts, "other_bar", movement_of(page)->bars[difference->bars[1]].number);
    fact_text(&facts, "sign", bowing_sign_name(difference->sign));
    give_marks(&facts, page, difference);
    facts_done(&facts);
}

static void give_likeness(FactsOut *out, const BowingsPage *page, const BowingMeeting *meeting, size_t strand)
{
    Facts facts = facts_of(out, &bowing_difference_fields);
    fact_text(&facts, "section", name_of(page, meeting, 0));
    fact_text(&facts, "bar", bar_number(page, meeting->strands[0].from));
    fact_text(&facts, "other", name_of(page, meeting, strand));
    fact_text(&facts, "other_bar", bar_number(page, meeting->strands[strand].from));
    fact_text(&facts, "sign", "");
    fact_text(&facts, "marks", "");
    fact_text(&facts, "other_marks", "");
    facts_done(&facts);
}

static bool strand_differs(const BowingsPage *page, const BowingMeeting *meeting, size_t strand)
{
    for (size_t i = 0; i < meeting->count; i++)
        if (page->list->differences.at[meeting->first + i].strand == strand)
            return true;
    return false;
}

static void csv_begin_sheet(SheetOut *sheet)
{
    facts_columns(&sheet->facts, &bowings_columns);
}

static void csv_row_head(FactsOut *out, const BowingsPage *page, const BowingMeeting *meeting)
{
    give_movement(out, page);
    give_gesture(out, meeting);
}

static void csv_movement(SheetOut *sheet, const BowingsPage *page)
{
    FactsOut *out = &sheet->facts;
    for (size_t m = 0; m < page->list->meetings.count; m++) {
        const BowingMeeting *meeting = &page->list->meetings.at[m];
        for (size_t i = 0; i < meeting->count; i++) {
            csv_row_head(out, page, meeting);
            give_difference(out, page, meeting, &page->list->differences.at[meeting->first + i]);
            facts_end_row(out);
        }
        for (size_t strand = 1; strand < meeting->strand_count; strand++)
            if (!strand_differs(page, meeting, strand)) {
                csv_row_head(out, page, meeting);
                give_likeness(out, page, meeting, strand);
                facts_end_row(out);
            }
    }
}

static void json_gesture(FactsOut *out, const BowingsPage *page, const BowingMeeting *meeting)
{
    json_object(&out->json);
    give_gesture(out, meeting);
    json_put_array(&out->json, "sections");
    for (size_t strand = 0; strand < meeting->strand_count; strand++)
        give_section(out, page, meeting, strand);
    json_end(&out->json);
    json_put_array(&out->json, "differences");
    for (size_t i = 0; i < meeting->count; i++) {
        json_object(&out->json);
        give_difference(out, page, meeting, &page->list->differences.at[meeting->first + i]);
        json_end(&out->json);
    }
    json_end(&out->json);
    json_end(&out->json);
}

static void json_movement(SheetOut *sheet, const BowingsPage *page)
{
    Json *json = &sheet->facts.json;
    json_object(json);
    give_movement(&sheet->facts, page);
    json_put_array(json, "gestures");
    for (size_t i = 0; i < page->list->meetings.count; i++)
        json_gesture(&sheet->facts, page, &page->list->meetings.at[i]);
    json_end(json);
    json_end(json);
}

const BowingsForm bowings_csv = {csv_begin_sheet, csv_movement, sheet_nothing, true};
const BowingsForm bowings_json = {sheet_json_begin, json_movement, sheet_json_end, true};
