#include "library/heard.h"
#include "library/needs.h"
#include "model/movement.h"
#include "season/results/result_terms.h"
#include "spezzato/sheets.h"
#include "support/array.h"
#include "support/buffer.h"
#include "support/path.h"
#include <stdint.h>
#include <string.h>

typedef struct Keeping {
    Store *store;
    const spz_movement *movement;
    const spz_sections *sections;
    Buffer text; /* a value being put together */
} Keeping;

long long heard_find(Store *store, const char *content, const char *terms)
{
    Query query = query_begin(store, "SELECT id FROM score WHERE content = ? AND terms = ?");
    query_text(&query, content);
    query_text(&query, terms);
    long long id = query_row(&query) ? query_get_integer(&query, 0) : 0;
    query_end(&query);
    return id;
}

static double crotchets(const Keeping *keeping, spz_ticks ticks)
{
    return (double)ticks / (double)spz_movement_per_crotchet(keeping->movement);
}

static void put_text(Keeping *keeping, Query *query)
{
    query_text(query, buffer_text(&keeping->text));
    buffer_clear(&keeping->text);
}

static void keep_parts(Keeping *keeping, long long movement)
{
    for (size_t i = 0; i < spz_sections_lines(keeping->sections); i++) {
        const spz_line *line = spz_sections_line(keeping->sections, i);
        Query query = query_begin(keeping->store, "INSERT INTO part VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
        query_integer(&query, movement);
        query_integer(&query, (long long)i + 1);
        query_text(&query, spz_movement_part_name(keeping->movement, line->part));
        query_text(&query, spz_family_name(line->family));
        query_text(&query, line->section ? spz_section_name(line->section) : NULL);
        query_text(&query, line->also ? spz_section_name(line->also) : NULL);
        query_integer(&query, line->orchestra);
        query_text(&query, spz_role_name(line->role));
        query_run(&query);
    }
}

static void keep_needs(Keeping *keeping, const spz_movement_reading *reading, long long movement)
{
    Need needs[SPZ_DB + 1];
    needs_of(reading, needs);
    for (int section = SPZ_VN1; section <= SPZ_DB; section++) {
        if (needs[section].players == 0)
            continue;
        Query query = query_begin(keeping->store, "INSERT INTO need VALUES (?, ?, ?, ?)");
        query_integer(&query, movement);
        query_text(&query, spz_section_name((spz_section)section));
        query_integer(&query, needs[section].players);
        query_text(&query, needs[section].bar == SIZE_MAX ? NULL : spz_movement_bar_number(keeping->movement, needs[section].bar));
        query_run(&query);
    }
}

static void name_players(Keeping *keeping, spz_players players)
{
    spz_group bodies[64];
    size_t count = spz_players_named(keeping->sections, players, bodies, sizeof bodies / sizeof *bodies);
    for (size_t i = 0; i < count && i < sizeof bodies / sizeof *bodies; i++)
        buffer_printf(&keeping->text, "%s%s", i ? ", " : "", bodies[i].name);
}

static void keep_entries(Keeping *keeping, const spz_passage *passage, long long id)
{
    for (size_t i = 0; i < passage->entry_count; i++) {
        const spz_entry *entry = &passage->entries[i];
        Query query = query_begin(keeping->store, "INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
        query_integer(&query, id);
        query_integer(&query, (long long)i + 1);
        name_players(keeping, entry->players);
        put_text(keeping, &query);
        query_integer(&query, (long long)entry->bar + 1);
        query_number(&query, crotchets(keeping, entry->onset));
        query_number(&query, crotchets(keeping, entry->end - entry->onset));
        query_integer(&query, entry->answer);
        query_integer(&query, entry->change.semitones);
        query_integer(&query, entry->change.steps);
        query_run(&query);
    }
}

static void put_gesture(Query *query, const Keeping *keeping, const spz_passage *passage)
{
    bool gesture = passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_HOCKET || passage->kind == SPZ_IMITATION;
    const spz_change *change = &passage->told.gesture.change;
    query_some(query, gesture, gesture ? passage->told.gesture.notes : 0);
    if (gesture && passage->entry_count > 1)
        query_number(query, crotchets(keeping, passage->entries[1].onset - passage->entries[0].onset));
    else
        query_text(query, NULL);
    query_some(query, gesture, gesture ? change->semitones : 0);
    query_some(query, gesture, gesture ? change->steps : 0);
    query_some(query, gesture, gesture && change->inverted);
    query_some(query, gesture, gesture ? change->stretch : 0);
}

static void keep_passage(Keeping *keeping, const spz_passage *passage, size_t number, long long movement)
{
    Query query = query_begin(keeping->store, "INSERT INTO passage VALUES (NULL, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    bool second = passage->sides[1].section != SPZ_NO_SECTION;
    query_integer(&query, movement);
    query_integer(&query, (long long)number);
    query_text(&query, spz_kind_name(passage->kind));
    query_text(&query, spz_section_name(passage->sides[0].section));
    query_text(&query, second ? spz_section_name(passage->sides[1].section) : NULL);
    query_integer(&query, (long long)passage->first + 1);
    query_integer(&query, (long long)passage->last + 1);
    query_text(&query, passage->first_bar);
    query_text(&query, passage->last_bar);
    query_text(&query, passage->letter);
    query_number(&query, passage->strength);
    query_integer(&query, passage->turns);
    put_gesture(&query, keeping, passage);
    query_run(&query);
    keep_entries(keeping, passage, store_last(keeping->store));
}

static void put_losses(Keeping *keeping, Query *query, const spz_ranked *ranked)
{
    Buffer *text = &keeping->text;
    for (size_t i = 0; i < ranked->loss_count; i++) {
        const spz_loss *loss = &ranked->losses[i];
        buffer_printf(text, "%s%s", i ? "; " : "", spz_kind_name(loss->kind));
        for (int side = 0; side < 2; side++)
            if (loss->sides[side] != SPZ_NO_SECTION)
                buffer_printf(text, " %s", spz_section_name(loss->sides[side]));
        for (size_t b = 0; b < loss->basis.bar_count; b++) {
            const spz_bars *bars = &loss->basis.bars[b];
            buffer_printf(text, "%s%s", b ? ", " : " ", bars->first_bar);
            if (bars->last != bars->first)
                buffer_printf(text, "-%s", bars->last_bar);
        }
    }
    put_text(keeping, query);
}

static void keep_terms(Keeping *keeping, const spz_ranked *ranked, long long seat)
{
    for (size_t i = 0; i < ranked->term_count; i++) {
        Query query = query_begin(keeping->store, "INSERT INTO term VALUES (?, ?, ?, ?, ?)");
        query_integer(&query, seat);
        query_integer(&query, (long long)i + 1);
        query_text(&query, spz_term_name(ranked->terms[i].kind));
        query_number(&query, ranked->terms[i].points);
        query_number(&query, ranked->terms[i].evidence);
        query_run(&query);
    }
}

static void keep_seats(Keeping *keeping, const spz_verdict *verdict, long long movement)
{
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        Query query = query_begin(keeping->store, "INSERT INTO seat VALUES (NULL, ?, ?, ?, ?, ?, ?)");
        query_integer(&query, movement);
        query_integer(&query, (long long)i + 1);
        query_text(&query, ranked->name);
        query_number(&query, ranked->points);
        query_number(&query, ranked->lost);
        put_losses(keeping, &query, ranked);
        query_run(&query);
        keep_terms(keeping, ranked, store_last(keeping->store));
    }
}

/* A score without a work's title is a work by itself, by its movement's title, else by its file's name. */
static const char *work_name(const spz_movement *movement, const char *path)
{
    return *movement->work ? movement->work : *movement->title ? movement->title : path_name(path);
}

static long long keep_work(Keeping *keeping, const char *path)
{
    const char *composer = spz_movement_composer(keeping->movement), *name = work_name(keeping->movement, path);
    Query query = query_begin(keeping->store, "INSERT OR IGNORE INTO work (composer, name) VALUES (?, ?)");
    query_text(&query, composer);
    query_text(&query, name);
    query_run(&query);
    query = query_begin(keeping->store, "SELECT id FROM work WHERE composer = ? AND name = ?");
    query_text(&query, composer);
    query_text(&query, name);
    long long id = query_row(&query) ? query_get_integer(&query, 0) : 0;
    query_end(&query);
    return id;
}

static void put_verdict(Query *query, const spz_verdict *verdict)
{
    static const char *const outcomes[SPZ_OUTCOME_COUNT] = {"judged", "without strings", "without violins", "without movement"};
    spz_statement statement = spz_verdict_statement(verdict);
    query_text(query, outcomes[statement.outcome]);
    query_text(query, spz_confidence_name(statement.confidence));
    query_number(query, statement.margin);
    query_text(query, statement.arrangement);
    query_integer(query, statement.by_year);
}

static int orchestras_of(const spz_sections *sections)
{
    int most = 1;
    for (size_t i = 0; i < spz_sections_groups(sections); i++)
        if (spz_sections_group(sections, i)->orchestra > most)
            most = spz_sections_group(sections, i)->orchestra;
    return most;
}

static long long keep_head(Keeping *keeping, const HeardFile *file, const spz_movement_reading *reading, long long score, int year)
{
    long long work = keep_work(keeping, file->path);
    double seconds = spz_movement_duration(keeping->movement);
    int composed = year ? year : spz_movement_year(keeping->movement);
    Query query = query_begin(keeping->store, "INSERT INTO movement VALUES (NULL, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    query_integer(&query, score);
    query_integer(&query, (long long)keeping->movement->number);
    query_integer(&query, work);
    query_text(&query, spz_movement_title(keeping->movement));
    query_some(&query, composed != 0, composed);
    query_integer(&query, (long long)spz_movement_bars(keeping->movement));
    if (keeping->movement->tempo_count)
        query_number(&query, seconds);
    else
        query_text(&query, NULL);
    query_integer(&query, orchestras_of(keeping->sections));
    query_integer(&query, spz_verdict_thirds(reading->verdict));
    query_integer(&query, spz_findings_chamber_music(reading->findings));
    put_verdict(&query, reading->verdict);
    query_run(&query);
    return store_last(keeping->store);
}

static void keep_movement(Keeping *keeping, const HeardFile *file, const spz_movement_reading *reading, long long score, int year)
{
    keeping->movement = reading->movement;
    keeping->sections = reading->sections;
    long long movement = keep_head(keeping, file, reading, score, year);
    keep_parts(keeping, movement);
    keep_needs(keeping, reading, movement);
    for (size_t i = 0; i < spz_findings_count(reading->findings); i++)
        keep_passage(keeping, spz_findings_at(reading->findings, i), i + 1, movement);
    keep_seats(keeping, reading->verdict, movement);
}

long long heard_keep(Store *store, const HeardFile *file, const spz_reading *reading, int year)
{
    Keeping keeping = {.store = store};
    Query query = query_begin(store, "INSERT INTO score VALUES (NULL, ?, ?, ?)");
    buffer_init(&keeping.text);
    query_text(&query, file->content);
    query_text(&query, file->terms);
    query_text(&query, terms_edition());
    query_run(&query);
    long long score = store_last(store);
    for (size_t i = 0; i < spz_reading_count(reading); i++) {
        spz_movement_reading one = spz_reading_at(reading, i);
        keep_movement(&keeping, file, &one, score, year);
    }
    buffer_free(&keeping.text);
    return score;
}

/* The score goes, and with it each work of which nothing is left. */
static void drop_score(Store *store, long long score)
{
    ARRAY(long long) works = {NULL, 0, 0};
    Query query = query_begin(store, "SELECT DISTINCT work FROM movement WHERE score = ?");
    query_integer(&query, score);
    while (query_row(&query) && array_push(&works, query_get_integer(&query, 0)))
        ;
    query_end(&query);
    query = query_begin(store, "DELETE FROM score WHERE id = ?");
    query_integer(&query, score);
    query_run(&query);
    for (size_t i = 0; i < works.count; i++) {
        query = query_begin(store, "DELETE FROM work WHERE id = ?1 AND NOT EXISTS (SELECT 1 FROM movement WHERE work = ?1)");
        query_integer(&query, works.at[i]);
        query_run(&query);
    }
    array_free(&works);
}

static bool is_held(Store *store, long long score)
{
    Query query = query_begin(store, "SELECT 1 FROM file WHERE score = ? LIMIT 1");
    query_integer(&query, score);
    bool held = query_row(&query);
    query_end(&query);
    return held;
}

void heard_file(Store *store, const HeardFile *file, long long score, const char *problem)
{
    Query query = query_begin(store, "SELECT score FROM file WHERE path = ?");
    query_text(&query, file->path);
    long long before = query_row(&query) ? query_get_integer(&query, 0) : 0;
    query_end(&query);
    query = query_begin(store, "INSERT OR REPLACE INTO file (path, content, terms, bytes, changed, score, problem) VALUES (?, ?, ?, ?, ?, ?, ?)");
    query_text(&query, file->path);
    query_text(&query, file->content);
    query_text(&query, file->terms);
    query_integer(&query, file->bytes);
    query_integer(&query, file->changed);
    query_some(&query, score != 0, score);
    query_text(&query, problem);
    query_run(&query);
    if (before && before != score && !is_held(store, before))
        drop_score(store, before);
}

void heard_sweep(Store *store)
{
    Query query = query_begin(store, "DELETE FROM score WHERE NOT EXISTS (SELECT 1 FROM file WHERE file.score = score.id)");
    query_run(&query);
    query = query_begin(store, "DELETE FROM work WHERE NOT EXISTS (SELECT 1 FROM movement WHERE movement.work = work.id)");
    query_run(&query);
}
