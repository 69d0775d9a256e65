/* What the file says around a citation: the tempo word and the loudness in force, a trio; and the heading and the key of the movement. */
#include "citations/citation_facts.h"
#include "sections/section_map.h"
#include "support/text/ascii.h"
#include "support/path.h"
#include <stdio.h>
#include <string.h>

/* The pitch class that a signature makes the tonic: that of the major key, or of its relative minor. */
static int tonic_of(int fifths, bool minor)
{
    return ((fifths * 7 + (minor ? 9 : 0)) % 12 + 12) % 12;
}

/* The lowest note that sounds between two moments; -1 where none does. */
static int lowest_between(const spz_movement *movement, spz_ticks from, spz_ticks to)
{
    int lowest = -1;
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 0; i < movement->parts[part].note_count && movement->parts[part].notes[i].onset < to; i++) {
            const Note *note = &movement->parts[part].notes[i];
            bool sounds = note->midi >= 0 && note->duration > 0 && note->onset + note->duration > from;
            lowest = sounds && (lowest < 0 || note->midi < lowest) ? note->midi : lowest;
        }
    return lowest;
}

/* When the last note before `to` ends. */
static spz_ticks last_end(const spz_movement *movement, spz_ticks to)
{
    spz_ticks end = 0;
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 0; i < movement->parts[part].note_count && movement->parts[part].notes[i].onset < to; i++) {
            const Note *note = &movement->parts[part].notes[i];
            end = note->midi >= 0 && note->onset + note->duration > end ? note->onset + note->duration : end;
        }
    return end < to ? end : to;
}

/* Which of the two keys of a signature has this bass note as its tonic. */
static bool key_of_bass(int fifths, int bass, bool *minor)
{
    *minor = bass >= 0 && bass % 12 == tonic_of(fifths, true);
    return bass >= 0 && (*minor || bass % 12 == tonic_of(fifths, false));
}

/* The bass of the last crotchet that sounds before `to`. */
static int last_bass(const spz_movement *movement, spz_ticks to)
{
    spz_ticks end = last_end(movement, to);
    return lowest_between(movement, end - movement->per_crotchet, end);
}

/* The signature says two keys; the last bass note which of them, where it is the tonic of one. */
bool movement_key(const spz_movement *movement, int *fifths, bool *minor)
{
    size_t bars = movement->bar_count;
    if (!bars || movement->bars[0].fifths != movement->bars[bars - 1].fifths || movement->bars[0].fifths < -7 || movement->bars[0].fifths > 7)
        return false;
    *fifths = movement->bars[0].fifths;
    return key_of_bass(*fifths, last_bass(movement, movement->length), minor);
}

/* Does the other third of that key sound between two moments, and its own does not? */
static bool has_other_third(const spz_movement *movement, int fifths, bool minor, spz_ticks from, spz_ticks to)
{
    bool sounds[12] = {false};
    int tonic = tonic_of(fifths, minor);
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 0; i < movement->parts[part].note_count && movement->parts[part].notes[i].onset < to; i++) {
            const Note *note = &movement->parts[part].notes[i];
            if (note->midi >= 0 && note->duration > 0 && note->onset + note->duration > from)
                sounds[note->midi % 12] = true;
        }
    return sounds[(tonic + (minor ? 4 : 3)) % 12] && !sounds[(tonic + (minor ? 3 : 4)) % 12];
}

/* Does the crotchet from there on stand on the tonic of a key of the signature? */
static bool key_within(const spz_movement *movement, int fifths, spz_ticks from, bool *minor)
{
    spz_ticks to = from + movement->per_crotchet;
    return key_of_bass(fifths, lowest_between(movement, from, to), minor) && !has_other_third(movement, fifths, *minor, from, to);
}

enum { PARAGRAPH = 16 }; /* bars for which a key holds good behind its signature (common practice, no source) */

/* Where another signature holds than at the beginning: its key, where the bass at both ends of those bars speaks for one and the same, or at one end does and
 * at the other is the tonic of neither. */
static void find_key(const spz_movement *movement, Citation *citation)
{
    size_t first = citation->passage->first, last = first;
    int fifths = movement->bars[first].fifths;
    bool minor[2];
    while (first > 0 && movement->bars[first - 1].fifths == fifths)
        first--;
    while (last + 1 < movement->bar_count && movement->bars[last + 1].fifths == fifths)
        last++;
    if (first == 0 || fifths == movement->bars[0].fifths || fifths < -7 || fifths > 7)
        return;
    spz_ticks from = movement->bars[first].onset, to = movement->bars[last].onset + movement->bars[last].length;
    bool at_first = key_within(movement, fifths, from, &minor[0]);
    bool at_last = key_within(movement, fifths, last_end(movement, to) - movement->per_crotchet, &minor[1]);
    bool here;
    citation->has_key = at_first && at_last ? minor[0] == minor[1] : at_first || at_last;
    citation->minor = at_last ? minor[1] : minor[0];
    if (citation->passage->first - first >= PARAGRAPH) /* the music may have wandered off */
        citation->has_key = citation->has_key && key_within(movement, fifths, citation->passage->onset, &here) && here == citation->minor;
    citation->fifths = fifths;
}

static bool begins_with(const char *text, const char *beginning)
{
    for (; *beginning; text++, beginning++)
        if (ascii_lower(*text) != *beginning)
            return false;
    return true;
}

/* Without the brackets of an editor: '(Tempo I)'. */
static const char *unbracketed(const char *text)
{
    return text ? text + strspn(text, "([ ") : NULL;
}

/* Words that lead back to an earlier tempo: those before them hold no longer. */
static bool leads_back(const char *text)
{
    text = unbracketed(text);
    return text && (begins_with(text, "a tempo") || begins_with(text, "in tempo") || begins_with(text, "tempo"));
}

/* Words for a tempo: none that lead back to one, nor signs of a metronome. */
static size_t tempo_words(const char *text)
{
    size_t length = text ? strcspn(text, "[()]") : 0, letters = 0;
    for (size_t i = 0; i < length; i++)
        letters += ascii_is_letter(text[i]);
    if (letters < 3 || memchr(text, '=', length) || leads_back(text) || begins_with(text, "l'istesso"))
        return 0;
    while (length && strchr(" .[(=,;:", text[length - 1]))
        length--;
    return length;
}

/* The last words for a tempo at or before `when`, in any part; none after words that lead back. */
static const char *tempo_at(const spz_movement *movement, spz_ticks when, size_t *length)
{
    const Direction *last = NULL;
    for (size_t part = 0; part < movement->part_count; part++)
        for (size_t i = 0; i < movement->parts[part].direction_count; i++) {
            const Direction *direction = &movement->parts[part].directions[i];
            if (direction->kind == DIRECTION_TEMPO && direction->onset <= when && (tempo_words(unbracketed(direction->text)) || leads_back(direction->text)) && (!last || direction->onset > last->onset))
                last = direction;
        }
    *length = last ? tempo_words(unbracketed(last->text)) : 0;
    return last ? unbracketed(last->text) : "";
}

static void put_words(char out[CONTEXT_TEXT], const char *text, size_t length)
{
    snprintf(out, CONTEXT_TEXT, "%.*s", length < CONTEXT_TEXT ? (int)length : 0, text);
}

/* The sign of loudness that holds in a part at `when`; none where it grew or fell since. */
static spz_dynamic loudness_at(const Part *part, spz_ticks when)
{
    spz_dynamic loudness = SPZ_DYNAMIC_NONE;
    for (size_t i = 0; i < part->direction_count && part->directions[i].onset <= when; i++) {
        const Direction *direction = &part->directions[i];
        if (direction->kind == DIRECTION_DYNAMIC) {
            spz_dynamic said = (spz_dynamic)direction->value;
            loudness = direction->text && !strcmp(direction->text, spz_dynamic_name(said)) ? said : SPZ_DYNAMIC_NONE; /* 'sfz' is of one note */
        } else if (direction->kind == DIRECTION_WEDGE && direction->value && direction->onset < when)
            loudness = SPZ_DYNAMIC_NONE;
        else if (direction->kind == DIRECTION_WORDS && direction->text && (begins_with(direction->text, "cresc") || begins_with(direction->text, "dim") ||
                                                                           begins_with(direction->text, "decresc")))
            loudness = SPZ_DYNAMIC_NONE;
    }
    return loudness;
}

static spz_dynamic loudness_of(const spz_movement *movement, const spz_sections *sections, const spz_entry *entry)
{
    if (entry->leader >= sections->group_count || !sections->groups[entry->leader].line_count)
        return SPZ_DYNAMIC_NONE;
    size_t part = sections->lines[sections->groups[entry->leader].lines[0]].part;
    return part < movement->part_count ? loudness_at(&movement->parts[part], entry->onset) : SPZ_DYNAMIC_NONE;
}

static const spz_entry *first_entry(const spz_passage *passage, bool answer)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].answer == answer)
            return &passage->entries[i];
    return NULL;
}

/* 'Trio' stands over a bar at or before it, and no later bar is marked as something else: a word for a tempo ends it. */
static bool is_in_trio(const spz_movement *movement, size_t bar)
{
    size_t trio = bar + 1;
    for (size_t i = 0; i <= bar && i < movement->bar_count; i++)
        trio = movement->bars[i].trio ? i : trio;
    size_t length;
    if (trio > bar)
        return false;
    const char *there = tempo_at(movement, movement->bars[trio].onset + movement->bars[trio].length, &length);
    return there == tempo_at(movement, movement->bars[bar].onset, &length);
}

/* Has the part the entry's first note, at whatever octave? */
static bool begins_entry(const Part *part, const spz_entry *entry)
{
    for (size_t i = 0; i < part->note_count && part->notes[i].onset <= entry->onset; i++) {
        const Note *note = &part->notes[i];
        if (note->onset == entry->onset && note->midi >= 0 && note->duration > 0 && !(note->flags & NOTE_TIE_STOP) && (note->midi - entry->first.midi) % 12 == 0)
            return true;
    }
    return false;
}

static bool is_wind_part(const spz_sections *sections, size_t part)
{
    for (size_t i = 0; i < sections->line_count; i++)
        if (sections->lines[i].part == part)
            return sections->lines[i].family == SPZ_FAMILY_WOODWIND || sections->lines[i].family == SPZ_FAMILY_BRASS;
    return false;
}

/* Without what an editor adds in brackets. */
static size_t name_length(const char *name)
{
    size_t length = strcspn(name, "[(");
    while (length && name[length - 1] == ' ')
        length--;
    return length ? length : strlen(name);
}

size_t citation_wind_parts(const spz_movement *movement, const spz_sections *sections, const spz_entry *entry, size_t *parts, size_t most)
{
    size_t count = 0;
    for (size_t part = 0; part < movement->part_count && (entry->players & SPZ_WIND_PLAYERS) && entry->first.midi >= 0; part++) {
        if (!is_wind_part(sections, part) || !begins_entry(&movement->parts[part], entry) || !*movement->parts[part].name)
            continue;
        if (count < most)
            parts[count] = part;
        count++;
    }
    return count;
}

void citation_part_name(const spz_movement *movement, size_t part, char out[CONTEXT_TEXT])
{
    put_words(out, movement->parts[part].name, name_length(movement->parts[part].name));
}

/* Which of the winds have it, as the file names them, where they are few. */
static void find_winds(const spz_movement *movement, const spz_sections *sections, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    for (size_t i = 0; i < passage->entry_count; i++) {
        if (!(passage->entries[i].players & SPZ_WIND_PLAYERS) || passage->entries[i].first.midi < 0)
            continue;
        size_t parts[WINDS_MOST], count = citation_wind_parts(movement, sections, &passage->entries[i], parts, WINDS_MOST);
        for (size_t k = 0; k < count && count <= WINDS_MOST; k++)
            citation_part_name(movement, parts[k], citation->winds[citation->wind_count++]);
        return;
    }
}

void citation_surround(const spz_movement *movement, const spz_sections *sections, Citation *citation)
{
    const spz_passage *passage = citation->passage;
    size_t length;
    const char *words = tempo_at(movement, passage->onset, &length);
    put_words(citation->tempo, words, length);
    citation->trio = is_in_trio(movement, passage->first);
    find_key(movement, citation);
    const spz_entry *call = first_entry(passage, false), *answer = first_entry(passage, true);
    citation->loudness = call ? loudness_of(movement, sections, call) : SPZ_DYNAMIC_NONE;
    citation->answer_loudness = answer ? loudness_of(movement, sections, answer) : SPZ_DYNAMIC_NONE;
    find_winds(movement, sections, citation);
}

/* 'tc4' is no heading: one short word with a figure in it. */
static bool is_code(const char *title)
{
    return strlen(title) < 8 && !strchr(title, ' ') && strpbrk(title, "0123456789");
}

/* The file's name without its folder and ending. */
static void put_stem(char out[HEADING_TEXT], const char *name)
{
    const char *dot = strrchr(name, '.');
    snprintf(out, HEADING_TEXT, "%.*s", dot && dot > name ? (int)(dot - name) : (int)strlen(name), name);
}

/* The title, but for what only counts movements or is a code: then with the tempo word, or the file's name. */
void movement_heading(const spz_movement *movement, char out[HEADING_TEXT])
{
    const char *title = movement->title, *work = movement->work;
    size_t own = strlen(work), length;
    const char *behind = own && !strncmp(title, work, own) && !strncmp(title + own, ": ", 2) ? title + own + 2 : title;
    bool counted = own && behind != title && strspn(behind, "0123456789IVX") == strlen(behind);
    const char *words = movement->bar_count ? tempo_at(movement, movement->bars[0].onset, &length) : (length = 0, "");
    if (!*title || (is_code(title) && !own))
        put_stem(out, movement_score_name(movement));
    else if (counted && length)
        snprintf(out, HEADING_TEXT, "%s. %.*s", title, (int)length, words);
    else
        snprintf(out, HEADING_TEXT, "%s", title);
    if (is_code(out) && !is_code(title) && *title)
        snprintf(out, HEADING_TEXT, "%s", title);
}
