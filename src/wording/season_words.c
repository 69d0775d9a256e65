#include "wording/season_words.h"
#include "support/path.h"
#include "writing/number_text.h"
#include <ctype.h>
#include <math.h>
#include <string.h>

const char *season_weekday(int weekday)
{
    static const char *const names[] = {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"};
    return names[weekday];
}

const char *season_month(int month)
{
    static const char *const names[] = {"January", "February", "March", "April", "May", "June", "July",
                                        "August", "September", "October", "November", "December"};
    return names[month - 1];
}

void season_date(Buffer *out, const spz_planned_concert *concert)
{
    if (concert->year)
        buffer_printf(out, "%s %d %s %d", season_weekday(concert->weekday), concert->day, season_month(concert->month), concert->year);
    else
        buffer_puts(out, "no date");
}

void season_iso_date(Buffer *out, const spz_planned_concert *concert)
{
    if (concert->year)
        buffer_printf(out, "%04d-%02d-%02d", concert->year, concert->month, concert->day);
}

void season_count(Buffer *out, long long count, const char *one, const char *many)
{
    buffer_printf(out, "%lld %s", count, count == 1 ? one : many);
}

/* One decimal, none where it would be a nought. */
static void add_number(Buffer *out, double value)
{
    char text[NUMBER_TEXT];
    number_text(value, 1, text);
    size_t length = strlen(text);
    if (length > 2 && strcmp(text + length - 2, ".0") == 0)
        text[length - 2] = '\0';
    buffer_puts(out, text);
}

static bool shown_as_one(double value)
{
    return lround(value * 10) == 10;
}

void season_points(Buffer *out, double points)
{
    if (points > 0 && points < 0.05)
        buffer_puts(out, "less than 0.1");
    else
        add_number(out, points);
    buffer_puts(out, shown_as_one(points) ? " point" : " points");
}

void season_minutes(Buffer *out, double minutes)
{
    add_number(out, minutes);
    buffer_puts(out, shown_as_one(minutes) ? " minute" : " minutes");
}

void season_place(Buffer *out, const spz_changeover *change)
{
    if (change->gap == SPZ_BEFORE_CONCERT)
        buffer_puts(out, "Before the concert");
    else if (change->gap == SPZ_BETWEEN_MOVEMENTS)
        buffer_printf(out, "Before movement %zu of '%s'", change->movement + 1, change->before);
    else
        buffer_printf(out, "%s between '%s' and '%s'", change->gap == SPZ_AT_INTERVAL ? "At the interval," : "While the audience waits,",
                      change->after, change->before);
}

void season_from_to(Buffer *out, const spz_changeover *change)
{
    static const char two[] = " for two orchestras";
    buffer_printf(out, "rom %s%s to %s%s", change->from, change->two_before ? two : "",
                  strcmp(change->from, change->to) == 0 ? "the same" : change->to, change->two_after ? two : change->two_before ? " for one" : "");
}

void season_orchestras(Buffer *out, const spz_changeover *change)
{
    if (change->two_after && !change->two_before)
        buffer_puts(out, "Every section divides, one half to each side of the podium: two orchestras that face each other");
    else if (change->two_before && !change->two_after)
        buffer_puts(out, "The two orchestras sit together again as one");
}

size_t season_seating_changes(const spz_planned_concert *concert)
{
    size_t count = 0;
    for (size_t i = 0; i < concert->change_count; i++)
        count += strcmp(concert->changes[i].from, concert->changes[i].to) != 0;
    return count;
}

void season_moves(Buffer *out, const spz_changeover *change)
{
    for (size_t i = 0; i < change->move_count; i++) {
        const spz_section_move *move = &change->moves[i];
        buffer_printf(out, "%s%s (", i ? "; " : "", spz_section_name(move->section));
        season_count(out, move->players, "player", "players");
        buffer_printf(out, ") from %s to %s", move->from, move->to);
    }
    if (change->two_before != change->two_after)
        season_orchestras(out, change);
    else if (change->move_count == 0)
        buffer_puts(out, "no section changes its place; desks draw together or apart");
}

void season_load(Buffer *out, const spz_changeover *change)
{
    season_count(out, change->chairs, "chair", "chairs");
    buffer_puts(out, " and ");
    season_count(out, change->stands, "stand", "stands");
}

const char *season_movement_title(const spz_planned_movement *movement)
{
    return *movement->title ? movement->title : path_name(movement->file);
}

bool season_any_seating(const spz_planned_work *work)
{
    for (size_t i = 0; i < work->movement_count; i++)
        if (work->movements[i].judged)
            return false;
    return true;
}

size_t season_thirds(const spz_planned_work *work)
{
    size_t count = 0;
    for (size_t i = 0; i < work->movement_count; i++)
        count += work->movements[i].thirds;
    return count;
}

void season_order(Buffer *out, const spz_planned_work *work)
{
    size_t thirds = season_thirds(work);
    buffer_printf(out, "%s%s", work->two_orchestras ? "two orchestras, each from its edge of the stage inward " : "", work->order);
    if (thirds)
        buffer_printf(out, "; violins in three%s", thirds < work->movement_count ? " in some movements" : "");
}

void season_evidence(Buffer *out, const spz_planned_work *work)
{
    if (work->problem)
        buffer_printf(out, "Not judged: %s; any seating will do", work->problem);
    else if (season_any_seating(work))
        buffer_puts(out, "Nothing in it speaks for a seating; any will do");
    else if (work->points > 0) {
        buffer_puts(out, "Gives up ");
        season_points(out, work->points);
    } else
        buffer_puts(out, "Gives up nothing");
}

void season_confidence(Buffer *out, const spz_planned_work *work)
{
    size_t counts[SPZ_FIRM + 1] = {0};
    for (size_t i = 0; i < work->movement_count; i++)
        if (work->movements[i].judged)
            counts[work->movements[i].confidence]++;
    const char *before = out->length ? " The evidence is " : "The evidence is ";
    for (int confidence = SPZ_FIRM; confidence >= SPZ_OPEN; confidence--) {
        if (counts[confidence] == 0)
            continue;
        buffer_printf(out, "%s%s", before, spz_confidence_name((spz_confidence)confidence));
        if (work->movement_count > 1)
            buffer_printf(out, " in %zu of %zu movements", counts[confidence], work->movement_count);
        before = ", ";
    }
    if (*before == ',')
        buffer_puts(out, ".");
    if (!work->problem && work->scores_missing) {
        buffer_puts(out, out->length ? " " : "");
        season_count(out, (long long)work->scores_missing, "score", "scores");
        buffer_puts(out, " of it could not be read; judged by the others.");
    }
}

void season_when_where(Buffer *out, const spz_planned_concert *concert)
{
    season_date(out, concert);
    if (*concert->hall)
        buffer_printf(out, ", %s%s", concert->hall, *concert->hall_settings ? "" : " (no settings of its own; counted on the stage of the house's settings)");
}

void season_unchanged(Buffer *out, const spz_planned_concert *concert)
{
    const spz_other_plan *other = &concert->unchanged;
    if (!other->possible) {
        buffer_printf(out, "Without any change: not possible, %s.", other->words);
        return;
    }
    if (season_seating_changes(concert) == 0) {
        buffer_printf(out, "The plan has no change%s: none that the house allows gains its price.",
                      concert->change_count ? " of seating (what is carried for two orchestras comes with the works)" : "");
        return;
    }
    buffer_printf(out, "Without any change: %s throughout gives up ", other->words);
    season_points(out, other->points);
    buffer_puts(out, "; prices counted, it is ");
    season_points(out, other->points + other->price - concert->points - concert->price);
    buffer_puts(out, " worse.");
}

void season_one_more(Buffer *out, const spz_planned_concert *concert)
{
    bool two = concert->two_more.possible;
    const spz_other_plan *other = two ? &concert->two_more : &concert->one_more;
    if (!concert->one_more.possible)
        buffer_puts(out, "One change more would gain nothing.");
    if (!other->possible)
        return;
    buffer_puts(out, two ? " If two more were allowed, " : "If one change more were allowed, ");
    season_points(out, concert->points - other->points);
    buffer_printf(out, " less would be given up. %s: %s.", other->changes == 1 ? "The change" : "The changes", other->words);
}

void season_other_order(Buffer *out, const spz_planned_concert *concert)
{
    const spz_other_plan *other = &concert->other_order;
    if (!other->possible)
        return;
    buffer_printf(out, "Remark: in the order %s it would need ", other->words);
    if (other->changes == 0)
        buffer_puts(out, "no change");
    else
        season_count(out, other->changes, "change", "changes");
    buffer_puts(out, " and give up ");
    season_points(out, other->points);
    buffer_puts(out, ".");
}

void season_sums(Buffer *out, const spz_season_totals *totals)
{
    season_count(out, (long long)totals->concerts, "concert", "concerts");
    buffer_puts(out, ", ");
    season_count(out, (long long)totals->works, "work", "works");
    buffer_puts(out, ", ");
    season_count(out, (long long)totals->movements, "movement", "movements");
    buffer_puts(out, ", ");
    season_count(out, (long long)totals->bars, "bar", "bars");
    buffer_puts(out, ". ");
    season_count(out, totals->changes, "change", "changes");
    if (totals->changes) {
        buffer_puts(out, " within the concerts (");
        season_count(out, totals->chairs, "chair", "chairs");
        buffer_puts(out, ", ");
        season_count(out, totals->stands, "stand", "stands");
        buffer_puts(out, ", ");
        season_minutes(out, totals->minutes);
        buffer_puts(out, ")");
    }
    buffer_puts(out, ". Given up: ");
    season_points(out, totals->points);
    if (totals->changes) {
        buffer_puts(out, " of evidence; without any change it would be ");
        season_points(out, totals->unchanged_points);
        if (totals->bound)
            buffer_puts(out, " (where the fixed seatings ask for a change, as planned)");
    } else
        buffer_puts(out, " of evidence");
    buffer_puts(out, ".");
}
