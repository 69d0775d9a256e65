#include "cli/messages.h"
#include "cli/output.h"
#include "cli/places/engraver_place.h"
#include "cli/note_pictures.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const Option option_form = {"format", 0, "FORM", "text, markdown, html, odt (for a word processor), json or csv; for listeners\n                              html or svg"};
static const Option option_lasts = {"lasts", 0, "TIME", "how long the movement lasts, such as 7:10; for several movements\n"
                                                        "                              once each, in their order"};
static const Option option_most = {"most", 0, "NUMBER", "passages cited of each movement at most; 6 when not given"};
static const Option option_many = {"many", 0, NULL, "all clear and striking passages"};
static const Option option_at = {"at", 0, "BAR=TIME", "when a bar is heard in a performance, such as 66=2:15; as often as known,\n"
                                                      "                              for one movement"};
static const Option option_for = {"for", 0, "READERS", "writers (when not given), or listeners: a time line of each movement as a picture (html, svg)"};
static const Option option_notation = {"notation", 0, NULL, "with --format html: the notes of each citation as a picture"};
static const Option option_engraver = {"engraver", 0, "FOLDER", "what engraves these notes (`make engraver`); none: they are drawn"};
static const Option option_taps = {"taps", 0, "FILE", "the same from a table (CSV): a bar and its time on each line"};
static const Option *const options[] = {&option_language, &option_for, &option_lasts, &option_at,  &option_taps, &option_most, &option_many,   &option_all,     &option_strength,
                                        &option_year,     &option_settings, &option_set, &option_form, &option_notation, &option_pictures, &option_picture_form, &option_engraver, &option_output, &option_verbose, NULL};

enum { MOVEMENTS_MOST = 64, ANCHORS_MOST = 256, BAR_TEXT = 16 };

/* What --at says. */
typedef struct Moments {
    spz_note_anchor at[ANCHORS_MOST];
    char bars[ANCHORS_MOST][BAR_TEXT];
    size_t count;
} Moments;

static bool read_lasts(const Arguments *arguments, double *lasts, size_t *count)
{
    const char *text;
    for (*count = 0; (text = arguments_each(arguments, &option_lasts, *count)) != NULL; ++*count) {
        double seconds = strpbrk(text, ":.") ? spz_seconds_from_text(text) : -1; /* a bare number may be meant as minutes */
        if (*count == MOVEMENTS_MOST || seconds <= 0) {
            complain_usage(arguments->command, *count == MOVEMENTS_MOST ? "--lasts %s: too many movements" : "--lasts %s: it is minutes and seconds, such as 7:10", text);
            return false;
        }
        lasts[*count] = seconds;
    }
    return true;
}

/* --at BAR=TIME, in order of time. */
static bool read_moments(const Arguments *arguments, Moments *moments)
{
    const char *text;
    for (moments->count = 0; (text = arguments_each(arguments, &option_at, moments->count)) != NULL; moments->count++) {
        const char *sign = strrchr(text, '=');
        size_t length = sign ? (size_t)(sign - text) : 0, i = moments->count;
        double seconds = sign ? spz_seconds_from_text(sign + 1) : -1;
        if (i == ANCHORS_MOST || length == 0 || length >= BAR_TEXT || seconds < 0) {
            complain_usage(arguments->command, i == ANCHORS_MOST ? "--at %s: too many moments" : "--at %s: it is a bar and its time, such as 66=2:15", text);
            return false;
        }
        memcpy(moments->bars[i], text, length);
        moments->bars[i][length] = '\0';
        moments->at[i] = (spz_note_anchor){moments->bars[i], seconds};
    }
    return true;
}

/* A cell of the table: what stands before `separator`, without quotes and blanks around it. */
static void take_cell(char *out, size_t size, const char **at, const char *separator)
{
    size_t length = strcspn(*at, separator);
    const char *from = *at, *to = from + length;
    *at = *to ? to + 1 : to;
    while (from < to && strchr(" \"\t\r\n", *from))
        from++;
    while (to > from && strchr(" \"\t\r\n", to[-1]))
        to--;
    snprintf(out, size, "%.*s", (int)(to - from), from);
}

/* One line; true where it holds a bar and its time, or nothing, or is the line of headings. */
static bool take_tap(Moments *moments, const char *line, size_t number)
{
    char time[BAR_TEXT * 2];
    size_t i = moments->count;
    if (i == ANCHORS_MOST)
        return false;
    take_cell(moments->bars[i], BAR_TEXT, &line, ",;\t");
    take_cell(time, sizeof time, &line, ",;\t");
    double seconds = spz_seconds_from_text(time);
    if (seconds >= 0 && moments->bars[i][0]) {
        moments->at[i] = (spz_note_anchor){moments->bars[i], seconds};
        moments->count++;
        return true;
    }
    return number == 1 || (!*time && !moments->bars[i][0]);
}

/* --taps FILE, behind what --at says. `*result` changes where the file is not there. */
static bool read_taps(const Arguments *arguments, Moments *moments, int *result)
{
    const char *path = arguments_value(arguments, &option_taps, NULL);
    char line[256];
    size_t number = 0;
    bool good = true;
    FILE *file = path ? fopen(path, "r") : NULL;
    if (path && !file) {
        complain_status(path, SPZ_CANNOT_OPEN);
        *result = EXIT_INPUT;
    }
    while (good && file && fgets(line, sizeof line, file)) {
        const char *text = !strncmp(line, "\xEF\xBB\xBF", 3) ? line + 3 : line;
        good = take_tap(moments, text, ++number);
        if (!good)
            complain_usage(arguments->command, moments->count == ANCHORS_MOST ? "--taps %s:%zu: too many moments" : "--taps %s:%zu: it is a bar and its time, such as 66,2:15", path, number);
    }
    if (file)
        fclose(file);
    return good && (file || !path);
}

/* Is each bar there, later than the one before, and heard before the movement is over? `lasts` 0: nobody says how long that is. */
static bool moments_fit(const Arguments *arguments, const Readings *readings, const Moments *moments, double lasts)
{
    if (moments->count == 0)
        return true;
    if (readings->count != 1 || spz_reading_count(readings->at[0]) != 1) {
        complain_usage(arguments->command, "--at is for one movement at a time");
        return false;
    }
    const spz_movement *movement = spz_reading_at(readings->at[0], 0).movement;
    double sounding = -1, heard = -1;
    for (size_t i = 0; i < moments->count; i++) {
        double begins = -1;
        for (size_t bar = 0; bar < spz_movement_bars(movement) && begins < 0; bar++)
            if (!strcmp(spz_movement_bar_number(movement, bar), moments->at[i].bar))
                begins = spz_movement_sounding(movement, bar, spz_movement_bar(movement, bar).onset, 0, 0);
        bool over = lasts > 0 && moments->at[i].seconds >= lasts;
        if (begins < 0 || begins <= sounding || moments->at[i].seconds <= heard || over) {
            complain_usage(arguments->command, begins < 0 ? "--at %s: there is no such bar" : over ? "--at %s: the bar would be heard when the movement is over, by --lasts" :
                           "--at %s: bars and times have to rise together", moments->at[i].bar);
            return false;
        }
        sounding = begins;
        heard = moments->at[i].seconds;
    }
    return true;
}

static int write_notes(const Arguments *arguments, const Readings *readings, const spz_note_options *notes, spz_format format)
{
    const char *path = arguments_value(arguments, &option_output, NULL);
    spz_document *document = NULL;
    spz_status status = spz_sheet_notes((const spz_reading *const *)readings->at, readings->count, notes, format, &document);
    if (status)
        complain_status(path, status);
    int result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    return result;
}

/* --for and --format. A page is the usual form for listeners. */
static bool read_form(const Arguments *arguments, bool *listeners, spz_format *format)
{
    static const spz_format formats[] = {SPZ_AS_TEXT, SPZ_AS_MARKDOWN, SPZ_AS_HTML, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_ODT}, pictures[] = {SPZ_AS_HTML, SPZ_AS_SVG};
    const char *readers = arguments_value(arguments, &option_for, "writers");
    *listeners = !strcmp(readers, "listeners");
    if (!*listeners && strcmp(readers, "writers") != 0) {
        complain_usage(arguments->command, "--for %s: it is writers or listeners", readers);
        return false;
    }
    return *listeners ? sheets_format(arguments, &option_form, "html|svg", pictures, format) : sheets_format(arguments, &option_form, "text|markdown|html|json|csv|odt", formats, format);
}

/* No option is passed over in silence. */
static bool options_agree(const Arguments *arguments, bool page)
{
    const char *wrong = NULL;
    if (arguments_have(arguments, &option_most) && (arguments_have(arguments, &option_many) || arguments_have(arguments, &option_all)))
        wrong = "--most says how many, --many and --all want them all: give one of them";
    else if (arguments_have(arguments, &option_notation) && !page)
        wrong = "--notation goes with --format html; --pictures saves the notes as files";
    if (wrong)
        complain_usage(arguments->command, "%s", wrong);
    return !wrong;
}

static size_t movements_of(const Readings *readings)
{
    size_t count = 0;
    for (size_t i = 0; i < readings->count; i++)
        count += spz_reading_count(readings->at[i]);
    return count;
}

/* Each movement has its --lasts, or none has. */
static bool lasts_fit(const Arguments *arguments, const Readings *readings, size_t lasts)
{
    size_t movements = movements_of(readings);
    if (lasts && lasts != movements)
        complain_usage(arguments->command, "--lasts is given once for each movement: there are %zu, and it stands there %zu %s", movements, lasts, lasts == 1 ? "time" : "times");
    return !lasts || lasts == movements;
}

static int run(const Arguments *arguments)
{
    double lasts[MOVEMENTS_MOST];
    spz_note_options notes = SPZ_NOTES_USUAL;
    spz_format format;
    spz_settings *settings = NULL;
    Readings readings;
    Moments moments;
    int result = EXIT_USAGE, year, most = arguments_have(arguments, &option_all) || arguments_have(arguments, &option_many) ? 0 : (int)notes.citations;
    notes.lasts = lasts;
    spz_picture picture_form;
    if (!read_form(arguments, &notes.listeners, &format) || !options_agree(arguments, format == SPZ_AS_HTML) || !note_picture_form(arguments, &picture_form) ||
        !read_lasts(arguments, lasts, &notes.lasts_count) || !read_moments(arguments, &moments) || !read_taps(arguments, &moments, &result) || !arguments_whole(arguments, &option_most, 1, 1000, &most) ||
        !arguments_year(arguments, &year) || !sheets_strength(arguments, &notes.strength) || !sheets_operands(arguments))
        return result;
    notes.citations = (size_t)most;
    notes.anchors = moments.at;
    notes.anchor_count = moments.count;
    notes.notation = arguments_have(arguments, &option_notation);
    if (notes.notation || arguments_have(arguments, &option_pictures))
        notes.engraver = engraver_place(arguments_value(arguments, &option_engraver, NULL));
    result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &notes.language))
        result = EXIT_USAGE;
    if (result) {
        spz_settings_free(settings);
        return result;
    }
    result = readings_make(arguments, settings, year, &readings);
    if (format == SPZ_AS_SVG && movements_of(&readings) > 1) {
        complain_usage(arguments->command, "--format svg is for one movement at a time");
        result = EXIT_USAGE;
    } else if (readings.count && !lasts_fit(arguments, &readings, notes.lasts_count))
        result = EXIT_USAGE;
    else if (readings.count && !moments_fit(arguments, &readings, &moments, notes.lasts_count ? lasts[0] : 0))
        result = EXIT_USAGE;
    else if (readings.count) {
        int written = write_notes(arguments, &readings, &notes, format);
        if (!written && arguments_have(arguments, &option_pictures))
            written = note_pictures_write(arguments, &readings, &notes, picture_form);
        result = written ? written : result;
    }
    readings_free(&readings);
    spz_settings_free(settings);
    return result;
}

const Command command_notes = {
    .name = "notes",
    .purpose = "for the programme-note writer: the passages most worth citing",
    .operands = "SCORE...",
    .help = "Writes for each movement a short paragraph and the passages most worth citing, chosen for strength and\n"
            "variety: bars, rehearsal letter, the time at which each sounds (repeats counted; in a performance as long as\n"
            "--lasts says, or where the bars of --at are heard; else as a share of the movement) and what to listen for.\n",
    .options = options,
    .run = run,
};
