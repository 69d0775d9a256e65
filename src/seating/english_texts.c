#include "seating/english_texts.h"

const char *words_outcome(spz_outcome outcome)
{
    return outcome == SPZ_WITHOUT_STRINGS ? "No string sections were found in this score, so there is no seating to judge."
           : outcome == SPZ_WITHOUT_VIOLINS
               ? "Two violin sections were not found in this score, so their seating can't be judged; if they are there, name them under "
                 "[sections]."
               : "There is no movement to judge.";
}

void words_statement(const Verdict *verdict, Buffer *text)
{
    const Ranking *s = &verdict->ranking;
    const char *name = verdict->by_arrangement[s->order[0]].name;
    if (s->confidence == SPZ_FIRM)
        buffer_printf(text, "Seat the %s: the evidence is firm (margin %.2f).", name, s->margin);
    else if (s->confidence == SPZ_LEANING)
        buffer_printf(text, "The evidence leans toward %s (margin %.2f).", name, s->margin);
    else
        buffer_printf(text, "The evidence leaves the seating open (margin %.2f): %s serves as well as any.", s->margin, name);
}

bool words_losses(const spz_loss *losses, size_t count, Buffer *text)
{
    for (size_t i = 0; i < count; i++) {
        const spz_loss *loss = &losses[i];
        buffer_puts(text, text->length ? "; " : "");
        if (loss->throughout) {
            buffer_puts(text, "three violin parts throughout");
            continue;
        }
        buffer_printf(text, "%s %s", spz_kind_name(loss->kind), spz_section_name(loss->sides[0]));
        if (loss->sides[1] != SPZ_NO_SECTION)
            buffer_printf(text, "/%s", spz_section_name(loss->sides[1]));
        for (size_t b = 0; b < loss->basis.bar_count; b++) {
            const spz_bars *bars = &loss->basis.bars[b];
            buffer_printf(text, b ? ", %s" : " %s", bars->first_bar);
            if (bars->last > bars->first)
                buffer_printf(text, "-%s", bars->last_bar);
        }
    }
    return !buffer_failed(text);
}
