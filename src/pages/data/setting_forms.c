/* All settings: as a settings file that can be read back, as JSON, as CSV. */
#include "pages/data/fields.h"
#include "writing/document.h"
#include "spezzato/report.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { NAME = 128, COMMENT = 100 };

static const Field of_setting[] = {
    {"name", IN_BOTH, "section and key, `hall.width`"},
    {"kind", IN_BOTH, "number, word, text, yes or no"},
    {"value", IN_BOTH, "in force"},
    {"default", IN_BOTH, "without a settings file"},
    {"least", IN_BOTH, "of a number; null"},
    {"most", IN_BOTH, "of a number; null"},
    {"words", IN_BOTH, "those that a word may be"},
    {"unit", IN_BOTH, "of a number"},
    {"meaning", IN_BOTH, "in one sentence"},
    {"source", IN_BOTH, "where the default comes from"},
};
const FieldTable setting_fields = FIELD_TABLE("setting", of_setting);
const Columns settings_columns = {"settings", IN_CSV, {&setting_fields}};

static const Field of_entry[] = {
    {"key", IN_JSON, "as the file has it"},
    {"value", IN_JSON, "as the file has it"},
};
const FieldTable setting_entry_fields = FIELD_TABLE("setting entry", of_entry);

static char *full_name(const spz_setting *setting, char name[NAME])
{
    snprintf(name, NAME, "%s.%s", setting->section, setting->key);
    return name;
}

/* '6 to 60 m', 'dry, clear or blurred', 'yes or no'. */
static void describe_range(const spz_setting *setting, Buffer *out)
{
    if (setting->kind == SPZ_NUMBER)
        buffer_printf(out, "%g to %g%s%s", setting->least, setting->most, *setting->unit ? " " : "", setting->unit);
    else if (setting->kind == SPZ_WORD)
        for (const char *c = setting->words; *c; c++)
            buffer_puts(out, *c == '|' ? " | " : (char[]){*c, '\0'});
    else
        buffer_puts(out, setting->kind == SPZ_YES_NO ? "yes or no" : "any text");
}

/* Comment lines of at most COMMENT columns, so that a settings file can be read in any editor. */
static void add_comment(Buffer *out, const char *text)
{
    size_t column = 0;
    buffer_puts(out, ";");
    while (*text) {
        size_t word = strcspn(text, " ");
        if (column && column + word + 3 > COMMENT) {
            buffer_puts(out, "\n;");
            column = 0;
        }
        buffer_printf(out, " %.*s", (int)word, text);
        column += word + 1;
        text += word;
        text += strspn(text, " ");
    }
    buffer_putc(out, '\n');
}

static void text_setting(const spz_settings *settings, const spz_setting *setting, Buffer *out)
{
    char name[NAME];
    Buffer line = {0};
    buffer_printf(&line, "%s: ", setting->meaning);
    describe_range(setting, &line);
    if (*setting->initial)
        buffer_printf(&line, "; default %s", setting->initial);
    if (*setting->source)
        buffer_printf(&line, " (%s)", setting->source);
    add_comment(out, buffer_text(&line));
    buffer_let_go(out, &line);
    buffer_printf(out, "%s = %s\n", setting->key, spz_settings_text(settings, full_name(setting, name)));
}

static void text_entries(const spz_settings *settings, const char *section, Buffer *out)
{
    const char *key, *value;
    for (size_t i = 0; spz_settings_entry(settings, section, i, &key, &value); i++) {
        if (i == 0)
            buffer_printf(out, "\n[%s]\n", section);
        buffer_printf(out, "%s = %s\n", key, value);
    }
}

/* What a file may say besides: sections whose lines have names of the user's own. */
static void text_free_sections(Buffer *out)
{
    static const char *const told[] = {
        ("Besides these, a settings file may have the following sections. Each holds for every score; with a file's name behind it ([bars symphony-1.mxl]; of a file with several movements "
        "[bars symphonies.mxl 2]) for that one alone, but for [sections], whose parts have names."),
        "[sections]: which section a part is, as `spezzato sections` writes it. Altviolen = Va",
        "[bars]: the numbers of the printed edition. first = 0: the number of the file's first bar; joined = 92 93: two halves of one bar; 120 = 117: a number of the file, and the one printed there.",
        "[passages]: what you hear otherwise. 46-48 = no, the horns cover it; 66-71 Vn I Vn II = striking: no, marginal, clear or striking, behind a comma why.",
        "[arrangement NAME]: a seating of your own, from house left to house right. order = Vn I, Db, Vc, Va, Vn II; basses = along the back, where they don't stand behind the cellos."};
    buffer_putc(out, '\n');
    for (size_t i = 0; i < sizeof told / sizeof told[0]; i++)
        add_comment(out, told[i]);
}

static void text_settings(const spz_settings *settings, Buffer *out)
{
    const char *section = "", *own;
    buffer_puts(out, "; Settings of spezzato. Keep the lines you want to change in a file of your own and give it with --settings.\n");
    for (size_t i = 0; i < spz_setting_count(); i++) {
        const spz_setting *setting = spz_setting_at(i);
        if (strcmp(section, setting->section) != 0)
            buffer_printf(out, "\n[%s]\n", setting->section);
        section = setting->section;
        text_setting(settings, setting, out);
    }
    for (size_t i = 0; (own = spz_settings_section(settings, "", i)) != NULL; i++)
        text_entries(settings, own, out);
    text_free_sections(out);
}

static const char *const kind_names[] = {[SPZ_NUMBER] = "number", [SPZ_WORD] = "word", [SPZ_TEXT] = "text", [SPZ_YES_NO] = "yes or no"};

static void give_setting(FactsOut *out, const spz_settings *settings, const spz_setting *setting)
{
    char name[NAME];
    bool number = setting->kind == SPZ_NUMBER;
    Facts facts = facts_of(out, &setting_fields);
    fact_text(&facts, "name", full_name(setting, name));
    fact_text(&facts, "kind", kind_names[setting->kind]);
    fact_text(&facts, "value", spz_settings_text(settings, name));
    fact_text(&facts, "default", setting->initial);
    fact_number(&facts, "least", number ? setting->least : (double)NAN, 3);
    fact_number(&facts, "most", number ? setting->most : (double)NAN, 3);
    fact_text(&facts, "words", setting->words);
    fact_text(&facts, "unit", setting->unit);
    fact_text(&facts, "meaning", setting->meaning);
    fact_text(&facts, "source", setting->source);
    facts_done(&facts);
}

static void json_entries(const spz_settings *settings, const char *section, FactsOut *out)
{
    const char *key, *value;
    json_put_array(&out->json, section);
    for (size_t i = 0; spz_settings_entry(settings, section, i, &key, &value); i++) {
        Facts facts = facts_line(out, &setting_entry_fields);
        fact_text(&facts, "key", key);
        fact_text(&facts, "value", value);
        facts_close(&facts);
    }
    json_end(&out->json);
}

static void json_settings(const spz_settings *settings, Buffer *out)
{
    FactsOut facts;
    static const char *const lists[] = {"arrangement ", "bars", "passages"}; /* and what begins so */
    const char *own;
    facts_begin(&facts, out);
    json_object(&facts.json);
    json_put_array(&facts.json, "settings");
    for (size_t i = 0; i < spz_setting_count(); i++) {
        json_object(&facts.json);
        give_setting(&facts, settings, spz_setting_at(i));
        json_end(&facts.json);
    }
    json_end(&facts.json);
    json_entries(settings, "sections", &facts);
    for (size_t k = 0; k < sizeof lists / sizeof lists[0]; k++)
        for (size_t i = 0; (own = spz_settings_section(settings, lists[k], i)) != NULL; i++)
            json_entries(settings, own, &facts);
    json_end(&facts.json);
    facts_finish(&facts);
}

static void csv_settings(const spz_settings *settings, Buffer *out)
{
    FactsOut facts;
    facts_begin(&facts, out);
    facts_columns(&facts, &settings_columns);
    for (size_t i = 0; i < spz_setting_count(); i++) {
        give_setting(&facts, settings, spz_setting_at(i));
        facts_end_row(&facts);
    }
    facts_finish(&facts);
}

spz_status spz_report_settings(const spz_settings *settings, spz_format format, spz_document **out)
{
    static void (*const forms[])(const spz_settings *, Buffer *) = {text_settings, json_settings, csv_settings};
    Buffer text;
    *out = NULL;
    if ((int)format < 0 || (size_t)format >= sizeof forms / sizeof forms[0])
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    forms[format](settings, &text);
    return document_take(&text, out);
}
