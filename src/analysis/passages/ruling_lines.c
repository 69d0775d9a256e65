/* Lines of [passages] read, and written. */
#include "analysis/passages/rulings.h"
#include "settings/store.h"
#include "spezzato/explain.h"
#include "support/text/ascii.h"
#include "support/message.h"
#include "support/path.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *past_blanks(const char *at)
{
    while (ascii_is_blank(*at) || *at == ',' || *at == '/' || *at == '+')
        at++;
    return at;
}

/* The word at `at` without regard to capitals, and not as the beginning of a longer one; past it, or NULL. */
static const char *past_word(const char *at, const char *word)
{
    size_t length = strlen(word);
    for (size_t i = 0; i < length; i++)
        if (!at[i] || ascii_lower(at[i]) != ascii_lower(word[i]))
            return NULL;
    return ascii_is_letter(at[length]) ? NULL : at + length;
}

/* One bar as printed: up to a blank, a dash or an en dash. */
static const char *take_bar(const char *at, char out[24])
{
    size_t length = 0;
    while (at[length] && !ascii_is_blank(at[length]) && at[length] != '-' && strncmp(at + length, "\xE2\x80\x93", 3) != 0)
        length++;
    if (length == 0 || length >= 24)
        return NULL;
    memcpy(out, at, length);
    out[length] = '\0';
    return at + length;
}

static const char *take_bars(const char *at, Ruling *ruling)
{
    at = take_bar(past_blanks(at), ruling->from);
    if (!at)
        return NULL;
    memcpy(ruling->to, ruling->from, sizeof ruling->to);
    const char *dash = at + strspn(at, " \t");
    size_t wide = *dash == '-' ? 1 : strncmp(dash, "\xE2\x80\x93", 3) == 0 ? 3 : 0;
    return wide ? take_bar(dash + wide + strspn(dash + wide, " \t"), ruling->to) : at;
}

/* '(orchestra 2)', '(solo)', '2' behind a section's name. */
static const char *take_details(const char *at, RuledBody *body)
{
    for (;;) {
        const char *next = at + strspn(at, " \t");
        bool bracket = *next == '(';
        const char *word = past_word(next + bracket, "orchestra");
        char *end;
        if (word) {
            body->orchestra = (int)strtol(word, &end, 10);
            next = end;
        } else if ((word = past_word(next + bracket, "solo")) != NULL) {
            body->solo = true;
            next = word;
        } else if (!bracket && ascii_is_digit(*next)) {
            body->number = (int)strtol(next, &end, 10);
            next = end;
        } else
            return at;
        if (bracket && *next != ')')
            return NULL;
        at = next + bracket;
    }
}

/* Longer names first: 'Vn III' begins as 'Vn II' does. */
static const char *take_body(const char *at, RuledBody *body)
{
    *body = (RuledBody){0};
    for (int section = SPZ_SECTION_COUNT - 1; section > SPZ_NO_SECTION; section--) {
        const char *past = past_word(at, spz_section_name((spz_section)section));
        past = past ? past : past_word(at, spz_section_words((spz_section)section));
        if (past) {
            body->section = (spz_section)section;
            return take_details(past, body);
        }
    }
    return NULL;
}

static const char *take_kind(const char *at, Ruling *ruling)
{
    for (int kind = 0; kind < SPZ_KIND_COUNT; kind++) {
        const char *name = spz_kind_name((spz_kind)kind);
        size_t length = strlen(name);
        if (strncmp(at, name, length) == 0 && (!at[length] || ascii_is_blank(at[length]))) {
            ruling->kind = (spz_kind)kind;
            ruling->any_kind = false;
            return at + length;
        }
    }
    return NULL;
}

/* Bars, at most two bodies of players, at most one kind. Returns what can't be understood; NULL: all was. */
static const char *key_fault(const char *key, Ruling *ruling)
{
    const char *at = take_bars(key, ruling);
    if (!at)
        return key;
    while (*(at = past_blanks(at))) {
        RuledBody body;
        const char *past = ruling->body_count < 2 ? take_body(at, &body) : NULL;
        if (past)
            ruling->bodies[ruling->body_count++] = body;
        else if (ruling->any_kind)
            past = take_kind(at, ruling);
        if (!past)
            return at;
        at = past;
    }
    return NULL;
}

static bool take_value(const char *value, Ruling *ruling)
{
    size_t length = strcspn(value, ",");
    char word[16];
    const char *reason = value + length + (value[length] != '\0');
    while (length && ascii_is_blank(value[length - 1]))
        length--;
    if (length >= sizeof word)
        return false;
    memcpy(word, value, length);
    word[length] = '\0';
    ruling->reason = reason + strspn(reason, " \t");
    ruling->ruling = ascii_same(word, "no") ? SPZ_VETOED : SPZ_WEIGHTED;
    if (ruling->ruling == SPZ_VETOED)
        return true;
    for (int weight = 0; weight < SPZ_WEIGHT_COUNT; weight++)
        if (ascii_same(word, spz_weight_name((spz_weight)weight))) {
            ruling->weight = (spz_weight)weight;
            return true;
        }
    return false;
}

static spz_status refuse(const SettingEntry *entry, const char *what, const char *detail, const spz_sink *sink)
{
    spz_message place = {.severity = SPZ_ERROR, .file = entry->file, .line = entry->line};
    message_send(sink, &place, "'%.60s = %.60s' in [%.49s]: %s%.40s%s", entry->key, entry->value, entry->section, what, detail, *detail ? "'" : "");
    return SPZ_BAD_SETTINGS;
}

static spz_status take_line(const SettingEntry *entry, const spz_sink *sink, Rulings *out)
{
    Ruling ruling = {.any_kind = true, .file = entry->file, .line = entry->line, .key = entry->key};
    const char *wrong = key_fault(entry->key, &ruling);
    if (wrong == entry->key)
        return refuse(entry, "it has to begin with bars, as in '46-48 = no'", "", sink);
    if (wrong)
        return refuse(entry, "behind the bars stand at most two sections (Vn I, Vn II, Va ..) and a kind (exchange, coupling ..), not '", wrong, sink);
    if (!take_value(entry->value, &ruling))
        return refuse(entry, "it says no, marginal, clear or striking, and behind a comma why", "", sink);
    return array_push(out, ruling) ? SPZ_OK : SPZ_NO_MEMORY;
}

static spz_status take_section(const spz_settings *settings, const char *section, const spz_sink *sink, Rulings *out)
{
    const SettingEntry *entry;
    spz_status status = SPZ_OK;
    for (size_t i = 0; status != SPZ_NO_MEMORY && (entry = settings_entry_at(settings, section, i)) != NULL; i++) {
        spz_status line = take_line(entry, sink, out); /* one that can't be used leaves the others to be looked at */
        status = line ? line : status;
    }
    return status;
}

/* Bytes of the name that have room beside `taken` others, never half a character. */
static size_t room_for(const char *name, size_t taken)
{
    size_t length = strlen(name), room = RULING_SECTION - 1 - taken;
    if (length <= room)
        return length;
    while (room && ((unsigned char)name[room] & 0xC0) == 0x80)
        room--;
    return room;
}

char *ruling_section_of(const char *path, size_t number, char out[RULING_SECTION])
{
    const char *name = path_name(path);
    char behind[24] = "";
    if (number)
        snprintf(behind, sizeof behind, " %zu", number);
    size_t room = room_for(name, strlen("passages ") + strlen(behind));
    snprintf(out, RULING_SECTION, "passages %.*s%s", (int)room, name, behind);
    for (char *at = out; *at; at++)
        *at = *at == ']' ? ')' : *at; /* would end the section's name */
    return out;
}

spz_status rulings_read(const Movement *movement, const spz_settings *settings, const spz_sink *sink, Rulings *out)
{
    char of_file[RULING_SECTION], of_movement[RULING_SECTION];
    *out = (Rulings){0};
    if (!settings)
        return SPZ_OK;
    ruling_section_of(movement_score_name(movement), 0, of_file);
    ruling_section_of(movement_score_name(movement), movement->number, of_movement);
    spz_status status = take_section(settings, "passages", sink, out);
    if (!status)
        status = take_section(settings, of_file, sink, out);
    size_t general = out->count;
    if (!status)
        status = take_section(settings, of_movement, sink, out);
    for (size_t i = general; i < out->count; i++)
        out->at[i].of_movement = true;
    return status;
}

/* The name of a body in a form that is read back. */
static size_t put_body(const spz_group *body, char *out, size_t size)
{
    char number[16] = "", orchestra[32] = "";
    if (body->number)
        snprintf(number, sizeof number, " %d", body->number);
    if (body->orchestra)
        snprintf(orchestra, sizeof orchestra, " (orchestra %d)", body->orchestra);
    int length = snprintf(out, size, " %s%s%s%s", spz_section_name(body->section), number, orchestra, body->solo ? " (solo)" : "");
    return length > 0 ? (size_t)length : 0;
}

static bool same_place(const spz_passage *one, const spz_passage *other)
{
    bool there = one->first == other->first && one->last == other->last;
    bool straight = one->sides[0].section == other->sides[0].section && one->sides[1].section == other->sides[1].section;
    bool crossed = one->sides[0].section == other->sides[1].section && one->sides[1].section == other->sides[0].section;
    return there && (straight || crossed);
}

/* Several passages stand in these bars between these players: only the kind tells them apart. */
static bool needs_kind(const Findings *findings, const spz_passage *passage)
{
    for (size_t i = 0; i < findings->passages.count; i++)
        if (findings->passages.at[i].kind != passage->kind && same_place(&findings->passages.at[i], passage))
            return true;
    return false;
}

static bool can_be_named(const char *bar)
{
    return *bar && strlen(bar) < 24 && !strpbrk(bar, " \t-=:;,/+[]");
}

/* Bars as printed and the players of both sides; what it came to. Nothing where the bars can't be named. */
static size_t put_place(const SectionMap *map, const spz_side sides[2], const char *first, const char *last, char *out, size_t size)
{
    size_t at = 0;
    if (size)
        out[0] = '\0';
    if (!size || !can_be_named(first) || !can_be_named(last))
        return 0;
    at += (size_t)snprintf(out, size, strcmp(first, last) ? "%s-%s" : "%s", first, last);
    for (int side = 0; side < 2 && at < size; side++)
        if (sides[side].section != SPZ_NO_SECTION) {
            spz_group body = spz_side_named(map, &sides[side]);
            at += put_body(&body, out + at, size - at);
        }
    return at;
}

char *spz_passage_line(const spz_findings *findings, size_t index, char *out, size_t size)
{
    const spz_passage *p = spz_findings_at(findings, index);
    size_t at = p ? put_place(findings->map, p->sides, p->first_bar, p->last_bar, out, size) : 0;
    if (!p && size)
        out[0] = '\0';
    if (at && at < size && needs_kind(findings, p))
        snprintf(out + at, size - at, " %s", spz_kind_name(p->kind));
    return out;
}

char *spz_considered_line(const spz_sections *sections, const spz_considered *considered, char *out, size_t size)
{
    const Bar *bars = sections->movement->bars;
    put_place(sections, considered->sides, bars[considered->first].number, bars[considered->last].number, out, size);
    return out;
}
