/* spezzato listen SCORE --bars 29-40 -o FOLDER: a passage made audible in two seatings. */
#include "cli/command.h"
#include "cli/places/folder.h"
#include "cli/options/listen_wish.h"
#include "cli/messages.h"
#include "cli/output.h"
#include "cli/places/sound_place.h"
#include <stdio.h>
#include <string.h>

static const Option option_bars = {"bars", 0, "BARS", "these, as printed: 29-40, or 29"};
static const Option option_passage = {"passage", 0, "NUMBER", "the how manieth of the sections that answer each other, as `passages` lists them"};
static const Option option_movement = {"movement", 0, "NUMBER", "of a file that holds several; else the first that has the bars"};
static const Option option_seating = {"seating", 0, "NAME", "to be heard; 'violins opposed' is the better of those; else what the score asks for"};
static const Option option_against = {"against", 0, "NAME", "to be compared; else the best with the violins placed otherwise"};
static const Option option_seat = {"seat", 0, "PLACE", "of the listener: middle, left, right, front, back, podium"};
static const Option option_tempo = {"tempo", 0, "CROTCHETS", "a minute throughout; else as the score says"};
static const Option option_solo = {"solo", 0, "SECTIONS", "these alone: 'Vn I, Vn II'"};
static const Option option_for = {"for", 0, "WHAT", "headphones or loudspeakers"};
static const Option option_sounds = {"sounds", 0, "FILE", "a SoundFont with the instruments of General MIDI"};
static const Option option_into = {"output", 'o', "FOLDER", "where the files go; made when it isn't there"};
static const Option *const options[] = {&option_bars, &option_passage, &option_movement, &option_seating, &option_against, &option_seat, &option_tempo, &option_solo,
                                        &option_for, &option_sounds, &option_into, &option_year, &option_language, &option_settings, &option_set, &option_verbose, NULL};

enum { PATH_SIZE = 4096, NAME_SIZE = 240 };

/* Letters and digits of ASCII stay, all else becomes one dash. */
static void add_plain(char *name, const char *text)
{
    size_t length = strlen(name);
    for (; *text && length + 2 < NAME_SIZE; text++) {
        char c = *text;
        bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (plain)
            name[length++] = c;
        else if (length && name[length - 1] != '-')
            name[length++] = '-';
    }
    while (length && name[length - 1] == '-')
        length--;
    name[length] = '\0';
}

static void file_name(const spz_movement *movement, const spz_listen_wish *wish, int version, char *name)
{
    name[0] = '\0';
    add_plain(name, spz_movement_bar_number(movement, wish->first));
    strcat(name, "-");
    if (wish->last != wish->first) {
        add_plain(name, spz_movement_bar_number(movement, wish->last));
        strcat(name, "-");
    }
    add_plain(name, wish->arrangements[version]);
}

/* The files in order: form by form, first and second seating in turn. */
enum { FILES_MOST = SPZ_LISTEN_VERSIONS * SPZ_SOUND_FORM_COUNT };
typedef struct Files {
    char paths[FILES_MOST][PATH_SIZE];
    size_t count;
} Files;

static int write_file(const spz_listening *listening, int version, spz_sound_form form, const char *path)
{
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    spz_document *document = NULL;
    spz_status status = spz_listening_file(listening, (size_t)version, form, &sink, &document);
    int result = status ? EXIT_INPUT : output_save(document, path);
    if (status && !voice.errors)
        complain_status(path, status);
    spz_document_free(document);
    return result;
}

static int write_form(const spz_listening *listening, const spz_movement *movement, const spz_listen_wish *wish, spz_sound_form form, const char *folder, Files *files)
{
    int result = EXIT_OK;
    for (int version = 0; version < SPZ_LISTEN_VERSIONS && !result; version++) {
        char name[NAME_SIZE + 8], *path = files->paths[files->count];
        file_name(movement, wish, version, name);
        if (snprintf(path, PATH_SIZE, "%s/%s.%s", folder, name, spz_sound_form_name(form)) >= PATH_SIZE) {
            complain_status(folder, SPZ_CANNOT_WRITE);
            return EXIT_INPUT;
        }
        result = write_file(listening, version, form, path);
        files->count += !result;
    }
    return result;
}

static int tell(const spz_listening *listening, const Files *files, spz_language language)
{
    const char *names[FILES_MOST];
    spz_document *document = NULL;
    for (size_t i = 0; i < files->count; i++)
        names[i] = files->paths[i];
    spz_status status = spz_report_listening(listening, names, files->count, language, &document);
    if (status)
        complain_status(NULL, status);
    int result = status ? EXIT_INPUT : output_save(document, NULL);
    spz_document_free(document);
    return result;
}

static int write_all(const spz_listening *listening, const spz_movement *movement, const spz_listen_wish *wish, const char *folder, spz_language language)
{
    static const spz_sound_form forms[] = {SPZ_WAV, SPZ_FLAC};
    Files files = {.count = 0};
    int result = folder_make(folder) ? EXIT_OK : EXIT_INPUT;
    for (size_t i = 0; i < sizeof forms / sizeof forms[0] && !result; i++)
        if (spz_listening_writes(listening, forms[i]))
            result = write_form(listening, movement, wish, forms[i], folder, &files);
    return result ? result : tell(listening, &files, language);
}

/* What a run is about. */
typedef struct Hearing {
    const spz_settings *settings;
    ListenWords words;
    const char *folder;
    spz_language language;
    spz_listen_wish wish;
} Hearing;

static spz_status hear(const spz_reading *reading, Hearing *hearing, const spz_sink *sink, int *result)
{
    size_t movement = 0;
    spz_listening *listening = NULL;
    if (!listen_wish_make(reading, &hearing->words, sink, &movement, &hearing->wish))
        return SPZ_BAD_ARGUMENT;
    spz_movement_reading own = spz_reading_at(reading, movement);
    spz_status status = spz_listen(&own, hearing->settings, &hearing->wish, sink, &listening);
    if (!status)
        *result = write_all(listening, own.movement, &hearing->wish, hearing->folder, hearing->language);
    spz_listening_free(listening);
    return status;
}

static int listen_to(const Arguments *arguments, Hearing *hearing)
{
    int year, result = EXIT_INPUT;
    const char *score = arguments->operands[0];
    Voice voice = {.most_doubts = arguments_have(arguments, &option_verbose) ? 0 : 3};
    spz_sink sink = voice_sink(&voice);
    spz_reading *reading = NULL;
    if (!arguments_year(arguments, &year))
        return EXIT_USAGE;
    spz_status status = spz_listen_ready(hearing->wish.engine, &sink);
    if (!status)
        status = spz_reading_make(score, hearing->settings, year, SPZ_TO_SEATING, &sink, &reading);
    if (!status)
        status = hear(reading, hearing, &sink, &result);
    if (status && !voice.errors)
        complain_status(score, status);
    voice_close(&voice, score);
    spz_reading_free(reading);
    return result;
}

static bool read_tempo(const Arguments *arguments, double *tempo)
{
    const char *value = arguments_value(arguments, &option_tempo, NULL);
    int whole = 0;
    if (!value)
        return true;
    if (!arguments_whole(arguments, &option_tempo, 10, 400, &whole))
        return false;
    *tempo = whole;
    return true;
}

static bool read_place(const Arguments *arguments, spz_listen_wish *wish)
{
    const char *seat = arguments_value(arguments, &option_seat, "middle"), *use = arguments_value(arguments, &option_for, "headphones");
    if (!spz_seat_from_name(seat, &wish->seat)) {
        complain_usage(arguments->command, "--seat %s: it is middle, left, right, front, back or podium", seat);
        return false;
    }
    wish->loudspeakers = strcmp(use, "loudspeakers") == 0;
    if (wish->loudspeakers || strcmp(use, "headphones") == 0)
        return true;
    complain_usage(arguments->command, "--for %s: it is headphones or loudspeakers", use);
    return false;
}

static bool read_words(const Arguments *arguments, ListenWords *words)
{
    *words = (ListenWords){.bars = arguments_value(arguments, &option_bars, NULL), .solo = arguments_value(arguments, &option_solo, NULL)};
    if (words->bars && arguments_have(arguments, &option_passage)) {
        complain_usage(arguments->command, "either --bars or --passage");
        return false;
    }
    return arguments_whole(arguments, &option_passage, 1, 9999, &words->passage) && arguments_whole(arguments, &option_movement, 1, 999, &words->movement);
}

static bool has_operands(const Arguments *arguments)
{
    if (arguments->operand_count == 1 && arguments_have(arguments, &option_into))
        return true;
    if (arguments->operand_count == 0)
        complain_usage(arguments->command, "which score? Give a MusicXML file, plain or compressed");
    else if (arguments->operand_count > 1)
        complain_usage(arguments->command, "one score at a time; '%s' is one too many", arguments->operands[1]);
    else
        complain_usage(arguments->command, "where to? Give a folder with -o");
    return false;
}

static int run(const Arguments *arguments)
{
    Hearing hearing = {.folder = arguments_value(arguments, &option_into, NULL), .wish = {.font = arguments_value(arguments, &option_sounds, NULL), .engine = sound_place()}};
    spz_settings *settings = NULL;
    char seating[SEATING_NAME_MOST], against[SEATING_NAME_MOST];
    if (!has_operands(arguments) || !read_words(arguments, &hearing.words) || !read_place(arguments, &hearing.wish) || !read_tempo(arguments, &hearing.wish.tempo))
        return EXIT_USAGE;
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &hearing.language))
        result = EXIT_USAGE;
    hearing.settings = settings;
    if (!result)
        result = arguments_seating(arguments, &option_seating, settings, false, seating, &hearing.words.seating);
    if (!result)
        result = arguments_seating(arguments, &option_against, settings, false, against, &hearing.words.against);
    if (!result)
        result = listen_to(arguments, &hearing);
    spz_settings_free(settings);
    return result;
}

const Command command_listen = {
    .name = "listen",
    .purpose = "a passage made audible in two seatings, from one seat of the hall",
    .operands = "SCORE",
    .help = "Plays a passage twice, in one seating and in another, as a listener in the hall would hear it: two sound files\n"
            "of the same notes, equally loud, that begin together, to be switched while they play. Without --bars or\n"
            "--passage it is the passage on which the seating hangs most. A sketch of directions and distances with\n"
            "synthetic instruments, not a forecast of a hall.\n",
    .options = options,
    .run = run,
};
