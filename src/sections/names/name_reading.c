/* A name is read in passes over its words: instruments first, then the numbers that belong to an orchestra, a desk or a
 * division, and what numbers are left are the section's. */
#include "sections/names/name_reading.h"
#include <string.h>

typedef struct NameReader {
    NameTokens tokens;
    NameReading *out;
    WordKind kinds[TOKEN_LIMIT];  /* of the word that starts at this token; WORD_UNKNOWN inside a longer one */
    int values[TOKEN_LIMIT];
    size_t instrument_at;         /* token of the instrument; TOKEN_LIMIT for none */
    bool family_sure;             /* a word has settled the family whatever others say */
    bool violen;                  /* German violas; Dutch violins, which are always numbered */
    bool register_only;           /* so far only a voice's register is named */
} NameReader;

bool instrument_is_either(Instrument instrument)
{
    return instrument >= INSTRUMENT_EITHER_BASS;
}

bool instrument_has_section(Instrument instrument)
{
    return instrument >= INSTRUMENT_VIOLIN && instrument <= INSTRUMENT_CONTINUO;
}

/* A number as such, or a number word. */
static int number_at(const NameReader *reader, size_t i)
{
    if (i >= reader->tokens.count || reader->tokens.at[i].used)
        return 0;
    return reader->kinds[i] == WORD_ORDINAL ? reader->values[i] : reader->tokens.at[i].number;
}

static bool joined_with_before(const NameReader *reader, size_t i)
{
    const NameToken *token = &reader->tokens.at[i];
    if (token->joint && strchr("&+,/;", token->joint))
        return true;
    return i > 0 && reader->kinds[i - 1] == WORD_AND;
}

/* Is there '&', 'und', ',' between the instrument named before and token `i`? */
static bool joined_since(const NameReader *reader, size_t from, size_t i)
{
    for (size_t k = from + 1; k <= i; k++)
        if (joined_with_before(reader, k))
            return true;
    return false;
}

/* 'Violoncelli' over 'Contrabassi' in one name needs no 'and'. */
static bool low_pair(Instrument first, Instrument second)
{
    return first == INSTRUMENT_CELLO && (second == INSTRUMENT_BASS || second == INSTRUMENT_BASS_LINE);
}

static void take_string(NameReader *reader, size_t i, const Word *word)
{
    NameReading *out = reader->out;
    Instrument instrument = (Instrument)word->value;
    bool weak_before = out->instrument == INSTRUMENT_NONE || instrument_is_either(out->instrument) || out->instrument == INSTRUMENT_STRINGS;
    if (weak_before && !(out->instrument != INSTRUMENT_NONE && joined_since(reader, reader->instrument_at, i))) {
        out->instrument = instrument;
        out->special = word->kind == WORD_SOLO_KIND;
        reader->instrument_at = i;
    } else if (out->instrument == INSTRUMENT_OTHER && joined_since(reader, reader->instrument_at, i)) {
        out->instrument = instrument;
        reader->instrument_at = i;
    } else if (out->instrument != INSTRUMENT_OTHER && out->instrument != instrument && out->also == INSTRUMENT_NONE &&
               (joined_since(reader, reader->instrument_at, i) || low_pair(out->instrument, instrument))) {
        out->also = instrument;
    }
    out->plural |= word->more;
    reader->violen = strcmp(word->text, "violen") == 0;
}

static void take_either(NameReader *reader, size_t i, const Word *word)
{
    NameReading *out = reader->out;
    if (out->instrument == INSTRUMENT_NONE) {
        out->instrument = (Instrument)word->value;
        reader->instrument_at = i;
    } else if (word->value == INSTRUMENT_EITHER_BASS && out->instrument == INSTRUMENT_CELLO && joined_since(reader, reader->instrument_at, i)) {
        out->also = INSTRUMENT_BASS; /* 'Violoncello e Basso' */
    }
}

static void take_family(NameReader *reader, size_t i, const Word *word)
{
    NameReading *out = reader->out;
    bool sure = word->kind == WORD_FAMILY_SURE;
    bool voice = word->kind == WORD_VOICE;
    bool free = out->instrument == INSTRUMENT_NONE || (!voice && (instrument_is_either(out->instrument) || reader->register_only));
    bool qualified = out->instrument == INSTRUMENT_BASS && !joined_since(reader, reader->instrument_at, i); /* 'Contrabass tuba' */
    if (free || qualified) {
        out->instrument = INSTRUMENT_OTHER;
        reader->instrument_at = i;
        out->family = (spz_family)word->value;
        out->continuo |= word->more;
        reader->register_only = voice;
    }
    if (out->instrument == INSTRUMENT_OTHER && sure && !reader->family_sure)
        out->family = (spz_family)word->value;
    reader->family_sure |= sure;
}

static void take_word(NameReader *reader, size_t i, const Word *word)
{
    NameReading *out = reader->out;
    switch (word->kind) {
    case WORD_STRING:
    case WORD_SOLO_KIND: take_string(reader, i, word); break;
    case WORD_EITHER: take_either(reader, i, word); break;
    case WORD_VOICE:
    case WORD_FAMILY:
    case WORD_FAMILY_SURE: take_family(reader, i, word); break;
    case WORD_SOLO: out->solo = true; break;
    case WORD_CONCERTINO: out->concertino = true; break;
    case WORD_TUTTI: out->tutti = true; break;
    case WORD_REST: out->tutti = out->rest = true; break;
    case WORD_CHOIR: out->choir_named = true; break;
    case WORD_REDUCTION: out->reduction = true; break;
    default: break;
    }
}

/* 'st' of '1st', 'fach' of '3fach'; a lone 'a' or 'b' behind a number of the section is a line: 'Violin 1b'. */
static bool is_suffix(const NameReader *reader, size_t i)
{
    const NameToken *token = &reader->tokens.at[i];
    if (i == 0 || !reader->tokens.at[i - 1].number)
        return false;
    if (token->attached && reader->kinds[i] == WORD_SUFFIX)
        return true;
    bool letter = token->text[1] == '\0' && strchr("aeo", token->text[0]);
    return token->attached && letter && (reader->instrument_at > i || token->text[0] != 'a');
}

static void read_words(NameReader *reader)
{
    for (size_t i = 0, taken = 1; i < reader->tokens.count; i += taken ? taken : 1) {
        const Word *word = vocabulary_find(&reader->tokens, i, &taken);
        if (!word || (strlen(word->text) == 3 && taken == 2 && reader->instrument_at != TOKEN_LIMIT)) {
            taken = 1; /* 'b c' is a continuo by itself only, not in 'Violins A B C' */
            reader->out->stray |= !word && !reader->tokens.at[i].number && reader->tokens.at[i].text[1];
            continue;
        }
        reader->kinds[i] = word->kind;
        reader->values[i] = word->value;
        take_word(reader, i, word);
        for (size_t inner = 1; inner < taken; inner++)
            reader->tokens.at[i + inner].used = true;
    }
    for (size_t i = 1; i < reader->tokens.count; i++)
        if (is_suffix(reader, i))
            reader->tokens.at[i].used = true;
}

static size_t next_unused(const NameReader *reader, size_t i)
{
    do
        i++;
    while (i < reader->tokens.count && reader->tokens.at[i].used);
    return i;
}

static size_t previous_unused(const NameReader *reader, size_t i) /* TOKEN_LIMIT when there is none */
{
    while (i-- > 0)
        if (!reader->tokens.at[i].used)
            return i;
    return TOKEN_LIMIT;
}

/* 'Coro I', 'Orch. 2', 'II. Orchester'. */
static void read_orchestra(NameReader *reader)
{
    for (size_t i = 0; i < reader->tokens.count; i++) {
        if (reader->kinds[i] != WORD_ORCHESTRA && reader->kinds[i] != WORD_CHOIR)
            continue;
        size_t before = previous_unused(reader, i), after = next_unused(reader, i);
        bool leads = before != TOKEN_LIMIT && number_at(reader, before) && previous_unused(reader, before) == TOKEN_LIMIT;
        size_t at = leads ? before : number_at(reader, after) ? after : before;
        if (at == TOKEN_LIMIT || !number_at(reader, at))
            continue;
        reader->out->orchestra = number_at(reader, at);
        reader->tokens.at[at].used = true;
    }
}

static bool between_desks(const NameReader *reader, size_t i)
{
    return number_at(reader, i) || reader->kinds[i] == WORD_AND || reader->tokens.at[i].used;
}

static void desk_span(NameReader *reader, size_t first, size_t last)
{
    NameReading *out = reader->out;
    for (size_t i = first; i <= last; i++) {
        out->desk_numbered |= number_at(reader, i) > 0;
        reader->tokens.at[i].used = true;
    }
    if (!out->desk) {
        out->desk_start = reader->tokens.at[first].start;
        out->desk_end = reader->tokens.at[last].end;
    }
    out->desk = true;
}

/* '1. Pult', '1.-2. Pult', 'desks 1-2', '1st desk'. A number right behind the instrument stays the section's when more numbers follow. */
static void read_desks(NameReader *reader)
{
    for (size_t i = 0; i < reader->tokens.count; i++) {
        if (reader->kinds[i] != WORD_DESK || reader->tokens.at[i].used)
            continue;
        size_t first = i, last = i;
        while (last + 1 < reader->tokens.count && between_desks(reader, last + 1))
            last++;
        if (last == i)
            while (first > 0 && between_desks(reader, first - 1) && first - 1 != reader->instrument_at)
                first--;
        bool behind = first > 0 && first - 1 == reader->instrument_at;
        if (behind && number_at(reader, first) && first + 1 < i) {
            first++;
            while (first < i && reader->tokens.at[first].used)
                first++;
        }
        desk_span(reader, first, last);
    }
}

/* 'div. 2', 'div(2)', '2nd half'; 'div. a 2', 'in 3', '3fach' and '8 players' only count. */
static void read_divisions(NameReader *reader)
{
    for (size_t i = 0; i < reader->tokens.count; i++) {
        size_t before = previous_unused(reader, i), after = next_unused(reader, i);
        if (reader->kinds[i] == WORD_COUNT && number_at(reader, after) && !reader->tokens.at[after].roman)
            reader->tokens.at[after].used = reader->tokens.at[i].used = true;
        if (reader->kinds[i] == WORD_COUNTED && before != TOKEN_LIMIT && number_at(reader, before) && before != reader->instrument_at)
            reader->tokens.at[before].used = true;
        size_t at = reader->kinds[i] == WORD_DIVIDED ? after : reader->kinds[i] == WORD_HALF ? before : TOKEN_LIMIT;
        if (at != TOKEN_LIMIT && number_at(reader, at)) {
            reader->out->division = number_at(reader, at);
            reader->tokens.at[at].used = true;
        }
    }
}

/* Letter of a line behind the section: 'I A', '1b', 'Violins A B C', 'IIa'. 0 for none. */
static int line_letter(const NameReader *reader, size_t i)
{
    const char *text = reader->tokens.at[i].text;
    bool single = text[0] >= 'a' && text[0] <= 'd' && !text[1];
    return !reader->tokens.at[i].used && single && i > reader->instrument_at ? text[0] - 'a' + 1 : 0;
}

static void read_letters(NameReader *reader)
{
    NameReading *out = reader->out;
    int letters = 0, last = 0;
    for (size_t i = 0; i < reader->tokens.count; i++) {
        NameToken *token = &reader->tokens.at[i];
        size_t length = strlen(token->text);
        char end = length ? token->text[length - 1] : '\0';
        bool roman = i > reader->instrument_at && length >= 2 && length <= 4 && strspn(token->text, "i") == length - 1;
        if (roman && end >= 'a' && end <= 'd') { /* 'IIa' */
            token->number = (int)length - 1;
            token->roman = true;
            reader->kinds[i] = WORD_UNKNOWN;
            last = end - 'a' + 1;
            letters++;
        } else if (line_letter(reader, i) == 2 && out->instrument == INSTRUMENT_CELLO && joined_with_before(reader, i)) {
            out->also = INSTRUMENT_BASS; /* 'Vc. e B.' */
            token->used = true;
        } else if (line_letter(reader, i)) {
            last = line_letter(reader, i);
            token->used = true;
            letters++;
        }
    }
    if (letters == 1 && !out->division)
        out->division = last;
    out->lines = letters > 1 ? letters : 0;
}

/* Two numbers name two sections ('I e II', '1/2', 'I-II'), or a section and its line ('I.1', 'I 1'). */
static bool numbers_name_two(const NameReader *reader, size_t a, size_t b)
{
    const NameToken *second = &reader->tokens.at[b];
    bool joint = joined_since(reader, a, b) || second->joint == '-';
    bool same_style = reader->tokens.at[a].roman == second->roman;
    bool follows = number_at(reader, b) == number_at(reader, a) + 1;
    bool pointed = second->joint == '.'; /* 'I.II' and '1.2. Violine' name two, 'Violine 1.2' a line */
    bool two = pointed ? second->roman || b < reader->instrument_at : joint || !second->joint;
    return follows && same_style && !second->bracketed && two;
}

/* '2 Violini' counts, '2. Violine' orders. */
static bool counts_players(const NameReader *reader, size_t i)
{
    const NameToken *token = &reader->tokens.at[i];
    bool suffix = i + 1 < reader->tokens.count && reader->tokens.at[i + 1].used && reader->tokens.at[i + 1].attached;
    return i + 1 == reader->instrument_at && reader->out->plural && token->number > 1 && !token->roman && !token->dot && !suffix;
}

static void read_numbers(NameReader *reader)
{
    NameReading *out = reader->out;
    size_t first = TOKEN_LIMIT;
    for (size_t i = 0; i < reader->tokens.count; i++) {
        int number = number_at(reader, i);
        out->stray |= number > 8;
        if (!number || number > 8)
            continue;
        if (first == TOKEN_LIMIT && counts_players(reader, i)) {
            out->ordinal = 1;
            out->ordinal2 = out->instrument == INSTRUMENT_VIOLIN && number == 2 ? 2 : 0;
            out->ordinal = out->ordinal2 ? 1 : 0;
        } else if (first == TOKEN_LIMIT) {
            first = i;
            out->ordinal = number;
        } else if (!out->ordinal2 && numbers_name_two(reader, first, i)) {
            out->ordinal2 = number;
        } else if (!out->division && !out->ordinal2)
            out->division = number;
        else
            out->stray = true;
    }
}

/* 'Basso e Violoncello' is 'Violoncello e Basso'; a continuo that is named second only says who reads along. */
static void settle_second(NameReading *out)
{
    bool low = out->instrument == INSTRUMENT_BASS || out->instrument == INSTRUMENT_BASS_LINE || out->instrument == INSTRUMENT_EITHER_BASS ||
               out->instrument == INSTRUMENT_CONTINUO;
    out->continuo |= out->instrument == INSTRUMENT_CONTINUO || out->also == INSTRUMENT_CONTINUO;
    if (low && out->also == INSTRUMENT_CELLO) {
        out->also = out->instrument == INSTRUMENT_CONTINUO ? INSTRUMENT_NONE : INSTRUMENT_BASS;
        out->instrument = INSTRUMENT_CELLO;
    }
    if (out->also == INSTRUMENT_BASS_LINE)
        out->also = INSTRUMENT_BASS;
    if (out->also == INSTRUMENT_CONTINUO)
        out->also = INSTRUMENT_NONE;
}

void name_read(const char *name, NameReading *out)
{
    NameReader reader = { .out = out, .instrument_at = TOKEN_LIMIT };
    *out = (NameReading){ 0 };
    name_tokens(name, &reader.tokens);
    read_words(&reader);
    read_orchestra(&reader);
    read_desks(&reader);
    read_divisions(&reader);
    read_letters(&reader);
    read_numbers(&reader);
    settle_second(out);
    out->stray |= reader.tokens.count && reader.kinds[reader.tokens.count - 1] == WORD_AND;
    if (reader.violen && out->instrument == INSTRUMENT_VIOLA && out->ordinal)
        out->instrument = INSTRUMENT_VIOLIN;
    if (instrument_has_section(out->instrument) || out->instrument == INSTRUMENT_STRINGS || out->instrument == INSTRUMENT_OTHER_STRING)
        out->family = SPZ_FAMILY_STRINGS;
    if (out->instrument == INSTRUMENT_NONE && out->choir_named) {
        out->instrument = INSTRUMENT_OTHER;
        out->family = SPZ_FAMILY_VOICES;
    }
}
