/* Reads what stands in braces, and signs that stand for whole bars. */
#include "notation_cursor.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int repetitions(const char *sign)
{
    return *sign == '*' ? atoi(sign + 1) : *sign ? 0 : 1;
}

/* Runs the whole-bar sign that 'place' sets, in as many bars as it says. */
static bool fill_bars(struct cursor *c, int times, bool (*place)(struct cursor *, const void *), const void *what)
{
    if (times < 1 || times > LONGEST_REPETITION)
        return bar_fail(c, "a bar cannot be repeated so often");
    for (int i = 0; i < times; i++) {
        if (i && (!close_bar(c) || !open_bar(c)))
            return false;
        c->bar->lead = c->pending;
        c->pending = NULL;
        if (!place(c, what))
            return false;
    }
    return true;
}

static bool place_rest(struct cursor *c, const void *unused)
{
    (void)unused;
    struct event rest = {.kind = WHOLE_REST, .line = c->line, .before = c->bar->lead};
    c->bar->lead = NULL;
    return score_add_event(c->score, &c->bar->voices[c->voice], &rest);
}

static bool place_same(struct cursor *c, const void *unused)
{
    (void)unused;
    c->bar->same_again = true;
    return c->staff->count > 1 || bar_fail(c, "'%%' has no bar before it");
}

bool bars_of_rest(struct cursor *c, const char *sign)
{
    return fill_bars(c, repetitions(sign), place_rest, NULL);
}

bool bars_again(struct cursor *c, const char *sign)
{
    return fill_bars(c, repetitions(sign), place_same, NULL);
}

struct borrowing {
    const char *part;
    int octave;
};

static bool place_borrowed(struct cursor *c, const void *what)
{
    const struct borrowing *borrowing = what;
    c->bar->with_part = borrowing->part;
    c->bar->with_octave = borrowing->octave;
    return true;
}

/* '{col Violin I -1}*4': an octave may stand behind the name */
static bool read_borrowing(struct cursor *c, const char *text, const char *behind)
{
    struct borrowing borrowing = {text, 0};
    const char *last = strrchr(text, ' ');
    if (last && (last[1] == '-' || last[1] == '+') && isdigit((unsigned char)last[2])) {
        borrowing.octave = atoi(last + 1);
        borrowing.part = score_text(c->score, text, (size_t)(last - text));
    }
    return borrowing.part && fill_bars(c, repetitions(behind), place_borrowed, &borrowing);
}

static bool set_length(struct cursor *c, const char *value)
{
    int count, unit;
    struct frame *frame = score_frame(c->score, bar_index(c));
    if (!frame)
        return false;
    if (sscanf(value, "%d/%d", &count, &unit) != 2 || count < 1 || count > 64 || unit < 1 || unit > 64 || (unit & (unit - 1)))
        return bar_fail(c, "'%s' is no length of a bar", value);
    frame->length = (long)CROTCHET * 4 / unit * count;
    return true;
}

/* Marks that hold for all parts at a bar. */
static bool read_frame_mark(struct cursor *c, const char *name, const char *value)
{
    int index = bar_index(c);
    struct frame *frame = score_frame(c->score, index);
    if (!frame)
        return false;
    if (!at_bar_start(c))
        return bar_fail(c, "{%s} stands inside the bar", name);
    if (strcmp(name, "time") == 0)
        return score_set_time(c->score, c->line, index, value);
    if (strcmp(name, "key") == 0)
        return score_set_key(c->score, c->line, index, value);
    if (strcmp(name, "length") == 0)
        return set_length(c, value);
    if (strcmp(name, "implicit") == 0)
        frame->implicit = true;
    else
        frame->number = value;
    return true;
}

static bool read_tempo(struct cursor *c, const char *value)
{
    if (!at_bar_start(c))
        return score_set_tempo(c->score, c->line, &c->pending, value);
    struct frame *frame = score_frame(c->score, bar_index(c));
    return frame && score_set_tempo(c->score, c->line, &frame->directions, value);
}

static bool among(const char *name, const char *const *names)
{
    for (; *names; names++)
        if (strcmp(name, *names) == 0)
            return true;
    return false;
}

bool read_brace(struct cursor *c, const char *token)
{
    static const char *const jumps[] = {"segno", "coda", "to coda", "fine", "d.c.", "d.s.", NULL};
    static const char *const frame_marks[] = {"time", "key", "length", "implicit", "bar", NULL};
    const char *end = strchr(token, '}');
    char *body = end ? score_text(c->score, token + 1, (size_t)(end - token - 1)) : NULL;
    if (!end)
        return bar_fail(c, "'%s' is not closed", token);
    if (!body)
        return false;
    if (among(body, jumps))
        return add_pending(c, JUMP, body, strlen(body));
    char *value = strchr(body, ' ');
    if (value)
        *value++ = '\0';
    else
        value = body + strlen(body);
    if (strcmp(body, "col") == 0)
        return read_borrowing(c, value, end + 1);
    if (strcmp(body, "tempo") == 0)
        return read_tempo(c, value);
    if (strcmp(body, "page") == 0)
        return add_pending(c, PAGE, value, strlen(value));
    if (strcmp(body, "clef") == 0)
        return add_pending(c, CLEF, value, strlen(value));
    if (among(body, frame_marks))
        return read_frame_mark(c, body, value);
    return bar_fail(c, "'%s' is not understood", token);
}
