/* The bowing committee's page: of each gesture the sections' notes above each other, with their slurs and signs, and what differs, with room to settle it.
 * An answer is drawn under its call, note under note, whenever it sounds. */
#include "pages/drawings/staves/stave.h"
#include "pages/growing_report.h"
#include "pages/own_texts.h"
#include "pages/page_heads.h"
#include "pages/sheets/bowings/bowings_sheet.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

enum { SYSTEMS_MOST = 12 };
static const double width_most = 720, width_least = 300, width_bar = 140; /* units of a line of notes */

static void put_line(SheetOut *sheet, const char *element, const char *class)
{
    sheet_put_line(sheet, element, class);
    markup_line_end(&sheet->html);
}

static void begin(SheetOut *sheet)
{
    sheet_page_begin(sheet, page_head(sheet->language, phrase_text(sheet->language, PHRASE_BOWINGS_TITLE), text_bowings_css), "main");
}

/* The sections of a meeting as if they played at once: groups of their own, answers moved onto their call. */
typedef struct Aligned {
    SectionMap map;
    Group groups[STRANDS_MOST];
    GroupSound *moved[STRANDS_MOST]; /* owned */
    spz_passage passage;
} Aligned;

static bool move_strand(const BowingMeeting *meeting, size_t strand, Aligned *aligned)
{
    const BowingStrand *own = &meeting->strands[strand];
    Group *group = &aligned->groups[strand];
    GroupSound *moved = memory_resize(NULL, group->sound_count + 1, sizeof *moved);
    size_t count = 0;
    if (!moved)
        return false;
    for (size_t i = 0; i < group->sound_count; i++)
        if (group->sounds[i].onset >= own->from && group->sounds[i].onset < own->to) {
            moved[count] = group->sounds[i];
            moved[count++].onset += meeting->strands[0].from - own->from;
        }
    aligned->moved[strand] = group->sounds = moved;
    group->sound_count = count;
    return true;
}

static size_t bar_at(const BowingsPage *page, Ticks when)
{
    int bar = movement_bar_at(page->reading->movement, when);
    return bar < 0 ? 0 : (size_t)bar;
}

static bool align(const BowingsPage *page, const BowingMeeting *meeting, Aligned *aligned)
{
    const BowingStrand *first = &meeting->strands[0];
    memset(aligned, 0, sizeof *aligned);
    aligned->map = *page->speaker.sections;
    aligned->map.groups = aligned->groups;
    aligned->map.group_count = meeting->strand_count;
    aligned->passage = *meeting->passage;
    aligned->passage.kind = SPZ_COUPLING;
    aligned->passage.entry_count = aligned->passage.link_count = 0;
    aligned->passage.onset = first->from;
    aligned->passage.end = first->to;
    aligned->passage.first = bar_at(page, first->from);
    aligned->passage.last = bar_at(page, first->to > first->from ? first->to - 1 : first->from);
    for (size_t i = 0; i < meeting->strand_count; i++) {
        aligned->groups[i] = page->speaker.sections->groups[meeting->strands[i].group];
        aligned->passage.sides[0].players |= (spz_players)1 << i;
        if (meeting->in_turn && !move_strand(meeting, i, aligned))
            return false;
    }
    aligned->passage.sides[1].players = aligned->passage.sides[0].players;
    return true;
}

static void let_go(Aligned *aligned)
{
    for (size_t i = 0; i < STRANDS_MOST; i++)
        memory_free(aligned->moved[i]);
}

/* The next bar of the first section, at or after `bar`, in which something differs; SIZE_MAX for none. */
static size_t next_difference(const BowingsPage *page, const BowingMeeting *meeting, size_t bar)
{
    for (size_t i = 0; i < meeting->count; i++)
        if (page->list->differences.at[meeting->first + i].bars[0] >= bar)
            return page->list->differences.at[meeting->first + i].bars[0];
    return SIZE_MAX;
}

/* The beginning; of a long one then the bars in which something differs. */
static void draw_meeting(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting)
{
    Aligned aligned;
    bool good = align(page, meeting, &aligned);
    ScoreView view = {.html = &sheet->html, .language = page->speaker.language, .map = &aligned.map, .movement = page->reading->movement};
    size_t bar = aligned.passage.first, bars = aligned.passage.last - bar + 1;
    StaveLook look = {fmin(width_most, width_least + width_bar * (double)bars), STRANDS_MOST, true};
    for (int system = 0; good && system < SYSTEMS_MOST && bar <= aligned.passage.last; system++) {
        size_t next = stave_line(&view, &aligned.passage, bar, look);
        bar = next > bar ? next_difference(page, meeting, next) : SIZE_MAX;
    }
    sheet->html.failed = sheet->html.failed || !good;
    let_go(&aligned);
}

static void put_row(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting, const BowingDifference *difference)
{
    Markup *html = &sheet->html;
    markup_open(html, "tr");
    say_bowing_bars(&sheet->line, &page->speaker, difference);
    put_line(sheet, "td", "bar");
    markup_element(html, "td", NULL, words_bowing_sign(page->speaker.language, difference->sign));
    say_bowing_difference(&sheet->line, &page->speaker, page->list, meeting, difference);
    put_line(sheet, "td", "who");
    markup_element(html, "td", "settled", "");
    markup_close_line(html);
}

static void put_differences(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting)
{
    static const Phrase heads[] = {PHRASE_HEAD_BAR, PHRASE_BOWINGS_HEAD_SIGN, PHRASE_HEAD_BEAT, PHRASE_BOWINGS_HEAD_SETTLED};
    Markup *html = &sheet->html;
    markup_open(html, "table");
    table_head(html, page->speaker.language, heads, sizeof heads / sizeof *heads);
    markup_open(html, "tbody");
    markup_line_end(html);
    for (size_t i = 0; i < meeting->count; i++)
        put_row(sheet, page, meeting, &page->list->differences.at[meeting->first + i]);
    markup_close(html);
    markup_close_line(html);
}

static void put_meeting(SheetOut *sheet, const BowingsPage *page, const BowingMeeting *meeting)
{
    markup_open_class(&sheet->html, "section", meeting->count ? "gesture differs" : "gesture");
    say_meeting(&sheet->line, &page->speaker, meeting);
    put_line(sheet, "h2", NULL);
    draw_meeting(sheet, page, meeting);
    if (meeting->count)
        put_differences(sheet, page, meeting);
    else
        markup_element(&sheet->html, "p", "small", phrase_text(page->speaker.language, PHRASE_BOWINGS_AS_ONE));
    markup_close_line(&sheet->html);
}

static void movement(SheetOut *sheet, const BowingsPage *page)
{
    Markup *html = &sheet->html;
    markup_open_class(html, "section", page->number ? "movement" : "movement first");
    markup_element(html, "h1", NULL, page->title);
    markup_open_class(html, "p", "small");
    markup_format(html, "%s. %s ", page->file, phrase_text(page->speaker.language, PHRASE_BOWINGS_ABOUT));
    say_bowings(&sheet->line, &page->speaker, page->list);
    markup_words(html, buffer_text(&sheet->line));
    buffer_clear(&sheet->line);
    markup_close_line(html);
    for (size_t i = 0; i < page->list->meetings.count; i++)
        put_meeting(sheet, page, &page->list->meetings.at[i]);
    markup_close_line(html);
}

const BowingsForm bowings_html = {begin, movement, sheet_page_end, false};
