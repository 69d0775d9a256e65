#include "wording/seatings/seating_words.h"
#include "spezzato/report.h"
#include "support/array.h"
#include "wording/passage_words.h"
#include <math.h>
#include <string.h>

_Static_assert(PHRASE_FRACTION_6 - PHRASE_FRACTION_2 == 4, "fractions in their order");

_Static_assert(PHRASE_ARRANGEMENT_TOGETHER_VIOLAS_OUTSIDE - PHRASE_ARRANGEMENT_OPPOSED_CELLOS_LEFT ==
                   SPZ_TOGETHER_VIOLAS_OUTSIDE - SPZ_OPPOSED_CELLOS_LEFT, "arrangements in their order");
_Static_assert(PHRASE_TERM_HOUSE - PHRASE_TERM_VIOLINS == SPZ_TERM_HOUSE - SPZ_TERM_VIOLINS, "terms in their order");
_Static_assert(PHRASE_CONFIDENCE_FIRM - PHRASE_CONFIDENCE_OPEN == SPZ_FIRM - SPZ_OPEN, "confidences in their order");
_Static_assert(PHRASE_MEANING_FIRM - PHRASE_MEANING_OPEN == SPZ_FIRM - SPZ_OPEN, "their meanings in their order");
_Static_assert(PHRASE_STATEMENT_FIRM - PHRASE_STATEMENT_OPEN == SPZ_FIRM - SPZ_OPEN, "statements in their order");
_Static_assert(PHRASE_OUTCOME_WITHOUT_MOVEMENT - PHRASE_OUTCOME_WITHOUT_STRINGS == SPZ_WITHOUT_MOVEMENT - SPZ_WITHOUT_STRINGS, "outcomes in their order");

const char *words_arrangement(spz_language language, const char *name)
{
    spz_standard standard = spz_arrangement_standard(name);
    return standard == SPZ_OWN_ARRANGEMENT ? name : phrase_text(language, (Phrase)(PHRASE_ARRANGEMENT_OPPOSED_CELLOS_LEFT + (unsigned)standard));
}

const char *words_term(spz_language language, spz_term_kind term)
{
    return phrase_text(language, (Phrase)(PHRASE_TERM_VIOLINS + (unsigned)term));
}

const char *words_confidence(spz_language language, spz_confidence confidence)
{
    return phrase_text(language, (Phrase)(PHRASE_CONFIDENCE_OPEN + (unsigned)confidence));
}

const char *words_section_short(spz_language language, spz_section section)
{
    enum { FORMS = PHRASE_SECTION_VN2_SHORT - PHRASE_SECTION_VN1_SHORT };
    return section < SPZ_VN1 || section > SPZ_WINDS ? "" : phrase_text(language, (Phrase)(PHRASE_SECTION_VN1_SHORT + (unsigned)(section - SPZ_VN1) * FORMS));
}

void say_order(Buffer *out, spz_language language, spz_order order)
{
    for (int i = 0; i < order.count; i++) {
        buffer_puts(out, i ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        buffer_puts(out, words_section_short(language, order.sections[i]));
    }
}

static void say_bars(Buffer *out, spz_language language, const spz_basis *basis)
{
    char text[WORDS_TEXT];
    for (size_t i = 0; i < basis->bar_count; i++) {
        const spz_bars *bars = &basis->bars[i];
        buffer_puts(out, i ? phrase_text(language, PHRASE_LIST_NEXT) : "");
        buffer_puts(out, words_bar(language, bars->first_bar, bars->first, text));
        if (bars->last > bars->first)
            buffer_printf(out, "-%s", words_bar(language, bars->last_bar, bars->last, text));
    }
}

void say_with_bars(Buffer *out, spz_language language, Phrase phrase, const spz_basis *basis)
{
    Buffer bars;
    if (!basis->bar_count)
        return;
    bool several = basis->bar_count > 1 || basis->bars[0].last > basis->bars[0].first;
    buffer_init(&bars);
    say_bars(&bars, language, basis);
    SAY(out, language, phrase, slot_number("n", several ? 2 : 1), slot_text("bars", bars.text));
    buffer_let_go(out, &bars);
}

void say_statement(Buffer *out, spz_language language, spz_statement statement)
{
    if (statement.outcome != SPZ_JUDGED) {
        buffer_puts(out, phrase_text(language, (Phrase)(PHRASE_OUTCOME_WITHOUT_STRINGS + (unsigned)statement.outcome - SPZ_WITHOUT_STRINGS)));
        return;
    }
    bool own = spz_arrangement_standard(statement.arrangement) == SPZ_OWN_ARRANGEMENT;
    Phrase phrase = statement.by_year                               ? PHRASE_STATEMENT_BY_YEAR
                    : own && statement.confidence == SPZ_FIRM ? PHRASE_STATEMENT_FIRM_OWN
                                                              : (Phrase)(PHRASE_STATEMENT_OPEN + (unsigned)statement.confidence);
    SAY(out, language, phrase, slot_text("arrangement", words_arrangement(language, statement.arrangement)),
        slot_decimal("margin", statement.margin, 2));
}

char *spz_verdict_sentence(const spz_verdict *verdict, spz_language language, char *out, size_t size)
{
    Buffer words = {0};
    say_statement(&words, language, spz_verdict_statement(verdict));
    if (size)
        spz_text_clean(words.text && !buffer_failed(&words) ? words.text : "", out, size);
    buffer_free(&words);
    return out;
}

/* What the weight has to come to for her who holds it to be worth less or more: half, a third ... of what is reckoned, or so many times that. */
void say_turning(Buffer *out, spz_language language, spz_turning turning)
{
    static const double slightest = 0.005, nearly = 0.75;
    long part = lround(1 / fmax(turning.factor, 0.01));
    if (turning.factor <= 0)
        return;
    Phrase phrase = fabs(turning.factor - 1) < slightest ? PHRASE_TURNING_SLIGHTEST
                    : turning.factor > 1                 ? PHRASE_TURNING_FACTOR
                    : turning.factor > nearly            ? PHRASE_TURNING_LESS
                                                         : PHRASE_TURNING_PART;
    SAY(out, language, phrase, slot_text("term", words_term(language, turning.term)), slot_decimal("factor", turning.factor, turning.factor >= 1.1 ? 1 : 2),
        slot_phrase("part", part <= 6 ? (Phrase)(PHRASE_FRACTION_2 + (part < 2 ? 0 : part - 2)) : PHRASE_FRACTION_SMALL));
}

void say_best_order(Buffer *out, spz_language language, const spz_verdict *verdict)
{
    Buffer order = {0};
    say_order(&order, language, spz_verdict_ranked(verdict, 0)->order);
    SAY(out, language, PHRASE_SEATING_ORDER, slot_text("order", order.text));
    buffer_let_go(out, &order);
}

void say_sure(Buffer *out, spz_language language, const spz_verdict *verdict)
{
    spz_confidence confidence = spz_verdict_confidence(verdict);
    bool by_year = spz_verdict_statement(verdict).by_year;
    SAY(out, language, PHRASE_SEATING_SURE, slot_phrase("confidence", (Phrase)(PHRASE_CONFIDENCE_OPEN + (unsigned)confidence)),
        slot_phrase("meaning", by_year ? PHRASE_MEANING_BY_YEAR : (Phrase)(PHRASE_MEANING_OPEN + (unsigned)confidence)));
}

void say_margin(Buffer *out, spz_language language, const spz_verdict *verdict)
{
    bool opposed = spz_verdict_ranked(verdict, 0)->opposed;
    Buffer turning = {0};
    say_turning(&turning, language, spz_verdict_turning(verdict));
    say_sure(out, language, verdict);
    buffer_putc(out, ' ');
    SAY(out, language, opposed ? PHRASE_SEATING_MARGIN_TOGETHER : PHRASE_SEATING_MARGIN_OPPOSED,
        slot_number("n", lround(spz_verdict_margin(verdict) * 100)));
    if (turning.length) {
        buffer_putc(out, ' ');
        SAY(out, language, PHRASE_SEATING_TURNING, slot_text("turning", turning.text));
    }
    buffer_let_go(out, &turning);
}

/* 'violins opposed, cellos inside left (leaning, 12 points ahead of a hundred)'; 'open (2 points ...)'. */
static void say_year_view(Buffer *out, spz_language language, const spz_statement *view)
{
    SAY(out, language, view->confidence == SPZ_OPEN ? PHRASE_YEAR_VIEW_OPEN : PHRASE_YEAR_VIEW,
        slot_text("arrangement", words_arrangement(language, view->arrangement)),
        slot_phrase("confidence", (Phrase)(PHRASE_SEASON_CONFIDENCE_OPEN + (unsigned)view->confidence)), slot_number("n", lround(view->margin * 100)));
}

static bool same_view(const spz_statement *one, const spz_statement *other)
{
    return one->confidence == other->confidence && (one->confidence == SPZ_OPEN || strcmp(one->arrangement, other->arrangement) == 0);
}

void say_year(Buffer *out, spz_language language, const spz_verdict *verdict)
{
    spz_by_year by = spz_verdict_by_year(verdict);
    spz_statement now = spz_verdict_statement(verdict);
    Buffer silent, earlier, later;
    if (now.outcome != SPZ_JUDGED || (by.year && same_view(&now, &by.silent)))
        return;
    buffer_init(&silent);
    buffer_init(&earlier);
    buffer_init(&later);
    say_year_view(&silent, language, &by.silent);
    say_year_view(&earlier, language, &by.earlier);
    say_year_view(&later, language, &by.later);
    bool same = same_view(&by.earlier, &by.later);
    SAY(out, language, by.year ? PHRASE_YEAR_WITHOUT : same ? PHRASE_YEAR_UNKNOWN_SAME : PHRASE_YEAR_UNKNOWN, slot_number("year", by.year),
        slot_text("silent", silent.text), slot_number("before", SPZ_EARLIER_YEAR), slot_text("earlier", earlier.text),
        slot_number("after", SPZ_LATER_YEAR), slot_text("later", later.text));
    buffers_let_go(out, &silent, &earlier, &later);
}

static Phrase because_phrase(const spz_ranked *ranked, const spz_term *term)
{
    static const double turned = 0.25;
    switch (term->kind) {
    case SPZ_TERM_VIOLINS: return PHRASE_BECAUSE_VIOLINS;
    case SPZ_TERM_OTHERS: return PHRASE_BECAUSE_OTHERS;
    case SPZ_TERM_ENSEMBLE: return PHRASE_BECAUSE_ENSEMBLE;
    case SPZ_TERM_THREE: return ranked->opposed ? PHRASE_BECAUSE_THREE_OPPOSED : PHRASE_BECAUSE_THREE_TOGETHER;
    case SPZ_TERM_BASS: return PHRASE_BECAUSE_BASS;
    case SPZ_TERM_MELODY: return PHRASE_BECAUSE_MELODY;
    case SPZ_TERM_TURNED:
        return term->openness > turned    ? PHRASE_BECAUSE_TURNED_TOWARD
               : term->openness < -turned ? PHRASE_BECAUSE_TURNED_AWAY
                                          : PHRASE_BECAUSE_TURNED_ACROSS;
    case SPZ_TERM_ERA: return PHRASE_BECAUSE_ERA;
    default: return term->preferred ? PHRASE_BECAUSE_PREFERRED : PHRASE_BECAUSE_NOT_PREFERRED;
    }
}

void say_because(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_ranked *ranked, const spz_term *term)
{
    bool of_pair = term->kind == SPZ_TERM_OTHERS || term->kind == SPZ_TERM_ENSEMBLE;
    bool singles = verdict && spz_verdict_singles(verdict);
    bool facing = term->sections[0] == term->sections[1]; /* of two orchestras */
    spz_group who[2] = {{.section = term->sections[0], .orchestra = facing, .single = singles}, {.section = term->sections[1], .orchestra = 2 * facing, .single = singles}};
    if (term->of_movements)
        buffer_puts(out, phrase_text(language, PHRASE_BECAUSE_MEAN));
    else if (!of_pair || term->sections[0] != SPZ_NO_SECTION)
        SAY(out, language, because_phrase(ranked, term), slot_players("who", who, 2), slot_decimal("n", 100 * term->evidence, 0),
            slot_decimal("degrees", term->degrees, 0), slot_decimal("widths", term->widths, 1), slot_decimal("delay", 1000 * term->delay, 0),
            slot_decimal("strain", term->strain, 1), slot_decimal("centre", 100 * term->centrality, 0), slot_number("year", term->year));
}

void say_first_because(Buffer *out, spz_language language, const spz_verdict *verdict, size_t index)
{
    for (size_t place = 0; place < spz_verdict_count(verdict) && !out->length; place++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, place);
        say_because(out, language, verdict, ranked, &ranked->terms[index]);
    }
}

static Phrase loss_phrase(const spz_loss *loss)
{
    return loss->throughout ? PHRASE_LOSS_THROUGHOUT : loss->kind == SPZ_DIV3 ? PHRASE_LOSS_VIOLINS_IN_THREE : PHRASE_LOSS_BETWEEN;
}

void say_losses(Buffer *out, spz_language language, const spz_loss *losses, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        bool facing = losses[i].sides[0] == losses[i].sides[1]; /* of two orchestras */
        spz_group first = {.section = losses[i].sides[0], .orchestra = facing}, second = {.section = losses[i].sides[1], .orchestra = 2 * facing};
        Buffer bars = {0};
        say_bars(&bars, language, &losses[i].basis);
        buffer_puts(out, i ? phrase_text(language, PHRASE_LOSS_NEXT) : "");
        SAY(out, language, loss_phrase(&losses[i]), slot_phrase("kind", (Phrase)(PHRASE_KIND_EXCHANGE + (unsigned)losses[i].kind)),
            slot_players("first", &first, 1), slot_players("second", &second, 1), slot_text("bars", bars.text));
        buffer_let_go(out, &bars);
    }
}

void say_movement(Buffer *out, spz_language language, const spz_verdict *work, size_t movement)
{
    const char *title = spz_verdict_movement_title(work, movement);
    size_t alike = 0;
    for (size_t m = 0; m < spz_verdict_movements(work); m++)
        alike += strcmp(spz_verdict_movement_title(work, m), title) == 0;
    Slot slots[] = {slot_text("title", title), slot_number("n", (long)movement + 1), slot_number("of", (long)spz_verdict_movements(work))};
    if (!*title)
        say(out, language, PHRASE_MOVEMENT_UNTITLED, slots, 3);
    else if (alike > 1)
        say(out, language, PHRASE_MOVEMENT_SHARED, slots, 3);
    else
        buffer_puts(out, title);
}

/* The losses of one movement of a work, with its title. */
static void say_movement_losses(Buffer *out, spz_language language, const spz_verdict *work, const spz_loss *losses, size_t count)
{
    Buffer title = {0}, list = {0};
    say_movement(&title, language, work, losses->movement);
    say_losses(&list, language, losses, count);
    SAY(out, language, PHRASE_LOSS_MOVEMENT, slot_text("title", title.text), slot_text("losses", list.text));
    buffers_let_go(out, &title, &list);
}

size_t losses_end(const spz_ranked *ranked, size_t from)
{
    size_t end = from;
    while (end < ranked->loss_count && ranked->losses[end].movement == ranked->losses[from].movement)
        end++;
    return end;
}

void say_ranked_losses(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_ranked *ranked)
{
    if (!spz_verdict_movements(verdict)) {
        say_losses(out, language, ranked->losses, ranked->loss_count);
        return;
    }
    for (size_t i = 0, next; i < ranked->loss_count; i = next) {
        next = losses_end(ranked, i);
        buffer_puts(out, i ? phrase_text(language, PHRASE_LOSS_NEXT_MOVEMENT) : "");
        say_movement_losses(out, language, verdict, &ranked->losses[i], next - i);
    }
}

typedef ARRAY(spz_loss) LossList;

static bool has_loss(const spz_ranked *ranked, const spz_loss *loss)
{
    bool found = false;
    for (size_t i = 0; i < ranked->loss_count && !found; i++) {
        const spz_loss *own = &ranked->losses[i];
        found = own->kind == loss->kind && own->movement == loss->movement && own->throughout == loss->throughout &&
                own->sides[0] == loss->sides[0] && own->sides[1] == loss->sides[1];
    }
    return found;
}

/* What the arrangement loses and the recommended one doesn't: no ground to prefer that. False: no memory. */
static bool losses_beyond(const spz_ranked *best, const spz_ranked *other, LossList *out)
{
    bool good = true;
    for (size_t i = 0; i < other->loss_count && good; i++)
        good = has_loss(best, &other->losses[i]) || array_push(out, other->losses[i]);
    return good;
}

void say_instead(Buffer *out, spz_language language, const spz_verdict *verdict)
{
    size_t place = 1, count = spz_verdict_count(verdict);
    while (place < count && spz_verdict_ranked(verdict, place)->opposed == spz_verdict_ranked(verdict, 0)->opposed)
        place++;
    if (place >= count)
        return;
    const spz_ranked *other = spz_verdict_ranked(verdict, place);
    LossList beyond = {0};
    spz_ranked only = *other;
    Buffer losses = {0};
    out->failed = !losses_beyond(spz_verdict_ranked(verdict, 0), other, &beyond) || out->failed;
    only.losses = beyond.at;
    only.loss_count = beyond.count;
    say_ranked_losses(&losses, language, verdict, &only);
    SAY(out, language, losses.length ? PHRASE_SEATING_WEAKENED : PHRASE_SEATING_NOT_WEAKENED,
        slot_text("arrangement", words_arrangement(language, other->name)), slot_text("losses", losses.text));
    buffer_let_go(out, &losses);
    array_free(&beyond);
}
