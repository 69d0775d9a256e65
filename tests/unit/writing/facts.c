/* Facts go by their table, and none is lost. */
#include "support/suite.h"
#include "writing/facts.h"

static const Field of_note[] = {
    {"pitch", IN_BOTH, "sounding"},
    {"tie", IN_JSON | SOMETIMES, "to the next"},
    {"bar", IN_CSV, "as printed"},
    {"beat", IN_BOTH, "of the bar"},
};
static const FieldTable note_fields = FIELD_TABLE("note", of_note);
static const Columns note_columns = {"notes", IN_CSV, {&note_fields}};

static void give(FactsOut *out, const char *pitch, bool tie)
{
    Facts facts = facts_of(out, &note_fields);
    fact_text(&facts, "pitch", pitch);
    if (tie)
        fact_flag(&facts, "tie", true);
    fact_text(&facts, "bar", "12a");
    fact_number(&facts, "beat", 1.5, 1);
    facts_done(&facts);
}

static void one_table_makes_both_forms(void)
{
    Buffer json, csv;
    FactsOut out;
    buffer_init(&json);
    buffer_init(&csv);
    facts_begin(&out, &json);
    json_list(&out.json);
    json_row(&out.json);
    give(&out, "G3", true);
    json_end(&out.json);
    json_end(&out.json);
    facts_finish(&out);
    CU_ASSERT_STRING_EQUAL(json.text, "[{\"pitch\": \"G3\", \"tie\": true, \"beat\": 1.5}]\n");
    facts_begin(&out, &csv);
    facts_columns(&out, &note_columns);
    give(&out, "G3", false);
    facts_end_row(&out);
    facts_finish(&out);
    CU_ASSERT_STRING_EQUAL(csv.text, "pitch,bar,beat\nG3,12a,1.5\n");
    CU_ASSERT(!buffer_failed(&json) && !buffer_failed(&csv));
    buffer_free(&json);
    buffer_free(&csv);
}

/* Whether a record given in this order fails the report. */
static bool fails(const char *first, const char *second)
{
    Buffer text;
    FactsOut out;
    buffer_init(&text);
    facts_begin(&out, &text);
    Facts facts = facts_object(&out, &note_fields);
    fact_text(&facts, first, "1");
    if (second)
        fact_text(&facts, second, "2");
    facts_close(&facts);
    facts_finish(&out);
    bool failed = buffer_failed(&text);
    buffer_free(&text);
    return failed;
}

static void a_report_that_does_not_go_by_its_table_fails(void)
{
    CU_ASSERT(!fails("pitch", "beat"));
    CU_ASSERT(fails("pitch", NULL));
    CU_ASSERT(fails("beat", "pitch"));
    CU_ASSERT(fails("pitch", "colour"));
    CU_ASSERT(fails("beat", NULL));
}

static void words_that_were_put_together_are_taken_once(void)
{
    Buffer text;
    FactsOut out;
    buffer_init(&text);
    facts_begin(&out, &text);
    Facts facts = facts_line(&out, &note_fields);
    buffer_puts(&out.words, "A flat");
    fact_said(&facts, "pitch", NULL);
    fact_said(&facts, "beat", NULL);
    facts_close(&facts);
    facts_finish(&out);
    CU_ASSERT_STRING_EQUAL(text.text, "{\"pitch\": \"A flat\", \"beat\": null}\n");
    buffer_free(&text);
}

void suite_facts(void);
void suite_facts(void)
{
    static const struct Statement statements[] = {
        STATEMENT(one_table_makes_both_forms),
        STATEMENT(a_report_that_does_not_go_by_its_table_fails),
        STATEMENT(words_that_were_put_together_are_taken_once),
    };
    suite_of("facts", statements, COUNT(statements));
}
