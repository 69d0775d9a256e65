/* passages.h - what the score says about seating: passages between sections, divided sections, coupling. */
#ifndef SPEZZATO_PASSAGES_H
#define SPEZZATO_PASSAGES_H

#include "spezzato/sections.h"

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
SPZ_API const char *spz_kind_name(spz_kind kind); /* "exchange", "hocket", "split-line", "imitation", "div2", "div3", "coupling" */
SPZ_API bool spz_kind_from_name(const char *name, spz_kind *out);
SPZ_API bool spz_kind_is_antiphony(spz_kind kind); /* the first four */

/* One entry of a passage: a call, an answer, a divided stretch. */
typedef struct spz_entry {
    size_t group;            /* index into the sections' groups; SIZE_MAX for winds */
    spz_ticks onset, end;
    size_t bar;              /* index */
    const char *beat;        /* '1', '5/2' */
    const char *first, *last; /* pitches of its first and last note */
    bool answer;             /* false: it calls */
    int interval;            /* semitones from the call it answers; 0 for the call itself */
} spz_entry;

typedef struct spz_passage {
    spz_kind kind;
    spz_section sections[2]; /* caller, responder; one entry (the other SPZ_NO_SECTION) for a divided section */
    size_t groups[2];        /* the groups behind them where single groups are meant, else SIZE_MAX */
    size_t first, last;      /* bars, indices */
    spz_ticks onset, end;
    double strength;         /* 0..1: below 0.5 marginal, from 0.5 clear, from 0.8 striking */
    int turns;               /* entries of the chain; lines for a divided section */
    const char *first_bar, *last_bar; /* as printed */
    const char *rehearsal;   /* 'B+3', "" */
    const char *reason;      /* one sentence a musician would say */
    const char *chain;       /* all sections of the chain in order of entry: 'Vn I - Vn II - Va'; "" when just the two */
    const spz_entry *entries;
    size_t entry_count;
    /* Terms of the seating; 0 where they make no sense for the kind. */
    double foreground;       /* 0..1: how much of what is heard this passage is */
    double tightness;        /* coupling: 0..1, how much the ensemble hangs on sitting close (speed, softness, exactness) */
    double shortest;         /* seconds: shortest shared note value at the tempo in force (coupling, antiphony) */
    bool fully_voiced;       /* div3: all lines independent rather than chords that fill */
} spz_passage;
SPZ_API const char *spz_strength_word(double strength); /* "marginal", "clear", "striking" */

typedef struct spz_findings spz_findings;

/* Shares of the movement that summarise two groups, for counter-evidence. */
typedef struct spz_pairing {
    size_t groups[2];
    double together;  /* share of the bars in which both play, in which they are coupled */
    double unison, octaves, thirds, sixths; /* shares of the shared notes */
    size_t shared_bars;
} spz_pairing;

/* Finds all passages of the movement, ordered by first bar, then kind, then sections. `sections` must outlive the result.
 * SPZ_NO_STRINGS is not an error here: a score without strings has no passages. */
SPZ_API spz_status spz_passages_find(const spz_sections *sections, const spz_settings *settings, const spz_sink *sink,
                                     spz_findings **out);
SPZ_API void spz_findings_free(spz_findings *findings);
SPZ_API size_t spz_findings_count(const spz_findings *findings);
SPZ_API const spz_passage *spz_findings_at(const spz_findings *findings, size_t index);
SPZ_API size_t spz_findings_pairings(const spz_findings *findings);
SPZ_API const spz_pairing *spz_findings_pairing(const spz_findings *findings, size_t index);

#endif
