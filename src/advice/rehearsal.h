/* rehearsal.h - what to rehearse, as facts: the passages by who has to be called for them, the longest and most exposed first. */
#ifndef ADVICE_REHEARSAL_H
#define ADVICE_REHEARSAL_H
#include "sections/section_map.h"
#include "spezzato/sheets.h"
#include "support/array.h"

typedef enum ListenFor {
    LISTEN_MATCH,    /* does each answer match its call: an exchange */
    LISTEN_ONE_LINE, /* does it sound as one line: a hocket, a split line */
    LISTEN_ENTRIES,  /* is each entry heard over what goes on: an imitation */
    LISTEN_BALANCE,  /* is each line as strong as the others: a divided section */
    LISTEN_TOGETHER, /* are they together: coupling */
    LISTEN_COUNT
} ListenFor;
typedef enum ListenFrom { FROM_HALL, FROM_PODIUM, FROM_LAST_DESKS, FROM_COUNT } ListenFrom;

typedef struct RehearsalItem {
    const spz_passage *passage;
    size_t place;        /* in the findings */
    spz_players called;  /* who has to be there */
    double seconds;      /* of its bars, once through */
    double rate;         /* crotchets a minute where it begins */
    size_t times;        /* how often it is played, repeats counted */
    double exposure;     /* 0..1: strength times how much of what is heard it is (coupling: how tight it has to be) */
    ListenFor listen;
    ListenFrom from;
    bool placed;         /* the two sides sit on the plan: what follows is known */
    double degrees;      /* between them, from the middle seats */
    double widths;       /* that as a multiple of what can be told apart */
    double delay;        /* seconds that sound takes between them */
} RehearsalItem;

typedef struct RehearsalCall { /* passages for which the same players are called */
    spz_players called;
    size_t first, count; /* among the items */
    double seconds;      /* of their bars, each bar once */
} RehearsalCall;

typedef struct RehearsalPlan {
    ARRAY(RehearsalItem) items; /* by call, then seconds times exposure, the most first */
    ARRAY(RehearsalCall) calls; /* by the sum of the same */
    const char *seating;        /* "" where none was judged */
    bool tempo_given;           /* the score has tempo marks */
} RehearsalPlan;

/* Always to be followed by rehearsal_free. SPZ_BAD_ARGUMENT where the arrangement that the options name isn't among those ranked. */
spz_status rehearsal_plan(const spz_movement_reading *reading, const spz_settings *settings, const spz_sheet_options *options, RehearsalPlan *out);
void rehearsal_free(RehearsalPlan *rehearsal);

/* As in data: "match", "one line", "entries", "balance", "together"; "hall", "podium", "last desks". */
const char *listen_name(ListenFor listen);
const char *listen_from_name(ListenFrom from);
#endif
