#include "cli/options/option_rules.h"
#include "cli/messages.h"
#include <stdio.h>
#include <string.h>

/* On these commands these options do nothing unless `by` is as it says. Lists have '|' between. */
typedef struct Rule {
    const char *commands, *options;
    const char *by;     /* an option; "" for the first word behind the command (of `library`) */
    const char *values; /* one of these it has to be; "+": one of the options `by` is given, or a word; "-": none of them is */
    const char *usual;  /* the value where `by` isn't given */
    bool told;          /* let pass with a note */
    const char *action; /* only where this is the first word; NULL: always */
} Rule;

#define CONDITIONS_OF_WORKS "composer|titled|from|before|lasts|players|too-large|two-orchestras|violins-in-three|recommended"
#define CONDITIONS_OF_PASSAGES "kind|strength|between|at"

static const Rule rules[] = {
    {"page|seating|passages|sections", "width", "format", "text", "text", false, NULL},
    {"season", "width", "format", "text|calendar", "text", false, NULL},
    {"page|seating|passages|sections|check", "language", "format", "text", "text", true, NULL},
    {"parts|rehearsal|bowings", "language", "format", "text|html", "text", true, NULL},
    {"notes", "language", "format", "text|markdown|html|odt|svg", "text", true, NULL},
    {"stage", "language", "format", "text|svg|html", "text", true, NULL},
    {"season", "language", "format", "text|html|calendar|ics", "text", true, NULL},
    {"library", "language", "format", "text|html", "text", true, NULL},
    {"page", "brief|all", "format", "text", "text", false, NULL},
    {"page", "work", "format", "text|json", "text", false, NULL},
    {"page", "all|kind|strength", "brief", "-", NULL, false, NULL},
    {"sections", "width|language", "write", "-", NULL, false, NULL},
    {"notes", "engraver", "notation|pictures", "+", NULL, false, NULL},
    {"passages", "kind|strength", "explain", "-", NULL, false, NULL},
    {"notes", "year", "for", "writers", "writers", false, NULL},
    {"notes", "year", "format", "text|markdown|html|odt|json", "text", false, NULL},
    {"notes", "picture-format", "pictures", "+", NULL, false, NULL},
    {"notes", "most|many|all|strength|notation", "for", "writers", "writers", false, NULL},
    {"stage", "year", "", "+", NULL, false, NULL},
    {"mark", "all|kind|strength|arrangement|year|language", "unmark", "-", NULL, false, NULL},
    {"season", "share", "format", "ndjson", "text", false, NULL}, /* a plan needs all scores */
    {"library", CONDITIONS_OF_WORKS, "", "find|fits|partners", NULL, false, NULL},
    {"library", CONDITIONS_OF_PASSAGES, "", "find", NULL, false, NULL},
    {"library", "passages", CONDITIONS_OF_PASSAGES, "+", NULL, false, "find"},
    {"library", "first", "", "find|fits|partners|alike", NULL, false, NULL},
    {"library", "passages", "", "find|show|alike", NULL, false, NULL},
    {"library", "seating|with", "", "fits", NULL, false, NULL},
    {"library", "bar", "", "alike", NULL, false, NULL},
    {"library", "jobs|year", "", "add", NULL, false, NULL},
    {"library", "format|width|language|output", "", "find|show|fits|partners|alike", NULL, false, NULL},
    {"library", "width", "format", "text", "text", false, NULL},
};

static bool is_in(const char *list, const char *word)
{
    size_t length = strlen(word);
    for (const char *at = list; at; at = strchr(at, '|')) {
        at += *at == '|';
        if (strncmp(at, word, length) == 0 && (at[length] == '|' || !at[length]))
            return true;
    }
    return false;
}

/* The last option given that stands in the list; NULL. */
static const Given *given_of(const Arguments *arguments, const char *list)
{
    for (size_t i = arguments->given_count; i > 0; i--)
        if (is_in(list, arguments->given[i - 1].option->name))
            return &arguments->given[i - 1];
    return NULL;
}

static bool is_met(const Arguments *arguments, const Rule *rule)
{
    const Given *by = *rule->by ? given_of(arguments, rule->by) : NULL;
    if (*rule->values == '+' || *rule->values == '-')
        return (*rule->by ? by != NULL : arguments->operand_count > 0) == (*rule->values == '+');
    const char *value = *rule->by ? by ? by->value : rule->usual : arguments->operand_count ? arguments->operands[0] : NULL;
    return !value || is_in(rule->values, value);
}

static bool acts(const Arguments *arguments, const char *action)
{
    return !action || (arguments->operand_count && strcmp(arguments->operands[0], action) == 0);
}

/* 'a|b|c' as 'a, b or c', with `before` before each. */
static char *list_words(const char *list, const char *before, char *text, size_t size)
{
    size_t used = 0;
    text[0] = '\0';
    while (*list && used < size) {
        size_t length = strcspn(list, "|");
        bool last = !list[length];
        used += (size_t)snprintf(text + used, size - used, "%s%s%.*s", !used ? "" : last ? " or " : ", ", before, (int)length, list);
        list += length + !last;
    }
    return text;
}

static void complain(const Arguments *arguments, const Rule *rule, const char *option)
{
    char words[200];
    const Given *by = *rule->by ? given_of(arguments, rule->by) : NULL;
    if (*rule->values == '-')
        complain_usage(arguments->command, "--%s does nothing with --%s; leave one of them out", option, by->option->name);
    else if (*rule->values == '+' && !*rule->by)
        complain_usage(arguments->command, "--%s does nothing without a score", option);
    else if (*rule->values == '+')
        complain_usage(arguments->command, "--%s does nothing without %s", option, list_words(rule->by, "--", words, sizeof words));
    else if (!*rule->by)
        complain_usage(arguments->command, "--%s does nothing with '%s %s'; it goes with %s", option, arguments->command, arguments->operands[0],
                       list_words(rule->values, "", words, sizeof words));
    else
        complain_usage(arguments->command, "--%s does nothing with --%s %s; it goes with %s", option, rule->by, by ? by->value : rule->usual,
                       list_words(rule->values, "", words, sizeof words));
}

static void tell(const char *option, const char *form)
{
    char text[120];
    snprintf(text, sizeof text, "--%s does nothing with --format %.20s: data stay as they are in every language", option, form);
    Voice voice = {.most_doubts = 0};
    spz_sink sink = voice_sink(&voice);
    sink.say(sink.context, &(spz_message){.severity = SPZ_NOTE, .text = text});
}

bool options_have_effect(const Arguments *arguments)
{
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++) {
        const Given *option = is_in(rules[i].commands, arguments->command) && acts(arguments, rules[i].action) ? given_of(arguments, rules[i].options) : NULL;
        if (!option || is_met(arguments, &rules[i]))
            continue;
        if (!rules[i].told) {
            complain(arguments, &rules[i], option->option->name);
            return false;
        }
        const Given *form = given_of(arguments, rules[i].by);
        tell(option->option->name, form ? form->value : rules[i].usual);
    }
    return true;
}
