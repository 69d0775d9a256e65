/* The score between notation text and MusicXML: what notation.c and notation_bar.c read, notation_check.c completes and
 * notation_write.c writes. Everything lives in one pool that is dropped whole. */
#ifndef SPEZZATO_TEST_NOTATION_SCORE_H
#define SPEZZATO_TEST_NOTATION_SCORE_H

#include <stdbool.h>
#include <stddef.h>

/* Ticks in a crotchet: 64ths, and groups of 3, 5, 7 and 9 come out whole. */
enum { CROTCHET = 10080, MOST_PITCHES = 8, MOST_VOICES = 4, MOST_STAVES = 4, NO_ALTERATION_SHOWN = 99 };

struct pitch {
    char step; /* 'A'..'G' */
    int alter, octave;
    bool show_natural;
};

enum direction_kind { WORDS, DYNAMICS, HAIRPIN, REHEARSAL, TEMPO, CLEF, JUMP, PAGE };

struct direction {
    enum direction_kind kind;
    const char *text;         /* words, dynamic, letter, clef, jump; hairpin: crescendo, diminuendo, stop */
    int beat_value, beat_dots; /* tempo: note value (index as in event) */
    double per_minute;        /* tempo: 0 = words only */
    struct direction *next;
};

enum event_kind { NOTE, REST, WHOLE_REST, GAP };

struct event {
    enum event_kind kind;
    struct pitch pitches[MOST_PITCHES];
    int pitch_count;
    int value, dots; /* index into value_names */
    long ticks;      /* sounding length; 0 for grace notes; whole rests get theirs when the bars are known */
    int actual, normal; /* tuplet ratio, 0 outside */
    bool tuplet_start, tuplet_stop, grace, tie, slur_start, slur_stop;
    char marks[12]; /* articulation signs as written */
    int tremolo, pair_tremolo, pair_end;
    struct direction *before;
    int line;
};

struct voice {
    struct event **events;
    int count, capacity;
    struct direction *after;
};

struct bar {
    struct voice voices[MOST_VOICES];
    int voice_count, line;
    struct direction *lead; /* directions of its own where the notes are another bar's */
    bool same_again, resolving, without_directions, without_words;
    const char *with_part;
    int with_octave, octave_shift;
};

struct staff {
    struct bar *bars;
    int count, capacity;
};

struct part {
    const char *name, *short_name, *sound, *group;
    const char *clefs[MOST_STAVES];
    int transpose, staff_count;
    bool no_key;
    struct staff staves[MOST_STAVES];
};

/* What all parts share at a bar. */
struct frame {
    int beats, unit; /* 0: as before */
    bool has_key, minor, implicit, repeat_start, repeat_end, ending_stop;
    int key, repeat_times;
    long length; /* ticks, 0: by the time signature */
    const char *number, *ending, *barline;
    struct direction *directions;
};

struct score {
    const char *title, *work, *movement, *composer, *composed, *group;
    struct part *parts;
    int part_count, part_capacity;
    struct frame *frames;
    int frame_count, frame_capacity;
    struct pool_item *pool;
    char *error;
    size_t error_size;
    bool failed;
};

/* notation.c */
void *score_alloc(struct score *score, size_t size);
char *score_text(struct score *score, const char *start, size_t length);
bool score_fail(struct score *score, int line, const char *format, ...)
#ifdef __GNUC__
    __attribute__((format(printf, 3, 4)))
#endif
    ;
struct frame *score_frame(struct score *score, int index);
const char *score_bar_label(const struct score *score, int index, char *buffer, size_t size);
struct part *score_part(struct score *score, const char *name, size_t length, bool create);
bool score_add_direction(struct score *score, struct direction **list, const struct direction *direction);
bool score_set_time(struct score *score, int line, int index, const char *text);
bool score_set_key(struct score *score, int line, int index, const char *text);
bool score_set_tempo(struct score *score, int line, struct direction **list, const char *text);

/* notation_bar.c */
bool score_read_music(struct score *score, struct part *part, int staff, const char *text, int line);
struct bar *score_add_bar(struct score *score, struct staff *staff, int line);
bool score_add_event(struct score *score, struct voice *voice, const struct event *event);

/* notation_check.c: completes copied bars and whole-bar rests, then checks lengths and ties */
bool score_complete(struct score *score);
void score_time_at(const struct score *score, int index, int *beats, int *unit);
long score_bar_ticks(const struct score *score, int index);
extern const char *const value_names[];

/* notation_write.c */
char *score_write(struct score *score, size_t *length);

#endif
