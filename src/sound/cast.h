/* cast.h - who sounds: every desk of the strings, every soloist, every other part, each a source with a place of its own. The cast is the
 * same in both seatings; only the strings' places change. */
#ifndef SOUND_CAST_H
#define SOUND_CAST_H
#include "sections/section_map.h"
#include "sound/hall.h"
#include "support/array.h"

enum { CAST_LIMIT = 512 };

typedef enum MemberKind { MEMBER_DESK, MEMBER_SOLOIST, MEMBER_OTHER } MemberKind;
typedef struct Member {
    MemberKind kind;
    spz_section section; /* desks and soloists */
    int orchestra;       /* of two; else 0 */
    int number;          /* of the desk in its section, from 1 */
    int players;         /* 2 or 1; of other parts 1 */
    size_t group;        /* soloists: index of their group */
    size_t part;         /* others: index of their part */
} Member;
typedef ARRAY(Member) Cast;

/* From a plan's desks, the soloists' groups and whatever else sounds. */
spz_status cast_make(const SectionMap *map, const spz_plan *plan, Cast *out);
/* Places and directions in this seating, `cast->count` of them. Winds and all others stand behind the strings' depth, alike in every seating. */
void cast_place(const Cast *cast, const SectionMap *map, const spz_plan *plan, Source *out);

/* General MIDI programs, 0..127. */
enum { PROGRAM_TREMOLO_STRINGS = 44, PROGRAM_PIZZICATO_STRINGS = 45, PROGRAM_TIMPANI = 47 };
uint8_t cast_program_of_section(spz_section section);
uint8_t cast_program_of_part(const SectionMap *map, size_t part);
#endif
