/* reader.h - the state of one reading: what the file has said so far, in the order of the file.
 *
 * While a file is read, times are counted from the start of their bar, since a bar's length is only known when all parts have
 * been seen; assemble.c moves them to the start of the movement. `per_crotchet` grows when a duration asks for finer ticks, and all
 * that was read before is multiplied (time.h). Drafts live on the heap and go to the score's arena at the end. */
#ifndef READER_READER_H
#define READER_READER_H
#include "model/movement.h"
#include "reader/files/limits.h"
#include "reader/names.h"
#include "support/array.h"
#include <libxml/parser.h>

typedef struct Transposition {
    int diatonic, chromatic; /* octaves included */
} Transposition;

typedef ARRAY(Note) NoteList;
typedef ARRAY(Direction) MarkList;
typedef ARRAY(const char *) NameList;
typedef ARRAY(Ticks) TicksList;
typedef ARRAY(Bar) BarList;

typedef struct PartDraft {
    Part about; /* what the part list says */
    NoteList notes;
    MarkList marks;
    NameList voices;
    TicksList filled;   /* what each bar of this part holds, in ticks */
    TicksList measures; /* what its time signature asks for; 0 for none */
    Ticks divisions;    /* of the file, to the crotchet; 0 before the first */
    Ticks unit;         /* ticks of one division; 0 when it has to be found anew */
    Ticks nominal, beat;
    Transposition transposition[LIMIT_STAVES + 1];
    ARRAY(PartPage) pages;
    int repeat_span[LIMIT_STAVES + 1]; /* by staff, 0 for the whole part: bars that a measure-repeat sign copies; 0 when there is none */
    int repeated_staves; /* highest staff that ever had such a sign */
    bool clef_open;      /* the open <clef> is the first of the part's upper staff */
    bool slashes;        /* slashes or beat-repeat signs stand here, and their music has not been missed yet */
    bool listed, begun;
    size_t notes_taken, marks_taken, pages_taken; /* by the movements assembled so far */
} PartDraft;
typedef ARRAY(PartDraft) PartList;

/* A number as written: digits / 10^decimals, exactly. */
typedef struct Decimal {
    int64_t digits, scale; /* scale is a power of ten */
    bool given;
    bool rounded;          /* it was finer than LIMIT_DECIMALS */
} Decimal;

/* A transposition that changes inside a bar: it counts for all voices from there on, also for those written later in the file. */
typedef struct TranspositionChange {
    Ticks position; /* in the bar, above 0 */
    int staff;      /* 0: all */
    Transposition to;
} TranspositionChange;
enum { CHANGES_IN_BAR = 16 }; /* beyond that they count from where they stand in the file */

/* What the elements inside the open <note>, <backup> or <forward> said. */
typedef struct NoteDraft {
    uint32_t flags, line;
    uint32_t passes;  /* that it sounds in; 0: all */
    bool rest, pitched, steals_before;
    bool unreadable;  /* its pitch or duration: it is left out */
    int step, octave; /* as written */
    int alter;        /* hundredths of a semitone */
    int staff;
    int lines, strokes; /* flags that its value has of itself, and strokes through its stem; UNMEASURED: not to be counted */
    uint16_t voice;
} NoteDraft;

typedef struct DirectionItem {
    DirectionKind kind;
    const char *text;
    int value;
    double rate;
} DirectionItem;

typedef struct DirectionDraft {
    DirectionItem items[LIMIT_DIRECTION_ITEMS];
    int count;
    Ticks offset;
    double sound_tempo; /* crotchets a minute; 0 when not said */
    bool overfull;      /* told already */
} DirectionDraft;

/* A metronome mark: up to two note values and a number. */
typedef struct MetronomeDraft {
    double units[2]; /* crotchets */
    const char *names[2];
    int dots[2], count;
    double per_minute;
} MetronomeDraft;

typedef struct GroupDraft {
    char number[16];
    const char *name;
    int drawn; /* its bracket's place among those drawn, from 1; 0: none is drawn */
} GroupDraft;

typedef struct TimeDraft {
    char beats[64];
    int64_t above, below; /* sum of all fractions, in units of 1/below of a semibreve */
    int64_t plain_beats, plain_type; /* of a single fraction; 0 when composite */
    int number;
    bool unmeasured;
    bool unreadable; /* told already */
} TimeDraft;

typedef struct Place { /* where the reading stands in the music */
    int part, bar;     /* -1: none */
    Ticks position, furthest, chord_onset;
    size_t first_note; /* of this bar in the part's notes */
    bool chord_possible;
    bool made_bar;     /* this part is the first that has the bar: its signatures count */
    uint16_t voice;    /* of the note before */
    double tempo, first_tempo; /* the last one of this part and its first, crotchets a minute; 0 before */
    int page;          /* as far as the first part has turned them */
    int measure;       /* bar opened by a <measure> of score-timewise */
} Place;

/* A title printed on a page, from <credit>: where a file holds several movements, the later ones have no other. */
typedef struct PageTitle {
    const char *text;
    int page;
} PageTitle;

typedef struct Titles {
    const char *work, *number, *movement, *composer;
    ARRAY(PageTitle) on_pages;
    int year;
} Titles;

typedef struct OpusLinks {
    NameList names;
    bool seen;
} OpusLinks;

typedef struct Reader {
    /* what it works with */
    Score *score;
    const spz_sink *sink;
    const char *file; /* for messages: 'season.mxl:first.xml' */
    xmlParserCtxtPtr parser;
    spz_status status;
    struct NameTable *table;
    /* where it stands in the XML */
    unsigned char open[LIMIT_DEPTH + 1]; /* Element */
    int depth, skipped;
    bool root_seen, timewise, gathering, ended;
    bool feeding;      /* the parser is being given bytes and can't be stopped at this moment; it gets no more */
    bool source_ended; /* its last byte has been handed to the parser */
    char text[LIMIT_TEXT + 1];
    size_t text_length;
    const xmlChar **attributes;
    int attribute_count;
    /* what it has found */
    Titles titles;
    PartList parts;
    BarList bars;
    ARRAY(int) pages; /* of each bar, from 1 */
    Ticks per_crotchet;
    size_t note_count, mark_count, cells;
    OpusLinks opus;
    /* what is open */
    Place place;
    NoteDraft note;
    Decimal duration;
    DirectionDraft direction;
    MetronomeDraft metronome;
    TimeDraft time;
    int transpose_staff, octave_change;
    Transposition transposition;
    bool diatonic_given;
    TranspositionChange changes[CHANGES_IN_BAR]; /* of the open bar */
    int change_count;
    Transposition before_changes[LIMIT_STAVES + 1];
    int style_staff;    /* of the open <measure-style>; 0: the whole part */
    bool repeat_begins;
    bool shortened;     /* some bar: its length is its signature's, whatever one part holds */
    GroupDraft groups[LIMIT_GROUP_DEPTH];
    int group_count, drawn_groups;
    char creator_type[64], field_name[64], credit_type[64];
    int credit_page;
    enum { BARLINE_RIGHT, BARLINE_LEFT, BARLINE_MIDDLE } barline;
} Reader;

/* limits_rules.c: what to do at the start and end of each element. */
typedef struct Rule {
    bool text; /* its characters are wanted */
    void (*start)(Reader *reader);
    void (*end)(Reader *reader);
} Rule;
extern const Rule rules[ELEMENT_COUNT];

/* sax.c */
typedef int (*ReadBytes)(void *context, char *buffer, int length); /* bytes read, 0 at the end, -1 on failure */
spz_status sax_read(Reader *reader, ReadBytes read, void *context);
const xmlChar *name_table_attribute(const struct NameTable *table, AttributeName name); /* interned */

/* state.c: shared by all rules */
void reader_fail(Reader *reader, spz_status status, const char *format, ...) __attribute__((format(printf, 3, 4)));
void reader_doubt(Reader *reader, spz_fault fault, const char *name); /* the name that the fault asks for, or NULL */
void reader_no_memory(Reader *reader);
uint32_t reader_line(const Reader *reader);
Element reader_parent(const Reader *reader);            /* of the element that opens or closes now */
bool reader_inside(const Reader *reader, Element element);
const char *reader_text(Reader *reader);                /* of the element that closes: blanks trimmed, runs of blanks made one */
const char *reader_keep(Reader *reader, const char *text); /* a copy in the score's arena; NULL (and failed) when out of memory */
const char *reader_attribute(Reader *reader, AttributeName name, char *text, size_t size); /* NULL when absent; cut at size */
bool reader_attribute_is(Reader *reader, AttributeName name, const char *value);
PartDraft *reader_part(Reader *reader);                 /* the part that is open, or NULL */
Bar *reader_bar(Reader *reader);                        /* the bar that is open, or NULL */
bool number_whole(const char *text, int64_t *out);      /* digits with a sign, at most LIMIT_DIGITS */
bool number_decimal(const char *text, Decimal *out);

/* time.c */
bool time_of(Reader *reader, Decimal duration, Ticks *out);
void read_time_divisions(Reader *reader);
void read_time_signature_start(Reader *reader);
void read_time_signature_end(Reader *reader);
void read_time_beats(Reader *reader);
void read_time_beat_type(Reader *reader);
void read_time_senza_misura(Reader *reader);

/* assemble.c: the drafts become movements of the score */
spz_status assemble(Reader *reader);

/* the rules, by file */
void read_root_start(Reader *reader);
void read_opus_link_start(Reader *reader);
void read_work_title_end(Reader *reader);
void read_movement_number_end(Reader *reader);
void read_movement_title_end(Reader *reader);
void read_creator_start(Reader *reader);
void read_creator_end(Reader *reader);
void read_field_start(Reader *reader);
void read_field_end(Reader *reader);
void read_credit_start(Reader *reader);
void read_credit_type_end(Reader *reader);
void read_credit_words_end(Reader *reader);

void read_part_group_start(Reader *reader);
void read_group_symbol_end(Reader *reader);
void read_group_name_end(Reader *reader);
void read_score_part_start(Reader *reader);
void read_score_part_end(Reader *reader);
void read_part_name_end(Reader *reader);
void read_display_text_end(Reader *reader);
void read_part_abbreviation_end(Reader *reader);
void read_instrument_name_end(Reader *reader);
void read_instrument_sound_end(Reader *reader);
void read_solo_end(Reader *reader);
void read_ensemble_end(Reader *reader);
void read_midi_program_end(Reader *reader);

void read_part_start(Reader *reader);
void read_part_end(Reader *reader);
void bar_open(Reader *reader);
void bar_close(Reader *reader);
void read_measure_start(Reader *reader);
void read_measure_end(Reader *reader);
void read_print_start(Reader *reader);
void read_fifths_end(Reader *reader);
void read_staves_end(Reader *reader);
void read_clef_start(Reader *reader);
void read_clef_sign_end(Reader *reader);
void read_clef_line_end(Reader *reader);
void read_transpose_start(Reader *reader);
void read_transpose_end(Reader *reader);
void read_diatonic_end(Reader *reader);
void read_chromatic_end(Reader *reader);
void read_octave_change_end(Reader *reader);
Transposition transposition_at(const Reader *reader, const PartDraft *part, Ticks position, int staff); /* in the open bar */
void read_double_start(Reader *reader);
void read_slash_start(Reader *reader);
void read_measure_style_start(Reader *reader);
void read_measure_repeat_start(Reader *reader);
void read_measure_repeat_end(Reader *reader);

void read_note_start(Reader *reader);
void read_note_end(Reader *reader);
void read_backup_end(Reader *reader);
void read_forward_end(Reader *reader);
void read_grace_start(Reader *reader);
void read_cue_start(Reader *reader);
void read_chord_start(Reader *reader);
void read_rest_start(Reader *reader);
void read_unpitched_start(Reader *reader);
void read_step_end(Reader *reader);
void read_alter_end(Reader *reader);
void read_octave_end(Reader *reader);
void read_duration_end(Reader *reader);
void read_value_end(Reader *reader);
void read_voice_end(Reader *reader);
void read_staff_end(Reader *reader);
void read_notehead_end(Reader *reader);
void read_tie_start(Reader *reader);
void read_slur_start(Reader *reader);
void read_tremolo_start(Reader *reader);
void read_tremolo_end(Reader *reader);
void read_staccato_start(Reader *reader);
void read_tenuto_start(Reader *reader);
void read_detached_legato_start(Reader *reader);
void read_up_bow_start(Reader *reader);
void read_down_bow_start(Reader *reader);
void read_accent_start(Reader *reader);
void read_harmonic_start(Reader *reader);
void read_arpeggiate_start(Reader *reader);
void read_trill_start(Reader *reader);
void read_fermata_start(Reader *reader);
void note_close_graces(Reader *reader); /* grace notes with no main note behind them are after-graces */

void marks_add(Reader *reader, Ticks onset, int staff); /* what direction.items holds, at `onset` in the bar */
void read_direction_start(Reader *reader);
void read_direction_end(Reader *reader);
void read_words_end(Reader *reader);
void read_rehearsal_end(Reader *reader);
void read_wedge_start(Reader *reader);
void dynamic_sign(Reader *reader, const char *name);
void read_dynamic_sign_end(Reader *reader);
void read_metronome_start(Reader *reader);
void read_metronome_end(Reader *reader);
void read_beat_unit_end(Reader *reader);
void read_beat_unit_dot_start(Reader *reader);
void read_per_minute_end(Reader *reader);
void read_offset_end(Reader *reader);
void read_segno_start(Reader *reader);
void read_coda_start(Reader *reader);
void read_sound_start(Reader *reader);

void read_barline_start(Reader *reader);
void read_bar_style_end(Reader *reader);
void read_ending_start(Reader *reader);
void read_repeat_start(Reader *reader);
uint32_t passes_in(const char *text); /* '1', '1, 2', '1-3', '1.2.': bit n-1 for pass n, up to 32 */
#endif
