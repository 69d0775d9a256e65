#include "cli/page_sounds.h"
#include "cli/command.h"
#include "cli/options/listen_wish.h"
#include "cli/messages.h"
#include "cli/output.h"
#include "cli/places/sound_place.h"
#include <stdio.h>
#include <string.h>

static const spz_seat seats[] = {SPZ_SEAT_MIDDLE, SPZ_SEAT_LEFT, SPZ_SEAT_RIGHT, SPZ_SEAT_PODIUM};
enum { SEATS = sizeof seats / sizeof seats[0], BARS_MOST = 16, PATH_SIZE = 4096 };

/* What is made for one page. */
typedef struct Making {
    const spz_reading *reading;
    const spz_report_options *options;
    const char *folder, *page;
    const spz_sink *sink;
    PageSounds *out;
} Making;

static int write_seat(const Making *making, const spz_listening *listening, const char *name)
{
    char path[PATH_SIZE], file[PAGE_SOUND_NAME + 16];
    spz_document *document = NULL;
    snprintf(file, sizeof file, "%s-%s", name, spz_seat_name(spz_listening_seat(listening)));
    if (snprintf(path, sizeof path, "%s/%s.js", making->folder, file) >= (int)sizeof path)
        return EXIT_INPUT;
    spz_status status = spz_listening_script(listening, file, making->sink, &document);
    int result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    return result;
}

static int write_seats(const Making *making, const spz_movement_reading *movement, const spz_listen_wish *wish, const char *name)
{
    spz_listening *heard[SEATS];
    int result = spz_listen_seats(movement, making->options->settings, wish, seats, SEATS, making->sink, heard) ? EXIT_INPUT : EXIT_OK;
    for (size_t i = 0; i < SEATS && !result; i++)
        result = write_seat(making, heard[i], name);
    for (size_t i = 0; i < SEATS; i++)
        spz_listening_free(heard[i]);
    return result;
}

static int add_passage(Making *making, size_t index, size_t place)
{
    PageSounds *out = making->out;
    spz_movement_reading movement = spz_reading_at(making->reading, index);
    const spz_passage *passage = spz_findings_at(movement.findings, place);
    spz_listen_wish wish = {.first = passage->first, .last = passage->last, .engine = sound_place()};
    char *name = out->files[out->count];
    int stem = (int)strcspn(making->page, "/");
    if (out->count == PAGE_SOUNDS_MOST || !listen_wish_seatings(making->reading, index, making->sink, &wish))
        return EXIT_OK;
    if (wish.last - wish.first >= BARS_MOST)
        wish.last = wish.first + BARS_MOST - 1;
    if (stem > 5 && strcmp(making->page + stem - 5, ".html") == 0)
        stem -= 5;
    snprintf(name, PAGE_SOUND_NAME, "%.*s-m%zu-p%zu", stem < 250 ? stem : 250, making->page, index + 1, place + 1);
    int result = write_seats(making, &movement, &wish, name);
    if (!result)
        out->at[out->count++] = (spz_page_sound){index, place, name, {wish.arrangements[0], wish.arrangements[1]}, seats, SEATS,
                                                 spz_movement_bar_number(movement.movement, wish.first), spz_movement_bar_number(movement.movement, wish.last)};
    return result;
}

int page_sounds_make(const spz_reading *reading, const spz_report_options *options, const char *folder, const char *page, PageSounds *out)
{
    Voice voice = {.most_doubts = 1};
    spz_sink sink = voice_sink(&voice);
    Making making = {reading, options, folder, page, &sink, out};
    int result = EXIT_OK;
    out->count = 0;
    for (size_t index = 0; index < spz_reading_count(reading); index++) {
        size_t chosen[SPZ_DECISIVE_MOST], count = spz_report_decisive(reading, index, options, chosen);
        if (spz_verdict_count(spz_reading_at(reading, index).verdict) == 0)
            continue;
        for (size_t i = 0; i < count; i++) {
            int one = add_passage(&making, index, chosen[i]);
            result = one ? one : result;
        }
    }
    return result;
}
