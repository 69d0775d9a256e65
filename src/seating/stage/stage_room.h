/* stage_room.h - what of the rows lies on the stage, and how sections share it.
 *
 * A row is an arc around the podium. Where the stage is narrower or shallower than the arc, only those desks have a place whose
 * middle lies within its walls: rows are cut at the sides and, behind the strings, in the middle. A section is a wedge between two
 * angles, and its desks take a desk's width each along the rows. The more desks or the wider they are the more angle it needs, and
 * never less on a smaller stage: so whatever holds an orchestra holds a smaller one, and a larger stage holds what a smaller did. */
#ifndef SEATING_STAGE_ROOM_H
#define SEATING_STAGE_ROOM_H
#include "seating/stage/house_rules.h"

enum { DESK_LIMIT = 160, ROW_LIMIT = 24 };

/* One section on its way to the stage: desks that wait for a seat, and the part of the arc that it gets. */
typedef struct Wedge {
    spz_section section;
    int desks, players;
    double desk_width, needs, from, to; /* metres; radians */
    double aisle_from, aisle_to;        /* metres along every row that stay clear at its two ends */
} Wedge;

typedef struct Room {
    const Rules *rules;
    double half_width, depth; /* from the middle line to the walls, from the middle of the podium to the back: metres */
    double span;              /* radians of the arc, from house left */
} Room;

/* Metres from the middle of a desk to the outer edge of its chairs and bows: common practice. */
double room_reach(spz_section section);

Room room_without_walls(const Rules *rules, double span);
Room room_of_stage(const Rules *rules, double span); /* the stage of the rules */
double room_row_radius(const Rules *rules, int row);
/* The rows that a desk can stand in at all. */
int room_rows(const Room *room);
/* How many desks a row holds between the angles of the wedge; of at most `wanted` the angles, as far apart as there is room, in `angles`
 * (NULL: count only), from the edge of the stage inward. */
int room_row_seats(const Room *room, int row, const Wedge *wedge, int wanted, double *angles);
int room_seats(const Room *room, int rows, const Wedge *wedge);
/* As few rows as hold all wedges side by side between the walls; 0: none do. Sets their angles: in proportion to what they need, as
 * far as each then holds its desks. */
int room_share(const Room *room, Wedge *wedges, int count);
/* The least angle around `middle` (at most `most`) that holds `wanted` desks of the wedge in the row; sets its angles. False where it
 * holds fewer even then: the angles are set to the whole. */
bool room_gather(const Room *room, int row, Wedge *wedge, double middle, double most, int wanted);
#endif
