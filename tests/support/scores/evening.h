/* evening.h - findings made by hand, so that a judgement can be tested without a score: a movement of bars, its groups of
 * strings, and passages between them. */
#ifndef TESTS_EVENING_H
#define TESTS_EVENING_H
#include "analysis/passages/findings.h"
#include "spezzato/seating.h"

enum { EVENING_GROUPS = 12, EVENING_BARS = 600 };

typedef struct Evening {
    Movement movement;
    Bar bars[EVENING_BARS];
    char numbers[EVENING_BARS][8];
    SectionMap map;
    Group groups[EVENING_GROUPS];
    spz_line line;
    Findings findings;
} Evening;

/* Strings in five sections, `bars` bars of four crotchets numbered from 1, nothing found yet. */
void evening_begin(Evening *evening, size_t bars);
void evening_end(Evening *evening);
/* One more group; its index. */
size_t evening_group(Evening *evening, spz_section section, int orchestra, bool solo);
/* One more passage in the bars `first` to `last` as printed, foreground and turns full and two; changed by the caller afterwards.
 */
spz_passage *evening_passage(Evening *evening, spz_kind kind, spz_section a, spz_section b, size_t first, size_t last,
                             double strength);
/* `count` passages of two bars each, eight bars apart. */
void evening_passages(Evening *evening, spz_kind kind, spz_section a, spz_section b, size_t count, double strength);
/* Coupling of the whole movement in notes of `shortest` seconds. */
void evening_couple(Evening *evening, spz_section a, spz_section b, double strength, double tightness, double shortest);

/* All defaults, then what the settings file `text` says; a fault in it fails the test. The caller frees. */
spz_settings *evening_settings(const char *text);
/* Judges; fails the test when that fails. `settings` may be NULL. */
spz_verdict *evening_judge(const Evening *evening, const spz_settings *settings, int year);
const spz_ranked *verdict_of(const spz_verdict *verdict, const char *name); /* NULL: not ranked */
/* Facts beside what a test writes: 'Vn I, Vc, Va, Vn II'; '5-12, 25-32' for the bars that something rests on. */
bool order_is(spz_order order, const char *names);
bool bars_are(const spz_basis *basis, const char *bars);
/* What the arrangement loses of that kind between the two; NULL: nothing. */
const spz_loss *loss_of(const spz_ranked *ranked, spz_kind kind, spz_section a, spz_section b);
/* The first reason of that kind; NULL: none. */
const spz_reason *reason_of(const spz_verdict *verdict, spz_reason_kind kind);
/* What the arrangement says of that term; NULL: nothing. */
const spz_term *term_of(const spz_ranked *ranked, spz_term_kind kind);
/* Best score of an opposed arrangement, and of one together. */
double best_opposed(const spz_verdict *verdict);
double best_together(const spz_verdict *verdict);
#endif
