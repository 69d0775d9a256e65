#include "editing/division_desks.h"
#include "wording/parts_words.h"
#include "writing/number_text.h"

static bool is_even(const spz_allotment *allotment)
{
    for (int line = 2; line <= spz_allotment_lines(allotment); line++)
        if (spz_allotment_players(allotment, line) != spz_allotment_players(allotment, 1))
            return false;
    return true;
}

static const char *joint(int line, int lines)
{
    return line == 1 ? "" : line == lines ? " and " : ", ";
}

static void put_balance(Buffer *out, const spz_allotment *allotment)
{
    int lines = spz_allotment_lines(allotment);
    char number[NUMBER_TEXT];
    if (is_even(allotment)) {
        buffer_printf(out, "; %d players a line", spz_allotment_players(allotment, 1));
        return;
    }
    buffer_puts(out, "; ");
    for (int line = 1; line <= lines; line++)
        buffer_printf(out, "%s%d", joint(line, lines), spz_allotment_players(allotment, line));
    buffer_puts(out, " players, ");
    for (int line = 1; line <= lines; line++)
        buffer_printf(out, "%s%s", joint(line, lines), number_text(spz_allotment_balance(allotment, line), 2, number));
    buffer_puts(out, " of an equal share");
}

/* The sections of all violins one after the other, each with its name. */
static void put_desks(Buffer *out, const spz_passage *passage, const spz_allotment *allotment, Arena *arena)
{
    static const spz_section violins[] = {SPZ_VN1, SPZ_VN2, SPZ_VN3};
    bool all = passage->sides[0].section == SPZ_VIOLINS, begun = false;
    for (size_t i = 0; i < (all ? sizeof violins / sizeof *violins : 1); i++) {
        const char *desks = parts_desks(arena, allotment, all ? violins[i] : passage->sides[0].section);
        out->failed = out->failed || !desks;
        if (desks && *desks)
            buffer_printf(out, "%s%s%s%s", begun ? "; " : "", all ? spz_section_name(violins[i]) : "", all ? " " : "", desks);
        begun = begun || (desks && *desks);
    }
}

void division_desks(const spz_passage *passage, const spz_settings *settings, Buffer *out)
{
    Arena arena;
    spz_allotment *allotment = NULL;
    if (passage->kind != SPZ_DIV2 && passage->kind != SPZ_DIV3)
        return;
    spz_status status = spz_allotment_of(passage, settings, &allotment);
    out->failed = out->failed || status == SPZ_NO_MEMORY;
    if (status)
        return;
    arena_init(&arena);
    put_desks(out, passage, allotment, &arena);
    put_balance(out, allotment);
    arena_release(&arena);
    spz_allotment_free(allotment);
}
