#include "sound/hall.h"
#include "seating/stage/acoustics.h"
#include <math.h>
#include <string.h>

static const struct HallRules {
    double ear;            /* above the seats' floor: a seated listener (common practice) */
    double seats_below;    /* floor of the seats under the stage's (common practice) */
    double standing_ear;   /* above the stage floor: a conductor on the podium (common practice) */
    double behind;         /* from the strings' depth to the wall: winds and timpani (common practice) */
    double least_path;     /* metres: nearer than that nothing gets louder */
    double reference;      /* metres: the direct sound from there is 1 */
} rules_of_halls = {1.2, 1.0, 1.8, 7, 0.5, 10};

/* Seconds by the word for a hall's sound, with people in it. Halls for symphony orchestras reverberate for 1.8 to 2.2 s (published surveys; from
 * memory), the other two are common practice. */
static double usual_seconds(const char *sound)
{
    return strcmp(sound, "dry") == 0 ? 1.4 : strcmp(sound, "blurred") == 0 ? 2.5 : 1.9;
}

void hall_read(const spz_settings *settings, const Rules *rules, Hall *out)
{
    double seconds = spz_settings_number(settings, "hall.reverberation");
    out->width = fmax(spz_settings_number(settings, "hall.width"), rules->width);
    out->height = spz_settings_number(settings, "hall.height");
    out->length = spz_settings_number(settings, "hall.length");
    out->back = rules->depth - rules->front + rules_of_halls.behind;
    out->floor = -rules_of_halls.seats_below;
    out->seconds = seconds > 0 ? seconds : usual_seconds(rules->sound);
    out->celsius = rules->celsius;
    for (int i = 0; i < SPZ_LISTENER_COUNT; i++) {
        const Listener *seat = &rules->listeners[i];
        out->length = fmax(out->length, out->back + rules->front + seat->distance + 2);
        out->width = fmax(out->width, 2 * fabs(seat->x) + 2);
    }
}

Head hall_head(const Hall *hall, const Rules *rules, spz_seat seat)
{
    if (seat == SPZ_SEAT_PODIUM)
        return (Head){{0, 0, rules_of_halls.standing_ear}, 0, 1};
    const Listener *listener = &rules->listeners[seat];
    Head head = {{listener->x, -rules->front - listener->distance, hall->floor + rules_of_halls.ear}, 0, 0};
    double far = hypot(head.at.x, head.at.y);
    head.front_x = -head.at.x / far;
    head.front_y = -head.at.y / far;
    return head;
}

static double surface(const Hall *hall)
{
    return 2 * (hall->width * hall->length + hall->width * hall->height + hall->length * hall->height);
}

static double volume(const Hall *hall)
{
    return hall->width * hall->length * hall->height;
}

double hall_absorption(const Hall *hall)
{
    return 1 - exp(-0.161 * volume(hall) / (surface(hall) * hall->seconds));
}

double hall_directivity(const Source *source, Place toward)
{
    double k = source->beam * log(10) / 20;
    if (k <= 0)
        return 1;
    double cosine = source->facing.x * toward.x + source->facing.y * toward.y + source->facing.z * toward.z;
    double mean = (1 - exp(-2 * k)) / (2 * k); /* of exp(-k (1 - cosine)) over the sphere */
    return sqrt(exp(-k * (1 - cosine)) / mean);
}

/* One axis of an image: `mirrored` once more or not, in the n-th box along it (Allen and Berkley). */
typedef struct Axis {
    int n, mirrored;
} Axis;
static const Axis axes[] = {{0, 0}, {0, 1}, {1, 1}, {1, 0}, {-1, 0}};

static int reflections(Axis axis)
{
    return axis.n * 2 > axis.mirrored ? axis.n * 2 - axis.mirrored : axis.mirrored - axis.n * 2;
}

/* Where the image lies on an axis whose walls stand at `wall` and `wall + size`. */
static double image(double at, double wall, double size, Axis axis)
{
    double inside = at - wall;
    return wall + 2 * axis.n * size + (axis.mirrored ? -inside : inside);
}

static SoundPath path_of(const Hall *hall, const Source *source, const Head *head, const Axis axis[3])
{
    int bounces = reflections(axis[0]) + reflections(axis[1]) + reflections(axis[2]);
    double x = image(source->at.x, -hall->width / 2, hall->width, axis[0]) - head->at.x;
    double y = image(source->at.y, hall->back - hall->length, hall->length, axis[1]) - head->at.y;
    double z = image(source->at.z, hall->floor, hall->height, axis[2]) - head->at.z;
    double metres = fmax(sqrt(x * x + y * y + z * z), rules_of_halls.least_path);
    /* It left the source in the mirrored direction. */
    Place leaves = {(axis[0].mirrored ? x : -x) / metres, (axis[1].mirrored ? y : -y) / metres, (axis[2].mirrored ? z : -z) / metres};
    return (SoundPath){
        .delay = acoustics_delay(metres, hall->celsius),
        .gain = rules_of_halls.reference / metres * pow(1 - hall_absorption(hall), bounces / 2.0),
        .high = hall_directivity(source, leaves),
        .front = (x * head->front_x + y * head->front_y) / metres,
        .left = (y * head->front_x - x * head->front_y) / metres,
        .up = z / metres,
    };
}

void hall_paths(const Hall *hall, const Source *source, const Head *head, SoundPath out[SOUND_PATHS])
{
    enum { AXES = sizeof axes / sizeof axes[0] };
    size_t count = 0;
    for (int order = 0; order <= 2; order++)
        for (int i = 0; i < AXES * AXES * AXES; i++) {
            const Axis axis[3] = {axes[i / (AXES * AXES)], axes[i / AXES % AXES], axes[i % AXES]};
            if (reflections(axis[0]) + reflections(axis[1]) + reflections(axis[2]) == order && count < SOUND_PATHS)
                out[count++] = path_of(hall, source, head, axis);
        }
}

SoundTail hall_tail(const Hall *hall, double nearest)
{
    return (SoundTail){hall->seconds, nearest, 31200 * hall->seconds / volume(hall)};
}
