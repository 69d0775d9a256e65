/* Reads one line of music into bars, voices and events. */
#include "notation_cursor.h"

#include <ctype.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { VALUE_CROTCHET = 3, VALUE_QUAVER = 4 };
static const char value_letters[] = "dwhqestz";
static const char mark_signs[] = "'!>^_@$nv";

int bar_index(const struct cursor *c)
{
    return c->bar ? c->staff->count - 1 : c->staff->count;
}

bool bar_fail(const struct cursor *c, const char *format, ...)
{
    char text[200], label[32];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    score_bar_label(c->score, bar_index(c), label, sizeof label);
    return score_fail(c->score, c->line, "%s, bar %s: %s", c->part->name, label, text);
}

struct bar *score_add_bar(struct score *score, struct staff *staff, int line)
{
    if (staff->count == staff->capacity) {
        int capacity = staff->capacity ? staff->capacity * 2 : 16;
        struct bar *bars = score_alloc(score, (size_t)capacity * sizeof *bars);
        if (!bars)
            return NULL;
        if (staff->count)
            memcpy(bars, staff->bars, (size_t)staff->count * sizeof *bars);
        staff->bars = bars;
        staff->capacity = capacity;
    }
    struct bar *bar = &staff->bars[staff->count++];
    bar->voice_count = 1;
    bar->line = line;
    return score_frame(score, staff->count - 1) ? bar : NULL;
}

bool score_add_event(struct score *score, struct voice *voice, const struct event *event)
{
    if (voice->count == voice->capacity) {
        int capacity = voice->capacity ? voice->capacity * 2 : 8;
        struct event **events = score_alloc(score, (size_t)capacity * sizeof *events);
        if (!events)
            return false;
        if (voice->count)
            memcpy(events, voice->events, (size_t)voice->count * sizeof *events);
        voice->events = events;
        voice->capacity = capacity;
    }
    struct event *copy = score_alloc(score, sizeof *copy);
    if (!copy)
        return false;
    *copy = *event;
    voice->events[voice->count++] = copy;
    return true;
}

static void restart_value(struct cursor *c)
{
    c->value = VALUE_CROTCHET;
    c->dots = 0;
}

bool open_bar(struct cursor *c)
{
    if (c->bar)
        return true;
    c->bar = score_add_bar(c->score, c->staff, c->line);
    c->voice = 0;
    return c->bar != NULL;
}

/* Marks that are still waiting for a note go behind the last one. */
static void leave_voice(struct cursor *c)
{
    struct direction **tail = &c->bar->voices[c->voice].after;
    while (*tail)
        tail = &(*tail)->next;
    *tail = c->pending;
    c->pending = NULL;
}

bool close_bar(struct cursor *c)
{
    if (!c->bar)
        return true;
    if (c->actual)
        return bar_fail(c, "a tuplet is not closed");
    if (c->pair_left)
        return bar_fail(c, "a tremolo between two notes lacks the second");
    leave_voice(c);
    bool borrowed = c->bar->same_again || c->bar->with_part;
    if (borrowed && (c->bar->voices[0].count || c->bar->voice_count > 1))
        return bar_fail(c, "a bar that repeats another has notes of its own");
    if (!borrowed && !c->bar->voices[0].count)
        return bar_fail(c, "nothing in the bar");
    c->bar = NULL;
    return true;
}

static bool read_ending(struct cursor *c, const char *sign)
{
    size_t length = strspn(sign, "0123456789,");
    if (!length || sign[length] != '.')
        return bar_fail(c, "barline '%s' is not understood", sign);
    struct frame *frame = score_frame(c->score, c->staff->count);
    if (!frame)
        return false;
    const char *ending = score_text(c->score, sign, length);
    frame->ending = ending;
    return ending != NULL;
}

static bool read_barline(struct cursor *c, const char *token)
{
    const char *sign = token;
    bool end = *sign == ':', had_bar = c->bar != NULL;
    sign += end ? 2 : 1;
    if (!close_bar(c))
        return false;
    if (!had_bar && (end || *sign == '|' || *sign == ']'))
        return bar_fail(c, "barline '%s' with no bar before it", token);
    struct frame *closed = had_bar ? score_frame(c->score, c->staff->count - 1) : NULL;
    if (end && closed)
        closed->repeat_end = true;
    switch (*sign) {
    case '\0':
        return true;
    case '|':
        closed->barline = "light-light";
        return true;
    case ']':
        closed->barline = "light-heavy";
        return true;
    case '*':
        if (end && closed)
            closed->repeat_times = atoi(sign + 1);
        return true;
    case ':': {
        struct frame *next = score_frame(c->score, c->staff->count);
        if (next)
            next->repeat_start = true;
        return next != NULL;
    }
    default:
        return read_ending(c, sign);
    }
}

/* Reads 'q.' at *at; returns false with a message if there is none. */
static bool read_value(struct cursor *c, const char **at, int *value, int *dots)
{
    const char *letter = **at ? strchr(value_letters, **at) : NULL;
    if (!letter)
        return bar_fail(c, "':%s' is no note value", *at);
    *value = (int)(letter - value_letters);
    *dots = 0;
    for (++*at; **at == '.'; ++*at)
        ++*dots;
    return true;
}

static bool read_pitch(struct cursor *c, const char **at, struct pitch *pitch)
{
    const char *text = *at;
    if (*text < 'a' || *text > 'g')
        return bar_fail(c, "'%s' is no note", text);
    *pitch = (struct pitch){.step = (char)(*text++ - 'a' + 'A')};
    for (; *text == '#' || *text == 'b' || *text == 'n'; text++) {
        pitch->alter += *text == '#' ? 1 : *text == 'b' ? -1 : 0;
        pitch->show_natural |= *text == 'n';
    }
    if (!isdigit((unsigned char)*text))
        return bar_fail(c, "'%s' lacks its octave", *at);
    if (pitch->alter < -2 || pitch->alter > 2)
        return bar_fail(c, "'%s' has too many accidentals", *at);
    pitch->octave = *text++ - '0';
    *at = text;
    return true;
}

static bool read_pitches(struct cursor *c, const char **at, struct event *event)
{
    do {
        if (event->pitch_count == MOST_PITCHES)
            return bar_fail(c, "a chord of more than %d notes", MOST_PITCHES);
        if (event->pitch_count)
            ++*at;
        if (!read_pitch(c, at, &event->pitches[event->pitch_count++]))
            return false;
    } while (**at == '+');
    return true;
}

static bool read_strokes(struct cursor *c, const char **at, int *strokes)
{
    *strokes = (*at)[1] - '0';
    if (*strokes < 1 || *strokes > 4)
        return bar_fail(c, "a tremolo has from one to four strokes");
    *at += 2;
    return true;
}

/* What stands behind a note: its value, ties, slurs, articulation, tremolo and repetition. */
static bool read_suffixes(struct cursor *c, const char *at, struct event *event, int *times)
{
    while (*at) {
        size_t marks = strlen(event->marks);
        if (*at == ':') {
            at++;
            if (!read_value(c, &at, &event->value, &event->dots))
                return false;
        } else if (*at == '=' || *at == '&') {
            if (!read_strokes(c, &at, *at == '=' ? &event->tremolo : &event->pair_tremolo))
                return false;
        } else if (*at == '*') {
            char *end;
            *times = (int)strtol(at + 1, &end, 10);
            if (*times < 1 || *times > LONGEST_REPETITION)
                return bar_fail(c, "'%s' is no number of repetitions", at);
            at = end;
        } else if (strchr(mark_signs, *at) && marks + 1 < sizeof event->marks) {
            event->marks[marks] = *at++;
        } else if (*at == '~' || *at == '(' || *at == ')') {
            event->tie |= *at == '~';
            event->slur_start |= *at == '(';
            event->slur_stop |= *at == ')';
            at++;
        } else {
            return bar_fail(c, "'%s' behind a note is not understood", at);
        }
    }
    return true;
}

static bool set_ticks(struct cursor *c, struct event *event)
{
    long ticks = (long)CROTCHET * 8 >> event->value, part = ticks;
    for (int dot = 0; dot < event->dots; dot++) {
        if (part % 2)
            return bar_fail(c, "too many dots");
        part /= 2;
        ticks += part;
    }
    if (event->actual) {
        if (ticks * event->normal % event->actual)
            return bar_fail(c, "a tuplet of %d is too fine for this notation", event->actual);
        ticks = ticks * event->normal / event->actual;
    }
    event->ticks = ticks;
    return true;
}

/* The second note of a tremolo pair is marked; both are printed with twice their sounding value. */
static void mark_pair(struct cursor *c, struct event *event)
{
    if (event->pair_tremolo) {
        c->pair_left = event->pair_tremolo;
    } else if (c->pair_left) {
        event->pair_tremolo = c->pair_left;
        event->pair_end = 1;
        c->pair_left = 0;
    }
}

static bool add_sounding(struct cursor *c, struct event *event, int times)
{
    struct voice *voice = &c->bar->voices[c->voice];
    event->actual = c->actual;
    event->normal = c->normal;
    event->before = c->pending;
    event->line = c->line;
    c->pending = NULL;
    c->value = event->value;
    c->dots = event->dots;
    if (!set_ticks(c, event))
        return false;
    mark_pair(c, event);
    for (int i = 0; i < times; i++) {
        event->tuplet_start = c->tuplet_opens;
        c->tuplet_opens = false;
        if (!score_add_event(c->score, voice, event))
            return false;
        event->before = NULL;
        event->slur_start = false;
    }
    return true;
}

static bool read_note(struct cursor *c, const char *token)
{
    struct event event = {.kind = NOTE, .value = c->value, .dots = c->dots};
    int times = 1;
    return read_pitches(c, &token, &event) && read_suffixes(c, token, &event, &times) && add_sounding(c, &event, times);
}

static bool read_rest(struct cursor *c, const char *token)
{
    struct event event = {.kind = *token == 'r' ? REST : GAP, .value = c->value, .dots = c->dots};
    int times = 1;
    return read_suffixes(c, token + 1, &event, &times) && add_sounding(c, &event, times);
}

static bool read_grace(struct cursor *c, const char *token)
{
    struct event event = {.kind = NOTE, .value = VALUE_QUAVER, .grace = true, .before = c->pending, .line = c->line};
    int times = 1;
    token++;
    if (!read_pitches(c, &token, &event) || !read_suffixes(c, token, &event, &times))
        return false;
    c->pending = NULL;
    return score_add_event(c->score, &c->bar->voices[c->voice], &event);
}

static bool open_tuplet(struct cursor *c, const char *token)
{
    static const int usual[10] = {0, 0, 3, 2, 3, 4, 4, 4, 6, 8};
    int actual = 0, normal = 0;
    if (sscanf(token, "(%d:%d", &actual, &normal) < 1 || actual < 2 || actual > 63)
        return bar_fail(c, "'%s' is no tuplet", token);
    if (!normal && actual < 10)
        normal = usual[actual];
    if (normal < 1 || normal > 64)
        return bar_fail(c, "the tuplet '%s' needs its ratio, as in (5:4", token);
    if (c->actual)
        return bar_fail(c, "a tuplet inside a tuplet");
    c->actual = actual;
    c->normal = normal;
    c->tuplet_opens = true;
    return true;
}

static bool close_tuplet(struct cursor *c)
{
    struct voice *voice = &c->bar->voices[c->voice];
    if (!c->actual || c->tuplet_opens)
        return bar_fail(c, "')' closes no tuplet");
    voice->events[voice->count - 1]->tuplet_stop = true;
    c->actual = c->normal = 0;
    return true;
}

static bool next_voice(struct cursor *c)
{
    if (c->bar->voice_count == MOST_VOICES)
        return bar_fail(c, "more than %d voices on a staff", MOST_VOICES);
    if (c->actual)
        return bar_fail(c, "a tuplet is not closed");
    leave_voice(c);
    c->voice = c->bar->voice_count++;
    restart_value(c);
    return true;
}

bool add_pending(struct cursor *c, enum direction_kind kind, const char *text, size_t length)
{
    struct direction direction = {.kind = kind, .text = score_text(c->score, text, length)};
    return direction.text && score_add_direction(c->score, &c->pending, &direction);
}

bool at_bar_start(const struct cursor *c)
{
    return c->voice == 0 && c->bar->voices[0].count == 0 && !c->bar->same_again && !c->bar->with_part;
}

static bool read_angle(struct cursor *c, const char *token, size_t length)
{
    static const char *const known[] = {"p", "pp", "ppp", "pppp", "f", "ff", "fff", "ffff", "mp", "mf", "sf", "sfp", "sfpp", "fp", "rf", "rfz", "sfz", "sffz", "fz", "n", "pf", "sfzp", NULL};
    if (length == 1)
        return add_pending(c, HAIRPIN, "crescendo", strlen("crescendo"));
    for (int i = 0; known[i]; i++)
        if (strlen(known[i]) == length - 2 && token[length - 1] == '>' && memcmp(known[i], token + 1, length - 2) == 0)
            return add_pending(c, DYNAMICS, token + 1, length - 2);
    return bar_fail(c, "'%s' is no dynamic mark", token);
}

static bool read_letter(struct cursor *c, const char *token, size_t length)
{
    if (!at_bar_start(c))
        return bar_fail(c, "a rehearsal letter stands inside the bar");
    struct direction letter = {.kind = REHEARSAL, .text = score_text(c->score, token + 1, length - 2)};
    struct frame *frame = score_frame(c->score, bar_index(c));
    return letter.text && frame && score_add_direction(c->score, &frame->directions, &letter);
}

static bool read_sticky(struct cursor *c, const char *token)
{
    token++;
    if (!read_value(c, &token, &c->value, &c->dots))
        return false;
    return !*token || bar_fail(c, "'%s' behind a note value is not understood", token);
}

static bool read_token(struct cursor *c, const char *token, size_t length)
{
    if (*token == '|' || (*token == ':' && token[1] == '|'))
        return read_barline(c, token);
    if (!open_bar(c))
        return false;
    switch (*token) {
    case '"':
        return add_pending(c, WORDS, token + 1, length - 2);
    case '<':
        return read_angle(c, token, length);
    case '>':
        return length == 1 ? add_pending(c, HAIRPIN, "diminuendo", strlen("diminuendo")) : bar_fail(c, "'%s' is not understood", token);
    case '!':
        return length == 1 ? add_pending(c, HAIRPIN, "stop", strlen("stop")) : bar_fail(c, "'%s' is not understood", token);
    case '[':
        return read_letter(c, token, length);
    case '{':
        return read_brace(c, token);
    case ':':
        return read_sticky(c, token);
    case '(':
        return open_tuplet(c, token);
    case ')':
        return close_tuplet(c);
    case '/':
        return strcmp(token, "//") == 0 ? next_voice(c) : bar_fail(c, "'%s' is not understood", token);
    case '%':
        return bars_again(c, token + 1);
    case 'R':
        return bars_of_rest(c, token + 1);
    case 'r':
    case 'x':
        return read_rest(c, token);
    case '`':
        return read_grace(c, token);
    default:
        return read_note(c, token);
    }
}

/* Bytes of the token at text: words, letters and braces may hold blanks. 0 if a closing sign is missing. */
static size_t token_length(const char *text)
{
    const char close = *text == '"' ? '"' : *text == '[' ? ']' : *text == '{' ? '}' : '\0';
    if (!close)
        return strcspn(text, " \t");
    const char *end = strchr(text + 1, close);
    if (!end)
        return 0;
    return (size_t)(end - text) + 1 + (close == '}' ? strcspn(end + 1, " \t") : 0);
}

bool score_read_music(struct score *score, struct part *part, int staff, const char *text, int line)
{
    struct cursor c = {.score = score, .part = part, .staff = &part->staves[staff], .line = line};
    restart_value(&c);
    for (text += strspn(text, " \t"); *text; text += strspn(text, " \t")) {
        size_t length = token_length(text);
        if (!length)
            return bar_fail(&c, "'%.20s' is not closed", text);
        const char *token = score_text(score, text, length);
        if (!token || !read_token(&c, token, length))
            return false;
        text += length;
    }
    return close_bar(&c);
}
