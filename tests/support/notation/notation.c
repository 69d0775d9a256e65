/* Reads the lines of a notation text: headers, parts, blocks. The music itself is read by notation_bar.c. */
#include "notation.h"
#include "notation_score.h"

#include <ctype.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct pool_item {
    struct pool_item *next;
    max_align_t data[];
};

/* Where the reading stands. */
struct reading {
    struct score *score;
    struct part *part;
    int staff, line, block_start, block_line;
    bool block_has_music;
};

void *score_alloc(struct score *score, size_t size)
{
    struct pool_item *item = calloc(1, sizeof *item + size);
    if (!item) {
        score_fail(score, 0, "out of memory");
        return NULL;
    }
    item->next = score->pool;
    score->pool = item;
    return item->data;
}

char *score_text(struct score *score, const char *start, size_t length)
{
    char *copy = score_alloc(score, length + 1);
    if (copy)
        memcpy(copy, start, length);
    return copy;
}

/* Keeps the first fault only; returns false so that callers can end with it. */
bool score_fail(struct score *score, int line, const char *format, ...)
{
    if (score->failed)
        return false;
    score->failed = true;
    int used = 0;
    if (line > 0)
        used = snprintf(score->error, score->error_size, "line %d: ", line);
    if (used >= 0 && (size_t)used < score->error_size) {
        va_list arguments;
        va_start(arguments, format);
        vsnprintf(score->error + used, score->error_size - (size_t)used, format, arguments);
        va_end(arguments);
    }
    return false;
}

struct frame *score_frame(struct score *score, int index)
{
    if (index >= score->frame_capacity) {
        int capacity = (index + 1) * 2;
        struct frame *frames = score_alloc(score, (size_t)capacity * sizeof *frames);
        if (!frames)
            return NULL;
        if (score->frame_count)
            memcpy(frames, score->frames, (size_t)score->frame_count * sizeof *frames);
        score->frames = frames;
        score->frame_capacity = capacity;
    }
    if (index >= score->frame_count)
        score->frame_count = index + 1;
    return &score->frames[index];
}

static bool all_digits(const char *text)
{
    return *text && text[strspn(text, "0123456789")] == '\0';
}

const char *score_bar_label(const struct score *score, int index, char *buffer, size_t size)
{
    int number = 0, uncounted = 0;
    snprintf(buffer, size, "1");
    for (int i = 0; i <= index; i++) {
        const struct frame *frame = i < score->frame_count ? &score->frames[i] : NULL;
        if (frame && frame->number) {
            if (all_digits(frame->number))
                number = atoi(frame->number);
            snprintf(buffer, size, "%s", frame->number);
        } else if (frame && frame->implicit) {
            if (i == 0)
                snprintf(buffer, size, "0");
            else
                snprintf(buffer, size, "X%d", ++uncounted);
        } else {
            snprintf(buffer, size, "%d", ++number);
        }
    }
    return buffer;
}

static bool contains_any(const char *name, const char *const *words)
{
    for (; *words; words++)
        if (strstr(name, *words))
            return true;
    return false;
}

/* A clef by the name, for the sections of an orchestra; anything unknown reads the treble clef. */
static const char *usual_clef(const char *name)
{
    static const char *const treble[] = {"bass clar", "bassklar", "basset", "clarinetto basso", "alto fl", "alto sax", NULL};
    static const char *const bass[] = {"cell", "bass", "fagott", "fagot", "timpan", "timbal", "pauken", "posaun", "trombon", "tuba", "baß", "violone", NULL};
    static const char *const alto[] = {"viola", "viole ", "bratsch", "altos", "altviol", "alto ", NULL};
    char lower[80] = "";
    for (size_t i = 0; i + 1 < sizeof lower && name[i]; i++)
        lower[i] = (char)tolower((unsigned char)name[i]);
    if (contains_any(lower, treble))
        return "treble";
    if (contains_any(lower, bass))
        return "bass";
    if (contains_any(lower, alto) || strcmp(lower, "viole") == 0 || strcmp(lower, "alto") == 0)
        return "alto";
    return "treble";
}

struct part *score_part(struct score *score, const char *name, size_t length, bool create)
{
    for (int i = 0; i < score->part_count; i++)
        if (strlen(score->parts[i].name) == length && memcmp(score->parts[i].name, name, length) == 0)
            return &score->parts[i];
    if (!create)
        return NULL;
    if (score->part_count == score->part_capacity) {
        score_fail(score, 0, "more than %d parts", score->part_capacity);
        return NULL;
    }
    struct part *part = &score->parts[score->part_count];
    part->name = score_text(score, name, length);
    if (!part->name)
        return NULL;
    part->group = score->group;
    part->staff_count = 1;
    for (int i = 0; i < MOST_STAVES; i++)
        part->clefs[i] = usual_clef(part->name);
    score->part_count++;
    return part;
}

bool score_add_direction(struct score *score, struct direction **list, const struct direction *direction)
{
    for (; *list; list = &(*list)->next)
        if ((*list)->kind == direction->kind && strcmp((*list)->text, direction->text) == 0)
            return true;
    *list = score_alloc(score, sizeof **list);
    if (!*list)
        return false;
    **list = *direction;
    (*list)->next = NULL;
    return true;
}

bool score_set_time(struct score *score, int line, int index, const char *text)
{
    int beats = 0, unit = 0;
    char more;
    struct frame *frame = score_frame(score, index);
    if (!frame)
        return false;
    if (sscanf(text, "%d/%d %c", &beats, &unit, &more) != 2 || beats < 1 || beats > 64 || unit < 1 || unit > 64 || (unit & (unit - 1)))
        return score_fail(score, line, "'%s' is no time signature", text);
    if (frame->unit && (frame->beats != beats || frame->unit != unit))
        return score_fail(score, line, "two time signatures in one bar: %d/%d and %d/%d", frame->beats, frame->unit, beats, unit);
    frame->beats = beats;
    frame->unit = unit;
    return true;
}

bool score_set_key(struct score *score, int line, int index, const char *text)
{
    char mode[8] = "", more;
    struct frame *frame = score_frame(score, index);
    if (!frame)
        return false;
    int found = sscanf(text, "%d %7s %c", &frame->key, mode, &more);
    if (found < 1 || found > 2 || frame->key < -7 || frame->key > 7 || (found == 2 && strcmp(mode, "minor") && strcmp(mode, "major")))
        return score_fail(score, line, "'%s' is no key: give the number of sharps, or of flats with a minus", text);
    frame->has_key = true;
    frame->minor = strcmp(mode, "minor") == 0;
    return true;
}

/* 'q.=60 Adagio', 'q=96' or words alone */
bool score_set_tempo(struct score *score, int line, struct direction **list, const char *text)
{
    struct direction tempo = {.kind = TEMPO, .text = text};
    const char *at = text, *values = "dwhqestz";
    const char *value = *at ? strchr(values, *at) : NULL;
    if (value) {
        tempo.beat_value = (int)(value - values);
        at++;
        while (*at == '.') {
            tempo.beat_dots++;
            at++;
        }
        if (*at == '=') {
            char *end;
            tempo.per_minute = strtod(at + 1, &end);
            if (end == at + 1 || tempo.per_minute < 1 || tempo.per_minute > 999)
                return score_fail(score, line, "'%s' is no tempo", text);
            while (*end == ' ')
                end++;
            tempo.text = end;
        }
    }
    const char *copy = score_text(score, tempo.text, strlen(tempo.text));
    if (!copy)
        return false;
    tempo.text = copy;
    return score_add_direction(score, list, &tempo);
}

static bool set_words(struct reading *r, enum direction_kind kind, const char *value)
{
    struct frame *frame = score_frame(r->score, r->block_start);
    struct direction direction = {.kind = kind, .text = value};
    return frame && score_add_direction(r->score, &frame->directions, &direction);
}

static bool set_pickup(struct reading *r, const char *value)
{
    int count, unit;
    struct frame *frame = score_frame(r->score, 0);
    if (!frame)
        return false;
    if (sscanf(value, "%d/%d", &count, &unit) != 2 || count < 1 || count > 64 || unit < 1 || unit > 64 || (unit & (unit - 1)))
        return score_fail(r->score, r->line, "'%s' is no length of an upbeat", value);
    frame->length = (long)CROTCHET * 4 / unit * count;
    frame->implicit = true;
    return true;
}

/* One 'key value' item behind 'part: Name;' */
static bool set_part_item(struct reading *r, struct part *part, const char *item)
{
    const char *value = strchr(item, ' ') ? strchr(item, ' ') + 1 : "";
    if (strncmp(item, "short ", 6) == 0)
        part->short_name = value;
    else if (strncmp(item, "sound ", 6) == 0)
        part->sound = value;
    else if (strcmp(item, "no key") == 0)
        part->no_key = true;
    else if (strncmp(item, "transpose ", 10) == 0)
        part->transpose = atoi(value);
    else if (strncmp(item, "staves ", 7) == 0)
        part->staff_count = atoi(value);
    else if (strncmp(item, "clef ", 5) == 0)
        for (int i = 0; i < MOST_STAVES; i++)
            part->clefs[i] = value;
    else
        return score_fail(r->score, r->line, "part %s: '%s' is not understood", part->name, item);
    if (part->staff_count < 1 || part->staff_count > MOST_STAVES)
        return score_fail(r->score, r->line, "part %s: from 1 to %d staves", part->name, MOST_STAVES);
    return true;
}

static bool declare_part(struct reading *r, const char *value)
{
    size_t length = strcspn(value, ";");
    const char *rest = value + length;
    while (length && value[length - 1] == ' ')
        length--;
    struct part *part = score_part(r->score, value, length, true);
    if (!part)
        return false;
    while (*rest) {
        rest += 1 + strspn(rest + 1, " ");
        size_t size = strcspn(rest, ";");
        const char *next = rest + size;
        while (size && rest[size - 1] == ' ')
            size--;
        const char *item = score_text(r->score, rest, size);
        if (!item || !set_part_item(r, part, item))
            return false;
        rest = next;
    }
    return true;
}

/* Brings every part to the same bar: silent parts rest through the block, others must have filled it. */
static bool close_block(struct reading *r)
{
    struct score *score = r->score;
    int end = r->block_start;
    const char *longest = "";
    for (int p = 0; p < score->part_count; p++)
        for (int s = 0; s < score->parts[p].staff_count; s++)
            if (score->parts[p].staves[s].count > end) {
                end = score->parts[p].staves[s].count;
                longest = score->parts[p].name;
            }
    for (int p = 0; p < score->part_count; p++)
        for (int s = 0; s < score->parts[p].staff_count; s++) {
            struct staff *staff = &score->parts[p].staves[s];
            if (staff->count != end && staff->count > r->block_start)
                return score_fail(score, r->block_line, "%s has %d bars in this block, %s has %d", score->parts[p].name,
                                  staff->count - r->block_start, longest, end - r->block_start);
            while (staff->count < end) {
                struct bar *bar = score_add_bar(score, staff, r->line);
                struct event rest = {.kind = WHOLE_REST, .line = r->line};
                if (!bar || !score_add_event(score, &bar->voices[0], &rest))
                    return false;
            }
        }
    r->block_start = end;
    r->block_has_music = false;
    r->block_line = r->line;
    return score_frame(score, end > 0 ? end - 1 : 0) != NULL;
}

static bool open_block(struct reading *r, const char *value)
{
    char label[32];
    if (!close_block(r))
        return false;
    score_bar_label(r->score, r->block_start, label, sizeof label);
    if (strcmp(label, value) != 0)
        return score_fail(r->score, r->line, "the next bar is %s, not %s", label, value);
    return true;
}

enum header { TITLE, WORK, MOVEMENT, COMPOSER, COMPOSED, GROUP, PART, BAR, PICKUP, TIME, KEY, TEMPO_MARK, LETTER, WORDS_ABOVE, HEADERS };
static const char *const header_names[HEADERS] = {"title", "work", "movement", "composer", "composed", "group", "part",
                                                  "bar",   "pickup", "time",   "key",      "tempo",    "letter", "words"};

static bool apply_bar_header(struct reading *r, enum header header, const char *value)
{
    if (r->block_has_music)
        return score_fail(r->score, r->line, "'%s:' stands before the music of a block; begin a new one with 'bar:' or write it inside the music",
                          header_names[header]);
    switch (header) {
    case PICKUP:
        return set_pickup(r, value);
    case TIME:
        return score_set_time(r->score, r->line, r->block_start, value);
    case KEY:
        return score_set_key(r->score, r->line, r->block_start, value);
    case TEMPO_MARK: {
        struct frame *frame = score_frame(r->score, r->block_start);
        return frame && score_set_tempo(r->score, r->line, &frame->directions, value);
    }
    case LETTER:
        return set_words(r, REHEARSAL, value);
    default:
        return set_words(r, WORDS, value);
    }
}

static bool apply_header(struct reading *r, enum header header, const char *value)
{
    struct score *score = r->score;
    switch (header) {
    case TITLE:
        score->title = value;
        return true;
    case WORK:
        score->work = value;
        return true;
    case MOVEMENT:
        score->movement = value;
        return true;
    case COMPOSER:
        score->composer = value;
        return true;
    case COMPOSED:
        score->composed = value;
        return true;
    case GROUP:
        score->group = strcmp(value, "end") == 0 ? NULL : value;
        return true;
    case PART:
        return declare_part(r, value);
    case BAR:
        return open_block(r, value);
    default:
        return apply_bar_header(r, header, value);
    }
}

static int header_at(const char *text)
{
    for (int i = 0; i < HEADERS; i++) {
        size_t length = strlen(header_names[i]);
        if (strncmp(text, header_names[i], length) == 0 && text[length] == ':' && (text[length + 1] == ' ' || text[length + 1] == '\0'))
            return i;
    }
    return -1;
}

/* Reads 'time: 4/4  key: -1': a header ends at the line's end or two blanks before another one. */
static bool read_headers(struct reading *r, const char *text)
{
    while (*text) {
        int header = header_at(text);
        const char *value = text + strlen(header_names[header]) + 1;
        value += strspn(value, " ");
        const char *end = value;
        while (*end && !(end[0] == ' ' && end[1] == ' ' && header_at(end + strspn(end, " ")) >= 0))
            end++;
        const char *next = end + strspn(end, " ");
        while (end > value && end[-1] == ' ')
            end--;
        const char *copy = score_text(r->score, value, (size_t)(end - value));
        if (!copy || !apply_header(r, (enum header)header, copy))
            return false;
        text = next;
    }
    return true;
}

/* Length of the part name that a line begins with, 0 if it goes on with the part before. */
static size_t name_length(const char *text)
{
    size_t length = strcspn(text, ":\"|<[{");
    return text[length] == ':' && (text[length + 1] == ' ' || text[length + 1] == '\0') ? length : 0;
}

static bool choose_part(struct reading *r, const char *name, size_t length)
{
    r->staff = 0;
    if (length > 2 && name[length - 2] == '/' && isdigit((unsigned char)name[length - 1])) {
        r->staff = name[length - 1] - '1';
        length -= 2;
    }
    r->part = score_part(r->score, name, length, true);
    if (!r->part)
        return false;
    if (r->staff < 0 || r->staff >= MOST_STAVES)
        return score_fail(r->score, r->line, "%s: a part has from 1 to %d staves", r->part->name, MOST_STAVES);
    if (r->staff >= r->part->staff_count)
        r->part->staff_count = r->staff + 1;
    return true;
}

static bool read_line(struct reading *r, const char *start, size_t length)
{
    while (length && isspace((unsigned char)start[length - 1]))
        length--;
    const char *text = score_text(r->score, start, length);
    if (!text)
        return false;
    text += strspn(text, " \t");
    if (*text == '\0' || *text == '#')
        return true;
    if (header_at(text) >= 0)
        return read_headers(r, text);
    size_t name = name_length(text);
    if (name && !choose_part(r, text, name))
        return false;
    if (!r->part)
        return score_fail(r->score, r->line, "music before any part is named");
    r->block_has_music = true;
    struct staff *staff = &r->part->staves[r->staff];
    /* A staff first named late in the piece has rested until now. */
    while (staff->count < r->block_start) {
        struct bar *bar = score_add_bar(r->score, staff, r->line);
        struct event rest = {.kind = WHOLE_REST, .line = r->line};
        if (!bar || !score_add_event(r->score, &bar->voices[0], &rest))
            return false;
    }
    return score_read_music(r->score, r->part, r->staff, text + name + (name ? 1 : 0), r->line);
}

static bool read_text(struct score *score, const char *text)
{
    struct reading r = {.score = score};
    while (*text) {
        size_t length = strcspn(text, "\n");
        r.line++;
        if (!read_line(&r, text, length))
            return false;
        text += length;
        if (*text)
            text++;
    }
    if (!close_block(&r))
        return false;
    if (r.block_start == 0)
        return score_fail(score, 0, "there is no music in it");
    if (score->frame_count > r.block_start)
        return score_fail(score, r.line, "a mark stands after the last bar");
    return true;
}

char *notation_to_musicxml(const char *text, size_t *length, char *error, size_t error_size)
{
    struct score score = {.error = error, .error_size = error_size, .part_capacity = 64};
    char *xml = NULL;
    if (error_size)
        error[0] = '\0';
    score.parts = score_alloc(&score, (size_t)score.part_capacity * sizeof *score.parts);
    if (score.parts && read_text(&score, text) && score_complete(&score))
        xml = score_write(&score, length);
    while (score.pool) {
        struct pool_item *item = score.pool;
        score.pool = item->next;
        free(item);
    }
    return xml;
}
