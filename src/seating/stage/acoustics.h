/* acoustics.h - sound on the stage and at the listener's ears. Pure functions of numbers; sources beside each. */
#ifndef SEATING_ACOUSTICS_H
#define SEATING_ACOUSTICS_H

/* Published figures that the seating rests on. */
typedef struct AcousticFigures {
    double least_angle;           /* degrees: just noticeable change straight ahead (Mills, JASA 30, 1958, 237) */
    double blur_in_front;         /* degrees: localisation blur straight ahead (Blauert, Spatial Hearing) */
    double head_radius;           /* metres (Woodworth and Schlosberg, Experimental Psychology, 1954) */
    double sync_least, sync_most; /* seconds: asynchrony that is normal in an ensemble (Rasch, Acustica 43, 1979, 121) */
    double sync_share; /* share of the shortest shared note that may pass before two groups sound apart (common practice) */
    double support_least, support_most; /* dB: ST early that players like (ISO 3382-1, annex C) */
    double support_fall;                /* dB outside that range over which hearing falls to its worst (common practice) */
    double hearing_worst;               /* share of the tolerance that is left then (common practice) */
} AcousticFigures;
extern const AcousticFigures acoustic_figures;

double acoustics_sound_speed(double celsius);          /* metres a second: ISO 9613-1 */
double acoustics_delay(double metres, double celsius); /* seconds */
/* Interaural time difference in seconds of a source `radians` from straight ahead, positive to the right; sources behind count
 * as their mirror in front: (a / c)(angle + sin angle), Woodworth and Schlosberg 1954. */
double acoustics_ear_delay(double radians, double celsius);
/* Degrees that two sources must stand apart to be told apart in a hall: the blur in front, times what the hall makes of it. */
double acoustics_blur(double hall_factor);
/* How well players hear across the stage, 1 down to hearing_worst, from ST early in dB. */
double acoustics_support(double st_early);
/* Delay in seconds up to which two groups still sound together when the shortest note they share lasts `shortest` seconds and
 * they hear each other as well as `hearing` (0..1) says. `shortest` 0: not known, the widest tolerance. */
double acoustics_tolerance(double shortest, double hearing);
#endif
