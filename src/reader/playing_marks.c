/* playing_marks.c - what is in force at each note: the dynamic, pizzicato, mutes. Marks count for their staff, or for the whole part when
 * they name none, from where they stand until the next of their kind. */
#include "reader/playing_marks.h"
#include "support/text/ascii.h"
#include <string.h>

typedef struct Force {
    uint8_t dynamic[LIMIT_STAVES + 1];
    bool pizzicato[LIMIT_STAVES + 1], muted[LIMIT_STAVES + 1];
} Force;

/* Words in the languages of the sections' names (common practice). The last word that is found counts: 'pizz. (div. arco)'. */
static const struct {
    const char *word;
    enum { WORD_PIZZICATO, WORD_ARCO, WORD_MUTE_ON, WORD_MUTE_OFF } meaning;
} playing_words[] = {
    {"pizz", WORD_PIZZICATO},       {"arco", WORD_ARCO},           {"mit bogen", WORD_ARCO},        {"bogen", WORD_ARCO},
    {"archet", WORD_ARCO},         {"gestrichen", WORD_ARCO},      {"col legno", WORD_ARCO},
    {"gezupft", WORD_PIZZICATO},    {"pinc\xc3\xa9", WORD_PIZZICATO}, {"chitarra", WORD_PIZZICATO},          {"con sord", WORD_MUTE_ON},    {"c. sord", WORD_MUTE_ON},       {"mit d\xc3\xa4mpf", WORD_MUTE_ON},
    {"sourdine", WORD_MUTE_ON},     {"with mute", WORD_MUTE_ON},   {"muted", WORD_MUTE_ON},         {"con sordina", WORD_MUTE_ON},
    {"senza sord", WORD_MUTE_OFF},  {"s. sord", WORD_MUTE_OFF},    {"ohne d\xc3\xa4mpf", WORD_MUTE_OFF},
    {"sans sourdine", WORD_MUTE_OFF}, {"tez les sourdine", WORD_MUTE_OFF}, {"via sord", WORD_MUTE_OFF}, {"levate i sord", WORD_MUTE_OFF},
    {"mpfer ab", WORD_MUTE_OFF},    {"mpfer weg", WORD_MUTE_OFF},  {"sin sordina", WORD_MUTE_OFF},  {"without mute", WORD_MUTE_OFF},
    {"mutes off", WORD_MUTE_OFF},
};

static void set_bool(bool *of_staff, int staff, bool value)
{
    if (staff != 0)
        of_staff[staff] = value;
    else
        for (int i = 0; i <= LIMIT_STAVES; i++)
            of_staff[i] = value;
}

static void set_dynamic(Force *force, int staff, int value)
{
    if (value == DYNAMIC_NONE)
        return;
    if (staff != 0)
        force->dynamic[staff] = (uint8_t)value;
    else
        memset(force->dynamic, value, sizeof force->dynamic);
}

/* Where `word` ends in `text` at its last occurrence; -1 when it isn't there. */
static long last_end(const char *text, const char *word)
{
    long last = -1;
    for (const char *at = strstr(text, word); at; at = strstr(at + 1, word))
        last = at - text + (long)strlen(word);
    return last;
}

static void words_in_force(Force *force, int staff, const char *words)
{
    char text[256];
    size_t length = 0;
    for (; words[length] && length < sizeof text - 1; length++)
        text[length] = (char)ascii_lower((unsigned char)words[length]);
    text[length] = '\0';
    /* two questions, each answered by the last word that speaks of it; of two that end together the longer is meant ('sans sourdine') */
    long bow = -1, mute = -1;
    bool pizzicato = false, muted = false;
    for (size_t i = 0; i < sizeof playing_words / sizeof *playing_words; i++) {
        long end = last_end(text, playing_words[i].word);
        if (end < 0)
            continue;
        if (playing_words[i].meaning <= WORD_ARCO && end > bow) {
            bow = end;
            pizzicato = playing_words[i].meaning == WORD_PIZZICATO;
        } else if (playing_words[i].meaning > WORD_ARCO && end >= mute) {
            mute = end;
            muted = playing_words[i].meaning == WORD_MUTE_ON;
        }
    }
    if (bow >= 0)
        set_bool(force->pizzicato, staff, pizzicato);
    if (mute >= 0)
        set_bool(force->muted, staff, muted);
}

static void take_mark(Force *force, const Direction *mark)
{
    if (mark->kind == DIRECTION_DYNAMIC)
        set_dynamic(force, mark->staff, mark->value);
    else if (mark->kind == DIRECTION_WORDS)
        words_in_force(force, mark->staff, mark->text);
    else if (mark->kind == DIRECTION_PLAYING)
        set_bool(force->pizzicato, mark->staff, mark->value == PLAYING_PIZZICATO);
}

/* Scores forget 'arco'. What can only be bowed ends the pizzicato: a slur to come, a tremolo, a tie; not
 * notes repeated by strokes. */
static bool bowed(const Note *note)
{
    return (note->flags & (NOTE_SLUR_START | NOTE_TIE_START)) != 0 || trembles(note->flags);
}

void playing_marks_apply(Part *part)
{
    Force force;
    size_t next = 0;
    memset(&force, 0, sizeof force);
    for (size_t i = 0; i < part->note_count; i++) {
        Note *note = &part->notes[i];
        for (; next < part->direction_count && part->directions[next].onset <= note->onset; next++)
            take_mark(&force, &part->directions[next]);
        if (force.pizzicato[note->staff] && bowed(note))
            set_bool(force.pizzicato, note->staff, false);
        note->dynamic = force.dynamic[note->staff] & 15u;
        note->flags |= force.pizzicato[note->staff] ? NOTE_PIZZICATO : 0u;
        note->flags |= force.muted[note->staff] ? NOTE_MUTED : 0u;
    }
}
