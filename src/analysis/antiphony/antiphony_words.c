/* antiphony_words.c - passages in the words of a rehearsal. */
#include "analysis/antiphony/antiphony_words.h"
#include "support/buffer.h"
#include <stdio.h>
#include <stdlib.h>

static const char *number_word(int n, char text[16])
{
    static const char *const words[] = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
                                        "eleven", "twelve"};
    if (n >= 0 && n < (int)(sizeof words / sizeof *words))
        return words[n];
    snprintf(text, 16, "%d", n);
    return text;
}

static const char *times_word(int n, char text[24])
{
    if (n == 2)
        return "twice";
    char number[16];
    snprintf(text, 24, "%s times", number_word(n, number));
    return text;
}

/* 'five quavers', 'a semiquaver', 'ten triplet quavers': two crotchets are three triplet crotchets. */
static void note_value_words(Ticks length, Ticks crotchet, Buffer *out)
{
    static const char *const names[] = {"crotchet", "quaver", "semiquaver", "demisemiquaver"};
    char number[16], exact[TICKS_TEXT];
    for (int i = 0; i < 8; i++) {
        bool triplet = i >= 4;
        Ticks units = (length << i % 4) * (triplet ? 3 : 1), unit = crotchet * (triplet ? 2 : 1);
        if (units % unit != 0)
            continue;
        int count = (int)(units / unit);
        buffer_printf(out, "%s %s%s%s", count == 1 ? "a" : number_word(count, number), triplet ? "triplet " : "", names[i % 4],
                      count == 1 ? "" : "s");
        return;
    }
    buffer_printf(out, "%s of a crotchet", ticks_text(length, crotchet, exact));
}

/* 'half a beat', 'a beat', 'two beats', 'half a bar', 'a bar', 'three bars', else crotchets. */
void lag_words(const Texture *texture, const Candidate *c, Buffer *out)
{
    const Movement *m = texture->map->movement;
    const Bar *bar = &m->bars[c->first];
    Ticks lag = c->match.lag, beat = bar->beat > 0 ? bar->beat : m->per_crotchet;
    Ticks nominal = bar->nominal > 0 ? bar->nominal : 0;
    char number[16];
    if (nominal && lag % nominal == 0)
        lag == nominal ? buffer_puts(out, "a bar") : buffer_printf(out, "%s bars", number_word((int)(lag / nominal), number));
    else if (nominal && lag * 2 == nominal && nominal > 2 * beat)
        buffer_puts(out, "half a bar");
    else if (lag % beat == 0)
        lag == beat ? buffer_puts(out, "a beat") : buffer_printf(out, "%s beats", number_word((int)(lag / beat), number));
    else if (lag * 2 == beat)
        buffer_puts(out, "half a beat");
    else if (lag * 2 % beat == 0)
        buffer_printf(out, "%s and a half beats", number_word((int)(lag / beat), number));
    else
        note_value_words(lag, m->per_crotchet, out);
}

static int diatonic(const Note *note)
{
    return note->octave * 7 + note->step;
}

/* 'at the same pitch', 'an octave higher', 'a third lower, upside down'. */
void interval_words(const Texture *texture, const Match *match, Buffer *out)
{
    static const char *const names[] = {"", "a second", "a third", "a fourth", "a fifth", "a sixth", "a seventh"};
    const Note *call = texture->melodies[match->caller].events[match->call_first].sound->note;
    const Note *answer = texture->melodies[match->responder].events[match->answer_first].sound->note;
    int steps = diatonic(answer) - diatonic(call), semitones = match->transposition;
    const char *way = semitones > 0 ? "higher" : "lower";
    if (semitones == 0)
        buffer_puts(out, "at the same pitch");
    else if (steps % 7 == 0 && semitones % 12 == 0)
        abs(steps) == 7 ? buffer_printf(out, "an octave %s", way)
                        : buffer_printf(out, "%s octaves %s", abs(steps) == 14 ? "two" : "several", way);
    else if (steps % 7 == 0)
        buffer_printf(out, "%s", abs(steps) == 0 ? "on the same degree, altered" : way);
    else if (abs(steps) < 7)
        buffer_printf(out, "%s %s", names[abs(steps) % 7], way);
    else
        buffer_printf(out, "more than an octave %s", way);
    buffer_puts(out, match->mirror < 0 ? ", upside down" : "");
    if (match->stretch)
        buffer_printf(out, ", in notes %s as long", match->stretch > 0 ? "twice" : "half");
}

/* The strongest exchange in the direction of the passage: the sentence has to begin with the section that calls first. */
static const Candidate *best_of(const CandidateList *candidates, const Chain *chain)
{
    const Candidate *best = &candidates->at[chain->candidates[0]];
    for (size_t i = 1; i < chain->candidate_count; i++) {
        const Candidate *c = &candidates->at[chain->candidates[i]];
        if (c->sides[0].section == chain->sides[0].section && c->evidence.chance > best->evidence.chance)
            best = c;
    }
    return best;
}

static const char *manner(const Texture *texture, const Match *match)
{
    const NoteEvent *event = &texture->melodies[match->caller].events[match->call_first];
    return event->flags & EVENT_PIZZICATO ? "pizzicato " : "";
}

static const char *ordinal(int n)
{
    static const char *const words[] = {"", "first", "second", "third", "fourth", "fifth", "sixth"};
    return n > 0 && n < (int)(sizeof words / sizeof *words) ? words[n] : "other";
}

void side_words(const Texture *texture, const Side *side, Buffer *out)
{
    const char *section = spz_section_words(side->section);
    const spz_group *group = side->group != SIZE_MAX ? &texture->map->groups[side->group].about : NULL;
    if (group && group->solo)
        buffer_printf(out, "solo %s", section);
    else if (group && group->number)
        buffer_printf(out, "%s %s", ordinal(group->number), section);
    else
        buffer_puts(out, section);
    if (side->orchestra)
        buffer_printf(out, " of the %s orchestra", ordinal(side->orchestra));
}

/* "violins' ", "violins of the first orchestra with a ". */
static void side_possessive(const Texture *texture, const Side *side, Buffer *out)
{
    side_words(texture, side, out);
    buffer_puts(out, side->orchestra ? " with a " : "' ");
}

static void gesture_words(const Texture *texture, const Candidate *c, spz_kind kind, Buffer *out)
{
    char number[16];
    int notes = (int)((c->match.matched + c->match.statements / 2) / c->match.statements);
    const char *how = manner(texture, &c->match);
    if (kind == SPZ_HOCKET)
        notes <= 1 ? buffer_printf(out, "%ssingle notes", how) : buffer_printf(out, "%s%s-note fragments", how, number_word(notes, number));
    else if (notes <= 12)
        buffer_printf(out, "%s%s-note figure", how, number_word(notes, number));
    else
        buffer_printf(out, "%sphrase of %d notes", how, notes);
}

char *chain_reason(const Texture *texture, const CandidateList *candidates, const Chain *chain, spz_kind kind, int turns, Arena *arena)
{
    Buffer text;
    char times[24];
    buffer_init(&text);
    const Candidate *best = best_of(candidates, chain);
    side_possessive(texture, &best->sides[0], &text);
    gesture_words(texture, best, kind, &text);
    buffer_puts(&text, kind == SPZ_IMITATION ? ", taken up " : kind == SPZ_HOCKET ? ", alternating " : ", answered ");
    lag_words(texture, best, &text);
    buffer_puts(&text, kind == SPZ_HOCKET ? " apart with the " : " later by the ");
    side_words(texture, &best->sides[1], &text);
    buffer_putc(&text, ' ');
    interval_words(texture, &best->match, &text);
    if (kind == SPZ_IMITATION)
        buffer_puts(&text, " while the first voice goes on");
    if (turns > 3)
        buffer_printf(&text, ", %s in turn", times_word(turns, times));
    char *reason = buffer_failed(&text) ? NULL : arena_string(arena, text.text);
    buffer_free(&text);
    return reason;
}
