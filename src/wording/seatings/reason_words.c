/* The reasons of a verdict as sentences. */
#include "sections/section_map.h"
#include "wording/papers/notes_words.h"
#include "wording/seatings/seating_words.h"
#include <stdlib.h>
#include <string.h>

_Static_assert(PHRASE_COUNT_IMITATION - PHRASE_COUNT_EXCHANGE == SPZ_IMITATION - SPZ_EXCHANGE, "kinds in their order");
_Static_assert(PHRASE_COUNT_STRIKING - PHRASE_COUNT_MARGINAL == SPZ_STRIKING - SPZ_MARGINAL, "weights in their order");
_Static_assert(PHRASE_REASON_BASS_HARDLY_PARTED - PHRASE_REASON_BASS_CONTINUO == SPZ_BASS_HARDLY_PARTED - SPZ_BASS_CONTINUO, "bass lines in their order");
_Static_assert(PHRASE_MOVEMENT_FIRM - PHRASE_MOVEMENT_OPEN == SPZ_FIRM - SPZ_OPEN, "confidences in their order");

/* 'first and second violins', 'violas and cellos'. */
static void say_pair(Buffer *out, spz_language language, const spz_section sections[2], bool singles)
{
    bool facing = sections[0] == sections[1]; /* of two orchestras */
    spz_group who[2] = {{.section = sections[0], .orchestra = facing, .single = singles}, {.section = sections[1], .orchestra = 2 * facing, .single = singles}};
    bool violins = !facing && section_is_violin(sections[0]) && section_is_violin(sections[1]);
    Phrase phrase = !violins                     ? PHRASE_PAIR_SECTIONS
                    : sections[0] == SPZ_VN2     ? PHRASE_PAIR_VIOLINS_2_3
                    : sections[1] == SPZ_VN2     ? PHRASE_PAIR_VIOLINS_1_2
                                                 : PHRASE_PAIR_VIOLINS_1_3;
    SAY(out, language, phrase, slot_players("who", who, 2), slot_number("alone", singles ? 1 : 2));
}

/* '2 exchanges, 1 hocket'; '1 striking, 2 clear'. */
static void say_counts(Buffer *out, spz_language language, Phrase phrase, size_t count)
{
    if (!count)
        return;
    buffer_puts(out, out->length ? phrase_text(language, PHRASE_LIST_NEXT) : "");
    SAY(out, language, phrase, slot_number("n", (long)count));
}

static size_t count_passages(const spz_basis *basis, int kind, int weight)
{
    size_t count = 0;
    for (size_t i = 0; i < basis->passage_count; i++)
        count += (kind < 0 || (int)basis->passages[i].kind == kind) && (weight < 0 || (int)spz_weight_of(basis->passages[i].strength) == weight);
    return count;
}

/* Of chamber music; without a verdict, of sections. */
static bool is_of_singles(const spz_verdict *verdict)
{
    return verdict && spz_verdict_singles(verdict);
}

/* The slots of a reason, and the texts in them. */
typedef struct ReasonSlots {
    Buffer pair, kinds, weights, top, notes;
    Slot at[20];
    size_t count;
} ReasonSlots;

static void fill_texts(ReasonSlots *s, spz_language language, const spz_reason *reason, bool singles)
{
    bool ensemble = reason->kind == SPZ_REASON_ENSEMBLE;
    if (reason->kind != SPZ_REASON_ANTIPHONY && !ensemble)
        return;
    say_pair(&s->pair, language, reason->sections, singles);
    for (int kind = SPZ_EXCHANGE; kind <= SPZ_IMITATION; kind++)
        say_counts(&s->kinds, language, (Phrase)(PHRASE_COUNT_EXCHANGE + kind), count_passages(&reason->basis, kind, -1));
    for (int weight = SPZ_STRIKING; weight >= SPZ_MARGINAL; weight--)
        say_counts(&s->weights, language, (Phrase)(PHRASE_COUNT_MARGINAL + weight), count_passages(&reason->basis, -1, weight));
    say_with_bars(&s->top, language, PHRASE_REASON_WEIGHTIEST, &reason->weightiest);
    if (ensemble && reason->shortest > 0)
        SAY(&s->notes, language, PHRASE_REASON_SHORTEST, slot_decimal("shortest", reason->shortest, 2), slot_decimal("allows", 1000 * reason->allows, 0),
            slot_phrase("tempo", reason->tempo_guessed ? PHRASE_REASON_TEMPO_GUESSED : PHRASE_REASON_TEMPO_KNOWN));
}

/* What a reason measures here and there, in the unit in which it is told. */
static double told(const spz_reason *reason, double figure)
{
    return reason->kind == SPZ_REASON_ENSEMBLE ? 1000 * figure : reason->kind == SPZ_REASON_BASS ? 100 * figure : figure;
}

/* What would be enough of a stage that is too small. */
Phrase words_enough_stage(const double needs[2])
{
    bool wide = needs[0] > 0, deep = needs[1] > 0;
    return wide && deep ? PHRASE_REMARK_SMALL_STAGE_EITHER : wide ? PHRASE_REMARK_SMALL_STAGE_WIDE : deep ? PHRASE_REMARK_SMALL_STAGE_DEEP : PHRASE_REMARK_SMALL_STAGE_NEITHER;
}

static void fill_slots(ReasonSlots *s, spz_language language, const spz_reason *reason, bool singles)
{
    fill_texts(s, language, reason, singles);
    const Slot slots[] = {slot_text("pair", s->pair.text), slot_text("kinds", s->kinds.text), slot_text("weights", s->weights.text),
                          slot_text("top", s->top.text), slot_text("notes", s->notes.text), slot_number("n", (long)reason->basis.passage_count),
                          slot_decimal("here", told(reason, reason->here), 0), slot_decimal("there", told(reason, reason->there), 0),
                          slot_text("other", reason->other ? words_arrangement(language, reason->other) : ""), slot_number("year", reason->year),
                          slot_phrase("ground", (Phrase)(PHRASE_REASON_BASS_CONTINUO + (unsigned)reason->bass)), slot_decimal("lost", reason->lost, 1),
                          slot_decimal("wide", reason->needs[0], 2), slot_decimal("deep", reason->needs[1], 2), slot_decimal("has", reason->has[0], 2),
                          slot_decimal("by", reason->has[1], 2), slot_phrase("enough", words_enough_stage(reason->needs)), slot_number("alone", singles ? 1 : 2)};
    _Static_assert(sizeof slots <= sizeof s->at, "room for every slot");
    memcpy(s->at, slots, sizeof slots);
    s->count = sizeof slots / sizeof *slots;
}

static void free_slots(ReasonSlots *s, Buffer *out)
{
    Buffer *const each[] = {&s->pair, &s->kinds, &s->weights, &s->top, &s->notes};
    for (size_t i = 0; i < sizeof each / sizeof *each; i++) {
        buffer_let_go(out, each[i]);
    }
}

static Phrase phrase_of(const spz_reason *reason)
{
    bool good = reason->points > 0;
    switch (reason->kind) {
    case SPZ_REASON_ANTIPHONY: return PHRASE_REASON_ANTIPHONY;
    case SPZ_REASON_ENSEMBLE: return PHRASE_REASON_ENSEMBLE;
    case SPZ_REASON_THREE: return reason->third_part ? PHRASE_REASON_THREE_PART : PHRASE_REASON_THREE_DIVIDED;
    case SPZ_REASON_BASS: return PHRASE_REASON_BASS;
    case SPZ_REASON_ERA: return reason->opposed ? PHRASE_REASON_ERA_OPPOSED : PHRASE_REASON_ERA_TOGETHER;
    case SPZ_REASON_HOUSE: return good ? PHRASE_REASON_HOUSE_FOR : PHRASE_REASON_HOUSE_AGAINST;
    case SPZ_REASON_MELODY: return good ? PHRASE_REASON_MELODY_FOR : PHRASE_REASON_MELODY_AGAINST;
    case SPZ_REASON_TURNED: return good ? PHRASE_REASON_TURNED_FOR : PHRASE_REASON_TURNED_AGAINST;
    case SPZ_REMARK_CHAMBER_MUSIC: return PHRASE_REMARK_CHAMBER_MUSIC;
    case SPZ_REMARK_TWO_ORCHESTRAS: return PHRASE_REMARK_TWO_ORCHESTRAS;
    case SPZ_REMARK_BETWEEN_ORCHESTRAS: return PHRASE_REMARK_BETWEEN_ORCHESTRAS;
    case SPZ_REMARK_THIRD_VIOLINS: return reason->opposed ? PHRASE_REMARK_THIRD_VIOLINS_OPPOSED : PHRASE_REMARK_THIRD_VIOLINS_TOGETHER;
    case SPZ_REMARK_IN_FOUR: return PHRASE_REMARK_IN_FOUR;
    case SPZ_REMARK_WINDS: return PHRASE_REMARK_WINDS;
    case SPZ_REMARK_SOLOISTS: return PHRASE_REMARK_SOLOISTS;
    case SPZ_REMARK_VETOED: return PHRASE_REMARK_VETOED;
    case SPZ_REMARK_WEIGHTED: return PHRASE_REMARK_WEIGHTED;
    case SPZ_REMARK_FORBIDDEN: return PHRASE_REMARK_FORBIDDEN;
    case SPZ_REMARK_NEIGHBOUR: return PHRASE_REMARK_NEIGHBOUR;
    default: return PHRASE_REMARK_SMALL_STAGE;
    }
}

static Phrase ground_phrase(const spz_reason *reason)
{
    switch (reason->kind) {
    case SPZ_REASON_ANTIPHONY: return PHRASE_GROUND_ANTIPHONY;
    case SPZ_REASON_ENSEMBLE: return PHRASE_GROUND_ENSEMBLE;
    case SPZ_REASON_THREE: return PHRASE_GROUND_THREE;
    case SPZ_REASON_BASS: return PHRASE_GROUND_BASS;
    case SPZ_REASON_ERA: return reason->opposed ? PHRASE_GROUND_ERA_OPPOSED : PHRASE_GROUND_ERA_TOGETHER;
    case SPZ_REASON_HOUSE: return PHRASE_GROUND_HOUSE;
    case SPZ_REASON_MELODY: return PHRASE_GROUND_MELODY;
    default: return PHRASE_GROUND_TURNED;
    }
}

void say_ground(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason)
{
    Buffer pair = {0};
    if (reason->sections[0] != SPZ_NO_SECTION)
        say_pair(&pair, language, reason->sections, is_of_singles(verdict));
    SAY(out, language, ground_phrase(reason), slot_text("pair", pair.text), slot_number("year", reason->year),
        slot_number("alone", is_of_singles(verdict) ? 1 : 2));
    buffer_let_go(out, &pair);
}

static void say_movement_reason(Buffer *out, spz_language language, const spz_verdict *work, const spz_reason *reason)
{
    static const double nothing = 0.05; /* points */
    bool judged = reason->alone.outcome == SPZ_JUDGED;
    Buffer title = {0}, loss = {0}, losses = {0}, why = {0}, time = {0};
    say_clock(&time, language, reason->lost_seconds);
    say_movement(&title, language, work, reason->movement);
    say_losses(&losses, language, reason->losses, reason->loss_count);
    if (!judged)
        say_statement(&why, language, reason->alone);
    SAY(&loss, language,
        reason->lost < nothing ? PHRASE_MOVEMENT_LOSES_NOTHING
        : reason->lost_bars    ? PHRASE_MOVEMENT_LOSES_BARS
        : losses.length        ? PHRASE_MOVEMENT_LOSES_THESE
                               : PHRASE_MOVEMENT_LOSES,
        slot_decimal("lost", reason->lost, 1), slot_text("losses", losses.text), slot_number("n", (long)reason->lost_bars), slot_text("time", time.text));
    SAY(out, language, judged ? (Phrase)(PHRASE_MOVEMENT_OPEN + (unsigned)reason->alone.confidence) : PHRASE_MOVEMENT_NOT_JUDGED,
        slot_text("title", title.text), slot_text("why", why.text), slot_text("loss", loss.text),
        slot_text("arrangement", judged ? words_arrangement(language, reason->alone.arrangement) : ""));
    Buffer *const each[] = {&title, &loss, &losses, &why, &time};
    for (size_t i = 0; i < sizeof each / sizeof *each; i++) {
        buffer_let_go(out, each[i]);
    }
}

void say_reason(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason)
{
    ReasonSlots slots = {0};
    Buffer sentence = {0};
    if (reason->kind == SPZ_REASON_MOVEMENT) {
        say_movement_reason(out, language, verdict, reason);
        return;
    }
    fill_slots(&slots, language, reason, is_of_singles(verdict));
    say(&sentence, language, phrase_of(reason), slots.at, slots.count);
    SAY(out, language, reason->points < 0 ? PHRASE_REASON_AGAINST : PHRASE_REASON_FOR, slot_text("reason", sentence.text));
    buffer_let_go(out, &sentence);
    free_slots(&slots, out);
}

void say_reason_and_place(Buffer *out, spz_language language, const spz_verdict *verdict, const spz_reason *reason)
{
    Buffer place = {0}, sentence = {0};
    say_with_bars(&place, language, PHRASE_BASIS_PLACE, &reason->basis);
    say_reason(&sentence, language, verdict, reason);
    if (place.length)
        SAY(out, language, PHRASE_SEATING_BASIS, slot_text("reason", sentence.text), slot_text("place", place.text));
    else
        buffer_puts(out, buffer_text(&sentence));
    buffers_let_go(out, &place, &sentence);
}
