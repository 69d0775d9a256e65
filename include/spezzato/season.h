/* season.h - a season from one table: which seating for each work of each concert, what the changes cost, what is given up.
 *
 * The evidence of a movement for a seating is the sum of its terms' points (spz_ranked); what a seating gives up is how far it falls
 * short of the movement's best seating among those the hall allows. A concert's plan is the one with the least sum of points given up
 * and prices of changes; of equals the one with fewer changes, then with more movements in the house's usual seating. */
#ifndef SPEZZATO_SEASON_H
#define SPEZZATO_SEASON_H

#include "spezzato/report.h"

SPZ_C_BEGIN

typedef struct spz_season spz_season;

/* What lies before a work or a movement: where the seating may change, if the house allows it (settings [concert]). */
typedef enum spz_gap { SPZ_BEFORE_CONCERT, SPZ_AT_INTERVAL, SPZ_BETWEEN_WORKS, SPZ_BETWEEN_MOVEMENTS, SPZ_GAP_COUNT } spz_gap;
SPZ_API const char *spz_gap_name(spz_gap gap); /* as in data: "before the concert", "at the interval", "between works", "between movements" */

typedef struct spz_planned_movement {
    const char *file;      /* as the table leads to it */
    const char *title;
    size_t number, bars;   /* its place in the file, from 1; its bars */
    double seconds;        /* that it lasts by its tempo marks, repeats counted */
    bool judged;           /* false: nothing in it speaks for a seating; any will do */
    spz_statement statement; /* the verdict on it alone, in short */
    int year;              /* of composition, by the table or the score; 0 not known */
    const char *best;      /* its best seating among those of the hall; NULL when not judged */
    const char *seating;   /* what it gets */
    double points;         /* given up; 0 or more */
    const spz_loss *losses; /* what the seating weakens, where it gives something up; bars alone, no passages */
    size_t loss_count;
    size_t lost_bars;      /* in which something is weakened that its best seating doesn't weaken */
    double lost_seconds;   /* how long these sound */
    bool thirds;           /* violins in three sections */
} spz_planned_movement;

/* Why nothing of a work could be read. */
typedef enum spz_work_problem { SPZ_WORK_READ, SPZ_WORK_WITHOUT_SCORE, SPZ_WORK_UNREADABLE } spz_work_problem;

typedef struct spz_planned_work {
    const char *title, *note; /* as in the table; "" */
    const char *soloist, *piano, *podium; /* what stands on the stage for it besides the desks, and where the podium stands: as in the table, "x" for
                                             a mere yes, "" for none or its usual place */
    long line;                /* of the table */
    int year;                 /* composed; 0 not known */
    bool interval_after;
    const char *fixed;        /* the seating that the table fixes, where the hall has it; NULL for none */
    spz_work_problem problem;
    spz_status cause;         /* SPZ_WORK_UNREADABLE: what was wrong with its first score */
    size_t scores_missing;    /* scores that are not there or could not be read; it is judged by the others */
    const char *seating;      /* of its first movement */
    spz_order order;          /* house left to house right; of two orchestras each from its edge of the stage inward */
    bool two_orchestras;      /* laid out for two that face each other */
    bool chamber;             /* one player a part, on chairs of its own, which no change counts: `seating` is its own */
    double points;            /* given up by all its movements */
    const spz_planned_movement *movements;
    size_t movement_count;
} spz_planned_work;

/* Where a section sits, as the audience sees it. */
typedef enum spz_stage_place {
    SPZ_PLACE_OUTER_LEFT, SPZ_PLACE_LEFT, SPZ_PLACE_INNER_LEFT, SPZ_PLACE_MIDDLE_LEFT, SPZ_PLACE_MIDDLE, SPZ_PLACE_MIDDLE_RIGHT,
    SPZ_PLACE_INNER_RIGHT, SPZ_PLACE_RIGHT, SPZ_PLACE_OUTER_RIGHT,
    SPZ_PLACE_BACK_LEFT, SPZ_PLACE_BACK_MIDDLE, SPZ_PLACE_BACK_RIGHT, /* behind the others */
    SPZ_PLACE_COUNT
} spz_stage_place;
SPZ_API const char *spz_stage_place_name(spz_stage_place place); /* as in data: "outer left", "back middle" */

/* Where a section goes in a change. */
typedef struct spz_section_move {
    spz_section section;
    int players;
    spz_stage_place from, to;
} spz_section_move;

/* What becomes of the violins where a change lies. */
typedef enum spz_violins_after { SPZ_VIOLINS_AS_BEFORE, SPZ_VIOLINS_IN_THREE, SPZ_VIOLINS_IN_TWO_AGAIN } spz_violins_after;

/* What becomes of a desk's furniture in a change. */
typedef enum spz_desk_fate {
    SPZ_DESK_STAYS,      /* a stand stood there before: only the players change */
    SPZ_DESK_MOVED,      /* from a place that is no longer needed */
    SPZ_DESK_CARRIED_ON, /* from the store */
    SPZ_DESK_STRUCK,     /* to the store */
    SPZ_DESK_FATE_COUNT
} spz_desk_fate;
SPZ_API const char *spz_desk_fate_name(spz_desk_fate fate); /* as in data: "stays", "moved", "carried on", "struck" */

/* A desk of the new layout: its stand, and the chairs (of basses stools) of its players; or, where it is struck, one of the old. Metres from
 * the middle of the podium, as in stage.h. */
typedef struct spz_desk_move {
    spz_section section;
    int orchestra, number; /* as spz_stage_desk */
    int players;
    bool stays;            /* fate is SPZ_DESK_STAYS */
    spz_desk_fate fate;
    spz_section from_section; /* STAYS, MOVED: the desk that stood at the old place; else SPZ_NO_SECTION and 0 */
    int from_orchestra, from_number;
    double from_x, from_y, x, y; /* CARRIED_ON has no from, STRUCK no x, y: 0 */
    int chairs, stands;    /* to be carried for it: to its place, or where it is struck to the store */
} spz_desk_move;

/* What a change takes, counted from the two layouts. A work for two orchestras has a layout of its own in the same seating: then `from`
 * and `to` may be the same, and the price is 0. Where the violins are in three sections, the desks stay as they stand and are shared
 * out anew. */
typedef struct spz_changeover {
    spz_gap gap;
    size_t work, movement;  /* it comes before this movement of this work */
    const char *from, *to;  /* arrangements; `from` NULL when the stage is empty before the concert */
    const char *after, *before; /* titles of the works between which it lies; NULL at the concert's start */
    double minutes;         /* with the crew of the settings */
    double price;           /* points */
    int chairs, stands;     /* to be carried: those of the new layout at whose place none stood */
    int desks;              /* of the new layout, in all */
    const spz_section_move *moves; /* sections whose players sit elsewhere afterwards, score order */
    const spz_desk_move *desk_moves; /* `desks` of them, by section and number; their chairs and stands add up to `chairs` and `stands` */
    const spz_desk_move *struck; /* what goes to the store: desks of the old layout, or a chair too many of one that stays or moves */
    size_t struck_count;
    int struck_chairs, struck_stands; /* their sums */
    int store_chairs, store_stands;   /* of those carried, how many come from the store; the others come from desks that moved */
    double stage_width, stage_depth, stage_front; /* metres; as in stage.h */
    size_t move_count;      /* 0 where one orchestra becomes two or two become one: all move */
    bool two_before, two_after; /* laid out for two orchestras that face each other */
    bool not_allowed;       /* the house allows no change here, but the works ask for one */
    double longest;         /* minutes that the house gives, where it takes longer than these; else 0 */
    spz_violins_after violins; /* from here on */
} spz_changeover;

typedef struct spz_other_change { /* in a plan that was not taken */
    spz_gap gap;
    size_t movement;            /* it comes before this movement of a work */
    const char *after, *before; /* titles of the works between which it lies; the same within a work */
    const char *to;             /* arrangement */
    double minutes, price;
    bool allowed;               /* by the house; if not, it has no price */
} spz_other_change;

typedef struct spz_other_plan { /* a plan that was not taken */
    bool possible;
    double points, price;       /* given up; of its changes */
    int changes;
    const char *seating;        /* the one for the whole concert; NULL where there are several */
    const spz_other_change *list; /* its changes, where more of them were tried */
    size_t list_count;
    const char *const *order;   /* titles of a half's works, where another order was tried */
    size_t order_count;
    const spz_planned_movement *movements; /* what each movement gets and gives up then, in playing order; unchanged and at_interval only */
    size_t movement_count;
    const spz_changeover *change; /* at_interval only */
} spz_other_plan;

/* Why a concert could not be planned. */
typedef enum spz_concert_problem {
    SPZ_CONCERT_PLANNED,
    SPZ_CONCERT_TOO_LONG,     /* more than 200 works */
    SPZ_CONCERT_FIXED,        /* the fixed seatings need a change where the house allows none */
    SPZ_HALL_UNREADABLE,      /* the settings of its hall can't be used */
    SPZ_HALL_TOO_SMALL,       /* no seating that the house allows fits on its stage */
    SPZ_HALL_FORBIDS_ALL,     /* the house allows no seating at all */
    SPZ_CONCERT_PROBLEM_COUNT
} spz_concert_problem;

/* Why a hall does without the house's usual seating. */
typedef enum spz_usual_absence { SPZ_USUAL_THERE, SPZ_USUAL_UNKNOWN, SPZ_USUAL_FORBIDDEN, SPZ_USUAL_TOO_LARGE, SPZ_USUAL_ABSENCE_COUNT } spz_usual_absence;
SPZ_API const char *spz_usual_absence_name(spz_usual_absence absence); /* as in data: "", "no such arrangement", "forbidden", "too large for the stage" */

/* Two fixed seatings of which the second can't follow the first. */
typedef struct spz_conflict {
    long line, other_line;      /* of the table; `line` 0, `work` and `fixed` NULL: it is the house's usual seating that stands before the concert */
    const char *work, *other_work;
    const char *fixed, *other_fixed; /* as the table has them */
    spz_gap gap;                /* the best moment for the change between them */
    double minutes;             /* that it takes at least */
    bool allowed;               /* a change there by the house's rules; then `longest` is what is too short */
    double longest;             /* minutes that the house gives there */
} spz_conflict;

typedef struct spz_moment {
    int year, month, day;
    int time;                   /* minutes after midnight; -1: none */
} spz_moment;

typedef struct spz_planned_concert {
    const char *name, *hall, *hall_settings; /* `hall_settings`: the settings file, "" when the house's rules hold */
    int year, month, day;       /* 0 0 0: no date */
    int weekday;                /* 0 Monday .. 6 Sunday */
    int time;                   /* minutes after midnight; -1: none */
    const spz_moment *rehearsals; /* as the table has them */
    size_t rehearsal_count;
    long line;                  /* first line of the table that names it */
    spz_concert_problem problem;
    const spz_conflict *conflict; /* SPZ_CONCERT_FIXED; else NULL */
    long hall_line;             /* SPZ_HALL_UNREADABLE: in its settings file; 0 unknown */
    spz_usual_absence usual_absence; /* of the house's usual seating in this hall */
    const char *usual;          /* its name */
    double usual_needs[2];      /* SPZ_USUAL_TOO_LARGE: the least width at this depth, the least depth at this width, metres; 0: none is enough */
    const spz_planned_work *works;
    size_t work_count;
    const spz_changeover *changes; /* in order; the one before the concert is `setup` */
    size_t change_count;
    const spz_changeover *setup;   /* from the usual seating to the first, or from the last of the performance that this one repeats; NULL
                                      when the stage stands so already */
    bool repeats;               /* the concert before it in this hall had the same programme in the same seatings: set up once */
    int repeats_day[3];         /* its year, month, day; 0: no date */
    double points, price;       /* given up by all movements; of all changes, the set-up included */
    double minutes;             /* of the changes within the concert */
    double lasts;               /* minutes from beginning to end: works by their tempo marks, the interval, changes, three for each work (entrances and
                                   applause: common practice); 0 where the length of a work is not known */
    const char *const *programme; /* titles of all its works in their order, also where it is not planned and `works` are none */
    size_t programme_count;
    spz_other_plan unchanged;   /* one seating for the evening: the best without any change within the concert; not possible where fixed seatings ask for one */
    spz_other_plan at_interval; /* the least given up with one change, at the interval; not possible where there is none, or it changes nothing */
    spz_other_plan one_more;    /* least evidence given up with one change more, prices and bans between works set aside */
    spz_other_plan two_more;    /* likewise with two, filled only where one alone gains nothing: there and back */
    spz_other_plan other_order; /* works of a half in another order: fewer changes at no higher sum; not possible: none */
} spz_planned_concert;

typedef struct spz_season_totals {
    size_t concerts, planned, works, movements, bars;
    int changes, chairs, stands; /* within the concerts */
    double minutes, points, price;
    double unchanged_points;     /* given up if no concert had a change; those whose fixed seatings ask for one, as planned */
    size_t bound;                /* how many these are */
    size_t problems;             /* notes that are no doubts */
} spz_season_totals;

/* What of the table could not be used, or is doubtful in it. */
typedef struct spz_table_note {
    long line;               /* of the table */
    spz_fault fault;
    const char *name, *other; /* what status.h says beside the fault; "" */
    long count;
    bool doubt;              /* it was used all the same */
} spz_table_note;

/* Which number comes first in dates like 3/4/2027. */
typedef enum spz_date_order {
    SPZ_DATES_AS_SHOWN, /* as the table shows it: by another date that can be read in one way only; else such dates are asked about */
    SPZ_DATES_DAY_FIRST, SPZ_DATES_MONTH_FIRST
} spz_date_order;

/* How far the reading of the scores is. Kept are those whose results came from the library. */
typedef struct spz_progress {
    size_t files, files_done, files_kept; /* the kept are among the done */
    unsigned long long bytes, bytes_done, bytes_kept;
    unsigned long long bars;              /* read so far, the kept not counted */
} spz_progress;

typedef struct spz_season_options {
    const spz_settings *settings; /* the house's; NULL: all defaults */
    int jobs;                     /* scores read at a time, 1..64; 0: 1. The result does not depend on it */
    const char *library;          /* the library (library.h) for results of scores already read and for works that the table takes from it; NULL: none. Made when
                                     it isn't there; one that can't be used is an SPZ_DOUBT */
    bool anew;                    /* results are neither taken from it nor kept in it */
    bool named;                   /* rows without a score take it from the library by the work's name, as those do whose score is 'library' */
    const char *const *lines;     /* files of lines written by spz_season_lines: their results are read into the library first, in one transaction each */
    size_t line_files;
    spz_date_order dates;
    const char *sheet;            /* of a spreadsheet file (.ods, .xlsx), by its name; NULL: the first. Borrowed for the call */
    int share, shares;            /* spz_season_lines: the share'th of `shares`, from 1; 0 0: all */
    void (*progress)(void *context, const spz_progress *progress); /* called from the calling thread; NULL */
    bool (*stop)(void *context);  /* asked between scores; NULL */
    void *context;
} spz_season_options;

/* Reads the table and its scores and plans every concert. What can't be used of a row is told to the sink (SPZ_ERROR with the
 * line) and kept as a note, and the row is planned without it; spz_season_totals counts them. SPZ_CANNOT_OPEN, SPZ_CANNOT_READ, SPZ_EMPTY, SPZ_BAD_SETTINGS (no table that can be used: what
 * is wrong has gone to the sink), SPZ_OVER_LIMIT, SPZ_INTERRUPTED (what was read stays in the library), SPZ_NO_MEMORY. Messages about
 * scores come in the order of the table, whatever `jobs`. */
SPZ_API spz_status spz_season_plan(const char *path, const spz_season_options *options, const spz_sink *sink, spz_season **out);
SPZ_API void spz_season_free(spz_season *season); /* takes NULL */

/* Reads the scores of the table (or of one share of them) and writes one line of JSON a movement, for spz_season_options.lines. Same
 * codes. */
SPZ_API spz_status spz_season_lines(const char *path, const spz_season_options *options, const spz_sink *sink, spz_document **out);

SPZ_API size_t spz_season_concerts(const spz_season *season); /* of the table, planned or not */
SPZ_API const spz_planned_concert *spz_season_concert(const spz_season *season, size_t index); /* by date, then line; NULL past the end */
SPZ_API size_t spz_season_notes(const spz_season *season); /* remarks on rows of the table and on scores */
SPZ_API const spz_table_note *spz_season_note(const spz_season *season, size_t index); /* by line; NULL past the end */
SPZ_API spz_season_totals spz_season_total(const spz_season *season); /* over the whole table */

/* How a report of a season looks; all 0: the usual width, English. */
typedef struct spz_season_look {
    int width;             /* of text, as in spz_report_options */
    spz_language language; /* of text, HTML and calendars; JSON and CSV are English */
    long long stamp;       /* SPZ_AS_ICS: when it is written, in seconds from 1970 */
    const spz_page_names *pages; /* spz_report_concert: names of the pages of the scores; NULL: spz_report_page_name */
    const spz_strips *strips; /* spz_report_concert: its movements as strips; NULL: the evening is shown by minutes alone. Borrowed */
    bool paged;            /* HTML: lead to the pages of the concerts (spz_report_concert_name), which lie beside it */
} spz_season_look;

/* The plan (SPZ_AS_TEXT, SPZ_AS_JSON), the stage manager's table (SPZ_AS_CSV), everything printable (SPZ_AS_HTML: plan and change
 * sheets). `look` NULL: the usual. SPZ_BAD_ARGUMENT for other formats. */
SPZ_API spz_status spz_report_season(const spz_season *season, spz_format format, const spz_season_look *look, spz_document **out);
/* The conductor's page of one concert, by its place in the season: what one seating would give up, what each way of seating the evening
 * costs, the stage before and after each change, the programme. It leads to index.html, season.html, the page of the next concert and those of
 * the movements (spz_report_page_name). SPZ_AS_HTML; SPZ_BAD_ARGUMENT past the end. */
SPZ_API spz_status spz_report_concert(const spz_season *season, size_t concert, spz_format format, const spz_season_look *look, spz_document **out);
/* 'concert-1.html' for the first. Cut to fit; returns `out`. */
SPZ_API char *spz_report_concert_name(size_t concert, char *out, size_t size);
/* Dates in order, month by month: SPZ_AS_TEXT, SPZ_AS_CSV; SPZ_AS_ICS for a calendar program (RFC 5545): an event for each concert and rehearsal with the
 * seatings and changes in its text, something to be done for a concert without a date. Times are those of the place. */
SPZ_API spz_status spz_report_calendar(const spz_season *season, spz_format format, const spz_season_look *look, spz_document **out);
/* One page for the stage crew: SPZ_AS_TEXT, SPZ_AS_HTML. `concert` by its place in the season; SPZ_BAD_ARGUMENT past the end. */
SPZ_API spz_status spz_report_changes(const spz_season *season, size_t concert, spz_format format, const spz_season_look *look, spz_document **out);

SPZ_C_END
#endif
