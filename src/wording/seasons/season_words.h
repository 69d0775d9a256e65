/* season_words.h - the sentences that all reports of a season share; change_words.h has those about changes. Each appends to `out`. */
#ifndef WORDING_SEASON_WORDS_H
#define WORDING_SEASON_WORDS_H
#include "wording/seatings/change_words.h"

#define SAID_POINTS 0.5 /* points of evidence: less is as good as nothing to a conductor, and told in few words */

void say_date(Buffer *out, spz_language language, const spz_planned_concert *concert);     /* 'Sunday 14 March 2027', 'no date' */
void say_iso_date(Buffer *out, const spz_planned_concert *concert);                        /* '2027-03-14', nothing without a date */
void say_month(Buffer *out, spz_language language, const spz_planned_concert *concert);    /* 'March 2027', 'Without a date' */
const char *words_weekday(spz_language language, const spz_planned_concert *concert);       /* 'Sunday'; "" without a date */
const char *words_weekday_short(spz_language language, const spz_planned_concert *concert); /* 'Sun' */
/* That the programme was set up for an earlier performance; nothing where it was not. */
void say_repeats(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* That the hall has to do without the house's usual seating, and what would be enough; nothing where it need not. */
void say_usual_absence(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* 'Sunday 14 March 2027, Old Mill'; where the hall has no settings of its own, that too: chairs are then counted on another stage. */
void say_when_where(Buffer *out, spz_language language, const spz_planned_concert *concert);
void say_concert_problem(Buffer *out, spz_language language, const spz_planned_concert *concert); /* why it could not be planned */
void say_not_planned(Buffer *out, spz_language language, const spz_planned_concert *concert);     /* the same as a sentence */
/* What of the table could not be used, or is doubtful, without its line. */
void say_table_note(Buffer *out, spz_language language, const spz_table_note *note);
void say_noted_line(Buffer *out, spz_language language, const spz_table_note *note); /* 'Line 4: ... .' */
/* The next line, from *at on, that could not be used, or, with `doubts`, is doubtful; NULL behind the last. Moves *at on. */
const spz_table_note *next_noted(const spz_season *season, bool doubts, size_t *at);
void say_work_problem(Buffer *out, spz_language language, const spz_planned_work *work);          /* why nothing of it could be read */
/* Title of a movement as told: its own, or its file's name. */
const char *season_movement_title(const spz_planned_movement *movement);
/* The same without what the titles of all the work's movements begin with, up to a colon. */
const char *season_movement_own_title(const spz_planned_work *work, size_t movement);
/* 'Vn I, Vc, Va, Vn II', with what the crew must know beside it: two orchestras, violins in three. */
void say_seated_order(Buffer *out, spz_language language, const spz_planned_work *work);
/* 'Violins opposed, ... . From house left to house right: ...', as sentences. */
void say_seated(Buffer *out, spz_language language, const spz_planned_work *work);
/* 'Gives up 3.2 points.', 'Gives up nothing.', 'Nothing in it speaks for a seating; any will do.' */
void say_evidence(Buffer *out, spz_language language, const spz_planned_work *work);
/* 'The evidence is firm in 2 of 3 movements, open in 1 of 3 movements.', and scores that are missing; nothing where nothing was judged. */
void say_verdicts(Buffer *out, spz_language language, const spz_planned_work *work);
/* What a movement gives up, and against what; `alone`: without its title. */
void say_loss(Buffer *out, spz_language language, const spz_planned_movement *movement, bool alone);
void say_given_up(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* What a plan that was not taken would mean; nothing where there is nothing to say. */
void say_one_more(Buffer *out, spz_language language, const spz_planned_concert *concert);
void say_other_order(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* Such a plan by itself: its seating, its changes, or its order of works. */
void say_other_plan(Buffer *out, spz_language language, const spz_other_plan *plan);
/* 'Set up afresh; 1 change, 3.5 minutes.' */
void say_changes_sum(Buffer *out, spz_language language, const spz_planned_concert *concert);
/* '4 concerts, 12 works, ...': sums of the whole season. */
void say_sums(Buffer *out, spz_language language, const spz_season_totals *totals);
#endif
