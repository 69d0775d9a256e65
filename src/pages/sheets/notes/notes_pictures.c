#include "pages/sheets/notes/notes_pictures.h"
#include "pages/drawings/staves/stave.h"
#include "pages/own_texts.h"
#include "pages/drawings/staves/engrave.h"
#include "pages/drawings/staves/entry_colours.h"
#include "pages/drawings/staves/notation_parts.h"
#include "support/memory.h"
#include "wording/passage_words.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { STAVES_SHOWN = 4, BARS_SHOWN = 6, UNANSWERED_BARS = 4, ENTRIES_SHOWN = 32 };
static const StaveLook look = {620, STAVES_SHOWN, false};
static const char lower_strings[] = "#2f6b4f"; /* told from the violins, and from what is neither call nor answer */
static const double hanging = 8; /* units below the last stave */

/* What is shown of a citation: a passage that ends where its first answer (in a chain: the last of the first answers) has come. */
typedef struct Crop {
    spz_passage passage;
    spz_entry entries[ENTRIES_SHOWN];
    spz_players leads[STAVES_SHOWN]; /* who leads each of those told */
    size_t lead_count;
    bool led;                        /* the first of them */
} Crop;

static spz_players lead_of(const spz_entry *entry)
{
    return entry->leader < 63 ? (spz_players)1 << entry->leader : entry->players & SPZ_WIND_PLAYERS ? SPZ_WIND_PLAYERS : entry->players;
}

static size_t bar_within(const spz_movement *movement, spz_ticks end)
{
    return spz_movement_bar_at(movement, end > 0 ? end - 1 : 0);
}

/* Is it an entry of what is told? */
static bool is_heard(const Citation *citation, size_t entry)
{
    for (size_t i = 0; i < citation->heard_count; i++)
        if (citation->heard[i].entry == entry)
            return true;
    return citation->heard_count == 0;
}

/* Each told body of players by the group that leads it, entries up to the last of them. */
static void crop_dialogue(const MovementNotes *notes, const Citation *citation, Crop *crop)
{
    const spz_passage *passage = citation->passage;
    size_t last = 0, count = 0;
    spz_players all = 0;
    for (size_t i = 0; i < citation->told_count && i < STAVES_SHOWN; i++) {
        if (citation->told_entry[i] >= passage->entry_count)
            return;
        crop->leads[crop->lead_count++] = lead_of(&passage->entries[citation->told_entry[i]]);
        all |= crop->leads[i];
        last = citation->told_entry[i];
    }
    for (size_t i = 0; i <= last && i < passage->entry_count && count < ENTRIES_SHOWN; i++)
        if ((passage->entries[i].players & all) && is_heard(citation, i)) {
            crop->entries[count] = passage->entries[i];
            crop->entries[count++].players &= all;
        }
    crop->passage.entries = crop->entries;
    crop->passage.entry_count = count;
    for (int side = 0; side < 2; side++)
        crop->passage.sides[side].players = crop->leads[side < (int)crop->lead_count ? side : 0];
    crop->passage.first = passage->entries[citation->told_entry[0]].bar;
    crop->passage.last = bar_within(notes->movement, passage->entries[last].end);
    crop->led = citation->led;
    if (citation_named_first(citation)) {
        spz_players first = crop->leads[0];
        crop->leads[0] = crop->leads[1];
        crop->leads[1] = first;
    }
}

static void crop_citation(const MovementNotes *notes, const Citation *citation, Crop *crop)
{
    memset(crop, 0, sizeof *crop);
    crop->passage = *citation->passage;
    if (citation->told_count > 1 && citation->shape != SHAPE_SPLIT_LINE)
        crop_dialogue(notes, citation, crop);
    size_t most = crop->lead_count ? BARS_SHOWN : UNANSWERED_BARS;
    if (crop->passage.last < crop->passage.first || crop->passage.last > citation->last)
        crop->passage.last = citation->last;
    if (crop->passage.last - crop->passage.first >= most)
        crop->passage.last = crop->passage.first + most - 1;
}

void notes_picture_size(const Buffer *picture, double *width, double *height)
{
    const char *box = picture->text ? strstr(picture->text, "viewBox=\"0 0 ") : NULL;
    char *end = NULL;
    *width = box ? (double)strtol(box + strlen("viewBox=\"0 0 "), &end, 10) : 0;
    *height = end ? (double)strtol(end, NULL, 10) : 0;
}

/* The drawing as a file of its own, with its size and its look; with room for what hangs below the last stave. */
static void wrap(const Buffer *drawing, Buffer *out)
{
    double width, height;
    Markup html;
    notes_picture_size(drawing, &width, &height);
    markup_begin(&html, out);
    markup_xml_head(&html);
    markup_open(&html, "svg");
    markup_put(&html, "xmlns", "http://www.w3.org/2000/svg");
    markup_put_number(&html, "width", width, 0);
    markup_put_number(&html, "height", height + hanging, 0);
    markup_put_format(&html, "viewBox", "0 0 %d %d", (int)width, (int)(height + hanging));
    markup_open(&html, "style");
    markup_raw(&html, text_notation_css);
    markup_close(&html);
    markup_raw_piece(&html, drawing->text, drawing->length);
    markup_close(&html);
    markup_end(&html);
}

static void draw_picture(const spz_note_options *options, const MovementNotes *notes, const Crop *crop, Buffer *out)
{
    Buffer drawing = {0};
    Markup html;
    markup_begin(&html, &drawing);
    ScoreView view = {.html = &html, .language = options->language, .map = notes->sections, .movement = notes->movement};
    stave_line(&view, &crop->passage, crop->passage.first, look);
    markup_end(&html);
    if (drawing.length && !drawing.failed)
        wrap(&drawing, out);
    buffer_let_go(out, &drawing);
}

/* Of winds the uppermost part that begins their first entry stands for all. */
static bool wind_stave(const MovementNotes *notes, const Crop *crop, ExcerptPart *part, char name[WORDS_TEXT])
{
    for (size_t i = 0; i < crop->passage.entry_count; i++)
        if (crop->passage.entries[i].players & SPZ_WIND_PLAYERS) {
            if (!citation_wind_parts(notes->movement, notes->sections, &crop->passage.entries[i], &part->part, 1))
                return false;
            char plain[CONTEXT_TEXT];
            citation_part_name(notes->movement, part->part, plain);
            snprintf(name, WORDS_TEXT, "%s", plain);
            return true;
        }
    return false;
}

static bool stave_of(const spz_note_options *options, const MovementNotes *notes, const Crop *crop, size_t lead, ExcerptPart *part, char name[WORDS_TEXT])
{
    spz_group body;
    if (crop->leads[lead] & SPZ_WIND_PLAYERS)
        return wind_stave(notes, crop, part, name);
    if (!notation_parts(notes->sections, notes->movement, crop->leads[lead], part, 1) || !spz_players_named(notes->sections, crop->leads[lead], &body, 1))
        return false;
    words_body(options->language, &body, name);
    return true;
}

/* Before each stave its name and what it does there; calls and answers in colour. What can't be told apart is left to be drawn. */
static void cut_picture(const spz_note_options *options, const MovementNotes *notes, ExcerptSource *source, const Crop *crop, Buffer *excerpt)
{
    ExcerptPart parts[STAVES_SHOWN];
    char names[STAVES_SHOWN][2 * WORDS_TEXT];
    size_t count = 0;
    for (size_t i = 0; i < crop->lead_count && count < STAVES_SHOWN; i++) {
        char name[WORDS_TEXT];
        if (!stave_of(options, notes, crop, i, &parts[count], name))
            return;
        snprintf(names[count], sizeof names[count], crop->led ? "%s: %s" : "%s", name, phrase_text(options->language, i ? PHRASE_NOTES_KEY_ANSWERS : PHRASE_NOTES_KEY_CALLS));
        parts[count].name = names[count];
        count++;
    }
    EntryColours colours = {notes->sections, &crop->passage, lower_strings};
    source->colour = entry_colour;
    source->context = &colours;
    if (count > 1)
        excerpt_cut(source, parts, count, crop->passage.first, crop->passage.last, excerpt);
    source->colour = NULL;
    source->context = NULL;
}

static bool engrave_pictures(const char *path, const spz_note_options *options, const MovementNotes *notes, const Crop *crops, Buffer *pictures)
{
    size_t count = notes->citations.count;
    ExcerptSource source;
    if (!options->engraver || excerpt_open(&source, path, notes->movement) != SPZ_OK)
        return true;
    Buffer *excerpts = memory_resize(NULL, count, sizeof *excerpts);
    bool good = excerpts != NULL;
    for (size_t i = 0; i < count && excerpts; i++) {
        buffer_init(&excerpts[i]);
        cut_picture(options, notes, &source, &crops[i], &excerpts[i]);
        good = good && !excerpts[i].failed;
    }
    good = good && engrave_all(options->engraver, options->cache, excerpts, pictures, count) == SPZ_OK;
    for (size_t i = 0; i < count && excerpts; i++)
        buffer_free(&excerpts[i]);
    memory_free(excerpts);
    excerpt_close(&source);
    return good;
}

spz_status notes_pictures(const char *path, const spz_note_options *options, const MovementNotes *notes, Buffer *pictures)
{
    size_t count = notes->citations.count;
    Crop *crops = count ? memory_resize(NULL, count, sizeof *crops) : NULL;
    if (count && !crops)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < count; i++)
        crop_citation(notes, &notes->citations.at[i], &crops[i]);
    bool good = count == 0 || engrave_pictures(path, options, notes, crops, pictures);
    for (size_t i = 0; i < count; i++) {
        if (!pictures[i].length)
            draw_picture(options, notes, &crops[i], &pictures[i]);
        good = good && !pictures[i].failed;
    }
    memory_free(crops);
    return good ? SPZ_OK : SPZ_NO_MEMORY;
}
