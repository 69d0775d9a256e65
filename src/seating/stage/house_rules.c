#include "seating/stage/house_rules.h"
#include "seating/stage/acoustics.h"
#include <math.h>
#include <string.h>

/* What a hall does to the blur, and what its stage does to the players' hearing. In a hall with reflections the blur is several
 * times that of a free field (Blauert, Spatial Hearing); the steps are common practice. */
static const struct HallSound {
    const char *word;
    double blur_factor, hearing;
} hall_sounds[] = {
    {"dry", 2, 0.9}, /* few reflections: places are sharp, but players get little back from the walls */
    {"clear", 3, 1},
    {"blurred", 5, 0.75}, /* late sound covers onsets for listener and player alike */
};

/* Metres from the stage edge to the middle of the podium with a grand piano (1.58 m deep) between them: 0.2 m to the edge, 0.6 m to the
 * podium, which is 1 m deep. Common practice. */
static const double piano_front = 2.9;

static const char *const bass_words[] = {"behind cellos", "behind first violins", "along the back"};

bool bass_place_from_words(const char *words, BassPlace *out)
{
    for (size_t i = 0; i < sizeof bass_words / sizeof *bass_words; i++)
        if (strcmp(words, bass_words[i]) == 0) {
            *out = (BassPlace)i;
            return true;
        }
    return false;
}

static void read_stage(const spz_settings *s, Rules *r)
{
    r->width = spz_settings_number(s, "stage.width");
    r->depth = spz_settings_number(s, "stage.depth");
    r->front = spz_settings_number(s, "stage.front");
    if (strcmp(spz_settings_text(s, "stage.piano"), "solo") == 0 && r->front < piano_front)
        r->front = piano_front;
    r->podium = spz_settings_number(s, "stage.podium");
    r->desk_width = spz_settings_number(s, "stage.desk width");
    r->desk_depth = spz_settings_number(s, "stage.desk depth");
    r->cello_width = spz_settings_number(s, "stage.cello width");
    r->bass_width = spz_settings_number(s, "stage.bass width");
    r->aisle = spz_settings_number(s, "stage.aisle");
    r->spread = spz_settings_number(s, "stage.spread");
    r->riser = spz_settings_number(s, "stage.riser");
    if (!bass_place_from_words(spz_settings_text(s, "stage.basses"), &r->basses))
        r->basses = BASSES_BEHIND_CELLOS;
}

static void read_players(const spz_settings *s, Rules *r)
{
    static const struct {
        spz_section section;
        const char *name;
    } keys[] = {
        {SPZ_VN1, "players.first violins"}, {SPZ_VN2, "players.second violins"}, {SPZ_VN3, "players.third violins"},
        {SPZ_VA, "players.violas"},         {SPZ_VC, "players.cellos"},          {SPZ_DB, "players.basses"},
    };
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        r->players[keys[i].section] = (int)(spz_settings_number(s, keys[i].name) + 0.5);
}

static void read_hall(const spz_settings *s, Rules *r)
{
    const struct HallSound *sound = &hall_sounds[1];
    r->hall = spz_settings_text(s, "hall.name");
    r->sound = spz_settings_text(s, "hall.sound");
    for (size_t i = 0; i < sizeof hall_sounds / sizeof *hall_sounds; i++)
        if (strcmp(r->sound, hall_sounds[i].word) == 0)
            sound = &hall_sounds[i];
    double blur = spz_settings_number(s, "hall.blur"), support = spz_settings_number(s, "hall.st early");
    r->celsius = spz_settings_number(s, "hall.temperature");
    r->blur = blur > 0 ? blur : acoustics_blur(sound->blur_factor);
    r->hearing = support < 0 ? acoustics_support(support) : sound->hearing;
    double middle = spz_settings_number(s, "hall.middle"), side = spz_settings_number(s, "hall.side");
    r->listeners[SPZ_FRONT_SEATS] = (Listener){0, spz_settings_number(s, "hall.front"), 0.25};
    r->listeners[SPZ_MIDDLE_SEATS] = (Listener){0, middle, 0.25};
    r->listeners[SPZ_BACK_SEATS] = (Listener){0, spz_settings_number(s, "hall.back"), 0.25};
    r->listeners[SPZ_LEFT_SEATS] = (Listener){-side, middle, 0.125};
    r->listeners[SPZ_RIGHT_SEATS] = (Listener){side, middle, 0.125};
}

static void read_weights(const spz_settings *s, Weights *w)
{
    w->antiphony = spz_settings_number(s, "weights.antiphony");
    w->ensemble = spz_settings_number(s, "weights.ensemble");
    w->three = spz_settings_number(s, "weights.three");
    w->bass = spz_settings_number(s, "weights.bass");
    w->melody = spz_settings_number(s, "weights.melody");
    w->turned = spz_settings_number(s, "weights.turned");
    w->era = spz_settings_number(s, "weights.era");
    w->house = spz_settings_number(s, "weights.house");
    w->violins = spz_settings_number(s, "weights.violins");
    w->violas_cellos = spz_settings_number(s, "weights.violas and cellos");
    w->violins_lower = spz_settings_number(s, "weights.violins and lower strings");
    w->others = spz_settings_number(s, "weights.other pairs");
    w->imitation = spz_settings_number(s, "weights.imitation");
}

void rules_read(const spz_settings *settings, Rules *rules)
{
    *rules = (Rules){0};
    read_stage(settings, rules);
    read_players(settings, rules);
    read_hall(settings, rules);
    read_weights(settings, &rules->weights);
    rules->usual = spz_settings_text(settings, "house.usual");
    rules->forbidden = spz_settings_text(settings, "house.forbidden");
}

void rules_split_violins(Rules *rules)
{
    if (rules->players[SPZ_VN3] > 0)
        return;
    int all = rules->players[SPZ_VN1] + rules->players[SPZ_VN2];
    rules->players[SPZ_VN1] = (all + 2) / 3;
    rules->players[SPZ_VN2] = (all + 1) / 3;
    rules->players[SPZ_VN3] = all / 3;
}

void rules_seat_singles(Rules *rules)
{
    const double circle = 1.3, chair = 0.9; /* metres: from the middle of their circle to a chair; room of a player and a stand; common practice */
    for (int s = SPZ_VN1; s <= SPZ_DB; s++)
        rules->players[s] = s == SPZ_DB || s == SPZ_VN3 ? 0 : 1;
    rules->singles = true;
    rules->podium = fmax(circle, (4 * chair + 3 * rules->aisle) / 3.14159265358979323846); /* all on one half circle, with the ways between them */
    rules->desk_width = rules->cello_width = chair;
    rules->spread = 1;
    rules->riser = 0;
}
