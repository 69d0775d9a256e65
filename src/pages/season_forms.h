/* season_forms.h - the season's reports, one function each; they append to `out`, failures are remembered there. */
#ifndef PAGES_SEASON_FORMS_H
#define PAGES_SEASON_FORMS_H
#include "spezzato/season.h"
#include "support/buffer.h"
#include "writing/facts.h"
#include "writing/text_layout.h"

/* What was asked for, with a width that can be set. */
static inline spz_season_look season_look_of(const spz_season_look *asked)
{
    spz_season_look look = asked ? *asked : (spz_season_look){0};
    if (look.width == 0)
        look.width = LAYOUT_USUAL_WIDTH;
    look.width = look.width < LAYOUT_LEAST_WIDTH ? LAYOUT_LEAST_WIDTH : look.width > LAYOUT_MOST_WIDTH ? LAYOUT_MOST_WIDTH : look.width;
    return look;
}

void season_text(const spz_season *season, const spz_season_look *look, Buffer *out);
void season_json(const spz_season *season, const spz_season_look *look, Buffer *out);
void season_csv(const spz_season *season, const spz_season_look *look, Buffer *out);
void season_html(const spz_season *season, const spz_season_look *look, Buffer *out);
void concert_html(const spz_season *season, size_t index, const spz_season_look *look, Buffer *out);
void calendar_text(const spz_season *season, const spz_season_look *look, Buffer *out);
void calendar_ics(const spz_season *season, const spz_season_look *look, Buffer *out);
extern const FieldTable calendar_fields;
extern const Columns calendar_columns;
void calendar_csv(const spz_season *season, const spz_season_look *look, Buffer *out);
void sheet_text(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out);
void sheet_html(const spz_planned_concert *concert, const spz_season_look *look, Buffer *out);
#endif
