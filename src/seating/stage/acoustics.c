#include "seating/stage/acoustics.h"
#include <math.h>

static const double half_turn = 3.14159265358979323846;

const AcousticFigures acoustic_figures = {
    .least_angle = 1.0,
    .blur_in_front = 3.6,
    .head_radius = 0.0875,
    .sync_least = 0.020,
    .sync_most = 0.050,
    .sync_share =
        0.25, /* a quarter of the note late: a semiquaver that arrives a demisemiquaver's half late is heard as 'not together' */
    .support_least = -16.0,
    .support_most = -12.0,
    .support_fall = 4.0,
    .hearing_worst = 0.7,
};

double acoustics_sound_speed(double celsius)
{
    return 343.2 * sqrt((celsius + 273.15) / 293.15);
}

double acoustics_delay(double metres, double celsius)
{
    return metres / acoustics_sound_speed(celsius);
}

double acoustics_ear_delay(double radians, double celsius)
{
    double angle = remainder(radians, 2 * half_turn);
    if (angle > half_turn / 2)
        angle = half_turn - angle;
    else if (angle < -half_turn / 2)
        angle = -half_turn - angle;
    return acoustic_figures.head_radius / acoustics_sound_speed(celsius) * (angle + sin(angle));
}

double acoustics_blur(double hall_factor)
{
    double blur = acoustic_figures.blur_in_front * hall_factor;
    return fmax(blur, acoustic_figures.least_angle);
}

double acoustics_support(double st_early)
{
    const AcousticFigures *f = &acoustic_figures;
    double outside = fmax(fmax(f->support_least - st_early, st_early - f->support_most), 0);
    double share = fmin(outside / f->support_fall, 1);
    return 1 - share * (1 - f->hearing_worst);
}

double acoustics_tolerance(double shortest, double hearing)
{
    const AcousticFigures *f = &acoustic_figures;
    double allowed = shortest > 0 ? shortest * f->sync_share : f->sync_most;
    return hearing * fmin(fmax(allowed, f->sync_least), f->sync_most);
}
