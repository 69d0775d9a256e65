/* halls.h - the halls of a season: their settings over those of the house, the seatings that fit on their stages. */
#ifndef SEASON_RESULTS_HALLS_H
#define SEASON_RESULTS_HALLS_H
#include "season/results/hundredths.h"
#include "support/sha256.h"
#include "spezzato/season.h"
#include "spezzato/stage.h"
#include "support/arena.h"
#include "support/array.h"

typedef struct Hall {
    const char *name;        /* as in the table; "" for concerts that name none */
    const char *file;        /* its settings file; "" where there is none and the house's settings hold */
    spz_concert_problem problem; /* why nothing can be planned in it */
    long problem_line;       /* of its settings file; 0 */
    spz_settings *settings;
    char terms[SHA256_TEXT]; /* names what of the settings bears on a verdict */
    int seatings;            /* that the house allows and the stage holds */
    const char *names[CONCERT_SEATINGS];
    spz_plan *plans[CONCERT_SEATINGS]; /* with two violin sections: where the violins are in three, the desks stay as they stand */
    spz_plan *doubles[CONCERT_SEATINGS]; /* for two orchestras that face each other; NULL where the stage doesn't hold them */
    int usual;               /* the house's usual seating among them; -1: not one of them */
    spz_usual_absence usual_absence; /* and why */
    const char *usual_name;
    double usual_needs[2];   /* metres; as of spz_planned_concert */
} Hall;

typedef struct Halls {
    Arena arena;
    ARRAY(Hall *) list;
    const char *folder; /* of the table, with its slash; "" for the folder at hand */
    const spz_settings *house;
    bool told_forbidden; /* that the house forbids every seating */
} Halls;

/* `house` must outlive the halls. `path` is the table's. */
spz_status halls_begin(Halls *halls, const char *path, const spz_settings *house);
void halls_free(Halls *halls);
/* The hall of that name, read when it is first asked for; what is wrong with it goes to the sink once. */
spz_status halls_find(Halls *halls, const char *name, const spz_sink *sink, const Hall **out);
/* The layout of that seating for a work of one orchestra or of two; where two don't fit, that for one. */
const spz_plan *hall_plan(const Hall *hall, int seating, bool two_orchestras);
/* The same by the seating's name; NULL where the hall has no such. */
const spz_plan *hall_plan_named(const Hall *hall, const char *seating, bool two_orchestras);
/* Bits of the seatings meant by a name as a table gives it; as of seating_meant. */
uint32_t hall_meant(const Hall *hall, const char *name);
#endif
