#include "wording/seatings/laying_words.h"
#include "wording/seatings/seating_words.h"

_Static_assert(PHRASE_LAYING_KEYBOARDS - PHRASE_LAYING_FLUTES == SPZ_KEYBOARDS - SPZ_FLUTES, "instruments in their order");
_Static_assert(PHRASE_LAYING_MARK_KEYBOARDS - PHRASE_LAYING_MARK_FLUTES == SPZ_KEYBOARDS - SPZ_FLUTES, "and their marks");

/* 'flutes' */
static const char *words_instrument(spz_language language, spz_instrument instrument)
{
    return instrument < SPZ_INSTRUMENT_COUNT ? phrase_text(language, (Phrase)(PHRASE_LAYING_FLUTES + (int)instrument)) : "";
}

const char *words_instrument_mark(spz_language language, spz_instrument instrument)
{
    return instrument < SPZ_INSTRUMENT_COUNT ? phrase_text(language, (Phrase)(PHRASE_LAYING_MARK_FLUTES + (int)instrument)) : "";
}

const char *words_soloist_mark(spz_language language)
{
    return phrase_text(language, PHRASE_LAYING_MARK_SOLOIST);
}

const char *words_laid(spz_language language, const spz_laid *laid)
{
    switch (laid->kind) {
    case SPZ_LAID_PODIUM: return phrase_text(language, PHRASE_STAGE_PODIUM);
    case SPZ_LAID_PIANO: return phrase_text(language, PHRASE_LAYING_PIANO);
    case SPZ_LAID_SOLOIST: return phrase_text(language, PHRASE_LAYING_SOLOIST);
    case SPZ_LAID_PLAYER: return words_instrument(language, laid->instrument);
    default: return words_section_short(language, laid->section);
    }
}

void say_laid_sums(Buffer *out, spz_language language, const spz_laying *laying)
{
    spz_laid_sums sums = spz_laying_sums(laying);
    SAY(out, language, PHRASE_LAYING_SUMS, slot_number("players", sums.players), slot_number("chairs", sums.chairs), slot_number("stools", sums.stools),
        slot_number("stands", sums.stands), slot_number("lights", sums.lights));
}

void say_laid_ways(Buffer *out, spz_language language, const spz_laying *laying)
{
    Buffer ways = {0};
    spz_way way;
    for (size_t i = 0; spz_laying_way(laying, i, &way); i++) {
        buffer_puts(&ways, ways.length ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        SAY(&ways, language, PHRASE_LAYING_WAY, slot_text("a", words_section_short(language, way.pair[0])), slot_text("b", words_section_short(language, way.pair[1])),
            slot_decimal("n", way.clear, 2));
    }
    if (ways.length)
        SAY(out, language, PHRASE_LAYING_WAYS, slot_text("ways", ways.text));
    buffer_let_go(out, &ways);
}

void say_riser_height(Buffer *out, spz_language language, const spz_riser *riser)
{
    SAY(out, language, PHRASE_LAYING_HEIGHT, slot_decimal("n", riser->height, 2));
}

void say_riser(Buffer *out, spz_language language, const spz_riser *riser)
{
    SAY(out, language, riser->straight ? PHRASE_LAYING_RISER_STRAIGHT : PHRASE_LAYING_RISER, slot_decimal("height", riser->height, 2),
        slot_decimal("front", riser->front, 2), slot_decimal("deep", riser->back - riser->front, 2), slot_decimal("edge", riser->edge, 2));
}
