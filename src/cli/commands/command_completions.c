/* What a shell can complete, from the tables of commands and options themselves. */
#include "cli/command.h"
#include "cli/messages.h"
#include <stdio.h>
#include <string.h>

static const Option *const options[] = {NULL};

/* Whether a file stands behind it. */
static bool takes_file(const Option *option)
{
    return option->value && (strcmp(option->value, "FILE") == 0 || strcmp(option->value, "FOLDER") == 0);
}

/* The first line of an option's help, without what a shell would read as its own. */
static void print_plain(const char *text)
{
    for (; *text && *text != '\n'; text++)
        if (!strchr("'\"`\\[]:$", *text))
            putchar(*text);
}

enum { OFFERED = 256 };

static void offer(char offered[OFFERED], const char *word, size_t length)
{
    size_t filled = strlen(offered);
    snprintf(offered + filled, OFFERED - filled, "%s%.*s", filled ? " " : "", (int)length, word);
}

static void offer_word(char offered[OFFERED], const char *word)
{
    offer(offered, word, strlen(word));
}

/* 'text, html (for paper) or csv': the words that are no aside. */
static void offer_listed(char offered[OFFERED], const char *help)
{
    int aside = 0;
    while (*help) {
        size_t length = strspn(help, "abcdefghijklmnopqrstuvwxyz-");
        if (length && !aside && strncmp(help, "or ", 3) != 0)
            offer(offered, help, length);
        aside += (help[length] == '(') - (help[length] == ')');
        help += length + (help[length] != '\0');
    }
}

/* What a shell may offer for the value, blanks between; "" for a file, or what only the user knows. */
static const char *values(const Option *option, char offered[OFFERED])
{
    *offered = '\0';
    if (!option->value)
        return offered;
    if (strcmp(option->value, "FORM") == 0)
        offer_listed(offered, option->help);
    for (int i = 0; option == &option_language && i < SPZ_LANGUAGE_COUNT; i++)
        offer_word(offered, spz_language_code((spz_language)i));
    for (int i = 0; option == &option_kind && i < SPZ_KIND_COUNT; i++)
        offer_word(offered, spz_kind_name((spz_kind)i));
    if (option == &option_kind)
        offer_word(offered, "antiphony divisi");
    for (int i = 0; option == &option_strength && i < SPZ_WEIGHT_COUNT; i++)
        offer_word(offered, spz_weight_name((spz_weight)i));
    return offered;
}

static void bash_values(const Option *option)
{
    char offered[OFFERED];
    if (!option->value)
        return;
    printf("        --%s", option->name);
    if (option->letter)
        printf(" | -%c", option->letter);
    if (*values(option, offered))
        printf(") COMPREPLY=($(compgen -W '%s' -- \"$word\")); return ;;\n", offered);
    else
        printf(") %s; return ;;\n", takes_file(option) ? "COMPREPLY=($(compgen -f -- \"$word\"))" : "COMPREPLY=()");
}

static void bash_command(const Command *command)
{
    printf("    %s)\n        case $before in\n", command == command_at(0) ? "*" : command->name);
    for (const Option *const *option = command->options; *option; option++)
        bash_values(*option);
    fputs("        esac\n        options='--help", stdout);
    for (const Option *const *option = command->options; *option; option++)
        printf(" --%s", (*option)->name);
    puts("' ;;");
}

static void bash(void)
{
    puts("# Completions of spezzato for bash.\n_spezzato()\n{\n"
         "    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} options\n"
         "    compopt -o filenames 2>/dev/null\n    case ${COMP_WORDS[1]} in");
    for (size_t i = 1; command_at(i); i++)
        bash_command(command_at(i));
    bash_command(command_at(0));
    fputs("    esac\n    if [[ $word == -* ]]; then\n        COMPREPLY=($(compgen -W \"$options\" -- \"$word\"))\n"
          "    else\n        COMPREPLY=($(compgen -f -- \"$word\"))\n        [ \"$COMP_CWORD\" = 1 ] && COMPREPLY+=($(compgen -W '", stdout);
    for (size_t i = 0; command_at(i); i++)
        printf("%s%s", i ? " " : "", command_at(i)->name);
    puts("' -- \"$word\"))\n    fi\n}\ncomplete -F _spezzato spezzato");
}

static void zsh_option(const Option *option)
{
    char offered[OFFERED];
    printf(" \\\n            '*--%s[", option->name);
    print_plain(option->help);
    putchar(']');
    if (*values(option, offered))
        printf(":%s:(%s)", option->value, offered);
    else if (option->value)
        printf(":%s:%s", option->value, takes_file(option) ? "_files" : "");
    putchar('\'');
}

static void zsh_command(const Command *command)
{
    printf("        %s)\n        _arguments '--help[this command explained]' '*:file:_files'", command == command_at(0) ? "*" : command->name);
    for (const Option *const *option = command->options; *option; option++)
        zsh_option(*option);
    puts(" ;;");
}

static void zsh(void)
{
    puts("#compdef spezzato\n# Completions of spezzato for zsh.\n_spezzato()\n{\n    local -a commands\n    commands=(");
    for (size_t i = 0; command_at(i); i++) {
        printf("        '%s:", command_at(i)->name);
        print_plain(command_at(i)->purpose);
        puts("'");
    }
    puts("    )\n    if (( CURRENT == 2 )); then\n        _describe command commands\n        _files\n        return\n    fi\n    case $words[2] in");
    for (size_t i = 1; command_at(i); i++)
        zsh_command(command_at(i));
    zsh_command(command_at(0));
    puts("    esac\n}\n_spezzato \"$@\"");
}

static void fish_option(const char *condition, const Option *option)
{
    char offered[OFFERED];
    printf("complete -c spezzato -n '%s' -l %s", condition, option->name);
    if (option->letter)
        printf(" -s %c", option->letter);
    if (*values(option, offered))
        printf(" -x -a '%s'", offered);
    else if (option->value)
        fputs(takes_file(option) ? " -r -F" : " -x", stdout);
    fputs(" -d '", stdout);
    print_plain(option->help);
    puts("'");
}

static void fish(void)
{
    puts("# Completions of spezzato for fish.");
    for (size_t i = 0; command_at(i); i++) {
        printf("complete -c spezzato -n __fish_use_subcommand -a %s -d '", command_at(i)->name);
        print_plain(command_at(i)->purpose);
        puts("'");
    }
    puts("complete -c spezzato -l help -d 'this command explained'");
    for (size_t i = 0; command_at(i); i++) {
        char condition[80];
        snprintf(condition, sizeof condition, "__fish_seen_subcommand_from %s", command_at(i)->name);
        for (const Option *const *option = command_at(i)->options; *option; option++)
            fish_option(i ? condition : "not __fish_seen_subcommand_from; or __fish_seen_subcommand_from page", *option);
    }
}

static int run(const Arguments *arguments)
{
    static const struct { const char *name; void (*print)(void); } shells[] = {{"bash", bash}, {"zsh", zsh}, {"fish", fish}};
    for (size_t i = 0; arguments->operand_count == 1 && i < sizeof shells / sizeof *shells; i++) {
        if (strcmp(arguments->operands[0], shells[i].name) != 0)
            continue;
        shells[i].print();
        return EXIT_OK;
    }
    complain_usage(arguments->command, "for which shell? bash, zsh or fish");
    return EXIT_USAGE;
}

const Command command_completions = {
    .name = "completions",
    .purpose = "what a shell can complete: bash, zsh or fish",
    .operands = "SHELL",
    .help = "Prints the words that a shell can complete. `make install` puts them where the shells look; to have them at once:\n"
            "  bash:  eval \"$(spezzato completions bash)\"\n"
            "  zsh:   spezzato completions zsh > a folder of $fpath, as _spezzato\n"
            "  fish:  spezzato completions fish > ~/.config/fish/completions/spezzato.fish\n",
    .options = options,
    .run = run,
};
