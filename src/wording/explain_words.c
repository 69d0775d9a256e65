#include "wording/explain_words.h"

/* From how far aside a section is called so: as busy, half, mostly, wholly out of the way. */
static const double aside_from[] = {0.35, 0.6, 0.85};

static Phrase aside_phrase(double aside)
{
    unsigned step = 0;
    while (step < sizeof aside_from / sizeof *aside_from && aside >= aside_from[step])
        step++;
    return (Phrase)(PHRASE_ASIDE_1 + step);
}

static void put_place(spz_language language, const spz_movement *movement, size_t first, size_t last, Buffer *out)
{
    char from[WORDS_TEXT], to[WORDS_TEXT];
    SAY(out, language, first == last ? PHRASE_PLACE_BAR : PHRASE_PLACE_BARS,
        slot_text("from", words_bar(language, spz_movement_bar_number(movement, first), first, from)),
        slot_text("to", words_bar(language, spz_movement_bar_number(movement, last), last, to)));
}

void explain_who(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out)
{
    spz_group caller = spz_side_named(speaker->sections, &item->sides[0]), responder = spz_side_named(speaker->sections, &item->sides[1]);
    Buffer place = {0}, lag = {0}, change = {0};
    put_place(speaker->language, movement, item->first, item->last, &place);
    words_length(speaker->language, item->lag, &lag);
    words_change(speaker->language, item->change, &change);
    SAY(out, speaker->language, PHRASE_EXPLAIN_WHO, slot_text("place", place.text), slot_players("caller", &caller, 1),
        slot_players("responder", &responder, 1), slot_text("lag", lag.text), slot_text("change", change.text));
    buffers_let_go(out, &place, &lag, &change);
}

void explain_measures(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out)
{
    (void)movement;
    SAY(out, speaker->language, PHRASE_EXPLAIN_MEASURES, slot_number("tones", item->tones), slot_number("n", item->statements),
        slot_decimal("alike", item->alike, 2), slot_decimal("exact", item->exact, 2), slot_phrase("aside", aside_phrase(item->caller_aside)),
        slot_decimal("calleraside", item->caller_aside, 2), slot_phrase("free", aside_phrase(item->responder_aside)),
        slot_decimal("responderaside", item->responder_aside, 2), slot_decimal("front", item->foreground, 2),
        slot_decimal("strength", item->strength, 2), slot_text("weight", words_weight(speaker->language, item->strength)));
}

_Static_assert(PHRASE_MATTER_MORE_8 - PHRASE_MATTER_MORE_0 == SPZ_MATTER_COUNT - 1, "a phrase for each matter");
_Static_assert(PHRASE_MATTER_LESS_8 - PHRASE_MATTER_LESS_0 == SPZ_MATTER_COUNT - 1, "a phrase for each matter");

static void put_matters(spz_language language, const spz_matter *matters, size_t count, Phrase first, Buffer *out)
{
    for (size_t i = 0; i < count; i++) {
        buffer_puts(out, i ? phrase_text(language, PHRASE_MATTER_NEXT) : "");
        buffer_puts(out, phrase_text(language, (Phrase)(first + (unsigned)matters[i])));
    }
}

_Static_assert(PHRASE_THOUGHT_5 - PHRASE_THOUGHT_0 == SPZ_THOUGHT_COUNT - 1, "a phrase for each second thought");

static void put_thoughts(spz_language language, unsigned thoughts, Buffer *out)
{
    for (unsigned t = 0; t < SPZ_THOUGHT_COUNT; t++)
        if (thoughts >> t & 1) {
            buffer_puts(out, out->length ? " " : "");
            buffer_puts(out, phrase_text(language, (Phrase)(PHRASE_THOUGHT_0 + t)));
        }
}

void explain_comparison(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out)
{
    Buffer more = {0}, less = {0};
    (void)movement;
    put_thoughts(speaker->language, item->thoughts, out);
    if (!item->more_count && !item->less_count)
        return;
    buffer_puts(out, out->length ? " " : "");
    put_matters(speaker->language, item->more, item->more_count, PHRASE_MATTER_MORE_0, &more);
    put_matters(speaker->language, item->less, item->less_count, PHRASE_MATTER_LESS_0, &less);
    SAY(out, speaker->language,
        !item->less_count ? PHRASE_EXPLAIN_BESIDE_MORE : item->more_count ? PHRASE_EXPLAIN_BESIDE_BOTH : PHRASE_EXPLAIN_BESIDE_LESS,
        slot_text("more", more.text), slot_text("less", less.text));
    buffers_let_go(out, &more, &less);
}

static Phrase fate_phrase(const spz_considered *item)
{
    switch (item->fate) {
    case SPZ_REPORTED: return item->instead.with_others ? PHRASE_FATE_REPORTED_OTHERS : PHRASE_FATE_REPORTED;
    case SPZ_TOLD: return PHRASE_FATE_TOLD;
    case SPZ_OVERSHADOWED: return PHRASE_FATE_OVERSHADOWED;
    case SPZ_RETOLD: return PHRASE_FATE_RETOLD;
    default: return PHRASE_FATE_WEAK;
    }
}

static void put_nearer_call(const Speaker *speaker, const spz_considered *item, Buffer *out)
{
    spz_group caller = spz_side_named(speaker->sections, &item->nearer_caller);
    Buffer lag = {0};
    words_length(speaker->language, item->nearer_lag, &lag);
    buffer_puts(out, " ");
    SAY(out, speaker->language, PHRASE_FATE_NEARER, slot_players("caller", &caller, 1), slot_text("lag", lag.text),
        slot_decimal("alone", item->alone, 2));
    buffers_let_go(out, &lag);
}

void explain_fate(const Speaker *speaker, const spz_movement *movement, const spz_considered *item, Buffer *out)
{
    const spz_stands_for *instead = &item->instead;
    spz_group first = spz_side_named(speaker->sections, &instead->sides[0]), second = spz_side_named(speaker->sections, &instead->sides[1]);
    Buffer place = {0}, lag = {0};
    put_place(speaker->language, movement, instead->first, instead->last, &place);
    if (instead->lag.count.under) /* passages have none */
        words_length(speaker->language, instead->lag, &lag);
    SAY(out, speaker->language, fate_phrase(item), slot_phrase("kind", (Phrase)(PHRASE_KIND_EXCHANGE + (unsigned)instead->kind)),
        slot_players("first", &first, 1), slot_players("second", &second, 1), slot_text("place", place.text), slot_text("lag", lag.text),
        slot_text("weight", words_weight(speaker->language, instead->strength)), slot_decimal("strength", instead->strength, 2),
        slot_decimal("own", item->strength, 2), slot_phrase("later", item->later_link ? PHRASE_FATE_LATER : PHRASE_FATE_NOT_LATER),
        slot_phrase("ground", instead->accompanies ? PHRASE_FATE_ACCOMPANIES : PHRASE_FATE_NOT_ACCOMPANYING));
    buffers_let_go(out, &place, &lag);
    if (item->answers_nearer)
        put_nearer_call(speaker, item, out);
}

_Static_assert(PHRASE_ROLES_5 - PHRASE_ROLES_0 == SPZ_VOICE_ROLE_COUNT - 1, "a phrase for each role");
_Static_assert(PHRASE_ROLES_VALUE_5 - PHRASE_ROLES_VALUE_0 == 5 && PHRASE_ROLES_TRIPLET_3 - PHRASE_ROLES_TRIPLET_0 == 3, "a phrase for each note value");

/* ' in quavers'; nothing for a value that has no plain name. */
static void put_value(spz_language language, spz_fraction value, Buffer *out)
{
    for (unsigned step = 0; step < 6; step++) { /* from four crotchets down by halves, triplets from two thirds of a crotchet */
        bool plain = value.over << step == 4 * value.under, triplet = step < 4 && 3 * value.over << step == 2 * value.under;
        if (!plain && !triplet)
            continue;
        SAY(out, language, PHRASE_ROLES_IN_VALUE, slot_phrase("value", (Phrase)((plain ? PHRASE_ROLES_VALUE_0 : PHRASE_ROLES_TRIPLET_0) + step)));
        return;
    }
}

static void put_role(spz_language language, const spz_voice_in_bar *voice, spz_voice_role role, Buffer *out)
{
    Buffer value = {0};
    bool again = role == SPZ_VOICE_PAD && voice->strikes_again;
    put_value(language, voice->value, &value);
    SAY(out, language, again ? PHRASE_ROLES_AGAIN : (Phrase)(PHRASE_ROLES_0 + (unsigned)role), slot_text("value", value.text));
    buffer_let_go(out, &value);
}

void explain_role(spz_language language, const spz_voice_in_bar *voice, Buffer *out)
{
    Buffer first = {0}, second = {0};
    put_role(language, voice, voice->roles[0], &first);
    if (voice->role_count == 2)
        put_role(language, voice, voice->roles[1], &second);
    if (voice->role_count == 2)
        SAY(out, language, PHRASE_ROLES_THEN, slot_text("first", first.text), slot_text("second", second.text));
    else
        buffer_puts(out, buffer_text(&first));
    buffers_let_go(out, &first, &second);
}
