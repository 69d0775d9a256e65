/* The season on paper: the plan first, then one page for each concert's changes. One file, nothing is fetched from anywhere. */
#include "writing/markup.h"
#include "pages/growing_report.h"
#include "pages/drawings/stage/change_drawing.h"
#include "pages/drawings/stage/stage_picture.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/season_forms.h"
#include "season/planning/season_plan.h"
#include "wording/phrase.h"
#include "wording/seatings/seating_words.h"
#include "wording/seasons/evening_words.h"

typedef struct Page {
    Markup html;
    PageHead head;
    Buffer text; /* under way */
    spz_language language;
    bool paged;
    const Hall *hall; /* of the concert under way; NULL where it is not at hand */
} Page;

static void begin(Page *page, const char *title, Buffer *out)
{
    buffer_init(&page->text);
    page->head = page_head(page->language, title, text_season_css);
    markup_begin(&page->html, out);
    markup_page_begin(&page->html, &page->head);
    markup_open(&page->html, "main");
}

static void finish(Page *page)
{
    markup_close(&page->html);
    markup_page_end(&page->html, &page->head);
    page->html.failed = page->html.failed || buffer_failed(&page->text);
    markup_end(&page->html);
    buffer_free(&page->text);
}

/* The text under way as one element. */
static void end_text(Page *page, const char *element, const char *class)
{
    if (page->text.length)
        markup_element(&page->html, element, class, page->text.text);
    buffer_clear(&page->text);
    markup_raw(&page->html, "\n");
}

typedef void ConcertSayer(Buffer *out, spz_language language, const spz_planned_concert *concert);

static void put_about(Page *page, ConcertSayer *sayer, const spz_planned_concert *concert)
{
    sayer(&page->text, page->language, concert);
    end_text(page, "p", NULL);
}

static void put_change_head(Page *page, const spz_changeover *change)
{
    Buffer text = {0};
    say_change_place(&page->text, page->language, change);
    buffer_puts(&page->text, ", ");
    say_minutes(&page->text, page->language, change->minutes);
    end_text(page, "h3", NULL);
    say_change(&text, page->language, change);
    SAY(&page->text, page->language, PHRASE_SEASON_SHEET_CHANGE, slot_text("change", text.text));
    end_text(page, "p", NULL);
    buffer_let_go(&page->html, &text);
}

static void put_desk_row(Page *page, const spz_desk_move *move)
{
    static void (*const cells[])(Buffer *, spz_language, const spz_desk_move *) = {say_moved_from, say_moved_to};
    Markup *html = &page->html;
    markup_line_end(html);
    markup_open(html, "tr");
    say_moved_desk(&page->text, page->language, move);
    end_text(page, "td", NULL);
    markup_element(html, "td", NULL, words_desk_fate(page->language, move));
    for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) {
        cells[i](&page->text, page->language, move);
        end_text(page, "td", NULL);
    }
    for (int i = 0; i < 2; i++) {
        markup_open_class(html, "td", "number");
        markup_format(html, "%d", i ? move->stands : move->chairs);
        markup_close(html);
    }
    markup_close(html);
}

static void put_stage(Page *page, const spz_changeover *change, bool after)
{
    markup_open(&page->html, "figure");
    change_drawing(&page->html, page->language, change, after);
    markup_open(&page->html, "figcaption");
    markup_element(&page->html, "strong", NULL, phrase_text(page->language, after ? PHRASE_CONCERT_AFTER : PHRASE_CONCERT_BEFORE));
    markup_words(&page->html, " ");
    markup_words(&page->html, words_arrangement(page->language, after || !change->from ? change->to : change->from));
    markup_close(&page->html);
    markup_close(&page->html);
}

/* Every desk by its name; the last row is what is to be carried, as told above. */
static void put_desks(Page *page, const spz_changeover *change)
{
    static const Phrase heads[] = {PHRASE_CHANGE_HEAD_DESK, PHRASE_CHANGE_HEAD_FATE, PHRASE_CHANGE_HEAD_FROM, PHRASE_CHANGE_HEAD_TO, PHRASE_CHANGE_HEAD_CHAIRS,
                                   PHRASE_CHANGE_HEAD_STANDS};
    enum { numbers = 4 }; /* from this column on */
    Markup *html = &page->html;
    markup_open_class(html, "div", "stages");
    put_stage(page, change, false);
    put_stage(page, change, true);
    markup_close(html);
    markup_open_class(html, "div", "desks-told");
    markup_open_class(html, "table", "desk-by-desk");
    markup_open(html, "thead");
    markup_open(html, "tr");
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++)
        markup_element(html, "th", i < numbers ? NULL : "number", phrase_text(page->language, heads[i]));
    markup_close(html);
    markup_close(html);
    markup_open(html, "tbody");
    for (int i = 0; i < change->desks; i++)
        put_desk_row(page, &change->desk_moves[i]);
    for (size_t i = 0; i < change->struck_count; i++)
        put_desk_row(page, &change->struck[i]);
    markup_close(html);
    markup_close(html);
    markup_close(html);
    say_desk_sums(&page->text, page->language, change);
    end_text(page, "p", "sum");
    markup_element(html, "p", "small", phrase_text(page->language, PHRASE_CHANGE_ABOUT));
}

static void put_change(Page *page, const spz_changeover *change)
{
    static void (*const last[])(Buffer *, spz_language, const spz_changeover *) = {say_load_of, say_desks_of, say_change_remark};
    markup_open_class(&page->html, "div", "change");
    put_change_head(page, change);
    markup_open_class(&page->html, "ul", "todo");
    say_orchestras(&page->text, page->language, change);
    end_text(page, "li", NULL);
    for (size_t i = 0; i < change->move_count; i++) {
        say_move(&page->text, page->language, &change->moves[i]);
        end_text(page, "li", NULL);
    }
    for (size_t i = 0; i < sizeof last / sizeof last[0]; i++) {
        last[i](&page->text, page->language, change);
        end_text(page, "li", NULL);
    }
    markup_close(&page->html);
    markup_close(&page->html);
}

static void put_losses(Page *page, const spz_planned_work *work)
{
    say_evidence(&page->text, page->language, work);
    say_verdicts(&page->text, page->language, work);
    end_text(page, "p", "small");
    if (!(work->points > 0))
        return;
    markup_open_class(&page->html, "ul", "small");
    for (size_t i = 0; i < work->movement_count; i++)
        if (work->movements[i].points > 0) {
            say_loss(&page->text, page->language, &work->movements[i], false);
            end_text(page, "li", NULL);
        }
    markup_close(&page->html);
}

static void put_change_line(Page *page, const spz_changeover *change, Phrase phrase)
{
    Buffer load = {0}, minutes = {0};
    say_load(&load, page->language, change);
    say_minutes(&minutes, page->language, change->minutes);
    SAY(&page->text, page->language, phrase, slot_text("load", load.text),
        slot_text("minutes", minutes.text));
    end_text(page, "p", "change small");
    buffers_let_go(&page->html, &load, &minutes);
}

/* The changes that come before the work or within it, one line each. */
static void put_changes_of(Page *page, const spz_planned_concert *concert, size_t place)
{
    for (size_t i = 0; i < concert->change_count; i++)
        if (concert->changes[i].work == place)
            put_change_line(page, &concert->changes[i], concert->changes[i].movement ? PHRASE_SEASON_CHANGE_WITHIN : PHRASE_SEASON_CHANGE_BEFORE_IT);
}

static void put_seating(Page *page, const spz_planned_work *work)
{
    Buffer order = {0};
    const spz_plan *plan = page->hall ? hall_plan_named(page->hall, work->seating, work->two_orchestras) : NULL;
    markup_open_class(&page->html, "div", "seated");
    if (plan)
        stage_picture(&page->html, page->language, plan, NULL, STAGE_GLYPH);
    say_seated_order(&order, page->language, work);
    SAY(&page->text, page->language, PHRASE_SEASON_SEATED_SHORT, slot_text("seating", words_arrangement(page->language, work->seating)), slot_text("order", order.text),
        slot_text("fixed", work->fixed ? phrase_text(page->language, PHRASE_SEASON_SEATED_FIXED_SHORT) : ""));
    end_text(page, "div", "seating");
    markup_close(&page->html);
    buffer_let_go(&page->html, &order);
}

static void put_work(Page *page, const spz_planned_concert *concert, size_t place, bool losses)
{
    const spz_planned_work *work = &concert->works[place];
    markup_open(&page->html, "li");
    buffer_puts(&page->text, work->title);
    if (work->year)
        buffer_printf(&page->text, " (%d)", work->year);
    end_text(page, "div", NULL);
    put_seating(page, work);
    buffer_puts(&page->text, work->note);
    end_text(page, "div", "small");
    say_pieces(&page->text, page->language, concert, place);
    end_text(page, "div", "pieces");
    if (losses) {
        put_changes_of(page, concert, place);
        put_losses(page, work);
    }
    if (work->interval_after)
        markup_element(&page->html, "div", "interval", phrase_text(page->language, PHRASE_SEASON_INTERVAL));
    markup_close(&page->html);
}

static void put_works(Page *page, const spz_planned_concert *concert, bool losses)
{
    markup_open(&page->html, "ol");
    for (size_t i = 0; i < concert->work_count; i++)
        put_work(page, concert, i, losses);
    markup_close(&page->html);
}

static void put_changed_desks(Page *page, const spz_changeover *change)
{
    bool two = change->two_before || change->two_after; /* its desks have longer names: they take the whole width of the paper */
    markup_open_class(&page->html, "div", two ? "one-change" : "one-change one");
    put_change(page, change);
    put_desks(page, change);
    markup_close(&page->html);
}

static void put_all_changes(Page *page, const spz_planned_concert *concert)
{
    markup_open_class(&page->html, "div", "changes");
    if (concert->repeats)
        put_about(page, say_repeats, concert);
    if (concert->setup)
        put_changed_desks(page, concert->setup);
    else if (!concert->repeats)
        markup_element(&page->html, "p", NULL, phrase_text(page->language, PHRASE_SEASON_SHEET_STAYS));
    for (size_t i = 0; i < concert->change_count; i++)
        put_changed_desks(page, &concert->changes[i]);
    if (concert->change_count == 0)
        markup_element(&page->html, "p", NULL, phrase_text(page->language, PHRASE_SEASON_SHEET_NO_CHANGE));
    markup_close(&page->html);
}

static void put_cautions(Page *page)
{
    markup_element(&page->html, "p", "cautions", report_cautions(page->language));
}

static void put_sheet(Page *page, const spz_planned_concert *concert)
{
    markup_open_class(&page->html, "section", "sheet");
    SAY(&page->text, page->language, PHRASE_SEASON_SHEET_OF, slot_text("concert", concert->name));
    end_text(page, "h2", NULL);
    put_about(page, say_when_where, concert);
    if (concert->usual_absence)
        put_about(page, say_usual_absence, concert);
    if (concert->problem)
        put_about(page, say_not_planned, concert);
    else {
        put_works(page, concert, false);
        put_all_changes(page, concert);
    }
    put_cautions(page);
    markup_close(&page->html);
}

/* What a conductor chooses first. */
static void put_one_seating(Page *page, const spz_planned_concert *concert)
{
    put_about(page, say_one_seating, concert);
    if (concert->unchanged.points > 0) {
        markup_open(&page->html, "ul");
        for (size_t i = 0; i < concert->unchanged.movement_count; i++) {
            say_given_up_by(&page->text, page->language, &concert->unchanged.movements[i]);
            end_text(page, "li", NULL);
        }
        markup_close(&page->html);
    }
    put_about(page, say_interval_gain, concert);
}

/* Its name, which leads to its page where there is one. */
static void put_concert_head(Page *page, const spz_planned_concert *concert, size_t index)
{
    const char *name = *concert->name ? concert->name : phrase_text(page->language, PHRASE_SEASON_UNNAMED);
    char address[32];
    markup_open(&page->html, "h2");
    if (page->paged)
        page_link(&page->html, spz_report_concert_name(index, address, sizeof address), 0, name);
    else
        markup_words(&page->html, name);
    markup_close(&page->html);
}

static void put_concert(Page *page, const spz_season *season, size_t index)
{
    const spz_planned_concert *concert = spz_season_concert(season, index);
    static ConcertSayer *const remarks[] = {say_given_up, say_one_more, say_other_order};
    page->hall = season->drafts[index].hall;
    put_concert_head(page, concert, index);
    put_about(page, say_when_where, concert);
    if (concert->usual_absence)
        put_about(page, say_usual_absence, concert);
    if (concert->problem) {
        put_about(page, say_not_planned, concert);
        return;
    }
    put_one_seating(page, concert);
    if (concert->setup)
        put_change_line(page, concert->setup, PHRASE_SEASON_SET_UP);
    if (concert->repeats)
        put_about(page, say_repeats, concert);
    put_works(page, concert, true);
    for (size_t i = 0; i < sizeof remarks / sizeof remarks[0]; i++)
        put_about(page, remarks[i], concert);
}

static void put_notes(Page *page, const spz_season *season, bool doubts, Phrase heading)
{
    size_t at = 0;
    const spz_table_note *note = next_noted(season, doubts, &at);
    if (!note)
        return;
    markup_element(&page->html, "h2", NULL, phrase_text(page->language, heading));
    markup_open_class(&page->html, "ul", "small");
    for (; note; note = next_noted(season, doubts, &at)) {
        say_noted_line(&page->text, page->language, note);
        end_text(page, "li", NULL);
    }
    markup_close(&page->html);
}

void season_html(const spz_season *season, const spz_season_look *look, Buffer *out)
{
    Page page = {.language = look->language, .paged = look->paged};
    spz_season_totals totals = spz_season_total(season);
    const char *title = phrase_text(page.language, PHRASE_SEASON_TITLE_PAGE);
    begin(&page, title, out);
    if (look->paged) { /* the overview of the movements lies beside it */
        ways_begin(&page.html, page.language, "index.html");
        ways_end(&page.html);
    }
    markup_open_class(&page.html, "section", "plan");
    markup_element(&page.html, "h1", NULL, title);
    say_sums(&page.text, page.language, &totals);
    end_text(&page, "p", NULL);
    if (totals.problems) {
        SAY(&page.text, page.language, PHRASE_SEASON_PROBLEMS, slot_number("n", (long)totals.problems));
        end_text(&page, "p", NULL);
    }
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_concert(&page, season, i);
    put_notes(&page, season, false, PHRASE_SEASON_NOT_USED);
    put_notes(&page, season, true, PHRASE_SEASON_DOUBTFUL);
    put_cautions(&page);
    markup_close(&page.html);
    page.hall = NULL;
    for (size_t i = 0; i < spz_season_concerts(season); i++)
        put_sheet(&page, spz_season_concert(season, i));
    finish(&page);
}

void sheet_html(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out)
{
    Page page = {.language = look->language};
    begin(&page, phrase_text(page.language, PHRASE_SEASON_SHEET), out);
    put_sheet(&page, concert);
    finish(&page);
}
