/* The movement as a whole, in a paragraph. */
#include "wording/papers/notes_words.h"
#include "wording/section_words.h"

_Static_assert(PHRASE_KEY_MAJOR_15 - PHRASE_KEY_MAJOR_1 == 14 && PHRASE_KEY_MINOR_15 - PHRASE_KEY_MINOR_1 == 14, "seven flats to seven sharps");
enum { DIALOGUE_WAYS = 3, BEST_WAYS = 4, NONE_WAYS = 2, OTHER_WAYS = 2 };
_Static_assert(PHRASE_NOTES_DIALOGUES_3_MANY - PHRASE_NOTES_DIALOGUES_1_ONE + 1 == 2 * DIALOGUE_WAYS, "two phrases for each way of saying it");
_Static_assert(PHRASE_NOTES_DIVISIONS_2_MANY - PHRASE_NOTES_DIVISIONS_1_ONE + 1 == 2 * OTHER_WAYS && PHRASE_NOTES_COUPLINGS_2_MANY - PHRASE_NOTES_COUPLINGS_1_ONE + 1 == 2 * OTHER_WAYS &&
               PHRASE_NOTES_PAIR_SOME_2 - PHRASE_NOTES_PAIR_SOME_1 + 1 == OTHER_WAYS, "ways of saying it");
_Static_assert(PHRASE_NOTES_BEST_4 - PHRASE_NOTES_BEST_1 + 1 == BEST_WAYS, "ways to name the best");

static Slot slot_of(const char *name, const Buffer *text)
{
    return slot_text(name, text->text && !buffer_failed(text) ? text->text : "");
}

/* 'in two of them': nothing, one, more, all. */
typedef struct SomePhrases {
    Phrase only, all, one, many;
} SomePhrases;

static void say_some(Buffer *out, spz_language language, const SomePhrases *phrases, size_t some, size_t all)
{
    if (some == 0)
        return;
    Phrase phrase = all == 1 ? phrases->only : some == all ? phrases->all : some == 1 ? phrases->one : phrases->many;
    SAY(out, language, phrase, slot_number("m", (long)some));
}

/* `one` and the phrase behind it: for one, and for more. */
static void say_counted(Buffer *out, spz_language language, Phrase one, size_t count, const char *name, const Buffer *more, Slot alone)
{
    SAY(out, language, (Phrase)(one + (count != 1)), slot_number("n", (long)count), slot_of(name, more), alone);
}

static void say_best(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    Buffer bar = {0}, at = {0};
    say_bar(&bar, language, notes, overview->strongest->upbeat_to); /* as its place is told */
    say_when(&at, language, notes, overview->strongest);
    Phrase phrase = overview->dialogues == 1 ? PHRASE_NOTES_BEST_ONLY : (Phrase)(PHRASE_NOTES_BEST_1 + notes->number % BEST_WAYS);
    SAY(out, language, phrase, slot_of("bar", &bar), slot_of("at", &at));
    buffers_let_go(out, &bar, &at);
}

static void say_dialogues(Buffer *out, spz_language language, const MovementNotes *notes)
{
    static const SomePhrases striking = {PHRASE_NOTES_STRIKING_ONE, PHRASE_NOTES_STRIKING_ALL, PHRASE_NOTES_STRIKING_SOME_ONE, PHRASE_NOTES_STRIKING_SOME_MANY};
    const Overview *overview = &notes->overview;
    Buffer more = {0};
    say_some(&more, language, &striking, overview->striking, overview->dialogues);
    say_counted(out, language, (Phrase)(PHRASE_NOTES_DIALOGUES_1_ONE + 2 * (notes->number % DIALOGUE_WAYS)), overview->dialogues, "striking", &more, slot_alone(notes->sections));
    if (overview->dialogues > 1 && overview->pair_count > 1)
        SAY(out, language, overview->pair_count == overview->dialogues ? PHRASE_NOTES_PAIR_ALL : (Phrase)(PHRASE_NOTES_PAIR_SOME_1 + notes->number % OTHER_WAYS),
            slot_players("first", &overview->pair[0], 1), slot_players("second", &overview->pair[1], 1), slot_number("m", (long)overview->pair_count));
    if (overview->strongest)
        say_best(out, language, notes);
    buffer_let_go(out, &more);
}

static void say_divisions(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    static const SomePhrases threefold = {PHRASE_NOTES_THREEFOLD_ONE, PHRASE_NOTES_THREEFOLD_ALL, PHRASE_NOTES_THREEFOLD_SOME_ONE, PHRASE_NOTES_THREEFOLD_SOME_MANY};
    Buffer more = {0};
    say_some(&more, language, &threefold, overview->threefold, overview->divided);
    say_counted(out, language, (Phrase)(PHRASE_NOTES_DIVISIONS_1_ONE + 2 * (notes->number % OTHER_WAYS)), overview->divided, "threefold", &more, slot_alone(notes->sections));
    buffer_let_go(out, &more);
}

void say_overview(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    if (!overview->strings) {
        buffer_puts(out, phrase_text(language, PHRASE_NOTES_NO_STRINGS));
        return;
    }
    if (overview->dialogues)
        say_dialogues(out, language, notes);
    else
        SAY(out, language, (Phrase)(PHRASE_NOTES_NO_DIALOGUE_1 + notes->number % NONE_WAYS), slot_alone(notes->sections));
    if (overview->divided)
        say_divisions(out, language, notes);
    if (overview->coupled)
        SAY(out, language, (Phrase)(PHRASE_NOTES_COUPLINGS_1_ONE + 2 * (notes->number % OTHER_WAYS) + (overview->coupled != 1)), slot_number("n", (long)overview->coupled), slot_alone(notes->sections));
    if (overview->seating)
        SAY(out, language, (Phrase)(PHRASE_NOTES_SEATING_OPEN + (overview->seating - SEATING_OPEN)), slot_alone(notes->sections));
}

void say_origin(Buffer *out, spz_language language, const MovementNotes *notes)
{
    char text[SOURCE_TEXT];
    const char *composer = words_composer(notes->movement, text);
    const char *key = notes->has_key ? key_words(language, notes->fifths, notes->minor) : "";
    if (*composer)
        SAY(out, language, notes->year ? PHRASE_NOTES_COMPOSER_YEAR : PHRASE_NOTES_COMPOSER, slot_text("composer", composer), slot_number("year", notes->year));
    if (*key)
        SAY(out, language, *composer ? PHRASE_NOTES_KEY_BEHIND : PHRASE_NOTES_KEY, slot_text("key", key));
}

/* Where the file's numbers are probably not those of an edition. */
static void say_numbers(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    Buffer bar = {0};
    if (overview->upbeat_counted)
        buffer_puts(out, phrase_text(language, PHRASE_NOTES_NUMBERS_UPBEAT));
    if (overview->halves < spz_movement_bars(notes->movement)) {
        say_bar(&bar, language, notes, overview->halves);
        SAY(out, language, PHRASE_NOTES_NUMBERS_HALVES, slot_of("bar", &bar));
    }
    buffer_let_go(out, &bar);
}

_Static_assert(PHRASE_NOTES_TIMES_NONE_AGAIN - PHRASE_NOTES_TIMES_NONE == PHRASE_NOTES_TIMES_MARKS_AGAIN - PHRASE_NOTES_TIMES_MARKS &&
               PHRASE_NOTES_TIMES_PLAYED_AGAIN - PHRASE_NOTES_TIMES_PLAYED == PHRASE_NOTES_TIMES_MARKS_AGAIN - PHRASE_NOTES_TIMES_MARKS, "three ways to come by a length, in full and again");

void say_times(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    Buffer time = {0};
    if (overview->given)
        say_clock(&time, language, overview->duration);
    else
        say_about(&time, language, overview->duration);
    Phrase marks = overview->printed ? PHRASE_NOTES_TIMES_MARKS : overview->marked ? PHRASE_NOTES_TIMES_PLAYED : PHRASE_NOTES_TIMES_NONE;
    if (overview->timed_alike)
        marks = (Phrase)(marks + PHRASE_NOTES_TIMES_MARKS_AGAIN - PHRASE_NOTES_TIMES_MARKS);
    SAY(out, language, overview->given ? PHRASE_NOTES_TIMES_GIVEN : overview->tapped ? PHRASE_NOTES_TIMES_TAPPED : marks,
        slot_of("time", &time), overview->repeats ? slot_phrase("repeats", PHRASE_NOTES_REPEATS) : slot_text("repeats", ""));
    say_numbers(out, language, notes);
    buffer_let_go(out, &time);
}

void say_timing(Buffer *out, spz_language language, const MovementNotes *notes)
{
    const Overview *overview = &notes->overview;
    if (!times_are_known(overview))
        buffer_puts(out, phrase_text(language, overview->printed ? PHRASE_NOTES_TIMING_MARKS : overview->marked ? PHRASE_NOTES_TIMING_PLAYED : PHRASE_NOTES_TIMING_NONE));
}
