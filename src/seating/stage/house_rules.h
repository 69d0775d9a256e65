/* house_rules.h - the house's settings of stage, players, hall, weights and house rules, read once for a judgement. */
#ifndef SEATING_HOUSE_RULES_H
#define SEATING_HOUSE_RULES_H
#include "spezzato/stage.h"

/* Where a listener sits: metres from the middle line (positive to house right) and from the stage edge. */
typedef struct Listener {
    double x, distance, weight;
} Listener;

typedef enum BassPlace { BASSES_BEHIND_CELLOS, BASSES_BEHIND_FIRSTS, BASSES_ALONG_THE_BACK } BassPlace;

typedef struct Weights {
    double antiphony, ensemble, three, bass, melody, turned, era, house; /* the terms, in points */
    double violins, violas_cellos, violins_lower, others;                /* pairs of sections, shares of the violins' weight */
    double imitation;                                                    /* share of an exchange */
} Weights;

typedef struct Rules {
    double width, depth, front, podium, desk_width, desk_depth, cello_width, bass_width, spread, riser, aisle; /* metres; spread a factor */
    BassPlace basses;
    int players[SPZ_SECTION_COUNT];
    bool singles; /* one player a part, nobody conducts: likewise set by whoever reads the score */
    bool two_orchestras; /* the strings sit in two halves, mirrored: set by whoever reads the score, not by the house */
    double celsius, blur, hearing; /* degrees C; degrees; 0..1 */
    const char *hall, *sound;      /* views of the settings */
    Listener listeners[SPZ_LISTENER_COUNT];
    Weights weights;
    const char *usual, *forbidden;
} Rules;

/* `settings` must outlive the rules: they hold views of its texts. */
void rules_read(const spz_settings *settings, Rules *rules);
/* For a score with third violins, where the house names no players for them: all violins in three equal parts, the firsts one
 * more. */
void rules_split_violins(Rules *rules);
/* For chamber music: one player a part, no conductor, no basses; they sit as close as they like. */
void rules_seat_singles(Rules *rules);
bool bass_place_from_words(const char *words, BassPlace *out);
#endif
