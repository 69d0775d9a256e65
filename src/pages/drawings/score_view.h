/* score_view.h - what every drawing of a movement asks of its passages and players, and small helpers of drawings that grow with the page. */
#ifndef PAGES_DRAWINGS_SCORE_VIEW_H
#define PAGES_DRAWINGS_SCORE_VIEW_H
#include "pages/growing_report.h"
#include "sections/section_map.h"
#include "writing/markup.h"

typedef struct ScoreView {
    Markup *html;
    spz_language language;
    const SectionMap *map;
    const Movement *movement;
    const spz_findings *findings;
    const spz_verdict *verdict;
    const spz_report_options *options; /* which passages are shown */
    size_t number;                     /* of the movement on its page, for links */
} ScoreView;

ScoreView score_view(Markup *html, const spz_report_options *options, const ShownMovement *shown);

/* A body of players as a drawing has room for it: 'Vn I', 'Va 2', of two orchestras 'Vn I (2)'. `group` NULL: winds. */
char *view_name(const ScoreView *view, const Group *group, char text[WORDS_TEXT]);
/* The class that gives a section its colour: 'vn1', 'va'; 'winds' for those without strings. */
const char *view_class(spz_section section);
/* A passage that is not left out: asked for by kind and strength, or cited by the verdict as a ground or a loss. */
bool view_shows(const ScoreView *view, size_t passage);
/* Whether the verdict names the passage: as a ground, or as lost in some arrangement. */
bool view_cites(const ScoreView *view, size_t passage);
/* Whether the arrangement on that place of the ranking weakens the passage. */
bool view_loses(const spz_verdict *verdict, size_t place, size_t passage);
/* The place of the best arrangement with the violins placed the other way; the second best where there is none; 0 for none at all. */
size_t view_other(const spz_verdict *verdict);
/* 0 marginal, 1 clear, 2 striking. */
int view_strength(const spz_passage *passage);
/* Whether the entry is drawn as an answer. In a split line nobody calls: the one who begins is told from the other. */
bool view_answers(const spz_passage *passage, const spz_entry *entry);
/* All who have an entry or stand on a side. */
spz_players view_players(const spz_passage *passage);
/* Whether passage `later` is the music of `first` once more, note for note in all who take part: a repeat written out. */
bool view_repeats(const ScoreView *view, size_t first, size_t later);
/* The earliest passage that this one repeats note for note; itself where there is none. */
size_t view_first_heard(const ScoreView *view, size_t passage);
/* The three passages (fewer where there are fewer) that bring the verdict most, in order of bars; the strongest where nothing was judged. */
enum { VIEW_DECISIVE = SPZ_DECISIVE_MOST };
size_t view_decisive(const ScoreView *view, size_t chosen[VIEW_DECISIVE]);

/* Drawings that grow with the page: across in shares of its width, down in pixels. */
/* An attribute in hundredths of the width: '12.5%'. */
void draw_percent(Markup *html, const char *attribute, double share);
/* A straight line between two points. */
void draw_across(Markup *html, const char *class, double from, double to, double y_from, double y_to);
void draw_dot(Markup *html, double at, double y, double radius);
#endif
