/* laying.h - what the stage crew lays out: every chair, stool and stand of a seating by its place, with winds, brass and percussion
 * behind the strings, and the sums to be ordered.
 *
 * Lengths are metres from the middle of the podium: x grows toward house right, y away from the audience; z above the stage floor. An
 * angle is in degrees from straight away from the audience, positive toward house right. */
#ifndef SPEZZATO_LAYING_H
#define SPEZZATO_LAYING_H

#include "spezzato/report.h"
#include "spezzato/stage.h"

SPZ_C_BEGIN

/* Who sits behind or before the strings. */
typedef enum spz_instrument {
    SPZ_FLUTES, SPZ_OBOES, SPZ_CLARINETS, SPZ_BASSOONS, SPZ_OTHER_WOODWIND,
    SPZ_HORNS, SPZ_TRUMPETS, SPZ_TROMBONES, SPZ_LOW_BRASS, /* tuba and what else is brass */
    SPZ_TIMPANI, SPZ_PERCUSSION, SPZ_PLUCKED, SPZ_KEYBOARDS, SPZ_INSTRUMENT_COUNT
} spz_instrument;
SPZ_API const char *spz_instrument_name(spz_instrument instrument); /* as in data: "flutes", ... "low brass", "plucked", "keyboards"; "" outside the list */

/* The players that a score asks for besides its string sections. A part's players are counted from its name ('2 Oboes', 'Corni I.II') and,
 * of winds and brass whose name gives no number, from the most notes that begin together in it; percussion, harps and keyboards are one player a part. */
typedef struct spz_forces {
    int players[SPZ_INSTRUMENT_COUNT];
    int soloists[SPZ_SECTION_COUNT]; /* by section of strings */
} spz_forces;
/* Adds a movement: of each the most that any movement asks for. Begin with all zeros. */
SPZ_API void spz_forces_add(spz_forces *forces, const spz_sections *sections);

typedef enum spz_laid_kind { SPZ_LAID_PODIUM, SPZ_LAID_DESK, SPZ_LAID_PLAYER, SPZ_LAID_SOLOIST, SPZ_LAID_PIANO, SPZ_LAID_KIND_COUNT } spz_laid_kind;
SPZ_API const char *spz_laid_name(spz_laid_kind kind); /* "podium", "desk", "player", "soloist", "piano"; "" outside the list */

typedef struct spz_spot {
    double x, y;
} spz_spot;

/* One place: a desk of the strings, a player of the others, the podium, the solo piano. */
typedef struct spz_laid {
    spz_laid_kind kind;
    spz_section section;       /* DESK, SOLOIST; else SPZ_NO_SECTION */
    spz_instrument instrument; /* PLAYER */
    int orchestra, number;     /* DESK: as in spz_stage_desk; PLAYER, SOLOIST: from 1 */
    int players;
    double x, y, z, radius, angle;
    int chairs, stools, stands, lights;
    spz_spot seats[2];         /* as many as there are players; of a desk the outside player first, who sits nearer the audience */
    spz_spot stand;            /* its middle, where there is one */
} spz_laid;

/* A riser as it is ordered: of a row of strings an arc around the podium, of winds and percussion a straight platform. */
typedef struct spz_riser {
    bool straight;
    double height;
    double front, back;  /* metres from the podium: radii, or y where it is straight */
    double from, to;     /* angles in degrees of its ends; of a straight one x */
    double edge;         /* length of its front edge */
} spz_riser;

typedef struct spz_laid_sums {
    int players, chairs, stools, stands, lights;
} spz_laid_sums;

typedef struct spz_laying spz_laying;

/* Lays out the plan with these forces (NULL: strings and podium alone) by the same settings (NULL: all defaults) that the plan was
 * made with: soloists stand beside the conductor, a solo piano between podium and stage edge; woodwind, brass, timpani and
 * percussion in straight rows behind the last strings. The plan must outlive it. SPZ_NO_MEMORY. */
SPZ_API spz_status spz_laying_make(const spz_plan *plan, const spz_forces *forces, const spz_settings *settings, spz_laying **out);
SPZ_API void spz_laying_free(spz_laying *laying); /* takes NULL; the plan stays */
SPZ_API const spz_plan *spz_laying_plan(const spz_laying *laying); /* the plan that was laid out */
SPZ_API size_t spz_laying_count(const spz_laying *laying); /* places laid, podium and piano too */
SPZ_API const spz_laid *spz_laying_at(const spz_laying *laying, size_t index); /* podium, piano, soloists, desks as in the plan, then row by row; NULL past the end */
SPZ_API size_t spz_laying_risers(const spz_laying *laying); /* 0: the stage is flat */
SPZ_API const spz_riser *spz_laying_riser(const spz_laying *laying, size_t index); /* from the front; NULL past the end */
SPZ_API spz_laid_sums spz_laying_sums(const spz_laying *laying); /* over everything that is laid */
/* From the stage edge to behind the last row. */
SPZ_API double spz_laying_depth(const spz_laying *laying);
/* The way between two neighbours in the order (of two orchestras: in the first, which the other mirrors): its middle line, in metres as everything here, and how narrow
 * it is between their chairs where it is narrowest. */
typedef struct spz_way {
    spz_section pair[2];
    spz_spot front, back; /* at the front desks; behind the last row of the two */
    double clear;
} spz_way;
SPZ_API bool spz_laying_way(const spz_laying *laying, size_t index, spz_way *out); /* false past the last pair */

/* The laying table (SPZ_AS_CSV), a page to print with drawing, table and sums (SPZ_AS_HTML), the drawing with metre grid, risers and all
 * players (SPZ_AS_SVG). `pairs` and `count` as of spz_report_stage. SPZ_BAD_ARGUMENT for other formats. */
SPZ_API spz_status spz_report_laying(const spz_laying *laying, const spz_section (*pairs)[2], size_t count, spz_format format,
                                     spz_language language, spz_document **out);

SPZ_C_END
#endif
