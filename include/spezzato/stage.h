/* stage.h - a seating laid out to scale: desks in arcs around the podium, what lies between the sections, what a listener gets.
 *
 * Lengths are metres, angles degrees, delays milliseconds. The podium is at 0, 0; x grows toward house right (as the audience
 * sees the stage), y away from the audience, z above the stage floor. */
#ifndef SPEZZATO_STAGE_H
#define SPEZZATO_STAGE_H

#include "spezzato/seating.h"

SPZ_C_BEGIN

/* Two players at one stand, or one where the number is odd. They face the podium. */
typedef struct spz_stage_desk {
    spz_section section;
    int orchestra;   /* 1 at house left, 2 at house right; 0 where there is one */
    int number;      /* in its section, 1 is the front desk; within a row counted from the edge of the stage inward */
    int players;     /* 2 or 1 */
    double x, y, z;
} spz_stage_desk;

/* How far apart two sections sit. */
typedef struct spz_distance {
    double front, centre, back; /* metres: between their front desks, their centres, the middles of their last rows */
    double front_delay, centre_delay, back_delay; /* milliseconds at the stage's temperature (ISO 9613-1) */
    double delay; /* the mean of the three: the one that verdict and rehearsal go by */
} spz_distance;

/* Places of the audience. */
typedef enum spz_listener { SPZ_FRONT_SEATS, SPZ_MIDDLE_SEATS, SPZ_BACK_SEATS, SPZ_LEFT_SEATS, SPZ_RIGHT_SEATS, SPZ_LISTENER_COUNT } spz_listener;

enum { SPZ_LISTEN_VERSIONS = 2 };

/* Where the listener sits; all face the podium, but for the conductor, who faces the players. */
typedef enum spz_seat {
    SPZ_SEAT_FRONT = SPZ_FRONT_SEATS, SPZ_SEAT_MIDDLE = SPZ_MIDDLE_SEATS, SPZ_SEAT_BACK = SPZ_BACK_SEATS, SPZ_SEAT_LEFT = SPZ_LEFT_SEATS,
    SPZ_SEAT_RIGHT = SPZ_RIGHT_SEATS, SPZ_SEAT_PODIUM = SPZ_LISTENER_COUNT, SPZ_SEAT_COUNT
} spz_seat;
SPZ_API const char *spz_seat_name(spz_seat seat); /* "front", "middle", "back", "left", "right", "podium"; "" outside the list */
SPZ_API bool spz_seat_from_name(const char *name, spz_seat *out); /* false, and `out` unchanged, for any other name */

/* How two sections are heard from one place. */
typedef struct spz_separation {
    spz_listener listener;
    double angle;      /* degrees between their centres */
    double ear_delay;  /* microseconds: interaural time difference of one against the other, for a listener who faces the podium
                          (Woodworth and Schlosberg 1954) */
    double widths;     /* angle as a multiple of what can be told apart in this hall; under 1 they sound from one place */
} spz_separation;

typedef struct spz_plan spz_plan;

/* Lays out `arrangement` by its name; NULL or "": the house's usual one. `thirds`: the violins sit as three sections. `settings`
 * NULL: all defaults.
 * SPZ_BAD_ARGUMENT for a name that is not known; SPZ_BAD_SETTINGS where the players don't fit on the stage: the message says
 * what would. */
SPZ_API spz_status spz_stage_plan(const spz_settings *settings, const char *arrangement, bool thirds, const spz_sink *sink,
                                  spz_plan **out);
/* The same for two string orchestras that face each other: each has half the players and half of the arc, the first at house left
 * in the order of the arrangement from the edge of the stage inward, the second its mirror image. */
SPZ_API spz_status spz_stage_plan_double(const spz_settings *settings, const char *arrangement, bool thirds, const spz_sink *sink,
                                         spz_plan **out);
/* The same for chamber music: one player a part in a circle of their own, no conductor and no basses. */
SPZ_API spz_status spz_stage_plan_single(const spz_settings *settings, const char *arrangement, const spz_sink *sink, spz_plan **out);
/* Lays out `arrangement` for what was judged: one orchestra or two, violins in two sections or three, single players. `verdict` NULL: as
 * spz_stage_plan does. Codes as there. */
SPZ_API spz_status spz_verdict_plan(const spz_verdict *verdict, const spz_settings *settings, const char *arrangement, const spz_sink *sink, spz_plan **out);
/* What spz_plan_least_width and spz_plan_least_depth say of a plan, for an arrangement that may not fit: 0 where no width or no depth up
 * to 60 m is enough. Codes as of spz_stage_plan. */
SPZ_API spz_status spz_stage_least(const spz_settings *settings, const char *arrangement, double *width, double *depth);
SPZ_API void spz_plan_free(spz_plan *plan); /* takes NULL */

SPZ_API const char *spz_plan_arrangement(const spz_plan *plan); /* its name */
SPZ_API spz_order spz_plan_order(const spz_plan *plan); /* sections from house left to house right */
SPZ_API const char *spz_plan_hall(const spz_plan *plan);        /* "" when it has no name */
SPZ_API size_t spz_plan_desks(const spz_plan *plan); /* of both orchestras where there are two */
SPZ_API const spz_stage_desk *spz_plan_desk(const spz_plan *plan, size_t index); /* by section as ordered, then number; basses last */
SPZ_API bool spz_plan_is_double(const spz_plan *plan); /* two orchestras */
SPZ_API bool spz_plan_is_single(const spz_plan *plan); /* chamber music: one player a part, and no conductor */
SPZ_API int spz_plan_players(const spz_plan *plan, spz_section section);   /* 0: not on the stage */
/* The stage, and how much of it the desks take (chairs included). The stage edge lies at y = -front. */
SPZ_API double spz_plan_stage_width(const spz_plan *plan); /* metres, as the settings have it */
SPZ_API double spz_plan_stage_depth(const spz_plan *plan); /* metres, likewise */
SPZ_API double spz_plan_front(const spz_plan *plan); /* metres from the stage edge to the podium's middle */
SPZ_API double spz_plan_aisle(const spz_plan *plan); /* clear way kept between neighbouring sections, as asked for; 0: none */
SPZ_API double spz_plan_used_width(const spz_plan *plan); /* metres */
SPZ_API double spz_plan_used_depth(const spz_plan *plan); /* metres from the stage edge to behind the last desk */
/* Whole arcs do not fit: the rows are cut to the stage, and there are more of them. */
SPZ_API bool spz_plan_is_cut(const spz_plan *plan);
/* The basses stand along the back, as there was no room for them where the house wants them. */
SPZ_API bool spz_plan_basses_moved(const spz_plan *plan);
/* The least that would still hold these players, with rows cut and the basses along the back: the width at this depth, the depth at this
 * width, in metres to the hundredth. Fewer players never need more. */
SPZ_API double spz_plan_least_width(const spz_plan *plan); /* 0: no width up to 60 m is enough */
SPZ_API double spz_plan_least_depth(const spz_plan *plan); /* 0: no depth up to 60 m is enough */
SPZ_API double spz_plan_desk_width(const spz_plan *plan, spz_section section); /* of a desk of two, along its row, spread included */
/* False where one of the two is not on the stage. SPZ_VIOLINS and SPZ_STRINGS (violas, cellos and basses) are sets: what lies
 * between them is the mean over their sections, by players. In a double plan it is what lies between sections of the first
 * orchestra; the same section twice asks for the way from one orchestra to the other. */
SPZ_API bool spz_plan_distance(const spz_plan *plan, spz_section a, spz_section b, spz_distance *out);
SPZ_API size_t spz_plan_places(const spz_plan *plan); /* listeners */
/* Degrees from where a listener on that place looks when he looks at the podium to the middle of a section, to the right above 0. In a double plan of
 * `orchestra` 1 or 2. False where the section is not on the stage, or a set. */
SPZ_API bool spz_plan_direction(const spz_plan *plan, spz_section section, int orchestra, size_t place, double *degrees);
SPZ_API bool spz_plan_separation(const spz_plan *plan, spz_section a, spz_section b, size_t place, spz_separation *out);

/* All arrangements of these settings, the user's own after the four standard ones. SPZ_BAD_SETTINGS as the judge says it. `names`
 * holds SPZ_ARRANGEMENT_LIMIT views that live as long as `settings` (the standard ones: for ever). */
SPZ_API spz_status spz_arrangements_list(const spz_settings *settings, const spz_sink *sink, const char **names, size_t *count);
/* The whole names of those that `words` mean, '|' between, into `out` of `size` bytes: the one that is called so, in data or in a document of any language,
 * whatever the capitals; else all that have these words in this order ('violins opposed', 'cellos outside'). SPZ_BAD_ARGUMENT, told to the sink with the
 * choices, for none, and with `one` for several; SPZ_OVER_LIMIT where they don't go into `out`; SPZ_BAD_SETTINGS as above. */
SPZ_API spz_status spz_seatings_meant(const spz_settings *settings, const char *words, bool one, const spz_sink *sink, char *out, size_t size);

SPZ_C_END
#endif
