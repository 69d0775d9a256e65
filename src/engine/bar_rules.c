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

static spz_status take_section(const spz_settings *settings, const char *section, const spz_sink *sink, BarRules *rules)
{
    const SettingEntry *entry;
    for (size_t i = 0; (entry = settings_entry_at(settings, section, i)) != NULL; i++) {
        BarRule rule = {BARS_FIRST, 0, 0};
        if (!rule_of(entry, &rule)) {
            spz_message place = {.severity = SPZ_ERROR, .file = entry->file, .line = entry->line};
            char text[200];
            snprintf(text, sizeof text, "'%.40s = %.40s' in [%.49s] is none of 'first = 0', 'joined = 92 93' and '95 = 94'", entry->key, entry->value, section);
            message_send(sink, &place, "%s", text);
            return SPZ_BAD_SETTINGS;
        }
        if (!array_push(rules, rule))
            return SPZ_NO_MEMORY;
    }
    return SPZ_OK;
}

spz_status bar_rules_apply(spz_score *score, const spz_settings *settings, const spz_sink *sink)
{
    BarRules rules = {0};
    char own[200];
    snprintf(own, sizeof own, "bars %.180s", path_name(score->file));
    spz_status status = take_section(settings, "bars", sink, &rules);
    if (!status)
        status = take_section(settings, own, sink, &rules);
    for (size_t i = 0; i < score->movement_count && !status; i++)
        status = bar_numbers_apply(&score->movements[i], rules.at, rules.count, &score->arena);
    array_free(&rules);
    return status;
}
