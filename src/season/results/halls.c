#include "season/results/halls.h"
#include "season/results/result_terms.h"
#include "seating/stage/seating_names.h"
#include "settings/store.h"
#include "support/message.h"
#include "support/path.h"
#include "support/text/ascii.h"
#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { NAME_MOST = 100 };

spz_status halls_begin(Halls *halls, const char *path, const spz_settings *house)
{
    *halls = (Halls){.house = house};
    arena_init(&halls->arena);
    halls->folder = arena_text(&halls->arena, path, (size_t)(path_name(path) - path));
    return halls->folder ? SPZ_OK : SPZ_NO_MEMORY;
}

static void free_hall(Hall *hall)
{
    for (int i = 0; i < hall->seatings; i++) {
        spz_plan_free(hall->plans[i]);
        spz_plan_free(hall->doubles[i]);
    }
    spz_settings_free(hall->settings);
}

void halls_free(Halls *halls)
{
    for (size_t i = 0; i < halls->list.count; i++)
        free_hall(halls->list.at[i]);
    array_free(&halls->list);
    arena_release(&halls->arena);
}

/* 'Old Mill' is looked for as 'Old Mill.ini', then as 'old-mill.ini'. */
static void file_name(const char *name, bool plain, char out[NAME_MOST + 1])
{
    size_t used = 0;
    for (; *name && used < NAME_MOST; name++) {
        unsigned char c = (unsigned char)*name;
        bool letter = ascii_is_letter(c) || ascii_is_digit(c) || c >= 0x80;
        if (!plain)
            out[used++] = (char)c;
        else if (letter)
            out[used++] = (char)ascii_lower(c);
        else if (used && out[used - 1] != '-')
            out[used++] = '-';
    }
    while (plain && used && out[used - 1] == '-')
        used--;
    out[used] = '\0';
}

/* NULL: no memory. "": there is no such file. */
static const char *find_file(Halls *halls, const char *name)
{
    char base[NAME_MOST + 1];
    for (int plain = 0; plain < 2; plain++) {
        file_name(name, plain, base);
        if (!*base || strchr(base, '/') || base[0] == '.')
            continue;
        char *path = arena_format(&halls->arena, "%shalls/%s.ini", halls->folder, base);
        if (!path || access(path, F_OK) == 0)
            return path;
    }
    return "";
}

/* Remembers the last error said about the hall, and hands all on. */
typedef struct Ear {
    Arena *arena;
    const spz_sink *sink;
    const char *said; /* NULL: nothing */
    long line;
    bool quiet; /* trying out what fits */
} Ear;

static void hear(void *context, const spz_message *message)
{
    Ear *ear = context;
    if (message->severity == SPZ_ERROR) {
        ear->said = arena_string(ear->arena, message->text);
        ear->line = message->line;
    }
    if (!ear->quiet && ear->sink && ear->sink->say)
        ear->sink->say(ear->sink->context, message);
}

static bool is_failure(spz_status status)
{
    return status == SPZ_NO_MEMORY;
}

/* Adds the arrangement if it fits on the stage. */
static spz_status try_seating(Hall *hall, const char *name, Arena *arena, const spz_sink *quiet)
{
    spz_plan *plan = NULL;
    spz_status status = spz_stage_plan(hall->settings, name, false, quiet, &plan);
    if (status != SPZ_OK)
        return is_failure(status) ? status : SPZ_OK;
    hall->plans[hall->seatings] = plan;
    hall->names[hall->seatings] = arena_string(arena, name);
    if (!hall->names[hall->seatings]) {
        spz_plan_free(plan);
        return SPZ_NO_MEMORY;
    }
    if (strcmp(name, hall->usual_name) == 0)
        hall->usual = hall->seatings;
    status = spz_stage_plan_double(hall->settings, name, false, quiet, &hall->doubles[hall->seatings++]);
    return is_failure(status) ? status : SPZ_OK;
}

static void set_problem(Halls *halls, Hall *hall, const Ear *ear, const spz_sink *sink)
{
    spz_message place = {.severity = SPZ_ERROR, .file = *hall->file ? hall->file : NULL};
    if (hall->seatings)
        return; /* that some don't fit is no problem of the hall */
    hall->problem = ear->said ? SPZ_HALL_TOO_SMALL : SPZ_HALL_FORBIDS_ALL;
    if (!ear->said) /* the house's file may say it, not the hall's */
        place.file = spz_settings_place(hall->settings, "house.forbidden", &place.line);
    bool own = place.file && strcmp(place.file, hall->file) == 0;
    if (!ear->said && !own && halls->told_forbidden)
        return; /* the house's word is told once, not for each hall */
    halls->told_forbidden = halls->told_forbidden || (!ear->said && !own);
    message_send(sink, &place, "%s", ear->said ? ear->said : "the house allows no seating at all");
}

/* A house that has to do without its usual seating is told so, and what would let it have it. */
static void note_usual(Hall *hall, bool known, bool forbidden, const spz_sink *sink)
{
    const spz_message place = {.severity = SPZ_DOUBT, .file = *hall->file ? hall->file : NULL};
    if (hall->usual >= 0 || hall->problem == SPZ_HALL_FORBIDS_ALL)
        return;
    hall->usual_absence = !known ? SPZ_USUAL_UNKNOWN : forbidden ? SPZ_USUAL_FORBIDDEN : SPZ_USUAL_TOO_LARGE;
    if (hall->usual_absence == SPZ_USUAL_TOO_LARGE)
        spz_stage_least(hall->settings, hall->usual_name, &hall->usual_needs[0], &hall->usual_needs[1]);
    message_send(sink, &place, "the house's usual seating '%s' is not used here: %s", hall->usual_name, spz_usual_absence_name(hall->usual_absence));
}

static spz_status find_seatings(Halls *halls, Hall *hall, Ear *ear)
{
    const char *names[SPZ_ARRANGEMENT_LIMIT];
    size_t count = 0;
    const spz_sink heard = {hear, ear};
    spz_status status = spz_arrangements_list(hall->settings, &heard, names, &count);
    if (status != SPZ_OK) {
        hall->problem = SPZ_HALL_UNREADABLE;
        return is_failure(status) ? status : SPZ_OK;
    }
    ear->quiet = true;
    uint32_t forbidden = seatings_meant(names, count, spz_settings_text(hall->settings, "house.forbidden"));
    hall->usual_name = spz_settings_text(hall->settings, "house.usual");
    uint32_t usual = seating_meant(names, count, hall->usual_name);
    bool usual_known = usual && !(usual & (usual - 1)); /* one, not several */
    for (size_t i = 0; usual_known && i < count; i++)
        if (usual & 1u << i)
            hall->usual_name = names[i];
    for (size_t i = 0; status == SPZ_OK && i < count; i++)
        if (!(forbidden & 1u << i))
            status = try_seating(hall, names[i], &halls->arena, &heard);
    if (status == SPZ_OK)
        set_problem(halls, hall, ear, ear->sink);
    if (status == SPZ_OK)
        note_usual(hall, usual_known, usual & forbidden, ear->sink);
    return status;
}

static spz_status read_hall(Halls *halls, Hall *hall, const spz_sink *sink)
{
    Ear ear = {.arena = &halls->arena, .sink = sink};
    const spz_sink heard = {hear, &ear};
    spz_status status = settings_copy(halls->house, &hall->settings);
    if (status == SPZ_OK && *hall->name && !*spz_settings_text(hall->settings, "hall.name"))
        status = spz_settings_set(hall->settings, "hall.name", hall->name, NULL);
    if (status == SPZ_OK && *hall->file) {
        status = spz_settings_read(hall->settings, hall->file, &heard);
        if (status != SPZ_OK && !is_failure(status)) {
            hall->problem = SPZ_HALL_UNREADABLE;
            hall->problem_line = ear.line;
            return SPZ_OK;
        }
    }
    if (status == SPZ_OK)
        terms_of_settings(hall->settings, hall->terms);
    return status == SPZ_OK ? find_seatings(halls, hall, &ear) : status;
}

spz_status halls_find(Halls *halls, const char *name, const spz_sink *sink, const Hall **out)
{
    *out = NULL;
    for (size_t i = 0; i < halls->list.count && !*out; i++)
        if (strcmp(halls->list.at[i]->name, name) == 0)
            *out = halls->list.at[i];
    if (*out)
        return SPZ_OK;
    Hall *hall = arena_take(&halls->arena, 1, sizeof *hall);
    if (!hall || !array_push(&halls->list, hall))
        return SPZ_NO_MEMORY;
    hall->usual = -1;
    hall->name = arena_string(&halls->arena, name);
    hall->file = *name ? find_file(halls, name) : "";
    *out = hall;
    return hall->name && hall->file ? read_hall(halls, hall, sink) : SPZ_NO_MEMORY;
}

const spz_plan *hall_plan(const Hall *hall, int seating, bool two_orchestras)
{
    return two_orchestras && hall->doubles[seating] ? hall->doubles[seating] : hall->plans[seating];
}

const spz_plan *hall_plan_named(const Hall *hall, const char *seating, bool two_orchestras)
{
    for (int i = 0; i < hall->seatings; i++)
        if (!strcmp(hall->names[i], seating))
            return hall_plan(hall, i, two_orchestras);
    return NULL;
}

uint32_t hall_meant(const Hall *hall, const char *name)
{
    return seating_meant(hall->names, (size_t)hall->seatings, name);
}
