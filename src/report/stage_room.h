/* stage_room.h - where words have room on a drawn plan: chairs, stands and words already there are boxes that nothing may cover. */
#ifndef REPORT_STAGE_ROOM_H
#define REPORT_STAGE_ROOM_H
#include "support/array.h"
#include <stdbool.h>

typedef struct Box {
    double left, top, right, bottom; /* units of the drawing, downward */
} Box;

typedef struct Room {
    ARRAY(Box) taken;
} Room;

void room_free(Room *room);
/* False without memory. */
bool room_take(Room *room, Box box);
Box box_around(double x, double y, double width, double height);
/* A line of words whose middle stands at `x` on the line `y`: an estimate for a wide sans serif. */
Box box_of_words(const char *words, double x, double y, double size, bool bold);
/* Area of `box`, with a little air around it, that is taken already. */
double room_covered(const Room *room, Box box);
#endif
