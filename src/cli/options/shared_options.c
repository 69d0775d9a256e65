/* The options that several commands share, and what their values mean. */
#include "cli/options/arguments.h"
#include "cli/command.h"
#include "cli/messages.h"
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

const Option option_format = {"format", 0, "FORM", "text, json or csv"};
const Option option_output = {"output", 'o', "FILE", "write to FILE, whole or not at all, in the form that its name\n                              asks for (.csv, .html ...); else to the terminal"};
const Option option_settings = {"settings", 0, "FILE", "house rules and corrections; `spezzato settings` prints all there are"};
const Option option_set = {"set", 0, "NAME=VALUE", "one setting, such as stage.width=18; may be repeated"};
const Option option_year = {"year", 0, "YEAR", "year of composition, where the score doesn't say it or is wrong"};
const Option option_all = {"all", 0, NULL, "everything, the marginal passages too"};
const Option option_brief = {"brief", 0, NULL, "one line for each movement instead of its page"};
const Option option_work = {"work", 0, NULL, "also one seating for all the scores, as movements of one work"};
const Option option_kind = {"kind", 0, "KINDS", "only these passages: exchange, hocket, split-line, imitation,\n"
                                               "                              div2, div3, coupling; or antiphony, divisi; ',' between"};
const Option option_strength = {"strength", 0, "WORD", "only passages of this strength or more: marginal, clear, striking"};
const Option option_width = {"width", 0, "COLUMNS", "width of text, 60 to 200; 96 when not given"};
const Option option_verbose = {"verbose", 'v', NULL, "say every doubt and note about the scores"};

const Option option_language = {"language", 0, "LANGUAGE", "of the document, by code or name: English unless asked"};

bool arguments_format(const Arguments *arguments, spz_format usual, spz_format *format)
{
    static const char *const names[] = {"text", "json", "csv"};
    const char *value = arguments_value(arguments, &option_format, NULL);
    *format = usual;
    if (!value)
        return true;
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        if (strcmp(value, names[i]) == 0) {
            *format = (spz_format)i;
            return true;
        }
    complain_usage(arguments->command, "--format %s: it is text, json or csv", value);
    return false;
}

bool arguments_whole(const Arguments *arguments, const Option *option, int least, int most, int *number)
{
    const char *value = arguments_value(arguments, option, NULL);
    if (!value)
        return true;
    char *end;
    errno = 0;
    long read = strtol(value, &end, 10);
    if (end == value || *end || errno || read < least || read > most) {
        complain_usage(arguments->command, "--%s %s: it is a whole number from %d to %d", option->name, value, least, most);
        return false;
    }
    *number = (int)read;
    return true;
}

bool arguments_year(const Arguments *arguments, int *year)
{
    *year = 0;
    return arguments_whole(arguments, &option_year, 1500, 2100, year);
}

/* Adds the kinds that one word means; false for a word that means none. */
static bool add_kind(const char *word, unsigned *kinds)
{
    spz_kind kind;
    bool antiphony = strcmp(word, "antiphony") == 0, divisi = strcmp(word, "divisi") == 0;
    if (!antiphony && !divisi) {
        if (!spz_kind_from_name(word, &kind))
            return false;
        *kinds |= 1u << kind;
        return true;
    }
    for (int i = 0; i < SPZ_KIND_COUNT; i++)
        if (antiphony ? spz_kind_is_antiphony((spz_kind)i) : i == SPZ_DIV2 || i == SPZ_DIV3)
            *kinds |= 1u << i;
    return true;
}

static void complain_kind(const char *command, const char *word)
{
    spz_guess guess = {.word = word};
    for (int i = 0; i < SPZ_KIND_COUNT; i++)
        spz_guess_look(&guess, spz_kind_name((spz_kind)i));
    if (guess.meant)
        complain_usage(command, "--kind %s: there is no such kind; is %s meant?", word, guess.meant);
    else
        complain_usage(command, "--kind %s: there is no such kind; it is exchange, hocket, split-line, imitation, div2, div3, coupling, antiphony or divisi", word);
}

static bool add_kinds(const Arguments *arguments, const char *list, unsigned *kinds)
{
    while (*list) {
        char word[32];
        size_t length = strcspn(list, ",");
        size_t kept = length < sizeof word - 1 ? length : sizeof word - 1;
        memcpy(word, list, kept);
        word[kept] = '\0';
        if (length && !add_kind(word, kinds)) { /* nothing between two commas asks for nothing */
            complain_kind(arguments->command, word);
            return false;
        }
        list += length + (list[length] == ',');
    }
    return true;
}

bool arguments_kinds(const Arguments *arguments, unsigned *kinds)
{
    const char *list;
    *kinds = 0;
    for (size_t i = 0; (list = arguments_each(arguments, &option_kind, i)) != NULL; i++) {
        if (!*list) {
            complain_usage(arguments->command, "--kind needs the name of a kind");
            return false;
        }
        if (!add_kinds(arguments, list, kinds))
            return false;
    }
    return true;
}

bool arguments_strength(const Arguments *arguments, double *strength)
{
    static const double samples[] = {0.0, 0.5, 0.8}; /* the scale of passages.h */
    const char *word = arguments_value(arguments, &option_strength, NULL);
    *strength = 0;
    if (!word)
        return true;
    for (size_t i = 0; i < sizeof samples / sizeof samples[0]; i++)
        if (strcmp(word, spz_weight_name(spz_weight_of(samples[i]))) == 0) {
            *strength = samples[i];
            return true;
        }
    complain_usage(arguments->command, "--strength %s: it is marginal, clear or striking", word);
    return false;
}

/* "en (English), de (Deutsch) or fr (français)" */
static char *language_codes(char *text, size_t size)
{
    size_t length = 0;
    for (int i = 0; i < SPZ_LANGUAGE_COUNT && length < size; i++)
        length += (size_t)snprintf(text + length, size - length, "%s%s (%s)", i == 0 ? "" : i + 1 == SPZ_LANGUAGE_COUNT ? " or " : ", ",
                                   spz_language_code((spz_language)i), spz_language_name((spz_language)i));
    return text;
}

bool arguments_language(const Arguments *arguments, const spz_settings *settings, spz_language *language)
{
    const char *asked = arguments_value(arguments, &option_language, NULL), *house = spz_settings_text(settings, "house.language");
    char codes[120];
    *language = SPZ_ENGLISH;
    if ((!asked && !*house) || spz_language_from_name(asked ? asked : house, language))
        return true;
    complain_usage(arguments->command, "--language %s: it is %s", asked ? asked : house, language_codes(codes, sizeof codes));
    return false;
}

/* Of the settings: a fault like any other in them. */
static int check_language(const Arguments *arguments, const spz_settings *settings)
{
    const char *house = spz_settings_text(settings, "house.language");
    spz_language language;
    if (!*house || spz_language_from_name(house, &language))
        return EXIT_OK;
    char codes[120], text[320];
    language_codes(codes, sizeof codes);
    spz_message place = {.severity = SPZ_ERROR, .text = text};
    place.file = spz_settings_place(settings, "house.language", &place.line);
    if (!place.file) {
        complain_usage(arguments->command, "--set house.language=%s: it is %s", house, codes);
        return EXIT_USAGE;
    }
    snprintf(text, sizeof text, "language = %.100s: it is %s", house, codes);
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    sink.say(sink.context, &place);
    return EXIT_INPUT;
}

int arguments_seating(const Arguments *arguments, const Option *option, const spz_settings *settings, bool one, char room[SEATING_NAME_MOST], const char **name)
{
    const char *words = option ? arguments_value(arguments, option, NULL) : NULL;
    *name = NULL;
    if (!words)
        return EXIT_OK;
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_seatings_meant(settings, words, one, &sink, room, SEATING_NAME_MOST);
    if (status && !voice.errors)
        complain_status(words, status);
    *name = room;
    return status ? EXIT_USAGE : EXIT_OK;
}

static int set_one(const Arguments *arguments, spz_settings *settings, const char *text)
{
    char name[128];
    const char *equals = strchr(text, '=');
    size_t length = equals ? (size_t)(equals - text) : 0;
    if (!equals || length == 0 || length >= sizeof name) {
        complain_usage(arguments->command, "--set %s: it is NAME=VALUE, such as stage.width=18", text);
        return EXIT_USAGE;
    }
    memcpy(name, text, length);
    name[length] = '\0';
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_settings_set(settings, name, equals + 1, &sink);
    if (status && !voice.errors)
        complain_status("--set", status);
    return status ? EXIT_USAGE : EXIT_OK;
}

static int read_one(spz_settings *settings, const char *path)
{
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_settings_read(settings, path, &sink);
    if (status && !voice.errors)
        complain_status(path, status);
    return status ? EXIT_INPUT : EXIT_OK;
}

/* What the house has laid down once and for all: $XDG_CONFIG_HOME/spezzato/house.ini, where there is one (XDG Base Directory
 * Specification). */
static int read_house(spz_settings *settings)
{
    char path[4096], name[sizeof path + 1];
    const char *top = getenv("XDG_CONFIG_HOME"), *home = getenv("HOME");
    bool own = top && *top == '/';
    if (!own && !(home && *home == '/'))
        return EXIT_OK;
    snprintf(path, sizeof path, "%s%s/spezzato/house.ini", own ? top : home, own ? "" : "/.config");
    bool below_home = home && *home && strncmp(path, home, strlen(home)) == 0 && path[strlen(home)] == '/';
    snprintf(name, sizeof name, "%s%s", below_home ? "~" : "", path + (below_home ? strlen(home) : 0));
    if (access(path, F_OK) != 0)
        return EXIT_OK;
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    spz_status status = spz_settings_read_house(settings, path, name, &sink);
    if (status && !voice.errors)
        complain_status(path, status);
    return status ? EXIT_INPUT : EXIT_OK;
}

int arguments_settings(const Arguments *arguments, spz_settings **settings)
{
    int status = EXIT_OK;
    spz_status made = spz_settings_new(settings);
    if (made) {
        complain_status(NULL, made);
        return EXIT_INPUT;
    }
    status = read_house(*settings);
    for (size_t i = 0; i < arguments->given_count && status == EXIT_OK; i++) {
        const Given *given = &arguments->given[i];
        if (given->option == &option_settings)
            status = read_one(*settings, given->value);
        else if (given->option == &option_set)
            status = set_one(arguments, *settings, given->value);
    }
    if (status == EXIT_OK)
        status = check_language(arguments, *settings);
    if (status != EXIT_OK) {
        spz_settings_free(*settings);
        *settings = NULL;
    }
    return status;
}
