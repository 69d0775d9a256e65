/* check.c - reads the file with an ear for what the reader and the naming of parts doubt, then asks each check of checks.h. */
#include "analysis/division/shortages.h"
#include "checking/checks.h"
#include "support/message.h"
#include <string.h>

static const char *const kind_names[SPZ_DOUBT_KIND_COUNT] = {
    [SPZ_DOUBT_FILE] = "file",   [SPZ_DOUBT_BAR] = "bar",         [SPZ_DOUBT_LENGTH] = "length",
    [SPZ_DOUBT_TIE] = "tie",     [SPZ_DOUBT_RANGE] = "range",     [SPZ_DOUBT_TEMPO] = "tempo",
    [SPZ_DOUBT_SECTION] = "section", [SPZ_DOUBT_DIVISION] = "division", [SPZ_DOUBT_ORDER] = "order",
};

const char *spz_doubt_kind_name(spz_doubt_kind kind)
{
    return (int)kind >= 0 && kind < SPZ_DOUBT_KIND_COUNT ? kind_names[kind] : "";
}

static spz_doubt_kind kind_of(spz_fault fault)
{
    static const spz_doubt_kind kinds[SPZ_FAULT_COUNT] = { /* SPZ_DOUBT_FILE where nothing is said */
        [SPZ_FAULT_GUIDE] = SPZ_DOUBT_SECTION, [SPZ_FAULT_SOLOIST_BELOW] = SPZ_DOUBT_SECTION, [SPZ_FAULT_RIPIENO] = SPZ_DOUBT_SECTION,
        [SPZ_FAULT_SECOND_ORCHESTRA] = SPZ_DOUBT_SECTION, [SPZ_FAULT_STRINGS_UNTOLD] = SPZ_DOUBT_SECTION, [SPZ_FAULT_PART_UNTOLD] = SPZ_DOUBT_SECTION,
        [SPZ_FAULT_GUESSED] = SPZ_DOUBT_SECTION, [SPZ_FAULT_VIOLINS_UNNUMBERED] = SPZ_DOUBT_SECTION, [SPZ_FAULT_VIOLINS_TOO_MANY] = SPZ_DOUBT_SECTION, [SPZ_FAULT_CORRECTION_STAFF] = SPZ_DOUBT_SECTION,
        [SPZ_FAULT_CORRECTION_VOICE] = SPZ_DOUBT_SECTION, [SPZ_FAULT_CORRECTION_PART] = SPZ_DOUBT_SECTION, [SPZ_FAULT_NAME_UNKNOWN] = SPZ_DOUBT_SECTION, [SPZ_FAULT_CORRECTION_BAR] = SPZ_DOUBT_BAR,
        [SPZ_FAULT_NO_SECTION] = SPZ_DOUBT_SECTION, [SPZ_FAULT_BAR_OF_ALL] = SPZ_DOUBT_BAR, [SPZ_FAULT_BAR_OF_PART] = SPZ_DOUBT_BAR,
        [SPZ_FAULT_PART_ENDS] = SPZ_DOUBT_LENGTH, [SPZ_FAULT_TIE_WITHOUT_END] = SPZ_DOUBT_TIE, [SPZ_FAULT_TIE_WITHOUT_BEGINNING] = SPZ_DOUBT_TIE,
        [SPZ_FAULT_OUT_OF_RANGE] = SPZ_DOUBT_RANGE, [SPZ_FAULT_NO_TEMPO] = SPZ_DOUBT_TEMPO, [SPZ_FAULT_LATE_TEMPO] = SPZ_DOUBT_TEMPO,
        [SPZ_FAULT_DIVISION_OPEN] = SPZ_DOUBT_DIVISION, [SPZ_FAULT_DIVISION_NOT_PLAYED] = SPZ_DOUBT_DIVISION, [SPZ_FAULT_TOO_FEW_PLAYERS] = SPZ_DOUBT_DIVISION, [SPZ_FAULT_NEVER_PLAYED] = SPZ_DOUBT_ORDER,
        [SPZ_FAULT_UPBEAT_COUNTED] = SPZ_DOUBT_BAR, [SPZ_FAULT_HALVES_COUNTED] = SPZ_DOUBT_BAR, [SPZ_FAULT_NUMBERS_LEAP] = SPZ_DOUBT_BAR,
    };
    return kinds[fault];
}

static const char *keep(spz_doubts *doubts, const char *text)
{
    const char *kept = arena_string(&doubts->arena, text ? text : "");
    doubts->no_memory = doubts->no_memory || !kept;
    return kept;
}

/* Copies the texts; the movement is the one that is looked at. */
static void add(spz_doubts *doubts, spz_doubt doubt)
{
    doubt.kind = kind_of(doubt.fault);
    doubt.movement = doubts->movement;
    doubt.title = doubts->title;
    doubt.part = keep(doubts, doubt.part);
    doubt.bar = keep(doubts, doubt.bar);
    doubt.last_bar = keep(doubts, doubt.last_bar);
    doubt.name = keep(doubts, doubt.name);
    doubt.other = keep(doubts, doubt.other);
    if (!doubts->no_memory && !array_push(&doubts->list, doubt))
        doubts->no_memory = true;
}

void doubts_add(spz_doubts *doubts, const Movement *movement, DoubtPlace place, spz_doubt about)
{
    about.severity = about.fault == SPZ_FAULT_LATE_TEMPO || about.fault == SPZ_FAULT_UPBEAT_COUNTED || about.fault == SPZ_FAULT_HALVES_COUNTED ? SPZ_NOTE : SPZ_DOUBT;
    about.line = place.line;
    char number[PART_PLACE_TEXT];
    if (place.part >= 0)
        about.part = movement_part_name(movement, (size_t)place.part, number);
    if (place.bar >= 0) {
        about.bar = movement->bars[place.bar].number;
        about.last_bar = movement->bars[place.last_bar ? place.last_bar : place.bar].number;
    }
    add(doubts, about);
}

/* What the library says while it reads: doubts are kept, errors passed on. */
typedef struct Ear {
    spz_doubts *doubts;
    const spz_sink *sink;
} Ear;

static void hear(void *context, const spz_message *message)
{
    Ear *ear = context;
    if (message->severity == SPZ_ERROR)
        message_send(ear->sink, message, "%s", message->text);
    else
        add(ear->doubts, (spz_doubt){.fault = message->fault, .severity = message->severity, .part = message->part, .bar = message->bar,
                                     .last_bar = message->bar, .line = message->line, .name = message->name, .other = message->other,
                                     .count = message->count});
}

static spz_status check_movement(spz_doubts *doubts, const Movement *movement, const spz_settings *settings, const spz_sink *sink)
{
    Ear ear = {doubts, sink};
    spz_sink listening = {hear, &ear};
    spz_sections *map = NULL;
    doubts->title = arena_string(&doubts->arena, movement->title);
    if (!doubts->title)
        return SPZ_NO_MEMORY;
    check_bars(doubts, movement);
    check_numbers(doubts, movement);
    check_part_lengths(doubts, movement);
    check_ties(doubts, movement);
    spz_status status = spz_sections_find(movement, settings, &listening, &map);
    if (status)
        return status;
    check_ranges(doubts, map);
    check_tempo(doubts, movement);
    check_names(doubts, map);
    check_divisions(doubts, map);
    status = shortages_find(map, settings, &listening);
    if (status) {
        spz_sections_free(map);
        return status;
    }
    check_order(doubts, movement);
    spz_sections_free(map);
    return doubts->no_memory ? SPZ_NO_MEMORY : SPZ_OK;
}

/* Puts the doubts of each movement in the order of kinds, those of a kind staying in the order in which they were found. */
static spz_status order_by_kind(spz_doubts *doubts)
{
    size_t count = doubts->list.count;
    spz_doubt *ordered = memory_resize(NULL, count, sizeof *ordered);
    size_t done = 0;
    if (!ordered)
        return SPZ_NO_MEMORY;
    for (size_t first = 0, end; first < count; first = end) {
        for (end = first; end < count && doubts->list.at[end].movement == doubts->list.at[first].movement; end++)
            ;
        for (int kind = 0; kind < SPZ_DOUBT_KIND_COUNT; kind++)
            for (size_t i = first; i < end; i++)
                if (doubts->list.at[i].kind == (spz_doubt_kind)kind)
                    ordered[done++] = doubts->list.at[i];
    }
    if (count)
        memcpy(doubts->list.at, ordered, count * sizeof *ordered);
    memory_free(ordered);
    return SPZ_OK;
}

static spz_status check_file(spz_doubts *doubts, const char *path, const spz_settings *settings, const spz_sink *sink)
{
    Ear ear = {doubts, sink};
    spz_sink listening = {hear, &ear};
    spz_score *score = NULL;
    spz_settings *usual = NULL;
    spz_status status = settings ? SPZ_OK : spz_settings_new(&usual);
    if (!status)
        status = spz_score_read(path, &listening, &score);
    for (size_t i = 0; !status && i < spz_score_movement_count(score); i++) {
        doubts->movement = i;
        status = check_movement(doubts, spz_score_movement(score, i), settings ? settings : usual, sink);
    }
    if (!status)
        status = order_by_kind(doubts);
    spz_settings_free(usual);
    spz_score_free(score);
    return status;
}

spz_status spz_check(const char *path, const spz_settings *settings, const spz_sink *sink, spz_doubts **out)
{
    spz_doubts *doubts = memory_get(sizeof *doubts);
    *out = NULL;
    if (!doubts)
        return SPZ_NO_MEMORY;
    memset(doubts, 0, sizeof *doubts);
    arena_init(&doubts->arena);
    doubts->title = "";
    doubts->file = arena_string(&doubts->arena, path);
    spz_status status = doubts->file ? check_file(doubts, path, settings, sink) : SPZ_NO_MEMORY;
    if (!status && doubts->no_memory)
        status = SPZ_NO_MEMORY;
    if (status)
        spz_doubts_free(doubts);
    else
        *out = doubts;
    return status;
}

void spz_doubts_free(spz_doubts *doubts)
{
    if (!doubts)
        return;
    array_free(&doubts->list);
    arena_release(&doubts->arena);
    memory_free(doubts);
}

const char *spz_doubts_file(const spz_doubts *doubts)
{
    return doubts->file;
}

size_t spz_doubts_count(const spz_doubts *doubts)
{
    return doubts->list.count;
}

const spz_doubt *spz_doubts_at(const spz_doubts *doubts, size_t index)
{
    return index < doubts->list.count ? &doubts->list.at[index] : NULL;
}

size_t spz_doubts_grave(const spz_doubts *doubts)
{
    size_t grave = 0;
    for (size_t i = 0; i < doubts->list.count; i++)
        grave += doubts->list.at[i].severity != SPZ_NOTE;
    return grave;
}
