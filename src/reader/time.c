/* time.c - exact time: divisions and time signatures of the file into ticks.
 *
 * Ticks start fine enough for anything down to a 128th with triplets, quintuplets and septuplets; a duration that is no whole number
 * of ticks raises per_crotchet to a common multiple, and every time read so far is multiplied by the same factor. */
#include "reader/reader.h"
#include <stdio.h>
#include <string.h>

static void multiply_notes(NoteList *notes, Ticks factor)
{
    for (size_t i = 0; i < notes->count; i++) {
        notes->at[i].onset *= factor;
        notes->at[i].duration *= factor;
    }
}

static void multiply_part(PartDraft *part, Ticks factor)
{
    multiply_notes(&part->notes, factor);
    for (size_t i = 0; i < part->marks.count; i++)
        part->marks.at[i].onset *= factor;
    for (size_t i = 0; i < part->filled.count; i++)
        part->filled.at[i] *= factor;
    for (size_t i = 0; i < part->measures.count; i++)
        part->measures.at[i] *= factor;
    part->nominal *= factor;
    part->beat *= factor;
    part->unit = 0;
}

static void multiply_everything(Reader *reader, Ticks factor)
{
    for (size_t i = 0; i < reader->parts.count; i++)
        multiply_part(&reader->parts.at[i], factor);
    for (size_t i = 0; i < reader->bars.count; i++) {
        Bar *bar = &reader->bars.at[i];
        bar->length *= factor;
        bar->nominal *= factor;
        bar->beat *= factor;
    }
    for (int i = 0; i < reader->change_count; i++)
        reader->changes[i].position *= factor;
    reader->place.position *= factor;
    reader->place.furthest *= factor;
    reader->place.chord_onset *= factor;
    reader->direction.offset *= factor;
    reader->per_crotchet *= factor;
}

/* makes per_crotchet a multiple of divisor */
static bool time_raise(Reader *reader, Ticks divisor)
{
    if (reader->per_crotchet % divisor == 0)
        return true;
    Ticks raised = ticks_common_multiple(reader->per_crotchet, divisor, limit_per_crotchet);
    if (raised == 0) {
        reader_fail(reader, SPZ_OVER_LIMIT, "the note values differ too finely to be counted together exactly");
        return false;
    }
    multiply_everything(reader, raised / reader->per_crotchet);
    return true;
}

static bool in_range(Reader *reader, Ticks ticks)
{
    Ticks limit = reader->per_crotchet * LIMIT_BAR_CROTCHETS;
    if (ticks <= limit && ticks >= -limit)
        return true;
    reader_fail(reader, SPZ_BAD_MUSIC, "a duration is longer than %d crotchets", LIMIT_BAR_CROTCHETS);
    return false;
}

/* The way of nearly all durations: a whole number of divisions, which are whole ticks. */
static bool plain_time(Reader *reader, PartDraft *part, Decimal duration, Ticks *out)
{
    if (part->unit == 0 && part->divisions > 0 && reader->per_crotchet % part->divisions == 0)
        part->unit = reader->per_crotchet / part->divisions;
    Ticks limit = reader->per_crotchet * LIMIT_BAR_CROTCHETS;
    if (part->unit == 0 || duration.scale != 1 || duration.digits > limit / part->unit || duration.digits < -limit / part->unit)
        return false;
    *out = duration.digits * part->unit;
    return true;
}

bool time_of(Reader *reader, Decimal duration, Ticks *out)
{
    PartDraft *part = reader_part(reader);
    *out = 0;
    if (duration.digits == 0)
        return true;
    if (part->divisions == 0) {
        part->divisions = 1;
        reader_doubt(reader, SPZ_FAULT_NO_DIVISIONS, NULL);
    }
    if (plain_time(reader, part, duration, out))
        return true;
    Ticks below = part->divisions * duration.scale, above = duration.digits;
    Ticks common = ticks_common_divisor(above < 0 ? -above : above, below);
    above /= common;
    below /= common;
    if (!time_raise(reader, below))
        return false;
    Ticks each = reader->per_crotchet / below, most = INT64_MAX / 2 / each;
    if (above > most || above < -most)
        above = above < 0 ? -most : most;
    *out = above * each;
    return in_range(reader, *out);
}

void read_time_divisions(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    Decimal decimal;
    if (!part)
        return;
    const char *text = reader_text(reader);
    int64_t whole = 0;
    if (!number_decimal(text, &decimal) || decimal.digits <= 0 || decimal.digits % decimal.scale != 0)
        reader_doubt(reader, SPZ_FAULT_DIVISIONS, text);
    else if ((whole = decimal.digits / decimal.scale) > LIMIT_DIVISIONS)
        reader_doubt(reader, SPZ_FAULT_DIVISIONS, text);
    else if (time_raise(reader, whole)) {
        part = reader_part(reader);
        part->divisions = whole;
        part->unit = 0;
    }
}

void read_time_signature_start(Reader *reader)
{
    char number[8];
    int64_t staff = 0;
    memset(&reader->time, 0, sizeof reader->time);
    reader->time.below = 1;
    if (reader_attribute(reader, ATTRIBUTE_NUMBER, number, sizeof number) && number_whole(number, &staff))
        reader->time.number = (int)(staff < 0 || staff > LIMIT_STAVES ? 0 : staff);
}

void read_time_senza_misura(Reader *reader)
{
    reader->time.unmeasured = true;
}

static void doubt_of_signature(Reader *reader, const char *text)
{
    if (!reader->time.unreadable)
        reader_doubt(reader, SPZ_FAULT_SIGNATURE, text);
    reader->time.unreadable = true;
}

void read_time_beats(Reader *reader)
{
    const char *text = reader_text(reader);
    if (strlen(text) < sizeof reader->time.beats)
        strcpy(reader->time.beats, text);
    else
        doubt_of_signature(reader, text);
}

/* '3+2+3' beats are added; -1 when it is no such sum. */
static int64_t sum_of_beats(const char *text, bool *composite)
{
    int64_t sum = 0, term = 0;
    bool digit = false;
    for (;; text++) {
        if (*text >= '0' && *text <= '9') {
            term = term * 10 + (*text - '0');
            digit = true;
            if (term > 1000)
                return -1;
        } else if (*text == '+' || *text == '\0') {
            if (!digit)
                return -1;
            sum += term;
            term = 0;
            digit = false;
            if (*text == '\0')
                return sum > 0 && sum <= 1000 ? sum : -1;
            *composite = true;
        } else if (*text != ' ') {
            return -1;
        }
    }
}

void read_time_beat_type(Reader *reader)
{
    const char *text = reader_text(reader);
    TimeDraft *time = &reader->time;
    int64_t type = 0;
    bool composite = false;
    int64_t beats = sum_of_beats(time->beats, &composite);
    if (!reader_inside(reader, ELEMENT_TIME) || reader->status != SPZ_OK)
        return;
    if (beats < 0 || !number_whole(text, &type) || type < 1 || type > 1024) {
        char signature[64];
        snprintf(signature, sizeof signature, "%.20s/%.20s", time->beats, text);
        doubt_of_signature(reader, signature);
        return;
    }
    bool first = time->above == 0;
    int64_t common = ticks_common_multiple(time->below, type, INT64_C(1) << 40);
    if (common == 0)
        return;
    time->above = time->above * (common / time->below) + beats * (common / type);
    time->below = common;
    time->plain_beats = first && !composite ? beats : 0;
    time->plain_type = first ? type : time->below;
}

/* How a conductor counts: in threes where the upper figure is 6, 9 or 12 over quavers or shorter (common practice), else the
 * lower figure. */
static Ticks beat_of(const TimeDraft *time, Ticks semibreve)
{
    Ticks unit = semibreve / time->plain_type;
    bool compound = time->plain_beats > 3 && time->plain_beats % 3 == 0 && time->plain_type >= 8;
    return compound ? unit * 3 : unit;
}

static void signature_to_bar(Reader *reader, const PartDraft *part)
{
    Bar *bar = reader_bar(reader);
    /* A signature inside a bar is for the next one, unless nothing of this bar has been written yet. */
    if (!bar || reader->place.furthest > 0 || !reader->place.made_bar)
        return;
    bar->nominal = part->nominal;
    bar->beat = part->beat;
}

void read_time_signature_end(Reader *reader)
{
    PartDraft *part = reader_part(reader);
    TimeDraft *time = &reader->time;
    if (!part || time->number > 1 || time->unreadable || reader->status != SPZ_OK)
        return;
    if (time->unmeasured || time->above == 0) {
        part->nominal = 0;
        part->beat = reader->per_crotchet;
    } else {
        int64_t finest = time->below > time->plain_type ? time->below : time->plain_type;
        if (!time_raise(reader, finest / ticks_common_divisor(finest, 4)))
            return;
        Ticks semibreve = reader->per_crotchet * 4;
        part->nominal = semibreve / time->below * time->above;
        part->beat = beat_of(time, semibreve);
    }
    if (part->measures.count && reader->place.furthest == 0)
        part->measures.at[part->measures.count - 1] = part->nominal;
    signature_to_bar(reader, part);
}
