#include "season/results/score_result.h"
#include "engine/bar_rules.h"
#include "engine/steps.h"
#include "season/results/loss_lines.h"
#include "support/memory.h"
#include "support/message.h"
#include "support/path.h"
#include "model/durations.h"
#include <math.h>
#include <string.h>

ScoreResult *score_result_new(void)
{
    ScoreResult *result = memory_zeroed(1, sizeof *result);
    if (!result)
        return NULL;
    arena_init(&result->arena);
    return result;
}

void score_result_free(ScoreResult *result)
{
    if (!result)
        return;
    array_free(&result->movements);
    array_free(&result->messages);
    arena_release(&result->arena);
    memory_free(result);
}

typedef struct Keeper {
    ScoreResult *result;
    const char *path; /* of the score */
} Keeper;

/* What is said of another file, of settings, names it in its words: a result belongs to its score. */
static const char *words_of(const Keeper *keeper, const spz_message *message)
{
    Arena *arena = &keeper->result->arena;
    const char *text = message->text ? message->text : "";
    if (!message->file || strcmp(message->file, keeper->path) == 0)
        return arena_string(arena, text);
    return message->line ? arena_format(arena, "%s, line %ld: %s", path_name(message->file), message->line, text) : arena_format(arena, "%s: %s", path_name(message->file), text);
}

/* Keeps what the reader says; the score's name is known anyway. */
static void keep_message(void *context, const spz_message *message)
{
    const Keeper *keeper = context;
    ScoreResult *result = keeper->result;
    Arena *arena = &result->arena;
    bool own = !message->file || strcmp(message->file, keeper->path) == 0;
    if (result->messages.count >= RESULT_MESSAGES_MOST && message->severity != SPZ_ERROR) {
        result->messages_left_out++;
        return;
    }
    ResultMessage kept = {.severity = message->severity, .line = own || message->fault ? message->line : 0, .part = arena_string(arena, message->part),
                          .bar = arena_string(arena, message->bar), .fault = message->fault, .name = arena_string(arena, message->name),
                          .other = arena_string(arena, message->other), .count = message->count};
    if (!kept.fault)
        kept.text = words_of(keeper, message);
    if ((!kept.fault && !kept.text) || !array_push(&result->messages, kept))
        result->messages_left_out++;
}

static spz_status keep_seats(Arena *arena, const spz_verdict *verdict, MovementResult *movement)
{
    size_t count = spz_verdict_count(verdict);
    movement->seats = arena_take(arena, count ? count : 1, sizeof *movement->seats);
    if (!movement->seats)
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        movement->seats[i] = (SeatingResult){arena_string(arena, ranked->name), losses_keep(arena, ranked->losses, ranked->loss_count), ranked->loss_count,
                                             llround(ranked->points * 100), ranked->lost_bars, lround(ranked->lost_seconds * 10)};
        if (!movement->seats[i].name || !movement->seats[i].losses)
            return SPZ_NO_MEMORY;
    }
    movement->seat_count = count;
    return SPZ_OK;
}

static spz_status keep_movement(ScoreResult *result, const spz_movement *score, const spz_verdict *verdict, const spz_sections *sections)
{
    Arena *arena = &result->arena;
    MovementResult movement = {.title = arena_string(arena, spz_movement_title(score)),
                               .statement = spz_verdict_statement(verdict),
                               .bars = spz_movement_bars(score),
                               .strings = spz_sections_groups(sections) > 0,
                               .chamber = spz_sections_chamber_music(sections),
                               .thirds = spz_verdict_thirds(verdict),
                               .two_orchestras = spz_verdict_orchestras(verdict) > 1,
                               .year = spz_verdict_by_year(verdict).year,
                               .tenths = lround(movement_played_seconds(score) * 10)};
    movement.statement.margin = round(movement.statement.margin * 1e9) / 1e9;
    movement.statement.arrangement = arena_string(arena, movement.statement.arrangement);
    spz_status status = movement.title ? keep_seats(arena, verdict, &movement) : SPZ_NO_MEMORY;
    if (status != SPZ_OK)
        return status;
    return array_push(&result->movements, movement) ? SPZ_OK : SPZ_NO_MEMORY;
}

/* One movement at a time, so that a score of many needs no more memory than its largest. */
static spz_status judge(ScoreResult *result, const spz_movement *score, const StepsWanted *wanted, const spz_sink *sink)
{
    Steps steps;
    spz_status status = steps_take(score, wanted, sink, &steps);
    if (status == SPZ_OK)
        status = keep_movement(result, score, steps.verdict, steps.sections);
    steps_free(&steps);
    return status;
}

spz_status score_result_make(const void *data, size_t size, const char *path, const spz_settings *settings, int year, ScoreResult *result)
{
    spz_score *score = NULL;
    const StepsWanted wanted = {settings, year, SPZ_TO_SEATING};
    Keeper keeper = {result, path};
    const spz_sink sink = {keep_message, &keeper};
    spz_status status = spz_score_read_memory(data, size, path, &sink, &score);
    if (status == SPZ_OK)
        status = bar_rules_apply(score, settings, &sink);
    for (size_t i = 0; status == SPZ_OK && i < spz_score_movement_count(score); i++)
        status = judge(result, spz_score_movement(score, i), &wanted, &sink);
    spz_score_free(score);
    if (status == SPZ_NO_MEMORY)
        return status;
    result->status = status;
    if (status != SPZ_OK)
        result->movements.count = 0;
    return SPZ_OK;
}

static void tell_message(const ResultMessage *kept, const char *path, const spz_sink *sink)
{
    spz_message message = {.severity = kept->severity, .file = path, .line = kept->line, .part = kept->part, .bar = kept->bar, .fault = kept->fault,
                           .name = kept->name, .other = kept->fault == SPZ_FAULT_CORRECTION_PART || kept->fault == SPZ_FAULT_CORRECTION_BAR ? path : kept->other, .count = kept->count};
    if (kept->fault)
        message_fault(sink, &message);
    else
        message_send(sink, &message, "%s", kept->text);
}

/* 'season.csv, line 4: the score 'air.musicxml' could not be read: line 100, Violin I, bar 3: ...' */
static void tell_at_row(const ResultMessage *kept, const char *path, const spz_message *row, const spz_sink *sink)
{
    Buffer why = {0};
    if (kept->line > 0)
        buffer_printf(&why, "line %ld%s", kept->line, kept->part && *kept->part ? ", " : ": ");
    if (kept->part && *kept->part)
        buffer_printf(&why, "%s%s%s: ", kept->part, kept->bar && *kept->bar ? ", bar " : "", kept->bar ? kept->bar : "");
    buffer_puts(&why, kept->text);
    spz_message message = *row;
    message.severity = SPZ_ERROR;
    message.fault = SPZ_FAULT_SCORE_UNREADABLE;
    message.name = path_name(path);
    message.other = buffer_failed(&why) ? kept->text : why.text;
    message_fault(sink, &message);
    buffer_free(&why);
}

void score_result_tell(const ScoreResult *result, const char *path, const spz_message *row, const spz_sink *sink)
{
    for (size_t i = 0; i < result->messages.count; i++) {
        const ResultMessage *kept = &result->messages.at[i];
        if (result->status != SPZ_OK && result->status != SPZ_BAD_SETTINGS && kept->severity == SPZ_ERROR && !kept->fault)
            tell_at_row(kept, path, row, sink);
        else
            tell_message(kept, path, sink);
    }
    spz_message place = {.severity = SPZ_NOTE, .file = path};
    if (result->messages_left_out)
        message_send(sink, &place, "%zu more doubts and notes about this score", result->messages_left_out);
}
