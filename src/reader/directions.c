/* directions.c - what stands over, under and between the notes: dynamics, words, tempo, letters, wedges, signs, and what <sound> says. */
#include "reader/reader.h"
#include "support/text/ascii.h"
#include "support/numbers.h"
#include <stdio.h>
#include <string.h>

void read_direction_start(Reader *reader)
{
    reader->direction.count = 0;
    reader->direction.offset = 0;
    reader->direction.sound_tempo = 0;
    reader->direction.overfull = false;
    memset(&reader->metronome, 0, sizeof reader->metronome);
    reader->note.staff = 0;
}

static void add_item(Reader *reader, DirectionKind kind, const char *text, int value)
{
    DirectionDraft *direction = &reader->direction;
    if (direction->count < LIMIT_DIRECTION_ITEMS)
        direction->items[direction->count++] = (DirectionItem){kind, text, value, 0};
    else if (!direction->overfull) {
        char most[16];
        snprintf(most, sizeof most, "%d", LIMIT_DIRECTION_ITEMS);
        reader_doubt(reader, SPZ_FAULT_SIGNS_LEFT_OUT, most);
        direction->overfull = true;
    }
}

static bool in_music(const Reader *reader)
{
    return reader->place.bar >= 0 && (reader_inside(reader, ELEMENT_DIRECTION) || reader_inside(reader, ELEMENT_NOTE));
}

/* What is in force after the sign; accents such as sf change nothing that lasts. */
static const struct {
    const char *sign;
    Dynamic after;
} dynamic_signs[] = {
    {"p", DYNAMIC_P},        {"pp", DYNAMIC_PP},       {"ppp", DYNAMIC_PPP},     {"pppp", DYNAMIC_PPPP},    {"ppppp", DYNAMIC_PPPP},
    {"pppppp", DYNAMIC_PPPP}, {"f", DYNAMIC_F},         {"ff", DYNAMIC_FF},       {"fff", DYNAMIC_FFF},      {"ffff", DYNAMIC_FFFF},
    {"fffff", DYNAMIC_FFFF}, {"ffffff", DYNAMIC_FFFF}, {"mp", DYNAMIC_MP},       {"mf", DYNAMIC_MF},        {"sf", DYNAMIC_NONE},
    {"sfp", DYNAMIC_P},      {"sfpp", DYNAMIC_PP},     {"fp", DYNAMIC_P},        {"rf", DYNAMIC_NONE},      {"rfz", DYNAMIC_NONE},
    {"sfz", DYNAMIC_NONE},   {"sffz", DYNAMIC_NONE},   {"fz", DYNAMIC_NONE},     {"n", DYNAMIC_PPPP},       {"pf", DYNAMIC_F},
    {"sfzp", DYNAMIC_P},     {"ffp", DYNAMIC_P},       {"mfp", DYNAMIC_P},       {"fpp", DYNAMIC_PP},
};

static int dynamic_of(const char *sign, size_t length)
{
    for (size_t i = 0; i < sizeof dynamic_signs / sizeof *dynamic_signs; i++)
        if (strlen(dynamic_signs[i].sign) == length && memcmp(dynamic_signs[i].sign, sign, length) == 0)
            return (int)dynamic_signs[i].after;
    return -1;
}

/* 'sempre pp', 'p dolce': the first word that is a sign counts. */
static Dynamic dynamic_in_words(const char *text)
{
    while (*text) {
        size_t length = 0;
        while (text[length] && ascii_is_letter((unsigned char)text[length]))
            length++;
        int found = length ? dynamic_of(text, length) : -1;
        if (found >= 0)
            return (Dynamic)found;
        text += length;
        while (*text && !ascii_is_letter((unsigned char)*text))
            text++;
    }
    return DYNAMIC_NONE;
}

/* A child of <dynamics>: its name is the sign. */
void dynamic_sign(Reader *reader, const char *name)
{
    if (!in_music(reader) || strcmp(name, "other-dynamics") == 0)
        return;
    for (size_t i = 0; i < sizeof dynamic_signs / sizeof *dynamic_signs; i++)
        if (strcmp(dynamic_signs[i].sign, name) == 0) {
            add_item(reader, DIRECTION_DYNAMIC, dynamic_signs[i].sign, (int)dynamic_signs[i].after);
            return;
        }
}

void read_dynamic_sign_end(Reader *reader)
{
    const char *text = reader_text(reader);
    if (!in_music(reader) || *text == '\0')
        return;
    const char *kept = reader_keep(reader, text);
    if (kept)
        add_item(reader, DIRECTION_DYNAMIC, kept, (int)dynamic_in_words(kept));
}

void read_words_end(Reader *reader)
{
    const char *text = reader_text(reader);
    if (!in_music(reader) || *text == '\0')
        return;
    const char *kept = reader_keep(reader, text);
    if (kept)
        add_item(reader, DIRECTION_WORDS, kept, 0);
}

void read_rehearsal_end(Reader *reader)
{
    const char *text = reader_text(reader);
    Bar *bar = reader_bar(reader);
    const char *kept = bar && *text && in_music(reader) ? reader_keep(reader, text) : NULL;
    if (!kept)
        return;
    add_item(reader, DIRECTION_REHEARSAL, kept, 0);
    if (!bar->rehearsal)
        bar->rehearsal = kept;
}

void read_wedge_start(Reader *reader)
{
    if (!in_music(reader))
        return;
    if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "crescendo"))
        add_item(reader, DIRECTION_WEDGE, NULL, 1);
    else if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "diminuendo"))
        add_item(reader, DIRECTION_WEDGE, NULL, -1);
    else if (reader_attribute_is(reader, ATTRIBUTE_TYPE, "stop"))
        add_item(reader, DIRECTION_WEDGE, NULL, 0);
}

void read_segno_start(Reader *reader)
{
    Bar *bar = reader_bar(reader);
    if (!bar)
        return;
    bar->segno = true;
    if (in_music(reader))
        add_item(reader, DIRECTION_SIGN, "segno", 0);
}

void read_coda_start(Reader *reader)
{
    Bar *bar = reader_bar(reader);
    if (!bar)
        return;
    bar->coda = true;
    if (in_music(reader))
        add_item(reader, DIRECTION_SIGN, "coda", 0);
}

/* Metronome marks. */
static const struct {
    const char *name, *words;
    double crotchets;
} note_values[] = {
    {"maxima", "maxima", 32},   {"long", "long", 16},          {"breve", "breve", 8},         {"whole", "semibreve", 4}, {"half", "minim", 2},
    {"quarter", "crotchet", 1}, {"eighth", "quaver", 0.5},     {"16th", "semiquaver", 0.25},  {"32nd", "demisemiquaver", 0.125},
    {"64th", "hemidemisemiquaver", 0.0625},                    {"128th", "128th", 0.03125},   {"256th", "256th", 0.015625},
};

void read_metronome_start(Reader *reader)
{
    memset(&reader->metronome, 0, sizeof reader->metronome);
}

void read_beat_unit_end(Reader *reader)
{
    MetronomeDraft *metronome = &reader->metronome;
    const char *text = reader_text(reader);
    if (metronome->count == 2)
        return;
    for (size_t i = 0; i < sizeof note_values / sizeof *note_values; i++)
        if (strcmp(note_values[i].name, text) == 0) {
            metronome->units[metronome->count] = note_values[i].crotchets;
            metronome->names[metronome->count++] = note_values[i].words;
            return;
        }
}

void read_beat_unit_dot_start(Reader *reader)
{
    MetronomeDraft *metronome = &reader->metronome;
    int last = metronome->count - 1;
    if (last < 0 || metronome->dots[last] == 4)
        return;
    int dots = ++metronome->dots[last];
    double share = 1.0 / (double)(1 << dots); /* dot n adds the value's 2^-n */
    metronome->units[last] *= (2 - share) / (2 - 2 * share);
}

void read_per_minute_end(Reader *reader)
{
    reader->metronome.per_minute = number_first(reader_text(reader));
}

static const char *metronome_words(Reader *reader)
{
    static const char *const dots[5] = {"", "dotted ", "double-dotted ", "triple-dotted ", "much-dotted "};
    const MetronomeDraft *m = &reader->metronome;
    char text[128], number[NUMBER_TEXT];
    if (m->count == 2)
        snprintf(text, sizeof text, "%s%s = %s%s", dots[m->dots[0]], m->names[0], dots[m->dots[1]], m->names[1]);
    else
        snprintf(text, sizeof text, "%s%s = %s", dots[m->dots[0]], m->names[0], number_text_short(m->per_minute, 4, number));
    return reader_keep(reader, text);
}

static bool can_be_played(double rate)
{
    return rate > 0 && rate <= 10000;
}

void read_metronome_end(Reader *reader)
{
    const MetronomeDraft *m = &reader->metronome;
    double rate = 0;
    if (!in_music(reader) || m->count == 0)
        return;
    if (m->count == 2 && m->units[0] > 0) /* old value = new value */
        rate = reader->place.tempo / m->units[0] * m->units[1];
    else if (m->count == 1)
        rate = m->per_minute * m->units[0];
    if (!can_be_played(rate)) {
        char number[NUMBER_TEXT];
        if (m->per_minute != 0)
            reader_doubt(reader, SPZ_FAULT_TEMPO, number_text_short(m->per_minute, 4, number));
        return;
    }
    const char *words = metronome_words(reader);
    if (!words)
        return;
    int before = reader->direction.count;
    add_item(reader, DIRECTION_TEMPO, words, TEMPO_PRINTED);
    if (reader->direction.count > before)
        reader->direction.items[before].rate = rate;
}

void read_offset_end(Reader *reader)
{
    Decimal offset;
    const char *text = reader_text(reader);
    if (reader_parent(reader) != ELEMENT_DIRECTION || reader->place.bar < 0)
        return;
    if (!number_decimal(text, &offset))
        reader_doubt(reader, SPZ_FAULT_OFFSET, text);
    else
        time_of(reader, offset, &reader->direction.offset);
}

static bool attribute_there(Reader *reader, AttributeName name)
{
    char text[8];
    return reader_attribute(reader, name, text, sizeof text) && strcmp(text, "no") != 0;
}

/* The jumps that <sound> orders. */
static void sound_jumps(Reader *reader, Bar *bar)
{
    const struct {
        AttributeName name;
        bool *flag;
        const char *sign;
        const char **label;
    } jumps[] = {
        {ATTRIBUTE_DACAPO, &bar->da_capo, "dacapo", NULL},
        {ATTRIBUTE_DALSEGNO, &bar->dal_segno, "dalsegno", &bar->dal_segno_name},
        {ATTRIBUTE_SEGNO, &bar->segno, "segno", &bar->segno_name},
        {ATTRIBUTE_CODA, &bar->coda, "coda", &bar->coda_name},
        {ATTRIBUTE_TOCODA, &bar->to_coda, "tocoda", &bar->to_coda_name},
        {ATTRIBUTE_FINE, &bar->fine, "fine", NULL},
    };
    for (size_t i = 0; i < sizeof jumps / sizeof *jumps; i++) {
        char label[64];
        if (!attribute_there(reader, jumps[i].name))
            continue;
        *jumps[i].flag = true;
        add_item(reader, DIRECTION_SIGN, jumps[i].sign, 0);
        if (jumps[i].label && !*jumps[i].label && reader_attribute(reader, jumps[i].name, label, sizeof label))
            *jumps[i].label = reader_keep(reader, label);
    }
    if (attribute_there(reader, ATTRIBUTE_FORWARD_REPEAT))
        bar->repeat_start = true;
}

/* 0 where it is none. */
static double tempo_said(Reader *reader, const char *text)
{
    Decimal decimal;
    double rate = number_decimal(text, &decimal) ? (double)decimal.digits / (double)decimal.scale : 0;
    if (can_be_played(rate))
        return rate;
    reader_doubt(reader, SPZ_FAULT_TEMPO, text);
    return 0;
}

void read_sound_start(Reader *reader)
{
    char text[32];
    Bar *bar = reader_bar(reader);
    bool alone = reader_parent(reader) != ELEMENT_DIRECTION;
    if (!bar)
        return;
    if (alone)
        read_direction_start(reader);
    sound_jumps(reader, bar);
    if (reader_attribute(reader, ATTRIBUTE_TEMPO, text, sizeof text))
        reader->direction.sound_tempo = tempo_said(reader, text);
    if (reader_attribute(reader, ATTRIBUTE_PIZZICATO, text, sizeof text))
        add_item(reader, DIRECTION_PLAYING, NULL, strcmp(text, "yes") == 0 ? PLAYING_PIZZICATO : PLAYING_ARCO);
    if (alone)
        read_direction_end(reader);
}

/* Behind the name of a dance or section: 'menuetto d.c.' orders what 'd.c.' does (common practice). */
static const char *without_dance(const char *text)
{
    static const char *const dances[] = {"menuett", "menuet", "minuett", "minuet", "scherz", "marcia", "march", "polonaise", "gavott", "bourr"};
    for (size_t i = 0; i < sizeof dances / sizeof *dances; i++)
        if (strncmp(text, dances[i], strlen(dances[i])) == 0) {
            const char *blank = strchr(text, ' ');
            return blank ? blank + 1 : text;
        }
    return text;
}

static bool begins_with(const char *text, const char *word)
{
    return strncmp(text, word, strlen(word)) == 0;
}

static bool is_da_capo(const char *text)
{
    return begins_with(text, "d.c.") || begins_with(text, "d. c.") || begins_with(text, "da capo");
}

/* 'Da capo dal segno': again, from the sign on. ('Da capo al segno' is from the beginning up to it.) */
static bool is_da_capo_dal_segno(const char *text)
{
    return is_da_capo(text) && (strstr(text, "dal segno") || strstr(text, "d.s.") || strstr(text, "dal s."));
}

/* Words of jumps in files that don't write them as <sound>. */
static void jump_in_words(Bar *bar, const char *words)
{
    char lower[64];
    size_t length = 0;
    for (; words[length] && length < sizeof lower - 1; length++)
        lower[length] = (char)ascii_lower((unsigned char)words[length]);
    lower[length] = '\0';
    const char *text = without_dance(lower);
    if (strcmp(text, "fine") == 0 || strcmp(text, "fine.") == 0)
        bar->fine = true;
    else if (begins_with(text, "d.s.") || begins_with(text, "d. s.") || begins_with(text, "dal segno") || is_da_capo_dal_segno(text))
        bar->dal_segno_words = true;
    else if (is_da_capo(text))
        bar->da_capo_words = true;
    else if (begins_with(text, "trio"))
        bar->trio = true;
    else if (begins_with(text, "to coda") || begins_with(text, "al coda"))
        bar->to_coda = true;
}

void marks_add(Reader *reader, Ticks onset, int staff)
{
    PartDraft *part = reader_part(reader);
    for (int i = 0; i < reader->direction.count && reader->status == SPZ_OK; i++) {
        const DirectionItem *item = &reader->direction.items[i];
        Direction mark = {onset, item->text, item->rate, reader_line(reader), reader->place.bar, item->value, (uint8_t)item->kind,
                     (uint8_t)staff};
        if (++reader->mark_count > LIMIT_MARKS)
            reader_fail(reader, SPZ_OVER_LIMIT, "the score has more than %d directions", LIMIT_MARKS);
        else if (!array_push(&part->marks, mark))
            reader_no_memory(reader);
        if (item->kind == DIRECTION_WORDS && reader->status == SPZ_OK)
            jump_in_words(reader_bar(reader), item->text);
    }
    reader->direction.count = 0;
}

/* A metronome mark written out in words, such as 'Allegro (crotchet = 120)' with the sign for the note: crotchets a minute; 0 where there is none. The signs are those of Unicode and of
 * the Standard Music Font Layout. */
static double rate_in_words(const char *text)
{
    static const struct {
        const char *sign;
        double crotchets;
    } signs[] = {
        {"\xe2\x99\xa9", 1},   {"\xe2\x99\xaa", 0.5}, {"\xf0\x9d\x85\x9e", 2}, {"\xf0\x9d\x85\x9f", 1}, {"\xf0\x9d\x85\xa0", 0.5}, {"\xee\x87\x93", 2},
        {"\xee\x87\x95", 1},   {"\xee\x87\x97", 0.5}, {"\xee\xb2\xa3", 2},     {"\xee\xb2\xa5", 1},     {"\xee\xb2\xa7", 0.5},
    };
    static const char *const dots[] = {".", "\xee\x87\xa7", "\xee\xb2\xb7"};
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
        const char *at = strstr(text, signs[i].sign);
        if (!at)
            continue;
        at += strlen(signs[i].sign);
        double value = signs[i].crotchets;
        for (size_t dot = 0; dot < sizeof dots / sizeof *dots; dot++)
            if (strncmp(at, dots[dot], strlen(dots[dot])) == 0) {
                at += strlen(dots[dot]);
                value *= 1.5;
            }
        at += strspn(at, " ");
        return *at == '=' ? value * number_first(at) : 0;
    }
    return 0;
}

/* '(Tempo I)', 'Tempo primo': back to how it began. */
static bool leads_to_first_tempo(const char *text)
{
    static const char *const ways[] = {"tempo i", "tempo 1", "tempo primo", "tempo 1mo"};
    text += strspn(text, "([ ");
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        size_t length = 0;
        while (ways[i][length] && ascii_lower(text[length]) == ways[i][length])
            length++;
        if (!ways[i][length] && !ascii_is_letter((unsigned char)text[length]) && !ascii_is_digit((unsigned char)text[length]))
            return true;
    }
    return false;
}

/* What words alone say of the tempo; 0 for nothing. */
static double tempo_of_words(const Reader *reader, const char *words)
{
    double rate = rate_in_words(words);
    return can_be_played(rate) ? rate : leads_to_first_tempo(words) ? reader->place.first_tempo : 0;
}

/* One tempo a direction: what <sound> says goes before the metronome mark, and the words beside it name it. */
static void settle_tempo(Reader *reader)
{
    DirectionDraft *direction = &reader->direction;
    DirectionItem *tempo = NULL;
    const char *words = NULL;
    for (int i = 0; i < direction->count; i++)
        if (direction->items[i].kind == DIRECTION_TEMPO)
            tempo = &direction->items[i];
        else if (direction->items[i].kind == DIRECTION_WORDS && !words)
            words = direction->items[i].text;
    double rate = direction->sound_tempo, said = !tempo && rate <= 0 && words ? tempo_of_words(reader, words) : 0;
    rate = said > 0 ? said : rate;
    if (!tempo && rate > 0 && direction->count < LIMIT_DIRECTION_ITEMS) {
        add_item(reader, DIRECTION_TEMPO, words, said > 0 ? TEMPO_PRINTED : TEMPO_PLAYED);
        tempo = &direction->items[direction->count - 1];
    }
    if (!tempo)
        return;
    if (rate > 0)
        tempo->rate = rate;
    if (words)
        tempo->text = words;
    reader->place.tempo = tempo->rate;
    reader->place.first_tempo = reader->place.first_tempo > 0 ? reader->place.first_tempo : tempo->rate;
}

void read_direction_end(Reader *reader)
{
    Place *place = &reader->place;
    if (place->bar < 0)
        return;
    settle_tempo(reader);
    Ticks onset = place->position + reader->direction.offset;
    marks_add(reader, onset > 0 ? onset : 0, reader->note.staff);
}
