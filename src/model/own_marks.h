/* own_marks.h - by what the directions that the librarian's marks are written as are known again: taken out by whoever marks anew, passed over by the reader, who is
 * to hear the composer and not our pencil. */
#ifndef MODEL_OWN_MARKS_H
#define MODEL_OWN_MARKS_H

#define OWN_MARK_ID "spezzato-mark-" /* what their id begins with; a number follows */
#endif
