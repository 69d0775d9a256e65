/* Which report of a season in which form; the lines for other computers. */
#include "writing/document.h"
#include "pages/season_forms.h"
#include "season/planning/season_plan.h"

enum { FORMATS = SPZ_AS_ICS + 1 };
typedef void SeasonForm(const spz_season *season, const spz_season_look *look, Buffer *out);

static spz_status write_form(SeasonForm *const forms[FORMATS], const spz_season *season, spz_format format, const spz_season_look *asked, spz_document **out)
{
    Buffer text;
    spz_season_look look = season_look_of(asked);
    *out = NULL;
    if ((int)format < 0 || (int)format >= FORMATS || !forms[format])
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    forms[format](season, &look, &text);
    return document_take(&text, out);
}

spz_status spz_report_season(const spz_season *season, spz_format format, const spz_season_look *look, spz_document **out)
{
    static SeasonForm *const forms[FORMATS] = {
        [SPZ_AS_TEXT] = season_text, [SPZ_AS_JSON] = season_json, [SPZ_AS_CSV] = season_csv, [SPZ_AS_HTML] = season_html};
    return write_form(forms, season, format, look, out);
}

spz_status spz_report_calendar(const spz_season *season, spz_format format, const spz_season_look *look, spz_document **out)
{
    static SeasonForm *const forms[FORMATS] = {[SPZ_AS_TEXT] = calendar_text, [SPZ_AS_CSV] = calendar_csv, [SPZ_AS_ICS] = calendar_ics};
    return write_form(forms, season, format, look, out);
}

spz_status spz_report_changes(const spz_season *season, size_t concert, spz_format format, const spz_season_look *asked, spz_document **out)
{
    Buffer text;
    spz_season_look look = season_look_of(asked);
    *out = NULL;
    const spz_planned_concert *planned = spz_season_concert(season, concert);
    if (!planned || (format != SPZ_AS_TEXT && format != SPZ_AS_HTML))
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    if (format == SPZ_AS_TEXT)
        sheet_text(planned, &look, &text);
    else
        sheet_html(planned, &look, &text);
    return document_take(&text, out);
}

spz_status spz_report_concert(const spz_season *season, size_t concert, spz_format format, const spz_season_look *asked, spz_document **out)
{
    Buffer text;
    spz_season_look look = season_look_of(asked);
    *out = NULL;
    if (!spz_season_concert(season, concert) || format != SPZ_AS_HTML)
        return SPZ_BAD_ARGUMENT;
    buffer_init(&text);
    concert_html(season, concert, &look, &text);
    return document_take(&text, out);
}

spz_status spz_season_lines(const char *path, const spz_season_options *options, const spz_sink *sink, spz_document **out)
{
    static const spz_season_options usual = {.jobs = 1};
    spz_season season;
    Buffer text;
    *out = NULL;
    buffer_init(&text);
    spz_status status = season_prepare(path, options ? options : &usual, sink, &season);
    if (status == SPZ_OK) {
        season_tell(&season, sink);
        season_write_lines(&season, &text);
        status = document_take(&text, out);
    }
    buffer_free(&text);
    season_release(&season);
    return status;
}
