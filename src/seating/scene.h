/* scene.h - everything that one judgement compares: the rules of the house and every arrangement laid out on its stage. */
#ifndef SEATING_SCENE_H
#define SEATING_SCENE_H
#include "seating/geometry.h"

typedef struct Scene {
    Rules rules;
    ArrangementList list;                    /* third violins put in where the score has them */
    Layout *layouts;                         /* by arrangement; in the arena */
    bool allowed[SPZ_ARRANGEMENT_LIMIT];     /* not forbidden by the house */
    const char *orders[SPZ_ARRANGEMENT_LIMIT];
} Scene;

/* `settings` must outlive the scene. SPZ_BAD_SETTINGS, told to the sink, when an arrangement is wrong or none is allowed. */
spz_status scene_set(const spz_settings *settings, bool thirds, const spz_sink *sink, Arena *arena, Scene *out);

/* What the four standard arrangements give on average on this stage: what each arrangement is measured against. */
PairView scene_usual_pair(const Scene *scene, spz_section a, spz_section b);
double scene_usual_centrality(const Scene *scene);
double scene_usual_openness(const Scene *scene, spz_section section);
#endif
