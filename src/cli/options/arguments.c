#include "cli/options/arguments.h"
#include "cli/messages.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The option of that name, or the only one whose name begins so. */
static const Option *option_long(const Option *const *options, const char *name, size_t length)
{
    const Option *begun = NULL;
    size_t count = 0;
    for (; *options; options++) {
        if (strncmp((*options)->name, name, length) != 0)
            continue;
        if (strlen((*options)->name) == length)
            return *options;
        begun = *options;
        count++;
    }
    return count == 1 && length > 0 ? begun : NULL;
}

static void complain_option(const char *command, const Option *const *options, const char *word)
{
    char name[64];
    spz_guess guess = {.word = name};
    snprintf(name, sizeof name, "%.*s", (int)strcspn(word + 2, "="), word + 2);
    for (; word[1] == '-' && *options; options++)
        spz_guess_look(&guess, (*options)->name);
    if (guess.meant)
        complain_usage(command, "there is no option '%s'; is --%s meant?", word, guess.meant);
    else
        complain_usage(command, "there is no option '%s'", word);
}

static const Option *option_short(const Option *const *options, char letter)
{
    for (; *options; options++)
        if ((*options)->letter && (*options)->letter == letter)
            return *options;
    return NULL;
}

/* The words still to be read. */
typedef struct Words {
    char **at;
    int left;
} Words;

static const char *next_word(Words *words)
{
    if (words->left == 0)
        return NULL;
    words->left--;
    return *words->at++;
}

/* `word` is an option: '--name', '--name=value', '-n value' or '-nvalue'. */
static bool read_option(Arguments *arguments, const Option *const *options, const char *word, Words *words)
{
    bool is_long = word[1] == '-';
    size_t length = is_long ? strcspn(word + 2, "=") : 1;
    const Option *option = is_long ? option_long(options, word + 2, length) : option_short(options, word[1]);
    const char *rest = word + (is_long ? 2 : 1) + length;
    if (!option) {
        complain_option(arguments->command, options, word);
        return false;
    }
    Given given = {option, NULL};
    if (!option->value && *rest) {
        complain_usage(arguments->command, "'%s': --%s takes no value", word, option->name);
        return false;
    }
    if (option->value) {
        given.value = !*rest ? next_word(words) : is_long ? rest + 1 : rest;
        if (!given.value) {
            complain_usage(arguments->command, "--%s needs %s behind it", option->name, option->value);
            return false;
        }
    }
    arguments->given[arguments->given_count++] = given;
    return true;
}

static bool asks_for_help(int count, char **words)
{
    for (int i = 0; i < count && strcmp(words[i], "--") != 0; i++)
        if (strcmp(words[i], "--help") == 0 || strcmp(words[i], "-h") == 0)
            return true;
    return false;
}

/* Whether the help of `format`, which names every form of the command, has `form` as a word. */
static bool has_form(const Option *format, const char *form)
{
    size_t length = strlen(form);
    for (const char *at = strstr(format->help, form); at; at = strstr(at + 1, form))
        if ((at == format->help || at[-1] == ' ') && at[length] != '-')
            return true;
    return false;
}

/* A name that ends in what nothing is written as would promise what the file isn't. false after one line. */
static bool form_is_ours(const Arguments *arguments, const Option *format, const char *ending)
{
    static const struct { const char *endings, *instead, *form; } others[] = {
        {".doc .docx .rtf ", "; .odt is for a word processor", "odt"}, {".xls .xlsx .ods .numbers ", "; .csv opens in a spreadsheet", "csv"},
        {".png .jpg .jpeg .eps ", "; .svg is a drawing to any scale", "svg"}, {".pdf .doc .docx .rtf .png .jpg .jpeg ", "; .html is a page that a browser prints, as PDF too", "html"},
        {".pdf .doc .docx .rtf .xls .xlsx .ods .numbers .png .jpg .jpeg .eps .mid .midi .zip ", "", ""}};
    char word[16];
    if (snprintf(word, sizeof word, "%s ", ending) >= (int)sizeof word)
        return true;
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        if (strstr(others[i].endings, word) && (!*others[i].form || has_form(format, others[i].form))) {
            complain_usage(arguments->command, "%s: %s is not written as %s%s", arguments_value(arguments, &option_output, NULL), arguments->command, ending + 1, others[i].instead);
            return false;
        }
    return true;
}

/* A file's name that ends like a form asks for it where --format doesn't. false after one line where the command has no such form. */
static bool form_by_name(Arguments *arguments, const Option *const *options)
{
    static const char *const endings[][2] = {{".html", "html"}, {".htm", "html"}, {".json", "json"}, {".ndjson", "ndjson"}, {".csv", "csv"},
                                             {".md", "markdown"}, {".odt", "odt"}, {".svg", "svg"}, {".ics", "ics"}};
    const Option *format = option_long(options, "format", strlen("format"));
    const char *path = arguments_value(arguments, &option_output, NULL);
    const char *ending = path ? strrchr(path, '.') : NULL;
    for (size_t i = 0; format && ending && !arguments_have(arguments, format) && i < sizeof endings / sizeof endings[0]; i++) {
        if (strcmp(ending, endings[i][0]) != 0)
            continue;
        if (!has_form(format, endings[i][1])) {
            complain_usage(arguments->command, "%s: %s is not written as %s%s", path, arguments->command, endings[i][1],
                           strcmp(endings[i][1], "html") == 0 ? "; `spezzato report` makes pages for a browser" : "");
            return false;
        }
        arguments->given[arguments->given_count++] = (Given){format, endings[i][1]};
    }
    return !format || !ending || arguments_have(arguments, format) || form_is_ours(arguments, format, ending);
}

bool arguments_read(Arguments *arguments, const char *command, const Option *const *options, int count, char **words, bool *help)
{
    Words left = {words, count};
    size_t room = (size_t)count + 1;
    bool only_operands = false;
    *arguments = (Arguments){.command = command};
    *help = asks_for_help(count, words);
    if (*help)
        return true;
    arguments->given = calloc(room, sizeof *arguments->given);
    arguments->operands = calloc(room, sizeof *arguments->operands);
    if (!arguments->given || !arguments->operands) {
        complain_status(NULL, SPZ_NO_MEMORY);
        return false;
    }
    for (const char *word; (word = next_word(&left)) != NULL;) {
        if (!only_operands && strcmp(word, "--") == 0)
            only_operands = true;
        else if (only_operands || word[0] != '-' || !word[1])
            arguments->operands[arguments->operand_count++] = word;
        else if (!read_option(arguments, options, word, &left))
            return false;
    }
    return form_by_name(arguments, options);
}

void arguments_free(Arguments *arguments)
{
    for (size_t i = 0; i < arguments->found_count; i++)
        free(arguments->found[i]);
    free(arguments->found);
    free(arguments->given);
    free((void *)arguments->operands);
    *arguments = (Arguments){0};
}

bool arguments_have(const Arguments *arguments, const Option *option)
{
    for (size_t i = 0; i < arguments->given_count; i++)
        if (arguments->given[i].option == option)
            return true;
    return false;
}

const char *arguments_value(const Arguments *arguments, const Option *option, const char *otherwise)
{
    for (size_t i = arguments->given_count; i > 0; i--)
        if (arguments->given[i - 1].option == option)
            return arguments->given[i - 1].value;
    return otherwise;
}

const char *arguments_each(const Arguments *arguments, const Option *option, size_t index)
{
    for (size_t i = 0; i < arguments->given_count; i++)
        if (arguments->given[i].option == option && index-- == 0)
            return arguments->given[i].value;
    return NULL;
}
