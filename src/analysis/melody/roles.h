/* roles.h - figure and ground: what each voice is to the whole in each beat. A hidden role is inferred over a movement, or some bars of it, for all voices together, so
 * that as a rule one line is heard at a time; how, and what it reaches beside published annotations of the main melody: docs/method.md. */
#ifndef ANALYSIS_MELODY_ROLES_H
#define ANALYSIS_MELODY_ROLES_H
#include "analysis/melody/role_measures.h"
#include "spezzato/explain.h"

typedef struct Roles {
    Voices voices;
    BeatGrid beats;
    uint8_t *at;      /* spz_voice_role: [beat * voices + voice] */
    float *chance;    /* likewise: that the voice has the line, 0..1, unisons included */
    uint8_t *leader;  /* by beat: the voice that most likely has the line; where all rest, the one before */
} Roles;

/* In bars first..last (indices), from `arena`; `strings` must outlive it. What sounds on from before is not heard, so leave a bar or two before those that
 * are asked about; what lies farther off hardly matters. Cost: beats times voices. SPZ_NO_MEMORY. */
spz_status roles_of(const SectionMap *strings, size_t first, size_t last, Arena *arena, Roles *out);

static inline spz_voice_role role_at(const Roles *roles, size_t beat, size_t voice)
{
    return (spz_voice_role)roles->at[beat * roles->voices.map.group_count + voice];
}

/* Mean chance of the line over the beats between two moments in which any of `voices` (bit i: voice i) sounds, of the likeliest of them; 0 where none does. */
double roles_line_share(const Roles *roles, uint64_t voices, Ticks from, Ticks to);
#endif
