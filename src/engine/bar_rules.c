#include "engine/bar_rules.h"
#include "model/bar_numbers.h"
#include "settings/store.h"
#include "support/message.h"
#include "support/path.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { HIGHEST_NUMBER = 100000 };
typedef ARRAY(BarRule) BarRules;

/* One number, then blanks; `*text` goes behind them. */
static bool take_number(const char **text, long *number)
{
    char *end;
    if (**text < '0' || **text > '9')
        return false;
    *number = strtol(*text, &end, 10);
    *text = end + strspn(end, " \t");
    return *number <= HIGHEST_NUMBER;
}

/* 'first = 0', 'joined = 92 93', '95 = 94'. */
static bool rule_of(const SettingEntry *entry, BarRule *rule)
{
    const char *key = entry->key, *value = entry->value;
    long one = 0;
    if (!strcmp(key, "first"))
        rule->kind = BARS_FIRST;
    else if (!strcmp(key, "joined")) {
        rule->kind = BARS_JOINED;
        if (!take_number(&value, &one))
            return false;
    } else {
        rule->kind = BARS_NUMBER;
        if (!take_number(&key, &rule->from) || *key)
            return false;
    }
    return take_number(&value, &rule->to) && !*value && (rule->kind != BARS_JOINED || rule->to == one + 1);
}

/* A line about a bar that the score doesn't have; its number is the file's. */
static void tell_unmet(const spz_score *score, const BarRule *rule, const SettingEntry *entry, const spz_sink *sink)
{
    char number[24], line[100];
    bool met = rule->kind == BARS_FIRST;
    snprintf(number, sizeof number, "%ld", rule->kind == BARS_NUMBER ? rule->from : rule->to);
    snprintf(line, sizeof line, "%.40s = %.40s", entry->key, entry->value);
    for (size_t i = 0; i < score->movement_count && !met; i++)
        for (size_t bar = 0; bar < score->movements[i].bar_count && !met; bar++)
            met = strcmp(score->movements[i].bars[bar].number, number) == 0;
    if (!met)
        message_fault(sink, &(spz_message){.severity = SPZ_NOTE, .file = entry->file, .line = entry->line, .fault = SPZ_FAULT_CORRECTION_BAR, .name = line,
                                           .other = path_name(score->file)});
}

static spz_status take_section(const spz_score *score, const spz_settings *settings, const char *section, const spz_sink *sink, BarRules *rules)
{
    const SettingEntry *entry;
    spz_status status = SPZ_OK;
    for (size_t i = 0; (entry = settings_entry_at(settings, section, i)) != NULL; i++) {
        BarRule rule = {BARS_FIRST, 0, 0};
        if (!rule_of(entry, &rule)) {
            spz_message place = {.severity = SPZ_ERROR, .file = entry->file, .line = entry->line};
            char text[200];
            snprintf(text, sizeof text, "'%.40s = %.40s' in [%.49s] is none of 'first = 0', 'joined = 92 93' and '95 = 94'", entry->key, entry->value, section);
            message_send(sink, &place, "%s", text);
            status = SPZ_BAD_SETTINGS; /* the others are looked at all the same */
            continue;
        }
        tell_unmet(score, &rule, entry, sink);
        if (!array_push(rules, rule))
            return SPZ_NO_MEMORY;
    }
    return status;
}

spz_status bar_rules_apply(spz_score *score, const spz_settings *settings, const spz_sink *sink)
{
    BarRules rules = {0};
    char own[200];
    snprintf(own, sizeof own, "bars %.180s", path_name(score->file));
    spz_status status = take_section(score, settings, "bars", sink, &rules);
    spz_status of_score = status == SPZ_NO_MEMORY ? status : take_section(score, settings, own, sink, &rules);
    status = status ? status : of_score;
    for (size_t i = 0; i < score->movement_count && !status; i++)
        status = bar_numbers_apply(&score->movements[i], rules.at, rules.count, &score->arena);
    array_free(&rules);
    return status;
}
