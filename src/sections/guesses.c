/* Parts that nothing names. Strings stand in one order at the foot of a score: two parts in the treble clef, one in the alto clef, one or two
 * in the bass clef (common practice; Gould, Behind Bars, 2011, from memory), and none goes below its lowest string (Piston, Orchestration, 1955). The
 * lowest five or four neighbours of the score that look so are taken for them, and that is told as a guess.
 *
 * A bracket of the list of parts stands over a family, a brace or square within it over the parts of one instrument (Gould, from memory). Where one stands over
 * nothing but what can be strings, in their order, it tells more: divided sections, written on several parts. No guess goes over from one family into another. */
#include "sections/understanding.h"

typedef struct Place { /* what is looked for at one place of the order */
    Instrument instrument;
    int ordinal;
    char clef;
    int line;
    int lowest;       /* open string, MIDI */
    int below;        /* where no clef is given: its lowest note lies below this one */
} Place;
static const Place order[] = {
    { INSTRUMENT_VIOLIN, 1, 'G', 2, 55, 128 }, { INSTRUMENT_VIOLIN, 2, 'G', 2, 55, 128 }, { INSTRUMENT_VIOLA, 0, 'C', 3, 48, 55 },
    { INSTRUMENT_CELLO, 0, 'F', 4, 36, 48 },   { INSTRUMENT_BASS, 0, 'F', 4, 21, 40 }, /* with a fifth string, or tuned down */
};
enum { PLACES = sizeof order / sizeof order[0] };

static int lowest_note(const Part *part)
{
    int lowest = 128;
    for (size_t i = 0; i < part->note_count; i++)
        if (part->notes[i].midi >= 0 && part->notes[i].midi < lowest)
            lowest = part->notes[i].midi;
    return lowest;
}

static bool says_nothing(const PartReading *part)
{
    return part->name.instrument == INSTRUMENT_NONE && part->name.family == SPZ_FAMILY_UNKNOWN && !part->corrected && !part->left_out;
}

static bool fits(const Understanding *all, size_t index, const Place *place)
{
    const PartReading *reading = &all->parts[index];
    const Part *part = &all->movement->parts[index];
    if (!says_nothing(reading))
        return part_is_tutti(reading) && reading->name.instrument == place->instrument && (!reading->name.ordinal || reading->name.ordinal == place->ordinal);
    int lowest = lowest_note(part);
    if (part->staves != 1 || part->note_count == 0 || lowest < place->lowest)
        return false;
    return part->clef ? part->clef == place->clef && (!part->clef_line || part->clef_line == place->line) : lowest < place->below;
}

/* Whether both stand under brackets, and under different ones. */
static bool brackets_part(const Part *one, const Part *other)
{
    return one->bracket && other->bracket && one->bracket != other->bracket;
}

/* How many parts from `first` on stand in the order of strings: 4, or 5 with basses; 0 when they don't, or when all have names. */
static size_t strings_from(const Understanding *all, size_t first)
{
    const Part *parts = all->movement->parts;
    size_t count = 0, nameless = 0;
    for (; count < PLACES && first + count < all->movement->part_count && fits(all, first + count, &order[count]); count++) {
        if (brackets_part(&parts[first], &parts[first + count]))
            break;
        nameless += says_nothing(&all->parts[first + count]);
    }
    return count >= PLACES - 1 && nameless ? count : 0;
}

static bool violins_outside(const Understanding *all, size_t first, size_t count)
{
    for (size_t i = 0; i < all->movement->part_count; i++)
        if ((i < first || i >= first + count) && part_is(&all->parts[i], INSTRUMENT_VIOLIN))
            return true;
    return false;
}

static void guess(Understanding *all, size_t index, const Place *place)
{
    PartReading *part = &all->parts[index];
    if (!says_nothing(part))
        return;
    part->name = (NameReading){ .instrument = place->instrument, .family = SPZ_FAMILY_STRINGS, .ordinal = place->ordinal };
    part_own_clue(part, (spz_clue){ .kind = SPZ_CLUE_PLACE });
    understanding_send(all, index, (spz_message){ .fault = SPZ_FAULT_GUESSED, .name = spz_section_name(section_of(place->instrument, place->ordinal)) });
}

/* Parts under one bracket: those that look like violins, then violas, then cellos and basses. */
typedef struct Family {
    size_t first, violins, violas, low;
} Family;

/* How many parts from `at` on, before `end`, can be at this place of the order. */
static size_t run_of(const Understanding *all, size_t at, size_t end, const Place *place, const Place *or_else)
{
    size_t count = 0;
    while (at + count < end && (fits(all, at + count, place) || fits(all, at + count, or_else)))
        count++;
    return count;
}

/* Into how many groups the inner brackets put the parts; a part without one is a group of its own. `group[i]`: of each, from 0. */
static size_t groups_within(const Part *parts, size_t count, int *group)
{
    size_t groups = 0;
    for (size_t i = 0; i < count; i++) {
        bool same = i > 0 && parts[i].inner_bracket == parts[i - 1].inner_bracket && parts[i].inner_bracket != parts[i].bracket;
        groups += !same;
        group[i] = (int)groups - 1;
    }
    return groups;
}

enum { FAMILY_MOST = 32 };

/* Which of two sections each of `count` parts of one clef is: by the inner brackets where they make two groups, else by halves; false where neither tells. */
static bool split_in_two(const Part *parts, size_t count, int *half)
{
    size_t groups = groups_within(parts, count, half);
    if (groups != 2)
        for (size_t i = 0; i < count; i++)
            half[i] = i >= count / 2;
    return groups == 2 || (groups == count && count % 2 == 0);
}

static bool is_family(const Understanding *all, size_t first, size_t end, Family *out)
{
    size_t nameless = 0;
    *out = (Family){.first = first};
    out->violins = run_of(all, first, end, &order[0], &order[1]);
    out->violas = run_of(all, first + out->violins, end, &order[2], &order[2]);
    out->low = run_of(all, first + out->violins + out->violas, end, &order[3], &order[4]);
    for (size_t i = first; i < end; i++)
        nameless += says_nothing(&all->parts[i]);
    return nameless && end - first <= FAMILY_MOST && out->violins >= 2 && out->violas && out->low && first + out->violins + out->violas + out->low == end;
}

/* The basses are the last of the low parts, or those of the second inner bracket; one low part alone is the cellos'. */
static bool guess_family(Understanding *all, const Family *family)
{
    int violins[FAMILY_MOST], low[FAMILY_MOST];
    const Part *parts = all->movement->parts;
    size_t below = family->first + family->violins + family->violas;
    if (!split_in_two(&parts[family->first], family->violins, violins))
        return false;
    bool told = groups_within(&parts[below], family->low, low) == 2;
    for (size_t i = 0; i < family->low; i++)
        low[i] = family->low > 1 && (told ? low[i] : i + 1 == family->low);
    for (size_t i = 0; i < family->low; i++)
        if (!fits(all, below + i, &order[3 + low[i]]))
            return false;
    for (size_t i = 0; i < family->violins; i++)
        guess(all, family->first + i, &order[violins[i]]);
    for (size_t i = 0; i < family->violas; i++)
        guess(all, family->first + family->violins + i, &order[2]);
    for (size_t i = 0; i < family->low; i++)
        guess(all, below + i, &order[3 + low[i]]);
    return true;
}

/* The lowest bracket of the score that stands over strings alone. */
static bool guess_by_bracket(Understanding *all)
{
    const Part *parts = all->movement->parts;
    Family family;
    for (size_t end = all->movement->part_count; end > 0;) {
        size_t first = end - 1;
        while (first > 0 && parts[first].bracket && parts[first - 1].bracket == parts[first].bracket)
            first--;
        if (parts[first].bracket && is_family(all, first, end, &family) && !violins_outside(all, first, end - first))
            return guess_family(all, &family);
        end = first;
    }
    return false;
}

void guesses_make(Understanding *all)
{
    if (guess_by_bracket(all))
        return;
    for (size_t first = all->movement->part_count; first-- > 0;) {
        size_t count = strings_from(all, first);
        if (!count)
            continue;
        if (!violins_outside(all, first, count))
            for (size_t i = 0; i < count; i++)
                guess(all, first + i, &order[i]);
        return;
    }
}
