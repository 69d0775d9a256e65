/* Everything that stands on the stage, by its place. Rows of winds and percussion are straight, as their platforms are; each begins a
 * row's depth behind the one before. */
#include "spezzato/laying.h"
#include "seating/stage/furniture.h"
#include "support/array.h"
#include "support/memory.h"
#include <math.h>
#include <string.h>

static const double half_turn = 3.14159265358979323846;
/* Metres: common practice. A concert grand is about 2.75 m by 1.58 m (makers' tables, from memory). */
static const double way_behind_strings = 0.6, row_ends = 0.3, soloist_width = 1.1, soloist_y = 0.6, piano_deep = 1.58, piano_clear = 0.2,
                    stand_before = 0.55, behind_last_row = 0.7;

struct spz_laying {
    const spz_plan *plan;
    ARRAY(spz_laid) places;
    ARRAY(spz_riser) risers;
    double behind; /* y behind the last row */
    bool failed;
};

/* The room of one player, and how deep his row is. */
typedef struct PlayerRoom {
    double width, depth;
} PlayerRoom;

static PlayerRoom room_for(const spz_settings *s, spz_instrument instrument)
{
    const char *width = "stage.wind width", *depth = "stage.wind depth";
    if (instrument >= SPZ_HORNS && instrument <= SPZ_LOW_BRASS)
        width = "stage.brass width";
    else if (instrument == SPZ_TIMPANI)
        width = "stage.timpani width";
    else if (instrument >= SPZ_PERCUSSION)
        width = "stage.percussion width";
    if (instrument == SPZ_TIMPANI || instrument == SPZ_PERCUSSION)
        depth = "stage.percussion depth";
    return (PlayerRoom){spz_settings_number(s, width), spz_settings_number(s, depth)};
}

const char *spz_laid_name(spz_laid_kind kind)
{
    static const char *const names[SPZ_LAID_KIND_COUNT] = {"podium", "desk", "player", "soloist", "piano"};
    return (unsigned)kind < SPZ_LAID_KIND_COUNT ? names[kind] : "";
}

static void add(spz_laying *laying, spz_laid laid)
{
    laid.radius = hypot(laid.x, laid.y);
    laid.angle = laid.radius > 0 ? atan2(laid.x, laid.y) * 180 / half_turn : 0;
    laid.lights = laid.stands;
    laying->failed = laying->failed || !array_push(&laying->places, laid);
}

static void add_podium(spz_laying *laying)
{
    add(laying, (spz_laid){.kind = SPZ_LAID_PODIUM, .players = 1, .stands = 1, .stand = {0, stand_before}});
}

static void add_piano(spz_laying *laying, const spz_settings *settings)
{
    if (strcmp(spz_settings_text(settings, "stage.piano"), "solo") != 0)
        return;
    double y = -spz_plan_front(laying->plan) + piano_clear + piano_deep / 2;
    add(laying, (spz_laid){.kind = SPZ_LAID_PIANO, .players = 1, .y = y, .stools = 1, .seats = {{-1.75, y}, {0, 0}}});
}

/* The first two at the conductor's left hand, nearest to him first, then at his right. */
static void add_soloists(spz_laying *laying, const spz_forces *forces, const spz_settings *settings)
{
    int more = (int)spz_settings_number(settings, "stage.soloists"), seated = 0;
    for (int section = SPZ_NO_SECTION; section <= SPZ_DB; section++) {
        int count = section ? forces->soloists[section] : more;
        for (int i = 0; i < count; i++, seated++) {
            bool left = seated < 2 || seated >= 4;
            double x = left ? -(1.3 + soloist_width * (seated < 2 ? seated : seated - 2)) : 1.3 + soloist_width * (seated - 2);
            double y = -fmin(soloist_y, spz_plan_front(laying->plan) / 2);
            add(laying, (spz_laid){.kind = SPZ_LAID_SOLOIST, .section = (spz_section)section, .number = i + 1, .players = 1, .x = x, .y = y,
                                   .chairs = section == SPZ_VC, .stools = section == SPZ_DB, .stands = section != SPZ_NO_SECTION,
                                   .seats = {{x, y}, {0, 0}}, .stand = {x, y - stand_before}});
        }
    }
}

static void add_desk(spz_laying *laying, const spz_stage_desk *desk)
{
    Furniture f = furniture_of(laying->plan, desk);
    bool swap = f.seats[1].y < f.seats[0].y - 1e-9; /* the outside player sits nearer the audience */
    bool basses = desk->section == SPZ_DB;
    add(laying, (spz_laid){.kind = SPZ_LAID_DESK, .section = desk->section, .orchestra = desk->orchestra, .number = desk->number, .players = desk->players,
                           .x = desk->x, .y = desk->y, .z = desk->z, .chairs = basses ? 0 : desk->players, .stools = basses ? desk->players : 0,
                           .stands = 1, .seats = {f.seats[swap], f.seats[!swap]}, .stand = f.stand});
}

/* One row under way: its players from house left to house right. */
enum { ROW_MOST = 60 };
typedef struct WindRow {
    struct {
        spz_instrument instrument;
        int number;
        double width;
    } at[ROW_MOST];
    int count;
    double width, depth;
} WindRow;

static double height_behind(const spz_laying *laying)
{
    double highest = 0;
    for (size_t i = 0; i < laying->places.count; i++)
        highest = fmax(highest, laying->places.at[i].z);
    return highest;
}

static void close_row(spz_laying *laying, WindRow *row, double riser)
{
    if (row->count == 0)
        return;
    double z = riser > 0 ? height_behind(laying) + riser : 0, x = -row->width / 2, y = laying->behind + row->depth / 2;
    if (riser > 0) {
        const spz_riser platform = {.straight = true, .height = z, .front = laying->behind, .back = laying->behind + row->depth,
                                    .from = x - row_ends, .to = -x + row_ends, .edge = row->width + 2 * row_ends};
        laying->failed = laying->failed || !array_push(&laying->risers, platform);
    }
    for (int i = 0; i < row->count; i++) {
        spz_instrument who = row->at[i].instrument;
        double middle = x + row->at[i].width / 2;
        bool stool = who == SPZ_TIMPANI || who == SPZ_KEYBOARDS;
        add(laying, (spz_laid){.kind = SPZ_LAID_PLAYER, .instrument = who, .number = row->at[i].number, .players = 1, .x = middle, .y = y, .z = z,
                               .chairs = !stool, .stools = stool, .stands = 1, .seats = {{middle, y}, {0, 0}}, .stand = {middle, y - stand_before}});
        x += row->at[i].width;
    }
    laying->behind += row->depth;
    *row = (WindRow){.count = 0};
}

/* As many rows as the width of the stage makes of them. */
static void add_row(spz_laying *laying, const spz_forces *forces, const spz_settings *settings, const spz_instrument *who, int kinds)
{
    WindRow row = {.count = 0};
    double most = spz_plan_stage_width(laying->plan) - 2 * row_ends, riser = spz_settings_number(settings, "stage.riser");
    for (int k = 0; k < kinds; k++) {
        PlayerRoom room = room_for(settings, who[k]);
        for (int i = 0; i < forces->players[who[k]]; i++) {
            if (row.width + room.width > most || row.count == ROW_MOST)
                close_row(laying, &row, riser);
            row.at[row.count].instrument = who[k];
            row.at[row.count].number = i + 1;
            row.at[row.count++].width = room.width;
            row.width += room.width;
            row.depth = fmax(row.depth, room.depth);
        }
    }
    close_row(laying, &row, riser);
}

static int count_of(const spz_forces *forces, spz_instrument from, spz_instrument to)
{
    int count = 0;
    for (int i = (int)from; i <= (int)to; i++)
        count += forces->players[i];
    return count;
}

/* From house left to house right, front row first. Few woodwind share one row, few brass that of the timpani: common practice. */
static void add_winds(spz_laying *laying, const spz_forces *forces, const spz_settings *settings)
{
    enum { WOODWIND_IN_ONE = 8, BRASS_IN_ONE = 4 };
    static const spz_instrument all[] = {SPZ_PLUCKED, SPZ_KEYBOARDS, SPZ_FLUTES, SPZ_OBOES, SPZ_CLARINETS, SPZ_BASSOONS, SPZ_OTHER_WOODWIND,
                                         SPZ_HORNS, SPZ_TRUMPETS, SPZ_TROMBONES, SPZ_LOW_BRASS, SPZ_PERCUSSION, SPZ_TIMPANI};
    bool one_of_wood = count_of(forces, SPZ_FLUTES, SPZ_OTHER_WOODWIND) <= WOODWIND_IN_ONE;
    bool one_of_brass = count_of(forces, SPZ_HORNS, SPZ_LOW_BRASS) <= BRASS_IN_ONE && count_of(forces, SPZ_TIMPANI, SPZ_PERCUSSION) <= 1;
    laying->behind = spz_plan_used_depth(laying->plan) - spz_plan_front(laying->plan) + way_behind_strings;
    add_row(laying, forces, settings, all, one_of_wood ? 7 : 4);
    if (!one_of_wood)
        add_row(laying, forces, settings, all + 4, 3);
    add_row(laying, forces, settings, all + 7, one_of_brass ? 6 : 4);
    if (!one_of_brass)
        add_row(laying, forces, settings, all + 11, 2);
}

static spz_riser *riser_at(spz_laying *laying, double height)
{
    for (size_t i = 0; i < laying->risers.count; i++)
        if (fabs(laying->risers.at[i].height - height) < 1e-9)
            return &laying->risers.at[i];
    const spz_riser new = {.height = height, .from = 360, .to = -360};
    if (array_push(&laying->risers, new))
        return &laying->risers.at[laying->risers.count - 1];
    laying->failed = true;
    return NULL;
}

/* Every raised row of the strings: half a row's depth before and behind its desks. */
static void add_risers(spz_laying *laying, const spz_settings *settings)
{
    double half = spz_settings_number(settings, "stage.desk depth") / 2;
    for (size_t i = 0; i < laying->places.count; i++) {
        const spz_laid *laid = &laying->places.at[i];
        if (laid->kind != SPZ_LAID_DESK || laid->z <= 0)
            continue;
        spz_riser *riser = riser_at(laying, laid->z);
        if (!riser)
            return;
        double reach = spz_plan_desk_width(laying->plan, laid->section) / 2 / laid->radius * 180 / half_turn;
        riser->front = laid->radius - half;
        riser->back = laid->radius + half;
        riser->from = fmin(riser->from, laid->angle - reach);
        riser->to = fmax(riser->to, laid->angle + reach);
        riser->edge = riser->front * (riser->to - riser->from) * half_turn / 180;
    }
}

static void fill(spz_laying *laying, const spz_forces *forces, const spz_settings *settings)
{
    static const spz_forces none = {{0}, {0}};
    forces = forces ? forces : &none;
    if (!spz_plan_is_single(laying->plan))
        add_podium(laying);
    add_piano(laying, settings);
    add_soloists(laying, forces, settings);
    for (size_t i = 0; i < spz_plan_desks(laying->plan); i++)
        add_desk(laying, spz_plan_desk(laying->plan, i));
    add_risers(laying, settings);
    add_winds(laying, forces, settings);
}

spz_status spz_laying_make(const spz_plan *plan, const spz_forces *forces, const spz_settings *settings, spz_laying **out)
{
    spz_settings *defaults = NULL;
    spz_laying *laying = memory_get(sizeof *laying);
    spz_status status = laying ? SPZ_OK : SPZ_NO_MEMORY;
    *out = NULL;
    if (laying)
        *laying = (spz_laying){.plan = plan};
    if (laying && !settings)
        status = spz_settings_new(&defaults);
    if (status == SPZ_OK)
        fill(laying, forces, settings ? settings : defaults);
    spz_settings_free(defaults);
    if (status == SPZ_OK && !laying->failed)
        *out = laying;
    else
        spz_laying_free(laying);
    return *out ? SPZ_OK : SPZ_NO_MEMORY;
}

void spz_laying_free(spz_laying *laying)
{
    if (!laying)
        return;
    array_free(&laying->places);
    array_free(&laying->risers);
    memory_free(laying);
}

size_t spz_laying_count(const spz_laying *laying)
{
    return laying->places.count;
}
size_t spz_laying_risers(const spz_laying *laying)
{
    return laying->risers.count;
}

const spz_laid *spz_laying_at(const spz_laying *laying, size_t index)
{
    return index < laying->places.count ? &laying->places.at[index] : NULL;
}

const spz_riser *spz_laying_riser(const spz_laying *laying, size_t index)
{
    return index < laying->risers.count ? &laying->risers.at[index] : NULL;
}

spz_laid_sums spz_laying_sums(const spz_laying *laying)
{
    spz_laid_sums sums = {0, 0, 0, 0, 0};
    for (size_t i = 0; i < laying->places.count; i++) {
        const spz_laid *laid = &laying->places.at[i];
        sums.players += laid->kind == SPZ_LAID_PODIUM ? 0 : laid->players;
        sums.chairs += laid->chairs;
        sums.stools += laid->stools;
        sums.stands += laid->stands;
        sums.lights += laid->lights;
    }
    return sums;
}

double spz_laying_depth(const spz_laying *laying)
{
    bool winds = laying->places.count && laying->places.at[laying->places.count - 1].kind == SPZ_LAID_PLAYER;
    return winds ? laying->behind + spz_plan_front(laying->plan) : spz_plan_used_depth(laying->plan);
}

const spz_plan *spz_laying_plan(const spz_laying *laying)
{
    return laying->plan;
}

/* Between the outer edges of the chairs of two places. */
static double clear_between(const spz_laid *a, const spz_laid *b)
{
    double least = INFINITY;
    for (int i = 0; i < a->players; i++)
        for (int j = 0; j < b->players; j++)
            least = fmin(least, hypot(a->seats[i].x - b->seats[j].x, a->seats[i].y - b->seats[j].y));
    return least - (a->stools ? furniture_stool : furniture_chair) - (b->stools ? furniture_stool : furniture_chair);
}

static double narrowest(const spz_laying *laying, const spz_section pair[2])
{
    double clear = INFINITY;
    for (size_t i = 0; i < laying->places.count; i++)
        for (size_t j = 0; j < laying->places.count; j++) {
            const spz_laid *a = &laying->places.at[i], *b = &laying->places.at[j];
            if (a->kind == SPZ_LAID_DESK && b->kind == SPZ_LAID_DESK && a->section == pair[0] && b->section == pair[1] && a->orchestra == b->orchestra)
                clear = fmin(clear, clear_between(a, b));
        }
    return clear;
}

static spz_spot at_radius(double radius, double angle)
{
    return (spz_spot){radius * sin(angle * half_turn / 180), radius * cos(angle * half_turn / 180)};
}

/* Midway between the desks of the two that are next to each other, from the first of their rows to the last. */
static void find_middle_line(const spz_laying *laying, spz_way *way)
{
    double last = -90, next = 90, inner = INFINITY, outer = 0;
    for (size_t i = 0; i < laying->places.count; i++) {
        const spz_laid *laid = &laying->places.at[i];
        if (laid->kind != SPZ_LAID_DESK || laid->orchestra == 2 || (laid->section != way->pair[0] && laid->section != way->pair[1]))
            continue;
        last = laid->section == way->pair[0] ? fmax(last, laid->angle) : last;
        next = laid->section == way->pair[1] ? fmin(next, laid->angle) : next;
        inner = fmin(inner, laid->radius);
        outer = fmax(outer, laid->radius);
    }
    way->front = at_radius(inner, (last + next) / 2);
    way->back = at_radius(outer + behind_last_row, (last + next) / 2);
}

bool spz_laying_way(const spz_laying *laying, size_t index, spz_way *out)
{
    spz_order order = spz_plan_order(laying->plan);
    if ((int)index + 1 >= order.count)
        return false;
    *out = (spz_way){.pair = {order.sections[index], order.sections[index + 1]}};
    out->clear = narrowest(laying, out->pair);
    if (!isfinite(out->clear))
        return false;
    find_middle_line(laying, out);
    return true;
}
