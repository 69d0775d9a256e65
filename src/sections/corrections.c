/* The user's [sections]: 'Part name = Vn I', also with 'staff 2', 'voice 2', 'orchestra 2', 'number 2', 'line 2', 'solo', 'desk 1',
 * 'continuo'; 'not strings', a family, or 'not played'. Several for one part are separated by commas or written as several entries. */
#include "sections/understanding.h"
#include "settings/store.h"
#include "support/message.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAMED_MOST = 32, ORCHESTRAS_MOST = 2 };

typedef struct Entry { /* one entry, and the piece of its value that is being read */
    Understanding *all;
    const SettingEntry *from;
    Correction correction;
    char words[200]; /* what is left for the name reading */
    struct { int staff; const char *voice; } named[NAMED_MOST]; /* by the pieces before */
    size_t named_count;
    const char *fault;
    spz_fault doubt;
} Entry;

static const struct { const char *word; spz_family family; } family_words[] = {
    { "woodwind", SPZ_FAMILY_WOODWIND }, { "winds", SPZ_FAMILY_WOODWIND }, { "brass", SPZ_FAMILY_BRASS }, { "percussion", SPZ_FAMILY_PERCUSSION },
    { "keyboard", SPZ_FAMILY_KEYBOARD }, { "plucked", SPZ_FAMILY_PLUCKED }, { "voices", SPZ_FAMILY_VOICES },
    { "other strings", SPZ_FAMILY_STRINGS },
};

/* Cuts "staff 2" out of the words; returns its number, 0 where it isn't there, -1 where no number follows. */
static int cut_number(char *words, const char *keyword)
{
    size_t length = strlen(keyword);
    for (char *at = strstr(words, keyword); at; at = strstr(at + 1, keyword)) {
        if ((at > words && at[-1] != ' ') || at[length] != ' ')
            continue;
        char *end;
        long value = strtol(at + length, &end, 10);
        if (end == at + length || value < 1 || value > 99)
            return -1;
        memmove(at, end, strlen(end) + 1);
        return (int)value;
    }
    return 0;
}

/* Cuts "voice NAME" out. NULL where it isn't there. */
static const char *cut_voice(Entry *entry)
{
    char *at = strstr(entry->words, "voice ");
    if (!at || (at > entry->words && at[-1] != ' '))
        return NULL;
    char *name = at + strlen("voice ");
    size_t length = strcspn(name, " ");
    const char *kept = arena_text(entry->all->arena, name, length);
    entry->all->out_of_memory |= !kept;
    memmove(at, name + length, strlen(name + length) + 1);
    return kept;
}

static bool cut_words(char *words, const char *phrase)
{
    char *at = strstr(words, phrase);
    size_t length = strlen(phrase);
    if (!at || (at > words && at[-1] != ' ') || (at[length] && at[length] != ' '))
        return false;
    memmove(at, at + length, strlen(at + length) + 1);
    return true;
}

static void read_places(Entry *entry)
{
    Correction *correction = &entry->correction;
    correction->staff = cut_number(entry->words, "staff");
    correction->number = cut_number(entry->words, "number");
    correction->voice = cut_voice(entry);
    if (correction->staff < 0 || correction->number < 0)
        entry->fault = "a number has to follow 'staff' and 'number'";
}

static void read_desk(Entry *entry)
{
    NameReading *says = &entry->correction.says;
    if (says->desk)
        entry->correction.desk = arena_text(entry->all->arena, entry->words + says->desk_start, says->desk_end - says->desk_start);
    entry->all->out_of_memory |= says->desk && !entry->correction.desk;
}

static bool read_family(Entry *entry)
{
    for (size_t i = 0; i < sizeof family_words / sizeof family_words[0]; i++)
        if (cut_words(entry->words, family_words[i].word)) {
            entry->correction.says = (NameReading){ .instrument = INSTRUMENT_OTHER, .family = family_words[i].family };
            return true;
        }
    return false;
}

/* 'Bass' and 'Basso' mean the section here. */
static void settle_meaning(NameReading *says)
{
    if (says->instrument == INSTRUMENT_EITHER_BASS || says->instrument == INSTRUMENT_BASS_LINE)
        says->instrument = INSTRUMENT_BASS;
    if (says->instrument == INSTRUMENT_EITHER_VIOLA)
        says->instrument = INSTRUMENT_VIOLA;
    if (says->instrument == INSTRUMENT_EITHER_VIOLIN)
        says->instrument = INSTRUMENT_VIOLIN;
    if (says->instrument == INSTRUMENT_VIOLIN && !says->ordinal && says->plural) {
        says->ordinal = 1;
        says->ordinal2 = 2;
    }
    if (says->instrument == INSTRUMENT_VIOLIN && !says->ordinal)
        says->ordinal = 1;
    says->family = instrument_has_section(says->instrument) ? SPZ_FAMILY_STRINGS : says->family;
}

/* Only blanks are left of the words. */
static bool all_read(const Entry *entry)
{
    return entry->words[strspn(entry->words, " ")] == '\0';
}

/* 'not strings', 'brass', 'continuo': true when it is one of these, with what else stands there checked. */
static bool read_no_section(Entry *entry)
{
    Correction *correction = &entry->correction;
    correction->left_out = cut_words(entry->words, "not played");
    correction->not_strings = cut_words(entry->words, "not strings");
    bool family = !correction->left_out && read_family(entry);
    bool solo = family && cut_words(entry->words, "solo"), continuo = cut_words(entry->words, "continuo");
    if (!correction->left_out && !correction->not_strings && !family && !(continuo && all_read(entry)))
        return false;
    if (!family && continuo)
        correction->says = (NameReading){ .instrument = INSTRUMENT_OTHER, .family = SPZ_FAMILY_KEYBOARD };
    correction->says.solo = solo;
    correction->says.continuo = continuo;
    correction->not_strings = true;
    if (!all_read(entry))
        entry->fault = "says more than can be understood";
    return true;
}

/* One piece of the value: 'Vn II staff 2'. */
static void read_piece(Entry *entry, const char *piece)
{
    NameReading *says = &entry->correction.says;
    char kept[sizeof entry->words];
    entry->correction = (Correction){ .part = entry->correction.part };
    name_fold(piece, entry->words, sizeof entry->words);
    read_places(entry);
    memcpy(kept, entry->words, sizeof kept);
    if (entry->fault || read_no_section(entry))
        return;
    memcpy(entry->words, kept, sizeof kept);
    name_read(entry->words, says);
    bool desk_alone = says->desk && (!says->desk_numbered || (says->instrument == INSTRUMENT_VIOLIN && !says->ordinal));
    settle_meaning(says);
    read_desk(entry);
    if (!instrument_has_section(says->instrument) || says->stray)
        entry->fault = "names no section: write Vn I, Vn II, Vn III, Va, Vc, Db, 'not strings' or 'not played'";
    else if (desk_alone)
        entry->fault = "says not which desk: write the section and the desk's number, such as Vn I desk 1";
    else if (says->orchestra > ORCHESTRAS_MOST)
        entry->fault = "there are two orchestras at most: 1 and 2";
}

/* Two pieces may not say two things of the same notes. */
static void check_pieces(Entry *entry)
{
    const Correction *correction = &entry->correction;
    for (size_t i = 0; i < entry->named_count && !entry->fault; i++) {
        const char *other = entry->named[i].voice;
        bool voice = other && correction->voice ? strcmp(other, correction->voice) == 0 : !other && !correction->voice;
        if (voice && entry->named[i].staff == correction->staff)
            entry->fault = "says two things of the same notes: add the staff or the voice to each, or write 'Vc and Db' for two sections that read one line";
    }
    if (entry->named_count == NAMED_MOST)
        return;
    entry->named[entry->named_count].staff = correction->staff;
    entry->named[entry->named_count++].voice = correction->voice;
}

/* A correction that doesn't fit the part in this score may fit it in another one. */
static void check_place(Entry *entry)
{
    const Part *part = &entry->all->movement->parts[entry->correction.part];
    bool voice = !entry->correction.voice;
    for (size_t i = 0; i < part->voice_count && !voice; i++)
        voice = strcmp(part->voices[i], entry->correction.voice) == 0;
    if (entry->correction.staff > part->staves)
        entry->doubt = SPZ_FAULT_CORRECTION_STAFF;
    else if (!voice)
        entry->doubt = SPZ_FAULT_CORRECTION_VOICE;
}

/* A correction of the whole part takes the place of all that was read off the file. */
static void correct_part(Understanding *all, const Correction *by)
{
    PartReading *part = &all->parts[by->part];
    int orchestra = by->says.orchestra ? by->says.orchestra : part->name.orchestra;
    spz_family family = part->name.family;
    part->name = by->says;
    if (by->left_out || (by->not_strings && by->says.family == SPZ_FAMILY_UNKNOWN && family != SPZ_FAMILY_STRINGS))
        part->name.family = family;
    part->name.orchestra = orchestra;
    part->number = by->number;
    part->division = by->says.division;
    part->role = by->says.continuo ? SPZ_CONTINUO : by->says.solo ? SPZ_SOLO : by->says.desk ? SPZ_DESK : SPZ_TUTTI;
    part->desk = by->desk;
    part->left_out = by->left_out;
    part->corrected = true;
    part->own_clues = part->clue_count = 0;
    part_own_clue(part, (spz_clue){.kind = SPZ_CLUE_SETTINGS});
}

static void apply(Entry *entry)
{
    Understanding *all = entry->all;
    if (entry->correction.staff || entry->correction.voice)
        all->out_of_memory |= !array_push(&all->corrections, entry->correction);
    else
        correct_part(all, &entry->correction);
}

static void read_value(Entry *entry)
{
    char value[200];
    snprintf(value, sizeof value, "%s", entry->from->value);
    entry->named_count = 0;
    for (char *piece = value; piece && !entry->fault;) {
        char *comma = strchr(piece, ',');
        if (comma)
            *comma = '\0';
        read_piece(entry, piece);
        check_pieces(entry);
        entry->doubt = SPZ_NO_FAULT;
        if (!entry->fault && entry->correction.part != SIZE_MAX)
            check_place(entry);
        if (!entry->fault && !entry->doubt && entry->correction.part != SIZE_MAX)
            apply(entry);
        if (entry->doubt)
            understanding_send(entry->all, entry->correction.part,
                               (spz_message){.fault = entry->doubt, .name = entry->from->key, .other = entry->from->value});
        piece = comma ? comma + 1 : NULL;
    }
}

/* The key is the name, the abbreviation or the id of a part, or 'part 5'. */
static bool names_part(const Understanding *all, const char *key, size_t index)
{
    const Part *part = &all->movement->parts[index];
    const char *const names[] = { part->name, part->abbreviation, part->id };
    char own[200], other[200], place[32];
    name_fold(key, own, sizeof own);
    snprintf(place, sizeof place, "part %zu", index + 1);
    bool found = strcmp(own, place) == 0;
    for (int i = 0; i < 3 && !found; i++) {
        name_fold(names[i], other, sizeof other);
        found = other[0] && strcmp(own, other) == 0;
    }
    return found;
}

static spz_status read_entry(Understanding *all, const SettingEntry *from)
{
    Entry entry = { .all = all, .from = from };
    bool named = false;
    entry.correction.part = SIZE_MAX;
    read_value(&entry); /* once without a part, so that mistakes are found in any case */
    for (size_t i = 0; i < all->movement->part_count && !entry.fault; i++)
        if (names_part(all, from->key, i)) {
            entry.correction.part = i;
            read_value(&entry);
            named = true;
        }
    spz_message place = { .severity = entry.fault ? SPZ_ERROR : SPZ_NOTE, .file = from->file, .line = from->line };
    if (entry.fault)
        message_send(all->sink, &place, "[sections] '%s = %s': %s", from->key, from->value, entry.fault);
    else if (!named) {
        place.fault = SPZ_FAULT_CORRECTION_PART;
        place.name = from->key;
        place.other = movement_score_name(all->movement);
        message_fault(all->sink, &place);
    }
    return entry.fault ? SPZ_BAD_SETTINGS : SPZ_OK;
}

spz_status corrections_read(Understanding *all)
{
    spz_status worst = SPZ_OK;
    const SettingEntry *entry;
    for (size_t i = 0; all->settings && (entry = settings_entry_at(all->settings, "sections", i)) != NULL; i++)
        if (read_entry(all, entry) != SPZ_OK)
            worst = SPZ_BAD_SETTINGS;
    return all->out_of_memory ? SPZ_NO_MEMORY : worst;
}
