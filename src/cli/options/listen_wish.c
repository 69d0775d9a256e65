#include "cli/options/listen_wish.h"
#include <stdio.h>
#include <string.h>
#include <strings.h>

static bool refuse(const spz_reading *reading, const spz_sink *sink, const char *text)
{
    spz_message message = {.severity = SPZ_ERROR, .file = spz_score_file(spz_reading_score(reading)), .text = text};
    sink->say(sink->context, &message);
    return false;
}

/* '29-40' or '29', as printed. */
static bool find_bars(const spz_movement *movement, const char *words, size_t *first, size_t *last)
{
    const char *dash = strchr(words, '-');
    size_t length = dash ? (size_t)(dash - words) : strlen(words), count = spz_movement_bars(movement);
    const char *end = dash ? dash + 1 : words;
    *first = 0;
    while (*first < count && (strlen(spz_movement_bar_number(movement, *first)) != length || strncmp(spz_movement_bar_number(movement, *first), words, length) != 0))
        ++*first;
    *last = *first;
    while (*last < count && strcmp(spz_movement_bar_number(movement, *last), end) != 0)
        ++*last;
    return *last < count;
}

static bool take_bars(const spz_reading *reading, const ListenWords *words, const spz_sink *sink, size_t *movement, spz_listen_wish *wish)
{
    for (size_t i = 0; i < spz_reading_count(reading); i++)
        if ((!words->movement || (size_t)words->movement == i + 1) && find_bars(spz_reading_at(reading, i).movement, words->bars, &wish->first, &wish->last)) {
            *movement = i;
            return true;
        }
    char text[300];
    const spz_movement *asked = spz_reading_at(reading, words->movement ? (size_t)words->movement - 1 : 0).movement;
    snprintf(text, sizeof text, "there are no bars %.60s; the first is %.60s, the last %.60s", words->bars, spz_movement_bar_number(asked, 0),
             spz_movement_bar_number(asked, spz_movement_bars(asked) - 1));
    return refuse(reading, sink, text);
}

/* The passages of sections that answer each other, in the order in which they are listed. */
static bool take_passage(const spz_reading *reading, const ListenWords *words, const spz_sink *sink, size_t movement, spz_listen_wish *wish)
{
    const spz_findings *findings = spz_reading_at(reading, movement).findings;
    int there = 0;
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *passage = spz_findings_at(findings, i);
        if (spz_kind_is_antiphony(passage->kind) && ++there == words->passage) {
            wish->first = passage->first;
            wish->last = passage->last;
            return true;
        }
    }
    char text[120];
    snprintf(text, sizeof text, "there is no passage %d; %d are listed as sections that answer each other", words->passage, there);
    return refuse(reading, sink, text);
}

/* The passage on which the seating hangs most. */
static bool take_weightiest(const spz_reading *reading, const spz_sink *sink, size_t movement, spz_listen_wish *wish)
{
    const spz_verdict *verdict = spz_reading_at(reading, movement).verdict;
    for (size_t i = 0; i < spz_verdict_reasons(verdict); i++) {
        const spz_basis *basis = &spz_verdict_reason(verdict, i)->basis;
        if (basis->passage_count) {
            wish->first = basis->passages[0].bars.first;
            wish->last = basis->passages[0].bars.last;
            return true;
        }
    }
    return refuse(reading, sink, "the seating hangs on no passage here; say which bars are to be heard: --bars 1-8");
}

/* The best of those named, '|' between. A lone one may be heard though the house forbids it; NULL where it forbids all of several. */
static const char *arrangement_of(const spz_verdict *verdict, const char *names)
{
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const char *ranked = spz_verdict_ranked(verdict, i)->name;
        size_t length = strlen(ranked);
        for (const char *at = names; (at = strstr(at, ranked)) != NULL; at += length)
            if ((at == names || at[-1] == '|') && (!at[length] || at[length] == '|'))
                return ranked;
    }
    return strchr(names, '|') ? NULL : names;
}

/* The best one with the violins placed otherwise; where there is none, the next best. */
static const char *other_than(const spz_verdict *verdict, const char *name)
{
    bool opposed = false;
    const char *next = name;
    for (size_t i = 0; i < spz_verdict_count(verdict); i++)
        if (strcmp(spz_verdict_ranked(verdict, i)->name, name) == 0)
            opposed = spz_verdict_ranked(verdict, i)->opposed;
    for (size_t i = spz_verdict_count(verdict); i-- > 0;)
        if (strcmp(spz_verdict_ranked(verdict, i)->name, name) != 0)
            next = spz_verdict_ranked(verdict, i)->name;
    for (size_t i = spz_verdict_count(verdict); i-- > 0;)
        if (spz_verdict_ranked(verdict, i)->opposed != opposed)
            next = spz_verdict_ranked(verdict, i)->name;
    return next;
}

static bool take_seatings(const spz_reading *reading, const ListenWords *words, const spz_sink *sink, size_t movement, spz_listen_wish *wish)
{
    const spz_verdict *verdict = spz_reading_at(reading, movement).verdict;
    if (spz_verdict_count(verdict) == 0) {
        char sentence[320];
        return refuse(reading, sink, spz_verdict_sentence(verdict, SPZ_ENGLISH, sentence, sizeof sentence));
    }
    wish->thirds = spz_verdict_thirds(verdict);
    wish->two_orchestras = spz_verdict_orchestras(verdict) > 1;
    wish->arrangements[0] = words->seating ? arrangement_of(verdict, words->seating) : spz_verdict_ranked(verdict, 0)->name;
    wish->arrangements[1] = words->against ? arrangement_of(verdict, words->against) : wish->arrangements[0] ? other_than(verdict, wish->arrangements[0]) : NULL;
    if (!wish->arrangements[0] || !wish->arrangements[1])
        return refuse(reading, sink, "the house forbids all seatings that are meant");
    if (strcmp(wish->arrangements[0], wish->arrangements[1]) == 0)
        return refuse(reading, sink, "both versions would be in the same seating; name another with --against");
    return true;
}

bool listen_wish_seatings(const spz_reading *reading, size_t movement, const spz_sink *sink, spz_listen_wish *wish)
{
    return take_seatings(reading, &(ListenWords){0}, sink, movement, wish);
}

/* Whether one word of a list names the group: 'Vn I' all first violins, 'Va 2' that part, 'Violins' all of them. */
static bool means(const char *word, const spz_group *group)
{
    spz_section section = group->section;
    bool violin = section == SPZ_VN1 || section == SPZ_VN2 || section == SPZ_VN3;
    return !strcasecmp(word, group->name) || !strcasecmp(word, spz_section_name(section)) || !strcasecmp(word, spz_section_words(section)) ||
           (violin && !strcasecmp(word, spz_section_name(SPZ_VIOLINS))) || !strcasecmp(word, spz_section_name(SPZ_STRINGS));
}

static bool take_soloists(const spz_reading *reading, const char *list, const spz_sink *sink, size_t movement, spz_listen_wish *wish)
{
    const spz_sections *sections = spz_reading_at(reading, movement).sections;
    while (list && *list) {
        char word[80];
        list += strspn(list, ", ");
        size_t length = strcspn(list, ","), kept = length < sizeof word ? length : sizeof word - 1;
        memcpy(word, list, kept);
        while (kept > 0 && word[kept - 1] == ' ')
            kept--;
        word[kept] = '\0';
        spz_players found = 0;
        for (size_t i = 0; i < spz_sections_groups(sections) && i < 63; i++)
            if (means(word, spz_sections_group(sections, i)))
                found |= (spz_players)1 << i;
        if (kept && !found)
            return refuse(reading, sink, "--solo: no section of that name plays here; `spezzato sections` lists them");
        wish->solo |= found;
        list += length;
    }
    return true;
}

bool listen_wish_make(const spz_reading *reading, const ListenWords *words, const spz_sink *sink, size_t *movement, spz_listen_wish *wish)
{
    *movement = words->movement ? (size_t)words->movement - 1 : 0;
    if (*movement >= spz_reading_count(reading))
        return refuse(reading, sink, "there is no movement of that number in this file");
    bool found = words->bars      ? take_bars(reading, words, sink, movement, wish)
                 : words->passage ? take_passage(reading, words, sink, *movement, wish)
                                  : take_weightiest(reading, sink, *movement, wish);
    return found && take_seatings(reading, words, sink, *movement, wish) && take_soloists(reading, words->solo, sink, *movement, wish);
}
