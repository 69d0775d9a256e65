/* passages.h - what the score says about seating: passages between sections, divided sections, coupling.
 *
 * A passage is told once, as facts: who stands on its two sides, all who have the gesture in order of entry (its links), and each
 * entry with its place, its notes and what was done to the call. Pages, tables, notes, parts and the marked score read these and
 * nothing else; words are made by the documents, in the reader's language. */
#ifndef SPEZZATO_PASSAGES_H
#define SPEZZATO_PASSAGES_H

#include "spezzato/sections.h"

SPZ_C_BEGIN

typedef enum spz_kind {
    SPZ_EXCHANGE,   /* call and response, echo, sequence */
    SPZ_HOCKET,     /* single notes or fragments of at most a beat in quick alternation */
    SPZ_SPLIT_LINE, /* one melody, its notes taken alternately (Deutsch 1975) */
    SPZ_IMITATION,  /* the answer enters while the caller goes on */
    SPZ_DIV2,       /* a section in two */
    SPZ_DIV3,       /* a section, or all violins together, in three or more */
    SPZ_COUPLING,   /* unison, octaves, parallel thirds or sixths in one rhythm */
    SPZ_KIND_COUNT
} spz_kind;
SPZ_API const char *spz_kind_name(spz_kind kind); /* as in data: "exchange", "hocket", "split-line", "imitation", "div2", "div3", "coupling" */
SPZ_API bool spz_kind_from_name(const char *name, spz_kind *out); /* false, and `out` unchanged, for any other name */
SPZ_API bool spz_kind_is_antiphony(spz_kind kind); /* the first four */

/* How strong a passage is: marginal below 0.5, clear from 0.5, striking from 0.8. */
typedef enum spz_weight { SPZ_MARGINAL, SPZ_CLEAR, SPZ_STRIKING, SPZ_WEIGHT_COUNT } spz_weight;
SPZ_API spz_weight spz_weight_of(double strength); /* of a strength from 0 to 1 */
SPZ_API const char *spz_weight_name(spz_weight weight); /* as in data: "marginal", "clear", "striking" */

/* A set of players: bit g is group g of the sections (spz_sections_group). */
typedef uint64_t spz_players;
#define SPZ_WIND_PLAYERS ((spz_players)1 << 63)

/* One side of a passage: everyone who has the gesture together there, and the name that fits them. */
typedef struct spz_side {
    spz_section section; /* SPZ_VIOLINS for both violin sections, SPZ_STRINGS, SPZ_WINDS; SPZ_NO_SECTION: there is no such side */
    size_t group;        /* the one group meant; SIZE_MAX where the name means several */
    int orchestra;       /* to which all of them belong; 0 where there is one, or for players of both */
    spz_players players;
} spz_side;

/* What was done to a call on its way to the answer. */
typedef struct spz_change {
    int semitones;   /* from the first note of the call to that of the answer */
    int steps;       /* the same in steps of the staff: a third is 2 */
    bool inverted;   /* upside down */
    int stretch;     /* 1: in notes twice as long, -1: half as long, 0: as they were */
} spz_change;

/* One entry of a passage: a call, an answer, a note of a split line. Entries that begin together are one entry of several groups. */
typedef struct spz_entry {
    spz_players players;
    size_t link;             /* of the passage's links; SIZE_MAX where none fits */
    spz_ticks onset, end;
    size_t bar;              /* index */
    spz_fraction beat;       /* in its bar, from 1 */
    spz_pitch first, last;   /* its first and last note, in the group that leads it */
    size_t leader;           /* that group; SIZE_MAX for winds */
    bool answer;             /* false: it calls */
    spz_change change;       /* from the call it answers; all 0 for a call */
} spz_entry;

/* Those who have the gesture together at their first entry. */
typedef struct spz_link {
    spz_players players;
    spz_ticks enters;
    size_t bar;
} spz_link;

/* A length as a musician counts it. */
typedef enum spz_count_unit { SPZ_IN_BARS, SPZ_IN_BEATS, SPZ_IN_CROTCHETS } spz_count_unit;
typedef struct spz_length {
    spz_fraction count;
    spz_count_unit unit;
    double bars; /* the same in bars as they are where it begins; 0: not known */
} spz_length;

/* The clearest call and answer of an exchange, a hocket or an imitation. */
typedef struct spz_gesture {
    spz_side sides[2];   /* who calls and who answers there */
    int notes;           /* of a call */
    bool pizzicato;
    spz_length lag;      /* from a call to its answer */
    spz_change change;
    bool swapped;        /* the two exchange their parts: under the answer the caller has what the answerer had under the call */
} spz_gesture;

/* A split line. */
typedef struct spz_braid {
    spz_section sections[3]; /* who takes part; the third may be SPZ_NO_SECTION */
    int changes;             /* how often the line changes hands */
} spz_braid;

/* How the lines of a divided section go together. */
typedef enum spz_texture {
    SPZ_IN_CHORDS, SPZ_NOTE_AGAINST_NOTE, SPZ_IN_THIRDS, SPZ_IN_SIXTHS, SPZ_IN_THIRDS_AND_SIXTHS, SPZ_IN_OCTAVES, SPZ_IN_FIFTHS,
    SPZ_UPPER_HELD,       /* held upper notes over a moving lower line */
    SPZ_LOWER_HELD,       /* a moving upper line over held lower notes */
    SPZ_INDEPENDENT,      /* two lines that go their own ways */
    SPZ_MOVING_APART,     /* the same of three or more */
    SPZ_IN_TURN,          /* the players take turns */
    SPZ_TEXTURE_COUNT
} spz_texture;
typedef enum spz_manner { SPZ_PLAIN, SPZ_TREMOLO, SPZ_PIZZICATO, SPZ_MANNER_COUNT } spz_manner;

/* What shows that more than one player is meant. */
typedef enum spz_ground {
    SPZ_BY_MARK,   /* a word over the staff */
    SPZ_BY_PARTS,  /* parts or staves of their own */
    SPZ_BY_HAND,   /* more than one player can stop */
    SPZ_BY_VOICES, /* written in voices, and nothing says so */
    SPZ_BY_CHORDS, /* chords that one player could stop */
    SPZ_GROUND_COUNT
} spz_ground;

/* Who of the violins is divided, where all of them are taken as one body. */
typedef enum spz_violins_divided {
    SPZ_ONE_SECTION,     /* not a matter of all violins */
    SPZ_FIRSTS_DIVIDED,  /* the seconds are the remaining line, in one rhythm */
    SPZ_SECONDS_DIVIDED, /* likewise */
    SPZ_BOTH_DIVIDED,
    SPZ_THIRD_PART,      /* a third violin part with notes of its own */
    SPZ_SOLO_ABOVE       /* one player steps out of the violins for a while, with a line of their own above firsts and seconds */
} spz_violins_divided;

typedef struct spz_writing {
    spz_texture texture;
    spz_manner manner;
} spz_writing;

typedef struct spz_division {
    int lines;              /* 2, 3, 4 .. */
    int soloists;           /* players that the marks name; 0: the section */
    bool by_desk;           /* the marks say so */
    spz_ground ground;      /* the strongest */
    spz_violins_divided violins;
    spz_writing writing[2]; /* of the section; of firsts and seconds where all violins are taken as one body */
} spz_division;

typedef enum spz_parallel {
    SPZ_UNISON, SPZ_OCTAVES, SPZ_THIRDS, SPZ_SIXTHS, SPZ_THIRDS_AND_SIXTHS, SPZ_ONE_RHYTHM, SPZ_PARALLEL_COUNT
} spz_parallel;
typedef enum spz_loudness { SPZ_LOUDNESS_PLAIN, SPZ_SOFTLY, SPZ_FULL_STRENGTH, SPZ_LOUDNESS_COUNT } spz_loudness;

typedef struct spz_unity { /* coupling */
    spz_parallel parallel;
    spz_loudness loudness;
    double notes_a_second; /* to be kept together, where that is fast; else 0 */
} spz_unity;

/* What the conductor says of a passage, in [passages] of the settings. */
typedef enum spz_ruling_kind {
    SPZ_AS_FOUND,
    SPZ_VETOED,  /* it counts for nothing; its strength is 0 */
    SPZ_WEIGHTED /* its strength is what she holds it to be */
} spz_ruling_kind;
SPZ_API const char *spz_ruling_name(spz_ruling_kind kind); /* as in data: "", "vetoed", "weighted" */

typedef struct spz_ruling {
    spz_ruling_kind kind;
    double heard;       /* its strength as found; 0 where nothing was said */
    const char *reason; /* hers; "" for none, NULL where nothing was said */
} spz_ruling;

typedef struct spz_passage {
    spz_kind kind;
    spz_side sides[2];       /* caller and responder; one (the other has SPZ_NO_SECTION) for a divided section */
    size_t first, last;      /* bars, indices */
    spz_ticks onset, end;
    const char *first_bar, *last_bar; /* as printed */
    const char *letter;      /* rehearsal letter at or before it, "" */
    int after_letter;        /* bars behind that letter */
    double strength;         /* 0..1, see spz_weight */
    int turns;               /* antiphony: how often the word passes; lines of a divided section; 2 for coupling */
    const spz_link *links;   /* antiphony: all who have the gesture, in order of entry */
    size_t link_count;
    const spz_entry *entries; /* in order of time */
    size_t entry_count;
    union {                  /* what its kind tells */
        spz_gesture gesture;   /* SPZ_EXCHANGE, SPZ_HOCKET, SPZ_IMITATION */
        spz_braid braid;       /* SPZ_SPLIT_LINE */
        spz_division division; /* SPZ_DIV2, SPZ_DIV3 */
        spz_unity unity;       /* SPZ_COUPLING */
    } told;
    /* Terms of the seating; 0 where they make no sense for the kind. */
    double foreground;       /* 0..1: how much of what is heard this passage is */
    double tightness;        /* coupling: 0..1, how much the ensemble hangs on sitting close (speed, softness, exactness) */
    double shortest;         /* seconds: shortest shared note value at the tempo in force (coupling, antiphony) */
    bool fully_voiced;       /* div3: all lines independent rather than chords that fill */
    spz_ruling ruling;       /* the conductor's */
} spz_passage;

/* The strength by which a passage keeps its place in lists: as found or as weighted, whichever is more. */
SPZ_API double spz_passage_standing(const spz_passage *passage);

/* The bodies of players in a set, whole families by one name: all violins are SPZ_VIOLINS, all parts of a section the section. In score
 * order. Returns how many; at most `most` are written. Their names are those of data ('Vn I', 'Va 2', 'Violins'). */
SPZ_API size_t spz_players_named(const spz_sections *sections, spz_players players, spz_group *out, size_t most);
/* The name of a side as a body of players. */
SPZ_API spz_group spz_side_named(const spz_sections *sections, const spz_side *side);

typedef struct spz_findings spz_findings;

/* Shares of the movement that summarise two groups, for counter-evidence. */
typedef struct spz_pairing {
    size_t groups[2];
    double together;  /* share of the bars in which both play, in which they are coupled */
    double unison, octaves, thirds, sixths; /* shares of the shared notes */
    size_t shared_bars; /* in which both play */
} spz_pairing;

/* Finds all passages of the movement, ordered by first bar, then kind, then sections. `sections` must outlive the result. [passages] of
 * the settings then vetoes and weights them (SPZ_BAD_SETTINGS for a line that can't be understood). `settings` NULL: none.
 * SPZ_NO_STRINGS is not an error here: a score without strings has no passages. */
SPZ_API spz_status spz_passages_find(const spz_sections *sections, const spz_settings *settings, const spz_sink *sink,
                                     spz_findings **out);
SPZ_API void spz_findings_free(spz_findings *findings); /* takes NULL */
/* Chamber music: every string part is one player's, so nothing in it is divided. Taken for that: the usual combinations of single strings
 * without basses, with at most one other instrument, where no name or word speaks of several players. */
SPZ_API bool spz_findings_chamber_music(const spz_findings *findings);
SPZ_API size_t spz_findings_count(const spz_findings *findings); /* all passages, vetoed ones too */
SPZ_API const spz_passage *spz_findings_at(const spz_findings *findings, size_t index); /* NULL past the end */
/* How [passages] of a settings file names passage `index`: '46-48 Vn I Vn II', with its kind where only that tells it from another; ""
 * where its bars carry no number that could be written. Returns `out`. */
SPZ_API char *spz_passage_line(const spz_findings *findings, size_t index, char *out, size_t size);
SPZ_API size_t spz_findings_pairings(const spz_findings *findings); /* pairs of string groups that were compared */
SPZ_API const spz_pairing *spz_findings_pairing(const spz_findings *findings, size_t index); /* NULL past the end */

SPZ_C_END
#endif
