/* A player beside a decisive passage: the same bars in two seatings, switched while they play, from a seat of the listener's choice. The sound lies
 * beside the page, one file for each seat, and is fetched when it is asked for; without a script, or without sound, there is no player. */
#include "pages/web/web.h"
#include "support/sha256.h"
#include "wording/seatings/seating_words.h"
#include "wording/seatings/stage_words.h"
#include <stdio.h>

const char *web_sound_key(const spz_report_options *options, char key[SHA256_TEXT])
{
    Sha256 sum;
    if (options->sound_count == 0)
        return NULL;
    sha256_begin(&sum);
    for (size_t i = 0; i < options->sound_count; i++)
        sha256_add_text(&sum, options->sounds[i].file);
    sha256_end(&sum, key);
    return key;
}

static const spz_page_sound *sound_of(const Web *web, size_t passage)
{
    const spz_report_options *options = &web->report->options;
    for (size_t i = 0; i < options->sound_count; i++)
        if (options->sounds[i].movement + 1 == web->shown->number && options->sounds[i].passage == passage)
            return &options->sounds[i];
    return NULL;
}

static void seatings(const Web *web, const spz_page_sound *sound, size_t passage)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    markup_open(html, "fieldset");
    markup_element(html, "legend", "unseen", phrase_text(language, PHRASE_PLAYER_SEATING));
    for (int version = 0; version < SPZ_LISTEN_VERSIONS; version++) {
        markup_open(html, "label");
        markup_open(html, "input");
        markup_put(html, "type", "radio");
        markup_put_format(html, "name", "heard-%zu-%zu", web->shown->number, passage);
        markup_put_format(html, "value", "%d", version);
        if (version == 0)
            markup_put(html, "checked", "checked");
        markup_close_void(html);
        markup_words(html, " ");
        markup_words(html, words_arrangement(language, sound->arrangements[version]));
        markup_close(html);
    }
    markup_close(html);
}

static void seats(const Web *web, const spz_page_sound *sound)
{
    Markup *html = web->html;
    spz_language language = web->view.language;
    markup_open(html, "label");
    markup_words(html, phrase_text(language, PHRASE_PLAYER_SEAT));
    markup_words(html, " ");
    markup_open(html, "select");
    for (size_t i = 0; i < sound->seat_count; i++) {
        spz_seat seat = sound->seats[i];
        markup_open(html, "option");
        markup_put(html, "value", spz_seat_name(seat));
        markup_words(html, seat == SPZ_SEAT_PODIUM ? phrase_text(language, PHRASE_SOUND_PODIUM) : words_listener(language, (size_t)seat));
        markup_close(html);
    }
    markup_close(html);
    markup_close(html);
}

void web_player(const Web *web, size_t passage)
{
    char key[SHA256_TEXT];
    Markup *html = web->html;
    spz_language language = web->view.language;
    const spz_page_sound *sound = sound_of(web, passage);
    if (!sound)
        return;
    markup_open_class(html, "div", "player");
    markup_put(html, "role", "group");
    WEB_PUT(html, "aria-label", language, PHRASE_PLAYER_LABEL, slot_text("first", sound->first_bar), slot_text("last", sound->last_bar));
    markup_put(html, "hidden", "hidden");
    markup_put(html, "data-file", sound->file);
    markup_put(html, "data-key", web_sound_key(&web->report->options, key));
    markup_put(html, "data-missing", phrase_text(language, PHRASE_PLAYER_MISSING));
    markup_put(html, "data-stop", phrase_text(language, PHRASE_PLAYER_STOP));
    markup_open(html, "button");
    markup_put(html, "type", "button");
    markup_words(html, phrase_text(language, PHRASE_PLAYER_PLAY));
    markup_close(html);
    seatings(web, sound, passage);
    seats(web, sound);
    markup_open(html, "output");
    markup_close(html);
    markup_close_line(html);
}

void web_player_caution(const Web *web)
{
    const spz_report_options *options = &web->report->options;
    for (size_t i = 0; i < options->sound_count; i++)
        if (options->sounds[i].movement + 1 == web->shown->number) {
            markup_element(web->html, "p", "small soft sounds-about", phrase_text(web->view.language, PHRASE_SOUND_CAUTION));
            return;
        }
}
