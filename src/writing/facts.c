#include "writing/facts.h"
#include <string.h>

void facts_begin(FactsOut *facts, Buffer *out)
{
    *facts = (FactsOut){.form = IN_JSON};
    json_begin(&facts->json, out);
    csv_begin(&facts->row, out);
    buffer_init(&facts->words);
}

void facts_columns(FactsOut *facts, const Columns *columns)
{
    facts->form = columns->form;
    for (size_t i = 0; i < RECORDS_MOST && columns->records[i]; i++)
        for (size_t f = 0; f < columns->records[i]->count; f++)
            if (columns->records[i]->fields[f].forms & columns->form)
                csv_head(&facts->row, columns->records[i]->fields[f].name);
    csv_end_heads(&facts->row);
}

void facts_end_row(FactsOut *facts)
{
    csv_end(&facts->row);
}

void facts_finish(FactsOut *facts)
{
    json_finish(&facts->json);
    buffer_let_go(facts->json.out, &facts->words);
}

Facts facts_of(FactsOut *out, const FieldTable *table)
{
    return (Facts){.out = out, .table = table};
}

Facts facts_object(FactsOut *out, const FieldTable *table)
{
    json_object(&out->json);
    return facts_of(out, table);
}

Facts facts_line(FactsOut *out, const FieldTable *table)
{
    json_row(&out->json);
    return facts_of(out, table);
}

static void fail(Facts *facts)
{
    facts->out->json.out->failed = true;
}

/* A field that this form shows always must not be passed over. */
static void pass_over(Facts *facts, const Field *field)
{
    if ((field->forms & facts->out->form) && !(field->forms & SOMETIMES))
        fail(facts);
}

void facts_done(Facts *facts)
{
    while (facts->next < facts->table->count)
        pass_over(facts, &facts->table->fields[facts->next++]);
}

void facts_close(Facts *facts)
{
    facts_done(facts);
    json_end(&facts->out->json);
}

/* The next field is of this name: whether the form shows it. */
static bool shows(Facts *facts, const char *name)
{
    while (facts->next < facts->table->count) {
        const Field *field = &facts->table->fields[facts->next++];
        if (strcmp(field->name, name) == 0)
            return (field->forms & facts->out->form) != 0;
        pass_over(facts, field);
    }
    fail(facts);
    return false;
}

/* True where a value is due in JSON, whose key is written; `*cell` where one is due in CSV. */
static bool key_shown(Facts *facts, const char *name, bool *cell)
{
    bool shown = shows(facts, name), json = facts->out->form == IN_JSON;
    *cell = shown && !json;
    if (shown && json)
        json_key(&facts->out->json, name);
    return shown && json;
}

void fact_text(Facts *facts, const char *name, const char *text)
{
    bool cell;
    if (key_shown(facts, name, &cell))
        json_text(&facts->out->json, text);
    else if (cell)
        csv_text(&facts->out->row, text);
}

void fact_integer(Facts *facts, const char *name, long long value)
{
    bool cell;
    if (key_shown(facts, name, &cell))
        json_integer(&facts->out->json, value);
    else if (cell)
        csv_integer(&facts->out->row, value);
}

void fact_number(Facts *facts, const char *name, double value, int decimals)
{
    bool cell;
    if (key_shown(facts, name, &cell))
        json_number(&facts->out->json, value, decimals);
    else if (cell)
        csv_number(&facts->out->row, value, decimals);
}

void fact_flag(Facts *facts, const char *name, bool value)
{
    bool cell;
    if (key_shown(facts, name, &cell))
        json_flag(&facts->out->json, value);
    else if (cell)
        csv_integer(&facts->out->row, value);
}

void fact_nothing(Facts *facts, const char *name)
{
    fact_text(facts, name, NULL);
}

void fact_some(Facts *facts, const char *name, bool there, long long value)
{
    if (there)
        fact_integer(facts, name, value);
    else
        fact_nothing(facts, name);
}

void fact_said(Facts *facts, const char *name, const char *without)
{
    Buffer *words = &facts->out->words;
    fact_text(facts, name, words->length ? words->text : without);
    facts->out->json.out->failed = facts->out->json.out->failed || buffer_failed(words);
    buffer_clear(words);
}

bool fact_object(Facts *facts, const char *name)
{
    bool cell;
    return key_shown(facts, name, &cell);
}

bool fact_array(Facts *facts, const char *name)
{
    bool shown = fact_object(facts, name);
    if (shown)
        json_array(&facts->out->json);
    return shown;
}

bool fact_list(Facts *facts, const char *name)
{
    bool shown = fact_object(facts, name);
    if (shown)
        json_list(&facts->out->json);
    return shown;
}

void facts_end_list(Facts *facts)
{
    json_end(&facts->out->json);
}
