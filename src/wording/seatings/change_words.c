#include "wording/seatings/change_words.h"
#include "wording/seatings/seating_words.h"
#include "support/numbers.h"
#include <math.h>
#include <string.h>

_Static_assert(PHRASE_SEASON_AT_MOVEMENT - PHRASE_SEASON_AT_BEFORE_CONCERT == SPZ_GAP_COUNT - 1, "every gap has its phrase, in the order of season.h");
_Static_assert(PHRASE_SEASON_FROM_BACK_RIGHT - PHRASE_SEASON_FROM_OUTER_LEFT == SPZ_PLACE_COUNT - 1, "every place has its phrase, in the order of season.h");
_Static_assert(PHRASE_SEASON_TO_BACK_RIGHT - PHRASE_SEASON_TO_OUTER_LEFT == SPZ_PLACE_COUNT - 1, "likewise");

/* One decimal, none where it would be a nought. */
static void say_tenths(Buffer *out, spz_language language, Phrase phrase, double value)
{
    char text[NUMBER_TEXT];
    const char *point = strchr(number_text(value, 1, text), '.');
    bool whole = point && point[1] == '0';
    SAY(out, language, phrase, slot_decimal("n", whole ? round(value) : value, whole ? 0 : 1));
}

void say_points(Buffer *out, spz_language language, double points)
{
    if (points > 0 && points < 0.05)
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_POINTS_LITTLE));
    else
        say_tenths(out, language, PHRASE_SEASON_POINTS, points);
}

void say_minutes(Buffer *out, spz_language language, double minutes)
{
    say_tenths(out, language, PHRASE_SEASON_MINUTES, minutes);
}

void say_change_place(Buffer *out, spz_language language, const spz_changeover *change)
{
    SAY(out, language, (Phrase)(PHRASE_SEASON_AT_BEFORE_CONCERT + (int)change->gap), slot_text("after", change->after),
        slot_text("before", change->before), slot_number("n", (long)change->movement + 1));
}

void say_change(Buffer *out, spz_language language, const spz_changeover *change)
{
    static const Phrase phrases[2][2][2] = { /* the same seating, two orchestras before, after */
        {{PHRASE_SEASON_FROM_TO, PHRASE_SEASON_FROM_TO_INTO_TWO}, {PHRASE_SEASON_FROM_TO_INTO_ONE, PHRASE_SEASON_FROM_TO_TWO}},
        {{PHRASE_SEASON_FROM_TO, PHRASE_SEASON_FROM_TO_SAME_INTO_TWO}, {PHRASE_SEASON_FROM_TO_SAME_INTO_ONE, PHRASE_SEASON_FROM_TO_TWO}},
    };
    bool same = strcmp(change->from, change->to) == 0;
    SAY(out, language, phrases[same][change->two_before][change->two_after], slot_text("from", words_arrangement(language, change->from)),
        slot_text("to", words_arrangement(language, change->to)));
}

static void say_goes(Buffer *out, spz_language language, Phrase phrase, const spz_section_move *move)
{
    const spz_group players = {.section = move->section};
    SAY(out, language, phrase, slot_players("who", &players, 1), slot_number("n", move->players),
        slot_phrase("from", (Phrase)(PHRASE_SEASON_FROM_OUTER_LEFT + (int)move->from)), slot_phrase("to", (Phrase)(PHRASE_SEASON_TO_OUTER_LEFT + (int)move->to)));
}

void say_move(Buffer *out, spz_language language, const spz_section_move *move)
{
    say_goes(out, language, PHRASE_SEASON_MOVE, move);
}

void say_orchestras(Buffer *out, spz_language language, const spz_changeover *change)
{
    if (change->two_before != change->two_after)
        buffer_puts(out, phrase_text(language, change->two_after ? PHRASE_SEASON_INTO_TWO : PHRASE_SEASON_INTO_ONE));
}

void say_moves(Buffer *out, spz_language language, const spz_changeover *change)
{
    for (size_t i = 0; i < change->move_count; i++) {
        buffer_puts(out, i ? phrase_text(language, PHRASE_SEASON_REMARK_NEXT) : "");
        say_goes(out, language, PHRASE_SEASON_MOVE_SHORT, &change->moves[i]);
    }
    say_orchestras(out, language, change);
    if (change->move_count == 0 && change->two_before == change->two_after)
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_MOVES_NONE));
}

void say_load(Buffer *out, spz_language language, const spz_changeover *change)
{
    SAY(out, language, PHRASE_SEASON_LOAD, slot_number("chairs", change->chairs), slot_number("stands", change->stands));
}

void say_load_of(Buffer *out, spz_language language, const spz_changeover *change)
{
    SAY(out, language, PHRASE_SEASON_LOAD_OF, slot_phrase("load", PHRASE_SEASON_LOAD), slot_number("chairs", change->chairs),
        slot_number("stands", change->stands), slot_number("desks", change->desks));
}

void say_change_remark(Buffer *out, spz_language language, const spz_changeover *change)
{
    if (change->not_allowed)
        buffer_puts(out, phrase_text(language, PHRASE_SEASON_REMARK_NOT_ALLOWED));
    else if (change->longest > 0)
        SAY(out, language, PHRASE_SEASON_REMARK_LONGEST, slot_number("n", lround(change->longest)));
    if (change->violins == SPZ_VIOLINS_AS_BEFORE)
        return;
    buffer_puts(out, change->not_allowed || change->longest > 0 ? phrase_text(language, PHRASE_SEASON_REMARK_NEXT) : "");
    buffer_puts(out, phrase_text(language, change->violins == SPZ_VIOLINS_IN_THREE ? PHRASE_SEASON_REMARK_IN_THREE : PHRASE_SEASON_REMARK_IN_TWO_AGAIN));
}

void say_whole_change(Buffer *out, spz_language language, const spz_changeover *change)
{
    static void (*const sayers[])(Buffer *, spz_language, const spz_changeover *) = {say_change_place, say_change, say_moves, say_load, say_change_remark};
    enum { PLACE, CHANGE, MOVES, LOAD, REMARK, MINUTES, TEXTS };
    Buffer texts[TEXTS];
    for (int i = 0; i < TEXTS; i++)
        buffer_init(&texts[i]);
    for (int i = PLACE; i < MINUTES; i++) {
        if (i == REMARK && (change->not_allowed || change->longest > 0 || change->violins))
            buffer_puts(&texts[i], phrase_text(language, PHRASE_SEASON_REMARK_NEXT));
        sayers[i](&texts[i], language, change);
    }
    say_minutes(&texts[MINUTES], language, change->minutes);
    SAY(out, language, PHRASE_SEASON_CHANGE, slot_text("place", texts[PLACE].text), slot_text("change", texts[CHANGE].text), slot_text("moves", texts[MOVES].text),
        slot_text("load", texts[LOAD].text), slot_text("minutes", texts[MINUTES].text), slot_text("remark", texts[REMARK].text));
    for (int i = 0; i < TEXTS; i++) {
        buffer_let_go(out, &texts[i]);
    }
}

static void say_desk_name(Buffer *out, spz_language language, spz_section section, int orchestra, int number)
{
    spz_group who = {.section = section, .orchestra = orchestra};
    Slot slot = slot_players("who", &who, 1);
    say_template(out, language, "{who.short}", &slot, 1);
    buffer_printf(out, " %d", number);
}

static void say_spot(Buffer *out, spz_language language, double x, double y)
{
    say_figure(out, language, x, 2);
    buffer_puts(out, " / ");
    say_figure(out, language, y, 2);
}

void say_moved_desk(Buffer *out, spz_language language, const spz_desk_move *move)
{
    say_desk_name(out, language, move->section, move->orchestra, move->number);
}

void say_moved_from(Buffer *out, spz_language language, const spz_desk_move *move)
{
    if (move->fate == SPZ_DESK_CARRIED_ON) {
        buffer_puts(out, phrase_text(language, PHRASE_CHANGE_STORE));
        return;
    }
    say_spot(out, language, move->from_x, move->from_y);
    if (move->fate == SPZ_DESK_STRUCK)
        return;
    buffer_puts(out, " (");
    say_desk_name(out, language, move->from_section, move->from_orchestra, move->from_number);
    buffer_puts(out, ")");
}

void say_moved_to(Buffer *out, spz_language language, const spz_desk_move *move)
{
    if (move->fate == SPZ_DESK_STRUCK)
        buffer_puts(out, phrase_text(language, PHRASE_CHANGE_STORE));
    else
        say_spot(out, language, move->x, move->y);
}

const char *words_desk_fate(spz_language language, const spz_desk_move *move)
{
    if (move->fate == SPZ_DESK_STRUCK && move->stands == 0)
        return phrase_text(language, PHRASE_CHANGE_FATE_CHAIR_STRUCK);
    if (move->fate == SPZ_DESK_STAYS && move->chairs > 0)
        return phrase_text(language, PHRASE_CHANGE_FATE_CHAIR_ON);
    return phrase_text(language, (Phrase)(PHRASE_CHANGE_FATE_STAYS + (int)move->fate));
}

void say_desk_move(Buffer *out, spz_language language, const spz_desk_move *move)
{
    Buffer texts[3];
    for (int i = 0; i < 3; i++)
        buffer_init(&texts[i]);
    say_moved_desk(&texts[0], language, move);
    say_moved_from(&texts[1], language, move);
    say_moved_to(&texts[2], language, move);
    SAY(out, language, PHRASE_CHANGE_DESK, slot_text("desk", texts[0].text), slot_text("fate", words_desk_fate(language, move)), slot_text("from", texts[1].text),
        slot_text("to", texts[2].text), slot_number("chairs", move->chairs), slot_number("stands", move->stands));
    for (int i = 0; i < 3; i++) {
        buffer_let_go(out, &texts[i]);
    }
}

void say_desk_sums(Buffer *out, spz_language language, const spz_changeover *change)
{
    SAY(out, language, PHRASE_CHANGE_SUMS, slot_number("chairs", change->chairs), slot_number("stands", change->stands),
        slot_number("store_chairs", change->store_chairs), slot_number("store_stands", change->store_stands),
        slot_number("struck_chairs", change->struck_chairs), slot_number("struck_stands", change->struck_stands));
}

/* One piece before a work: what it was before, what it is now. */
static void say_piece(Buffer *out, spz_language language, const char *before, const char *now, Phrase on)
{
    if (strcmp(before, now) == 0)
        return;
    bool told = *now && strcmp(now, "x") != 0;
    Phrase phrase = (Phrase)((int)on + (*now ? told ? 1 : 0 : 2)); /* comes; comes, and what it is; goes */
    buffer_puts(out, out->length ? phrase_text(language, PHRASE_LIST_PART) : "");
    SAY(out, language, phrase, slot_text("what", now));
}

void say_pieces(Buffer *out, spz_language language, const spz_planned_concert *concert, size_t work)
{
    static const spz_planned_work bare = {.soloist = "", .piano = "", .podium = ""};
    const spz_planned_work *now = &concert->works[work], *last = concert->repeats ? &concert->works[concert->work_count - 1] : &bare;
    const spz_planned_work *before = work ? now - 1 : last;
    say_piece(out, language, before->piano, now->piano, PHRASE_CHANGE_PIANO_ON);
    say_piece(out, language, before->podium, now->podium, PHRASE_CHANGE_PODIUM_ON);
    say_piece(out, language, before->soloist, now->soloist, PHRASE_CHANGE_SOLOIST_ON);
}
