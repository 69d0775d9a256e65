/* season_words.h - the phrases that all reports of a season share. Each appends to `out`. */
#ifndef WORDING_SEASON_WORDS_H
#define WORDING_SEASON_WORDS_H
#include "spezzato/season.h"
#include "support/buffer.h"

void season_date(Buffer *out, const spz_planned_concert *concert);     /* 'Sunday 14 March 2027', 'no date' */
void season_iso_date(Buffer *out, const spz_planned_concert *concert); /* '2027-03-14', nothing without a date */
/* 'Sunday 14 March 2027, Old Mill'; where the hall has no settings of its own, that too: chairs are then counted on another stage. */
void season_when_where(Buffer *out, const spz_planned_concert *concert);
const char *season_weekday(int weekday); /* 0 Monday */
const char *season_month(int month);     /* 1 January */
void season_count(Buffer *out, long long count, const char *one, const char *many); /* '1 chair', '12 chairs' */
void season_points(Buffer *out, double points);  /* '1 point', '12.4 points' */
void season_minutes(Buffer *out, double minutes); /* '4.5 minutes' */
/* 'Before the concert', 'At the interval, between "A" and "B"', 'Between "A" and "B"', 'Before movement 2 of "A"'. */
void season_place(Buffer *out, const spz_changeover *change);
/* 'Vn II (12 players) from inner left to outer right; ...' */
void season_moves(Buffer *out, const spz_changeover *change);
/* 'rom violins together, cellos outside to the same for two orchestras': with its capital or small f before it. */
void season_from_to(Buffer *out, const spz_changeover *change);
/* How one orchestra becomes two or two become one; nothing in other changes. */
void season_orchestras(Buffer *out, const spz_changeover *change);
/* Changes within the concert in which the seating is another afterwards. */
size_t season_seating_changes(const spz_planned_concert *concert);
/* '26 chairs and 13 stands' */
void season_load(Buffer *out, const spz_changeover *change);
/* Title of a movement as told: its own, or its file's name. */
const char *season_movement_title(const spz_planned_movement *movement);
/* True when nothing in any movement of the work speaks for a seating, or no score of it could be read. */
bool season_any_seating(const spz_planned_work *work);
size_t season_thirds(const spz_planned_work *work); /* movements with the violins in three sections */
/* 'Vn I, Vc, Va, Vn II', with what the crew must know beside it: two orchestras, violins in three. */
void season_order(Buffer *out, const spz_planned_work *work);
/* 'Gives up 3.2 points', 'Gives up nothing', 'Nothing in it speaks for a seating; any will do'. */
void season_evidence(Buffer *out, const spz_planned_work *work);
/* 'The evidence is firm in 2 of 3 movements, open in 1 of 3 movements.'; nothing where nothing was judged. */
void season_confidence(Buffer *out, const spz_planned_work *work);
/* What a plan that was not taken would mean, one sentence each; nothing where there is nothing to say. */
void season_unchanged(Buffer *out, const spz_planned_concert *concert);
void season_one_more(Buffer *out, const spz_planned_concert *concert);
void season_other_order(Buffer *out, const spz_planned_concert *concert);
/* '4 concerts, 12 works, ...': sums of the whole season in one sentence. */
void season_sums(Buffer *out, const spz_season_totals *totals);
#endif
