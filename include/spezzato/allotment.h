/* allotment.h - who plays which line of a divided section, desk by desk.
 *
 * Habits (Del Mar 1981 and Gould 2011 on divisi, from memory; common practice): in two by side, the outside player of each desk
 * the upper line; in three, or in five, by desk; in four by desk and side. Lines differ by at most one player; where the
 * numbers don't come out even the upper lines get the player more, and desks are split only as far as that needs. Solo players
 * are taken off from the first desk on before the rest is shared out. */
#ifndef SPEZZATO_ALLOTMENT_H
#define SPEZZATO_ALLOTMENT_H

#include "spezzato/passages.h"

SPZ_C_BEGIN

typedef enum spz_sharing {
    SPZ_SHARE_USUAL,         /* the habit for that number of lines */
    SPZ_SHARE_BY_SIDE,       /* outside players one line, inside players the other: two lines only */
    SPZ_SHARE_BY_DESK,       /* each desk one line, in turn */
    SPZ_SHARE_BY_DESK_AND_SIDE, /* desks in turn take two lines each: even numbers of lines */
    SPZ_SHARE_IN_BLOCKS,     /* front desks the upper line, then the next: for all violins together */
    SPZ_SHARE_BY_PLAYER,     /* player after player in turn, desk after desk */
    SPZ_SHARING_COUNT
} spz_sharing;
/* "as usual", "outside and inside", "by desk", "by desk and side", "in blocks", "by player". */
SPZ_API const char *spz_sharing_name(spz_sharing sharing); /* as in data */

enum { SPZ_SEAT_SOLO = 0, SPZ_SEAT_EMPTY = -1 };

typedef struct spz_desk {
    spz_section section;
    int number;          /* desk of its section, from 1 at the front */
    int outside, inside; /* line that each player reads, 1 the highest; SPZ_SEAT_SOLO, SPZ_SEAT_EMPTY */
} spz_desk;

typedef struct spz_allotment spz_allotment;

/* Shares `players` (1 or more) of `section` over `lines` (1 or more); `solo_players` of them play apart. SPZ_BAD_ARGUMENT where
 * there are fewer players than lines, or the sharing doesn't fit the number of lines. */
SPZ_API spz_status spz_allotment_make(spz_section section, int players, int lines, int solo_players, spz_sharing sharing,
                                      spz_allotment **out);
/* The same for a passage of kind SPZ_DIV2 or SPZ_DIV3 with the players that the settings give its section ([players]), of two
 * orchestras those of its own; NULL settings are the defaults 14 12 10 8 6. The score's own word ('by desk') goes before the house's
 * habit ([divisi]). For SPZ_VIOLINS in three the desks of both sections are shared out as one body, in blocks; in four, each
 * section in two. */
SPZ_API spz_status spz_allotment_of(const spz_passage *passage, const spz_settings *settings, spz_allotment **out);
SPZ_API void spz_allotment_free(spz_allotment *allotment); /* takes NULL */

SPZ_API spz_sharing spz_allotment_sharing(const spz_allotment *allotment); /* never SPZ_SHARE_USUAL */
SPZ_API size_t spz_allotment_desks(const spz_allotment *allotment); /* how many desks */
SPZ_API const spz_desk *spz_allotment_desk(const spz_allotment *allotment, size_t index); /* NULL past the end */
SPZ_API int spz_allotment_lines(const spz_allotment *allotment); /* how many lines are read, 1 or more */
SPZ_API int spz_allotment_players(const spz_allotment *allotment, int line); /* of line 1.. */
/* Players of the line over an equal share: 1 is even, 0.8 a fifth too few. */
SPZ_API double spz_allotment_balance(const spz_allotment *allotment, int line);
/* Desks whose two players read different lines. */
SPZ_API int spz_allotment_split_desks(const spz_allotment *allotment);

/* How the house shares out a section in so many lines, by [divisi] of the settings (NULL: the usual). Never SPZ_SHARE_USUAL. */
SPZ_API spz_sharing spz_sharing_habit(const spz_settings *settings, spz_section section, int lines);

/* A division that asks for more players than there are. */
typedef struct spz_shortage {
    spz_section section; /* that is too small; SPZ_VIOLINS for all violins */
    int needs, has;      /* players: one for each line, or as many as the marks name; by [players] */
} spz_shortage;
/* Whether the passage is such a division; false for all others. */
SPZ_API bool spz_division_short(const spz_passage *passage, const spz_settings *settings, spz_shortage *out);

/* Players of a section in one orchestra: of two, the first has half the section, rounded up, the second the rest; 0: there is one. */
SPZ_API int spz_orchestra_players(const spz_settings *settings, spz_section section, int orchestra);
/* Players of a section by the settings; SPZ_VIOLINS is both violin sections (and a third). 0 for others. */
SPZ_API int spz_section_players(const spz_settings *settings, spz_section section);

SPZ_C_END
#endif
