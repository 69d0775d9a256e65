/* All settings: as a settings file that can be read back, as JSON, as CSV. */
#include "writing/csv_text.h"
#include "writing/document.h"
#include "writing/json.h"
#include "spezzato/report.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { NAME = 128, COMMENT = 100 };

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
    Buffer line;
    buffer_init(&line);
    buffer_printf(&line, "%s: ", setting->meaning);
    describe_range(setting, &line);
    if (*setting->initial)
        buffer_printf(&line, "; default %s", setting->initial);
    if (*setting->source)
        buffer_printf(&line, " (%s)", setting->source);
    add_comment(out, line.text ? line.text : "");
    out->failed = out->failed || line.failed;
    buffer_free(&line);
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

static void text_settings(const spz_settings *settings, Buffer *out)
{
    const char *section = "", *arrangement;
    buffer_puts(out, "; Settings of spezzato. Keep the lines you want to change in a file of your own and give it with --settings.\n");
    for (size_t i = 0; i < spz_setting_count(); i++) {
        const spz_setting *setting = spz_setting_at(i);
        if (strcmp(section, setting->section) != 0)
            buffer_printf(out, "\n[%s]\n", setting->section);
        section = setting->section;
        text_setting(settings, setting, out);
    }
    text_entries(settings, "sections", out);
    for (size_t i = 0; (arrangement = spz_settings_section(settings, "arrangement ", i)) != NULL; i++)
        text_entries(settings, arrangement, out);
}

static const char *const kind_names[] = {[SPZ_NUMBER] = "number", [SPZ_WORD] = "word", [SPZ_TEXT] = "text", [SPZ_YES_NO] = "yes or no"};

static void json_setting(const spz_settings *settings, const spz_setting *setting, Json *json)
{
    char name[NAME];
    json_object(json);
    json_put_text(json, "name", full_name(setting, name));
    json_put_text(json, "kind", kind_names[setting->kind]);
    json_put_text(json, "value", spz_settings_text(settings, name));
    json_put_text(json, "default", setting->initial);
    if (setting->kind == SPZ_NUMBER) {
        json_put_number(json, "least", setting->least, 3);
        json_put_number(json, "most", setting->most, 3);
    }
    if (setting->kind == SPZ_WORD)
        json_put_text(json, "words", setting->words);
    json_put_text(json, "unit", setting->unit);
    json_put_text(json, "meaning", setting->meaning);
    json_put_text(json, "source", setting->source);
    json_end(json);
}

static void json_entries(const spz_settings *settings, const char *section, Json *json)
{
    const char *key, *value;
    json_key(json, section);
    json_array(json);
    for (size_t i = 0; spz_settings_entry(settings, section, i, &key, &value); i++) {
        json_row(json);
        json_put_text(json, "key", key);
        json_put_text(json, "value", value);
        json_end(json);
    }
    json_end(json);
}

static void json_settings(const spz_settings *settings, Buffer *out)
{
    Json json;
    const char *arrangement;
    json_begin(&json, out);
    json_object(&json);
    json_key(&json, "settings");
    json_array(&json);
    for (size_t i = 0; i < spz_setting_count(); i++)
        json_setting(settings, spz_setting_at(i), &json);
    json_end(&json);
    json_entries(settings, "sections", &json);
    for (size_t i = 0; (arrangement = spz_settings_section(settings, "arrangement ", i)) != NULL; i++)
        json_entries(settings, arrangement, &json);
    json_end(&json);
    json_finish(&json);
}

static void csv_settings(const spz_settings *settings, Buffer *out)
{
    CsvRow row;
    csv_begin(&row, out);
    csv_header(&row, "name,kind,value,default,least,most,words,unit,meaning,source");
    for (size_t i = 0; i < spz_setting_count(); i++) {
        char name[NAME];
        const spz_setting *setting = spz_setting_at(i);
        bool number = setting->kind == SPZ_NUMBER;
        csv_text(&row, full_name(setting, name));
        csv_text(&row, kind_names[setting->kind]);
        csv_text(&row, spz_settings_text(settings, name));
        csv_text(&row, setting->initial);
        csv_number(&row, number ? setting->least : (double)NAN, 3);
        csv_number(&row, number ? setting->most : (double)NAN, 3);
        csv_text(&row, setting->words);
        csv_text(&row, setting->unit);
        csv_text(&row, setting->meaning);
        csv_text(&row, setting->source);
        csv_end(&row);
    }
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
    spz_status status = document_take(&text, out);
    buffer_free(&text);
    return status;
}
