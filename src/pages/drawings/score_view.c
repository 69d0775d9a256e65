#include "pages/drawings/score_view.h"
#include "support/numbers.h"
#include <stdio.h>
#include <string.h>

ScoreView score_view(Markup *html, const spz_report_options *options, const ShownMovement *shown)
{
    return (ScoreView){.html = html, .language = options->language, .map = shown->reading.sections, .movement = shown->reading.movement,
                       .findings = shown->reading.findings, .verdict = shown->reading.verdict, .options = options, .number = shown->number};
}

char *view_name(const ScoreView *view, const Group *group, char text[WORDS_TEXT])
{
    spz_group body = group ? group->about : (spz_group){.section = SPZ_WINDS};
    int orchestra = body.orchestra;
    body.orchestra = 0;
    words_body(view->language, &body, text);
    size_t length = strlen(text);
    if (orchestra)
        snprintf(text + length, WORDS_TEXT - length, " (%d)", orchestra);
    return text;
}

const char *view_class(spz_section section)
{
    switch (section) {
    case SPZ_VN1: return "vn1";
    case SPZ_VN2: return "vn2";
    case SPZ_VN3: return "vn3";
    case SPZ_VA: return "va";
    case SPZ_VC: return "vc";
    case SPZ_DB: return "db";
    default: return "winds";
    }
}

static bool basis_has(const spz_basis *basis, size_t passage)
{
    for (size_t i = 0; i < basis->passage_count; i++)
        if (basis->passages[i].passage == passage)
            return true;
    return false;
}

bool view_loses(const spz_verdict *verdict, size_t place, size_t passage)
{
    const spz_ranked *ranked = place < spz_verdict_count(verdict) ? spz_verdict_ranked(verdict, place) : NULL;
    for (size_t i = 0; ranked && i < ranked->loss_count; i++)
        if (basis_has(&ranked->losses[i].basis, passage))
            return true;
    return false;
}

bool view_cites(const ScoreView *view, size_t passage)
{
    for (size_t i = 0; i < spz_verdict_reasons(view->verdict); i++)
        if (basis_has(&spz_verdict_reason(view->verdict, i)->basis, passage))
            return true;
    for (size_t place = 0; place < spz_verdict_count(view->verdict); place++)
        if (view_loses(view->verdict, place, passage))
            return true;
    return false;
}

bool view_shows(const ScoreView *view, size_t passage)
{
    return report_shows(view->options, spz_findings_at(view->findings, passage)) || view_cites(view, passage);
}

size_t view_other(const spz_verdict *verdict)
{
    size_t count = spz_verdict_count(verdict);
    for (size_t place = 1; place < count; place++)
        if (spz_verdict_ranked(verdict, place)->opposed != spz_verdict_ranked(verdict, 0)->opposed)
            return place;
    return count > 1 ? 1 : 0;
}

int view_strength(const spz_passage *passage)
{
    return (int)spz_weight_of(passage->strength);
}

bool view_answers(const spz_passage *passage, const spz_entry *entry)
{
    return passage->kind == SPZ_SPLIT_LINE ? entry->leader != passage->entries[0].leader : entry->answer;
}

spz_players view_players(const spz_passage *passage)
{
    spz_players all = passage->sides[0].players | passage->sides[1].players;
    for (size_t i = 0; i < passage->entry_count; i++)
        all |= passage->entries[i].players;
    return all;
}

static bool same_sounds(const ScoreView *view, const spz_passage *first, const spz_passage *later, size_t group)
{
    const Group *of = &view->map->groups[group];
    size_t one = group_sound_at(of, first->onset), two = group_sound_at(of, later->onset);
    for (;; one++, two++) {
        bool ended = one >= of->sound_count || of->sounds[one].onset >= first->end, also = two >= of->sound_count || of->sounds[two].onset >= later->end;
        if (ended || also)
            return ended && also;
        const GroupSound *a = &of->sounds[one], *b = &of->sounds[two];
        if (a->onset - first->onset != b->onset - later->onset || a->duration != b->duration || a->note->midi != b->note->midi)
            return false;
    }
}

bool view_repeats(const ScoreView *view, size_t first, size_t later)
{
    const spz_passage *one = spz_findings_at(view->findings, first), *two = spz_findings_at(view->findings, later);
    spz_players players = view_players(one);
    if (one->kind != two->kind || one->onset >= two->onset || one->end - one->onset != two->end - two->onset || players != view_players(two) ||
        one->entry_count != two->entry_count || !(players & ~SPZ_WIND_PLAYERS))
        return false;
    for (size_t group = 0; group < view->map->group_count && group < 63; group++)
        if (players >> group & 1 && !same_sounds(view, one, two, group))
            return false;
    return true;
}

size_t view_first_heard(const ScoreView *view, size_t passage)
{
    for (size_t i = 0; i < passage; i++)
        if (view_repeats(view, i, passage))
            return i;
    return passage;
}

typedef struct Decisive {
    size_t passages[VIEW_DECISIVE];
    size_t count;
} Decisive;

/* It, or the same music elsewhere. */
static bool has(const ScoreView *view, const Decisive *chosen, size_t passage)
{
    for (size_t i = 0; i < chosen->count; i++)
        if (view_first_heard(view, chosen->passages[i]) == view_first_heard(view, passage))
            return true;
    return false;
}

/* Those that speak for the verdict, ground by ground: the reasons come weightiest first, and so do the passages of each. */
static void choose_from_grounds(const ScoreView *view, Decisive *chosen)
{
    for (size_t i = 0; i < spz_verdict_reasons(view->verdict); i++) {
        const spz_reason *reason = spz_verdict_reason(view->verdict, i);
        for (size_t p = 0; p < reason->basis.passage_count && reason->points > 0 && chosen->count < VIEW_DECISIVE; p++) {
            size_t passage = reason->basis.passages[p].passage;
            if (passage < spz_findings_count(view->findings) && !has(view, chosen, passage))
                chosen->passages[chosen->count++] = passage;
        }
    }
}

static void choose_strongest(const ScoreView *view, Decisive *chosen)
{
    while (chosen->count < VIEW_DECISIVE) {
        size_t best = SIZE_MAX;
        for (size_t i = 0; i < spz_findings_count(view->findings); i++) {
            const spz_passage *passage = spz_findings_at(view->findings, i);
            bool better = best == SIZE_MAX || passage->strength > spz_findings_at(view->findings, best)->strength;
            if (passage->kind != SPZ_COUPLING && view_strength(passage) > 0 && !has(view, chosen, i) && better)
                best = i;
        }
        if (best == SIZE_MAX)
            return;
        chosen->passages[chosen->count++] = best;
    }
}

size_t view_decisive(const ScoreView *view, size_t out[VIEW_DECISIVE])
{
    Decisive chosen = {.count = 0};
    choose_from_grounds(view, &chosen);
    choose_strongest(view, &chosen);
    for (size_t i = 0; i < chosen.count; i++) {
        size_t at = i;
        for (; at > 0 && out[at - 1] > chosen.passages[i]; at--)
            out[at] = out[at - 1];
        out[at] = chosen.passages[i];
    }
    return chosen.count;
}

size_t spz_report_decisive(const spz_reading *reading, size_t movement, const spz_report_options *options, size_t chosen[SPZ_DECISIVE_MOST])
{
    ShownMovement shown = {.reading = spz_reading_at(reading, movement), .number = movement + 1, .of = spz_reading_count(reading)};
    ScoreView view = score_view(NULL, options, &shown);
    return shown.reading.verdict ? view_decisive(&view, chosen) : 0;
}

void draw_percent(Markup *html, const char *attribute, double share)
{
    char text[NUMBER_TEXT];
    markup_put_format(html, attribute, "%s%%", number_text_short(100 * share, 3, text));
}

void draw_across(Markup *html, const char *class, double from, double to, double y_from, double y_to)
{
    markup_open_class(html, "line", class);
    draw_percent(html, "x1", from);
    draw_percent(html, "x2", to);
    markup_put_number(html, "y1", y_from, 1);
    markup_put_number(html, "y2", y_to, 1);
    markup_close_void(html);
}

void draw_dot(Markup *html, double at, double y, double radius)
{
    markup_open_class(html, "circle", "dot");
    draw_percent(html, "cx", at);
    markup_put_number(html, "cy", y, 1);
    markup_put_number(html, "r", radius, 1);
    markup_close_void(html);
}
