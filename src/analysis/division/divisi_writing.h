/* divisi_writing.h - bar by bar: in how many lines a group plays, and what shows that more than one player is meant.
 *
 * One sweep over the group's sounds. At every moment the sounding pitches are counted (a unison of two voices is one, and so is a
 * harmonic written out as a chord: stopped, touched, sounding), and the time in which there are two or more is booked under the
 * strongest evidence for a division: a mark in force, different parts or staves, a chord that one player can't stop, several
 * voices on the staff; what is left are chords that one player can stop. Cost: the number of sounds times the few that sound
 * together. */
#ifndef ANALYSIS_DIVISION_DIVISI_WRITING_H
#define ANALYSIS_DIVISION_DIVISI_WRITING_H
#include "analysis/passages/findings.h"

typedef enum Evidence { EVIDENCE_MARK, EVIDENCE_PARTS, EVIDENCE_HAND, EVIDENCE_VOICES, EVIDENCE_CHORDS, EVIDENCE_COUNT } Evidence;

typedef struct BarWriting {
    float crotchets;               /* length of the bar */
    Ticks heard;                   /* time in which the group sounds */
    Ticks at_least[5];             /* [n]: time with n or more pitches, n = 2..4 */
    Ticks evidence[EVIDENCE_COUNT];/* the time of two or more, by evidence */
    uint16_t attacks;              /* moments at which something begins */
    uint16_t thick;                /* of these, moments at which two or more pitches sound */
    uint16_t alone;                /* moments at which only one of several voices of the bar begins */
    uint16_t apart;                /* moments at which one voice begins while another sounds on */
    uint16_t upper, lower;         /* of these, moments at which the upper / lower voice moves */
    uint16_t thirds, sixths, octaves, fifths; /* of the thick moments with two pitches */
    uint16_t tremolo, plucked;     /* thick moments */
    uint8_t voices;                /* voices, staves or parts that begin a note */
    bool in_turn;                  /* they belong to several players, and begin notes at different moments */
    uint8_t said;                  /* lines that the mark in force asks for; 0 where it doesn't say */
    bool by_desk, half, solo;      /* what the marks in force say */
    uint8_t soloists;              /* players that they name, 2 or more; else 0 */
    bool divided;                  /* a mark that divides was in force when it ended */
    bool mark_begins;              /* a 'div.' stands in this bar */
    bool mark_ends;                /* a 'unis.' or 'non div.' stands in this bar, and holds at its end */
    int8_t top, bottom;            /* highest and lowest pitch (MIDI), 0 when silent */
} BarWriting;

/* One BarWriting a bar, from memory_get: the caller gives it back. */
spz_status divisi_writing_of(const SectionMap *map, const Group *group, BarWriting **out);
#endif
