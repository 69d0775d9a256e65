#include "wording/seasons/season_words.h"
#include "wording/doubt_words.h"
#include "support/path.h"
#include "wording/seatings/seating_words.h"
#include <string.h>

_Static_assert(PHRASE_SEASON_PROBLEM_HALL_FORBIDS_ALL - PHRASE_SEASON_PROBLEM_TOO_LONG == SPZ_HALL_FORBIDS_ALL - SPZ_CONCERT_TOO_LONG,
               "every problem has its phrase, in the order of season.h");
_Static_assert(PHRASE_STATUS_NO_STRINGS - PHRASE_STATUS_CANNOT_OPEN == SPZ_NO_STRINGS - SPZ_CANNOT_OPEN, "statuses in the order of status.h");

void say_iso_date(Buffer *out, const spz_planned_concert *concert)
{
    if (concert->year)
        buffer_printf(out, "%04d-%02d-%02d", concert->year, concert->month, concert->day);
}

const char *words_weekday(spz_language language, const spz_planned_concert *concert)
{
    return concert->year ? phrase_text(language, (Phrase)(PHRASE_SEASON_WEEKDAY_0 + concert->weekday)) : "";
}

const char *words_weekday_short(spz_language language, const spz_planned_concert *concert)
{
    return concert->year ? phrase_text(language, (Phrase)(PHRASE_SEASON_WEEKDAY_SHORT_0 + concert->weekday)) : "";
}

/* The date in a phrase, or another phrase where there is none. */
static void say_dated(Buffer *out, spz_language language, Phrase phrase, Phrase without, const spz_planned_concert *concert)
{
    if (concert->year)
        SAY(out, language, phrase, slot_text("weekday", words_weekday(language, concert)), slot_number("day", concert->day),
            slot_phrase("month", (Phrase)(PHRASE_SEASON_MONTH_1 + concert->month - 1)), slot_number("year", concert->year));
    else
        buffer_puts(out, phrase_text(language, without));
}

void say_date(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    say_dated(out, language, concert->day == 1 ? PHRASE_SEASON_DATE_FIRST : PHRASE_SEASON_DATE, PHRASE_SEASON_DATE_NONE, concert);
}

void say_month(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    say_dated(out, language, PHRASE_SEASON_MONTH_OF_YEAR, PHRASE_SEASON_MONTH_OF_YEAR_NONE, concert);
}

void say_when_where(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    Buffer date = {0};
    if (!*concert->hall) {
        say_date(out, language, concert);
        return;
    }
    say_date(&date, language, concert);
    SAY(out, language, *concert->hall_settings ? PHRASE_SEASON_WHERE : PHRASE_SEASON_WHERE_UNSETTLED, slot_text("date", date.text), slot_text("hall", concert->hall));
    buffer_let_go(out, &date);
}

static void say_conflict(Buffer *out, spz_language language, const spz_conflict *conflict)
{
    Buffer minutes = {0}, longest = {0}, word = {0};
    Phrase moment = (Phrase)(PHRASE_SEASON_MOMENT_BEFORE_CONCERT + (int)conflict->gap);
    say_minutes(&minutes, language, conflict->minutes);
    say_minutes(&longest, language, conflict->longest);
    SAY(&word, language, conflict->allowed ? PHRASE_SEASON_CONFLICT_GIVES : PHRASE_SEASON_CONFLICT_FORBIDS, slot_text("minutes", longest.text),
        slot_text("moment", phrase_text(language, moment)));
    SAY(out, language, conflict->work ? PHRASE_SEASON_CONFLICT : PHRASE_SEASON_CONFLICT_USUAL, slot_text("work", conflict->work), slot_number("line", conflict->line),
        slot_text("fixed", conflict->fixed), slot_text("other", conflict->other_work), slot_number("other-line", conflict->other_line),
        slot_text("other-fixed", conflict->other_fixed), slot_text("minutes", minutes.text), slot_text("word", word.text));
    buffers_let_go(out, &minutes, &longest, &word);
}

void say_table_note(Buffer *out, spz_language language, const spz_table_note *note)
{
    bool unread = note->fault == SPZ_FAULT_SCORE_UNREADABLE;
    bool known = note->count >= SPZ_CANNOT_OPEN && note->count <= SPZ_NO_STRINGS;
    const char *other = unread && known ? phrase_text(language, (Phrase)(PHRASE_STATUS_CANNOT_OPEN + (int)note->count - SPZ_CANNOT_OPEN)) : note->other;
    say_doubt(out, language, &(spz_doubt){.fault = note->fault, .name = note->name, .other = other, .count = note->count});
}

const spz_table_note *next_noted(const spz_season *season, bool doubts, size_t *at)
{
    while (*at < spz_season_notes(season)) {
        const spz_table_note *note = spz_season_note(season, (*at)++);
        if (note->doubt == doubts)
            return note;
    }
    return NULL;
}

void say_noted_line(Buffer *out, spz_language language, const spz_table_note *note)
{
    Buffer what = {0};
    say_table_note(&what, language, note);
    SAY(out, language, PHRASE_SEASON_NOTE, slot_number("line", note->line), slot_text("what", what.text));
    buffer_let_go(out, &what);
}

void say_concert_problem(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    Buffer file = {0};
    if (concert->conflict)
        say_conflict(out, language, concert->conflict);
    if (!concert->problem || concert->conflict)
        return;
    if (concert->hall_line)
        SAY(&file, language, PHRASE_SEASON_PROBLEM_HALL_LINE, slot_text("file", path_name(concert->hall_settings)), slot_number("line", concert->hall_line));
    else
        buffer_puts(&file, path_name(concert->hall_settings));
    SAY(out, language, (Phrase)(PHRASE_SEASON_PROBLEM_TOO_LONG + (int)concert->problem - SPZ_CONCERT_TOO_LONG), slot_text("file", file.text));
    buffer_let_go(out, &file);
}

void say_repeats(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    const spz_planned_concert earlier = {.name = "", .year = concert->repeats_day[0], .month = concert->repeats_day[1], .day = concert->repeats_day[2]};
    Buffer date = {0};
    if (!concert->repeats)
        return;
    say_iso_date(&date, &earlier);
    if (earlier.year && date.length)
        SAY(out, language, PHRASE_SEASON_REPEATS, slot_text("date", date.text));
    else
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_REPEATS_UNDATED));
    buffer_let_go(out, &date);
}

void say_usual_absence(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    if (!concert->usual_absence || concert->problem)
        return;
    SAY(out, language, (Phrase)(PHRASE_SEASON_USUAL_UNKNOWN + (int)concert->usual_absence - SPZ_USUAL_UNKNOWN),
        slot_text("seating", words_arrangement(language, concert->usual)), slot_phrase("enough", words_enough_stage(concert->usual_needs)),
        slot_decimal("wide", concert->usual_needs[0], 2), slot_decimal("deep", concert->usual_needs[1], 2));
}

void say_not_planned(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    Buffer problem = {0};
    say_concert_problem(&problem, language, concert);
    SAY(out, language, PHRASE_SEASON_NOT_PLANNED, slot_text("problem", problem.text));
    buffer_clear(&problem);
    for (size_t i = 0; i < concert->programme_count; i++)
        buffer_printf(&problem, "%s%s", i ? phrase_text(language, PHRASE_LIST_PART) : "", concert->programme[i]);
    if (problem.length)
        SAY(out, language, PHRASE_SEASON_PROGRAMME, slot_text("works", problem.text));
    buffer_let_go(out, &problem);
}

static Phrase work_problem(const spz_planned_work *work)
{
    bool known = work->cause >= SPZ_CANNOT_OPEN && work->cause <= SPZ_NO_STRINGS;
    return work->problem == SPZ_WORK_WITHOUT_SCORE ? PHRASE_SEASON_WITHOUT_SCORE
           : known                                 ? (Phrase)(PHRASE_STATUS_CANNOT_OPEN + (int)work->cause - SPZ_CANNOT_OPEN)
                                                   : PHRASE_STATUS_CANNOT_READ;
}

void say_work_problem(Buffer *out, spz_language language, const spz_planned_work *work)
{
    if (work->problem)
        buffer_puts(out, phrase_text(language, work_problem(work)));
}

const char *season_movement_title(const spz_planned_movement *movement)
{
    return *movement->title ? movement->title : path_name(movement->file);
}

const char *season_movement_own_title(const spz_planned_work *work, size_t movement)
{
    const char *first = season_movement_title(&work->movements[0]), *colon = work->movement_count > 1 ? strstr(first, ": ") : NULL;
    size_t common = 0;
    for (; colon; colon = strstr(colon + 2, ": ")) {
        size_t length = (size_t)(colon - first) + 2, alike = 0;
        while (alike < work->movement_count && strncmp(season_movement_title(&work->movements[alike]), first, length) == 0)
            alike++;
        common = alike == work->movement_count ? length : common;
    }
    return season_movement_title(&work->movements[movement]) + common;
}

/* movements with the violins in three sections */
static size_t season_thirds(const spz_planned_work *work)
{
    size_t count = 0;
    for (size_t i = 0; i < work->movement_count; i++)
        count += work->movements[i].thirds;
    return count;
}

static const char *order_text(Buffer *text, spz_language language, spz_order order)
{
    buffer_init(text);
    say_order(text, language, order);
    return text->text;
}

void say_seated_order(Buffer *out, spz_language language, const spz_planned_work *work)
{
    size_t thirds = season_thirds(work);
    Buffer order;
    Phrase beside = thirds < work->movement_count ? PHRASE_SEASON_ORDER_THIRDS_SOME : PHRASE_SEASON_ORDER_THIRDS;
    SAY(out, language, work->two_orchestras ? PHRASE_SEASON_ORDER_TWO : work->chamber ? PHRASE_SEASON_ORDER_CHAMBER : PHRASE_SEASON_ORDER, slot_text("order", order_text(&order, language, work->order)),
        slot_text("thirds", thirds ? phrase_text(language, beside) : ""));
    buffer_let_go(out, &order);
}

void say_seated(Buffer *out, spz_language language, const spz_planned_work *work)
{
    size_t thirds = season_thirds(work);
    Buffer order;
    SAY(out, language, work->two_orchestras ? PHRASE_SEASON_SEATED_TWO : work->chamber ? PHRASE_SEASON_SEATED_CHAMBER : PHRASE_SEASON_SEATED, slot_text("seating", words_arrangement(language, work->seating)),
        slot_text("fixed", work->fixed ? phrase_text(language, PHRASE_SEASON_SEATED_FIXED) : ""),
        slot_text("order", order_text(&order, language, work->order)));
    buffer_let_go(out, &order);
    if (thirds)
        SAY(out, language, thirds < work->movement_count ? PHRASE_SEASON_THIRDS_SOME : PHRASE_SEASON_THIRDS, slot_number("n", (long)thirds),
            slot_number("of", (long)work->movement_count));
}

/* Nothing in any movement speaks for a seating. */
static bool any_seating(const spz_planned_work *work)
{
    for (size_t i = 0; i < work->movement_count; i++)
        if (work->movements[i].judged)
            return false;
    return true;
}

void say_evidence(Buffer *out, spz_language language, const spz_planned_work *work)
{
    Buffer points = {0};
    say_points(&points, language, work->points);
    Phrase phrase = work->problem       ? PHRASE_SEASON_EVIDENCE_NOT_JUDGED
                    : any_seating(work) ? PHRASE_SEASON_EVIDENCE_ANY
                    : work->points > 0  ? PHRASE_SEASON_EVIDENCE_GIVES_UP
                                        : PHRASE_SEASON_EVIDENCE_NOTHING;
    SAY(out, language, phrase, slot_text("points", points.text), slot_phrase("problem", work_problem(work)));
    buffer_let_go(out, &points);
}

/* 'firm in 2 of 3 movements, open in 1 of 3 movements'. */
static void list_verdicts(Buffer *out, spz_language language, const spz_planned_work *work)
{
    size_t counts[SPZ_FIRM + 1] = {0};
    for (size_t i = 0; i < work->movement_count; i++)
        if (work->movements[i].judged)
            counts[work->movements[i].statement.confidence]++;
    for (int confidence = SPZ_FIRM; confidence >= SPZ_OPEN; confidence--) {
        Phrase name = (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + confidence);
        if (counts[confidence] == 0)
            continue;
        buffer_puts(out, out->length ? phrase_text(language, PHRASE_SEASON_VERDICT_NEXT) : "");
        if (work->movement_count > 1)
            SAY(out, language, PHRASE_SEASON_VERDICT_IN, slot_phrase("confidence", name), slot_number("n", (long)counts[confidence]),
                slot_number("of", (long)work->movement_count));
        else
            buffer_puts(out, phrase_text(language, name));
    }
}

static void begin_sentence(Buffer *out)
{
    buffer_puts(out, out->length ? " " : "");
}

/* Something was judged without a year, which might have said more. */
static bool year_is_missing(const spz_planned_work *work)
{
    bool missing = false;
    for (size_t i = 0; i < work->movement_count; i++)
        missing = missing || (work->movements[i].judged && !work->movements[i].year);
    return missing;
}

void say_verdicts(Buffer *out, spz_language language, const spz_planned_work *work)
{
    Buffer list = {0};
    list_verdicts(&list, language, work);
    if (list.length) {
        begin_sentence(out);
        SAY(out, language, PHRASE_SEASON_VERDICT, slot_text("list", list.text));
    }
    if (year_is_missing(work)) {
        begin_sentence(out);
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_YEAR_MISSING));
    }
    if (!work->problem && work->scores_missing) {
        begin_sentence(out);
        SAY(out, language, PHRASE_SEASON_SCORES_MISSING, slot_number("n", (long)work->scores_missing));
    }
    buffer_let_go(out, &list);
}

void say_loss(Buffer *out, spz_language language, const spz_planned_movement *movement, bool alone)
{
    Buffer points = {0}, losses = {0}, weakened = {0};
    say_points(&points, language, movement->points);
    say_losses(&losses, language, movement->losses, movement->loss_count);
    if (losses.length)
        SAY(&weakened, language, PHRASE_SEASON_WEAKENED, slot_text("losses", losses.text));
    SAY(out, language, alone ? PHRASE_SEASON_GIVES_UP : PHRASE_SEASON_GIVES_UP_MOVEMENT, slot_text("title", season_movement_title(movement)),
        slot_text("points", points.text), slot_text("best", words_arrangement(language, movement->best)), slot_text("weakened", weakened.text));
    buffers_let_go(out, &points, &losses, &weakened);
}

void say_given_up(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    Buffer points = {0}, price = {0};
    say_points(&points, language, concert->points);
    say_points(&price, language, concert->price);
    SAY(out, language, concert->price > 0 ? PHRASE_SEASON_GIVEN_UP_PRICED : PHRASE_SEASON_GIVEN_UP, slot_text("points", points.text), slot_text("price", price.text));
    buffers_let_go(out, &points, &price);
}

/* 'between 'A' and 'B' to violins opposed, ... (3.5 minutes, at a price of 13.5 points)' */
static void say_other_change(Buffer *out, spz_language language, const spz_other_change *change)
{
    Phrase phrase = change->movement                 ? PHRASE_SEASON_OTHER_MOVEMENT
                    : change->gap == SPZ_AT_INTERVAL ? PHRASE_SEASON_OTHER_INTERVAL
                                                     : PHRASE_SEASON_OTHER_WORKS;
    Buffer minutes = {0}, price = {0};
    say_minutes(&minutes, language, change->minutes);
    say_points(&price, language, change->price);
    SAY(out, language, phrase, slot_text("after", change->after), slot_text("before", change->before), slot_number("n", (long)change->movement + 1),
        slot_text("to", words_arrangement(language, change->to)), slot_phrase("cost", change->allowed ? PHRASE_SEASON_COST : PHRASE_SEASON_COST_NOT_ALLOWED),
        slot_text("minutes", minutes.text), slot_text("price", price.text));
    buffers_let_go(out, &minutes, &price);
}

void say_other_plan(Buffer *out, spz_language language, const spz_other_plan *plan)
{
    if (plan->seating)
        buffer_puts(out, words_arrangement(language, plan->seating));
    for (size_t i = 0; i < plan->list_count; i++) {
        buffer_puts(out, i ? phrase_text(language, PHRASE_SEASON_OTHER_NEXT) : "");
        say_other_change(out, language, &plan->list[i]);
    }
    for (size_t i = 0; i < plan->order_count; i++)
        SAY(out, language, i == 0 ? PHRASE_SEASON_IN_ORDER_FIRST : i + 1 < plan->order_count ? PHRASE_SEASON_IN_ORDER_NEXT : PHRASE_SEASON_IN_ORDER_LAST,
            slot_text("title", plan->order[i]));
}

void say_one_more(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    bool two = concert->two_more.possible;
    const spz_other_plan *other = two ? &concert->two_more : &concert->one_more;
    if (!concert->one_more.possible && concert->work_count > 1)
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_ONE_MORE_NOTHING));
    if (!other->possible)
        return;
    Buffer points = {0}, list = {0};
    double gain = concert->points - other->points;
    say_points(&points, language, gain);
    say_other_plan(&list, language, other);
    begin_sentence(out);
    SAY(out, language, two ? PHRASE_SEASON_TWO_MORE : gain < SAID_POINTS ? PHRASE_SEASON_ONE_MORE_LITTLE : PHRASE_SEASON_ONE_MORE, slot_text("points", points.text), slot_number("n", other->changes),
        slot_text("list", list.text));
    buffers_let_go(out, &points, &list);
}

void say_other_order(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    const spz_other_plan *other = &concert->other_order;
    if (!other->possible)
        return;
    Buffer points = {0}, order = {0};
    say_points(&points, language, other->points);
    say_other_plan(&order, language, other);
    SAY(out, language, other->changes ? PHRASE_SEASON_OTHER_ORDER : PHRASE_SEASON_OTHER_ORDER_NONE, slot_text("order", order.text),
        slot_number("n", other->changes), slot_text("points", points.text));
    buffers_let_go(out, &points, &order);
}

void say_changes_sum(Buffer *out, spz_language language, const spz_planned_concert *concert)
{
    Buffer minutes = {0};
    say_minutes(&minutes, language, concert->minutes);
    SAY(out, language, concert->change_count ? PHRASE_SEASON_CALENDAR_CHANGES : PHRASE_SEASON_CALENDAR_NO_CHANGE,
        slot_phrase("start", concert->setup ? PHRASE_SEASON_CALENDAR_SET_UP : PHRASE_SEASON_CALENDAR_USUAL), slot_number("n", (long)concert->change_count),
        slot_text("minutes", minutes.text));
    buffer_let_go(out, &minutes);
}

void say_sums(Buffer *out, spz_language language, const spz_season_totals *totals)
{
    Buffer points = {0}, minutes = {0}, within = {0}, unchanged = {0};
    say_minutes(&minutes, language, totals->minutes);
    say_points(&points, language, totals->unchanged_points);
    if (totals->changes) {
        SAY(&within, language, PHRASE_SEASON_SUMS_WITHIN, slot_number("chairs", totals->chairs), slot_number("stands", totals->stands), slot_text("minutes", minutes.text));
        SAY(&unchanged, language, PHRASE_SEASON_SUMS_UNCHANGED, slot_text("points", points.text));
        buffer_puts(&unchanged, totals->bound ? phrase_text(language, PHRASE_SEASON_SUMS_BOUND) : "");
    }
    buffer_clear(&points);
    say_points(&points, language, totals->points);
    SAY(out, language, PHRASE_SEASON_SUMS, slot_number("concerts", (long)totals->concerts), slot_number("works", (long)totals->works),
        slot_number("movements", (long)totals->movements), slot_number("bars", (long)totals->bars), slot_number("changes", totals->changes),
        slot_text("within", within.text), slot_text("points", points.text), slot_text("unchanged", unchanged.text));
    buffers_let_go(out, &points, &minutes, &within, &unchanged);
}
