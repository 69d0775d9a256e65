#include "analysis/division/divisi_words.h"
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* Shares from which a texture is called so. */
static const struct { double apart, still, most; } rules = {
    .apart = 0.3, /* of the thick moments, one voice sounds on while another moves */
    .still = 0.3, /* a voice that moves this much less often than the other is held */
    .most = 0.6,
};

static const char *number_word(int lines)
{
    static const char *const words[] = { "none", "one", "two", "three", "four", "five", "six", "seven", "eight" };
    return lines >= 0 && lines < 9 ? words[lines] : "many";
}

static const char *motion_words(const BarWriting *sum)
{
    if (sum->upper < rules.still * sum->lower)
        return "held upper notes over a moving lower line";
    if (sum->lower < rules.still * sum->upper)
        return "a moving upper line over held lower notes";
    return "independent lines";
}

static const char *interval_words(const BarWriting *sum)
{
    double most = rules.most * sum->thick;
    if (sum->thirds >= most)
        return "thirds";
    if (sum->sixths >= most)
        return "sixths";
    if (sum->octaves >= most)
        return "octaves";
    if (sum->fifths >= most)
        return "fifths";
    return sum->thirds + sum->sixths >= most ? "thirds and sixths" : NULL;
}

static const char *manner_words(const BarWriting *sum)
{
    return sum->tremolo >= rules.most * sum->thick ? ", tremolo" : sum->plucked >= rules.most * sum->thick ? ", pizzicato" : "";
}

enum { TEXTURE_TEXT = 96 };

static const char *texture_words(const Stretch *stretch, char text[TEXTURE_TEXT])
{
    const BarWriting *sum = &stretch->sum;
    if (2 * stretch->turns > stretch->divided)
        return "the players take turns";
    if (sum->apart >= rules.apart * sum->thick && stretch->lines == 2)
        return motion_words(sum);
    if (sum->apart >= rules.apart * sum->thick)
        return "lines that move apart";
    const char *intervals = stretch->lines == 2 ? interval_words(sum) : NULL;
    bool lines = stretch->lines == 2 && stretch->independence >= rules.apart;
    snprintf(text, TEXTURE_TEXT, "%s%s", intervals ? intervals : lines ? "note against note" : "chords", manner_words(sum));
    return text;
}

static Evidence strongest(const BarWriting *sum)
{
    Evidence most = EVIDENCE_MARK;
    for (int e = 1; e < EVIDENCE_COUNT; e++)
        most = sum->evidence[e] > sum->evidence[most] ? (Evidence)e : most;
    return most;
}

static const char *evidence_words(const BarWriting *sum)
{
    static const char *const words[EVIDENCE_COUNT] = {
        [EVIDENCE_MARK] = "",
        [EVIDENCE_PARTS] = ", each on a staff of its own",
        [EVIDENCE_HAND] = ", more than one player can stop",
        [EVIDENCE_VOICES] = ", written in voices without a mark",
        [EVIDENCE_CHORDS] = "",
    };
    return words[strongest(sum)];
}

char *divisi_reason(Arena *arena, spz_section section, const Stretch *stretch)
{
    char texture[TEXTURE_TEXT];
    if (stretch->sum.soloists > 1)
        return arena_format(arena, "%s soloists of the %s: %s", number_word(stretch->sum.soloists), spz_section_words(section),
                            texture_words(stretch, texture));
    return arena_format(arena, "%s in %s%s: %s%s", spz_section_words(section), number_word(stretch->lines),
                        stretch->sum.by_desk ? ", by desk" : "", texture_words(stretch, texture), evidence_words(&stretch->sum));
}

char *divisi_violins_reason(Arena *arena, const Stretch *first, const Stretch *second, int lines)
{
    char text[2][TEXTURE_TEXT];
    const char *of_first = texture_words(first, text[0]), *of_second = texture_words(second, text[1]);
    const char *number = number_word(lines);
    if (first->lines < 2)
        return arena_format(arena, "violins in %s in one rhythm, the seconds divided: %s", number, of_second);
    if (second->lines < 2)
        return arena_format(arena, "violins in %s in one rhythm, the firsts divided: %s", number, of_first);
    if (!strcmp(of_first, of_second))
        return arena_format(arena, "violins in %s, both sections divided: %s in both", number, of_first);
    return arena_format(arena, "violins in %s, both sections divided: in the firsts %s; in the seconds %s", number, of_first,
                        of_second);
}
