/* The public face: from a passage and two seatings to what is heard. */
#include "seating/stage/house_rules.h"
#include "sound/engine.h"
#include "sound/tones.h"
#include "support/text/ascii.h"
#include "support/message.h"
#include "writing/document.h"
#include "writing/markup.h"
#include <math.h>
#include <string.h>

struct spz_listening {
    const SoundEngine *engine;
    Heard heard;
    size_t sources;
    Arena arena; /* owns the texts */
    char *bars[2], *arrangements[SPZ_LISTEN_VERSIONS];
    spz_seat seat;
    bool loudspeakers;
};

static const double after_last = 0.6;    /* seconds held open for what rings, before the hall's own tail */
static const double longest = 300;       /* seconds of a passage */
static const double usual_loudness = -23; /* LUFS: EBU R 128 */

static const char *const seat_names[SPZ_SEAT_COUNT] = {
    [SPZ_SEAT_FRONT] = "front", [SPZ_SEAT_MIDDLE] = "middle", [SPZ_SEAT_BACK] = "back", [SPZ_SEAT_LEFT] = "left", [SPZ_SEAT_RIGHT] = "right", [SPZ_SEAT_PODIUM] = "podium",
};
static const char *const form_names[SPZ_SOUND_FORM_COUNT] = {"wav", "flac", "opus"};

const char *spz_seat_name(spz_seat seat)
{
    return (unsigned)seat < SPZ_SEAT_COUNT ? seat_names[seat] : "";
}

bool spz_seat_from_name(const char *name, spz_seat *out)
{
    for (int i = 0; i < SPZ_SEAT_COUNT; i++)
        if (strcmp(name, seat_names[i]) == 0) {
            *out = (spz_seat)i;
            return true;
        }
    return false;
}

const char *spz_sound_form_name(spz_sound_form form)
{
    return (unsigned)form < SPZ_SOUND_FORM_COUNT ? form_names[form] : "";
}

spz_status spz_listen_ready(const char *path, const spz_sink *sink)
{
    const SoundEngine *engine;
    return engine_open(path, sink, &engine);
}

/* All that is made on the way. */
typedef struct Rehearsal {
    const spz_movement_reading *reading;
    const spz_listen_wish *wish;
    Hall hall;
    Rules rules;
    Cast cast;
    ToneList tones;
    spz_plan *plans[SPZ_LISTEN_VERSIONS];
    SoundPath *paths[SPZ_SEAT_COUNT][SPZ_LISTEN_VERSIONS];
    double nearest[SPZ_SEAT_COUNT], farthest[SPZ_SEAT_COUNT]; /* of these: seconds */
} Rehearsal;

static spz_status say(const spz_sink *sink, spz_status status, const char *text)
{
    message_send(sink, &(spz_message){.severity = SPZ_ERROR}, "%s", text);
    return status;
}

static spz_status seat_players(Rehearsal *rehearsal, const spz_settings *settings, const spz_sink *sink)
{
    const spz_listen_wish *wish = rehearsal->wish;
    spz_status status = SPZ_OK;
    for (int i = 0; i < SPZ_LISTEN_VERSIONS && !status; i++)
        status = spz_sections_chamber_music(rehearsal->reading->sections) ? spz_stage_plan_single(settings, wish->arrangements[i], sink, &rehearsal->plans[i])
                 : wish->two_orchestras ? spz_stage_plan_double(settings, wish->arrangements[i], wish->thirds, sink, &rehearsal->plans[i])
                                        : spz_stage_plan(settings, wish->arrangements[i], wish->thirds, sink, &rehearsal->plans[i]);
    if (!status)
        status = cast_make(rehearsal->reading->sections, rehearsal->plans[0], &rehearsal->cast);
    return status;
}

/* The ways of sound to a seat in one seating. */
static spz_status lay_paths(Rehearsal *rehearsal, spz_seat seat, int version)
{
    size_t count = rehearsal->cast.count;
    Head head = hall_head(&rehearsal->hall, &rehearsal->rules, seat);
    Source *sources = memory_zeroed(count + 1, sizeof *sources);
    SoundPath *paths = rehearsal->paths[seat][version] = memory_zeroed(count * SOUND_PATHS + 1, sizeof *paths);
    if (sources && paths)
        cast_place(&rehearsal->cast, rehearsal->reading->sections, rehearsal->plans[version], sources);
    for (size_t i = 0; sources && paths && i < count; i++)
        hall_paths(&rehearsal->hall, &sources[i], &head, &paths[i * SOUND_PATHS]);
    for (size_t i = 0; sources && paths && i < count * SOUND_PATHS; i++) {
        rehearsal->nearest[seat] = fmin(rehearsal->nearest[seat], paths[i].delay);
        rehearsal->farthest[seat] = fmax(rehearsal->farthest[seat], paths[i].delay);
    }
    memory_free(sources);
    return sources && paths ? SPZ_OK : SPZ_NO_MEMORY;
}

/* To every seat, whoever listens: what is heard in one must not hang on the others. */
static spz_status lay_all_paths(Rehearsal *rehearsal)
{
    spz_status status = SPZ_OK;
    for (int seat = 0; seat < SPZ_SEAT_COUNT; seat++) {
        rehearsal->nearest[seat] = 1;
        for (int version = 0; version < SPZ_LISTEN_VERSIONS && !status; version++)
            status = lay_paths(rehearsal, (spz_seat)seat, version);
    }
    return status;
}

static spz_status write_tones(Rehearsal *rehearsal, const spz_sink *sink)
{
    const spz_listen_wish *wish = rehearsal->wish;
    const Movement *movement = rehearsal->reading->movement;
    if (wish->first > wish->last || wish->last >= movement->bar_count)
        return say(sink, SPZ_BAD_ARGUMENT, "there are no such bars");
    Excerpt excerpt = {.map = rehearsal->reading->sections, .cast = &rehearsal->cast, .from = movement->bars[wish->first].onset,
                       .to = movement->bars[wish->last].onset + movement->bars[wish->last].length, .tempo = wish->tempo, .solo = wish->solo};
    holds_find(excerpt.map, excerpt.from, excerpt.to, &excerpt.holds);
    spz_status status = tones_make(&excerpt, &rehearsal->tones);
    if (!status && rehearsal->tones.count == 0)
        return say(sink, SPZ_EMPTY, "nothing sounds in these bars");
    if (!status && excerpt_seconds(&excerpt, excerpt.to) > longest)
        return say(sink, SPZ_BAD_ARGUMENT, "these bars last more than five minutes; choose fewer");
    return status;
}

static double end_of(const ToneList *tones)
{
    double end = 0;
    for (size_t i = 0; i < tones->count; i++)
        end = fmax(end, tones->at[i].onset + tones->at[i].length);
    return end + after_last;
}

static void take_seats(const Rehearsal *rehearsal, const spz_seat *seats, size_t count, Performance *out)
{
    out->seat_count = count;
    for (size_t i = 0; i < count; i++) {
        SoundPath *const *paths = rehearsal->paths[seats[i]];
        out->seats[i] = (SoundSeat){{paths[0], paths[1]}, hall_tail(&rehearsal->hall, rehearsal->nearest[seats[i]])};
    }
    for (int seat = 0; seat < SPZ_SEAT_COUNT; seat++)
        out->reach = fmax(out->reach, rehearsal->farthest[seat] - rehearsal->nearest[seat]);
}

static spz_status prepare(Rehearsal *rehearsal, const spz_settings *settings, const spz_sink *sink, Performance *out)
{
    spz_status status = seat_players(rehearsal, settings, sink);
    if (!status)
        status = write_tones(rehearsal, sink);
    if (!status)
        status = lay_all_paths(rehearsal);
    if (status)
        return status;
    const spz_listen_wish *wish = rehearsal->wish;
    *out = (Performance){.tones = rehearsal->tones.at, .tone_count = rehearsal->tones.count, .members = rehearsal->cast.count, .seconds = end_of(&rehearsal->tones),
                         .loudspeakers = wish->loudspeakers, .font = wish->font ? wish->font : engine_font(), .ears = wish->ears ? wish->ears : engine_ears(),
                         .loudness = usual_loudness};
    if (!out->font)
        return say(sink, SPZ_CANNOT_OPEN, "no SoundFont is installed to play from; on Debian: apt install timgm6mb-soundfont; or name one with --sounds");
    if (!out->ears && !wish->loudspeakers)
        return say(sink, SPZ_CANNOT_OPEN, "the measured head of libmysofa is missing; on Debian: apt install libmysofa1; or listen with --for loudspeakers");
    return SPZ_OK;
}

static void rehearsal_free(Rehearsal *rehearsal)
{
    for (int i = 0; i < SPZ_LISTEN_VERSIONS; i++) {
        spz_plan_free(rehearsal->plans[i]);
        for (int seat = 0; seat < SPZ_SEAT_COUNT; seat++)
            memory_free(rehearsal->paths[seat][i]);
    }
    array_free(&rehearsal->tones);
    array_free(&rehearsal->cast);
}

static spz_status tell(spz_listening *listening, const Rehearsal *rehearsal)
{
    const spz_listen_wish *wish = rehearsal->wish;
    const Movement *movement = rehearsal->reading->movement;
    bool whole = true;
    listening->sources = rehearsal->cast.count;
    listening->loudspeakers = wish->loudspeakers;
    for (int i = 0; i < 2; i++) {
        listening->bars[i] = arena_string(&listening->arena, movement->bars[i ? wish->last : wish->first].number);
        listening->arrangements[i] = arena_string(&listening->arena, spz_plan_arrangement(rehearsal->plans[i]));
        whole = whole && listening->bars[i] && listening->arrangements[i];
    }
    return whole ? SPZ_OK : SPZ_NO_MEMORY;
}

/* Plays it for all seats, and hands what is heard in each to its listening. */
static spz_status play(const Rehearsal *rehearsal, const SoundEngine *engine, const Performance *performance, const spz_sink *sink, spz_listening **out)
{
    Heard heard[SPZ_SEAT_COUNT] = {{{NULL}, 0, {0}, {0}, {0}}};
    spz_status status = engine->perform(performance, sink, heard);
    for (size_t i = 0; i < performance->seat_count; i++) {
        out[i]->engine = engine;
        out[i]->heard = heard[i];
        if (!status)
            status = tell(out[i], rehearsal);
    }
    return status;
}

static spz_status open_listenings(const spz_seat *seats, size_t count, spz_listening **out)
{
    for (size_t i = 0; i < count; i++) {
        out[i] = memory_zeroed(1, sizeof *out[i]);
        if (!out[i])
            return SPZ_NO_MEMORY;
        out[i]->seat = seats[i];
    }
    return SPZ_OK;
}

static spz_status listen_in(const spz_movement_reading *reading, const spz_settings *house, const spz_listen_wish *wish, const spz_seat *seats, size_t count, const spz_sink *sink,
                            spz_listening **out)
{
    Rehearsal rehearsal = {.reading = reading, .wish = wish};
    Performance performance;
    const SoundEngine *engine;
    spz_status status = engine_open(wish->engine, sink, &engine);
    if (!status) {
        rules_read(house, &rehearsal.rules);
        hall_read(house, &rehearsal.rules, &rehearsal.hall);
        status = prepare(&rehearsal, house, sink, &performance);
    }
    if (!status) {
        take_seats(&rehearsal, seats, count, &performance);
        status = open_listenings(seats, count, out);
    }
    if (!status)
        status = play(&rehearsal, engine, &performance, sink, out);
    rehearsal_free(&rehearsal);
    return status;
}

spz_status spz_listen_seats(const spz_movement_reading *reading, const spz_settings *settings, const spz_listen_wish *wish, const spz_seat *seats, size_t count,
                            const spz_sink *sink, spz_listening **out)
{
    spz_settings *defaults = NULL;
    for (size_t i = 0; i < count; i++)
        out[i] = NULL;
    bool known = count > 0 && count <= SPZ_SEAT_COUNT;
    for (size_t i = 0; known && i < count; i++)
        known = (unsigned)seats[i] < SPZ_SEAT_COUNT;
    spz_status status = !known ? SPZ_BAD_ARGUMENT : settings ? SPZ_OK : spz_settings_new(&defaults);
    if (!status)
        status = listen_in(reading, settings ? settings : defaults, wish, seats, count, sink, out);
    for (size_t i = 0; status && i < count; i++) {
        spz_listening_free(out[i]);
        out[i] = NULL;
    }
    spz_settings_free(defaults);
    return status;
}

spz_status spz_listen(const spz_movement_reading *reading, const spz_settings *settings, const spz_listen_wish *wish, const spz_sink *sink,
                      spz_listening **out)
{
    return spz_listen_seats(reading, settings, wish, &wish->seat, 1, sink, out);
}

void spz_listening_free(spz_listening *listening)
{
    if (!listening)
        return;
    for (int i = 0; i < SPZ_LISTEN_VERSIONS; i++)
        memory_free(listening->heard.frames[i]);
    arena_release(&listening->arena);
    memory_free(listening);
}

double spz_listening_seconds(const spz_listening *listening)
{
    return (double)listening->heard.count / SOUND_RATE;
}

const char *spz_listening_bar(const spz_listening *listening, bool last)
{
    return listening->bars[last];
}

const char *spz_listening_arrangement(const spz_listening *listening, size_t version)
{
    return version < SPZ_LISTEN_VERSIONS ? listening->arrangements[version] : "";
}

spz_seat spz_listening_seat(const spz_listening *listening)
{
    return listening->seat;
}

bool spz_listening_for_loudspeakers(const spz_listening *listening)
{
    return listening->loudspeakers;
}

size_t spz_listening_sources(const spz_listening *listening)
{
    return listening->sources;
}

spz_level spz_listening_level(const spz_listening *listening, size_t version)
{
    if (version >= SPZ_LISTEN_VERSIONS)
        return (spz_level){0};
    return (spz_level){listening->heard.loudness[version], listening->heard.peak[version], listening->heard.gain[version]};
}

bool spz_listening_writes(const spz_listening *listening, spz_sound_form form)
{
    return listening->engine->writes(form);
}

spz_status spz_listening_file(const spz_listening *listening, size_t version, spz_sound_form form, const spz_sink *sink, spz_document **out)
{
    Buffer buffer;
    char *bytes = NULL;
    size_t size = 0;
    *out = NULL;
    if (version >= SPZ_LISTEN_VERSIONS || (unsigned)form >= SPZ_SOUND_FORM_COUNT)
        return SPZ_BAD_ARGUMENT;
    spz_status status = listening->engine->encode(listening->heard.frames[version], listening->heard.count, form, sink, &bytes, &size);
    if (status)
        return status;
    buffer_init(&buffer);
    buffer_add(&buffer, bytes, size);
    memory_free(bytes);
    return document_take(&buffer, out);
}

/* Appends the version's data: address, in double quotes. */
static spz_status add_address(const spz_listening *listening, size_t version, spz_sound_form form, const spz_sink *sink, Buffer *out)
{
    static const char *const types[SPZ_SOUND_FORM_COUNT] = {"audio/wav", "audio/flac", "audio/ogg"};
    char *bytes = NULL;
    size_t size = 0;
    spz_status status = listening->engine->encode(listening->heard.frames[version], listening->heard.count, form, sink, &bytes, &size);
    if (status)
        return status;
    buffer_putc(out, '"');
    markup_data_address(out, types[form], bytes, size);
    buffer_putc(out, '"');
    memory_free(bytes);
    return SPZ_OK;
}

/* Letters and digits of a name stay as they are, all else is written as JavaScript would read it anywhere (ECMA-262: \\xHH). */
static void add_name(Buffer *out, const char *name)
{
    for (; *name; name++) {
        unsigned char c = (unsigned char)*name;
        if (ascii_is_letter(c) || ascii_is_digit(c) || c == '-' || c >= 0x80)
            buffer_putc(out, *name);
        else
            buffer_printf(out, "\\x%02x", c);
    }
}

spz_status spz_listening_script(const spz_listening *listening, const char *name, const spz_sink *sink, spz_document **out)
{
    Buffer buffer;
    spz_sound_form form = listening->engine->writes(SPZ_OPUS) ? SPZ_OPUS : listening->engine->writes(SPZ_FLAC) ? SPZ_FLAC : SPZ_WAV;
    *out = NULL;
    buffer_init(&buffer);
    buffer_puts(&buffer, "spezzatoSound('");
    add_name(&buffer, name);
    buffer_puts(&buffer, "', [");
    spz_status status = add_address(listening, 0, form, sink, &buffer);
    buffer_puts(&buffer, ", ");
    if (!status)
        status = add_address(listening, 1, form, sink, &buffer);
    buffer_puts(&buffer, "]);\n");
    if (!status)
        status = document_take(&buffer, out);
    buffer_free(&buffer);
    return status;
}

const float *spz_listening_samples(const spz_listening *listening, size_t version, size_t *count)
{
    *count = version < SPZ_LISTEN_VERSIONS ? listening->heard.count : 0;
    return version < SPZ_LISTEN_VERSIONS ? listening->heard.frames[version] : NULL;
}
