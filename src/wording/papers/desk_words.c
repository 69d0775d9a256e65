#include "wording/papers/desk_words.h"

enum { SIDE_BOTH, SIDE_OUTSIDE, SIDE_INSIDE, SIDES };

static int side_of(const spz_desk *desk, int line)
{
    bool outside = desk->outside == line, inside = desk->inside == line;
    if (outside && (inside || desk->inside == SPZ_SEAT_EMPTY))
        return SIDE_BOTH;
    return outside ? SIDE_OUTSIDE : inside ? SIDE_INSIDE : SIDES;
}

/* '1, 4, 7' or '1-6' where they follow each other; returns how many. */
static int list_desks(Buffer *out, const spz_allotment *allotment, spz_section section, int line, int side)
{
    int count = 0, first = 0, last = -1;
    for (size_t i = 0; i <= spz_allotment_desks(allotment); i++) {
        const spz_desk *desk = spz_allotment_desk(allotment, i);
        if (desk && (desk->section != section || side_of(desk, line) != side))
            continue;
        if (desk && count && desk->number == last + 1) {
            last = desk->number;
            count++;
            continue;
        }
        if (count && last > first)
            buffer_printf(out, last > first + 1 ? "-%d" : ", %d", last);
        if (!desk)
            break;
        buffer_printf(out, "%s%d", count ? ", " : "", desk->number);
        first = last = desk->number;
        count++;
    }
    return count;
}

_Static_assert(PHRASE_DESKS_INSIDE - PHRASE_DESKS_BOTH == SIDE_INSIDE - SIDE_BOTH, "a phrase for each side");

void words_line_desks(spz_language language, const spz_allotment *allotment, spz_section section, int line, Buffer *out)
{
    bool begun = false;
    for (int side = 0; side < SIDES; side++) {
        Buffer desks = {0};
        int count = list_desks(&desks, allotment, section, line, side);
        if (count) {
            buffer_puts(out, begun ? phrase_text(language, PHRASE_LIST_NEXT) : "");
            SAY(out, language, (Phrase)(PHRASE_DESKS_BOTH + side), slot_number("n", count), slot_text("desks", desks.text));
        }
        begun = begun || count;
        buffer_let_go(out, &desks);
    }
}

void words_lines_desks(spz_language language, const spz_allotment *allotment, spz_section section, Buffer *out)
{
    Buffer desks = {0};
    bool begun = false;
    for (int line = 1; line <= spz_allotment_lines(allotment); line++) {
        buffer_clear(&desks);
        words_line_desks(language, allotment, section, line, &desks);
        if (!desks.length) /* nobody of this section: the line is the other one's */
            continue;
        buffer_puts(out, begun ? phrase_text(language, PHRASE_LIST_PART) : "");
        SAY(out, language, line == 1 ? PHRASE_DESKS_TOP_LINE : PHRASE_DESKS_LINE, slot_number("n", line), slot_text("desks", desks.text));
        begun = true;
    }
    buffer_let_go(out, &desks);
}

static bool is_even(const spz_allotment *allotment)
{
    for (int line = 2; line <= spz_allotment_lines(allotment); line++)
        if (spz_allotment_players(allotment, line) != spz_allotment_players(allotment, 1))
            return false;
    return true;
}

static const char *joint(spz_language language, int line, int lines)
{
    return line == 1 ? "" : phrase_text(language, line == lines ? PHRASE_LIST_LAST : PHRASE_LIST_NEXT);
}

static void put_balance(spz_language language, const spz_allotment *allotment, Buffer *out)
{
    Buffer players = {0}, shares = {0};
    int lines = spz_allotment_lines(allotment);
    for (int line = 1; line <= lines; line++) {
        Slot share = slot_decimal("share", spz_allotment_balance(allotment, line), 2);
        buffer_printf(&players, "%s%d", joint(language, line, lines), spz_allotment_players(allotment, line));
        buffer_puts(&shares, joint(language, line, lines));
        say_template(&shares, language, "{share}", &share, 1);
    }
    SAY(out, language, is_even(allotment) ? PHRASE_DESKS_EVEN : PHRASE_DESKS_UNEVEN, slot_number("n", spz_allotment_players(allotment, 1)),
        slot_text("players", players.text), slot_text("shares", shares.text));
    buffers_let_go(out, &players, &shares);
}

/* The sections of all violins one after the other, each with its name. */
static void put_all_violins(spz_language language, const spz_allotment *allotment, Buffer *out)
{
    static const spz_section violins[] = {SPZ_VN1, SPZ_VN2, SPZ_VN3};
    bool begun = false;
    for (size_t i = 0; i < sizeof violins / sizeof *violins; i++) {
        Buffer desks = {0};
        spz_group who = {.section = violins[i]};
        words_lines_desks(language, allotment, violins[i], &desks);
        buffer_puts(out, begun && desks.length ? phrase_text(language, PHRASE_LIST_PART) : "");
        if (desks.length)
            SAY(out, language, PHRASE_DESKS_OF, slot_players("who", &who, 1), slot_text("desks", desks.text));
        begun = begun || desks.length;
        buffer_let_go(out, &desks);
    }
}

void words_division_desks(spz_language language, const spz_passage *passage, const spz_settings *settings, Buffer *out)
{
    spz_allotment *allotment = NULL;
    if (passage->kind != SPZ_DIV2 && passage->kind != SPZ_DIV3)
        return;
    spz_status status = spz_allotment_of(passage, settings, &allotment);
    out->failed = out->failed || status == SPZ_NO_MEMORY;
    if (status)
        return;
    if (passage->sides[0].section == SPZ_VIOLINS)
        put_all_violins(language, allotment, out);
    else
        words_lines_desks(language, allotment, passage->sides[0].section, out);
    put_balance(language, allotment, out);
    spz_allotment_free(allotment);
}
